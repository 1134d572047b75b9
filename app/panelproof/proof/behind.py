"""What really lies behind the ink of a part: its own repainted ground, or what was drawn there before."""

from __future__ import annotations

from collections import Counter
from functools import lru_cache

from panelproof.ink.mask import Area
from panelproof.layout.parts import Field, Icon, Meter, Picture
from panelproof.proof.extent import Extent, Stage

Behind = tuple[tuple[int, int], ...]
"""Pairs (panel code, how many inked pixels lie on it); where there is but one, the number does not count."""


def behind(stage: Stage, number: int) -> Behind:
    """Return the panel codes behind the ink of the screen's part of that number, and their pixels."""
    extent = stage.extents[number]
    if repaints(extent):
        return ((extent.ground_code, 1),)
    rest = extent.ink
    found: dict[int, int] = {}
    for below in reversed(stage.extents[:number]):
        if below.raster is not None and rest.bits & below.ink.bits:
            for code, count in _over_picture(extent, below):
                found[code] = found.get(code, 0) + count
            rest = rest - below.ink
        if below.fill and rest.bits & below.fill.bits:
            hit = rest & below.fill
            found[below.ground_code] = found.get(below.ground_code, 0) + hit.count()
            rest = rest - below.fill
    if rest:
        code = stage.material.code(stage.screen.ground)
        found[code] = found.get(code, 0) + rest.count()
    return tuple(sorted(found.items()))


@lru_cache(maxsize=256)
def _over_picture(extent: Extent, below: Extent) -> Behind:
    """Return the codes of a picture under a part's ink, whatever lies between them."""
    assert below.raster is not None
    assert isinstance(below.part, Picture)
    part, raster = below.part, below.raster
    return tuple(
        Counter(raster.code(x - part.x, y - part.y) for x, y in (extent.ink & below.ink).pixels()).items()
    )


@lru_cache(maxsize=1024)
def inked(extent: Extent) -> Area:
    """Return the smallest rectangle that holds a part's ink; remembered, as it is asked for at each proof."""
    return extent.ink.bounds()


def repaints(extent: Extent) -> bool:
    """Tell whether a part paints its own ground around its ink."""
    part = extent.part
    return isinstance(part, Meter) or (isinstance(part, Field | Icon) and part.clearing != "none")
