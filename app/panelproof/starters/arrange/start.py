"""Start-up and messages: who I am and what I am doing, and what a person should know or do."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from panelproof.layout.panel import Panel
from panelproof.starters.description import Description
from panelproof.starters.face import BOLD, PLAIN, Face, heavier, icon_size
from panelproof.starters.piece import Line, NoRoom, joined
from panelproof.starters.setting import Setting

GREATEST_CAP = 22
"""Running text larger than this makes lines of too few words."""


def attempts(panel: Panel, plan: Description) -> Iterator[Callable[[], Setting]]:
    """Yield the largest text first, then the largest title."""
    shorter = max(min(panel.width, panel.height), 63)
    for text in PLAIN:
        if text.cap > min(shorter // (12 if shorter >= 200 else 9), GREATEST_CAP):
            continue
        for title in (*BOLD, PLAIN[-1]):
            if title.cap * 2 < text.cap * 3 and title.cap > 8:
                continue
            for wording in range(2):
                yield partial(_set, panel, plan, title, text, wording)


def _set(panel: Panel, plan: Description, title: Face, text: Face, wording: int) -> Setting:
    setting = Setting(panel, plan, wording)
    _start(setting, title, text)
    _message(setting, text)
    return setting


def _start(setting: Setting, title: Face, text: Face) -> None:
    lead = text.lead
    lines = [
        Line(centre=setting.label("name", title, "title"), stretch=2),
        Line(centre=setting.label("version", text, "text", "quiet"), lead=lead, stretch=0),
        Line(centre=setting.rule("line", setting.panel.width // 3), lead=lead, stretch=1),
        Line(centre=setting.field("doing", text, "text", "accent", "centre"), lead=lead, stretch=1),
    ]
    setting.screen("start", setting.stack(lines, tail=2))


def _message(setting: Setting, text: Face) -> None:
    glass = setting.glass
    heavy = heavier(text)
    sign = setting.icon("sign", icon_size(text), heavy)
    if glass.round:
        subject = setting.field("subject", heavy, "heading", "text", "centre")
        head = [Line(centre=sign), Line(centre=subject, lead=text.lead, stretch=0)]
    else:
        subject = setting.field("subject", heavy, "heading")
        head = [
            Line(left=joined(sign, subject, gap=text.cap * 2 // 3), stretch=0),
            Line(full=partial(setting.rule, "line"), lead=max(2, text.lead // 2), stretch=0),
        ]
    room = setting.panel.width * 3 // 5 if glass.round else setting.panel.width - 2 * glass.margin
    hint = setting.roomy("hint", text, "quiet", room)
    lead = max(text.lead * 3 // 4, 2)
    foot = Line(centre=hint, lead=lead) if glass.round else Line(right=hint, lead=lead)
    # A text that is broken narrower takes more lines: the widest that goes.
    for share in (100, 90, 80, 70, 60):
        width = (setting.panel.width - 2 * glass.margin) * share // 100
        try:
            running = setting.wrapped(
                "advice",
                setting.plan.notices,
                text,
                width=width,
                most=9,
                align="centre" if glass.round else "left",
            )
            lines = [
                Line(centre=one, lead=lead, stretch=int(n == 0)) if glass.round
                else Line(left=one, lead=lead, stretch=int(n == 0))
                for n, one in enumerate(running)
            ]  # fmt: skip
            setting.screen("message", setting.stack([*head, *lines, foot], tail=int(glass.round)))
        except NoRoom:
            continue
        return
    raise NoRoom
