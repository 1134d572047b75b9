"""Mending in the window: one press, one step that can be undone."""

from __future__ import annotations

from pathlib import Path

from msgspec.structs import replace
from pytestqt.qtbot import QtBot
from tests.window.answers import cramped, tank, written

from panelproof.editor import edits
from panelproof.editor.window import MainWindow
from panelproof.layout.parts import Field


def test_one_press_mends_all_that_is_safe_and_one_undo_takes_it_back(
    window: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    level = next(part for part in cramped().screens[0].parts if isinstance(part, Field))
    broken = edits.set_part(cramped(), "main", "level", replace(level, buffer=2))
    assert window.open(written(tmp_path / "tank.panel.json", broken))
    hub = window.hub
    assert hub is not None
    qtbot.waitUntil(lambda: hub.findings_current)
    assert sorted(finding.rule for finding in hub.findings if finding.level == "fault") == [
        "fit",
        "text-bytes",
    ]
    told: list[str] = []
    hub.told.connect(told.append)
    window.menus.actions["mend"].trigger()
    assert window.bench is not None
    view = window.bench.findings
    qtbot.waitUntil(lambda: not view.mending and hub.findings_current)
    assert [finding for finding in hub.findings if finding.level == "fault"] == []
    assert told == ["2 remedies carried out"]
    assert hub.history.undo_title == "mend what is safe"
    hub.undo()
    assert hub.layout == broken


def test_where_nothing_is_to_be_mended_it_is_said(window: MainWindow, qtbot: QtBot, tmp_path: Path) -> None:
    assert window.open(written(tmp_path / "tank.panel.json", tank()))
    hub = window.hub
    assert hub is not None
    qtbot.waitUntil(lambda: hub.findings_current)
    told: list[str] = []
    hub.told.connect(told.append)
    window.menus.actions["mend"].trigger()
    qtbot.waitUntil(lambda: bool(told))
    assert "no remedy is safe" in told[0]
    assert hub.layout == tank()
