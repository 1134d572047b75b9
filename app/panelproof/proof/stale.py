"""stale: everything an earlier text or icon state inked is repainted by every later one."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from panelproof.ink.mask import Mask, rectangle
from panelproof.layout.parts import Field, Icon
from panelproof.proof.extent import Extent, Stage, icon_repaint, spared_by
from panelproof.proof.finding import Change, Finding, Remedy
from panelproof.proof.words import box, counted, inside, quoted

NAME = "stale"


def findings(stage: Stage, *, proposing: bool = True) -> Iterator[Finding]:
    """Yield what stays behind after an update; a panel that takes whole frames cannot hold stale pixels.

    Without `proposing` no free place is looked for.
    """
    if stage.material.layout.panel.refresh == "whole":
        return
    for extent in stage.extents:
        pixels, texts = stale_pixels(extent)
        if pixels:
            from panelproof.proof.free_place import cleared, has_room  # noqa: PLC0415 - only where something is found

            earlier, later = texts
            remedy = _padded(stage, extent)
            if proposing and remedy and not has_room(stage, extent, extent.reach.bounds()):
                # No room for a padding box here.
                remedy = cleared(stage, extent, remedy) or remedy
            yield Finding(
                NAME, "fault", stage.screen.name, extent.name,
                f"{quoted(later)} after {quoted(earlier)} leaves old pixels behind; "
                f"{counted(pixels.count(), 'pixel')} of this part can go stale",
                texts, pixels.count(), pixels.bounds(), remedy, pixels=pixels,
            )  # fmt: skip


def whole_note(stages: tuple[Stage, ...]) -> Finding:
    """Return the note that the rule does not apply to a panel that takes whole frames."""
    return Finding(
        NAME, "note", stages[0].screen.name if stages else "", "",
        "this panel is sent whole frames composed in memory, so no old pixel can stay behind; "
        "the rule does not apply",
    )  # fmt: skip


@lru_cache(maxsize=512)
def stale_pixels(extent: Extent) -> tuple[Mask, tuple[str, str]]:
    """Return every pixel that can go stale, and an earlier and a later text (or state) that show one."""
    none = extent.surely, ("", "")
    part = extent.part
    if isinstance(part, Icon) and part.clearing in ("none", "cell"):
        return _icon(extent, part)
    if not isinstance(part, Field) or part.clearing in ("pad", "box") or extent.footprint is None:
        return Mask(0, 0, 0, 0, 0), none[1]
    print_ = extent.footprint
    left_alone = spared_by(print_.graph, print_.type, print_.align, part.clearing == "cell")
    pixels = left_alone.mask.moved(part.x, part.baseline).framed(*extent.ink.frame) & extent.ink
    if not pixels:
        return pixels, none[1]
    x, y = _telling(pixels, part.x)
    local = x - part.x, y - part.baseline
    return pixels, (print_.witness(*local), left_alone.text(*local))


def _telling(pixels: Mask, anchor: int) -> tuple[int, int]:
    """Return a pixel farthest from the anchor: the far end of a long text shows the ghost best."""
    x, _, width, _ = pixels.bounds()
    column = x if anchor - x > x + width - 1 - anchor else x + width - 1
    return next(iter(pixels.framed(column, pixels.y, 1, pixels.height).pixels()))


def _icon(extent: Extent, part: Icon) -> tuple[Mask, tuple[str, str]]:
    clip = rectangle(*extent.padding) if extent.padding else extent.ink
    found, texts = Mask(*extent.ink.frame, 0), ("", "")
    for earlier, old in extent.states:
        for later, new in extent.states:
            left = (old & clip).framed(*extent.ink.frame) - icon_repaint(new, part.clearing)
            if left and earlier != later:
                texts = texts if found else (earlier, later)
                found = found | left
    return found, texts


def _padded(stage: Stage, extent: Extent) -> Remedy | None:
    """Return the padding box that clears all: the footprint's own bounds."""
    area = extent.reach.bounds()
    if not inside(area, stage.material.layout.panel):
        return None
    return Remedy(
        f"clearing `pad` with a padding box of {box(area)}",
        (Change(extent.name, "clearing", "pad"), Change(extent.name, "padding", list(area))),
    )
