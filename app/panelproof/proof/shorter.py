"""What brings a text that is too long into the room there is: a smaller type, or fewer pixels of text."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from panelproof.glyphs.type import Type, open_type
from panelproof.ink.footprint import Footprint, footprint
from panelproof.ink.mask import Area, rectangle
from panelproof.ink.repaint import text_ink
from panelproof.layout.document import TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field, Label
from panelproof.material import Material
from panelproof.problem import Problem
from panelproof.proof.extent import Extent, Stage, visible
from panelproof.proof.finding import Change, Remedy
from panelproof.proof.mending import tried
from panelproof.proof.siblings import smaller
from panelproof.proof.words import hull, listed, quoted

MOST_TEXTS = 1000
"""Texts of a larger content are no list of words that could be shortened one by one."""


def shortened(stage: Stage, extent: Extent, room: Area) -> Remedy | None:
    """Return what lets a text fit the panel and some room on it: a smaller type, or which texts must lose how much."""
    part, print_ = extent.part, extent.footprint
    if print_ is None or not isinstance(part, Field | Label):
        return None
    material = stage.material
    typed = _typed(material, stage.screen.name, part, print_, room)
    losing = _losing(print_, part.x, room)
    words = listed([f"{quoted(text)} by {pixels} px" for text, pixels in losing], 4) if losing else ""
    if typed is None:
        return Remedy(f"shorten {words}") if words else None
    return Remedy(f"{typed.sentence}; or shorten {words}", typed.changes) if words else typed


@lru_cache(maxsize=256)
def _losing(print_: Footprint, x: int, room: Area) -> tuple[tuple[str, int], ...]:
    """Return the texts that reach beyond the room at its sides, and how many pixels narrower each must be."""
    if print_.graph.count() > MOST_TEXTS:
        return ()
    found = []
    for text in print_.graph.texts():
        left, _, width, _ = text_ink(print_, text).bounds()
        before, behind = max(room[0] - x - left, 0), max(x + left + width - room[0] - room[2], 0)
        # A centred text gives way on both sides alike.
        pixels = 2 * max(before, behind) if print_.align == "centre" else before + behind
        if pixels:
            found.append((text, pixels))
    return tuple(sorted(found, key=lambda one: -one[1]))


def _fits(print_: Footprint, part: Field | Label, panel: Panel, room: Area) -> bool:
    """Tell whether a text set so has all its characters, and all of them in the room and in sight."""
    reach = print_.mask.moved(part.x, part.baseline)
    return not (print_.missing or reach - rectangle(*room) or reach - visible(panel))


def _typed(
    material: Material, screen: str, part: Field | Label, print_: Footprint, room: Area
) -> Remedy | None:
    """Return the largest of the layout's types that fits, else the largest size of the same family."""
    panel = material.layout.panel
    now = material.types[part.type]
    others = sorted(
        ((name, type_) for name, type_ in material.types.items() if type_.size < now.size),
        key=lambda one: -one[1].size,
    )
    for name, type_ in others:
        if _fits(footprint(print_.graph, type_, print_.align), part, panel, room):
            ready = set_in(material, screen, part, print_, name)
            if ready:
                return Remedy(f"type `{name}`", ready)
    spec = next(one for one in material.layout.types if one.name == part.type)
    size = _largest(material, spec, print_, part, room)
    if size is None:
        return None
    shown, type_ = size
    alone = sum(
        getattr(one, "type", "") == spec.name for screen_ in material.layout.screens for one in screen_.parts
    )
    keys = [key for key in ("font", "size") if getattr(spec, key) != getattr(shown, key)]
    what = f"font {shown.font}" if shown.font != spec.font else f"{shown.size} px"
    changes = (
        *(Change(spec.name, key, getattr(shown, key), "type") for key in keys),
        *_padded(print_, part, type_, panel),
    )
    if alone == 1 and tried(material, screen, changes):
        return Remedy(f"type `{spec.name}`: {what}", changes)
    return Remedy(f"a type of its own: {what} fits" if alone > 1 else f"{what} fits")


def by_size(material: Material, type_: str, names: Iterable[str]) -> list[str]:
    """Return the names of types, those nearest in size to a given one first."""
    size = material.types[type_].size
    return sorted(names, key=lambda name: abs(material.types[name].size - size))


def set_in(
    material: Material, screen: str, part: Field | Label, print_: Footprint, name: str
) -> tuple[Change, ...]:
    """Return the changes that set a part in another type, its padding with it; nothing where that brings a fault."""
    padded = _padded(print_, part, material.types[name], material.layout.panel)
    changes = (Change(part.name, "type", name), *padded)
    return changes if tried(material, screen, changes) else ()


@lru_cache(maxsize=64)
def _largest(
    material: Material, spec: TypeSpec, print_: Footprint, part: Field | Label, room: Area
) -> tuple[TypeSpec, Type] | None:
    panel = material.layout.panel
    for candidate, path in smaller(spec, material.types[spec.name]):
        try:
            made = open_type(path, candidate.size, spec.rendering, spec.kerning, spec.hinting)
            if _fits(footprint(print_.graph, made, print_.align), part, panel, room):
                return candidate, made
        except Problem:
            return None
    return None


def _padded(print_: Footprint, part: Field | Label, type_: Type, panel: Panel) -> tuple[Change, ...]:
    """Return the change of the padding box that lets it hold the text and lie on the panel, where one is needed."""
    if not isinstance(part, Field) or part.padding is None:
        return ()
    x, y, width, height = part.padding
    left, top = max(x, 0), max(y, 0)
    kept = left, top, min(x + width, panel.width) - left, min(y + height, panel.height) - top
    reach = footprint(print_.graph, type_, print_.align).mask.moved(part.x, part.baseline).bounds()
    area = hull(kept, reach) if kept[2] > 0 and kept[3] > 0 else reach
    return () if area == part.padding else (Change(part.name, "padding", list(area)),)
