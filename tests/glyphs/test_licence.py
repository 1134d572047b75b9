"""Embedding bits against the OpenType specification and FreeType, and what fonts say of themselves."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import freetype
import pytest
from tests.glyphs.sources import DATA, GROTESK, SANS, built

from panelproof.glyphs.licence import Embedding, embedding
from panelproof.problem import Problem


@pytest.mark.parametrize(
    ("bits", "permission", "no_subsetting", "bitmap_only"),
    [
        # OpenType specification, OS/2 table, fsType.
        (0x0000, "installable", False, False),
        (0x0002, "restricted", False, False),
        (0x0004, "preview and print", False, False),
        (0x0008, "editable", False, False),
        (0x0100, "installable", True, False),
        (0x0204, "preview and print", False, True),
        (0x0308, "editable", True, True),
        # Before version 3 of the table several might be set: the least restrictive counts.
        (0x0006, "preview and print", False, False),
        (0x000E, "editable", False, False),
    ],
)
def test_bits(bits: int, permission: str, no_subsetting: bool, bitmap_only: bool, tmp_path: Path) -> None:
    def change(font: Any) -> None:
        font["OS/2"].fsType = bits

    path = built(tmp_path / "font.ttf", change=change)
    found = embedding(path)
    assert (found.permission, found.no_subsetting, found.bitmap_only) == (
        permission,
        no_subsetting,
        bitmap_only,
    )
    assert found.restricts == (permission != "installable" or no_subsetting)
    assert freetype.FT_Get_FSType_Flags(freetype.Face(str(path))._FT_Face) == bits


def test_what_the_packages_fonts_say() -> None:
    sans, grotesk = embedding(SANS), embedding(GROTESK)
    assert sans.permission == "installable"
    assert "SIL Open Font License, Version 1.1" in sans.licence
    assert sans.licence_url == "http://scripts.sil.org/OFL"
    assert sans.copyright.startswith("Copyright 2010")
    assert grotesk.permission == "editable"
    assert "Alfredo Marco Pradil" in grotesk.copyright


def test_texts_are_those_that_freetype_reads() -> None:
    face, found = freetype.Face(str(SANS)), embedding(SANS)
    for number, text in ((0, found.copyright), (13, found.licence), (14, found.licence_url)):
        assert face.get_best_name_string(number) == text


@pytest.mark.parametrize("name", ("lath.bdf", "lath.pcf", "lath.pcf.gz"))
def test_bitmap_fonts_speak_in_properties(name: str) -> None:
    found = embedding(DATA / name)
    assert found == Embedding("not stated", licence="Free for any use", copyright="Drawn for these tests")
    assert not found.restricts


def test_font_that_says_nothing(tmp_path: Path) -> None:
    def change(font: Any) -> None:
        del font["OS/2"], font["name"]

    assert embedding(built(tmp_path / "font.ttf", change=change)) == Embedding("not stated")
    assert embedding(DATA / "standard.bdf") == Embedding("not stated")


def test_sentences() -> None:
    assert str(Embedding("restricted")) == "must not be embedded without the maker's leave"
    whole = Embedding("editable", True, True, "Some\nlicence", "https://licence.example", "Somebody")
    assert str(whole) == (
        "may be embedded in documents that can be edited, not in part, as bitmaps only; "
        "Some licence; https://licence.example"
    )


def test_damaged_tables(tmp_path: Path) -> None:
    path = built(tmp_path / "font.ttf")
    data = bytearray(path.read_bytes())
    entry = data.index(b"OS/2", 12)
    data[entry + 12 : entry + 16] = bytes([0, 0, 0, 9])
    path.write_bytes(data)
    with pytest.raises(
        Problem, match=r"^the licence of `font\.ttf` cannot be read, as the font file is damaged$"
    ):
        embedding(path)
    with pytest.raises(Problem, match=r"^there is no font file `none\.bdf`"):
        embedding(tmp_path / "none.bdf")
