"""Choosing a panel and something to begin with for a new layout."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot
from tests.window.answers import written

from panelproof.editor import sketch as sketching
from panelproof.editor import theme
from panelproof.editor.newdialog import WAIT, NewDialog
from panelproof.editor.panellist import OWN
from panelproof.editor.startpage import StartPage
from panelproof.editor.window import MainWindow
from panelproof.layout.panel import Panel
from panelproof.material import gather
from panelproof.picture.frame import Frame, screen_frame
from panelproof.picture.moments import named
from panelproof.proof.check import prove
from panelproof.starters.description import claiming
from panelproof.starters.make import EMPTY, make
from panelproof.starters.panels import ListedPanel, panel_of, panels


@pytest.fixture
def dialog(qtbot: QtBot) -> NewDialog:
    theme.apply()
    shown = NewDialog()
    qtbot.addWidget(shown)
    shown.show()
    return shown


def test_titles_tell_the_panels_of_a_kind_apart() -> None:
    titles = [(one.kind, one.title) for one in panels()]
    assert len(set(titles)) == len(titles)


@pytest.mark.parametrize("listed", panels(), ids=lambda listed: listed.id)
def test_a_listed_panel_is_taken_as_it_is(dialog: NewDialog, listed: ListedPanel) -> None:
    alike = [other.panel for other in panels() if other.title == listed.title]
    dialog.form.choose(listed.title)
    layout = dialog.layout_made()
    assert layout is not None
    assert layout.panel in alike
    assert dialog.form.width_box.value() == layout.panel.width
    assert layout.screens[0].parts == ()
    assert layout.moments == ()


def test_a_size_of_ones_own(dialog: NewDialog) -> None:
    form = dialog.form
    form.choose(OWN)
    form.width_box.setValue(300)
    form.height_box.setValue(90)
    form.shape_box.setCurrentText("Rounded corners")
    form.radius_box.setValue(12)
    form.set_colours("mono")
    form.refresh_box.setCurrentIndex(form.refresh_box.findData("whole"))
    layout = dialog.layout_made()
    assert layout is not None
    assert layout.panel == Panel(300, 90, "mono", "rounded", 12, "whole")


def test_a_paper_of_ones_own_has_its_palette(dialog: NewDialog) -> None:
    form = dialog.form
    form.choose(OWN)
    form.colours_box.setCurrentText("Black, white and red paper")
    layout = dialog.layout_made()
    assert layout is not None
    assert layout.panel.palette == ("#000000", "#ffffff", "#c00000")


def test_changing_a_value_of_a_listed_panel_makes_it_ones_own(dialog: NewDialog) -> None:
    form = dialog.form
    form.choose("1.14 in · 240 × 135")
    form.height_box.setValue(136)
    assert form.panels.title() == OWN
    layout = dialog.layout_made()
    assert layout is not None
    assert (layout.panel.width, layout.panel.height) == (240, 136)
    assert layout.panel.width_mm is None, "the millimetres of another panel do not hold"


def test_a_panel_that_cannot_be_is_told_beside_the_values(dialog: NewDialog) -> None:
    form = dialog.form
    form.choose(OWN)
    form.width_box.setValue(240)
    form.height_box.setValue(200)
    form.shape_box.setCurrentText("Round")
    assert "as wide as it is high" in form.trouble.text()
    assert not dialog._go.isEnabled()
    assert dialog.layout_made() is None
    form.height_box.setValue(240)
    assert form.trouble.text() == ""
    assert dialog._go.isEnabled()


def test_enter_on_a_row_agrees(dialog: NewDialog) -> None:
    dialog.form.choose("1.28 in · 240 × 240, round")
    QTest.keyClick(dialog.form.list, Qt.Key.Key_Return)
    assert dialog.result() == NewDialog.DialogCode.Accepted
    layout = dialog.layout_made()
    assert layout is not None
    assert layout.panel.shape == "round"


def test_kinds_cannot_be_chosen(dialog: NewDialog) -> None:
    form = dialog.form
    form.choose(OWN)
    QTest.keyClick(form.list, Qt.Key.Key_Down)
    assert form.panels.title() == panels()[0].title


# -- searching ---------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("466", ["1.43 in · 466 × 466, round"]),
        ("e-paper 2.9", ["2.9 in · 296 × 128", "2.9 in · 296 × 128, 3 colours"]),
        ("128 × 32", ["0.91 in · 128 × 32"]),
        ("128x32", ["0.91 in · 128 × 32"]),
        ("elephant", []),
    ],
)
def test_searching_leaves_what_holds_every_word(dialog: NewDialog, typed: str, found: list[str]) -> None:
    dialog.form.panels.search.setText(typed)
    assert dialog.form.panels.shown() == found
    dialog.form.panels.search.clear()
    assert len(dialog.form.panels.shown()) == len(panels())


def test_from_the_search_to_the_panel_by_keys_alone(dialog: NewDialog) -> None:
    search = dialog.form.panels.search
    search.setFocus()
    QTest.keyClicks(search, "reflective")
    QTest.keyClick(search, Qt.Key.Key_Down)
    assert dialog.form.panels.title() == "1.6 in · 84 × 48"
    QTest.keyClick(dialog.form.list, Qt.Key.Key_Return)
    assert dialog.result() == NewDialog.DialogCode.Accepted


# -- what to begin with ------------------------------------------------------------------------------------


def test_a_starter_is_shown_and_made(dialog: NewDialog, qtbot: QtBot) -> None:
    form = dialog.form
    form.choose("1.69 in · 280 × 240, rounded")
    form.starters.choose("four-readings")
    qtbot.waitUntil(lambda: form.preview.frame is not None, timeout=5000)
    layout = dialog.layout_made()
    assert layout is not None
    panel = panel_of("colour-280x240-1.69").panel
    assert layout == make("four-readings", panel, layout.name)
    material = gather(layout, Path())
    shown = named(material, 0)
    assert form.preview.frame == screen_frame(material, layout.screens[0], shown.values), "the first moment"
    assert "Can be read from up to" in form.caption.text()
    assert all(finding.level == "note" for finding in prove(material))


def test_starters_that_are_not_for_the_panel_cannot_be_chosen_and_say_why(dialog: NewDialog) -> None:
    form = dialog.form
    form.choose("0.42 in · 72 × 40")
    assert form.starters.offered() == [EMPTY, "one-reading"]
    tips = {
        form.starters.item(row).text(): form.starters.item(row).toolTip()
        for row in range(form.starters.count())
    }
    assert (
        tips["Step-by-step set-up"]
        == "This starter needs at least 128 × 64 pixels, and this panel has 72 × 40."
    )
    form.choose("1.28 in · 240 × 240, round")
    assert set(form.starters.offered()) == {EMPTY, *claiming(panel_of("round-240x240-1.28").panel)}


def test_a_starter_stays_chosen_on_the_next_panel_where_it_is_for_it(dialog: NewDialog) -> None:
    form = dialog.form
    form.starters.choose("two-readings")
    form.choose("2.8 in · 320 × 240")
    assert form.starters.name() == "two-readings"
    form.choose("0.42 in · 72 × 40")
    assert form.starters.name() == EMPTY


def test_the_window_does_not_wait_for_the_picture(
    dialog: NewDialog, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    from threading import Event

    let_go = Event()
    make_it = sketching.sketch

    def slow(panel: Panel, starter: str) -> sketching.Sketch:
        assert let_go.wait(5)
        return make_it(panel, starter)

    monkeypatch.setattr(sketching, "sketch", slow)
    form = dialog.form
    frames = []
    show = form.preview.show_panel

    def noting(panel: Panel | None, frame: Frame | None = None) -> None:
        if frame is not None:
            frames.append((frame.width, frame.height))
        show(panel, frame)

    monkeypatch.setattr(form.preview, "show_panel", noting)
    form.starters.choose("one-reading")
    assert form.caption.text() == WAIT
    form.choose("2.8 in · 320 × 240")
    form.choose("3.5 in · 480 × 320")
    assert form.preview.frame is None
    assert dialog._go.isEnabled()
    let_go.set()
    qtbot.waitUntil(lambda: form.preview.frame is not None, timeout=5000)
    assert frames == [(480, 320)], "only the last one counts"


def test_a_starter_that_finds_no_room_is_told_and_cannot_be_made(dialog: NewDialog, qtbot: QtBot) -> None:
    form = dialog.form
    form.choose(OWN)
    form.width_box.setValue(128)
    form.height_box.setValue(64)
    form.shape_box.setCurrentText("Rounded corners")
    form.radius_box.setValue(32)
    form.starters.choose("set-up")
    qtbot.waitUntil(lambda: form.trouble.text() != "", timeout=5000)
    assert "no setting" in form.trouble.text()
    assert not dialog._go.isEnabled()
    assert dialog.layout_made() is None
    form.starters.choose(EMPTY)
    assert dialog._go.isEnabled()


def test_closing_while_a_picture_is_made_harms_nothing(qtbot: QtBot) -> None:
    parent = QWidget()
    qtbot.addWidget(parent)
    shown = NewDialog(parent)
    shown.form.choose("3.7 in · 280 × 480, greys")
    shown.form.starters.choose("long-text")
    shown.reject()
    shown.deleteLater()
    qtbot.wait(50)


# -- the page of an empty window ---------------------------------------------------------------------------


def test_from_an_empty_window_to_the_first_part(window: MainWindow) -> None:
    window.start_page()
    page = window.findChild(StartPage)
    assert page is not None
    page.form.choose("0.96 in · 160 × 80")
    page.create_button.click()
    assert window.shows() == "layout"
    assert window.hub is not None
    assert window.hub.layout.panel.width == 160
    window.menus.actions["insert_field"].trigger()
    assert len(window.hub.layout.screens[0].parts) == 1


def test_from_an_empty_window_to_a_starter(window: MainWindow) -> None:
    window.start_page()
    page = window.findChild(StartPage)
    assert page is not None
    page.form.choose("0.96 in · 128 × 64")
    page.form.starters.choose("mono-status")
    page.create_button.click()
    assert window.hub is not None
    assert [part.name for part in window.hub.layout.screens[0].parts][:2] == ["bar", "heading"]
    assert window.hub.layout.moments[0].name == "steady"


def test_a_recent_file_is_opened_from_the_page(window: MainWindow, tmp_path: Path) -> None:
    path = written(tmp_path / "tank.panel.json")
    window.session.opened(path)
    window.start_page()
    page = window.findChild(StartPage)
    assert page is not None
    assert page.recent.count() == 1
    item = page.recent.item(0)
    page.recent.itemActivated.emit(item)
    assert window.hub is not None
    assert window.hub.path == path
