"""An icon's states side by side, and a pad to draw the chosen one pixel by pixel."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from msgspec.structs import replace
from PySide6.QtCore import QPoint, QSize, Qt, Signal
from PySide6.QtGui import QIcon, QImage, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import (
    QFileDialog,
    QGridLayout,
    QHBoxLayout,
    QPushButton,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from panelproof.editor import theme
from panelproof.editor.hub import Hub
from panelproof.editor.naming import free_name
from panelproof.editor.sheet.entry import ChoiceEntry, LineEntry, RectangleEntry
from panelproof.ink.bitmap import from_picture
from panelproof.ink.mask import Mask
from panelproof.layout.parts import Icon, IconState
from panelproof.problem import Problem

NONE = "\0"
Rows = tuple[str, ...]


def rows_of(mask: Mask) -> Rows:
    """Return a bitmap as the layout file writes it."""
    return tuple(
        "".join("#" if row >> column & 1 else "." for column in range(mask.width)) for row in mask.rows()
    )


def resized(rows: Rows, width: int, height: int) -> Rows:
    """Return rows cut or filled up with blank pixels at the right and the bottom."""
    kept = [row[:width].ljust(width, ".") for row in rows[:height]]
    return (*kept, *["." * width for _ in range(height - len(kept))])


class Pad(QWidget):
    """A bitmap under the pointer: draw with the left button, clear with the right; arrows and space do it too."""

    drawn = Signal(tuple)

    def __init__(self) -> None:
        super().__init__()
        self.rows: Rows = ("." * 8,) * 8
        self.place = QPoint(0, 0)
        self._ink = "#"
        self._work: list[list[str]] | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Pixels of the state: arrows move, space draws or clears")
        self.setToolTip("Left button draws, right button clears. Arrows move, space draws or clears.")
        self.setMinimumHeight(180)

    def show_rows(self, rows: Rows) -> None:
        """Show another bitmap."""
        self.rows = rows
        self.place = QPoint(min(self.place.x(), len(rows[0]) - 1), min(self.place.y(), len(rows) - 1))
        self.update()

    def _cell(self) -> int:
        return max(min(self.width() // len(self.rows[0]), self.height() // len(self.rows), 24), 2)

    def _at(self, place: QPoint) -> QPoint | None:
        column, row = place.x() // self._cell(), place.y() // self._cell()
        return QPoint(column, row) if 0 <= row < len(self.rows) and 0 <= column < len(self.rows[0]) else None

    def _put(self, at: QPoint | None) -> None:
        if at is not None and self._work is not None:
            self._work[at.y()][at.x()] = self._ink
            self.place = at
            self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._work = [list(row) for row in self.rows]
        self._ink = "." if event.button() == Qt.MouseButton.RightButton else "#"
        self._put(self._at(event.position().toPoint()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        self._put(self._at(event.position().toPoint()))

    def mouseReleaseEvent(self, _: QMouseEvent) -> None:
        if self._work is not None:
            self.rows = tuple("".join(row) for row in self._work)
            self._work = None
            self.drawn.emit(self.rows)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        moves = {
            Qt.Key.Key_Left: (-1, 0),
            Qt.Key.Key_Right: (1, 0),
            Qt.Key.Key_Up: (0, -1),
            Qt.Key.Key_Down: (0, 1),
        }
        move = moves.get(Qt.Key(event.key()))
        if move:
            width, height = len(self.rows[0]), len(self.rows)
            self.place = QPoint((self.place.x() + move[0]) % width, (self.place.y() + move[1]) % height)
            self.update()
        elif event.key() == Qt.Key.Key_Space:
            work = [list(row) for row in self.rows]
            old = work[self.place.y()][self.place.x()]
            work[self.place.y()][self.place.x()] = "." if old == "#" else "#"
            self.rows = tuple("".join(row) for row in work)
            self.update()
            self.drawn.emit(self.rows)
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _: QPaintEvent) -> None:
        painter, tones, cell = QPainter(self), theme.colours(), self._cell()
        rows = self._work if self._work is not None else self.rows
        gap = 1 if cell > 5 else 0
        for y, row in enumerate(rows):
            for x, pixel in enumerate(row):
                tone = tones.text if pixel == "#" else tones.sunken
                painter.fillRect(x * cell, y * cell, cell - gap, cell - gap, tone)
        if self.hasFocus():
            painter.setPen(tones.accent)
            painter.drawRect(self.place.x() * cell, self.place.y() * cell, cell - 1, cell - 1)
            painter.drawRect(self.place.x() * cell + 1, self.place.y() * cell + 1, cell - 3, cell - 3)


class StatesEditor(QWidget):
    """All states of one icon."""

    def __init__(self, hub: Hub, commit: Callable[[tuple[IconState, ...]], Problem | None]) -> None:
        super().__init__()
        self._hub, self._commit = hub, commit
        self._icon: Icon | None = None
        self._number = 0
        self._buttons: list[QToolButton] = []
        column = QVBoxLayout(self)
        theme.space(column)
        self._strip = QGridLayout()
        theme.space(self._strip, 0, theme.TIGHT)
        column.addLayout(self._strip)
        self.pad = Pad()
        self.pad.drawn.connect(lambda rows: self._change(rows=rows, picture=None))
        self._name = LineEntry("State", lambda text: self._change(name=text))
        self._ink = ChoiceEntry("Ink", lambda ink: self._change(ink=None if ink == NONE else ink))
        self._size = RectangleEntry("Pixels", self._resize)
        for spin in self._size.spins[:2]:
            spin.hide()
        for spin in self._size.spins[2:]:
            spin.setRange(1, 512)
        for entry in (self._name, self._ink, self._size):
            column.addWidget(entry)
        column.addWidget(self.pad)
        row = QHBoxLayout()
        theme.space(row, 0, theme.TIGHT)
        for words, slot in (("Add", self._add), ("Delete", self._delete), ("From PNG…", self._import)):
            button = QPushButton(words)
            button.setAccessibleName(f"{words.strip('…')} state")
            button.clicked.connect(slot)
            row.addWidget(button)
        row.addStretch(1)
        column.addLayout(row)

    @property
    def _state(self) -> IconState:
        assert self._icon is not None
        return self._icon.states[self._number]

    def _rows(self, state: IconState) -> Rows:
        return state.rows or rows_of(self._hub.material.bitmaps[state])

    def show_icon(self, icon: Icon) -> None:
        """Show an icon's states."""
        self._icon = icon
        self._number = min(self._number, len(icon.states) - 1)
        self._fill_strip(icon)
        state = self._state
        rows = self._rows(state)
        self.pad.show_rows(rows)
        self._name.show_value(state.name)
        inks = [(ink.name, ink.name) for ink in self._hub.layout.inks]
        self._ink.offer([("as the icon", NONE), *inks])
        self._ink.show_value(state.ink or NONE)
        self._size.show_value((0, 0, len(rows[0]), len(rows)))

    def _fill_strip(self, icon: Icon) -> None:
        while len(self._buttons) < len(icon.states):
            button = QToolButton()
            button.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextUnderIcon)
            button.setCheckable(True)
            button.setIconSize(QSize(40, 40))
            number = len(self._buttons)
            button.clicked.connect(lambda _=False, number=number: self.choose(number))
            self._strip.addWidget(button, number // 4, number % 4)
            self._buttons.append(button)
        while len(self._buttons) > len(icon.states):
            button = self._buttons.pop()
            self._strip.removeWidget(button)
            button.hide()
            button.deleteLater()
        for number, (button, state) in enumerate(zip(self._buttons, icon.states, strict=True)):
            button.setText(state.name)
            button.setAccessibleName(f"State {state.name}")
            button.setIcon(_thumb(self._rows(state)))
            button.setChecked(number == self._number)

    def choose(self, number: int) -> None:
        """Bring a state onto the pad."""
        self._number = number
        if self._icon:
            self.show_icon(self._icon)

    def _put(self, state: IconState) -> Problem | None:
        assert self._icon is not None
        states = list(self._icon.states)
        states[self._number] = state
        return self._commit(tuple(states))

    def _change(self, **changes: object) -> Problem | None:
        return self._put(replace(self._state, **changes))

    def _resize(self, area: tuple[int, int, int, int]) -> Problem | None:
        return self._change(rows=resized(self._rows(self._state), area[2], area[3]), picture=None)

    def _add(self) -> None:
        assert self._icon is not None
        taken = [state.name for state in self._icon.states]
        copy = replace(self._state, name=free_name(self._state.name, taken))
        self._number = len(taken)
        if self._commit((*self._icon.states, copy)):
            self._number = 0

    def _delete(self) -> None:
        assert self._icon is not None
        if len(self._icon.states) == 1:
            self._name.tell(Problem("an icon has one state at least"))
            return
        kept = [state for number, state in enumerate(self._icon.states) if number != self._number]
        self._number = 0
        self._name.tell(self._commit(tuple(kept)))

    def _import(self) -> None:
        chosen, _ = QFileDialog.getOpenFileName(
            self, "Bring in a PNG", str(self._hub.folder), "PNG pictures (*.png)"
        )
        if chosen:
            self.bring_in(Path(chosen))

    def bring_in(self, path: Path) -> None:
        """Take the pixels of a PNG file into the chosen state."""
        try:
            rows = rows_of(from_picture(path))
        except Problem as problem:
            self._name.tell(problem)
            return
        self._name.tell(self._change(rows=rows, picture=None))


def _thumb(rows: Rows) -> QIcon:
    image = QImage(len(rows[0]), len(rows), QImage.Format.Format_ARGB32)
    image.fill(Qt.GlobalColor.transparent)
    tone = theme.colours().text
    for y, row in enumerate(rows):
        for x, pixel in enumerate(row):
            if pixel == "#":
                image.setPixelColor(x, y, tone)
    scale = max(40 // max(image.width(), image.height()), 1)
    return QIcon(QPixmap.fromImage(image.scaled(image.width() * scale, image.height() * scale)))
