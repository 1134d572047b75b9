"""Findings accepted with a reason and taken back, in the steps of a user."""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace
from pytestqt.qtbot import QtBot
from tests.window.answers import Answers, cramped, tank, written

from panelproof.editor.accepting import accept, acceptable, take_back
from panelproof.editor.findingrows import ACCEPTED_ROLE, FINDING_ROLE, where
from panelproof.editor.window import MainWindow
from panelproof.layout.document import Limits
from panelproof.layout.parts import Accepted
from panelproof.layout.reading import read
from panelproof.problem import Problem
from panelproof.proof.finding import Finding

FIT = Finding("fit", "fault", "main", "level", "cut off")


def test_a_reason_is_asked_kept_in_the_file_listed_and_taken_back(
    window: MainWindow, qtbot: QtBot, tmp_path: Path, answers: Answers
) -> None:
    path = written(tmp_path / "tank.panel.json", cramped())
    assert window.open(path)
    hub, bench = window.hub, window.bench
    assert hub is not None
    assert bench is not None
    view = bench.findings
    qtbot.waitUntil(lambda: hub.findings_current)
    assert [finding.level for finding in hub.findings] == ["fault"]
    view.list.setCurrentIndex(view.model.index(0))
    assert view.acceptance.text() == "Accept…"
    assert [action.text() for action in view.menu().actions()] == ["Apply &remedy", "&Accept with a reason…"]

    window.menus.actions["accept"].trigger()
    assert answers.asked == ["reason fit of level"]
    assert hub.layout == cramped(), "no reason given, nothing accepted"

    answers.reason_answer = "the glass is covered there"
    view.acceptance.click()
    assert list(hub.findings) == []
    (one,) = hub.accepted
    assert (one.finding.rule, one.part, one.reason) == ("fit", "level", "the glass is covered there")
    index = view.model.index(0)
    assert view.model.rowCount() == 1
    assert index.data(ACCEPTED_ROLE) == one
    assert index.data(FINDING_ROLE) == one.finding
    assert "1 accepted" in view.summary.text()
    window.menus.actions["save"].trigger()
    part = next(part for part in read(path).screens[0].parts if part.name == "level")
    assert part.accepted == (Accepted("fit", "the glass is covered there"),)

    hub.undo()
    assert [finding.rule for finding in hub.findings] == ["fit"]
    hub.redo()
    view.list.setCurrentIndex(view.model.index(0))
    assert view.acceptance.text() == "Take back"
    assert not view.remedy.isEnabled()
    assert [action.text() for action in view.menu().actions()] == ["&Take acceptance back"]
    window.menus.actions["take_back"].trigger()
    assert hub.layout == cramped()
    assert list(hub.accepted) == []
    assert [finding.rule for finding in hub.findings] == ["fit"]


def test_what_concerns_the_whole_layout_is_listed_and_can_be_chosen(
    window: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    tight = replace(tank(), limits=Limits(flash_bytes=1, update_ms=1.0))
    assert window.open(written(tmp_path / "tank.panel.json", tight))
    hub, bench = window.hub, window.bench
    assert hub is not None
    assert bench is not None
    view = bench.findings
    qtbot.waitUntil(lambda: hub.findings_current)
    assert {"flash", "update-time"} <= {finding.rule for finding in hub.findings}
    screen = hub.screen
    for number, finding in enumerate(hub.findings):
        view.list.setCurrentIndex(view.model.index(number))
        if finding.rule == "flash":
            assert where(finding) == "the layout"
            assert not view.acceptance.isEnabled()
    assert hub.screen is screen


def test_what_speaks_of_more_than_one_part_cannot_be_accepted() -> None:
    for rule, part in (("residue", ""), ("fit", ""), ("accepted", "level")):
        finding = Finding(rule, "fault", "main", part, "x")
        assert not acceptable(finding)
        with pytest.raises(Problem, match="no part can accept"):
            accept(tank(), finding, "why not")


def test_accepting_again_gives_another_reason() -> None:
    once = accept(cramped(), FIT, "one")
    twice = accept(once, FIT, " two ")
    part = next(part for part in twice.screens[0].parts if part.name == "level")
    assert part.accepted == (Accepted("fit", "two"),)
    assert take_back(twice, "main", "level", "fit") == cramped()
    with pytest.raises(Problem, match="not there any more"):
        take_back(twice, "main", "gone", "fit")
