"""Unsaved work, kept against a crash: a file for each window, and a lock that dies with it."""

from __future__ import annotations

import json
import os
import sys
import time
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import IO

from panelproof.editor.files import GONE, Stamp
from panelproof.layout.document import Layout
from panelproof.layout.reading import parse
from panelproof.layout.saving import save
from panelproof.layout.writing import encode
from panelproof.problem import Problem


def unsaved_folder(state: Path) -> Path:
    """Return where recovery files are, in the folder of what the program remembers."""
    return state / "unsaved"


@dataclass(frozen=True, slots=True)
class Left:
    """Unsaved work that a window which did not close left behind.

    `path` is the file it belongs to (None: it was never saved), `stamp` what that file held when the work
    began, `folder` what its paths are relative to, `when` the seconds since 1970 at which it was written.
    """

    layout: Layout
    path: Path | None
    folder: Path
    stamp: Stamp
    when: float
    keeper: Keeper

    def discard(self) -> None:
        """Throw the work away."""
        self.keeper.clear()
        self.keeper.release()


class Keeper:
    """One window's recovery file, and a lock beside it that the system drops when the window dies."""

    def __init__(self, folder: Path, name: str = "") -> None:
        self._folder = folder
        self.name = name or f"{os.getpid()}-{os.urandom(4).hex()}"
        self._lock: IO[bytes] | None = None

    @property
    def file(self) -> Path:
        """The recovery file."""
        return self._folder / f"{self.name}.work"

    @property
    def _lock_file(self) -> Path:
        return self._folder / f"{self.name}.lock"

    def hold(self) -> bool:
        """Take the lock; False where a living window has it."""
        if self._lock is not None:
            return True
        try:
            self._folder.mkdir(parents=True, exist_ok=True)
            handle = self._lock_file.open("ab")
        except OSError:
            return False
        try:
            _lock(handle)
        except OSError:
            handle.close()
            return False
        self._lock = handle
        return True

    def keep(self, layout: Layout, path: Path | None, folder: Path, stamp: Stamp) -> bool:
        """Write the work down whole; False where that is not possible."""
        if not self.hold():
            return False
        try:
            text = encode(layout).decode()
            notes = {
                "path": str(path.absolute()) if path else "",
                "folder": str(folder.absolute()),
                "stamp": stamp.digest,
                "when": time.time(),
                "layout": text,
            }
            save(self.file, json.dumps(notes, ensure_ascii=False).encode())
        except (Problem, OSError, ValueError):
            return False
        return True

    def clear(self) -> None:
        """Take the recovery file away, since there is nothing unsaved."""
        with suppress(OSError):
            self.file.unlink()

    def release(self) -> None:
        """Give the lock back, when the window closes."""
        if self._lock is None:
            return
        # The name goes first: nobody can lock a file that is about to vanish.
        with suppress(OSError):
            self._lock_file.unlink()
        self._lock.close()
        self._lock = None


def left_behind(folder: Path) -> tuple[Left, ...]:
    """Return the unsaved work of windows that died, the latest first.

    Each is held from then on, so that two windows that start together do not offer the same.
    """
    found = []
    for file in sorted(folder.glob("*.work")):
        keeper = Keeper(folder, file.stem)
        if not keeper.hold():
            continue
        left = _read(file, keeper)
        if left is None:
            keeper.release()
        else:
            found.append(left)
    for lock in folder.glob("*.lock"):
        _sweep(folder, lock)
    return tuple(sorted(found, key=lambda left: -left.when))


def _sweep(folder: Path, lock: Path) -> None:
    """Take away a lock file that has no work and no living window."""
    if not lock.with_suffix(".work").exists():
        keeper = Keeper(folder, lock.stem)
        if keeper.hold():
            keeper.release()


def _read(file: Path, keeper: Keeper) -> Left | None:
    try:
        notes = json.loads(file.read_bytes())
        layout = parse(notes["layout"].encode())
        path = Path(notes["path"]) if notes["path"] else None
        stamp = Stamp(notes["stamp"]) if notes["stamp"] else GONE
        return Left(layout, path, Path(notes["folder"]), stamp, float(notes["when"]), keeper)
    except (OSError, ValueError, KeyError, TypeError, AttributeError, Problem):
        return None


def _lock(handle: IO[bytes]) -> None:
    """Lock an open file for this process alone; raises OSError where another has it."""
    if sys.platform == "win32":
        import msvcrt  # noqa: PLC0415

        msvcrt.locking(handle.fileno(), msvcrt.LK_NBLCK, 1)
    else:
        import fcntl  # noqa: PLC0415

        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
