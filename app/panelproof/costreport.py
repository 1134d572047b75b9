"""What a layout costs, as a person or a program reads it."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import asdict
from typing import Any

from panelproof.firmware.cost import Costs
from panelproof.proof.words import grouped


def as_json(found: Costs) -> str:
    """Return a layout's costs as JSON."""
    held: dict[str, Any] = asdict(found)
    for one, entry in zip(found.memories, held["memories"], strict=True):
        entry |= {"flash": one.flash, "ram": one.ram}
    return json.dumps(held, ensure_ascii=False, indent=2)


def as_text(found: Costs) -> str:
    """Return a layout's costs for a person: three tables."""
    from tabulate import tabulate  # noqa: PLC0415

    def table(rows: Sequence[Sequence[str]], headers: Sequence[str]) -> str:
        align = ["left"] + ["right"] * (len(headers) - 1)
        made: str = tabulate(rows, headers, tablefmt="simple", disable_numparse=True, colalign=align)
        return made

    updates: list[tuple[str, ...]] = [
        (
            f"{one.screen} / {one.part}", grouped(one.sent.windows), grouped(one.sent.bytes), _ms(one.sent.ms),
            grouped(one.change.bytes), _ms(one.change.ms), grouped(one.least.bytes),
            *((grouped(one.step.bytes), _ms(one.step.ms), grouped(one.step_least.bytes)) if one.step and one.step_least
              else ("", "", "")),
        )
        for one in found.updates
    ]  # fmt: skip
    changes: list[tuple[str, ...]] = [
        (one.screen, grouped(one.sent.windows), grouped(one.sent.bytes), _ms(one.sent.ms), grouped(one.least.bytes),
         _ms(one.least.ms))
        for one in found.changes
    ]  # fmt: skip
    memories: list[tuple[str, ...]] = [
        (one.title, *map(grouped, (one.bitmaps, one.tables, one.strings, one.drawing, one.texts, one.flash)),
         *map(grouped, (one.buffers, one.frame, one.copies, one.stack, one.ram)))
        for one in found.memories
    ]  # fmt: skip
    headers: tuple[str, ...]
    blocks = [
        f"On the bus ({found.bus}), each at worst: an update of the whole part; a change by what differs; one window and\n"
        "the pixels that change, which no code could do with less; and the same for one step of a number"
    ]
    if updates:
        headers = ("part", "windows", "update", "ms", "change", "ms", "least", "step", "ms", "least")
        blocks.append(table(updates, headers))
    if changes:
        headers = ("drawing the screen", "windows", "bytes", "ms", "each pixel once", "ms")
        blocks.append(table(changes, headers))
    if memories:
        blocks.append(
            "Bytes of memory; code is estimated from compiled headers, the C library's printf is not counted"
        )
        headers = (
            "processor", "bitmaps", "tables", "strings", "drawing", "texts", "flash", "buffers", "frame", "copies",
            "stack", "RAM",
        )  # fmt: skip
        blocks.append(table(memories, headers))
    return "\n\n".join(blocks)


def _ms(ms: float | None) -> str:
    return "" if ms is None else f"{ms:.2f}"
