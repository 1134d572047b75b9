"""Remedies that change an ink or a type of the layout, in the steps of a user."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from panelproof.content.spec import Content, WholeRange
from panelproof.editor import theme
from panelproof.editor.applying import apply, has_remedy
from panelproof.editor.findings import FindingsView
from panelproof.editor.hub import Hub
from panelproof.layout.document import Ink, Layout, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field, Label, Rule
from panelproof.problem import Problem
from panelproof.proof.finding import Change, Finding, Remedy

Open = Callable[[Layout], tuple[Hub, FindingsView]]


def layout() -> Layout:
    level = Field(
        "level",
        Content("%d", (WholeRange(0, 99),), fault="--"),
        "plain",
        "dim",
        60,
        40,
        padding=(56, 24, 40, 26),
    )
    return Layout(
        1,
        "tank",
        Panel(160, 80, width_mm=32.0, height_mm=16.0),
        (TypeSpec("plain", "SourceSansPro", 16),),
        (Ink("black", "#000000"), Ink("dim", "#404050")),
        (Screen("main", "black", (level,)),),
    )


@pytest.fixture
def opened(qtbot: QtBot) -> Iterator[Open]:
    theme.apply()
    hubs: list[Hub] = []

    def show(made: Layout) -> tuple[Hub, FindingsView]:
        hub = Hub(made, Path())
        hubs.append(hub)
        view = FindingsView(hub)
        qtbot.addWidget(view)
        view.show()
        qtbot.waitUntil(lambda: hub.findings_current)
        return hub, view

    yield show
    for hub in hubs:
        hub.shut()


def press(view: FindingsView, rule: str) -> None:
    number = next(place for place, one in enumerate(view.model.findings) if one.rule == rule)
    view.list.setCurrentIndex(view.model.index(number))
    QTest.keyClick(view.list, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)


def test_one_press_lightens_the_ink_and_undo_takes_it_back(opened: Open, qtbot: QtBot) -> None:
    hub, view = opened(layout())
    assert [one.rule for one in view.model.findings] == ["contrast"]
    press(view, "contrast")
    qtbot.waitUntil(lambda: hub.findings_current)
    assert hub.findings == ()
    assert hub.layout.inks[1].colour != "#404050"
    assert hub.history.undo_title.startswith("remedy: ink `dim` #404050 →")
    hub.undo()
    assert hub.layout == layout()


def test_one_press_sets_the_type_larger_for_the_reading_distance(opened: Open, qtbot: QtBot) -> None:
    clear = replace(
        layout(), inks=(Ink("black", "#000000"), Ink("dim", "#c0c0c0")), reading_distance_mm=430.0
    )
    hub, view = opened(clear)
    assert [one.rule for one in view.model.findings] == ["height"]
    press(view, "height")
    qtbot.waitUntil(lambda: hub.findings_current)
    assert hub.findings == ()
    assert (hub.layout.types[0].size or 0) > 16


def test_one_press_moves_a_part_to_the_nearest_free_place(opened: Open, qtbot: QtBot) -> None:
    base = layout()
    label = Label("set", "Set", "plain", "white", 6, 30)
    line = Rule("line", 4, 28, 30, "white")
    inks = (*base.inks, Ink("white", "#ffffff"))
    hub, view = opened(replace(base, inks=inks, screens=(Screen("main", "black", (label, line)),)))
    assert [one.rule for one in view.model.findings] == ["collides"]
    press(view, "collides")
    qtbot.waitUntil(lambda: hub.findings_current)
    assert hub.findings == ()


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (Change("gone", "colour", "#ffffff", "ink"), "not there any more"),
        (Change("dim", "colour", "white", "ink"), "cannot be changed so"),
        (Change("gone", "size", 12, "type"), "not there any more"),
        (Change("plain", "size", 0, "type"), "cannot be changed so"),
    ],
)
def test_a_change_that_cannot_be_made_is_told(opened: Open, change: Change, words: str) -> None:
    finding = Finding("contrast", "caution", "main", "level", "x", remedy=Remedy("y", (change,)))
    assert has_remedy(finding)
    with pytest.raises(Problem, match=words):
        apply(layout(), finding)
    hub, view = opened(layout())
    told: list[str] = []
    hub.told.connect(told.append)
    view.apply_remedy(finding)
    assert words in told[0]
    assert hub.layout == layout()
