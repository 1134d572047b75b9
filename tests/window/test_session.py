"""What outlives the window, and unsaved work that a window left behind."""

from __future__ import annotations

import gc
import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot
from tests.window.answers import Answers, cramped, renamed, tank, written

from panelproof.editor import theme
from panelproof.editor.app import Program
from panelproof.editor.files import stamp
from panelproof.editor.recovery import Keeper, left_behind, unsaved_folder
from panelproof.editor.session import MOST_RECENT, Session, state_folder
from panelproof.editor.window import MainWindow
from panelproof.layout.parts import Box


def test_recent_files_are_listed_latest_first_and_only_while_they_are_there(tmp_path: Path) -> None:
    session = Session(tmp_path / "state")
    paths = [written(tmp_path / f"{number}.panel.json") for number in range(MOST_RECENT + 3)]
    for path in paths:
        session.opened(path)
    session.opened(paths[5])
    assert session.recent()[:2] == (paths[5], paths[-1])
    assert len(session.recent()) == MOST_RECENT
    paths[5].unlink()
    assert session.recent()[0] == paths[-1]
    assert session.last() is None, "the file one left off with is gone"
    session.opened(paths[3])
    assert Session(tmp_path / "state").last() == paths[3]
    session.forget_recent()
    assert session.recent() == ()


@pytest.mark.parametrize("rubbish", [b"", b"[1, 2]", b'{"recent": 3, "window": "x", "last": []}', b"\xff"])
def test_a_broken_memory_is_as_good_as_none(tmp_path: Path, rubbish: bytes) -> None:
    (tmp_path / "session.json").write_bytes(rubbish)
    session = Session(tmp_path)
    assert (session.recent(), session.last(), session.remembered("geometry")) == ((), None, "")
    session.remember({"geometry": "x"})
    assert session.remembered("geometry") == "x"


def test_a_memory_that_cannot_be_written_stops_nobody(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    Session(tmp_path / "file" / "state").remember({"geometry": "x"})


def test_the_place_of_the_memory_can_be_chosen(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("PANELPROOF_STATE", str(tmp_path))
    assert state_folder() == tmp_path
    monkeypatch.delenv("PANELPROOF_STATE")
    # XDG Base Directory Specification: state data lie under $XDG_STATE_HOME.
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "xdg"))
    if sys.platform.startswith("linux"):
        assert state_folder() == tmp_path / "xdg" / "panelproof"


def test_work_left_behind_comes_back_whole(tmp_path: Path) -> None:
    path = written(tmp_path / "tank.panel.json")
    keeper = Keeper(tmp_path / "unsaved")
    assert keeper.keep(cramped(), path, tmp_path, stamp(path))
    assert left_behind(tmp_path / "unsaved") == (), "the window that holds it is alive"
    keeper.release()
    (left,) = left_behind(tmp_path / "unsaved")
    assert (left.layout, left.path, left.folder, left.stamp) == (cramped(), path, tmp_path, stamp(path))
    assert abs(left.when - time.time()) < 60
    assert left_behind(tmp_path / "unsaved") == (), "it is offered once at a time"
    left.discard()
    assert not list((tmp_path / "unsaved").iterdir())


def test_what_cannot_be_read_is_not_offered_and_not_thrown_away(tmp_path: Path) -> None:
    (tmp_path / "1-a.work").write_bytes(b"half of")
    (tmp_path / "2-b.lock").write_bytes(b"")
    assert left_behind(tmp_path) == ()
    assert [file.name for file in tmp_path.iterdir()] == ["1-a.work"], "a lone lock is swept away"


def test_where_nothing_can_be_written_the_keeper_says_so(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    assert not Keeper(tmp_path / "file" / "unsaved").keep(tank(), None, tmp_path, stamp(tmp_path))


# -- a real kill -------------------------------------------------------------------------------------------

CHILD = """
import sys
from pathlib import Path
from PySide6.QtCore import QTimer
from panelproof.editor import app, desk
desk.KEEP_EVERY_MS = 100

def begun(program, path, furnish=app.Program.furnish):
    def then(window, given):
        furnish(program, window, given)
        QTimer.singleShot(50, lambda: window.menus.actions["insert_box"].trigger())
    program.furnish = then
    return start(program, path)

start = app.Program.begin
app.Program.begin = begun
app.run(Path(sys.argv[1]))
"""


def killed(path: Path, state: Path) -> None:
    """Start the program on a file, add a box, and kill it when the work has been kept."""
    environment = {**os.environ, "PANELPROOF_STATE": str(state), "QT_QPA_PLATFORM": "offscreen"}
    child = subprocess.Popen([sys.executable, "-c", CHILD, str(path)], env=environment)
    try:
        until = time.monotonic() + 20
        while not list(unsaved_folder(state).glob("*.work")):
            assert child.poll() is None, "the program ended by itself"
            assert time.monotonic() < until, "nothing was kept"
            time.sleep(0.02)
        assert left_behind(unsaved_folder(state)) == (), "work of a living window is not offered"
    finally:
        child.send_signal(signal.SIGKILL)
        child.wait()


Start = Callable[[Path | None], MainWindow]


@pytest.fixture
def start(qtbot: QtBot, tmp_path: Path, answers: Answers) -> Iterator[Start]:
    """Start the program in this process, with a person who answers."""
    theme.apply()
    programs: list[Program] = []

    def begin(path: Path | None) -> MainWindow:
        program = Program(
            Session(tmp_path / "state"), lambda session: MainWindow(session=session, ask=answers)
        )
        programs.append(program)
        window = program.begin(path)
        qtbot.waitUntil(lambda: window.shows() != "nothing", timeout=5000)
        return window

    yield begin
    answers.unsaved_answer = "discard"
    for program in programs:
        for window in tuple(program.windows):
            window.close()


def test_after_a_kill_the_next_start_offers_the_work(start: Start, answers: Answers, tmp_path: Path) -> None:
    path = written(tmp_path / "tank.panel.json")
    before = path.read_bytes()
    killed(path, tmp_path / "state")
    assert path.read_bytes() == before, "the file itself is untouched"

    answers.recover_answer = "bring"
    window = start(None)
    assert answers.asked == ["recover tank.panel.json +0"]
    hub = window.hub
    assert hub is not None
    assert hub.path == path
    assert any(isinstance(part, Box) for part in hub.layout.screens[0].parts)
    assert window.isWindowModified()
    assert window.desk is not None
    assert window.desk.save()
    assert not window.isWindowModified()
    window.close()
    assert not list(unsaved_folder(tmp_path / "state").iterdir()), "nothing is left to be offered again"


def test_work_put_off_is_offered_again_and_thrown_away_when_asked(
    start: Start, answers: Answers, tmp_path: Path
) -> None:
    path = written(tmp_path / "tank.panel.json")
    keeper = Keeper(unsaved_folder(tmp_path / "state"))
    assert keeper.keep(cramped(), path, tmp_path, stamp(path))
    keeper.release()
    answers.recover_answer = "later"
    window = start(path)
    assert window.hub is not None
    assert window.hub.layout == tank(), "the file as it is"
    window.close()
    # In life the process would end here, and its locks with it.
    gc.collect()
    answers.recover_answer = "discard"
    start(None)
    assert answers.asked == ["recover tank.panel.json +0"] * 2
    assert not list(unsaved_folder(tmp_path / "state").glob("*.work"))


def test_recovered_work_does_not_overwrite_a_file_that_changed_meanwhile(
    start: Start, answers: Answers, tmp_path: Path
) -> None:
    path = written(tmp_path / "tank.panel.json")
    keeper = Keeper(unsaved_folder(tmp_path / "state"))
    assert keeper.keep(cramped(), path, tmp_path, stamp(path))
    keeper.release()
    written(path, renamed(tank(), "theirs"))
    answers.recover_answer = "bring"
    window = start(None)
    assert window.desk is not None
    assert window.desk.foreign
    assert not window.desk.save(), "the person said: cancel"
    assert answers.asked[-1] == "foreign tank.panel.json"
    assert b"theirs" in path.read_bytes()


def test_the_program_reopens_where_one_left_off(start: Start, tmp_path: Path) -> None:
    path = written(tmp_path / "tank.panel.json")
    first = start(path)
    first.close()
    second = start(None)
    assert second.hub is not None
    assert second.hub.path == path


def test_without_a_past_it_begins_with_the_choice_of_a_panel(start: Start) -> None:
    window = start(None)
    assert window.hub is None
    assert window.shows() == "start"
    assert window.menus.actions["new"].isEnabled()
    assert not window.menus.actions["save"].isEnabled()
