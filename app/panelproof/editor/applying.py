"""Carrying out what a finding proposes."""

from __future__ import annotations

from panelproof.editor.edits import apply_changes
from panelproof.layout.document import Layout
from panelproof.problem import Problem
from panelproof.proof.finding import Finding


def has_remedy(finding: Finding) -> bool:
    """Tell whether a finding's remedy can be carried out, not only read."""
    return finding.remedy is not None and bool(finding.remedy.changes)


def apply(layout: Layout, finding: Finding) -> Layout:
    """Return the layout with a finding's remedy carried out.

    Raises Problem where the finding has none, where what it speaks of is gone, or where a value is refused.
    """
    if finding.remedy is None or not finding.remedy.changes:
        raise Problem("there is no ready remedy for this; the part has to be changed by hand")
    return apply_changes(layout, finding.screen, finding.remedy.changes)
