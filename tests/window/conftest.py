"""The window is tried without a display."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

try:
    import PySide6.QtWidgets  # noqa: F401
except ImportError as missing:
    if os.environ.get("CI") == "true":
        raise
    print(f"the tests of the window are left out: Qt lacks a library of the system ({missing})")
    collect_ignore_glob = ["test_*.py"]

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot
    from tests.window.answers import Answers

    from panelproof.editor.window import MainWindow


@pytest.fixture(autouse=True)
def empty_clipboard() -> Iterator[None]:
    """Leave the clipboard empty: Qt's offscreen plugin crashes at the end where Python's data lie on it."""
    yield
    from PySide6.QtGui import QGuiApplication

    if QGuiApplication.instance() is not None:
        QGuiApplication.clipboard().clear()


@pytest.fixture(autouse=True)
def no_file_is_chosen(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whoever asks for a picture gets none, unless a test has one: the dialog would wait for ever."""
    from panelproof.editor import picturefile

    monkeypatch.setattr(picturefile, "choose", lambda *_: "")


@pytest.fixture
def answers() -> Answers:
    """What the person answers when the window asks."""
    from tests.window.answers import Answers

    return Answers()


@pytest.fixture
def window(qtbot: QtBot, tmp_path: Path, answers: Answers) -> Iterator[MainWindow]:
    """An empty window of its own, whose memory is a folder of the test."""
    from PySide6.QtCore import QCoreApplication, QEvent

    from panelproof.editor import theme
    from panelproof.editor.session import Session
    from panelproof.editor.window import MainWindow

    theme.apply()
    shown = MainWindow(session=Session(tmp_path / "state"), ask=answers)
    shown.show()
    qtbot.waitExposed(shown)
    yield shown
    answers.unsaved_answer = "discard"
    shown.close()
    shown.deleteLater()
    # Not left to the event loop, which does not run between tests.
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
