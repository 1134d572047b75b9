"""A layout with what it names found: its fonts opened, its pictures read, its contents built."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from panelproof.content.build import graph
from panelproof.content.build import text as text_of
from panelproof.content.graph import Graph
from panelproof.glyphs.catalogue import find
from panelproof.glyphs.type import Type, open_type
from panelproof.ink.bitmap import from_picture, from_text
from panelproof.ink.mask import Area, Mask
from panelproof.layout import colour
from panelproof.layout.document import Argument, Layout, Screen, TypeSpec
from panelproof.layout.parts import Dither, Field, Icon, IconState, Picture
from panelproof.layout.wording import quote, within
from panelproof.problem import Problem

if TYPE_CHECKING:
    from panelproof.dithering import Raster


@dataclass(frozen=True, slots=True, eq=False)
class Material:
    """A layout that can be drawn: nothing it names is missing.

    `folder` is what the layout's paths are relative to; `types`, `bitmaps` (by icon state), `inks` (8-bit sRGB)
    and `pictures` (by path and dither) hold what was found.
    """

    layout: Layout
    folder: Path
    types: Mapping[str, Type]
    bitmaps: Mapping[IconState, Mask]
    inks: Mapping[str, colour.Rgb]
    pictures: Mapping[tuple[str, Dither], Raster] = field(default_factory=dict)

    def screen(self, name: str) -> Screen:
        """Return the screen of that name; raises KeyError."""
        return {screen.name: screen for screen in self.layout.screens}[name]

    def code(self, ink: str) -> int:
        """Return an ink in the panel's own colours."""
        return colour.quantise(self.inks[ink], self.layout.panel.colours)

    def raster(self, part: Picture) -> Raster:
        """Return a picture in the panel's own colours."""
        return self.pictures[part.picture, part.dither]

    def ramp(self, ink: str, ground: str) -> tuple[int, ...]:
        """Return the 16 panel codes from ground to ink."""
        return colour.ramp(self.inks[ink], self.inks[ground], self.layout.panel.colours)


def _open(spec: TypeSpec, folder: Path) -> Type:
    return open_type(find(spec.font, folder), spec.size, spec.rendering, spec.kerning, spec.hinting)


def _bitmap(state: IconState, folder: Path) -> Mask:
    return from_text(state.rows) if state.picture is None else from_picture(folder / state.picture)


def field_graph(field: Field) -> Graph:
    """Return the word graph of a field's content; raises Problem with a place inside the field."""
    try:
        return graph(field.content)
    except Problem as problem:
        raise problem.within("content") from None


def icon_padding(part: Icon, bitmaps: tuple[Mask, ...]) -> Area:
    """Return an icon's padding box: its own, or the smallest that holds every state's bitmap."""
    if part.padding:
        return part.padding
    return part.x, part.y, max(mask.width for mask in bitmaps), max(mask.height for mask in bitmaps)


def shown_text(field: Field, value: str | tuple[Argument, ...]) -> str:
    """Return a moment's value as the text shown; raises Problem with a place inside the value."""
    if isinstance(value, str):
        shown = value
    else:
        try:
            shown = text_of(field.content, value)
        except Problem as problem:
            raise Problem(problem.message, problem.place.removeprefix("arguments")) from None
    if not field_graph(field).accepts(shown):
        raise Problem(
            f"{quote(shown)} is no text that the field `{field.name}` can show; "
            "give another value, or add the text to the field's `also`"
        )
    return shown


def _check_moments(layout: Layout) -> None:
    screens = {screen.name: screen for screen in layout.screens}
    for number, moment in enumerate(layout.moments):
        fields = {part.name: part for part in screens[moment.screen].parts if isinstance(part, Field)}
        for name, value in moment.fields.items():
            try:
                shown_text(fields[name], value)
            except Problem as problem:
                raise problem.within(within(f"moments[{number}].fields", name)) from None


def gather(layout: Layout, folder: Path) -> Material:
    """Open every font, read every picture and build every content of a layout whose references hold.

    Raises Problem with the place in the file for the first that fails.
    """
    types = {}
    for number, spec in enumerate(layout.types):
        try:
            types[spec.name] = _open(spec, folder)
        except Problem as problem:
            raise Problem(problem.message, f"types[{number}].font") from None
    bitmaps = {}
    pictures = {}
    for screen_number, screen in enumerate(layout.screens):
        for part_number, part in enumerate(screen.parts):
            place = f"screens[{screen_number}].parts[{part_number}]"
            if isinstance(part, Field):
                try:
                    field_graph(part)
                except Problem as problem:
                    raise problem.within(place) from None
            if isinstance(part, Picture):
                from panelproof.dithering import raster  # noqa: PLC0415 - few layouts have pictures

                try:
                    shown = raster(folder / part.picture, part.dither, layout.panel.colours)
                except Problem as problem:
                    raise Problem(problem.message, f"{place}.picture") from None
                pictures[part.picture, part.dither] = shown
            if not isinstance(part, Icon):
                continue
            for state_number, state in enumerate(part.states):
                try:
                    bitmaps[state] = _bitmap(state, folder)
                except Problem as problem:
                    raise Problem(problem.message, f"{place}.states[{state_number}].picture") from None
    _check_moments(layout)
    inks = {ink.name: colour.parse(ink.colour) for ink in layout.inks}
    return Material(layout, folder, types, bitmaps, inks, pictures)
