"""One big reading: a heading, the value with its unit, and under a line what else there is room for."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from panelproof.layout.panel import Panel
from panelproof.starters.description import Description
from panelproof.starters.face import PLAIN, READINGS, Face, heavier
from panelproof.starters.piece import Line
from panelproof.starters.setting import Setting

FACTS = ("target", "highest", "rate", "room")
# Long words before short ones, but short ones with a fact before long ones with none.
ORDER = tuple(
    (wording, facts) for least in (1, 0) for wording in (0, 1) for facts in range(4 * least, least - 1, -1)
)


def attempts(panel: Panel, plan: Description) -> Iterator[Callable[[], Setting]]:
    """Yield the largest reading first, with the largest other text, and as many facts as go with it."""
    for reading in READINGS:
        for text in PLAIN:
            if not suits(text, reading, panel):
                continue
            for wording, facts in ORDER:
                yield partial(_set, panel, plan, reading, text, facts=facts, wording=wording)


def suits(text: Face, reading: Face, panel: Panel) -> bool:
    """Tell whether a text is well below a reading in size but not lost beside it, and not too large for the panel."""
    shorter = min(panel.width, panel.height)
    share = 12 if shorter >= 200 else 9
    small = text.cap * share <= max(shorter, 63) and text.cap * 2 <= max(reading.cap, 14)
    return small and reading.cap <= text.cap * 4 + 2


def _set(panel: Panel, plan: Description, reading: Face, text: Face, *, facts: int, wording: int) -> Setting:
    setting = Setting(panel, plan, wording)
    glass = setting.glass
    lead = text.lead
    heading = setting.label("heading", heavier(text), "heading")
    value = setting.measured("temperature", reading, text, "accent")
    head = Line(centre=heading) if glass.round else Line(left=heading, stretch=0)
    lines = [head, Line(centre=value, lead=max(lead, reading.cap // 4))]
    if facts and glass.round:
        lines.append(Line(centre=setting.rule("line", panel.width // 2), lead=lead))
    elif facts:
        lines.append(Line(full=partial(setting.rule, "line"), lead=max(lead, reading.cap // 4)))
    lines += setting.table(FACTS[:facts], text, text, centred=glass.round, lead=lead)
    setting.screen("reading", setting.stack(lines, tail=1 if glass.round or not facts else 0))
    return setting
