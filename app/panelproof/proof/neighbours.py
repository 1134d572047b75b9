"""Neighbours: pairs of texts that follow each other while a number counts, without listing its range.

A number and the next one differ in their last digits only: of `P d 9…9` and `P (d + 1) 0…0` what matters is the
digit d, how many nines follow, and what P ends with. One pair of each kind stands for all.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from panelproof.content import real, whole, words
from panelproof.content.digits import BASES, decimals, digits_of, point
from panelproof.content.format import Conversion, pieces
from panelproof.content.sentence import padded
from panelproof.content.spec import Argument, Choice, Content, FreeText, RealRange, WholeRange

Number = WholeRange | RealRange
FEW = 300
"""So many numbers are looked at one by one."""
MOST = 4000
"""So many where the step divides no power of the base, so that the kinds of pairs cannot be told apart."""


@dataclass(frozen=True, slots=True)
class _Run:
    """Sizes `first`, `first` + `step` … `last` printed after `head`, in units of the last decimal."""

    head: str
    first: int
    last: int
    step: int


def numeric(content: Content) -> tuple[tuple[int, Conversion, Number], ...]:
    """Return the numbers that a content prints: place among its arguments, conversion, range."""
    found: list[tuple[int, Conversion, Number]] = []
    conversions = (piece for piece in pieces(content.format) if isinstance(piece, Conversion))
    for place, (conversion, argument) in enumerate(zip(conversions, content.arguments, strict=True)):
        if conversion.kind in ("whole", "real") and isinstance(argument, WholeRange | RealRange):
            found.append((place, conversion, argument))
    return tuple(found)


@lru_cache(maxsize=512)
def neighbours(content: Content, thorough: bool) -> tuple[tuple[str, str], ...]:
    """Return pairs of neighbouring texts (the one nearer to zero first): one of each kind for each number.

    With `thorough` the digits before those that change vary too, for kerning and for halves of odd widths. While one number
    counts the others stand at their first value.
    """
    return tuple(
        pair
        for place, conversion, argument in numeric(content)
        for pair in _around(content, place, _printed(conversion, argument, thorough))
    )


def last_step(content: Content) -> tuple[str, str] | None:
    """Return a step of the content's last number near the greatest, one digit of which changes; None without numbers."""
    numbers = numeric(content)
    if not numbers:
        return None
    place, conversion, argument = numbers[-1]
    run = _runs(conversion, argument)[-1]
    sizes = range(run.last - run.step, max(run.last - 12 * run.step, run.first) - 1, -run.step)
    pairs = [
        (number(conversion, run.head, size), number(conversion, run.head, size + run.step)) for size in sizes
    ]
    alike = [pair for pair in pairs if sum(a != b for a, b in zip(*pair, strict=False)) == 1] or pairs
    return next(_around(content, place, iter(alike)), None)


def _around(content: Content, place: int, pairs: Iterator[tuple[str, str]]) -> Iterator[tuple[str, str]]:
    before = after = ""
    number = -1
    for piece in pieces(content.format):
        if isinstance(piece, str):
            shown = piece
        else:
            number += 1
            shown = "" if number == place else some(piece, content.arguments[number])
        if number < place or (number == place and not isinstance(piece, str)):
            before += shown
        else:
            after += shown
    return ((before + one + after, before + other + after) for one, other in pairs)


def some(conversion: Conversion, argument: Argument) -> str:
    """Return one text that a conversion can print: the first of its range or choice."""
    match argument:
        case RealRange():
            return real.printed(conversion, argument, argument.least)
        case WholeRange():
            printed = real.printed if conversion.kind == "real" else whole.printed
            return printed(conversion, argument, argument.least)
        case Choice():
            return words.printed(conversion, argument, argument.texts[0])
        case FreeText():
            text = words.alphabet(argument)[:1] * max(argument.shortest, min(argument.longest, 1))
            return words.printed(conversion, argument, text)


def _printed(conversion: Conversion, argument: Number, thorough: bool) -> Iterator[tuple[str, str]]:
    runs = _runs(conversion, argument)
    base = BASES.get(conversion.letter, 10)
    for run in reversed(runs):
        for size in _kinds(run, base, thorough):
            yield number(conversion, run.head, size), number(conversion, run.head, size + run.step)
    if len(runs) == 2:
        yield (
            number(conversion, runs[0].head, runs[0].first),
            number(conversion, runs[1].head, runs[1].first),
        )


def number(conversion: Conversion, head: str, size: int) -> str:
    """Return a number as the conversion prints it, given its size in units of the last decimal."""
    digits = digits_of(conversion, size, head)
    if conversion.kind == "real":
        cut = len(digits) - decimals(conversion)
        digits = f"{digits[:cut]}{point(conversion)}{digits[cut:]}"
    return padded(conversion, head + digits)


def _runs(conversion: Conversion, argument: Number) -> tuple[_Run, ...]:
    """Return the negative numbers and the others, as sizes; those without any number left out."""
    if isinstance(argument, WholeRange):
        unit = 10 ** decimals(conversion) if conversion.kind == "real" else 1
        spans = [(first * unit, last * unit) for first, last in whole.split(argument)]
        step = argument.step * unit
    else:
        step = 1
        least, greatest = units(conversion, argument.least), units(conversion, argument.greatest)
        # Every real below zero keeps its sign: -0 is one of them.
        below = (max(-greatest, 0), -least) if argument.least < 0 else (1, 0)
        spans = [below, (max(least, 0), greatest) if argument.greatest >= 0 else (1, 0)]
    heads = ("-", conversion.sign)
    return tuple(
        _Run(head, first, last, step)
        for head, (first, last) in zip(heads, spans, strict=True)
        if first <= last
    )


def units(conversion: Conversion, value: float) -> int:
    """Return a real as the conversion rounds it, in units of the last decimal."""
    return int(format(float(value), f".{decimals(conversion)}f").replace(".", ""))


def _kinds(run: _Run, base: int, thorough: bool) -> Iterator[int]:
    """Yield sizes whose step to the next shows every kind of change there is."""
    count = (run.last - run.first) // run.step
    low = base ** next((power for power in range(7) if base**power % run.step == 0), 0)
    if count <= FEW or low % run.step:
        yield from (run.first + number * run.step for number in range(min(count, MOST)))
        return
    for rest in range(run.first % run.step, low, run.step):
        if rest + run.step < low:
            yield from _with_heads(run, base, low, rest, thorough)
            continue
        nines = 1
        while nines * low <= run.last:
            for digit in range(base - 1):
                tail = (digit * nines + nines - 1) * low + rest
                yield from _with_heads(run, base, base * nines * low, tail, thorough)
            nines *= base


def _with_heads(run: _Run, base: int, unit: int, tail: int, thorough: bool) -> Iterator[int]:
    """Yield sizes of the run that end in `tail`: with nothing before it, and with some digits before it."""
    least = max(-((tail - run.first) // unit), 0)
    most = (run.last - run.step - tail) // unit
    first = max(least, 1)
    heads = [0] if least == 0 else []
    heads += [*range(first, first + base), first * base, first * base + 1] if thorough else [first]
    yield from (head * unit + tail for head in heads if head <= most)
