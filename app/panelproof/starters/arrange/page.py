"""A long text: a heading, the time of the news, and lines broken to the width of the glass."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from panelproof.layout.panel import Panel
from panelproof.starters.description import Description
from panelproof.starters.face import PLAIN, Face, heavier
from panelproof.starters.piece import Line
from panelproof.starters.setting import Setting

GREATEST_CAP = 16
"""Running text larger than this makes lines of too few words."""


def attempts(panel: Panel, plan: Description) -> Iterator[Callable[[], Setting]]:
    """Yield the largest text first."""
    for text in PLAIN:
        if text.cap <= GREATEST_CAP:
            for wording in range(2):
                yield partial(_set, panel, plan, text, wording)


def _set(panel: Panel, plan: Description, text: Face, wording: int) -> Setting:
    setting = Setting(panel, plan, wording)
    lead = max(3, text.cap // 2)
    width = panel.width - 2 * setting.glass.margin
    lines = [
        Line(
            left=setting.label("heading", heavier(text), "heading", "accent"),
            right=setting.field("updated", text, "text", "quiet", "right"), stretch=0, apart=text.cap,
        ),
        Line(full=partial(setting.rule, "line"), lead=lead, stretch=0),
    ]  # fmt: skip
    running = setting.wrapped("notice", plan.notices, text, width=width, most=40)
    lines += [
        Line(left=one, lead=lead + 2 if n == 0 else lead, stretch=0, least_above=text.cap)
        for n, one in enumerate(running)
    ]
    setting.screen("notice", setting.stack(lines, tail=1))
    return setting
