"""Runs the window for a test with a real pointer: prints where things lie on the monitor, as JSON, when asked."""

from __future__ import annotations

import json
import sys
from pathlib import Path

from PySide6.QtCore import QPoint, QSocketNotifier
from PySide6.QtWidgets import QApplication, QLineEdit, QWidget

from panelproof.editor import theme
from panelproof.editor.session import Session
from panelproof.editor.tray import TrayButton
from panelproof.editor.window import MainWindow


def middle(widget: QWidget) -> tuple[int, int]:
    at = widget.mapToGlobal(widget.rect().center())
    return at.x(), at.y()


def places(window: MainWindow) -> dict[str, object]:
    bench, hub = window.bench, window.hub
    assert bench is not None
    assert hub is not None
    viewport, sight = bench.glass.canvas.viewport(), bench.glass.canvas.sight()
    origin = viewport.mapToGlobal(QPoint(0, 0))
    found: dict[str, object] = {
        "zero": (origin.x() + sight.x / sight.ratio, origin.y() + sight.y / sight.ratio),
        "pixel": sight.size / sight.ratio,
        "parts": [part.name for part in hub.screen.parts] if hub.screen else [],
        "findings": [[finding.rule, finding.part] for finding in hub.findings]
        if hub.findings_current
        else None,
        "unsaved": hub.history.unsaved,
    }
    for button in bench.tray.findChildren(TrayButton):
        found[f"tray {button.text().lower()}"] = middle(button)
    for line in bench.sheet.part.findChildren(QLineEdit):
        if line.isVisible() and line.accessibleName():
            found[f"row {line.accessibleName()}"] = middle(line)
    return found


def main() -> None:
    application = QApplication(sys.argv[:1])
    theme.apply()
    window = MainWindow(session=Session(Path(sys.argv[2])))
    window.move(0, 0)
    window.resize(1380, 960)
    window.show()
    window.open(Path(sys.argv[1]))
    window.activateWindow()

    def answer() -> None:
        if sys.stdin.readline().strip() == "quit":
            application.exit()
            return
        print(json.dumps(places(window)), flush=True)

    notifier = QSocketNotifier(sys.stdin.fileno(), QSocketNotifier.Type.Read)
    notifier.activated.connect(answer)
    application.exec()


main()
