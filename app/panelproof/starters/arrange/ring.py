"""Round status: one reading in the middle, and a ring of states around it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from math import cos, pi, sin

from panelproof.layout.panel import Panel
from panelproof.layout.parts import Part
from panelproof.starters.description import Description
from panelproof.starters.face import PLAIN, READINGS, Face, heavier
from panelproof.starters.piece import Line, NoRoom
from panelproof.starters.setting import Setting

WIDEST_SHARE = 72
"""How much of the glass's width the reading may take, in hundredths, so that the ring stays a ring."""


def attempts(panel: Panel, plan: Description) -> Iterator[Callable[[], Setting]]:
    """Yield the largest reading first, then the largest other text."""
    for reading in READINGS:
        for text in PLAIN:
            if text.cap * 13 > max(panel.width, 91) or text.cap * 2 > max(reading.cap, 14):
                continue
            yield partial(_set, panel, plan, reading, text)


def _set(panel: Panel, plan: Description, reading: Face, text: Face) -> Setting:
    setting = Setting(panel, plan)
    size = 48 if panel.width >= 400 else 24 if panel.width >= 220 else 16
    lead = max(text.lead, reading.cap // 3)
    value = setting.measured("temperature", reading, text, "accent")
    if value.width * 100 > panel.width * WIDEST_SHARE:
        raise NoRoom
    lines = [
        Line(centre=setting.label("heading", heavier(text), "heading"), stretch=0),
        Line(centre=value, lead=lead, stretch=0),
        Line(centre=setting.field("phase", text, "text", "text", "centre"), lead=lead, stretch=0),
    ]
    # In the middle of the glass by the reading, whatever stands above and below it.
    half = reading.cap // 2
    top = panel.height // 2 - half - lead - lines[0].above - lines[0].below
    ring = _ring(setting, size)
    setting.screen("status", [*setting.stack(lines, top=top, bottom=panel.height), *ring])
    return setting


def _ring(setting: Setting, size: int) -> list[Part]:
    """Return the icons evenly around the rim, the first at the top, each centre as far from the middle."""
    panel, names = setting.panel, list(setting.plan.icons)
    radius = panel.width / 2 - setting.glass.margin - size * 0.62
    parts: list[Part] = []
    for number, name in enumerate(names):
        angle = 2 * pi * number / len(names) - pi / 2
        x = round(panel.width / 2 + radius * cos(angle) - size / 2)
        y = round(panel.height / 2 + radius * sin(angle) - size / 2)
        parts += setting.icon(name, size).make(x, y + size)
    return parts
