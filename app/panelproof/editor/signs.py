"""Small signs drawn by ourselves: a shape for each level, and for what a row can do."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QIcon,
    QPainter,
    QPainterPath,
    QPainterPathStroker,
    QPen,
    QPixmap,
    QPolygonF,
)

from panelproof.editor import theme

Sign = Literal[
    "fault", "caution", "note", "good", "pending", "shown", "hidden", "locked", "unlocked",
    "label", "field", "icon", "rule", "box", "meter", "picture",
]  # fmt: skip
WORDS = {"fault": "fault", "caution": "caution", "note": "note", "good": "clean", "pending": "proving…"}
"""The word that stands beside each level's shape, so that no colour is needed to read it."""


def colour(sign: Sign) -> QColor:
    """Return a sign's own colour in the present scheme."""
    tones = theme.colours()
    return {
        "fault": tones.fault, "caution": tones.caution, "note": tones.note, "good": tones.good,
    }.get(sign, tones.quiet)  # fmt: skip


def draw(painter: QPainter, area: QRectF, sign: Sign, tone: QColor | None = None) -> None:
    """Draw a sign into a square area."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(area.topLeft())
    painter.scale(area.width() / 16, area.height() / 16)
    _SHAPES[sign](painter, tone or colour(sign))
    painter.restore()


def icon(sign: Sign, tone: QColor | None = None) -> QIcon:
    """Return a sign as an icon, crisp up to three times its size."""
    made = QIcon()
    for ratio in (1, 2, 3):
        pixels = QPixmap(16 * ratio, 16 * ratio)
        pixels.setDevicePixelRatio(ratio)
        pixels.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixels)
        draw(painter, QRectF(0, 0, 16, 16), sign, tone)
        painter.end()
        made.addPixmap(pixels)
    return made


def _pen(painter: QPainter, tone: QColor, width: float = 1.5) -> None:
    cap, join = Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin
    painter.setPen(QPen(tone, width, Qt.PenStyle.SolidLine, cap, join))
    painter.setBrush(Qt.BrushStyle.NoBrush)


def _solid(painter: QPainter, tone: QColor) -> None:
    painter.setPen(QPen(tone, 1.2, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin))
    painter.setBrush(tone)


def _line(painter: QPainter, *points: tuple[float, float]) -> None:
    painter.drawPolyline(QPolygonF([QPointF(x, y) for x, y in points]))


def _fault(painter: QPainter, tone: QColor) -> None:
    corners = ((5, 1), (11, 1), (15, 5), (15, 11), (11, 15), (5, 15), (1, 11), (1, 5))
    shape, cross = QPainterPath(), QPainterPath()
    shape.addPolygon(QPolygonF([QPointF(x, y) for x, y in corners]))
    for left, right in ((5.2, 10.8), (10.8, 5.2)):
        cross.moveTo(left, 5.2)
        cross.lineTo(right, 10.8)
    stroker = QPainterPathStroker()
    stroker.setWidth(2)
    stroker.setCapStyle(Qt.PenCapStyle.RoundCap)
    # Cut out, so that it is seen on whatever lies below.
    painter.fillPath(shape.subtracted(stroker.createStroke(cross)), tone)


def _caution(painter: QPainter, tone: QColor) -> None:
    _pen(painter, tone, 1.6)
    painter.drawPolygon(QPolygonF([QPointF(8, 1.8), QPointF(14.8, 14), QPointF(1.2, 14)]))
    _line(painter, (8, 6.2), (8, 9.6))
    _line(painter, (8, 11.8), (8, 11.9))


def _note(painter: QPainter, tone: QColor) -> None:
    _pen(painter, tone)
    painter.drawEllipse(QRectF(1.75, 1.75, 12.5, 12.5))
    _line(painter, (8, 7.4), (8, 11.2))
    _line(painter, (8, 4.7), (8, 4.8))


def _good(painter: QPainter, tone: QColor) -> None:
    _pen(painter, tone, 2.2)
    _line(painter, (2.5, 8.8), (6.3, 12.6), (13.5, 4))


def _pending(painter: QPainter, tone: QColor) -> None:
    _solid(painter, tone)
    for x in (3, 8, 13):
        painter.drawEllipse(QPointF(x, 8), 1, 1)


def _eye(painter: QPainter) -> None:
    painter.drawArc(QRectF(0.5, 4, 15, 12), 35 * 16, 110 * 16)
    painter.drawArc(QRectF(0.5, 0, 15, 12), 215 * 16, 110 * 16)


def _shown(painter: QPainter, tone: QColor) -> None:
    _pen(painter, tone)
    _eye(painter)
    painter.setBrush(tone)
    painter.drawEllipse(QPointF(8, 8), 1.6, 1.6)


def _hidden(painter: QPainter, tone: QColor) -> None:
    _pen(painter, tone)
    _eye(painter)
    _line(painter, (3, 13.5), (13, 2.5))


def _lock(painter: QPainter, tone: QColor, shackle: float) -> None:
    _pen(painter, tone)
    painter.drawArc(QRectF(4.5 + shackle, 1.5, 7, 9), 0, 180 * 16)
    _line(painter, (4.5 + shackle, 6), (4.5 + shackle, 7))
    painter.setBrush(tone)
    painter.drawRoundedRect(QRectF(3, 7.5, 10, 7), 1, 1)


def _locked(painter: QPainter, tone: QColor) -> None:
    _lock(painter, tone, 0)
    _line(painter, (11.5, 6), (11.5, 7))


def _unlocked(painter: QPainter, tone: QColor) -> None:
    _pen(painter, tone)
    painter.drawArc(QRectF(7.5, 1, 6.5, 9), 0, 180 * 16)
    _line(painter, (7.5, 5.5), (7.5, 7.5))
    painter.drawRoundedRect(QRectF(2, 7.5, 9, 7), 1, 1)


def _label(painter: QPainter, tone: QColor) -> None:
    _pen(painter, tone)
    _line(painter, (2.5, 13.5), (7, 2.5), (11.5, 13.5))
    _line(painter, (4.2, 9.5), (9.8, 9.5))


def _field(painter: QPainter, tone: QColor) -> None:
    _pen(painter, tone, 1.3)
    painter.drawRect(QRectF(1.25, 3.25, 13.5, 9.5))
    _line(painter, (4, 6.5), (5.3, 5.5), (5.3, 10.5))
    painter.drawEllipse(QRectF(7.8, 5.5, 3.4, 5))


def _icon(painter: QPainter, tone: QColor) -> None:
    _pen(painter, tone)
    for size in (4.0, 9.0):
        painter.drawArc(QRectF(8 - size, 13 - size, 2 * size, 2 * size), 45 * 16, 90 * 16)
    painter.setBrush(tone)
    painter.drawEllipse(QPointF(8, 12.5), 1.2, 1.2)


def _rule(painter: QPainter, tone: QColor) -> None:
    _pen(painter, tone, 2)
    _line(painter, (1.5, 8), (14.5, 8))


def _box(painter: QPainter, tone: QColor) -> None:
    _pen(painter, tone, 2)
    painter.drawRect(QRectF(2, 3, 12, 10))


def _meter(painter: QPainter, tone: QColor) -> None:
    _pen(painter, tone, 1.3)
    painter.drawRect(QRectF(1.25, 4.75, 13.5, 6.5))
    painter.fillRect(QRectF(2.9, 6.4, 5.6, 3.2), tone)
    _line(painter, (11.3, 4.75), (11.3, 11.25))


def _picture(painter: QPainter, tone: QColor) -> None:
    _pen(painter, tone, 1.3)
    painter.drawRect(QRectF(1.75, 2.75, 12.5, 10.5))
    _line(painter, (2.5, 12), (6.2, 7.4), (8.8, 10.4), (10.6, 8.6), (13.5, 12))
    painter.setBrush(tone)
    painter.drawEllipse(QPointF(10.8, 5.8), 1, 1)


_SHAPES: dict[str, Callable[[QPainter, QColor], None]] = {
    "fault": _fault, "caution": _caution, "note": _note, "good": _good, "pending": _pending,
    "shown": _shown, "hidden": _hidden, "locked": _locked, "unlocked": _unlocked,
    "label": _label, "field": _field, "icon": _icon, "rule": _rule, "box": _box,
    "meter": _meter, "picture": _picture,
}  # fmt: skip
