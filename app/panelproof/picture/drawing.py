"""What a part paints: a short row of operations in panel pixels, clipped, in order.

Frames, the steps from one moment to the next and the firmware exporter follow them. No images here.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from panelproof.ink.anchor import start
from panelproof.ink.mask import NOTHING, Area, Mask, rectangle
from panelproof.layout import colour
from panelproof.layout.document import Screen
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box, Clearing, Field, Icon, IconState, Label, Part, Rectangle, Rule
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

    `levels` holds `width * height` bytes of 0 to 15, row by row; one-bit text and icons use 0 and 15 only.
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


Operation = Fill | Paint


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
    try:
        value = (values.texts if isinstance(part, Field) else values.states)[part.name]
    except KeyError:
        kind = "text is given for the field" if isinstance(part, Field) else "state is given for the icon"
        raise Problem(f"no {kind} `{part.name}` of the screen `{screen.name}`") from None
    return (
        field(material, screen, part, value)
        if isinstance(part, Field)
        else icon(material, screen, part, value)
    )


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
