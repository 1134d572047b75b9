"""The glass's own pane: the shown screen in the shown moment, what is chosen, and what goes wrong."""

from __future__ import annotations

from msgspec.structs import replace
from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtWidgets import QWidget

from panelproof.editor import overlay, places
from panelproof.editor.gestures import Drop, Gesture, Marquee
from panelproof.editor.grasp import handles, sized
from panelproof.editor.hub import Hub
from panelproof.editor.overlay import Mark
from panelproof.editor.pane import Pane
from panelproof.editor.pixels import frame_image
from panelproof.editor.places import View
from panelproof.editor.player import player
from panelproof.editor.sight import Sight
from panelproof.ink.footprint import footprint
from panelproof.ink.mask import NOTHING, Area, Mask, rectangle
from panelproof.layout.document import Screen
from panelproof.layout.parts import Field, Icon, Label, Meter, Part
from panelproof.material import field_graph
from panelproof.picture import drawing
from panelproof.picture.frame import Frame, new_frame, screen_frame
from panelproof.picture.values import Values
from panelproof.problem import Problem

CRAMPED = 26
"""A side shorter than this many logical pixels has no handle in its middle."""


class Canvas(Pane):
    """The panel as the hub's layout, screen, moment and choice have it."""

    shown = Signal()
    """Other pixels, or another choice, are on the glass."""

    def __init__(self, hub: Hub, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.hub, self.player = hub, player(hub)
        self.setAccessibleName("Glass")
        self.setAccessibleDescription(
            "The panel. Page Up and Page Down choose a part, arrow keys move it, Ctrl with arrow keys changes"
            " its size."
        )
        self.gesture: Gesture | None = None
        self.drop: Drop | None = None
        self.hovered = ""
        self._scene: Frame | None = None
        self._marks: tuple[Mark, ...] = ()
        self._frame: Frame | None = None
        self._image: tuple[Frame, QImage] | None = None
        for signal in (hub.layout_changed, hub.screen_changed, hub.moment_changed, hub.view_changed):
            signal.connect(self.renew)
        hub.selection_changed.connect(self._repaint)
        self.player.changed.connect(self._repaint)
        self.show_panel(hub.layout.panel)

    # -- what is on the glass --------------------------------------------------------------------------

    def view(self) -> View | None:
        """Return the shown screen as it is looked at; None where the layout has none."""
        screen = self.hub.screen
        return None if screen is None else View(self.hub.material, screen, self._values())

    def _values(self) -> Values:
        try:
            return self.hub.values
        except Problem as problem:
            self.hub.told.emit(str(problem))
            return Values()

    def frame(self) -> Frame:
        """Return the pixels on the glass, in the panel's codes."""
        if self._scene is not None:
            return self._scene
        if self.drop is not None and self.drop.view is not None:
            return self._drawn(self.drop.view)
        if self.player.frame is not None:
            return self.player.frame
        if self._frame is None:
            view = self.view()
            panel = self.hub.layout.panel
            self._frame = new_frame(panel) if view is None else self._drawn(view)
        return self._frame

    def _drawn(self, view: View) -> Frame:
        try:
            return screen_frame(view.material, self._without_hidden(view.screen), view.values)
        except Problem as problem:
            self.hub.told.emit(str(problem))
            return new_frame(view.material.layout.panel, view.material.code(view.screen.ground))

    def _without_hidden(self, screen: Screen) -> Screen:
        if not any(self.hub.is_hidden(part.name) for part in screen.parts):
            return screen
        return replace(
            screen, parts=tuple(part for part in screen.parts if not self.hub.is_hidden(part.name))
        )

    def picture(self) -> QImage:
        """Return the frame as the panel shows it."""
        frame = self.frame()
        if self._image is None or self._image[0] is not frame:
            self._image = frame, frame_image(frame, self.hub.layout.panel)
        return self._image[1]

    def marks(self) -> tuple[Mark, ...]:
        """Return what is marked on the glass: a finding's pixels, or those of the step's update."""
        if self._scene is not None or self._marks:
            return self._marks
        if self.player.step is None:
            return ()
        found = (
            Mark("written", self.player.written),
            Mark("erased", self.player.erased),
            Mark("wrong", self.player.behind),
        )
        return tuple(mark for mark in found if mark.mask)

    def show_scene(self, frame: Frame | None, marks: tuple[Mark, ...] = ()) -> None:
        """Show a frame of a replay with marks, or with None the hub's moment again."""
        self._scene, self._marks = frame, marks
        self._repaint()

    def renew(self) -> None:
        """Draw anew what the hub has."""
        self._frame = None
        self.show_panel(self.hub.layout.panel)
        self._repaint()

    def _repaint(self) -> None:
        self.viewport().update()
        self.shown.emit()

    def words(self) -> str:
        """Say where a step stands, or what to do on an empty glass."""
        if self.player.step is not None and self._scene is None:
            return self.player.words
        if self.hub.screen is None:
            return "This layout has no screen yet."
        if not self.hub.screen.parts and self.drop is None:
            return "Nothing stands here yet: drag a part from the tray onto the glass."
        return ""

    # -- over the panel --------------------------------------------------------------------------------

    def chosen(self) -> list[Part]:
        """Return the chosen parts that can be seen, in drawing order."""
        screen = self.hub.screen
        return [
            part
            for part in (screen.parts if screen else ())
            if part.name in self.hub.selection and not self.hub.is_hidden(part.name)
        ]

    def cramped(self, part: Part, sight: Sight) -> tuple[bool, bool]:
        """Tell whether a part's width and height are too small for handles in their middle."""
        area = sized(part) or (0, 0, 0, 0)
        least = CRAMPED * sight.ratio
        return area[2] * sight.size < least, area[3] * sight.size < least

    def paint_over(self, painter: QPainter, sight: Sight, seen: Area) -> None:
        """Paint choice, handles, guides and marks."""
        tones = overlay.TONES
        if self.drop is not None:
            self._paint_drop(painter, sight)
            return
        view = self.view()
        if view is None:
            return
        if self._scene is None:
            self._paint_choice(painter, sight, view)
        else:
            for part in self.chosen():
                self._paint_padding(painter, sight, view, part, alone=False)
        for mark in self.marks():
            colour = getattr(tones, mark.kind)
            overlay.mark(painter, sight, mark, colour, seen)
        if self.gesture is not None:
            overlay.guides(painter, sight, self.gesture.guides, tones.guide)
        if isinstance(self.gesture, Marquee):
            self._paint_marquee(painter, sight, self.gesture)

    def _paint_choice(self, painter: QPainter, sight: Sight, view: View) -> None:
        tones, width = overlay.TONES, overlay.line_width(sight)
        chosen = self.chosen()
        hovered = view.named(self.hovered) if self.gesture is None else None
        if hovered is not None and hovered not in chosen and not self.hub.is_hidden(hovered.name):
            overlay.frame(painter, sight.area(view.place(hovered).area), tones.quiet, width)
        for part in chosen:
            self._paint_padding(painter, sight, view, part, alone=len(chosen) == 1)
            locked = self.hub.is_locked(part.name)
            area = sight.area(view.place(part).area)
            overlay.frame(painter, area, tones.quiet if locked else tones.chosen, width)
        if len(chosen) == 1:
            self._paint_baseline(painter, sight, view, chosen[0])
            if not self.hub.is_locked(chosen[0].name):
                found = handles(chosen[0], self.cramped(chosen[0], sight))
                overlay.handles(painter, sight, found, tones.chosen)

    def _paint_padding(self, painter: QPainter, sight: Sight, view: View, part: Part, *, alone: bool) -> None:
        tones = overlay.TONES
        if alone:
            tint = QColor(tones.chosen)
            tint.setAlpha(110)
            overlay.footprint(painter, sight, reach(view, part), tint)
        padding = places.padding(view.material, part)
        if padding is not None:
            overlay.dashes(painter, sight.area(padding), tones.chosen, overlay.line_width(sight))

    def _paint_baseline(self, painter: QPainter, sight: Sight, view: View, part: Part) -> None:
        if not isinstance(part, Label | Field):
            return
        longest = places.place(view.material, part).area
        span = min(longest[0], part.x), max(longest[0] + longest[2], part.x)
        overlay.baseline(painter, sight, (part.x, part.baseline), span, overlay.TONES.chosen)

    def _paint_drop(self, painter: QPainter, sight: Sight) -> None:
        drop = self.drop
        if drop is None or drop.view is None or drop.part is None:
            return
        tones, width = overlay.TONES, overlay.line_width(sight)
        padding = places.padding(drop.view.material, drop.part)
        if padding is not None:
            overlay.dashes(painter, sight.area(padding), tones.chosen, width)
        overlay.frame(painter, sight.area(drop.view.place(drop.part).area), tones.chosen, width)
        overlay.guides(painter, sight, drop.guides, tones.guide)

    @staticmethod
    def _paint_marquee(painter: QPainter, sight: Sight, marquee: Marquee) -> None:
        (x1, y1), (x2, y2) = marquee.corners
        left, right = sorted((sight.across(x1), sight.across(x2)))
        top, bottom = sorted((sight.down(y1), sight.down(y2)))
        tones = overlay.TONES
        veil = QColor(tones.chosen)
        veil.setAlpha(40)
        painter.fillRect(left, top, right - left, bottom - top, veil)
        area = left, top, right - left, bottom - top
        overlay.dashes(painter, area, tones.chosen, overlay.line_width(sight))
        painter.setBrush(Qt.BrushStyle.NoBrush)


def reach(view: View, part: Part) -> Mask:
    """Return every pixel that some text, state or value of a part can ink and the one shown now does not."""
    if isinstance(part, Field):
        print_ = footprint(field_graph(part), view.material.types[part.type], part.align)
        mask = print_.mask.moved(part.x, part.baseline)
    elif isinstance(part, Icon):
        mask = NOTHING
        for state in part.states:
            bitmap = view.material.bitmaps[state].moved(part.x, part.y)
            mask = mask | bitmap if mask.width else bitmap
    elif isinstance(part, Meter):
        mask = rectangle(*places.fixed(part))
    else:
        return NOTHING
    try:
        now = drawing.inked_by(drawing.part(view.material, view.screen, part, view.values))
    except Problem:
        return mask
    return mask - now if now.width else mask
