"""Sets of pixels, held as one integer per rectangle."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

Area = tuple[int, int, int, int]


@dataclass(frozen=True, slots=True)
class Mask:
    """A set of pixels inside the rectangle (x, y, width, height).

    Bit `row * width + column` of `bits` is set where the pixel (x + column, y + row) is a member. Two masks may
    hold the same pixels in different rectangles; `==` compares the fields, `same_pixels` the pixels.
    """

    x: int
    y: int
    width: int
    height: int
    bits: int

    def __bool__(self) -> bool:
        return self.bits != 0

    def __contains__(self, pixel: tuple[int, int]) -> bool:
        column, row = pixel[0] - self.x, pixel[1] - self.y
        inside = 0 <= column < self.width and 0 <= row < self.height
        return inside and bool(self.bits >> (row * self.width + column) & 1)

    def count(self) -> int:
        """Return the number of pixels."""
        return self.bits.bit_count()

    def moved(self, dx: int, dy: int) -> Mask:
        """Return the mask moved by (dx, dy)."""
        return Mask(self.x + dx, self.y + dy, self.width, self.height, self.bits)

    def rows(self) -> list[int]:
        """Return each row as an integer, bit k for column k."""
        width, full = self.width, (1 << self.width) - 1
        return [self.bits >> (row * width) & full for row in range(self.height)]

    def framed(self, x: int, y: int, width: int, height: int) -> Mask:
        """Return the pixels that lie inside another rectangle, held in that rectangle."""
        if (x, y, width, height) == (self.x, self.y, self.width, self.height):
            return self
        first, end = max(y, self.y), min(y + height, self.y + self.height)
        if not self.bits or first >= end:
            return Mask(x, y, width, height, 0)
        own_full, full, shift = (1 << self.width) - 1, (1 << width) - 1, self.x - x
        band = self.bits >> (first - self.y) * self.width & (1 << (end - first) * self.width) - 1
        rows = []
        for _ in range(end - first):
            row = band & own_full
            band >>= self.width
            rows.append((row << shift if shift >= 0 else row >> -shift) & full)
        return Mask(x, y, width, height, _joined(rows, width) << (first - y) * width)

    def _frame_with(self, other: Mask) -> Area:
        x, y = min(self.x, other.x), min(self.y, other.y)
        right = max(self.x + self.width, other.x + other.width)
        bottom = max(self.y + self.height, other.y + other.height)
        return x, y, right - x, bottom - y

    def __or__(self, other: Mask) -> Mask:
        frame = self._frame_with(other)
        return Mask(*frame, self.framed(*frame).bits | other.framed(*frame).bits)

    def __and__(self, other: Mask) -> Mask:
        return Mask(self.x, self.y, self.width, self.height, self.bits & other.framed(*self.frame).bits)

    def __sub__(self, other: Mask) -> Mask:
        return Mask(self.x, self.y, self.width, self.height, self.bits & ~other.framed(*self.frame).bits)

    @property
    def frame(self) -> Area:
        """The rectangle that the mask is held in."""
        return self.x, self.y, self.width, self.height

    def bounds(self) -> Area:
        """Return the smallest rectangle that holds every pixel; (x, y, 0, 0) where there is none."""
        if not self.bits:
            return self.x, self.y, 0, 0
        top = ((self.bits & -self.bits).bit_length() - 1) // self.width
        bottom = (self.bits.bit_length() - 1) // self.width
        merged = 0
        for row in self.rows()[top : bottom + 1]:
            merged |= row
        left = (merged & -merged).bit_length() - 1
        return self.x + left, self.y + top, merged.bit_length() - left, bottom - top + 1

    def pixels(self) -> Iterable[tuple[int, int]]:
        """Yield every pixel as (x, y), row by row."""
        bits = self.bits
        while bits:
            lowest = bits & -bits
            row, column = divmod(lowest.bit_length() - 1, self.width)
            yield self.x + column, self.y + row
            bits ^= lowest

    def same_pixels(self, other: Mask) -> bool:
        """Tell whether both hold the same pixels."""
        return not self - other and not other - self


def _joined(rows: list[int], width: int) -> int:
    """Pack rows, the first lowest, by halves: linear in bits times the logarithm of the rows."""
    if not rows:
        return 0
    while len(rows) > 1:
        if len(rows) % 2:
            rows.append(0)
        rows = [rows[k] | rows[k + 1] << width for k in range(0, len(rows), 2)]
        width *= 2
    return rows[0]


def rectangle(x: int, y: int, width: int, height: int) -> Mask:
    """Return every pixel of a rectangle; an empty mask where width or height is 0 or less."""
    width, height = max(width, 0), max(height, 0)
    return Mask(x, y, width, height, (1 << width * height) - 1)


def from_rows(x: int, y: int, width: int, rows: Iterable[int]) -> Mask:
    """Return the mask whose row r has the columns set in `rows[r]` (bit k for column k)."""
    listed = list(rows)
    return Mask(x, y, width, len(listed), _joined(listed, width))


def union(masks: Iterable[Mask], frame: Area) -> Mask:
    """Return what any of `masks` holds inside `frame`."""
    bits = 0
    for mask in masks:
        bits |= mask.framed(*frame).bits
    return Mask(*frame, bits)


NOTHING = Mask(0, 0, 0, 0, 0)
