"""One set of colours, one type scale and one unit of space for the whole window, light and dark."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, fields
from functools import lru_cache
from typing import Literal

from PySide6.QtCore import QObject, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontDatabase,
    QGuiApplication,
    QPainter,
    QPaintEvent,
    QPalette,
)
from PySide6.QtWidgets import (
    QApplication,
    QBoxLayout,
    QFormLayout,
    QGridLayout,
    QLabel,
    QSizePolicy,
    QWidget,
)

UNIT = 8
"""Every gap is a multiple of this, or half of it."""
TIGHT = UNIT // 2
GAP = UNIT * 2
ROW = 30
"""Height of one row of a list, in device-independent pixels."""

Role = Literal["small", "body", "quiet", "heading", "mono"]
Scheme = Literal["system", "light", "dark"]
Laid = QBoxLayout | QFormLayout | QGridLayout


@dataclass(frozen=True, slots=True)
class Colours:
    """What each colour is for; `surround` lies around the glass, `on_accent` is read on `accent`."""

    surface: QColor
    sunken: QColor
    raised: QColor
    text: QColor
    quiet: QColor
    line: QColor
    accent: QColor
    on_accent: QColor
    fault: QColor
    caution: QColor
    note: QColor
    good: QColor
    surround: QColor


_LIGHT = (
    "#f5f6f6", "#eaecec", "#ffffff", "#1b2225", "#566166", "#ccd2d4", "#0a6a72", "#ffffff",
    "#b0261b", "#855400", "#35598a", "#22683a", "#d9dddd",
)  # fmt: skip
_DARK = (
    "#23282b", "#1b1f22", "#2d3337", "#e7ebec", "#a4b0b5", "#414a4f", "#55c5c9", "#052629",
    "#ff9387", "#f0bd55", "#9bc0f2", "#86d59c", "#131618",
)  # fmt: skip


@lru_cache(maxsize=2)
def _set(dark: bool) -> Colours:
    values = _DARK if dark else _LIGHT
    return Colours(
        **{field.name: QColor(value) for field, value in zip(fields(Colours), values, strict=True)}
    )


def dark() -> bool:
    """Tell whether windows are dark now: as chosen, else as the system asks."""
    if _state.scheme != "system":
        return _state.scheme == "dark"
    return QGuiApplication.styleHints().colorScheme() == Qt.ColorScheme.Dark


def scheme() -> Scheme:
    """Return what was chosen."""
    return _state.scheme


def choose(scheme: Scheme) -> None:
    """Follow the system, or be light or dark whatever it says (not every desktop says)."""
    was = dark()
    _state.scheme = scheme
    if dark() != was:
        _watcher().renew()


def colours() -> Colours:
    """Return the colours of the system's present scheme."""
    return _set(dark())


def font(role: Role) -> QFont:
    """Return the font of a role; sizes follow the system's own font."""
    if role == "mono":
        chosen = QFontDatabase.systemFont(QFontDatabase.SystemFont.FixedFont)
        chosen.setPointSizeF(QApplication.font().pointSizeF())
        return chosen
    chosen = QApplication.font()
    if role == "small":
        chosen.setPointSizeF(chosen.pointSizeF() * 0.9)
    elif role == "heading":
        chosen.setPointSizeF(chosen.pointSizeF() * 1.1)
        chosen.setWeight(QFont.Weight.DemiBold)
    return chosen


def set_role(label: QLabel, role: Role) -> None:
    """Give a label the font and colour of a role; both follow a change of the scheme."""
    label.setFont(font(role))
    quiet = role in ("small", "quiet")
    label.setForegroundRole(QPalette.ColorRole.PlaceholderText if quiet else QPalette.ColorRole.WindowText)


def heading(text: str, parent: QWidget | None = None) -> QLabel:
    """Return the heading of a pane."""
    label = QLabel(text, parent)
    set_role(label, "heading")
    return label


class Elided(QLabel):
    """A label of one line that ends in … where there is no room, and never asks for room."""

    def __init__(self, text: str = "", parent: QWidget | None = None) -> None:
        super().__init__(text, parent)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)

    def minimumSizeHint(self) -> QSize:
        """Return the height of a line."""
        return QSize(0, super().minimumSizeHint().height())

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint as much as there is room for."""
        del event
        painter = QPainter(self)
        painter.setPen(self.palette().color(self.foregroundRole()))
        area = self.contentsRect()
        text = self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, area.width())
        painter.drawText(area, int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft), text)


def space(layout: Laid, margin: int = 0, gap: int = UNIT) -> None:
    """Set the margin around and the gap inside a layout, in device-independent pixels."""
    layout.setContentsMargins(margin, margin, margin, margin)
    layout.setSpacing(gap)


class _Watcher(QObject):
    changed = Signal()

    def __init__(self, application: QObject) -> None:
        super().__init__(application)
        QGuiApplication.styleHints().colorSchemeChanged.connect(self.renew)

    def renew(self) -> None:
        """Dress the windows anew, and tell those that paint by themselves."""
        if _state.dressed:
            _dress()
        self.changed.emit()


@dataclass(slots=True)
class _State:
    watcher: _Watcher | None = None
    scheme: Scheme = "system"
    dressed: bool = False


_state = _State()


def _watcher() -> _Watcher:
    application = QApplication.instance()
    assert application is not None
    if _state.watcher is None:
        _state.watcher = _Watcher(application)
    return _state.watcher


def watch(widget: QWidget, slot: Callable[[], object]) -> None:
    """Call `slot` whenever the scheme has changed, as long as the widget lives."""
    changed = _watcher().changed
    connection = changed.connect(slot)
    widget.destroyed.connect(lambda: QObject.disconnect(connection))


def apply() -> None:
    """Dress the application, now and whenever the scheme changes; once is enough."""
    if _state.dressed:
        return
    _state.dressed = True
    _watcher()
    QApplication.setStyle("Fusion")
    _dress()


def _dress() -> None:
    QApplication.setPalette(_palette(colours()))
    application = QApplication.instance()
    if isinstance(application, QApplication):
        application.setStyleSheet(_sheet(colours()))


def _palette(tones: Colours) -> QPalette:
    palette = QPalette()
    roles = QPalette.ColorRole
    for role, colour in (
        (roles.Window, tones.surface), (roles.WindowText, tones.text),
        (roles.Base, tones.raised), (roles.AlternateBase, tones.sunken), (roles.Text, tones.text),
        (roles.Button, tones.raised), (roles.ButtonText, tones.text),
        (roles.ToolTipBase, tones.raised), (roles.ToolTipText, tones.text),
        (roles.PlaceholderText, tones.quiet), (roles.BrightText, tones.fault),
        (roles.Highlight, tones.accent), (roles.HighlightedText, tones.on_accent),
        (roles.Accent, tones.accent),
        (roles.Link, tones.accent), (roles.LinkVisited, tones.accent),
        (roles.Light, tones.raised), (roles.Midlight, tones.line), (roles.Mid, tones.line),
        (roles.Dark, tones.line), (roles.Shadow, tones.sunken),
    ):  # fmt: skip
        palette.setColor(role, colour)
    faint = QColor(tones.quiet)
    faint.setAlphaF(0.6)
    for role in (roles.WindowText, roles.Text, roles.ButtonText):
        palette.setColor(QPalette.ColorGroup.Disabled, role, faint)
    palette.setColor(QPalette.ColorGroup.Disabled, roles.Highlight, tones.line)
    return palette


def _sheet(tones: Colours) -> str:
    """Return the few rules that a palette cannot express: separators, rows, and a focus that is seen."""
    line, accent, sunken, raised = (
        tone.name() for tone in (tones.line, tones.accent, tones.sunken, tones.raised)
    )
    return f"""
QSplitter::handle {{ background: {line}; }}
QSplitter::handle:horizontal {{ width: 1px; }}
QSplitter::handle:vertical {{ height: 1px; }}
QSplitter::handle:hover {{ background: {accent}; }}
QMainWindow::separator {{ background: {line}; width: 1px; height: 1px; }}
QStatusBar {{ border-top: 1px solid {line}; }}
QStatusBar::item {{ border: none; }}
QMenuBar {{ border-bottom: 1px solid {line}; padding: 2px {TIGHT}px; }}
QListView {{ border: 1px solid {line}; border-radius: 4px; background: {raised}; }}
QListView:focus {{ border-color: {accent}; }}
QDialogButtonBox {{ dialogbuttonbox-buttons-have-icons: 0; }}
QToolTip {{ border: 1px solid {line}; padding: {TIGHT}px; }}
QPushButton {{ border: 1px solid {line}; border-radius: 4px; padding: 4px 12px; background: {raised}; }}
QPushButton:hover {{ border-color: {accent}; }}
QPushButton:focus {{ border: 2px solid {accent}; padding: 3px 11px; }}
QPushButton:pressed, QPushButton:checked {{ background: {sunken}; }}
QPushButton:default {{ background: {accent}; color: {tones.on_accent.name()}; border-color: {accent}; }}
QPushButton:default:focus {{ border: 2px solid {tones.text.name()}; }}
QPushButton:disabled {{ background: {sunken}; color: {tones.quiet.name()}; border-color: {line}; }}
QToolButton:focus {{ border: 2px solid {accent}; border-radius: 4px; }}
"""
