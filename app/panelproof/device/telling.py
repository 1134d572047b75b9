"""What a comparison found, as a person or a program reads it."""

from __future__ import annotations

import json
from collections.abc import Iterable

from panelproof.device.outcome import Cause, Outcome, PartOutcome
from panelproof.proof.words import box, counted, grouped


def as_json(names: dict[str, str], outcome: Outcome) -> str:
    """Return the outcome as one line of JSON; `names` says what was compared."""
    return json.dumps(
        {
            **names,
            "same": outcome.same,
            "differing_pixels": outcome.wrong,
            "visible_pixels": outcome.seen,
            "causes": _causes(outcome.causes),
            "unexplained_pixels": outcome.left,
            "unexplained_area": list(outcome.left_area) if outcome.left_area else None,
            "parts": [
                {
                    "part": part.name,
                    "kind": part.kind,
                    "same": part.same,
                    "differing_pixels": part.wrong,
                    "area": list(part.area) if part.area else None,
                    "causes": _causes(part.causes),
                }
                for part in outcome.parts
            ],
        },
        ensure_ascii=False,
    )


def _causes(causes: Iterable[Cause]) -> list[dict[str, object]]:
    return [{"words": cause.words, "explains": round(cause.explains, 4)} for cause in causes]


def as_text(shown: str, capture: str, outcome: Outcome) -> str:
    """Return the outcome in lines; `shown` names the moment, `capture` the file."""
    if outcome.same:
        return f"{capture}: the same as {shown}: {counted(len(outcome.parts), 'part')}, {grouped(outcome.seen)} pixels"
    lines = [f"{capture}: not {shown}: {grouped(outcome.wrong)} of {grouped(outcome.seen)} pixels differ"]
    lines += [f"  whole picture: {cause.words}{_share(cause)}" for cause in outcome.causes]
    settled = bool(outcome.causes) and not outcome.left
    undone = any(cause.explains > 0 for cause in outcome.causes)
    told = [part for part in outcome.parts if not part.same and (part.causes or not undone)]
    if outcome.causes and outcome.causes[0].explains == 0:
        told = []
    for part in told:
        lines.append(f"  differs: {part_words(part)}")
    if settled and not told:
        lines.append("  apart from that every part is right")
    elif told:
        lines.append(_same(outcome, undone))
    if outcome.left and outcome.left_area and not (outcome.causes and outcome.causes[0].explains == 0):
        lines.append(f"  no cause found for {counted(outcome.left, 'pixel')} within {box(outcome.left_area)}")
    return "\n".join(lines)


def _same(outcome: Outcome, undone: bool) -> str:
    right = [part.name for part in outcome.parts if part.same or (undone and not part.causes)]
    return f"  right{' apart from that' if undone else ''}: {', '.join(right) or 'no part'}"


def part_words(part: PartOutcome) -> str:
    """Return what is wrong with one part, in one line."""
    where = f", {counted(part.wrong, 'pixel')} within {box(part.area)}" if part.area else ""
    why = "; ".join(f"{cause.words}{_share(cause)}" for cause in part.causes) or "no cause found"
    return f"{part.name} ({part.kind}{where}): {why}"


def _share(cause: Cause) -> str:
    if cause.explains == 0:
        return ""
    # Never 100 where something is left over.
    return "" if cause.explains == 1 else f" (explains {min(99, int(100 * cause.explains))} %)"
