"""Moments: the layout's own and those that come by themselves."""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest
from msgspec.structs import replace
from tests.picture import naive, tank

from panelproof.content.spec import Content, WholeRange
from panelproof.layout.document import Layout, Moment, Screen
from panelproof.layout.parts import Field
from panelproof.material import Material, field_graph
from panelproof.picture.moments import ShownMoment, automatic, every_moment, moment, moments
from panelproof.picture.values import Values
from panelproof.problem import Problem


def names(shown: tuple[ShownMoment, ...]) -> list[str]:
    return [one.name for one in shown]


def with_moments(*own: Moment) -> Material:
    """Return the tank with other moments, good or not (`gather` refuses some of those itself)."""
    return dataclasses.replace(tank.tank(), layout=replace(tank.layout(), moments=own))


def good(**changes: Any) -> Moment:
    return replace(tank.MOMENTS[0], **changes)


def test_the_layouts_own_come_first_in_order() -> None:
    material = tank.tank()
    shown = moments(material, material.screen("readings"))
    assert names(shown) == [
        "half-full", "sensor-lost", "longest", "shortest", "tallest", "fault", "first"
    ]  # fmt: skip
    assert [one.automatic for one in shown] == [False, False, True, True, True, True, True]
    assert [one.title for one in shown[:2]] == ["Half full", "Sensor lost"]
    assert {one.screen for one in shown} == {"readings"}
    assert shown[0].values == Values(
        {"level": "121.5", "flow": "80 l/h", "mode": "filling"}, {"link": "on", "valve": "open"}
    )
    assert shown[1].values.texts == {"level": "---", "flow": "no flow", "mode": "resting"}
    assert shown[1].values.of("mode") == "resting" and shown[1].values.of("link") == "fault"


def height(levels: dict[naive.Pixel, int]) -> int:
    rows = [y for _, y in levels]
    return max(rows) - min(rows) + 1 if rows else 0


def test_extremes_are_extreme_among_all_texts() -> None:
    """Every text of each content set by itself: 2 501, 921 and 3 of them."""
    material = tank.tank()
    screen = material.screen("readings")
    shown = {one.name: one.values.texts for one in automatic(material, screen)}
    for field in screen.parts:
        if not isinstance(field, Field):
            continue
        type_ = material.types[field.type]
        every = {text: naive.set_text(type_, text) for text in field_graph(field).texts()}
        widths = {text: width for text, (_, width) in every.items()}
        heights = {text: height(levels) for text, (levels, _) in every.items()}
        assert widths[shown["longest"][field.name]] == max(widths.values())
        assert widths[shown["shortest"][field.name]] == min(widths.values())
        assert heights[shown["tallest"][field.name]] == max(heights.values())


def test_fault_and_first() -> None:
    material = tank.tank()
    shown = {one.name: one for one in automatic(material, material.screen("readings"))}
    longest = shown["longest"].values
    fault = shown["fault"].values
    assert fault.texts == {"level": "---", "flow": "no flow", "mode": longest.texts["mode"]}
    # `link` has a state named fault; `valve` has none and shows its last.
    assert fault.states == {"link": "fault", "valve": "open"}
    first = shown["first"].values
    assert first.texts == {"level": "...", "flow": longest.texts["flow"], "mode": longest.texts["mode"]}
    for name in ("longest", "shortest", "tallest", "first"):
        assert shown[name].values.states == {"link": "on", "valve": "shut"}


def test_a_screen_that_never_changes_has_one() -> None:
    material = tank.tank()
    (only,) = moments(material, material.screen("start"))
    assert (only.name, only.title, only.values) == ("longest", "As it is", Values())
    assert len(every_moment(material)) == 8


def test_a_field_without_fault_and_first_texts() -> None:
    field = Field(
        "count", Content("%u", (WholeRange(0, 4294967295),)), "small", "chalk", 9, 20, padding=(9, 9, 80, 20)
    )
    icons = tank.icon("valve", tank.VALVE[:1], 0, 0)
    screen = Screen("count", "night", (field, icons))
    material = tank.material(replace(tank.layout(), screens=(screen,), moments=()))
    assert names(automatic(material, screen)) == ["longest", "shortest", "tallest"]
    two = replace(screen, parts=(tank.icon("valve", tank.VALVE, 0, 0),))
    material = tank.material(replace(tank.layout(), screens=(two,), moments=()))
    assert names(automatic(material, two)) == ["longest", "fault"]


@pytest.mark.parametrize(
    ("own", "place", "message"),
    [
        (good(fields={"level": "1.25", "flow": (1,), "mode": "filling"}), "moments[1].fields.level",
         "`1.25` is no text that the field `level` can show"),
        (good(fields={"level": (1.5,), "flow": (901,), "mode": "filling"}),
         "moments[1].fields.flow[0]", "901"),
        (good(fields={"level": (1.5, 2), "flow": (9,), "mode": "filling"}),
         "moments[1].fields.level", "argument"),
        (good(fields={"level": (1.5,), "mode": "filling"}), "moments[1].fields",
         "the moment `half-full` has no value for the field `flow`"),
        (good(icons={"link": "on"}), "moments[1].icons", "no state for the icon `valve`"),
        (good(icons={"link": "onn", "valve": "open"}), "moments[1].icons.link",
         "the icon `link` has no state `onn`; the nearest is `on`"),
        (good(screen="reading"), "moments[1].screen", "no screen `reading`; the nearest is `readings`"),
    ],
)  # fmt: skip
def test_a_moment_that_cannot_be_is_told_with_its_place(own: Moment, place: str, message: str) -> None:
    with pytest.raises(Problem) as caught:
        moment(with_moments(tank.MOMENTS[1], own), "half-full")
    assert caught.value.place == place
    assert message in caught.value.message
    # The other moments still show.
    assert moment(with_moments(tank.MOMENTS[1], own), "sensor-lost").values.states["link"] == "fault"


@pytest.mark.parametrize(
    ("name", "screen", "found"),
    [
        ("half-full", "readings", "half-full"),
        ("readings:half-full", "readings", "half-full"),
        ("readings:tallest", "readings", "tallest"),
        ("start:longest", "start", "longest"),
        ("fault", "readings", "fault"),
    ],
)
def test_moments_are_found_by_name(name: str, screen: str, found: str) -> None:
    shown = moment(tank.tank(), name)
    assert (shown.screen, shown.name) == (screen, found)


def test_a_moment_named_as_an_automatic_one_wins() -> None:
    material = with_moments(good(name="longest"))
    assert not moment(material, "longest").automatic
    assert not moment(material, "readings:longest").automatic
    assert moment(material, "start:longest").automatic


@pytest.mark.parametrize(
    ("name", "message"),
    [
        ("half-ful", "there is no moment `half-ful`; the nearest is `half-full`"),
        ("longest", "several screens have a moment `longest`; say "
                    "`start:longest` or `readings:longest`"),
        ("reading:longest", "there is no screen `reading`; the nearest is `readings`"),
        ("readings:longes", "the screen `readings` has no moment `longes`; the nearest is `longest`"),
        ("start:fault", "the screen `start` has no moment `fault`; there is only `longest`"),
        ("zzz", "there is no moment `zzz`; there are `half-full`, `sensor-lost`, `start:longest`, "
                "`readings:longest`, `readings:shortest`, `readings:tallest`, `readings:fault` and "
                "`readings:first`"),
    ],
)  # fmt: skip
def test_an_unknown_name_brings_hints(name: str, message: str) -> None:
    with pytest.raises(Problem) as caught:
        moment(tank.tank(), name)
    assert caught.value.message == message


def test_a_layout_without_screens_has_no_moments() -> None:
    empty: Layout = replace(tank.layout(), screens=(), moments=())
    assert every_moment(tank.material(empty)) == ()
    with pytest.raises(Problem, match="there is no moment `x`; there are none"):
        moment(tank.material(empty), "x")
