"""Kerning of pairs against HarfBuzz's shaping, and of the `kern` table against FreeType's reading too."""

from __future__ import annotations

import struct
from fractions import Fraction
from pathlib import Path
from typing import Any

import freetype
import pytest
import uharfbuzz as hb
from fontTools.ttLib import TTFont, newTable
from fontTools.ttLib.tables._k_e_r_n import KernTable_format_0
from tests.glyphs.sources import ASCII, GROTESK, SANS, built, opened, rounded

from panelproof.glyphs.file import read
from panelproof.glyphs.kerning import Kerning
from panelproof.problem import Problem

# What else may move or replace glyphs is off, so that kerning is all that differs.
OTHERS = ("liga", "clig", "rlig", "dlig", "calt", "ccmp", "locl", "mark", "mkmk", "dist", "abvm", "blwm")
FONTS = (
    SANS,
    SANS.with_name("SourceSansPro-BoldIt.otf"),
    GROTESK,
    GROTESK.with_name("HankenGrotesk-BoldItalic.otf"),
)


def harfbuzz(path: Path, characters: str, *, table_alone: bool = False) -> dict[tuple[str, str], int]:
    """Return the kerning of every pair in font units: the second glyph's place with it, less without.

    With the `kern` table alone HarfBuzz takes half of it from the first advance, half from the second's place.
    """
    font = hb.Font(hb.Face(hb.Blob.from_file_path(str(path))))
    font.scale = (font.face.upem, font.face.upem)
    found = {}
    for left in characters:
        for right in characters:
            places = []
            for kern in (True, False):
                buffer = hb.Buffer()
                buffer.add_str(left + right)
                buffer.direction, buffer.script, buffer.language = "ltr", "Latn", "en"
                hb.shape(font, buffer, {"kern": kern} | dict.fromkeys(OTHERS, False))
                assert len(buffer.glyph_infos) == 2
                first, second = buffer.glyph_positions
                places.append(first.x_advance + (second.x_offset if table_alone else 0))
            found[left, right] = places[0] - places[1]
    return found


def ours(path: Path, characters: str) -> dict[tuple[str, str], int]:
    face = freetype.Face(str(path))
    kerning = Kerning(read(path), face.get_char_index)
    return {(left, right): kerning.units(left, right) for left in characters for right in characters}


@pytest.mark.parametrize("path", FONTS, ids=lambda path: path.name)
def test_every_pair_of_printable_ascii(path: Path) -> None:
    theirs = harfbuzz(path, ASCII)
    assert sum(value != 0 for value in theirs.values()) > 300
    assert ours(path, ASCII) == theirs


@pytest.mark.parametrize("path", (SANS, GROTESK), ids=lambda path: path.name)
@pytest.mark.parametrize("size", (9, 16, 24, 48, 125, 500))
def test_pixels_are_the_nearest_to_the_scaled_units(path: Path, size: int) -> None:
    em = TTFont(path)["head"].unitsPerEm
    type = opened(path, size, kerning=True)
    for pair, units in ours(path, ASCII).items():
        assert type.kern(*pair) == rounded(Fraction(units * size, em)), pair


def test_halves_of_a_pixel_round_upwards(tmp_path: Path) -> None:
    path = built(
        tmp_path / "halves.ttf", features="feature kern {pos g0041 g0042 -50; pos g0042 g0041 50;} kern;"
    )
    type = opened(path, 10, kerning=True)
    assert (type.kern("A", "B"), type.kern("B", "A")) == (0, 1)


def test_kerning_switched_off() -> None:
    assert opened(SANS, 48, kerning=True).kern("T", "o") < 0
    assert opened(SANS, 48).kern("T", "o") == 0


def test_characters_that_the_font_lacks() -> None:
    type = opened(SANS, 48, kerning=True)
    assert type.kern("T", "窯") == type.kern("窯", "T") == 0


FEATURES = {
    # Both lookups act on a pair; of the subtables of one lookup the first that covers the left glyph.
    "several lookups": """
        feature kern {
            lookup one {pos g0041 g0042 -50; pos g0041 g0043 -20; pos g0042 g0042 7;} one;
            lookup two {pos g0041 g0042 13; pos g0043 g0044 <1 2 -30 4>;} two;
        } kern;""",
    "classes": """
        feature kern {
            pos g0041 g0042 -5;
            pos [g0041 g0043] [g0042 g0044] -40;
            subtable;
            pos [g0041 g0042] [g0041 g0043] 25;
        } kern;""",
    "both glyphs adjusted": """
        feature kern {
            pos g0041 <1 2 -50 4> g0042 <5 6 10 7>;
            pos g0041 <1 3 -20 5> g0043 <2 6 9 4>;
            pos g0041 <1 4 -33 5> g0044 <2 7 9 4>;
            pos [g0042 g0043] <0 0 -40 0> [g0042 g0044] <1 0 8 0>;
        } kern;""",
    "extension": """
        lookup far useExtension {pos g0041 g0042 -50; pos [g0042 g0043] [g0041 g0044] 12;} far;
        feature kern {lookup far;} kern;""",
    "marks ignored": """
        table GDEF {GlyphClassDef [g0041 g0042 g0043 g0044], , [g0301], ;} GDEF;
        feature kern {lookup plain {lookupflag IgnoreMarks;
            pos g0041 [g0301 g0042] -50; pos g0301 g0041 -9;} plain;} kern;""",
    "marks by unicode": """
        feature kern {lookup plain {lookupflag IgnoreMarks;
            pos g0041 [g0301 g0042] -50; pos g0301 g0041 -9;} plain;} kern;""",
    "bases ignored": """
        table GDEF {GlyphClassDef [g0041 g0042], [g0043], [g0301], ;} GDEF;
        feature kern {
            lookup one {lookupflag IgnoreBaseGlyphs; pos [g0041 g0043 g0044] [g0043 g0041 g0044] -50;} one;
            lookup two {lookupflag IgnoreLigatures; pos [g0041 g0043 g0044] [g0043 g0041 g0044] -7;} two;
        } kern;""",
    "marks of a set": """
        table GDEF {GlyphClassDef [g0041 g0042], , [g0301 g0043], ;} GDEF;
        feature kern {lookup one {lookupflag UseMarkFilteringSet [g0043];
            pos g0041 [g0301 g0042 g0043] -50;} one;} kern;""",
    "marks of a class": """
        table GDEF {GlyphClassDef [g0041 g0042], , [g0301 g0043], ;} GDEF;
        feature kern {lookup one {lookupflag MarkAttachmentType [g0043];
            pos g0041 [g0301 g0042 g0043] -50;} one;} kern;""",
    "latin by itself": """
        languagesystem DFLT dflt; languagesystem latn dflt;
        feature kern {script DFLT; pos g0041 g0042 -50; script latn; pos g0041 g0042 -20;} kern;""",
    "default script alone": """
        languagesystem DFLT dflt;
        feature kern {pos g0041 g0042 -50;} kern;""",
    "another script alone": """
        languagesystem grek dflt;
        feature kern {script grek; pos g0041 g0042 -50;} kern;""",
    "no kerning": "feature ss01 {sub g0041 by g0042;} ss01; feature cpsp {pos g0041 5;} cpsp;",
}


@pytest.mark.parametrize("name", FEATURES)
def test_lookups_as_harfbuzz_takes_them(name: str, tmp_path: Path) -> None:
    path = built(tmp_path / "font.ttf", features=FEATURES[name])
    theirs = harfbuzz(path, "ABCD\u0301")
    assert any(theirs.values()) == (name not in ("no kerning", "another script alone"))
    assert ours(path, "ABCD\u0301") == theirs


def with_kern(*subtables: tuple[int, dict[tuple[str, str], int]]) -> Any:
    def change(font: Any) -> None:
        table = font["kern"] = newTable("kern")
        table.version, table.kernTables = 0, []
        for coverage, pairs in subtables:
            subtable = KernTable_format_0()
            subtable.coverage, subtable.kernTable = coverage, pairs
            table.kernTables.append(subtable)

    return change


PAIRS = {("g0041", "g0042"): -50, ("g0042", "g0043"): 20}
MORE = {("g0041", "g0042"): 8, ("g0043", "g0041"): -3}


@pytest.mark.parametrize(
    "subtables",
    [
        ((1, PAIRS),),
        ((1, PAIRS), (1, MORE)),
        ((0, MORE), (1, PAIRS)),
        ((1, PAIRS), (5, MORE)),
        ((1, PAIRS), (9, MORE)),
    ],
    ids=["one", "two add up", "vertical", "across", "replaces"],
)
def test_kern_table(subtables: Any, tmp_path: Path) -> None:
    path = built(tmp_path / "old.ttf", change=with_kern(*subtables))
    found = ours(path, "ABCD")
    face = freetype.Face(str(path))
    face.set_pixel_sizes(0, 1000)
    for (left, right), units in found.items():
        if any(coverage == 5 for coverage, _ in subtables):
            break  # FreeType adds what is meant across the line
        assert units == face.get_kerning(left, right, freetype.FT_KERNING_UNSCALED).x, (left, right)
    assert any(found.values())
    if all(coverage != 9 for coverage, _ in subtables):  # HarfBuzz knows nothing of replacing
        assert found == harfbuzz(path, "ABCD", table_alone=True)


def test_kern_table_counts_only_without_a_kern_feature(tmp_path: Path) -> None:
    for name in ("several lookups", "no kerning"):
        path = built(
            tmp_path / f"{name}.ttf", features=FEATURES[name], change=with_kern((1, {("g0041", "g0042"): 77}))
        )
        theirs = harfbuzz(path, "ABCD", table_alone=name == "no kerning")
        assert ours(path, "ABCD") == theirs
        assert theirs["A", "B"] == (77 if name == "no kerning" else -37)


def damaged(path: Path, tag: bytes, start: int, filling: bytes) -> Path:
    """Overwrite a table of a font from `start` on."""
    data = bytearray(path.read_bytes())
    entry = data.index(tag, 12)
    offset, length = struct.unpack_from(">II", data, entry + 8)
    data[offset + start : offset + length] = (filling * length)[: length - start]
    path.write_bytes(data)
    return path


@pytest.mark.parametrize(
    ("start", "filling"), [(0, b"\xff"), (4, b"\xff"), (10, b"\xff"), (10, b"\x7f\x01"), (40, b"\xff")]
)
def test_damaged_gpos(start: int, filling: bytes, tmp_path: Path) -> None:
    path = damaged(built(tmp_path / "font.ttf", features=FEATURES["classes"]), b"GPOS", start, filling)
    sentence = (
        "^the kerning of `font.ttf` cannot be read, as the file is damaged; switch kerning off for this type$"
    )
    with pytest.raises(Problem, match=sentence):
        opened(path, 20, kerning=True).kern("A", "B")
    assert opened(path, 20).glyph("A")


@pytest.mark.parametrize("version", (0, 1))
def test_kern_table_that_counts_without_end(version: int, tmp_path: Path) -> None:
    path = built(tmp_path / "font.ttf", change=with_kern((1, PAIRS)))
    head = struct.pack(">HH", 0, 0xFFFF) if version == 0 else struct.pack(">II", 0x10000, 0xFFFFFFFF)
    damaged(path, b"kern", 0, head + bytes(100))
    with pytest.raises(Problem, match=r"^the kerning of `font\.ttf` cannot be read"):
        opened(path, 20, kerning=True)
