"""One moment in the strip: a small picture and its name, to be shown or stepped to."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QEnterEvent, QImage, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QToolButton, QWidget

from panelproof.editor import theme

PICTURE = QSize(132, 72)
"""The most that a picture takes, in logical pixels."""
MARGIN, CAPTION = 6, 20


class Card(QAbstractButton):
    """A moment: pressing shows it, pressing with Shift (or its button `then`) shows the step to it."""

    step_wanted = Signal()
    neighbour_wanted = Signal(int)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.name = ""
        self._title, self._role, self._wide = "", "", PICTURE.width()
        self._automatic = False
        self._image = QImage()
        self._over = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.then = QToolButton(self)
        self.then.setText("then")
        self.then.setAutoRaise(True)
        self.then.setFont(theme.font("small"))
        self.then.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.then.clicked.connect(self.step_wanted)
        theme.watch(self, self.update)

    # -- what it says ----------------------------------------------------------------------------------

    def describe(self, name: str, title: str, *, automatic: bool, wide: int) -> None:
        """Say which moment it is; `wide` is the width of its picture."""
        self.name, self._title, self._automatic, self._wide = name, title, automatic, wide
        self.setText(title)
        self.setToolTip(f"{title}{' (by itself, from the contents)' if automatic else ''}")
        self.updateGeometry()
        self.update()

    def set_role(self, role: str, first: str = "") -> None:
        """Say what it is now: "shown", "then" (the second moment of a step from `first`), or nothing."""
        self._role = role
        self.then.setVisible(role == "")
        words = {"shown": "on the glass", "then": "the step leads to it"}.get(role, "")
        self.setAccessibleName(f"Moment {self._title}" + (f", {words}" if words else ""))
        self.setAccessibleDescription("Enter shows it, Shift+Enter shows the step to it.")
        self.then.setAccessibleName(f"Step from {first} to {self._title}")
        self.then.setToolTip(f"Show the step from {first} to {self._title} (Shift and press)")
        self.update()

    @property
    def role(self) -> str:
        """What it is now, as for `set_role`."""
        return self._role

    def show_picture(self, image: QImage) -> None:
        """Show another picture."""
        self._image = image
        self.update()

    @property
    def image(self) -> QImage:
        """The picture."""
        return self._image

    # -- Qt --------------------------------------------------------------------------------------------

    def sizeHint(self) -> QSize:
        """Return the room for the picture and the name."""
        least = self.fontMetrics().horizontalAdvance(self._title) + self.then.sizeHint().width() + 8
        wide = max(self._wide, min(least, PICTURE.width() + 28), 84)
        return QSize(wide + 2 * MARGIN, PICTURE.height() + CAPTION + 2 * MARGIN)

    def minimumSizeHint(self) -> QSize:
        """Return the same: a card is not squeezed."""
        return self.sizeHint()

    def resizeEvent(self, _event: object) -> None:
        """Keep the button at the end of the name's line."""
        size = self.then.sizeHint()
        top = self.height() - MARGIN - CAPTION + (CAPTION - size.height()) // 2 + 2
        self.then.setGeometry(self.width() - size.width() - 3, top, size.width(), size.height())

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the picture, the name, and what the card is now."""
        painter = QPainter(self)
        tones = theme.colours()
        chosen = bool(self._role)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        edge = QRectF(self.rect()).adjusted(1, 1, -1, -1)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(tones.raised if chosen or self._over else tones.surface)
        painter.drawRoundedRect(edge, 5, 5)
        if chosen:
            style = Qt.PenStyle.SolidLine if self._role == "shown" else Qt.PenStyle.DashLine
            painter.setPen(QPen(tones.accent, 2, style))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(edge, 5, 5)
        if self.hasFocus():
            painter.setPen(QPen(tones.text, 1))
            painter.drawRoundedRect(edge.adjusted(3, 3, -3, -3), 3, 3)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        self._paint_picture(painter)
        self._paint_name(painter)

    def _paint_picture(self, painter: QPainter) -> None:
        if self._image.isNull():
            return
        size = self._image.deviceIndependentSize()
        x = (self.width() - size.width()) / 2
        y = MARGIN + (PICTURE.height() - size.height()) / 2
        # Onto whole device pixels, or the picture would be blurred.
        ratio = self._image.devicePixelRatio()
        corner = QPointF(round(x * ratio) / ratio, round(y * ratio) / ratio)
        painter.drawImage(corner, self._image)
        painter.setPen(theme.colours().line)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(QRectF(corner.x() - 1, corner.y() - 1, size.width() + 1, size.height() + 1))

    def _paint_name(self, painter: QPainter) -> None:
        tones = theme.colours()
        font = theme.font("small")
        font.setBold(self._role == "shown")
        font.setItalic(self._automatic)
        painter.setFont(font)
        painter.setPen(tones.text if self._role or not self._automatic else tones.quiet)
        room = self.width() - 2 * MARGIN - (self.then.width() if self.then.isVisibleTo(self) else 0)
        words = {"shown": self._title, "then": f"→ {self._title}"}.get(self._role, self._title)
        shown = painter.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, room)
        place = QRect(MARGIN, self.height() - MARGIN - CAPTION + 3, room, CAPTION)
        painter.drawText(place, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, shown)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Show, step, or go to a neighbour."""
        key, shift = event.key(), event.modifiers() & Qt.KeyboardModifier.ShiftModifier
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self.step_wanted.emit() if shift else self.clicked.emit()
        elif key in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            self.neighbour_wanted.emit(-1 if key == Qt.Key.Key_Left else 1)
        else:
            super().keyPressEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Show, or with Shift step."""
        inside = self.rect().contains(event.position().toPoint())
        shift = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
        if shift and event.button() == Qt.MouseButton.LeftButton and inside:
            self.setDown(False)
            self.step_wanted.emit()
            return
        super().mouseReleaseEvent(event)

    def enterEvent(self, event: QEnterEvent) -> None:
        """Show that it can be pressed."""
        self._over = True
        self.update()
        super().enterEvent(event)

    def leaveEvent(self, event: QEvent) -> None:
        """Show that the pointer is gone."""
        self._over = False
        self.update()
        super().leaveEvent(event)
