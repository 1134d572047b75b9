"""Meters in moments, steps, marks and sheets, and pictures on every kind of panel."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from msgspec.structs import replace
from PIL import Image
from tests.picture import naive, tank

from panelproof.ink.mask import rectangle
from panelproof.layout.colour import Colours, shown
from panelproof.layout.document import Ink, Layout, Moment, Screen
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box, Label, Meter, MeterLimit, Part, Picture
from panelproof.material import Material, gather
from panelproof.picture.frame import screen_frame
from panelproof.picture.image import pixels
from panelproof.picture.marks import footprints
from panelproof.picture.moments import automatic, moment, moments
from panelproof.picture.sheet import sheet
from panelproof.picture.step import step
from panelproof.picture.values import Values
from panelproof.problem import Problem

DEPTH = Meter(
    "depth", 10, 8, 60, 8, 0, 2500, "water",
    limits=(MeterLimit(300, "chalk"), MeterLimit(2000, "alarm", mark=False)),
)  # fmt: skip
FLOW = Meter("flow", 10, 24, 6, 30, -20, 900, "water", "up", (MeterLimit(700),))


def made(*parts: Part, panel: Panel | None = None, own: tuple[Moment, ...] = ()) -> Material:
    screen = Screen("levels", "night", parts)
    return gather(replace(tank.layout(panel), screens=(screen,), moments=own), Path())


def by_itself(material: Material) -> dict[str, tuple[str, dict[str, int | None]]]:
    shown = automatic(material, material.layout.screens[0])
    return {one.name: (one.title, dict(one.values.levels)) for one in shown}


def test_moments_that_come_by_themselves() -> None:
    assert by_itself(made(DEPTH, FLOW)) == {
        "longest": ("Full", {"depth": 2500, "flow": 900}),
        "shortest": ("Empty", {"depth": 0, "flow": -20}),
        "limit-1": ("At limit 1", {"depth": 300, "flow": 700}),
        "limit-2": ("At limit 2", {"depth": 2000, "flow": 900}),
        "fault": ("Fault", {"depth": None, "flow": None}),
    }
    caption = Label("caption", "Rain tank", "small", "chalk", 5, 50)
    assert list(by_itself(made(replace(FLOW, limits=()), caption))) == ["longest", "shortest", "fault"]


def test_moments_beside_a_field() -> None:
    level = next(part for part in tank.parts() if part.name == "level")
    shown = by_itself(made(level, FLOW))
    assert list(shown) == ["longest", "shortest", "tallest", "limit-1", "fault", "first"]
    assert {name: levels["flow"] for name, (_, levels) in shown.items()} == {
        "longest": 900, "shortest": -20, "tallest": 900, "limit-1": 700, "fault": None, "first": None,
    }  # fmt: skip
    assert shown["longest"][0] == "Longest texts"


def test_the_layouts_own_moments() -> None:
    own = (
        Moment("low", "levels", meters={"depth": 200, "flow": None}),
        Moment("over", "levels", meters={"depth": 2501, "flow": 0}),
    )
    material = made(DEPTH, FLOW, own=own)
    low, over, *_ = moments(material, material.layout.screens[0])
    assert low.values == Values({}, {}, {"depth": 200, "flow": None})
    assert (low.values.of("depth"), low.values.of("flow"), over.values.of("depth")) == (
        "200", "no value", "2501",
    )  # fmt: skip
    frame = screen_frame(material, material.layout.screens[0], over.values)
    lost = screen_frame(material, material.layout.screens[0], Values({}, {}, {"depth": None, "flow": 0}))
    assert frame == lost


def test_a_moment_without_a_meters_value_is_told() -> None:
    material = made(DEPTH, own=(Moment("low", "levels", meters={"depth": 1}),))
    bad: Layout = replace(material.layout, moments=(Moment("low", "levels"),))
    broken = Material(bad, material.folder, material.types, material.bitmaps, material.inks)
    with pytest.raises(Problem) as caught:
        moment(broken, "low")
    assert str(caught.value) == "moments[0].meters: the moment `low` has no value for the meter `depth`"


@pytest.mark.parametrize(("old", "new"), [(0, 2500), (1200, 1240), (2500, None), (None, 10), (299, 300)])
def test_a_step_leaves_nothing_of_a_meter(old: int | None, new: int | None) -> None:
    material = made(DEPTH)
    screen = material.layout.screens[0]
    taken = step(material, screen, Values({}, {}, {"depth": old}), Values({}, {}, {"depth": new}))
    (update,) = taken.updates
    assert (update.kind, update.part) == ("meter", "depth")
    assert (update.old, update.new) == tuple("no value" if v is None else str(v) for v in (old, new))

    def inked(value: int | None) -> set[naive.Pixel]:
        every = [(x, y) for x in range(60) for y in range(8)]
        return {(10 + x, 8 + y) for x, y in every if naive.meter_ink(DEPTH, value, x, y)}

    assert set(update.written.pixels()) == inked(new)
    assert set(update.erased.pixels()) == inked(old) - inked(new)
    assert not update.stale and not taken.differs
    same = step(material, screen, Values({}, {}, {"depth": old}), Values({}, {}, {"depth": old}))
    assert same.updates == ()


def test_its_footprint_is_its_rectangle() -> None:
    material = made(DEPTH)
    (overlay,) = footprints(material, material.layout.screens[0])
    assert overlay.mask.same_pixels(rectangle(10, 8, 60, 8))


def test_the_fault_pattern_is_unlike_every_value() -> None:
    """Two rows differ in the pattern and never in a bar; checked over all values of a small one."""
    small = replace(DEPTH, width=9, height=2, greatest=50, limits=(MeterLimit(20, "chalk"), MeterLimit(40)))
    material = made(small)
    screen = material.layout.screens[0]

    def frame(value: int | None) -> bytes:
        return screen_frame(material, screen, Values({}, {}, {"depth": value})).codes.tobytes()

    assert frame(None) not in {frame(value) for value in range(51)}
    assert frame(-1) == frame(51) == frame(None)


def test_a_sheet_shows_every_moment() -> None:
    material = made(DEPTH, FLOW)
    page = sheet(material)
    red = shown(material.code("alarm"), material.layout.panel.colours)
    seen = np.asarray(page).reshape(-1, 3)
    # `alarm` shows when full, and at the second limit.
    assert (seen == red).all(axis=1).sum() >= 60 * 8


PANELS = [
    Panel(24, 16, "grey4"),
    Panel(24, 16, "grey16"),
    Panel(24, 16, "rgb565"),
    Panel(24, 16, "mono"),
    Panel(24, 16, "indexed", palette=("#ffffff", "#101010", "#c01010")),
]


@pytest.mark.parametrize("panel", PANELS, ids=lambda panel: panel.colour_format)
def test_a_picture_on_every_kind_of_panel(panel: Panel, tmp_path: Path) -> None:
    """White and black stay, red is as near as the panel comes; the clear half shows what lies under it."""
    picture = Image.new("RGBA", (6, 4), (0, 0, 0, 0))
    for x, rgb in enumerate(((255, 255, 255), (0, 0, 0), (200, 20, 20))):
        for y in range(4):
            picture.putpixel((x, y), (*rgb, 255))
    picture.save(tmp_path / "three.png")
    inks = (Ink("ground", "#ffffff"), Ink("under", "#101010"))
    parts = (Box("box", 8, 4, 12, 8, fill="under"), Picture("three", 10, 6, "three.png"))
    layout = Layout(1, "pictures", panel, (), inks, (Screen("main", "ground", parts),))
    material = gather(layout, tmp_path)
    seen = pixels(screen_frame(material, layout.screens[0], Values()), panel)
    colours = panel.colours

    def nearest(rgb: tuple[int, int, int]) -> tuple[int, int, int]:
        every = [shown(code, colours) for code in range(colours.count)]
        if colours.format in ("mono", "grey4", "grey16"):
            tone = (299 * rgb[0] + 587 * rgb[1] + 114 * rgb[2]) / 1000
            return min(every, key=lambda one: abs(one[0] - tone))
        return min(every, key=lambda one: sum((a - b) ** 2 for a, b in zip(one, rgb, strict=True)))

    assert [tuple(seen[6, 10 + x].tolist()) for x in range(3)] == [
        nearest((255, 255, 255)), nearest((0, 0, 0)), nearest((200, 20, 20)),
    ]  # fmt: skip
    assert (seen[6:10, 13:16] == nearest((16, 16, 16))).all()
    assert (seen[0, 0] == nearest((255, 255, 255))).all()


def test_antialiased_type_on_greys_runs_through_the_levels() -> None:
    label = Label("caption", "Rain tank", "large", "chalk", 4, 40)
    for colour_format, count in (("grey4", 4), ("grey16", 12)):
        panel = Panel(120, 64, colour_format)  # type: ignore[arg-type]
        material = made(label, panel=panel)
        frame = screen_frame(material, material.layout.screens[0], Values())
        used = set(np.unique(frame.codes).tolist())
        assert len(used) >= count and max(used) < Colours(panel.colour_format).count
