"""The sheet: values typed in place, wrong ones told beside their row, all of it undone."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from panelproof.content.spec import RealRange, WholeRange
from panelproof.editor.exporting import ExportDialog
from panelproof.editor.hub import Hub
from panelproof.editor.sheet import Sheet
from panelproof.editor.sheet.content import NEW, fitted
from panelproof.editor.sheet.types import needed
from panelproof.layout.parts import Field, Icon
from panelproof.layout.reading import read

KILN = Path(__file__).parents[2] / "examples" / "kiln" / "kiln.panel.json"


@pytest.fixture
def hub(qtbot: QtBot) -> Iterator[Hub]:
    made = Hub(read(KILN), KILN.parent)
    made.show_screen("readings")
    yield made
    made.shut()


@pytest.fixture
def sheet(hub: Hub, qtbot: QtBot) -> Sheet:
    made = Sheet(hub)
    qtbot.addWidget(made)
    made.show()
    return made


def chamber(hub: Hub) -> Field:
    part = hub.part("chamber")
    assert isinstance(part, Field)
    return part


def test_a_range_is_changed_refused_and_undone(hub: Hub, sheet: Sheet) -> None:
    hub.select(["chamber"])
    before = hub.layout
    changed = chamber(hub).content
    assert sheet.part._set_content(type(changed)("%d", (WholeRange(5, 4),), "no probe", "--")) is not None
    assert hub.layout is before
    assert sheet.part._set_content(type(changed)("%d", (WholeRange(-20, 1400),), "no probe", "--")) is None
    assert chamber(hub).content.arguments == (WholeRange(-20, 1400),)
    hub.undo()
    assert hub.layout == before


def test_another_format_keeps_the_ranges_that_still_fit() -> None:
    own = RealRange(-5.0, 5.0)
    assert fitted("%.2f V", (own,)) == (own,)
    assert fitted("%.2f V %s", (own,)) == (own, NEW["choice"])
    assert fitted("%d", (own,)) == (NEW["whole"],)


def test_each_kind_of_part_has_its_form(hub: Hub, sheet: Sheet) -> None:
    for name in ("bar", "title", "radio", "chamber", "line"):
        hub.select([name])
        assert sheet.part._name == name
        assert sheet.part._refreshers
    hub.select(["bar", "title"])
    assert not sheet.part._refreshers


def test_a_pixel_of_an_icon_is_drawn_and_undone(hub: Hub, sheet: Sheet) -> None:
    hub.select(["radio"])
    before = hub.layout
    icon = hub.part("radio")
    assert isinstance(icon, Icon)
    rows = ("#" * 14, *icon.states[0].rows[1:])
    assert sheet.part._set("states", (type(icon.states[0])("off", rows, ink="ash"), *icon.states[1:])) is None
    after = hub.part("radio")
    assert isinstance(after, Icon)
    assert after.states[0].rows[0] == "#" * 14
    hub.undo()
    assert hub.layout == before


def test_every_page_shows_the_layout(hub: Hub, sheet: Sheet) -> None:
    for number in range(sheet.tabs.count()):
        sheet.tabs.setCurrentIndex(number)
    assert sheet.inks.names() == [ink.name for ink in hub.layout.inks]
    assert "before-reading" in sheet.moments.names()
    assert set("0123456789-") <= set(needed(hub.material, "reading"))


def test_the_header_is_written_from_the_window(hub: Hub, qtbot: QtBot, tmp_path: Path) -> None:
    dialog = ExportDialog(hub)
    qtbot.addWidget(dialog)
    dialog.write_header(tmp_path / "kiln.h")
    assert (tmp_path / "kiln.h").read_text() == dialog.text
    dialog.write_sheet(tmp_path / "kiln.pdf")
    assert (tmp_path / "kiln.pdf").read_bytes().startswith(b"%PDF")
