"""What a part paints: a short row of operations in panel pixels, clipped, in order.

Frames, the steps from one moment to the next and the firmware exporter follow them. No images here.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from panelproof.ink.anchor import start
from panelproof.ink.mask import NOTHING, Area, Mask, rectangle
from panelproof.layout import colour, level
from panelproof.layout.document import Screen
from panelproof.layout.panel import Panel
from panelproof.layout.parts import (
    Box,
    Clearing,
    Field,
    Icon,
    IconState,
    Label,
    Meter,
    Part,
    Picture,
    Rectangle,
    Rule,
)
from panelproof.material import Material, icon_padding
from panelproof.picture.bitmap import Bitmap, inked, of_mask, of_text
from panelproof.picture.values import Values
from panelproof.problem import Problem


@dataclass(frozen=True, slots=True)
class Fill:
    """Every pixel of a rectangle inside the panel gets one code."""

    x: int
    y: int
    width: int
    height: int
    code: int

    def painted(self) -> Mask:
        """Return the pixels it paints."""
        return rectangle(self.x, self.y, self.width, self.height)

    def inked(self) -> Mask:
        """Return the pixels it inks: none, a fill is ground."""
        return NOTHING


@dataclass(frozen=True, slots=True)
class Paint:
    """Pixels of a rectangle inside the panel get the code `ramp[level]`, each once.

    `levels` holds `width * height` bytes, row by row. For text and icons they run from 0 to 15 (one-bit ones use 0
    and 15 only); for a meter they number its ground (0) and its inks.
    With `opaque`, pixels of level 0 are painted too (`ramp[0]` is the ground); without, they are left as
    they are.
    """

    x: int
    y: int
    width: int
    height: int
    levels: bytes
    ramp: tuple[int, ...]
    opaque: bool

    def painted(self) -> Mask:
        """Return the pixels it paints."""
        return rectangle(self.x, self.y, self.width, self.height) if self.opaque else self.inked()

    def inked(self) -> Mask:
        """Return the pixels it inks: those of a level above 0."""
        return Mask(self.x, self.y, self.width, self.height, inked(self.levels))


@dataclass(frozen=True, slots=True)
class Copy:
    """Pixels of a rectangle inside the panel get codes of their own, each once, where `mask` has them.

    `codes` holds two bytes a pixel, low byte first, row by row.
    """

    x: int
    y: int
    width: int
    height: int
    codes: bytes
    mask: Mask

    def painted(self) -> Mask:
        """Return the pixels it paints."""
        return self.mask

    def inked(self) -> Mask:
        """Return the pixels it inks: all that it paints."""
        return self.mask


Operation = Fill | Paint | Copy


def common(one: Area, other: Area) -> Area:
    """Return the rectangle that two rectangles share; its width or height is 0 where there is none."""
    x, y = max(one[0], other[0]), max(one[1], other[1])
    right, bottom = min(one[0] + one[2], other[0] + other[2]), min(one[1] + one[3], other[1] + other[3])
    return x, y, max(right - x, 0), max(bottom - y, 0)


def panel_area(panel: Panel) -> Area:
    """Return the panel's rectangle."""
    return 0, 0, panel.width, panel.height


def ramp(material: Material, screen: Screen, ink: str, ground: str | None) -> tuple[int, ...]:
    """Return the 16 panel codes from a part's ground (by default the screen's) to an ink."""
    inks, panel = material.inks, material.layout.panel
    return colour.ramp(inks[ink], inks[ground or screen.ground], panel.colours)


def _fill(area: Area, code: int) -> tuple[Operation, ...]:
    return (Fill(*area, code),) if area[2] and area[3] else ()


def _clear_paint(area: Area, levels: bytes, codes: tuple[int, ...]) -> tuple[Operation, ...]:
    return (Paint(*area, levels, codes, False),) if any(levels) else ()


def _opaque_paint(area: Area, levels: bytes, codes: tuple[int, ...]) -> tuple[Operation, ...]:
    return (Paint(*area, levels, codes, True),) if levels else ()


@dataclass(frozen=True, slots=True)
class _Standing:
    """A bitmap with its origin at (x, y), and the codes of its levels."""

    bitmap: Bitmap
    x: int
    y: int
    codes: tuple[int, ...]

    def levels(self, area: Area) -> bytes:
        return self.bitmap.spread(self.x, self.y, area)

    def inked_area(self, clip: Area) -> Area:
        return common(self.bitmap.area(self.x, self.y), clip)


def _ink_only(standing: _Standing, clip: Area) -> tuple[Operation, ...]:
    area = standing.inked_area(clip)
    return _clear_paint(area, standing.levels(area), standing.codes)


def _ink_beyond(standing: _Standing, clip: Area, cell: Area) -> tuple[Operation, ...]:
    """Return the painting of inked pixels inside `clip` but outside `cell` (which lies inside `clip`)."""
    area = standing.inked_area(clip)
    inside = common(area, cell)
    if inside == area:
        return ()
    levels = bytearray(standing.levels(area))
    for row in range(inside[1] - area[1], inside[1] - area[1] + inside[3]):
        begin = row * area[2] + inside[0] - area[0]
        levels[begin : begin + inside[2]] = bytes(inside[2])
    return _clear_paint(area, bytes(levels), standing.codes)


def _cleared(standing: _Standing, clearing: Clearing, cell: Area, clip: Area) -> tuple[Operation, ...]:
    """Return what one update of a field or an icon paints; `clip` is the padding box on the panel."""
    if clearing == "pad":
        return _opaque_paint(clip, standing.levels(clip), standing.codes)
    if clearing == "cell":
        cell = common(cell, clip)
        once = _opaque_paint(cell, standing.levels(cell), standing.codes)
        return once + _ink_beyond(standing, clip, cell)
    ink = _ink_only(standing, clip)
    return _fill(clip, standing.codes[0]) + ink if clearing == "box" else ink


def label(material: Material, screen: Screen, part: Label) -> tuple[Operation, ...]:
    """Return what drawing a label paints: its inked pixels."""
    bitmap = of_text(material.types[part.type], part.text)
    codes = ramp(material, screen, part.ink, part.ground)
    x = part.x + start(part.align, bitmap.advance)
    return _ink_only(_Standing(bitmap, x, part.baseline, codes), panel_area(material.layout.panel))


def field(material: Material, screen: Screen, part: Field, text: str) -> tuple[Operation, ...]:
    """Return what one update of a field to `text` paints.

    Raises Problem where the clearing needs a padding box and the field has none.
    """
    type_ = material.types[part.type]
    bitmap = of_text(type_, text)
    clip = panel_area(material.layout.panel)
    if part.padding is not None:
        clip = common(part.padding, clip)
    elif part.clearing in ("pad", "box"):
        raise Problem(
            f"the field `{part.name}` is cleared by `{part.clearing}` but has no padding box: give it one"
        )
    x = part.x + start(part.align, bitmap.advance)
    cell = x, part.baseline - type_.ascent, bitmap.advance, type_.ascent + type_.descent
    codes = ramp(material, screen, part.ink, part.ground)
    return _cleared(_Standing(bitmap, x, part.baseline, codes), part.clearing, cell, clip)


def padding_of(material: Material, part: Icon) -> Rectangle:
    """Return the box that an icon's update repaints."""
    return icon_padding(part, tuple(material.bitmaps[state] for state in part.states))


def state_named(part: Icon, name: str) -> IconState:
    """Return an icon's state; raises Problem where it has none of that name."""
    for state in part.states:
        if state.name == name:
            return state
    known = ", ".join(state.name for state in part.states)
    raise Problem(f"the icon `{part.name}` has no state `{name}`; its states are {known}")


def icon(material: Material, screen: Screen, part: Icon, state: str) -> tuple[Operation, ...]:
    """Return what setting an icon to the state of that name paints; raises Problem where there is none."""
    chosen = state_named(part, state)
    bitmap = of_mask(material.bitmaps[chosen])
    clip = common(padding_of(material, part), panel_area(material.layout.panel))
    cell = part.x, part.y, bitmap.width, bitmap.height
    codes = ramp(material, screen, chosen.ink or part.ink, part.ground)
    return _cleared(_Standing(bitmap, part.x, part.y, codes), part.clearing, cell, clip)


def meter(material: Material, screen: Screen, part: Meter, value: int | None) -> tuple[Operation, ...]:
    """Return what an update of a meter to a value (None: there is none) paints: each of its pixels once."""
    inks = level.inks(part)
    codes = (material.code(part.ground or screen.ground), *map(material.code, inks))
    width, height = part.width, part.height
    if value is None or not level.can_show(part, value):
        pitch = level.FAULT_PITCH
        pattern = (b"\1" + bytes(pitch - 1)) * (width // pitch + 2)
        rows = [pattern[row % pitch :][:width] for row in range(height)]
    else:
        number = {ink: place for place, ink in enumerate(inks, 1)}
        bar = bytes(0 if ink is None else number[ink] for ink in level.bar(part, value))
        if part.direction in ("left", "up"):
            bar = bar[::-1]
        rows = (
            [bar] * height if part.direction in ("left", "right") else [bytes([one]) * width for one in bar]
        )
    area = common((part.x, part.y, width, height), panel_area(material.layout.panel))
    left, top = area[0] - part.x, area[1] - part.y
    seen = b"".join(row[left : left + area[2]] for row in rows[top : top + area[3]])
    return _opaque_paint(area, seen, codes)


def picture(material: Material, part: Picture) -> tuple[Operation, ...]:
    """Return what drawing a picture paints: its opaque pixels."""
    raster = material.raster(part)
    area = common((part.x, part.y, raster.width, raster.height), panel_area(material.layout.panel))
    mask = raster.mask.moved(part.x, part.y).framed(*area)
    if not mask:
        return ()
    left, width = 2 * (area[0] - part.x), 2 * area[2]
    tops = range(area[1] - part.y, area[1] - part.y + area[3])
    starts = [2 * row * raster.width + left for row in tops]
    return (Copy(*area, b"".join(raster.codes[start : start + width] for start in starts), mask),)


def rule(material: Material, part: Rule) -> tuple[Operation, ...]:
    """Return what drawing a rule paints."""
    across = part.direction == "across"
    size = (part.length, part.thickness) if across else (part.thickness, part.length)
    return _fill(common((part.x, part.y, *size), panel_area(material.layout.panel)), material.code(part.ink))


def box(material: Material, part: Box) -> tuple[Operation, ...]:
    """Return what drawing a box paints: its fill, then the outline, each of whose pixels is painted once."""
    x, y, width, height = area = part.x, part.y, part.width, part.height
    panel = panel_area(material.layout.panel)
    painted: tuple[Operation, ...] = ()
    if part.fill is not None:
        painted = _fill(common(area, panel), material.code(part.fill))
    if part.outline is None:
        return painted
    code, thick = material.code(part.outline), part.thickness
    if 2 * thick >= min(width, height):
        return painted + _fill(common(area, panel), code)
    sides = (
        (x, y, width, thick),
        (x, y + thick, thick, height - 2 * thick),
        (x + width - thick, y + thick, thick, height - 2 * thick),
        (x, y + height - thick, width, thick),
    )
    return painted + tuple(piece for side in sides for piece in _fill(common(side, panel), code))


def part(material: Material, screen: Screen, part: Part, values: Values) -> tuple[Operation, ...]:
    """Return what a part paints when its screen is drawn; raises Problem where `values` lacks it."""
    if isinstance(part, Label):
        return label(material, screen, part)
    if isinstance(part, Rule):
        return rule(material, part)
    if isinstance(part, Box):
        return box(material, part)
    if isinstance(part, Picture):
        return picture(material, part)
    try:
        if isinstance(part, Field):
            return field(material, screen, part, values.texts[part.name])
        if isinstance(part, Meter):
            return meter(material, screen, part, values.levels[part.name])
        return icon(material, screen, part, values.states[part.name])
    except KeyError:
        what = {Field: "text is given for the field", Icon: "state is given for the icon"}
        kind = what.get(type(part), "value is given for the meter")
        raise Problem(f"no {kind} `{part.name}` of the screen `{screen.name}`") from None


def fills(material: Material, screen: Screen) -> bool:
    """Tell whether drawing the screen begins with its ground over the whole panel.

    It does where the screen clears, and always where whole frames are composed in memory.
    """
    return screen.clears or material.layout.panel.refresh == "whole"


def screen_operations(material: Material, screen: Screen, values: Values) -> Iterator[Operation]:
    """Yield everything that drawing a screen paints: its ground where it clears, then its parts in order."""
    if fills(material, screen):
        yield Fill(*panel_area(material.layout.panel), material.code(screen.ground))
    for one in screen.parts:
        yield from part(material, screen, one, values)


def _union(masks: Iterable[Mask]) -> Mask:
    whole = NOTHING
    for mask in masks:
        whole = mask if not whole.width else whole | mask if mask.width else whole
    return whole


def painted_by(operations: Iterable[Operation]) -> Mask:
    """Return every pixel that some operation paints."""
    return _union(operation.painted() for operation in operations)


def inked_by(operations: Iterable[Operation]) -> Mask:
    """Return every pixel that some operation inks."""
    return _union(operation.inked() for operation in operations)
