"""The font files as files: built from the sources, read alike by two readers, within their own boxes."""

from __future__ import annotations

import re
from pathlib import Path

import freetype
import pytest
from fonts_free.drawing import coverage
from fonts_free.drawing.faces import FACES, Face
from fonts_free.drawing.glyph import Glyph
from tests.fonts_free.reading import NAMES, by_bdfparser, by_freetype, parsed, path

from fonts_free import build

every_face = pytest.mark.parametrize("face", FACES, ids=NAMES)


@every_face
def test_building_again_gives_the_same_bytes(face: Face) -> None:
    assert path(face).read_bytes() == build.font_text(face).encode("ascii")


def test_check_finds_a_changed_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(build, "FACES", FACES[:2])
    for face in FACES[:2]:
        (tmp_path / f"{face.stem}.bdf").write_bytes(path(face).read_bytes())
    for folder in ("grids", "strokes"):
        (tmp_path / folder).symlink_to(build.HERE / folder)
    monkeypatch.setattr(build, "HERE", tmp_path)
    assert build.main(["--check"]) == 0
    changed = tmp_path / f"{FACES[0].stem}.bdf"
    changed.write_bytes(changed.read_bytes().replace(b"DWIDTH 6 0", b"DWIDTH 7 0", 1))
    assert build.main(["--check"]) == 1
    assert changed.read_bytes() != path(FACES[0]).read_bytes(), "checking mends nothing"
    changed.unlink()
    assert build.main(["--check"]) == 1 and not changed.exists()
    assert build.main([]) == 0 and changed.read_bytes() == path(FACES[0]).read_bytes()


def test_check_holds_for_the_files_here() -> None:
    assert build.main(["--check"]) == 0


def test_no_file_is_left_from_an_older_family() -> None:
    assert {file.stem for file in build.HERE.glob("*.bdf")} == set(NAMES)


@every_face
def test_two_readers_see_the_same_rows(face: Face) -> None:
    one, other = by_freetype(face), by_bdfparser(face)
    assert one.keys() == other.keys()
    assert [char for char in one if one[char] != other[char]] == []


@every_face
def test_readers_see_what_was_drawn(face: Face) -> None:
    read = by_freetype(face)
    for char, glyph in build.characters(face).items():
        assert (read[char].ink, read[char].advance) == (glyph.ink(), glyph.advance), char


@every_face
def test_coverage(face: Face) -> None:
    wanted = coverage.NUMERALS if face.kind == "numerals" else coverage.TEXT
    assert set(wanted) == set(by_freetype(face))
    blank = {char for char, glyph in by_freetype(face).items() if not glyph.ink}
    assert blank == {char for char in "\u0020\u00a0\u2007" if char in wanted}


def test_the_characters_asked_for() -> None:
    asked = "°µΩ±×÷−–…←↑→↓≤≥≈€\u2007" + "".join(map(chr, [*range(0x20, 0x7F), *range(0xA0, 0x100)]))
    assert set(asked) <= set(coverage.TEXT)
    assert set("0123456789-−+.,:%° \u2007/–—") <= set(coverage.NUMERALS)


@every_face
def test_a_missing_character_shows(face: Face) -> None:
    font = freetype.Face(str(path(face)))
    font.select_size(0)
    font.load_char("\u4e00", freetype.FT_LOAD_RENDER | freetype.FT_LOAD_TARGET_MONO)
    shown = by_freetype(face)[coverage.MISSING]
    assert font.glyph.bitmap.rows == shown.box[3] - shown.box[1] > face.cap // 2


@every_face
def test_properties(face: Face) -> None:
    """BDF 2.1 (X Consortium standard) and the X Logical Font Description conventions."""
    font = parsed(face)
    text = path(face).read_text(encoding="ascii")
    assert text.startswith("STARTFONT 2.1\n") and text.endswith("ENDFONT\n")
    assert int(font.props["font_ascent"]) + int(font.props["font_descent"]) == face.size
    assert int(font.props["cap_height"]) == face.cap
    assert int(font.props["default_char"]) == ord(coverage.MISSING)
    assert "CC0-1.0" in font.props["copyright"]
    name = re.search(r"^FONT (.*)$", text, re.M)
    assert name is not None
    fields = name[1].split("-")
    assert len(fields) == 15 and fields[0] == "" and fields[7] == str(face.size) and fields[13] == "ISO10646"
    widths = [glyph.advance for glyph in by_freetype(face).values()]
    assert fields[12] == str(round(10 * sum(widths) / len(widths)))


@every_face
def test_no_ink_outside_the_line(face: Face) -> None:
    for char, glyph in by_freetype(face).items():
        _, low, _, high = glyph.box
        assert -face.descent <= low and high <= face.ascent, (char, glyph.box)


@every_face
def test_every_glyph_lies_in_the_font_bounding_box(face: Face) -> None:
    """BDF 2.1: FONTBOUNDINGBOX is width, height, and the lower left corner from the origin."""
    width, height, left, low = _font_box(face)
    boxes = [glyph.box for glyph in by_freetype(face).values() if glyph.ink]
    assert (left, low, left + width, low + height) == (
        min(box[0] for box in boxes),
        min(box[1] for box in boxes),
        max(box[2] for box in boxes),
        max(box[3] for box in boxes),
    )


def _font_box(face: Face) -> tuple[int, int, int, int]:
    text = path(face).read_text(encoding="ascii")
    found = re.search(r"^FONTBOUNDINGBOX (\S+) (\S+) (\S+) (\S+)$", text, re.M)
    assert found is not None
    width, height, left, low = map(int, found.groups())
    return width, height, left, low


def test_an_advance_that_would_jump_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    real = build.drawn

    def wider(face: Face) -> dict[str, Glyph]:
        glyphs = real(face)
        return {**glyphs, "+": glyphs["+"].with_left(0, face.figure + 1)}

    monkeypatch.setattr(build, "drawn", wider)
    with pytest.raises(ValueError, match=r"advance is not 6: \['\+'\]"):
        build.characters(FACES[0])
