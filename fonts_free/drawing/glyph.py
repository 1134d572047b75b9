"""A drawn glyph: rows of ink, where they lie, and how far the pen moves."""

from __future__ import annotations

from dataclasses import dataclass

INK, GROUND = "#", "."


@dataclass(frozen=True)
class Glyph:
    """Rows of `#` and `.`, top first; `bottom` is how high the last row's lower edge is over the baseline."""

    rows: tuple[str, ...]
    bottom: int
    left: int
    advance: int

    @property
    def width(self) -> int:
        """Columns of the grid."""
        return len(self.rows[0]) if self.rows else 0

    @property
    def top(self) -> int:
        """Height of the upper edge of the first row over the baseline."""
        return self.bottom + len(self.rows)

    def ink(self) -> frozenset[tuple[int, int]]:
        """Every inked pixel as (x from the pen, y over the baseline)."""
        return frozenset(
            (self.left + x, self.top - 1 - i)
            for i, row in enumerate(self.rows)
            for x, mark in enumerate(row)
            if mark == INK
        )

    def trimmed(self) -> Glyph:
        """The same glyph with its grid cut down to the ink."""
        return from_ink(self.ink(), self.advance)

    def with_left(self, left: int, advance: int) -> Glyph:
        """The same ink between other side bearings."""
        return Glyph(self.rows, self.bottom, left, advance)


def from_ink(ink: frozenset[tuple[int, int]] | set[tuple[int, int]], advance: int) -> Glyph:
    """The glyph whose inked pixels are these, in the smallest grid."""
    if not ink:
        return Glyph((), 0, 0, advance)
    xs, ys = [x for x, _ in ink], [y for _, y in ink]
    left, right, low, high = min(xs), max(xs), min(ys), max(ys)
    rows = tuple(
        "".join(INK if (x, y) in ink else GROUND for x in range(left, right + 1))
        for y in range(high, low - 1, -1)
    )
    return Glyph(rows, low, left, advance)


def smeared(glyph: Glyph) -> Glyph:
    """A bolder glyph: every run of ink one pixel longer to the right, and the pen one further."""
    ink = glyph.ink()
    return from_ink(ink | {(x + 1, y) for x, y in ink}, glyph.advance + 1)
