from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QToolButton
from pytestqt.qtbot import QtBot
from tests.picture import tank
from tests.window.looking import LEFT, assert_glass_shows, at_work, key, open_glass

from panelproof.editor import edits
from panelproof.editor.glass import Glass
from panelproof.editor.hub import Hub
from panelproof.editor.player import player
from panelproof.editor.steps import StepBar
from panelproof.layout.document import Layout
from panelproof.layout.parts import Field, Icon
from panelproof.picture.frame import screen_frame, update_field, update_icon


def ghosting_layout() -> Layout:
    layout = tank.layout()
    flow = next(part for part in tank.parts() if part.name == "flow")
    assert isinstance(flow, Field)
    return edits.set_part(layout, "readings", "flow", replace(flow, clearing="none"))


@pytest.fixture
def hub(qtbot: QtBot) -> Iterator[Hub]:
    with at_work(ghosting_layout(), "readings") as made:
        yield made


@pytest.fixture
def bar(hub: Hub, qtbot: QtBot) -> StepBar:
    made = StepBar(player(hub))
    qtbot.addWidget(made)
    made.show()
    return made


@pytest.fixture
def glass(hub: Hub, qtbot: QtBot) -> Glass:
    made = open_glass(hub)
    qtbot.addWidget(made)
    return made


def updates(hub: Hub) -> list[tuple[str, str, str]]:
    step = player(hub).step
    assert step is not None
    return [(update.part, update.old, update.new) for update in step.updates]


def test_there_is_one_player_for_every_view(hub: Hub) -> None:
    assert player(hub) is player(hub)
    assert player(hub).step is None


def test_the_glass_shows_each_update_as_the_device_draws_it(glass: Glass, hub: Hub, bar: StepBar) -> None:
    first = hub.moment
    assert first is not None
    hub.show_moment("half-full", "sensor-lost")
    assert updates(hub) == [
        ("level", "121.5", "---"),
        ("flow", "80 l/h", "no flow"),
        ("mode", "filling", "resting"),
        ("link", "on", "fault"),
        ("valve", "open", "shut"),
    ]
    screen = hub.screen
    assert screen is not None
    frame = screen_frame(hub.material, screen, first.values)
    glass.set_zoom(2)
    assert np.array_equal(glass.frame().codes, frame.codes)
    for part, _, new in updates(hub):
        QTest.mouseClick(bar.forward, LEFT)
        shown = hub.part(part)
        if isinstance(shown, Field):
            update_field(frame, hub.material, screen, shown, new)
        else:
            assert isinstance(shown, Icon)
            update_icon(frame, hub.material, screen, shown, new)
        assert np.array_equal(glass.frame().codes, frame.codes), part
    assert not bar.forward.isEnabled()
    for _ in range(5):
        QTest.mouseClick(bar.back, LEFT)
    assert not bar.back.isEnabled()
    hub.show_moment("half-full")
    assert assert_glass_shows(glass, screen_frame(hub.material, screen, first.values)) > 7000


def test_what_is_erased_written_and_left_is_marked(glass: Glass, hub: Hub, bar: StepBar) -> None:
    hub.show_moment("half-full", "sensor-lost")
    assert glass.canvas.marks() == ()
    bar.forward.click()
    kinds = {mark.kind for mark in glass.canvas.marks()}
    assert kinds == {"written", "erased"}  # the level clears its padding box
    assert bar.words == "1 of 5: `level` `121.5` → `---`"
    bar.forward.click()
    marks = {mark.kind: mark.mask for mark in glass.canvas.marks()}
    assert set(marks) == {"written", "wrong"}  # the flow leaves its old text
    step = player(hub).step
    assert step is not None
    assert marks["wrong"].same_pixels(step.updates[1].stale)
    for _ in range(3):
        bar.forward.click()
    assert "at the end" in bar.words
    assert player(hub).behind.count() == step.differs.count() > 0


def test_a_step_that_leaves_nothing_says_so(hub: Hub, bar: StepBar) -> None:
    flow, valve = hub.part("flow"), hub.part("valve")
    assert isinstance(flow, Field)
    assert isinstance(valve, Icon)
    layout = edits.set_part(
        hub.layout, "readings", "flow", replace(flow, clearing="pad", padding=(6, 46, 60, 17))
    )
    hub.apply("clear", edits.set_part(layout, "readings", "valve", replace(valve, clearing="pad")))
    hub.show_moment("half-full", "sensor-lost")
    for _ in range(5):
        bar.forward.click()
    assert bar.words.endswith("nothing stays behind")


def test_playing_goes_on_by_itself_and_stops_at_the_end(hub: Hub, bar: StepBar) -> None:
    hub.show_moment("half-full", "sensor-lost")
    shown = player(hub)
    QTest.mouseClick(bar.play, LEFT)
    assert shown.playing
    assert bar.play.accessibleName() == "Pause"
    for number in range(1, 6):
        shown._timer.timeout.emit()
        assert shown.position == number
    assert not shown.playing
    QTest.mouseClick(bar.play, LEFT)  # from the beginning again
    assert shown.position == 0
    QTest.mouseClick(bar.play, LEFT)
    assert not shown.playing


def test_it_plays_in_real_time(hub: Hub, bar: StepBar, qtbot: QtBot) -> None:
    hub.show_moment("half-full", "sensor-lost")
    shown = player(hub)
    shown._timer.setInterval(5)
    shown.play()
    qtbot.waitUntil(lambda: shown.position == 5, timeout=3000)
    qtbot.waitUntil(lambda: not shown.playing, timeout=3000)


def test_escape_on_the_glass_leaves_the_step(glass: Glass, hub: Hub) -> None:
    hub.show_moment("half-full", "sensor-lost")
    key(glass, Qt.Key.Key_Escape)
    assert player(hub).step is None
    assert hub.moment is not None
    assert hub.moment.name == "half-full"


def test_a_change_of_the_layout_is_seen_in_the_step(glass: Glass, hub: Hub, bar: StepBar) -> None:
    hub.show_moment("half-full", "sensor-lost")
    bar.forward.click()
    bar.forward.click()
    before = glass.frame().codes.copy()
    hub.apply("move", edits.move_parts(hub.layout, "readings", ["level"], 3, 0))
    assert player(hub).position == 2
    assert not np.array_equal(glass.frame().codes, before)
    hub.apply("delete", edits.delete_parts(hub.layout, "readings", ["level", "flow", "mode", "link"]))
    assert player(hub).position == 1
    hub.apply("delete", edits.delete_moment(hub.layout, "sensor-lost"))
    assert player(hub).step is None
    QApplication.processEvents()


def test_a_whole_frame_is_one_update(qtbot: QtBot) -> None:
    layout = tank.layout()
    layout = edits.set_panel(layout, replace(layout.panel, refresh="whole"))
    with at_work(layout, "readings") as hub:
        hub.show_moment("half-full", "sensor-lost")
        shown = player(hub)
        shown.forward()
        assert shown.count == 1
        assert shown.words == "1 of 1: the whole frame is sent at once; nothing stays behind"


def test_two_moments_alike_have_no_updates(hub: Hub, bar: StepBar) -> None:
    hub.apply("copy", edits.duplicate_moment(hub.layout, "half-full")[0])
    hub.show_moment("half-full", "half-full-2")
    assert bar.words == "nothing changes between the two moments"
    assert not bar.play.isEnabled()
    player(hub).play()
    assert not player(hub).playing


def test_every_control_of_the_step_has_a_name(bar: StepBar, hub: Hub) -> None:
    for button in bar.findChildren(QToolButton):
        assert button.accessibleName()
