"""update-time, frame-time, flash, ram: what the layout says that the device can spare is enough.

Only what the layout limits is looked at. Times are those on the bus alone; the processor's own work comes on top.
Where flash or RAM is too little on some of the processors that there are figures of, those are named.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from panelproof.firmware import bus, cost
from panelproof.firmware.bus import pixel_bits, sent
from panelproof.firmware.cost import Memory, Shown
from panelproof.layout.document import Screen
from panelproof.layout.parts import Field, Meter
from panelproof.material import Material
from panelproof.picture.drawing import common, panel_area
from panelproof.problem import Problem
from panelproof.proof.extent import stage
from panelproof.proof.finding import Change, Finding, Remedy
from panelproof.proof.words import grouped, listed, quoted, repadded

NAMES = ("update-time", "frame-time", "flash", "ram")
UPDATE, FRAME, FLASH, RAM = NAMES


def findings(material: Material) -> Iterator[Finding]:
    """Yield each limit that is passed, with figures."""
    limits = material.layout.limits
    if limits is None:
        return
    if limits.update_ms is not None:
        yield from _times(material, limits.update_ms)
    if limits.flash_bytes is None and limits.ram_bytes is None:
        return
    try:
        memories = cost.memories(material)
    except Problem:
        # Without a header there is nothing to weigh; `export` tells why there is none.
        return
    for rule, most, taken in (
        (FLASH, limits.flash_bytes, lambda one: one.flash),
        (RAM, limits.ram_bytes, lambda one: one.ram),
    ):
        if most is not None:
            yield from _memory(rule, most, memories, taken)


def _memory(
    rule: str, most: int, memories: tuple[Memory, ...], taken: Callable[[Memory], int]
) -> Iterator[Finding]:
    over = [one for one in memories if taken(one) > most]
    if not over:
        return
    figures = listed([f"{grouped(taken(one))} on {one.title}" for one in over])
    worst = max(over, key=taken)
    parts = (
        f"bitmaps {grouped(worst.bitmaps)}, tables {grouped(worst.tables)}, code about "
        f"{grouped(worst.drawing + worst.texts)}, strings {grouped(worst.strings)}"
        if rule == FLASH
        else f"text buffers {grouped(worst.buffers)}, frame {grouped(worst.frame)}, formats {grouped(worst.copies)}, "
        f"stack {grouped(worst.stack)}"
    )
    word = "flash" if rule == FLASH else "RAM"
    yield Finding(
        rule,
        "caution",
        "",
        "",
        f"bytes of {word}: {figures}, and {grouped(most)} are allowed ({parts} on {worst.title})",
    )


def _times(material: Material, most: float) -> Iterator[Finding]:
    panel = material.layout.panel
    if panel.bus is None:
        yield Finding(
            UPDATE,
            "note",
            "",
            "",
            "how long updates take cannot be told: the panel says nothing of its `bus`",
        )
        return
    if panel.refresh == "whole":
        frame = sent(bus.window(panel.width * panel.height, pixel_bits(panel)), panel)
        if frame.ms is not None and frame.ms > most:
            yield Finding(
                FRAME, "caution", "", "",
                f"each update sends the whole frame, {grouped(frame.bytes)} bytes in {frame.ms:.1f} ms, and {most:g} ms "
                "are allowed",
            )  # fmt: skip
        return
    for screen in material.layout.screens:
        for part in screen.parts:
            if isinstance(part, Shown):
                yield from _time(material, screen, part, most)


def _time(material: Material, screen: Screen, part: Shown, most: float) -> Iterator[Finding]:
    shown, traffic = cost.worst(material, screen, part)
    panel = material.layout.panel
    taken = sent(traffic, panel)
    if taken.ms is None or taken.ms <= most:
        return
    area = common(cost.painted_area(material, part), panel_area(panel))
    windows = f" in {grouped(taken.windows)} windows" if taken.windows > 1 else ""
    yield Finding(
        UPDATE, "caution", screen.name, part.name,
        f"an update to {quoted(shown)} sends {grouped(taken.bytes)} bytes{windows} in {taken.ms:.1f} ms, and {most:g} ms "
        "are allowed",
        (shown,) if not isinstance(part, Meter) else (), 0, area, _quicker(material, screen, part, most),
    )  # fmt: skip


def _quicker(material: Material, screen: Screen, part: Shown, most: float) -> Remedy | None:
    """Return the least padding that clears, or clearing `pad`, where that takes no longer than is allowed."""
    if isinstance(part, Meter):
        return None
    panel = material.layout.panel
    extent = next(one for one in stage(material, screen).extents if one.part == part)
    needed = extent.reach.bounds()
    taken = sent(bus.window(needed[2] * needed[3], pixel_bits(panel)), panel)
    if taken.ms is None or taken.ms > most or common(needed, panel_area(panel)) != needed:
        return None
    changes = [Change(part.name, "padding", list(needed))]
    said = repadded(extent.padding, needed) if extent.padding else "the least padding box"
    if part.clearing != "pad":
        changes.insert(0, Change(part.name, "clearing", "pad"))
        said = "clearing `pad` with the least padding box"
    elif isinstance(part, Field) and part.padding == needed:
        return None
    return Remedy(f"{said}: {taken.ms:.1f} ms", tuple(changes))
