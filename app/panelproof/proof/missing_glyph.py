"""missing-glyph: the type has every character the content can show."""

from __future__ import annotations

from collections.abc import Iterator

from panelproof.ink.footprint import Footprint
from panelproof.layout.parts import Field, Label
from panelproof.proof.characters import alphabet
from panelproof.proof.extent import Stage
from panelproof.proof.finding import Finding, Remedy
from panelproof.proof.words import listed

NAME = "missing-glyph"


def findings(stage: Stage, *, proposing: bool = True) -> Iterator[Finding]:
    """Yield each part whose type lacks a character; without `proposing` no other type is looked for."""
    for extent in stage.extents:
        part, print_ = extent.part, extent.footprint
        if print_ is None or not print_.missing or not isinstance(part, Field | Label):
            continue
        names = [f"`{char}` (U+{ord(char):04X})" for char in print_.missing]
        yield Finding(
            NAME, "fault", stage.screen.name, extent.name,
            f"the type `{part.type}` has no {listed(names)}",
            (print_.text_with(print_.missing[0]),), 0, extent.padding or extent.reach.bounds(),
            _other(stage, part, print_) if proposing else None,
        )  # fmt: skip


def _other(stage: Stage, part: Field | Label, print_: Footprint) -> Remedy | None:
    """Return the first of the layout's types that has every character and fits; else name those that have them."""
    from panelproof.proof.shorter import by_size, set_in  # noqa: PLC0415 - only where something is found

    able = [
        name
        for name, type_ in stage.material.types.items()
        if all(type_.glyph(char) is not None for char in alphabet(print_.graph))
    ]
    for name in by_size(stage.material, part.type, able):
        ready = set_in(stage.material, stage.screen.name, part, print_, name)
        if ready:
            return Remedy(f"type `{name}` has them", ready)
    if not able:
        return None
    return Remedy(f"{listed([f'type `{name}`' for name in able])} {'has' if len(able) == 1 else 'have'} them")
