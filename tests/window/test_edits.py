from __future__ import annotations

from itertools import pairwise
from pathlib import Path
from random import Random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from PIL import Image
from tests.picture import tank
from tests.window.begun import starter
from tests.window.handiwork import another

from panelproof.content.build import graph, text
from panelproof.content.spec import Choice, Content, FreeText, RealRange, WholeRange
from panelproof.editor import edits, places
from panelproof.layout.checking import problems
from panelproof.layout.document import Layout, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box, Field, Icon, IconState, Label, Part, Rule
from panelproof.layout.reading import parse
from panelproof.layout.writing import encode
from panelproof.material import gather
from panelproof.picture.moments import moments, named
from panelproof.picture.values import Values
from panelproof.problem import Problem
from panelproof.proof.check import prove
from panelproof.proof.finding import Change

ALIGNS: tuple[edits.Edge, ...] = ("left", "centre", "right", "top", "middle", "bottom", "baseline")


def part(layout: Layout, name: str, screen: str = "readings") -> Part:
    shown = next(one for one in layout.screens if one.name == screen)
    return next(one for one in shown.parts if one.name == name)


def field(layout: Layout, name: str, screen: str = "readings") -> Field:
    found = part(layout, name, screen)
    assert isinstance(found, Field)
    return found


def names(layout: Layout, screen: str = "readings") -> list[str]:
    return [one.name for one in next(one for one in layout.screens if one.name == screen).parts]


# -- whatever is done --------------------------------------------------------------------------------------


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.integers(0, 2**32))
def test_every_change_leaves_a_valid_layout_whose_moments_can_be_shown(seed: int) -> None:
    rng = Random(seed)
    layout = tank.layout()
    for _ in range(12):
        try:
            title, changed = another(rng, layout, gather(layout, Path()))
        except Problem as problem:
            assert problem.message
            continue
        assert not problems(changed), title
        assert parse(encode(changed)) == changed, title
        material = gather(changed, Path())
        for number in range(len(changed.moments)):
            named(material, number)
        layout = changed


# -- moving ------------------------------------------------------------------------------------------------


def test_a_moved_field_takes_its_padding_box_along() -> None:
    before = tank.layout()
    after = edits.move_parts(before, "readings", {"level", "line"}, 3, -2)
    old, new = field(before, "level"), field(after, "level")
    assert (new.x, new.baseline) == (old.x + 3, old.baseline - 2)
    assert new.padding == (23, 22, 56, 24)
    line = part(after, "line")
    assert isinstance(line, Rule)
    assert (line.x, line.y) == (7, 17)
    assert part(after, "unit") == part(before, "unit")


def test_moving_nothing_gives_the_same_layout() -> None:
    layout = tank.layout()
    assert edits.move_parts(layout, "readings", {"level"}, 0, 0) is layout
    assert edits.move_parts(layout, "readings", {"who"}, 5, 0) is layout


def test_parts_stop_together_at_the_greatest_coordinate() -> None:
    after = edits.move_parts(tank.layout(), "readings", {"level", "unit"}, 9000, 0)
    level, unit = field(after, "level"), part(after, "unit")
    assert isinstance(unit, Label)
    assert (level.x, unit.x) == (4092, 4096)


# -- replacing and naming ----------------------------------------------------------------------------------


def test_a_new_name_is_taken_over_in_the_moments() -> None:
    after = edits.rename_part(tank.layout(), "readings", "level", "depth")
    assert "depth" in names(after)
    assert after.moments[0].fields["depth"] == (121.5,)
    assert "level" not in after.moments[0].fields
    assert not problems(after)


@pytest.mark.parametrize("new", ["flow", "Depth", "", "a--b", "9th", "x" * 41])
def test_a_name_that_is_taken_or_none_is_refused(new: str) -> None:
    with pytest.raises(Problem, match=r"already|cannot be a name"):
        edits.rename_part(tank.layout(), "readings", "level", new)


def test_a_value_that_the_new_content_cannot_show_gives_way_to_the_nearest() -> None:
    layout = tank.layout()
    narrow = Content("%.1f", (RealRange(0, 100),), fault="lost", first="...")
    after = edits.set_part(layout, "readings", "level", replace(field(layout, "level"), content=narrow))
    assert after.moments[0].fields["level"] == (100.0,)  # was 121.5
    assert after.moments[1].fields["level"] == "lost"  # was the old fault text


def test_a_renamed_state_is_followed_and_a_lost_one_gives_way_to_the_first() -> None:
    layout = tank.layout()
    link = part(layout, "link")
    assert isinstance(link, Icon)
    renamed = replace(link, states=(replace(link.states[0], name="up"), *link.states[1:]))
    after = edits.set_part(layout, "readings", "link", renamed)
    assert [moment.icons["link"] for moment in after.moments] == ["up", "fault"]
    fewer = edits.set_part(layout, "readings", "link", replace(link, states=link.states[:2]))
    assert [moment.icons["link"] for moment in fewer.moments] == ["on", "on"]


@pytest.mark.parametrize(
    ("wanted", "taken", "free"),
    [
        ("label", [], "label"),
        ("label", ["label"], "label-2"),
        ("label-2", ["label", "label-2"], "label-3"),
        ("x" * 40, ["x" * 40], "x" * 38 + "-2"),
    ],
)
def test_a_free_name_counts_on(wanted: str, taken: list[str], free: str) -> None:
    assert edits.free_name(wanted, taken) == free


# -- adding and taking away --------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", edits.KINDS)
@pytest.mark.parametrize("colours", ["mono", "rgb565"])
def test_a_new_part_on_an_empty_screen_proves_clean(kind: edits.Kind, colours: str, tmp_path: Path) -> None:
    panel = Panel(128, 64, "mono") if colours == "mono" else Panel(240, 240)
    begun = starter("bench", panel)
    layout = replace(begun, screens=(Screen("main", "black"),), moments=())
    Image.new("RGB", (9, 7), "white").save(tmp_path / "drop.png")
    after, name = edits.add_part(
        layout,
        gather(layout, tmp_path),
        "main",
        kind,
        (64, 32),
        picture="drop.png" if kind == "picture" else "",
    )
    assert name == kind
    found = [one for one in prove(gather(after, tmp_path)) if one.level == "fault"]
    assert not found, found[0].message


def test_a_field_in_a_layout_without_types_brings_its_type() -> None:
    layout = replace(starter("tiny", Panel(16, 16, "mono")), types=(), moments=())
    layout = replace(layout, screens=(Screen("main", "black"),))
    after, name = edits.add_part(layout, gather(layout, Path()), "main", "field", (8, 8))
    assert [spec.name for spec in after.types] == [field(after, name, "main").type]
    gather(after, Path())


def test_a_new_part_lies_with_its_middle_where_it_was_dropped() -> None:
    layout = tank.layout(Panel(240, 160))
    after, name = edits.add_part(layout, gather(layout, Path()), "start", "box", (100, 80))
    x, y, width, height = places.place(gather(after, Path()), part(after, name, "start")).area
    assert (x + width // 2, y + height // 2) == (100, 80)


def test_a_new_part_stays_on_the_panel_when_dropped_at_its_edge() -> None:
    layout = tank.layout(Panel(240, 160))
    after, name = edits.add_part(layout, gather(layout, Path()), "start", "field", (239, 0))
    x, y, width, _ = places.place(gather(after, Path()), part(after, name, "start")).area
    assert x + width == 240
    assert y == 0


def test_a_part_dropped_on_a_filled_box_has_its_fill_for_ground_and_an_ink_that_stands_out() -> None:
    layout = tank.layout()
    after, name = edits.add_part(layout, gather(layout, Path()), "readings", "field", (60, 32))
    added = field(after, name)
    assert added.ground == "slate"
    assert added.ink == "chalk"


def test_a_new_field_gets_a_value_in_each_moment_and_a_deleted_one_is_taken_out() -> None:
    layout = tank.layout()
    after, name = edits.add_part(layout, gather(layout, Path()), "readings", "field", (60, 32))
    assert [moment.fields[name] for moment in after.moments] == [(50.0,), (50.0,)]
    icons, icon = edits.add_part(after, gather(after, Path()), "readings", "icon", (60, 32))
    assert [moment.icons[icon] for moment in icons.moments] == ["linked", "linked"]
    gone = edits.delete_parts(icons, "readings", {name, icon})
    assert gone == layout


def test_copies_lie_beside_their_originals_and_show_the_same() -> None:
    layout = tank.layout()
    after, copies = edits.duplicate_parts(layout, "readings", {"level", "link"})
    assert copies == ("level-2", "link-2")
    assert field(after, "level-2").padding == (28, 32, 56, 24)
    assert after.moments[1].fields["level-2"] == "---"
    assert after.moments[1].icons["link-2"] == "fault"


def test_the_drawing_order_can_be_changed() -> None:
    after = edits.reorder(tank.layout(), "readings", "valve", 0)
    assert names(after)[:2] == ["valve", "frame"]
    assert names(edits.reorder(after, "readings", "valve", 99))[-1] == "valve"


# -- lines and gaps ----------------------------------------------------------------------------------------


@pytest.mark.parametrize("edge", ALIGNS)
def test_aligned_parts_share_the_edge(edge: edits.Edge) -> None:
    layout = tank.layout()
    chosen = {"caption", "flow", "link", "line"}
    after = edits.align(layout, tank.material(layout), "readings", chosen, edge)
    found = [places.place(tank.material(after), part(after, name)) for name in chosen]
    if edge == "baseline":
        assert {one.baseline for one in found} == {59, None}
        assert part(after, "link") == part(layout, "link")
        return
    axis = 0 if edge in ("left", "centre", "right") else 1
    share = {"left": 0, "top": 0, "centre": 1, "middle": 1}.get(edge, 2)
    along = [2 * one.area[axis] + share * one.area[axis + 2] for one in found]
    assert max(along) - min(along) <= (1 if share == 1 else 0)


def test_one_part_alone_is_aligned_to_the_panel() -> None:
    layout = tank.layout()
    after = edits.align(layout, tank.material(layout), "readings", {"link"}, "centre")
    link = part(after, "link")
    assert isinstance(link, Icon)
    assert link.x == (120 - 7) // 2


def test_spread_parts_have_gaps_that_differ_by_a_pixel_at_most() -> None:
    boxes = tuple(
        Box(f"box-{number}", x, 3, width, 9, fill="chalk")
        for number, (x, width) in enumerate(((0, 7), (9, 12), (30, 5), (100, 11)))
    )
    layout = tank.layout()
    layout = replace(layout, screens=(Screen("start", "night", boxes),), moments=())
    chosen = {box.name for box in boxes}
    after = edits.distribute(layout, tank.material(layout), "start", chosen, "across")
    spread = [places.fixed(box) for box in after.screens[0].parts if isinstance(box, Box)]
    gaps = [right[0] - left[0] - left[2] for left, right in pairwise(spread)]
    assert max(gaps) - min(gaps) <= 1
    assert (spread[0][0], spread[-1][0]) == (0, 100)
    two = edits.distribute(layout, tank.material(layout), "start", {"box-0", "box-3"}, "across")
    assert two == layout


# -- sizes -------------------------------------------------------------------------------------------------


def test_a_box_stays_large_enough_for_its_outline() -> None:
    after = edits.resize(tank.layout(), "readings", "frame", (5, 6, 0, 40))
    frame = part(after, "frame")
    assert isinstance(frame, Box)
    assert (frame.x, frame.y, frame.width, frame.height) == (5, 6, 2, 40)


def test_a_rule_takes_its_length_along_its_direction() -> None:
    layout = tank.layout()
    line = part(edits.resize(layout, "readings", "line", (4, 19, 50, 3)), "line")
    assert isinstance(line, Rule)
    assert (line.length, line.thickness) == (50, 3)


def test_a_field_takes_its_padding_box_and_a_label_refuses() -> None:
    after = edits.resize(tank.layout(), "readings", "level", (1, 2, 30, 40))
    assert field(after, "level").padding == (1, 2, 30, 40)
    with pytest.raises(Problem, match="as large as its text"):
        edits.resize(tank.layout(), "readings", "unit", (1, 2, 30, 40))


def test_a_padding_box_that_the_clearing_needs_cannot_be_taken_away() -> None:
    with pytest.raises(Problem, match="cannot do without"):
        edits.set_padding(tank.layout(), "readings", "level", None)
    assert field(edits.set_padding(tank.layout(), "readings", "flow", None), "flow").padding is None


# -- copies between layouts --------------------------------------------------------------------------------


def test_pasted_parts_bring_the_types_and_inks_they_need_and_no_others() -> None:
    copied = edits.parts_to_clipboard(tank.layout(), "readings", {"level", "unit"})
    other = starter("kiln", Panel(160, 128))
    after, pasted = edits.from_clipboard(other, "main", copied, 5, 5)
    assert pasted == ("level-2", "unit")  # the starter has a field of this name
    assert [spec.name for spec in after.types] == ["text", "small", "large"]
    assert [ink.name for ink in after.inks] == ["black", "white", "amber", "chalk", "slate"]
    assert field(after, "level-2", "main").padding == (25, 29, 56, 24)
    assert not problems(after)
    gather(after, Path())


def test_a_type_of_the_same_name_but_another_font_is_not_taken_for_it() -> None:
    layout = tank.layout()
    other = replace(starter("kiln", Panel(160, 128)), types=(TypeSpec("text", "SourceSansPro", 14),))
    same = replace(other, types=(TypeSpec("text", "SourceSansPro", 14), *layout.types[1:]))
    copied = edits.parts_to_clipboard(layout, "readings", {"unit"})
    renamed = edits.rename_type(replace(other, moments=()), "text", "small")
    after, pasted = edits.from_clipboard(renamed, "main", copied)
    unit = part(after, pasted[0], "main")
    assert isinstance(unit, Label)
    assert unit.type == "small-2"
    both, _ = edits.from_clipboard(same, "main", edits.parts_to_clipboard(layout, "readings", {"level"}))
    assert both.types == same.types


def test_paths_lead_to_the_same_files_in_another_folder(tmp_path: Path) -> None:
    drawn = Icon("link", 1, 1, "chalk", (IconState("on", picture="icons/on.png"),))
    layout = tank.layout()
    layout = replace(layout, screens=(Screen("start", "night", (drawn,)),), moments=())
    copied = edits.parts_to_clipboard(layout, "start", {"link"}, tmp_path / "tank")
    after, pasted = edits.from_clipboard(layout, "start", copied, folder=tmp_path / "kiln")
    link = part(after, pasted[0], "start")
    assert isinstance(link, Icon)
    assert link.states[0].picture == "../tank/icons/on.png"


@pytest.mark.parametrize(
    "junk",
    [b"", b"\xff", b"[]", b'{"format":1,"parts":[]}', b'{"format":1,"parts":[{"kind":"label"}]}'],
)
def test_what_is_no_copy_of_parts_is_refused_in_words(junk: bytes) -> None:
    with pytest.raises(Problem, match="holds no parts"):
        edits.from_clipboard(tank.layout(), "start", junk)


def test_parts_from_a_newer_version_are_refused() -> None:
    with pytest.raises(Problem, match="newer version"):
        edits.from_clipboard(tank.layout(), "start", b'{"format":99,"parts":[]}')


# -- screens, types, inks, moments -------------------------------------------------------------------------


def test_a_renamed_screen_keeps_its_moments_and_a_deleted_one_takes_them_along() -> None:
    after = edits.rename_screen(tank.layout(), "readings", "main")
    assert {moment.screen for moment in after.moments} == {"main"}
    assert edits.delete_screen(after, "main").moments == ()
    with pytest.raises(Problem, match="already"):
        edits.rename_screen(tank.layout(), "readings", "start")


def test_a_copied_screen_has_copies_of_the_moments() -> None:
    after, name = edits.duplicate_screen(tank.layout(), "readings")
    assert name == "readings-2"
    assert [moment.name for moment in after.moments if moment.screen == name] == [
        "half-full-2",
        "sensor-lost-2",
    ]


def test_a_type_in_use_is_deleted_only_with_another_in_its_place() -> None:
    with pytest.raises(Problem, match="used by"):
        edits.delete_type(tank.layout(), "large")
    after = edits.delete_type(tank.layout(), "large", "small")
    assert field(after, "level").type == "small"
    assert not problems(after)


def test_an_ink_in_use_is_deleted_only_with_another_in_its_place() -> None:
    with pytest.raises(Problem, match="ground of `start`"):
        edits.delete_ink(tank.layout(), "night")
    after = edits.delete_ink(tank.layout(), "night", "slate")
    assert after.screens[0].ground == "slate"
    single = replace(tank.layout(), inks=tank.INKS[:1], screens=(), moments=())
    with pytest.raises(Problem, match="at least one"):
        edits.delete_ink(single, "night")


def test_a_mono_panel_makes_types_one_bit_and_shapes_bring_their_corners() -> None:
    after = edits.set_panel(tank.layout(), Panel(120, 64, "mono", "rounded"))
    assert {spec.rendering for spec in after.types} == {"one-bit"}
    assert after.panel.corner_radius == 8
    assert edits.set_panel(after, replace(after.panel, shape="rectangular")).panel.corner_radius == 0
    with pytest.raises(Problem, match="as wide as it is high"):
        edits.set_panel(after, replace(after.panel, shape="round"))


def test_a_moment_is_named_from_what_the_glass_shows() -> None:
    layout = tank.layout()
    shown = Values({"level": "0.0", "flow": "-20 l/h", "mode": "resting"}, {"link": "off", "valve": "shut"})
    after, name = edits.add_moment(layout, "readings", "half-full", shown)
    assert name == "half-full-2"
    assert after.moments[-1].fields["flow"] == "-20 l/h"
    assert after.moments[-1].icons["link"] == "off"
    usual, _ = edits.add_moment(layout, "readings", "usual")
    material = gather(usual, Path())
    assert moments(material, material.screen("readings"))[2].values.texts["level"] == "125.0"
    changed = edits.set_moment_value(after, name, "link", "fault")
    assert changed.moments[-1].icons["link"] == "fault"


@pytest.mark.parametrize(
    "content",
    [
        Content("%d", (WholeRange(-7, 8, 5),)),
        Content("%5.2f", (RealRange(-1, 1),)),
        Content("%c", (WholeRange(48, 57),)),
        Content("%s", (FreeText(12, 3, "abc"),)),
        Content("%.2s", (Choice(("open", "shut")),)),
        Content("fixed", also=("other",)),
        Content("", also=("only",)),
    ],
)
def test_the_usual_value_is_one_that_the_content_shows(content: Content) -> None:
    value = edits.usual(content)
    shown = value if isinstance(value, str) else text(content, value)
    assert graph(content).accepts(shown)


# -- remedies ----------------------------------------------------------------------------------------------


def test_a_remedy_sets_what_it_says() -> None:
    after = edits.apply_changes(tank.layout(), "readings", [Change("level", "padding", [1, 2, 3, 4])])
    assert field(after, "level").padding == (1, 2, 3, 4)
    assert not edits.apply_changes(after, "start", [Change("", "clears", False)]).screens[0].clears


@pytest.mark.parametrize(
    "change",
    [Change("gone", "x", 1), Change("level", "x", "far"), Change("level", "colour", 1)],
)
def test_a_remedy_that_cannot_be_carried_out_is_refused_in_words(change: Change) -> None:
    with pytest.raises(Problem, match=r"not there any more|cannot be changed so"):
        edits.apply_changes(tank.layout(), "readings", [change])
