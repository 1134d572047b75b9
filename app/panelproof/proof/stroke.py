"""stroke: strokes are neither so thin nor so thick for their height that they fade or run together.

Source: DOD-HDBK-791(AM) 6-5.3.2.3: about 1/6 of the height dark on light, 1/7 to 1/8 light on dark, where light strokes
spread. Whole pixels cannot follow a fraction, and type designs vary on purpose: only strokes under half or
over twice that width are told, both bounds eased to the next whole pixel, and one pixel is never too thin where
two would be too thick.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from math import ceil, floor

from panelproof.glyphs.type import Type
from panelproof.layout.colour import shown
from panelproof.layout.parts import Field, Label
from panelproof.proof.behind import behind, inked
from panelproof.proof.characters import alphabet, height, stroke
from panelproof.proof.extent import Stage
from panelproof.proof.finding import Finding
from panelproof.sight.luminance import luminance

NAME = "stroke"
DARK_ON_LIGHT, LIGHT_ON_DARK = 1 / 6, 1 / 7.5


def bounds(pixels: int, light: bool) -> tuple[int, int]:
    """Return the least and the greatest stroke, in pixels, that passes at a height (light: light on dark)."""
    best = pixels * (LIGHT_ON_DARK if light else DARK_ON_LIGHT)
    return max(floor(best / 2), 1), max(ceil(2 * best), 1)


@lru_cache(maxsize=1024)
def _judged(type_: Type, used: frozenset[str], light: bool) -> str:
    high, thick = height(type_, used), stroke(type_, used)
    if high is None or thick is None or high.kind == "small letters":
        return ""
    least, most = bounds(high.pixels, light)
    # A faint stroke of an antialiased type is one that does not fill its pixel by half.
    if (thick >= least or (least == 1 and thick >= 0.5)) and thick <= most:
        return ""
    word, which = ("thin", f"at least {least}") if thick < least else ("thick", f"at most {most}")
    polarity = "light on dark" if light else "dark on light"
    return (
        f"strokes are {thick:.2g} px wide in {high.kind} {high.pixels} px high, too {word} for text {polarity}: "
        f"{which} px would do"
    )


def findings(stage: Stage) -> Iterator[Finding]:
    """Yield each text whose strokes are far from the width that reads best."""
    material = stage.material
    colours = material.layout.panel.colours
    for number, extent in enumerate(stage.extents):
        part, print_ = extent.part, extent.footprint
        if print_ is None or not isinstance(part, Field | Label) or not extent.ink:
            continue
        # Few strokes are out of bounds for either polarity: the ground matters for those alone.
        if not any(_judged(print_.type, alphabet(print_.graph), light) for light in (False, True)):
            continue
        ground = max(behind(stage, number), key=lambda pair: pair[1])[0]
        light = luminance(shown(material.code(part.ink), colours)) >= luminance(shown(ground, colours))
        message = _judged(print_.type, alphabet(print_.graph), light)
        if message:
            yield Finding(NAME, "caution", stage.screen.name, extent.name, message, (), 0, inked(extent))
