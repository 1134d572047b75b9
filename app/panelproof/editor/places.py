"""Where the parts of a screen stand: rectangles and baselines in panel pixels, for laying hands on them."""

from __future__ import annotations

from dataclasses import dataclass

from panelproof.ink.anchor import start
from panelproof.ink.footprint import footprint
from panelproof.ink.mask import Area
from panelproof.layout.document import Screen
from panelproof.layout.parts import Box, Field, Icon, Label, Meter, Part, Picture, Rule
from panelproof.material import Material, field_graph
from panelproof.picture.bitmap import of_text
from panelproof.picture.drawing import padding_of
from panelproof.picture.values import Values


@dataclass(frozen=True, slots=True)
class Place:
    """A part's rectangle (for a text its cell, for a field that of its longest text), and its baseline."""

    area: Area
    baseline: int | None = None
    anchor: int | None = None


@dataclass(frozen=True, slots=True, eq=False)
class View:
    """One screen as it is looked at: what it is made of, and what it shows."""

    material: Material
    screen: Screen
    values: Values

    def place(self, part: Part) -> Place:
        """Return where a part stands with what it shows."""
        return now(self.material, part, self.values)

    def named(self, name: str) -> Part | None:
        """Return a part of the screen."""
        return next((part for part in self.screen.parts if part.name == name), None)


def place(material: Material, part: Part) -> Place:
    """Return where a part stands whatever it shows."""
    if isinstance(part, Field):
        widest = footprint(field_graph(part), material.types[part.type], part.align).widths[-1]
        return _text_place(material, part, widest)
    return now(material, part, Values())


def now(material: Material, part: Part, values: Values) -> Place:
    """Return where a part stands with what it shows now, a field without a value as with its longest text."""
    if isinstance(part, Label):
        return _text_place(material, part, of_text(material.types[part.type], part.text).advance)
    if isinstance(part, Field):
        text = values.texts.get(part.name)
        if text is None:
            return place(material, part)
        return _text_place(material, part, of_text(material.types[part.type], text).advance)
    if isinstance(part, Icon):
        masks = [material.bitmaps[state] for state in part.states]
        return Place((part.x, part.y, max(mask.width for mask in masks), max(mask.height for mask in masks)))
    if isinstance(part, Picture):
        raster = material.raster(part)
        return Place((part.x, part.y, raster.width, raster.height))
    return Place(fixed(part))


def fixed(part: Rule | Box | Meter) -> Area:
    """Return the rectangle of a rule, a box or a meter."""
    if isinstance(part, Box | Meter):
        return part.x, part.y, part.width, part.height
    if part.direction == "across":
        return part.x, part.y, part.length, part.thickness
    return part.x, part.y, part.thickness, part.length


def padding(material: Material, part: Part) -> Area | None:
    """Return a field's or an icon's padding box; None where it has none."""
    if isinstance(part, Field):
        return part.padding
    return padding_of(material, part) if isinstance(part, Icon) else None


def needed(material: Material, part: Field | Icon) -> Area:
    """Return the smallest padding box that holds every pixel the part can ink; at least one pixel."""
    if isinstance(part, Icon):
        return place(material, part).area
    print_ = footprint(field_graph(part), material.types[part.type], part.align)
    x, y, width, height = print_.mask.moved(part.x, part.baseline).bounds()
    if width and height:
        return x, y, width, height
    x, y, width, height = place(material, part).area
    return x, y, max(width, 1), max(height, 1)


def together(areas: list[Area]) -> Area:
    """Return the smallest rectangle that holds several; raises ValueError where there are none."""
    left, top = min(area[0] for area in areas), min(area[1] for area in areas)
    right, bottom = max(area[0] + area[2] for area in areas), max(area[1] + area[3] for area in areas)
    return left, top, right - left, bottom - top


def _text_place(material: Material, part: Label | Field, width: int) -> Place:
    type_ = material.types[part.type]
    x, y = part.x + start(part.align, width), part.baseline - type_.ascent
    # A cell to lay hands on has a pixel at least, however odd the font's metrics.
    area = x, y, max(width, 1), max(type_.ascent + type_.descent, 1)
    return Place(area, part.baseline, part.x)
