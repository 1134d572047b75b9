"""Four readings in a table: words at the left, digits in line, units in line."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from panelproof.layout.panel import Panel
from panelproof.starters.description import Description
from panelproof.starters.face import PLAIN, READINGS, Face, heavier
from panelproof.starters.piece import Line
from panelproof.starters.setting import Setting

ROWS = ("voltage", "current", "power", "heat-sink")


def attempts(panel: Panel, plan: Description) -> Iterator[Callable[[], Setting]]:
    """Yield the largest digits first, with a heading where it goes."""
    shorter = min(panel.width, panel.height)
    least = shorter // (14 if panel.shape == "round" else 9)
    for heading in (True, False):
        for number in READINGS:
            if heading and number.cap < least:
                continue
            for text in PLAIN:
                if number.cap * 2 > text.cap * 5 or text.cap > min(number.cap, max(shorter, 63) // 9):
                    continue
                for wording in range(2):
                    yield partial(_set, panel, plan, number, text, heading=heading, wording=wording)


def _set(
    panel: Panel, plan: Description, number: Face, text: Face, *, heading: bool, wording: int
) -> Setting:
    setting = Setting(panel, plan, wording)
    centred = setting.glass.round
    lead = max(2, number.cap // 3)
    lines: list[Line] = []
    if heading:
        title = setting.label("heading", heavier(text), "heading")
        output = setting.field("output", text, "text", "accent", "centre" if centred else "right")
        if centred:
            lines = [Line(centre=title), Line(centre=output, lead=text.lead)]
        else:
            lines = [
                Line(left=title, right=output, stretch=0, apart=text.cap // 2),
                Line(full=partial(setting.rule, "line"), lead=max(2, text.lead // 2), stretch=0),
            ]
    lines += setting.table(ROWS, number, text, centred=centred, stretch=1, lead=lead)
    setting.screen("readings", setting.stack(lines, tail=1))
    return setting
