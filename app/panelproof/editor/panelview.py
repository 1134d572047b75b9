"""The panel as it will look: a starter's picture in its outline, at whole pixels where there is room."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from panelproof.editor import theme
from panelproof.editor.thumbnail import picture
from panelproof.layout.panel import Panel
from panelproof.picture.frame import Frame

EDGE = 12


class PanelView(QWidget):
    """Shows a panel's outline with its size, or with a picture in it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._panel: Panel | None = None
        self.frame: Frame | None = None
        self.setMinimumSize(180, 150)
        self.setAccessibleName("Picture of the panel")

    def show_panel(self, panel: Panel | None, frame: Frame | None = None) -> None:
        """Show a panel with a picture of its size, or its outline alone; None: nothing."""
        self._panel, self.frame = panel, frame
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the panel in the middle."""
        del event
        if self._panel is None:
            return
        panel, tones = self._panel, theme.colours()
        room = self.contentsRect().adjusted(EDGE, EDGE, -EDGE, -EDGE)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self.frame is not None:
            shown = picture(self.frame, panel, room.size(), self.devicePixelRatioF())
            size = shown.deviceIndependentSize()
            width, height = size.width(), size.height()
        else:
            scale = min(room.width() / panel.width, room.height() / panel.height)
            width, height = panel.width * scale, panel.height * scale
        area = QRectF(round((self.width() - width) / 2), round((self.height() - height) / 2), width, height)
        path = QPainterPath()
        if panel.shape == "round":
            path.addEllipse(area)
        else:
            radius = panel.corner_radius * width / panel.width if panel.shape == "rounded" else 0
            path.addRoundedRect(area, radius, radius)
        painter.fillPath(path, tones.sunken)
        if self.frame is not None:
            painter.drawImage(area.topLeft(), shown)
        else:
            painter.setPen(tones.text)
            painter.setFont(theme.font("small"))
            painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, f"{panel.width} × {panel.height}")
        painter.setPen(QPen(tones.accent, 1.5))
        painter.drawPath(path)
