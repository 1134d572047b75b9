"""A camera: photographs of a frame, projected, blurred, unevenly lit, with noise, from a seed."""

from __future__ import annotations

import importlib
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from panelproof.layout.panel import Panel
from panelproof.picture.frame import Codes, Frame
from panelproof.picture.image import pixels

cv2: Any = importlib.import_module("cv2")  # its own types know no float arrays


@dataclass(frozen=True, slots=True)
class Shot:
    """A photograph of 8-bit sRGB, and where the glass's corners lie in it, from the upper left clockwise."""

    pixels: NDArray[np.uint8]
    corners: list[tuple[float, float]]


def photograph(
    codes: Codes,
    panel: Panel,
    seed: int,
    *,
    glow: float = 0.06,
    bench: float = 0.02,
    bezel: float = 0.0,
    noise: float = 0.015,
) -> Shot:
    """Photograph a frame: `glow` is what black shines with, `bench` the light around, `bezel` that of a black rim."""
    chance = np.random.default_rng(seed)
    size = (1200, 900)
    seen = (pixels(Frame(panel.width, panel.height, codes), panel) / 255).astype(np.float32) ** 2.2
    seen = glow * 0.2 + (1 - glow * 0.2) * seen
    # The grid between the pixels, as large as a sixth of one.
    step = 6
    fine = cv2.resize(seen, None, fx=step, fy=step, interpolation=cv2.INTER_NEAREST)
    fine[::step] *= 0.6
    fine[:, ::step] *= 0.6
    high, wide = fine.shape[:2]
    shape = panel.width / panel.height
    across = size[0] * chance.uniform(0.55, 0.72)
    down = across / shape
    if down > size[1] * 0.75:
        down = size[1] * 0.75
        across = down * shape
    middle = np.array([size[0] / 2, size[1] / 2]) + chance.uniform(-40, 40, 2)
    box = np.array([[-1, -1], [1, -1], [1, 1], [-1, 1]]) * [across / 2, down / 2]
    angle = np.radians(chance.uniform(-8, 8))
    turn = np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])
    corners = (box @ turn.T + middle + chance.uniform(-0.04, 0.04, (4, 2)) * across).astype(np.float32)
    flat = np.array(
        [[-0.5, -0.5], [wide - 0.5, -0.5], [wide - 0.5, high - 0.5], [-0.5, high - 0.5]], np.float32
    )
    matrix = cv2.getPerspectiveTransform(flat, corners)
    photo = np.full((size[1], size[0], 3), bench, dtype=np.float32)
    if bezel:
        rim = (corners - corners.mean(axis=0)) * (1 + bezel) + corners.mean(axis=0)
        cv2.fillConvexPoly(photo, rim.astype(np.int32), (0.002, 0.002, 0.002))
    mask = cv2.warpPerspective(np.ones((high, wide), np.float32), matrix, size, flags=cv2.INTER_AREA)
    drawn = cv2.warpPerspective(cv2.GaussianBlur(fine, (0, 0), 2.0), matrix, size, flags=cv2.INTER_LINEAR)
    photo = photo * (1 - mask[..., None]) + drawn * mask[..., None]
    photo = cv2.GaussianBlur(photo, (0, 0), chance.uniform(0.8, 1.8))
    # White balance, exposure, vignetting, a reflection, then the camera's own curve and noise.
    photo = photo * chance.uniform(0.8, 1.15, 3) * chance.uniform(0.75, 1.2)
    y, x = np.mgrid[-1 : 1 : size[1] * 1j, -1 : 1 : size[0] * 1j]
    photo = photo * (1 - chance.uniform(0.15, 0.4) * (x * x + y * y) / 2)[..., None]
    spot = chance.uniform(-0.5, 0.5, 2)
    photo = photo + 0.03 * np.exp(-((x - spot[0]) ** 2 + (y - spot[1]) ** 2) / 0.3)[..., None]
    photo = np.clip(photo, 0, 1) ** (1 / 2.2) + chance.normal(0, noise, photo.shape)
    made = (np.clip(photo, 0, 1) * 255).round().astype(np.uint8)
    packed = cv2.imencode(".jpg", made[..., ::-1], [cv2.IMWRITE_JPEG_QUALITY, 88])[1]
    return Shot(
        cv2.imdecode(packed, cv2.IMREAD_COLOR)[..., ::-1].copy(), [(float(a), float(b)) for a, b in corners]
    )
