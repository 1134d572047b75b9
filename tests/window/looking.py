"""What a person sees and touches on the glass, for tests: its pixels, and places on it to press."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QByteArray, QEvent, QMimeData, QPoint, QPointF, Qt
from PySide6.QtGui import QDragEnterEvent, QDragMoveEvent, QDropEvent, QImage, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from panelproof.editor import theme
from panelproof.editor.glass import Glass
from panelproof.editor.hands import MIME
from panelproof.editor.hub import Hub
from panelproof.layout.colour import shown
from panelproof.layout.document import Layout
from panelproof.layout.panel import Panel, visible_spans
from panelproof.picture.frame import Frame, screen_frame

NONE = Qt.KeyboardModifier.NoModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier
CTRL = Qt.KeyboardModifier.ControlModifier
ALT = Qt.KeyboardModifier.AltModifier
LEFT = Qt.MouseButton.LeftButton
Pixels = NDArray[np.uint32]


@cache
def _dress() -> None:
    theme.apply()


@contextmanager
def at_work(layout: Layout, screen: str = "", folder: Path | None = None) -> Iterator[Hub]:
    """A hub with a layout, shut again at the end."""
    hub = Hub(layout, folder or Path())
    if screen:
        hub.show_screen(screen)
    try:
        yield hub
    finally:
        hub.shut()


def open_glass(hub: Hub, size: tuple[int, int] = (760, 520)) -> Glass:
    _dress()
    glass = Glass(hub)
    glass.resize(*size)
    glass.show()
    QApplication.processEvents()
    return glass


def pixels_of(image: QImage) -> Pixels:
    """Return 0xffrrggbb of every device pixel, [height, width]."""
    plain = image.convertToFormat(QImage.Format.Format_RGB32)
    flat = np.frombuffer(plain.constBits(), dtype=np.uint32)
    rows: Pixels = flat.reshape(plain.height(), plain.bytesPerLine() // 4)[:, : plain.width()]
    return rows | np.uint32(0xFF000000)


def seen(glass: Glass) -> tuple[Pixels, NDArray[np.bool_]]:
    """Return the colour that each panel pixel has on the monitor, and which of them lie in the window.

    Every device pixel of a visible panel pixel must have one colour; where the grid is drawn, all but its
    first row and column.
    """
    canvas = glass.canvas
    QApplication.processEvents()
    monitor = pixels_of(canvas.viewport().grab().toImage())
    sight, panel = canvas.sight(), glass._hub.layout.panel
    skip = 1 if canvas.grid_shown and canvas.zoom >= 6 else 0
    columns = [x for x in range(panel.width) if 2 <= sight.across(x) <= monitor.shape[1] - 2 - sight.size]
    rows = [y for y in range(panel.height) if 2 <= sight.down(y) <= monitor.shape[0] - 2 - sight.size]
    assert columns, "nothing of the panel is in the window"
    assert rows, "nothing of the panel is in the window"
    across, down = slice(columns[0], columns[-1] + 1), slice(rows[0], rows[-1] + 1)
    part = monitor[sight.down(down.start) : sight.down(down.stop), sight.across(across.start) :]
    part = part[:, : len(columns) * sight.size]
    blocks = part.reshape(len(rows), sight.size, len(columns), sight.size)[:, skip:, :, skip:]
    even = (blocks == blocks[:, :1, :, :1]).all(axis=(1, 3))
    assert (even | ~visible(panel)[down, across]).all(), "a panel pixel is not of one colour"
    colours = np.zeros((panel.height, panel.width), dtype=np.uint32)
    inside = np.zeros((panel.height, panel.width), dtype=np.bool_)
    colours[down, across], inside[down, across] = blocks[:, 0, :, 0], True
    return colours, inside


def expected(frame: Frame, panel: Panel) -> Pixels:
    """Return what the panel shows of a frame, colour by colour."""
    colours = np.zeros(frame.codes.shape, dtype=np.uint32)
    for code in np.unique(frame.codes):
        red, green, blue = shown(int(code), panel.colours)
        colours[frame.codes == code] = 0xFF000000 | red << 16 | green << 8 | blue
    return colours


def visible(panel: Panel) -> NDArray[np.bool_]:
    found = np.zeros((panel.height, panel.width), dtype=np.bool_)
    for y, (first, end) in enumerate(visible_spans(panel)):
        found[y, first:end] = True
    return found


def drawn(hub: Hub) -> Frame:
    """Return the frame that `render` has of what the hub shows."""
    assert hub.screen is not None
    return screen_frame(hub.material, hub.screen, hub.values)


def assert_glass_shows(glass: Glass, frame: Frame) -> int:
    """Compare every panel pixel in the window with a frame; return how many were compared."""
    panel = glass._hub.layout.panel
    colours, inside = seen(glass)
    compared = inside & visible(panel)
    wanted = expected(frame, panel)
    different = (colours != wanted) & compared
    assert not different.any(), (
        f"{int(different.sum())} pixels differ, the first at {np.argwhere(different)[0]}"
    )
    return int(compared.sum())


# -- hands -------------------------------------------------------------------------------------------------


def point(glass: Glass, x: float, y: float) -> QPoint:
    """Return the place of the viewport in the middle of a panel pixel, or at a line between two."""
    sight = glass.canvas.sight()
    return QPoint(
        round((sight.x + (x + 0.5) * sight.size) / sight.ratio),
        round((sight.y + (y + 0.5) * sight.size) / sight.ratio),
    )


def press(glass: Glass, x: float, y: float, keys: Qt.KeyboardModifier = NONE) -> None:
    QTest.mousePress(glass.canvas.viewport(), LEFT, keys, point(glass, x, y))


def move(glass: Glass, x: float, y: float, keys: Qt.KeyboardModifier = NONE, button: bool = True) -> None:
    move_to(glass.canvas.viewport(), point(glass, x, y), keys, button=button)


def move_to(widget: QWidget, place: QPoint, keys: Qt.KeyboardModifier = NONE, *, button: bool = True) -> None:
    buttons = LEFT if button else Qt.MouseButton.NoButton
    local = QPointF(place)
    event = QMouseEvent(
        QEvent.Type.MouseMove, local, widget.mapToGlobal(local), Qt.MouseButton.NoButton, buttons, keys
    )
    QApplication.sendEvent(widget, event)


def release(glass: Glass, x: float, y: float, keys: Qt.KeyboardModifier = NONE) -> None:
    QTest.mouseRelease(glass.canvas.viewport(), LEFT, keys, point(glass, x, y))


def leave(glass: Glass) -> None:
    """Take the pointer off the glass."""
    QApplication.sendEvent(glass.canvas, QEvent(QEvent.Type.Leave))


def click(glass: Glass, x: float, y: float, keys: Qt.KeyboardModifier = NONE) -> None:
    QTest.mouseClick(glass.canvas.viewport(), LEFT, keys, point(glass, x, y))


def drag(
    glass: Glass, start: tuple[float, float], end: tuple[float, float], keys: Qt.KeyboardModifier = NONE
) -> None:
    """Press, move in some steps, release."""
    press(glass, *start)
    for part in (0.3, 0.7, 1.0):
        move(glass, start[0] + (end[0] - start[0]) * part, start[1] + (end[1] - start[1]) * part, keys)
    release(glass, *end, keys)


def key(glass: Glass, which: Qt.Key, keys: Qt.KeyboardModifier = NONE) -> None:
    QTest.keyClick(glass.canvas, which, keys)


def carried(kind: str) -> QMimeData:
    data = QMimeData()
    data.setData(MIME, QByteArray(kind.encode()))
    return data


def carry(glass: Glass, kind: str, x: int, y: int, *, drop: bool) -> None:
    """Carry a part from the tray over the glass, and let it go there or not."""
    carry_data(glass, carried(kind), x, y, drop=drop)


def carry_data(glass: Glass, data: QMimeData, x: int, y: int, *, drop: bool) -> None:
    """Carry anything over the glass, and let it go there or not."""
    viewport, place = glass.canvas.viewport(), point(glass, x, y)
    copying, button = Qt.DropAction.CopyAction, Qt.MouseButton.LeftButton
    entered = QDragEnterEvent(place, copying, data, button, NONE)
    QApplication.sendEvent(viewport, entered)
    if not entered.isAccepted():
        return
    QApplication.sendEvent(viewport, QDragMoveEvent(place, copying, data, button, ALT))
    if drop:
        QApplication.sendEvent(viewport, QDropEvent(QPointF(place), copying, data, button, ALT))
