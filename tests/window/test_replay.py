from __future__ import annotations

import numpy as np
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot
from tests.picture import tank
from tests.window.looking import at_work, drawn, key, open_glass

from panelproof.content.spec import Content, WholeRange
from panelproof.editor import edits
from panelproof.editor.hub import Hub
from panelproof.layout.document import Layout
from panelproof.layout.parts import Field
from panelproof.picture.frame import screen_frame, update_field
from panelproof.picture.values import Values
from panelproof.proof.finding import Finding


def field(hub: Hub, name: str) -> Field:
    found = hub.part(name)
    assert isinstance(found, Field)
    return found


def ghosting() -> Layout:
    """A tank whose flow leaves the old text behind."""
    layout = tank.layout()
    flow = next(part for part in tank.parts() if part.name == "flow")
    assert isinstance(flow, Field)
    return edits.set_part(layout, "readings", "flow", replace(flow, clearing="none"))


def stale_finding(hub: Hub) -> Finding:
    return next(one for one in hub.findings if one.rule == "stale" and one.part == "flow")


def test_a_finding_replays_its_two_texts_and_marks_what_stays_behind(qtbot: QtBot) -> None:
    with at_work(ghosting(), "readings") as hub:
        glass = open_glass(hub)
        qtbot.addWidget(glass)
        qtbot.waitUntil(lambda: hub.findings_current)
        finding = stale_finding(hub)
        earlier, later = finding.texts
        glass.show_finding(finding)
        screen, flow = hub.screen, field(hub, "flow")
        assert screen is not None
        first = screen_frame(hub.material, screen, replace_text(hub, "flow", earlier))
        assert np.array_equal(glass.frame().codes, first.codes)
        assert not any(mark.mask for mark in glass.canvas.marks())
        glass._clock.timeout.emit()
        update_field(first, hub.material, screen, flow, later)
        assert np.array_equal(glass.frame().codes, first.codes)
        (mark,) = glass.canvas.marks()
        fresh = screen_frame(hub.material, screen, replace_text(hub, "flow", later))
        assert mark.mask.count() == int((fresh.codes != first.codes).sum())
        assert mark.kind == "wrong"
        assert f"`{later}`" in glass._caption._words.text()


def replace_text(hub: Hub, name: str, text: str) -> Values:
    return Values({**hub.values.texts, name: text}, hub.values.states)


def test_the_replay_rests_and_can_be_asked_for_again(qtbot: QtBot) -> None:
    with at_work(ghosting(), "readings") as hub:
        glass = open_glass(hub)
        qtbot.addWidget(glass)
        qtbot.waitUntil(lambda: hub.findings_current)
        glass.show_finding(stale_finding(hub))
        for _ in range(20):
            if glass._clock.isActive():
                glass._clock.timeout.emit()
                glass._clock.isActive()
        assert glass._scene_number == 1
        QTest.mouseClick(glass._caption.again, Qt.MouseButton.LeftButton)
        assert glass._scene_number == 0
        QTest.mouseClick(glass._caption.close_button, Qt.MouseButton.LeftButton)
        assert glass.finding is None
        assert np.array_equal(glass.frame().codes, drawn(hub).codes)


def test_a_finding_goes_when_the_layout_changes_or_escape_is_pressed(qtbot: QtBot) -> None:
    with at_work(ghosting(), "readings") as hub:
        glass = open_glass(hub)
        qtbot.addWidget(glass)
        qtbot.waitUntil(lambda: hub.findings_current)
        finding = stale_finding(hub)
        glass.show_finding(finding)
        key(glass, Qt.Key.Key_Escape)
        assert glass.finding is None
        glass.show_finding(finding)
        hub.apply("move", edits.move_parts(hub.layout, "readings", ["link"], 1, 0))
        assert glass.finding is None
        assert not glass.canvas.marks()


def test_every_finding_of_a_muddled_screen_can_be_shown(qtbot: QtBot) -> None:
    layout = ghosting()
    layout = edits.move_parts(layout, "readings", {"level", "link"}, 25, 4)
    layout = edits.move_parts(layout, "readings", {"caption"}, -9, 0)
    layout = replace(layout, screens=(replace(layout.screens[0], clears=False), layout.screens[1]))
    rules = set()
    with at_work(layout, "readings") as hub:
        glass = open_glass(hub)
        qtbot.addWidget(glass)
        qtbot.waitUntil(lambda: hub.findings_current)
        for finding in hub.findings:
            hub.show_screen(finding.screen)
            glass.show_finding(finding)
            QApplication.processEvents()
            glass.grab()
            assert glass.finding == finding
            rules.add(finding.rule)
    assert {"stale", "erases", "collides", "fit", "residue"} <= rules


def test_a_number_that_jumps_is_shown_before_and_after(qtbot: QtBot) -> None:
    layout = ghosting()
    screen = next(one for one in layout.screens if one.name == "readings")
    flow = next(part for part in screen.parts if part.name == "flow")
    assert isinstance(flow, Field)
    counting = replace(flow, align="centre", content=Content("%d", (WholeRange(0, 20),), fault="--"))
    with at_work(edits.set_part(layout, "readings", "flow", counting), "readings") as hub:
        glass = open_glass(hub)
        qtbot.addWidget(glass)
        qtbot.waitUntil(lambda: hub.findings_current)
        finding = next(one for one in hub.findings if one.rule == "jumps" and one.part == "flow")
        glass.show_finding(finding)
        assert glass.finding == finding
        before, after = glass._scenes
        assert (before.words, after.words) == ("first `9`", "then `10`: watch what stays")
        assert before.frame != after.frame
