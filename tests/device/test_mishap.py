"""Causes of one part, each made on purpose: by another layout, or by updating as a faulty device would."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from msgspec.structs import replace
from tests.device.making import changed, judged, kiln, right, shown, told, with_part, with_type

from panelproof.device.capture import Capture, Reading
from panelproof.device.outcome import compare
from panelproof.layout.document import Screen
from panelproof.layout.parts import Field, Meter, Rule
from panelproof.material import gather
from panelproof.picture.frame import Codes, screen_frame, update_field, update_icon
from panelproof.picture.values import Values


def part(name: str, **changes: object) -> Callable[[], Codes]:
    return lambda: shown(with_part(kiln().layout, "readings", name, **changes))


def kind(name: str, **changes: object) -> Callable[[], Codes]:
    return lambda: shown(with_type(kiln().layout, name, **changes))


def values(**given: str) -> Callable[[], Codes]:
    return lambda: shown(kiln().layout, changed(**given))


def after(former: str, **changes: object) -> Callable[[], Codes]:
    """The chamber's field updated from a former text, cleared otherwise than the layout says."""

    def made() -> Codes:
        material = kiln()
        screen = material.screen("readings")
        frame = screen_frame(material, screen, changed(chamber=former))
        chamber = next(one for one in screen.parts if one.name == "chamber")
        assert isinstance(chamber, Field)
        update_field(frame, material, screen, replace(chamber, **changes), "874")
        return frame.codes

    return made


def icon_over() -> Codes:
    material = kiln()
    screen = material.screen("readings")
    frame = screen_frame(material, screen, changed(radio="fault"))
    radio = next(one for one in screen.parts if one.name == "radio")
    update_icon(frame, material, screen, replace(radio, clearing="none"), "up")  # type: ignore[arg-type]
    return frame.codes


def wiped() -> Codes:
    codes = right().copy()
    codes[30:80, 150:198] = 0
    return codes


CASES: list[tuple[str, Callable[[], Codes], dict[str, str]]] = [
    (
        "label moved",
        part("unit", x=206, baseline=68),
        {"unit": "it stands 3 px right and 2 px up of its place"},
    ),
    ("field moved in its box", part("chamber", x=190), {"chamber": "it stands 6 px left of its place"}),
    (
        "field moved with its box",
        part("chamber", x=190, baseline=73, padding=(0, 33, 192, 50)),
        {"chamber": "it stands 6 px left and 3 px down of its place"},
    ),
    ("icon moved", part("server", x=221, y=4), {"server": "it stands 1 px right and 1 px up of its place"}),
    ("rule moved", part("line", y=83), {"line": "it stands 1 px up of its place"}),
    (
        "rule shorter",
        part("line", length=220),
        {"line": "it is 220 px long and 1 px thick in place of 228 and 1"},
    ),
    (
        "rule thicker",
        part("line", thickness=2),
        {"line": "it is 228 px long and 2 px thick in place of 228 and 1"},
    ),
    ("box higher", part("bar", height=27), {"bar": "its height is 27 px in place of 24"}),
    ("box lower", part("bar", height=22), {"bar": "its height is 22 px in place of 24"}),
    ("alignment", part("phase", align="centre"), {"phase": "it is aligned `centre` in place of `right`"}),
    (
        "ink",
        part("phase", ink="alarm"),
        {"phase": "its shape is right, its colours are not: `alarm` in place of `chalk`"},
    ),
    (
        "type",
        part("chamber", type="heading"),
        {"chamber": "it is set in the type `heading` in place of `reading`"},
    ),
    ("size", kind("reading", size=44), {"chamber": "its type is 44 px high in place of 46"}),
    (
        "rendering",
        kind("reading", rendering="one-bit"),
        {"chamber": "its type is drawn one-bit in place of antialiased"},
    ),
    (
        "font",
        kind("reading", font="HankenGrotesk"),
        {"chamber": "its type is of the font `HankenGrotesk` in place of `SourceSansProSemibold`"},
    ),
    (
        "another moment's text",
        values(chamber="no probe"),
        {"chamber": "it shows `no probe` in place of `874`, as in the moment `probe-lost`"},
    ),
    ("any other text", values(chamber="237"), {"chamber": "it shows `237` in place of `874`"}),
    ("another state", values(radio="fault"), {"radio": "it shows its state `fault` in place of `up`"}),
    (
        "ghost, nothing cleared",
        after("no probe", clearing="none"),
        {"chamber": "a ghost: `no probe` shows through `874`"},
    ),
    (
        "ghost beside the cell",
        after("no probe", clearing="cell"),
        {"chamber": "a ghost: `no probe` shows through `874`, beside the cell of the new text"},
    ),
    (
        "ghost beside too small a box",
        after("no probe", padding=(40, 30, 158, 50)),
        {"chamber": "a ghost: `no probe` shows through `874`"},
    ),
    ("ghost of a state", icon_over, {"radio": "a ghost: `fault` shows through `up`"}),
    ("cut off", wiped, {"chamber": "it is cut off: 45 px on the right are missing"}),
]


@pytest.mark.parametrize(("made", "words"), [case[1:] for case in CASES], ids=[case[0] for case in CASES])
def test_a_parts_cause_is_named_and_explains_all(made: Callable[[], Codes], words: dict[str, str]) -> None:
    outcome = judged(made())
    assert told(outcome) == words
    assert outcome.left == 0
    assert all(cause.explains == 1 for one in outcome.parts for cause in one.causes)
    assert not outcome.same


def test_a_part_that_is_not_drawn() -> None:
    layout = kiln().layout
    screens = tuple(
        replace(screen, parts=tuple(one for one in screen.parts if one.name != "unit"))
        for screen in layout.screens
    )
    assert told(judged(shown(replace(layout, screens=screens)))) == {"unit": "it is not drawn"}


def test_several_parts_each_with_its_own() -> None:
    layout = with_part(kiln().layout, "readings", "unit", x=206, baseline=68)
    outcome = judged(shown(layout, changed(chamber="no probe", radio="fault")))
    assert set(told(outcome)) == {"unit", "chamber", "radio"}
    assert outcome.left == 0
    assert all(cause.explains == 1 for one in outcome.parts for cause in one.causes)


def test_specks_have_no_cause_and_are_counted() -> None:
    chance = np.random.default_rng(3)
    codes = right().copy()
    codes[chance.integers(0, 135, 60), chance.integers(0, 240, 60)] ^= 0x8410
    outcome = judged(codes)
    assert outcome.wrong == outcome.left > 50
    assert told(outcome) == {}


def test_a_meter_at_another_value_without_one_or_moved() -> None:
    layout = kiln().layout
    gauge = Meter("gauge", 20, 30, 100, 12, 0, 1300, "glow")
    screen = Screen("gauges", "soot", (gauge, Rule("line", 20, 50, 100, "slate")))
    material = gather(replace(layout, screens=(screen,), moments=()), kiln().folder)
    values = Values({}, {}, {"gauge": 650})

    def held(other: Screen, level: int | None) -> dict[str, str]:
        codes = screen_frame(material, other, Values({}, {}, {"gauge": level})).codes
        outcome = compare(material, screen, values, Capture("rgb565", (Reading("", codes),)))
        assert outcome.left == 0
        return told(outcome)

    assert held(screen, 650) == {}
    assert held(screen, 1040) == {"gauge": "it shows about 1040 in place of about 650"}
    assert held(screen, None) == {"gauge": "it shows its fault pattern in place of about 650"}
    lower = replace(screen, parts=(replace(gauge, y=32), screen.parts[1]))
    assert held(lower, 650) == {"gauge": "it stands 2 px down of its place"}
