"""What is proposed ends its finding; what is searched for, a place or a type, brings no new fault either."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from panelproof.content.spec import Choice, Content, WholeRange
from panelproof.ink.mask import rectangle
from panelproof.layout.checking import problems
from panelproof.layout.colour import ColourFormat
from panelproof.layout.document import Ink, Layout, Screen, TypeSpec
from panelproof.layout.panel import Panel, Refresh, Shape
from panelproof.layout.parts import Align, Box, Clearing, Field, Icon, IconState, Label, Meter, Part, Rule
from panelproof.material import gather
from panelproof.proof.check import prove
from panelproof.proof.extent import stage, visible
from panelproof.proof.finding import Change, Finding
from panelproof.proof.free_place import FARTHEST, _taken
from panelproof.proof.measure import measures
from panelproof.proof.mending import changed, tried

PANEL = Panel(120, 60, width_mm=24.0, height_mm=12.0)
Key = tuple[str, str, str, str]


def layout(*parts: Part, panel: Panel = PANEL, **others: object) -> Layout:
    made = Layout(
        1,
        "tank",
        panel,
        (
            TypeSpec("plain", "SourceSansPro", 14),
            TypeSpec("small", "SourceSansPro", 11),
            TypeSpec("smooth", "SourceSansPro", 14, "antialiased"),
        ),
        (Ink("black", "#000000"), Ink("white", "#ffffff"), Ink("dim", "#505060"), Ink("blue", "#000060")),
        (Screen("main", "black", parts),),
    )
    return replace(made, **others) if others else made


def found(made: Layout) -> tuple[Finding, ...]:
    assert problems(made) == []
    return prove(gather(made, Path()))


def keys(findings: tuple[Finding, ...], *levels: str) -> Counter[Key]:
    # What is left of a screen is one fault, whichever of its parts shows it first.
    return Counter(
        (one.rule, one.screen, one.part, "" if one.rule == "residue" else one.other)
        for one in findings
        if not levels or one.level in levels
    )


def apply(made: Layout, finding: Finding) -> Layout:
    assert finding.remedy is not None
    return changed(made, finding.screen, finding.remedy.changes)


def the(made: Layout, rule: str) -> Finding:
    return next(one for one in found(made) if one.rule == rule)


SET = Label("set", "Set", "plain", "white", 5, 30)
LINE = Rule("line", 12, 25, 30, "white")


class TestFreePlace:
    @pytest.mark.parametrize(
        "line",
        [
            LINE,
            Rule("line", 22, 12, 24, "white", "down"),
            Rule("line", 3, 25, 60, "white"),
            Rule("line", 9, 18, 24, "white", "down"),
            Rule("line", 20, 27, 30, "white"),
        ],
        ids=["along", "beside", "through", "down", "at the corner"],
    )  # fmt: skip
    def test_the_shortest_move_of_either(self, line: Rule) -> None:
        made = layout(SET, line)
        finding = the(made, "collides")
        after = apply(made, finding)
        assert found(after) == ()
        label, rule = after.screens[0].parts
        assert isinstance(label, Label)
        assert isinstance(rule, Rule)
        by = label.x - SET.x, label.baseline - SET.baseline, rule.x - line.x, rule.y - line.y
        assert by[:2] == (0, 0) or by[2:] == (0, 0), "one of them stays"
        # Every shorter move of one part, tried one by one, still collides.
        least = sum(step * step for step in by)
        for dx in range(-FARTHEST, FARTHEST + 1):
            for dy in range(-FARTHEST, FARTHEST + 1):
                if dx * dx + dy * dy < least:
                    for parts in (
                        (replace(SET, x=SET.x + dx, baseline=SET.baseline + dy), line),
                        (SET, replace(line, x=line.x + dx, y=line.y + dy)),
                    ):
                        rules = {one.rule for one in found(layout(*parts))}
                        assert rules & {"collides", "fit"}, (dx, dy, parts)

    def test_a_field_takes_its_padding_with_it(self) -> None:
        level = Field(
            "level", Content("%d", (WholeRange(0, 99),), fault="-"), "plain", "white", 10, 30,
            padding=(8, 16, 24, 18), clearing="pad",
        )  # fmt: skip
        made = layout(level, Box("card", 20, 14, 90, 30, outline="white"))
        finding = the(made, "erases")
        after = apply(made, finding)
        assert found(after) == ()

    def test_where_there_is_no_room_nothing_is_proposed(self) -> None:
        rows = [Rule(f"row-{y}", 0, y, 120, "white", thickness=3) for y in range(0, 60, 4)]
        made = layout(*rows, SET)
        assert the(made, "collides").remedy is None

    def test_a_field_does_not_repaint_another_ground(self) -> None:
        level = Field("level", Content("%d", (WholeRange(0, 99),), fault="-"), "plain", "white", 40, 30)
        x, y, width, height = next(
            measures(gather(layout(replace(level, padding=(0, 0, 99, 60))), Path()))
        ).ink
        level = replace(level, padding=(x, y, width, height))
        post = Rule("post", x + width - 1, 0, 60, "white", "down")
        assert "px to the left" in _sentence(layout(level, post))
        # To the left lies a card of another ground now, so it goes where neither is.
        card = Box("card", 0, 0, x, 60, fill="blue")
        made = layout(card, level, post)
        assert found(apply(made, the(made, "erases"))) == ()

    def test_a_label_does_not_move_onto_its_own_colour(self) -> None:
        label, post = replace(SET, x=10), Rule("post", 27, 0, 60, "dim", "down")
        assert "`set` 2 px to the left" in _sentence(layout(label, post))
        card = Box("card", 0, 0, 10, 60, fill="white")
        made = layout(card, label, post)
        assert found(apply(made, the(made, "collides"))) == ()

    def test_a_blended_label_stays_on_the_ground_it_is_blended_with(self) -> None:
        label, post = replace(SET, x=10, type="smooth"), Rule("post", 27, 0, 60, "dim", "down")
        card = Box("card", 0, 0, 10, 60, fill="blue")
        for parts in (
            (card, label, post),
            (Box("card", 9, 0, 50, 60, fill="blue"), replace(label, ground="blue"), post),
        ):
            made = layout(*parts)
            assert keys(found(apply(made, the(made, "collides"))), "fault") == Counter()

    def test_nothing_is_moved_to_where_the_next_screen_leaves_it(self) -> None:
        label, post = replace(SET, x=10), Rule("post", 27, 0, 60, "white", "down")
        made = layout(label, post)
        main = made.screens[0]
        # It covers all but ten columns at the left.
        cover = Screen("cover", "black", (Box("all", 10, 0, 110, 60, fill="black"),), clears=False)
        two = replace(made, screens=(main, cover))
        assert [one.rule for one in found(two)] == ["collides"]
        assert found(apply(two, the(two, "collides"))) == ()

    def test_nothing_is_moved_under_the_rounded_edge(self) -> None:
        # At the row's middle the round glass begins at column 0, two rows further up already at column 1.
        panel = Panel(60, 60, shape="round")
        dot, post = Rule("dot", 0, 30, 3, "white"), Rule("post", 2, 28, 4, "dim", "down")
        made = layout(dot, post, panel=panel)
        assert [one.rule for one in found(made)] == ["collides"]
        after = apply(made, the(made, "collides"))
        assert found(after) == ()
        dots = stage(gather(made, Path()), made.screens[0]).extents
        for_ink, _ = _taken(dots, 0, panel, 0)
        hidden = rectangle(0, 0, 60, 60) - visible(panel)
        assert hidden
        assert for_ink & hidden.bits == hidden.bits


def _sentence(made: Layout) -> str:
    finding = next(one for one in found(made) if one.rule in ("collides", "erases"))
    assert finding.remedy is not None
    return finding.remedy.sentence


class TestTooLong:
    WORDS = Content("%s", (Choice(("Off", "Joining the radio now")),), fault="?")

    def test_the_largest_type_of_the_layout_that_fits(self) -> None:
        wide = Field("state", self.WORDS, "plain", "white", 2, 30, padding=(0, 16, 120, 20))
        made = layout(wide)
        finding = the(made, "fit")
        assert finding.remedy is not None
        assert finding.remedy.sentence.startswith("type `small`")
        assert found(apply(made, finding)) == ()

    @pytest.mark.parametrize(("align", "x"), [("left", 2), ("centre", 60), ("centre", 56), ("right", 118)])
    def test_each_text_is_told_how_much_it_must_lose(self, align: Align, x: int) -> None:
        wide = Field("state", self.WORDS, "plain", "white", x, 30, align, padding=(0, 16, 120, 20))
        finding = the(layout(wide), "fit")
        assert finding.remedy is not None
        assert "shorten `Joining the radio now` by" in finding.remedy.sentence
        assert "`Off`" not in finding.remedy.sentence
        by = int(finding.remedy.sentence.split("now` by ")[1].split(" px")[0])
        # In a frame that gives it so much more room where it grows, it fits, and with a pixel less it does not.
        left, _, width, _ = next(measures(gather(layout(wide), Path()))).ink
        before, behind = max(-left, 0), max(left + width - 120, 0)
        assert by == {"left": behind, "right": before, "centre": 2 * max(before, behind)}[align]

    def test_of_several_types_that_fit_the_largest(self) -> None:
        wide = Field("state", self.WORDS, "plain", "white", 2, 30, padding=(0, 16, 120, 20))
        types = (
            TypeSpec("tiny", "SourceSansPro", 9),
            *layout().types[:2],
            TypeSpec("other", "SourceSansPro", 10),
            TypeSpec("large", "SourceSansPro", 20),
        )
        finding = the(layout(wide, types=types), "fit")
        assert finding.remedy is not None
        assert finding.remedy.sentence.startswith("type `small`")

    def test_a_type_that_serves_this_part_alone_is_set_smaller(self) -> None:
        wide = Field("state", self.WORDS, "plain", "white", 2, 30, padding=(0, 16, 120, 20))
        made = layout(wide, types=(TypeSpec("plain", "SourceSansPro", 16),))
        finding = the(made, "fit")
        assert finding.remedy is not None
        after = apply(made, finding)
        assert [one for one in found(after) if one.level == "fault"] == []
        size = after.types[0].size
        assert size is not None
        larger = replace(after, types=(replace(after.types[0], size=size + 1),))
        assert any(one.level == "fault" for one in found(larger)), "it is the largest that fits"

    def test_bitmap_fonts_go_down_a_file(self) -> None:
        wide = Field("state", self.WORDS, "plain", "white", 2, 30, padding=(0, 10, 120, 30))
        made = layout(wide, types=(TypeSpec("plain", "pellucet-16"),))
        finding = the(made, "fit")
        assert finding.remedy is not None
        assert "pellucet-1" in finding.remedy.sentence
        assert [one for one in found(apply(made, finding)) if one.level == "fault"] == []


class TestNoRoomForPadding:
    LEVEL = Field(
        "level", Content("%d", (WholeRange(0, 99),), fault="-"), "plain", "white", 40, 30, padding=(40, 16, 8, 20)
    )  # fmt: skip

    def test_it_is_made_larger_and_moved_to_where_it_has_room(self) -> None:
        post = Rule("post", 50, 0, 60, "white", "down")
        made = layout(self.LEVEL, post, Label("other", "T", "plain", "white", 90, 30))
        finding = the(made, "fit")
        assert finding.remedy is not None
        assert "; and move `level`" in finding.remedy.sentence
        assert keys(found(apply(made, finding)), "fault") == Counter(
            {("collides", "main", "level", "post"): 0}
        )

    def test_where_it_is_hemmed_in_a_smaller_type_serves(self) -> None:
        x, y, width, height = next(
            measures(gather(layout(replace(self.LEVEL, type="small")), Path()))
        ).ink  # just room for that type
        boxes = ((0, 0, x, 60), (x + width, 0, 70, 60), (x, 0, width, y), (x, y + height, width, 24))
        around = [Box(f"side-{number}", *side, fill="white") for number, side in enumerate(boxes)]
        around[1], around[3] = (
            replace(around[1], width=120 - x - width),
            replace(around[3], height=60 - y - height),
        )
        made = layout(*around, replace(self.LEVEL, padding=(x, y, width, height)))
        finding = the(made, "fit")
        assert finding.remedy is not None
        assert finding.remedy.sentence.startswith("type `small`")
        assert keys(found(apply(made, finding)), "fault") == Counter()

    def test_a_ghost_is_cleared_where_there_is_room_for_it(self) -> None:
        number = Content("%d", (WholeRange(0, 120),), fault="-")
        level = replace(self.LEVEL, content=number, clearing="cell", padding=None, x=80, align="right")
        x, _, _, _ = next(measures(gather(layout(level), Path()))).ink
        # Only the longest text reaches the column before the post, and only a padding box wipes it.
        made = layout(level, Rule("post", x + 1, 2, 18, "white", "down"))
        for finding in found(made):
            if finding.rule == "stale":
                assert not keys(found(apply(made, finding)), "fault") - keys(found(made), "fault")


class TestAnotherType:
    def test_a_type_that_has_the_missing_character(self) -> None:
        bare = TypeSpec("bare", "HankenGrotesk", 14)
        label = replace(SET, text="8 Ω", type="bare")
        assert the(layout(label, types=(bare,)), "missing-glyph").remedy is None
        types = (TypeSpec("large", "SourceSansPro", 24), *layout().types, bare)
        made = layout(label, types=types)
        finding = the(made, "missing-glyph")
        assert finding.remedy is not None
        assert finding.remedy.sentence == "type `plain` has them", "the nearest in size"
        assert found(apply(made, finding)) == ()
        # Where it does not fit, it is only named.
        post = Rule("post", 5, 0, 60, "white", "down")
        crowded = layout(replace(label, x=6), post, types=(types[0], bare), panel=replace(PANEL, width=26))
        remedy = the(crowded, "missing-glyph").remedy
        assert remedy is not None
        assert (remedy.sentence, remedy.changes) == ("type `large` has them", ())

    def test_a_type_that_tells_characters_apart(self) -> None:
        words = Content("%s", (Choice(("Il", "ll")),), fault="-")
        level = Field("level", words, "plain", "white", 40, 30, padding=(38, 12, 12, 24))
        types = (*layout().types[:2], TypeSpec("clear", "pellucet-16"))
        made = layout(level, types=types)
        finding = the(made, "lookalike")
        assert finding.remedy is not None
        assert finding.remedy.sentence == "type `clear` tells them apart"
        assert found(apply(made, finding)) == ()


def test_a_box_and_text_that_leave_the_panel_come_back_together() -> None:
    level = Field("level", Content("%d", (WholeRange(0, 99),), fault="-"), "plain", "white", 112, 30)
    made = layout(replace(level, padding=(110, 16, 24, 20)))
    assert [one.rule for one in found(made)] == ["fit", "fit"]
    for finding in found(made):
        assert found(apply(made, finding)) == ()
    # Where only the box leaves the panel, it is cut.
    wide = layout(replace(level, x=100, padding=(98, 16, 24, 20)))
    (finding,) = found(wide)
    assert finding.remedy is not None
    assert finding.remedy.sentence.startswith("cut the padding box")
    assert found(apply(wide, finding)) == ()


class TestGround:
    def test_a_blended_label_takes_the_ground_that_lies_under_all_of_it(self) -> None:
        label = replace(SET, type="smooth")
        card = Box("card", 0, 0, 60, 60, fill="blue")
        made = layout(card, label)
        finding = the(made, "ground")
        assert finding.remedy is not None
        assert finding.remedy.sentence == "ground `blue`"
        assert found(apply(made, finding)) == ()

    def test_one_that_lies_on_two_grounds_is_moved(self) -> None:
        label = replace(SET, type="smooth", x=20, ground="blue")
        made = layout(Box("card", 0, 0, 30, 60, fill="blue"), label)
        finding = the(made, "ground")
        assert finding.remedy is not None
        assert finding.remedy.sentence.startswith("move `set`")
        assert found(apply(made, finding)) == ()


def test_a_trial_that_brings_a_fault_is_none() -> None:
    made = gather(layout(SET, Rule("line", 5, 40, 30, "white")), Path())
    assert tried(made, "main", (Change("set", "x", 60),)) is not None
    assert tried(made, "main", (Change("set", "baseline", 41),)) is None, "it would collide"
    assert tried(made, "main", (Change("set", "type", "gone"),)) is None, "no such type"
    assert tried(made, "main", (Change("gone", "x", 1),)) is None
    assert tried(made, "main", (Change("plain", "font", "gone.bdf", "type"),)) is None


TEXTS = ("9", "Set", "Ready", "100 %", "Il1")


@st.composite
def parts(draw: st.DrawFn, number: int) -> Part:
    x, y = draw(st.integers(-4, 110)), draw(st.integers(2, 56))
    name = f"part-{number}"
    ink = draw(st.sampled_from(("white", "dim")))
    ground = draw(st.sampled_from((None, None, "blue")))
    kind = draw(st.sampled_from(("label", "field", "icon", "rule", "box", "meter")))
    type_ = draw(st.sampled_from(("plain", "small", "smooth")))
    if kind == "label":
        return Label(name, draw(st.sampled_from(TEXTS)), type_, ink, x, y, ground=ground)
    if kind == "field":
        content = Content("%d", (WholeRange(0, draw(st.integers(5, 120))),), fault="-")
        wide, high = draw(st.integers(10, 40)), draw(st.integers(8, 24))
        clearing: Clearing = draw(st.sampled_from(("pad", "cell", "box")))
        padding = (x - 2, y - high + 4, wide, high)
        return Field(name, content, type_, ink, x, y, ground=ground, clearing=clearing, padding=padding)
    if kind == "icon":
        states = (IconState("on", ("###", "#.#", "###"), ink=ink), IconState("off", ("###", "#.#", "###")))
        return Icon(name, x, y, "white", states)
    if kind == "rule":
        return Rule(name, x, y, draw(st.integers(3, 40)), ink, draw(st.sampled_from(("across", "down"))))
    if kind == "meter":
        return Meter(name, x, y, draw(st.integers(8, 40)), draw(st.integers(2, 8)), 0, 100, ink)
    fill = draw(st.sampled_from(("blue", "white", None)))
    return Box(name, x, y, draw(st.integers(3, 60)), draw(st.integers(3, 40)), fill, None if fill else ink)


@st.composite
def layouts(draw: st.DrawFn) -> Layout:
    many = [draw(parts(number)) for number in range(draw(st.integers(1, 4)))]
    colours: ColourFormat = draw(st.sampled_from(("rgb565", "rgb565", "mono", "grey4", "grey16", "indexed")))
    palette = ("#000000", "#ffffff", "#d02020") if colours == "indexed" else ()
    refresh: Refresh = draw(st.sampled_from(("part", "whole")))
    shape: Shape = draw(st.sampled_from(("rectangular", "rectangular", "rounded")))
    corner = 14 if shape == "rounded" else 0
    panel = replace(
        PANEL, colour_format=colours, palette=palette, refresh=refresh, shape=shape, corner_radius=corner
    )
    distance = draw(st.sampled_from((None, 300.0, 500.0)))
    made = replace(layout(*many, panel=panel), reading_distance_mm=distance)
    if not panel.colours.blends:
        made = replace(made, types=tuple(replace(spec, rendering="one-bit") for spec in made.types))
    if draw(st.booleans()):
        cover = Box("cover", draw(st.integers(-9, 60)), draw(st.integers(-9, 30)), 100, 50, fill="black")
        made = replace(made, screens=(*made.screens, Screen("menu", "black", (cover,), clears=False)))
    return made


def searched(finding: Finding) -> bool:
    """Tell whether the remedy is one that was looked for so that it brings no fault."""
    assert finding.remedy is not None
    sentence = finding.remedy.sentence
    searching = sentence.startswith(("move `", "type `")) or "; and move `" in sentence
    return searching or finding.rule in ("contrast", "height", "text-bytes")


@settings(max_examples=150, deadline=None)
@given(layouts())
def test_a_remedy_ends_its_finding_and_one_that_was_searched_for_brings_no_fault(made: Layout) -> None:
    before = found(made)
    for finding in before:
        if finding.remedy is None or not finding.remedy.changes:
            continue
        after = found(apply(made, finding))
        ((key, _),) = keys((finding,)).items()
        level = finding.level
        assert keys(after, level)[key] < keys(before, level)[key], finding
        if searched(finding):
            assert not keys(after, "fault") - keys(before, "fault"), finding


@pytest.mark.parametrize("rule", ["collides", "erases", "contrast", "height", "fit", "stale"])
def test_the_made_layouts_do_reach_the_remedies_of(rule: str) -> None:
    """The property above holds of something: each of these rules is broken and has a ready remedy."""
    level = Field(
        "level",
        Content("%d", (WholeRange(0, 120),), fault="-"),
        "plain",
        "dim",
        40,
        30,
        padding=(38, 12, 12, 24),
    )
    made = {
        "collides": layout(SET, LINE),
        "erases": layout(replace(level, padding=(38, 12, 40, 24), ink="white"), replace(LINE, x=70)),
        "contrast": layout(replace(SET, ink="dim")),
        "height": replace(layout(SET), reading_distance_mm=500.0),
        "fit": layout(level),
        "stale": layout(replace(level, clearing="cell", padding=None)),
    }[rule]
    finding = the(made, rule)
    assert finding.remedy is not None
    assert finding.remedy.changes
