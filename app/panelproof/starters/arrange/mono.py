"""Small and monochrome: an inverted bar with the links, one reading, and two more beside it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box
from panelproof.starters.description import Description
from panelproof.starters.face import BOLD, PLAIN, READINGS, Face, icon_size
from panelproof.starters.piece import Line, joined
from panelproof.starters.setting import Setting

LINKS = ("radio", "server")
FACTS = ("water", "use")


def attempts(panel: Panel, plan: Description) -> Iterator[Callable[[], Setting]]:
    """Yield the largest reading first, with the larger text."""
    for reading in READINGS:
        for text in PLAIN[-2:]:
            for wording in range(2):
                yield partial(_set, panel, plan, reading, text, wording)


def _set(panel: Panel, plan: Description, reading: Face, text: Face, wording: int) -> Setting:
    setting = Setting(panel, plan, wording)
    glass, heavy = setting.glass, BOLD[-1]
    size = icon_size(text)
    bar = size + 2
    ink = setting.theme.name("text")
    heading = setting.label("heading", heavy, "heading", "ground", on="text")
    links = joined(*(setting.icon(name, size, heavy, on="text") for name in LINKS), gap=4)
    head = Line(left=heading, right=links, stretch=0)
    baseline = (bar + heavy.cap) // 2
    parts = [
        Box("bar", 0, 0, panel.width, bar, fill=ink),
        *head.parts(glass.margin, panel.width - glass.margin, baseline),
    ]
    label = setting.label("level-label", text, "text", "quiet", text=setting.word("level"))
    value = setting.measured("level", reading, PLAIN[-2])
    first, second = (line.centre for line in setting.table(FACTS, text, text, centred=True))
    lines = [
        Line(left=label, right=first, lead=2),
        Line(left=value, right=second, lead=3, apart=2 * glass.margin),
    ]
    edges = glass.margin, panel.width - glass.margin
    setting.screen("readings", [*parts, *setting.stack(lines, top=bar, tail=1, edges=edges)])
    return setting
