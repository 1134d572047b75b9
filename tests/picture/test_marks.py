"""Marks over the picture: where they are, where they are not, and that each says itself in words."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from PIL import Image
from tests.picture import naive, tank

from panelproof.ink.mask import NOTHING, Mask, from_rows, rectangle
from panelproof.layout.document import Screen
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box, Field, Icon, Label
from panelproof.material import Material, field_graph
from panelproof.picture import legend
from panelproof.picture.frame import new_frame, screen_frame
from panelproof.picture.lettering import PAGE
from panelproof.picture.marks import APART, Overlay, footprints, groups, marks
from panelproof.picture.moments import moment
from panelproof.picture.values import Values

Picture = np.ndarray[Any, np.dtype[np.uint8]]
GUTTER = 5


def drawn(material: Material, screen: Screen, values: Values, scale: int, *overlays: Overlay) -> Picture:
    return np.asarray(marks(material, screen, values, scale, overlays))


def bare(width: int = 150, height: int = 30) -> tuple[Material, Screen]:
    """A black panel, wide enough that the picture lies at the left edge, with nothing on it."""
    screen = Screen("bare", "night")
    layout = replace(tank.layout(Panel(width, height)), screens=(screen,), moments=())
    return tank.material(layout), screen


def cell(seen: Picture, x: int, y: int, scale: int) -> Counter[tuple[int, ...]]:
    """Count the colours of one panel pixel."""
    left, top = (GUTTER + x) * scale, (GUTTER + y) * scale
    block = seen[top : top + scale, left : left + scale].reshape(-1, 3)
    return Counter(tuple(int(value) for value in colour) for colour in block)


def test_footprints_are_what_any_text_inks() -> None:
    """Each field's mask against all of its texts drawn one by one, unclipped; each icon's likewise."""
    material = tank.tank()
    screen = material.screen("readings")
    found = {overlay.part: overlay for overlay in footprints(material, screen)}
    assert list(found) == ["level", "flow", "mode", "link", "valve"]
    for part in screen.parts:
        wanted: set[naive.Pixel] = set()
        if isinstance(part, Field):
            for text in field_graph(part).texts():
                wanted |= set(naive.text_levels(material, part, text)[0])
        elif isinstance(part, Icon):
            for state in part.states:
                wanted |= set(naive.icon_levels(part, state.name)[0])
        else:
            continue
        assert set(found[part.name].mask.pixels()) == wanted
        assert found[part.name].kind == "footprint"


@pytest.mark.parametrize("scale", [1, 2, 3, 5, 8])
def test_each_kind_marks_its_pixels_and_no_other(scale: int) -> None:
    material, screen = bare(430)
    overlays = (
        Overlay("footprint", "one", rectangle(20, 4, 5, 5)),
        Overlay("stale", "one", rectangle(60, 10, 6, 6)),
        Overlay("finding", "one", rectangle(100, 10, 6, 6)),
    )
    seen = drawn(material, screen, Values(), scale, *overlays)
    black = (0, 0, 0)
    tint = tuple(2 * value // 3 for value in legend.BLUE)
    if scale >= 3:
        assert cell(seen, 22, 6, scale) == {tint: (scale - 1) ** 2, black: 2 * scale - 1}
        striped, chequered = cell(seen, 62, 12, scale), cell(seen, 103, 13, scale)
        assert set(striped) == {legend.DARK, legend.AMBER}
        assert set(chequered) == {legend.LIGHT, legend.RED}
        assert min(striped.values()) * 3 >= sum(striped.values()) - 1
    else:
        assert set(cell(seen, 22, 6, scale)) == {tint}
        assert set(cell(seen, 62, 12, scale)) <= {legend.DARK, legend.AMBER}
    for x, y in ((19, 6), (25, 6), (22, 3), (22, 9), (5, 25), (140, 2), (40, 15), (80, 15)):
        assert set(cell(seen, x, y, scale)) == {black}, (x, y)


def test_the_ink_shown_now_stays_as_it_is() -> None:
    """Each pixel that the text shown now inks keeps its colour, and the rest of the footprint is tiled."""
    material = tank.tank()
    full = material.screen("readings")
    level = next(part for part in full.parts if part.name == "level")
    assert isinstance(level, Field)
    plain = replace(level, padding=(0, 0, 120, 64), ground=None)
    screen = Screen("plain", "night", (plain,))
    material = tank.material(replace(tank.layout(), screens=(screen,), moments=(), panel=Panel(160, 64)))
    values = Values({"level": "121.5"})
    glass = screen_frame(material, screen, values)
    seen, scale = drawn(material, screen, values, 4, *footprints(material, screen)), 4
    ink = set(naive.text_levels(material, plain, "121.5")[0])
    reach = set(footprints(material, screen)[0].mask.pixels())
    # The anchor's tick lies on the row below the baseline and around the anchor.
    for x, y in sorted(p for p in reach if p[1] < 40 and 0 < p[0] < 70):
        colours = cell(seen, x, y, scale)
        shown = material.code("night") if (x, y) not in ink else int(glass.codes[y, x])
        if (x, y) in ink:
            assert len(colours) == 1, (x, y)
        else:
            assert shown == 0 and len(colours) == 2, (x, y)
    assert len(ink) > 100 and len(reach - ink) > 50


def test_what_leaves_the_panel_is_marked_beside_it() -> None:
    material, screen = bare()
    at = -3, 10
    with_it = drawn(material, screen, Values(), 4, Overlay("footprint", "one", rectangle(*at, 3, 3)))
    top, left = (GUTTER + at[1]) * 4, (GUTTER + at[0]) * 4
    block = with_it[top : top + 12, left : left + 12 - 1]
    assert np.any(np.all(block != np.array(PAGE), axis=2))
    far = drawn(material, screen, Values(), 4, Overlay("footprint", "one", rectangle(-12, 10, 3, 3)))
    assert far.shape[1] == with_it.shape[1] + 2 * 9 * 4
    farther = drawn(material, screen, Values(), 4, Overlay("footprint", "one", rectangle(-500, 10, 3, 3)))
    assert farther.shape[1] == (150 + 2 * 24) * 4


def strip(seen: Picture, height: int, scale: int) -> Picture:
    return seen[(height + 2 * GUTTER) * scale :]


def test_the_legend_names_the_kinds_that_are_there() -> None:
    material, screen = bare()
    one = rectangle(20, 4, 5, 5)
    nothing = drawn(material, screen, Values(), 3)
    assert nothing.shape == ((30 + 10) * 3, (150 + 10) * 3, 3)
    heights = []
    for kind in ("footprint", "stale", "finding"):
        seen = drawn(material, screen, Values(), 3, Overlay(kind, "part", one))
        heights.append(strip(seen, 30, 3).shape[0])
        assert heights[-1] > 30
    # Stale pixels and findings have a line each besides.
    assert heights[1] == heights[2] > heights[0]
    key = legend.key({"footprint", "stale", "finding"}, padding=True, texts=True)
    assert [text.split(":")[0] for _, text in key] == [
        "tiles", "dashed", "wedge on a line", "striped", "chequered"
    ]  # fmt: skip
    assert legend.key((), padding=False, texts=False) == []
    assert drawn(material, screen, Values(), 3, Overlay("finding", "p", NOTHING)).shape == nothing.shape


def test_long_words_go_on_below_and_stay_inside() -> None:
    material, screen = bare()
    words = "`9.9` after `10.0` leaves old pixels behind; give it a padding box 58 pixels wide " * 4
    short = strip(
        drawn(material, screen, Values(), 3, Overlay("stale", "p", rectangle(9, 9, 2, 2), "a")), 30, 3
    )
    long = strip(
        drawn(material, screen, Values(), 3, Overlay("stale", "p", rectangle(9, 9, 2, 2), words)), 30, 3
    )
    assert long.shape[0] > short.shape[0] + 2 * 18
    inked = np.any(long != np.array(PAGE), axis=(0, 2))
    columns = np.flatnonzero(inked)
    assert columns[0] >= legend.MARGIN and columns[-1] < long.shape[1] - legend.MARGIN
    # The last of them are on the last line.
    rows = np.flatnonzero(np.any(long != np.array(PAGE), axis=(1, 2)))
    assert long.shape[0] - legend.MARGIN - 12 < rows[-1] <= long.shape[0] - legend.MARGIN


def test_the_key_stays_inside_and_its_entries_apart() -> None:
    entries = legend.key({"footprint", "stale", "finding"}, padding=True, texts=True)
    for wide in range(320, 1500, 90):
        seen = np.asarray(legend.beneath(Image.new("RGB", (wide, 10), PAGE), entries, [], wide))[11:]
        inked = np.any(seen != np.array(PAGE), axis=2)
        columns = np.flatnonzero(inked.any(axis=0))
        assert columns[0] >= legend.MARGIN and columns[-1] < wide - legend.MARGIN
        # Every entry takes as many dark pixels as it does alone: none is covered by another.
        alone = sum(
            int(np.any(np.asarray(legend.beneath(Image.new("RGB", (wide, 10), PAGE), [one], [], wide))[11:]
                       != np.array(PAGE), axis=2).sum())
            for one in entries
        )  # fmt: skip
        assert int(inked.sum()) == alone


def test_small_panels_have_room_for_words() -> None:
    material, screen = bare(16, 8)
    seen = drawn(material, screen, Values(), 3, Overlay("stale", "", rectangle(2, 2, 2, 2), "words " * 30))
    assert seen.shape[1] == 420
    # The panel is in the middle of the row.
    row = np.flatnonzero(np.all(seen[(GUTTER + 6) * 3] == 0, axis=1))
    assert abs((420 - 1 - row[-1]) - row[0]) <= 1


def test_the_glass_can_be_given() -> None:
    material, screen = bare()
    glass = new_frame(material.layout.panel, 0xFFFF)
    seen = np.asarray(marks(material, screen, Values(), 3, (), frame=glass))
    assert set(cell(seen, 75, 15, 3)) == {(255, 255, 255)}


def test_padding_baseline_and_anchor_are_drawn() -> None:
    material, _ = bare()
    field = Field("level", tank.LEVEL, "small", "chalk", 100, 20, "right", None, "pad", (60, 5, 45, 20))
    label = Label("caption", " ", "small", "chalk", 20, 20)
    screen = Screen("bare", "night", (field, label))
    material = tank.material(replace(material.layout, screens=(screen,)))
    seen, scale = drawn(material, screen, Values({"level": "..."}), 4), 4
    dashed = seen[(GUTTER + 5) * scale, (GUTTER + 60) * scale : (GUTTER + 105) * scale].reshape(-1, 3)
    assert {tuple(int(v) for v in colour) for colour in dashed} == {legend.ORANGE, legend.DARK}
    for x in (20, 100):
        tick = seen[(GUTTER + 20) * scale, (GUTTER + x) * scale - 8 : (GUTTER + x) * scale + 9]
        assert np.all(tick == np.array(legend.GREEN))
        below = seen[(GUTTER + 20) * scale + 5, (GUTTER + x) * scale]
        assert tuple(below) == legend.GREEN


def test_boxes_and_rules_have_no_marks_of_their_own() -> None:
    material, _ = bare()
    screen = Screen("bare", "night", (Box("box", 10, 5, 20, 10, "slate"),))
    material = tank.material(replace(material.layout, screens=(screen,)))
    assert footprints(material, screen) == ()
    assert drawn(material, screen, Values(), 3).shape[0] == 40 * 3


masks = st.lists(st.integers(0, (1 << 40) - 1).map(lambda row: row & (row >> 3) & (row >> 7)), max_size=30)


@settings(max_examples=150, deadline=None)
@given(rows=masks)
def test_groups_hold_all_pixels_and_are_cut_where_there_is_room(rows: list[int]) -> None:
    mask: Mask = from_rows(0, 0, 40, rows)
    chosen = np.array([[(x, y) in mask for x in range(40)] for y in range(len(rows))], dtype=np.bool_)
    boxes = groups(chosen.reshape(len(rows), 40))
    pixels = set(mask.pixels())
    held = [{p for p in pixels if naive.inside(p, box)} for box in boxes]
    assert set().union(*held) == pixels and sum(map(len, held)) == len(pixels)
    for box, own in zip(boxes, held, strict=True):
        x, y, width, height = box
        columns, lines = sorted({p[0] for p in own}), sorted({p[1] for p in own})
        assert (columns[0], lines[0]) == (x, y)
        assert (columns[-1], lines[-1]) == (x + width - 1, y + height - 1)
        for line in (columns, lines):
            assert all(second - first <= APART for first, second in pairwise(line))


def test_a_real_screen_is_the_same_each_time() -> None:
    material = tank.tank()
    screen, values = material.screen("readings"), moment(material, "half-full").values
    first = drawn(material, screen, values, 3, *footprints(material, screen))
    assert np.array_equal(first, drawn(material, screen, values, 3, *footprints(material, screen)))


def test_numbers_do_not_cover_one_another() -> None:
    """Three findings of the same pixels: three plates, each as whole as alone."""
    material, screen = bare(150, 60)

    def plates(x: int, count: int) -> int:
        overlays = [Overlay("finding", "p", rectangle(x, 30, 4, 4))] * count
        seen = drawn(material, screen, Values(), 4, *overlays)
        # Right of the ring, or at the right edge the strip that plates go down.
        first = min((GUTTER + x + 4) * 4 + 6, seen.shape[1] - 12)
        return int(np.all(seen[: 70 * 4, first:] == np.array(legend.RED), axis=2).sum())

    one = plates(70, 1)
    assert one > 60
    for x in (70, 150):
        assert plates(x, 3) - plates(x, 1) > 1.7 * one


def test_the_legends_words_are_the_callers() -> None:
    material, screen = bare()
    at = rectangle(9, 9, 2, 2)

    def legend_of(*overlays: Overlay) -> bytes:
        return strip(drawn(material, screen, Values(), 3, *overlays), 30, 3).tobytes()

    words = legend_of(Overlay("stale", "flow", at, "a ghost"))
    assert words == legend_of(Overlay("stale", "mode", at, "a ghost"))
    assert legend_of(Overlay("stale", "flow", at)) == legend_of(
        Overlay("stale", "x", at, "flow: stays behind")
    )
    assert legend_of(Overlay("finding", "", at)) == legend_of(Overlay("finding", "x", at, "goes wrong here"))
