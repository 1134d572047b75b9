"""Findings that a part may have: given a reason, and taken back; pure functions from layout to layout."""

from __future__ import annotations

from msgspec.structs import replace

from panelproof.editor.edits import set_part
from panelproof.layout.document import Layout
from panelproof.layout.parts import Accepted, Part
from panelproof.layout.rulenames import OF_PARTS
from panelproof.problem import Problem
from panelproof.proof.finding import Finding


def acceptable(finding: Finding) -> bool:
    """Tell whether a part can accept a finding: it names one, and the rule speaks of parts."""
    return bool(finding.part) and finding.rule in OF_PARTS


def accept(layout: Layout, finding: Finding, reason: str) -> Layout:
    """Return the layout in which the finding's part accepts its rule; raises Problem where it cannot."""
    if not acceptable(finding):
        raise Problem("this speaks of more than one part, so that no part can accept it")
    part = _part(layout, finding.screen, finding.part)
    kept = tuple(entry for entry in part.accepted if entry.rule != finding.rule)
    changed = replace(part, accepted=(*kept, Accepted(finding.rule, reason.strip())))
    return set_part(layout, finding.screen, finding.part, changed)


def take_back(layout: Layout, screen: str, part: str, rule: str) -> Layout:
    """Return the layout in which a part does not accept a rule any more; raises Problem where it is gone."""
    found = _part(layout, screen, part)
    kept = tuple(entry for entry in found.accepted if entry.rule != rule)
    return set_part(layout, screen, part, replace(found, accepted=kept))


def _part(layout: Layout, screen: str, name: str) -> Part:
    for one in layout.screens:
        for part in one.parts if one.name == screen else ():
            if part.name == name:
                return part
    raise Problem(f"`{name}` is not there any more")
