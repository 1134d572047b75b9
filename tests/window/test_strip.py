from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import pytest
from msgspec.structs import replace
from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QToolButton
from pytestqt.qtbot import QtBot
from tests.picture import tank
from tests.window.looking import LEFT, NONE, SHIFT, at_work, expected, pixels_of

from panelproof.editor import edits, thumbnail
from panelproof.editor.card import PICTURE, Card
from panelproof.editor.hub import Hub
from panelproof.editor.strip import Strip
from panelproof.layout.panel import Panel
from panelproof.picture.frame import screen_frame

NAMES = ["half-full", "sensor-lost", "longest", "shortest", "tallest", "fault", "first"]


@pytest.fixture
def hub(qtbot: QtBot) -> Iterator[Hub]:
    with at_work(tank.layout(), "readings") as made:
        yield made


@pytest.fixture
def strip(hub: Hub, qtbot: QtBot) -> Strip:
    made = Strip(hub)
    qtbot.addWidget(made)
    made.resize(900, 150)
    made.show()
    QApplication.processEvents()
    return made


def card(strip: Strip, name: str) -> Card:
    return next(card for card in strip.cards if card.name == name)


def roles(strip: Strip) -> dict[str, str]:
    return {card.name: card.role for card in strip.cards if card.role}


def test_every_moment_has_a_card_the_named_ones_first(strip: Strip) -> None:
    assert [card.name for card in strip.cards] == NAMES
    assert card(strip, "half-full").text() == "Half full"
    assert card(strip, "longest").text() == "Longest texts"


@pytest.mark.parametrize("panel", [Panel(120, 64), Panel(60, 32), Panel(20, 20, shape="round")])
def test_pictures_of_small_panels_are_true_pixel_for_pixel(qtbot: QtBot, panel: Panel) -> None:
    with at_work(tank.layout(panel), "readings") as hub:
        strip = Strip(hub)
        qtbot.addWidget(strip)
        strip.draw_now()
        screen = hub.screen
        assert screen is not None
        for shown, moment in zip(strip.cards, hub.moments, strict=True):
            across, down, whole = thumbnail.size(panel, PICTURE, shown.image.devicePixelRatio())
            assert whole
            times = across // panel.width
            assert (shown.image.width(), shown.image.height()) == (across, down)
            seen = pixels_of(on_black(shown.image))[times // 2 :: times, times // 2 :: times]
            wanted = expected(screen_frame(hub.material, screen, moment.values), panel)
            inside = np.array(seen != 0xFF000000) | (panel.shape == "rectangular")
            assert np.array_equal(seen[inside], wanted[inside])


def on_black(image: QImage) -> QImage:
    return image.convertToFormat(QImage.Format.Format_ARGB32_Premultiplied)


def test_pictures_of_large_panels_are_lessened_to_fit() -> None:
    across, down, whole = thumbnail.size(Panel(320, 240), QSize(132, 72), 1.0)
    assert (across, down, whole) == (96, 72, False)
    assert thumbnail.size(Panel(320, 240), QSize(132, 72), 2.0)[:2] == (192, 144)


def test_a_press_shows_a_moment(strip: Strip, hub: Hub) -> None:
    assert roles(strip) == {"half-full": "shown"}
    QTest.mouseClick(card(strip, "sensor-lost"), LEFT)
    assert hub.moment is not None
    assert hub.moment.name == "sensor-lost"
    assert roles(strip) == {"sensor-lost": "shown"}


def test_a_second_one_pressed_with_shift_shows_the_step(strip: Strip, hub: Hub) -> None:
    QTest.mouseClick(card(strip, "sensor-lost"), LEFT, SHIFT)
    assert (hub.moment_name, hub.second_name) == ("half-full", "sensor-lost")
    assert roles(strip) == {"half-full": "shown", "sensor-lost": "then"}
    assert not strip.step_bar.isHidden()
    assert strip.step_bar.isVisible()
    QTest.mouseClick(strip.step_bar.leave, LEFT)
    assert roles(strip) == {"half-full": "shown"}
    assert not strip.step_bar.isVisible()


def test_every_other_card_has_a_button_for_the_step(strip: Strip, hub: Hub) -> None:
    assert not card(strip, "half-full").then.isVisible()
    then = card(strip, "fault").then
    assert then.accessibleName() == "Step from Half full to Fault"
    QTest.mouseClick(then, LEFT)
    assert (hub.moment_name, hub.second_name) == ("half-full", "fault")


def test_shift_on_the_shown_one_does_nothing(strip: Strip, hub: Hub) -> None:
    QTest.mouseClick(card(strip, "half-full"), LEFT, SHIFT)
    assert hub.second_name == ""


def test_the_keyboard_goes_along_the_cards_shows_and_steps(strip: Strip, hub: Hub) -> None:
    strip.cards[0].setFocus()
    QTest.keyClick(strip.cards[0], Qt.Key.Key_Right)
    assert strip.cards[1].hasFocus()
    QTest.keyClick(strip.cards[1], Qt.Key.Key_Return, SHIFT)
    assert (hub.moment_name, hub.second_name) == ("half-full", "sensor-lost")
    QTest.keyClick(strip.cards[1], Qt.Key.Key_Space, NONE)
    assert (hub.moment_name, hub.second_name) == ("sensor-lost", "")
    QTest.keyClick(strip.cards[1], Qt.Key.Key_Left)
    assert strip.cards[0].hasFocus()


def test_the_cards_follow_the_screen_and_the_layout(strip: Strip, hub: Hub) -> None:
    hub.show_screen("start")
    assert [card.name for card in strip.cards] == ["longest"]
    hub.show_screen("readings")
    assert [card.name for card in strip.cards] == NAMES
    hub.apply("take away", edits.delete_moment(hub.layout, "half-full"))
    assert [card.name for card in strip.cards] == NAMES[1:]
    assert roles(strip) == {"sensor-lost": "shown"}
    hub.undo()
    assert [card.name for card in strip.cards] == NAMES


def test_pictures_follow_a_change_within_a_moment(strip: Strip, hub: Hub, qtbot: QtBot) -> None:
    before = [shown.image for shown in strip.cards]
    hub.apply("move", edits.move_parts(hub.layout, "readings", ["caption"], 5, 0))
    qtbot.waitUntil(
        lambda: all(old != shown.image for old, shown in zip(before, strip.cards, strict=True)), timeout=2000
    )
    assert not strip._old


def test_what_is_on_the_glass_can_be_kept_with_a_name(strip: Strip, hub: Hub) -> None:
    QTest.mouseClick(card(strip, "fault"), LEFT)
    values = hub.values
    QTest.mouseClick(strip.keep, LEFT)
    assert hub.layout.moments[-1].name == "fault-kept"
    assert hub.moment is not None
    assert hub.moment.name == "fault-kept"
    assert hub.values == values
    hub.undo()
    assert hub.layout == tank.layout()


def test_a_layout_without_screens_has_an_empty_strip(qtbot: QtBot) -> None:
    with at_work(replace(tank.layout(), screens=(), moments=())) as hub:
        strip = Strip(hub)
        qtbot.addWidget(strip)
        assert strip.cards == []
        assert not strip.keep.isEnabled()


def test_every_control_of_the_strip_has_a_name(strip: Strip) -> None:
    for button in strip.findChildren(QToolButton):
        if not button.isHidden():
            assert button.accessibleName(), button.text()
    assert [card.accessibleName() for card in strip.cards][:2] == [
        "Moment Half full, on the glass",
        "Moment Sensor lost",
    ]
