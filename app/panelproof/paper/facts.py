"""Everything that stands on a sheet, as words and pictures, whatever it is printed with."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from panelproof import __version__
from panelproof.command import CAUTION
from panelproof.firmware import cost
from panelproof.firmware.bus import Sent
from panelproof.layout import colour
from panelproof.layout.document import Layout, Screen
from panelproof.layout.parts import Box, Field, Icon, Label, Meter, Part, Picture, Rule
from panelproof.layout.writing import encode
from panelproof.material import Material
from panelproof.paper.contents import Shows, area, shows
from panelproof.picture.drawing import padding_of
from panelproof.picture.frame import Frame, screen_frame
from panelproof.picture.moments import moments
from panelproof.problem import Problem
from panelproof.proof.extent import stage
from panelproof.proof.finding import Finding
from panelproof.proof.measure import of_stage
from panelproof.verdict import verdict

Area = tuple[int, int, int, int]
MOST_LISTED = 24
PX = "\N{NO-BREAK SPACE}px"


@dataclass(frozen=True, slots=True)
class InkFacts:
    """An ink: as the layout has it (`given`), as the panel shows it (`shown`), both `#rrggbb`, and its code."""

    name: str
    given: str
    shown: str
    code: str


@dataclass(frozen=True, slots=True, eq=False)
class Shot:
    """One moment of a screen: its name, the words above it, and the frame."""

    name: str
    title: str
    automatic: bool
    frame: Frame


@dataclass(frozen=True, slots=True)
class Row:
    """One part: where it stands and how it looks, each in words. `kind` is that of the layout file."""

    number: int
    name: str
    kind: str
    place: str
    size: str
    type: str
    ink: str
    padding: str
    clearing: str


@dataclass(frozen=True, slots=True)
class Mark:
    """A part on the drawing with dimensions: its rectangle, the lines x and y that it is placed by, and its number."""

    number: int
    area: Area
    x: int
    y: int
    text: bool


@dataclass(frozen=True, slots=True, eq=False)
class ScreenFacts:
    """One screen: its moments, its parts, what they show; `marks` and `pictured` for the drawing with dimensions."""

    name: str
    facts: tuple[tuple[str, str], ...]
    shots: tuple[Shot, ...]
    rows: tuple[Row, ...]
    shows: tuple[Shows, ...]
    marks: tuple[Mark, ...]
    pictured: Shot


@dataclass(frozen=True, slots=True)
class Told:
    """A finding in words; `reason` where a part accepts it."""

    level: str
    rule: str
    where: str
    message: str
    more: str


@dataclass(frozen=True, slots=True, eq=False)
class SheetFacts:
    """A whole layout."""

    title: str
    material: Material
    panel: tuple[tuple[str, str], ...]
    inks: tuple[InkFacts, ...]
    types: tuple[tuple[str, ...], ...]
    screens: tuple[ScreenFacts, ...]
    findings: tuple[Told, ...]
    accepted: tuple[Told, ...]
    bytes: tuple[tuple[str, ...], ...]
    made: str
    caution: str = CAUTION


BYTES_HEAD = (
    "processor",
    "flash in all",
    "bitmaps",
    "tables",
    "strings",
    "drawing code",
    "text code",
    "RAM in all",
)
TYPE_HEAD = ("type", "font", "size", "rendering", "ascent", "descent", "drawn by")


def gather(material: Material) -> SheetFacts:
    """Gather what a layout's sheet says; the layout is proved. Raises Problem where a moment cannot be shown."""
    from hashlib import sha256  # noqa: PLC0415

    layout = material.layout
    found = verdict(material)
    sent = {(update.screen, update.part): update.sent for update in cost.updates(material)}
    return SheetFacts(
        layout.name.replace("-", " "),
        material,
        tuple(_panel(layout)),
        tuple(_ink(material, ink.name, ink.colour) for ink in layout.inks),
        tuple(_types(material)),
        tuple(_screen(material, screen, sent) for screen in layout.screens),
        tuple(_told(finding) for finding in found.findings),
        tuple(_told(one.finding, f"{one.reason} (accepted by {one.part})") for one in found.accepted),
        tuple(_bytes(material)),
        f"Panelproof {__version__}, layout {sha256(encode(layout)).hexdigest()[:12]}",
    )


def _panel(layout: Layout) -> Iterator[tuple[str, str]]:
    panel = layout.panel
    if panel.name:
        yield "panel", panel.name
    shape = f", corners of radius {panel.corner_radius} px" if panel.corner_radius else f", {panel.shape}"
    yield "pixels", f"{panel.width} × {panel.height}{shape}"
    if panel.width_mm is not None and panel.height_mm is not None:
        pitch = panel.width_mm / panel.width
        yield "glass", f"{panel.width_mm:g} × {panel.height_mm:g} mm, a pixel {pitch:.3f} mm wide"
    formats = {
        "mono": "one bit a pixel",
        "grey4": "4 greys",
        "grey16": "16 greys",
        "rgb565": "16-bit colour (5 red, 6 green, 5 blue)",
        "indexed": f"{panel.colours.count} colours: {', '.join(panel.palette)}",
    }
    yield "colours", formats[panel.colour_format]
    yield (
        "updates",
        "part by part on the glass" if panel.refresh == "part" else "whole frames, composed in memory",
    )
    if panel.bus is not None:
        lanes = f", {panel.bus.lanes} lanes" if panel.bus.lanes > 1 else ""
        yield "bus", f"{panel.bus.protocol} at {panel.bus.clock_hz / 1e6:g} MHz{lanes}"
    if any(panel.offset):
        yield "offset", f"column {panel.offset[0]}, row {panel.offset[1]} of the controller's memory"
    if layout.reading_distance_mm is not None:
        yield "read from", f"{layout.reading_distance_mm:g} mm"
    if layout.limits is not None:
        limits = [
            f"{value:g} {unit}"
            for value, unit in (
                (layout.limits.flash_bytes, "bytes of flash"),
                (layout.limits.ram_bytes, "bytes of RAM"),
                (layout.limits.update_ms, "ms an update"),
            )
            if value is not None
        ]
        yield "limits", ", ".join(limits) or "none"


def _ink(material: Material, name: str, given: str) -> InkFacts:
    colours = material.layout.panel.colours
    code = material.code(name)
    shown = colour.written(colour.shown(code, colours))
    return InkFacts(name, given, shown, f"0x{code:04X}" if colours.format == "rgb565" else str(code))


def _types(material: Material) -> Iterator[tuple[str, ...]]:
    for spec in material.layout.types:
        type_ = material.types[spec.name]
        extra = [word for word, on in (("kerning", spec.kerning), ("no hinting", not spec.hinting)) if on]
        yield (
            spec.name,
            type_.path.name,
            f"{type_.size} px",
            ", ".join([spec.rendering, *extra]),
            f"{type_.ascent} px",
            f"{type_.descent} px",
            type_.rasteriser,
        )


def _bytes(material: Material) -> Iterator[tuple[str, ...]]:
    """Yield what the layout takes on each processor; nothing where it gives no header."""
    from panelproof.proof.words import grouped  # noqa: PLC0415

    try:
        memories = cost.memories(material)
    except Problem:
        return
    for one in memories:
        figures = (one.flash, one.bitmaps, one.tables, one.strings, one.drawing, one.texts, one.ram)
        yield one.title, *(grouped(figure) for figure in figures)


def _told(finding: Finding, more: str = "") -> Told:
    where = " / ".join(filter(None, (finding.screen, finding.part)))
    remedy = f"Remedy: {finding.remedy.sentence}" if finding.remedy else ""
    return Told(finding.level, finding.rule, where, finding.message, more or remedy)


# -- one screen ------------------------------------------------------------------------------------------------


def _screen(material: Material, screen: Screen, sent: Mapping[tuple[str, str], Sent]) -> ScreenFacts:
    stage_ = stage(material, screen)
    figures = {figure.field: figure for figure in of_stage(stage_)}
    shots = tuple(
        Shot(one.name, one.title, one.automatic, screen_frame(material, screen, one.values))
        for one in moments(material, screen)
    )
    marks, rows = [], []
    for number, extent in enumerate(stage_.extents, 1):
        part = screen.parts[number - 1]
        rows.append(_row(material, screen, part, number))
        marks.append(_mark(material, part, number, extent.reach.bounds()))
    ground = next(ink for ink in material.layout.inks if ink.name == screen.ground)
    facts = (
        ("ground", f"{screen.ground} ({ground.colour})"),
        ("on entry", "fills the panel with its ground" if screen.clears else "leaves what stood there"),
        ("parts", str(len(screen.parts))),
    )
    told = tuple(
        one for part in screen.parts for one in shows(part, figures, sent.get((screen.name, part.name)))
    )
    # Among the named moments the fullest one: it says most beside its dimensions.
    bare = material.code(screen.ground)
    named = [shot for shot in shots if not shot.automatic] or shots[:1]
    pictured = max(named, key=lambda shot: int((shot.frame.codes != bare).sum()))
    return ScreenFacts(screen.name, facts, shots, tuple(rows), told, tuple(marks), pictured)


def _row(material: Material, screen: Screen, part: Part, number: int) -> Row:
    kind = part.__struct_config__.tag
    place, size, type_, padding, clearing = f"x {part.x}, y ", "", "", "", ""
    inks: list[str] = []
    if isinstance(part, Label | Field):
        place = f"x {part.x}, baseline {part.baseline}"
        size, type_ = (
            {"left": "starts at x", "centre": "centred on x", "right": "ends at x"}[part.align],
            part.type,
        )
        inks = [part.ink, f"on {part.ground or screen.ground}"]
    else:
        place += str(part.y)
    if isinstance(part, Field):
        padding, clearing = area(part.padding) if part.padding else "none", part.clearing
    elif isinstance(part, Icon):
        padding, clearing = area(padding_of(material, part)), part.clearing
        masks = [material.bitmaps[state] for state in part.states]
        size = f"{max(mask.width for mask in masks)} × {max(mask.height for mask in masks)}"
        inks = [part.ink, f"on {part.ground or screen.ground}"]
    elif isinstance(part, Rule):
        size = f"{part.length} {part.direction}, {part.thickness} thick"
        inks = [part.ink]
    elif isinstance(part, Box):
        size = f"{part.width} × {part.height}"
        inks = [f"fill {part.fill}"] if part.fill else []
        inks += [f"outline {part.outline}, {part.thickness} px"] if part.outline else []
    elif isinstance(part, Meter):
        size = f"{part.width} × {part.height}, grows {part.direction}"
        inks = [part.ink, f"on {part.ground or screen.ground}"]
    elif isinstance(part, Picture):
        shown = material.raster(part)
        size = f"{shown.width} × {shown.height}"
    return Row(number, part.name, str(kind), place, size, type_, " ".join(inks), padding, clearing)


def _mark(material: Material, part: Part, number: int, ink: Area) -> Mark:
    if isinstance(part, Field):
        return Mark(number, part.padding or ink, part.x, part.baseline, True)
    if isinstance(part, Label):
        return Mark(number, ink, part.x, part.baseline, True)
    if isinstance(part, Icon):
        return Mark(number, padding_of(material, part), part.x, part.y, False)
    if isinstance(part, Rule):
        across = part.direction == "across"
        width, height = (part.length, part.thickness) if across else (part.thickness, part.length)
        return Mark(number, (part.x, part.y, width, height), part.x, part.y, False)
    if isinstance(part, Picture):
        shown = material.raster(part)
        return Mark(number, (part.x, part.y, shown.width, shown.height), part.x, part.y, False)
    return Mark(number, (part.x, part.y, part.width, part.height), part.x, part.y, False)
