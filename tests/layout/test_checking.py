"""Checking: what no layout can say, though every value is of the right kind; each rule on both sides."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from tests.layout.strategies import layouts
from tests.layout.tree import TREE, Path, Tree, changed

from panelproof.layout.checking import check_references, problems
from panelproof.layout.document import Layout
from panelproof.layout.reading import from_tree
from panelproof.problem import Problem

PART = ("screens", 0, "parts")
LABEL, FIELD, ICON, RULE, BOX, METER, PICTURE = ((*PART, number) for number in range(7))


def told(*changes: tuple[Path, Any], tree: Tree = TREE) -> list[str]:
    """Return the places of everything wrong after some changes of the valid layout."""
    for path, value in changes:
        tree = changed(path, value, tree)
    found = problems(from_tree(tree))
    if found:
        with pytest.raises(Problem) as caught:
            check_references(from_tree(tree))
        assert str(caught.value) == str(found[0])
    else:
        check_references(from_tree(tree))
    return [problem.place for problem in found]


@given(layouts())
@settings(max_examples=60, deadline=None)
def test_nothing_is_wrong_with_right_layouts(layout: Layout) -> None:
    assert problems(layout) == []


def test_nothing_is_wrong_with_the_tree_that_the_tests_change() -> None:
    assert told() == []


def test_everything_is_told_in_the_order_of_the_file() -> None:
    changes: list[tuple[Path, Any]] = [
        (("panel", "shape"), "round"),
        ((*LABEL, "type"), "txt"),
        ((*LABEL, "ink"), "red"),
        ((*FIELD, "padding"), None),
        ((*ICON, "states", 0, "ink"), "red"),
        (("moments", 1, "icons", "pump"), "broken"),
    ]
    assert told(*changes) == [
        "panel.shape",
        "screens[0].parts[0].type",
        "screens[0].parts[0].ink",
        "screens[0].parts[1]",
        "screens[0].parts[2].states[0].ink",
        "moments[1].icons.pump",
    ]


@pytest.mark.parametrize("key", ["types", "inks", "screens", "moments"])
def test_names_of_a_layout_differ(key: str) -> None:
    entries = [*TREE[key], TREE[key][0], TREE[key][0]]
    last = len(entries)
    assert told(((key,), entries)) == [f"{key}[{last - 2}].name", f"{key}[{last - 1}].name"]


def test_names_of_parts_differ_on_a_screen_only() -> None:
    assert told(((*RULE, "name"), "frame")) == ["screens[0].parts[4].name"]
    second = {**TREE["screens"][0], "name": "second"}
    assert told((("screens",), [TREE["screens"][0], second])) == []


def test_names_of_states_differ_in_an_icon_only() -> None:
    assert told(((*ICON, "states", 1, "name"), "off")) == [
        "screens[0].parts[2].states[1].name",
        "moments[1].icons.pump",
    ]
    twin = {**TREE["screens"][0]["parts"][2], "name": "valve"}
    tree = changed(PART, [*TREE["screens"][0]["parts"], twin])
    tree = changed(("moments",), [], tree)
    assert told(tree=tree) == []


@pytest.mark.parametrize(
    "path",
    [
        ("screens", 0, "ground"),
        (*LABEL, "ink"),
        (*LABEL, "ground"),
        (*FIELD, "ink"),
        (*FIELD, "ground"),
        (*ICON, "ink"),
        (*ICON, "ground"),
        (*ICON, "states", 1, "ink"),
        (*RULE, "ink"),
        (*BOX, "fill"),
        (*BOX, "outline"),
        (*METER, "ink"),
        (*METER, "ground"),
        (*METER, "limits", 0, "ink"),
        (*METER, "limits", 1, "ink"),
    ],
)
def test_every_ink_is_one_of_the_layout(path: Path) -> None:
    place = ".".join(str(key) for key in path).replace(".0", "[0]")
    for number in range(1, 7):
        place = place.replace(f".{number}", f"[{number}]")
    assert told((path, "green")) == [place]
    assert told((path, "black")) == []


@pytest.mark.parametrize("path", [LABEL, FIELD])
def test_every_type_is_one_of_the_layout(path: Path) -> None:
    assert told(((*path, "type"), "large")) == [f"screens[0].parts[{path[-1]}].type"]


def test_there_is_an_ink() -> None:
    tree = {"format": 1, "name": "tank", "panel": TREE["panel"]}
    assert told(tree=tree) == ["inks"]


@pytest.mark.parametrize(
    ("clearing", "padding", "right"),
    [
        ("pad", None, False),
        ("box", None, False),
        ("cell", None, True),
        ("none", None, True),
        ("pad", [0, 0, 1, 1], True),
        ("box", [0, 0, 1, 1], True),
        ("none", [0, 0, 1, 1], True),
    ],
)
def test_clearing_a_padding_box_needs_one(clearing: str, padding: list[int] | None, right: bool) -> None:
    wrong = [] if right else ["screens[0].parts[1]"]
    assert told(((*FIELD, "clearing"), clearing), ((*FIELD, "padding"), padding)) == wrong


def test_an_icon_has_a_padding_box_of_itself() -> None:
    assert told(((*ICON, "clearing"), "box"), ((*ICON, "padding"), None)) == []


@pytest.mark.parametrize(
    ("shape", "width", "height", "radius", "wrong"),
    [
        ("rectangular", 240, 135, 0, []),
        ("rectangular", 240, 135, 1, ["panel.corner_radius"]),
        ("rounded", 240, 135, 0, ["panel"]),
        ("rounded", 240, 135, 1, []),
        ("rounded", 240, 135, 67, []),
        ("rounded", 240, 135, 68, ["panel.corner_radius"]),
        ("rounded", 134, 240, 67, []),
        ("round", 240, 240, 0, []),
        ("round", 240, 239, 0, ["panel.shape"]),
        ("round", 240, 240, 5, ["panel.corner_radius"]),
    ],
)
def test_shapes(shape: str, width: int, height: int, radius: int, wrong: list[str]) -> None:
    panel = {"width": width, "height": height, "shape": shape, "corner_radius": radius}
    assert told((("panel",), panel)) == wrong


@pytest.mark.parametrize("key", ["width_mm", "height_mm"])
def test_both_sizes_in_millimetres_or_neither(key: str) -> None:
    assert told((("panel", key), None)) == ["panel"]
    assert told((("panel", "width_mm"), None), (("panel", "height_mm"), None)) == []


@pytest.mark.parametrize(
    ("colours", "rendering", "wrong"),
    [
        ("mono", "antialiased", ["types[0].rendering"]),
        ("mono", "one-bit", []),
        ("indexed", "antialiased", ["types[0].rendering"]),
        ("indexed", "one-bit", []),
        ("grey4", "antialiased", []),
        ("grey16", "antialiased", []),
        ("rgb565", "antialiased", []),
        ("rgb565", "one-bit", []),
    ],
)
def test_some_panels_have_no_levels_between(colours: str, rendering: str, wrong: list[str]) -> None:
    palette = ["#000000", "#ffffff"] if colours == "indexed" else []
    panel = {**TREE["panel"], "colour_format": colours, "palette": palette}
    assert told((("panel",), panel), (("types", 0, "rendering"), rendering)) == wrong


@pytest.mark.parametrize(
    ("colours", "palette", "wrong"),
    [
        ("indexed", [], ["panel"]),
        ("indexed", ["#000000"], ["panel"]),
        ("indexed", ["#000000", "#000000"], []),
        ("mono", ["#000000", "#ffffff"], ["panel.palette"]),
        ("grey4", ["#000000"], ["panel.palette"]),
        ("grey16", [], []),
        ("rgb565", ["#000000"], ["panel.palette"]),
    ],
)
def test_a_palette_goes_with_indexed_colours(colours: str, palette: list[str], wrong: list[str]) -> None:
    panel = {**TREE["panel"], "colour_format": colours, "palette": palette}
    assert told((("panel",), panel)) == wrong


@pytest.mark.parametrize(
    ("least", "greatest", "at", "wrong"),
    [
        (0, 1, [], []),
        (1, 1, [], ["greatest"]),
        (2, 1, [], ["greatest"]),
        (-(2**31) + 1, 2**31 - 1, [], []),
        (0, 10, [0, 10], []),
        (0, 10, [-1], ["limits[0].at"]),
        (0, 10, [11], ["limits[0].at"]),
        (0, 10, [4, 4], ["limits[1].at"]),
        (0, 10, [4, 3, 5], ["limits[1].at"]),
        (10, 0, [5], ["greatest"]),
    ],
)
def test_a_meter_has_a_range_and_rising_limits(
    least: int, greatest: int, at: list[int], wrong: list[str]
) -> None:
    limits = [{"at": value} for value in at]
    meter = {**TREE["screens"][0]["parts"][5], "least": least, "greatest": greatest, "limits": limits}
    assert told((METER, meter)) == [f"screens[0].parts[5].{place}" for place in wrong]


def test_a_moment_can_show_a_meter_what_it_has_no_place_for() -> None:
    for value in (-(2**31), 2501, 2**31 - 1, None):
        assert told((("moments", 0, "meters", "depth"), value)) == []


def test_a_pictures_path_is_one_line() -> None:
    assert told(((*PICTURE, "picture"), "a\nb.png")) == ["screens[0].parts[6].picture"]


@pytest.mark.parametrize(
    ("state", "wrong"),
    [
        ({"rows": ["#"]}, []),
        ({"rows": ["..", ".."]}, []),
        ({"picture": "on.png"}, []),
        ({}, [""]),
        ({"rows": ["#"], "picture": "on.png"}, [""]),
        ({"rows": ["##", "#"]}, [".rows[1]"]),
        ({"rows": ["#", "##", "#", ""]}, [".rows[1]", ".rows[3]"]),
        ({"rows": [""]}, [".rows[0]"]),
        ({"rows": ["#.x"]}, [".rows[0]"]),
        ({"rows": ["#x#"]}, [".rows[0]"]),
        ({"rows": [" ##"]}, [".rows[0]"]),
        ({"rows": ["##\n"]}, [".rows[0]"]),
        ({"picture": "on\0.png"}, [".picture"]),
    ],
)
def test_bitmaps(state: Tree, wrong: list[str]) -> None:
    found = told(((*ICON, "states", 1), {"name": "on", **state}))
    assert found == [f"screens[0].parts[2].states[1]{place}" for place in wrong]


@pytest.mark.parametrize(
    ("width", "height", "thickness", "right"),
    [(20, 10, 5, True), (20, 10, 6, False), (10, 20, 6, False), (2, 2, 1, True), (1, 9, 1, False)],
)
def test_an_outline_is_at_most_half_the_box(width: int, height: int, thickness: int, right: bool) -> None:
    box = {**TREE["screens"][0]["parts"][4], "width": width, "height": height, "thickness": thickness}
    assert told((BOX, box)) == []
    assert told((BOX, {**box, "outline": "black"})) == ([] if right else ["screens[0].parts[4].thickness"])


def test_a_box_shows_something() -> None:
    assert told(((*BOX, "fill"), None)) == ["screens[0].parts[4]"]
    assert told(((*BOX, "fill"), None), ((*BOX, "outline"), "white")) == []


@pytest.mark.parametrize("text", ["", "\n", "a\tb", "a\x7f", "\x85", "a\u2028b", "a\u2029", "\0", "a\ud800"])
def test_texts_of_labels_are_one_line(text: str) -> None:
    assert told(((*LABEL, "text"), text)) == ["screens[0].parts[0].text"]


@pytest.mark.parametrize(
    "text", [" ", "°C", "漢字", "\U0001f525", "a\u00a0b", "e\u0301", "\u202eabc", "\ue000"]
)
def test_other_characters_are_a_matter_of_the_font(text: str) -> None:
    assert told(((*LABEL, "text"), text)) == []


def test_fonts_and_panel_names_hold_no_control_characters() -> None:
    assert told((("types", 0, "font"), "a\0b.ttf"), (("panel", "name"), "a\nb")) == [
        "panel.name",
        "types[0].font",
    ]


@pytest.mark.parametrize(
    ("path", "value", "wrong"),
    [
        (("moments", 0, "screen"), "second", "moments[0].screen"),
        (("moments", 0, "fields"), {}, "moments[0].fields"),
        (("moments", 0, "icons"), {}, "moments[0].icons"),
        (("moments", 0, "fields", "depth"), "x", "moments[0].fields.depth"),
        (("moments", 0, "fields", "title"), "x", "moments[0].fields.title"),
        (("moments", 0, "icons", "level"), "off", "moments[0].icons.level"),
        (("moments", 0, "icons", "pump"), "idle", "moments[0].icons.pump"),
        (("moments", 0, "meters"), {}, "moments[0].meters"),
        (("moments", 0, "meters", "level"), 7, "moments[0].meters.level"),
    ],
)
def test_moments_are_of_their_screen(path: Path, value: Any, wrong: str) -> None:
    assert told((path, value)) == [wrong]


def test_the_nearest_name_is_told() -> None:
    def message(path: Path, name: str) -> str:
        return problems(from_tree(changed(path, name)))[0].message

    assert message((*LABEL, "ink"), "withe") == "there is no ink `withe`; the nearest is `white`"
    assert message((*LABEL, "ink"), "zz") == "there is no ink `zz`; there are `black` and `white`"
    assert message((*LABEL, "type"), "zz") == "there is no type `zz`; there is only `text`"
    assert message(("moments", 0, "screen"), "mainn") == "there is no screen `mainn`; the nearest is `main`"
    state = message(("moments", 0, "icons", "pump"), "zz")
    assert state == "the icon `pump` has no state `zz`; there are `off` and `on`"
