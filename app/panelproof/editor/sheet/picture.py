"""Which file a picture shows, and how its colours are brought to the panel's."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from panelproof.editor import picturefile, theme
from panelproof.editor.hub import Hub
from panelproof.editor.sheet.entry import ChoiceEntry, LineEntry
from panelproof.layout.parts import Picture
from panelproof.problem import Problem
from panelproof.proof.words import counted

DITHERS = (
    ("none: the nearest colour", "none"),
    ("ordered: a regular mixture", "ordered"),
    ("diffused: a fine mixture", "diffused"),
)

Commit = Callable[[str, object], Problem | None]


class PictureEditor(QWidget):
    """The file and the dither of a picture; `commit` sets one of the picture's keys."""

    def __init__(self, hub: Hub, commit: Commit) -> None:
        super().__init__()
        self._hub = hub
        column = QVBoxLayout(self)
        theme.space(column, 0, theme.UNIT)
        self.file = LineEntry("PNG file", lambda path: commit("picture", path))
        self.choose = QPushButton("Choose…")
        self.choose.setAccessibleName("Choose another PNG file")
        self.choose.clicked.connect(self._choose)
        self.dither = ChoiceEntry("Dither", lambda word: commit("dither", word), DITHERS)
        self.facts = QLabel()
        self.facts.setWordWrap(True)
        theme.set_role(self.facts, "small")
        for row in (self.file, self.choose, self.dither, self.facts):
            column.addWidget(row)
        self._commit = commit

    def show_picture(self, part: Picture) -> None:
        """Show a picture as it is now."""
        self.file.show_value(part.picture)
        self.dither.show_value(part.dither)
        raster = self._hub.material.raster(part)
        clear = raster.width * raster.height - raster.mask.count()
        words = [
            f"{raster.width} × {raster.height} px",
            counted(len(raster.used()), "colour") + " of the panel",
        ]
        if clear:
            words.append(f"{counted(clear, 'pixel')} clear")
        self.facts.setText(", ".join(words))

    def bring_in(self, path: Path) -> None:
        """Show another file."""
        self.file.tell(self._commit("picture", picturefile.seen_from(path, self._hub.folder)))

    def _choose(self) -> None:
        chosen = picturefile.choose(self, self._hub.folder, "Another picture")
        if chosen:
            self.file.tell(self._commit("picture", chosen))
