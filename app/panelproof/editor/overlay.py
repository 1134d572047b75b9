"""What is painted over the panel's pixels: outlines, handles, baselines, guides, marks. In device pixels."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QLine, QPoint, QRect, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPen, QPolygon

from panelproof.editor.grasp import Handle
from panelproof.editor.pixels import Hatch, hatched, mask_image, outline
from panelproof.editor.sight import Sight
from panelproof.editor.snapping import Guide
from panelproof.ink.mask import Area, Mask


@dataclass(frozen=True, slots=True)
class Tones:
    """Colours over the panel's pixels: bright, with a dark edge around them, whatever the panel shows."""

    chosen: QColor
    quiet: QColor
    guide: QColor
    wrong: QColor
    erased: QColor
    written: QColor


TONES = Tones(*(QColor(name) for name in ("#2fd8e0", "#c9d2d6", "#ff8ae2", "#ff6a58", "#ffb83d", "#62dc92")))
HANDLE = 7
"""Width of a handle in logical pixels."""
LEAST_HATCHED = 4
"""Device pixels that a panel pixel must have for a hatch to be seen in it."""

_DASHES = {"edge": (), "middle": (6.0, 3.0, 1.0, 3.0), "baseline": (2.0, 2.0)}


@dataclass(frozen=True, slots=True)
class Mark:
    """Pixels to mark on the glass, and how: each kind has a hatch of its own besides its colour."""

    kind: Hatch
    mask: Mask


def line_width(sight: Sight) -> int:
    """Return how many device pixels make a thin line."""
    return max(round(sight.ratio), 1)


def _halo() -> QColor:
    return QColor(0, 0, 0, 150)


def _rect(area: Area) -> QRect:
    return QRect(*area)


def frame(painter: QPainter, area: Area, colour: QColor, width: int) -> None:
    """Draw a solid frame outside of a device rectangle, with a dark edge that shows on anything."""
    x, y, wide, high = area
    for out, thick, shade in ((2 * width, width, _halo()), (width, width, colour)):
        left, top, right, bottom = x - out, y - out, x + wide + out, y + high + out
        painter.fillRect(left, top, right - left, thick, shade)
        painter.fillRect(left, bottom - thick, right - left, thick, shade)
        painter.fillRect(left, top + thick, thick, bottom - top - 2 * thick, shade)
        painter.fillRect(right - thick, top + thick, thick, bottom - top - 2 * thick, shade)


def dashes(painter: QPainter, area: Area, colour: QColor, width: int) -> None:
    """Draw a dashed frame outside of a device rectangle."""
    x, y, wide, high = area[0] - width, area[1] - width, area[2] + 2 * width, area[3] + 2 * width
    on, period = 4 * width, 7 * width
    for left, top, across in (
        (x, y, True),
        (x, y + high - width, True),
        (x, y, False),
        (x + wide - width, y, False),
    ):
        length = wide if across else high
        size = (length, width) if across else (width, length)
        painter.fillRect(left, top, *size, _halo())
        for at in range(0, length, period):
            dash = min(on, length - at)
            if across:
                painter.fillRect(left + at, top, dash, width, colour)
            else:
                painter.fillRect(left, top + at, width, dash, colour)


def footprint(painter: QPainter, sight: Sight, mask: Mask, colour: QColor) -> None:
    """Tint every pixel that some text can ink."""
    image = mask_image(mask, colour)
    if not image.isNull():
        painter.drawImage(_rect(sight.area(mask.frame)), image)


def baseline(
    painter: QPainter, sight: Sight, at: tuple[int, int], span: tuple[int, int], colour: QColor
) -> None:
    """Draw a baseline over a span of columns (first, end), and a wedge under the anchor `at` on it."""
    width = line_width(sight)
    left, right, down = sight.across(span[0]), sight.across(span[1]), sight.down(at[1])
    painter.fillRect(left, down, right - left, width, colour)
    reach = round(5 * sight.ratio)
    across = sight.across(at[0])
    painter.setPen(QPen(_halo(), width))
    painter.setBrush(QBrush(colour))
    tip = QPoint(across, down + width)
    painter.drawPolygon(
        QPolygon([tip, QPoint(across - reach, tip.y() + reach), QPoint(across + reach, tip.y() + reach)])
    )


def handle_area(sight: Sight, handle: Handle) -> Area:
    """Return the device rectangle of a handle."""
    size = round(HANDLE * sight.ratio) | 1
    return sight.across(handle.x) - size // 2, sight.down(handle.y) - size // 2, size, size


def handles(painter: QPainter, sight: Sight, found: Iterable[Handle], colour: QColor) -> None:
    """Draw the handles of the chosen part."""
    width = line_width(sight)
    for handle in found:
        area = handle_area(sight, handle)
        painter.fillRect(_rect(area), QColor(255, 255, 255))
        x, y, wide, high = area
        frame(painter, (x + width, y + width, wide - 2 * width, high - 2 * width), colour, width)


def guides(painter: QPainter, sight: Sight, found: Sequence[Guide], colour: QColor) -> None:
    """Draw the lines that a moving part has snapped to, a little beyond what they join."""
    width, beyond = line_width(sight), round(6 * sight.ratio)
    for guide in found:
        if guide.axis == "x":
            at, first, end = sight.across(guide.at), sight.down(guide.first), sight.down(guide.end)
            line = QLine(at, first - beyond, at, end + beyond)
        else:
            at, first, end = sight.down(guide.at), sight.across(guide.first), sight.across(guide.end)
            line = QLine(first - beyond, at, end + beyond, at)
        painter.setPen(QPen(_halo(), 3 * width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap))
        painter.drawLine(line)
        pen = QPen(colour, width)
        if _DASHES[guide.kind]:
            pen.setStyle(Qt.PenStyle.CustomDashLine)
            pen.setDashPattern(list(_DASHES[guide.kind]))
        painter.setPen(pen)
        painter.drawLine(line)


def mark(painter: QPainter, sight: Sight, marked: Mark, colour: QColor, seen: Area) -> None:
    """Hatch pixels and draw a line around them; `seen` is the area of the panel that the window shows."""
    mask = marked.mask.framed(*seen)
    if not mask:
        return
    mask = mask.framed(*mask.bounds())
    if sight.size < LEAST_HATCHED:
        veil = QColor(colour)
        veil.setAlpha(190)
        painter.drawImage(_rect(sight.area(mask.frame)), mask_image(mask, veil))
        around = dashes if marked.kind == "erased" else frame
        width = line_width(sight) * (2 if marked.kind == "wrong" else 1)
        around(painter, sight.area(mask.frame), colour, width)
        return
    step = max(round(4 * sight.ratio), 3)
    painter.drawImage(_rect(sight.area(mask.frame)), hatched(mask, sight.size, step, marked.kind, colour))
    width = line_width(sight)
    lines = [
        QLine(sight.across(x1), sight.down(y1), sight.across(x2), sight.down(y2))
        for x1, y1, x2, y2 in outline(mask)
    ]
    for shade, thick in ((_halo(), 3 * width), (colour, width)):
        painter.setPen(QPen(shade, thick, Qt.PenStyle.SolidLine, Qt.PenCapStyle.SquareCap))
        painter.drawLines(lines)


def grid(painter: QPainter, sight: Sight, panel: tuple[int, int], clip: QRect, colour: QColor) -> None:
    """Draw the lines between panel pixels inside `clip` (device pixels)."""
    width, height = panel
    left, top, right, bottom = clip.left(), clip.top(), clip.right(), clip.bottom()
    first_x = max((left - sight.x) // sight.size, 1)
    first_y = max((top - sight.y) // sight.size, 1)
    last_x = min((right - sight.x) // sight.size + 1, width - 1)
    last_y = min((bottom - sight.y) // sight.size + 1, height - 1)
    x_end, y_end = sight.across(width), sight.down(height)
    lines = [
        QLine(at, max(sight.y, top), at, min(y_end - 1, bottom))
        for at in range(sight.across(first_x), sight.across(last_x) + 1, sight.size)
    ] + [
        QLine(max(sight.x, left), at, min(x_end - 1, right), at)
        for at in range(sight.down(first_y), sight.down(last_y) + 1, sight.size)
    ]
    painter.setPen(QPen(colour, 1))
    painter.drawLines(lines)
