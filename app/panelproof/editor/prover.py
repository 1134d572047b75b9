"""The proof beside the window: at once where little has changed, else on a thread of its own."""

from __future__ import annotations

import threading

from PySide6.QtCore import QObject, QThread, Signal, Slot

from panelproof.content.spec import Content
from panelproof.layout.parts import Field
from panelproof.material import Material
from panelproof.verdict import verdict


class _Stopped(Exception):
    pass


class _Worker(QObject):
    proved = Signal(object, object)
    progress = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.wanted: Material | None = None
        self.lock = threading.Lock()

    @Slot()
    def work(self) -> None:
        with self.lock:
            material = self.wanted
        if material is None:
            return

        def step(screen: str) -> None:
            if self.wanted is not material:
                raise _Stopped
            self.progress.emit(screen)

        try:
            found = verdict(material, step)
        except _Stopped:
            return
        self.proved.emit(material, found)


class Prover(QObject):
    """Proves the newest material asked for; older ones are dropped."""

    proved = Signal(object, object)
    """The material and the verdict on it."""
    progress = Signal(str)
    """The screen that is being proved on the thread."""
    _start = Signal()

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._known: set[tuple[Content, int, str]] = set()
        self._thread = QThread(self)
        self._worker = _Worker()
        self._worker.moveToThread(self._thread)
        self._start.connect(self._worker.work)
        self._worker.proved.connect(self._arrived)
        self._worker.progress.connect(self.progress)
        self._thread.start()

    def _keys(self, material: Material) -> set[tuple[Content, int, str]]:
        return {
            (part.content, id(material.types[part.type]), part.align)
            for screen in material.layout.screens
            for part in screen.parts
            if isinstance(part, Field)
        }

    def prove(self, material: Material, *, hasty: bool = False) -> bool:
        """Prove a material; the verdict comes before this returns where every content is known.

        Where it comes at once and is to be hasty, no remedies are searched for; True tells that they are left out.
        """
        if self._keys(material) <= self._known:
            self._worker.wanted = None
            self.proved.emit(material, verdict(material, proposing=not hasty))
            return hasty
        with self._worker.lock:
            self._worker.wanted = material
        self._start.emit()
        return False

    @property
    def busy(self) -> bool:
        """Whether a proof is under way on the thread."""
        return self._worker.wanted is not None

    def cancel(self) -> None:
        """Drop the proof that is under way."""
        self._worker.wanted = None

    def _arrived(self, material: Material, found: object) -> None:
        self._known |= self._keys(material)
        if self._worker.wanted is material:
            self._worker.wanted = None
        self.proved.emit(material, found)

    def shut(self) -> None:
        """End the thread."""
        self._worker.wanted = None
        self._thread.quit()
        self._thread.wait(2000)
