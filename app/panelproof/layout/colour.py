"""Inks as the panel shows them: quantising to a panel's colours, and back to what the eye gets."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

Rgb = tuple[int, int, int]
ColourFormat = Literal["mono", "grey4", "grey16", "rgb565", "indexed"]
# How many greys; mono and indexed panels have none between their colours.
GREYS: dict[str, int] = {"grey4": 4, "grey16": 16}


@dataclass(frozen=True, slots=True)
class Colours:
    """What a pixel of a panel can show: a colour format, and for `indexed` its palette (8-bit sRGB)."""

    format: ColourFormat
    palette: tuple[Rgb, ...] = ()

    @property
    def count(self) -> int:
        """How many codes there are, from 0."""
        return {"mono": 2, "rgb565": 65536, "indexed": len(self.palette)}.get(self.format) or GREYS[
            self.format
        ]

    @property
    def blends(self) -> bool:
        """Whether there are levels between two colours, so that antialiased type makes sense."""
        return self.format not in ("mono", "indexed")


def parse(colour: str) -> Rgb:
    """Return the 8-bit sRGB values of `#rrggbb`."""
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)


def written(rgb: Rgb) -> str:
    """Return `#rrggbb` of 8-bit sRGB values."""
    return "#{:02x}{:02x}{:02x}".format(*rgb)


def luma(rgb: Rgb) -> int:
    """Return a thousand times the luma of a colour, 0 to 255 000 (ITU-R BT.601 weights)."""
    return 299 * rgb[0] + 587 * rgb[1] + 114 * rgb[2]


def quantise(rgb: Rgb, colours: Colours) -> int:
    """Return the panel's own code for a colour.

    rgb565: 0..65535, each channel the nearest of its 32 or 64 values. mono: 0 or 1 (lit), lit from half luma up. Greys: the
    level nearest to the luma, 0 black. indexed: the place in the palette of the entry that is nearest in sRGB values, the
    first of several.
    """
    red, green, blue = rgb
    if colours.format == "rgb565":
        return ((red * 31 + 127) // 255) << 11 | ((green * 63 + 127) // 255) << 5 | ((blue * 31 + 127) // 255)
    if colours.format == "mono":
        return int(luma(rgb) >= 127_500)
    if colours.format == "indexed":
        return min(range(len(colours.palette)), key=lambda code: _distance(rgb, colours.palette[code]))
    steps = GREYS[colours.format] - 1
    return (2 * luma(rgb) * steps + 255_000) // 510_000


def _distance(one: Rgb, other: Rgb) -> int:
    return sum((a - b) ** 2 for a, b in zip(one, other, strict=True))


def shown(code: int, colours: Colours) -> Rgb:
    """Return the 8-bit sRGB values of what the panel shows for one of its codes."""
    if colours.format == "rgb565":
        red, green, blue = code >> 11, code >> 5 & 63, code & 31
        return (red * 255 + 15) // 31, (green * 255 + 31) // 63, (blue * 255 + 15) // 31
    if colours.format == "indexed":
        return colours.palette[code]
    steps = GREYS.get(colours.format, 2) - 1
    grey = (code * 255 + steps // 2) // steps
    return grey, grey, grey


@lru_cache(maxsize=1024)
def ramp(ink: Rgb, ground: Rgb, colours: Colours) -> tuple[int, ...]:
    """Return the 16 panel codes from `ground` (level 0) to `ink` (level 15), evenly spaced in sRGB values."""
    return tuple(
        quantise(
            tuple((g * (15 - level) + i * level + 7) // 15 for i, g in zip(ink, ground, strict=True)),  # type: ignore[arg-type]
            colours,
        )
        for level in range(16)
    )
