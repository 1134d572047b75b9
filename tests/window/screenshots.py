"""Makes README's pictures of the window: `python -m tests.window.screenshots`."""

from __future__ import annotations

import os
import sys
import tempfile
import time
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtWidgets import QApplication

from panelproof.editor import theme
from panelproof.editor.hub import Hub
from panelproof.editor.session import Session
from panelproof.editor.window import MainWindow
from panelproof.layout.reading import read

ROOT = Path(__file__).parents[2]
KILN = ROOT / "examples" / "kiln"
PICTURES = ROOT / "examples" / "pictures"


def shot(name: str, layout: str, size: tuple[int, int], *, dark: bool, chosen: str, moment: str) -> None:
    """Show the kiln in a window and take its picture."""
    theme.choose("dark" if dark else "light")
    path = KILN / f"{layout}.panel.json"
    hub = Hub(read(path), path.parent)
    hub.path = path
    with tempfile.TemporaryDirectory() as state:
        window = MainWindow(hub, session=Session(Path(state)))
        window.resize(*size)
        window.show()
        hub.show_screen("readings")
        hub.show_moment(moment)
        hub.select([chosen])
        end = time.monotonic() + 1.5
        while time.monotonic() < end:
            QApplication.processEvents()
        window.grab().save(str(PICTURES / f"{name}.png"))
        window.hide()
        hub.shut()


def main() -> None:
    """Make every picture."""
    PICTURES.mkdir(exist_ok=True)
    application = QApplication(sys.argv[:1])
    theme.apply()
    shot("window-light", "by-eye", (1500, 950), dark=False, chosen="chamber", moment="ramp")
    shot("window-dark", "kiln", (1500, 950), dark=True, chosen="radio", moment="server-lost")
    shot("window-smallest", "kiln", (1100, 720), dark=False, chosen="set-point", moment="cold")
    del application


if __name__ == "__main__":
    main()
