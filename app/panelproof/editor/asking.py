"""Every question the window puts to the person, in one place, so that a test can answer instead."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Literal, Protocol

from PySide6.QtWidgets import QFileDialog, QInputDialog, QMessageBox, QPushButton, QWidget

from panelproof.editor.files import ENDING, title

if TYPE_CHECKING:
    from panelproof.editor.recovery import Left
    from panelproof.layout.document import Layout

Unsaved = Literal["save", "discard", "cancel"]
Foreign = Literal["reload", "keep", "elsewhere", "cancel"]
Recover = Literal["bring", "discard", "later"]
FILES = f"Layouts (*{ENDING} *.json);;All files (*)"


class Ask(Protocol):
    """What can be asked; each method returns when the person has answered."""

    def unsaved(self, path: Path | None) -> Unsaved:
        """Ask what to do with work that is in no file."""

    def foreign(self, path: Path) -> Foreign:
        """Ask whose version stands when another program has changed the file."""

    def recover(self, left: Left, more: int) -> Recover:
        """Offer work that a window left behind; `more` pieces of it are still to come."""

    def new(self) -> Layout | None:
        """Ask for a panel to begin with."""

    def open_path(self, folder: Path) -> Path | None:
        """Ask for a file to open."""

    def save_path(self, suggested: Path) -> Path | None:
        """Ask where to save."""

    def reason(self, rule: str, part: str, message: str) -> str | None:
        """Ask why a part may have a finding."""

    def sorry(self, message: str, detail: str = "") -> None:
        """Tell what could not be done."""


class Questions:
    """Asks with dialogs over a window."""

    def __init__(self, window: QWidget) -> None:
        self._window = window

    def _box(self, icon: QMessageBox.Icon, text: str, detail: str) -> QMessageBox:
        box = QMessageBox(icon, "Panelproof", text, parent=self._window)
        box.setInformativeText(detail)
        return box

    def unsaved(self, path: Path | None) -> Unsaved:
        """Ask what to do with work that is in no file."""
        box = self._box(
            QMessageBox.Icon.Question,
            f"Save the changes to {title(path)}?",
            "They are in no file yet. Without saving they are lost.",
        )
        buttons = QMessageBox.StandardButton
        box.setStandardButtons(buttons.Save | buttons.Discard | buttons.Cancel)
        box.button(buttons.Discard).setText("&Don't save")
        box.setDefaultButton(buttons.Save)
        answer = box.exec()
        return {int(buttons.Save): "save", int(buttons.Discard): "discard"}.get(answer, "cancel")  # type: ignore[return-value]

    def foreign(self, path: Path) -> Foreign:
        """Ask whose version stands when another program has changed the file."""
        box = self._box(
            QMessageBox.Icon.Warning,
            f"{title(path)} was changed by another program.",
            "Saving would overwrite that change. Load theirs (undo brings yours back), keep yours and overwrite "
            "theirs, or save yours under another name.",
        )
        answers: dict[QPushButton, Foreign] = {
            box.addButton("Save &elsewhere…", QMessageBox.ButtonRole.AcceptRole): "elsewhere",
            box.addButton("&Load theirs", QMessageBox.ButtonRole.DestructiveRole): "reload",
            box.addButton("&Keep mine", QMessageBox.ButtonRole.DestructiveRole): "keep",
        }
        box.addButton(QMessageBox.StandardButton.Cancel)
        box.setDefaultButton(next(iter(answers)))
        box.exec()
        return next((word for button, word in answers.items() if button is box.clickedButton()), "cancel")

    def recover(self, left: Left, more: int) -> Recover:
        """Offer work that a window left behind; `more` pieces of it are still to come."""
        when = datetime.fromtimestamp(left.when).strftime("%d %B %Y, %H:%M")
        rest = f"\n\n{more} more will be offered after it." if more else ""
        box = self._box(
            QMessageBox.Icon.Question,
            f"Bring back unsaved work on {title(left.path)}?",
            f"Panelproof ended without closing. This is the work as it was on {when}.{rest}",
        )
        bring = box.addButton("&Bring back", QMessageBox.ButtonRole.AcceptRole)
        away = box.addButton("&Throw away", QMessageBox.ButtonRole.DestructiveRole)
        later = box.addButton("&Later", QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(bring)
        box.setEscapeButton(later)
        box.exec()
        if box.clickedButton() is bring:
            return "bring"
        return "discard" if box.clickedButton() is away else "later"

    def new(self) -> Layout | None:
        """Ask for a panel to begin with."""
        from panelproof.editor.newdialog import NewDialog  # noqa: PLC0415 - only when it is asked for

        dialog = NewDialog(self._window)
        return dialog.layout_made() if dialog.exec() else None

    def open_path(self, folder: Path) -> Path | None:
        """Ask for a file to open."""
        name, _ = QFileDialog.getOpenFileName(self._window, "Open a layout", str(folder), FILES)
        return Path(name) if name else None

    def save_path(self, suggested: Path) -> Path | None:
        """Ask where to save; the dialog itself asks before a file is overwritten."""
        dialog = QFileDialog(self._window, "Save the layout", str(suggested.parent), FILES)
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDefaultSuffix(ENDING.removeprefix("."))
        dialog.selectFile(suggested.name)
        return Path(dialog.selectedFiles()[0]) if dialog.exec() else None

    def reason(self, rule: str, part: str, message: str) -> str | None:
        """Ask why a part may have a finding; it is kept in the file."""
        words = f"{message[:1].upper()}{message[1:]}.\n\nWhy may `{part}` have this? The reason is kept in the file."
        answer, taken = QInputDialog.getText(self._window, f"Accept {rule}", words)
        return answer.strip() or None if taken else None

    def sorry(self, message: str, detail: str = "") -> None:
        """Tell what could not be done."""
        self._box(QMessageBox.Icon.Warning, message, detail).exec()
