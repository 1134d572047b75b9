"""Every starter on every panel that it claims: clean, the same each time, and readable as a file."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from panelproof.layout.colour import ColourFormat
from panelproof.layout.document import Layout
from panelproof.layout.panel import Panel, Refresh, Shape
from panelproof.layout.parts import Field, Icon, Label, Meter
from panelproof.layout.reading import parse
from panelproof.layout.writing import encode
from panelproof.material import Material, gather
from panelproof.problem import Problem
from panelproof.proof.check import prove
from panelproof.starters.arrange import ARRANGEMENTS
from panelproof.starters.description import Description, claiming, descriptions, refusal
from panelproof.starters.face import PLAIN
from panelproof.starters.make import EMPTY, best, chosen_panel, empty, make, own_panel
from panelproof.starters.panels import panel_of, panels
from panelproof.starters.setting import Setting

PAIRS = [(name, one.id) for one in panels() for name in descriptions()]
CLAIMED = [(name, panel) for name, panel in PAIRS if name in claiming(panel_of(panel).panel)]
REFUSED = [pair for pair in PAIRS if pair not in CLAIMED]


@cache
def made(name: str, panel: str) -> Layout:
    return make(name, panel_of(panel).panel, "made")


@cache
def material(name: str, panel: str) -> Material:
    return gather(made(name, panel), Path())


def test_descriptions_and_arrangements_are_of_the_same_starters() -> None:
    assert set(descriptions()) == set(ARRANGEMENTS)
    orders = [one.order for one in descriptions().values()]
    assert orders == sorted(set(orders))


def test_every_panel_has_a_starter_and_every_starter_panels() -> None:
    assert all(claiming(one.panel) for one in panels())
    for name in descriptions():
        assert sum(name == claimed for claimed, _ in CLAIMED) >= 3, name


@pytest.mark.parametrize(("name", "panel"), CLAIMED)
def test_it_is_clean(name: str, panel: str) -> None:
    assert [finding for finding in prove(material(name, panel)) if finding.level != "note"] == []


@pytest.mark.parametrize(("name", "panel"), CLAIMED)
def test_it_is_written_and_read_as_it_is(name: str, panel: str) -> None:
    layout = made(name, panel)
    assert parse(encode(layout)) == layout


@pytest.mark.parametrize(("name", "panel"), CLAIMED)
def test_it_uses_what_it_declares_and_bundled_type_alone(name: str, panel: str) -> None:
    layout = made(name, panel)
    parts = [part for screen in layout.screens for part in screen.parts]
    assert {spec.name for spec in layout.types} == {
        part.type for part in parts if isinstance(part, Field | Label)
    }
    assert all(spec.font.startswith("pellucet-") and spec.size is None for spec in layout.types)
    assert len({spec.font for spec in layout.types}) == len(layout.types), "one face, one type"
    assert {moment.screen for moment in layout.moments} == {screen.name for screen in layout.screens}
    assert layout.panel == panel_of(panel).panel
    assert layout.reading_distance_mm is not None and layout.reading_distance_mm >= 150
    written = encode(layout).decode()
    for ink in layout.inks:
        assert written.count(f'"{ink.name}"') > 1, f"the ink `{ink.name}` is used"


@pytest.mark.parametrize(("name", "panel"), CLAIMED)
def test_an_even_margin_is_kept(name: str, panel: str) -> None:
    from panelproof.ink.mask import union
    from panelproof.layout.panel import visible_spans
    from panelproof.layout.parts import Box
    from panelproof.proof.extent import stage

    spans = visible_spans(panel_of(panel).panel)
    for screen in made(name, panel).screens:
        extents = stage(material(name, panel), screen).extents
        inks = [extent.ink for extent in extents if not isinstance(extent.part, Box)]
        for x, y in union(inks, inks[0].frame).pixels():
            first, end = spans[y]
            assert first < x < end - 1, f"{name} on {panel} inks the edge of the glass at {x}, {y}"


@pytest.mark.parametrize(("name", "panel"), REFUSED)
def test_a_panel_that_is_not_claimed_is_refused_with_the_reason(name: str, panel: str) -> None:
    reason = refusal(descriptions()[name].claims, panel_of(panel).panel)
    with pytest.raises(Problem) as caught:
        made(name, panel)
    assert caught.value.message.startswith(f"the starter `{name}` {reason}; take `")


def test_it_is_the_same_each_time() -> None:
    # In another process, so that nothing is remembered and texts are hashed otherwise.
    import subprocess
    import sys

    script = (
        "import sys; from panelproof.starters.make import make; from panelproof.starters.panels import panel_of\n"
        "from panelproof.layout.writing import encode\n"
        "for name, panel in (pair.split() for pair in sys.argv[1:]):\n"
        "    sys.stdout.buffer.write(encode(make(name, panel_of(panel).panel, 'made')))\n"
    )
    some = CLAIMED[:: len(CLAIMED) // 12]
    done = subprocess.run(
        [sys.executable, "-c", script, *(" ".join(pair) for pair in some)], capture_output=True, check=True
    )
    assert done.stdout == b"".join(encode(made(*pair)) for pair in some)


def test_larger_glass_never_gets_smaller_readings() -> None:
    def cap(panel: str) -> int:
        layout = made("one-reading", panel)
        spec = next(spec for spec in layout.types if spec.name == "reading")
        return int(spec.font.rsplit("-", 1)[1])

    for small, large in (
        ("mono-64x32-0.49", "mono-128x64-0.96"),
        ("mono-128x64-0.96", "colour-160x128-1.8"),
        ("colour-160x128-1.8", "colour-320x240-2.0"),
        ("round-160x160-0.71", "round-240x240-1.28"),
    ):
        assert cap(small) <= cap(large)


def test_parts_are_told_apart_by_names_that_say_what_they_show() -> None:
    layout = made("four-readings", "colour-320x240-2.0")
    assert [part.name for part in layout.screens[0].parts if isinstance(part, Field)] == [
        "output", "voltage", "current", "power", "heat-sink",
    ]  # fmt: skip
    icons = [
        part
        for part in made("two-readings", "colour-240x135-1.14").screens[0].parts
        if isinstance(part, Icon)
    ]
    assert [(icon.name, icon.link) for icon in icons] == [("radio", True), ("server", True)]
    bars = [
        part for part in made("level-bar", "mono-128x64-0.96").screens[0].parts if isinstance(part, Meter)
    ]
    assert [(bar.name, [limit.at for limit in bar.limits]) for bar in bars] == [("bar", [20, 90])]


def test_the_proof_decides_which_attempt_is_taken(monkeypatch: pytest.MonkeyPatch) -> None:
    def attempts(panel: Panel, plan: Description) -> Iterator[Callable[[], Setting]]:
        def one(shift: int) -> Callable[[], Setting]:
            def set_it() -> Setting:
                setting = Setting(panel, plan)
                label = setting.label("heading", PLAIN[-1], "text")
                unit = setting.label("unit", PLAIN[-1], "text")
                setting.screen("reading", [*label.make(5, 20), *unit.make(5 + shift, 20)])
                return setting

            return set_it

        yield from (one(shift) for shift in (0, 4, 90))

    monkeypatch.setitem(ARRANGEMENTS, "one-reading", attempts)
    layout = make("one-reading", panel_of("mono-128x64-0.96").panel, "made")
    places = [part.x for part in layout.screens[0].parts if isinstance(part, Label)]
    assert places[1] - places[0] > 80, (
        "the two attempts before are clean of cautions, but their parts collide"
    )


# -- panels of one's own -----------------------------------------------------------------------------------


@st.composite
def own_panels(draw: st.DrawFn) -> Panel:
    colours: ColourFormat = draw(st.sampled_from(["rgb565", "mono", "grey4", "grey16", "indexed"]))
    refresh: Refresh = draw(st.sampled_from(["part", "whole"]))
    width, height = draw(st.integers(16, 500)), draw(st.integers(16, 500))
    shape: Shape = draw(st.sampled_from(["rectangular", "rounded", "round"]))
    if shape == "round":
        height = width
    radius = draw(st.integers(1, min(width, height) // 2)) if shape == "rounded" else 0
    return own_panel((width, height), colours, shape, radius, refresh)


@given(own_panels(), st.sampled_from(list(descriptions())))
@settings(max_examples=40, deadline=None)
def test_on_any_panel_it_is_clean_or_refused_in_a_sentence(panel: Panel, name: str) -> None:
    try:
        layout = make(name, panel, "mine")
    except Problem as problem:
        assert problem.message.startswith(f"the starter `{name}` ")
        return
    assert all(finding.level == "note" for finding in prove(gather(layout, Path())))
    assert layout.reading_distance_mm is None, "without millimetres no distance can be known"


@pytest.mark.parametrize(
    ("given_name", "name"),
    [
        ("kiln", "kiln"),
        ("My Kiln (2)", "my-kiln-2"),
        ("7-segments", "panel-7-segments"),
        ("", "panel"),
        ("漢字", "panel"),
        ("x" * 39 + "-y", "x" * 39),
        ("1" * 60, "panel-" + "1" * 34),
    ],
)
def test_names(given_name: str, name: str) -> None:
    assert make("one-reading", panel_of("mono-128x64-0.96").panel, given_name).name == name
    assert empty(given_name, Panel(8, 8)).name == name


@pytest.mark.parametrize(
    ("size", "shape", "radius", "place"),
    [
        ((0, 64), "rectangular", 0, "panel.width"),
        ((128, 3000), "rectangular", 0, "panel.height"),
        ((128, 64), "round", 0, "panel.shape"),
        ((128, 64), "rounded", 0, "panel"),
        ((128, 64), "rounded", 40, "panel.corner_radius"),
        ((128, 64), "rectangular", -1, "panel.corner_radius"),
    ],
)
def test_panels_that_there_are_not(size: tuple[int, int], shape: Shape, radius: int, place: str) -> None:
    with pytest.raises(Problem) as caught:
        own_panel(size, "rgb565", shape, radius, "part")
    assert caught.value.place == place


def test_a_listed_panel_or_ones_own_not_both() -> None:
    assert chosen_panel() == panel_of("colour-240x135-1.14").panel
    assert chosen_panel(size=(9, 9)) == Panel(9, 9)
    with pytest.raises(Problem, match="not both"):
        chosen_panel("mono-128x64-0.96", size=(9, 9))


@pytest.mark.parametrize("one", panels(), ids=lambda one: one.id)
def test_an_empty_panel_is_clean_and_its_inks_are_told_apart(one: object) -> None:
    panel: Panel = one.panel  # type: ignore[attr-defined]
    layout = make(EMPTY, panel, "bare")
    assert [screen.parts for screen in layout.screens] == [()]
    bare = gather(layout, Path())
    codes = [bare.code(ink.name) for ink in layout.inks]
    assert len(set(codes)) == len(codes) >= 2
    assert not [finding for finding in prove(bare) if finding.level == "fault"]


def test_the_best_starter_is_made_closely_for_the_panel() -> None:
    assert best(panel_of("round-240x240-1.28").panel) == "round-status"
    assert best(panel_of("mono-128x64-0.96").panel) == "mono-status"
    assert best(panel_of("paper-296x128-2.9").panel) == "long-text"
    assert best(panel_of("colour-320x240-2.8").panel) == "one-reading"
    with pytest.raises(Problem, match="`one-reading`, needs 64 × 32; take `empty`"):
        best(Panel(20, 10))
