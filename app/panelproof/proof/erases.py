"""erases: an update repaints no pixel that another part owns.

A part owns the pixels it can ink. A box also owns its fill: an update may paint ground over it only in the fill's own
colour. Where whole frames are composed, only a part drawn later can erase an earlier one.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from itertools import accumulate
from operator import or_

from panelproof.ink.mask import Mask, rectangle
from panelproof.layout.parts import Box, Field
from panelproof.proof.extent import Extent, Stage
from panelproof.proof.finding import Change, Finding, Remedy
from panelproof.proof.words import counted, quoted, repadded

NAME = "erases"


def findings(stage: Stage, *, proposing: bool = True) -> Iterator[Finding]:
    """Yield what an update wipes out of another part; without `proposing` no free place is looked for."""
    whole = stage.material.layout.panel.refresh == "whole"
    extents = stage.extents
    inks = [extent.ink.bits for extent in extents]
    # What all parts before and after each one can ink: most parts touch none of it.
    before = list(accumulate(inks, or_, initial=0))
    after = list(accumulate(reversed(inks), or_, initial=0))[::-1]
    filled = any(extent.fill for extent in extents)
    for number, extent in enumerate(extents):
        if not extent.ground or not (extent.changes or whole):
            continue
        if extent.ground.bits & (before[number] | (0 if whole else after[number + 1])):
            for other in extents[:number] if whole else extents:
                found = _wiping(stage.screen.name, extent, other) if other is not extent else None
                if found:
                    from panelproof.proof.free_place import freed  # noqa: PLC0415 - only where something is found

                    remedy = found.remedy or (freed(stage, extent, other) if proposing else None)
                    yield replace(found, remedy=remedy)
        if filled:
            yield from _filled(stage, number, extent, whole)


@lru_cache(maxsize=16384)
def _wiping(screen: str, extent: Extent, other: Extent) -> Finding | None:
    """Return what an update of one part wipes out of another; remembered while neither changes."""
    wiped = extent.ground & other.ink
    if not wiped:
        return None
    texts = other.text_at(next(iter(wiped.pixels())))
    what = f"{quoted(texts[0])} of " if texts else ""
    return Finding(
        NAME, "fault", screen, extent.name,
        f"each update wipes {counted(wiped.count(), 'pixel')} out of {what}`{other.name}`",
        texts, wiped.count(), wiped.bounds(), _spared(extent, wiped), other.name, wiped,
    )  # fmt: skip


def _spared(extent: Extent, wiped: Mask) -> Remedy | None:
    """Return the padding box cut back on one side so that it misses what it wipes and still clears all."""
    part, area = extent.part, extent.padding
    if not isinstance(part, Field) or part.clearing not in ("pad", "box") or area is None:
        return None
    x, y, width, height = area
    left, top, wiped_width, wiped_height = wiped.bounds()
    right, bottom = left + wiped_width, top + wiped_height
    cuts = (
        (x, y, left - x, height),
        (right, y, x + width - right, height),
        (x, y, width, top - y),
        (x, bottom, width, y + height - bottom),
    )
    whole = [cut for cut in cuts if cut[2] > 0 and cut[3] > 0 and not extent.ink - rectangle(*cut)]
    if not whole:
        return None
    best = max(whole, key=lambda cut: cut[2] * cut[3])
    return Remedy(repadded(area, best), (Change(part.name, "padding", list(best)),))


def _filled(stage: Stage, number: int, extent: Extent, whole: bool) -> Iterator[Finding]:
    """Yield boxes whose fill an update paints over in another colour."""
    rest = extent.ground
    # From the front: boxes drawn later lie on top, then those below, the nearest first.
    after = [] if whole else list(reversed(stage.extents[number + 1 :]))
    for other in (*after, *reversed(stage.extents[:number])):
        if not other.fill:
            continue
        hit = rest & other.fill
        if not hit:
            continue
        rest = rest - other.fill
        if other.ground_code != extent.ground_code and isinstance(other.part, Box):
            remedy = None
            if other.part.fill and not extent.ground - other.fill:
                remedy = Remedy(
                    f"ground `{other.part.fill}`", (Change(extent.name, "ground", other.part.fill),)
                )
            yield Finding(
                NAME, "fault", stage.screen.name, extent.name,
                f"each update paints {counted(hit.count(), 'pixel')} of the box `{other.name}` "
                "in another colour than the box's fill",
                (), hit.count(), hit.bounds(), remedy, other.name, hit,
            )  # fmt: skip
