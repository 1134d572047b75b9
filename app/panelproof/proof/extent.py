"""What each part of a screen can do to the panel's pixels."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from panelproof.content.build import graph
from panelproof.content.graph import Graph
from panelproof.content.spec import Content
from panelproof.glyphs.type import Type
from panelproof.ink.anchor import Align
from panelproof.ink.footprint import Footprint, footprint
from panelproof.ink.mask import Area, Mask, rectangle, union
from panelproof.layout import level
from panelproof.layout.document import Screen
from panelproof.layout.panel import Panel, visible_spans
from panelproof.layout.parts import Box, Field, Icon, Label, Meter, Part, Picture, Rule
from panelproof.material import Material, icon_padding

if TYPE_CHECKING:
    from panelproof.dithering import Raster
    from panelproof.ink.repaint import Spared


@dataclass(frozen=True, slots=True, eq=False)
class Extent:
    """One part's pixels, in panel coordinates; compared by identity, and the same object for the same part.

    `reach` is all it can ink before clipping; `ink` the same, clipped, in the panel's frame. `ground` is what an
    update can paint with the part's ground, `surely` what every drawing of it repaints, `fill` a box's inside (all in the
    panel's frame). `ink_codes` are the colours of its ink, `ground_code` of its ground or fill (-1: none).
    `changes` tells whether it is updated while the screen stands.
    """

    part: Part
    reach: Mask
    ink: Mask
    ground: Mask
    surely: Mask
    fill: Mask
    ink_codes: frozenset[int]
    ground_code: int
    changes: bool
    footprint: Footprint | None = None
    states: tuple[tuple[str, Mask], ...] = ()
    padding: Area | None = None
    raster: Raster | None = None

    @property
    def name(self) -> str:
        """The part's name."""
        return self.part.name

    def seen_on(self, code: int) -> Mask:
        """Return what of its ink can be seen where all around is of one colour."""
        if self.raster is not None and isinstance(self.part, Picture):
            return self.raster.other_than(code).moved(self.part.x, self.part.y).framed(*self.ink.frame)
        return Mask(*self.ink.frame, 0) if self.ink_codes == frozenset([code]) else self.ink

    def text_at(self, pixel: tuple[int, int]) -> tuple[str, ...]:
        """Return the text, the icon's state or the meter's value that inks a pixel; nothing for other parts."""
        if self.footprint is not None and isinstance(self.part, Field | Label):
            return (self.footprint.witness(pixel[0] - self.part.x, pixel[1] - self.part.baseline),)
        if isinstance(self.part, Meter):
            return (str(level.least_inking(self.part, pixel[0] - self.part.x, pixel[1] - self.part.y)),)
        return next(((name,) for name, mask in self.states if pixel in mask), ())


@dataclass(frozen=True, slots=True, eq=False)
class Stage:
    """One screen, ready to be proved: its parts' extents in drawing order."""

    material: Material
    screen: Screen
    extents: tuple[Extent, ...]

    @property
    def whole(self) -> Area:
        """The panel's rectangle."""
        panel = self.material.layout.panel
        return 0, 0, panel.width, panel.height


@lru_cache(maxsize=16)
def visible(panel: Panel) -> Mask:
    """Return every pixel of a panel that can be seen."""
    bits = 0
    for row, (first, end) in enumerate(visible_spans(panel)):
        bits |= ((1 << max(end - first, 0)) - 1) << row * panel.width + first
    return Mask(0, 0, panel.width, panel.height, bits)


def stage(material: Material, screen: Screen, step: Callable[[], object] = lambda: None) -> Stage:
    """Return a screen's extents; parts that have not changed since the last call cost a look-up.

    `step` is called before each part; it may raise to cancel.
    """
    extents = []
    for part in screen.parts:
        step()
        extents.append(_extent_of(material, screen, part))
    return Stage(material, screen, tuple(extents))


def _extent_of(material: Material, screen: Screen, part: Part) -> Extent:
    panel = material.layout.panel
    if isinstance(part, Rule):
        return _rule(part, panel, material.code(part.ink))
    if isinstance(part, Box):
        fill = material.code(part.fill) if part.fill else -1
        return _box(part, panel, fill, material.code(part.outline) if part.outline else -1)
    if isinstance(part, Picture):
        return _picture(part, panel, material.raster(part))
    ground = material.code(part.ground or screen.ground)
    if isinstance(part, Meter):
        return _meter(part, panel, frozenset(map(material.code, level.inks(part))), ground)
    if isinstance(part, Icon):
        bitmaps = tuple(material.bitmaps[state] for state in part.states)
        codes = tuple(material.code(state.ink or part.ink) for state in part.states)
        return _icon(part, panel, bitmaps, codes, ground)
    type_ = material.types[part.type]
    ink = frozenset(
        material.ramp(part.ink, part.ground or screen.ground)[1:]
        if type_.antialiased
        else [material.code(part.ink)]
    )
    if isinstance(part, Label):
        return _label(part, panel, type_, ink, ground)
    return _field(part, panel, type_, ink, ground)


def _framed(panel: Panel, mask: Mask) -> Mask:
    return mask.framed(0, 0, panel.width, panel.height)


def _empty(panel: Panel) -> Mask:
    return Mask(0, 0, panel.width, panel.height, 0)


@lru_cache(maxsize=512)
def _rule(part: Rule, panel: Panel, code: int) -> Extent:
    across = part.direction == "across"
    size = (part.length, part.thickness) if across else (part.thickness, part.length)
    reach = rectangle(part.x, part.y, *size)
    ink, nothing = _framed(panel, reach), _empty(panel)
    return Extent(part, reach, ink, nothing, ink, nothing, frozenset([code]), -1, False)


@lru_cache(maxsize=512)
def _box(part: Box, panel: Panel, fill_code: int, outline_code: int) -> Extent:
    thick = part.thickness if part.outline else 0
    outer = rectangle(part.x, part.y, part.width, part.height)
    inner = rectangle(part.x + thick, part.y + thick, part.width - 2 * thick, part.height - 2 * thick)
    reach = outer - inner if part.outline else Mask(part.x, part.y, 0, 0, 0)
    ink = _framed(panel, reach)
    fill = _framed(panel, inner) if part.fill else _empty(panel)
    codes = frozenset([outline_code]) if part.outline else frozenset[int]()
    surely = union((ink, fill), ink.frame)
    return Extent(part, reach, ink, _empty(panel), surely, fill, codes, fill_code, False)


@lru_cache(maxsize=128)
def _picture(part: Picture, panel: Panel, raster: Raster) -> Extent:
    reach = raster.mask.moved(part.x, part.y)
    ink, nothing = _framed(panel, reach), _empty(panel)
    return Extent(part, reach, ink, nothing, ink, nothing, raster.used(), -1, False, raster=raster)


@lru_cache(maxsize=512)
def _meter(part: Meter, panel: Panel, ink_codes: frozenset[int], ground_code: int) -> Extent:
    # Full, the bar inks all but the marks; empty, the marks: some value inks each pixel, and each is repainted.
    reach = rectangle(part.x, part.y, part.width, part.height)
    ink, nothing = _framed(panel, reach), _empty(panel)
    return Extent(part, reach, ink, ink, ink, nothing, ink_codes, ground_code, True)


@lru_cache(maxsize=1024)
def _label_graph(text: str) -> Graph:
    return graph(Content(format=text.replace("%", "%%")))


@lru_cache(maxsize=512)
def _label(part: Label, panel: Panel, type_: Type, ink_codes: frozenset[int], ground_code: int) -> Extent:
    print_ = footprint(_label_graph(part.text), type_, part.align)
    reach = print_.mask.moved(part.x, part.baseline)
    ink, nothing = _framed(panel, reach), _empty(panel)
    return Extent(part, reach, ink, nothing, ink, nothing, ink_codes, ground_code, False, print_)


@lru_cache(maxsize=1024)
def spared_by(graph_: Graph, type_: Type, align: Align, cell: bool) -> Spared:
    """Return what some text of a content does not repaint with clearing `none` or `cell`."""
    from panelproof.ink.repaint import spared  # noqa: PLC0415 - only where ink is not cleared

    return spared(footprint(graph_, type_, align), cell=cell)


@lru_cache(maxsize=512)
def _field(part: Field, panel: Panel, type_: Type, ink_codes: frozenset[int], ground_code: int) -> Extent:
    graph_ = graph(part.content)
    print_ = footprint(graph_, type_, part.align)
    reach = print_.mask.moved(part.x, part.baseline)
    whole = (0, 0, panel.width, panel.height)
    clip = _framed(panel, rectangle(*(part.padding or whole)))
    ink = _framed(panel, reach) & clip
    nothing = _empty(panel)
    if part.clearing in ("pad", "box"):
        ground = surely = clip
    else:
        cell = part.clearing == "cell"
        left_alone = spared_by(graph_, type_, part.align, cell).mask
        surely = _framed(panel, (print_.mask - left_alone).moved(part.x, part.baseline)) & clip
        ground = nothing
        if cell:
            greatest, least = (
                _framed(panel, print_.cell(width).moved(part.x, part.baseline)) & clip
                for width in (print_.widths[-1], print_.widths[0])
            )
            ground, surely = greatest, surely | least
    return Extent(
        part, reach, ink, ground, surely, nothing, ink_codes, ground_code, True, print_, (), part.padding
    )


@lru_cache(maxsize=512)
def _icon(
    part: Icon, panel: Panel, bitmaps: tuple[Mask, ...], codes: tuple[int, ...], ground_code: int
) -> Extent:
    padding = icon_padding(part, bitmaps)
    states = tuple(
        (state.name, bitmap.moved(part.x, part.y)) for state, bitmap in zip(part.states, bitmaps, strict=True)
    )
    reach = states[0][1]
    for _, mask in states[1:]:
        reach = reach | mask
    clip = _framed(panel, rectangle(*padding))
    ink, nothing = _framed(panel, reach) & clip, _empty(panel)
    if part.clearing in ("pad", "box"):
        ground = surely = clip
    else:
        cells = [_framed(panel, icon_repaint(mask, part.clearing)) & clip for _, mask in states]
        surely = cells[0]
        for cell in cells[1:]:
            surely = surely & cell
        ground = union(cells, surely.frame) if part.clearing == "cell" else nothing
    return Extent(
        part,
        reach,
        ink,
        ground,
        surely,
        nothing,
        frozenset(codes),
        ground_code,
        len(states) > 1,
        None,
        states,
        padding,
    )


def icon_repaint(mask: Mask, clearing: str) -> Mask:
    """Return what an update to one state repaints with clearing `none` or `cell`."""
    return rectangle(*mask.frame) if clearing == "cell" else mask
