"""Which PNG file a picture shows: chosen in a dialog, or dropped onto the glass."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QUrl
from PySide6.QtWidgets import QFileDialog, QWidget

ENDING = ".png"


def choose(parent: QWidget, folder: Path, title: str = "A picture for the screen") -> str:
    """Ask for a PNG file; return its path as a layout in `folder` has it, empty where none was chosen."""
    chosen, _ = QFileDialog.getOpenFileName(parent, title, str(folder), "PNG pictures (*.png)")
    return seen_from(Path(chosen), folder) if chosen else ""


def seen_from(path: Path, folder: Path) -> str:
    """Return a file's path as a layout in `folder` has it: relative where the file lies inside."""
    path, folder = path.absolute(), folder.absolute()
    return path.relative_to(folder).as_posix() if path.is_relative_to(folder) else path.as_posix()


def dropped(urls: Sequence[QUrl]) -> Path | None:
    """Return the PNG file among what is dropped, where it is a single one."""
    paths = [Path(url.toLocalFile()) for url in urls if url.isLocalFile()]
    if len(paths) == 1 and paths[0].suffix.lower() == ENDING:
        return paths[0]
    return None
