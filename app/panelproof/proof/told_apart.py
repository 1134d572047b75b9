"""told-apart: two states of an icon differ by more than hue, for every sight and in the colours the panel shows.

Source: WCAG 2.2, 1.4.1. Two states are told apart by their shapes, or by inks that differ in lightness: a contrast of 3:1
to each other (WCAG's own technique for it) in normal sight and in protan, deutan and tritan sight (Machado, Oliveira,
Fernandes 2009). Shapes of which all but a twentieth of the pixels are the same count as one, unless the
ink is the same too: those are frames of one movement.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from itertools import combinations
from typing import NamedTuple

from panelproof.ink.mask import Mask
from panelproof.layout.colour import Colours, Rgb, quantise, shown, written
from panelproof.layout.document import Screen
from panelproof.layout.parts import Icon
from panelproof.material import Material
from panelproof.proof.contrast import GRAPHIC
from panelproof.proof.extent import Extent, Stage
from panelproof.proof.finding import Finding, Remedy
from panelproof.proof.words import counted
from panelproof.sight.deficiency import MATRICES, seen
from panelproof.sight.luminance import contrast

NAME = "told-apart"
APART = 3.0
SAME_SHAPE = 20


class Pair(NamedTuple):
    """Two states that are hard to tell apart: `ratio` is their least contrast, in the sight named ("" normal).

    `differing` is the number of pixels by which their shapes differ, of `inked`.
    """

    ratio: float
    sight: str
    first: int
    second: int
    differing: int
    inked: int


def least_contrast(one: Rgb, other: Rgb) -> tuple[float, str]:
    """Return the least contrast of two shown colours, and the sight that has it ("" for normal)."""
    ratios = [(contrast(one, other), "")]
    ratios += [(contrast(seen(one, kind), seen(other, kind)), kind) for kind in MATRICES]
    return min(ratios)


@lru_cache(maxsize=512)
def alike(bitmaps: tuple[Mask, ...], colours_shown: tuple[Rgb, ...]) -> tuple[Pair, ...]:
    """Return the pairs of states that are hard to tell apart, the hardest first."""
    found = []
    for first, second in combinations(range(len(bitmaps)), 2):
        one, other = bitmaps[first], bitmaps[second]
        differing, inked = ((one | other) - (one & other)).count(), (one | other).count()
        same_ink = colours_shown[first] == colours_shown[second]
        if differing * SAME_SHAPE > inked or (same_ink and differing):
            continue
        ratio, sight = least_contrast(colours_shown[first], colours_shown[second])
        if ratio < APART:
            found.append(Pair(ratio, sight, first, second, differing, inked))
    return tuple(sorted(found, key=lambda pair: (pair.differing > 0, pair.ratio, pair.first, pair.second)))


def findings(stage: Stage) -> Iterator[Finding]:
    """Yield each icon with states that are hard to tell apart."""
    material = stage.material
    colours = material.layout.panel.colours
    for extent in stage.extents:
        part = extent.part
        if not isinstance(part, Icon):
            continue
        inks = tuple(shown(material.code(state.ink or part.ink), colours) for state in part.states)
        pairs = alike(tuple(material.bitmaps[state] for state in part.states), inks)
        if pairs:
            yield _finding(stage, extent, part, pairs, inks)


def _finding(
    stage: Stage, extent: Extent, part: Icon, pairs: tuple[Pair, ...], inks: tuple[Rgb, ...]
) -> Finding:
    pair = pairs[0]
    names = part.states[pair.first].name, part.states[pair.second].name
    one, other = inks[pair.first], inks[pair.second]
    more = f"; {counted(len(pairs) - 1, 'more pair is', 'more pairs are')} as near" if len(pairs) > 1 else ""
    return Finding(
        NAME, "caution", stage.screen.name, extent.name,
        f"states `{names[0]}` and `{names[1]}` {_difference(pair, one, other)}{more}",
        names, 0, extent.padding or extent.reach.bounds(), _remedy(stage.material, stage.screen, part, pair, inks),
    )  # fmt: skip


def _difference(pair: Pair, one: Rgb, other: Rgb) -> str:
    if one == other:
        return f"look the same: one shape, and the panel shows both as {written(one)}"
    shape = (
        f"differ by {counted(pair.differing, 'pixel')} of {pair.inked} and by colour"
        if pair.differing
        else "have one shape and differ by colour alone"
    )
    words = f"{shape}: {written(one)} and {written(other)}"
    if pair.sight:
        words += (
            f", to {pair.sight} sight {written(seen(one, pair.sight))} and {written(seen(other, pair.sight))}"
        )
    return f"{words}, a contrast of {int(pair.ratio * 100) / 100:.2f}:1 to each other where {APART:g}:1 tells apart"


def _remedy(material: Material, screen: Screen, part: Icon, pair: Pair, inks: tuple[Rgb, ...]) -> Remedy:
    shape = f"give `{part.states[pair.second].name}` another shape"
    colours = material.layout.panel.colours
    if not colours.blends:
        return Remedy(shape)
    state = part.states[pair.second]
    ground = shown(material.code(part.ground or screen.ground), colours)
    shade = _apart(material.inks[state.ink or part.ink], inks[pair.first], ground, colours)
    return Remedy(f"{shape}, or an ink such as {written(shade)}" if shade else shape)


@lru_cache(maxsize=256)
def _apart(rgb: Rgb, other: Rgb, ground: Rgb, colours: Colours) -> Rgb | None:
    from panelproof.sight.shade import nearest  # noqa: PLC0415 - only where something is found

    def fits(shade: Rgb) -> bool:
        seen_as = shown(quantise(shade, colours), colours)
        return contrast(seen_as, ground) >= GRAPHIC and least_contrast(seen_as, other)[0] >= APART

    return nearest(rgb, fits)
