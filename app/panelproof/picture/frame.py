"""Frames: a panel's pixels in its own colour codes."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from panelproof.ink.mask import Mask
from panelproof.layout.document import Screen
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field, Icon, Meter
from panelproof.material import Material
from panelproof.picture import drawing
from panelproof.picture.drawing import Copy, Fill, Operation
from panelproof.picture.values import Values

__all__ = [
    "Frame",
    "Values",
    "draw",
    "draw_screen",
    "new_frame",
    "screen_frame",
    "update_field",
    "update_icon",
    "update_meter",
]

Codes = NDArray[np.uint16]


@dataclass(slots=True, eq=False)
class Frame:
    """`height` rows of `width` colour codes (rgb565: 0 to 65535, mono: 0, 1), drawn on in place."""

    width: int
    height: int
    codes: Codes

    def __post_init__(self) -> None:
        if self.codes.shape != (self.height, self.width) or self.codes.dtype != np.uint16:
            raise ValueError(f"codes must be uint16 [{self.height}, {self.width}]")

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Frame) and np.array_equal(self.codes, other.codes)

    __hash__ = None  # type: ignore[assignment]

    def copy(self) -> Frame:
        """Return a frame of the same pixels that changes on its own."""
        return Frame(self.width, self.height, self.codes.copy())


def new_frame(panel: Panel, code: int = 0) -> Frame:
    """Return a frame of the panel's size, every pixel `code`."""
    return Frame(panel.width, panel.height, np.full((panel.height, panel.width), code, dtype=np.uint16))


@lru_cache(maxsize=1024)
def _table(ramp: tuple[int, ...]) -> Codes:
    return np.array(ramp, dtype=np.uint16)


def _chosen(mask: Mask) -> NDArray[np.bool_]:
    """Return which pixels of its rectangle a mask holds, [height, width]."""
    count = mask.width * mask.height
    packed = np.frombuffer(mask.bits.to_bytes((count + 7) // 8, "little"), dtype=np.uint8)
    chosen = np.unpackbits(packed, count=count, bitorder="little")
    return chosen.reshape(mask.height, mask.width).astype(np.bool_)


def draw(frame: Frame, operations: Iterable[Operation]) -> None:
    """Carry out operations on a frame, in order. They must lie inside it, as those of `drawing` do."""
    for operation in operations:
        width, height = operation.width, operation.height
        part = frame.codes[operation.y : operation.y + height, operation.x : operation.x + width]
        if isinstance(operation, Fill):
            part[:] = operation.code
            continue
        if isinstance(operation, Copy):
            own = np.frombuffer(operation.codes, dtype="<u2").reshape(height, width)
            np.copyto(part, own, where=_chosen(operation.mask))
            continue
        levels = np.frombuffer(operation.levels, dtype=np.uint8).reshape(height, width)
        codes = _table(operation.ramp)[levels]
        if operation.opaque:
            part[:] = codes
        else:
            np.copyto(part, codes, where=levels != 0)


def draw_screen(frame: Frame, material: Material, screen: Screen, values: Values) -> None:
    """Draw a whole screen onto a frame; raises Problem where `values` lacks a field or icon of it."""
    draw(frame, drawing.screen_operations(material, screen, values))


def screen_frame(material: Material, screen: Screen, values: Values) -> Frame:
    """Return a frame of the screen's ground with the screen drawn onto it."""
    frame = new_frame(material.layout.panel, material.code(screen.ground))
    draw_screen(frame, material, screen, values)
    return frame


def update_field(frame: Frame, material: Material, screen: Screen, field: Field, text: str) -> None:
    """Update one field to a new text, as the device does."""
    draw(frame, drawing.field(material, screen, field, text))


def update_icon(frame: Frame, material: Material, screen: Screen, icon: Icon, state: str) -> None:
    """Set one icon to the state of that name, as the device does; raises Problem where there is none."""
    draw(frame, drawing.icon(material, screen, icon, state))


def update_meter(frame: Frame, material: Material, screen: Screen, meter: Meter, value: int | None) -> None:
    """Update one meter to a value, as the device does; None is no value."""
    draw(frame, drawing.meter(material, screen, meter, value))
