"""unshown: every screen stands in some moment, so that it is looked at before it is built.

Where the layout names no moment at all, those that come from the contents by themselves are all there is, and the
rule is silent.
"""

from __future__ import annotations

from collections.abc import Iterator

from panelproof.proof.extent import Stage
from panelproof.proof.finding import Finding, Remedy

NAME = "unshown"


def findings(stages: tuple[Stage, ...]) -> Iterator[Finding]:
    """Yield screens that no moment shows, where other screens have one."""
    moments = stages[0].material.layout.moments if stages else ()
    shown = {moment.screen for moment in moments}
    for stage in stages if shown else ():
        name = stage.screen.name
        if name not in shown and stage.screen.parts:
            yield Finding(
                NAME, "caution", name, "", f"no moment shows the screen `{name}`",
                remedy=Remedy(f"name a moment of `{name}`, with what it shows in use"),
            )  # fmt: skip
