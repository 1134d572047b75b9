"""The list of shortcuts, made from the menus themselves and from what the panes answer to."""

from __future__ import annotations

from html import escape

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QTextBrowser, QVBoxLayout, QWidget

from panelproof.editor import theme
from panelproof.editor.menus import Menus

NATIVE = QKeySequence.SequenceFormat.NativeText
PANES: tuple[tuple[str, tuple[tuple[str, str], ...]], ...] = (
    ("On the glass", (
        ("Arrow keys", "Move by 1 pixel"),
        ("Shift+arrow keys", "Move by 8 pixels"),
        ("Ctrl+arrow keys", "Pull the right or lower side of a box"),
        ("Page Up, Page Down", "Choose the part before, the part after"),
        ("Enter", "Go to the sheet of the chosen part"),
        ("Escape", "Give up a drag; else choose nothing"),
        ("+, −, 0", "Enlarge more, enlarge less, fit"),
        ("Space and drag", "Push the panel about"),
    )),
    ("In the list of parts", (
        ("Ctrl+Up, Ctrl+Down", "Draw the chosen parts earlier, later"),
        ("F2", "Rename"),
    )),
    ("In the tray", (("Enter, Insert, Space", "Put a new part into the middle"),)),
    ("In the list of findings", (
        ("Up, Down", "Show a finding on the glass"),
        ("Enter", "Show it again"),
        ("Ctrl+Enter", "Apply its remedy"),
    )),
)  # fmt: skip


def rows(menus: Menus) -> list[tuple[str, list[tuple[str, str]]]]:
    """Return the sections of the list, each with its keys and what they do."""
    sections = []
    for title, deeds in menus.titles:
        found = []
        for deed in deeds:
            action = menus.actions[deed]
            keys = action.shortcut().toString(NATIVE)
            if keys:
                found.append((keys, menus.entries[deed].words.replace("&", "").removesuffix("…")))
        if found:
            sections.append((title, found))
    return sections + [(title, list(pairs)) for title, pairs in PANES]


class ShortcutList(QDialog):
    """Shows every shortcut of the window."""

    def __init__(self, menus: Menus, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Shortcuts")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self._menus = menus
        self.page = QTextBrowser()
        self.page.setAccessibleName("Shortcuts")
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        theme.space(column, theme.GAP, theme.GAP)
        column.addWidget(self.page)
        column.addWidget(buttons)
        self.resize(520, 600)
        theme.watch(self, self._write)
        self._write()

    def _write(self) -> None:
        tones = theme.colours()
        parts = []
        for title, pairs in rows(self._menus):
            lines = "".join(
                f'<tr><td width="210" style="color:{tones.quiet.name()}">{escape(keys)}</td>'
                f"<td>{escape(words)}</td></tr>"
                for keys, words in pairs
            )
            parts.append(f'<h4>{escape(title)}</h4><table cellpadding="2">{lines}</table>')
        self.page.setHtml("".join(parts))
