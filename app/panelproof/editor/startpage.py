"""What an empty window shows: a panel to begin with, a file to open, or one of the recent ones."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from panelproof.editor import theme
from panelproof.editor.newdialog import NewForm
from panelproof.editor.session import Session


class StartPage(QWidget):
    """The page of a window without a document."""

    created = Signal(object)
    """A new layout was made."""
    opened = Signal(object)
    """A recent file was chosen: its path."""
    browsed = Signal()
    """A file is to be looked for."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        title = QLabel("What does your screen have to show?")
        font = theme.font("heading")
        font.setPointSizeF(font.pointSizeF() * 1.5)
        title.setFont(font)
        quiet = QLabel("Choose the panel, put on it what it shows, and see at once what will not fit.")
        theme.set_role(quiet, "quiet")
        self.form = NewForm()
        self.create_button = QPushButton("&Create the layout")
        self.create_button.setDefault(True)
        self.create_button.setAutoDefault(True)
        self.browse_button = QPushButton("&Open a file…")
        self.recent = QListWidget()
        self.recent.setAccessibleName("Recent files")
        for path in session.recent():
            item = QListWidgetItem(f"{path.name}\n{_shortened(path.parent)}")
            item.setData(Qt.ItemDataRole.UserRole, str(path))
            item.setToolTip(str(path))
            self.recent.addItem(item)
        self._arrange(title, quiet)
        self.create_button.clicked.connect(self._create)
        self.form.agreed.connect(self._create)
        self.form.changed.connect(lambda: self.create_button.setEnabled(self.form.ready()))
        self.browse_button.clicked.connect(self.browsed)
        self.recent.itemActivated.connect(self._open)
        self.recent.itemClicked.connect(self._open)
        self.setFocusProxy(self.form.list)

    def _arrange(self, title: QLabel, quiet: QLabel) -> None:
        new = QVBoxLayout()
        theme.space(new, 0, theme.GAP)
        new.addWidget(theme.heading("New layout"))
        new.addWidget(self.form, 1)
        new.addWidget(self.create_button, 0, Qt.AlignmentFlag.AlignRight)
        old = QVBoxLayout()
        theme.space(old, 0, theme.GAP)
        old.addWidget(theme.heading("Go on with"))
        if self.recent.count():
            old.addWidget(self.recent, 1)
        else:
            self.recent.hide()
            hint = QLabel("Files you open or save are listed here. You can drop one onto the window, too.")
            hint.setWordWrap(True)
            hint.setAlignment(Qt.AlignmentFlag.AlignTop)
            theme.set_role(hint, "quiet")
            old.addWidget(hint, 1)
        old.addWidget(self.browse_button, 0, Qt.AlignmentFlag.AlignRight)
        sides = QHBoxLayout()
        theme.space(sides, 0, theme.GAP * 3)
        sides.addLayout(new, 5)
        sides.addLayout(old, 3)
        page = QWidget()
        page.setMaximumSize(1080, 680)
        column = QVBoxLayout(page)
        theme.space(column, theme.GAP * 2, theme.UNIT)
        column.addWidget(title)
        column.addWidget(quiet)
        column.addSpacing(theme.GAP)
        column.addLayout(sides, 1)
        outer = QHBoxLayout(self)
        theme.space(outer, 0, 0)
        outer.addWidget(page)

    def _create(self) -> None:
        layout = self.form.layout_made()
        if layout is not None:
            self.created.emit(layout)

    def _open(self, item: QListWidgetItem) -> None:
        self.opened.emit(Path(item.data(Qt.ItemDataRole.UserRole)))


def _shortened(folder: Path) -> str:
    try:
        return str(Path("~") / folder.relative_to(Path.home()))
    except ValueError:
        return str(folder)
