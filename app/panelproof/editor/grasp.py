"""What lies under the pointer: parts, and the handles of the chosen one."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from panelproof.editor import places
from panelproof.editor.places import View
from panelproof.editor.snapping import Side
from panelproof.ink.mask import Area
from panelproof.layout.parts import Box, Field, Icon, Meter, Part, Rule


@dataclass(frozen=True, slots=True)
class Handle:
    """A place to take hold of one or two sides of a rectangle, on a line between panel pixels."""

    sides: tuple[Side, ...]
    x: float
    y: float


def part_at(
    view: View, point: tuple[float, float], slack: float, without: Collection[str] = ()
) -> Part | None:
    """Return the part that is drawn last among those under a point in panel pixels.

    `slack` widens what is thinner than a pointer can hit; `without` names parts that cannot be taken.
    """
    for part in reversed(view.screen.parts):
        if part.name not in without and holds(view.place(part).area, point, slack):
            return part
    return None


def holds(area: Area, point: tuple[float, float], slack: float = 0.0) -> bool:
    """Tell whether a point lies in a rectangle, one thinner than 2 `slack` being widened to that."""
    across = max(slack - area[2] / 2, 0.0)
    down = max(slack - area[3] / 2, 0.0)
    return (
        area[0] - across <= point[0] < area[0] + area[2] + across
        and area[1] - down <= point[1] < area[1] + area[3] + down
    )


def touching(view: View, frame: Area, without: Collection[str] = ()) -> frozenset[str]:
    """Return the parts that a rectangle drawn by the pointer takes in.

    A part must be touched; a box that holds the whole rectangle is ground under it and is not taken.
    """
    found = set()
    for part in view.screen.parts:
        area = view.place(part).area
        if part.name in without or not _overlap(area, frame):
            continue
        if isinstance(part, Box) and _inside(frame, area):
            continue
        found.add(part.name)
    return frozenset(found)


def is_ground(view: View, box: Part) -> bool:
    """Tell whether a part is a box that others stand on: they are what a pointer there is after."""
    if not isinstance(box, Box):
        return False
    whole = places.fixed(box)
    return any(part is not box and _inside(view.place(part).area, whole) for part in view.screen.parts)


def sized(part: Part) -> Area | None:
    """Return the rectangle that the handles of a part change; None where it has none."""
    if isinstance(part, Box | Rule | Meter):
        return places.fixed(part)
    return part.padding if isinstance(part, Field | Icon) else None


def handles(part: Part, cramped: tuple[bool, bool] = (False, False)) -> tuple[Handle, ...]:
    """Return the handles of a part; `cramped` leaves out those in the middle of its width, its height."""
    area = sized(part)
    if area is None:
        return ()
    x, y, width, height = area
    middle_x, middle_y, right, bottom = x + width / 2, y + height / 2, x + width, y + height
    if isinstance(part, Rule):
        if part.direction == "across":
            return Handle(("left",), x, middle_y), Handle(("right",), right, middle_y)
        return Handle(("top",), middle_x, y), Handle(("bottom",), middle_x, bottom)
    found = [
        Handle(("left", "top"), x, y),
        Handle(("right", "top"), right, y),
        Handle(("left", "bottom"), x, bottom),
        Handle(("right", "bottom"), right, bottom),
    ]
    if not cramped[0]:
        found += [Handle(("top",), middle_x, y), Handle(("bottom",), middle_x, bottom)]
    if not cramped[1]:
        found += [Handle(("left",), x, middle_y), Handle(("right",), right, middle_y)]
    return tuple(found)


def pulled(area: Area, sides: Collection[Side], dx: int, dy: int, least: int = 1) -> Area:
    """Return a rectangle with the named sides moved; none passes the one opposite."""
    x, y, width, height = area
    left, top, right, bottom = x, y, x + width, y + height
    if "left" in sides:
        left = min(left + dx, right - least)
    if "right" in sides:
        right = max(right + dx, left + least)
    if "top" in sides:
        top = min(top + dy, bottom - least)
    if "bottom" in sides:
        bottom = max(bottom + dy, top + least)
    return left, top, right - left, bottom - top


def _overlap(one: Area, other: Area) -> bool:
    return (
        one[0] < other[0] + other[2]
        and other[0] < one[0] + one[2]
        and one[1] < other[1] + other[3]
        and other[1] < one[1] + one[3]
    )


def _inside(inner: Area, outer: Area) -> bool:
    return (
        outer[0] <= inner[0]
        and outer[1] <= inner[1]
        and inner[0] + inner[2] <= outer[0] + outer[2]
        and inner[1] + inner[3] <= outer[1] + outer[3]
    )
