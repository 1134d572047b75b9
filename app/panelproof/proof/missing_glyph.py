"""missing-glyph: the type has every character the content can show."""

from __future__ import annotations

from collections.abc import Iterator

from panelproof.layout.parts import Field, Label
from panelproof.proof.extent import Extent, Stage
from panelproof.proof.finding import Finding, Remedy
from panelproof.proof.words import listed

NAME = "missing-glyph"


def findings(stage: Stage) -> Iterator[Finding]:
    """Yield each part whose type lacks a character."""
    for extent in stage.extents:
        part, print_ = extent.part, extent.footprint
        if print_ is None or not print_.missing or not isinstance(part, Field | Label):
            continue
        names = [f"`{char}` (U+{ord(char):04X})" for char in print_.missing]
        yield Finding(
            NAME, "fault", stage.screen.name, extent.name,
            f"the type `{part.type}` has no {listed(names)}",
            (print_.text_with(print_.missing[0]),), 0, extent.padding or extent.reach.bounds(), _other(stage, extent),
        )  # fmt: skip


def _other(stage: Stage, extent: Extent) -> Remedy | None:
    """Name the layout's types that have them all."""
    if extent.footprint is None:
        return None
    missing = extent.footprint.missing
    able = [
        name
        for name, type_ in stage.material.types.items()
        if all(type_.glyph(char) is not None for char in missing)
    ]
    return Remedy(f"{listed([f'type `{name}`' for name in able])} has them") if able else None
