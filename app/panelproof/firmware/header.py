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
from panelproof.firmware.data import Data, data, type_title
from panelproof.firmware.glyphdata import type_glyphs
from panelproof.firmware.guards import Guard, guard
from panelproof.firmware.names import Names, lower, member, upper
from panelproof.layout.document import Screen
from panelproof.layout.parts import Box, Field, Icon, Label, Part, Rule
from panelproof.layout.writing import encode
from panelproof.material import Material

if TYPE_CHECKING:
    from jinja2 import Environment

TEMPLATES = Path(__file__).parent / "templates"


@dataclass(frozen=True, slots=True)
class _Shown:
    """A field or an icon: the head of the function that brings it up to date, and the lines of its body."""

    update: str
    call: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Screen:
    """A screen's functions: heads without semicolons, and the lines of the drawing function."""

    name: str
    values: str
    members: tuple[str, ...]
    draw: str
    shown: tuple[_Shown, ...]
    body: tuple[str, ...]


def header(material: Material) -> str:
    """Return the C header of a layout: the same text for the same layout, fonts and rasteriser.

    Raises Problem where two things of the layout would have one name in C.
    """
    layout, names = material.layout, Names()
    prefix = lower(layout.name)
    for function in ("port", "header", "implementation", "layout_digest", "no_text_functions"):
        owner = "a name of the drawing code"
        names.claim(upper(prefix, function) if function != "port" else f"{prefix}_port", owner)
    for macro in ("CONST", "READ8", "READ16", "READ32"):
        names.claim(f"{upper(prefix)}_{macro}", "a name of the drawing code")
    blocks = _blocks(material, names)
    screens = tuple(_screen(material, screen, names) for screen in layout.screens)
    guards = _guards(material, names)
    whole = layout.panel.refresh == "whole"
    passes = any(isinstance(part, Label | Field | Icon) for screen in layout.screens for part in screen.parts)
    made = data(material) if passes else None
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
            guards=guards,
            alphabets=_alphabets(guards),
            passes=passes,
            fills=passes
            or any("_fill_(" in line or "_outline_(" in line for s in screens for line in s.body),
            outlines=any("_outline_(" in line for screen in screens for line in screen.body),
            **_implementation(made),
        )
    )


def digest(material: Material) -> str:
    """Return the SHA-256 of the layout's canonical file, in hexadecimal."""
    return sha256(encode(material.layout)).hexdigest()


def _implementation(made: Data | None) -> dict[str, object]:
    if made is None:
        return {"px": "int"} | dict.fromkeys(("texts", "icons", "kerning", "ramps"), False)
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
                made.append(guard(material, screen, part))
                names.claim(made[-1].name, f"the field `{part.name}` of the screen `{screen.name}`")
    return tuple(made)


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


def _screen(material: Material, screen: Screen, names: Names) -> _Screen:
    layout = material.layout
    own, macros = lower(layout.name, screen.name), upper(layout.name, screen.name)
    owner = f"the screen `{screen.name}`"
    values, port = names.claim(f"{own}_values", owner), f"const {lower(layout.name)}_port *port"
    whole = layout.panel.refresh == "whole"
    draw = names.claim(f"{own}_draw", owner)
    members, shown, body = [], [], []
    if screen.clears or whole:
        size = f"{upper(layout.name)}_PANEL_WIDTH, {upper(layout.name)}_PANEL_HEIGHT"
        body.append(f"{lower(layout.name)}_fill_(port, 0, 0, {size}, {macros}_GROUND);")
    for part in screen.parts:
        if not isinstance(part, Field | Icon):
            body += _fixed(material, screen, part)
            continue
        field = isinstance(part, Field)
        comment = "" if field else f"/* one of {upper(layout.name, screen.name, part.name)}_STATE_... */"
        members.append((f"{'const char *' if field else 'uint8_t '}{member(part.name)};", comment))
        argument = "const char *text" if field else "uint8_t state"
        update = lower(layout.name, screen.name, part.name) + "_update"
        if not whole:
            names.claim(update, f"the part `{part.name}` of the screen `{screen.name}`")
        call = _show(material, screen, part, "text" if field else "state")
        shown.append(_Shown(f"{update}({port}, {argument})", tuple(literals.wrapped(f"{call};"))))
        value = f"values->{member(part.name)}"
        body.append(f"{_show(material, screen, part, value)};" if whole else f"{update}(port, {value});")
    parameters = f"{port}, const {values} *values" if members else port
    return _Screen(
        screen.name,
        values,
        tuple(literals.aligned(members)),
        f"{draw}({parameters})",
        tuple(shown),
        tuple(line for one in body or ["(void)port;"] for line in literals.wrapped(one)),
    )


def _show(material: Material, screen: Screen, part: Label | Field | Icon, value: str) -> str:
    """Return the call that shows a text or a state."""
    layout = lower(material.layout.name)
    what = f"port, &{lower(layout, 'part', screen.name, part.name)}_"
    if isinstance(part, Icon):
        states = f"{lower(layout, 'states', screen.name, part.name)}_"
        count = f"{upper(layout, screen.name, part.name)}_STATES"
        return f"{layout}_show_icon_({what}, {states}, {count}, {value})"
    return f"{layout}_show_text_({what}, {value})"


def _fixed(material: Material, screen: Screen, part: Part) -> list[str]:
    """Return the statements that paint a label, a rule or a box."""
    layout, own = lower(material.layout.name), upper(material.layout.name, screen.name, part.name)
    if isinstance(part, Label):
        return [f"{_show(material, screen, part, f'{own}_TEXT')};"]
    place = f"port, {own}_X, {own}_Y"
    if isinstance(part, Rule):
        size = (f"{own}_LENGTH", f"{own}_THICKNESS")
        first, second = size if part.direction == "across" else size[::-1]
        return [f"{layout}_fill_({place}, {first}, {second}, {own}_INK);"]
    assert isinstance(part, Box)
    area = f"{place}, {own}_WIDTH, {own}_HEIGHT"
    lines = []
    if part.fill is not None:
        lines.append(f"{layout}_fill_({area}, {own}_FILL);")
    if part.outline is not None:
        lines.append(f"{layout}_outline_({area}, {own}_THICKNESS, {own}_OUTLINE);")
    return lines


def _usage(material: Material, whole: bool) -> list[str]:
    """Return the sentences that show how this very layout is used."""
    layout = material.layout
    screen = next((s for s in layout.screens if any(isinstance(p, Field) for p in s.parts)), None)
    if screen is None:
        first = next(iter(layout.screens), None)
        return [f"Call {lower(layout.name, first.name)}_draw(&port) to draw a screen."] if first else []
    field = next(part for part in screen.parts if isinstance(part, Field))
    own, name = lower(layout.name, screen.name), lower(layout.name, screen.name, field.name)
    lines = [f"Fill in values of the type {own}_values and call {own}_draw(&port, &values) to draw a screen."]
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
