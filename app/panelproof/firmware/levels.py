"""Meters in the header: their constant data, and what their drawing code needs to know."""

from __future__ import annotations

from dataclasses import dataclass, replace

from panelproof.firmware import literals
from panelproof.firmware.names import lower, upper
from panelproof.firmware.records import Array, Member, Record, record
from panelproof.ink.mask import Area
from panelproof.layout import level
from panelproof.layout.document import Layout, Screen
from panelproof.layout.parts import Meter

# The first bit: the bar grows to the left or up; the second: it is upright.
WAYS = {"right": 0, "left": 1, "down": 2, "up": 3}
NO_VALUE = "NO_VALUE"
NO_MARK = "-1"


@dataclass(frozen=True, slots=True)
class Levels:
    """What the templates need to know of a layout's meters."""

    record: Record
    limits: tuple[str, ...]
    upright: bool
    lying: bool
    backward: bool


def changed(part: Meter, former: int | None, value: int | None) -> Area | None:
    """Return the rectangle that the function for changes paints; None where no pixel differs."""
    whole = part.x, part.y, part.width, part.height
    if former is None or value is None or not (level.can_show(part, former) and level.can_show(part, value)):
        both = (former is not None and level.can_show(part, former)) or (
            value is not None and level.can_show(part, value)
        )
        return whole if both else None
    low, high = sorted((level.filled(part, former), level.filled(part, value)))
    if level.bar_ink(part, former) != level.bar_ink(part, value):
        low = 0
    if low == high:
        return None
    if WAYS[part.direction] & 1:
        low, high = level.length(part) - high, level.length(part) - low
    if WAYS[part.direction] & 2:
        return part.x, part.y + low, part.width, high - low
    return part.x + low, part.y, high - low, part.height


def constant(layout: Layout, screen: Screen, part: Meter) -> str:
    """Return the name of a meter's constant data."""
    return f"{lower(layout.name, 'meter', screen.name, part.name)}_"


def levels(layout: Layout, area: str) -> Levels | None:
    """Return what a layout's meters need; None where it has none. `area` is the type of places on the panel."""
    shown = [(screen, part) for screen in layout.screens for part in screen.parts if isinstance(part, Meter)]
    if not shown:
        return None
    limits: list[str] = []
    rows = []
    for screen, part in shown:
        rows.append(_row(layout, screen, part, len(limits)))
        limits += _limits(layout, screen, part)
    kept = [
        Member("x", "int16"),
        Member("y", "int16"),
        *(Member(name, area) for name in ("left", "top", "right", "bottom")),
    ]
    folded = [
        Member("least", "int32", "value of an empty bar"),
        Member("span", "uint32", "from there to that of a full one"),
        Member("length", "uint16", "pixels the way it grows"),
        Member("bar", "uint16", "ink"),
        Member("under", "uint16", "ground"),
        Member("first_limit", literals.integer_type([len(limits)])),
        Member("limits", "uint8"),
        Member("way", "uint8", "1: to the left or up; 2: upright"),
    ]
    for member in folded:
        values = {row[member.name] for row in rows}
        kept.append(replace(member, may_fold=True, always=values.pop() if len(values) == 1 else ""))
    held = sorted((one for one in kept if not one.always), key=lambda one: -one.bits)
    arrays = [
        Array(constant(layout, screen, part), tuple(literals.rows((row[one.name] for one in held), "")))
        for (screen, part), row in zip(shown, rows, strict=True)
    ]
    made = record(
        lower(layout.name),
        "meter",
        "A level bar: its place, its range, its inks.",
        [*held, *(one for one in kept if one.always)],
        arrays,
    )
    ways = {part.direction for _, part in shown}
    return Levels(
        made,
        tuple(limits),
        upright=bool(ways & {"up", "down"}),
        lying=bool(ways & {"left", "right"}),
        backward=bool(ways & {"left", "up"}),
    )


def _row(layout: Layout, screen: Screen, part: Meter, first: int) -> dict[str, str]:
    prefix, own = upper(layout.name), upper(layout.name, screen.name, part.name)
    across, down = f"{prefix}_ACROSS_", f"{prefix}_DOWN_"
    length = f"{own}_{'HEIGHT' if WAYS[part.direction] & 2 else 'WIDTH'}"
    return {
        "x": f"{own}_X",
        "y": f"{own}_Y",
        "left": f"{across}({own}_X)",
        "top": f"{down}({own}_Y)",
        "right": f"{across}({own}_X + {own}_WIDTH)",
        "bottom": f"{down}({own}_Y + {own}_HEIGHT)",
        "least": f"{own}_LEAST",
        "span": f"{prefix}_APART_BY_({own}_GREATEST, {own}_LEAST)",
        "length": length,
        "bar": f"{own}_INK",
        "under": f"{own}_GROUND",
        "first_limit": str(first) if part.limits else "0",
        "limits": str(len(part.limits)),
        "way": str(WAYS[part.direction]),
    }


def _limits(layout: Layout, screen: Screen, part: Meter) -> list[str]:
    """Return a meter's limits as initialisers: how far over the least value, the bar's ink, where the mark stands."""
    prefix, own = upper(layout.name), upper(layout.name, screen.name, part.name)
    way = WAYS[part.direction]
    length = f"{own}_{'HEIGHT' if way & 2 else 'WIDTH'}"
    made = []
    for number, limit in enumerate(part.limits, start=1):
        at, span = f"{own}_LIMIT_{number}", f"{own}_LEAST, {own}_GREATEST, {length}"
        ink = upper(layout.name, "ink", level.bar_ink(part, limit.at))
        mark = f"{prefix}_MARK_({at}, {span})"
        if way & 1:
            mark = f"(int16_t)({length} - 1 - {mark})"
        above = f"{prefix}_APART_BY_({at}, {own}_LEAST)"
        made.append(f"{{ {above}, {ink}, {mark if limit.mark else NO_MARK} }},")
    return made
