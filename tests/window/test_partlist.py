"""The list of parts and the tray, in the steps of a user."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace
from PIL import Image
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt
from PySide6.QtGui import QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit
from pytestqt.qtbot import QtBot
from tests.window.answers import cramped, tank

from panelproof.editor import edits, partlist, picturefile, theme
from panelproof.editor.hub import Hub
from panelproof.editor.partlist import PartList
from panelproof.editor.partmodel import switches
from panelproof.editor.partrows import carried, stepped
from panelproof.editor.tray import MIME, Tray
from panelproof.layout.document import Layout
from panelproof.layout.parts import Box, Field, Rule
from panelproof.proof.measure import measures

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
Open = Callable[[Layout], tuple[Hub, PartList]]


def furnished(layout: Layout) -> Layout:
    """The layout with a rule and a box drawn after its texts, beside them."""
    screen = layout.screens[0]
    more = Rule("rule", 190, 6, 40, "white"), Box("box", 190, 12, 40, 20, outline="white")
    return replace(layout, screens=(replace(screen, parts=(*screen.parts, *more)),))


@pytest.fixture
def opened(qtbot: QtBot) -> Iterator[Open]:
    """Show the list of a layout's parts."""
    theme.apply()
    hubs: list[Hub] = []

    def show(layout: Layout) -> tuple[Hub, PartList]:
        hub = Hub(layout, Path())
        hubs.append(hub)
        view = PartList(hub)
        qtbot.addWidget(view)
        view.resize(260, 420)
        view.show()
        qtbot.waitUntil(lambda: hub.findings_current)
        return hub, view

    yield show
    for hub in hubs:
        hub.shut()


def order(hub: Hub) -> list[str]:
    assert hub.screen is not None
    return [part.name for part in hub.screen.parts]


def middle(view: PartList, row: int) -> QPoint:
    return view.rows.visualRect(view.model.index(row)).center()


# -- what a row says ---------------------------------------------------------------------------------------


def test_rows_tell_name_longest_text_spare_pixels_and_verdict(opened: Open) -> None:
    hub, view = opened(furnished(cramped()))
    assert [row.name for row in view.model.rows] == ["title", "level", "rule", "box"]
    level = view.model.rows[1]
    # The figures that `panelproof measure` prints for the same field.
    figure = next(measure for measure in measures(hub.material) if measure.field == "level")
    assert level.figure.detail == figure.longest.text
    assert level.figure.spare == figure.spare
    assert figure.spare is not None
    assert figure.spare[2] < 0
    assert level.spare_words.startswith(f"← {figure.spare[0]}  ↑ {figure.spare[1]}  → −{-figure.spare[2]}")
    assert level.verdict == "fault"
    assert "reaches beyond the padding box" in level.tip
    assert view.model.rows[0].verdict == "good"
    assert level.spoken.startswith(f"field level; longest text {figure.longest.text}; spare pixels 0 left")
    assert level.spoken.endswith("fault")


def test_while_the_proof_is_not_current_no_row_shows_an_old_verdict(opened: Open) -> None:
    hub, view = opened(cramped())
    part = hub.part("level")
    assert isinstance(part, Field)
    # A content that was never proved goes to the thread.
    content = replace(part.content, also=("overflow",))
    layout = edits.set_part(hub.layout, "main", "level", replace(part, content=content))
    assert hub.apply("also overflow", layout) is None
    assert not hub.findings_current
    assert {row.verdict for row in view.model.rows} == {"pending"}
    assert "proving" in view.model.rows[1].spoken


def test_a_change_of_the_verdict_is_seen_at_once(opened: Open) -> None:
    hub, view = opened(cramped())

    def verdicts() -> list[str]:
        return [row.verdict for row in view.model.rows]

    assert verdicts() == ["good", "fault"]
    assert hub.apply("wider", tank()) is None
    assert verdicts() == ["good", "good"]
    hub.undo()
    assert verdicts() == ["good", "fault"]


def test_an_empty_screen_says_what_to_do(opened: Open, qtbot: QtBot) -> None:
    layout = tank()
    empty = replace(layout, screens=(replace(layout.screens[0], parts=()),), moments=())
    hub, view = opened(empty)
    bare = view.rows.viewport().grab().toImage()
    assert hub.apply("back", layout) is None
    hub.undo()
    assert view.rows.viewport().grab().toImage() == bare
    pixels = {bare.pixel(x, y) for x in range(bare.width()) for y in range(0, bare.height(), 3)}
    assert len(pixels) > 2, "there are words"


# -- choosing ----------------------------------------------------------------------------------------------


def test_rows_and_glass_choose_the_same_parts(opened: Open) -> None:
    hub, view = opened(furnished(tank()))
    QTest.mouseClick(view.rows.viewport(), LEFT, NONE, middle(view, 1))
    assert hub.selection == {"level"}
    QTest.mouseClick(view.rows.viewport(), LEFT, Qt.KeyboardModifier.ControlModifier, middle(view, 3))
    assert hub.selection == {"level", "box"}
    hub.select(["title", "rule"])
    assert {index.row() for index in view.rows.selectedIndexes()} == {0, 2}
    hub.select([])
    assert view.rows.selectedIndexes() == []


def test_a_choice_outlasts_a_change_of_the_order(opened: Open) -> None:
    hub, view = opened(furnished(tank()))
    hub.select(["rule"])
    view.to_end(last=False)
    assert order(hub) == ["rule", "title", "level", "box"]
    assert hub.selection == {"rule"}
    assert [index.row() for index in view.rows.selectedIndexes()] == [0]


def test_another_screen_is_chosen_from_the_list(opened: Open) -> None:
    layout, name = edits.add_screen(tank(), "menu")
    hub, view = opened(layout)
    assert [view.screens.itemText(number) for number in range(view.screens.count())] == ["main", "menu"]
    view.screens.setCurrentText(name)
    view.screens.activated.emit(1)
    assert hub.screen is not None
    assert hub.screen.name == "menu"
    assert view.model.rows == ()


# -- drawing order -----------------------------------------------------------------------------------------


def test_ctrl_and_arrows_change_the_drawing_order_undoably(opened: Open) -> None:
    hub, view = opened(furnished(tank()))
    first = hub.layout
    hub.select(["title"])
    QTest.keyClick(view.rows, Qt.Key.Key_Down, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClick(view.rows, Qt.Key.Key_Down, Qt.KeyboardModifier.ControlModifier)
    assert order(hub) == ["level", "rule", "title", "box"]
    QTest.keyClick(view.rows, Qt.Key.Key_Up, Qt.KeyboardModifier.ControlModifier)
    assert order(hub) == ["level", "title", "rule", "box"]
    while hub.history.undo_title:
        hub.undo()
    assert hub.layout == first


def test_rows_are_dropped_between_others(opened: Open) -> None:
    hub, view = opened(furnished(tank()))
    hub.select(["title", "level"])
    area = view.rows.visualRect(view.model.index(2))
    mime = QMimeData()

    class FromHere(QDropEvent):
        """A drop that began in the list; Qt fills this in itself while a drag goes on."""

        def source(self) -> partlist.PartRows:
            return view.rows

    for point, wanted in (
        (QPoint(40, area.bottom() - 3), ["rule", "title", "level", "box"]),
        (QPoint(40, 2), ["title", "level", "rule", "box"]),
        (QPoint(40, view.rows.viewport().height() - 4), ["rule", "box", "title", "level"]),
    ):
        event = FromHere(QPointF(point), Qt.DropAction.MoveAction, mime, LEFT, NONE)
        view.rows.dropEvent(event)
        assert order(hub) == wanted


NAMES = st.lists(st.sampled_from("abcdefgh"), unique=True)


@given(NAMES, st.sets(st.sampled_from("abcdefgh")), st.integers(0, 8))
def test_carried_rows_stand_together_and_the_rest_keeps_its_order(
    names: list[str], chosen: set[str], index: int
) -> None:
    result = carried(names, chosen, index)
    assert sorted(result) == sorted(names)
    assert [name for name in result if name not in chosen] == [name for name in names if name not in chosen]
    together = [name for name in names if name in chosen]
    start = len([name for name in names[:index] if name not in chosen])
    assert result[start : start + len(together)] == together


@given(NAMES, st.sets(st.sampled_from("abcdefgh")), st.sampled_from([-1, 1]))
def test_a_step_there_and_back_moves_each_by_one_at_most(
    names: list[str], chosen: set[str], step: int
) -> None:
    result = stepped(names, chosen, step)
    assert sorted(result) == sorted(names)
    for name in chosen & set(names):
        assert result.index(name) - names.index(name) in (0, step)
    free = [name for name in names if name in chosen and result.index(name) != names.index(name)]
    at_end = names[-1:] if step > 0 else names[:1]
    if chosen & set(names) and not set(at_end) & chosen:
        assert free, "where there is room, they move"


# -- hiding, locking, renaming -----------------------------------------------------------------------------


@pytest.mark.parametrize(("number", "what"), [(0, "hidden"), (1, "locked")])
def test_a_press_on_a_switch_hides_or_locks_and_does_not_choose(opened: Open, number: int, what: str) -> None:
    hub, view = opened(tank())
    point = switches(view.rows.visualRect(view.model.index(1)))[number].center()
    check = hub.is_hidden if what == "hidden" else hub.is_locked
    QTest.mouseClick(view.rows.viewport(), LEFT, NONE, point)
    assert check("level")
    assert not check("title")
    assert hub.selection == set()
    assert what in view.model.rows[1].spoken
    QTest.mouseClick(view.rows.viewport(), LEFT, NONE, point)
    assert not check("level")


def rename(view: PartList, text: str) -> None:
    view.rename_chosen()
    editor = view.rows.findChild(QLineEdit)
    assert editor is not None
    editor.selectAll()
    QTest.keyClicks(editor, text)
    QTest.keyClick(editor, Qt.Key.Key_Return)
    QApplication.processEvents()


def test_a_part_is_renamed_in_the_list_with_its_moments(opened: Open) -> None:
    hub, view = opened(tank())
    hub.select(["level"])
    rename(view, "water")
    assert order(hub) == ["title", "water"]
    assert all("water" in moment.fields for moment in hub.layout.moments)
    assert hub.selection == {"water"}, "it stays chosen"
    hub.undo()
    assert order(hub) == ["title", "level"]


@pytest.mark.parametrize(("name", "word"), [("title", "title"), ("Not A Name", "name")])
def test_a_name_that_cannot_be_is_told_and_the_old_one_holds(opened: Open, name: str, word: str) -> None:
    hub, view = opened(tank())
    told: list[str] = []
    hub.told.connect(told.append)
    hub.select(["level"])
    rename(view, name)
    assert order(hub) == ["title", "level"]
    assert len(told) == 1
    assert word in told[0]


# -- the tray ----------------------------------------------------------------------------------------------


@pytest.fixture
def tray(qtbot: QtBot) -> Iterator[tuple[Hub, Tray]]:
    theme.apply()
    hub = Hub(tank(), Path())
    view = Tray(hub)
    qtbot.addWidget(view)
    view.show()
    yield hub, view
    hub.shut()


@pytest.mark.parametrize("kind", edits.KINDS)
@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Insert, Qt.Key.Key_Space])
def test_a_key_puts_a_new_part_into_the_middle(
    tray: tuple[Hub, Tray], kind: edits.Kind, key: Qt.Key, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    hub, view = tray
    Image.new("RGB", (9, 7), "white").save(tmp_path / "drop.png")
    monkeypatch.setattr(picturefile, "choose", lambda *_: str(tmp_path / "drop.png"))
    QTest.keyClick(view.buttons[kind], key)
    assert len(order(hub)) == 3
    name = order(hub)[-1]
    assert hub.selection == {name}
    part = hub.part(name)
    assert type(part).__name__.lower() == kind
    hub.undo()
    assert order(hub) == ["title", "level"]


def test_a_drag_carries_the_kind(tray: tuple[Hub, Tray]) -> None:
    _, view = tray
    for kind, button in view.buttons.items():
        assert bytes(button.mime().data(MIME).data()).decode() == kind
        assert button.accessibleName() == f"New {kind}"


def test_without_a_screen_nothing_can_be_put_anywhere(tray: tuple[Hub, Tray]) -> None:
    hub, view = tray
    assert hub.apply("no screen", replace(hub.layout, screens=(), moments=())) is None
    assert not any(button.isEnabled() for button in view.buttons.values())
    told: list[str] = []
    hub.told.connect(told.append)
    view.insert("box")
    assert "no screen yet" in told[0]
