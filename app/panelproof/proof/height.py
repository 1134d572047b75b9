"""height: characters are high enough to be read from the layout's reading distance.

Source: NUREG-0700 rev. 2, 1.3.1-4: 16 minutes of arc at least, 20 to 22 preferred, 24 at most for reading text, 45 at
most for any group. Judged where the layout states its reading distance and the panel its size. What is too small
cannot be read, a caution; what is too large only costs room, a note. A number that is larger than a group should be is
meant to be read from farther too (`panelproof measure` tells from how far), and is not told. Figures and capitals are
measured where the content has any, else small letters.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from math import ceil

from panelproof.glyphs.type import Type, open_type
from panelproof.layout.document import TypeSpec
from panelproof.layout.parts import Field, Label
from panelproof.material import Material, gather
from panelproof.problem import Problem
from panelproof.proof.behind import inked
from panelproof.proof.characters import DIGITS, Height, alphabet, height, pitch_mm
from panelproof.proof.extent import Extent, Stage, stage
from panelproof.proof.finding import Change, Finding, Level, Remedy
from panelproof.proof.matrix import is_reading
from panelproof.proof.words import hull
from panelproof.sight.arc import (
    LEAST,
    MOST_GROUP,
    MOST_READING,
    PREFERRED_LEAST,
    PREFERRED_MOST,
    height_for,
    minutes_of,
)

NAME = "height"


def findings(stage: Stage, *, proposing: bool = True) -> Iterator[Finding]:
    """Yield each text that is too small, or larger than is good, for the distance it is read from.

    Without `proposing` no larger type is tried.
    """
    layout = stage.material.layout
    pitch, distance = pitch_mm(layout.panel), layout.reading_distance_mm
    if pitch is None or distance is None:
        return
    for extent in stage.extents:
        print_ = extent.footprint
        if print_ is None or not isinstance(extent.part, Field | Label) or not extent.ink:
            continue
        high = height(print_.type, alphabet(print_.graph))
        if high is None:
            continue
        words = len(print_.longest) > 1 and alphabet(print_.graph).isdisjoint(DIGITS)
        found = _judged(high, pitch, distance, is_reading(print_.graph), words)
        if found:
            level, message = found
            small = proposing and level == "caution"
            remedy = _remedy(stage, extent, least_pixels(pitch, distance)) if small else None
            yield Finding(NAME, level, stage.screen.name, extent.name, message, (), 0, inked(extent), remedy)


def least_pixels(pitch: float, distance: float) -> int:
    """Return the least height in pixels that can be read from a distance (both in millimetres)."""
    # Less a hair, so that a height that just reaches it is not lost to rounding.
    return max(ceil(height_for(LEAST, distance) / pitch - 1e-9), 1)


def _judged(
    high: Height, pitch: float, distance: float, reading: bool, words: bool
) -> tuple[Level, str] | None:
    minutes = minutes_of(high.pixels * pitch, distance)
    size = (
        f"{high.kind} are {high.pixels} px = {high.pixels * pitch:.2f} mm high, {minutes:.1f} minutes of arc "
        f"from {distance:g} mm"
    )
    if high.pixels < least_pixels(pitch, distance):
        preferred = f"{PREFERRED_LEAST:g} to {PREFERRED_MOST:g} are better"
        return "caution", (
            f"{size}; {LEAST:g} are needed, which is {least_pixels(pitch, distance)} px here ({preferred})"
        )
    if reading and minutes > MOST_READING:
        return "note", f"{size}; text as long as this is read more slowly above {MOST_READING:g}"
    if words and minutes > MOST_GROUP:
        return "note", f"{size}; above {MOST_GROUP:g} a text is not taken in at one glance"
    return None


# -- the remedy --------------------------------------------------------------------------------------------


def _remedy(stage: Stage, extent: Extent, needed: int) -> Remedy | None:
    """Return the least size of the same family that is high enough, ready to apply where it fits as things stand."""
    material, part, print_ = stage.material, extent.part, extent.footprint
    assert print_ is not None
    assert isinstance(part, Field | Label)
    spec = next(one for one in material.layout.types if one.name == part.type)
    higher = _higher(spec, material.types[spec.name], alphabet(print_.graph), needed)
    if higher is None:
        return None
    words = f"type `{spec.name}` {_named(spec, higher)}"
    changes = _retyped(material, stage.screen.name, spec, higher)
    return (
        Remedy(words, changes) if changes else Remedy(f"{words}, for which there is no room as things stand")
    )


def _named(old: TypeSpec, new: TypeSpec) -> str:
    return f"in the font {new.font}" if new.font != old.font else f"{old.size} → {new.size} px"


@lru_cache(maxsize=256)
def _higher(spec: TypeSpec, type_: Type, chars: frozenset[str], needed: int) -> TypeSpec | None:
    """Return the type in the least size whose characters are high enough; None where there is none."""
    from panelproof.proof.siblings import larger  # noqa: PLC0415 - only where something is found

    now = height(type_, chars)
    if now is None:
        return None
    # Rounding and hinting move a height by a pixel or so, hence the start below the proportional size.
    least = type_.size * (needed - 1) // (now.pixels + 1)
    for candidate, path in larger(spec, type_, least):
        try:
            made = open_type(path, candidate.size, spec.rendering, spec.kerning, spec.hinting)
            high = height(made, chars)
        except Problem:
            return None
        if high is not None and high.kind == now.kind and high.pixels >= needed:
            return candidate
    return None


@lru_cache(maxsize=64)
def _retyped(material: Material, screen: str, spec: TypeSpec, higher: TypeSpec) -> tuple[Change, ...]:
    """Return the changes that set the type so, paddings of this screen grown with it; none where that brings a fault."""
    from panelproof.proof.mending import changed, tried  # noqa: PLC0415 - only where something is found

    keys = [key for key in ("font", "size") if getattr(spec, key) != getattr(higher, key)]
    changes = [Change(spec.name, key, getattr(higher, key), "type") for key in keys]
    try:
        made = gather(changed(material.layout, screen, changes), material.folder)
    except Problem:
        return ()
    for extent in stage(made, made.screen(screen)).extents:
        part = extent.part
        if isinstance(part, Field) and part.type == spec.name and part.padding:
            area = hull(part.padding, extent.reach.bounds())
            if area != part.padding:
                changes.append(Change(part.name, "padding", list(area)))
    return tuple(changes) if tried(material, screen, changes) else ()
