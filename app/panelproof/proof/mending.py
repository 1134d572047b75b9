"""Carrying out what a remedy proposes, and trying whether it brings a new fault."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import TypeVar

import msgspec
from msgspec.structs import replace

from panelproof.layout.checking import problems
from panelproof.layout.document import Ink, Layout, Screen, TypeSpec
from panelproof.layout.parts import Part
from panelproof.material import Material, gather
from panelproof.problem import Problem
from panelproof.proof.extent import stage
from panelproof.proof.finding import Change, Finding

Key = tuple[str, str, str, str]
Entry = TypeVar("Entry", bound=Part | Screen | Ink | TypeSpec)


def changed(layout: Layout, screen: str, changes: Sequence[Change]) -> Layout:
    """Return a layout with the changes of a remedy; raises Problem where a name is gone or a value is refused."""
    for change in changes:
        if change.kind == "ink":
            layout = replace(layout, inks=_put(layout.inks, change.part, change))
        elif change.kind == "type":
            layout = replace(layout, types=_put(layout.types, change.part, change))
        elif change.part:
            place, screens = _place(layout.screens, screen), list(layout.screens)
            screens[place] = replace(screens[place], parts=_put(screens[place].parts, change.part, change))
            layout = replace(layout, screens=tuple(screens))
        else:
            layout = replace(layout, screens=_put(layout.screens, screen, change))
    return layout


def _place(entries: Sequence[Part | Screen | Ink | TypeSpec], name: str) -> int:
    for number, entry in enumerate(entries):
        if entry.name == name:
            return number
    raise Problem(f"`{name}` is not there any more")


def _put(entries: tuple[Entry, ...], name: str, change: Change) -> tuple[Entry, ...]:
    place = _place(entries, name)
    tree = msgspec.to_builtins(entries[place])
    tree[change.key] = change.value
    try:
        entry: Entry = msgspec.convert(tree, type(entries[place]))
    except msgspec.ValidationError as error:
        raise Problem(f"`{change.key}` cannot be changed so ({re.sub(' - at .*', '', str(error))})") from None
    listed = list(entries)
    listed[place] = entry
    return tuple(listed)


def tried(material: Material, screen: str, changes: Sequence[Change]) -> Material | None:
    """Return the material with the changes made, or None where it cannot be drawn or has a fault that was not there."""
    try:
        layout = changed(material.layout, screen, changes)
        if problems(layout):
            return None
        made = gather(layout, material.folder)
    except Problem:
        return None
    allowed = Counter(_faults(material))
    for fault in _keys(made):
        # The first that was not there is enough: a trial that fails is short.
        if not allowed[fault]:
            return None
        allowed[fault] -= 1
    return made


@lru_cache(maxsize=8)
def _faults(material: Material) -> Counter[Key]:
    return Counter(_keys(material))


def _keys(material: Material) -> Iterator[Key]:
    # What is left of a screen is one fault, whichever of its parts shows it first.
    return (
        (finding.rule, finding.screen, finding.part, "" if finding.rule == "residue" else finding.other)
        for finding in _findings(material)
    )


def _findings(material: Material) -> Iterator[Finding]:
    # Here, since the rules propose what is tried; and without what they propose, which would be tried in turn.
    from panelproof.proof import collides, erases, fit, missing_glyph, residue, stale  # noqa: PLC0415
    from panelproof.proof.check import FAULTS  # noqa: PLC0415

    stages = tuple(stage(material, screen) for screen in material.layout.screens)
    for stage_ in stages:
        for rule in (fit, stale, erases, collides, missing_glyph):
            yield from rule.findings(stage_, proposing=False)
        for other in FAULTS:
            if other not in (fit, stale, erases, collides, missing_glyph):
                yield from other.findings(stage_)
    yield from residue.findings(stages)
