"""What a new layout begins with: an empty panel, or one of the starters for the chosen panel."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QWidget

from panelproof.layout.panel import Panel
from panelproof.starters.description import descriptions, refusal
from panelproof.starters.make import EMPTY

ROW = 22
NAME_ROLE = Qt.ItemDataRole.UserRole + 1


class StarterList(QListWidget):
    """Every starter; those that are not for the panel cannot be chosen, and their tool tip says why."""

    picked = Signal()
    """Another starter is chosen."""
    agreed = Signal()
    """One was chosen by a double click or the Enter key."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Begin with")
        self._add(EMPTY, "An empty panel", "One screen with nothing on it.")
        for name, one in descriptions().items():
            self._add(name, one.title, one.purpose)
        self.setCurrentRow(0)
        self.currentItemChanged.connect(self.picked)
        self.itemActivated.connect(lambda _: self.agreed.emit())

    def _add(self, name: str, title: str, purpose: str) -> None:
        item = QListWidgetItem(title)
        item.setData(NAME_ROLE, name)
        item.setToolTip(purpose)
        item.setSizeHint(QSize(0, ROW))
        self.addItem(item)

    def offer(self, panel: Panel | None) -> None:
        """Let only the starters for a panel be chosen; where the chosen one is not, choose the empty panel."""
        for row in range(1, self.count()):
            item = self.item(row)
            one = descriptions()[item.data(NAME_ROLE)]
            reason = "no panel is chosen" if panel is None else refusal(one.claims, panel)
            item.setToolTip(one.purpose if reason is None else f"This starter {reason}.")
            flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
            item.setFlags(flags if reason is None else Qt.ItemFlag.NoItemFlags)
        if not self.currentItem().flags() & Qt.ItemFlag.ItemIsEnabled:
            self.setCurrentRow(0)

    def choose(self, name: str) -> None:
        """Choose a starter by its name."""
        for row in range(self.count()):
            if self.item(row).data(NAME_ROLE) == name and self.item(row).flags() & Qt.ItemFlag.ItemIsEnabled:
                self.setCurrentRow(row)

    def name(self) -> str:
        """Return the name of the chosen starter."""
        return str(self.currentItem().data(NAME_ROLE))

    def offered(self) -> list[str]:
        """Return the names of the starters that can be chosen."""
        items = [self.item(row) for row in range(self.count())]
        return [item.data(NAME_ROLE) for item in items if item.flags() & Qt.ItemFlag.ItemIsEnabled]
