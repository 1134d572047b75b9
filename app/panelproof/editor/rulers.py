"""Rulers along the glass: panel pixels, or millimetres where the panel's size is known."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from PySide6.QtCore import QPointF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPolygonF
from PySide6.QtWidgets import QWidget

from panelproof.editor import theme
from panelproof.editor.sight import Sight

Unit = Literal["px", "mm"]
THICKNESS = 24
"""Of a ruler, in logical pixels."""
APART = 44
"""Logical pixels that two labelled ticks keep between them at least."""


@dataclass(frozen=True, slots=True)
class Tick:
    """A tick at a place in panel pixels, and its label; empty for small ones."""

    at: float
    label: str


def ticks(first: float, end: float, logical_size: float, per_pixel: float = 1.0) -> tuple[Tick, ...]:
    """Return the ticks from `first` to `end` (panel pixels) at `logical_size` logical pixels each.

    Labels count in units of `per_pixel` a panel pixel: 1 for pixels, millimetres a pixel for those.
    """
    step = _step(APART * per_pixel / logical_size, whole=per_pixel == 1.0)
    parts = next(
        (
            count
            for count in (10, 5, 2)
            if step / count / per_pixel * logical_size >= 4 and (per_pixel != 1.0 or step % count == 0)
        ),
        1,
    )
    small = step / parts
    number = int(first * per_pixel // small)
    found = []
    while number * small / per_pixel <= end:
        label = f"{number // parts * step:g}" if number % parts == 0 else ""
        found.append(Tick(number * small / per_pixel, label))
        number += 1
    return tuple(found)


def _step(least: float, *, whole: bool) -> float:
    """Return the least of 1, 2, 5, 10, 20, … (or of its tenths) that is at least `least`."""
    scale = 1.0
    if not whole:
        while scale / 10 >= least and scale > 0.01:
            scale /= 10
    while True:
        for part in (1, 2, 5):
            if part * scale >= least:
                return part * scale
        scale *= 10


class Ruler(QWidget):
    """One ruler; `sight` tells where the panel lies, `spans` what to show as taken in by the choice."""

    def __init__(self, orientation: Qt.Orientation, sight: Callable[[], Sight], parent: QWidget) -> None:
        super().__init__(parent)
        self._level = orientation == Qt.Orientation.Horizontal
        self._sight = sight
        self.per_pixel = 1.0
        self.pointer: int | None = None
        self.span: tuple[int, int] | None = None
        self.setAccessibleName("Ruler across" if self._level else "Ruler down")
        theme.watch(self, self.update)

    def sizeHint(self) -> QSize:
        """Return the thickness both ways; the glass stretches it."""
        return QSize(THICKNESS, THICKNESS)

    def point(self, at: int | None) -> None:
        """Show where the pointer is, in panel pixels."""
        if at != self.pointer:
            self.pointer = at
            self.update()

    def mark(self, span: tuple[int, int] | None) -> None:
        """Show what the choice covers: first panel pixel, and the one after the last."""
        if span != self.span:
            self.span = span
            self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint ticks, labels, the span of the choice, and the pointer."""
        painter = QPainter(self)
        colours = theme.colours()
        painter.fillRect(self.rect(), colours.raised)
        sight = self._sight()
        size, origin = sight.size / sight.ratio, (sight.x if self._level else sight.y) / sight.ratio
        length = self.width() if self._level else self.height()
        if self.span is not None:
            shade = QColor(colours.accent)
            shade.setAlpha(60)
            begin, end = (origin + at * size for at in self.span)
            self._bar(painter, begin, end - begin, THICKNESS, shade)
        painter.setFont(theme.font("small"))
        for tick in ticks(-origin / size, (length - origin) / size, size, self.per_pixel):
            place = origin + tick.at * size
            reach = 8 if tick.label else 4
            self._bar(painter, round(place), 1, reach, colours.line)
            if tick.label:
                self._label(painter, place, tick.label, colours.quiet)
        if self.pointer is not None:
            self._wedge(painter, origin + (self.pointer + 0.5) * size, colours.accent)
        self._bar(painter, 0, length, 1, colours.line)

    def _bar(self, painter: QPainter, along: float, length: float, reach: int, colour: QColor) -> None:
        """Fill a stretch of the ruler, `reach` pixels out from the edge at the glass."""
        out = THICKNESS - reach
        x, y, wide, high = (along, out, length, reach) if self._level else (out, along, reach, length)
        painter.fillRect(round(x), round(y), max(round(wide), 1), max(round(high), 1), colour)

    def _label(self, painter: QPainter, place: float, label: str, colour: QColor) -> None:
        painter.setPen(colour)
        metrics = painter.fontMetrics()
        if self._level:
            painter.drawText(round(place) + 3, metrics.ascent() + 1, label)
            return
        painter.save()
        painter.translate(metrics.ascent() + 1, round(place) + 3 + metrics.horizontalAdvance(label))
        painter.rotate(-90)
        painter.drawText(0, 0, label)
        painter.restore()

    def _wedge(self, painter: QPainter, place: float, colour: QColor) -> None:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(colour)
        tip, back = THICKNESS - 1.0, THICKNESS - 7.0
        points = [QPointF(place, tip), QPointF(place - 4, back), QPointF(place + 4, back)]
        painter.drawPolygon(QPolygonF([p if self._level else QPointF(p.y(), p.x()) for p in points]))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
