"""The program: its windows, what they begin with, and what happens when something goes wrong."""

from __future__ import annotations

import os
import signal
import sys
from collections.abc import Callable
from pathlib import Path
from types import TracebackType

from PySide6.QtCore import QTimer
from PySide6.QtGui import QIcon, Qt
from PySide6.QtWidgets import QApplication

from panelproof.editor import theme
from panelproof.editor.session import Session, state_folder
from panelproof.editor.window import MainWindow


class Program:
    """All windows of one process."""

    def __init__(self, session: Session, window: Callable[[Session], MainWindow] | None = None) -> None:
        self._session = session
        self._make = window or (lambda session: MainWindow(session=session))
        self.windows: list[MainWindow] = []

    def window(self) -> MainWindow:
        """Show another, empty window."""
        window = self._make(self._session)
        window.another = self.another
        window.gone.connect(self._gone)
        self.windows.append(window)
        if len(self.windows) > 1:
            last = self.windows[-2].pos()
            window.move(last.x() + 32, last.y() + 32)
        window.show()
        return window

    def another(self, path: Path | None = None) -> MainWindow:
        """Show another window with a file, or with the page to begin from."""
        window = self.window()
        QTimer.singleShot(0, window, lambda: window.open(path) if path else window.start_page())
        return window

    def _gone(self, window: MainWindow) -> None:
        self.windows.remove(window)
        window.deleteLater()

    def begin(self, path: Path | None) -> MainWindow:
        """Show the first window at once, and its document as soon as it has been painted."""
        window = self.window()
        window.painted.connect(lambda: QTimer.singleShot(0, window, lambda: self.furnish(window, path)))
        return window

    def furnish(self, window: MainWindow, path: Path | None) -> None:
        """Offer what was left behind, then show the file given, else the one that was shown last."""
        self._recover(window)
        wanted = path or self._session.last()
        if window.hub is None:
            if wanted:
                window.open(wanted)
            else:
                window.start_page()
        elif path and window.hub.path != path.absolute():
            self.another(path)
        window.setWindowIcon(icon())

    def _recover(self, window: MainWindow) -> None:
        from panelproof.editor.recovery import left_behind, unsaved_folder  # noqa: PLC0415

        left = left_behind(unsaved_folder(self._session.folder))
        for number, one in enumerate(left):
            answer = window.begin().ask.recover(one, len(left) - number - 1)
            if answer == "bring":
                target = window if window.hub is None else self.window()
                target.recover(one)
            elif answer == "discard":
                one.discard()


def icon() -> QIcon:
    """Return the program's icon."""
    from PySide6.QtGui import QPixmap  # noqa: PLC0415 - after the window has been painted

    from panelproof.editor.desktop import ICON  # noqa: PLC0415

    pixels = QPixmap()
    pixels.loadFromData(ICON.encode(), "SVG")
    return QIcon(pixels)


def _mistake(program: Program) -> Callable[[type[BaseException], BaseException, TracebackType | None], None]:
    """Return what to do with an error that nothing expected: keep the work safe, and say so."""
    told: list[str] = []

    def hook(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        if os.environ.get("PANELPROOF_TRACE"):
            sys.__excepthook__(kind, error, trace)
            return
        what = f"{kind.__name__}: {error}"
        print(f"panelproof: this is a mistake in Panelproof, not in your file ({what})", file=sys.stderr)
        for window in program.windows:
            if window.desk is not None:
                window.desk.keep()
        if what not in told and program.windows and program.windows[0].desk is not None:
            told.append(what)
            program.windows[0].desk.ask.sorry(
                "Something went wrong inside Panelproof.",
                f"It is a mistake in the program, not in your file. Your work is kept.\n\n{what}",
            )

    return hook


def run(path: Path | None) -> int:
    """Show the window with a file, or as one left it; return the exit code when the last window closes."""
    QApplication.setHighDpiScaleFactorRoundingPolicy(Qt.HighDpiScaleFactorRoundingPolicy.PassThrough)
    application = QApplication(["panelproof"])
    application.setApplicationName("panelproof")
    application.setApplicationDisplayName("Panelproof")
    application.setDesktopFileName("panelproof")
    # Python would not hear Ctrl+C in the terminal before the next event; work is kept for the next start.
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    session = Session(state_folder())
    if session.remembered("colours") in ("light", "dark"):
        theme.choose("dark" if session.remembered("colours") == "dark" else "light")
    theme.apply()
    program = Program(session)
    sys.excepthook = _mistake(program)
    program.begin(path)
    return application.exec()
