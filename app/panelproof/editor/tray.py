"""New parts, to be dragged onto the glass; a press or the Enter key puts one in the middle."""

from __future__ import annotations

from PySide6.QtCore import QMimeData, QPoint, QSize, Qt
from PySide6.QtGui import QDrag, QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QApplication, QHBoxLayout, QToolButton, QVBoxLayout, QWidget

from panelproof.editor import edits, picturefile, signs, theme
from panelproof.editor.edits import Kind
from panelproof.editor.hub import Hub
from panelproof.problem import Problem

MIME = "application/x-panelproof-part"
TIPS: dict[Kind, str] = {
    "label": "Text that never changes",
    "field": "Text that changes while the device runs",
    "icon": "A small picture with several states",
    "rule": "A straight line",
    "box": "A filled or outlined rectangle",
    "meter": "A level bar with limits",
    "picture": "A PNG file in the panel's colours",
}


class TrayButton(QToolButton):
    """One kind of part; it can be dragged away."""

    def __init__(self, kind: Kind, parent: QWidget) -> None:
        super().__init__(parent)
        self.kind: Kind = kind
        self._pressed: QPoint | None = None
        self.setText(kind.capitalize())
        self.setToolTip(f"{TIPS[kind]}: drag it onto the glass, or press to put it in the middle")
        self.setAccessibleName(f"New {kind}")
        self.setAccessibleDescription(TIPS[kind])
        self.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextUnderIcon)
        self.setIconSize(QSize(20, 20))
        self.setFont(theme.font("small"))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAutoRaise(True)
        self.setMinimumSize(46, 48)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Note where a drag may begin."""
        self._pressed = event.position().toPoint()
        super().mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Begin a drag when the pointer has gone far enough."""
        far = QApplication.startDragDistance()
        here = event.position().toPoint()
        if self._pressed is None or (here - self._pressed).manhattanLength() < far:
            return
        self._pressed = None
        self.setDown(False)
        drag = QDrag(self)
        drag.setMimeData(self.mime())
        drag.setPixmap(self.icon().pixmap(QSize(32, 32), self.devicePixelRatioF()))
        drag.exec(Qt.DropAction.CopyAction)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A press without a drag counts as a click."""
        self._pressed = None
        super().mouseReleaseEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter and Insert do as a press does; Space does so by itself."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Insert):
            self.click()
            return
        super().keyPressEvent(event)

    def mime(self) -> QMimeData:
        """Return what a drag carries: the kind of part."""
        data = QMimeData()
        data.setData(MIME, self.kind.encode())
        return data


class Tray(QWidget):
    """One button for each kind of part."""

    def __init__(self, hub: Hub, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._hub = hub
        self.buttons: dict[Kind, TrayButton] = {}
        row = QHBoxLayout()
        theme.space(row, 0, 0)
        for kind in edits.KINDS:
            button = TrayButton(kind, self)
            button.clicked.connect(lambda _=False, kind=kind: self.insert(kind))
            self.buttons[kind] = button
            row.addWidget(button, 1)
        column = QVBoxLayout(self)
        theme.space(column, 0, theme.TIGHT)
        column.addWidget(theme.heading("New part"))
        column.addLayout(row)
        hub.layout_changed.connect(self._enable)
        theme.watch(self, self._draw)
        self._draw()
        self._enable()

    def _draw(self) -> None:
        for kind, button in self.buttons.items():
            button.setIcon(signs.icon(kind, theme.colours().text))

    def _enable(self) -> None:
        for button in self.buttons.values():
            button.setEnabled(self._hub.screen is not None)

    def insert(self, kind: Kind) -> None:
        """Put a new part of a kind in the middle of the panel, and choose it."""
        hub = self._hub
        if hub.screen is None:
            hub.told.emit("there is no screen yet to put a part on; add one first")
            return
        picture = ""
        if kind == "picture":
            picture = picturefile.choose(self, hub.folder)
            if not picture:
                return
        panel = hub.layout.panel
        middle = panel.width // 2, panel.height // 2
        try:
            layout, name = edits.add_part(
                hub.layout, hub.material, hub.screen.name, kind, middle, picture=picture
            )
        except Problem as problem:
            hub.told.emit(problem.message)
            return
        if hub.apply(f"new {kind}", layout) is None:
            hub.select([name])
