from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage, qRgb
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton
from pytestqt.qtbot import QtBot
from tests.picture import tank
from tests.window.looking import LEFT, at_work

from panelproof.editor import edits
from panelproof.editor.densities import Densities
from panelproof.editor.hub import Hub
from panelproof.editor.truesize import TrueSize, as_large, device_size, monitor_name, stated
from panelproof.layout.colour import Colours, shown
from panelproof.layout.panel import Panel


@pytest.fixture
def hub(qtbot: QtBot) -> Iterator[Hub]:
    panel = Panel(120, 64, width_mm=30.0, height_mm=16.0)
    with at_work(tank.layout(panel), "readings") as made:
        yield made


@pytest.fixture
def window(hub: Hub, qtbot: QtBot, tmp_path: Path) -> TrueSize:
    made = TrueSize(hub, densities=Densities(tmp_path))
    qtbot.addWidget(made)
    made.show()
    QApplication.processEvents()
    return made


def test_the_panel_covers_its_millimetres(window: TrueSize, hub: Hub) -> None:
    window.set_density(4.0)
    area = window.view.panel_area()
    assert (area.width(), area.height()) == (120, 64)
    window.set_density(10.0)
    area = window.view.panel_area()
    assert (area.width(), area.height()) == (300, 160)
    image = window.view.grab().toImage()
    left = round(area.x())
    row = round(area.y() + area.height() / 2)
    # The frame box of the tank is chalk at the panel's very edge; the bezel lies outside.
    chalk = "#{:02x}{:02x}{:02x}".format(*shown(hub.material.code("chalk"), Colours("rgb565")))
    assert image.pixelColor(left, row).name() == chalk
    assert image.pixelColor(left - 2, row).name() == "#686c72"


def test_without_measure_the_monitors_own_density_counts(window: TrueSize) -> None:
    screen = window.screen()
    assert window.density == pytest.approx(stated(screen))
    assert stated(screen) == pytest.approx(screen.physicalDotsPerInch() / 25.4)
    assert "as the monitor says" in window.words.text()


def test_a_monitor_is_measured_against_a_card_and_remembered(
    window: TrueSize, hub: Hub, qtbot: QtBot, tmp_path: Path
) -> None:
    QTest.mouseClick(window.measure, LEFT)
    assert window.card.isVisible()
    assert not window.view.isVisible()
    # The person's card is 400 pixels wide on this monitor.
    while window.card.card_width() < 400:
        QTest.keyClick(window.slider, Qt.Key.Key_Right)
    assert window.card.card_width() == pytest.approx(400, abs=2)
    QTest.mouseClick(window.keep, LEFT)
    assert window.view.isVisible()
    assert "as measured" in window.words.text()
    measured = 400 / 85.60
    assert window.density == pytest.approx(measured, abs=0.03)
    again = TrueSize(hub, densities=Densities(tmp_path))
    qtbot.addWidget(again)
    assert again.density == pytest.approx(window.density, abs=0.001)
    area = again.view.panel_area()
    assert area.width() == round(30 * again.density)
    QTest.mouseClick(again.reset, LEFT)
    assert again.density == pytest.approx(stated(again.screen()))
    assert Densities(tmp_path).measured(monitor_name(again.screen())) is None


def test_what_was_kept_in_a_broken_file_is_forgotten(tmp_path: Path) -> None:
    for broken in (b"", b"[]", b'{"a": "far", "b": 1e9}', b"\xff"):
        (tmp_path / "monitors.json").write_bytes(broken)
        assert Densities(tmp_path).measured("a") is None
        assert Densities(tmp_path).measured("b") is None
    Densities(tmp_path).keep("a", 4.5)
    assert Densities(tmp_path).measured("a") == 4.5


def test_a_panel_of_unknown_size_says_what_to_do(qtbot: QtBot, tmp_path: Path) -> None:
    with at_work(tank.layout(), "readings") as hub:
        window = TrueSize(hub, densities=Densities(tmp_path))
        qtbot.addWidget(window)
        assert "Give its width and height in millimetres" in window.words.text()
        window.grab()
        hub.apply(
            "size", edits.set_panel(hub.layout, replace(hub.layout.panel, width_mm=30.0, height_mm=16.0))
        )
        assert window.words.text().startswith("30 × 16 mm")


def test_it_follows_moment_and_layout(window: TrueSize, hub: Hub) -> None:
    before = window.view.frame()
    hub.show_moment("sensor-lost")
    assert window.view.frame() != before
    shown = window.view.frame()
    hub.apply("move", edits.move_parts(hub.layout, "readings", ["level"], 4, 0))
    assert window.view.frame() != shown


def test_a_picture_grown_by_a_fraction_keeps_its_pixels_apart() -> None:
    image = QImage(4, 1, QImage.Format.Format_ARGB32_Premultiplied)
    for x in range(4):
        image.setPixel(x, 0, qRgb(255, 255, 255) if x % 2 else qRgb(0, 0, 0))
    large = as_large(image, (10, 3))
    assert (large.width(), large.height()) == (10, 3)
    assert [large.pixelColor(x, 1).red() for x in (0, 1, 3, 4, 5, 6, 8, 9)] == [
        0,
        0,
        255,
        255,
        0,
        0,
        255,
        255,
    ]


def test_sizes_are_whole_device_pixels() -> None:
    panel = Panel(128, 64, width_mm=21.74, height_mm=10.86)
    assert device_size(panel, 3.78) == (82, 41)
    assert device_size(Panel(8, 8), 3.78) is None


def test_every_control_has_a_name(window: TrueSize) -> None:
    for button in window.findChildren(QPushButton):
        assert button.text() or button.accessibleName()
    assert window.slider.accessibleName()
    assert window.spin.accessibleName()
    assert window.view.accessibleName()
