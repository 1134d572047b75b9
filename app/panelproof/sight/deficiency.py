"""Colours as people with colour-deficient sight see them.

Source: Machado, Oliveira, Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency", 2009:
their matrices at severity 1.0, applied to linear sRGB.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Literal

from panelproof.layout.colour import Rgb
from panelproof.sight.luminance import encoded, linear_rgb

Deficiency = Literal["protan", "deutan", "tritan"]

MATRICES: dict[Deficiency, tuple[tuple[float, float, float], ...]] = {
    "protan": (
        (0.152286, 1.052583, -0.204868),
        (0.114503, 0.786281, 0.099216),
        (-0.003882, -0.048116, 1.051998),
    ),
    "deutan": (
        (0.367322, 0.860646, -0.227968),
        (0.280085, 0.672501, 0.047413),
        (-0.011820, 0.042940, 0.968881),
    ),
    "tritan": (
        (1.255528, -0.076749, -0.178779),
        (-0.078411, 0.930809, 0.147602),
        (0.004733, 0.691367, 0.303900),
    ),
}
"""Rows give red, green and blue of what is seen from linear red, green and blue of what is shown."""


@lru_cache(maxsize=4096)
def seen(rgb: Rgb, deficiency: Deficiency) -> Rgb:
    """Return the 8-bit sRGB colour that looks to normal sight as `rgb` looks to a deficient one."""
    light = linear_rgb(rgb)
    red, green, blue = (
        encoded(sum(weight * value for weight, value in zip(row, light, strict=True)))
        for row in MATRICES[deficiency]
    )
    return red, green, blue
