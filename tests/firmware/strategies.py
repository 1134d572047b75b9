"""Layouts that nobody would draw: glyphs on glyphs, parts off the panel, pens going back, every clearing."""

from __future__ import annotations

from pathlib import Path
from typing import cast

from hypothesis import strategies as st
from hypothesis.strategies import DrawFn
from msgspec.structs import replace
from tests.firmware.layouts import INKS, MadeType

from panelproof.content.spec import Choice, Content, FreeText, RealRange, WholeRange
from panelproof.glyphs.glyph import Glyph
from panelproof.glyphs.type import Type
from panelproof.ink.bitmap import from_text
from panelproof.layout.colour import parse
from panelproof.layout.document import Layout, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box, Field, Icon, IconState, Label, Part, Rule
from panelproof.material import Material

CHARS = "0189.-aV\N{DEGREE SIGN}\u20ac\U0001d11e"
CONTENTS = (
    Content("%d", (WholeRange(-18, 190),), fault="a\N{DEGREE SIGN}"),
    Content("%.1f", (RealRange(-1.0, 9.96),), also=("", "V\u20acV")),
    Content("%s", (Choice(("", "aV", "Va-", "\U0001d11ea\N{DEGREE SIGN}")),)),
    Content("%s", (FreeText(7, 0, CHARS),)),
)

PART = st.just("part")
PLACE = st.integers(-12, 40)
SIDE = st.integers(1, 40)
INK = st.sampled_from([ink.name for ink in INKS])
MAYBE_INK = st.one_of(st.none(), INK)
ALIGN = st.sampled_from(("left", "centre", "right"))
CLEARING = st.sampled_from(("none", "cell", "pad", "box"))
PADDING = st.tuples(PLACE, PLACE, SIDE, SIDE)
MAYBE_PADDING = st.one_of(st.none(), PADDING)
TYPE = st.sampled_from(("one", "two"))
WORDS = st.text(CHARS, max_size=6)
LEVEL = st.sampled_from((0, 0, 3, 9, 15))


def made_material(layout: Layout, types: dict[str, MadeType]) -> Material:
    """Return a layout with given types in place of fonts."""
    masks = {
        state: from_text(state.rows)
        for screen in layout.screens
        for part in screen.parts
        if isinstance(part, Icon)
        for state in part.states
    }
    inks = {ink.name: parse(ink.colour) for ink in layout.inks}
    return Material(layout, Path(), cast("dict[str, Type]", types), masks, inks)


@st.composite
def glyphs(draw: DrawFn, antialiased: bool) -> Glyph:
    width, height = draw(st.integers(0, 9)), draw(st.integers(0, 8))
    left, top = draw(st.integers(-6, 5)), draw(st.integers(-4, 9))
    advance = draw(st.sampled_from((0, 0, 1, 3, 4, 5, 8)))
    size = width * height
    levels = bytes(draw(st.lists(LEVEL, min_size=size, max_size=size)))
    rows = tuple(
        sum(1 << column for column in range(width) if levels[row * width + column]) for row in range(height)
    )
    return Glyph(left, top, width, height, advance, rows, levels if antialiased else b"")


@st.composite
def made_types(draw: DrawFn) -> MadeType:
    antialiased = draw(st.booleans())
    chars = sorted(draw(st.sets(st.sampled_from(CHARS), min_size=1)))
    made = {char: draw(glyphs(antialiased)) for char in chars}
    pair = st.tuples(st.sampled_from(chars), st.sampled_from(chars))
    kerns = draw(st.dictionaries(pair, st.integers(-9, 4), max_size=12))
    return MadeType(made, kerns, draw(st.integers(-2, 9)), draw(st.integers(-2, 4)), antialiased)


LABELS = st.builds(Label, PART, WORDS, TYPE, INK, PLACE, PLACE, ALIGN, MAYBE_INK)


@st.composite
def fields(draw: DrawFn) -> Field:
    clearing = draw(CLEARING)
    padding = draw(PADDING if clearing in ("pad", "box") else MAYBE_PADDING)
    content = st.sampled_from(CONTENTS)
    made = st.builds(Field, PART, content, TYPE, INK, PLACE, PLACE, ALIGN, MAYBE_INK)
    return replace(draw(made), clearing=clearing, padding=padding)


@st.composite
def icons(draw: DrawFn) -> Icon:
    states = []
    for number in range(draw(st.integers(1, 3))):
        width = draw(st.integers(1, 10))
        row = st.text("#.", min_size=width, max_size=width)
        rows = draw(st.lists(row, min_size=1, max_size=6))
        states.append(IconState(f"s{number}", tuple(rows), None, draw(MAYBE_INK)))
    made = st.builds(
        Icon, PART, PLACE, PLACE, INK, st.just(tuple(states)), MAYBE_INK, CLEARING, MAYBE_PADDING
    )
    return draw(made)


RULES = st.builds(Rule, PART, PLACE, PLACE, SIDE, INK, st.sampled_from(("across", "down")), st.integers(1, 4))
BOXES = st.builds(Box, PART, PLACE, PLACE, SIDE, SIDE, MAYBE_INK, MAYBE_INK, st.integers(1, 5))
PARTS: st.SearchStrategy[Part] = st.one_of(LABELS, fields(), fields(), icons(), RULES, BOXES)
PANELS = st.builds(
    Panel,
    st.integers(1, 33),
    st.integers(1, 25),
    st.sampled_from(("rgb565", "rgb565", "mono")),
    refresh=st.sampled_from(("part", "part", "whole")),
)


@st.composite
def screens(draw: DrawFn, name: str) -> Screen:
    parts = draw(st.lists(PARTS, min_size=1, max_size=10))
    named = tuple(replace(part, name=f"p{number}") for number, part in enumerate(parts))
    return Screen(name, draw(INK), named, draw(st.booleans()))


@st.composite
def materials(draw: DrawFn) -> Material:
    specs = TypeSpec("one", "made.bdf"), TypeSpec("two", "made.bdf")
    shown = draw(screens("first")), draw(screens("second"))
    layout = Layout(1, "made", draw(PANELS), specs, INKS, shown)
    return made_material(layout, {"one": draw(made_types()), "two": draw(made_types())})
