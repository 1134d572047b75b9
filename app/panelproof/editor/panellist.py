"""The list of panels in common use, by kind, that can be searched."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QItemSelectionModel, QObject, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QStandardItem, QStandardItemModel
from PySide6.QtWidgets import QAbstractItemView, QLineEdit, QListView, QVBoxLayout, QWidget

from panelproof.editor import theme
from panelproof.layout.panel import Panel
from panelproof.starters.panels import panels

OWN = "A size of your own"
ROW = 22
PANEL_ROLE = Qt.ItemDataRole.UserRole + 1
WORDS_ROLE = Qt.ItemDataRole.UserRole + 2


class PanelList(QWidget):
    """A line to search in, and the panels under the kinds of glass."""

    chosen = Signal()
    """Another entry is chosen."""
    agreed = Signal()
    """An entry was chosen by a double click or the Enter key."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.search = QLineEdit()
        self.search.setPlaceholderText("Search: 240, round, e-paper, 1.3 …")
        self.search.setAccessibleName("Search the panels")
        self.search.setClearButtonEnabled(True)
        self.view = QListView()
        self.view.setAccessibleName("Panels")
        self.view.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self._fill()
        column = QVBoxLayout(self)
        theme.space(column, 0, theme.UNIT)
        column.addWidget(self.search)
        column.addWidget(self.view, 1)
        self.setFocusProxy(self.view)
        self.search.installEventFilter(self)
        self.search.textChanged.connect(self._filter)
        self.view.activated.connect(lambda _: self.agreed.emit())
        self.view.selectionModel().currentChanged.connect(self.chosen)

    def _fill(self) -> None:
        self._model = QStandardItemModel(self.view)
        own = QStandardItem(OWN)
        own.setSizeHint(QSize(0, ROW))
        self._model.appendRow(own)
        kind = ""
        for listed in panels():
            if listed.kind != kind:
                kind = listed.kind
                title = QStandardItem(kind[0].upper() + kind[1:])
                title.setFlags(Qt.ItemFlag.NoItemFlags)
                title.setFont(theme.font("heading"))
                title.setSizeHint(QSize(0, theme.ROW))
                self._model.appendRow(title)
            row = QStandardItem(f"    {listed.title}")
            row.setAccessibleText(f"{listed.kind}, {listed.title}")
            row.setData(listed.panel, PANEL_ROLE)
            row.setData(
                f"{listed.id} {listed.kind} {listed.title} {listed.size}".replace(" × ", "x").lower(),
                WORDS_ROLE,
            )
            row.setToolTip(listed.id)
            row.setSizeHint(QSize(0, ROW))
            self._model.appendRow(row)
        self.view.setModel(self._model)

    def _filter(self, text: str) -> None:
        """Show the entries that hold every word of the search, and the kinds that have any."""
        words = text.lower().replace(" x ", "x").replace("×", "x").split()
        heading = -1
        for row in range(1, self._model.rowCount()):
            held = self._model.item(row).data(WORDS_ROLE)
            if held is None:
                heading = row
                self.view.setRowHidden(row, bool(words))
                continue
            fits = all(word in held for word in words)
            self.view.setRowHidden(row, not fits)
            if fits:
                self.view.setRowHidden(heading, False)

    def shown(self) -> list[str]:
        """Return the titles of the panels that the search lets through."""
        rows = range(1, self._model.rowCount())
        return [
            self._model.item(row).text().strip()
            for row in rows
            if self._model.item(row).data(WORDS_ROLE) is not None and not self.view.isRowHidden(row)
        ]

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Let the Down key lead from the search to its first panel."""
        if (
            watched is self.search
            and isinstance(event, QKeyEvent)
            and event.type() == QEvent.Type.KeyPress
            and event.key() == Qt.Key.Key_Down
        ):
            titles = self.shown()
            if titles:
                self.choose(titles[0])
                self.view.setFocus()
            return True
        return super().eventFilter(watched, event)

    def choose(self, title: str) -> None:
        """Choose the entry of that title."""
        for row in range(self._model.rowCount()):
            if self._model.item(row).text().strip() == title:
                index = self._model.index(row, 0)
                self.view.selectionModel().setCurrentIndex(
                    index, QItemSelectionModel.SelectionFlag.ClearAndSelect
                )
                self.view.scrollTo(index)

    def title(self) -> str:
        """Return the title of the chosen entry."""
        return str(self.view.currentIndex().data() or "").strip()

    def panel(self) -> Panel | None:
        """Return the chosen panel, None for a size of one's own."""
        panel = self.view.currentIndex().data(PANEL_ROLE)
        return panel if isinstance(panel, Panel) else None
