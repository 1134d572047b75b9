"""Fonts that restrict embedding, against the bits of the OpenType specification."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from fontTools.ttLib import TTFont
from tests.glyphs.sources import built
from tests.proof.test_verdict import layout

from panelproof.glyphs.licence import embedding, embedding_bits
from panelproof.layout.document import Layout, Screen, TypeSpec
from panelproof.layout.parts import Label
from panelproof.material import gather
from panelproof.proof.check import prove
from panelproof.proof.finding import Finding


def made(folder: Path, bits: int, types: int = 1) -> Layout:
    def change(font: Any) -> None:
        font["OS/2"].fsType = bits

    built(folder / "own.ttf", change=change)
    specs = (TypeSpec("plain", "own.ttf", 16), TypeSpec("large", "own.ttf", 24))[:types]
    shown = tuple(Label(f"name-{n}", "A", spec.name, "white", 5 + 40 * n, 30) for n, spec in enumerate(specs))
    return layout(types=specs, screens=(Screen("main", "black", shown),))


def found(layout_: Layout, folder: Path) -> list[Finding]:
    return [one for one in prove(gather(layout_, folder)) if one.rule == "embedding"]


@pytest.mark.parametrize(
    ("bits", "words"),
    # OpenType specification, OS/2 table, fsType; bit 9 allows bitmaps, which is what a header carries.
    [
        (0x0002, "must not be embedded"),
        (0x0004, "viewing and printing only"),
        (0x0008, "documents that can be edited"),
        (0x0100, "not in part"),
        (0x0000, ""),
        (0x0200, ""),
    ],
)
def test_what_the_bits_forbid_is_said(tmp_path: Path, bits: int, words: str) -> None:
    about = found(made(tmp_path, bits), tmp_path)
    assert len(about) == bool(words)
    for one in about:
        assert (one.level, one.part) == ("caution", "name-0")
        assert words in one.message
        assert "`own.ttf`" in one.message


def test_a_font_is_named_once_and_only_where_it_is_used(tmp_path: Path) -> None:
    assert len(found(made(tmp_path, 2, types=2), tmp_path)) == 1
    unused = made(tmp_path, 2)
    assert found(layout(types=unused.types), tmp_path) == []


def test_the_quick_reading_is_that_of_the_whole_file(tmp_path: Path) -> None:
    for bits in (0, 2, 4, 8, 0x100, 0x208):
        made(tmp_path, bits)
        path = tmp_path / "own.ttf"
        quick, whole = embedding_bits(path), embedding(path)
        assert (quick.permission, quick.no_subsetting, quick.bitmap_only) == (
            whole.permission, whole.no_subsetting, whole.bitmap_only,
        )  # fmt: skip
        assert TTFont(path)["OS/2"].fsType == bits
