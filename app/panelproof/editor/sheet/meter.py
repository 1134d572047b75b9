"""A meter's range and its limits, each limit a row."""

from __future__ import annotations

from collections.abc import Callable

from msgspec.structs import replace
from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from panelproof.editor import theme
from panelproof.editor.hub import Hub
from panelproof.editor.sheet.entry import HEIGHT, NumberEntry, Spin
from panelproof.layout import level
from panelproof.layout.parts import Meter, MeterLimit
from panelproof.problem import Problem

NONE = "\0"
LEAST, GREATEST = -(2**31) + 1, 2**31 - 1
MOST = 16
GROWING = (("to the right", "right"), ("to the left", "left"), ("upwards", "up"), ("downwards", "down"))

Commit = Callable[[str, object], Problem | None]


class _LimitRow(QWidget):
    """One limit: its value, the bar's ink from there, whether a line marks it."""

    def __init__(self, number: int, changed: Callable[[int, MeterLimit | None], None]) -> None:
        super().__init__()
        self._limit = MeterLimit(0)
        self.value = Spin(LEAST, GREATEST)
        self.ink = QComboBox()
        self.mark = QCheckBox("mark")
        self.away = QToolButton()
        self.away.setText("✕")
        title = f"Limit {number + 1}"
        self.value.setAccessibleName(f"{title}: value")
        self.ink.setAccessibleName(f"{title}: ink from there")
        self.ink.setToolTip("The bar's ink from this value upwards")
        self.mark.setAccessibleName(f"{title}: marked by a line")
        self.mark.setToolTip("A line one pixel thick stands at the value")
        self.away.setAccessibleName(f"Delete limit {number + 1}")
        self.away.setToolTip("Delete this limit")
        row = QHBoxLayout(self)
        theme.space(row, 0, theme.TIGHT)
        for control, stretch in ((self.value, 2), (self.ink, 2), (self.mark, 0), (self.away, 0)):
            control.setMinimumHeight(HEIGHT)
            row.addWidget(control, stretch)
        self.value.valueChanged.connect(lambda at: changed(number, replace(self._limit, at=at)))
        self.ink.activated.connect(lambda: changed(number, replace(self._limit, ink=self._named())))
        self.mark.clicked.connect(lambda on: changed(number, replace(self._limit, mark=on)))
        self.away.clicked.connect(lambda: changed(number, None))

    def _named(self) -> str | None:
        chosen = self.ink.currentData()
        return None if chosen == NONE else str(chosen)

    def show_limit(self, limit: MeterLimit, inks: list[str]) -> None:
        """Show a limit as it is now."""
        self._limit = limit
        with QSignalBlocker(self.value), QSignalBlocker(self.ink), QSignalBlocker(self.mark):
            self.value.setValue(limit.at)
            self.ink.clear()
            self.ink.addItem("ink as below", NONE)
            for ink in inks:
                self.ink.addItem(ink, ink)
            self.ink.setCurrentIndex(self.ink.findData(limit.ink or NONE))
            self.mark.setChecked(limit.mark)


class RangeEditor(QWidget):
    """The range of a meter and its limits; `commit` sets one of the meter's keys."""

    def __init__(self, hub: Hub, commit: Commit) -> None:
        super().__init__()
        self._hub, self._commit = hub, commit
        self._meter: Meter | None = None
        column = QVBoxLayout(self)
        theme.space(column, 0, theme.UNIT)
        self.least = NumberEntry("Empty at", lambda value: commit("least", value), LEAST, GREATEST, "")
        self.greatest = NumberEntry("Full at", lambda value: commit("greatest", value), LEAST, GREATEST, "")
        for entry in (self.least, self.greatest):
            column.addWidget(entry)
        self.facts = QLabel()
        self.facts.setWordWrap(True)
        theme.set_role(self.facts, "small")
        column.addWidget(self.facts)
        self.rows: list[_LimitRow] = []
        self._limits = QVBoxLayout()
        theme.space(self._limits, 0, theme.TIGHT)
        column.addLayout(self._limits)
        self.complaint = QLabel()
        self.complaint.setWordWrap(True)
        self.complaint.setVisible(False)
        theme.set_role(self.complaint, "small")
        column.addWidget(self.complaint)
        self.add = QPushButton("Add limit")
        self.add.clicked.connect(self._add)
        row = QHBoxLayout()
        theme.space(row)
        row.addWidget(self.add)
        row.addStretch(1)
        column.addLayout(row)

    def show_meter(self, meter: Meter) -> None:
        """Show a meter as it is now."""
        self._meter = meter
        self.least.show_value(meter.least)
        self.greatest.show_value(meter.greatest)
        length = level.length(meter)
        self.facts.setText(f"one of its {length} px stands for {(meter.greatest - meter.least) / length:.4g}")
        while len(self.rows) < len(meter.limits):
            self.rows.append(_LimitRow(len(self.rows), self._changed))
            self._limits.addWidget(self.rows[-1])
        while len(self.rows) > len(meter.limits):
            gone = self.rows.pop()
            self._limits.removeWidget(gone)
            gone.hide()
            gone.deleteLater()
        inks = [ink.name for ink in self._hub.layout.inks]
        for row, limit in zip(self.rows, meter.limits, strict=True):
            row.show_limit(limit, inks)
        self.add.setEnabled(len(meter.limits) < MOST)

    def tell(self, problem: Problem | None) -> None:
        """Show why a limit was not taken, or that it was."""
        self.complaint.setText(f"✕ {problem.message}" if problem else "")
        self.complaint.setStyleSheet(f"color: {theme.colours().fault.name()}" if problem else "")
        self.complaint.setVisible(problem is not None)

    def _changed(self, number: int, limit: MeterLimit | None) -> None:
        assert self._meter is not None
        limits = list(self._meter.limits)
        limits[number : number + 1] = [] if limit is None else [limit]
        problem = self._commit("limits", tuple(sorted(limits, key=lambda one: one.at)))
        if problem:
            self.show_meter(self._meter)
        self.tell(problem)

    def _add(self) -> None:
        """Add a limit half way from the highest to the full end, where there is a value left."""
        assert self._meter is not None
        meter = self._meter
        taken = [limit.at for limit in meter.limits]
        highest = max(taken, default=meter.least)
        at = highest + (meter.greatest - highest + 1) // 2
        if at in taken:
            at = next(
                (value for value in range(meter.greatest, meter.least, -1) if value not in taken), meter.least
            )
        if at in taken:
            self.tell(Problem("every value of the range is a limit already"))
            return
        added = sorted((*meter.limits, MeterLimit(at)), key=lambda one: one.at)
        self.tell(self._commit("limits", tuple(added)))
