"""Relative luminance and contrast ratio of colours as shown.

Source: WCAG 2.2, definitions of "relative luminance" and "contrast ratio", for colours in sRGB.
"""

from __future__ import annotations

from functools import lru_cache

from panelproof.layout.colour import Rgb

Linear = tuple[float, float, float]


@lru_cache(maxsize=256)
def linear(value: int) -> float:
    """Return an 8-bit sRGB value as linear light, 0 to 1."""
    share = value / 255
    return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4


def encoded(light: float) -> int:
    """Return linear light as an 8-bit sRGB value; what lies outside 0 to 1 is brought to its edge."""
    light = min(max(light, 0.0), 1.0)
    share = 12.92 * light if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055
    return round(share * 255)


def linear_rgb(rgb: Rgb) -> Linear:
    """Return an 8-bit sRGB colour as linear light."""
    return linear(rgb[0]), linear(rgb[1]), linear(rgb[2])


def luminance_of(light: Linear) -> float:
    """Return the relative luminance of linear light: 0 black, 1 white."""
    return 0.2126 * light[0] + 0.7152 * light[1] + 0.0722 * light[2]


@lru_cache(maxsize=4096)
def luminance(rgb: Rgb) -> float:
    """Return the relative luminance of an 8-bit sRGB colour: 0 black, 1 white."""
    return luminance_of(linear_rgb(rgb))


def ratio(one: float, other: float) -> float:
    """Return the contrast ratio of two relative luminances, 1 to 21, whichever is the lighter."""
    return (max(one, other) + 0.05) / (min(one, other) + 0.05)


def contrast(one: Rgb, other: Rgb) -> float:
    """Return the contrast ratio of two 8-bit sRGB colours, 1 to 21."""
    return ratio(luminance(one), luminance(other))
