"""A screen with its dimensions in pixels: where every part begins and ends, as lines and numbers around the picture."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import dist

from panelproof.paper.facts import Area, Mark

Point = tuple[float, float]

# In heights of a letter: the margins; how far leaders reach and where the whole size stands; how close numbers stand.
TOP, LEFT, RIGHT, BOTTOM = 6.4, 7.0, 5.0, 4.0
END, WHOLE = 2.0, 4.6
GAP_ACROSS, GAP_DOWN = 2.0, 1.15
DISC = 0.68
INK, FAINT, MARK = "#1c2026", "#8a9099", "#ff6a13"


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line, `thick` units thick."""

    x1: float
    y1: float
    x2: float
    y2: float
    colour: str
    thick: float


@dataclass(frozen=True, slots=True)
class Word:
    """A short text, its baseline at `y`; `align` says how it lies at `x`, `turned` that it runs upwards."""

    x: float
    y: float
    text: str
    size: float
    align: str = "left"
    colour: str = INK
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Frame:
    """A rectangle's outline; `dash` is the length of dashes and gaps, 0 for none."""

    x: float
    y: float
    width: float
    height: float
    colour: str
    dash: float = 0.0


@dataclass(frozen=True, slots=True)
class Disc:
    """A filled circle with a number in it."""

    x: float
    y: float
    radius: float
    text: str
    colour: str = "#b3420a"


Shape = Line | Word | Frame | Disc


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing, y downwards; the screen's picture lies under all marks, at (x, y), `scale` units a panel pixel."""

    width: float
    height: float
    x: float
    y: float
    scale: float
    marks: tuple[Shape, ...]


def dimensions(marks: Sequence[Mark], size: tuple[int, int], scale: float, letter: float) -> Drawing:
    """Return the drawing of a screen of `size` panel pixels, its numbers `letter` units high.

    Above stand the anchors and left edges, to the left baselines and upper edges, below and to the right the first
    column and row after each box; the whole size stands outermost. Parts carry the numbers of the table.
    """
    return _Maker(marks, size, scale, letter).drawing()


class _Maker:
    """One drawing: where the picture lies, and what lies over it."""

    def __init__(self, marks: Sequence[Mark], size: tuple[int, int], scale: float, letter: float) -> None:
        self.marks, self.size, self.scale, self.letter = marks, size, scale, letter
        self.left, self.top = LEFT * letter, TOP * letter
        self.wide, self.high = size[0] * scale, size[1] * scale

    def drawing(self) -> Drawing:
        """Return all of it."""
        right, below = self.left + self.wide, self.top + self.high
        boxes = [mark.area for mark in self.marks if mark.area[2] and mark.area[3]]
        made: list[Shape] = [self._frame(area) for area in boxes]
        for mark in self.marks:
            made += self._anchor(mark)
        made += self._across({mark.x for mark in self.marks}, self.top, -1)
        made += self._down({mark.y for mark in self.marks}, self.left, -1)
        made += self._across({x + width for x, _, width, _ in boxes}, below, 1)
        made += self._down({y + height for _, y, _, height in boxes}, right, 1)
        made += self._discs()
        made += self._whole()
        page = right + RIGHT * self.letter, below + BOTTOM * self.letter
        return Drawing(*page, self.left, self.top, self.scale, tuple(made))

    def _frame(self, area: Area) -> Frame:
        x, y, width, height = (edge * self.scale for edge in area)
        return Frame(self.left + x, self.top + y, width, height, MARK, self.letter / 3)

    def _anchor(self, mark: Mark) -> list[Shape]:
        """Return a small cross on a text's anchor; the baseline runs under the pixels of the row above it."""
        if not mark.text:
            return []
        x, y = self.left + mark.x * self.scale, self.top + mark.y * self.scale
        arm, width = self.letter * 0.42, self.letter / 9
        return [Line(x - arm, y, x + arm, y, MARK, width), Line(x, y - arm, x, y + arm, MARK, width)]

    def _across(self, values: Iterable[int], edge: float, way: int) -> list[Shape]:
        """Return numbers above (`way` -1) or below (1) an edge, each with a leader to its column."""
        known = sorted({value for value in values if 0 <= value <= self.size[0]})
        wanted = [self.left + value * self.scale for value in known]
        places = spread(
            wanted, GAP_ACROSS * self.letter, self.left - self.letter, self.left + self.wide + self.letter
        )
        made: list[Shape] = []
        for value, x, place in zip(known, wanted, places, strict=True):
            far = edge + way * END * self.letter
            made += self._leader((x, edge), (place, far), way, turned=False)
            y = far - 0.25 * self.letter if way < 0 else far + self.letter
            made.append(Word(place, y, str(value), self.letter, align="centre"))
        return made

    def _down(self, values: Iterable[int], edge: float, way: int) -> list[Shape]:
        """Return numbers to the left (`way` -1) or right (1) of an edge, each with a leader to its row."""
        known = sorted({value for value in values if 0 <= value <= self.size[1]})
        wanted = [self.top + value * self.scale for value in known]
        half = self.letter / 2
        places = spread(wanted, GAP_DOWN * self.letter, self.top - half, self.top + self.high + half)
        made: list[Shape] = []
        for value, y, place in zip(known, wanted, places, strict=True):
            far = edge + way * END * self.letter
            made += self._leader((y, edge), (place, far), way, turned=True)
            x = far + way * 0.3 * self.letter
            made.append(
                Word(x, place + 0.36 * self.letter, str(value), self.letter, "right" if way < 0 else "left")
            )
        return made

    def _leader(self, begin: Point, end: Point, way: int, *, turned: bool) -> list[Line]:
        """Return a line from an edge to a number, with a bend where the number had to move aside."""
        near, far = begin[1] + way * 0.4 * self.letter, end[1] - way * 0.4 * self.letter
        bends = (begin, (begin[0], near), (end[0], far), end)
        straight = (begin, end) if abs(begin[0] - end[0]) < 0.01 else bends
        lines = []
        for one, other in pairwise(straight):
            first, second = (one[::-1], other[::-1]) if turned else (one, other)
            lines.append(Line(*first, *second, FAINT, self.letter / 16))
        return lines

    def _discs(self) -> list[Disc]:
        """Return the parts' numbers, at the upper right corner of each, or at another place of it that is free."""
        radius = DISC * self.letter
        taken: list[Point] = []
        found = []
        for mark in self.marks:
            x, y, wide, high = (edge * self.scale for edge in mark.area)
            places = [(x + wide, y), (x, y), (x + wide, y + high), (x, y + high), (x + wide / 2, y)]
            places += [(x + wide - step * 2 * radius, y) for step in (1, 2, 3, 4)]
            inside = [
                (min(max(left, radius), self.wide - radius), min(max(upper, radius), self.high - radius))
                for left, upper in places
            ]
            free = [one for one in inside if all(dist(one, other) > 2 * radius for other in taken)]
            taken.append((free or inside)[0])
            found.append(Disc(self.left + taken[-1][0], self.top + taken[-1][1], radius, str(mark.number)))
        return found

    def _whole(self) -> list[Shape]:
        """Return the whole size, as lines with arrows above and to the left of all."""
        left, top, right, below = self.left, self.top, self.left + self.wide, self.top + self.high
        up, aside, beyond = top - WHOLE * self.letter, left - WHOLE * self.letter, 0.4 * self.letter
        thin = self.letter / 22
        return [
            *self._arrowed((left, up), (right, up)),
            *self._arrowed((aside, top), (aside, below)),
            Line(left, up - beyond, left, top, FAINT, thin),
            Line(right, up - beyond, right, top, FAINT, thin),
            Line(aside - beyond, top, left, top, FAINT, thin),
            Line(aside - beyond, below, left, below, FAINT, thin),
            Word((left + right) / 2, up - beyond, f"{self.size[0]} px", self.letter, "centre"),
            Word(aside - beyond, (top + below) / 2, f"{self.size[1]} px", self.letter, "centre", turned=True),
        ]

    def _arrowed(self, one: Point, other: Point) -> list[Line]:
        across, width = one[1] == other[1], self.letter / 16
        long, wide = 0.6 * self.letter, 0.2 * self.letter
        lines = [Line(*one, *other, INK, width)]
        for (x, y), way in ((one, 1), (other, -1)):
            for side in (-1, 1):
                tip = (x + way * long, y + side * wide) if across else (x + side * wide, y + way * long)
                lines.append(Line(x, y, *tip, INK, width))
        return lines


def spread(wanted: Sequence[float], gap: float, least: float, most: float) -> list[float]:
    """Return places at least `gap` apart, as near as can be to those wanted (ascending), from `least` to `most`.

    Where there is not room for all, the gap is smaller.
    """
    if len(wanted) > 1:
        gap = min(gap, (most - least) / (len(wanted) - 1))
    # Places that would crowd share one group, moved together; held as (sum of what each wants, count).
    groups: list[tuple[float, int]] = []
    for number, place in enumerate(wanted):
        total, count = place - number * gap, 1
        while groups and groups[-1][0] / groups[-1][1] >= total / count:
            before = groups.pop()
            total, count = total + before[0], count + before[1]
        groups.append((total, count))
    room = (len(wanted) - 1) * gap
    found: list[float] = []
    for total, count in groups:
        first = min(max(total / count, least), most - room)
        found += [first + (len(found) + number) * gap for number in range(count)]
    return found
