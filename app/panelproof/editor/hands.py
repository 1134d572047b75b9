"""Pointer and keys on the glass: what is pressed, dragged and dropped becomes gestures and changes."""

from __future__ import annotations

from PySide6.QtCore import QPointF, Qt, QTimer, Signal
from PySide6.QtGui import (
    QDragEnterEvent,
    QDragLeaveEvent,
    QDragMoveEvent,
    QDropEvent,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
)
from PySide6.QtWidgets import QWidget

from panelproof.editor import edits, picturefile, selecting
from panelproof.editor.canvas import Canvas
from panelproof.editor.gestures import Drop, Marquee, Move, Pull, Resize
from panelproof.editor.grasp import Handle, handles, holds, is_ground, part_at
from panelproof.editor.hub import Hub
from panelproof.editor.overlay import handle_area
from panelproof.editor.places import View
from panelproof.editor.snapping import NEAR
from panelproof.layout.parts import Part
from panelproof.problem import Problem

MIME = "application/x-panelproof-part"
FIRM = 3
"""Logical pixels that a pressed pointer must travel before it drags."""
SLACK = 4
"""Logical pixels around a thin part that still hit it."""
PAUSE = 900
"""Milliseconds after which the next arrow key is a change of its own."""

_ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}
_DIAGONAL = {("left", "top"), ("right", "bottom")}
_ADDING = Qt.KeyboardModifier.ShiftModifier | Qt.KeyboardModifier.ControlModifier


class Hands(Canvas):
    """The canvas, to be worked on."""

    pointer_at = Signal(int, int)
    """The panel pixel under the pointer."""
    pointer_left = Signal()
    part_opened = Signal(str)
    """A part was double-clicked, or Enter pressed on it: its sheet is wanted."""
    escaped = Signal()
    """Escape, or the pointer, was pressed: what a finding shows may go."""

    def __init__(self, hub: Hub, parent: QWidget | None = None) -> None:
        super().__init__(hub, parent)
        self._pressed: QPointF | None = None
        self._target: Part | None = None
        self._narrow = ""
        self._panning: QPointF | None = None
        self._space = False
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(PAUSE)
        self._rest.timeout.connect(hub.end_gesture)
        self.setAcceptDrops(True)
        self.viewport().setAcceptDrops(True)

    # -- pointer ---------------------------------------------------------------------------------------

    def _pull(self, place: QPointF, modifiers: Qt.KeyboardModifier) -> Pull:
        sight = self.sight()
        free = bool(modifiers & Qt.KeyboardModifier.AltModifier)
        near = int(NEAR * sight.ratio // sight.size)
        return Pull(sight.exact(place.x(), place.y()), -1 if free else near)

    def _unseen(self, view: View) -> list[str]:
        return [part.name for part in view.screen.parts if self.hub.is_hidden(part.name)]

    def _part_under(self, place: QPointF) -> Part | None:
        view = self.view()
        if view is None:
            return None
        sight = self.sight()
        slack = SLACK * sight.ratio / sight.size
        return part_at(view, sight.exact(place.x(), place.y()), slack, self._unseen(view))

    def handle_under(self, place: QPointF) -> Handle | None:
        """Return the handle of the one chosen part under a place of the viewport."""
        chosen = self.chosen()
        if len(chosen) != 1 or self.hub.is_locked(chosen[0].name):
            return None
        sight = self.sight()
        point = place.x() * sight.ratio, place.y() * sight.ratio
        for handle in handles(chosen[0], self.cramped(chosen[0], sight)):
            x, y, wide, high = handle_area(sight, handle)
            margin = round(2 * sight.ratio)
            if holds((x - margin, y - margin, wide + 2 * margin, high + 2 * margin), point):
                return handle
        return None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold of a handle, a part, the view, or begin a marquee."""
        place = event.position()
        if event.button() == Qt.MouseButton.MiddleButton or (
            self._space and event.button() == Qt.MouseButton.LeftButton
        ):
            self._panning = place
            self.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)
            return
        if event.button() != Qt.MouseButton.LeftButton or self.gesture is not None:
            return
        view = self.view()
        if view is None:
            return
        self.escaped.emit()
        self._rest.stop()
        self.hub.end_gesture()
        self._pressed, self._narrow = place, ""
        handle = self.handle_under(place)
        if handle is not None:
            self.gesture = Resize(self.hub, view, self._start(), self.chosen()[0], handle.sides)
            return
        self._target = target = self._part_under(place)
        if target is None or event.modifiers() & _ADDING:
            return
        if target.name in self.hub.selection:
            # Chosen already: it may be dragged with the others; a mere click chooses it alone.
            self._narrow = target.name
        elif not is_ground(view, target):
            self.hub.select([target.name])

    def _start(self) -> tuple[float, float]:
        assert self._pressed is not None
        return self.sight().exact(self._pressed.x(), self._pressed.y())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Follow the pointer."""
        place = event.position()
        self.pointer_at.emit(*self.sight().pixel(place.x(), place.y()))
        if self._panning is not None:
            moved, ratio = place - self._panning, self.sight().ratio
            self._panning = place
            self.pan(round(moved.x() * ratio), round(moved.y() * ratio))
            return
        if self._pressed is None:
            self._hover(place)
            return
        if self.gesture is None and (place - self._pressed).manhattanLength() >= FIRM:
            self._begin(event.modifiers())
        if self.gesture is not None:
            self.gesture.to(self._pull(place, event.modifiers()))
            self.viewport().update()

    def _begin(self, modifiers: Qt.KeyboardModifier) -> None:
        """Let a press become a move or a marquee."""
        view, target = self.view(), self._target
        if view is None:
            return
        chosen = self.hub.selection
        movable = target is not None and not self.hub.is_locked(target.name) and target.name in chosen
        if target is not None and movable and not modifiers & _ADDING:
            names = {name for name in chosen if not self.hub.is_locked(name) and view.named(name)}
            self.gesture = Move(self.hub, view, self._start(), names, target)
        else:
            self.gesture = Marquee(self.hub, view, self._start(), adding=bool(modifiers & _ADDING))
        self._narrow = ""

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End what was going on."""
        if self._panning is not None:
            self._panning = None
            self._hover(event.position())
            return
        if event.button() != Qt.MouseButton.LeftButton or self._pressed is None:
            return
        gesture, target = self.gesture, self._target
        narrow, self._pressed, self._target, self.gesture = self._narrow, None, None, None
        if gesture is not None:
            gesture.end()
        elif narrow:
            self.hub.select([narrow])
        elif event.modifiers() & _ADDING:
            self.hub.select(self.hub.selection ^ ({target.name} if target is not None else set()))
        else:
            self.hub.select([target.name] if target is not None else [])
        self._hover(event.position())
        self.viewport().update()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Ask for the sheet of the part."""
        part = self._part_under(event.position())
        if event.button() == Qt.MouseButton.LeftButton and part is not None:
            self.hub.select([part.name])
            self.part_opened.emit(part.name)

    def leaveEvent(self, _event: object) -> None:
        """Forget where the pointer was."""
        self.hovered = ""
        self.viewport().update()
        self.pointer_left.emit()

    def _hover(self, place: QPointF) -> None:
        shape = Qt.CursorShape.ArrowCursor
        handle = self.handle_under(place)
        part = self._part_under(place)
        if self._space:
            shape = Qt.CursorShape.OpenHandCursor
        elif handle is not None:
            shape = _handle_cursor(handle)
        elif part is not None and part.name in self.hub.selection and not self.hub.is_locked(part.name):
            shape = Qt.CursorShape.SizeAllCursor
        self.viewport().setCursor(shape)
        hovered = part.name if part is not None and handle is None else ""
        if hovered != self.hovered:
            self.hovered = hovered
            self.viewport().update()

    # -- keys ------------------------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move, resize, choose, delete, zoom, cancel."""
        key, modifiers = Qt.Key(event.key()), event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
        if key in _ARROWS and self.hub.selection and not modifiers & Qt.KeyboardModifier.AltModifier:
            self._arrow(_ARROWS[key], modifiers)
        elif key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace) and not modifiers:
            selecting.delete(self.hub)
        elif key == Qt.Key.Key_Escape:
            self._escape()
        elif key in (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown):
            selecting.step(self.hub, -1 if key == Qt.Key.Key_PageUp else 1)
        elif key == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._space = True
            self.viewport().setCursor(Qt.CursorShape.OpenHandCursor)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and len(self.hub.selection) == 1:
            self.part_opened.emit(next(iter(self.hub.selection)))
        elif not self._zoom_key(event.text()):
            super().keyPressEvent(event)

    def _zoom_key(self, text: str) -> bool:
        actions = {"+": self.zoom_in, "=": self.zoom_in, "-": self.zoom_out, "0": self.fit}
        action = actions.get(text)
        if action is not None:
            action()
        return action is not None

    def _arrow(self, direction: tuple[int, int], modifiers: Qt.KeyboardModifier) -> None:
        far = 8 if modifiers & Qt.KeyboardModifier.ShiftModifier else 1
        step = direction[0] * far, direction[1] * far
        if self.gesture is not None:
            return
        if modifiers & Qt.KeyboardModifier.ControlModifier:
            selecting.grow(self.hub, *step)
        else:
            selecting.nudge(self.hub, *step)
        self._rest.start()

    def _escape(self) -> None:
        if self.gesture is not None:
            gesture, self.gesture, self._pressed, self._target = self.gesture, None, None, None
            gesture.cancel()
            self.viewport().update()
        elif self.player.step is not None:
            self.player.leave()
        elif self.hub.selection:
            self.hub.select([])
        self.escaped.emit()

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """Let go of the view."""
        if event.key() == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._space = False
            self.viewport().unsetCursor()
            return
        super().keyReleaseEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Forget a held key."""
        self._space = False
        super().focusOutEvent(event)

    # -- from the tray ---------------------------------------------------------------------------------

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take a part from the tray, or a PNG file."""
        view = self.view()
        kind = bytes(event.mimeData().data(MIME).data()).decode(errors="replace")
        file = picturefile.dropped(event.mimeData().urls())
        if view is not None and file is not None:
            self.drop = Drop(self.hub, view, "picture", picturefile.seen_from(file, self.hub.folder))
        elif view is not None and kind in edits.KINDS:
            self.drop = Drop(self.hub, view, kind)
        else:
            event.ignore()
            return
        event.acceptProposedAction()

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:
        """Show the part where it would be."""
        if self.drop is None:
            event.ignore()
            return
        place = event.position()
        self.pointer_at.emit(*self.sight().pixel(place.x(), place.y()))
        try:
            self.drop.to(self._pull(place, event.modifiers()))
        except Problem as problem:
            self.hub.told.emit(problem.message)
            event.ignore()
            return
        event.acceptProposedAction()
        self.viewport().update()

    def dragLeaveEvent(self, _event: QDragLeaveEvent) -> None:
        """Forget the part."""
        self.drop = None
        self.viewport().update()

    def dropEvent(self, event: QDropEvent) -> None:
        """Add the part."""
        if self.drop is None:
            return
        drop, self.drop = self.drop, None
        pull = self._pull(event.position(), event.modifiers())
        event.acceptProposedAction()
        if drop.kind == "picture" and not drop.picture:
            # Not while the drag is still going on: the dialog would hold it up.
            QTimer.singleShot(0, lambda: self._choose_picture(drop, pull))
            return
        self._put(drop, pull)

    def _choose_picture(self, drop: Drop, pull: Pull) -> None:
        drop.picture = picturefile.choose(self, self.hub.folder)
        if drop.picture:
            self._put(drop, pull)

    def _put(self, drop: Drop, pull: Pull) -> None:
        try:
            drop.to(pull)
        except Problem as problem:
            self.hub.told.emit(problem.message)
            return
        drop.end()
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        self.viewport().update()


def _handle_cursor(handle: Handle) -> Qt.CursorShape:
    if len(handle.sides) == 2:
        rising = tuple(handle.sides) not in _DIAGONAL
        return Qt.CursorShape.SizeBDiagCursor if rising else Qt.CursorShape.SizeFDiagCursor
    level = handle.sides[0] in ("left", "right")
    return Qt.CursorShape.SizeHorCursor if level else Qt.CursorShape.SizeVerCursor
