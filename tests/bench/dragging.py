"""Drags a field across a 40-part screen in the whole window, one move a frame; prints the share within 16 ms."""

from __future__ import annotations

import statistics
import sys
import time
from pathlib import Path

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from tests.bench.test_engine import screen_of
from tests.window.looking import point

from panelproof.editor import theme
from panelproof.editor.hub import Hub
from panelproof.editor.session import Session
from panelproof.editor.window import MainWindow


def main() -> None:
    application = QApplication(sys.argv[:1])
    theme.apply()
    hub = Hub(screen_of(40).layout, Path())
    window = MainWindow(hub, session=Session(Path(sys.argv[1])))
    window.resize(1500, 950)
    window.show()
    while not hub.findings_current:
        application.processEvents()
    assert window.bench is not None
    glass = window.bench.glass
    viewport = glass.canvas.viewport()
    start = point(glass, 4 + 1 * 78 + 60, 4 + 4 * 22 + 11)
    QTest.mousePress(viewport, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, start)
    times = []
    for number in range(1, 200):
        place = QPointF(start.x() + number % 120, start.y() + number % 60)
        began = time.perf_counter()
        move = QMouseEvent(
            QEvent.Type.MouseMove, place, viewport.mapToGlobal(place), Qt.MouseButton.NoButton,
            Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier,
        )  # fmt: skip
        QApplication.sendEvent(viewport, move)
        application.processEvents()
        times.append((time.perf_counter() - began) * 1000)
    print(sum(one <= 16 for one in times) / len(times), statistics.median(times))
    hub.shut()


main()
