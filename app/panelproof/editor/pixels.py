"""Frames and masks as images that the window can paint, pixel for pixel."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal

import numpy as np
from numpy.typing import NDArray
from PySide6.QtGui import QColor, QImage

from panelproof.ink.mask import Mask
from panelproof.layout.colour import Colours, shown
from panelproof.layout.panel import Panel
from panelproof.picture.frame import Frame
from panelproof.picture.image import hidden

Chosen = NDArray[np.bool_]
Hatch = Literal["wrong", "erased", "written"]
OPAQUE = 0xFF000000


@lru_cache(maxsize=8)
def _table(colours: Colours) -> NDArray[np.uint32]:
    """Return a table from codes to 0xffrrggbb, filled as codes come up; 0 where none came yet."""
    return np.zeros(colours.count, dtype=np.uint32)


def looked_up(frame: Frame, colours: Colours) -> NDArray[np.uint32]:
    """Return 0xffrrggbb of what the panel shows, [height, width]."""
    table = _table(colours)
    found: NDArray[np.uint32] = table[frame.codes]
    missing = found == 0
    if missing.any():
        for code in np.unique(frame.codes[missing]):
            red, green, blue = shown(int(code), colours)
            table[code] = OPAQUE | red << 16 | green << 8 | blue
        found = table[frame.codes]
    return found


def frame_image(frame: Frame, panel: Panel) -> QImage:
    """Return a frame as the panel shows it; clear where the panel's shape hides it."""
    colours = looked_up(frame, panel.colours)
    if panel.shape != "rectangular":
        colours[hidden(panel)] = 0
    return _image(colours)


def _image(colours: NDArray[np.uint32]) -> QImage:
    height, width = colours.shape
    kept = np.ascontiguousarray(colours)
    return QImage(kept.data, width, height, 4 * width, QImage.Format.Format_ARGB32_Premultiplied).copy()


def chosen(mask: Mask) -> Chosen:
    """Return the members of a mask in its own rectangle, [height, width]."""
    count = mask.width * mask.height
    packed = np.frombuffer(mask.bits.to_bytes((count + 7) // 8, "little"), dtype=np.uint8)
    return (
        np.unpackbits(packed, count=count, bitorder="little")
        .reshape(mask.height, mask.width)
        .astype(np.bool_)
    )


def premultiplied(colour: QColor, alpha: int) -> int:
    """Return 0xaarrggbb of a colour at another alpha, its channels multiplied by that."""
    red, green, blue = (part * alpha // 255 for part in (colour.red(), colour.green(), colour.blue()))
    return alpha << 24 | red << 16 | green << 8 | blue


def mask_image(mask: Mask, colour: QColor) -> QImage:
    """Return the members of a mask in a colour (with its alpha), the rest clear; a null image for none."""
    if not mask.width or not mask.height:
        return QImage()
    value = np.uint32(premultiplied(colour, colour.alpha()))
    return _image(np.where(chosen(mask), value, np.uint32(0)))


def outline(mask: Mask) -> tuple[tuple[int, int, int, int], ...]:
    """Return the lines (x1, y1, x2, y2) between members and others, on the lines between panel pixels."""
    if not mask:
        return ()
    inside = np.pad(chosen(mask), 1)
    found: list[tuple[int, int, int, int]] = []
    for turned in (False, True):
        field = inside.T if turned else inside
        # A level line at each row border where membership changes, joined along the row.
        borders = field[1:, :] != field[:-1, :]
        for row in np.flatnonzero(borders.any(axis=1)):
            steps = np.diff(np.concatenate(([0], borders[row].astype(np.int8), [0])))
            starts, ends = np.flatnonzero(steps == 1), np.flatnonzero(steps == -1)
            for start, end in zip(starts, ends, strict=True):
                first, last, at = int(start) - 1, int(end) - 1, int(row)
                line = (at, first, at, last) if turned else (first, at, last, at)
                found.append(line)
    return tuple((mask.x + x1, mask.y + y1, mask.x + x2, mask.y + y2) for x1, y1, x2, y2 in found)


def hatched(mask: Mask, size: int, step: int, kind: Hatch, colour: QColor) -> QImage:
    """Return members of a mask with a thin veil and hatch, each `size` device pixels wide, the rest clear.

    `step` is the device pixels from one hatch line to the next.
    """
    members = chosen(mask).repeat(size, axis=0).repeat(size, axis=1)
    down, across = np.ogrid[: members.shape[0], : members.shape[1]]
    rising, falling = (down + across) % (2 * step) < step // 2, (down - across) % (2 * step) < step // 2
    lines = {"wrong": rising | falling, "erased": falling, "written": rising}[kind]
    veil, full = (np.uint32(premultiplied(colour, alpha)) for alpha in (60, 235))
    return _image(np.where(members, np.where(lines, full, veil), np.uint32(0)))
