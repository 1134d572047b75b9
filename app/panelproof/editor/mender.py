"""Mending beside the window: on a thread, with word of each remedy that is tried, and stopped at any time."""

from __future__ import annotations

import threading
from functools import lru_cache
from itertools import count

from PySide6.QtCore import QObject, Qt, Signal, Slot

from panelproof.material import Material
from panelproof.mending import mend

_numbers = count(1)


class _Stopped(Exception):
    pass


class _Bell(QObject):
    """Rings in the window's thread; it lives as long as the program, so that no thread ever rings nothing."""

    stepped = Signal(int, str)
    ended = Signal(int, object)


@lru_cache(maxsize=1)
def _bell() -> _Bell:
    return _Bell()


class Mender(QObject):
    """Mends one material at a time; what is stopped is dropped."""

    stepped = Signal(str)
    """The remedy that is tried now."""
    ended = Signal(object)
    """What came of it: a Mended, or a sentence why there is nothing."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._number = 0
        queued = Qt.ConnectionType.QueuedConnection
        _bell().stepped.connect(self._step, queued)
        _bell().ended.connect(self._end, queued)

    @property
    def busy(self) -> bool:
        """Whether something is being mended."""
        return self._number != 0

    def start(self, material: Material) -> None:
        """Begin to mend a material; what was under way is dropped."""
        self._number = next(_numbers)
        threading.Thread(
            target=self._work, args=(self._number, material), name="mending", daemon=True
        ).start()

    def stop(self) -> None:
        """Drop what is under way; the thread ends before it tries the next remedy."""
        self._number = 0

    def _work(self, number: int, material: Material) -> None:
        bell = _bell()

        def step(sentence: str) -> None:
            if self._number != number:
                raise _Stopped
            bell.stepped.emit(number, sentence)

        try:
            found: object = mend(material, step)
        except _Stopped:
            return
        except Exception as error:  # a mistake of ours must not leave the window waiting
            found = f"this could not be mended ({type(error).__name__}: {error})"
        try:
            bell.ended.emit(number, found)
        except RuntimeError:  # the program is ending, and Qt has gone before Python
            return

    @Slot(int, str)
    def _step(self, number: int, sentence: str) -> None:
        if number == self._number:
            self.stepped.emit(sentence)

    @Slot(int, object)
    def _end(self, number: int, found: object) -> None:
        if number == self._number:
            self._number = 0
            self.ended.emit(found)
