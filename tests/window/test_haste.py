"""While a part is on its way the findings are there at once, and the remedies when it rests."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace as with_
from pathlib import Path

import pytest
from msgspec.structs import replace
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QStyleOptionViewItem
from pytestqt.qtbot import QtBot

from panelproof.content.spec import Content, RealRange
from panelproof.editor import edits
from panelproof.editor.hub import Hub
from panelproof.editor.partlist import PartList
from panelproof.editor.partmodel import Index
from panelproof.layout.document import Ink, Layout, Limits, Screen, TypeSpec
from panelproof.layout.panel import Bus, Panel
from panelproof.layout.parts import Field
from panelproof.verdict import verdict


def layout() -> Layout:
    content = Content("%.1f", (RealRange(-40, 125),), fault="--.-")
    fields = [
        Field(name, content, "text", "white", x + 70, 30, "right", padding=(x, 15, 74, 20))
        for name, x in (("first", 4), ("second", 90), ("third", 180))
    ]
    return Layout(
        1,
        "haste",
        Panel(320, 120, bus=Bus("spi", 10_000_000)),
        (TypeSpec("text", "SourceSansPro", 16),),
        (Ink("black", "#000000"), Ink("white", "#ffffff")),
        (Screen("main", "black", tuple(fields)),),
        limits=Limits(update_ms=2.6),
    )


@pytest.fixture
def hub(qtbot: QtBot) -> Iterator[Hub]:
    made = Hub(layout(), Path())
    qtbot.waitUntil(lambda: made.findings_current)
    assert made.findings == ()
    yield made
    made.shut()


def carry(hub: Hub, dx: int) -> None:
    """Let the second field go towards the third, as a drag does."""
    hub.apply("move", edits.move_parts(hub.layout, "main", ["second"], dx, 0), "drag")


def test_a_drag_leaves_the_remedies_out_and_its_end_brings_them(hub: Hub) -> None:
    carry(hub, 60)
    full = verdict(hub.material).findings
    assert {finding.rule for finding in full} >= {"collides", "erases"}
    assert any(finding.remedy for finding in full if finding.rule == "collides")
    assert hub.findings_current
    assert [with_(one, remedy=None) for one in hub.findings] == [with_(one, remedy=None) for one in full]
    assert not any(finding.remedy for finding in hub.findings if finding.rule == "collides")
    hub.end_gesture()
    assert hub.findings == full


def test_a_pause_brings_the_remedies_too(hub: Hub, qtbot: QtBot) -> None:
    carry(hub, 60)
    full = verdict(hub.material).findings
    assert hub.findings != full
    qtbot.waitUntil(lambda: hub.findings == full, timeout=2000)


def test_a_change_on_its_own_has_its_remedies_at_once(hub: Hub) -> None:
    carry(hub, 60)
    hub.undo()
    hub.apply("move", edits.move_parts(hub.layout, "main", ["second"], 60, 0))
    assert hub.findings == verdict(hub.material).findings
    assert any(finding.remedy for finding in hub.findings)


def test_a_side_that_is_pulled_tells_the_time_it_takes_now(hub: Hub) -> None:
    # 74 × 40 pixels of 16 bits at 10 MHz: 4.7 ms, where 2.6 are allowed.
    grown = edits.resize(hub.layout, "main", "second", (90, 5, 74, 40))
    hub.apply("pull", grown, "drag")
    (late,) = [finding for finding in hub.findings if finding.rule == "update-time"]
    assert late.part == "second"
    hub.apply("pull", replace(grown, screens=layout().screens), "drag")
    assert not [finding for finding in hub.findings if finding.rule == "update-time"]


def test_the_list_of_parts_is_not_laid_out_anew_for_a_verdict(hub: Hub, qtbot: QtBot) -> None:
    shown = PartList(hub)
    qtbot.addWidget(shown)
    shown.show()
    painted: list[int] = []
    delegate = shown.rows.itemDelegate()
    draw = delegate.paint

    def paint(painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        painted.append(index.row())
        draw(painter, option, index)

    delegate.paint = paint  # type: ignore[method-assign]
    qtbot.wait(50)
    painted.clear()
    # Only the row that is told to have changed is painted.
    index = shown.model.index(1)
    shown.model.dataChanged.emit(index, index)
    qtbot.waitUntil(lambda: bool(painted))
    assert set(painted) == {1}
