"""Even colour: glyphs side by side do not touch, no stroke swells to a blot, counters and gaps stay open."""

from __future__ import annotations

import math
import string
from dataclasses import dataclass
from itertools import pairwise, product

import pytest
from fonts_free.drawing.faces import Face
from tests.fonts_free.reading import TEXT_FACES, TEXT_NAMES, Ink, by_freetype, thickest_run

every_text_face = pytest.mark.parametrize("face", TEXT_FACES, ids=TEXT_NAMES)
SOLID = "¶•←↑→↓…\ufffd"
"""Shapes that are filled by nature."""


@dataclass(frozen=True)
class Sides:
    """The blank columns beside a glyph, row by row: left of its ink; right of the ink of a row and its neighbours."""

    left: dict[int, int]
    right: dict[int, int]


def sides(ink: Ink, advance: int) -> Sides:
    left: dict[int, int] = {}
    right: dict[int, int] = {}
    for x, y in ink:
        left[y] = min(left.get(y, x), x)
        for row in (y - 1, y, y + 1):
            right[row] = min(right.get(row, advance - 1 - x), advance - 1 - x)
    return Sides(left, right)


def gap(first: Sides, second: Sides) -> int:
    """The fewest blank columns between two glyphs in a row or between adjoining rows; 99 where none meet."""
    return min((first.right[y] + x for y, x in second.left.items() if y in first.right), default=99)


def square(ink: Ink) -> int:
    """The side of the largest square of ink alone."""
    largest: dict[tuple[int, int], int] = {}
    for x, y in sorted(ink):
        largest[x, y] = 1 + min(largest.get(near, 0) for near in ((x - 1, y), (x, y - 1), (x - 1, y - 1)))
    return max(largest.values(), default=0)


def grounds(ink: Ink, at: float = 0.5) -> list[int]:
    """The heights of the grounds between strokes at that share of the width; in two columns where it falls between."""
    xs = [x for x, _ in ink]
    place = min(xs) + (max(xs) - min(xs)) * at
    found = []
    for column in {math.floor(place), math.ceil(place)}:
        ys = sorted(y for x, y in ink if x == column)
        found += [high - low - 1 for low, high in pairwise(ys) if high - low > 1]
    return found


def test_measures_of_a_drawn_letter() -> None:
    rows = ("####", "#..#", "####", "...#", "####")
    ink = frozenset((x, 4 - y) for y, row in enumerate(rows) for x, mark in enumerate(row) if mark == "#")
    assert grounds(ink) == [1, 1, 1, 1] and square(ink) == 1
    assert square(ink | {(1, 3)}) == 2
    assert gap(sides(ink, 5), sides(ink, 5)) == 1 and gap(sides(ink, 4), sides(ink, 4)) == 0
    low, high = frozenset({(0, 0)}), frozenset({(0, 1)})
    assert gap(sides(low, 1), sides(high, 1)) == 0, "corners that meet touch too"
    assert gap(sides(low, 1), sides(frozenset({(0, 2)}), 1)) == 99


@every_text_face
@pytest.mark.parametrize("kind", ["words", "capitals", "numbers"])
def test_neighbours_do_not_touch(face: Face, kind: str) -> None:
    """No two letters of a word, and no two of a reading, meet: not even at their corners."""
    small, capitals = string.ascii_lowercase + "äöüßéñ", string.ascii_uppercase + "ÄÖÜ"
    pairs = {
        "words": product(small + capitals, small),
        "capitals": product(capitals, capitals + string.digits),
        "numbers": product(string.digits + "+-−.,:%°", string.digits + ".,:%°"),
    }[kind]
    glyphs = {char: sides(read.ink, read.advance) for char, read in by_freetype(face).items()}
    assert [one + other for one, other in pairs if gap(glyphs[one], glyphs[other]) < 1] == []


@every_text_face
def test_no_stroke_swells(face: Face) -> None:
    """Where strokes meet, the largest solid square is half as wide again as a stem and a pixel, no more."""
    stem = thickest_run(by_freetype(face)["i"].ink, 0)[0]
    squares = {char: square(read.ink) for char, read in by_freetype(face).items() if char not in SOLID}
    assert {char: side for char, side in squares.items() if side > 1.5 * stem + 1} == {}


@every_text_face
def test_strokes_one_over_the_other_stay_apart(face: Face) -> None:
    """In letters of three level strokes the ground between is half a level stroke at least."""
    glyphs = by_freetype(face)
    right = glyphs["E"].box[2] - 1
    level = next(y for y in range(face.cap) if (right, y) not in glyphs["E"].ink)
    least = {char: min(grounds(glyphs[char].ink)) for char in "aegsBES35689"}
    least["€"] = min(grounds(glyphs["€"].ink, 0.6))
    assert {char: ground for char, ground in least.items() if ground < level / 2} == {}


@every_text_face
def test_spaces_part_words(face: Face) -> None:
    """A word space and the sides of two letters are more than twice what stands between letters.

    ISO 3098, type B: 6/10 h between words against 2/10 h between characters.
    """
    glyphs = by_freetype(face)
    beside = sides(glyphs["n"].ink, glyphs["n"].advance)
    letters = gap(beside, beside)
    assert letters + glyphs[" "].advance > 2 * letters
    assert letters + glyphs[" "].advance >= 0.4 * face.cap
