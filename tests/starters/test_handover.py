"""Starters as C: their headers compile and draw what the preview draws."""

from __future__ import annotations

import random
from pathlib import Path

import pytest
from tests.firmware.harness import build
from tests.firmware.playing import agree, play

from panelproof.firmware.header import header
from panelproof.layout.panel import Panel
from panelproof.material import gather
from panelproof.starters.description import claiming, descriptions
from panelproof.starters.make import make
from panelproof.starters.panels import panel_of, panels


@pytest.mark.parametrize(
    ("starter", "panel"),
    [
        ("one-reading", "colour-240x135-1.14"),
        ("two-readings", "round-240x240-1.28"),
        ("set-up", "mono-128x64-0.96"),
        ("mono-status", "mono-128x64-0.96"),
        ("four-readings", "grey-256x64-3.12"),
        ("long-text", "paper-red-200x200-1.54"),
        ("level-bar", "colour-160x80-0.96"),
    ],
)
def test_its_header_compiles_and_draws_the_same(tmp_path: Path, starter: str, panel: str) -> None:
    material = gather(make(starter, panel_of(panel).panel, "begun"), tmp_path)
    program = build(material, tmp_path)
    agree(play(program, 60, random.Random(3)), program.run())


@pytest.mark.parametrize("starter", descriptions())
def test_its_names_go_into_a_header_on_every_kind_of_panel(starter: str) -> None:
    kinds: dict[tuple[str, str], Panel] = {}
    for listed in panels():
        if starter in claiming(listed.panel):
            kinds.setdefault((listed.colours.value, listed.shape), listed.panel)
    for panel in kinds.values():
        made = header(gather(make(starter, panel, "begun"), Path()))
        assert "begun_" in made
