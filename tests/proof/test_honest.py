"""Grounds that the panel shows differently from what lies under a part: in the panel's own colours, not in the file's."""

from __future__ import annotations

from typing import Any

import pytest
from msgspec.structs import replace
from tests.proof.test_verdict import judge, layout

from panelproof.content.spec import Content, WholeRange
from panelproof.layout.document import Ink, Layout, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box, Field, Icon, IconState, Label, Part

# A 5-bit blue of 19 is #98 to #a0 (255 / 31 = 8.23 a step); #a1 is nearer to 20.
INKS = (
    Ink("black", "#000000"), Ink("white", "#ffffff"), Ink("blue", "#0000a0"), Ink("shade", "#00009f"),
    Ink("next", "#0000a1"),
)  # fmt: skip
TYPES = (TypeSpec("plain", "SourceSansPro", 16), TypeSpec("smooth", "SourceSansPro", 16, "antialiased"))
CARD = Box("card", 0, 0, 120, 60, fill="blue")
STATES = (IconState("on", ("#" * 8,) * 8), IconState("off", ("#......#",) * 8))


def faults(part: Part, card: Box = CARD, **others: Any) -> list[str]:
    made: Layout = layout(card, part, **({"types": TYPES, "inks": INKS} | others))
    return [one.rule for one in judge(made).findings if one.level == "fault"]


def field(**changes: Any) -> Field:
    count = Content("%02d", (WholeRange(0, 99),), fault="--")
    return replace(Field("level", count, "plain", "white", 40, 30, padding=(38, 12, 60, 24)), **changes)


@pytest.mark.parametrize(
    ("part", "rule"),
    [
        (Label("name", "Tank", "smooth", "white", 10, 30), "ground"),
        (field(type="smooth"), "erases"),
        (field(), "erases"),
        (field(clearing="box"), "erases"),
        (field(clearing="cell", content=Content("on", also=("no",))), "erases"),
        (Icon("pump", 20, 20, "white", STATES), "erases"),
    ],
)
def test_what_counts_is_the_panels_own_colour(part: Any, rule: str) -> None:
    assert faults(replace(part, ground="blue")) == []
    assert faults(replace(part, ground="shade")) == [], "another colour in the file, the same on the panel"
    assert faults(replace(part, ground="next")) == [rule], "one shade more, and the panel shows another"
    assert rule in faults(replace(part, ground=None))


def test_one_pixel_beyond_the_box_is_another_ground() -> None:
    label = Label("name", "Tank", "smooth", "white", 10, 30, ground="blue")
    (x, _, width, _) = bounds = _ink(label)
    assert bounds[2] > 0
    assert faults(label, replace(CARD, width=x + width)) == []
    assert faults(label, replace(CARD, width=x + width - 1)) == ["ground"]


def test_one_bit_text_needs_no_ground() -> None:
    label = Label("name", "Tank", "plain", "white", 10, 30)
    assert faults(replace(label, ground="next")) == []


def test_on_two_colours_both_blues_are_dark() -> None:
    mono: dict[str, Any] = {"panel": Panel(120, 60, "mono"), "types": TYPES[:1]}
    assert faults(field(ground="next"), **mono) == []
    assert faults(field(ground=None), **mono) == []
    assert faults(field(ground="white", ink="black"), **mono) == ["erases"]


def test_antialiased_text_that_clears_nothing_has_no_known_ground() -> None:
    fixed = field(content=Content("on"), type="smooth", clearing="none", padding=None, ground="blue")
    assert faults(fixed) == ["ground"]
    assert faults(replace(fixed, type="plain")) == []


def _ink(label: Label) -> tuple[int, int, int, int]:
    from pathlib import Path

    from panelproof.material import gather
    from panelproof.proof.extent import stage

    material = gather(layout(label, types=TYPES, inks=INKS), Path())
    return stage(material, material.layout.screens[0]).extents[0].reach.bounds()
