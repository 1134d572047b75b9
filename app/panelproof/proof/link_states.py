"""link-states: an icon of a link has a state for being on its way up, and one for having failed.

Which states those are is told by their names: `trying` or `fault`, or names that begin so (`trying-1`, `fault-
password`).
"""

from __future__ import annotations

from collections.abc import Iterator

from panelproof.layout.parts import Icon
from panelproof.proof.extent import Stage
from panelproof.proof.finding import Finding, Remedy
from panelproof.proof.words import listed

NAME = "link-states"
NEEDED = {"trying": "being on its way up", "fault": "having failed"}


def findings(stage: Stage) -> Iterator[Finding]:
    """Yield icons of links without such a state."""
    for extent in stage.extents:
        part = extent.part
        if not isinstance(part, Icon) or not part.link:
            continue
        names = [state.name for state in part.states]
        lacking = [word for word in NEEDED if not any(_is(name, word) for name in names)]
        if lacking:
            yield Finding(
                NAME, "caution", stage.screen.name, part.name,
                f"the link has no state for {' and '.join(NEEDED[word] for word in lacking)}",
                (), 0, extent.padding,
                Remedy(f"add {listed([f'a state `{word}`' for word in lacking])}, or rename the state that means it"),
            )  # fmt: skip


def _is(name: str, word: str) -> bool:
    return name == word or name.startswith(f"{word}-")
