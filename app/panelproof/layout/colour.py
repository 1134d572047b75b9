"""Inks as the panel shows them: quantising to a colour format, and back to what the eye gets."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal

Rgb = tuple[int, int, int]
ColourFormat = Literal["mono", "rgb565"]


def parse(colour: str) -> Rgb:
    """Return the 8-bit sRGB values of `#rrggbb`."""
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)


def quantise(rgb: Rgb, colour_format: ColourFormat) -> int:
    """Return the panel's own code for a colour: rgb565 as 0..65535, mono as 0 or 1 (lit).

    Each rgb565 channel is the nearest of its 32 or 64 values; mono is lit from half luma up (ITU-R BT.601
    weights).
    """
    red, green, blue = rgb
    if colour_format == "mono":
        return int(299 * red + 587 * green + 114 * blue >= 127_500)
    return ((red * 31 + 127) // 255) << 11 | ((green * 63 + 127) // 255) << 5 | ((blue * 31 + 127) // 255)


def shown(code: int, colour_format: ColourFormat) -> Rgb:
    """Return the 8-bit sRGB values of what the panel shows for one of its codes."""
    if colour_format == "mono":
        return (255, 255, 255) if code else (0, 0, 0)
    red, green, blue = code >> 11, code >> 5 & 63, code & 31
    return (red * 255 + 15) // 31, (green * 255 + 31) // 63, (blue * 255 + 15) // 31


@lru_cache(maxsize=1024)
def ramp(ink: Rgb, ground: Rgb, colour_format: ColourFormat) -> tuple[int, ...]:
    """Return the 16 panel codes from `ground` (level 0) to `ink` (level 15), evenly spaced in sRGB values."""
    return tuple(
        quantise(
            tuple((g * (15 - level) + i * level + 7) // 15 for i, g in zip(ink, ground, strict=True)),  # type: ignore[arg-type]
            colour_format,
        )
        for level in range(16)
    )
