"""The screen's parts in drawing order, with the verdict on each."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QItemSelection, QItemSelectionModel, QPoint, Qt, Signal
from PySide6.QtGui import QDropEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractItemView, QComboBox, QHBoxLayout, QListView, QVBoxLayout, QWidget

from panelproof.editor import edits, theme
from panelproof.editor.hub import Hub
from panelproof.editor.partmodel import Index, PartDelegate, PartModel, switches
from panelproof.editor.partrows import Figure, Row, carried, figure, in_order, stepped, verdict
from panelproof.problem import Problem
from panelproof.proof.extent import Extent, stage

EMPTY = "Nothing stands on this screen yet.\nDrag a part from below onto the glass, or press its button."


class PartRows(QListView):
    """The list itself: switches take a press before the row does, and rows can be carried."""

    switched = Signal(str, str)
    """A row's switch was pressed: `hidden` or `locked`, and the part's name."""
    carried_to = Signal(int)
    """The chosen rows were dropped before the row of that number."""
    stepped_by = Signal(int)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Parts in drawing order")
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setEditTriggers(
            QAbstractItemView.EditTrigger.EditKeyPressed | QAbstractItemView.EditTrigger.DoubleClicked
        )
        self.setDragDropMode(QAbstractItemView.DragDropMode.InternalMove)
        self.setUniformItemSizes(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.viewport().setMouseTracking(True)
        self.viewport().setAttribute(Qt.WidgetAttribute.WA_Hover)

    def _switch_at(self, point: QPoint) -> tuple[str, str] | None:
        index = self.indexAt(point)
        if not index.isValid():
            return None
        shown, locked = switches(self.visualRect(index))
        for area, what in ((shown, "hidden"), (locked, "locked")):
            if area.contains(point):
                return what, index.data()
        return None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Press a switch, or choose a row."""
        found = self._switch_at(event.position().toPoint())
        if found and event.button() == Qt.MouseButton.LeftButton:
            self.switched.emit(*found)
        else:
            super().mousePressEvent(event)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Do not rename by a second quick press on a switch."""
        found = self._switch_at(event.position().toPoint())
        if found:
            self.switched.emit(*found)
        else:
            super().mouseDoubleClickEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Carry the chosen rows up or down with Ctrl and an arrow."""
        steps = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}
        if event.modifiers() == Qt.KeyboardModifier.ControlModifier and event.key() in steps:
            self.stepped_by.emit(steps[Qt.Key(event.key())])
            return
        super().keyPressEvent(event)

    def dataChanged(self, first: Index, last: Index, roles: Sequence[int] = ()) -> None:
        """Paint the row that changed and no other: all are equally high, so that none has to be laid out anew."""
        QAbstractItemView.dataChanged(self, first, last, roles)

    def drop_row(self, point: QPoint) -> int:
        """Return the number of the row before which a drop at a point puts what is carried."""
        index = self.indexAt(point)
        if not index.isValid():
            return self.model().rowCount()
        return index.row() + (point.y() > self.visualRect(index).center().y())

    def dropEvent(self, event: QDropEvent) -> None:
        """Put the chosen rows where they are dropped."""
        if event.source() is self:
            self.carried_to.emit(self.drop_row(event.position().toPoint()))
            # A copy, in the view's eyes: it would else take the rows away by itself.
            event.setDropAction(Qt.DropAction.CopyAction)
            event.accept()
        self.stopAutoScroll()
        self.setState(QAbstractItemView.State.NoState)
        self.viewport().update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Say what to do where there is nothing yet."""
        super().paintEvent(event)
        if not self.model().rowCount():
            painter = QPainter(self.viewport())
            painter.setPen(theme.colours().quiet)
            painter.setFont(theme.font("small"))
            flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
            painter.drawText(self.viewport().rect().adjusted(12, 12, -12, -12), flags, EMPTY)


class PartList(QWidget):
    """The screen to look at, and its parts."""

    def __init__(self, hub: Hub, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._hub = hub
        self._figures: dict[Extent, Figure] = {}
        self._following = False
        self.screens = QComboBox()
        self.screens.setAccessibleName("Screen")
        self.screens.setToolTip("The screen that is shown")
        self.rows = PartRows(self)
        self.model = PartModel(self)
        self.rows.setModel(self.model)
        self.rows.setItemDelegate(PartDelegate(self.rows))
        top = QHBoxLayout()
        theme.space(top)
        top.addWidget(theme.heading("Screen"))
        top.addWidget(self.screens, 1)
        column = QVBoxLayout(self)
        theme.space(column)
        column.addLayout(top)
        column.addWidget(self.rows, 1)
        self.setFocusProxy(self.rows)
        self.rows.switched.connect(self._switch)
        self.rows.carried_to.connect(self._carry)
        self.rows.stepped_by.connect(self.step)
        self.model.renamed.connect(self._rename)
        self.rows.selectionModel().selectionChanged.connect(self._chosen)
        self.screens.activated.connect(lambda _: hub.show_screen(self.screens.currentText()))
        for signal in (hub.layout_changed, hub.screen_changed, hub.findings_changed, hub.view_changed):
            signal.connect(self.renew)
        hub.selection_changed.connect(self._follow)
        theme.watch(self, self.rows.viewport().update)
        self.renew()

    # -- showing ---------------------------------------------------------------------------------------

    def renew(self) -> None:
        """Show the parts as they are now."""
        self._renew_screens()
        if self.model.show_rows(self._rows()):
            self._follow()

    def _renew_screens(self) -> None:
        names = [screen.name for screen in self._hub.layout.screens]
        shown = self._hub.screen.name if self._hub.screen else ""
        if [self.screens.itemText(number) for number in range(self.screens.count())] != names:
            self.screens.clear()
            self.screens.addItems(names)
        self.screens.setCurrentIndex(names.index(shown) if shown in names else -1)
        self.screens.setEnabled(len(names) > 1)

    def _rows(self) -> tuple[Row, ...]:
        hub, screen = self._hub, self._hub.screen
        if screen is None:
            return ()
        extents = stage(hub.material, screen).extents
        self._figures = {extent: self._figures.get(extent) or figure(extent) for extent in extents}
        return tuple(self._row(extent, screen.name) for extent in extents)

    def _row(self, extent: Extent, screen: str) -> Row:
        hub, name = self._hub, extent.name
        level, tip = verdict(name, screen, hub.findings) if hub.findings_current else ("pending", "")
        return Row(name, self._figures[extent], level, tip, hub.is_hidden(name), hub.is_locked(name))

    # -- choosing --------------------------------------------------------------------------------------

    def _follow(self) -> None:
        """Choose the rows of the parts that are chosen on the glass."""
        self._following = True
        chosen = QItemSelection()
        rows = [number for number, row in enumerate(self.model.rows) if row.name in self._hub.selection]
        for row in rows:
            chosen.select(self.model.index(row), self.model.index(row))
        self.rows.selectionModel().select(chosen, QItemSelectionModel.SelectionFlag.ClearAndSelect)
        if rows and self.rows.currentIndex().row() not in rows:
            self.rows.selectionModel().setCurrentIndex(
                self.model.index(rows[-1]), QItemSelectionModel.SelectionFlag.NoUpdate
            )
        if rows:
            self.rows.scrollTo(self.model.index(rows[0]))
        self._following = False

    def _chosen(self) -> None:
        if not self._following:
            self._hub.select(index.data() for index in self.rows.selectedIndexes())

    # -- changing --------------------------------------------------------------------------------------

    def _switch(self, what: str, name: str) -> None:
        if what == "hidden":
            self._hub.set_hidden(name, not self._hub.is_hidden(name))
        else:
            self._hub.set_locked(name, not self._hub.is_locked(name))

    def _carry(self, index: int) -> None:
        self._reorder(carried(self.model.names(), self._hub.selection, index), "change the drawing order")

    def step(self, step: int) -> None:
        """Let the chosen parts be drawn one place earlier (-1) or later (1)."""
        words = "earlier" if step < 0 else "later"
        self._reorder(stepped(self.model.names(), self._hub.selection, step), f"draw {words}")

    def to_end(self, *, last: bool) -> None:
        """Let the chosen parts be drawn last, or first."""
        names = self.model.names()
        self._reorder(
            carried(names, self._hub.selection, len(names) if last else 0),
            "draw last" if last else "draw first",
        )

    def _reorder(self, order: list[str], title: str) -> None:
        if self._hub.screen is not None:
            self._hub.apply(title, in_order(self._hub.layout, self._hub.screen, order))

    def rename_chosen(self) -> None:
        """Let the name of the one chosen part be written anew."""
        rows = self.rows.selectedIndexes()
        if len(rows) == 1:
            self.rows.setFocus()
            self.rows.setCurrentIndex(rows[0])
            self.rows.edit(rows[0])

    def _rename(self, old: str, new: str) -> None:
        screen = self._hub.screen
        if screen is None:
            return
        chosen = self._hub.selection
        try:
            layout = edits.rename_part(self._hub.layout, screen.name, old, new)
        except Problem as problem:
            self._hub.told.emit(problem.message)
            return
        if self._hub.apply(f"rename `{old}` to `{new}`", layout) is None:
            self._hub.select(new if name == old else name for name in chosen)
