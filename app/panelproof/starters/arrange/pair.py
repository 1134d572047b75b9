"""Two readings and two links: a header with the links' icons, and the readings beside or below each other."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from panelproof.layout.panel import Panel
from panelproof.starters.arrange.reading import suits
from panelproof.starters.description import Description
from panelproof.starters.face import PLAIN, READINGS, Face, heavier, icon_size
from panelproof.starters.glass import Glass
from panelproof.starters.piece import Line, Piece, cell, joined, stacked
from panelproof.starters.setting import Setting

NAMES = ("level", "water")
LINKS = ("radio", "server")


def attempts(panel: Panel, plan: Description) -> Iterator[Callable[[], Setting]]:
    """Yield the largest readings first, beside each other first where the panel is wide."""
    glass = Glass(panel)
    for heading in (True, False):
        for reading in READINGS:
            for text in PLAIN:
                if not _suits(text, reading, panel, heading):
                    continue
                for beside in (glass.across, not glass.across):
                    if glass.across and not beside and text.cap * 14 < min(panel.width, panel.height):
                        continue
                    for wording in range(2):
                        yield partial(
                            _set, panel, plan, reading, text, beside=beside, wording=wording, heading=heading
                        )
        if not glass.round:
            return


def _suits(text: Face, reading: Face, panel: Panel, heading: bool) -> bool:
    """Tell whether a text goes with a reading; on round glass a heading must not make it tiny."""
    if panel.shape == "round" and heading and text.cap * 24 < panel.width:
        return False
    small = text.cap * 3 <= max(reading.cap * 2, 21) and text.cap * 9 <= max(
        min(panel.width, panel.height), 63
    )
    return suits(text, reading, panel) or (small and reading.cap < 30)


def header(setting: Setting, text: Face, titled: bool) -> list[Line]:
    """Return a heading with the links' icons, and a line under it; on round glass in the middle."""
    size = icon_size(text)
    links = joined(*(setting.icon(name, size, text) for name in LINKS), gap=size // 3)
    if not titled:
        return [Line(centre=links)]
    heading = setting.label("heading", heavier(text), "heading")
    if setting.glass.round:
        return [Line(centre=links), Line(centre=heading, lead=text.lead)]
    return [
        Line(left=heading, right=links, stretch=0, apart=text.cap // 2),
        Line(full=partial(setting.rule, "line"), lead=max(2, text.lead // 2), stretch=0),
    ]


def _set(
    panel: Panel, plan: Description, reading: Face, text: Face, *, beside: bool, wording: int, heading: bool
) -> Setting:
    setting = Setting(panel, plan, wording)
    glass = setting.glass
    room = max(text.lead * 2 // 3, 2)
    lead = max(text.lead, reading.cap // 4)
    gap = max(2 * glass.margin, text.cap) * 3 // 4
    labels = [
        setting.label(f"{name}-label", text, "text", "quiet", text=setting.word(name)) for name in NAMES
    ]
    values = setting.values(NAMES, reading, text, ("accent", "text"), in_line=not beside)

    def cells(width: int) -> Piece:
        each = (width - 1) // 2 - gap
        left, right = (cell(label, value, each, room) for label, value in zip(labels, values, strict=True))
        return joined(left, setting.upright("divider", left.above + left.below, left.below), right, gap=gap)

    lines = header(setting, text, heading)
    if glass.round:
        blocks = [stacked(label, value, room) for label, value in zip(labels, values, strict=True)]
        if beside:
            lines.append(Line(centre=joined(*blocks, gap=3 * gap), lead=lead))
        else:
            lines += [Line(centre=one, lead=lead) for one in blocks]
    elif beside:
        lines.append(Line(full=cells, lead=lead))
    else:
        lines += [
            Line(full=partial(cell, label, value, gap=room), lead=lead)
            for label, value in zip(labels, values, strict=True)
        ]
    setting.screen("readings", setting.stack(lines, tail=1))
    return setting
