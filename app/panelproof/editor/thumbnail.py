"""Small true pictures of frames: whole device pixels where the panel is small enough, else smoothly lessened."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QImage

from panelproof.editor.pixels import frame_image
from panelproof.layout.panel import Panel
from panelproof.picture.frame import Frame


def size(panel: Panel, room: QSize, ratio: float) -> tuple[int, int, bool]:
    """Return the device pixels a picture takes in `room` (logical), and whether its pixels are whole ones."""
    wide, high = int(room.width() * ratio), int(room.height() * ratio)
    times = min(wide // panel.width, high // panel.height)
    if times >= 1:
        return panel.width * times, panel.height * times, True
    part = min(wide / panel.width, high / panel.height)
    return max(round(panel.width * part), 1), max(round(panel.height * part), 1), False


def picture(frame: Frame, panel: Panel, room: QSize, ratio: float) -> QImage:
    """Return a frame as a picture that fits into `room` logical pixels on a monitor of that ratio."""
    across, down, whole = size(panel, room, ratio)
    way = Qt.TransformationMode.FastTransformation if whole else Qt.TransformationMode.SmoothTransformation
    image = frame_image(frame, panel).scaled(across, down, Qt.AspectRatioMode.IgnoreAspectRatio, way)
    image.setDevicePixelRatio(ratio)
    return image
