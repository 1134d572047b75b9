"""Level bars and pictures in the header: the compiled code against the drawing room, and the forms of pictures."""

from __future__ import annotations

import random
import subprocess
from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from PIL import Image
from tests.firmware.harness import SANITIZERS, WARNINGS, build, compiled
from tests.firmware.layouts import INKS, SANS, some_level
from tests.firmware.playing import agree, play, wander
from tests.firmware.strategies import PICTURES, made_material, meters

from panelproof.dithering import dithered
from panelproof.firmware import bus
from panelproof.firmware.header import header
from panelproof.firmware.levels import changed
from panelproof.firmware.rasters import COUNTED, DIRECT, PACKED, RUNS, Stream, areas, encoded, stream
from panelproof.firmware.reading import parsed
from panelproof.firmware.verify import differences
from panelproof.ink.mask import from_rows, union
from panelproof.layout import level
from panelproof.layout.colour import Colours
from panelproof.layout.document import Layout, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Label, Meter, MeterLimit, Part, Picture
from panelproof.material import Material, gather
from panelproof.picture import drawing
from panelproof.picture import frame as frames
from panelproof.picture.values import Values

DEPTH = Meter(
    "depth", 4, 4, 60, 7, 0, 2500, "water",
    limits=(MeterLimit(300, "rust"), MeterLimit(2000, "chalk", mark=False), MeterLimit(2500)),
)  # fmt: skip
FLOW = Meter("flow", 70, 2, 6, 40, -20, 900, "chalk", "up", (MeterLimit(700, "rust"),), "slate")
BACK = replace(FLOW, name="back", x=80, direction="down")
LEFT = replace(
    DEPTH,
    name="int",
    y=16,
    direction="left",
    least=-(2**31) + 1,
    greatest=2**31 - 1,
    limits=(MeterLimit(-7, "rust"), MeterLimit(10**9)),
)


def levels(*parts: Part, panel: Panel | None = None) -> Material:
    screen = Screen("main", "night", parts or (DEPTH, FLOW, BACK, LEFT))
    return made_material(Layout(1, "tank", panel or Panel(96, 48), (), INKS, (screen,)), {})


@pytest.mark.parametrize("refresh", ["part", "whole"])
def test_bars_of_every_way_over_many_values(tmp_path: Path, refresh: str) -> None:
    material = levels(panel=Panel(96, 48, refresh=refresh))  # type: ignore[arg-type]
    program = build(material, tmp_path)
    agree(play(program, 200, random.Random(1)), program.run())


@pytest.mark.parametrize("part", [DEPTH, FLOW, BACK, LEFT], ids=lambda part: part.direction)
def test_one_bar_alone(tmp_path: Path, part: Meter) -> None:
    program = build(levels(part), tmp_path)
    agree(play(program, 200, random.Random(2)), program.run())


def test_each_value_of_a_range_as_drawn(tmp_path: Path) -> None:
    material = levels(replace(DEPTH, greatest=217, width=61, limits=(MeterLimit(80, "rust"), MeterLimit(81))))
    program = build(material, tmp_path)
    (screen,) = material.layout.screens
    (part,) = screen.parts
    assert isinstance(part, Meter)
    frame, expected = frames.new_frame(material.layout.panel, 0), []
    for value in (*range(-2, 220), None):
        program.update_meter(screen, part, value)
        program.frame()
        frames.update_meter(frame, material, screen, part, value)
        expected.append((frame.copy(), str(value)))
    agree(expected, program.run())


def test_an_update_is_one_window_and_each_pixel_once(tmp_path: Path) -> None:
    program = build(levels(), tmp_path)
    (screen,) = program.material.layout.screens
    for part in (DEPTH, FLOW, LEFT):
        for value in (part.least, 100, part.greatest, None):
            program.update_meter(screen, part, value)
            program.frame()
    answers = iter(program.run())
    for part in (DEPTH, FLOW, LEFT):
        box = np.zeros((48, 96), dtype=np.uint8)
        box[part.y : part.y + part.height, part.x : part.x + part.width] = 1
        for value in (part.least, 100, part.greatest, None):
            answer = next(answers)
            assert np.array_equal(answer.touched, box) and answer.windows == 1
            if part is FLOW and value is not None:
                # Upright bars go on in one run over rows of one colour; a mark takes two more.
                assert answer.runs <= 4


def test_a_change_paints_what_differs_and_hardly_more(tmp_path: Path) -> None:
    """Just the rectangle that `changed` tells; of its pixels only those of marks may stay as they are."""
    program = build(levels(), tmp_path)
    (screen,) = program.material.layout.screens
    chance, expected = random.Random(6), []
    for part in (DEPTH, FLOW, BACK, LEFT):
        for _ in range(150):
            former, value = some_level(part, chance), some_level(part, chance)
            program.update_meter(screen, part, former)
            program.frame()
            program.change_meter(screen, part, former, value)
            program.frame()
            expected.append((part, former, value))
    answers = iter(program.run())
    for part, former, value in expected:
        before, after = next(answers), next(answers)
        area = changed(part, former, value)
        box = np.zeros((48, 96), dtype=np.uint8)
        if area is not None:
            x, y, width, height = area
            box[y : y + height, x : x + width] = 1
        assert np.array_equal(after.touched, box), (part.name, former, value)
        differs = before.codes != after.codes
        assert not (differs & (box == 0)).any()
        # A line of a mark a limit at most, the row and the column of the fault pattern where it comes or goes.
        if level.can_show(part, former) and level.can_show(part, value) and area is not None:
            across = part.height if part.direction in ("left", "right") else part.width
            assert int(box.sum()) - int(differs.sum()) <= across * len(part.limits)


def test_a_step_by_one_sends_one_column_at_most(tmp_path: Path) -> None:
    bar = replace(DEPTH, limits=())
    for value in range(0, 2500, 7):
        area = changed(bar, value, value + 1)
        assert area is None or (area[2], area[3]) == (1, 7)
    assert changed(DEPTH, 299, 300) == (4, 4, 7, 7)
    assert changed(DEPTH, None, 2501) is None and changed(DEPTH, None, 5) == (4, 4, 60, 7)


def test_after_thousands_of_updates_nothing_old_is_left(tmp_path: Path) -> None:
    program = build(levels(), tmp_path)
    for seed in range(3):
        wander(program, program.material.layout.screens[0], 2000, random.Random(seed))


SHARE = r"""
#define TANK_IMPLEMENTATION
#include "layout.h"
#include <stdio.h>
int main(void)
{
    unsigned long part, whole;
    unsigned length;
    while (scanf("%lu %lu %u", &part, &whole, &length) == 3)
        printf("%u\n", (unsigned)tank_share_((uint32_t)part, (uint32_t)whole, (uint16_t)length));
    return 0;
}
"""


def test_shares_are_exact_over_all_that_32_bits_hold(tmp_path: Path) -> None:
    """Against Python's whole numbers; the code has no product of more than 32 bits and no division."""
    (tmp_path / "layout.h").write_text(header(levels()), encoding="ascii")
    (tmp_path / "share.c").write_text(SHARE, encoding="ascii")
    compiled(
        tmp_path,
        ["-std=c99", "-O1", *WARNINGS, "-Wno-unused-function", *SANITIZERS, "share.c", "-o", "share"],
    )
    chance, asked = random.Random(5), []
    for _ in range(20000):
        whole = chance.choice(
            (chance.randint(1, 50), chance.randint(1, 2**32 - 2), 2**32 - 2, 2**31, 2**31 + 1)
        )
        part = chance.choice((0, whole, whole - 1, chance.randint(0, whole), chance.randint(0, whole)))
        asked.append((part, whole, chance.choice((1, 2, 4096, 4095, chance.randint(1, 4096)))))
    told = "".join(f"{part} {whole} {length}\n" for part, whole, length in asked)
    done = subprocess.run([tmp_path / "share"], input=told, capture_output=True, text=True, check=True)
    assert [int(line) for line in done.stdout.split()] == [p * n // w for p, w, n in asked]


@settings(max_examples=200, deadline=None)
@given(meters(), st.data())
def test_the_bitwise_share_is_the_fraction(part: Meter, data: st.DataObject) -> None:
    """The same steps in Python as in C, against a fraction."""
    whole = part.greatest - part.least
    above = data.draw(st.integers(0, whole))
    length, rest, share, bit = part.width, 0, 0, 0x1000
    while bit:
        share <<= 1
        for step in (rest, above if length & bit else 0):
            rest += step
            if rest >= whole:
                rest, share = rest - whole, share + 1
        bit >>= 1
    assert share == Fraction(above * length, whole) // 1


# -- pictures ----------------------------------------------------------------------------------------------


def undone(made: Stream, count: int) -> list[int]:
    """Decode by the description of each form, bit by bit."""
    if made.form == DIRECT:
        return [made.dots[2 * at] | made.dots[2 * at + 1] << 8 for at in range(count)]
    numbers: list[int] = []
    if made.form == PACKED:
        bits = [byte >> bit & 1 for byte in made.dots for bit in range(8)]
        groups = [bits[at : at + made.bits] for at in range(0, len(bits), made.bits)]
        numbers = [sum(bit << place for place, bit in enumerate(group)) for group in groups][:count]
    if made.form == RUNS:
        for byte in made.dots:
            numbers += [byte % (1 << made.bits)] * (byte // (1 << made.bits) + 1)
    if made.form == COUNTED:
        for at in range(0, len(made.dots), 2):
            numbers += [made.dots[at + 1]] * (made.dots[at] + 1)
    return [made.colours[number] for number in numbers]


@settings(max_examples=200, deadline=None)
@given(st.data())
def test_every_form_gives_the_pixels_back(data: st.DataObject) -> None:
    count = data.draw(st.sampled_from((1, 2, 3, 5, 17, 40, 200, 256, 300)))
    stretch = data.draw(st.sampled_from((1, 1, 3, 40, 400)))
    chance = random.Random(data.draw(st.integers(0, 10**6)))
    codes = [code for _ in range(count) for code in [chance.randrange(65536)] * chance.randint(1, stretch)]
    made = stream(codes)
    assert undone(made, len(codes)) == codes
    assert made.size <= 2 * len(codes)


def test_the_smallest_form_is_taken() -> None:
    assert stream([7] * 64).form == RUNS
    assert stream([n % 3 for n in range(64)]).form == PACKED
    assert stream([n // 100 for n in range(3000)]).form == COUNTED
    assert stream([n * 7 for n in range(300)]).form == DIRECT
    assert stream([n * 7 for n in range(200)]).form == DIRECT
    assert stream([n % 200 for n in range(3000)]).form == PACKED


@settings(max_examples=100, deadline=None)
@given(st.integers(1, 12), st.lists(st.integers(0, 4095), min_size=1, max_size=8))
def test_rectangles_hold_each_pixel_once(width: int, rows: list[int]) -> None:
    mask = from_rows(3, 2, width, [row % (1 << width) for row in rows])
    found = areas(mask)
    covered = [
        (x, y)
        for left, top, wide, high in found
        for y in range(top, top + high)
        for x in range(left, left + wide)
    ]
    assert sorted(covered) == sorted(mask.pixels()) and len(set(covered)) == len(covered)
    assert not mask or union([mask], mask.frame).same_pixels(mask)


def test_a_whole_picture_is_one_rectangle() -> None:
    made = dithered(*PICTURES["photo.png"], "none", Colours("rgb565"))
    (area,), pixels = encoded(made)
    assert area == (0, 0, 27, 19) and pixels.form == DIRECT


@pytest.mark.parametrize("name", sorted(PICTURES))
@pytest.mark.parametrize("colours", ["rgb565", "mono", "grey16"])
def test_pictures_as_previewed(tmp_path: Path, name: str, colours: str) -> None:
    """On the panel, over each of its edges, and off it."""
    places = ((3, 3), (-5, 20), (30, -4), (35, 22), (60, 5), (20, 20))
    parts = tuple(Picture(f"p{n}", x, y, name, "ordered") for n, (x, y) in enumerate(places))
    material = levels(*parts, panel=Panel(44, 34, colours))  # type: ignore[arg-type]
    program = build(material, tmp_path)
    agree(play(program, 2, random.Random(3)), program.run())


def test_a_whole_picture_takes_one_window(tmp_path: Path) -> None:
    shown = Screen("main", "night", (Picture("logo", 5, 5, "photo.png"),), clears=False)
    material = made_material(Layout(1, "tank", Panel(44, 34), (), INKS, (shown,)), {})
    program = build(material, tmp_path)
    agree(play(program, 1, random.Random(3)), answers := program.run())
    assert answers[0].windows == 1 and answers[0].touched.max() == 1


@pytest.mark.parametrize("name", sorted(PICTURES))
def test_the_windows_are_those_that_the_cost_counts(tmp_path: Path, name: str) -> None:
    shown = Screen("main", "night", (Picture("logo", 2, 5, name), replace(DEPTH, y=30)), clears=False)
    material = made_material(Layout(1, "tank", Panel(66, 40), (), INKS, (shown,)), {})
    program = build(material, tmp_path)
    program.draw(shown, Values({}, {}, {"depth": 9}))
    program.frame()
    (answer,) = program.run()
    operations = drawing.screen_operations(material, shown, Values({}, {}, {"depth": 9}))
    counted = bus.traffic(operations, 16)
    assert (answer.windows, int(answer.touched.sum())) == (counted.windows, counted.pixels)


def test_pictures_of_all_forms_at_once(tmp_path: Path) -> None:
    parts = tuple(Picture(f"p{n}", 11 * n, 3 * n, name) for n, name in enumerate(sorted(PICTURES)))
    twice = Screen("again", "slate", (replace(parts[0], x=1), parts[3]))
    layout = Layout(1, "tank", Panel(96, 48), (), INKS, (Screen("main", "night", parts), twice))
    material = made_material(layout, {})
    program = build(material, tmp_path)
    agree(play(program, 4, random.Random(3)), program.run())
    # Shown on two screens, kept once.
    assert header(material).count("_dots_main_p0_[]") == 1 and "_dots_again_" not in header(material)


# -- greys and palettes ------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "panel",
    [
        Panel(96, 48, "grey4"),
        Panel(96, 48, "grey16"),
        Panel(96, 48, "indexed", palette=("#ffffff", "#000000", "#c04010")),
        Panel(96, 48, "indexed", palette=("#ffffff", "#000000", "#c04010"), refresh="whole"),
    ],
    ids=lambda panel: f"{panel.colour_format}-{panel.refresh}",
)
def test_greys_and_palettes(tmp_path: Path, panel: Panel) -> None:
    """Text from ground to ink through the panel's own levels, bars and pictures in its own codes."""
    Image.linear_gradient("L").resize((30, 20)).save(tmp_path / "slope.png")
    rendering = "antialiased" if panel.colours.blends else "one-bit"
    types = (TypeSpec("soft", SANS, 16, rendering),)  # type: ignore[arg-type]
    label = Label("name", "Tank", "soft", "chalk", 4, 44)
    parts = (DEPTH, FLOW, label, Picture("slope", 40, 26, "slope.png", "diffused"))
    material = gather(Layout(1, "tank", panel, types, INKS, (Screen("main", "night", parts),)), tmp_path)
    program = build(material, tmp_path)
    expected = play(program, 20, random.Random(4))
    answers = program.run()
    agree(expected, answers)
    used = set(np.unique(answers[0].codes).tolist())
    assert max(used) < panel.colours.count and len(used) >= min(panel.colours.count, 3)
    text = header(material)
    assert f"#define TANK_INK_CHALK {material.code('chalk')}" in " ".join(text.split())
    if panel.colour_format == "grey16":
        ramp = ", ".join(f"0x{code:04X}" for code in material.ramp("chalk", "night")[1:15])
        assert ramp in text and len(set(material.ramp("chalk", "night"))) > 10


# -- the header as read ------------------------------------------------------------------------------------


def test_what_the_header_says() -> None:
    text = " ".join(header(levels(DEPTH)).split())
    for said in (
        "#define TANK_NO_VALUE INT32_MIN",
        "/* level bar `depth`, growing to the right */",
        "#define TANK_MAIN_DEPTH_LEAST 0 /* the value of an empty bar */",
        "#define TANK_MAIN_DEPTH_GREATEST 2500 /* the value of a full one */",
        "#define TANK_MAIN_DEPTH_LIMIT_1 300 /* marked by a line */",
        "#define TANK_MAIN_DEPTH_LIMIT_1_INK TANK_INK_RUST",
        "#define TANK_MAIN_DEPTH_LIMIT_2 2000",
        "int32_t depth; /* TANK_NO_VALUE where there is none */",
        "void tank_main_depth_update(const tank_port *port, int32_t value);",
        "bring one level bar up to date. A level bar shows its fault pattern for a value outside its range, such as",
        "/* What the screen `main` shows: values of level bars. */",
        "Bring one part up to date with such as tank_main_depth_update(&port, value).",
    ):
        assert said in text


def test_an_old_header_is_told() -> None:
    new = header(levels(DEPTH, Picture("logo", 40, 26, "noise.png")))
    assert parsed(new) is not None and differences(new, new) == []
    shorter = header(levels(replace(DEPTH, width=50), Picture("logo", 40, 26, "noise.png")))
    told = differences(shorter, new)
    assert "the constant `TANK_MAIN_DEPTH_WIDTH` is 50 in it and 60 in the layout" in told
    unmarked = replace(DEPTH, limits=(replace(DEPTH.limits[0], mark=False), *DEPTH.limits[1:]))
    moved = header(levels(unmarked, Picture("logo", 40, 26, "noise.png")))
    assert "the constant `TANK_MAIN_DEPTH_LIMIT_1` " not in " ".join(differences(moved, new))
    assert "the layout has changed" in differences(moved, new)[0]


def test_a_changed_picture_is_told(tmp_path: Path) -> None:
    def made(colour: str) -> str:
        Image.new("RGB", (6, 4), colour).save(tmp_path / "logo.png")
        Image.new("RGB", (2, 4), "black").save(tmp_path / "bar.png")
        picture = Image.open(tmp_path / "logo.png").convert("RGB")
        picture.paste(Image.open(tmp_path / "bar.png"), (1, 0))
        picture.save(tmp_path / "logo.png")
        screen = Screen("main", "night", (Picture("logo", 5, 5, "logo.png"),))
        return header(gather(Layout(1, "tank", Panel(96, 48), (), INKS, (screen,)), tmp_path))

    before = made("white")
    assert differences(before, made("white")) == []
    assert differences(before, made("red")) == ["the picture of `TANK_MAIN_LOGO` looks otherwise now"]


def test_where_constants_live_apart(tmp_path: Path) -> None:
    """Every constant is read through the macros: those that are not would be read as they are, and turned here."""
    material = levels(DEPTH, FLOW, Picture("logo", 40, 26, "many.png"))
    program = build(material, tmp_path)
    expected = play(program, 20, random.Random(9))
    agree(expected, program.run())
    turned = """
#include <stdint.h>
static unsigned apart;
static uint8_t read8(const void *at) { ++apart; return *(const uint8_t *)at; }
static uint16_t read16(const void *at) { ++apart; return *(const uint16_t *)at; }
#define TANK_CONST const
#define TANK_READ8(at) read8(at)
#define TANK_READ16(at) read16(at)
#define TANK_READ32(at) (0u)
"""
    text = header(material)
    at = text.index("#if defined(TANK_IMPLEMENTATION)")
    other = build(material, tmp_path, text=text[:at] + turned + text[at:])
    agree(play(other, 20, random.Random(9)), other.run())
