"""Choosing a panel for a new layout."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot
from tests.window.answers import written

from panelproof.editor import theme
from panelproof.editor.newdialog import OWN, NewDialog
from panelproof.editor.panels import COMMON
from panelproof.editor.startpage import StartPage
from panelproof.editor.window import MainWindow
from panelproof.layout.panel import Panel
from panelproof.material import gather
from panelproof.proof.check import prove


@pytest.fixture
def dialog(qtbot: QtBot) -> NewDialog:
    theme.apply()
    shown = NewDialog()
    qtbot.addWidget(shown)
    shown.show()
    return shown


@pytest.mark.parametrize("entry", COMMON, ids=lambda entry: f"{entry.group} {entry.title}")
def test_a_common_panel_is_taken_as_it_is(dialog: NewDialog, entry: object) -> None:
    titles = [other for other in COMMON if other.title == entry.title]  # type: ignore[attr-defined]
    dialog.form.choose(entry.title)  # type: ignore[attr-defined]
    layout = dialog.layout_made()
    assert layout is not None
    assert layout.panel in [other.panel for other in titles]
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
    form.colours_box.setCurrentIndex(form.colours_box.findData("mono"))
    form.refresh_box.setCurrentIndex(form.refresh_box.findData("whole"))
    layout = dialog.layout_made()
    assert layout is not None
    assert layout.panel == Panel(300, 90, "mono", "rounded", 12, "whole")


def test_changing_a_value_of_a_common_panel_makes_it_ones_own(dialog: NewDialog) -> None:
    form = dialog.form
    form.choose("1.14 in · 240 × 135")
    form.height_box.setValue(136)
    assert form.list.currentIndex().data().strip() == OWN
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


def test_the_example_is_clean_and_the_empty_layout_has_something_to_set_texts_in(dialog: NewDialog) -> None:
    bare = dialog.layout_made()
    dialog.form.starter_box.setChecked(True)
    full = dialog.layout_made()
    assert bare is not None
    assert full is not None
    assert [part.name for part in full.screens[0].parts] == ["title", "level"]
    assert (bare.types, bare.inks) == (full.types, full.inks)
    for layout in (bare, full):
        assert not prove(gather(layout, Path()))


def test_enter_on_a_row_agrees(dialog: NewDialog) -> None:
    dialog.form.choose("1.28 in · 240 × 240, round")
    QTest.keyClick(dialog.form.list, Qt.Key.Key_Return)
    assert dialog.result() == NewDialog.DialogCode.Accepted
    layout = dialog.layout_made()
    assert layout is not None
    assert layout.panel.shape == "round"


def test_groups_cannot_be_chosen(dialog: NewDialog) -> None:
    form = dialog.form
    form.choose(OWN)
    QTest.keyClick(form.list, Qt.Key.Key_Down)
    assert form.list.currentIndex().data().strip() == COMMON[0].title


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
