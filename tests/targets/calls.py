"""Calls of text functions, and what each must write: values inside the proof, at its ends, and outside.

Reals are taken where a `float` of 32 bits holds them too, so that a processor whose `double` is no wider must
write the same.
"""

from __future__ import annotations

import math
import random
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from tests.targets.script import Value, arguments_of

from panelproof.content.build import text
from panelproof.content.spec import Argument, Choice, RealRange, WholeRange
from panelproof.content.words import alphabet
from panelproof.layout.parts import Field

# Of each C type: whether it is signed, and its bits (0: as many as an `int`).
SPANS = {
    "int": (-1, 0), "unsigned int": (0, 0), "long": (-1, 32), "unsigned long": (0, 32),
    "long long": (-1, 64), "unsigned long long": (0, 64), "intmax_t": (-1, 64), "uintmax_t": (0, 64),
    "ptrdiff_t": (-1, 0), "size_t": (0, 0),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Call:
    """The values passed, and the text written (None: nothing, the answer is -1)."""

    values: tuple[Value, ...]
    written: str | None


def calls(part: Field, int_bits: int, chance: random.Random) -> Iterator[Call]:
    """Yield calls of a field's text function for a processor whose `int` has so many bits."""
    content = part.content
    arguments = arguments_of(part)
    inside = [_inside(argument, kind, int_bits, chance) for argument, kind in arguments]
    outside = [_outside(argument, kind, int_bits) for argument, kind in arguments]
    if not all(inside):
        return
    usual = [chance.choice(values) for values in inside]
    for place, values in enumerate(inside):
        for value in values:
            given = (*usual[:place], value, *usual[place + 1 :])
            yield Call(given, text(content, _known(arguments, given)))
        for value in outside[place]:
            yield Call((*usual[:place], value, *usual[place + 1 :]), content.fault)
    if not arguments:
        yield Call((), text(content, ()))


def _known(
    arguments: tuple[tuple[Argument, str], ...], values: tuple[Value, ...]
) -> tuple[str | int | float, ...]:
    """Return values as `content.build.text` takes them: a choice as its text."""
    found: list[str | int | float] = []
    for (argument, kind), value in zip(arguments, values, strict=True):
        assert value is not None
        if isinstance(argument, Choice):
            found.append(argument.texts[int(value)])
        elif isinstance(argument, WholeRange) and "double" in kind:
            found.append(int(value))
        else:
            found.append(value)
    return tuple(found)


def _span(kind: str, int_bits: int) -> tuple[int, int]:
    signed, width = SPANS[kind]
    bits = width or int_bits
    return (-(1 << (bits - 1)), (1 << (bits - 1)) - 1) if signed else (0, (1 << bits) - 1)


def _whole(argument: WholeRange, chance: random.Random) -> list[int]:
    last = argument.greatest - (argument.greatest - argument.least) % argument.step
    count = (last - argument.least) // argument.step
    some = {argument.least + argument.step * chance.randint(0, count) for _ in range(4)}
    near = {n for n in (-10, -9, -1, 0, 1, 9, 10, 99, 100) if argument.least <= n <= last}
    on_step = {n for n in near if (n - argument.least) % argument.step == 0}
    beside = {min(argument.least + argument.step, last), max(last - argument.step, argument.least)}
    return sorted({argument.least, last} | beside | some | on_step)


def _inside(argument: Argument, kind: str, int_bits: int, chance: random.Random) -> list[Value]:
    if isinstance(argument, WholeRange):
        if "double" in kind:
            return [float(n) for n in _whole(argument, chance) if float(np.float32(n)) == n]
        low, high = _span(kind, int_bits)
        return [n for n in _whole(argument, chance) if low <= n <= high]
    if isinstance(argument, RealRange):
        return list(_reals(argument, chance))
    if isinstance(argument, Choice):
        return list(range(len(argument.texts)))
    letters = alphabet(argument)
    lengths = sorted({argument.shortest, argument.longest})
    return ["".join(chance.choice(letters) for _ in range(length)) for length in lengths]


def _reals(argument: RealRange, chance: random.Random) -> Iterator[float]:
    ends = [np.float32(argument.least), np.float32(argument.greatest)]
    inner = [
        float(np.nextafter(end, np.float32(toward))) if not argument.least <= float(end) <= argument.greatest
        else float(end)
        for end, toward in zip(ends, (math.inf, -math.inf), strict=True)
    ]  # fmt: skip
    yield from inner
    # Halves at each number of decimals are where rounding is decided; then any others.
    near = (0.0, -0.0, 0.5, 1.5, 2.5, 0.25, 0.75, 9.75, 0.125, 0.375, 9.875, -0.03125, -0.5, 99.9375)
    any_one = [float(np.float32(chance.uniform(argument.least, argument.greatest))) for _ in range(6)]
    middle = (math.floor(argument.least + argument.greatest) // 2) + 0.25
    for value in (*near, *any_one, middle):
        if argument.least <= value <= argument.greatest:
            yield value


def _outside(argument: Argument, kind: str, int_bits: int) -> list[Value]:
    if isinstance(argument, WholeRange | RealRange):
        if "double" in kind:
            beyond = [argument.least - 1.0, argument.greatest + 1.0, math.nan, math.inf, -math.inf]
            return [float(np.float32(value)) for value in beyond]
        assert isinstance(argument, WholeRange)
        low, high = _span(kind, int_bits)
        between = [argument.least + 1] if argument.step > 1 and argument.least < argument.greatest else []
        tried = [argument.least - 1, argument.greatest + 1, low, high]
        return [
            *(n for n in tried if low <= n <= high and not argument.least <= n <= argument.greatest),
            *(n for n in between if low <= n <= high),
        ]
    if isinstance(argument, Choice):
        return [-1, len(argument.texts), (1 << (int_bits - 1)) - 1]
    letters = alphabet(argument)
    foreign = next(char for char in "\u2603~\x7f" if char not in letters)
    bad: list[Value] = [None, letters[0] * (argument.longest + 1)]
    if argument.longest:
        bad.append(foreign)
    if argument.shortest:
        bad.append("")
    return bad
