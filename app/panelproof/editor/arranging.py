"""Bringing several parts into line, and spacing them evenly."""

from __future__ import annotations

from collections.abc import Collection
from typing import Literal

from msgspec.structs import replace

from panelproof.editor import places
from panelproof.editor.keeping import place as number_of
from panelproof.editor.keeping import with_screen
from panelproof.editor.shifting import moved, room
from panelproof.ink.mask import Area
from panelproof.layout.document import Layout
from panelproof.layout.parts import Field, Label, Part
from panelproof.material import Material

Edge = Literal["left", "centre", "right", "top", "middle", "bottom", "baseline"]
Direction = Literal["across", "down"]


def align(layout: Layout, material: Material, screen: str, names: Collection[str], edge: Edge) -> Layout:
    """Bring parts into line at an edge of what they cover together; one part alone, at the panel's.

    `centre` is the middle from left to right, `middle` from top to bottom. `baseline` moves texts only, to
    the lowest baseline among them. A field counts as the cell of its longest text. `material` must hold
    `layout`.
    """
    chosen = _chosen(layout, screen, names)
    if edge == "baseline":
        texts = [part for part in chosen if isinstance(part, Label | Field)]
        lowest = max((part.baseline for part in texts), default=0)
        return _shifted(layout, screen, {part.name: (0, lowest - part.baseline) for part in texts})
    areas = {part.name: places.place(material, part).area for part in chosen}
    if not areas:
        return layout
    panel = layout.panel
    frame = places.together(list(areas.values())) if len(areas) > 1 else (0, 0, panel.width, panel.height)
    return _shifted(layout, screen, {name: _towards(area, frame, edge) for name, area in areas.items()})


def distribute(
    layout: Layout, material: Material, screen: str, names: Collection[str], direction: Direction
) -> Layout:
    """Let the gaps between parts be even, the outermost two staying; fewer than three are left alone.

    Pixels that do not go into the gaps evenly are spread over them. `material` must hold `layout`.
    """
    axis = 0 if direction == "across" else 1
    areas = {part.name: places.place(material, part).area for part in _chosen(layout, screen, names)}
    if len(areas) < 3:
        return layout
    order = sorted(areas, key=lambda name: (areas[name][axis], areas[name][axis + 2]))
    first, last = areas[order[0]], areas[order[-1]]
    between = sum(areas[name][axis + 2] for name in order[1:-1])
    free = last[axis] - first[axis] - first[axis + 2] - between
    gaps, shifts, at = len(order) - 1, {}, first[axis] + first[axis + 2]
    for number, name in enumerate(order[1:-1], 1):
        step = at + free * number // gaps - areas[name][axis]
        shifts[name] = (step, 0) if axis == 0 else (0, step)
        at += areas[name][axis + 2]
    return _shifted(layout, screen, shifts)


def _chosen(layout: Layout, screen: str, names: Collection[str]) -> list[Part]:
    return [part for part in layout.screens[number_of(layout, screen)].parts if part.name in names]


def _towards(area: Area, frame: Area, edge: Edge) -> tuple[int, int]:
    axis = 0 if edge in ("left", "centre", "right") else 1
    spare = frame[axis + 2] - area[axis + 2]
    share = {"left": 0, "top": 0, "centre": spare // 2, "middle": spare // 2}.get(edge, spare)
    step = frame[axis] + share - area[axis]
    return (step, 0) if axis == 0 else (0, step)


def _shifted(layout: Layout, screen: str, shifts: dict[str, tuple[int, int]]) -> Layout:
    old = layout.screens[number_of(layout, screen)]
    parts = tuple(moved(part, *room([part], *shifts.get(part.name, (0, 0)))) for part in old.parts)
    return with_screen(layout, screen, replace(old, parts=parts))
