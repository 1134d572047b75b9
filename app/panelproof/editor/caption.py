"""What is being replayed on the glass, in words, with its buttons."""

from __future__ import annotations

from PySide6.QtCore import QRect, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractScrollArea, QFrame, QHBoxLayout, QLabel, QToolButton, QWidget

from panelproof.editor import theme
from panelproof.proof.finding import Finding


def tool(text: str, name: str, parent: QWidget) -> QToolButton:
    """Return a flat button with a word on it."""
    button = QToolButton(parent)
    button.setText(text)
    button.setAccessibleName(name)
    button.setToolTip(name)
    button.setAutoRaise(True)
    button.setMinimumWidth(26)
    button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    return button


class Caption(QFrame):
    """What is being replayed, at the foot of the canvas."""

    def __init__(self, canvas: QAbstractScrollArea) -> None:
        super().__init__(canvas.viewport())
        self._canvas = canvas
        self._words = QLabel(self)
        self._words.setWordWrap(True)
        self.again = tool("Again", "Replay the finding again", self)
        self.close_button = tool("Close", "Show the moment again, without marks", self)
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 4, 6, 4)
        row.setSpacing(theme.UNIT // 2)
        row.addWidget(self._words, 1)
        row.addWidget(self.again)
        row.addWidget(self.close_button)
        self.setCursor(Qt.CursorShape.ArrowCursor)
        self.hide()

    def say(self, finding: Finding | None, words: str, *, replayed: bool) -> None:
        """Show a sentence about the scene."""
        rule = finding.rule.replace("-", " ") if finding else ""
        self._words.setText(f"{rule}: {words}" if words else rule)
        self.again.setVisible(replayed)
        self.show()
        self.settle()

    def settle(self) -> None:
        """Lie at the foot of the canvas."""
        room = self._canvas.viewport().rect()
        words = self._words.fontMetrics().horizontalAdvance(self._words.text()) + theme.UNIT
        around = self.again.sizeHint().width() + self.close_button.sizeHint().width() + 4 * theme.UNIT
        width = min(room.width() - 24, words + around)
        height = self.heightForWidth(width) if self.hasHeightForWidth() else self.sizeHint().height()
        self.setGeometry(QRect((room.width() - width) // 2, room.height() - height - 12, width, height))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint a ground that lies over the panel."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        tones = theme.colours()
        painter.setPen(tones.line)
        painter.setBrush(tones.raised)
        painter.drawRoundedRect(QRectF(0.5, 0.5, self.width() - 1, self.height() - 1), 5, 5)
