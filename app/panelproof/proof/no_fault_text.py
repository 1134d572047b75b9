"""no-fault-text: a field that shows a number has a text for when there is none.

Common practice: a sensor can be unplugged and a read can time out, so that a fault text is part of what a field
shows.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from panelproof.content.spec import Content
from panelproof.glyphs.run import placed
from panelproof.glyphs.type import Type
from panelproof.layout.parts import Field
from panelproof.proof.extent import Extent, Stage
from panelproof.proof.finding import Change, Finding, Remedy
from panelproof.proof.neighbours import numeric
from panelproof.proof.words import quoted

NAME = "no-fault-text"
MARKS = ("--", "-", "?")


def findings(stage: Stage) -> Iterator[Finding]:
    """Yield fields of numbers without a fault text."""
    for extent in stage.extents:
        part = extent.part
        if isinstance(part, Field) and part.content.fault is None and numeric(part.content):
            yield Finding(
                NAME, "caution", stage.screen.name, part.name,
                "there is no fault text for when no valid number is there",
                (), 0, extent.padding or extent.reach.bounds(), _remedy(extent, part),
            )  # fmt: skip


def _remedy(extent: Extent, part: Field) -> Remedy | None:
    """Return a fault text of signs that the type has, no wider than the longest text."""
    if extent.footprint is None:
        return None
    text = _fitting(part.content, extent.footprint.type, extent.footprint.widths[-1])
    if text is None:
        return None
    changed = with_values(part.content, fault=text)
    return Remedy(f"fault text {quoted(text)}", (Change(part.name, "content", changed),))


@lru_cache(maxsize=512)
def _fitting(content: Content, type_: Type, width: int) -> str | None:
    taken = {content.first, *content.also}
    for text in (*(mark for mark in MARKS if mark not in taken), *MARKS):
        if all(type_.glyph(char) for char in text) and placed(type_, text)[1] <= width:
            return text
    return None


def with_values(content: Content, **values: object) -> object:
    """Return a content as the layout file holds it, some values set."""
    from msgspec import to_builtins  # noqa: PLC0415
    from msgspec.structs import replace  # noqa: PLC0415

    return to_builtins(replace(content, **values))
