"""How a glyph's pixels lie in a header: rows bit by bit, or rows as runs; both can be read from any row on.

Rows: row after row with nothing between, the first pixel in the lowest bits, one or four bits a pixel.

Runs: halves of bytes, the lower half first. A number is a half, and as long as it is 15 the next half is added to it.
Each row begins with a number: 0, where it is as the row before, else 1 and how many halves follow. Of a one-bit row
these are numbers: how many pixels of ground, then of ink, and so on. Of a row with levels each is a level, and after
the levels 0 and 15 a number, how many more pixels have it. Ground at the end of a row is left out.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import Literal

from panelproof.glyphs.glyph import Glyph

Encoding = Literal["rows", "runs"]
INK = 15


def packed(glyph: Glyph, encoding: Encoding = "rows") -> bytes:
    """Return a glyph's pixels in an encoding; four bits a pixel, or levels, where the glyph has levels."""
    return _rows(glyph) if encoding == "rows" else _halves(_runs(glyph))


def pixels(blob: bytes, width: int, height: int, depth: int, encoding: Encoding) -> bytes:
    """Return the level of each pixel of a bitmap, row by row: 0 or 1, or 0 to 15 where `depth` is 4.

    Raises IndexError where the bitmap is cut short, and ValueError where a row is too long.
    """
    if encoding == "rows":
        if len(blob) * 8 < width * height * depth:
            raise IndexError("the bitmap is cut short")
        bits, mask = int.from_bytes(blob, "little"), (1 << depth) - 1
        return bytes(bits >> place * depth & mask for place in range(width * height))
    return b"".join(
        _rows_of_runs([half for byte in blob for half in (byte & 15, byte >> 4)], width, height, depth)
    )


def _rows(glyph: Glyph) -> bytes:
    if glyph.levels:
        return _halves(glyph.levels)
    bits = 0
    for number, row in enumerate(glyph.rows):
        bits |= row << number * glyph.width
    return bits.to_bytes((glyph.width * glyph.height + 7) // 8, "little")


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
