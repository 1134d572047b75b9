"""New parts with defaults that prove clean where there is room for them."""

from __future__ import annotations

import dataclasses
from pathlib import Path
from typing import Literal

from msgspec.structs import replace

from panelproof.content.build import graph
from panelproof.content.spec import Content, RealRange
from panelproof.dithering import raster
from panelproof.editor import places
from panelproof.editor.keeping import place, with_screen
from panelproof.editor.naming import free_name
from panelproof.editor.shifting import moved, room
from panelproof.glyphs.catalogue import bundled_folder, find
from panelproof.glyphs.type import Type, open_type
from panelproof.ink.bitmap import from_text
from panelproof.ink.mask import Area
from panelproof.layout.colour import Rgb, quantise, shown
from panelproof.layout.document import Layout, Screen, TypeSpec
from panelproof.layout.parts import Box, Field, Icon, IconState, Label, Meter, Part, Picture, Rule
from panelproof.material import Material, gather
from panelproof.problem import Problem

Kind = Literal["label", "field", "icon", "rule", "box", "meter", "picture"]
KINDS: tuple[Kind, ...] = ("label", "field", "icon", "rule", "box", "meter", "picture")

CONTENT = Content("%.1f", (RealRange(0.0, 100.0),), fault="---")
TEXT = "Label"
# A link: two pieces of a chain that hold, and the same torn apart. Told apart by shape.
LINKED = (
    "...........",
    "..###.###..",
    ".#...#...#.",
    ".#.#####.#.",
    ".#...#...#.",
    "..###.###..",
    "...........",
)
TORN = (
    ".....#.....",
    ".##..#..##.",
    "#..#...#..#",
    "#....#....#",
    "#..#...#..#",
    ".##..#..##.",
    ".....#.....",
)
STATES = (IconState("linked", LINKED), IconState("torn", TORN))
OUTLINE_FONT = "SourceSansPro"


def add_part(
    layout: Layout, material: Material, screen: str, kind: Kind, at: tuple[int, int], *, picture: str = ""
) -> tuple[Layout, str]:
    """Add a part of a kind, drawn last, its middle at `at`; its name comes with the layout.

    A field shows `%.1f` of 0 to 100 and has the padding box it needs, a meter 0 to 100; a picture shows the PNG file at
    the path `picture`; raises Problem where there is none. Text is set in the first type that has
    every character, in a type made for it where there is none. The ground is the filled box that the part
    stands on; the ink stands out from it most. `material` must hold `layout`.
    """
    number = place(layout, screen)
    taken = [part.name for part in layout.screens[number].parts]
    name = free_name(kind, taken)
    type_name = ""
    if kind in ("label", "field"):
        needed = _characters(kind)
        type_name = next((key for key, type_ in material.types.items() if _has(type_, needed)), "")
        if not type_name:
            layout, type_name = _with_type(layout, material.folder)
            material = gather(layout, material.folder)
    shown_screen = layout.screens[number]
    if kind == "icon":
        bitmaps = {state: from_text(state.rows) for state in STATES}
        material = dataclasses.replace(material, bitmaps={**material.bitmaps, **bitmaps})
    if kind == "picture":
        if not picture:
            raise Problem("choose the PNG file that the picture shows")
        shows = raster(material.folder / picture, "none", layout.panel.colours)
        material = dataclasses.replace(material, pictures={**material.pictures, (picture, "none"): shows})
    part = _centred(material, _made(kind, name, type_name, layout, picture), at)
    ground = _ground(shown_screen, places.place(material, part).area)
    part = _inked(part, ground, _most_contrast(material, ground), shown_screen)
    if isinstance(part, Field):
        part = replace(part, padding=places.needed(material, part))
    return with_screen(layout, screen, replace(shown_screen, parts=(*shown_screen.parts, part))), name


def _characters(kind: Kind) -> frozenset[str]:
    return frozenset(TEXT) if kind == "label" else graph(CONTENT).alphabet()


def _has(type_: Type, characters: frozenset[str]) -> bool:
    return all(type_.glyph(char) is not None for char in characters)


def _with_type(layout: Layout, folder: Path) -> tuple[Layout, str]:
    """Add a type for a panel that has none: a bundled bitmap font, or where none will do an outline font."""
    wanted = min(max(layout.panel.height // 6, 12), 24)
    spec = TypeSpec(free_name("text", [spec.name for spec in layout.types]), OUTLINE_FONT, wanted)
    every = _characters("label") | _characters("field")
    home = bundled_folder()
    bundled = sorted(home.glob("*.bdf")) if home is not None else []
    for font in sorted(bundled, key=lambda path: abs(_height(path) - wanted)):
        name = font.name.removesuffix(".bdf")
        try:
            fits = _has(open_type(find(name, folder), None, "one-bit", False, True), every)
        except Problem:
            continue
        if fits:
            spec = TypeSpec(spec.name, name)
            break
    return replace(layout, types=(*layout.types, spec)), spec.name


def _height(font: Path) -> int:
    end = font.stem.rpartition("-")[2]
    return int(end) if end.isdigit() else 0


def _made(kind: Kind, name: str, type_name: str, layout: Layout, picture: str) -> Part:
    """Return a part at (0, 0) in the layout's first ink, as large as suits the panel."""
    ink, panel = layout.inks[0].name, layout.panel
    match kind:
        case "label":
            return Label(name, TEXT, type_name, ink, 0, 0)
        case "field":
            return Field(name, CONTENT, type_name, ink, 0, 0, padding=(0, 0, 1, 1))
        case "icon":
            return Icon(name, 0, 0, ink, STATES)
        case "rule":
            return Rule(name, 0, 0, max(min(panel.width // 3, 96), 1), ink)
        case "box":
            width, height = max(min(panel.width // 3, 96), 3), max(min(panel.height // 4, 48), 3)
            return Box(name, 0, 0, width, height, outline=ink)
        case "meter":
            width, height = max(min(panel.width // 3, 96), 4), max(min(panel.height // 10, 12), 2)
            return Meter(name, 0, 0, width, height, 0, 100, ink)
        case "picture":
            return Picture(name, 0, 0, picture)


def _centred(material: Material, part: Part, at: tuple[int, int]) -> Part:
    """Return a part with its middle at `at`, on the panel's rectangle where it fits there."""
    x, y, width, height = places.place(material, part).area
    panel = material.layout.panel
    left = max(min(at[0] - width // 2, panel.width - width), 0)
    top = max(min(at[1] - height // 2, panel.height - height), 0)
    return moved(part, *room([part], left - x, top - y))


def _ground(screen: Screen, area: Area) -> str:
    """Return the ink that lies under an area: the fill of the last box that holds it, else the screen's."""
    for part in reversed(screen.parts):
        if isinstance(part, Box) and part.fill is not None and _holds(places.fixed(part), area):
            return part.fill
    return screen.ground


def _holds(outer: Area, inner: Area) -> bool:
    return (
        outer[0] <= inner[0]
        and outer[1] <= inner[1]
        and inner[0] + inner[2] <= outer[0] + outer[2]
        and inner[1] + inner[3] <= outer[1] + outer[3]
    )


def _most_contrast(material: Material, ground: str) -> str:
    """Return the ink that stands out most from `ground` as the panel shows both."""
    colours = material.layout.panel.colours

    def luma(rgb: Rgb) -> int:
        red, green, blue = shown(quantise(rgb, colours), colours)
        return 299 * red + 587 * green + 114 * blue

    under = luma(material.inks[ground])
    return max(material.inks, key=lambda ink: abs(luma(material.inks[ink]) - under))


def _inked(part: Part, ground: str, ink: str, screen: Screen) -> Part:
    if isinstance(part, Box):
        return replace(part, outline=ink)
    if isinstance(part, Rule):
        return replace(part, ink=ink)
    if isinstance(part, Picture):
        return part
    return replace(part, ink=ink, ground=None if ground == screen.ground else ground)
