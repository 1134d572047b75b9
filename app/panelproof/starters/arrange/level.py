"""A level bar with limits: a heading, the value, and the bar with its limits' words."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from panelproof.layout.panel import Panel
from panelproof.starters.arrange.reading import suits
from panelproof.starters.bar import lying, upright
from panelproof.starters.description import Description
from panelproof.starters.face import PLAIN, READINGS, Face, heavier, icon_size
from panelproof.starters.piece import Line, NoRoom, joined
from panelproof.starters.setting import Setting


def attempts(panel: Panel, plan: Description) -> Iterator[Callable[[], Setting]]:
    """Yield the largest reading first; the bar stands upright where the panel is high."""
    for reading in READINGS:
        for text in PLAIN:
            if suits(text, reading, panel):
                for wording in range(2):
                    make = _upright if panel.height * 3 > panel.width * 4 else _lying
                    yield partial(make, panel, plan, reading, text, wording)


def _header(setting: Setting, text: Face) -> list[Line]:
    heading = setting.label("heading", heavier(text), "heading")
    radio = setting.icon("radio", icon_size(text), text)
    if setting.glass.round:
        return [Line(centre=joined(heading, radio, gap=text.cap))]
    return [
        Line(left=heading, right=radio, stretch=0, apart=text.cap // 2),
        Line(full=partial(setting.rule, "line"), lead=max(2, text.lead // 2), stretch=0),
    ]


def _lying(panel: Panel, plan: Description, reading: Face, text: Face, wording: int) -> Setting:
    setting = Setting(panel, plan, wording)
    lead = max(text.lead, reading.cap // 4)
    value = setting.measured("level", reading, text, "text")
    high = max(9, panel.height // 9)
    lines = [*_header(setting, text), Line(centre=value, lead=lead)]
    if setting.glass.round:
        lines.append(Line(centre=lying(setting, "bar", text, panel.width * 3 // 5, high), lead=lead))
    else:
        lines.append(Line(full=lambda width: lying(setting, "bar", text, width, high), lead=lead))
    setting.screen("level", setting.stack(lines, tail=2 * setting.glass.round))
    return setting


def _upright(panel: Panel, plan: Description, reading: Face, text: Face, wording: int) -> Setting:
    setting = Setting(panel, plan, wording)
    glass = setting.glass
    head = _header(setting, text)
    used = sum(line.lead + line.above + line.below for line in head)
    top = glass.top + used + text.lead
    wide = panel.width // 4
    bar = upright(setting, "bar", text, wide, glass.bottom - top)
    value = setting.measured("level", reading, text, "text")
    left, right = glass.band(glass.top, glass.bottom)
    # The value stands between the heights of the limits, so their words are not in its way.
    room = right - left - wide - text.cap
    label = setting.label("level-label", text, "text", "quiet", text=setting.word("level"))
    if max(value.width, label.width) > room:
        raise NoRoom
    parts = setting.stack(head, bottom=top)
    middle = (top + glass.bottom + reading.cap) // 2
    parts += label.make(left, middle - value.above - text.lead - label.below)
    parts += value.make(left, middle)
    parts += bar.make(right - bar.width, glass.bottom)
    setting.screen("level", parts)
    return setting
