"""Pictures of starters on a panel, made beside the window so that it never waits for them."""

from __future__ import annotations

import threading
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from PySide6.QtCore import QObject, Qt, Signal, Slot

from panelproof.editor.files import UNTITLED
from panelproof.layout.document import Layout
from panelproof.layout.panel import Panel
from panelproof.material import gather
from panelproof.picture.frame import Frame, new_frame, screen_frame
from panelproof.picture.moments import every_moment
from panelproof.problem import Problem
from panelproof.starters.make import make


@dataclass(frozen=True, slots=True, eq=False)
class Sketch:
    """A starter on a panel: its layout and its first moment, or why there is none."""

    layout: Layout | None
    frame: Frame | None
    trouble: str = ""


@lru_cache(maxsize=128)
def sketch(panel: Panel, starter: str) -> Sketch:
    """Return a starter set on a panel with its picture; remembered."""
    try:
        layout = make(starter, panel, UNTITLED)
        material = gather(layout, Path())
        shown = next(iter(every_moment(material)), None)
    except Problem as problem:
        return Sketch(None, None, problem.message)
    if shown is None or not layout.moments:
        return Sketch(layout, new_frame(panel, material.code(layout.screens[0].ground)))
    return Sketch(layout, screen_frame(material, material.screen(shown.screen), shown.values))


class _Maker(QObject):
    """Makes pictures on one thread, for every window; nobody ever waits for it, not even at the end."""

    made = Signal(object, str, object)

    def __init__(self) -> None:
        super().__init__()
        self._wanted: dict[int, tuple[Panel, str]] = {}
        self._news = threading.Condition()
        threading.Thread(target=self._work, name="sketches", daemon=True).start()

    def want(self, asker: int, panel: Panel, starter: str) -> None:
        """Make a picture next; what the same one asked for before and has not begun is dropped."""
        with self._news:
            self._wanted[asker] = panel, starter
            self._news.notify()

    def _work(self) -> None:
        while True:
            with self._news:
                self._news.wait_for(lambda: self._wanted)
                panel, starter = self._wanted.pop(next(iter(self._wanted)))
            try:
                made = sketch(panel, starter)
            except Exception as error:  # a mistake of ours must not end the thread
                made = Sketch(None, None, f"this picture could not be made ({type(error).__name__}: {error})")
            try:
                self.made.emit(panel, starter, made)
            except RuntimeError:  # the program is ending, and Qt has gone before Python
                return


@lru_cache(maxsize=1)
def _maker() -> _Maker:
    return _Maker()


class Sketcher(QObject):
    """Makes the newest picture asked for beside the window."""

    made = Signal(object, str, object)
    """The panel, the starter's name, and the sketch."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        # From the thread to the window's own: the slot runs when the window comes to it, and not once it has gone.
        _maker().made.connect(self._arrived, Qt.ConnectionType.QueuedConnection)

    def ask(self, panel: Panel, starter: str) -> None:
        """Ask for a starter on a panel; `made` tells when it is there."""
        _maker().want(id(self), panel, starter)

    @Slot(object, str, object)
    def _arrived(self, panel: Panel, starter: str, made: Sketch) -> None:
        self.made.emit(panel, starter, made)
