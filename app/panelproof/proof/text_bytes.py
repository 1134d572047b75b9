"""text-bytes: the text buffer holds the longest text in UTF-8, with its terminator."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from panelproof.content.build import graph
from panelproof.content.graph import max_bytes
from panelproof.content.spec import Content
from panelproof.layout.parts import Field
from panelproof.proof.extent import Stage
from panelproof.proof.finding import Change, Finding, Remedy
from panelproof.proof.words import quoted

NAME = "text-bytes"


@lru_cache(maxsize=1024)
def needed(content: Content) -> tuple[int, str]:
    """Return the bytes that a content's text buffer must have, and a text that fills it."""
    size, text = max_bytes(graph(content))
    return size + 1, text


def findings(stage: Stage) -> Iterator[Finding]:
    """Yield each field whose text buffer is too small."""
    for extent in stage.extents:
        part = extent.part
        if not isinstance(part, Field) or part.buffer is None:
            continue
        size, text = needed(part.content)
        if part.buffer < size:
            yield Finding(
                NAME, "fault", stage.screen.name, part.name,
                f"{quoted(text)} needs {size} bytes with its terminator; the text buffer has {part.buffer}",
                (text,), 0, extent.padding or extent.reach.bounds(),
                Remedy(f"buffer {part.buffer} → {size} bytes", (Change(part.name, "buffer", size),)),
            )  # fmt: skip
