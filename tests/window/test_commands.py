"""Whatever is done, in whatever order: it can all be undone and done again, and the glass never lies."""

from __future__ import annotations

from random import Random

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot
from tests.picture import tank
from tests.window.handiwork import another
from tests.window.looking import (
    ALT,
    CTRL,
    NONE,
    SHIFT,
    assert_glass_shows,
    at_work,
    click,
    drag,
    drawn,
    expected,
    key,
    leave,
    open_glass,
    pixels_of,
    visible,
)

from panelproof.editor import selecting
from panelproof.editor.glass import Glass
from panelproof.editor.hub import Hub
from panelproof.editor.strip import Strip
from panelproof.layout.checking import problems
from panelproof.layout.writing import encode
from panelproof.picture.frame import new_frame
from panelproof.problem import Problem

COMMANDS = 400
ARROWS = (Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Up, Qt.Key.Key_Down)


def assert_shown(glass: Glass, hub: Hub) -> None:
    """Compare the glass's image with the screen drawn anew."""
    panel = hub.layout.panel
    frame = new_frame(panel) if hub.screen is None else drawn(hub)
    assert np.array_equal(glass.frame().codes, frame.codes)
    image = pixels_of(glass.canvas.picture())
    seen = visible(panel)
    assert np.array_equal(image[seen], expected(frame, panel)[seen])


def by_hand(rng: Random, glass: Glass, hub: Hub) -> None:
    """Do something on the glass with the pointer or the keys."""
    x, y = rng.randrange(hub.layout.panel.width), rng.randrange(hub.layout.panel.height)
    step = rng.randint(-15, 15), rng.randint(-15, 15)
    what = rng.random()
    if what < 0.3:
        click(glass, x, y, rng.choice((NONE, NONE, SHIFT, CTRL)))
    elif what < 0.65:
        drag(glass, (x, y), (x + step[0], y + step[1]), rng.choice((NONE, ALT)))
    elif what < 0.85:
        key(glass, rng.choice(ARROWS), rng.choice((NONE, SHIFT, CTRL)))
    elif what < 0.9:
        selecting.duplicate(hub)
    elif what < 0.95:
        key(glass, Qt.Key.Key_PageDown)
    else:
        key(glass, Qt.Key.Key_Delete)


def command(rng: Random, glass: Glass, hub: Hub) -> None:
    what = rng.random()
    if what < 0.12:
        hub.undo()
    elif what < 0.17:
        hub.redo()
    elif what < 0.22 and hub.layout.screens:
        hub.show_screen(rng.choice(hub.layout.screens).name)
    elif what < 0.27 and hub.moments:
        hub.show_moment(rng.choice(hub.moments).name)
    elif what < 0.6:
        by_hand(rng, glass, hub)
    else:
        try:
            title, layout = another(rng, hub.layout, hub.material)
        except Problem:
            return
        assert hub.apply(title, layout, rng.choice(("", "", "same"))) is None, title
        if rng.random() < 0.5:
            hub.end_gesture()


@pytest.mark.parametrize("seed", range(4))
def test_undoing_everything_gives_the_first_file_and_redoing_everything_the_last(
    qtbot: QtBot, seed: int
) -> None:
    rng = Random(seed)
    with at_work(tank.layout(), "readings") as hub:
        first = encode(hub.layout)
        glass, strip = open_glass(hub, (500, 380)), Strip(hub)
        qtbot.addWidget(glass)
        qtbot.addWidget(strip)
        done = 0
        for number in range(COMMANDS):
            before = hub.layout
            command(rng, glass, hub)
            done += hub.layout != before
            assert not problems(hub.layout)
            assert_shown(glass, hub)
            if number % 25 == 0 and hub.screen is not None:
                hub.select([])
                leave(glass)
                assert_glass_shows(glass, drawn(hub))
        assert done > COMMANDS / 4
        while hub.history.redo_title:
            hub.redo()
        last, undone = encode(hub.layout), 0
        while hub.history.undo_title:
            hub.undo()
            undone += 1
            if undone % 10 == 0:
                assert_shown(glass, hub)
        assert encode(hub.layout) == first
        assert not hub.history.unsaved
        assert undone > COMMANDS / 10
        while hub.history.redo_title:
            hub.redo()
        assert encode(hub.layout) == last
        assert_shown(glass, hub)
        QApplication.processEvents()
