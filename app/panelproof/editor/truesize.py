"""The panel as large as it will be, on this monitor, with a calibration against a bank card or a ruler."""

from __future__ import annotations

from math import ceil, log

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QImage, QKeyEvent, QPainter, QPaintEvent, QPen, QScreen
from PySide6.QtWidgets import (
    QDialog,
    QDoubleSpinBox,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSizePolicy,
    QSlider,
    QVBoxLayout,
    QWidget,
)

from panelproof.editor import theme
from panelproof.editor.densities import GREATEST, LEAST, Densities
from panelproof.editor.hub import Hub
from panelproof.editor.pixels import frame_image
from panelproof.layout.panel import Panel
from panelproof.picture.frame import Frame, new_frame, screen_frame
from panelproof.picture.image import BEZEL
from panelproof.problem import Problem

# ISO/IEC 7810, size ID-1: bank and identity cards. The figures are from memory of that standard.
CARD = 85.60, 53.98
CARD_CORNER = 3.18
BEZEL_MM = 1.5
RULER_MM = 100
STEPS = 2000
"""Positions of the slider, over the densities that a monitor can have: each larger by a fifth of a percent."""


def monitor_name(screen: QScreen) -> str:
    """Return what tells a monitor from others."""
    return "|".join((screen.manufacturer(), screen.model(), screen.serialNumber(), screen.name()))


def stated(screen: QScreen) -> float:
    """Return the device pixels a millimetre that a monitor says it has; 96 an inch where it says nonsense."""
    density = screen.physicalDotsPerInch() * screen.devicePixelRatio() / 25.4
    return density if LEAST <= density <= GREATEST else 96 * screen.devicePixelRatio() / 25.4


def device_size(panel: Panel, density: float) -> tuple[int, int] | None:
    """Return the device pixels that a panel covers at `density` a millimetre, None if its size is unknown."""
    if panel.width_mm is None or panel.height_mm is None:
        return None
    return max(round(panel.width_mm * density), 1), max(round(panel.height_mm * density), 1)


def as_large(image: QImage, size: tuple[int, int]) -> QImage:
    """Return a picture of another size; each device pixel gets its share of the panel pixels under it."""
    times = max(ceil(size[0] / image.width()), ceil(size[1] / image.height()), 1)
    fast, smooth = Qt.TransformationMode.FastTransformation, Qt.TransformationMode.SmoothTransformation
    stretch = Qt.AspectRatioMode.IgnoreAspectRatio
    large = image.scaled(image.width() * times, image.height() * times, stretch, fast)
    return large.scaled(size[0], size[1], stretch, smooth)


class TrueSize(QDialog):
    """A window that shows the hub's moment at the panel's own size, and follows it."""

    def __init__(self, hub: Hub, parent: QWidget | None = None, densities: Densities | None = None) -> None:
        super().__init__(parent)
        self._hub, self._densities = hub, densities or Densities()
        self.setWindowTitle("True size")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self._density = 96 / 25.4
        self.view = _View(hub, self)
        self.card = _Card(self)
        self.words = QLabel(self)
        self.words.setWordWrap(True)
        theme.set_role(self.words, "small")
        self.measure = QPushButton("Measure this monitor…", self)
        self.measure.setCheckable(True)
        self.measure.setAutoDefault(False)
        self.measure.toggled.connect(self._turn)
        self.slider, self.spin = self._controls()
        self.keep = QPushButton("Keep", self)
        self.keep.setAccessibleName("Keep this measure for this monitor")
        self.keep.clicked.connect(self._keep)
        self.reset = QPushButton("As the monitor says", self)
        self.reset.clicked.connect(self._reset)
        self._build()
        for signal in (hub.layout_changed, hub.screen_changed, hub.moment_changed):
            signal.connect(self._renew)
        self.find_monitor()

    def _controls(self) -> tuple[QSlider, QDoubleSpinBox]:
        slider = QSlider(Qt.Orientation.Horizontal, self)
        slider.setRange(0, STEPS)
        slider.setAccessibleName("Size of the card on this monitor")
        slider.valueChanged.connect(self._slid)
        spin = QDoubleSpinBox(self)
        spin.setRange(LEAST, GREATEST)
        spin.setDecimals(3)
        spin.setSingleStep(0.01)
        spin.setSuffix(" px/mm")
        spin.setAccessibleName("Device pixels in a millimetre")
        spin.valueChanged.connect(self.set_density)
        return slider, spin

    def _build(self) -> None:
        column = QVBoxLayout(self)
        theme.space(column, theme.GAP, theme.UNIT)
        column.addWidget(self.view, 1)
        column.addWidget(self.card, 1)
        self._panel_of_controls = QWidget(self)
        row = QHBoxLayout(self._panel_of_controls)
        theme.space(row, 0, theme.UNIT)
        row.addWidget(self.slider, 1)
        row.addWidget(self.spin)
        row.addWidget(self.keep)
        row.addWidget(self.reset)
        column.addWidget(self._panel_of_controls)
        foot = QHBoxLayout()
        theme.space(foot, 0, theme.UNIT)
        foot.addWidget(self.words, 1)
        foot.addWidget(self.measure)
        column.addLayout(foot)
        self._turn(False)

    # -- density ---------------------------------------------------------------------------------------

    @property
    def density(self) -> float:
        """Device pixels in a millimetre."""
        return self._density

    def find_monitor(self) -> None:
        """Take the density of the monitor that the window is on."""
        screen = self.screen()
        self.set_density(self._densities.measured(monitor_name(screen)) or stated(screen))

    def set_density(self, density: float) -> None:
        """Show everything at another density."""
        self._density = min(max(density, LEAST), GREATEST)
        self.spin.blockSignals(True)
        self.spin.setValue(self._density)
        self.spin.blockSignals(False)
        self.slider.blockSignals(True)
        self.slider.setValue(self._position(self._density))
        self.slider.blockSignals(False)
        self._renew()

    @staticmethod
    def _position(density: float) -> int:
        return round(log(density / LEAST) / log(GREATEST / LEAST) * STEPS)

    def _slid(self, position: int) -> None:
        self.set_density(LEAST * (GREATEST / LEAST) ** (position / STEPS))

    def _keep(self) -> None:
        self._densities.keep(monitor_name(self.screen()), self._density)
        self.measure.setChecked(False)
        self._renew()

    def _reset(self) -> None:
        self._densities.forget(monitor_name(self.screen()))
        self.find_monitor()

    # -- showing ---------------------------------------------------------------------------------------

    def _turn(self, measuring: bool) -> None:
        # What goes is hidden first, or the window would grow for both.
        shown: list[QWidget] = [self.view]
        measured: list[QWidget] = [self.card, self._panel_of_controls]
        for widget in shown if measuring else measured:
            widget.hide()
        for widget in measured if measuring else shown:
            widget.show()
        self.measure.setText("Back" if measuring else "Measure this monitor…")
        self.adjustSize()
        if measuring:
            self.slider.setFocus()
        self._renew()

    def _renew(self) -> None:
        self.view.density = self.card.density = self._density
        self.view.renew()
        self.card.updateGeometry()
        self.card.update()
        self.words.setText(self._sentence())

    def _sentence(self) -> str:
        if self.measure.isChecked():
            return (
                "Hold a bank card or a ruler against the monitor and move the slider (arrow keys: finely)"
                " until both are as large; then keep it."
            )
        panel = self._hub.layout.panel
        if panel.width_mm is None or panel.height_mm is None:
            return "How large is the panel? Give its width and height in millimetres on the panel's sheet."
        measured = self._densities.measured(monitor_name(self.screen())) is not None
        source = "as measured" if measured else "as the monitor says; measure it to be sure"
        return f"{panel.width_mm:g} × {panel.height_mm:g} mm, {self._density:.2f} px/mm {source}"

    def event(self, event: QEvent) -> bool:
        """Follow the window to another monitor."""
        if event.type() in (QEvent.Type.DevicePixelRatioChange, QEvent.Type.ScreenChangeInternal):
            self.find_monitor()
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let Enter keep the measure rather than close."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.measure.isChecked():
            self._keep()
            return
        super().keyPressEvent(event)


class _View(QWidget):
    """The panel in its bezel, in the middle."""

    def __init__(self, hub: Hub, parent: QWidget) -> None:
        super().__init__(parent)
        self._hub = hub
        self.density = 96 / 25.4
        self._frame: Frame | None = None
        self.setAccessibleName("The panel at its true size")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def renew(self) -> None:
        """Draw anew what the hub has."""
        self._frame = None
        self.updateGeometry()
        self.update()

    def frame(self) -> Frame:
        """Return the pixels that are shown."""
        if self._frame is None:
            hub, panel = self._hub, self._hub.layout.panel
            try:
                screen = hub.screen
                if screen is None:
                    self._frame = new_frame(panel)
                else:
                    self._frame = screen_frame(hub.material, screen, hub.values)
            except Problem as problem:
                hub.told.emit(str(problem))
                self._frame = new_frame(panel)
        return self._frame

    def panel_area(self) -> QRectF:
        """Return where the panel lies, in device pixels of the widget."""
        ratio = self.devicePixelRatioF()
        size = device_size(self._hub.layout.panel, self.density) or (0, 0)
        x = (round(self.width() * ratio) - size[0]) // 2
        y = (round(self.height() * ratio) - size[1]) // 2
        return QRectF(x, y, *size)

    def sizeHint(self) -> QSize:
        """Return the panel's size and some room around it."""
        size = device_size(self._hub.layout.panel, self.density) or (300, 160)
        ratio = self.devicePixelRatioF()
        return QSize(round(size[0] / ratio) + 96, round(size[1] / ratio) + 96)

    def minimumSizeHint(self) -> QSize:
        """Return the same, as far as a monitor goes."""
        return self.sizeHint().boundedTo(QSize(1200, 800)).expandedTo(QSize(420, 200))

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(self.rect(), theme.colours().surround)
        panel, ratio = self._hub.layout.panel, self.devicePixelRatioF()
        size = device_size(panel, self.density)
        if size is None:
            painter.setPen(theme.colours().quiet)
            painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, "The panel's size is not known yet.")
            return
        painter.scale(1 / ratio, 1 / ratio)
        area, around = self.panel_area(), BEZEL_MM * self.density
        corner = around
        if panel.shape == "round":
            corner = area.width() / 2 + around
        elif panel.shape == "rounded":
            corner = around + panel.corner_radius * area.width() / panel.width
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(*BEZEL))
        painter.drawRoundedRect(area.adjusted(-around, -around, around, around), corner, corner)
        painter.drawImage(area.topLeft(), as_large(frame_image(self.frame(), panel), size))


class _Card(QWidget):
    """A bank card and a ruler to hold one's own against."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.density = 96 / 25.4
        self.setAccessibleName("A bank card and a ruler of 100 mm")

    def card_width(self) -> float:
        """Return the card's width in logical pixels."""
        return CARD[0] * self.density / self.devicePixelRatioF()

    def sizeHint(self) -> QSize:
        """Return the room that a card and a ruler take."""
        scale = self.density / self.devicePixelRatioF()
        return QSize(round(RULER_MM * scale) + 64, round((CARD[1] + 14) * scale) + 64)

    def minimumSizeHint(self) -> QSize:
        """Return the same, as far as a monitor goes."""
        return self.sizeHint().boundedTo(QSize(1200, 700))

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        tones = theme.colours()
        painter.fillRect(self.rect(), tones.surround)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        scale = self.density / self.devicePixelRatioF()
        card = QRectF(24, 24, CARD[0] * scale, CARD[1] * scale)
        painter.setPen(QPen(tones.accent, 1.5))
        painter.setBrush(tones.raised)
        painter.drawRoundedRect(card, CARD_CORNER * scale, CARD_CORNER * scale)
        painter.setPen(tones.quiet)
        painter.drawText(card, Qt.AlignmentFlag.AlignCenter, f"a bank card\n{CARD[0]:.2f} mm wide")
        self._paint_ruler(painter, QPointF(24, card.bottom() + 16), scale)

    @staticmethod
    def _paint_ruler(painter: QPainter, at: QPointF, scale: float) -> None:
        tones = theme.colours()
        painter.setFont(theme.font("small"))
        painter.setPen(QPen(tones.text, 1))
        for millimetre in range(RULER_MM + 1):
            x = at.x() + millimetre * scale
            long = 12 if millimetre % 10 == 0 else 8 if millimetre % 5 == 0 else 5
            painter.drawLine(QPointF(x, at.y()), QPointF(x, at.y() + long))
            if millimetre % 10 == 0:
                box = QRectF(x - 20, at.y() + 13, 40, 16)
                painter.drawText(box, Qt.AlignmentFlag.AlignCenter, str(millimetre))
