"""Bars: levels with limits, and steps."""

from __future__ import annotations

from panelproof.layout.parts import Box, Growing, Icon, IconState, Meter, MeterLimit, Part
from panelproof.starters.face import Face
from panelproof.starters.piece import NoRoom, Piece
from panelproof.starters.setting import Setting

FRAME = 3
"""From the outer edge of a level bar's frame to the bar: one pixel of line, two free."""


def lying(setting: Setting, name: str, small: Face, width: int, height: int) -> Piece:
    """Return a level bar that grows to the right, framed, with the words of its limits under their marks."""
    plan = setting.plan.levels[name]
    inner = width - 2 * FRAME
    labels = _limit_labels(setting, name, small)
    room = small.lead // 2 + 2
    below = max((room + label.above + label.below for _, label in labels), default=0)

    def make(left: int, baseline: int) -> tuple[Part, ...]:
        top = baseline - height
        parts = _framed(setting, name, (left, top), (width, height), "right")
        edge = left
        for share, label in labels:
            at = min(left + FRAME + int(share * inner) - label.width // 2, left + width - label.width)
            if at < edge:
                raise NoRoom
            edge = at + label.width + small.cap // 2
            parts += label.make(at, baseline + room + label.above)
        return tuple(parts)

    if inner < 8 or height < 2 * FRAME + 2 or plan.greatest <= plan.least:
        raise NoRoom
    return Piece(width, height, below, make)


def upright(setting: Setting, name: str, small: Face, width: int, height: int) -> Piece:
    """Return a level bar that grows upwards, framed, with the words of its limits at the left of their marks."""
    labels = _limit_labels(setting, name, small)
    gap = max(3, small.cap // 2)
    beside = max((label.width + gap for _, label in labels), default=0)

    def make(left: int, baseline: int) -> tuple[Part, ...]:
        top = baseline - height
        parts = _framed(setting, name, (left + beside, top), (width, height), "up")
        inner = height - 2 * FRAME
        for share, label in labels:
            at = baseline - FRAME - int(share * inner) + label.above // 2
            parts += label.make(left + beside - gap - label.width, max(at, top + label.above))
        return tuple(parts)

    return Piece(beside + width, height, 0, make)


def _framed(
    setting: Setting, name: str, place: tuple[int, int], size: tuple[int, int], direction: Growing
) -> list[Part]:
    plan, ink = setting.plan.levels[name], setting.theme.name
    (left, top), (width, height) = place, size
    limits = tuple(MeterLimit(one.at, one.ink and ink(one.ink), one.mark) for one in plan.limits)
    return [
        Box(f"{name}-frame", left, top, width, height, outline=ink("line")),
        Meter(
            name, left + FRAME, top + FRAME, width - 2 * FRAME, height - 2 * FRAME, plan.least,
            plan.greatest, ink("alarm"), direction, limits, period_ms=plan.period_ms,
        ),
    ]  # fmt: skip


def _limit_labels(setting: Setting, name: str, small: Face) -> list[tuple[float, Piece]]:
    """Return the words of a bar's limits, each with its share of the bar's length."""
    plan = setting.plan.levels[name]
    return [
        (
            (limit.at - plan.least) / (plan.greatest - plan.least),
            setting.label(limit.word, small, "text", "quiet"),
        )
        for limit in plan.limits
    ]


def progress(setting: Setting, name: str, width: int, height: int, steps: int) -> Piece:
    """Return a bar of one box a step, as an icon whose states fill one box more each, named step-1 and so on."""
    gap = max(2, height // 2)
    room = (width - gap * (steps - 1)) // steps
    if room < 4:
        raise NoRoom
    hollow = ["#" * room, *["#" + "." * (room - 2) + "#"] * (height - 2), "#" * room]
    states = tuple(
        IconState(
            f"step-{done}",
            tuple(("." * gap).join(["#" * room] * done + [row] * (steps - done)) for row in hollow),
        )
        for done in range(1, steps + 1)
    )
    whole, ink = room * steps + gap * (steps - 1), setting.theme.name("accent")

    def make(left: int, baseline: int) -> tuple[Part, ...]:
        return (Icon(name, left + (width - whole) // 2, baseline - height, ink, states),)

    return Piece(width, height, 0, make)
