"""What stands on a line: its room from its ink, asked of the engine, and the parts it becomes."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from panelproof.layout.parts import Part


class NoRoom(Exception):
    """What was tried does not go on this panel."""


@dataclass(frozen=True, slots=True)
class Piece:
    """Something `width` pixels wide that reaches `above` and `below` the baseline.

    `make` gives its parts for a left edge and a baseline.
    """

    width: int
    above: int
    below: int
    make: Callable[[int, int], tuple[Part, ...]]


def joined(*pieces: Piece, gap: int) -> Piece:
    """Return pieces beside each other on one baseline, `gap` pixels apart."""

    def make(left: int, baseline: int) -> tuple[Part, ...]:
        parts: list[Part] = []
        for piece in pieces:
            parts += piece.make(left, baseline)
            left += piece.width + gap
        return tuple(parts)

    return Piece(
        sum(piece.width for piece in pieces) + gap * (len(pieces) - 1),
        max(piece.above for piece in pieces),
        max(piece.below for piece in pieces),
        make,
    )


def stacked(upper: Piece, lower: Piece, gap: int) -> Piece:
    """Return one piece above another, in the middle, on the lower one's baseline.

    `gap` is what is free between the lower one and the upper one's baseline.
    """
    width = max(upper.width, lower.width)
    both = cell(centre(upper, width), centre(lower, width), width, gap)
    return Piece(width, both.above, both.below, both.make)


def cell(label: Piece, value: Piece, width: int, gap: int) -> Piece:
    """Return a label at the upper left of a room and a value at its lower right; raises NoRoom."""
    upper, lower = spread(label, width), spread(value, width, at_right=True)

    def make(left: int, baseline: int) -> tuple[Part, ...]:
        over = baseline - lower.above - gap - upper.below
        return (*upper.make(left, over), *lower.make(left, baseline))

    return Piece(width, lower.above + gap + upper.below + upper.above, lower.below, make)


def centre(piece: Piece, width: int) -> Piece:
    """Return a piece in the middle of a room `width` pixels wide; raises NoRoom where it is wider."""
    if piece.width > width:
        raise NoRoom
    shift = (width - piece.width) // 2
    return Piece(width, piece.above, piece.below, lambda left, baseline: piece.make(left + shift, baseline))


def spread(piece: Piece, width: int, at_right: bool = False) -> Piece:
    """Return a piece in a room `width` pixels wide, at its left or right end; raises NoRoom where it is wider."""
    if piece.width > width:
        raise NoRoom
    shift = width - piece.width if at_right else 0
    return Piece(width, piece.above, piece.below, lambda left, baseline: piece.make(left + shift, baseline))


WIDEST = 2048
"""Wide enough for anything: to ask a piece that is as wide as its line how high it is."""


@dataclass(frozen=True, slots=True)
class Line:
    """Pieces on one baseline, at the left, in the middle and at the right of what can be seen.

    `full` gives a piece for the whole width (a line across). `lead` is the least room above, `stretch` the
    share of what is left over, `apart` the least room between pieces, `least_above` and `least_below` what it takes
    up around its baseline even where its ink does not.
    """

    left: Piece | None = None
    centre: Piece | None = None
    right: Piece | None = None
    full: Callable[[int], Piece] | None = None
    lead: int = 0
    stretch: int = 1
    apart: int = 4
    least_above: int = 0
    least_below: int = 0

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """What stands on it, from left to right."""
        full = self.full(WIDEST) if self.full else None
        return tuple(piece for piece in (self.left, self.centre, self.right, full) if piece)

    @property
    def edged(self) -> bool:
        """Whether something stands at its left or right end, to be in line with other lines."""
        return bool(self.left or self.right or self.full)

    @property
    def above(self) -> int:
        """Pixels that it reaches above its baseline."""
        return max((self.least_above, *(piece.above for piece in self.pieces)))

    @property
    def below(self) -> int:
        """Pixels that it reaches below its baseline."""
        return max((self.least_below, *(piece.below for piece in self.pieces)))

    def parts(self, left: int, right: int, baseline: int) -> tuple[Part, ...]:
        """Return its parts between two columns; raises NoRoom where they do not go there."""
        if self.full:
            return self.full(right - left).make(left, baseline)
        parts: list[Part] = []
        edge = left
        places = (
            (self.left, left),
            (self.centre, (left + right - (self.centre.width if self.centre else 0)) // 2),
            (self.right, right - (self.right.width if self.right else 0)),
        )
        for piece, x in places:
            if piece is None:
                continue
            if x < edge or x + piece.width > right:
                raise NoRoom
            parts += piece.make(x, baseline)
            edge = x + piece.width + self.apart
        return tuple(parts)


def even(lines: Sequence[Line]) -> list[Line]:
    """Return lines that all take up the same room above and below their baselines."""
    above, below = max(line.above for line in lines), max(line.below for line in lines)
    return [replace(line, least_above=above, least_below=below) for line in lines]
