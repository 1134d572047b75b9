"""The first five minutes: from an empty window to a header that compiles, without the file ever touched by hand."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit
from pytestqt.qtbot import QtBot
from tests.firmware.harness import WARNINGS, compiled
from tests.window.answers import Answers
from tests.window.looking import carry

from panelproof.editor.exporting import ExportDialog
from panelproof.editor.window import MainWindow
from panelproof.layout.document import Ink, Layout, Screen
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field


def type_into(window: MainWindow, caption: str, text: str) -> None:
    """Type over what a row of the sheet holds, and press Enter."""
    assert window.bench is not None
    QApplication.processEvents()
    lines = [
        line
        for line in window.bench.sheet.part.findChildren(QLineEdit)
        if line.accessibleName() == caption and line.isVisible()
    ]
    assert len(lines) == 1, caption
    lines[0].setFocus()
    lines[0].selectAll()
    QTest.keyClicks(lines[0], text)
    QTest.keyClick(lines[0], Qt.Key.Key_Return)


def test_from_an_empty_window_to_a_header_that_compiles(
    window: MainWindow, answers: Answers, qtbot: QtBot, tmp_path: Path
) -> None:
    # Choose a panel.
    answers.layout = Layout(
        1,
        "supply",
        Panel(160, 80),
        (),
        (Ink("black", "#000000"), Ink("white", "#ffffff")),
        (Screen("main", "black"),),
    )
    window.menus.actions["new"].trigger()
    hub, bench = window.hub, window.bench
    assert hub is not None
    assert bench is not None

    def proved() -> None:
        assert hub.findings_current

    # Drag two fields and an icon onto it.
    carry(bench.glass, "field", 60, 20, drop=True)
    carry(bench.glass, "field", 60, 60, drop=True)
    carry(bench.glass, "icon", 140, 12, drop=True)
    screen = hub.screen
    assert screen is not None
    assert [part.name for part in screen.parts] == ["field", "field-2", "icon"]
    qtbot.waitUntil(proved)
    assert not hub.findings

    # Say what the first can show; at once it is told what goes wrong, and for which text.
    hub.select(["field"])
    type_into(window, "Format", "%.2f V")
    type_into(window, "Greatest", "10000")
    qtbot.waitUntil(proved)
    faults = [finding for finding in hub.findings if finding.part == "field"]
    assert faults
    assert faults[0].rule == "fit"
    assert faults[0].texts
    assert any("V" in text for text in faults[0].texts)

    # A wrong entry is told beside its row, and the last good value holds.
    type_into(window, "Format", "%g")
    part = hub.part("field")
    assert isinstance(part, Field)
    assert part.content.format == "%.2f V"

    # Mend it: a smaller range, and the padding box fitted.
    type_into(window, "Format", "%.2f V")
    type_into(window, "Greatest", "60")
    bench.sheet.part._fit()
    qtbot.waitUntil(proved)
    assert [finding for finding in hub.findings if finding.level == "fault"] == []

    # Save it, and hand it over.
    answers.to_save = tmp_path / "supply.panel.json"
    assert window.desk is not None
    assert window.desk.save()
    dialog = ExportDialog(hub)
    qtbot.addWidget(dialog)
    assert "no fault" in dialog.words.text()
    dialog.write_header(tmp_path / "supply.h")
    (tmp_path / "main.c").write_text(
        '#define SUPPLY_IMPLEMENTATION\n#include "supply.h"\nint main(void) { return 0; }\n'
    )
    compiled(tmp_path, ["-std=c99", *WARNINGS, "main.c", "-o", "main"])
