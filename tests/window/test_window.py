"""The document and its file, in the steps of a user."""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QAction, QDragEnterEvent, QDropEvent, QKeySequence
from PySide6.QtWidgets import QAbstractButton, QComboBox, QSpinBox, QWidget
from pytestqt.qtbot import QtBot
from tests.window.answers import Answers, cramped, renamed, tank, written

from panelproof.editor import edits, files
from panelproof.editor.hub import Hub
from panelproof.editor.recovery import unsaved_folder
from panelproof.editor.shortcuts import ShortcutList, rows
from panelproof.editor.window import MainWindow
from panelproof.layout.parts import Icon, IconState, Label
from panelproof.layout.reading import read


def opened(window: MainWindow, path: Path) -> Hub:
    """Open a file and return what the window holds then."""
    assert window.open(path)
    assert window.hub is not None
    return window.hub


def add_label(hub: Hub, text: str = "added") -> None:
    """Change the layout as a person might."""
    layout, name = edits.add_part(hub.layout, hub.material, "main", "label", (60, 20))
    part = next(part for part in layout.screens[0].parts if part.name == name)
    assert isinstance(part, Label)
    assert hub.apply("new label", edits.set_part(layout, "main", name, replace(part, text=text))) is None


def press(window: MainWindow, deed: str) -> QAction:
    """Choose an entry of the menus."""
    action = window.menus.actions[deed]
    assert action.isEnabled(), f"{deed} is not of use now"
    action.trigger()
    return action


# -- new, open, save ---------------------------------------------------------------------------------------


def test_a_new_layout_is_saved_under_a_name_and_opened_again(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    answers.layout = replace(tank(), name=files.UNTITLED)
    press(window, "new")
    assert window.windowTitle() == "untitled[*] – Panelproof"
    assert not window.isWindowModified()
    hub = window.hub
    assert hub is not None
    add_label(hub)
    assert window.isWindowModified()
    answers.to_save = tmp_path / "rain barrel"
    press(window, "save")
    saved = tmp_path / "rain barrel.panel.json"
    assert answers.asked == ["new", "save untitled.panel.json"]
    assert read(saved) == hub.layout
    assert hub.layout.name == "rain-barrel", "an untitled layout takes its file's name"
    assert window.windowTitle() == "rain barrel.panel.json[*] – Panelproof"
    assert not window.isWindowModified()
    assert window.session.recent() == (saved,)

    press(window, "undo")
    press(window, "undo")
    assert window.isWindowModified(), "what was saved is not what is shown any more"
    press(window, "redo")
    press(window, "redo")
    assert not window.isWindowModified()


def test_a_file_that_cannot_be_opened_leaves_everything_as_it_was(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    hub = opened(window, written(tmp_path / "tank.panel.json"))
    bad = tmp_path / "bad.panel.json"
    bad.write_text("{")
    answers.to_open = bad
    press(window, "open")
    assert answers.asked[0] == "open"
    assert answers.asked[1].startswith("sorry bad.panel.json cannot be opened: ")
    assert hub.path == tmp_path / "tank.panel.json"
    assert window.session.recent() == (tmp_path / "tank.panel.json",)


def test_a_layout_whose_font_is_missing_is_told_of_not_shown(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    layout = tank()
    types = (replace(layout.types[0], font="no-such-font-anywhere"),)
    assert not window.open(written(tmp_path / "tank.panel.json", replace(layout, types=types)))
    assert "no-such-font-anywhere" in answers.asked[0]
    assert window.shows() == "start"


def test_saving_elsewhere_keeps_pictures_and_fonts_found_and_everything_can_be_undone(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    from PIL import Image

    here, there = tmp_path / "here", tmp_path / "there" / "deep"
    here.mkdir()
    there.mkdir(parents=True)
    Image.new("1", (4, 4), 1).save(here / "up.png")
    layout = tank()
    icon = Icon("link", 200, 10, "white", (IconState("up", picture="up.png"), IconState("down", ("#",))))
    moments = tuple(replace(moment, icons={"link": "up"}) for moment in layout.moments)
    screen = replace(layout.screens[0], parts=(*layout.screens[0].parts, icon))
    first = replace(layout, screens=(screen,), moments=moments)
    hub = opened(window, written(here / "tank.panel.json", first))
    add_label(hub)
    answers.to_save = there / "tank.panel.json"
    press(window, "save_as")
    moved = read(there / "tank.panel.json")
    assert "../../here/up.png" in str(moved)
    assert hub.folder == there
    assert not window.isWindowModified()
    press(window, "undo")
    assert files.rebased(hub.layout, there, here) == first
    assert read(here / "tank.panel.json") == first, "the first file is untouched"


def test_where_saving_fails_the_work_stays_unsaved(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    hub = opened(window, written(tmp_path / "tank.panel.json"))
    add_label(hub)
    answers.to_save = tmp_path / "no" / "such" / "folder" / "x.panel.json"
    press(window, "save_as")
    assert answers.asked[-1].startswith("sorry x.panel.json could not be saved: ")
    assert window.isWindowModified()
    assert hub.path == tmp_path / "tank.panel.json"


def test_a_file_dropped_onto_the_window_is_opened(window: MainWindow, tmp_path: Path) -> None:
    opened(window, written(tmp_path / "first.panel.json"))
    elsewhere: list[Path | None] = []
    window.another = elsewhere.append
    paths = [written(tmp_path / f"{name}.panel.json") for name in ("second", "third")]
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(path)) for path in paths])
    copy, left = Qt.DropAction.CopyAction, Qt.MouseButton.LeftButton
    none = Qt.KeyboardModifier.NoModifier
    enter = QDragEnterEvent(QPoint(50, 50), copy, mime, left, none)
    window.dragEnterEvent(enter)
    assert enter.isAccepted()
    window.dropEvent(QDropEvent(QPointF(50, 50), copy, mime, left, none))
    assert window.hub is not None
    assert window.hub.path == paths[0]
    assert elsewhere == [paths[1]]


def test_what_is_no_layout_cannot_be_dropped(window: MainWindow, tmp_path: Path) -> None:
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(tmp_path / "photo.jpg"))])
    enter = QDragEnterEvent(
        QPoint(5, 5), Qt.DropAction.CopyAction, mime, Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )  # fmt: skip
    enter.ignore()
    window.dragEnterEvent(enter)
    assert not enter.isAccepted()


def test_a_recent_file_is_opened_from_the_menu(window: MainWindow, tmp_path: Path) -> None:
    paths = [written(tmp_path / f"{name}.panel.json") for name in ("old", "new")]
    for path in paths:
        opened(window, path)
    window.menus.recent.aboutToShow.emit()
    entries = [action for action in window.menus.recent.actions() if action.text()]
    assert [entry.text() for entry in entries] == ["&1 new.panel.json", "&2 old.panel.json", "&Forget these"]
    entries[1].trigger()
    assert window.hub is not None
    assert window.hub.path == paths[0]
    entries[2].trigger()
    window.menus.recent.aboutToShow.emit()
    assert [action.text() for action in window.menus.recent.actions()] == ["None yet"]


# -- unsaved work ------------------------------------------------------------------------------------------


def test_closing_asks_about_unsaved_work(window: MainWindow, answers: Answers, tmp_path: Path) -> None:
    path = written(tmp_path / "tank.panel.json")
    hub = opened(window, path)
    add_label(hub)
    answers.unsaved_answer = "cancel"
    assert not window.close()
    assert window.isVisible()
    assert answers.asked == ["unsaved tank.panel.json"]
    answers.unsaved_answer = "save"
    assert window.close()
    assert read(path) == hub.layout


def test_closing_without_saving_drops_the_work_for_good(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    path = written(tmp_path / "tank.panel.json")
    hub = opened(window, path)
    add_label(hub)
    assert window.desk is not None
    window.desk.keep()
    answers.unsaved_answer = "discard"
    assert window.close()
    assert read(path) == tank()
    assert not list(unsaved_folder(tmp_path / "state").iterdir())


def test_closing_asks_nothing_where_all_is_saved(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    hub = opened(window, written(tmp_path / "tank.panel.json"))
    add_label(hub)
    press(window, "undo")
    assert window.close()
    assert answers.asked == []


@pytest.mark.parametrize("deed", ["new", "open"])
def test_another_document_asks_about_unsaved_work_first(
    window: MainWindow, answers: Answers, tmp_path: Path, deed: str
) -> None:
    hub = opened(window, written(tmp_path / "tank.panel.json"))
    add_label(hub)
    press(window, deed)
    assert answers.asked == ["unsaved tank.panel.json"], "cancelled: nothing else is asked"
    answers.unsaved_answer = "save"
    answers.layout, answers.to_open = cramped(), written(tmp_path / "other.panel.json", cramped())
    press(window, deed)
    assert hub.layout == cramped()
    assert b"added" in (tmp_path / "tank.panel.json").read_bytes()


def test_unsaved_work_is_kept_every_few_seconds_and_let_go_once_saved(
    window: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    hub = opened(window, written(tmp_path / "tank.panel.json"))
    assert window.desk is not None
    assert window.desk._keeping.interval() <= 5000
    window.desk._keeping.setInterval(20)

    def kept() -> list[Path]:
        return list(unsaved_folder(tmp_path / "state").glob("*.work"))

    qtbot.wait(60)
    assert not kept(), "nothing unsaved, nothing kept"
    add_label(hub)
    qtbot.waitUntil(lambda: len(kept()) == 1)
    add_label(hub, "second")
    qtbot.waitUntil(lambda: b"second" in kept()[0].read_bytes())
    press(window, "undo")
    press(window, "undo")
    qtbot.waitUntil(lambda: not kept())
    add_label(hub)
    qtbot.waitUntil(lambda: len(kept()) == 1)
    press(window, "save")
    assert not kept()


def test_where_work_cannot_be_kept_the_person_is_told_once(
    window: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    hub = opened(window, written(tmp_path / "tank.panel.json"))
    unsaved_folder(tmp_path / "state").parent.mkdir(exist_ok=True)
    unsaved_folder(tmp_path / "state").write_text("in the way")
    add_label(hub)
    assert window.desk is not None
    with qtbot.waitSignal(window.desk.told) as told:
        window.desk.keep()
    assert told.args is not None
    assert "save soon" in told.args[0]


def test_work_given_up_for_another_document_is_not_offered_later(
    window: MainWindow, qtbot: QtBot, answers: Answers, tmp_path: Path
) -> None:
    hub = opened(window, written(tmp_path / "tank.panel.json"))
    add_label(hub)
    assert window.desk is not None
    window.desk.keep()
    folder = unsaved_folder(tmp_path / "state")
    qtbot.waitUntil(lambda: len(list(folder.glob("*.work"))) == 1)
    answers.unsaved_answer = "discard"
    opened(window, written(tmp_path / "other.panel.json", cramped()))
    assert not list(folder.glob("*.work"))


# -- other programs ----------------------------------------------------------------------------------------


def test_a_change_by_another_program_is_noticed_by_itself(
    window: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    path = written(tmp_path / "tank.panel.json")
    hub = opened(window, path)
    theirs = renamed(tank(), "theirs")
    files.store(theirs, path)  # written beside and put in its place, as most programs do
    assert window.banner is not None
    qtbot.waitUntil(lambda: window.banner is not None and window.banner.isVisible(), timeout=5000)
    assert "tank.panel.json was changed by another program" in window.banner.words.text()
    assert hub.layout == tank(), "nothing is loaded unasked"
    window.banner.load.click()
    assert hub.layout == theirs
    assert not window.banner.isVisible()
    assert not window.isWindowModified()
    press(window, "undo")
    assert hub.layout == tank(), "one's own comes back"


def test_a_change_in_place_is_noticed_too_and_again(window: MainWindow, qtbot: QtBot, tmp_path: Path) -> None:
    path = written(tmp_path / "tank.panel.json")
    opened(window, path)
    banner = window.banner
    assert banner is not None
    for name in ("first", "second"):
        written(path, renamed(tank(), name))
        qtbot.waitUntil(banner.isVisible, timeout=5000)
        banner.load.click()
        assert window.hub is not None
        assert window.hub.layout.name == name
        assert not banner.isVisible()


def test_writing_the_same_again_is_no_change(window: MainWindow, qtbot: QtBot, tmp_path: Path) -> None:
    path = written(tmp_path / "tank.panel.json")
    opened(window, path)
    written(path)
    qtbot.wait(400)
    assert window.banner is not None
    assert not window.banner.isVisible()


@pytest.mark.parametrize("noticed", [True, False])
def test_a_foreign_change_is_never_overwritten_silently(
    window: MainWindow, answers: Answers, tmp_path: Path, noticed: bool
) -> None:
    path = written(tmp_path / "tank.panel.json")
    hub = opened(window, path)
    add_label(hub)
    theirs = written(path, renamed(tank(), "theirs")).read_bytes()
    assert window.desk is not None
    if noticed:
        window.desk.look()
    press(window, "save")
    assert answers.asked == ["foreign tank.panel.json"]
    assert path.read_bytes() == theirs
    assert window.isWindowModified()

    answers.foreign_answer, answers.to_save = "elsewhere", tmp_path / "mine"
    press(window, "save")
    assert path.read_bytes() == theirs
    assert b"added" in (tmp_path / "mine.panel.json").read_bytes()
    assert hub.path == tmp_path / "mine.panel.json"


def test_keeping_mine_overwrites_what_was_seen_and_nothing_later(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    path = written(tmp_path / "tank.panel.json")
    hub = opened(window, path)
    written(path, renamed(tank(), "theirs"))
    assert window.desk is not None
    assert window.banner is not None
    window.desk.look()
    window.banner.keep.click()
    assert window.isWindowModified(), "what is shown is not what is on the disk"
    written(path, renamed(tank(), "theirs-again"))
    press(window, "save")
    assert answers.asked == ["foreign tank.panel.json"]
    answers.foreign_answer = "keep"
    press(window, "save")
    assert read(path) == hub.layout == tank()


def test_loading_theirs_when_saving(window: MainWindow, answers: Answers, tmp_path: Path) -> None:
    path = written(tmp_path / "tank.panel.json")
    hub = opened(window, path)
    add_label(hub)
    mine = hub.layout
    written(path, renamed(tank(), "theirs"))
    answers.foreign_answer = "reload"
    press(window, "save")
    assert hub.layout == renamed(tank(), "theirs")
    press(window, "undo")
    assert hub.layout == mine


def test_theirs_that_is_broken_is_told_of_and_mine_stays(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    path = written(tmp_path / "tank.panel.json")
    hub = opened(window, path)
    path.write_text("{ half")
    assert window.desk is not None
    assert window.banner is not None
    window.desk.look()
    window.banner.load.click()
    assert answers.asked[-1].startswith("sorry tank.panel.json cannot be loaded: ")
    assert hub.layout == tank()
    assert window.banner.isVisible()


def test_a_file_that_was_removed_is_written_again_by_saving(
    window: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    path = written(tmp_path / "tank.panel.json")
    hub = opened(window, path)
    path.unlink()
    qtbot.waitUntil(window.isWindowModified, timeout=5000)
    assert "not on the disk" in window.statusBar().currentMessage()
    press(window, "save")
    assert read(path) == hub.layout


# -- the rest of the window --------------------------------------------------------------------------------


def test_size_and_panes_are_as_one_left_them(window: MainWindow, qtbot: QtBot, tmp_path: Path) -> None:
    opened(window, written(tmp_path / "tank.panel.json"))
    assert window.bench is not None
    # Qt keeps a restored window on the screen, and the screen of these tests is small: the least width holds.
    window.resize(1000, 700)
    window.bench.columns.setSizes([232, 400, 366])
    window.bench.middle.setSizes([400, 200])
    qtbot.wait(10)
    columns, middle = window.bench.columns.sizes(), window.bench.middle.sizes()
    window.close()
    again = MainWindow(session=window.session, ask=Answers())
    qtbot.addWidget(again)
    again.show()
    opened(again, tmp_path / "tank.panel.json")
    assert again.bench is not None
    qtbot.wait(10)
    assert again.height() == 700
    assert again.bench.columns.sizes()[::2] == columns[::2], "the middle one takes what the others leave"
    assert again.bench.middle.sizes()[1] == middle[1]


def test_a_refused_change_is_told_at_the_foot_of_the_window(window: MainWindow, tmp_path: Path) -> None:
    hub = opened(window, written(tmp_path / "tank.panel.json"))
    assert hub.apply("no inks", replace(hub.layout, inks=())) is not None
    message = window.statusBar().currentMessage()
    assert message[0].isupper()
    assert "ink" in message


def test_the_menus_say_what_undo_takes_back_and_what_is_of_use(window: MainWindow, tmp_path: Path) -> None:
    hub = opened(window, written(tmp_path / "tank.panel.json"))
    actions = window.menus.actions
    assert not actions["undo"].isEnabled()
    assert not actions["delete"].isEnabled()
    press(window, "insert_box")
    assert actions["undo"].text() == "&Undo: new box"
    assert actions["delete"].isEnabled(), "what is new is chosen"
    assert not actions["space_across"].isEnabled()
    press(window, "delete")
    assert [part.name for part in hub.layout.screens[0].parts] == ["title", "level"]
    press(window, "undo")
    assert actions["redo"].text().startswith("&Redo: delete")


def test_every_entry_that_changes_nothing_outside_the_window_can_be_chosen(
    window: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    hub = opened(window, written(tmp_path / "tank.panel.json"))
    outside = {"new", "open", "another", "save", "save_as", "export", "close", "quit", "about", "full_screen"}
    for deed, action in window.menus.actions.items():
        if deed not in outside:
            hub.select(("title", "level"))
            action.trigger()
            qtbot.wait(0)


def test_the_keyboard_goes_round_the_panes(window: MainWindow, tmp_path: Path) -> None:
    opened(window, written(tmp_path / "tank.panel.json"))
    bench = window.bench
    assert bench is not None
    window.activateWindow()
    bench.glass.setFocus()
    seen = []
    for _ in bench.panes():
        press(window, "next_pane")
        focused = window.focusWidget()
        assert focused is not None
        holds = [pane is focused or pane.isAncestorOf(focused) for pane in bench.panes()]
        assert any(holds), f"the focus is nowhere: {focused}"
        seen.append(holds.index(True))
    assert sorted(seen) == list(range(len(bench.panes())))


def test_no_two_entries_have_one_shortcut(window: MainWindow) -> None:
    keys = [
        key.toString(QKeySequence.SequenceFormat.PortableText)
        for action in window.menus.actions.values()
        for key in action.shortcuts()
    ]
    assert len(keys) == len(set(keys))
    for deed, key in (("undo", "Ctrl+Z"), ("save", "Ctrl+S"), ("copy", "Ctrl+C"), ("new", "Ctrl+N")):
        assert key in [shortcut.toString() for shortcut in window.menus.actions[deed].shortcuts()]


def test_the_list_of_shortcuts_has_every_shortcut_of_the_menus(window: MainWindow, qtbot: QtBot) -> None:
    listed = {words for _, pairs in rows(window.menus) for _, words in pairs}
    for deed, action in window.menus.actions.items():
        words = window.menus.entries[deed].words.replace("&", "").removesuffix("…")
        assert (words in listed) == bool(action.shortcuts()), deed
    page = ShortcutList(window.menus)
    qtbot.addWidget(page)
    assert "Move by 8 pixels" in page.page.toPlainText()


def unnamed(window: QWidget) -> list[str]:
    """Return the controls that can have the focus, and have nothing to be called by."""
    found = []
    for widget in window.findChildren(QWidget):
        if widget.focusPolicy() == Qt.FocusPolicy.NoFocus or not widget.isVisibleTo(window):
            continue
        inner = widget.objectName().startswith("qt_") or isinstance(widget.parent(), QComboBox | QSpinBox)
        words = widget.text() if isinstance(widget, QAbstractButton) else ""
        if not (inner or words or widget.accessibleName()):
            found.append(f"{type(widget).__name__} in {type(widget.parent()).__name__}")
    return found


def test_every_control_of_the_window_has_a_name_for_those_who_hear_it(
    window: MainWindow, tmp_path: Path
) -> None:
    window.start_page()
    assert unnamed(window) == []
    hub = opened(window, written(tmp_path / "tank.panel.json"))
    for chosen in ((), ("level",), ("title",)):
        hub.select(chosen)
        assert unnamed(window) == []
