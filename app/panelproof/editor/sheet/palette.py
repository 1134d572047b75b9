"""The palette of an indexed panel: what each of its codes shows, in order."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QSignalBlocker
from PySide6.QtGui import QColor, QIcon, QPixmap
from PySide6.QtWidgets import QColorDialog, QHBoxLayout, QListWidget, QPushButton, QVBoxLayout, QWidget

from panelproof.editor import theme
from panelproof.editor.sheet.entry import LineEntry
from panelproof.problem import Problem

LEAST, MOST = 2, 256
NEW = "#c01818"
Palette = tuple[str, ...]


class PaletteEditor(QWidget):
    """The colours of a palette; the place in the list is the code that the panel is sent."""

    def __init__(self, commit: Callable[[Palette], Problem | None]) -> None:
        super().__init__()
        self._commit = commit
        self._palette: Palette = ()
        column = QVBoxLayout(self)
        theme.space(column, 0, theme.UNIT)
        self.list = QListWidget()
        self.list.setAccessibleName("Palette")
        self.list.setMaximumHeight(130)
        self.list.currentRowChanged.connect(lambda _: self._chosen())
        column.addWidget(self.list)
        row = QHBoxLayout()
        theme.space(row, 0, theme.TIGHT)
        self.buttons: dict[str, QPushButton] = {}
        for words, slot in (
            ("Add", self._add), ("Delete", self._delete),
            ("Up", lambda: self._move(-1)), ("Down", lambda: self._move(1)),
        ):  # fmt: skip
            button = QPushButton(words)
            button.setAccessibleName(f"{words} colour of the palette")
            button.clicked.connect(slot)
            self.buttons[words] = button
            row.addWidget(button)
        row.addStretch(1)
        column.addLayout(row)
        self.colour = LineEntry("Shows", self._set_colour, "#rrggbb")
        column.addWidget(self.colour)
        self.pick = QPushButton("Choose…")
        self.pick.setAccessibleName("Choose the colour of the palette")
        self.pick.clicked.connect(self._ask)
        column.addWidget(self.pick)

    @property
    def _number(self) -> int:
        return min(max(self.list.currentRow(), 0), len(self._palette) - 1)

    def show_palette(self, palette: Palette) -> None:
        """Show a palette as it is now."""
        self.setVisible(bool(palette))
        if palette != self._palette:
            chosen = self.list.currentRow()
            self._palette = palette
            with QSignalBlocker(self.list):
                self.list.clear()
                for code, colour in enumerate(palette):
                    self.list.addItem(f"{code}: {colour}")
                    pixmap = QPixmap(16, 16)
                    pixmap.fill(QColor(colour))
                    self.list.item(code).setIcon(QIcon(pixmap))
                self.list.setCurrentRow(min(max(chosen, 0), len(palette) - 1))
        if palette:
            self._chosen()

    def _chosen(self) -> None:
        if not self._palette:
            return
        self.colour.show_value(self._palette[self._number])
        self.buttons["Add"].setEnabled(len(self._palette) < MOST)
        self.buttons["Delete"].setEnabled(len(self._palette) > LEAST)
        self.buttons["Up"].setEnabled(self._number > 0)
        self.buttons["Down"].setEnabled(self._number < len(self._palette) - 1)

    def _put(self, colours: list[str], row: int) -> Problem | None:
        before = self.list.currentRow()
        with QSignalBlocker(self.list):
            self.list.setCurrentRow(min(row, self.list.count() - 1))
        problem = self._commit(tuple(colours))
        if problem:
            with QSignalBlocker(self.list):
                self.list.setCurrentRow(before)
        else:
            self.list.setCurrentRow(row)
        self.colour.tell(problem)
        return problem

    def _set_colour(self, text: str) -> Problem | None:
        text = text if text.startswith("#") else f"#{text}"
        if not QColor.isValidColorName(text) or len(text) != 7:
            return Problem("write a colour as # and six hexadecimal digits, such as #c01818")
        colours = list(self._palette)
        colours[self._number] = text.lower()
        return self._put(colours, self._number)

    def _ask(self) -> None:
        now = QColor(self._palette[self._number])
        picked = QColorDialog.getColor(now, self, f"Colour that code {self._number} shows")
        if picked.isValid():
            self._set_colour(picked.name())

    def _add(self) -> None:
        self._put([*self._palette, NEW], len(self._palette))

    def _delete(self) -> None:
        gone = self._number
        self._put([colour for code, colour in enumerate(self._palette) if code != gone], max(gone - 1, 0))

    def _move(self, by: int) -> None:
        colours, here = list(self._palette), self._number
        there = here + by
        if 0 <= there < len(colours):
            colours[here], colours[there] = colours[there], colours[here]
            self._put(colours, there)
