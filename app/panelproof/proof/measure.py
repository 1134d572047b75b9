"""Figures of each field: its extremes, and the room it needs and has; and of each meter: what a pixel stands for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from panelproof.glyphs.run import placed
from panelproof.ink.mask import Area
from panelproof.ink.repaint import text_ink
from panelproof.layout import level
from panelproof.layout.parts import Field, Meter
from panelproof.material import Material
from panelproof.proof.characters import alphabet, height, pitch_mm
from panelproof.proof.extent import Stage, stage
from panelproof.proof.text_bytes import needed
from panelproof.sight.arc import farthest


@dataclass(frozen=True, slots=True)
class Extreme:
    """A text and its measure in pixels."""

    text: str
    pixels: int


@dataclass(frozen=True, slots=True)
class Measure:
    """One field in figures, all in panel pixels.

    `ink` is the smallest rectangle that holds every pixel some text inks, which is also the least padding box;
    `spare` the pixels left between it and the padding box at the left, top, right and bottom (negative where ink is
    cut off; None without a padding box). `texts` counts the content. `height` is that of the figures and capitals, or
    of the small letters where there are none (None: neither); from `readable_mm` millimetres it can still be read, at 16
    minutes of arc (None where the panel's size is not given).
    """

    screen: str
    field: str
    texts: int
    longest: Extreme
    shortest: Extreme
    tallest: Extreme
    ink: Area
    padding: Area | None
    spare: tuple[int, int, int, int] | None
    bytes: int
    bytes_text: str
    missing: tuple[str, ...]
    height: int | None
    readable_mm: float | None


@dataclass(frozen=True, slots=True)
class Reached:
    """A limit of a meter: its value, and the pixel of the length, from 0, that its mark stands on or would."""

    at: int
    pixel: int


@dataclass(frozen=True, slots=True)
class MeterMeasure:
    """One meter in figures: its rectangle, its length in pixels, and how much of its range one pixel stands for."""

    screen: str
    meter: str
    least: int
    greatest: int
    area: Area
    length: int
    per_pixel: float
    limits: tuple[Reached, ...]


def meter_measures(material: Material) -> Iterator[MeterMeasure]:
    """Yield the figures of every meter of a layout."""
    for screen in material.layout.screens:
        for part in screen.parts:
            if not isinstance(part, Meter):
                continue
            length = level.length(part)
            yield MeterMeasure(
                screen=screen.name,
                meter=part.name,
                least=part.least,
                greatest=part.greatest,
                area=(part.x, part.y, part.width, part.height),
                length=length,
                per_pixel=(part.greatest - part.least) / length,
                limits=tuple(Reached(limit.at, level.mark_place(part, limit.at)) for limit in part.limits),
            )


def measures(material: Material) -> Iterator[Measure]:
    """Yield the figures of every field of a layout."""
    for screen in material.layout.screens:
        yield from of_stage(stage(material, screen))


def of_stage(stage_: Stage) -> Iterator[Measure]:
    """Yield the figures of every field of a screen."""
    for extent in stage_.extents:
        part, print_ = extent.part, extent.footprint
        if not isinstance(part, Field) or print_ is None:
            continue
        ink = extent.reach.bounds()
        size, text = needed(part.content)
        high, pitch = height(print_.type, alphabet(print_.graph)), pitch_mm(stage_.material.layout.panel)
        yield Measure(
            screen=stage_.screen.name,
            field=part.name,
            texts=print_.graph.count(),
            longest=Extreme(print_.longest, placed(print_.type, print_.longest)[1]),
            shortest=Extreme(print_.shortest, placed(print_.type, print_.shortest)[1]),
            tallest=Extreme(print_.tallest, text_ink(print_, print_.tallest).bounds()[3]),
            ink=ink,
            padding=part.padding,
            spare=_spare(ink, part.padding),
            bytes=size,
            bytes_text=text,
            missing=print_.missing,
            height=high.pixels if high else None,
            readable_mm=round(farthest(high.pixels * pitch), 1) if high and pitch else None,
        )


def _spare(ink: Area, padding: Area | None) -> tuple[int, int, int, int] | None:
    if padding is None:
        return None
    x, y, width, height = ink
    left, top, padding_width, padding_height = padding
    return x - left, y - top, left + padding_width - x - width, top + padding_height - y - height
