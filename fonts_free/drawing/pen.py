"""Shapes on the pixel grid: bars, rings, slants and curves, decided pixel by pixel at the pixel's centre.

Everything is exact or symmetric by rule: a shape and its mirror image ink mirrored pixels. No library sine,
power or logarithm is used, so the pixels are the same on every machine.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

Pixel = tuple[int, int]
Ink = set[Pixel]
Point = tuple[Fraction, Fraction]
HALF = Fraction(1, 2)
CORNERS = ("nw", "ne", "sw", "se")


@dataclass(frozen=True)
class Box:
    """A rectangle with some of its corners rounded by a quarter of a superellipse."""

    left: Fraction
    low: Fraction
    right: Fraction
    high: Fraction
    across: Fraction = Fraction(0)
    up: Fraction = Fraction(0)
    corners: tuple[str, ...] = ()

    def inset(self, sides: Fraction, ends: Fraction) -> Box:
        """The box inside a stroke of this thickness."""
        return Box(
            self.left + sides,
            self.low + ends,
            self.right - sides,
            self.high - ends,
            max(self.across - sides, Fraction(0)),
            max(self.up - ends, Fraction(0)),
            self.corners,
        )


def _power(base: float, quarters: int) -> float:
    """The base to a power counted in quarters, by products and square roots alone (both exactly rounded)."""
    root = math.sqrt(math.sqrt(base))
    result = 1.0
    for _ in range(quarters):
        result *= root
    return result


def _columns(low: Fraction, high: Fraction) -> range:
    """Pixels whose centre lies between the two."""
    return range(math.floor(low + HALF), math.ceil(high - HALF))


def pixels(left: Fraction, low: Fraction, right: Fraction, high: Fraction) -> Iterator[Pixel]:
    """Pixels whose centre lies in the rectangle."""
    for y in _columns(low, high):
        for x in _columns(left, right):
            yield x, y


def _bends(low: Fraction, high: Fraction, radius: Fraction, quarters: int) -> list[tuple[int, bool, float]]:
    """For each pixel along a side: whether it is in the far half, and its share in the corner's equation."""
    bends = []
    for place in _columns(low, high):
        centre = place + HALF
        far = centre > (low + high) / 2
        into = radius - (high - centre if far else centre - low)
        bends.append((place, far, _power(float(into / radius), quarters) if into > 0 else 0.0))
    return bends


def filled(box: Box, quarters: int) -> Ink:
    """The inside of a box."""
    across = _bends(box.left, box.right, box.across, quarters)
    up = _bends(box.low, box.high, box.up, quarters)
    return {
        (x, y)
        for y, north, rise in up
        for x, east, run in across
        if not (rise and run and rise + run > 1.0)
        or ("n" if north else "s") + ("e" if east else "w") not in box.corners
    }


def ring(box: Box, sides: Fraction, ends: Fraction, quarters: int) -> Ink:
    """The stroke along the inside of a box's edge."""
    inner = box.inset(sides, ends)
    return filled(box, quarters) - filled(inner, quarters)


def slant_width(run: Fraction, rise: Fraction, sides: Fraction, ends: Fraction) -> int:
    """Pixels in each row of a slanted stroke, so that it looks as thick as the upright ones."""
    square = run * run + rise * rise
    thick = (sides * rise * rise + ends * run * run) / square
    return max(1, math.floor(float(thick) * math.sqrt(float(square)) / abs(float(rise)) + 0.5))


def slant(start: Point, end: Point, width: int) -> Ink:
    """A straight stroke, given by its left edge at foot and head; every row equally wide.

    A steep stroke between whole columns stands about equally long in each of them. Where the edge falls on
    the middle of a pixel it goes towards the stroke's own middle, so that the stroke turned half round, or
    seen in a mirror, is the stroke from its other ends.
    """
    (x0, y0), (x1, y1) = start, end
    low, high = math.floor(y0 + HALF), math.ceil(y1 - HALF)
    run = abs(x1 - x0)
    steep = run.denominator == 1 and run + 1 <= high - low
    stretch = (run + 1) / run if steep and run else Fraction(1)
    ink: Ink = set()
    for y in range(low, high):
        along = (y + HALF - y0) / (y1 - y0) - HALF
        left = (x0 + x1) / 2 + (x1 - x0) * stretch * along
        rightward = (x1 >= x0) == (along <= 0)
        first = math.floor(left + HALF) if rightward else math.ceil(left - HALF)
        ink |= {(x, y) for x in range(first, first + width)}
    return ink


def _flat(curve: tuple[Point, Point, Point, Point], steps: int = 48) -> Iterator[tuple[float, float]]:
    for step in range(steps + 1):
        t = Fraction(step, steps)
        parts = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
        x = sum(part * point[0] for part, point in zip(parts, curve, strict=True))
        y = sum(part * point[1] for part, point in zip(parts, curve, strict=True))
        yield float(x), float(y)


def curve(points: list[Point], sides: Fraction, ends: Fraction) -> Ink:
    """What an elliptic pen (as wide as `sides`, as high as `ends`) inks along a chain of cubic curves."""
    paths = [tuple(points[i : i + 4]) for i in range(0, len(points) - 1, 3)]
    reach = float(sides) / 2
    squeeze = float(sides) / float(ends)
    ink: Ink = set()
    for path in paths:
        if len(path) != 4:
            raise ValueError("a curve takes 4 points, and 3 more for each further piece")
        for (ax, ay), (bx, by) in pairwise(_flat((path[0], path[1], path[2], path[3]))):
            ink |= _near_piece((ax, ay * squeeze), (bx, by * squeeze), reach, squeeze)
    return ink


def _near_piece(start: tuple[float, float], end: tuple[float, float], reach: float, squeeze: float) -> Ink:
    (ax, ay), (bx, by) = start, end
    ink: Ink = set()
    length = (bx - ax) ** 2 + (by - ay) ** 2
    low, high = math.floor((min(ay, by) - reach) / squeeze), math.ceil((max(ay, by) + reach) / squeeze)
    for row in range(low, high + 1):
        for column in range(math.floor(min(ax, bx) - reach), math.ceil(max(ax, bx) + reach) + 1):
            x, y = column + 0.5, (row + 0.5) * squeeze
            ahead = (x - ax) * (bx - ax) + (y - ay) * (by - ay)
            along = max(0.0, min(1.0, ahead / length)) if length else 0.0
            dx, dy = x - ax - along * (bx - ax), y - ay - along * (by - ay)
            if dx * dx + dy * dy <= reach * reach + 1e-9:
                ink.add((column, row))
    return ink


def mirrored(ink: Iterable[Pixel], width: Fraction) -> Ink:
    """The ink seen in a mirror that stands at half the width."""
    return {(math.floor(width) - 1 - x, y) for x, y in ink}


def turned(ink: Iterable[Pixel], width: Fraction, height: Fraction) -> Ink:
    """The ink turned half round in a box of this width and height."""
    return {(math.floor(width) - 1 - x, math.floor(height) - 1 - y) for x, y in ink}
