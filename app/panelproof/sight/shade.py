"""The nearest lighter or darker shade of a colour that fits a purpose; its hue stays."""

from __future__ import annotations

from collections.abc import Callable
from colorsys import hls_to_rgb, rgb_to_hls

from panelproof.layout.colour import Rgb

STEPS = 255


def nearest(rgb: Rgb, fits: Callable[[Rgb], bool]) -> Rgb | None:
    """Return the shade of the same hue, of the least change in lightness, that fits; None where none does.

    Of two that are equally near, the lighter. Lightness and hue are those of HSL.
    """
    hue, lightness, saturation = rgb_to_hls(*(value / 255 for value in rgb))
    if fits(rgb):
        return rgb
    for step in range(1, STEPS + 1):
        for side in (1, -1):
            goal = lightness + side * step / STEPS
            # One step beyond the end is the end itself: white or black.
            if -1 / STEPS < goal < 1 + 1 / STEPS:
                red, green, blue = hls_to_rgb(hue, min(max(goal, 0.0), 1.0), saturation)
                shade = round(red * 255), round(green * 255), round(blue * 255)
                if fits(shade):
                    return shade
    return None
