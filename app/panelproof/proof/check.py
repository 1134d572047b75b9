"""The whole proof of a layout."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from types import ModuleType

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
# Rules that search for remedies, or try them, which takes longer than to find what is wrong.
PROPOSING = (fit, stale, erases, collides, missing_glyph, ground, contrast, height, lookalike)
# Rules that look at all screens together.
OVERALL = (residue, unshown, embedding)


def prove_screen(stage_: Stage, *, proposing: bool = True) -> tuple[Finding, ...]:
    """Return the findings of one screen alone; without `proposing` no remedy is searched for."""
    return tuple(finding for rule in RULES for finding in _findings(rule, stage_, proposing))


def _findings(rule: ModuleType, stage_: Stage, proposing: bool) -> Iterator[Finding]:
    found: Iterator[Finding] = (
        rule.findings(stage_, proposing=proposing) if rule in PROPOSING else rule.findings(stage_)
    )
    return found


def prove(
    material: Material, progress: Callable[[str], None] = lambda _: None, *, proposing: bool = True
) -> tuple[Finding, ...]:
    """Return every finding, most serious first, then in the order of screens and rules.

    `progress` is told the screen's name before each part of the work; it may raise to cancel. Without `proposing` the
    findings are the same, less remedies that are searched for.
    """
    stages = []
    for screen in material.layout.screens:
        stages.append(stage(material, screen, partial(progress, screen.name)))
    found = list(_all(tuple(stages), material, proposing))
    return tuple(sorted(found, key=lambda finding: LEVELS.index(finding.level)))


def _all(stages: tuple[Stage, ...], material: Material, proposing: bool) -> Iterator[Finding]:
    for stage_ in stages:
        yield from prove_screen(stage_, proposing=proposing)
    for rule in OVERALL:
        yield from rule.findings(stages)
    if material.layout.panel.refresh == "whole":
        yield stale.whole_note(stages)
