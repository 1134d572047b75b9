"""flickers: an update shows the new text at once, not an empty box first.

Clearing `box` fills the padding box with ground and then inks: in between the text is gone. How often that may be
before it disturbs is common practice, without a source: below one second. More than three flashes in one second are
past a published threshold (WCAG 2.2, 2.3.1).
"""

from __future__ import annotations

from collections.abc import Iterator

from panelproof.layout.parts import Field, Icon
from panelproof.proof.extent import Stage
from panelproof.proof.finding import Change, Finding, Level, Remedy

NAME = "flickers"
STEADY_MS = 1000
FLASHES = 3


def findings(stage: Stage) -> Iterator[Finding]:
    """Yield parts that are cleared by `box`; a frame composed in memory shows no empty box."""
    if stage.material.layout.panel.refresh == "whole":
        return
    for extent in stage.extents:
        part = extent.part
        if not isinstance(part, Field | Icon) or part.clearing != "box" or not extent.changes:
            continue
        level: Level = "caution"
        message = "each update empties the padding box before it inks the new content"
        if part.period_ms is None:
            level = "note"
            message += ", which flickers; no period is given that would say how often"
        elif part.period_ms * FLASHES < STEADY_MS:
            message += (
                f": every {part.period_ms} ms, and more than three flashes a second"
                " are past the threshold of WCAG 2.2, 2.3.1"
            )
        elif part.period_ms < STEADY_MS:
            message += f": every {part.period_ms} ms, and oftener than once a second is seen as flicker"
        else:
            level = "note"
            message += f": a flicker every {part.period_ms} ms"
        yield Finding(
            NAME, level, stage.screen.name, part.name, message, (), 0, extent.padding,
            Remedy("clearing `pad` paints each pixel once", (Change(part.name, "clearing", "pad"),)),
        )  # fmt: skip
