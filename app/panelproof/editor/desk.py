"""The document in the window and its file: new, open, save, close, and what others do to it meanwhile."""

from __future__ import annotations

import threading
from pathlib import Path

from PySide6.QtCore import QFileSystemWatcher, QObject, QTimer, Signal

from panelproof.editor import files
from panelproof.editor.asking import Ask
from panelproof.editor.files import GONE, Stamp
from panelproof.editor.hub import Hub
from panelproof.editor.recovery import Keeper, Left, unsaved_folder
from panelproof.editor.session import Session
from panelproof.layout.document import Layout
from panelproof.material import gather
from panelproof.problem import Problem

KEEP_EVERY_MS = 3000
SETTLE_MS = 150
"""Programs write a file in several steps; it is looked at when it has been quiet for this long."""


class Desk(QObject):
    """Holds what the file menu does; the hub comes into being with the first document."""

    begun = Signal(object)
    """The first document is on the desk: its Hub."""
    foreign_changed = Signal()
    """Another program has changed the file, or the question what to do has been settled."""
    told = Signal(str)
    opened = Signal()
    """A file has been opened."""
    leaving = Signal()
    """The document is about to give way to another, or to end."""
    _kept_safe = Signal(bool)

    def __init__(self, session: Session, ask: Ask, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.session, self.ask = session, ask
        self.hub: Hub | None = None
        self.foreign = False
        """Whether the file on disk is another program's and nothing has been decided about it."""
        self._stamp: Stamp = GONE
        self._keeper = Keeper(unsaved_folder(session.folder))
        self._kept: Layout | None = None
        self._writing: threading.Thread | None = None
        self._watcher = QFileSystemWatcher(self)
        self._watcher.fileChanged.connect(self._disturbed)
        self._watcher.directoryChanged.connect(self._disturbed)
        self._quiet = QTimer(self, singleShot=True, interval=SETTLE_MS)
        self._quiet.timeout.connect(self.look)
        self._keeping = QTimer(self, interval=KEEP_EVERY_MS)
        self._keeping.timeout.connect(self.keep)
        self._kept_safe.connect(self._tell_safe)
        self._safe = True

    # -- beginning -------------------------------------------------------------------------------------

    def take(self, hub: Hub) -> None:
        """Put a hub that is there already on the desk."""
        self.hub = hub
        self._stamp = files.stamp(hub.path) if hub.path else GONE
        self._settled()
        self._keeping.start()
        self.begun.emit(hub)

    def _put(self, layout: Layout, folder: Path, path: Path | None, stamp: Stamp) -> bool:
        try:
            # Before a hub is made: it would leave its thread behind when it fails.
            gather(layout, folder)
            self.release_work()
            self.leaving.emit()
            if self.hub is None:
                hub = Hub(layout, folder, self)
                hub.path = path
                self.take(hub)
            else:
                self.hub.open(layout, folder, path)
        except Problem as problem:
            self.ask.sorry(problem.message[:1].upper() + problem.message[1:] + ".", problem.place)
            return False
        self._stamp, self._kept = stamp, None
        self._settled()
        return True

    def new(self, layout: Layout | None = None) -> bool:
        """Begin a layout, asked for where none is given; False where the person changed their mind."""
        if not self.may_leave():
            return False
        layout = layout or self.ask.new()
        return layout is not None and self._put(layout, Path.home(), None, GONE)

    def open(self, path: Path | None = None) -> bool:
        """Open a file, asked for where none is given; False where it was not opened."""
        if not self.may_leave():
            return False
        path = path or self.ask.open_path(self._folder())
        if path is None:
            return False
        try:
            layout, stamp = files.load(path)
        except Problem as problem:
            self.ask.sorry(f"{path.name} cannot be opened: {problem.message}.", problem.place)
            return False
        # Absolute, so that it is found again wherever the next window is started.
        path = path.absolute()
        if not self._put(layout, path.parent, path, stamp):
            return False
        self.session.opened(path)
        self.opened.emit()
        return True

    def recover(self, left: Left) -> bool:
        """Bring work back that a window left behind; it stays unsaved, and under the same care."""
        if not self.may_leave() or not self._put(left.layout, left.folder, left.path, left.stamp):
            return False
        assert self.hub is not None
        self.hub.history.recovered()
        self.hub.file_changed.emit()
        # One copy is always on the disk: the old one goes when the new one stands.
        if self._keeper.keep(left.layout, left.path, left.folder, left.stamp):
            self._kept = left.layout
            left.discard()
        self.look()
        return True

    def _folder(self) -> Path:
        if self.hub and self.hub.path:
            return self.hub.path.parent
        recent = self.session.recent()
        return recent[0].parent if recent else Path.home()

    # -- saving ----------------------------------------------------------------------------------------

    @property
    def unsaved(self) -> bool:
        """Whether there is work that stands in no file."""
        return self.hub is not None and self.hub.history.unsaved

    def save(self) -> bool:
        """Save, never over what another program has written since; False where it was not saved."""
        if self.hub is None:
            return False
        if self.hub.path is None:
            return self.save_as()
        now = files.stamp(self.hub.path)
        if now.there and now != self._stamp:
            return self._settle(self.ask.foreign(self.hub.path))
        return self._store(self.hub.path)

    def _settle(self, answer: str) -> bool:
        match answer:
            case "reload":
                return self.reload()
            case "keep":
                self.keep_mine()
                assert self.hub is not None and self.hub.path is not None
                return self._store(self.hub.path)
            case "elsewhere":
                return self.save_as()
        return False

    def save_as(self) -> bool:
        """Ask for a place and save there."""
        if self.hub is None:
            return False
        suggested = self.hub.path or self._folder() / f"{self.hub.layout.name}{files.ENDING}"
        path = self.ask.save_path(suggested)
        return path is not None and self._store(files.suited(path).absolute())

    def _store(self, path: Path) -> bool:
        hub = self.hub
        assert hub is not None
        if hub.path is None:
            hub.apply("name the layout after its file", files.named_after(hub.layout, path))
        old, new = hub.folder, path.parent

        def rebase(layout: Layout) -> Layout:
            return files.rebased(layout, old, new)

        try:
            self._stamp = files.store(rebase(hub.layout), path)
        except Problem as problem:
            self.ask.sorry(f"{path.name} could not be saved: {problem.message}.", problem.place)
            return False
        # The work stood in no file until now; its paths counted from a place that nobody chose.
        hub.saved(path, rebase if old != new else None)
        self.release_work()
        self._settled()
        self.session.opened(path)
        self.told.emit(f"saved {path.name}")
        return True

    def may_leave(self) -> bool:
        """Ask about unsaved work; False where the person wants to stay."""
        if not self.unsaved:
            return True
        assert self.hub is not None
        answer = self.ask.unsaved(self.hub.path)
        return answer == "discard" or (answer == "save" and self.save())

    def close(self) -> None:
        """End the work on this desk, for good."""
        self.leaving.emit()
        self._keeping.stop()
        self._quiet.stop()
        self.release_work()
        self._keeper.release()
        if self.hub:
            self.session.left(self.hub.path)
            self.hub.shut()

    # -- other programs --------------------------------------------------------------------------------

    def _settled(self) -> None:
        """Nothing is in question any more; watch the file that belongs to the document."""
        watched = self._watcher.files() + self._watcher.directories()
        if watched:
            self._watcher.removePaths(watched)
        if self.hub and self.hub.path:
            # The folder too: most programs put a new file in the place of the old one.
            self._watcher.addPaths([str(self.hub.path), str(self.hub.path.parent)])
        self._set_foreign(False)

    def _set_foreign(self, foreign: bool) -> None:
        if foreign != self.foreign:
            self.foreign = foreign
            self.foreign_changed.emit()

    def _disturbed(self, _: str) -> None:
        self._quiet.start()

    def look(self) -> None:
        """Look whether the file on disk is still the one that was read or saved."""
        hub = self.hub
        if hub is None or hub.path is None:
            return
        now = files.stamp(hub.path)
        if now.there and str(hub.path) not in self._watcher.files():
            self._watcher.addPath(str(hub.path))
        if now == self._stamp:
            self._set_foreign(False)
        elif now.there:
            self._set_foreign(True)
        else:
            self._stamp = GONE
            hub.history.recovered()
            hub.file_changed.emit()
            self.told.emit(f"{hub.path.name} is not on the disk any more; saving writes it again")

    def reload(self) -> bool:
        """Take the file as it is on disk now; undo brings one's own work back."""
        hub = self.hub
        if hub is None or hub.path is None:
            return False
        try:
            layout, stamp = files.load(hub.path)
        except Problem as problem:
            self.ask.sorry(f"{hub.path.name} cannot be loaded: {problem.message}.", problem.place)
            return False
        refused = hub.apply("load the file anew", layout)
        if refused:
            self.ask.sorry(f"{hub.path.name} cannot be shown: {refused.message}.", refused.place)
            return False
        self._stamp = stamp
        hub.saved(hub.path)
        self.release_work()
        self._settled()
        return True

    def keep_mine(self) -> None:
        """Keep one's own work; the next save overwrites what the other program wrote so far."""
        if self.hub is None or self.hub.path is None:
            return
        self._stamp = files.stamp(self.hub.path)
        self.hub.history.recovered()
        self.hub.file_changed.emit()
        self._set_foreign(False)

    # -- recovery --------------------------------------------------------------------------------------

    def keep(self) -> None:
        """Write unsaved work to the recovery file where it has changed since; the disk is not waited for."""
        if self.hub is None or self._busy():
            return
        layout = self.hub.layout
        if not self.unsaved:
            if self._kept is not None:
                self.release_work()
            return
        if layout is self._kept:
            return
        self._kept = layout
        path, folder, stamp = self.hub.path, self.hub.folder, self._stamp

        def write() -> None:
            self._kept_safe.emit(self._keeper.keep(layout, path, folder, stamp))

        self._writing = threading.Thread(target=write, name="recovery")
        self._writing.start()

    def _tell_safe(self, safe: bool) -> None:
        if self._safe and not safe:
            self.told.emit("unsaved work cannot be kept against a crash (is the disk full?); save soon")
        self._safe = safe

    def _busy(self) -> bool:
        return self._writing is not None and self._writing.is_alive()

    def release_work(self) -> None:
        """Take the recovery file away: the work is saved, or given up."""
        if self._writing is not None:
            self._writing.join()
        self._keeper.clear()
        self._kept = None
