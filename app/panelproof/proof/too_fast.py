"""too-fast: a number stands long enough to be read.

Numbers that are read one after another should follow no faster than two a second (from memory: MIL-STD-1472 on
counters, and NUREG-0700 after it).
"""

from __future__ import annotations

from collections.abc import Iterator

from panelproof.layout.parts import Field
from panelproof.proof.extent import Stage
from panelproof.proof.finding import Finding, Remedy
from panelproof.proof.neighbours import numeric

NAME = "too-fast"
READ_MS = 500


def findings(stage: Stage) -> Iterator[Finding]:
    """Yield fields whose numbers are renewed before a person has read them."""
    for extent in stage.extents:
        part = extent.part
        if not isinstance(part, Field) or part.period_ms is None or part.period_ms >= READ_MS:
            continue
        if numeric(part.content):
            yield Finding(
                NAME, "caution", stage.screen.name, part.name,
                f"a new number every {part.period_ms} ms cannot be read: at most two a second can",
                (), 0, extent.padding or extent.reach.bounds(),
                Remedy(f"let the device show a mean every {READ_MS} ms or less often, and say so in `period_ms`"),
            )  # fmt: skip
