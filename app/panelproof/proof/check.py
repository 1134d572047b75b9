"""The whole proof of a layout."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from panelproof.material import Material
from panelproof.proof import (
    collides,
    contrast,
    embedding,
    erases,
    fit,
    flickers,
    ground,
    height,
    jumps,
    link_states,
    lookalike,
    matrix,
    missing_glyph,
    no_fault_text,
    residue,
    sensor_range,
    stale,
    stroke,
    text_bytes,
    told_apart,
    too_fast,
    unshown,
)
from panelproof.proof.extent import Stage, stage
from panelproof.proof.finding import LEVELS, Finding

FAULTS = (fit, stale, erases, collides, missing_glyph, text_bytes, ground)
READABLE = (contrast, height, matrix, stroke, lookalike, told_apart)
CAUTIONS = (*READABLE, jumps, flickers, too_fast, no_fault_text, link_states, sensor_range)
# Their names also stand in layout/rulenames.py, where checking finds them.
RULES = FAULTS + CAUTIONS
# Rules that look at all screens together.
OVERALL = (residue, unshown, embedding)


def prove_screen(stage_: Stage) -> tuple[Finding, ...]:
    """Return the findings of one screen alone."""
    return tuple(finding for rule in RULES for finding in rule.findings(stage_))


def prove(material: Material, progress: Callable[[str], None] = lambda _: None) -> tuple[Finding, ...]:
    """Return every finding, most serious first, then in the order of screens and rules.

    `progress` is told the screen's name before each part of the work; it may raise to cancel.
    """
    stages = []
    for screen in material.layout.screens:
        stages.append(stage(material, screen, partial(progress, screen.name)))
    found = list(_all(tuple(stages), material))
    return tuple(sorted(found, key=lambda finding: LEVELS.index(finding.level)))


def _all(stages: tuple[Stage, ...], material: Material) -> Iterator[Finding]:
    for stage_ in stages:
        yield from prove_screen(stage_)
    for rule in OVERALL:
        yield from rule.findings(stages)
    if material.layout.panel.refresh == "whole":
        yield stale.whole_note(stages)
