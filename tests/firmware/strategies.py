"""Layouts that nobody would draw: glyphs on glyphs, parts off the panel, pens going back, every clearing."""

from __future__ import annotations

import random
from pathlib import Path
from typing import cast

from hypothesis import strategies as st
from hypothesis.strategies import DrawFn
from msgspec.structs import replace
from tests.firmware.layouts import INKS, MadeType

from panelproof.content.spec import Choice, Content, FreeText, RealRange, WholeRange
from panelproof.dithering import dithered
from panelproof.glyphs.glyph import Glyph
from panelproof.glyphs.type import Type
from panelproof.ink.bitmap import from_text
from panelproof.layout.colour import parse
from panelproof.layout.document import Layout, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import (
    Box,
    Clearing,
    Field,
    Icon,
    IconState,
    Label,
    Meter,
    MeterLimit,
    Part,
    Picture,
    Rule,
)
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
CLEARINGS: tuple[Clearing, ...] = ("none", "cell", "pad", "box")
CLEARING = st.sampled_from(CLEARINGS)
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
    shown = [part for screen in layout.screens for part in screen.parts if isinstance(part, Picture)]
    rasters = {
        (part.picture, part.dither): dithered(*PICTURES[part.picture], part.dither, layout.panel.colours)
        for part in shown
    }
    return Material(layout, Path(), cast("dict[str, Type]", types), masks, inks, rasters)


@st.composite
def glyphs(draw: DrawFn, antialiased: bool, apart: bool = False) -> Glyph:
    """A glyph; with `apart`, one that keeps to its own advance."""
    width, height = draw(st.integers(0, 9)), draw(st.integers(0, 8))
    left, top = draw(st.integers(-6, 5)), draw(st.integers(-4, 9))
    advance = draw(st.sampled_from((0, 0, 1, 3, 4, 5, 8)))
    if apart:
        left = abs(left)
        advance += left + width
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
    apart = draw(st.booleans())
    made = {char: draw(glyphs(antialiased, apart)) for char in chars}
    pair = st.tuples(st.sampled_from(chars), st.sampled_from(chars))
    kerns = draw(
        st.dictionaries(pair, st.integers(0 if apart else -9, 4), max_size=draw(st.sampled_from((0, 12))))
    )
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


def _pixels(
    width: int, height: int, colours: int, clear: float, flat: int, *, seed: int
) -> tuple[int, int, bytes]:
    """Return random pixels in stretches of `flat`: so many colours, such a share of them clear."""
    chance = random.Random(seed)
    known = [bytes(chance.randrange(256) for _ in range(3)) for _ in range(colours)]
    made, pixel = bytearray(), b""
    for place in range(width * height):
        if place % flat == 0:
            pixel = chance.choice(known) + bytes([0 if chance.random() < clear else 255])
        made += pixel
    return width, height, bytes(made)


# Of every form: few colours, many, more than a byte numbers, flat ones, with clear pixels and without.
PICTURES = {
    "noise.png": _pixels(9, 7, 2, 0, 1, seed=1),
    "photo.png": _pixels(27, 19, 3000, 0, 1, seed=2),
    "cut.png": _pixels(21, 22, 3000, 0.1, 1, seed=3),
    "flat.png": _pixels(31, 12, 1, 0, 1, seed=4),
    "bars.png": _pixels(24, 10, 5, 0.3, 5, seed=5),
    "many.png": _pixels(22, 9, 60, 0, 9, seed=6),
    "dots.png": _pixels(26, 21, 150, 0.2, 1, seed=7),
    "nothing.png": _pixels(3, 3, 1, 1, 1, seed=8),
}
SHOWN = st.builds(
    Picture,
    PART,
    PLACE,
    PLACE,
    st.sampled_from(sorted(PICTURES)),
    st.sampled_from(("none", "ordered", "diffused")),
)


@st.composite
def meters(draw: DrawFn) -> Meter:
    """A meter, of few values or of all that 32 bits hold, with limits close together."""
    ends = -(2**31) + 1, 2**31 - 1
    least = draw(st.integers(-40, 40) | st.integers(ends[0], ends[1] - 1) | st.just(ends[0]))
    greatest = draw(st.integers(least + 1, min(least + 60, ends[1])) | st.integers(least + 1, ends[1]))
    at = sorted(draw(st.lists(st.integers(least, greatest), max_size=5, unique=True)))
    limits = tuple(MeterLimit(value, draw(MAYBE_INK), draw(st.booleans())) for value in at)
    way = st.sampled_from(("right", "left", "up", "down"))
    made = st.builds(
        Meter,
        PART,
        PLACE,
        PLACE,
        SIDE,
        SIDE,
        st.just(least),
        st.just(greatest),
        INK,
        way,
        st.just(limits),
        MAYBE_INK,
    )
    return draw(made)


PARTS: st.SearchStrategy[Part] = st.one_of(LABELS, fields(), fields(), icons(), RULES, BOXES, meters(), SHOWN)
PANELS = st.builds(
    Panel,
    st.integers(1, 33),
    st.integers(1, 25),
    st.sampled_from(("rgb565", "rgb565", "mono", "grey4", "grey16")),
    refresh=st.sampled_from(("part", "part", "whole")),
) | st.builds(
    Panel,
    st.integers(1, 33),
    st.integers(1, 25),
    st.just("indexed"),
    palette=st.sampled_from((("#ffffff", "#000000", "#c02010"), ("#000000", "#ffffff"))),
)


@st.composite
def screens(draw: DrawFn, name: str) -> Screen:
    parts = draw(st.lists(PARTS, min_size=1, max_size=10))
    named = tuple(replace(part, name=f"p{number}") for number, part in enumerate(parts))
    return Screen(name, draw(INK), named, draw(st.booleans()))


def _cleared(parts: tuple[Part, ...], clearing: Clearing) -> tuple[Part, ...]:
    made: list[Part] = []
    for part in parts:
        if isinstance(part, Field):
            padding = part.padding or (part.x - 9, part.baseline - 9, 18, 12)
            made.append(replace(part, clearing=clearing, padding=padding))
        elif isinstance(part, Icon):
            made.append(replace(part, clearing=clearing))
        elif not isinstance(part, Label):
            made.append(part)
    return tuple(made)


@st.composite
def materials(draw: DrawFn) -> Material:
    specs = TypeSpec("one", "made.bdf"), TypeSpec("two", "made.bdf")
    shown = draw(screens("first")), draw(screens("second"))
    if draw(st.booleans()):  # one clearing for all, and no labels, which clear nothing
        only: Clearing = draw(CLEARING)
        first, second = (replace(screen, parts=_cleared(screen.parts, only)) for screen in shown)
        shown = first, second
    layout = Layout(1, "made", draw(PANELS), specs, INKS, shown)
    return made_material(layout, {"one": draw(made_types()), "two": draw(made_types())})
