"""A screen with its proof drawn over it: footprints, padding boxes, baselines, and what goes wrong."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw

from panelproof.ink.footprint import footprint
from panelproof.ink.mask import NOTHING, Area, Mask, rectangle, union
from panelproof.layout.colour import Rgb
from panelproof.layout.document import Screen
from panelproof.layout.parts import Field, Icon, Label, Meter
from panelproof.material import Material, field_graph
from panelproof.picture import legend
from panelproof.picture.drawing import common, inked_by, padding_of
from panelproof.picture.drawing import part as paint
from panelproof.picture.frame import Frame, screen_frame
from panelproof.picture.image import Pixels, enlarged, pixels
from panelproof.picture.lettering import FAINT, PAGE
from panelproof.picture.values import Values

Kind = Literal["footprint", "stale", "finding"]
Chosen = NDArray[np.bool_]

# Panel pixels around the glass: what leaves the panel shows there.
LEAST_GUTTER, GREATEST_GUTTER = 5, 24
LEAST_WIDTH = 420
# Groups of pixels this far apart are ringed each for itself, up to a number.
APART = 5
MOST_RINGS = 8


@dataclass(frozen=True, slots=True)
class Overlay:
    """Pixels to mark, in panel pixels: what some text can ink, what stays behind, or what a finding is about.

    `words` is the line of the legend that speaks of them; by default it names the part. Footprints need none.
    """

    kind: Kind
    part: str
    mask: Mask
    words: str = ""


def footprints(material: Material, screen: Screen) -> tuple[Overlay, ...]:
    """Return, for each field, icon and meter, every pixel that some value can ink, before any clipping."""
    found = []
    for part in screen.parts:
        if isinstance(part, Field):
            print_ = footprint(field_graph(part), material.types[part.type], part.align)
            found.append(Overlay("footprint", part.name, print_.mask.moved(part.x, part.baseline)))
        elif isinstance(part, Icon):
            states = [material.bitmaps[state].moved(part.x, part.y) for state in part.states]
            frame = part.x, part.y, max(one.width for one in states), max(one.height for one in states)
            found.append(Overlay("footprint", part.name, union(states, frame)))
        elif isinstance(part, Meter):
            area = part.x, part.y, part.width, part.height
            found.append(Overlay("footprint", part.name, rectangle(*area)))
    return tuple(found)


def _paddings(material: Material, screen: Screen) -> list[Area]:
    fields = [part.padding for part in screen.parts if isinstance(part, Field) and part.padding is not None]
    return fields + [padding_of(material, part) for part in screen.parts if isinstance(part, Icon)]


def _gutter(areas: Iterable[Area], width: int, height: int) -> int:
    beyond = [0]
    for x, y, wide, high in areas:
        if wide and high:
            beyond += [-x, -y, x + wide - width, y + high - height]
    return min(max(*beyond, LEAST_GUTTER - 2) + 2, GREATEST_GUTTER)


def _chosen(mask: Mask, area: Area) -> Chosen:
    """Return the pixels of a mask inside `area`, [height, width]."""
    framed = mask.framed(*area)
    count = area[2] * area[3]
    packed = np.frombuffer(framed.bits.to_bytes((count + 7) // 8, "little"), dtype=np.uint8)
    return np.unpackbits(packed, count=count, bitorder="little").reshape(area[3], area[2]).astype(np.bool_)


def _edge(chosen: Chosen) -> Chosen:
    """Return the members that have a neighbour which is none."""
    inner = np.pad(chosen, 1)
    return chosen & ~(inner[:-2, 1:-1] & inner[2:, 1:-1] & inner[1:-1, :-2] & inner[1:-1, 2:])


def _large(chosen: Chosen, scale: int) -> Chosen:
    return chosen.repeat(scale, axis=0).repeat(scale, axis=1)


def marks(
    material: Material,
    screen: Screen,
    values: Values,
    scale: int,
    overlays: Sequence[Overlay] = (),
    *,
    frame: Frame | None = None,
) -> Image.Image:
    """Return the screen at an integer scale with its marks and a legend under it, RGB.

    Footprints are tiled where the text shown now has no ink, padding boxes dashed, stale pixels striped,
    findings' pixels chequered, both of these ringed and numbered as in the legend. `frame` is what the
    glass shows (by default the screen drawn with `values`). Raises Problem where `values` lacks a field or
    icon, ValueError where the scale is not 1 to 32.
    """
    panel = material.layout.panel
    glass = screen_frame(material, screen, values) if frame is None else frame
    paddings = _paddings(material, screen)
    reach = [overlay.mask.bounds() for overlay in overlays]
    gutter = _gutter([*paddings, *reach], panel.width, panel.height)
    area = -gutter, -gutter, panel.width + 2 * gutter, panel.height + 2 * gutter
    canvas = enlarged(_on_page(pixels(glass, panel), gutter), scale)

    reached = np.zeros((area[3], area[2]), dtype=np.bool_)
    for overlay in overlays:
        if overlay.kind == "footprint":
            reached |= _chosen(overlay.mask - _inked_now(material, screen, overlay.part, values), area)
    legend.tint(canvas, _large(reached, scale), scale)
    numbered = [overlay for overlay in overlays if overlay.kind != "footprint" and overlay.mask]
    for overlay in numbered:
        chosen = _large(_chosen(overlay.mask, area), scale)
        legend.hatch(canvas, chosen, overlay.kind == "finding", scale)
        canvas[_edge(chosen)] = _colour(overlay)

    picture = Image.fromarray(canvas)
    pen = ImageDraw.Draw(picture)
    sight = _Sight(gutter * scale, scale)
    left, top, right, bottom = sight.box((0, 0, panel.width, panel.height))
    pen.rectangle((left - 1, top - 1, right + 1, bottom + 1), outline=FAINT)
    for padding in paddings:
        legend.dashes(pen, sight.box(padding))
    for part in screen.parts:
        if isinstance(part, Label | Field):
            legend.anchor(pen, *sight.box((part.x, part.baseline, 1, 1))[:2], max(3 * scale, 8))
    _rings(pen, numbered, area, sight)

    kinds = {overlay.kind for overlay in overlays if overlay.mask}
    texts = any(isinstance(part, Field | Label) for part in screen.parts)
    key = legend.key(kinds, padding=bool(paddings), texts=texts)
    words = [(number, _colour(one), _words(one)) for number, one in enumerate(numbered, 1)]
    return legend.beneath(picture, key, words, max(picture.width, LEAST_WIDTH))


@dataclass(frozen=True, slots=True)
class _Sight:
    """From panel pixels to the picture's: the panel begins at (origin, origin)."""

    origin: int
    scale: int

    def box(self, area: Area) -> Area:
        """Return an area's first and last picture pixels: left, top, right, bottom."""
        left, top = self.origin + area[0] * self.scale, self.origin + area[1] * self.scale
        return left, top, left + area[2] * self.scale - 1, top + area[3] * self.scale - 1


def _inked_now(material: Material, screen: Screen, name: str, values: Values) -> Mask:
    part = next((part for part in screen.parts if part.name == name), None)
    return NOTHING if part is None else inked_by(paint(material, screen, part, values))


def groups(chosen: Chosen) -> list[Area]:
    """Return boxes (x, y, width, height) holding all members, cut where `APART` rows or columns are empty."""
    if not chosen.any():
        return []
    found, waiting = [], [(0, 0, chosen.shape[1], chosen.shape[0])]
    while waiting:
        x, y, width, height = waiting.pop()
        piece = chosen[y : y + height, x : x + width]
        across, down = _spans(np.any(piece, axis=0)), _spans(np.any(piece, axis=1))
        parts = [(x + left, y + top, wide, high) for top, high in down for left, wide in across]
        if parts == [(x, y, width, height)]:
            found.append(parts[0])
        else:
            waiting += [part for part in parts if chosen[part[1] :, part[0] :][: part[3], : part[2]].any()]
    return sorted(found, key=lambda box: (box[1], box[0]))


def _spans(present: Chosen) -> list[tuple[int, int]]:
    """Return (first, length) of each stretch of members, those less than `APART` apart taken together."""
    members = np.flatnonzero(present)
    breaks = np.flatnonzero(np.diff(members) > APART)
    firsts = members[np.concatenate(([0], breaks + 1))]
    lasts = members[np.concatenate((breaks, [len(members) - 1]))]
    return [(int(first), int(last - first) + 1) for first, last in zip(firsts, lasts, strict=True)]


def _rings(pen: ImageDraw.ImageDraw, numbered: Sequence[Overlay], area: Area, sight: _Sight) -> None:
    """Ring each group of pixels, and set the overlay's number at each ring's corner, inside the picture."""
    size = area[2] * sight.scale, area[3] * sight.scale
    tags = []
    for number, overlay in enumerate(numbered, 1):
        boxes = groups(_chosen(overlay.mask, area))
        if len(boxes) > MOST_RINGS:
            x, y, width, height = overlay.mask.framed(*area).bounds()
            boxes = [(x - area[0], y - area[1], width, height)]
        for x, y, width, height in boxes:
            box = sight.box((x + area[0], y + area[1], width, height))
            legend.ring(pen, box, _colour(overlay))
            tags.append((box[2] + 1, box[1] - 13, number, _colour(overlay)))
    taken: list[Area] = []
    for x, y, number, colour in tags:
        wide, high = legend.tag_size(number)
        left, top = max(min(x, size[0] - wide), 0), max(min(y, size[1] - high), 0)
        # Plates that would cover one another go further right, at the right edge further down.
        while any(_meet((left, top, wide, high), one) for one in taken) and top + high < size[1]:
            left, top = (left + 1, top) if left + wide < size[0] else (left, top + 1)
        taken.append((left, top, wide, high))
        legend.tag(pen, (left, top), number, colour)


def _meet(one: Area, other: Area) -> bool:
    return all(common(one, other)[2:])


def _words(overlay: Overlay) -> str:
    said = "stays behind" if overlay.kind == "stale" else "goes wrong here"
    return overlay.words or (f"{overlay.part}: {said}" if overlay.part else said)


def _colour(overlay: Overlay) -> Rgb:
    return legend.RED if overlay.kind == "finding" else legend.AMBER


def _on_page(seen: Pixels, gutter: int) -> Pixels:
    height, width, _ = seen.shape
    page = np.empty((height + 2 * gutter, width + 2 * gutter, 3), dtype=np.uint8)
    page[:] = PAGE
    page[gutter : gutter + height, gutter : gutter + width] = seen
    return page
