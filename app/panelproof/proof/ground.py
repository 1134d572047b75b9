"""ground: antialiased text is painted on the ground it was blended with, since the device does not read pixels back."""

from __future__ import annotations

from collections.abc import Iterator

from panelproof.ink.mask import Mask
from panelproof.layout.parts import Field, Label
from panelproof.proof.extent import Extent, Stage
from panelproof.proof.finding import Change, Finding, Remedy
from panelproof.proof.words import counted

NAME = "ground"


def findings(stage: Stage, *, proposing: bool = True) -> Iterator[Finding]:
    """Yield antialiased fields that clear nothing, and antialiased ink over another ground than its own.

    Without `proposing` no free place is looked for.
    """
    for number, extent in enumerate(stage.extents):
        part, print_ = extent.part, extent.footprint
        if print_ is None or not print_.type.antialiased or not extent.ink:
            continue
        if isinstance(part, Field) and part.clearing == "none":
            if stage.material.layout.panel.refresh == "part":
                yield Finding(
                    NAME, "fault", stage.screen.name, extent.name,
                    "antialiased text needs a known ground, and clearing `none` leaves the old text under it",
                    (), extent.ink.count(), extent.ink.bounds(),
                    Remedy("use clearing `pad`, or a one-bit type"),
                    pixels=extent.ink,
                )  # fmt: skip
                continue
        elif not isinstance(part, Label):
            continue
        yield from _blended(stage, number, extent, proposing)


def _blended(stage: Stage, number: int, extent: Extent, proposing: bool) -> Iterator[Finding]:
    rest, wrong = extent.ink, 0
    grounds: list[str] = []
    # Every ground under it, by the panel's code, with the ink's name.
    under: dict[int, str] = {}
    for below in reversed(stage.extents[:number]):
        hit = rest & below.fill
        if hit:
            rest = rest - below.fill
            under.setdefault(below.ground_code, getattr(below.part, "fill", None) or "")
            if below.ground_code != extent.ground_code:
                wrong |= hit.bits
                grounds.append(f"the box `{below.name}`")
    if rest:
        code = stage.material.code(stage.screen.ground)
        under.setdefault(code, stage.screen.ground)
        if code != extent.ground_code:
            wrong |= rest.bits
            grounds.append("the screen's ground")
    if wrong:
        from panelproof.proof.free_place import freed  # noqa: PLC0415 - only where something is found

        pixels = Mask(*extent.ink.frame, wrong)
        part = extent.part
        declared = getattr(part, "ground", None) or stage.screen.ground
        (name, *others) = under.values()
        alone = Remedy(f"ground `{name}`", (Change(extent.name, "ground", name),))
        remedy: Remedy | None = alone
        if others:
            remedy = freed(stage, extent) if proposing else None
        yield Finding(
            NAME, "fault", stage.screen.name, extent.name,
            f"antialiased text is blended with `{declared}` but lies on {' and '.join(grounds)}: "
            f"{counted(pixels.count(), 'pixel')}",
            (), pixels.count(), pixels.bounds(), remedy, pixels=pixels,
        )  # fmt: skip
