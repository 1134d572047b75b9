"""Drawing the slow way: every pixel asked for by itself, straight from the drawing rules.

Shares no code with `panelproof.picture`: glyphs come from the type, codes from `layout.colour`.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Protocol

from panelproof.glyphs.glyph import Glyph
from panelproof.layout import colour
from panelproof.layout.document import Screen
from panelproof.layout.parts import Box, Field, Icon, Label, Meter, Rule
from panelproof.layout.parts import Picture as PicturePart
from panelproof.material import Material

Pixel = tuple[int, int]
Picture = dict[Pixel, int]


class Typelike(Protocol):
    ascent: int
    descent: int
    antialiased: bool

    def glyph(self, char: str) -> Glyph | None: ...

    def kern(self, left: str, right: str) -> int: ...


def glyph_pixels(glyph: Glyph) -> Iterable[tuple[int, int, int]]:
    """Yield (column, row, level) of each pixel that has ink."""
    for row in range(glyph.height):
        for column in range(glyph.width):
            level = 15 * (glyph.rows[row] >> column & 1)
            if glyph.levels:
                level = glyph.levels[row * glyph.width + column]
            if level:
                yield column, row, level


def set_text(type_: Typelike, text: str) -> tuple[dict[Pixel, int], int]:
    """Return the levels of a text whose pen starts at (0, 0), and W."""
    levels: dict[Pixel, int] = {}
    pen = 0
    for number, char in enumerate(text):
        glyph = type_.glyph(char)
        if glyph is None:
            continue
        if number and type_.glyph(text[number - 1]) is not None:
            pen += type_.kern(text[number - 1], char)
        for column, row, level in glyph_pixels(glyph):
            at = pen + glyph.left + column, row - glyph.top
            levels[at] = max(levels.get(at, 0), level)
        pen += glyph.advance
    return levels, pen


def inside(pixel: Pixel, rectangle: tuple[int, int, int, int] | None) -> bool:
    if rectangle is None:
        return True
    x, y, width, height = rectangle
    return x <= pixel[0] < x + width and y <= pixel[1] < y + height


def everywhere(material: Material) -> list[Pixel]:
    panel = material.layout.panel
    return [(x, y) for y in range(panel.height) for x in range(panel.width)]


def code(material: Material, ink: str) -> int:
    by_name = {one.name: one.colour for one in material.layout.inks}
    return colour.quantise(colour.parse(by_name[ink]), material.layout.panel.colours)


def text_levels(material: Material, part: Label | Field, text: str) -> tuple[dict[Pixel, int], Pixel, int]:
    """Return the unclipped levels on the panel, where the text starts, and W."""
    levels, width = set_text(material.types[part.type], text)
    start = {"left": part.x, "right": part.x - width, "centre": part.x - (width // 2)}[part.align]
    return {(x + start, y + part.baseline): v for (x, y), v in levels.items()}, (start, part.baseline), width


def icon_levels(part: Icon, state: str) -> tuple[dict[Pixel, int], int, int]:
    rows = next(one.rows for one in part.states if one.name == state)
    found = {
        (part.x + x, part.y + y): 15
        for y, row in enumerate(rows)
        for x, sign in enumerate(row)
        if sign == "#"
    }
    return found, len(rows[0]), len(rows)


def meter_ink(meter: Meter, value: int | None, column: int, row: int) -> str | None:
    """Return the ink of one pixel of a meter, counted from its top left; None is ground."""
    if value is None or value < meter.least or value > meter.greatest:
        return meter.ink if (column + row) % 4 == 0 else None
    place, length = {
        "right": (column, meter.width),
        "left": (meter.width - 1 - column, meter.width),
        "down": (row, meter.height),
        "up": (meter.height - 1 - row, meter.height),
    }[meter.direction]
    span = meter.greatest - meter.least
    filled = (value - meter.least) * length // span
    ink, reached, marked = meter.ink, meter.ink, None
    for limit in meter.limits:
        ink = limit.ink or ink
        if limit.at <= value:
            reached = ink
        if limit.mark and min((limit.at - meter.least) * length // span, length - 1) == place:
            marked = ink
    if marked is not None:
        return None if place < filled else marked
    return reached if place < filled else None


def paint(
    material: Material, screen: Screen, part: object, value: str | int | None, picture: Picture
) -> set[Pixel]:
    """Paint a part onto a picture (pixels of the panel only); return every pixel it painted."""
    before = dict(picture)
    painted: set[Pixel] = set()

    def put(pixel: Pixel, new: int) -> None:
        if pixel in before:
            picture[pixel] = new
            painted.add(pixel)

    if isinstance(part, Rule):
        wide, high = (
            (part.length, part.thickness) if part.direction == "across" else (part.thickness, part.length)
        )
        for pixel in everywhere(material):
            if inside(pixel, (part.x, part.y, wide, high)):
                put(pixel, code(material, part.ink))
    elif isinstance(part, Box):
        for pixel in everywhere(material):
            if not inside(pixel, (part.x, part.y, part.width, part.height)):
                continue
            if part.fill is not None:
                put(pixel, code(material, part.fill))
            left, above = pixel[0] - part.x, pixel[1] - part.y
            edge = min(left, above, part.width - 1 - left, part.height - 1 - above)
            if part.outline is not None and edge < part.thickness:
                put(pixel, code(material, part.outline))
    elif isinstance(part, Meter):
        assert not isinstance(value, str)
        for x in range(part.x, part.x + part.width):
            for y in range(part.y, part.y + part.height):
                shown = meter_ink(part, value, x - part.x, y - part.y)
                put((x, y), code(material, shown or part.ground or screen.ground))
    elif isinstance(part, PicturePart):
        made = material.pictures[part.picture, part.dither]
        for x, y in made.mask.pixels():
            put((part.x + x, part.y + y), made.code(x, y))
    else:
        assert isinstance(part, Label | Field | Icon) and isinstance(value, str)
        _paint_value(material, screen, part, value, put)
    return painted


def _paint_value(
    material: Material, screen: Screen, part: Label | Field | Icon, value: str, put: object
) -> None:
    assert callable(put)
    if isinstance(part, Icon):
        levels, width, height = icon_levels(part, value)
        cell = part.x, part.y, width, height
        sizes = [(len(one.rows[0]), len(one.rows)) for one in part.states]
        clip: tuple[int, int, int, int] | None = part.padding or (
            part.x,
            part.y,
            max(w for w, _ in sizes),
            max(h for _, h in sizes),
        )
        ink = next(one.ink for one in part.states if one.name == value) or part.ink
        clearing = part.clearing
    else:
        type_ = material.types[part.type]
        levels, (start, baseline), width = text_levels(material, part, value)
        cell = start, baseline - type_.ascent, width, type_.ascent + type_.descent
        clip = part.padding if isinstance(part, Field) else None
        ink = part.ink
        clearing = part.clearing if isinstance(part, Field) else "none"
    by_name = {one.name: colour.parse(one.colour) for one in material.layout.inks}
    ground = part.ground if part.ground is not None else screen.ground
    ramp = colour.ramp(by_name[ink], by_name[ground], material.layout.panel.colours)
    cleared = {"none": None, "cell": cell, "pad": clip, "box": clip}[clearing]
    for pixel in everywhere(material):
        if not inside(pixel, clip):
            continue
        if levels.get(pixel):
            put(pixel, ramp[levels[pixel]])
        elif cleared is not None and inside(pixel, cleared):
            put(pixel, ramp[0])
