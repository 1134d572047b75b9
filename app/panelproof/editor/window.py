"""The window: its menus, the page it shows, and what belongs to no single pane.

Nothing heavy is imported here: the window is painted first, and the document comes right after.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QByteArray, QEvent, Qt, Signal
from PySide6.QtGui import QAction, QCloseEvent, QDragEnterEvent, QDropEvent, QPaintEvent
from PySide6.QtWidgets import QLabel, QMainWindow, QMessageBox, QStackedWidget, QVBoxLayout, QWidget

from panelproof import __version__
from panelproof.editor import theme
from panelproof.editor.menus import Menus
from panelproof.editor.session import Session, state_folder

if TYPE_CHECKING:
    from panelproof.editor.asking import Ask
    from panelproof.editor.bench import Banner, Bench
    from panelproof.editor.desk import Desk
    from panelproof.editor.hub import Hub
    from panelproof.editor.recovery import Left

LEAST = 1000, 640
TELL_MS = 10_000

COLOURS = {
    "rgb565": "16-bit colour",
    "mono": "one colour",
    "grey4": "4 greys",
    "grey16": "16 greys",
    "indexed": "a palette",
}


class MainWindow(QMainWindow):
    """One window with one document, or with the page to begin one."""

    painted = Signal()
    """The window has been painted for the first time."""
    gone = Signal(object)
    """The window has closed for good."""

    def __init__(
        self, hub: Hub | None = None, *, session: Session | None = None, ask: Ask | None = None
    ) -> None:
        super().__init__()
        self.session = session or Session(state_folder())
        self._ask = ask
        self.desk: Desk | None = None
        self.bench: Bench | None = None
        self.banner: Banner | None = None
        self.another: Callable[[Path | None], object] = lambda _: None
        """Opens another window; set by the program."""
        self._has_painted = False
        self._started = False
        self._pages = QStackedWidget()
        self._body = QVBoxLayout()
        self._figures = QLabel()
        self._build()
        from panelproof.editor.deeds import Deeds  # noqa: PLC0415 - it only names what is imported later

        self.deeds = Deeds(self)
        self.menus = Menus(self, self.deeds.table())
        self.menus.recent.aboutToShow.connect(self._fill_recent)
        self.menus.enable(frozenset())
        self.deeds.mark_colours()
        if hub is not None:
            self.begin().take(hub)

    def _build(self) -> None:
        body = QWidget()
        theme.space(self._body, 0, 0)
        self._body.addWidget(self._pages, 1)
        body.setLayout(self._body)
        self._pages.addWidget(QWidget())
        self.setCentralWidget(body)
        self.setMinimumSize(*LEAST)
        self.resize(1280, 820)
        self.setAcceptDrops(True)
        self.setWindowTitle("Panelproof")
        theme.set_role(self._figures, "small")
        self._figures.setAccessibleName("Panel")
        self._figures.setContentsMargins(theme.UNIT, 0, theme.UNIT, 0)
        self.statusBar().setSizeGripEnabled(False)
        self.statusBar().addPermanentWidget(self._figures)
        geometry = self.session.remembered("geometry")
        if geometry:
            self.restoreGeometry(QByteArray.fromBase64(geometry.encode()))

    # -- the document ----------------------------------------------------------------------------------

    def begin(self) -> Desk:
        """Make the desk; everything heavy is imported here."""
        from panelproof.editor.asking import Questions  # noqa: PLC0415
        from panelproof.editor.desk import Desk  # noqa: PLC0415

        if self.desk is None:
            self.desk = Desk(self.session, self._ask or Questions(self), self)
            self.desk.begun.connect(self._attach)
            self.desk.told.connect(self.tell)
            self.desk.opened.connect(self._look_as_before)
            self.desk.leaving.connect(self._note_look)
            self.desk.foreign_changed.connect(self._foreign)
        return self.desk

    def start_page(self) -> None:
        """Show the page that a document begins from."""
        from panelproof.editor.startpage import StartPage  # noqa: PLC0415

        desk = self.begin()
        page = StartPage(self.session)
        page.created.connect(desk.new)
        page.opened.connect(desk.open)
        page.browsed.connect(desk.open)
        self._started = True
        self._show_page(page)

    def open(self, path: Path) -> bool:
        """Open a file; where that fails and there is no document, the page to begin one is shown."""
        if self.begin().open(path):
            return True
        self.start_if_empty()
        return False

    def recover(self, left: Left) -> bool:
        """Bring back what a window left behind."""
        return self.begin().recover(left)

    def start_if_empty(self) -> None:
        """Show the page that a document begins from, where there is no document."""
        if self.bench is None:
            self.start_page()

    def shows(self) -> str:
        """Return what the window shows: `nothing` yet, the `start` page, or a `layout`."""
        if self.bench is not None:
            return "layout"
        return "start" if self._started else "nothing"

    def _show_page(self, page: QWidget) -> None:
        old = self._pages.currentWidget()
        self._pages.addWidget(page)
        self._pages.setCurrentWidget(page)
        if old is not None:
            self._pages.removeWidget(old)
            old.deleteLater()
        page.setFocus()

    def _attach(self, hub: Hub) -> None:
        from panelproof.editor.bench import Banner, Bench  # noqa: PLC0415

        self.bench, self.banner = Bench(hub), Banner()
        self._body.insertWidget(0, self.banner)
        desk = self.begin()
        self.bench.findings.ask = desk.ask
        self.banner.load.clicked.connect(desk.reload)
        self.banner.keep.clicked.connect(desk.keep_mine)
        self.banner.elsewhere.clicked.connect(desk.save_as)
        for pane in (self.bench.glass, self.bench.parts):
            for action in self.menus.local():
                action.setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
                pane.addAction(action)
        hub.told.connect(self.tell)
        for signal in (
            hub.layout_changed, hub.selection_changed, hub.screen_changed, hub.view_changed, hub.file_changed,
        ):  # fmt: skip
            signal.connect(self.refresh)
        self._show_page(self.bench)
        # Once they have their room: panes that are restored into less would be squeezed.
        self._body.activate()
        self.bench.restore(self.session.remembered("columns"), self.session.remembered("middle"))
        self.bench.glass.setFocus()
        self.refresh()

    def _note_look(self) -> None:
        """Remember how the file is looked at."""
        hub, bench = self.hub, self.bench
        if hub is not None and hub.path is not None and bench is not None:
            self.session.viewed(hub.path, bench.look())

    def _look_as_before(self) -> None:
        """Show what of the file was shown when it was left."""
        hub, bench = self.hub, self.bench
        if hub is not None and hub.path is not None and bench is not None:
            bench.look_at(self.session.view(hub.path))

    @property
    def hub(self) -> Hub | None:
        """The document's hub, None while there is no document."""
        return self.desk.hub if self.desk else None

    # -- what the window says --------------------------------------------------------------------------

    def tell(self, sentence: str) -> None:
        """Say a sentence at the foot of the window."""
        text = sentence[:1].upper() + sentence[1:]
        self.statusBar().showMessage(text, TELL_MS)

    def refresh(self) -> None:
        """Bring title, menus and figures up to date."""
        hub = self.hub
        if hub is None:
            return
        name = hub.path.name if hub.path else hub.layout.name
        self.setWindowTitle(f"{name}[*] – Panelproof")
        self.setWindowModified(hub.history.unsaved)
        if hub.path:
            self.setWindowFilePath(str(hub.path))
            self.setWindowTitle(f"{name}[*] – Panelproof")
        self._refresh_menus(hub)
        panel = hub.layout.panel
        colours = COLOURS[panel.colour_format]
        saved = "unsaved changes" if hub.history.unsaved else ("saved" if hub.path else "not saved yet")
        self._figures.setText(f"{panel.width} × {panel.height}, {panel.shape}, {colours}  ·  {saved}")

    def _refresh_menus(self, hub: Hub) -> None:
        has = {"layout"}
        if hub.screen is not None:
            has.add("screen")
            has |= {"parts"} if hub.screen.parts else set()
        has |= {"choice"} if hub.selection else set()
        has |= {"several"} if len(hub.selection) > 1 else set()
        self.menus.enable(frozenset(has))
        history = hub.history
        self._undoable(self.menus.actions["undo"], "&Undo", history.undo_title)
        self._undoable(self.menus.actions["redo"], "&Redo", history.redo_title)
        chosen = hub.selection
        self.menus.actions["hide"].setChecked(bool(chosen) and all(map(hub.is_hidden, chosen)))
        self.menus.actions["lock"].setChecked(bool(chosen) and all(map(hub.is_locked, chosen)))
        self.menus.actions["rename"].setEnabled(len(chosen) == 1)

    @staticmethod
    def _undoable(action: QAction, word: str, title: str) -> None:
        action.setText(f"{word}: {title.replace('&', '&&')}" if title else word)
        action.setEnabled(bool(title))

    def _foreign(self) -> None:
        desk, banner = self.desk, self.banner
        if desk is None or banner is None or desk.hub is None or desk.hub.path is None:
            return
        if desk.foreign:
            banner.ask(desk.hub.path.name, unsaved=desk.unsaved)
        else:
            banner.hide()

    def _fill_recent(self) -> None:
        menu = self.menus.recent
        menu.clear()
        paths = self.session.recent()
        for number, path in enumerate(paths, 1):
            action = menu.addAction(f"&{number % 10} {path.name.replace('&', '&&')}")
            action.setToolTip(str(path))
            action.triggered.connect(partial(self._open_recent, path))
        if paths:
            menu.addSeparator()
            menu.addAction("&Forget these").triggered.connect(self.session.forget_recent)
        else:
            menu.addAction("None yet").setEnabled(False)

    def _open_recent(self, path: Path) -> None:
        self.open(path)

    def about(self) -> None:
        """Say what this is."""
        from panelproof.command import CAUTION  # noqa: PLC0415 - only when it is asked for

        text = (
            f"<b>Panelproof {__version__}</b><p>Designs what a small screen shows, proves it for every value, "
            f"and hands it to firmware.</p><p>{CAUTION}</p><p>Free software under the MIT licence.</p>"
        )
        QMessageBox.about(self, "About Panelproof", text)

    # -- Qt --------------------------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """Note the first painting."""
        super().paintEvent(event)
        if not self._has_painted:
            self._has_painted = True
            self.painted.emit()

    def changeEvent(self, event: QEvent) -> None:
        """Look at the file again when one comes back to the window."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.ActivationChange and self.isActiveWindow() and self.desk is not None:
            self.desk.look()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Ask about unsaved work, and remember how the window stood."""
        if self.desk is not None and not self.desk.may_leave():
            event.ignore()
            return
        geometry = bytes(self.saveGeometry().toBase64().data()).decode()
        self.session.remember({"geometry": geometry, **(self.bench.sizes() if self.bench else {})})
        if self.desk is not None:
            self.desk.close()
        event.accept()
        self.gone.emit(self)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take files."""
        if self._dropped(event):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Open the file that is dropped, further ones in windows of their own."""
        paths = self._dropped(event)
        event.acceptProposedAction()
        if paths and self.open(paths[0]):
            for path in paths[1:]:
                self.another(path)

    @staticmethod
    def _dropped(event: QDropEvent) -> list[Path]:
        urls = event.mimeData().urls()
        return [Path(url.toLocalFile()) for url in urls if url.toLocalFile().lower().endswith(".json")]
