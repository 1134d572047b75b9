"""Moving parts by whole pixels, within the coordinates that a layout can hold."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from panelproof.layout.parts import Field, Icon, Label, Part

FARTHEST = 4096


def moved(part: Part, dx: int, dy: int) -> Part:
    """Return a part moved by (dx, dy), with its padding box where it has one."""
    if isinstance(part, Label):
        return replace(part, x=part.x + dx, baseline=part.baseline + dy)
    padding = part.padding if isinstance(part, Field | Icon) else None
    if padding is not None:
        padding = (padding[0] + dx, padding[1] + dy, padding[2], padding[3])
    if isinstance(part, Field):
        return replace(part, x=part.x + dx, baseline=part.baseline + dy, padding=padding)
    if isinstance(part, Icon):
        return replace(part, x=part.x + dx, y=part.y + dy, padding=padding)
    return replace(part, x=part.x + dx, y=part.y + dy)


def room(parts: Sequence[Part], dx: int, dy: int) -> tuple[int, int]:
    """Return (dx, dy), lessened so that every part stays within the coordinates that a layout can hold."""
    for part in parts:
        for x, y in _points(part):
            dx = min(max(dx, -FARTHEST - x), FARTHEST - x)
            dy = min(max(dy, -FARTHEST - y), FARTHEST - y)
    return dx, dy


def _points(part: Part) -> list[tuple[int, int]]:
    points = [(part.x, part.baseline if isinstance(part, Label | Field) else part.y)]
    if isinstance(part, Field | Icon) and part.padding is not None:
        points.append(part.padding[:2])
    return points
