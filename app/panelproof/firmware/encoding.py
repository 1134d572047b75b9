"""How a glyph's pixels lie in a header: rows bit by bit, with or without repeats, or rows as runs, read from any row on.

Rows: row after row with nothing between, the first pixel in the lowest bits, one or four bits a pixel.

Repeats: a bit a row, set where it is as the row before, filled up to a byte; then the other rows as above.

Runs: halves of bytes, the lower half first. A number is a half, and as long as it is 15 the next half is added to it.
Each row begins with a number: 0, where it is as the row before, else 1 and how many halves follow. Of a one-bit row
these are numbers: how many pixels of ground, then of ink, and so on. Of a row with levels each is a level, and after
the levels 0 and 15 a number, how many more pixels have it. Ground at the end of a row is left out.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import accumulate, combinations, groupby, islice
from typing import Literal

from panelproof.glyphs.glyph import Glyph

Encoding = Literal["rows", "repeats", "runs"]
INK = 15
FORMS: tuple[Encoding, ...] = ("rows", "repeats", "runs")
# What reading each encoding takes in the drawing code, on Cortex-M0 (tests/bench/encodings.py).
CODE_BYTES: dict[Encoding, int] = {"rows": 50, "repeats": 150, "runs": 200}


def packed(glyph: Glyph, encoding: Encoding = "rows") -> bytes:
    """Return a glyph's pixels in an encoding; four bits a pixel, or levels, where the glyph has levels."""
    if encoding == "runs":
        return _halves(_runs(glyph))
    return _rows(glyph) if encoding == "rows" else _repeats(glyph)


def pixels(blob: bytes, width: int, height: int, depth: int, encoding: Encoding) -> bytes:
    """Return the level of each pixel of a bitmap, row by row: 0 or 1, or 0 to 15 where `depth` is 4.

    Raises IndexError where the bitmap is cut short, and ValueError where a row is too long.
    """
    if encoding == "repeats":
        flags, rest = blob[: (height + 7) // 8], blob[(height + 7) // 8 :]
        same = [flags[row >> 3] >> (row & 7) & 1 for row in range(height if width else 0)]
        distinct = pixels(rest, width, same.count(0), depth, "rows")
        places = accumulate((1 - one for one in same), initial=-1)
        return b"".join(distinct[at * width : (at + 1) * width] for at in islice(places, 1, None))
    if encoding == "rows":
        if len(blob) * 8 < width * height * depth:
            raise IndexError("the bitmap is cut short")
        bits, mask = int.from_bytes(blob, "little"), (1 << depth) - 1
        return bytes(bits >> place * depth & mask for place in range(width * height))
    return b"".join(
        _rows_of_runs([half for byte in blob for half in (byte & 15, byte >> 4)], width, height, depth)
    )


def cheapest(glyphs: Mapping[str, Sequence[Glyph]]) -> dict[str, Encoding]:
    """Return for each set of glyphs the encoding that makes the whole the smallest, code included."""
    sizes: dict[str, dict[Encoding, int]] = {
        name: {one: sum(map(len, {packed(glyph, one) for glyph in listed})) for one in FORMS}
        for name, listed in glyphs.items()
    }
    least, best = math.inf, dict.fromkeys(sizes, FORMS[0])
    for count in range(1, len(FORMS) + 1):
        for some in combinations(FORMS, count):
            chosen = {name: min(some, key=size.__getitem__) for name, size in sizes.items()}
            used = set(chosen.values())
            whole = sum(sizes[name][one] for name, one in chosen.items()) + sum(
                CODE_BYTES[one] for one in used
            )
            if {"rows", "repeats"} <= used:
                whole -= CODE_BYTES["rows"]  # repeats read the other rows by it
            if whole < least:
                least, best = whole, chosen
    return best


def _rows(glyph: Glyph) -> bytes:
    if glyph.levels:
        return _halves(glyph.levels)
    bits = 0
    for number, row in enumerate(glyph.rows):
        bits |= row << number * glyph.width
    return bits.to_bytes((glyph.width * glyph.height + 7) // 8, "little")


def _repeats(glyph: Glyph) -> bytes:
    rows = list(_levels(glyph)) if glyph.width else []
    same = [number > 0 and row == rows[number - 1] for number, row in enumerate(rows)]
    flags = sum(1 << number for number, one in enumerate(same) if one).to_bytes(
        (len(rows) + 7) // 8, "little"
    )
    kept = [number for number, one in enumerate(same) if not one]
    levels = b"".join(rows[number] for number in kept) if glyph.levels else b""
    bits = tuple(glyph.rows[number] for number in kept)
    return flags + _rows(Glyph(0, 0, glyph.width, len(kept), 0, bits, levels))


def _halves(halves: Sequence[int]) -> bytes:
    padded = [*halves, *[0] * (len(halves) % 2)]
    return bytes(low | high << 4 for low, high in zip(padded[::2], padded[1::2], strict=True))


def _number(value: int) -> list[int]:
    return [15] * (value // 15) + [value % 15]


def _levels(glyph: Glyph) -> Iterator[bytes]:
    for number, row in enumerate(glyph.rows):
        if glyph.levels:
            yield glyph.levels[number * glyph.width : (number + 1) * glyph.width]
        else:
            yield bytes(INK * (row >> column & 1) for column in range(glyph.width))


def _runs(glyph: Glyph) -> list[int]:
    halves: list[int] = []
    before = None
    for row in _levels(glyph) if glyph.width else ():
        if row == before:
            halves.append(0)
        else:
            made = _row_runs(row.rstrip(b"\0"), one_bit=not glyph.levels)
            halves += _number(1 + len(made)) + made
        before = row
    return halves


def _row_runs(row: bytes, one_bit: bool) -> list[int]:
    made: list[int] = []
    if one_bit and row[:1] == bytes([INK]):
        made += _number(0)
    for level, same in groupby(row):
        count = len(list(same))
        if one_bit:
            made += _number(count)
        elif level in (0, INK):
            made += [level, *_number(count - 1)]
        else:
            made += [level] * count
    return made


def _rows_of_runs(halves: Sequence[int], width: int, height: int, depth: int) -> Iterator[bytes]:
    at = 0

    def number() -> int:
        nonlocal at
        value = 0
        while True:
            half = halves[at]
            at, value = at + 1, value + half
            if half < 15:
                return value

    row = b""
    for _ in range(height if width else 0):
        follow = number()
        if follow:
            end, row, level = at + follow - 1, b"", 0
            while at < end:
                if depth == 1:
                    row += bytes([level]) * number()
                    level ^= 1
                else:
                    level, at = halves[at], at + 1
                    row += bytes([level]) * (number() + 1 if level in (0, INK) else 1)
            if len(row) > width:
                raise ValueError("a row is too long")
            row = row.ljust(width, b"\0")
        yield row
