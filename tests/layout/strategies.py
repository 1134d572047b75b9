"""Hypothesis strategies for whole layouts whose references hold (fonts and picture files need not exist)."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal, get_args

from hypothesis import strategies as st

from panelproof.content.spec import Argument, Choice, Content, FreeText, RealRange, WholeRange
from panelproof.layout.colour import ColourFormat
from panelproof.layout.document import FORMAT, Ink, Layout, Moment, Screen, TypeSpec
from panelproof.layout.panel import Bus, Panel, Shape
from panelproof.layout.parts import (
    Align,
    Box,
    Clearing,
    Dither,
    Field,
    Growing,
    Icon,
    IconState,
    Label,
    Meter,
    MeterLimit,
    Part,
    Picture,
    Rule,
)

NAMES = st.from_regex(r"[a-z][a-z0-9]{0,7}(-[a-z0-9]{1,5}){0,2}", fullmatch=True)
COORDINATES = st.integers(-4096, 4096)
RECTANGLES = st.tuples(COORDINATES, COORDINATES, st.integers(1, 4096), st.integers(1, 4096))
TEXTS = st.text(st.sampled_from('ABCxyz 0189.:-+°µΩé漢\U0001f525"\\/'), min_size=1, max_size=12)
ALIGNS: st.SearchStrategy[Align] = st.sampled_from(get_args(Align))
CLEARINGS: st.SearchStrategy[Clearing] = st.sampled_from(get_args(Clearing))
DIRECTIONS: st.SearchStrategy[Literal["across", "down"]] = st.sampled_from(("across", "down"))
GROWING: st.SearchStrategy[Growing] = st.sampled_from(get_args(Growing))
DITHERS: st.SearchStrategy[Dither] = st.sampled_from(get_args(Dither))
FORMATS: st.SearchStrategy[ColourFormat] = st.sampled_from(get_args(ColourFormat))
COLOURS = st.sampled_from(("#000000", "#ffffff", "#c01010", "#1A2b3C"))
PERIODS = st.none() | st.integers(1, 10**9)
INT32 = st.integers(-(2**31), 2**31 - 1)
BUSES = st.builds(
    Bus, st.sampled_from(("spi", "i2c", "parallel")), st.integers(1000, 10**9), st.integers(1, 24)
)
SHAPES: st.SearchStrategy[Shape] = st.sampled_from(get_args(Shape))
PICTURES = st.sampled_from(("pump.png", "pictures/link lost.png", "Zeichen-ä.png"))
FONTS = st.sampled_from(("SourceSansPro", "fonts/kiln.bdf", "../Schrift ü.ttf"))


def _names(greatest: int, least: int = 0) -> st.SearchStrategy[list[str]]:
    return st.lists(NAMES, min_size=least, max_size=greatest, unique=True)


@st.composite
def panels(draw: st.DrawFn) -> Panel:
    """Panels whose facts fit together."""
    width, height = draw(st.integers(2, 2048)), draw(st.integers(2, 2048))
    shape = draw(SHAPES)
    sizes = st.none() | st.tuples(*[st.floats(0.5, 10000, width=32)] * 2)
    width_mm, height_mm = draw(sizes) or (None, None)
    colour_format = draw(FORMATS)
    palette = draw(st.lists(COLOURS, min_size=2, max_size=7)) if colour_format == "indexed" else []
    return Panel(
        width,
        width if shape == "round" else height,
        colour_format,
        shape,
        draw(st.integers(1, min(width, height, 2048) // 2)) if shape == "rounded" else 0,
        draw(st.sampled_from(("part", "whole"))),
        width_mm,
        height_mm,
        draw(st.sampled_from(("", "1.14 inch, 240 × 135"))),
        tuple(palette),
        draw(st.none() | BUSES),
        draw(st.tuples(*[st.integers(0, 4096)] * 2)),
    )


@st.composite
def whole_ranges(draw: st.DrawFn, least: int = -(2**31), greatest: int = 2**31 - 1) -> WholeRange:
    """Whole ranges, by default of 32 bits."""
    low, high = sorted(draw(st.tuples(*[st.integers(least, greatest)] * 2)))
    return WholeRange(low, high, draw(st.sampled_from((1, 1, 2, 5))))


@st.composite
def real_ranges(draw: st.DrawFn) -> RealRange:
    """Real ranges within ±100 000."""
    low, high = sorted(draw(st.tuples(*[st.floats(-1e5, 1e5)] * 2)))
    return RealRange(low, high)


CHOICES = st.builds(Choice, st.lists(TEXTS, min_size=1, max_size=4, unique=True).map(tuple))
FREE_TEXTS = st.builds(
    FreeText,
    st.integers(2, 8),
    st.integers(0, 2),
    st.just("0123456789 "),
    st.sampled_from(((), (("a", "f"),), (("A", "Z"), ("a", "z")))),
)


@st.composite
def contents(draw: st.DrawFn) -> Content:
    """Contents that have a word graph."""
    pieces: list[str] = []
    arguments: list[Argument] = []
    for _ in range(draw(st.integers(0, 2))):
        conversion, argument = draw(
            st.one_of(
                st.tuples(st.sampled_from(("%d", "%5d", "%+03d")), whole_ranges()),
                st.tuples(st.sampled_from(("%u", "%04x")), whole_ranges(0, 2**32 - 1)),
                st.tuples(st.sampled_from(("%.1f", "%6.2f", "%.0f")), real_ranges()),
                st.tuples(st.sampled_from(("%s", "%-8s")), CHOICES | FREE_TEXTS),
            )
        )
        pieces += [draw(st.sampled_from(("", " ", "T "))), conversion]
        arguments.append(argument)
    pieces.append(draw(st.sampled_from(("°C", " %%", "ready"))))
    return Content(
        "".join(pieces),
        tuple(arguments),
        draw(st.none() | TEXTS),
        draw(st.none() | TEXTS),
        draw(st.lists(TEXTS, max_size=2).map(tuple)),
    )


@st.composite
def bitmaps(draw: st.DrawFn) -> tuple[str, ...]:
    """Rows of an icon state, all of one length."""
    width = draw(st.integers(1, 12))
    row = st.text("#.", min_size=width, max_size=width)
    return tuple(draw(st.lists(row, min_size=1, max_size=6)))


@st.composite
def icon_states(draw: st.DrawFn, inks: list[str]) -> tuple[IconState, ...]:
    """The states of one icon; one in four is a picture file."""
    states = []
    for name in draw(_names(3, 1)):
        ink = draw(st.none() | st.sampled_from(inks))
        if draw(st.integers(0, 3)):
            states.append(IconState(name, draw(bitmaps()), None, ink))
        else:
            states.append(IconState(name, (), draw(PICTURES), ink))
    return tuple(states)


@st.composite
def meters(draw: st.DrawFn, name: str, inks: list[str]) -> Meter:
    """A meter whose range and limits rise."""
    ink, ground = st.sampled_from(inks), st.none() | st.sampled_from(inks)
    least, greatest = sorted(
        draw(st.lists(st.integers(-(2**31) + 1, 2**31 - 1), min_size=2, max_size=2, unique=True))
    )
    at = sorted(draw(st.lists(st.integers(least, greatest), max_size=3, unique=True)))
    limits = tuple(MeterLimit(value, draw(ground), draw(st.booleans())) for value in at)
    x, y, width, height = draw(RECTANGLES)
    return Meter(
        name, x, y, width, height, least, greatest, draw(ink), draw(GROWING), limits, draw(ground), draw(PERIODS)
    )  # fmt: skip


@st.composite
def parts(draw: st.DrawFn, name: str, types: list[str], inks: list[str]) -> Part:
    """A part of any kind that refers to these types and inks (no text where there are no types)."""
    ink, ground = st.sampled_from(inks), st.none() | st.sampled_from(inks)
    kind = draw(
        st.sampled_from((*(("label", "field") if types else ()), "icon", "rule", "box", "meter", "picture"))
    )
    if kind == "meter":
        return draw(meters(name, inks))
    x, y = draw(COORDINATES), draw(COORDINATES)
    clearing = draw(CLEARINGS)
    padding = draw(RECTANGLES if clearing in {"pad", "box"} else st.none() | RECTANGLES)
    if kind == "picture":
        return Picture(name, x, y, draw(PICTURES), draw(DITHERS))
    if kind == "label":
        type_ = draw(st.sampled_from(types))
        return Label(name, draw(TEXTS), type_, draw(ink), x, y, draw(ALIGNS), draw(ground))
    if kind == "field":
        type_, buffer = draw(st.sampled_from(types)), draw(st.none() | st.integers(1, 65535))
        content, align = draw(contents()), draw(ALIGNS)
        return Field(
            name, content, type_, draw(ink), x, y, align, draw(ground), clearing, padding, buffer, draw(PERIODS)
        )  # fmt: skip
    if kind == "icon":
        padding = draw(st.none() | RECTANGLES)
        states, link = draw(icon_states(inks)), draw(st.booleans())
        return Icon(name, x, y, draw(ink), states, draw(ground), clearing, padding, link, draw(PERIODS))
    if kind == "rule":
        direction = draw(DIRECTIONS)
        return Rule(name, x, y, draw(st.integers(1, 4096)), draw(ink), direction, draw(st.integers(1, 256)))
    width, height = draw(st.integers(2, 4096)), draw(st.integers(2, 4096))
    fill, outline = draw(ground), draw(ground)
    thickness = draw(st.integers(1, min(256, width // 2, height // 2)))
    return Box(name, x, y, width, height, fill, outline or (None if fill else draw(ink)), thickness)


def _steps(numbers: WholeRange) -> st.SearchStrategy[int]:
    count = (numbers.greatest - numbers.least) // numbers.step
    return st.integers(0, count).map(lambda step: numbers.least + step * numbers.step)


def values(content: Content) -> st.SearchStrategy[Any]:
    """Values of a field in a moment: a list of arguments in their ranges, or one of the further texts."""
    arguments: list[st.SearchStrategy[Any]] = []
    for argument in content.arguments:
        match argument:
            case WholeRange():
                arguments.append(_steps(argument))
            case RealRange(least, greatest):
                arguments.append(st.floats(least, greatest))
            case Choice(texts):
                arguments.append(st.sampled_from(texts))
            case FreeText(longest, shortest):
                arguments.append(st.text("0123456789 ", min_size=shortest, max_size=longest))
    further = [text for text in (content.fault, content.first, *content.also) if text is not None]
    listed = st.tuples(*arguments)
    return listed | st.sampled_from(further) if further else listed


@st.composite
def moments(draw: st.DrawFn, name: str, screen: Screen) -> Moment:
    """A moment of a screen, complete, its values in any order."""
    shuffled = draw(st.permutations(screen.parts))
    fields = {part.name: draw(values(part.content)) for part in shuffled if isinstance(part, Field)}
    icons = {
        part.name: draw(st.sampled_from([state.name for state in part.states]))
        for part in shuffled
        if isinstance(part, Icon)
    }
    levels = {part.name: draw(st.none() | INT32) for part in shuffled if isinstance(part, Meter)}
    return Moment(name, screen.name, fields, icons, levels)


@st.composite
def screens(draw: st.DrawFn, name: str, types: list[str], inks: list[str]) -> Screen:
    """A screen of up to four parts."""
    made = tuple(draw(parts(part, types, inks)) for part in draw(_names(4)))
    return Screen(name, draw(st.sampled_from(inks)), made, draw(st.booleans()))


@st.composite
def layouts(draw: st.DrawFn) -> Layout:
    """Whole layouts, of every part, shape and refresh."""
    panel = draw(panels())
    renderings = ("one-bit", "antialiased") if panel.colours.blends else ("one-bit",)
    types = tuple(
        TypeSpec(
            name,
            draw(FONTS),
            draw(st.none() | st.integers(1, 512)),
            draw(st.sampled_from(renderings)),
            draw(st.booleans()),
            draw(st.booleans()),
        )
        for name in draw(_names(2))
    )
    inks = tuple(
        Ink(name, draw(st.sampled_from(("#000000", "#ffb000", "#1A2b3C")))) for name in draw(_names(3, 1))
    )
    type_names, ink_names = [spec.name for spec in types], [ink.name for ink in inks]
    made = tuple(draw(screens(name, type_names, ink_names)) for name in draw(_names(2)))
    named = draw(_names(2)) if made else []
    shown = tuple(draw(moments(name, draw(st.sampled_from(made)))) for name in named)
    return Layout(FORMAT, draw(NAMES), panel, types, inks, made, shown)


def places(tree: object) -> list[tuple[str | int, ...]]:
    """Return the path of every value in a tree of plain values, the tree's own first."""
    found: list[tuple[str | int, ...]] = [()]
    entries: list[tuple[str | int, object]] = []
    if isinstance(tree, Mapping):
        entries = list(tree.items())
    elif isinstance(tree, list | tuple):
        entries = list(enumerate(tree))
    for key, entry in entries:
        found += [(key, *rest) for rest in places(entry)]
    return found
