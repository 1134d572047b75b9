"""Whole numbers under `%d i u x X o`, and codes of characters under `%c`."""

from __future__ import annotations

from panelproof.content.builder import Builder
from panelproof.content.digits import BASES, Run, digits_of, numbers
from panelproof.content.format import SEEMING_LONG, Conversion
from panelproof.content.sentence import padded, shown
from panelproof.content.spec import RealRange, WholeRange
from panelproof.problem import Problem


def check(conversion: Conversion, argument: WholeRange) -> None:
    """Raise Problem where the range is empty or leaves the C type of the conversion."""
    check_order(argument)
    least, greatest = conversion.span
    if argument.least < 0 and not conversion.signed:
        raise Problem(
            f"`{conversion.source}` cannot print a negative number, and the range begins at"
            f" {shown(argument.least)}: use `%d`, or begin at 0",
            "least",
        )
    for key, end in (("least", argument.least), ("greatest", argument.greatest)):
        if not least <= end <= greatest:
            counted = SEEMING_LONG.get(conversion.length)
            why = f" ({counted} has 32 bits on small processors)" if counted else ""
            raise Problem(
                f"`{conversion.source}` holds {least} to {greatest}{why}, and this is {shown(end)}:"
                f" {_instead(conversion, argument)}",
                key,
            )


def check_order(argument: WholeRange) -> None:
    """Raise Problem where a range holds no number."""
    if argument.step < 1:
        raise Problem("the step must be 1 or more", "step")
    if argument.least > argument.greatest:
        raise Problem(
            f"the range is empty, {shown(argument.least)} is greater than {shown(argument.greatest)}:"
            " exchange `least` and `greatest`"
        )


def _instead(conversion: Conversion, argument: WholeRange) -> str:
    """Return what to use for a range that the conversion's type does not hold."""
    signed = conversion.signed
    for letter in (conversion.letter,) if not signed else (conversion.letter, "u"):
        for length in ("", "ll"):
            wider = Conversion(letter=letter, source="", length=length)
            if wider.span[0] <= argument.least and argument.greatest <= wider.span[1]:
                return f"use `%{length}{letter}`"
    return "give a range that 64 bits hold"


def split(argument: WholeRange) -> tuple[tuple[int, int], tuple[int, int]]:
    """Return the sizes of the negative numbers of a range, then of the others, each as (first, last).

    A part without numbers has its first greater than its last.
    """
    least, step = argument.least, argument.step
    greatest = argument.greatest - (argument.greatest - least) % step
    below = min(greatest, -1 - (-1 - least) % step)
    above = max(least, (least % step) if least < 0 else least)
    return (-below, -least) if least < 0 else (1, 0), (above, greatest)


def build(builder: Builder, conversion: Conversion, argument: WholeRange, follow: int) -> int:
    """Return every number of a checked range as the conversion prints it, and then what may follow."""
    (first_below, last_below), (first, last) = split(argument)
    runs = []
    if first_below <= last_below:
        runs.append(Run("-", first_below, last_below, argument.step))
    prefix = _prefix(conversion)
    if first == 0 <= last and prefix:
        # Zero is printed without a base prefix.
        runs.append(Run("", 0, 0))
        first += argument.step
    if first <= last:
        runs.append(Run(conversion.sign + prefix, first, last, argument.step))
    return numbers(builder, conversion, runs, follow)


def printed(conversion: Conversion, argument: WholeRange, value: object) -> str:
    """Return one number as the conversion prints it. Raises Problem where it is no number of the range."""
    if isinstance(value, bool) or not isinstance(value, int):
        raise Problem(
            f"`{conversion.source}` takes a whole number: give one, without quotes and without a point"
        )
    check_member(argument, value)
    if conversion.kind == "character":
        return padded(conversion, chr(value))
    head = "-" if value < 0 else conversion.sign + (_prefix(conversion) if value else "")
    return padded(conversion, head + digits_of(conversion, abs(value), head))


def check_member(argument: WholeRange, value: int) -> None:
    """Raise Problem where a number is outside the range or between its steps."""
    if not argument.least <= value <= argument.greatest:
        raise outside(argument, value)
    off = (value - argument.least) % argument.step
    if off:
        raise Problem(
            f"{shown(value)} is off the step of {shown(argument.step)}: the next number below is"
            f" {shown(value - off)}"
        )


def outside(argument: WholeRange | RealRange, value: float) -> Problem:
    """Return the problem of a value that is not between the ends of its range."""
    ends = f"{shown(argument.least)} to {shown(argument.greatest)}"
    return Problem(f"{shown(value)} is outside {ends}: give a number inside, or widen the range")


def _prefix(conversion: Conversion) -> str:
    return f"0{conversion.letter}" if "#" in conversion.flags and BASES.get(conversion.letter) == 16 else ""
