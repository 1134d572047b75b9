from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from msgspec.structs import replace
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QDragLeaveEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication
from pytestqt.qtbot import QtBot
from tests.picture import tank
from tests.window.looking import (
    ALT,
    CTRL,
    NONE,
    SHIFT,
    assert_glass_shows,
    at_work,
    carry,
    click,
    drag,
    drawn,
    key,
    move,
    move_to,
    open_glass,
    point,
    press,
    release,
    seen,
)

from panelproof.editor import edits, selecting
from panelproof.editor.glass import Glass
from panelproof.editor.hub import Hub
from panelproof.layout.colour import Colours, shown
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box, Field, Icon, Rule
from panelproof.picture.frame import screen_frame
from panelproof.picture.image import BEZEL

LEVEL = (60, 33)
"""A pixel on the level's text."""
LINK = (101, 9)
CAPTION = (20, 10)


@pytest.fixture
def hub(qtbot: QtBot) -> Iterator[Hub]:
    with at_work(tank.layout(), "readings") as made:
        yield made


@pytest.fixture
def glass(hub: Hub, qtbot: QtBot) -> Glass:
    made = open_glass(hub)
    qtbot.addWidget(made)
    return made


def field(hub: Hub, name: str) -> Field:
    found = hub.part(name)
    assert isinstance(found, Field)
    return found


# -- pixels ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("zoom", [1, 2, 3, 5, 6, 11, 16])
def test_the_glass_shows_the_pixels_of_the_picture_at_every_zoom(glass: Glass, hub: Hub, zoom: int) -> None:
    glass.set_zoom(zoom)
    compared = assert_glass_shows(glass, drawn(hub))
    assert compared > 1000 or zoom > 11
    assert compared > 300


def test_every_moment_of_every_screen_is_shown_as_drawn(glass: Glass, hub: Hub) -> None:
    glass.set_zoom(2)
    for screen in hub.layout.screens:
        hub.show_screen(screen.name)
        for moment in hub.moments:
            hub.show_moment(moment.name)
            assert assert_glass_shows(glass, drawn(hub)) == 120 * 64


@pytest.mark.parametrize(
    "panel",
    [
        Panel(64, 64, "mono", "round"),
        Panel(90, 50, "rgb565", "rounded", 12),
        Panel(300, 20, "mono", refresh="whole"),
    ],
)
def test_panels_of_every_shape_and_colour_format_are_shown(qtbot: QtBot, panel: Panel) -> None:
    layout = tank.layout(panel)
    layout = replace(layout, types=tuple(replace(spec, rendering="one-bit") for spec in layout.types))
    with at_work(layout, "readings") as hub:
        glass = open_glass(hub)
        qtbot.addWidget(glass)
        glass.set_zoom(2)
        assert assert_glass_shows(glass, drawn(hub)) > 900


def test_a_round_panel_has_a_round_bezel_and_nothing_in_its_corners(qtbot: QtBot) -> None:
    with at_work(tank.layout(Panel(60, 60, shape="round"))) as hub:
        glass = open_glass(hub)
        qtbot.addWidget(glass)
        colours, _ = seen_without_grid(glass)
        surround = glass.canvas.viewport().grab().toImage().pixel(1, 30)
        bezel = 0xFF000000 | BEZEL[0] << 16 | BEZEL[1] << 8 | BEZEL[2]
        assert colours[50, 30] == 0xFF000000
        assert colours[8, 8] == bezel
        assert colours[0, 0] == surround


def seen_without_grid(glass: Glass) -> tuple[np.ndarray, np.ndarray]:
    glass.set_grid(False)
    glass.set_zoom(3)
    sight = glass.canvas.sight()
    image = glass.canvas.viewport().grab().toImage()
    panel = glass._hub.layout.panel
    middle = sight.size // 2
    found = np.array(
        [
            [image.pixel(sight.across(x) + middle, sight.down(y) + middle) for x in range(panel.width)]
            for y in range(panel.height)
        ],
        dtype=np.uint32,
    )
    return found, found


def test_the_grid_appears_from_six_times_up_and_can_be_taken_away(glass: Glass, hub: Hub) -> None:
    def line_seen() -> bool:
        sight = glass.canvas.sight()
        image = glass.canvas.viewport().grab().toImage()
        x, y = sight.across(60), sight.down(30)
        return image.pixel(x, y + sight.size // 2) != image.pixel(x + sight.size // 2, y + sight.size // 2)

    hub.show_screen("start")  # black around the middle of this row
    glass.set_zoom(6)
    assert line_seen()
    glass.set_zoom(5)
    assert not line_seen()
    glass.set_zoom(6)
    QTest.mouseClick(glass.grid_button, Qt.MouseButton.LeftButton)
    assert not line_seen()


@pytest.mark.parametrize("scale", ["1.25", "1.5", "2"])
def test_pixels_are_crisp_on_monitors_of_any_density(scale: str) -> None:
    script = (
        "import sys\n"
        "from PySide6.QtWidgets import QApplication\n"
        "application = QApplication(sys.argv)\n"
        "from tests.picture import tank\n"
        "from tests.window.looking import *\n"
        "with at_work(tank.layout(), 'readings') as hub:\n"
        "    glass = open_glass(hub)\n"
        "    assert glass.devicePixelRatioF() == float(sys.argv[1])\n"
        "    for zoom in (1, 2, 3, 7):\n"
        "        glass.set_zoom(zoom)\n"
        "        assert assert_glass_shows(glass, drawn(hub)) > 1500\n"
        "print('crisp')\n"
    )
    environment = os.environ | {"QT_SCALE_FACTOR": scale, "QT_QPA_PLATFORM": "offscreen"}
    ran = subprocess.run(
        [sys.executable, "-c", script, scale],
        cwd=Path(__file__).parents[2],
        env=environment,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert ran.stdout.strip() == "crisp", ran.stderr


def test_a_hidden_part_is_not_drawn_and_comes_back(glass: Glass, hub: Hub) -> None:
    whole = drawn(hub)
    hub.set_hidden("level", True)
    screen = hub.screen
    assert screen is not None
    without = replace(screen, parts=tuple(part for part in screen.parts if part.name != "level"))
    glass.set_zoom(2)
    assert_glass_shows(glass, screen_frame(hub.material, without, hub.values))
    hub.set_hidden("level", False)
    assert_glass_shows(glass, whole)


def test_a_layout_without_screens_shows_an_empty_glass(qtbot: QtBot) -> None:
    with at_work(replace(tank.layout(), screens=(), moments=())) as hub:
        glass = open_glass(hub)
        qtbot.addWidget(glass)
        click(glass, 10, 10)
        key(glass, Qt.Key.Key_PageDown)
        key(glass, Qt.Key.Key_Delete)
        assert not glass.frame().codes.any()
        hub.apply("add", edits.add_screen(hub.layout)[0])
        assert hub.screen is not None


# -- zoom and view -----------------------------------------------------------------------------------------


def test_the_panel_fits_the_window_until_it_is_zoomed(glass: Glass) -> None:
    assert glass.canvas.fitting
    small = glass.zoom
    glass.resize(1500, 1000)
    QApplication.processEvents()
    assert glass.zoom > small
    glass.zoom_out()
    at = glass.zoom
    glass.resize(760, 520)
    QApplication.processEvents()
    assert glass.zoom == at
    glass.fit()
    assert glass.zoom == small


def test_zoom_stops_at_one_and_sixteen(glass: Glass) -> None:
    for _ in range(40):
        key(glass, Qt.Key.Key_Plus)
    assert glass.zoom == 16
    for _ in range(40):
        key(glass, Qt.Key.Key_Minus)
    assert glass.zoom == 1
    key(glass, Qt.Key.Key_0)
    assert glass.canvas.fitting


def turn(glass: Glass, place: QPoint, by: int, keys: Qt.KeyboardModifier) -> None:
    viewport, local = glass.canvas.viewport(), QPointF(place)
    event = QWheelEvent(
        local,
        viewport.mapToGlobal(local),
        QPoint(),
        QPoint(0, by),
        Qt.MouseButton.NoButton,
        keys,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(viewport, event)


def test_turning_the_wheel_with_ctrl_zooms_about_the_pointer(glass: Glass) -> None:
    glass.set_zoom(10)
    place = point(glass, 70, 30)
    turn(glass, place, 120, CTRL)
    assert glass.zoom == 11
    assert glass.canvas.sight().pixel(place.x(), place.y()) == (70, 30)
    turn(glass, place, -120, CTRL)
    assert glass.zoom == 10
    assert glass.canvas.sight().pixel(place.x(), place.y()) == (70, 30)


def test_the_wheel_scrolls_and_space_with_a_drag_pans(glass: Glass, hub: Hub) -> None:
    glass.set_zoom(16)
    before = glass.canvas.sight()
    turn(glass, QPoint(100, 100), -120, NONE)
    scrolled = glass.canvas.sight()
    assert scrolled.y < before.y
    viewport = glass.canvas.viewport()
    QTest.keyPress(glass.canvas, Qt.Key.Key_Space)
    QTest.mousePress(viewport, Qt.MouseButton.LeftButton, NONE, QPoint(200, 200))
    move_to(viewport, QPoint(230, 190))
    QTest.mouseRelease(viewport, Qt.MouseButton.LeftButton, NONE, QPoint(230, 190))
    QTest.keyRelease(glass.canvas, Qt.Key.Key_Space)
    assert (glass.canvas.sight().x, glass.canvas.sight().y) == (scrolled.x + 30, scrolled.y - 10)
    assert not hub.selection
    assert hub.history.undo_title == ""


def test_the_pixel_under_the_pointer_is_told(glass: Glass, qtbot: QtBot) -> None:
    with qtbot.waitSignal(glass.pointer_at) as told:
        move(glass, 17, 23, button=False)
    assert told.args == [17, 23]
    assert glass._place.text() == "17, 23"
    move(glass, -2, 5, button=False)
    assert glass._place.text() == "(-2, 5)"


def test_the_rulers_count_millimetres_where_the_size_is_known(glass: Glass, hub: Hub) -> None:
    assert not glass._unit.isEnabled()
    hub.apply("panel", edits.set_panel(hub.layout, replace(hub.layout.panel, width_mm=30.0, height_mm=16.0)))
    assert glass._unit.isEnabled()
    QTest.mouseClick(glass._unit, Qt.MouseButton.LeftButton)
    assert glass._unit.text() == "mm"
    assert glass._across.per_pixel == 0.25


# -- choosing ----------------------------------------------------------------------------------------------


def test_a_click_chooses_a_part_and_one_beside_everything_lets_go(glass: Glass, hub: Hub) -> None:
    click(glass, *LEVEL)
    assert hub.selection == {"level"}
    click(glass, *LINK)
    assert hub.selection == {"link"}
    click(glass, -6, -6)
    assert not hub.selection


def test_shift_and_ctrl_add_and_take_away(glass: Glass, hub: Hub) -> None:
    click(glass, *LEVEL)
    click(glass, *LINK, SHIFT)
    assert hub.selection == {"level", "link"}
    click(glass, *CAPTION, CTRL)
    assert hub.selection == {"level", "link", "caption"}
    click(glass, *LINK, CTRL)
    assert hub.selection == {"level", "caption"}
    click(glass, *LEVEL)
    assert hub.selection == {"level"}


def test_a_marquee_over_the_ground_box_chooses_what_it_touches(glass: Glass, hub: Hub) -> None:
    drag(glass, (90, 3), (116, 14))
    assert hub.selection == {"link", "valve"}
    drag(glass, (1, 53), (20, 62))
    assert hub.selection == {"flow"}


def test_a_marquee_with_shift_adds_and_escape_takes_it_back(glass: Glass, hub: Hub) -> None:
    click(glass, *CAPTION)
    press(glass, 90, 3, SHIFT)
    move(glass, 100, 8, SHIFT)
    move(glass, 116, 14, SHIFT)
    assert hub.selection == {"caption", "link", "valve"}
    key(glass, Qt.Key.Key_Escape)
    assert hub.selection == {"caption"}
    release(glass, 116, 14, SHIFT)


def test_keys_choose_one_part_after_another(glass: Glass, hub: Hub) -> None:
    key(glass, Qt.Key.Key_PageDown)
    assert hub.selection == {"frame"}
    key(glass, Qt.Key.Key_PageDown)
    assert hub.selection == {"caption"}
    hub.set_hidden("frame", True)
    key(glass, Qt.Key.Key_PageUp)
    assert hub.selection == {"valve"}
    key(glass, Qt.Key.Key_Escape)
    assert not hub.selection


def test_a_double_click_and_enter_ask_for_the_sheet(glass: Glass, hub: Hub, qtbot: QtBot) -> None:
    with qtbot.waitSignal(glass.part_opened) as opened:
        QTest.mouseDClick(glass.canvas.viewport(), Qt.MouseButton.LeftButton, NONE, point(glass, *LEVEL))
    assert opened.args == ["level"]
    with qtbot.waitSignal(glass.part_opened):
        key(glass, Qt.Key.Key_Return)


# -- moving ------------------------------------------------------------------------------------------------


def test_a_field_is_dragged_by_its_text_and_one_undo_brings_it_back(glass: Glass, hub: Hub) -> None:
    before = hub.layout
    drag(glass, LEVEL, (LEVEL[0] - 5, LEVEL[1] + 3), ALT)
    level = field(hub, "level")
    assert (level.x, level.baseline, level.padding) == (69, 46, (15, 27, 56, 24))
    assert hub.selection == {"level"}
    assert hub.history.undo_title == "move `level`"
    hub.undo()
    assert hub.layout == before
    assert hub.history.undo_title == ""


def test_the_glass_follows_a_drag_pixel_for_pixel(glass: Glass, hub: Hub) -> None:
    glass.set_zoom(2)
    press(glass, *LEVEL)
    for step in range(1, 6):
        move(glass, LEVEL[0] + 3 * step, LEVEL[1] - step, ALT)
        assert np.array_equal(glass.frame().codes, drawn(hub).codes)
    assert field(hub, "level").x == 74 + 15
    release(glass, LEVEL[0] + 15, LEVEL[1] - 5)


def test_two_drags_are_two_changes(glass: Glass, hub: Hub) -> None:
    drag(glass, LEVEL, (LEVEL[0] + 4, LEVEL[1]), ALT)
    drag(glass, (LEVEL[0] + 4, LEVEL[1]), (LEVEL[0] + 9, LEVEL[1]), ALT)
    hub.undo()
    assert field(hub, "level").x == 78


def test_several_chosen_parts_move_together(glass: Glass, hub: Hub) -> None:
    click(glass, *LEVEL)
    click(glass, *LINK, SHIFT)
    drag(glass, LEVEL, (LEVEL[0] + 2, LEVEL[1] + 4), ALT)
    link = hub.part("link")
    assert isinstance(link, Icon)
    assert (link.x, link.y) == (100, 10)
    assert field(hub, "level").baseline == 47
    assert hub.history.undo_title == "move 2 parts"


def test_escape_during_a_drag_puts_everything_back(glass: Glass, hub: Hub) -> None:
    before = hub.layout
    press(glass, *LEVEL)
    move(glass, LEVEL[0] + 20, LEVEL[1] + 5)
    assert hub.layout != before
    key(glass, Qt.Key.Key_Escape)
    assert hub.layout == before
    assert hub.history.undo_title == ""
    move(glass, LEVEL[0] + 30, LEVEL[1])
    release(glass, LEVEL[0] + 30, LEVEL[1])
    assert hub.layout == before


def test_a_trembling_click_moves_nothing(glass: Glass, hub: Hub) -> None:
    viewport, place = glass.canvas.viewport(), point(glass, *LEVEL)
    QTest.mousePress(viewport, Qt.MouseButton.LeftButton, NONE, place)
    move_to(viewport, place + QPoint(1, 1))
    QTest.mouseRelease(viewport, Qt.MouseButton.LeftButton, NONE, place + QPoint(1, 1))
    assert hub.history.undo_title == ""
    assert hub.selection == {"level"}


def test_a_locked_part_can_be_chosen_but_not_moved(glass: Glass, hub: Hub) -> None:
    hub.set_locked("level", True)
    before = hub.layout
    click(glass, *LEVEL)
    assert hub.selection == {"level"}
    drag(glass, LEVEL, (LEVEL[0] + 9, LEVEL[1]))
    click(glass, *LEVEL)
    key(glass, Qt.Key.Key_Right)
    key(glass, Qt.Key.Key_Delete)
    assert hub.layout == before


def test_a_locked_part_stays_while_those_chosen_with_it_move(glass: Glass, hub: Hub) -> None:
    hub.set_locked("level", True)
    hub.select(["level", "link"])
    drag(glass, LINK, (LINK[0] - 4, LINK[1] + 6), ALT)
    link = hub.part("link")
    assert isinstance(link, Icon)
    assert (link.x, link.y) == (94, 12)
    assert field(hub, "level").x == 74
    # Taken hold of by the locked one, nothing moves.
    hub.select(["level", "link"])
    drag(glass, LEVEL, (LEVEL[0] + 9, LEVEL[1] + 3), ALT)
    assert hub.history.undo_title == "move `link`"
    assert field(hub, "level").x == 74


def test_a_hidden_part_cannot_be_hit(glass: Glass, hub: Hub) -> None:
    hub.set_hidden("level", True)
    click(glass, *LEVEL)
    assert hub.selection == {"frame"}


def test_arrow_keys_move_by_one_and_with_shift_by_eight_as_one_change(glass: Glass, hub: Hub) -> None:
    click(glass, *LINK)
    for _ in range(3):
        key(glass, Qt.Key.Key_Left)
    key(glass, Qt.Key.Key_Down, SHIFT)
    link = hub.part("link")
    assert isinstance(link, Icon)
    assert (link.x, link.y) == (95, 14)
    hub.undo()
    assert hub.part("link") == tank.parts()[7]


def test_arrow_keys_after_a_rest_are_a_change_of_their_own(glass: Glass, hub: Hub, qtbot: QtBot) -> None:
    click(glass, *LINK)
    key(glass, Qt.Key.Key_Left)
    glass.canvas._rest.timeout.emit()
    key(glass, Qt.Key.Key_Left)
    hub.undo()
    link = hub.part("link")
    assert isinstance(link, Icon)
    assert link.x == 97


def test_a_dragged_part_is_drawn_to_an_edge_nearby_but_not_with_alt(glass: Glass, hub: Hub) -> None:
    glass.set_zoom(3)  # six logical pixels are two of the panel
    drag(glass, LINK, (LINK[0] - 12, LINK[1] + 30))
    free = hub.part("link")
    hub.undo()
    drag(glass, LINK, (LINK[0] - 12, LINK[1] + 30), ALT)
    exact = hub.part("link")
    assert isinstance(free, Icon)
    assert isinstance(exact, Icon)
    assert (exact.x, exact.y) == (86, 36)
    assert (free.x, free.y) != (exact.x, exact.y)
    assert abs(free.x - 86) <= 2
    assert abs(free.y - 36) <= 2


def test_guide_lines_are_shown_while_a_part_lies_in_line(glass: Glass, hub: Hub) -> None:
    press(glass, *LINK)
    move(glass, LINK[0] - 3, LINK[1])
    assert glass.canvas.gesture is not None
    assert any(guide.axis == "y" for guide in glass.canvas.gesture.guides)
    move(glass, LINK[0] - 3, LINK[1], ALT)
    assert not glass.canvas.gesture.guides
    release(glass, LINK[0] - 3, LINK[1])
    assert glass.canvas.gesture is None


# -- sizes -------------------------------------------------------------------------------------------------


def test_the_padding_box_of_a_field_is_pulled_by_its_handles(glass: Glass, hub: Hub) -> None:
    click(glass, *LEVEL)
    # The corner lies on the line between two pixels, half a pixel before the middle of one.
    drag(glass, (75.5, 47.5), (79.5, 49.5), ALT)
    assert field(hub, "level").padding == (20, 24, 60, 26)
    assert field(hub, "level").x == 74
    assert hub.history.undo_title == "change the padding of `level`"
    drag(glass, (19.5, 36.5), (24.5, 36.5), ALT)
    assert field(hub, "level").padding == (25, 24, 55, 26)


def test_a_box_and_a_rule_have_handles_of_their_own(glass: Glass, hub: Hub) -> None:
    hub.select(["line"])
    drag(glass, (115.5, 19), (99.5, 19), ALT)
    line = hub.part("line")
    assert isinstance(line, Rule)
    assert (line.x, line.length, line.thickness) == (4, 96, 1)
    hub.select(["frame"])
    drag(glass, (-0.5, -0.5), (3.5, 1.5), ALT)
    frame = hub.part("frame")
    assert isinstance(frame, Box)
    assert (frame.x, frame.y, frame.width, frame.height) == (4, 2, 116, 62)


def test_escape_while_pulling_a_handle_puts_the_size_back(glass: Glass, hub: Hub) -> None:
    click(glass, *LEVEL)
    press(glass, 75.5, 47.5)
    move(glass, 90, 60)
    assert field(hub, "level").padding != (20, 24, 56, 24)
    key(glass, Qt.Key.Key_Escape)
    assert field(hub, "level").padding == (20, 24, 56, 24)
    release(glass, 90, 60)
    assert hub.history.undo_title == ""


def test_ctrl_and_arrow_keys_change_the_size(glass: Glass, hub: Hub) -> None:
    click(glass, *LEVEL)
    key(glass, Qt.Key.Key_Right, CTRL)
    key(glass, Qt.Key.Key_Down, CTRL | SHIFT)
    assert field(hub, "level").padding == (20, 24, 57, 32)


# -- taking away, copying ----------------------------------------------------------------------------------


def test_delete_takes_the_chosen_parts_away(glass: Glass, hub: Hub) -> None:
    click(glass, *LEVEL)
    click(glass, *LINK, SHIFT)
    key(glass, Qt.Key.Key_Delete)
    assert hub.part("level") is None
    assert hub.part("link") is None
    assert not hub.selection
    assert "level" not in hub.layout.moments[0].fields
    hub.undo()
    assert hub.layout == tank.layout()


def test_copies_are_pasted_beside_and_in_another_window(glass: Glass, hub: Hub, qtbot: QtBot) -> None:
    click(glass, *LINK)
    selecting.copy(hub)
    selecting.paste(hub)
    link = hub.part("link-2")
    assert isinstance(link, Icon)
    assert (link.x, link.y) == (106, 14)
    selecting.paste(hub)
    third = hub.part("link-3")
    assert isinstance(third, Icon)
    assert (third.x, third.y) == (114, 22)
    with at_work(tank.layout(), "start") as other:
        selecting.paste(other)
        assert other.selection == {"link"}
        pasted = other.part("link")
        assert isinstance(pasted, Icon)
        assert (pasted.x, pasted.y) == (98, 6)


def test_copies_by_duplicating_are_chosen(glass: Glass, hub: Hub) -> None:
    click(glass, *LINK)
    selecting.duplicate(hub)
    assert hub.selection == {"link-2"}


# -- from the tray -----------------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", [kind for kind in edits.KINDS if kind != "picture"])
def test_a_part_from_the_tray_is_previewed_and_dropped(glass: Glass, hub: Hub, kind: str) -> None:
    hub.show_screen("start")
    before = hub.layout
    carry(glass, kind, 60, 50, drop=False)
    assert hub.layout == before
    assert not np.array_equal(glass.frame().codes, drawn(hub).codes)
    carry(glass, kind, 60, 50, drop=True)
    assert hub.selection == {kind}
    assert hub.history.undo_title == f"add `{kind}`"
    assert np.array_equal(glass.frame().codes, drawn(hub).codes)
    hub.undo()
    assert hub.layout == before


def test_a_part_carried_off_again_leaves_nothing(glass: Glass, hub: Hub) -> None:
    before, frame = hub.layout, glass.frame()
    carry(glass, "box", 60, 50, drop=False)
    QApplication.sendEvent(glass.canvas.viewport(), QDragLeaveEvent())
    assert hub.layout == before
    assert glass.frame() is frame


def test_what_is_no_part_is_not_taken(glass: Glass, hub: Hub) -> None:
    carry(glass, "elephant", 60, 50, drop=True)
    assert glass.canvas.drop is None
    assert hub.layout == tank.layout()


# -- the choice as seen ------------------------------------------------------------------------------------


def test_the_chosen_field_shows_its_padding_baseline_and_what_it_can_ink(glass: Glass, hub: Hub) -> None:
    plain = glass.canvas.viewport().grab().toImage()
    hub.select(["level"])
    chosen = glass.canvas.viewport().grab().toImage()
    sight = glass.canvas.sight()
    level = field(hub, "level")
    assert level.padding is not None
    x, y, width, _ = level.padding
    # Just above the padding box's upper side, and on the baseline.
    row = sight.down(y) - 1
    across = range(sight.across(x), sight.across(x + width))
    assert any(chosen.pixel(at, row) != plain.pixel(at, row) for at in across)
    assert chosen.pixel(sight.across(x + 2), sight.down(level.baseline)) != plain.pixel(
        sight.across(x + 2), sight.down(level.baseline)
    )


def test_words_tell_the_place_of_what_is_chosen(glass: Glass, hub: Hub) -> None:
    hub.select(["level"])
    assert glass._about.text() == "level: x 74, baseline 43 · padding 20, 24, 56 × 24"
    hub.select(["link", "valve"])
    assert glass._about.text() == "2 parts: x 98, y 6, 16 × 6"
    hub.select([])
    assert glass._about.text() == ""


def test_every_control_has_a_name_and_takes_the_focus_by_tab(glass: Glass) -> None:
    for button in glass.findChildren(QAbstractButton):
        if button.parent() is not glass.canvas:
            assert button.accessibleName(), button.text()
            assert button.focusPolicy() & Qt.FocusPolicy.TabFocus
    assert glass.canvas.accessibleName()


def test_inks_on_the_glass_are_those_that_the_panel_can_show(glass: Glass, hub: Hub) -> None:
    hub.show_screen("start")
    glass.set_zoom(3)
    colours, _ = seen(glass)
    red, green, blue = shown(hub.material.code("water"), Colours("rgb565"))
    assert 0xFF000000 | red << 16 | green << 8 | blue in colours
