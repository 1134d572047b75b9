from __future__ import annotations

import itertools
from pathlib import Path

from tests.firmware.layouts import rich

from panelproof.content.build import graph
from panelproof.content.spec import Choice, Content, FreeText, WholeRange
from panelproof.firmware.glyphdata import Pool, icon_glyph, pairs_of_graph, pairs_of_text, type_glyphs
from panelproof.glyphs.glyph import Glyph
from panelproof.ink.bitmap import from_text

CONTENTS = (
    Content("%d", (WholeRange(-12, 130),)),
    Content("%s %s", (Choice(("AV", "Te", "")), Choice(("x", "yz"))), fault="?!"),
    Content("%s", (FreeText(3, 0, "aVo"),), also=("--",)),
    Content("%5.1x", (WholeRange(0, 300, 7),)),
)


def test_pairs_of_neighbours_are_those_of_every_text() -> None:
    for content in CONTENTS:
        built = graph(content)
        expected = {pair for text in built.texts() for pair in itertools.pairwise(text)}
        assert pairs_of_graph(built) == expected


def test_pairs_of_one_text() -> None:
    assert pairs_of_text("abab") == {("a", "b"), ("b", "a")}
    assert pairs_of_text("a") == set()


def test_icons_keep_their_own_rectangle() -> None:
    glyph = icon_glyph(from_text(("....", ".##.", "....")))
    assert (glyph.left, glyph.top, glyph.width, glyph.height, glyph.advance) == (0, 0, 4, 3, 4)
    assert glyph.rows == (0, 0b0110, 0)


def test_equal_bitmaps_are_held_once() -> None:
    pool, glyph = Pool(), Glyph(0, 0, 8, 1, 8, (255,))
    assert [pool.place(blob, "x", glyph) for blob in (b"\xff", b"\x01\x02", b"\xff", b"", b"\x03")] == [
        0,
        1,
        0,
        0,
        3,
    ]
    assert pool.size == 4


def test_only_characters_that_can_be_shown(tmp_path: Path) -> None:
    found = {one.spec.name: one for one in type_glyphs(rich(tmp_path))}
    # The format `%+d l` over -50 to 1000 by 50, `none`, the season's and network's texts, and two labels.
    small = {char for char, _ in found["small"].glyphs}
    assert small == set("+-0123456789 l" + "none" + "|" + "AVATAR Tj").union(map(chr, range(65, 91)))
    assert {char for char, _ in found["tight"].glyphs} == set("-017")  # the font has no 2 to 6, 8, 9
    chars = [char for char, _ in found["large"].glyphs]
    assert chars == sorted(chars)


def test_kerning_only_where_it_is_and_can_occur(tmp_path: Path) -> None:
    found = {one.spec.name: one for one in type_glyphs(rich(tmp_path))}
    large = found["large"]
    chars = [char for char, _ in large.glyphs]
    kerned = {(chars[left], chars[right]): pixels for left, right, pixels in large.pairs}
    assert kerned[("A", "V")] < 0
    assert all(pixels == large.type.kern(*pair) != 0 for pair, pixels in kerned.items())
    assert ("V", "A") not in kerned  # `AV` stands in a fault text, `VA` nowhere in this type
    assert list(large.pairs) == sorted(large.pairs)
    assert not found["plain"].pairs
