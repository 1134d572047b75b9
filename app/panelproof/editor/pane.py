"""The part of the glass that shows the panel: zoom, scrolling, and painting in whole device pixels."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QImage, QPainter, QPaintEvent, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QAbstractScrollArea, QFrame, QScrollBar, QWidget

from panelproof.editor import overlay, theme
from panelproof.editor.sight import GREATEST_ZOOM, LEAST_ZOOM, Sight, device_size, fitting_zoom
from panelproof.ink.mask import Area
from panelproof.layout.panel import Panel
from panelproof.picture.image import BEZEL

BEZEL_WIDTH, MARGIN, SCROLLED_MARGIN = 10, 18, 72
"""Logical pixels: the bezel, the room around it, and how far one can scroll beyond the panel."""
GRID_FROM = 6


class Pane(QAbstractScrollArea):
    """A panel under a magnifying glass; subclasses say what it shows and what lies over it."""

    sight_changed = Signal()
    """The zoom is another, or the panel lies elsewhere in the window."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.viewport().setMouseTracking(True)
        self.viewport().setAutoFillBackground(False)
        self._panel = Panel(1, 1)
        self._zoom, self._fitting = 1, True
        self.grid_shown = True
        for bar in (self.horizontalScrollBar(), self.verticalScrollBar()):
            bar.valueChanged.connect(self._scrolled)
        self.horizontalScrollBar().setAccessibleName("Scroll the glass across")
        self.verticalScrollBar().setAccessibleName("Scroll the glass down")
        theme.watch(self, self.viewport().update)

    # -- for subclasses --------------------------------------------------------------------------------

    def picture(self) -> QImage:
        """Return the panel's pixels."""
        raise NotImplementedError

    def words(self) -> str:
        """Return a sentence to write below the panel, empty for none."""
        return ""

    def paint_over(self, painter: QPainter, sight: Sight, seen: Area) -> None:
        """Paint what lies over the panel, in device pixels; `seen` is the area of the panel in the window."""

    # -- zoom ------------------------------------------------------------------------------------------

    @property
    def zoom(self) -> int:
        """How many times the panel's pixels are enlarged."""
        return self._zoom

    @property
    def fitting(self) -> bool:
        """Whether the zoom follows the window."""
        return self._fitting

    def set_zoom(self, zoom: int, about: QPointF | None = None) -> None:
        """Enlarge 1 to 16 times; the panel's place under `about` (by default the middle) stays there."""
        self._fitting = False
        self._set_zoom(min(max(zoom, LEAST_ZOOM), GREATEST_ZOOM), about)

    def zoom_in(self) -> None:
        """Enlarge once more."""
        self.set_zoom(self._zoom + 1)

    def zoom_out(self) -> None:
        """Enlarge once less."""
        self.set_zoom(self._zoom - 1)

    def fit(self) -> None:
        """Enlarge as much as fits, and follow the window."""
        self._fitting = True
        self._set_zoom(self._fitting_zoom(), None)

    def show_panel(self, panel: Panel) -> None:
        """Show another panel."""
        if panel != self._panel:
            self._panel = panel
            self._arrange()

    def _fitting_zoom(self) -> int:
        around = 2 * (BEZEL_WIDTH + MARGIN)
        whole = self.maximumViewportSize()
        room = whole.width() - around, whole.height() - around
        return fitting_zoom(self._panel.width, self._panel.height, room, self.devicePixelRatioF())

    def _set_zoom(self, zoom: int, about: QPointF | None) -> None:
        point = QPointF(self.viewport().rect().center()) if about is None else about
        kept = self.sight().exact(point.x(), point.y())
        self._zoom = zoom
        self._set_ranges()
        sight = self.sight()
        self._bar_by(self.horizontalScrollBar(), sight.x + kept[0] * sight.size - point.x() * sight.ratio)
        self._bar_by(self.verticalScrollBar(), sight.y + kept[1] * sight.size - point.y() * sight.ratio)
        self._moved()

    @staticmethod
    def _bar_by(bar: QScrollBar, by: float) -> None:
        bar.setValue(bar.value() + round(by))

    # -- where the panel lies --------------------------------------------------------------------------

    def sight(self) -> Sight:
        """Return how panel pixels lie on the viewport's device pixels."""
        ratio = self.devicePixelRatioF()
        size = device_size(self._zoom, ratio)
        across, down = self._room()
        return Sight(
            size,
            self._origin(across, self._panel.width * size, self.horizontalScrollBar().value(), ratio),
            self._origin(down, self._panel.height * size, self.verticalScrollBar().value(), ratio),
            ratio,
        )

    def _room(self) -> tuple[int, int]:
        ratio = self.devicePixelRatioF()
        return round(self.viewport().width() * ratio), round(self.viewport().height() * ratio)

    @staticmethod
    def _excess(room: int, length: int, ratio: float) -> int:
        """Return by how many device pixels a panel and what is around it exceed the window."""
        if length + round(2 * (BEZEL_WIDTH + MARGIN) * ratio) <= room:
            return 0
        return max(length + round(2 * SCROLLED_MARGIN * ratio) - room, 0)

    def _origin(self, room: int, length: int, value: int, ratio: float) -> int:
        excess = self._excess(room, length, ratio)
        return (room - length) // 2 if not excess else round(SCROLLED_MARGIN * ratio) - value

    def _set_ranges(self) -> None:
        ratio = self.devicePixelRatioF()
        size = device_size(self._zoom, ratio)
        for bar, room, length in zip(
            (self.horizontalScrollBar(), self.verticalScrollBar()),
            self._room(),
            (self._panel.width * size, self._panel.height * size),
            strict=True,
        ):
            excess = self._excess(room, length, ratio)
            middle = not bar.maximum() and excess
            bar.setRange(0, excess)
            bar.setPageStep(room)
            bar.setSingleStep(max(size * 4, round(16 * ratio)))
            if middle:
                bar.setValue(excess // 2)

    def pan(self, dx: int, dy: int) -> None:
        """Move the panel under the window by device pixels."""
        self.horizontalScrollBar().setValue(self.horizontalScrollBar().value() - dx)
        self.verticalScrollBar().setValue(self.verticalScrollBar().value() - dy)

    def bring(self, area: Area) -> None:
        """Scroll so that an area of the panel can be seen."""
        sight = self.sight()
        x, y, wide, high = sight.area(area)
        room = self._room()
        for bar, first, length, size in (
            (self.horizontalScrollBar(), x, wide, room[0]),
            (self.verticalScrollBar(), y, high, room[1]),
        ):
            if first < 0 or first + length > size:
                bar.setValue(bar.value() + first + length // 2 - size // 2)

    def _arrange(self) -> None:
        if self._fitting:
            self._zoom = self._fitting_zoom()
        self._set_ranges()
        self._moved()

    def _scrolled(self) -> None:
        self._moved()

    def _moved(self) -> None:
        self.viewport().update()
        self.sight_changed.emit()

    def scrollContentsBy(self, _dx: int, _dy: int) -> None:
        """Paint anew instead of moving painted pixels: the frame lies over what is around."""

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit the panel anew, or keep its middle."""
        super().resizeEvent(event)
        self._arrange()

    def viewportEvent(self, event: QEvent) -> bool:
        """Follow the window to a monitor of another density."""
        if event.type() == QEvent.Type.DevicePixelRatioChange:
            self._arrange()
        return super().viewportEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom about the pointer with Ctrl, else scroll."""
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            turned = event.angleDelta().y() or event.angleDelta().x()
            if turned:
                self.set_zoom(self._zoom + (1 if turned > 0 else -1), event.position())
            event.accept()
            return
        super().wheelEvent(event)

    # -- painting --------------------------------------------------------------------------------------

    def seen(self) -> Area:
        """Return the area of the panel's plane that the window shows, beyond the panel too."""
        sight, (across, down) = self.sight(), self._room()
        left, top = -sight.x // sight.size, -sight.y // sight.size
        right, bottom = (across - sight.x) // sight.size + 1, (down - sight.y) // sight.size + 1
        return left, top, right - left, bottom - top

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the bezel, the panel's pixels, the grid, and what lies over them."""
        painter = QPainter(self.viewport())
        painter.fillRect(event.rect(), theme.colours().surround)
        sight = self.sight()
        self._in_device_pixels(painter, sight.ratio)
        self._paint_bezel(painter, sight)
        panel = self._panel
        whole = QRect(*sight.area((0, 0, panel.width, panel.height)))
        painter.drawImage(whole, self.picture())
        if self.grid_shown and self._zoom >= GRID_FROM:
            self._paint_grid(painter, sight, event.rect())
        self.paint_over(painter, sight, self.seen())
        painter.resetTransform()
        words = self.words()
        if words:
            self._paint_words(painter, words)
        if self.hasFocus():
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(theme.colours().accent)
            painter.drawRect(self.viewport().rect().adjusted(0, 0, -1, -1))

    @staticmethod
    def _in_device_pixels(painter: QPainter, ratio: float) -> None:
        """Let one unit be one device pixel, the viewport's corner lying on a whole one."""
        corner = painter.deviceTransform().map(QPointF(0, 0))
        painter.scale(1 / ratio, 1 / ratio)
        painter.translate(round(corner.x()) - corner.x(), round(corner.y()) - corner.y())
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, False)

    def _paint_bezel(self, painter: QPainter, sight: Sight) -> None:
        panel, width = self._panel, round(BEZEL_WIDTH * sight.ratio)
        x, y, wide, high = sight.area((0, 0, panel.width, panel.height))
        around = QRectF(x - width, y - width, wide + 2 * width, high + 2 * width)
        corner: float = width * 0.6
        if panel.shape == "round":
            corner = around.width() / 2
        elif panel.shape == "rounded":
            corner = width + panel.corner_radius * sight.size
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(*BEZEL))
        painter.drawRoundedRect(around, corner, corner)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)

    def _paint_words(self, painter: QPainter, words: str) -> None:
        """Write a sentence at the foot of the window, on a ground of its own: the panel may lie there."""
        tones, metrics, room = theme.colours(), painter.fontMetrics(), self.viewport().rect()
        words = metrics.elidedText(words, Qt.TextElideMode.ElideMiddle, room.width() - 48)
        size = metrics.size(0, words)
        place = QRect(0, 0, size.width() + 24, size.height() + 8)
        place.moveCenter(QPoint(room.center().x(), room.bottom() - 8 - place.height() // 2))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(tones.line)
        painter.setBrush(tones.raised)
        painter.drawRoundedRect(QRectF(place).adjusted(0.5, 0.5, -0.5, -0.5), 5, 5)
        painter.setPen(tones.text)
        painter.drawText(place, Qt.AlignmentFlag.AlignCenter, words)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)

    def _paint_grid(self, painter: QPainter, sight: Sight, exposed: QRect) -> None:
        ratio = sight.ratio
        corner = QPoint(int(exposed.left() * ratio), int(exposed.top() * ratio))
        clip = QRect(
            corner.x(), corner.y(), int(exposed.width() * ratio) + 2, int(exposed.height() * ratio) + 2
        )
        overlay.grid(painter, sight, (self._panel.width, self._panel.height), clip, QColor(128, 128, 128, 90))
