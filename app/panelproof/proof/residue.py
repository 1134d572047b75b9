"""residue: after a change of screen nothing of the old screen remains.

Any screen may follow any other; the first of the layout also follows power-on, when the panel's memory holds chance pixels.
"""

from __future__ import annotations

from collections.abc import Iterator

from panelproof.ink.mask import Mask, rectangle, union
from panelproof.proof.extent import Stage
from panelproof.proof.finding import Change, Finding, Remedy
from panelproof.proof.words import counted, quoted

NAME = "residue"


def findings(stages: tuple[Stage, ...]) -> Iterator[Finding]:
    """Yield what a screen that does not clear leaves of those before it."""
    for number, stage in enumerate(stages):
        if stage.screen.clears:
            continue
        bare = rectangle(*stage.whole) - union((extent.surely for extent in stage.extents), stage.whole)
        if not bare:
            continue
        if number == 0:
            yield _finding(
                stage, "", bare, (),
                "after power-on the panel holds chance pixels, and drawing this screen leaves "
                f"{counted(bare.count(), 'of them', 'of them')} as they are",
            )  # fmt: skip
        for former in stages:
            if former is not stage:
                yield from _left(stage, former, bare)


def _left(stage: Stage, former: Stage, bare: Mask) -> Iterator[Finding]:
    ground = stage.material.code(stage.screen.ground)
    left, part = Mask(*bare.frame, 0), ""
    texts: tuple[str, ...] = ()
    if former.screen.clears and former.material.code(former.screen.ground) != ground:
        left = bare
    for extent in former.extents:
        shown = extent.seen_on(ground)
        painted = shown
        if extent.ground_code not in (-1, ground):
            painted = painted | extent.ground | extent.fill
        seen = painted & bare
        if seen and not part:
            part = extent.name
            inked = shown & bare
            texts = extent.text_at(next(iter(inked.pixels()))) if inked else ()
        left = left | seen
    if left:
        what = f"{quoted(texts[0])} of `{part}`" if texts else f"`{part}`" if part else "its ground"
        yield _finding(
            stage, part, left, texts,
            f"after screen `{former.screen.name}`, {what} can still be seen: {counted(left.count(), 'pixel')} remain",
            former=former.screen.name,
        )  # fmt: skip


def _finding(
    stage: Stage, other: str, left: Mask, texts: tuple[str, ...], message: str, *, former: str = ""
) -> Finding:
    return Finding(
        NAME, "fault", stage.screen.name, "", message, texts, left.count(), left.bounds(),
        Remedy(f"let screen `{stage.screen.name}` clear the panel", (Change("", "clears", True),)), other, left, former,
    )  # fmt: skip
