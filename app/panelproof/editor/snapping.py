"""Snapping: the small shift that brings a moving rectangle into line with what stands around it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from panelproof.editor.places import Place
from panelproof.ink.mask import Area

Axis = Literal["x", "y"]
Kind = Literal["edge", "middle", "baseline"]
Side = Literal["left", "right", "top", "bottom"]

# How near on the monitor, in its own logical pixels, a line must be to draw a part to it.
NEAR = 6
_RANK: dict[Kind, int] = {"baseline": 0, "edge": 1, "middle": 2}


@dataclass(frozen=True, slots=True)
class Guide:
    """A line to be shown while a part moves, in panel pixels.

    `axis` "x": an upright line at x = `at`, from y = `first` to `end`; "y": a level one. `at` counts from the
    panel's edge, half pixels included: 3 is the line between pixel 2 and 3.
    """

    axis: Axis
    at: float
    first: int
    end: int
    kind: Kind


@dataclass(frozen=True, slots=True)
class Snap:
    """The shift in whole pixels, and the lines that hold after it."""

    dx: int
    dy: int
    guides: tuple[Guide, ...]


@dataclass(frozen=True, slots=True)
class _Line:
    """A line that can be snapped to: its place doubled, its kind, and its span along the other axis."""

    twice: int
    kind: Kind
    first: int
    end: int


def snap(moving: Place, others: Sequence[Place], panel: tuple[int, int], reach: int) -> Snap:
    """Return the least shift, at most `reach` pixels each way, that brings `moving` into line.

    Edges go to edges, middles to middles and baselines to baselines, of other parts and of the panel of
    (width, height). Where nothing is near the shift is 0; lines that hold anyway are shown all the same.
    """
    around = [*others, Place((0, 0, *panel))]
    shifts = {}
    for axis in ("x", "y"):
        own = list(_lines(moving, axis))
        found = [
            (abs(shift), _RANK[line.kind], shift)
            for other in around
            for line in _lines(other, axis)
            for mine in own
            if mine.kind == line.kind and abs(shift := (line.twice - mine.twice) // 2) <= reach
        ]
        shifts[axis] = min(found)[2] if found else 0
    moved = _moved(moving, shifts["x"], shifts["y"])
    guides = _guides(around, lambda axis: _lines(moved, axis))
    return Snap(shifts["x"], shifts["y"], guides)


def snap_sides(
    area: Area, sides: Iterable[Side], others: Sequence[Place], panel: tuple[int, int], reach: int
) -> tuple[Area, tuple[Guide, ...]]:
    """Return a rectangle whose `sides` have been drawn to edges near them, and the lines that hold.

    The sides that are not named stay; a side never passes the one opposite.
    """
    around = [*others, Place((0, 0, *panel))]
    left, top, right, bottom = area[0], area[1], area[0] + area[2], area[1] + area[3]
    edges = {"left": left, "right": right, "top": top, "bottom": bottom}
    named = tuple(sides)
    for side in named:
        axis: Axis = "x" if side in ("left", "right") else "y"
        found = [
            (abs(line.twice // 2 - edges[side]), line.twice // 2)
            for other in around
            for line in _lines(other, axis)
            if line.kind == "edge" and abs(line.twice // 2 - edges[side]) <= reach
        ]
        if found and _leaves_room(edges, side, min(found)[1]):
            edges[side] = min(found)[1]
    result = edges["left"], edges["top"], edges["right"] - edges["left"], edges["bottom"] - edges["top"]

    def moving(axis: Axis) -> Iterator[_Line]:
        first, span = (result[1], result[3]) if axis == "x" else (result[0], result[2])
        for side in named:
            if (side in ("left", "right")) == (axis == "x"):
                yield _Line(2 * edges[side], "edge", first, first + span)

    return result, _guides(around, moving)


def _leaves_room(edges: dict[str, int], side: Side, at: int) -> bool:
    opposite = {"left": "right", "right": "left", "top": "bottom", "bottom": "top"}[side]
    return at < edges[opposite] if side in ("left", "top") else at > edges[opposite]


def _lines(place: Place, axis: Axis) -> Iterator[_Line]:
    x, y, width, height = place.area
    at, length, first, end = (x, width, y, y + height) if axis == "x" else (y, height, x, x + width)
    yield _Line(2 * at, "edge", first, end)
    yield _Line(2 * (at + length), "edge", first, end)
    yield _Line(2 * at + length, "middle", first, end)
    if axis == "y" and place.baseline is not None:
        yield _Line(2 * place.baseline, "baseline", first, end)


def _moved(place: Place, dx: int, dy: int) -> Place:
    x, y, width, height = place.area
    baseline = None if place.baseline is None else place.baseline + dy
    return Place((x + dx, y + dy, width, height), baseline)


def _guides(around: Sequence[Place], moving: Callable[[Axis], Iterator[_Line]]) -> tuple[Guide, ...]:
    """Return a line for each place where a moving line lies on one of the others, one for each place."""
    spans: dict[tuple[Axis, int, Kind], tuple[int, int]] = {}
    axes: tuple[Axis, Axis] = ("x", "y")
    for axis in axes:
        own = {(line.twice, line.kind): line for line in moving(axis)}
        for other in around:
            for line in _lines(other, axis):
                mine = own.get((line.twice, line.kind))
                if mine is None and line.kind == "middle":
                    # Odd in even cannot be halved: half a pixel before the middle is as near as it gets.
                    mine = own.get((line.twice - 1, line.kind))
                if mine is None:
                    continue
                first, end = spans.get((axis, line.twice, line.kind), (mine.first, mine.end))
                spans[axis, line.twice, line.kind] = min(first, line.first), max(end, line.end)
    return tuple(Guide(axis, at / 2, *span, kind) for (axis, at, kind), span in spans.items())
