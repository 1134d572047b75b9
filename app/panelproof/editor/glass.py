"""The glass: the panel under a magnifying glass with its rulers, and the line of figures below it."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, Qt, QTimer, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QVBoxLayout,
    QWidget,
)

from panelproof.editor import places, theme
from panelproof.editor.caption import Caption, tool
from panelproof.editor.grasp import sized
from panelproof.editor.hands import Hands
from panelproof.editor.hub import Hub
from panelproof.editor.overlay import Mark
from panelproof.editor.places import View
from panelproof.editor.replay import Scene, scenes
from panelproof.editor.rulers import THICKNESS, Ruler
from panelproof.editor.sight import GREATEST_ZOOM, LEAST_ZOOM
from panelproof.layout.parts import Field, Label, Part
from panelproof.picture.frame import Frame
from panelproof.problem import Problem
from panelproof.proof.finding import Finding

SCENE_TIMES = (1000, 1800)
"""Milliseconds that the first and the last scene of a replay stand."""
ROUNDS = 3
"""How often a replay runs before it rests on its last scene."""


class Glass(QWidget):
    """The panel in the shown moment, to be looked at and worked on."""

    pointer_at = Signal(int, int)
    """The panel pixel under the pointer; it may lie beyond the panel."""
    part_opened = Signal(str)
    """A part was double-clicked, or Enter pressed on it."""
    zoom_changed = Signal(int)

    def __init__(self, hub: Hub, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._hub = hub
        self.canvas = Hands(hub)
        self._across = Ruler(Qt.Orientation.Horizontal, self.canvas.sight, self)
        self._down = Ruler(Qt.Orientation.Vertical, self.canvas.sight, self)
        self._unit = tool("px", "Unit of the rulers: pixels", self)
        self._unit.clicked.connect(self._turn_unit)
        self._millimetres = False
        self._caption = Caption(self.canvas)
        self._finding: Finding | None = None
        self._scenes: tuple[Scene, ...] = ()
        self._scene_number, self._rounds = 0, 0
        self._clock = QTimer(self)
        self._clock.setSingleShot(True)
        self._clock.timeout.connect(self._next_scene)
        self._build()
        self._connect()
        self.setFocusProxy(self.canvas)
        self._renewed()

    def _build(self) -> None:
        grid = QGridLayout()
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(0)
        self._unit.setFixedSize(THICKNESS, THICKNESS)
        self._unit.setFont(theme.font("small"))
        self._down.setFixedWidth(THICKNESS)
        self._across.setFixedHeight(THICKNESS)
        grid.addWidget(self._unit, 0, 0)
        grid.addWidget(self._across, 0, 1)
        grid.addWidget(self._down, 1, 0)
        grid.addWidget(self.canvas, 1, 1)
        grid.setRowStretch(1, 1)
        grid.setColumnStretch(1, 1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addLayout(grid, 1)
        whole.addWidget(self._foot())

    def _foot(self) -> QWidget:
        foot = _Foot(self)
        row = QHBoxLayout(foot)
        row.setContentsMargins(theme.UNIT, 3, theme.UNIT, 3)
        row.setSpacing(theme.UNIT // 2)
        self._place = QLabel(foot)
        self._place.setAccessibleName("Pixel under the pointer")
        self._place.setMinimumWidth(self._place.fontMetrics().horizontalAdvance("0000, 0000") + 4)
        self._about = theme.Elided("", foot)
        self._about.setAccessibleName("Place of what is chosen")
        for label in (self._place, self._about):
            theme.set_role(label, "small")
        self.grid_button = tool("Grid", "Show the pixel grid from 6 times up", foot)
        self.grid_button.setCheckable(True)
        self.grid_button.setChecked(True)
        self.grid_button.toggled.connect(self.set_grid)
        self._out = tool("−", "Enlarge less", foot)
        self._times = QLabel(foot)
        self._times.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._times.setMinimumWidth(self._times.fontMetrics().horizontalAdvance("16×") + 6)
        self._in = tool("+", "Enlarge more", foot)
        self._fit = tool("Fit", "Enlarge as much as fits", foot)
        self._fit.setCheckable(True)
        row.addWidget(self._place)
        row.addWidget(self._about, 1)
        for widget in (self.grid_button, self._out, self._times, self._in, self._fit):
            row.addWidget(widget)
        return foot

    def _connect(self) -> None:
        canvas, hub = self.canvas, self._hub
        canvas.sight_changed.connect(self._sighted)
        canvas.shown.connect(self._span)
        canvas.pointer_at.connect(self._pointed)
        canvas.pointer_left.connect(self._unpointed)
        canvas.part_opened.connect(self.part_opened)
        canvas.escaped.connect(self.clear_finding)
        canvas.viewport().installEventFilter(self)
        self._out.clicked.connect(canvas.zoom_out)
        self._in.clicked.connect(canvas.zoom_in)
        self._fit.clicked.connect(canvas.fit)
        self._caption.again.clicked.connect(self._replay)
        self._caption.close_button.clicked.connect(self.clear_finding)
        for signal in (hub.layout_changed, hub.screen_changed, hub.moment_changed):
            signal.connect(self.clear_finding)
        hub.layout_changed.connect(self._renewed)
        hub.selection_changed.connect(self._span)

    # -- zoom and what is around -----------------------------------------------------------------------

    @property
    def zoom(self) -> int:
        """How many times the panel's pixels are enlarged."""
        return self.canvas.zoom

    def set_zoom(self, zoom: int) -> None:
        """Enlarge 1 to 16 times."""
        self.canvas.set_zoom(zoom)

    def zoom_in(self) -> None:
        """Enlarge once more."""
        self.canvas.zoom_in()

    def zoom_out(self) -> None:
        """Enlarge once less."""
        self.canvas.zoom_out()

    def fit(self) -> None:
        """Enlarge as much as fits, and follow the window."""
        self.canvas.fit()

    def set_grid(self, shown: bool) -> None:
        """Show the pixel grid, which appears from 6 times up, or not."""
        self.canvas.grid_shown = shown
        self.grid_button.setChecked(shown)
        self.canvas.viewport().update()

    def frame(self) -> Frame:
        """Return the pixels that are on the glass."""
        return self.canvas.frame()

    def _turn_unit(self) -> None:
        self._millimetres = not self._millimetres
        self._renewed()

    def _renewed(self) -> None:
        panel = self._hub.layout.panel
        known = panel.width_mm is not None and panel.height_mm is not None
        self._unit.setEnabled(known)
        self._across.per_pixel = self._down.per_pixel = 1.0
        inches = known and self._millimetres
        if inches and panel.width_mm is not None and panel.height_mm is not None:
            self._across.per_pixel = panel.width_mm / panel.width
            self._down.per_pixel = panel.height_mm / panel.height
        self._unit.setText("mm" if inches else "px")
        name = "millimetres" if inches else "pixels"
        self._unit.setAccessibleName(f"Unit of the rulers: {name}")
        self._unit.setToolTip(
            f"The rulers count {name}"
            + ("" if known else "; give the panel's size in millimetres to have those too")
        )
        self._across.update()
        self._down.update()
        self._span()

    def _sighted(self) -> None:
        self._across.update()
        self._down.update()
        self._times.setText(f"{self.zoom}×")
        self._times.setAccessibleName(f"Enlarged {self.zoom} times")
        self._out.setEnabled(self.zoom > LEAST_ZOOM)
        self._in.setEnabled(self.zoom < GREATEST_ZOOM)
        self._fit.setChecked(self.canvas.fitting)
        self.zoom_changed.emit(self.zoom)

    def _pointed(self, x: int, y: int) -> None:
        panel = self._hub.layout.panel
        inside = 0 <= x < panel.width and 0 <= y < panel.height
        self._place.setText(f"{x}, {y}" if inside else f"({x}, {y})")
        self._across.point(x)
        self._down.point(y)
        self.pointer_at.emit(x, y)

    def _unpointed(self) -> None:
        self._place.clear()
        self._across.point(None)
        self._down.point(None)

    def _span(self) -> None:
        """Show on the rulers, and in words, what the choice covers."""
        view, chosen = self.canvas.view(), self.canvas.chosen()
        if view is None or not chosen:
            self._across.mark(None)
            self._down.mark(None)
            self._about.clear()
            return
        whole = places.together([view.place(part).area for part in chosen])
        self._across.mark((whole[0], whole[0] + whole[2]))
        self._down.mark((whole[1], whole[1] + whole[3]))
        self._about.setText(_place_in_words(view, chosen[0]) if len(chosen) == 1 else _several(chosen, whole))

    # -- findings --------------------------------------------------------------------------------------

    def show_finding(self, finding: Finding) -> None:
        """Mark a finding's pixels on the shown screen, and replay the texts that show it."""
        self.clear_finding()
        view = self.canvas.view()
        if view is None:
            return
        try:
            self._scenes = scenes(view, finding)
        except Problem as problem:
            self._hub.told.emit(str(problem))
            return
        self._finding = finding
        if finding.area is not None:
            self.canvas.bring(finding.area)
        self._replay()

    def clear_finding(self) -> None:
        """Show the moment again, without marks."""
        if self._finding is None:
            return
        self._clock.stop()
        self._finding, self._scenes = None, ()
        self._caption.hide()
        self.canvas.show_scene(None)

    @property
    def finding(self) -> Finding | None:
        """The finding that is shown."""
        return self._finding

    def _replay(self) -> None:
        self._rounds, self._scene_number = 0, 0
        self._show_scene()

    def _show_scene(self) -> None:
        scene = self._scenes[self._scene_number]
        self.canvas.show_scene(scene.frame, (Mark("wrong", scene.marked),))
        replayed = len(self._scenes) > 1
        self._caption.say(self._finding, scene.words, replayed=replayed)
        last = self._scene_number == len(self._scenes) - 1
        if replayed and not (last and self._rounds == ROUNDS - 1):
            self._clock.start(SCENE_TIMES[last])
        else:
            self._clock.stop()

    def _next_scene(self) -> None:
        self._scene_number += 1
        if self._scene_number == len(self._scenes):
            self._scene_number = 0
            self._rounds += 1
        self._show_scene()

    # -- Qt --------------------------------------------------------------------------------------------

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keep the caption at the foot of the canvas, and say what to do on an empty glass."""
        if event.type() == QEvent.Type.Resize:
            self._caption.settle()
        return super().eventFilter(watched, event)


def _place_in_words(view: View, part: Part) -> str:
    x, y, width, height = view.place(part).area
    if isinstance(part, Label | Field):
        words = f"{part.name}: x {part.x}, baseline {part.baseline}"
    else:
        words = f"{part.name}: x {x}, y {y}, {width} × {height}"
    padding = sized(part) if isinstance(part, Field) else None
    if padding is not None:
        words += f" · padding {padding[0]}, {padding[1]}, {padding[2]} × {padding[3]}"
    return words


def _several(parts: list[Part], whole: tuple[int, int, int, int]) -> str:
    return f"{len(parts)} parts: x {whole[0]}, y {whole[1]}, {whole[2]} × {whole[3]}"


class _Foot(QWidget):
    """The line below the glass."""

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        tones = theme.colours()
        painter.fillRect(event.rect(), tones.raised)
        painter.fillRect(0, 0, self.width(), 1, tones.line)
