"""The controls of a step: play, one update forward, one back, and what each marks on the glass."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QColor, QIcon, QPainter, QPaintEvent, QPen, QPixmap, QPolygonF
from PySide6.QtWidgets import QHBoxLayout, QLabel, QToolButton, QWidget

from panelproof.editor import overlay, theme
from panelproof.editor.player import Player

_SHAPES: dict[str, tuple[tuple[tuple[float, float], ...], ...]] = {
    "play": (((4.0, 2.5), (13.0, 8.0), (4.0, 13.5)),),
    "pause": (
        ((4.0, 3.0), (6.5, 3.0), (6.5, 13.0), (4.0, 13.0)),
        ((9.5, 3.0), (12.0, 3.0), (12.0, 13.0), (9.5, 13.0)),
    ),
    "forward": (
        ((3.0, 3.0), (10.0, 8.0), (3.0, 13.0)),
        ((11.0, 3.0), (13.0, 3.0), (13.0, 13.0), (11.0, 13.0)),
    ),
    "back": (
        ((13.0, 3.0), (6.0, 8.0), (13.0, 13.0)),
        ((3.0, 3.0), (5.0, 3.0), (5.0, 13.0), (3.0, 13.0)),
    ),
}
_HATCHES = {
    "erased": Qt.BrushStyle.FDiagPattern,
    "written": Qt.BrushStyle.BDiagPattern,
    "wrong": Qt.BrushStyle.DiagCrossPattern,
}
_WORDS = {"erased": "erased", "written": "written", "wrong": "stale"}


def _icon(shape: str) -> QIcon:
    made = QIcon()
    for ratio in (1, 2, 3):
        pixels = QPixmap(16 * ratio, 16 * ratio)
        pixels.setDevicePixelRatio(ratio)
        pixels.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixels)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme.colours().text)
        for points in _SHAPES[shape]:
            painter.drawPolygon(QPolygonF([QPointF(x, y) for x, y in points]))
        painter.end()
        made.addPixmap(pixels)
    return made


class _Sample(QWidget):
    """A patch with the hatch of a mark."""

    def __init__(self, kind: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._kind = kind
        self.setFixedSize(14, 14)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        colour: QColor = getattr(overlay.TONES, self._kind)
        area = QRectF(1.5, 1.5, 11, 11)
        painter.fillRect(area, QColor(40, 46, 50))
        painter.fillRect(area, QBrush(colour, _HATCHES[self._kind]))
        painter.setPen(QPen(colour, 1))
        painter.drawRect(area)


class StepBar(QWidget):
    """Shown while a step is on the glass; `Leave` goes back to the first moment."""

    def __init__(self, player: Player, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._player = player
        self._counts: dict[str, QLabel] = {}
        self.setAccessibleName("Step from one moment to another")
        row = QHBoxLayout(self)
        theme.space(row, 0, theme.UNIT // 2)
        self.back = self._button("back", "One update back", player.back)
        self.play = self._button("play", "Play slowly", self._toggle)
        self.forward = self._button("forward", "One update forward", player.forward)
        self._words = QLabel(self)
        self._words.setAccessibleName("Where the step stands")
        self._words.setMinimumWidth(self._words.fontMetrics().horizontalAdvance("no change"))
        self.leave = QToolButton(self)
        self.leave.setText("Leave")
        self.leave.setToolTip("Show the first moment alone again (Escape)")
        self.leave.setAccessibleName("Leave the step")
        self.leave.clicked.connect(player.leave)
        for widget in (self.back, self.play, self.forward):
            row.addWidget(widget)
        row.addSpacing(theme.UNIT // 2)
        row.addWidget(self._words, 1)
        for kind, word in _WORDS.items():
            row.addWidget(_Sample(kind, self))
            label = QLabel(word, self)
            theme.set_role(label, "small")
            label.setMinimumWidth(label.fontMetrics().horizontalAdvance(f"{word} 0000"))
            self._counts[kind] = label
            row.addWidget(label)
            row.addSpacing(theme.UNIT // 2)
        row.addWidget(self.leave)
        player.changed.connect(self.renew)
        theme.watch(self, self.renew)
        self.renew()

    def _button(self, shape: str, name: str, deed: Callable[[], None]) -> QToolButton:
        button = QToolButton(self)
        button.setIcon(_icon(shape))
        button.setIconSize(QSize(16, 16))
        button.setAccessibleName(name)
        button.setToolTip(name)
        button.setAutoRaise(True)
        button.clicked.connect(deed)
        return button

    def _toggle(self) -> None:
        if self._player.playing:
            self._player.pause()
        else:
            self._player.play()

    @property
    def words(self) -> str:
        """The sentence on where the step stands."""
        return self._words.accessibleDescription()

    def renew(self) -> None:
        """Say where the step stands."""
        player = self._player
        shapes = {"back": self.back, "forward": self.forward}
        for shape, button in shapes.items():
            button.setIcon(_icon(shape))
        name = "Pause" if player.playing else "Play slowly"
        self.play.setIcon(_icon("pause" if player.playing else "play"))
        self.play.setAccessibleName(name)
        self.play.setToolTip(name)
        self.back.setEnabled(player.position > 0)
        self.forward.setEnabled(player.position < player.count)
        self.play.setEnabled(player.count > 0)
        marked = {"erased": player.erased, "written": player.written, "wrong": player.behind}
        for kind, label in self._counts.items():
            label.setText(f"{_WORDS[kind]} {marked[kind].count()}")
        place = f"{player.position} of {player.count}" if player.count else "no change"
        self._words.setText(place)
        # The whole sentence stands on the glass.
        self._words.setToolTip(player.words)
        self._words.setAccessibleDescription(player.words)
