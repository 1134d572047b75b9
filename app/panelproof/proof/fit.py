"""fit: every footprint lies on the visible panel (its shape, not its bounding box) and inside its padding box."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from panelproof.ink.mask import Area, Mask, rectangle
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box, Field, Icon, Meter, Part, Picture, Rule
from panelproof.proof.extent import Extent, Stage, visible
from panelproof.proof.finding import Change, Finding, Remedy
from panelproof.proof.words import box, counted, hull, inside, outermost, overhang, quoted, repadded

NAME = "fit"


def findings(stage: Stage, *, proposing: bool = True) -> Iterator[Finding]:
    """Yield what leaves the panel or its padding box; without `proposing` smaller types are not looked for."""
    for extent in stage.extents:
        yield from _padding_on_panel(stage, extent)
        yield from _inside_padding(stage, extent, proposing)
        yield from _on_panel(stage, extent, proposing)


def _subject(extent: Extent, pixel: tuple[int, int]) -> tuple[str, tuple[str, ...]]:
    texts = extent.text_at(pixel)
    if not texts:
        return "it", ()
    kind = {Icon: "state ", Meter: "value "}.get(type(extent.part), "")
    return f"{kind}{quoted(texts[0])}", texts


def _padding_on_panel(stage: Stage, extent: Extent) -> Iterator[Finding]:
    area, panel = extent.padding, stage.material.layout.panel
    if area is None or inside(area, panel):
        return
    x, y = max(area[0], 0), max(area[1], 0)
    kept = (x, y, min(area[0] + area[2], panel.width) - x, min(area[1] + area[3], panel.height) - y)
    remedy = None
    if kept[2] > 0 and kept[3] > 0 and extent.part.__class__ in (Field, Icon):
        remedy = Remedy(f"cut the padding box to {box(kept)}", (Change(extent.name, "padding", list(kept)),))
        if (extent.reach & rectangle(*area)) - rectangle(*kept):
            # The ink leaves the panel too, and what is left of the box would cut it off.
            remedy = _back(stage, extent)
    yield Finding(
        NAME, "fault", stage.screen.name, extent.name,
        f"the padding box leaves the panel by {overhang(area, stage.whole)}",
        (), area[2] * area[3] - max(kept[2], 0) * max(kept[3], 0), area, remedy,
        pixels=rectangle(*area) - rectangle(*stage.whole),
    )  # fmt: skip


@lru_cache(maxsize=512)
def _cut(extent: Extent, area: Area) -> Mask:
    return extent.reach - rectangle(*area)


@lru_cache(maxsize=512)
def _lost(extent: Extent, panel: Panel) -> Mask:
    return extent.reach - visible(panel)


def _inside_padding(stage: Stage, extent: Extent, proposing: bool) -> Iterator[Finding]:
    area, panel = extent.padding, stage.material.layout.panel
    if area is None:
        return
    cut = _cut(extent, area)
    if not cut:
        return
    from panelproof.proof.free_place import cleared, has_room  # noqa: PLC0415 - only where something is found
    from panelproof.proof.shorter import shortened  # noqa: PLC0415 - only where something is found

    pixel = outermost(cut, area)
    subject, texts = _subject(extent, pixel)
    needed = hull(area, extent.reach.bounds())
    remedy = None
    if inside(needed, panel):
        remedy = Remedy(repadded(area, needed), (Change(extent.name, "padding", list(needed)),))
    if proposing and (remedy is None or not has_room(stage, extent, needed)):
        # No room for a larger padding box here: elsewhere, or for a smaller text.
        other = cleared(stage, extent, remedy) if remedy else None
        other = other or shortened(stage, extent, _common(area, stage.whole))
        remedy = other if other and (other.changes or remedy is None) else remedy
    yield Finding(
        NAME, "fault", stage.screen.name, extent.name,
        f"{subject} reaches beyond the padding box by {overhang(cut.bounds(), area)}: "
        f"{counted(cut.count(), 'pixel')} in all would be cut off",
        texts, cut.count(), cut.bounds(), remedy, pixels=cut,
    )  # fmt: skip


def _on_panel(stage: Stage, extent: Extent, proposing: bool) -> Iterator[Finding]:
    panel = stage.material.layout.panel
    lost = _lost(extent, panel)
    fill_lost = 0
    if isinstance(extent.part, Box) and extent.part.fill:
        part = extent.part
        area = (part.x, part.y, part.width, part.height)
        if not inside(area, panel):
            fill_lost = part.width * part.height - extent.fill.count() - extent.ink.count()
    if not lost and not fill_lost:
        return
    if not lost:
        yield Finding(
            NAME, "fault", stage.screen.name, extent.name,
            f"the box leaves the panel by {overhang(area, stage.whole)}", (), fill_lost, area,
            pixels=rectangle(*area) - rectangle(*stage.whole),
        )  # fmt: skip
        return
    from panelproof.proof.shorter import shortened  # noqa: PLC0415 - only where something is found

    pixel = outermost(lost, stage.whole)
    subject, texts = _subject(extent, pixel)
    beyond = overhang(lost.bounds(), stage.whole)
    remedy = _back(stage, extent) or (shortened(stage, extent, stage.whole) if proposing else None)
    where = f"leaves the panel by {beyond}" if beyond else "is hidden by the panel's rounded edge"
    yield Finding(
        NAME, "fault", stage.screen.name, extent.name,
        f"{subject} {where}: {counted(lost.count(), 'pixel')} in all cannot be seen",
        texts, lost.count(), lost.bounds(), remedy, pixels=lost,
    )  # fmt: skip


def _common(one: Area, other: Area) -> Area:
    left, top = max(one[0], other[0]), max(one[1], other[1])
    right, bottom = min(one[0] + one[2], other[0] + other[2]), min(one[1] + one[3], other[1] + other[3])
    return left, top, max(right - left, 0), max(bottom - top, 0)


def _back(stage: Stage, extent: Extent) -> Remedy | None:
    """Return the least move, along one axis or both, that brings the part into sight."""
    panel, area = stage.material.layout.panel, extent.reach.bounds()
    padded = extent.padding is not None and getattr(extent.part, "padding", None) is not None
    x, y, width, height = hull(area, extent.padding) if padded and extent.padding else area
    if width > panel.width or height > panel.height:
        return None
    dx = max(-x, 0) or min(panel.width - x - width, 0)
    dy = max(-y, 0) or min(panel.height - y - height, 0)
    if (dx, dy) == (0, 0) or extent.reach.moved(dx, dy) - visible(panel):
        return None
    changes, words = [], []
    for key, old, by in _places(extent.part):
        step = dx if by == "x" else dy
        if step:
            changes.append(Change(extent.name, key, old + step))
            words.append(f"{key} {old} → {old + step}")
    if padded and extent.padding:
        moved = (extent.padding[0] + dx, extent.padding[1] + dy, *extent.padding[2:])
        changes.append(Change(extent.name, "padding", list(moved)))
        words.append(f"padding box to {box(moved)}")
    return Remedy(", ".join(words), tuple(changes))


def _places(part: Part) -> tuple[tuple[str, int, str], ...]:
    if isinstance(part, Box | Rule | Icon | Meter | Picture):
        return ("x", part.x, "x"), ("y", part.y, "y")
    return ("x", part.x, "x"), ("baseline", part.baseline, "y")
