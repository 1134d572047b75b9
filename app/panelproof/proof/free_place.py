"""The nearest place where a part of a screen is in no other's way."""

from __future__ import annotations

from functools import lru_cache

import msgspec
from msgspec.structs import replace

from panelproof.ink.mask import Area, rectangle
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box, Field, Icon, Label, Part
from panelproof.material import Material
from panelproof.proof import residue
from panelproof.proof.extent import Extent, Stage, stage, visible
from panelproof.proof.finding import Change, Remedy

FARTHEST = 32
"""Pixels: beyond that, another place is no remedy but another layout."""
Move = tuple[int, int]


@lru_cache(maxsize=1)
def _moves() -> tuple[Move, ...]:
    """Return every move of up to `FARTHEST` pixels, the shortest first, straight ones before slanting ones."""
    reach = range(-FARTHEST, FARTHEST + 1)
    moves = [(dx, dy) for dx in reach for dy in reach if 0 < dx * dx + dy * dy <= FARTHEST * FARTHEST]
    return tuple(
        sorted(moves, key=lambda move: (move[0] ** 2 + move[1] ** 2, abs(move[1]), move[1] < 0, move[0] < 0))
    )


def freed(stage_: Stage, *extents: Extent) -> Remedy | None:
    """Return the shortest move of one of some parts that leaves it in nobody's way; None where there is none near."""
    if not stage_.screen.clears:
        # What it leaves of other screens depends on where its parts stand.
        return None
    bare = _bare(stage_.material)
    panel, ground = stage_.material.layout.panel, stage_.material.code(stage_.screen.ground)
    best, moved = None, None
    for extent in extents:
        within = FARTHEST * FARTHEST if best is None else best[0] ** 2 + best[1] ** 2 - 1
        move = _free(stage_.extents, stage_.extents.index(extent), panel, ground, within, bare=bare)
        if move is not None:
            best, moved = move, extent
    return _remedy(moved.part, best) if moved is not None and best is not None else None


def has_room(stage_: Stage, extent: Extent, padding: Area) -> bool:
    """Tell whether a part could repaint a padding box, and ink all of its reach in it, where it stands."""
    panel = stage_.material.layout.panel
    for_ink, for_ground = _taken(
        stage_.extents, stage_.extents.index(extent), panel, stage_.material.code(stage_.screen.ground)
    )
    frame = 0, 0, panel.width, panel.height
    box = rectangle(*padding)
    painted, ink = box.framed(*frame).bits, (extent.reach & box).framed(*frame).bits
    return not (ink & for_ink or painted & (for_ground | _bare(stage_.material)))


def cleared(stage_: Stage, extent: Extent, remedy: Remedy) -> Remedy | None:
    """Return a remedy that changes one field's or icon's padding, with the shortest move to where that is in nobody's way.

    None where there is no such place near.
    """
    part, screen = extent.part, stage_.screen
    if not isinstance(part, Field | Icon):
        return None
    tree = msgspec.to_builtins(part) | {change.key: change.value for change in remedy.changes}
    number = stage_.extents.index(extent)
    parts = (*screen.parts[:number], msgspec.convert(tree, type(part)), *screen.parts[number + 1 :])
    other = stage(stage_.material, replace(screen, parts=parts))
    moved = freed(other, other.extents[number])
    if moved is None:
        return None
    keys = {change.key for change in moved.changes}
    kept = tuple(change for change in remedy.changes if change.key not in keys)
    return Remedy(f"{remedy.sentence}; and {moved.sentence}", (*kept, *moved.changes))


@lru_cache(maxsize=4)
def _bare(material: Material) -> int:
    """Return, as bits of the panel, where screens that do not clear would show what comes there now.

    A screen that shows something of another as it is has that fault already.
    """
    layout, bare = material.layout, 0
    if all(screen.clears for screen in layout.screens):
        return 0
    stages = tuple(stage(material, screen) for screen in layout.screens)
    showing = {finding.screen for finding in residue.findings(stages)}
    for one in stages:
        if not one.screen.clears and one.screen.name not in showing:
            painted = 0
            for extent in one.extents:
                painted |= extent.surely.bits
            bare |= ((1 << layout.panel.width * layout.panel.height) - 1) & ~painted
    return bare


@lru_cache(maxsize=512)
def _free(
    extents: tuple[Extent, ...], number: int, panel: Panel, ground: int, within: int, *, bare: int
) -> Move | None:
    """Return the shortest move of a part, no longer than the root of `within`, to a free place."""
    extent = extents[number]
    if isinstance(extent.part, Box) or not extent.ink:
        return None
    left, top, right, bottom = _edges(extent)
    if left < 0 or top < 0 or right > panel.width or bottom > panel.height:
        return None
    # Only the rows of the part are looked at, once for each of its heights: short numbers are shifted quickly.
    width, band = panel.width, (1 << (bottom - top) * panel.width) - 1
    for_ink, for_ground = _taken(extents, number, panel, ground)
    for_ink, for_ground = for_ink | bare, for_ground | bare
    ink, painted = extent.ink.bits >> top * width, extent.ground.bits >> top * width
    rows: dict[int, tuple[int, int]] = {}
    for dx, dy in _moves():
        if dx * dx + dy * dy > within:
            return None
        # Inside the panel's rectangle, so that a shifted row never runs over into the next.
        if left + dx < 0 or right + dx > width or top + dy < 0 or bottom + dy > panel.height:
            continue
        if dy not in rows:
            first = (top + dy) * width
            rows[dy] = for_ink >> first & band, for_ground >> first & band
        taken, kept = rows[dy]
        if dx >= 0 and not (ink << dx & taken or painted << dx & kept):
            return dx, dy
        if dx < 0 and not (ink >> -dx & taken or painted >> -dx & kept):
            return dx, dy
    return None


@lru_cache(maxsize=512)
def _edges(extent: Extent) -> tuple[int, int, int, int]:
    """Return left, top, right and bottom of all that moves with a part."""
    areas = [extent.reach.bounds(), extent.ink.bounds()]
    if extent.ground:
        areas.append(extent.ground.bounds())
    if extent.padding is not None:
        areas.append(extent.padding)
    return (
        min(x for x, *_ in areas),
        min(y for _, y, *_ in areas),
        max(x + width for x, _, width, _ in areas),
        max(y + height for _, y, _, height in areas),
    )


def _taken(extents: tuple[Extent, ...], number: int, panel: Panel, ground: int) -> tuple[int, int]:
    """Return where the part's ink must not lie, and where its repainted ground must not, as bits of the panel."""
    extent, whole = extents[number], panel.refresh == "whole"
    all_pixels = (1 << panel.width * panel.height) - 1
    for_ink, for_ground = all_pixels & ~visible(panel).bits, 0
    for place, other in enumerate(extents):
        if other is extent:
            continue
        later = place > number
        for_ink |= other.ink.bits
        if later:
            for_ink |= other.fill.bits
        if other.changes if not whole else later:
            for_ink |= other.ground.bits
        if extent.changes if not whole else not later:
            for_ground |= other.ink.bits
    # What lies on top under it: the wrong ground for what it repaints or was blended with, and its own colour.
    seen = 0
    for below in (*(() if whole else reversed(extents[number + 1 :])), *reversed(extents[:number])):
        hit = below.fill.bits & ~seen
        seen |= below.fill.bits
        if below.ground_code != extent.ground_code:
            for_ground |= hit
        for_ink |= _unfit(extent, below.ground_code, hit)
    return for_ink | _unfit(extent, ground, all_pixels & ~seen), for_ground


def _unfit(extent: Extent, code: int, pixels: int) -> int:
    """Return those of some pixels, all of one colour, that ink without a ground of its own may not lie on."""
    if extent.ground:
        return 0
    blended = extent.footprint is not None and extent.footprint.type.antialiased
    return pixels if code in extent.ink_codes or (blended and code != extent.ground_code) else 0


def _remedy(part: Part, move: Move) -> Remedy:
    dx, dy = move
    changes, words = [], []
    across = f"{abs(dx)} px to the {'right' if dx > 0 else 'left'}" if dx else ""
    down = f"{abs(dy)} px {'down' if dy > 0 else 'up'}" if dy else ""
    vertical = "baseline" if isinstance(part, Field | Label) else "y"
    for key, by in (("x", dx), (vertical, dy)):
        if by:
            old = getattr(part, key)
            changes.append(Change(part.name, key, old + by))
            words.append(f"{key} {old} → {old + by}")
    if isinstance(part, Field | Icon) and part.padding:
        x, y, width, height = part.padding
        changes.append(Change(part.name, "padding", [x + dx, y + dy, width, height]))
        words.append("padding with it")
    return Remedy(
        f"move `{part.name}` {' and '.join(filter(None, (across, down)))} ({', '.join(words)})",
        tuple(changes),
    )
