"""Real numbers under `%f`: every decimal that the format can round a real of a range to."""

from __future__ import annotations

from math import copysign, isfinite

from panelproof.content.builder import Builder
from panelproof.content.digits import Run, decimals, digits_of, numbers, point
from panelproof.content.format import Conversion
from panelproof.content.sentence import padded, shown
from panelproof.content.spec import RealRange, WholeRange
from panelproof.content.whole import check_member, check_order, outside, split
from panelproof.problem import Problem

EXACT = 1 << 53


def check(conversion: Conversion, argument: RealRange | WholeRange) -> None:
    """Raise Problem where the range is empty or holds numbers that a C double does not."""
    if isinstance(argument, WholeRange):
        check_order(argument)
        for key, end in (("least", argument.least), ("greatest", argument.greatest)):
            if abs(end) > EXACT:
                raise Problem(
                    f"a C double holds whole numbers exactly only up to 2^53, and this is {shown(end)}:"
                    f" use `%lld` instead of `{conversion.source}`, or a real range",
                    key,
                )
        return
    for key, real in (("least", argument.least), ("greatest", argument.greatest)):
        if not isfinite(_double(real, key)):
            raise Problem(
                "the end of a range must be a number, not NaN or infinity: give the real limit", key
            )
    if argument.least > argument.greatest:
        raise Problem(
            f"the range is empty, {shown(argument.least)} is greater than {shown(argument.greatest)}:"
            " exchange `least` and `greatest`"
        )


def build(builder: Builder, conversion: Conversion, argument: RealRange | WholeRange, follow: int) -> int:
    """Return every number of a checked range as the conversion prints it, and then what may follow."""
    places = decimals(conversion)
    if isinstance(argument, WholeRange):
        unit = 10**places
        heads = ("-", conversion.sign)
        runs = [
            Run(head, first * unit, last * unit, argument.step * unit)
            for head, (first, last) in zip(heads, split(argument), strict=True)
            if first <= last
        ]
        return numbers(builder, conversion, runs, follow)
    runs = []
    if argument.least < 0:
        # Every real below zero keeps its sign, so those that round to zero show as -0.0.
        nearest = _units(min(argument.greatest, 0.0), places)
        runs.append(Run("-", nearest, _units(argument.least, places)))
    if argument.greatest >= 0:
        nearest = _units(max(argument.least, 0.0), places)
        runs.append(Run(conversion.sign, nearest, _units(argument.greatest, places)))
    return numbers(builder, conversion, runs, follow)


def printed(conversion: Conversion, argument: RealRange | WholeRange, value: object) -> str:
    """Return one number as the conversion prints it. Raises Problem where it is no number of the range.

    In a range that does not reach below zero, -0.0 counts as 0.0.
    """
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise Problem(f"`{conversion.source}` takes a number: give one, without quotes")
    if isinstance(argument, WholeRange):
        if not isfinite(value) or value != int(value):
            raise Problem(f"{shown(value)} is no whole number, and the range holds only whole numbers")
        check_member(argument, int(value))
        value = int(value)
    real = _double(value, "")
    if not argument.least <= real <= argument.greatest:
        raise outside(argument, value)
    head = "-" if copysign(1.0, real) < 0 and argument.least < 0 else conversion.sign
    places = decimals(conversion)
    digits = digits_of(conversion, _units(real, places), head)
    before = len(digits) - places
    return padded(conversion, f"{head}{digits[:before]}{point(conversion)}{digits[before:]}")


def _double(value: float, key: str) -> float:
    try:
        return float(value)
    except OverflowError:
        raise Problem("the number is too large for a C double, which ends near 1.8e308", key) from None


def _units(value: float, places: int) -> int:
    """Return the size of a double in units of its last decimal, rounded as C does: exactly, ties to even."""
    return int(format(abs(float(value)), f".{places}f").replace(".", ""))
