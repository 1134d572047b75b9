"""The window's three columns: the parts and the tray, the glass with its moments and findings, the sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QByteArray, Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QSplitter, QVBoxLayout, QWidget

from panelproof.editor import signs, theme
from panelproof.editor.findings import FindingsView
from panelproof.editor.glass import Glass
from panelproof.editor.partlist import PartList
from panelproof.editor.sheet import Sheet
from panelproof.editor.strip import Strip
from panelproof.editor.tray import Tray
from panelproof.proof.finding import Finding

if TYPE_CHECKING:
    from panelproof.editor.hub import Hub

COLUMNS = (252, 516, 332)
"""Widths at the smallest window; the middle one takes what is more."""

LEAST_MIDDLE = 400


class Banner(QFrame):
    """A question that can wait, over the panes: the file was changed by another program."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._sign, self.words = QLabel(), QLabel()
        self.words.setWordWrap(True)
        self.load, self.keep = QPushButton("&Load theirs"), QPushButton("&Keep mine")
        self.elsewhere = QPushButton("Save &elsewhere…")
        self.load.setToolTip("Show the file as it is on the disk now; undo brings your own work back")
        self.keep.setToolTip("Go on with your own work; the next save overwrites theirs")
        row = QHBoxLayout(self)
        row.setContentsMargins(theme.GAP, theme.UNIT, theme.GAP, theme.UNIT)
        row.setSpacing(theme.UNIT)
        row.addWidget(self._sign)
        row.addWidget(self.words, 1)
        for button in (self.load, self.keep, self.elsewhere):
            row.addWidget(button)
        self.setAutoFillBackground(True)
        theme.watch(self, self._draw)
        self._draw()
        self.hide()

    def _draw(self) -> None:
        tones = theme.colours()
        self._sign.setPixmap(signs.icon("caution").pixmap(16, 16))
        self.setStyleSheet(
            f"Banner {{ background: {tones.sunken.name()}; border-bottom: 2px solid {tones.caution.name()}; }}"
        )

    def ask(self, name: str, *, unsaved: bool) -> None:
        """Ask what to do about a file of that name."""
        more = " You have unsaved work on it too." if unsaved else ""
        self.words.setText(f"{name} was changed by another program.{more}")
        self.words.setAccessibleName(self.words.text())
        self.show()


class Bench(QWidget):
    """All panes of one document, and what passes between them."""

    def __init__(self, hub: Hub, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._hub = hub
        self.parts, self.tray = PartList(hub), Tray(hub)
        self.strip, self.glass = Strip(hub), Glass(hub)
        self.findings, self.sheet = FindingsView(hub), Sheet(hub)
        self.columns = QSplitter(Qt.Orientation.Horizontal)
        self.middle = QSplitter(Qt.Orientation.Vertical)
        self._arrange()
        self.findings.shown.connect(self.show_finding)
        self.findings.cleared.connect(self.glass.clear_finding)
        self.glass.part_opened.connect(lambda _: self.sheet.setFocus(Qt.FocusReason.ShortcutFocusReason))

    def _arrange(self) -> None:
        self.middle.addWidget(_column(0, self.strip, self.glass))
        self.middle.addWidget(_column(theme.GAP, self.findings))
        self.columns.addWidget(_column(theme.GAP, self.parts, self.tray))
        self.columns.addWidget(self.middle)
        self.columns.addWidget(_column(0, self.sheet))
        for splitter, stretched in ((self.columns, 1), (self.middle, 0)):
            splitter.setChildrenCollapsible(False)
            splitter.setHandleWidth(1)
            for number in range(splitter.count()):
                splitter.setStretchFactor(number, int(number == stretched))
        self.middle.setMinimumWidth(LEAST_MIDDLE)
        self.columns.setSizes(list(COLUMNS))
        self.middle.setSizes([530, 150])
        row = QVBoxLayout(self)
        theme.space(row, 0, 0)
        row.addWidget(self.columns)

    def panes(self) -> tuple[QWidget, ...]:
        """Return the panes in the order in which the keyboard goes round them."""
        first = next(iter(self.tray.buttons.values()))
        return self.parts, first, self.strip, self.glass, self.findings, self.sheet

    def go_round(self, step: int) -> None:
        """Give the keyboard to the next pane, or with -1 the one before."""
        panes = self.panes()
        focused = self.window().focusWidget()
        holds = [pane is focused or (focused is not None and pane.isAncestorOf(focused)) for pane in panes]
        if focused is not None and self.tray.isAncestorOf(focused):
            holds[1] = True
        here = holds.index(True) if any(holds) else (-1 if step > 0 else 0)
        panes[(here + step) % len(panes)].setFocus(Qt.FocusReason.TabFocusReason)

    def show_finding(self, finding: Finding) -> None:
        """Bring a finding's screen onto the glass, choose its part, and mark its pixels."""
        self._hub.show_screen(finding.screen)
        if self._hub.part(finding.part) is not None:
            self._hub.select([finding.part])
        self.glass.show_finding(finding)

    def step_finding(self, step: int) -> None:
        """Choose the next finding, or with -1 the one before."""
        rows = self.findings.model.rowCount()
        if rows:
            now = self.findings.list.currentIndex().row()
            here = now if now >= 0 else (-1 if step > 0 else 0)
            self.findings.list.setCurrentIndex(self.findings.model.index((here + step) % rows))

    def look(self) -> dict[str, str]:
        """Return what is shown and how much enlarged, to be remembered."""
        hub, canvas = self._hub, self.glass.canvas
        return {
            "screen": hub.screen.name if hub.screen else "",
            "moment": hub.moment_name,
            "second": hub.second_name,
            "zoom": "fit" if canvas.fitting else str(canvas.zoom),
        }

    def look_at(self, look: dict[str, str]) -> None:
        """Show what was remembered, as far as it is still there."""
        hub = self._hub
        if not look:
            self.glass.fit()
            return
        hub.show_screen(look.get("screen", ""))
        names = [moment.name for moment in hub.moments]
        if look.get("moment") in names:
            second = look.get("second", "")
            hub.show_moment(look["moment"], second if second in names else "")
        zoom = look.get("zoom", "")
        if zoom.isdecimal() and zoom.isascii() and len(zoom) < 3:
            self.glass.set_zoom(int(zoom))
        else:
            self.glass.fit()

    def sizes(self) -> dict[str, str]:
        """Return the panes' sizes, to be remembered."""
        return {"columns": _text(self.columns.saveState()), "middle": _text(self.middle.saveState())}

    def restore(self, columns: str, middle: str) -> None:
        """Give the panes the sizes that were remembered."""
        for splitter, text in ((self.columns, columns), (self.middle, middle)):
            if text:
                splitter.restoreState(QByteArray.fromBase64(text.encode()))


def _text(state: QByteArray) -> str:
    return bytes(state.toBase64().data()).decode()


def _column(margin: int, *widgets: QWidget) -> QWidget:
    holder = QWidget()
    column = QVBoxLayout(holder)
    theme.space(column, margin, margin)
    column.setContentsMargins(margin, margin * 3 // 4, margin, margin * 3 // 4)
    for widget in widgets:
        column.addWidget(widget)
    column.setStretch(0 if len(widgets) == 1 or margin else 1, 1)
    return holder
