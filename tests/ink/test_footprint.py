"""Footprints, extremes and witnesses against every text drawn by itself."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.ink.brute import PlainType, cell_of, everything, ink_of, width_of

from panelproof.content.build import graph
from panelproof.content.spec import Choice, Content, FreeText, RealRange, WholeRange
from panelproof.glyphs.glyph import Glyph
from panelproof.ink.anchor import Align
from panelproof.ink.footprint import Footprint
from panelproof.ink.repaint import spared, text_ink

ALPHABET = "0123456789-. +"
ALIGNS = ("left", "centre", "right")


@st.composite
def glyphs(draw: st.DrawFn) -> Glyph:
    width, height = draw(st.integers(0, 5)), draw(st.integers(0, 5))
    rows = [draw(st.integers(0, (1 << width) - 1)) for _ in range(height)] if width else []
    advance = draw(st.integers(0, 6))
    # Rows without ink at the border are cut away, as glyphs have it.
    while rows and not rows[0]:
        del rows[0]
    while rows and not rows[-1]:
        del rows[-1]
    if not rows:
        return Glyph(0, 0, 0, 0, advance, ())
    return Glyph(draw(st.integers(-2, 2)), draw(st.integers(-1, 5)), width, len(rows), advance, tuple(rows))


@st.composite
def types(draw: st.DrawFn) -> PlainType:
    made = {char: draw(glyphs()) for char in ALPHABET}
    for char in draw(st.sets(st.sampled_from(ALPHABET), max_size=2)):
        del made[char]
    pairs = st.tuples(st.sampled_from(ALPHABET), st.sampled_from(ALPHABET))
    kerns = draw(st.dictionaries(pairs, st.integers(-3, 2), max_size=12))
    return PlainType(made, kerns, draw(st.integers(0, 5)), draw(st.integers(0, 3)))


@st.composite
def contents(draw: st.DrawFn) -> Content:
    kind = draw(st.sampled_from(["whole", "real", "choice", "free"]))
    least = draw(st.integers(-300, 300))
    also = tuple(draw(st.lists(st.text(ALPHABET, max_size=5), max_size=2)))
    if kind == "whole":
        span, step = draw(st.integers(0, 400)), draw(st.integers(1, 7))
        return Content("%d", (WholeRange(least, least + span, step),), also=also)
    if kind == "real":
        return Content("%.1f", (RealRange(least / 10, (least + draw(st.integers(0, 300))) / 10),), also=also)
    if kind == "choice":
        texts = draw(st.lists(st.text(ALPHABET, max_size=5), min_size=1, max_size=6))
        return Content("%s", (Choice(tuple(texts)),), also=also)
    return Content("%s", (FreeText(draw(st.integers(0, 3)), characters="0.1-"),), also=also)


def local(pixels: Any) -> set[tuple[int, int]]:
    return set(pixels.pixels())


@settings(max_examples=120, deadline=None)
@given(contents(), types(), st.sampled_from(ALIGNS))
def test_footprint_equals_every_text_drawn(content: Content, type_: Any, align: Align) -> None:
    texts = list(graph(content).texts())
    print_ = Footprint(graph(content), type_, align)
    inks = {text: ink_of(type_, text, align) for text in texts}
    assert local(print_.mask) == everything(inks.values())

    widths = {text: width_of(type_, text) for text in texts}
    assert set(print_.widths) == set(widths.values())
    assert widths[print_.longest] == max(widths.values())
    assert widths[print_.shortest] == min(widths.values())

    def height(text: str) -> int:
        rows = [y for _, y in inks[text]]
        return max(rows) - min(rows) + 1 if rows else 0

    assert height(print_.tallest) == max(map(height, texts))
    for pixel in local(print_.mask):
        assert pixel in inks[print_.witness(*pixel)]
    for text in texts[:3]:
        assert local(text_ink(print_, text)) == inks[text]


@settings(max_examples=120, deadline=None)
@given(contents(), types(), st.sampled_from(ALIGNS), st.booleans())
def test_spared_pixels_equal_every_update_drawn(
    content: Content, type_: Any, align: Align, cell: bool
) -> None:
    texts = list(graph(content).texts())
    print_ = Footprint(graph(content), type_, align)
    repaints = {
        text: ink_of(type_, text, align) | (cell_of(type_, text, align) if cell else set()) for text in texts
    }
    whole = everything(ink_of(type_, text, align) for text in texts)
    left_alone = {pixel for pixel in whole if any(pixel not in repaint for repaint in repaints.values())}
    found = spared(print_, cell=cell)
    assert local(found.mask) == left_alone
    for pixel in left_alone:
        assert pixel not in repaints[found.text(*pixel)]
    for pixel in whole - left_alone:
        with pytest.raises(LookupError):
            found.text(*pixel)


def test_a_pixel_nothing_inks_has_no_witness() -> None:
    type_: Any = PlainType({"1": Glyph(0, 1, 1, 1, 2, (1,))}, {}, 1, 0)
    print_ = Footprint(graph(Content("1")), type_, "left")
    assert local(print_.mask) == {(0, -1)}
    with pytest.raises(LookupError):
        print_.witness(1, -1)
