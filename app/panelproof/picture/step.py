"""The step from one moment of a screen to the next, one update at a time."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from panelproof.ink.mask import Mask
from panelproof.layout.document import Screen
from panelproof.layout.parts import Field, Icon, Meter
from panelproof.material import Material
from panelproof.picture import drawing
from panelproof.picture.drawing import Operation
from panelproof.picture.frame import Frame, draw, draw_screen, screen_frame
from panelproof.picture.values import Values


@dataclass(frozen=True, slots=True)
class Update:
    """One update on the glass: the part `part` changes from `old` to `new` (texts, state names, or values in words).

    `erased` was inked before and is ground now; `written` is inked now; `stale` was inked before and is not
    repainted, so it stays behind. `before` and `after` are the frames around it; do not change them. Where
    whole frames are sent at once there is one update for the whole screen, with `part`, `old` and `new`
    empty.
    """

    kind: Literal["field", "icon", "meter", "screen"]
    part: str
    old: str
    new: str
    erased: Mask
    written: Mask
    stale: Mask
    before: Frame
    after: Frame


@dataclass(frozen=True, slots=True)
class Step:
    """The updates that lead from one moment of a screen to another, in drawing order.

    `stale` is what still stays behind when all are done; `differs` every pixel that then differs from the
    second moment drawn afresh (stale ones, and those of a neighbour that an update wiped out).
    """

    screen: str
    start: Frame
    end: Frame
    updates: tuple[Update, ...]
    stale: Mask
    differs: Mask


_KINDS: dict[type, Literal["field", "icon", "meter"]] = {Field: "field", Icon: "icon", Meter: "meter"}


def _mask(chosen: NDArray[np.bool_]) -> Mask:
    """Return the pixels that are set in [height, width]."""
    height, width = chosen.shape
    packed = np.packbits(chosen.reshape(-1), bitorder="little").tobytes()
    return Mask(0, 0, width, height, int.from_bytes(packed, "little"))


def _paints(
    material: Material, screen: Screen, part: Field | Icon | Meter, values: Values
) -> tuple[str, tuple[Operation, ...]]:
    painted = drawing.part(material, screen, part, values)  # refuses values that lack the part
    return values.of(part.name), painted


def step(
    material: Material, screen: Screen, first: Values, second: Values, start: Frame | None = None
) -> Step:
    """Return the step from `first` to `second`: one update for each part whose value changes.

    `start` is what the glass shows before (by default `first` drawn afresh). Raises Problem where values
    lack a field or an icon of the screen.
    """
    begin = screen_frame(material, screen, first) if start is None else start.copy()
    frame, updates = begin, []
    whole = drawing.inked_by(())
    stale, inked_before, inked_after = whole, whole, whole
    at_once = material.layout.panel.refresh == "whole"
    for part in screen.parts:
        if not isinstance(part, Field | Icon | Meter):
            continue
        old, before = _paints(material, screen, part, first)
        new, after = _paints(material, screen, part, second)
        if old == new:
            continue
        was, now = drawing.inked_by(before), drawing.inked_by(after)
        if at_once:
            inked_before, inked_after = inked_before | was, inked_after | now
            continue
        painted = drawing.painted_by(after)
        next_frame = frame.copy()
        draw(next_frame, after)
        left = was - painted
        updates.append(
            Update(_KINDS[type(part)], part.name, old, new, was - left - now, now, left, frame, next_frame)
        )
        stale, frame = (stale - painted) | left, next_frame
    fresh = screen_frame(material, screen, second)
    if at_once and first != second:
        next_frame = frame.copy()
        draw_screen(next_frame, material, screen, second)
        erased = inked_before - inked_after
        updates.append(Update("screen", "", "", "", erased, inked_after, stale, frame, next_frame))
        frame = next_frame
    return Step(screen.name, begin, frame, tuple(updates), stale, _mask(frame.codes != fresh.codes))
