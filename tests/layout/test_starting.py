"""Starter layouts: on every panel they can be written and read."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.layout.strategies import panels

from panelproof.layout.checking import problems
from panelproof.layout.panel import Panel, Shape, visible_spans
from panelproof.layout.parts import Field
from panelproof.layout.reading import parse
from panelproof.layout.starting import starter, starter_panel
from panelproof.layout.writing import encode
from panelproof.problem import Problem


@given(panels(), st.text(max_size=60))
@settings(max_examples=100, deadline=None)
def test_it_can_be_written_and_read_on_every_panel_and_under_every_name(panel: Panel, name: str) -> None:
    layout = starter(name, panel)
    assert problems(layout) == []
    assert parse(encode(layout)) == layout


@given(panels())
@settings(max_examples=100, deadline=None)
def test_its_padding_box_can_be_seen_whole(panel: Panel) -> None:
    spans = visible_spans(panel)
    for part in starter("tank", panel).screens[0].parts:
        if isinstance(part, Field):
            assert part.padding is not None
            x, y, width, height = part.padding
            assert all(first <= x and x + width <= end for first, end in spans[y : y + height])


@pytest.mark.parametrize(
    ("given", "made"),
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
def test_names(given: str, made: str) -> None:
    assert starter(given, Panel(128, 64)).name == made


def test_a_panel_without_room_has_an_empty_screen() -> None:
    layout = starter("dot", Panel(8, 8))
    assert layout.screens[0].parts == ()
    assert (layout.types, layout.moments) == ((), ())


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
        starter_panel(size, "rgb565", shape, radius, "part")
    assert caught.value.place == place
