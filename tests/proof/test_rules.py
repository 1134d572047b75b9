"""One made layout a rule that has just that finding, and one a pixel or a shade away that has it not."""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace

from panelproof.content.spec import Choice, Content, FreeText, RealRange, WholeRange
from panelproof.layout.checking import problems
from panelproof.layout.document import Ink, Layout, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box, Field, Icon, IconState, Label, Part, Rule
from panelproof.material import gather
from panelproof.proof.check import prove
from panelproof.proof.finding import Finding
from panelproof.proof.measure import measures

PANEL = Panel(120, 60)
COUNT = Content("%d", (WholeRange(0, 99),), fault="--")


def layout(*parts: Part, panel: Panel = PANEL, **others: object) -> Layout:
    screens = (Screen("main", "black", parts),)
    made = Layout(
        1,
        "tank",
        panel,
        (
            TypeSpec("plain", "SourceSansPro", 16),
            TypeSpec("smooth", "SourceSansPro", 16, "antialiased"),
        ),
        (Ink("black", "#000000"), Ink("white", "#ffffff"), Ink("blue", "#0000a0"), Ink("navy", "#00009f")),
        screens,
    )
    return replace(made, **others) if others else made


def faults(made: Layout) -> list[Finding]:
    assert problems(made) == []
    return [finding for finding in prove(gather(made, Path())) if finding.level == "fault"]


def rules(made: Layout) -> list[str]:
    return [finding.rule for finding in faults(made)]


def field(**changes: object) -> Field:
    return replace(Field("level", COUNT, "plain", "white", 40, 30, padding=(38, 12, 24, 24)), **changes)


def test_a_calm_layout_has_none() -> None:
    assert rules(layout(field())) == []


class TestFit:
    def test_padding_one_pixel_too_narrow(self) -> None:
        ink = next(measures(gather(layout(field()), Path()))).ink
        assert rules(layout(field(padding=ink))) == []
        for tighter in (
            (ink[0] + 1, ink[1], ink[2] - 1, ink[3]),
            (ink[0], ink[1] + 1, ink[2], ink[3] - 1),
            (ink[0], ink[1], ink[2] - 1, ink[3]),
            (ink[0], ink[1], ink[2], ink[3] - 1),
        ):
            (found,) = faults(layout(field(padding=tighter)))
            assert found.rule == "fit"
            assert found.remedy is not None
            assert found.remedy.changes[0].value == list(ink)

    def test_label_one_pixel_off_the_panel(self) -> None:
        label = Label("name", "Tank", "plain", "white", 1, 30)
        x, _, width, _ = _ink(label)
        last = 120 - width + (1 - x)
        assert rules(layout(replace(label, x=last))) == []
        (found,) = faults(layout(replace(label, x=last + 1)))
        assert (found.rule, found.texts) == ("fit", ("Tank",))
        assert "1 px on the right" in found.message
        assert found.remedy is not None
        assert found.remedy.changes[0].value == last

    def test_the_shape_counts_not_its_rectangle(self) -> None:
        corner = Rule("line", 0, 0, 10, "white")
        assert rules(layout(corner)) == []
        round_ = Panel(120, 120, shape="round")
        (found,) = faults(layout(corner, panel=round_))
        assert (found.rule, found.count) == ("fit", 10)
        assert rules(layout(replace(corner, x=55, y=60), panel=round_)) == []
        rounded = Panel(120, 60, shape="rounded", corner_radius=6)
        assert rules(layout(replace(corner, x=6), panel=rounded)) == []
        assert rules(layout(replace(corner, x=1), panel=rounded)) == ["fit"]

    def test_a_background_box_may_fill_a_round_panel(self) -> None:
        made = layout(Box("all", 0, 0, 120, 120, fill="blue"), panel=Panel(120, 120, shape="round"))
        assert rules(made) == []

    def test_padding_box_off_the_panel(self) -> None:
        (found,) = faults(layout(field(padding=(38, 12, 83, 24))))
        assert found.rule == "fit"
        assert "padding box leaves the panel" in found.message


def _ink(label: Label) -> tuple[int, int, int, int]:
    from panelproof.proof.extent import stage

    material = gather(layout(label), Path())
    return stage(material, material.layout.screens[0]).extents[0].reach.bounds()


class TestStale:
    def test_a_shorter_text_leaves_the_end_of_a_longer(self) -> None:
        (found,) = faults(layout(field(clearing="cell", padding=None)))
        assert found.rule == "stale"
        earlier, later = found.texts
        assert len(earlier) > len(later)
        assert found.count > 0

    def test_texts_of_one_width_leave_nothing_in_their_cells(self) -> None:
        same = Content("%02d", (WholeRange(0, 99),))
        assert rules(layout(field(content=same, clearing="cell", padding=None))) == []
        assert rules(layout(field(content=same, clearing="none", padding=None))) == ["stale"]

    def test_a_value_that_never_changes(self) -> None:
        assert rules(layout(field(content=Content("fixed"), clearing="none", padding=None))) == []

    def test_whole_frames_hold_nothing_and_say_so(self) -> None:
        made = layout(field(clearing="none", padding=None), panel=replace(PANEL, refresh="whole"))
        (found,) = prove(gather(made, Path()))
        assert (found.rule, found.level) == ("stale", "note")

    def test_icon_states_of_different_sizes(self) -> None:
        states = (IconState("up", ("###", "###")), IconState("off", ("#.", "..")))
        icon = Icon("link", 5, 5, "white", states)
        assert rules(layout(icon)) == []
        (found,) = faults(layout(replace(icon, clearing="cell")))
        assert (found.rule, found.texts, found.count) == ("stale", ("up", "off"), 2)
        even = (IconState("up", ("###", "###")), IconState("off", ("#..", "...")))
        assert rules(layout(replace(icon, clearing="cell", states=even))) == []
        assert rules(layout(replace(icon, clearing="none", states=even))) == ["stale"]


class TestErases:
    def test_padding_over_a_neighbour_by_one_pixel(self) -> None:
        line = Rule("line", 62, 10, 20, "white", "down")
        assert rules(layout(field(), line)) == []
        (found,) = faults(layout(field(), replace(line, x=61)))
        assert (found.rule, found.other, found.count) == ("erases", "line", 18)
        assert found.remedy is not None
        assert found.remedy.changes[0].value == [38, 12, 23, 24]

    def test_which_is_drawn_first_does_not_matter_on_the_glass(self) -> None:
        line = Rule("line", 61, 10, 20, "white", "down")
        assert rules(layout(line, field())) == ["erases"]

    def test_in_a_frame_in_memory_only_what_was_drawn_before_is_lost(self) -> None:
        whole = replace(PANEL, refresh="whole")
        line = Rule("line", 61, 10, 20, "white", "down")
        assert rules(layout(line, field(), panel=whole)) == ["erases"]
        assert rules(layout(field(), line, panel=whole)) == []

    def test_ground_of_another_shade_than_the_box(self) -> None:
        card = Box("card", 10, 5, 100, 50, fill="blue")
        assert rules(layout(card, field(ground="blue"))) == []
        (found,) = faults(layout(card, field()))
        assert (found.rule, found.other) == ("erases", "card")
        assert found.remedy is not None
        assert found.remedy.sentence == "ground `blue`"
        # Another name, but the panel shows the same colour (5 bits of blue: A0 and 9F are one).
        assert rules(layout(card, field(ground="navy"))) == []

    def test_outline_of_a_box(self) -> None:
        assert rules(layout(Box("frame", 36, 10, 28, 28, outline="white"), field())) == []
        assert rules(layout(Box("frame", 38, 10, 28, 28, outline="white"), field())) == ["erases"]


class TestCollides:
    def test_two_labels_one_pixel_apart(self) -> None:
        left = Label("set", "Set", "plain", "white", 5, 30)
        x, _, width, _ = _ink(left)
        right = Rule("line", x + width, 20, 10, "white", "down")
        assert rules(layout(left, right)) == []
        (found,) = faults(layout(left, replace(right, x=x + width - 1)))
        assert (found.rule, found.part, found.other, found.texts) == ("collides", "set", "line", ("Set",))

    def test_only_some_text_reaches_the_neighbour(self) -> None:
        words = Content("%s", (Choice(("on", "heating up")),))
        wide = field(content=words, x=5, padding=(4, 12, 90, 24))
        unit = Label("unit", "W", "plain", "white", 60, 30)
        made = faults(layout(wide, unit))
        assert {finding.rule for finding in made} == {"collides", "erases"}
        collision = next(finding for finding in made if finding.rule == "collides")
        assert collision.texts == ("heating up", "W")

    def test_a_box_drawn_later_covers(self) -> None:
        box = Box("card", 0, 0, 50, 40, fill="blue")
        label = Label("set", "Set", "plain", "white", 5, 30)
        assert rules(layout(box, label)) == []
        (found,) = faults(layout(label, box))
        assert found.rule == "collides"
        assert "drawn over" in found.message

    def test_lines_of_one_colour_may_cross(self) -> None:
        across, down = Rule("a", 0, 20, 50, "white"), Rule("d", 20, 0, 50, "white", "down")
        assert rules(layout(across, down)) == []
        assert rules(layout(across, replace(down, ink="blue"))) == ["collides"]


def test_missing_glyph_names_the_character_and_a_text() -> None:
    (found,) = faults(layout(field(content=replace(COUNT, fault="♨"))))
    assert (found.rule, found.texts) == ("missing-glyph", ("♨",))
    assert "U+2668" in found.message


def test_text_bytes_counts_utf8_and_the_terminator() -> None:
    degrees = Content("%d°", (WholeRange(0, 99),))
    wide = field(content=degrees, padding=(38, 12, 40, 24))
    assert rules(layout(replace(wide, buffer=5))) == []
    (found,) = faults(layout(replace(wide, buffer=4)))
    assert found.rule == "text-bytes"
    assert found.remedy is not None
    assert found.remedy.changes[0].value == 5


class TestGround:
    def test_antialiased_text_that_clears_nothing(self) -> None:
        fixed = field(content=Content("on"), type="smooth", clearing="none", padding=None)
        assert rules(layout(fixed)) == ["ground"]
        assert rules(layout(replace(fixed, type="plain"))) == []

    def test_label_blended_with_another_ground_than_lies_there(self) -> None:
        card = Box("card", 0, 0, 60, 40, fill="blue")
        label = Label("set", "Set", "smooth", "white", 5, 30, ground="blue")
        assert rules(layout(card, label)) == []
        assert rules(layout(card, replace(label, ground=None))) == ["ground"]
        assert rules(layout(label)) == ["ground"]


class TestResidue:
    def two(self, clears: bool, *parts: Part) -> Layout:
        made = layout(Label("name", "Tank", "plain", "white", 5, 30))
        second = Screen("second", "black", parts, clears=clears)
        return replace(made, screens=(*made.screens, second))

    def test_a_screen_that_does_not_clear(self) -> None:
        assert rules(self.two(True)) == []
        (found,) = faults(self.two(False))
        assert (found.rule, found.screen, found.texts) == ("residue", "second", ("Tank",))

    def test_a_box_over_all_that_was_there_is_enough(self) -> None:
        x, y, width, height = _ink(Label("name", "Tank", "plain", "white", 5, 30))
        cover = Box("cover", x, y, width, height, fill="black")
        assert rules(self.two(False, cover)) == []
        (found,) = faults(self.two(False, replace(cover, width=width - 1)))
        assert found.area is not None
        assert found.area[2] == 1

    def test_power_on_leaves_chance_pixels(self) -> None:
        made = layout()
        made = replace(made, screens=(replace(made.screens[0], clears=False),))
        (found,) = faults(made)
        assert (found.rule, found.count) == ("residue", 120 * 60)


@pytest.mark.parametrize(
    "content",
    [
        Content("%u", (WholeRange(0, 4_294_967_295),)),
        Content("%d", (WholeRange(-2_147_483_648, 2_147_483_647),)),
        Content("%s", (FreeText(32, ranges=((" ", "~"),)),)),
        Content("%.2f", (RealRange(-40, 125),)),
    ],
    ids=["u32", "i32", "network-name", "real"],
)
def test_whole_ranges_are_proved(content: Content) -> None:
    """Padding just as large as the footprint is clean; one pixel less is not, and the witness shows it."""
    wide = Panel(800, 60)
    part = field(content=content, x=400, align="centre", padding=(0, 12, 800, 30))
    ink = next(measures(gather(layout(part, panel=wide), Path()))).ink
    assert rules(layout(replace(part, padding=ink), panel=wide)) == []
    tight = (ink[0] + 1, ink[1], ink[2] - 1, ink[3])
    (found,) = faults(layout(replace(part, padding=tight), panel=wide))
    assert found.rule == "fit"
