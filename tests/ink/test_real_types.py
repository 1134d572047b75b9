"""Footprints in real fonts, outline and bitmap, against every text set by itself."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.ink.brute import _set, ink_of, start_of, width_of

from panelproof.content.build import graph
from panelproof.content.spec import Content, RealRange, WholeRange
from panelproof.glyphs.catalogue import find
from panelproof.glyphs.glyph import Glyph
from panelproof.glyphs.type import Type, open_type
from panelproof.ink.anchor import Align
from panelproof.ink.footprint import Footprint

ROOT = Path(__file__).parents[2]
OUTLINES = ("SourceSansPro", "HankenGrotesk")
BITMAPS = (ROOT / "tests/glyphs/data/lath.pcf", ROOT / "fonts_free/pellucet-16.bdf")


@lru_cache
def type_of(name: str, kerning: bool) -> Type:
    if name.endswith((".bdf", ".pcf")):
        return open_type(Path(name), None, "one-bit", False, True)
    return open_type(find(name, ROOT), 21, "antialiased" if kerning else "one-bit", kerning, True)


TYPES = [(name, kerning) for name in OUTLINES for kerning in (False, True)] + [
    (str(path), False) for path in BITMAPS
]
numbers = st.integers(-1200, 1200)


@st.composite
def contents(draw: st.DrawFn) -> Content:
    least = draw(numbers)
    greatest = least + draw(st.integers(0, 400))
    form = draw(st.sampled_from(["%d", "%5d", "%-5d.", "%+d", "% d", "%.3d", "%05.1f", "%.1f", "A.%.2f"]))
    if form.endswith("f"):
        return Content(form, (RealRange(least / 10, greatest / 10),), fault="--")
    return Content(form, (WholeRange(least, greatest, draw(st.integers(1, 3))),), fault="--")


@pytest.mark.parametrize(("name", "kerning"), TYPES, ids=lambda value: str(value).rsplit("/", 1)[-1])
@settings(max_examples=12, deadline=None)
@given(content=contents(), align=st.sampled_from(["left", "centre", "right"]))
def test_footprint_extremes_and_witnesses(name: str, kerning: bool, content: Content, align: Align) -> None:
    type_: Any = type_of(name, kerning)
    texts = list(graph(content).texts())
    print_ = Footprint(graph(content), type_, align)
    found = set(print_.mask.pixels())
    assert found == _drawn(type_, texts, align)
    widths = [width_of(type_, text) for text in texts]
    assert (print_.widths[0], print_.widths[-1]) == (min(widths), max(widths))
    assert width_of(type_, print_.longest) == max(widths)
    assert width_of(type_, print_.shortest) == min(widths)
    held = set(texts)
    assert {print_.longest, print_.shortest, print_.tallest} <= held
    x, y, width, height = print_.mask.bounds()
    edges = [pixel for pixel in found if pixel[0] in (x, x + width - 1) or pixel[1] in (y, y + height - 1)]
    for pixel in edges:
        text = print_.witness(*pixel)
        assert text in held
        assert pixel in ink_of(type_, text, align)


def _drawn(type_: Any, texts: list[str], align: str) -> set[tuple[int, int]]:
    """Set every text; draw each glyph once at each place it came to stand."""
    places: set[tuple[Glyph, int]] = set()
    for text in texts:
        run, width = _set(type_, text)
        first = start_of(align, width)
        places.update((glyph, first + pen) for glyph, pen in run)
    return {
        (pen + glyph.left + column, row - glyph.top)
        for glyph, pen in places
        for row, bits in enumerate(glyph.rows)
        for column in range(glyph.width)
        if bits >> column & 1
    }


@pytest.mark.parametrize(("name", "kerning"), TYPES, ids=lambda value: str(value).rsplit("/", 1)[-1])
@pytest.mark.parametrize("align", ["left", "centre", "right"])
def test_a_content_of_sixteen_thousand_texts(name: str, kerning: bool, align: Align) -> None:
    type_: Any = type_of(name, kerning)
    content = Content("%.2f", (RealRange(-40, 125),))
    texts = list(graph(content).texts())
    # 16 501 numbers from -40.00 to 125.00, and -0.00.
    assert len(texts) == 16_502
    print_ = Footprint(graph(content), type_, align)
    assert set(print_.mask.pixels()) == _drawn(type_, texts, align)
