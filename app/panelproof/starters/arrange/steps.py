"""Step-by-step set-up: which step, what to do, and a bar with one box a step."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from panelproof.layout.panel import Panel
from panelproof.layout.parts import Align
from panelproof.starters.bar import progress
from panelproof.starters.description import Description
from panelproof.starters.face import PLAIN, Face, heavier
from panelproof.starters.piece import Line, NoRoom
from panelproof.starters.setting import Setting

GREATEST_CAP = 22
"""Running text larger than this makes lines of too few words."""


def attempts(panel: Panel, plan: Description) -> Iterator[Callable[[], Setting]]:
    """Yield the largest text first."""
    shorter = max(min(panel.width, panel.height), 63)
    for text in PLAIN:
        if text.cap > min(shorter // (12 if shorter >= 200 else 9), GREATEST_CAP):
            continue
        for share in (100, 85, 75, 65):
            for wording in range(2):
                yield partial(_set, panel, plan, text, share, wording)


def _set(panel: Panel, plan: Description, text: Face, share: int, wording: int) -> Setting:
    setting = Setting(panel, plan, wording)
    glass, heavy = setting.glass, heavier(text)
    if share < 100 and panel.shape == "rectangular":
        raise NoRoom
    width = (panel.width - 2 * glass.margin) * share // 100
    align: Align = "centre" if glass.round else "left"
    lead = max(text.lead * 3 // 4, 2)
    count = len(plan.notices)
    running = setting.wrapped("instruction", plan.notices, text, width=width, most=9, align=align)
    thick = max(5, text.cap * 3 // 4)
    if glass.round:
        lines = [
            Line(centre=setting.field("step", text, "text", "quiet", "centre")),
            Line(
                centre=setting.field("title", heavy, "heading", "text", "centre"), lead=text.lead, stretch=0
            ),
            *(Line(centre=one, lead=lead, stretch=int(n == 0)) for n, one in enumerate(running)),
            Line(centre=progress(setting, "progress", panel.width // 2, thick, count), lead=2 * lead),
        ]
    else:
        lines = [
            Line(
                left=setting.label("heading", text, "text", "quiet"),
                right=setting.field("step", text, "text", "quiet", "right"), stretch=0, apart=text.cap,
            ),
            Line(full=partial(setting.rule, "line"), lead=max(2, text.lead // 2), stretch=0),
            Line(left=setting.field("title", heavy, "heading"), lead=text.lead),
            *(Line(left=one, lead=text.lead if n == 0 else lead, stretch=0) for n, one in enumerate(running)),
            Line(full=lambda room: progress(setting, "progress", room, thick, count), lead=2 * lead, stretch=2),
        ]  # fmt: skip
    setting.screen("step", setting.stack(lines, tail=int(glass.round)))
    return setting
