"""Handing over from the window: the header as it will be written, what differs on disk, and the picture sheet."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path

from PySide6.QtWidgets import (
    QDialog,
    QFileDialog,
    QHBoxLayout,
    QLabel,
    QPlainTextEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from panelproof.editor import theme
from panelproof.editor.hub import Hub
from panelproof.firmware.header import header
from panelproof.firmware.verify import differences
from panelproof.layout.saving import save
from panelproof.picture.image import png
from panelproof.picture.sheet import sheet
from panelproof.problem import Problem
from panelproof.proof.words import counted


class ExportDialog(QDialog):
    """Shows the header and writes it, or the sheet of all moments."""

    def __init__(self, hub: Hub, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._hub = hub
        self.setWindowTitle("Export")
        self.resize(860, 620)
        column = QVBoxLayout(self)
        theme.space(column, theme.GAP)
        self.words = QLabel()
        self.words.setWordWrap(True)
        column.addWidget(self.words)
        self.view = QPlainTextEdit()
        self.view.setReadOnly(True)
        self.view.setFont(theme.font("mono"))
        self.view.setLineWrapMode(QPlainTextEdit.LineWrapMode.NoWrap)
        self.view.setAccessibleName("The header as it will be written")
        column.addWidget(self.view, 1)
        row = QHBoxLayout()
        theme.space(row)
        self.write = QPushButton("Write header…")
        for button, slot in (
            (QPushButton("Picture sheet…"), self._ask_sheet),
            (self.write, self._ask_header),
            (QPushButton("Close"), self.close),
        ):
            button.setAutoDefault(button is self.write)
            button.clicked.connect(slot)
            row.addWidget(button)
        self.write.setDefault(True)
        column.addLayout(row)
        self.text = ""
        self.refresh()

    @property
    def usual_path(self) -> Path:
        """Where the header stands by default: beside the layout."""
        return self._hub.folder / f"{self._hub.layout.name.replace('-', '_')}.h"

    def refresh(self) -> None:
        """Make the header anew and say how it differs from the one on disk."""
        try:
            self.text = header(self._hub.material)
        except Problem as problem:
            self.words.setText(str(problem))
            self.write.setEnabled(False)
            return
        self.view.setPlainText(self.text)
        faults = sum(finding.level == "fault" for finding in self._hub.findings)
        words = []
        if not self._hub.findings_current:
            words.append("The proof has not finished yet.")
        elif faults:
            words.append(
                f"✕ {counted(faults, 'fault')} found: the device will show {'it' if faults == 1 else 'them'}."
            )
        else:
            words.append("✓ Proved: no fault.")
        words.append(self._on_disk())
        self.words.setText(" ".join(words))

    def _on_disk(self) -> str:
        path = self.usual_path
        try:
            old = path.read_text(encoding="utf-8")
        except (OSError, UnicodeDecodeError):
            return f"There is no header `{path.name}` beside the layout yet."
        found = differences(old, self.text)
        if not found:
            return f"`{path.name}` on disk is up to date."
        return (
            f"`{path.name}` on disk differs: "
            + "; ".join(found[:4])
            + ("; and more" if len(found) > 4 else "")
        )

    def _ask_header(self) -> None:
        chosen, _ = QFileDialog.getSaveFileName(
            self, "Write the header", str(self.usual_path), "C headers (*.h)"
        )
        if chosen:
            self.write_header(Path(chosen))

    def write_header(self, path: Path) -> None:
        """Write the header."""
        self._save(path, self.text.encode())
        self.refresh()

    def _ask_sheet(self) -> None:
        usual = self._hub.folder / f"{self._hub.layout.name}.png"
        chosen, _ = QFileDialog.getSaveFileName(
            self, "Write the picture sheet", str(usual), "PNG (*.png);;PDF (*.pdf)"
        )
        if chosen:
            self.write_sheet(Path(chosen))

    def write_sheet(self, path: Path) -> None:
        """Write all moments as one PNG, or as PDF where the name ends in .pdf."""
        picture = sheet(self._hub.material)
        if path.suffix.lower() == ".pdf":
            data = BytesIO()
            picture.save(data, format="PDF")
            self._save(path, data.getvalue())
        else:
            self._save(path, png(picture))

    def _save(self, path: Path, data: bytes) -> None:
        try:
            save(path, data)
        except Problem as problem:
            self._hub.told.emit(str(problem))
            self.words.setText(str(problem))
        else:
            self._hub.told.emit(f"wrote {path}")
