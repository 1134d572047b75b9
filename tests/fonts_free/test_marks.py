"""Accented letters: the mark is large enough to be seen and stands clear of its letter."""

from __future__ import annotations

import unicodedata
from itertools import pairwise

import pytest
from fonts_free.drawing.faces import Face
from tests.fonts_free.reading import TEXT_FACES, TEXT_NAMES, by_freetype

every_text_face = pytest.mark.parametrize("face", TEXT_FACES, ids=TEXT_NAMES)
SMALL = "àáâãèéêìíîñòóôõùúûý"
CAPITALS = "ÀÁÂÃÈÉÊÌÍÎÑÒÓÔÕÙÚÛÝ"
DOTTED = "äëïöüÿÄËÏÖÜ"


def parts(face: Face, char: str) -> tuple[int, int, int]:
    """Rows of the mark, blank rows under it, rows of the letter; a mark that touches has no blank row."""
    rows = sorted({y for _, y in by_freetype(face)[char].ink if y >= 0}, reverse=True)
    for over, under in pairwise(rows):
        if over - under > 1:
            return rows[0] - over + 1, over - under - 1, under + 1
    return 0, 0, rows[0] + 1


@every_text_face
def test_marks_stand_clear(face: Face) -> None:
    """From 12 on; two sizes under that have no row to spare."""
    if face.size >= 12:
        assert [char for char in SMALL + CAPITALS + DOTTED if parts(face, char)[1] < 1] == []


@every_text_face
def test_marks_are_large_enough(face: Face) -> None:
    """Two rows at least, a quarter of the letter over lower case from 32 on, a seventh over capitals."""
    if face.size < 12:
        return
    small = face.x / 4 if face.size >= 32 else 2
    assert {char: parts(face, char)[0] for char in SMALL if parts(face, char)[0] < small} == {}
    capital = max(2, face.cap / 7)
    assert {char: parts(face, char)[0] for char in CAPITALS if parts(face, char)[0] < capital} == {}


@every_text_face
def test_capitals_keep_their_height_under_a_mark(face: Face) -> None:
    """A row or two lower at most (a tenth) where there are rows to choose from, and all of them alike."""
    if face.size < 16:
        return
    heights = {parts(face, char)[2] for char in CAPITALS + "ÄËÏÖÜ"}
    assert len(heights) == 1 and min(heights) >= 0.9 * face.cap


@every_text_face
def test_a_mark_leaves_the_letter_alone(face: Face) -> None:
    """Under the mark stands the letter itself, pixel for pixel (dotless for i)."""
    for char in SMALL + "äëöüÿ":
        letter = unicodedata.normalize("NFD", char)[0]
        base = by_freetype(face)["\u0131" if letter == "i" else letter].ink
        low = {(x, y) for x, y in by_freetype(face)[char].ink if y < face.x}
        shift = min(x for x, _ in low) - min(x for x, _ in base)
        assert low == {(x + shift, y) for x, y in base}, char
