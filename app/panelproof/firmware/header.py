"""The handover itself: a layout's constants, data, drawing code and text functions as one C header."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Callable
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import TYPE_CHECKING

from panelproof import __version__
from panelproof.firmware import constants, literals
from panelproof.firmware.data import Data, data
from panelproof.firmware.glyphdata import type_glyphs
from panelproof.firmware.guards import Guard, guards
from panelproof.firmware.levels import NO_VALUE, levels
from panelproof.firmware.names import Names, lower, upper
from panelproof.firmware.rasters import rasters
from panelproof.firmware.screens import screen_functions
from panelproof.firmware.stock import type_title
from panelproof.firmware.widths import area_type, count_type
from panelproof.layout.document import Layout
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field, Icon, Label, Meter
from panelproof.layout.writing import encode
from panelproof.material import Material

if TYPE_CHECKING:
    from jinja2 import Environment

TEMPLATES = Path(__file__).parent / "templates"


def header(material: Material) -> str:
    """Return the C header of a layout: the same text for the same layout, fonts and rasteriser.

    Raises Problem where two things of the layout would have one name in C.
    """
    layout, names = material.layout, Names()
    prefix = lower(layout.name)
    for function in ("port", "header", "implementation", "layout_digest", "no_text_functions", "no_changes"):
        owner = "a name of the drawing code"
        names.claim(upper(prefix, function) if function != "port" else f"{prefix}_port", owner)
    for macro in ("CONST", "READ8", "READ16", "READ32", "BLUE_FIRST", "LOW_BYTE_FIRST"):
        names.claim(f"{upper(prefix)}_{macro}", "a name of the drawing code")
    blocks = _blocks(material, names)
    whole = layout.panel.refresh == "whole"
    passes = any(isinstance(part, Label | Field | Icon) for screen in layout.screens for part in screen.parts)
    made = data(material) if passes else None
    bars, pictures = levels(layout, area_type(layout.panel)), rasters(material)
    if bars:
        names.claim(f"{upper(prefix)}_{NO_VALUE}", "the value of a meter that has none")
    screens = tuple(screen_functions(material, screen, names, made, pictures) for screen in layout.screens)
    functions = _guards(material, names)
    return (
        _environment(prefix)
        .get_template("header.h")
        .render(
            layout=layout.name,
            width=layout.panel.width,
            height=layout.panel.height,
            usage=[textwrap.wrap(line, 108) for line in _usage(material, whole)],
            facts=_facts(material),
            digest=digest(material),
            blocks=blocks,
            screens=screens,
            whole=whole,
            guards=functions,
            decimals=decimals(functions),
            prints=any("snprintf(" in line for function in functions for line in function.body),
            alphabets=_alphabets(functions),
            passes=passes,
            levels=bars,
            bar_changes=bars is not None and not whole,
            rasters=pictures,
            about=_about(layout),
            wide_colours=layout.panel.colour_format == "rgb565",
            fills=any("_FILL_(" in line for screen in screens for line in screen.body),
            **_implementation(made, layout.panel),
        )
    )


def _about(layout: Layout) -> list[str]:
    """Return what is said over the functions that draw, as lines of a comment."""
    parts = [part for screen in layout.screens for part in screen.parts]
    words = {Field: "field", Icon: "icon", Meter: "level bar"}
    there = [word for kind, word in words.items() if any(isinstance(part, kind) for part in parts)]
    one = " or ".join(filter(None, (", ".join(there[:-1]), there[-1]))) if there else ""
    said = [f"Draw a whole screen, or bring one {one} up to date." if one else "Draw a whole screen."]
    if "field" in there:
        said.append(
            "Of a text longer than any that the field can show, the bytes beyond that length are not read."
        )
    if "icon" in there:
        said.append("A state that an icon does not have paints nothing.")
    if "level bar" in there:
        said.append(
            "A level bar shows its fault pattern for a value outside its range, such as "
            f"{upper(layout.name)}_{NO_VALUE}."
        )
    return textwrap.wrap(f"/* {' '.join(said)} */", 118, subsequent_indent="   ", break_on_hyphens=False)


def digest(material: Material) -> str:
    """Return the SHA-256 of the layout's canonical file, in hexadecimal."""
    return sha256(encode(material.layout)).hexdigest()


def _implementation(made: Data | None, panel: Panel) -> dict[str, object]:
    if made is None:
        nothing: dict[str, object] = dict.fromkeys(Data.__slots__, False)
        return nothing | {"px": "int", "count_type": count_type(panel), "area_holds": area_type(panel)}
    return {name: getattr(made, name) for name in Data.__slots__}


def _environment(prefix: str) -> Environment:
    from jinja2 import Environment, FileSystemLoader, StrictUndefined  # noqa: PLC0415 - slow, and only used here

    class Loader(FileSystemLoader):
        """Reads templates, in which `our_` and `OUR_` stand for the layout's name."""

        def get_source(self, environment: Environment, template: str) -> tuple[str, str, Callable[[], bool]]:
            source, path, fresh = super().get_source(environment, template)
            source = re.sub(r"\bour_", f"{prefix}_", source)
            return re.sub(r"\bOUR_", f"{prefix.upper()}_", source), path, fresh

    return Environment(
        loader=Loader(TEMPLATES),
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )


def _blocks(material: Material, names: Names) -> list[constants.Block]:
    layout = material.layout
    blocks = [
        constants.panel_block(material, names),
        constants.alignment_block(material, names),
        constants.ink_block(material, names),
    ]
    if any(isinstance(part, Meter) for screen in layout.screens for part in screen.parts):
        row = f"{upper(layout.name)}_{NO_VALUE}", "INT32_MIN", ""
        blocks.append(constants.Block("No value for a level bar: it lies outside every range", (row,)))
    used = {one.spec.name for one in type_glyphs(material)}
    if used:
        blocks.append(constants.type_block(material, used, names))
    for screen in layout.screens:
        blocks.append(constants.screen_block(material, screen, names))
        blocks += [constants.part_block(material, screen, part, names) for part in screen.parts]
    return blocks


def _guards(material: Material, names: Names) -> tuple[Guard, ...]:
    made = []
    for screen in material.layout.screens:
        for part in screen.parts:
            if isinstance(part, Field):
                for one in guards(material, screen, part):
                    names.claim(one.name, f"the field `{part.name}` of the screen `{screen.name}`")
                    made.append(one)
    return tuple(made)


def decimals(functions: tuple[Guard, ...]) -> dict[str, object] | None:
    """Return the types that printing reals takes, where some are."""
    made = [one for function in functions for one in function.fixed]
    if not made:
        return None
    small = max(max(abs(one.least), abs(one.greatest)) for one in made) < 1 << 32
    single = small and all(one.scale < 1 << 8 for one in made)
    return {
        "number": "uint32_t" if small else "uint64_t",
        "single": "uint32_t" if single else "uint64_t",
        "reals": any("_round_(" in line for function in functions for line in function.body),
    }


@dataclass(frozen=True, slots=True)
class _Alphabet:
    name: str
    lines: tuple[str, ...]


def _alphabets(guards: tuple[Guard, ...]) -> list[_Alphabet]:
    return [
        _Alphabet(name, tuple(literals.rows(f"0x{code:02X}" for code in codes)))
        for guard in guards
        for name, codes in guard.tables
    ]


def _usage(material: Material, whole: bool) -> list[str]:
    """Return the sentences that show how this very layout is used."""
    layout = material.layout
    found = {
        kind: next(((s, p) for s in layout.screens for p in s.parts if isinstance(p, kind)), None)
        for kind in (Field, Meter, Icon)
    }
    shown = found[Field] or found[Meter] or found[Icon]
    if shown is None:
        first = next(iter(layout.screens), None)
        return [f"Call {lower(layout.name, first.name)}_draw(&port) to draw a screen."] if first else []
    screen, part = shown
    own, name = lower(layout.name, screen.name), lower(layout.name, screen.name, part.name)
    lines = [f"Fill in values of the type {own}_values and call {own}_draw(&port, &values) to draw a screen."]
    if not isinstance(part, Field):
        what = "value" if isinstance(part, Meter) else "state"
        one = f"Bring one part up to date with such as {name}_update(&port, {what})."
        return [*lines, "Draw the screen again and send the frame." if whole else one]
    text = f"{name}_text(buffer, ...)"
    if whole:
        lines.append(f"Get the text of a field from {text}, draw the screen again and send the frame.")
    else:
        lines.append(f"Get the text of a field from {text}")
        lines[-1] += f" and show it with {name}_update(&port, buffer)."
    return lines


def _facts(material: Material) -> list[tuple[str, str]]:
    layout = material.layout
    facts = [
        ("layout", layout.name),
        ("digest", f"sha256 {digest(material)}"),
        ("format", str(layout.format)),
        ("made by", f"Panelproof {__version__}"),
    ]
    facts += [("type", type_title(one)) for one in type_glyphs(material)]
    return facts
