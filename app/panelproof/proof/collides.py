"""collides: no two parts can ink the same pixel.

A box's fill is ground for what is drawn after it, but covers what was drawn before. Lines and outlines of one colour may
cross: they never change, and the pixel looks the same whichever is drawn last.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from itertools import combinations

from panelproof.ink.mask import Mask
from panelproof.layout.parts import Box, Rule
from panelproof.proof.extent import Extent, Stage
from panelproof.proof.finding import Finding
from panelproof.proof.words import counted, quoted

NAME = "collides"


def findings(stage: Stage, *, proposing: bool = True) -> Iterator[Finding]:
    """Yield every pair of parts that can ink the same pixel; without `proposing` no free place is looked for."""
    for first, second in combinations(stage.extents, 2):
        found = _colliding(stage.screen.name, first, second)
        if found:
            from panelproof.proof.free_place import freed  # noqa: PLC0415 - only where something is found

            yield replace(found, remedy=freed(stage, first, second)) if proposing else found


@lru_cache(maxsize=16384)
def _colliding(screen: str, first: Extent, second: Extent) -> Finding | None:
    """Return how two parts collide; remembered while neither changes."""
    shared = _shared(first, second)
    if not shared:
        return None
    pixel = next(iter(shared.pixels()))
    mine, theirs = first.text_at(pixel), second.text_at(pixel)
    if pixel in second.fill:
        message = f"the box `{second.name}` is drawn over {_who(mine)}`{first.name}`"
    else:
        message = f"{_who(mine)}`{first.name}` and {_who(theirs)}`{second.name}` ink the same pixels"
    return Finding(
        NAME, "fault", screen, first.name, f"{message}: {counted(shared.count(), 'pixel')}",
        (*mine, *theirs), shared.count(), shared.bounds(), None, second.name, shared,
    )  # fmt: skip


def _who(texts: tuple[str, ...]) -> str:
    return f"{quoted(texts[0])} of " if texts else ""


def _shared(first: Extent, second: Extent) -> Mask:
    covering = Mask(*second.ink.frame, second.ink.bits | second.fill.bits)
    shared = first.ink & covering
    crossing = isinstance(first.part, Box | Rule) and isinstance(second.part, Box | Rule)
    if crossing and first.ink_codes == second.ink_codes:
        return shared - second.ink
    return shared
