"""What parts paint, against the slow drawing of `naive`, pixel by pixel."""

from __future__ import annotations

import subprocess
import sys
from collections import Counter
from pathlib import Path
from time import perf_counter
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from tests.picture import naive, tank

from panelproof.content.spec import Content
from panelproof.dithering import dithered
from panelproof.glyphs.type import open_type
from panelproof.ink.bitmap import from_text
from panelproof.layout import colour
from panelproof.layout.document import Layout, Screen
from panelproof.layout.panel import Panel
from panelproof.layout.parts import (
    Box,
    Clearing,
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
from panelproof.material import Material
from panelproof.picture import drawing
from panelproof.picture.drawing import Copy, Fill, Operation, Paint
from panelproof.picture.frame import draw, draw_screen, new_frame, update_field, update_icon, update_meter
from panelproof.picture.values import Values
from panelproof.problem import Problem

WIDTH, HEIGHT = 34, 22
# Pairs that Source Sans kerns, marks that reach far out, a space, and a character that no type here has.
TEXTS = st.text("AVTo.,j°f10 \u4e2d", max_size=6)
PANELS = [
    Panel(WIDTH, HEIGHT),
    Panel(WIDTH, HEIGHT, "mono"),
    Panel(WIDTH, HEIGHT, refresh="whole"),
    Panel(WIDTH, HEIGHT, "grey4"),
    Panel(WIDTH, HEIGHT, "grey16"),
    Panel(WIDTH, HEIGHT, "indexed", palette=("#ffffff", "#000000", "#d02020"), refresh="whole"),
]
INK_NAMES = st.sampled_from([ink.name for ink in tank.INKS])
CLEARINGS: list[Clearing] = ["none", "cell", "pad", "box"]


@pytest.fixture(scope="module")
def types(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    tiny = tmp_path_factory.mktemp("fonts") / "tiny.bdf"
    Path(tiny).write_text(tank.TINY_BDF, encoding="ascii")
    return {
        "tiny": open_type(tiny, None, "one-bit", False, True),
        "plain": open_type(tank.SANS, 12, "one-bit", True, True),
        "soft": open_type(tank.SANS, 13, "antialiased", True, True),
    }


rectangles = st.tuples(
    st.integers(-8, WIDTH + 2),
    st.integers(-8, HEIGHT + 2),
    st.integers(1, WIDTH + 12),
    st.integers(1, HEIGHT + 12),
)
bitmaps = st.integers(1, 6).flatmap(
    lambda width: st.lists(st.text("#.", min_size=width, max_size=width), min_size=1, max_size=6).map(tuple)
)


@st.composite
def texts_of(draw: st.DrawFn) -> dict[str, Any]:
    return {
        "type": draw(st.sampled_from(["tiny", "plain", "soft"])),
        "ink": draw(INK_NAMES),
        "x": draw(st.integers(-6, WIDTH + 6)),
        "baseline": draw(st.integers(-4, HEIGHT + 8)),
        "align": draw(st.sampled_from(["left", "centre", "right"])),
        "ground": draw(st.none() | INK_NAMES),
    }


@st.composite
def fields(draw: st.DrawFn, name: str) -> Field:
    clearing = draw(st.sampled_from(CLEARINGS))
    padding = draw(rectangles if clearing in ("pad", "box") else st.none() | rectangles)
    return Field(name=name, content=Content("x"), clearing=clearing, padding=padding, **draw(texts_of()))


@st.composite
def icons(draw: st.DrawFn, name: str) -> Icon:
    states = tuple(
        IconState(f"s{number}", rows, None, draw(st.none() | INK_NAMES))
        for number, rows in enumerate(draw(st.lists(bitmaps, min_size=1, max_size=3)))
    )
    return Icon(
        name, draw(st.integers(-4, WIDTH)), draw(st.integers(-4, HEIGHT)), draw(INK_NAMES), states,
        draw(st.none() | INK_NAMES), draw(st.sampled_from(CLEARINGS)),
        draw(st.none() | rectangles),
    )  # fmt: skip


@st.composite
def boxes(draw: st.DrawFn, name: str) -> Box:
    fill, outline = draw(st.none() | INK_NAMES), draw(st.none() | INK_NAMES)
    return Box(name, *draw(rectangles), fill, outline, draw(st.integers(1, 9)))


@st.composite
def rules(draw: st.DrawFn, name: str) -> Rule:
    x, y, length, thickness = draw(rectangles)
    return Rule(name, x, y, length, draw(INK_NAMES), draw(st.sampled_from(["across", "down"])), thickness)


@st.composite
def meters(draw: st.DrawFn, name: str) -> Meter:
    least = draw(st.integers(-300, 300))
    greatest = least + draw(st.integers(1, 60) | st.integers(1000, 10**9))
    at = sorted(draw(st.lists(st.integers(least, greatest), max_size=4, unique=True)))
    ink = st.none() | INK_NAMES
    limits = tuple(MeterLimit(value, draw(ink), draw(st.booleans())) for value in at)
    growing: st.SearchStrategy[Growing] = st.sampled_from(["right", "left", "up", "down"])
    return Meter(name, *draw(rectangles), least, greatest, draw(INK_NAMES), draw(growing), limits, draw(ink))


def levels_of(meter: Meter) -> st.SearchStrategy[int | None]:
    near = st.integers(meter.least - 3, meter.greatest + 3)
    at = [meter.least, meter.greatest, *(limit.at for limit in meter.limits)]
    return st.none() | near | st.sampled_from(at)


@st.composite
def pictures(draw: st.DrawFn) -> tuple[Picture, int, int, bytes]:
    """A picture and its pixels."""
    width, height = draw(st.integers(1, 12)), draw(st.integers(1, 12))
    pixels = draw(st.binary(min_size=4 * width * height, max_size=4 * width * height))
    x, y, _, _ = draw(rectangles)
    part = Picture("picture", x, y, "made.png", draw(st.sampled_from(["none", "ordered", "diffused"])))
    return part, width, height, pixels


@st.composite
def whole_screens(draw: st.DrawFn) -> tuple[Panel, Screen, tuple[int, int, bytes]]:
    label = Label(name="label", text=draw(TEXTS), **draw(texts_of()))
    picture, width, height, pixels = draw(pictures())
    parts: list[Part] = [
        draw(boxes("box")), draw(rules("rule")), label, picture,
        draw(fields("one")), draw(icons("icon")), draw(fields("two")), draw(meters("meter")),
    ]  # fmt: skip
    screen = Screen("screen", draw(INK_NAMES), tuple(draw(st.permutations(parts))), draw(st.booleans()))
    return draw(st.sampled_from(PANELS)), screen, (width, height, pixels)


def made(
    types: dict[str, Any],
    panel: Panel,
    screen: Screen,
    pixels: tuple[int, int, bytes] = (1, 1, bytes(4)),
) -> Material:
    layout = Layout(1, "made", panel, (), tank.INKS, (screen,))
    states = [state for part in screen.parts if isinstance(part, Icon) for state in part.states]
    bitmaps_ = {state: from_text(state.rows) for state in states}
    inks = {ink.name: colour.parse(ink.colour) for ink in tank.INKS}
    shown = [part for part in screen.parts if isinstance(part, Picture)]
    rasters = {(part.picture, part.dither): dithered(*pixels, part.dither, panel.colours) for part in shown}
    return Material(layout, Path(), types, bitmaps_, inks, rasters)


def as_codes(picture: naive.Picture) -> np.ndarray[Any, Any]:
    return np.array([[picture[x, y] for x in range(WIDTH)] for y in range(HEIGHT)])


@settings(max_examples=200, deadline=None)
@given(data=st.data(), made_of=whole_screens())
def test_screens_and_updates_paint_what_the_rules_say(
    types: dict[str, Any], data: st.DataObject, made_of: tuple[Panel, Screen, tuple[int, int, bytes]]
) -> None:
    panel, screen, pixels = made_of
    material = made(types, panel, screen, pixels)
    by_name = {part.name: part for part in screen.parts}
    icon = by_name["icon"]
    assert isinstance(icon, Icon)
    states = st.sampled_from([state.name for state in icon.states])
    meter = by_name["meter"]
    assert isinstance(meter, Meter)

    level = data.draw(levels_of(meter))
    now: dict[str, Any] = {"one": data.draw(TEXTS), "two": data.draw(TEXTS), "icon": data.draw(states)}
    frame = new_frame(panel, 1)
    values = Values({k: now[k] for k in ("one", "two")}, {"icon": now["icon"]}, {"meter": level})
    draw_screen(frame, material, screen, values)
    now["meter"] = level
    picture = dict.fromkeys(naive.everywhere(material), 1)
    if screen.clears or panel.refresh == "whole":
        picture = dict.fromkeys(picture, naive.code(material, screen.ground))
    for part in screen.parts:
        naive.paint(material, screen, part, now.get(part.name, getattr(part, "text", "")), picture)
    np.testing.assert_array_equal(frame.codes, as_codes(picture))

    for _ in range(4):
        name = data.draw(st.sampled_from(["one", "two", "icon", "meter"]))
        part = by_name[name]
        value: Any = data.draw({"icon": states, "meter": levels_of(meter)}.get(name, TEXTS))
        if isinstance(part, Field):
            update_field(frame, material, screen, part, value)
        elif part is meter:
            update_meter(frame, material, screen, meter, value)
        else:
            update_icon(frame, material, screen, icon, value)
        naive.paint(material, screen, part, value, picture)
        np.testing.assert_array_equal(frame.codes, as_codes(picture))


def times_painted(operations: tuple[Operation, ...]) -> Counter[tuple[int, int]]:
    return Counter(pixel for operation in operations for pixel in operation.painted().pixels())


@settings(max_examples=150, deadline=None)
@given(data=st.data(), text=TEXTS)
def test_an_update_paints_each_pixel_once_and_knows_what_it_inks(
    types: dict[str, Any], data: st.DataObject, text: str
) -> None:
    field = data.draw(fields("one"))
    screen = Screen("screen", "night", (field,))
    material = made(types, PANELS[0], screen)
    operations = drawing.field(material, screen, field, text)
    times = times_painted(operations)
    inked = set(drawing.inked_by(operations).pixels())
    if field.clearing != "box":
        assert not times or max(times.values()) == 1
    else:
        assert all(count == 1 + (pixel in inked) for pixel, count in times.items())

    picture = dict.fromkeys(naive.everywhere(material), 1)
    assert naive.paint(material, screen, field, text, picture) == set(times)
    levels, _, _ = naive.text_levels(material, field, text)
    wanted = {p for p in levels if p in picture and naive.inside(p, field.padding)}
    assert inked == wanted
    assert set(drawing.painted_by(operations).pixels()) == set(times)


@settings(max_examples=150, deadline=None)
@given(data=st.data(), meter=meters("meter"))
def test_a_meters_update_paints_each_of_its_pixels_once(
    types: dict[str, Any], data: st.DataObject, meter: Meter
) -> None:
    screen = Screen("screen", "night", (meter,))
    value = data.draw(levels_of(meter))
    operations = drawing.meter(made(types, PANELS[0], screen), screen, meter, value)
    times = times_painted(operations)
    on_panel = {
        (x, y)
        for x in range(max(meter.x, 0), min(meter.x + meter.width, WIDTH))
        for y in range(max(meter.y, 0), min(meter.y + meter.height, HEIGHT))
    }
    assert set(times) == on_panel and set(times.values()) <= {1}
    inked = {(x, y) for x, y in on_panel if naive.meter_ink(meter, value, x - meter.x, y - meter.y)}
    assert set(drawing.inked_by(operations).pixels()) == inked


@settings(max_examples=80, deadline=None)
@given(box=boxes("box"))
def test_a_box_paints_its_outline_once(types: dict[str, Any], box: Box) -> None:
    screen = Screen("screen", "night", (box,))
    outline = drawing.box(made(types, PANELS[0], screen), box)[1 if box.fill else 0 :]
    times = times_painted(outline)
    assert not times or max(times.values()) == 1


@settings(max_examples=80, deadline=None)
@given(made_of=whole_screens())
def test_operations_lie_on_the_panel_and_are_well_formed(
    types: dict[str, Any], made_of: tuple[Panel, Screen, tuple[int, int, bytes]]
) -> None:
    panel, screen, pixels = made_of
    icon = next(part for part in screen.parts if isinstance(part, Icon))
    values = Values({"one": "AVj°", "two": "1.0"}, {"icon": icon.states[0].name}, {"meter": None})
    for operation in drawing.screen_operations(made(types, panel, screen, pixels), screen, values):
        assert operation.width > 0 and operation.height > 0
        assert operation.x >= 0 and operation.x + operation.width <= WIDTH
        assert operation.y >= 0 and operation.y + operation.height <= HEIGHT
        if isinstance(operation, Paint):
            assert len(operation.levels) == operation.width * operation.height
            assert max(operation.levels) < len(operation.ramp)
            assert operation.opaque or any(operation.levels)
        if isinstance(operation, Copy):
            assert len(operation.codes) == 2 * operation.width * operation.height
            assert operation.mask and operation.mask.frame == (
                operation.x, operation.y, operation.width, operation.height
            )  # fmt: skip


def test_the_tiny_font_as_drawn_by_hand(types: dict[str, Any]) -> None:
    """The rows of TINY_BDF, set by hand: `j` reaches over `1`, and the padding box cuts `0`."""
    field = Field("one", Content("x"), "tiny", "chalk", 4, 6, clearing="box", padding=(1, 1, 10, 8))
    screen = Screen("screen", "night", (field,))
    material = made(types, PANELS[1], screen)
    frame = new_frame(PANELS[1])
    update_field(frame, material, screen, field, "j10")
    shown = ["".join(".#"[code] for code in row[:13]) for row in frame.codes[:10]]
    assert shown == [
        ".............",
        "......##.##..",
        "......##.#...",
        ".....###.#...",
        "......##.#...",
        "......#####..",
        "..#...#......",
        "...###.......",
        ".............",
        ".............",
    ]


def test_what_cannot_be_drawn_is_told() -> None:
    material = tank.tank()
    screen = material.screen("readings")
    field = Field("level", tank.LEVEL, "large", "chalk", 60, 40)
    with pytest.raises(Problem, match="the field `level` is cleared by `pad` but has no padding box"):
        drawing.field(material, screen, field, "1.0")
    with pytest.raises(Problem, match="no text is given for the field `level` of the screen `readings`"):
        list(drawing.screen_operations(material, screen, Values()))
    icon = next(part for part in screen.parts if isinstance(part, Icon))
    with pytest.raises(Problem, match="the icon `link` has no state `gone`; its states are on, off, fault"):
        drawing.icon(material, screen, icon, "gone")
    with pytest.raises(Problem, match="no state is given for the icon `link`"):
        list(drawing.screen_operations(material, screen, Values({"level": "", "flow": "", "mode": ""})))
    meter = Meter("depth", 0, 0, 9, 9, 0, 5, "water")
    with pytest.raises(Problem, match="no value is given for the meter `depth` of the screen `readings`"):
        drawing.part(material, screen, meter, Values({"depth": "3"}))


def test_a_pad_update_is_one_operation_and_a_box_update_two() -> None:
    """What flickers can be read off the operations: `box` shows its ground before the ink."""
    material = tank.tank()
    screen = material.screen("readings")
    by_name = {part.name: part for part in screen.parts}
    level, mode = by_name["level"], by_name["mode"]
    assert isinstance(level, Field) and isinstance(mode, Field)
    (only,) = drawing.field(material, screen, level, "121.5")
    assert isinstance(only, Paint) and only.opaque
    assert (only.x, only.y, only.width, only.height) == level.padding
    ground, ink = drawing.field(material, screen, mode, "resting")
    assert ground == Fill(68, 49, 48, 14, material.code("slate"))
    assert isinstance(ink, Paint) and not ink.opaque
    frame = new_frame(material.layout.panel)
    draw(frame, (ground, ink))
    assert int(frame.codes[49, 68]) == material.code("slate")


def test_forty_parts_are_drawn_within_5_ms() -> None:
    """The editor's need, with everything warm; the best of many, since other work may interrupt."""
    parts: list[Part] = []
    for row in range(10):
        y = 28 + 21 * row
        parts += [
            Label(f"caption-{row}", "Level", "small", "chalk", 4, y),
            Field(f"level-{row}", tank.LEVEL, "large", "chalk", 130, y, padding=(60, y - 24, 76, 28)),
            Field(f"flow-{row}", tank.FLOW, "small", "water", 150, y, padding=(150, y - 12, 80, 16)),
            tank.icon(f"link-{row}", tank.LINK, 260, y - 10),
        ]
    screen = Screen("forty", "night", tuple(parts))
    material = tank.material(replace(tank.layout(Panel(320, 240)), screens=(screen,), moments=()))
    texts = {part.name: "121.5" for part in parts if isinstance(part, Field)}
    values = Values(texts, {part.name: "off" for part in parts if isinstance(part, Icon)})
    frame, times = new_frame(material.layout.panel), []
    for _ in range(30):
        begin = perf_counter()
        draw_screen(frame, material, screen, values)
        times.append(perf_counter() - begin)
    assert len(parts) == 40 and min(times) < 0.005


def test_the_model_needs_neither_numpy_nor_pillow() -> None:
    """The firmware exporter stands on it and has to start fast."""
    program = (
        "import sys; import panelproof.picture.drawing, panelproof.picture.moments;"
        "sys.exit(bool({'numpy', 'PIL', 'fontTools', 'freetype'} & set(sys.modules)))"
    )
    assert subprocess.run([sys.executable, "-c", program], check=False).returncode == 0
