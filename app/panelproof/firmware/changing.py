"""What the drawing code sends when it brings a part up to date by what differs, step by step as it goes.

It takes the columns in strips, and in each strip the rows that differ in bands: a row joins the band over it where
one window for both takes no more than two (`templates/changes.c`).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from panelproof.firmware.bus import Traffic, pixel_bits, window
from panelproof.firmware.data import STRIP, WINDOW_BITS, changes_by_parts
from panelproof.firmware.glyphdata import type_glyphs
from panelproof.glyphs.run import placed
from panelproof.glyphs.type import Type
from panelproof.ink.anchor import start
from panelproof.ink.mask import Area
from panelproof.layout import level
from panelproof.layout.parts import Field, Icon, Meter
from panelproof.material import Material
from panelproof.picture.bitmap import Bitmap, of_mask, of_text
from panelproof.picture.drawing import common, padding_of, panel_area, state_named


@dataclass(frozen=True, slots=True)
class _Standing:
    """A glyph, or an icon's state: what it is, its pen, the columns that it takes."""

    what: str
    pen: int
    begin: int
    end: int


def change(material: Material, part: Field | Icon, former: str, now: str) -> Traffic | None:
    """Return what is sent to show `now` where `former` is shown; None where the whole part is drawn anew."""
    if not changes_by_parts(part):
        return None
    panel = material.layout.panel
    bits = pixel_bits(panel)
    whole = panel_area(panel)
    if isinstance(part, Icon):
        inks = [state_named(part, name).ink or part.ink for name in (former, now)]
        if material.code(inks[0]) != material.code(inks[1]):
            return None
        area = common(padding_of(material, part), whole)
        if not (area[2] and area[3]):
            return Traffic()
        maps = [of_mask(material.bitmaps[state_named(part, name)]) for name in (former, now)]
        old, new = (one.spread(part.x, part.y, area) for one in maps)
        walks: list[tuple[_Standing, ...]] = [
            (_Standing(name, part.x, part.x, part.x + one.width),)
            for name, one in zip((former, now), maps, strict=True)
        ]
    else:
        area = common(part.padding or whole, whole)
        type_ = material.types[part.type]
        if not (area[2] and area[3]):
            return Traffic()  # nothing of it lies on the panel
        old, new = (_levels(part, of_text(type_, text), area) for text in (former, now))
        least_left = _least_left(material, part.type)
        walks = [tuple(_walk(part, type_, text, least_left)) for text in (former, now)]
    left, right = _differing(walks[0], walks[1])
    x, _, width, height = area
    left, right = max(left, x) - x, min(right, x + width) - x
    differing = [
        [a != b for a, b in zip(old[row : row + width], new[row : row + width], strict=True)]
        for row in range(0, width * height, width)
    ]
    total, cost = Traffic(), -(-WINDOW_BITS // bits)
    while left < right:
        until = min(left + STRIP, right)
        for area_of_band in _bands([row[left:until] for row in differing], cost):
            total += window(area_of_band, bits)
        left = until
    return total


def change_bar(material: Material, part: Meter, former: int | None, now: int | None) -> Traffic:
    """Return what is sent to show a value of a bar where another is shown: the stretch between, or from its beginning.

    All of it where one of them is no value of the range.
    """
    panel = material.layout.panel
    x, y, width, height = part.x, part.y, part.width, part.height
    low, high = 0, level.length(part)
    if former is not None and now is not None and level.can_show(part, former) and level.can_show(part, now):
        low, high = sorted((level.filled(part, former), level.filled(part, now)))
        if material.code(level.bar_ink(part, former)) != material.code(level.bar_ink(part, now)):
            low = 0
    elif not level.can_show(part, former) and not level.can_show(part, now):
        return Traffic()
    if part.direction in ("left", "up"):
        low, high = level.length(part) - high, level.length(part) - low
    lying = part.direction in ("left", "right")
    area = (x + low, y, high - low, height) if lying else (x, y + low, width, high - low)
    seen = common(area, panel_area(panel))
    return window(seen[2] * seen[3], pixel_bits(panel))


def _levels(part: Field, bitmap: Bitmap, area: Area) -> bytes:
    return bitmap.spread(part.x + start(part.align, bitmap.advance), part.baseline, area)


def _least_left(material: Material, name: str) -> int:
    """Return where the drawing code counts a type's columns from, in pixels off the pen."""
    parts = (part for screen in material.layout.screens for part in screen.parts)
    if any(isinstance(part, Field | Icon) and part.clearing == "cell" for part in parts):
        return 0
    one = next(one for one in type_glyphs(material) if one.spec.name == name)
    return min((glyph.left for _, glyph in one.glyphs if glyph.width and glyph.height), default=0)


def _walk(part: Field, type_: Type, text: str, least_left: int) -> Iterable[_Standing]:
    glyphs, advance = placed(type_, text)
    x = part.x + start(part.align, advance)
    shown = [char for char in text if type_.glyph(char) is not None]
    for char, (glyph, pen) in zip(shown, glyphs, strict=True):
        inked = bool(glyph.width and glyph.height)
        begin = x + pen + (glyph.left if inked else least_left)
        yield _Standing(char, x + pen, begin, begin + (glyph.width if inked else 0))


def _differing(former: tuple[_Standing, ...], now: tuple[_Standing, ...]) -> tuple[int, int]:
    """Return the columns around the glyphs that one text has and the other has not in that place."""
    left, right = 1 << 30, -(1 << 30)
    old, new = list(former), list(now)
    while old or new:
        if old and new and (old[0].what, old[0].pen) == (new[0].what, new[0].pen):
            del old[0], new[0]
            continue
        one = (old if old and (not new or old[0].pen <= new[0].pen) else new).pop(0)
        left, right = min(left, one.begin), max(right, one.end)
    return left, right


def _bands(rows: list[list[bool]], cost: int) -> Iterable[int]:
    """Yield the pixels of each window that a strip takes."""
    band: tuple[int, int, int, int] | None = None  # left, right, top, bottom
    for y, row in enumerate(rows):
        if not any(row):
            continue
        begin, end = row.index(True), len(row) - row[::-1].index(True)
        if band is not None:
            left, right, top, bottom = band
            least, most = min(begin, left), max(end, right)
            if (most - least) * (y + 1 - top) <= (right - left) * (bottom - top) + cost + end - begin:
                band = least, most, top, y + 1
                continue
            yield (right - left) * (bottom - top)
        band = begin, end, y, y + 1
    if band is not None:
        yield (band[1] - band[0]) * (band[3] - band[2])
