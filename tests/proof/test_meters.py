"""Meters and pictures: extents against every value of small meters and every pixel of small pictures, and each rule."""

from __future__ import annotations

import json
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from PIL import Image
from tests.layout.test_level import small_meters
from tests.picture import naive
from tests.proof.test_rules import faults, field, layout, rules

from panelproof import report
from panelproof.layout.document import Ink, Screen
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box, Label, Meter, MeterLimit, Picture, Rule
from panelproof.material import gather
from panelproof.picture.drawing import inked_by, meter, painted_by
from panelproof.proof.extent import stage
from panelproof.proof.measure import meter_measures

INKS = (Ink("black", "#000000"), Ink("bar", "#ffffff"), Ink("warn", "#ffff00"), Ink("alarm", "#ff0000"))
DEPTH = Meter("depth", 10, 10, 40, 8, 0, 100, "white", limits=(MeterLimit(80, "blue"),))


@given(small_meters(), st.integers(-6, 26), st.integers(-6, 16))
@settings(max_examples=80, deadline=None)
def test_an_extent_is_what_all_values_do(made: Meter, x: int, y: int) -> None:
    part = replace(made, x=x, y=y)
    material = gather(layout(part, panel=Panel(24, 14), inks=INKS), Path())
    screen = material.layout.screens[0]
    (extent,) = stage(material, screen).extents
    inked, surely = set[naive.Pixel](), set(naive.everywhere(material))
    for value in (None, *range(part.least - 1, part.greatest + 2)):
        operations = meter(material, screen, part, value)
        inked |= set(inked_by(operations).pixels())
        surely &= set(painted_by(operations).pixels())
    assert set(extent.ink.pixels()) == inked
    assert set(extent.surely.pixels()) == surely == set(extent.ground.pixels())
    for pixel in inked:
        (text,) = extent.text_at(pixel)
        assert naive.meter_ink(part, int(text), pixel[0] - x, pixel[1] - y) is not None


class TestMeter:
    def test_it_may_stand_to_the_last_pixel_of_the_glass(self) -> None:
        assert rules(layout(replace(DEPTH, x=80, y=52))) == []
        (found,) = faults(layout(replace(DEPTH, x=81, y=52)))
        assert (found.rule, found.count, found.texts) == ("fit", 8, ("100",))
        assert found.message.startswith("value `100` leaves the panel by 1 px on the right")
        assert found.remedy is not None and found.remedy.sentence == "x 81 → 80"

    def test_the_shape_counts(self) -> None:
        rounded = Panel(120, 60, shape="rounded", corner_radius=6)
        assert rules(layout(replace(DEPTH, x=6, y=0), panel=rounded)) == []
        assert rules(layout(replace(DEPTH, x=1, y=0), panel=rounded)) == ["fit"]

    def test_it_leaves_nothing_behind(self) -> None:
        assert rules(layout(DEPTH)) == []

    def test_a_line_one_pixel_off(self) -> None:
        line = Rule("line", 50, 5, 20, "white", "down")
        assert rules(layout(DEPTH, line)) == []
        both = faults(layout(DEPTH, replace(line, x=49)))
        assert [(one.rule, one.part, one.other, one.count) for one in both] == [
            ("erases", "depth", "line", 8),
            ("collides", "depth", "line", 8),
        ]

    def test_a_padding_over_its_edge(self) -> None:
        below = field(padding=(38, 12, 24, 24))
        assert rules(layout(replace(DEPTH, y=4), below)) == []
        both = faults(layout(replace(DEPTH, y=5), below))
        assert [(one.rule, one.part, one.other, one.texts) for one in both] == [
            ("erases", "level", "depth", ("73",))
        ]

    def test_it_lies_in_its_frame(self) -> None:
        frame = Box("frame", 9, 9, 42, 10, outline="white")
        assert rules(layout(frame, DEPTH)) == []
        assert set(rules(layout(replace(frame, x=10), DEPTH))) == {"erases", "collides"}

    def test_its_ground_is_that_of_the_box_under_it(self) -> None:
        card = Box("card", 5, 5, 60, 20, fill="blue")
        (found,) = faults(layout(card, DEPTH))
        assert (found.rule, found.other) == ("erases", "card")
        assert found.remedy is not None and found.remedy.sentence == "ground `blue`"
        assert rules(layout(card, replace(DEPTH, ground="blue", limits=()))) == []
        # Another name, but the panel shows the same colour.
        assert rules(layout(card, replace(DEPTH, ground="navy", limits=()))) == []

    def test_a_box_drawn_later_covers_it(self) -> None:
        found = faults(layout(DEPTH, Box("card", 5, 5, 60, 20, fill="blue")))
        assert "collides" in {one.rule for one in found}

    def test_what_it_leaves_on_the_next_screen(self) -> None:
        made = layout(DEPTH)
        cover = Box("cover", 10, 10, 40, 8, fill="black")
        second = Screen("second", "black", (cover,), clears=False)
        assert rules(replace(made, screens=(*made.screens, second))) == []
        second = Screen("second", "black", (replace(cover, width=39),), clears=False)
        (found,) = faults(replace(made, screens=(*made.screens, second)))
        assert (found.rule, found.count, found.texts, found.other) == ("residue", 8, ("100",), "depth")

    def test_it_covers_what_was_there(self) -> None:
        first = layout(Rule("line", 10, 10, 40, "white"))
        second = Screen("second", "black", (DEPTH,), clears=False)
        assert rules(replace(first, screens=(*first.screens, second))) == []
        second = Screen("second", "black", (replace(DEPTH, x=11),), clears=False)
        assert rules(replace(first, screens=(*first.screens, second))) == ["residue"]


class TestPicture:
    def drop(self, folder: Path) -> Path:
        """A white disc with clear corners and a black middle."""
        picture = Image.new("RGBA", (8, 8), (255, 255, 255, 255))
        for corner in ((0, 0), (7, 0), (0, 7), (7, 7)):
            picture.putpixel(corner, (255, 255, 255, 0))
        picture.putpixel((3, 3), (0, 0, 0, 255))
        picture.save(folder / "drop.png")
        return folder

    def rules(self, folder: Path, *parts: object, **more: object) -> list[str]:
        from panelproof.proof.check import prove

        made = layout(*parts, **more)  # type: ignore[arg-type]
        found = prove(gather(made, self.drop(folder)))
        return [finding.rule for finding in found if finding.level == "fault"]

    def test_its_extent_is_its_opaque_pixels(self, tmp_path: Path) -> None:
        part = Picture("logo", -2, 3, "drop.png")
        material = gather(layout(part), self.drop(tmp_path))
        (extent,) = stage(material, material.layout.screens[0]).extents
        expected = {(x - 2, y + 3) for x in range(8) for y in range(8)}
        expected -= {(-2, 3), (5, 3), (-2, 10), (5, 10)}
        assert set(extent.reach.pixels()) == expected
        assert set(extent.ink.pixels()) == {pixel for pixel in expected if pixel[0] >= 0}
        assert extent.ink_codes == {0, 0xFFFF} and not extent.changes
        assert set(extent.seen_on(0xFFFF).pixels()) == {(1, 6)}

    def test_fit(self, tmp_path: Path) -> None:
        part = Picture("logo", 112, 52, "drop.png")
        assert self.rules(tmp_path, part) == []
        assert self.rules(tmp_path, replace(part, x=113)) == ["fit"]
        rounded = Panel(120, 60, shape="rounded", corner_radius=2)
        # The corner that cannot be seen is one of those that are clear.
        assert self.rules(tmp_path, replace(part, x=0, y=0), panel=rounded) == []

    def test_a_line_through_its_clear_corner_only(self, tmp_path: Path) -> None:
        part = Picture("logo", 20, 20, "drop.png")
        assert self.rules(tmp_path, part, Rule("line", 10, 20, 11, "white")) == []
        assert self.rules(tmp_path, part, Rule("line", 10, 20, 12, "white")) == ["collides"]
        # Unlike lines of one colour, pictures may not be crossed.
        assert self.rules(tmp_path, part, Rule("line", 10, 21, 11, "white")) == ["collides"]

    def test_a_padding_over_it(self, tmp_path: Path) -> None:
        part = Picture("logo", 62, 12, "drop.png")
        assert self.rules(tmp_path, part, field()) == []
        assert self.rules(tmp_path, replace(part, x=61), field()) == ["erases"]

    def test_only_what_shows_is_residue(self, tmp_path: Path) -> None:
        """On a white screen only the black pixel of the disc can be seen; a box over it is enough."""
        first = layout(Picture("logo", 20, 20, "drop.png"))
        first = replace(first, screens=(replace(first.screens[0], ground="white"),))
        self.drop(tmp_path)

        def left(cover: Box) -> list[int]:
            from panelproof.proof.check import prove

            second = Screen("second", "white", (cover,), clears=False)
            found = prove(gather(replace(first, screens=(*first.screens, second)), tmp_path))
            return [finding.count for finding in found if finding.rule == "residue"]

        assert left(Box("cover", 23, 23, 1, 1, fill="white")) == []
        assert left(Box("cover", 24, 23, 1, 1, fill="white")) == [1]

    def test_text_beside_it(self, tmp_path: Path) -> None:
        part = Picture("logo", 2, 20, "drop.png")
        label = Label("name", "Tank", "plain", "white", 12, 30)
        assert self.rules(tmp_path, part, label) == []
        assert self.rules(tmp_path, part, replace(label, x=6)) == ["collides"]


def test_its_figures_by_hand() -> None:
    """Range 0 to 100 on 40 pixels: one pixel stands for 2.5; the limit 80 lies at pixel 32, 100 on the last."""
    part = replace(DEPTH, limits=(MeterLimit(80, "blue"), MeterLimit(100, mark=False)))
    material = gather(layout(part), Path())
    (figure,) = meter_measures(material)
    assert (figure.screen, figure.meter, figure.area) == ("main", "depth", (10, 10, 40, 8))
    assert (figure.length, figure.per_pixel) == (40, 2.5)
    assert [(limit.at, limit.pixel) for limit in figure.limits] == [(80, 32), (100, 39)]
    (upright,) = meter_measures(gather(layout(replace(part, direction="up")), Path()))
    assert (upright.length, upright.per_pixel) == (8, 12.5)
    assert report.measures_text((), (figure,)).splitlines() == [
        "main / depth",
        "  range                 0 to 100",
        "  rectangle             40 × 8 at 10, 10",
        "  one pixel stands for  2.5; 40 px in all",
        "  limit                 80, at pixel 32",
        "  limit                 100, at pixel 39",
    ]
    (entry,) = json.loads(report.measures_json((), (figure,)))
    assert entry["meter"] == "depth" and entry["limits"][1] == {"at": 100, "pixel": 39}
