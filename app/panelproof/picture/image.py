"""Frames as pictures that a person can look at."""

from __future__ import annotations

from functools import lru_cache
from io import BytesIO

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from panelproof.layout.colour import Colours, Rgb, shown
from panelproof.layout.panel import Panel, visible_spans
from panelproof.picture.frame import Frame

BEZEL: Rgb = (104, 108, 114)
GREATEST_SCALE = 32

Pixels = NDArray[np.uint8]


@lru_cache(maxsize=4)
def _palette(colours: Colours) -> Pixels:
    """Return the sRGB values of every code of a panel's colours, [codes, 3]."""
    return np.array([shown(code, colours) for code in range(colours.count)], dtype=np.uint8)


@lru_cache(maxsize=16)
def hidden(panel: Panel) -> NDArray[np.bool_]:
    """Return which pixels of the panel's rectangle cannot be seen, [height, width]."""
    covered = np.ones((panel.height, panel.width), dtype=np.bool_)
    for row, (first, end) in enumerate(visible_spans(panel)):
        covered[row, first:end] = False
    return covered


def pixels(frame: Frame, panel: Panel) -> Pixels:
    """Return the 8-bit sRGB values that the panel shows, [height, width, 3]; `BEZEL` outside its shape."""
    seen: Pixels = _palette(panel.colours)[frame.codes]
    if panel.shape != "rectangular":
        seen[hidden(panel)] = BEZEL
    return seen


def enlarged(seen: Pixels, scale: int) -> Pixels:
    """Return a picture with every pixel `scale` × `scale`; raises ValueError below 1 and above 32."""
    if not 1 <= scale <= GREATEST_SCALE:
        raise ValueError(f"scale must be 1 to {GREATEST_SCALE}, not {scale}")
    return seen.repeat(scale, axis=0).repeat(scale, axis=1)


def image(frame: Frame, panel: Panel, scale: int = 1) -> Image.Image:
    """Return the frame as an RGB picture, every pixel of the panel `scale` × `scale`."""
    return Image.fromarray(enlarged(pixels(frame, panel), scale))


def png(picture: Image.Image) -> bytes:
    """Return a picture as a PNG file; the same picture gives the same bytes."""
    plain = picture if picture.mode == "RGB" else picture.convert("RGB")
    # A fresh copy of the pixels: nothing of `info` (dates, densities) can get into the file.
    bare = Image.frombytes("RGB", plain.size, plain.tobytes())
    written = BytesIO()
    bare.save(written, format="PNG", compress_level=6)
    return written.getvalue()
