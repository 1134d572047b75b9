"""Speed of the window, as ratios and shares within one run; nothing here fails on a time."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from tests.bench.test_engine import best, told

ROOT = Path(__file__).parents[2]
OFFSCREEN = {**os.environ, "QT_QPA_PLATFORM": "offscreen"}

BARE = """
import sys
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QMainWindow
class Window(QMainWindow):
    def paintEvent(self, event):
        super().paintEvent(event)
        QTimer.singleShot(0, QApplication.quit)
application = QApplication([])
window = Window()
window.resize(1280, 820)
window.show()
application.exec()
"""

OURS = """
import sys
from pathlib import Path
from PySide6.QtWidgets import QApplication
from panelproof.editor import app, theme
from panelproof.editor.session import Session
application = QApplication(["panelproof"])
theme.apply()
program = app.Program(Session(Path(sys.argv[1])))
program.begin(None)
program.windows[0].painted.connect(application.quit)
application.exec()
"""

EDITS = """
import random, sys
from pathlib import Path
from PySide6.QtWidgets import QApplication
from panelproof.editor import edits
from panelproof.editor.hub import Hub
from tests.bench.test_engine import screen_of
application = QApplication([])
hub = Hub(screen_of(40).layout, Path())
chance = random.Random(1)
for number in range(int(sys.argv[1])):
    name = f"f{chance.randrange(40)}"
    step = 1 if number % 2 else -1
    hub.apply("move", edits.move_parts(hub.layout, "main", [name], step, 0))
    if number % 10 == 9:
        hub.undo()
status = Path("/proc/self/status").read_text()
print([line for line in status.splitlines() if line.startswith("VmRSS")][0].split()[1])
hub.shut()
"""


def test_first_paint(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    pytest.importorskip("PySide6.QtWidgets")

    def process(code: str) -> None:
        subprocess.run(
            [sys.executable, "-c", code, tmp_path], check=True, env=OFFSCREEN, cwd=ROOT, capture_output=True
        )

    bare = best(lambda: process(BARE), 5)
    ours = best(lambda: process(OURS), 5)
    told(capsys, "first paint / first paint of a bare main window", ours / bare, "at most 2")


def test_memory_of_many_edits(capsys: pytest.CaptureFixture[str]) -> None:
    pytest.importorskip("PySide6.QtWidgets")
    if not Path("/proc/self/status").exists():
        pytest.skip("the memory of a process is read from /proc")

    def memory(edits: int) -> int:
        done = subprocess.run(
            [sys.executable, "-c", EDITS, str(edits)],
            check=True, env=OFFSCREEN, cwd=ROOT, capture_output=True, text=True,
        )  # fmt: skip
        return int(done.stdout)

    told(
        capsys, "memory after 10 000 edits / after 1 000", memory(10_000) / memory(1_000), "no steady growth"
    )


def test_a_field_dragged_across_forty_parts(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    pytest.importorskip("PySide6.QtWidgets")
    code = Path(__file__).with_name("dragging.py")
    done = subprocess.run(
        [sys.executable, code, tmp_path], check=True, env={**OFFSCREEN, "PYTHONPATH": str(ROOT)}, cwd=ROOT,
        capture_output=True, text=True,
    )  # fmt: skip
    share, median = map(float, done.stdout.split())
    told(capsys, "share of frames within 16 ms while dragging in the whole window", share, "1")
    told(capsys, "median frame in ms", median, "below 16")
