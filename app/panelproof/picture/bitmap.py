"""Levels of ink of one text or icon state, wherever it will stand."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from panelproof.glyphs.glyph import Glyph
from panelproof.glyphs.run import placed
from panelproof.glyphs.type import Type
from panelproof.ink.mask import Area, Mask

FULL = 15
_ONE_BIT = bytes.maketrans(b"01", bytes((0, FULL)))
_INKED = bytes.maketrans(bytes(range(256)), b"0" + b"1" * 255)


@dataclass(frozen=True, slots=True)
class Bitmap:
    """Levels of ink, 0 to 15, in a rectangle whose top left corner is (`left`, `top`).

    For a text the origin is the pen's start on the baseline, and `advance` its width W in pixels; for an
    icon the origin is its top left corner, and `advance` its width. `rows[r]` holds `width` bytes.
    """

    left: int
    top: int
    width: int
    height: int
    advance: int
    rows: tuple[bytes, ...]

    def spread(self, x: int, y: int, area: Area) -> bytes:
        """Return the levels of every pixel of `area`, row by row, with the bitmap's origin at (x, y)."""
        area_x, area_y, width, height = area
        left, top = x + self.left - area_x, y + self.top - area_y
        first, end = max(left, 0), min(left + self.width, width)
        above = min(max(top, 0), height)
        inside = self.rows[max(-top, 0) : max(height - top, 0)] if first < end else ()
        lead, tail = bytes(first if first < end else 0), bytes(width - end if first < end else 0)
        band = b"".join([lead + row[first - left : end - left] + tail for row in inside])
        return b"".join((bytes(above * width), band, bytes(height * width - above * width - len(band))))

    def area(self, x: int, y: int) -> Area:
        """Return the bitmap's rectangle with its origin at (x, y)."""
        return x + self.left, y + self.top, self.width, self.height


def inked(levels: bytes) -> int:
    """Return the bits of `levels` above 0, as `Mask.bits` counts them."""
    return int(levels[::-1].translate(_INKED), 2) if levels else 0


def _rows_of_bits(rows: tuple[int, ...] | list[int], width: int) -> tuple[bytes, ...]:
    """Return rows of level 0 or 15; bit k of a row is column k."""
    return tuple([f"{row:0{width}b}".encode().translate(_ONE_BIT)[::-1] for row in rows])


def _one_bit(
    glyphs: tuple[tuple[Glyph, int], ...], left: int, top: int, width: int, height: int
) -> tuple[bytes, ...]:
    rows = [0] * height
    for glyph, pen in glyphs:
        shift, first = pen + glyph.left - left, -glyph.top - top
        for number, row in enumerate(glyph.rows, first):
            rows[number] |= row << shift
    return _rows_of_bits(rows, width)


def _antialiased(
    glyphs: tuple[tuple[Glyph, int], ...], left: int, top: int, width: int, height: int
) -> tuple[bytes, ...]:
    rows = [bytearray(width) for _ in range(height)]
    for glyph, pen in glyphs:
        first = pen + glyph.left - left
        columns = slice(first, first + glyph.width)
        for number in range(glyph.height):
            row = rows[number - glyph.top - top]
            new = glyph.levels[number * glyph.width : (number + 1) * glyph.width]
            # Where glyphs overlap, the greatest level counts.
            row[columns] = map(max, row[columns], new) if any(row[columns]) else new
    return tuple(map(bytes, rows))


@lru_cache(maxsize=8192)
def of_text(type_: Type, text: str) -> Bitmap:
    """Return the bitmap of a text; characters that the type lacks take no part."""
    glyphs, advance = placed(type_, text)
    seen = tuple((glyph, pen) for glyph, pen in glyphs if glyph.width and glyph.height)
    if not seen:
        return Bitmap(0, 0, 0, 0, advance, ())
    left = min(pen + glyph.left for glyph, pen in seen)
    right = max(pen + glyph.left + glyph.width for glyph, pen in seen)
    top = min(-glyph.top for glyph, _ in seen)
    bottom = max(glyph.height - glyph.top for glyph, _ in seen)
    join = _antialiased if type_.antialiased else _one_bit
    rows = join(seen, left, top, right - left, bottom - top)
    return Bitmap(left, top, right - left, bottom - top, advance, rows)


@lru_cache(maxsize=1024)
def of_mask(mask: Mask) -> Bitmap:
    """Return the bitmap of an icon state's mask, every inked pixel at level 15."""
    rows = _rows_of_bits(mask.rows(), mask.width) if mask.width else (b"",) * mask.height
    return Bitmap(mask.x, mask.y, mask.width, mask.height, mask.width, rows)
