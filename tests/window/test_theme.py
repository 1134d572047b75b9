"""Colours that can be read, and a change of the scheme."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QApplication, QLabel, QWidget
from pytestqt.qtbot import QtBot

from panelproof.editor import theme


@pytest.fixture(autouse=True)
def _as_the_system(qapp: QApplication) -> Iterator[None]:
    theme.apply()
    yield
    theme.choose("system")


def contrast(one: QColor, other: QColor) -> float:
    """Contrast ratio of WCAG 2.2, "relative luminance" and "contrast ratio"."""

    def luminance(tone: QColor) -> float:
        parts = (tone.redF(), tone.greenF(), tone.blueF())
        red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue

    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("tone", ["text", "quiet", "accent", "fault", "caution", "note", "good"])
def test_every_text_colour_can_be_read_on_every_ground(scheme: theme.Scheme, tone: str) -> None:
    theme.choose(scheme)
    tones = theme.colours()
    # 4.5 : 1 is the least for text of normal size (WCAG 2.2, success criterion 1.4.3).
    for ground in (tones.surface, tones.sunken, tones.raised):
        assert contrast(getattr(tones, tone), ground) >= 4.5
    assert contrast(tones.on_accent, tones.accent) >= 4.5


def test_those_who_watch_are_told_of_a_change_until_they_are_gone(qtbot: QtBot) -> None:
    theme.choose("light")
    told: list[str] = []
    widget = QWidget()
    theme.watch(widget, lambda: told.append("changed"))
    theme.choose("dark")
    assert told == ["changed"]
    assert QApplication.palette().color(QPalette.ColorRole.Window) == theme.colours().surface
    theme.choose("dark")
    assert told == ["changed"], "the same scheme again is no change"
    gone: list[bool] = []
    widget.destroyed.connect(lambda: gone.append(True))
    widget.deleteLater()
    qtbot.waitUntil(lambda: bool(gone))
    theme.choose("light")
    assert told == ["changed"]


def test_a_quiet_label_is_quiet_in_both_schemes(qtbot: QtBot) -> None:
    label = QLabel("figures")
    qtbot.addWidget(label)
    theme.set_role(label, "small")
    schemes: tuple[theme.Scheme, ...] = ("dark", "light")
    for scheme in schemes:
        theme.choose(scheme)
        assert label.palette().color(label.foregroundRole()) == theme.colours().quiet


def test_a_long_line_asks_for_no_room(qtbot: QtBot) -> None:
    label = theme.Elided("a sentence that goes on and on " * 10)
    qtbot.addWidget(label)
    assert label.minimumSizeHint().width() == 0
