"""Starter layouts: where there is room they show a label and a field, and the proof finds no fault."""

from __future__ import annotations

from pathlib import Path

import pytest

from panelproof.layout.colour import ColourFormat
from panelproof.layout.panel import Refresh, Shape
from panelproof.layout.starting import starter, starter_panel
from panelproof.material import gather
from panelproof.proof.check import prove

SIZES = [(128, 32), (128, 64), (84, 48), (96, 64), (160, 80), (240, 135), (240, 240), (170, 320), (320, 480)]


@pytest.mark.parametrize("size", SIZES, ids=str)
@pytest.mark.parametrize("colours", ["mono", "rgb565"])
@pytest.mark.parametrize("refresh", ["part", "whole"])
@pytest.mark.parametrize(
    ("shape", "share"), [("rectangular", 0), ("rounded", 8), ("rounded", 2), ("round", 0)]
)
def test_it_checks_clean(
    size: tuple[int, int], colours: ColourFormat, refresh: Refresh, shape: Shape, share: int
) -> None:
    if shape == "round" and size[0] != size[1]:
        pytest.skip("a round panel is as wide as high")
    panel = starter_panel(size, colours, shape, min(size) // share if share else 0, refresh)
    layout = starter("rain-tank", panel)
    assert [part.name for part in layout.screens[0].parts] == ["title", "level"] or share == 2
    assert [finding for finding in prove(gather(layout, Path())) if finding.level == "fault"] == []
