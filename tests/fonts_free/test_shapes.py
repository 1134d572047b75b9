"""The letters as letters: steady digits, pairs told apart, published proportions, even strokes."""

from __future__ import annotations

import pytest
from fonts_free.drawing import coverage
from fonts_free.drawing.faces import FACES, Face
from fonts_free.drawing.glyph import from_ink
from tests.fonts_free.reading import (
    NAMES,
    TEXT_FACES,
    TEXT_NAMES,
    Ink,
    by_freetype,
    enclosed,
    height,
    least_distance,
    thickest_run,
    width,
)

every_face = pytest.mark.parametrize("face", FACES, ids=NAMES)
every_text_face = pytest.mark.parametrize("face", TEXT_FACES, ids=TEXT_NAMES)
TO_TELL_APART = "0O 1l 1I lI l| I| 1| 5S 8B 2Z 6G uv 0D 0Ø 0Q OQ O° 38 56 17 a° CG vy"
PAIRS = TO_TELL_APART.split()
NUMERALS = [face for face in FACES if face.kind == "numerals"]
LEAST = {8: 2, 10: 2, 12: 3, 16: 4, 20: 6, 24: 8, 32: 18, 48: 40}
"""The fewest pixels, by line height, in which two characters that must not be mistaken differ."""


@every_face
def test_numbers_do_not_jump(face: Face) -> None:
    """Digits, plus, both minus signs (a C format writes the hyphen) and figure space: one advance."""
    advances = {char: by_freetype(face)[char].advance for char in "0123456789+-\u2212\u2007"}
    assert set(advances.values()) == {face.figure}
    assert set(coverage.STEADY) == advances.keys()


@every_text_face
@pytest.mark.parametrize("pair", PAIRS)
def test_pairs_that_must_not_be_mistaken(face: Face, pair: str) -> None:
    one, other = (by_freetype(face)[char].ink for char in pair)
    assert least_distance(one, other) >= LEAST[face.size]


@pytest.mark.parametrize("face", NUMERALS, ids=[face.stem for face in NUMERALS])
@pytest.mark.parametrize("pair", ["38", "56", "17", "68", "08", "06", "09", "25", "27", "69", "-+", ".:"])
def test_big_digits_are_told_apart(face: Face, pair: str) -> None:
    one, other = (by_freetype(face)[char].ink for char in pair)
    assert least_distance(one, other) >= LEAST[48]


@every_text_face
@pytest.mark.parametrize("pair", [",.", ";:"])
def test_a_comma_is_no_point(face: Face, pair: str) -> None:
    """They differ by the comma's tail alone: half of what letters differ in is the least."""
    one, other = (by_freetype(face)[char].ink for char in pair)
    assert least_distance(one, other) >= LEAST[face.size] // 2


def test_the_distance_of_a_glyph_from_itself_is_nothing() -> None:
    ink = by_freetype(TEXT_FACES[0])["O"].ink
    assert least_distance(ink, frozenset((x + 1, y) for x, y in ink)) == 0


@every_text_face
def test_r_n_is_not_m(face: Face) -> None:
    glyphs = by_freetype(face)
    joined = glyphs["r"].ink | {(x + glyphs["r"].advance, y) for x, y in glyphs["n"].ink}
    assert least_distance(frozenset(joined), glyphs["m"].ink) >= LEAST[face.size]


@every_text_face
def test_c_l_is_not_d(face: Face) -> None:
    glyphs = by_freetype(face)
    joined = glyphs["c"].ink | {(x + glyphs["c"].advance, y) for x, y in glyphs["l"].ink}
    assert least_distance(frozenset(joined), glyphs["d"].ink) >= LEAST[face.size]


@every_text_face
def test_characters_meant_to_differ_do(face: Face) -> None:
    """No two characters share their pixels, but for those whose shape is one."""
    alike = [set(group) for group in (" \u00a0\u2007", "-\u00ad−–—", "µ\u03bc", "Ω\u2126")]
    seen: dict[Ink, str] = {}
    for char, glyph in by_freetype(face).items():
        before = seen.setdefault(glyph.ink, char)
        assert before == char or any({before, char} <= group for group in alike), (before, char)


@every_face
def test_least_matrix(face: Face) -> None:
    """ISO 9241-3: at least 5 x 7 for numerals and capitals, 7 x 9 for continuous reading (from 16 on)."""
    wide, high = (5, 7) if face.size < 16 else (7, 9)
    for char in "0234567890" if face.kind == "numerals" else "023456789HNOU":
        glyph = by_freetype(face)[char]
        assert width(glyph) >= wide and height(glyph) >= high, char


@every_face
def test_width_to_height(face: Face) -> None:
    """ISO 9241-3: 0.7-0.9 recommended (here of the middle one), 0.5-1.0 allowed.

    DOD-HDBK-791(AM) 6-5.3.2.2: 3:5 to 1:1, I and 1 excepted.
    """
    chars = "023456789" + ("" if face.kind == "numerals" else "ABCDGHKNOPQRSUXZ")
    ratios = {char: width(by_freetype(face)[char]) / height(by_freetype(face)[char]) for char in chars}
    assert {char: ratio for char, ratio in ratios.items() if not 0.6 <= ratio <= 1.0} == {}
    middle = sorted(ratios.values())[len(ratios) // 2]
    assert 0.7 <= middle <= 0.9


@every_text_face
def test_lower_case_is_seven_tenths(face: Face) -> None:
    """ISO 3098, type B: lower case 7/10 h, to the nearest whole pixel or the next."""
    assert height(by_freetype(face)["x"]) == height(by_freetype(face)["o"]) == face.x
    assert abs(face.x - 0.7 * face.cap) <= 1


@every_face
def test_heights_agree(face: Face) -> None:
    chars = coverage.FIGURES + ("" if face.kind == "numerals" else "ABCDEFGHIJKLMNOPRSTUVWXYZ")
    assert {char: height(by_freetype(face)[char]) for char in chars} == dict.fromkeys(chars, face.cap)


@every_face
def test_stroke(face: Face) -> None:
    """ISO 3098, type B: about 1/10 h, small sizes; DOD-HDBK-791(AM) 6-5.3.2.3: 1/6 to 1/8 h, from 20 on.

    Held to the nearest whole pixel or the next. A bold is heavier by half, and 1/4 h at most.
    """
    stroke = max(thickest_run(by_freetype(face)["4"].ink, 1))
    if face.weight == "bold":
        light = next(f for f in FACES if f.size == face.size and f.weight == "medium" and f.kind == face.kind)
        assert 1.5 * max(thickest_run(by_freetype(light)["4"].ink, 1)) <= stroke <= face.cap / 4
    elif face.size < 20:
        assert abs(stroke - face.cap / 10) < 1
    else:
        assert face.cap / 8 - 0.25 <= stroke <= face.cap / 6 + 0.25


@every_face
def test_gap_between_digits(face: Face) -> None:
    """ISO 3098, type B: 2/10 h between characters; half that is the least where both sides are round."""
    zero = by_freetype(face)["0"]
    gap = zero.advance - width(zero)
    assert 0.1 * face.cap <= gap <= 0.25 * face.cap


@every_text_face
def test_gap_between_upright_strokes(face: Face) -> None:
    """ISO 3098, type B: 2/10 h between characters, to the nearest whole pixel or the next, in H next to H."""
    glyph = by_freetype(face)["H"]
    assert abs(glyph.advance - width(glyph) - 0.2 * face.cap) <= (1 if face.cap < 30 else 1.5)


@every_face
def test_round_shapes_are_their_own_mirror_image(face: Face) -> None:
    chars = "8" if face.kind == "numerals" else "8HOTUVWAMoxvw"
    for char in chars:
        ink = from_ink(by_freetype(face)[char].ink, 0)
        mirrored = tuple(row[::-1] for row in ink.rows)
        assert ink.rows == mirrored, char


@every_face
def test_half_turns(face: Face) -> None:
    pairs = ["69"] if face.kind == "numerals" else ["69", "NN", "ZZ", "II"]
    for one, other in [tuple(pair) for pair in pairs]:
        rows = from_ink(by_freetype(face)[one].ink, 0).rows
        turned = tuple(row[::-1] for row in reversed(from_ink(by_freetype(face)[other].ink, 0).rows))
        assert rows == turned, one + other


@every_text_face
def test_upright_strokes_are_straight(face: Face) -> None:
    """The first stem of these letters has one thickness in every row of its lower part, and H in every row."""
    glyphs = by_freetype(face)
    stem = thickest_run(glyphs["i"].ink, 0)[0]
    for char in "HiFPhnmr":
        assert {thickest_run(glyphs[char].ink, y)[0] for y in range(face.x // 3)} == {stem}, char
    rows = {thickest_run(glyphs["H"].ink, y)[0] for y in range(face.cap)}
    assert rows == {stem, width(glyphs["H"])}


@every_text_face
def test_the_zero_is_marked(face: Face) -> None:
    """Its middle row has ink between or beside the two sides, which that of O has not."""
    middle = face.cap // 2
    sides = thickest_run(by_freetype(face)["O"].ink, middle)
    assert len(sides) == 2
    assert sum(thickest_run(by_freetype(face)["0"].ink, middle)) > sum(sides)


@every_text_face
@pytest.mark.parametrize("char", 'äëïöüÿÄËÏÖÜ¨"…“”')
def test_dots_stand_apart(face: Face, char: str) -> None:
    """Marks of two or three parts are not run together, as a bold drawn from a light face might have them."""
    ink = by_freetype(face)[char].ink
    row = min(y for _, y in ink) if char == "…" else max(y for _, y in ink)
    assert len(thickest_run(ink, row)) == (3 if char == "…" else 2)


@every_text_face
@pytest.mark.parametrize("char", "8BROPDbdpqoaegA0469@&©")
def test_counters_stay_open(face: Face, char: str) -> None:
    """Every closed counter is there: the ground inside a letter is cut off from the ground outside."""
    counters = {"8": 2, "B": 2}.get(char, 1)
    assert enclosed(by_freetype(face)[char].ink) >= counters


@every_text_face
def test_text_is_evenly_dark(face: Face) -> None:
    """The ink of each letter over its advance and the height of x, against the middle of all: no blots."""
    glyphs = by_freetype(face)
    dark = {}
    for char in "acemnorsuvwxz":
        glyph = glyphs[char]
        dark[char] = len(glyph.ink) / (glyph.advance * face.x)
    middle = sorted(dark.values())[len(dark) // 2]
    uneven = {char: value / middle for char, value in dark.items() if not 0.65 <= value / middle <= 1.35}
    assert uneven == {}
