"""The functions of a screen in a header: drawing it, and bringing each of its parts up to date."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from panelproof.firmware import literals
from panelproof.firmware.data import Data, changes_by_parts
from panelproof.firmware.levels import NO_VALUE, constant
from panelproof.firmware.names import Names, lower, member, upper
from panelproof.firmware.rasters import Rasters
from panelproof.layout.document import Screen
from panelproof.layout.parts import Box, Field, Icon, Label, Meter, Part, Picture, Rule
from panelproof.material import Material


@dataclass(frozen=True, slots=True)
class Shown:
    """A field, an icon or a meter: the head of the function that brings it up to date, and the lines of its body."""

    update: str
    call: tuple[str, ...]
    change: str = ""
    change_call: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ScreenFunctions:
    """A screen's functions: heads without semicolons, and the lines of the drawing function."""

    name: str
    values: str
    members: tuple[str, ...]
    said: str
    draw: str
    shown: tuple[Shown, ...]
    body: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Kind:
    """How parts of one kind are shown: the type of a value, what is said of it, and the calls, given the value's name."""

    type: str
    value: str
    comment: str
    show: Callable[[str], str]
    change: str


def screen_functions(
    material: Material, screen: Screen, names: Names, made: Data | None, pictures: Rasters | None
) -> ScreenFunctions:
    """Return the functions of a screen; raises Problem where a name is taken already."""
    layout = material.layout
    own, macros = lower(layout.name, screen.name), upper(layout.name, screen.name)
    owner = f"the screen `{screen.name}`"
    values, port = names.claim(f"{own}_values", owner), f"const {lower(layout.name)}_port *port"
    whole = layout.panel.refresh == "whole"
    draw = names.claim(f"{own}_draw", owner)
    members, shown, body = [], [], []
    if screen.clears or whole:
        size = f"{upper(layout.name)}_PANEL_WIDTH, {upper(layout.name)}_PANEL_HEIGHT"
        body.append(f"{upper(layout.name)}_FILL_(port, 0, 0, {size}, {macros}_GROUND);")
    for part in screen.parts:
        if isinstance(part, Field | Icon | Meter):
            kind = _kind(material, screen, part, made)
            value = f"values->{member(part.name)}"
            members.append((f"{kind.type}{member(part.name)};", kind.comment))
            if whole:
                body.append(f"{kind.show(value)};")
                shown.append(Shown("", ()))
            else:
                of = f"the part `{part.name}` of the {owner.removeprefix('the ')}"
                shown.append(_shown(kind, lower(layout.name, screen.name, part.name), port, names, of))
                body.append(f"{lower(layout.name, screen.name, part.name)}_update(port, {value});")
        else:
            body += _fixed(material, screen, part, made, pictures)
    parameters = f"{port}, const {values} *values" if members else port
    return ScreenFunctions(
        screen.name,
        values,
        tuple(literals.aligned(members)),
        _values(screen),
        f"{draw}({parameters})",
        tuple(shown),
        tuple(line for one in body or ["(void)port;"] for line in literals.wrapped(one)),
    )


def _shown(kind: _Kind, own: str, port: str, names: Names, owner: str) -> Shown:
    """Return the functions that bring a part up to date, without and with what it shows already."""
    update = names.claim(f"{own}_update", owner)
    made = Shown(
        f"{update}({port}, {kind.type}{kind.value})", tuple(literals.wrapped(f"{kind.show(kind.value)};"))
    )
    if not kind.change:
        return made
    change = names.claim(f"{own}_change", owner)
    return Shown(
        made.update,
        made.call,
        f"{change}({port}, {kind.type}former, {kind.type}{kind.value})",
        tuple(literals.wrapped(f"{kind.change};")),
    )


def _kind(material: Material, screen: Screen, part: Field | Icon | Meter, made: Data | None) -> _Kind:
    layout = material.layout
    if isinstance(part, Meter):
        comment = f"/* {upper(layout.name)}_{NO_VALUE} where there is none */"
        what = f"_meter_(port, &{constant(layout, screen, part)}, "
        prefix = lower(layout.name)
        return _Kind(
            "int32_t ",
            "value",
            comment,
            lambda value: f"{prefix}_show{what}{value})",
            f"{prefix}_change{what}former, value)",
        )
    assert made is not None
    change = _change(material, screen, part, made) if changes_by_parts(part) else ""
    if isinstance(part, Icon):
        comment = f"/* one of {upper(layout.name, screen.name, part.name)}_STATE_... */"
        return _Kind(
            "uint8_t ", "state", comment, lambda value: _show(material, screen, part, value, made), change
        )
    return _Kind("const char *", "text", "", lambda value: _show(material, screen, part, value, made), change)


def _values(screen: Screen) -> str:
    """Return what the values of a screen are, in words."""
    words = {
        Field: "UTF-8 texts (NULL is an empty one)",
        Icon: "icons' states",
        Meter: "values of level bars",
    }
    there = [said for kind, said in words.items() if any(isinstance(part, kind) for part in screen.parts)]
    return ", and ".join(filter(None, (", ".join(there[:-1]), there[-1]))) if there else ""


def _show(material: Material, screen: Screen, part: Label | Field | Icon, value: str, made: Data) -> str:
    """Return the call that shows a text or a state."""
    layout = lower(material.layout.name)
    what = f"port, &{lower(layout, 'part', screen.name, part.name)}_"
    if isinstance(part, Icon):
        inks = f", {_inks(layout, screen, part)}" if made.inks_vary else ""
        return f"{layout}_show_icon_({what}, {upper(layout, screen.name, part.name)}_STATES, {value}{inks})"
    fixed = f", {int(isinstance(part, Label))}" if made.fixed else ""
    return f"{layout}_show_({what}, {value}{fixed}{', NULL' if made.inks_vary else ''})"


def _change(material: Material, screen: Screen, part: Part, made: Data) -> str:
    """Return the call that brings a text or a state up to date where another is shown."""
    layout = lower(material.layout.name)
    what = f"port, &{lower(layout, 'part', screen.name, part.name)}_"
    if isinstance(part, Icon):
        inks = f", {_inks(layout, screen, part)}" if made.inks_vary else ""
        states = f"{upper(layout, screen.name, part.name)}_STATES"
        return f"{layout}_change_icon_({what}, {states}, former, state{inks})"
    return f"{layout}_change_({what}, former, text{', NULL' if made.inks_vary else ''})"


def _inks(layout: str, screen: Screen, part: Icon) -> str:
    varied = any(state.ink for state in part.states)
    return f"{lower(layout, 'inks', screen.name, part.name)}_" if varied else "NULL"


def _fixed(
    material: Material, screen: Screen, part: Part, made: Data | None, pictures: Rasters | None
) -> list[str]:
    """Return the statements that paint a label, a picture, a rule or a box."""
    layout, own = lower(material.layout.name), upper(material.layout.name, screen.name, part.name)
    if isinstance(part, Label):
        assert made is not None
        text = f"{lower(layout, 'text', screen.name, part.name)}_"
        return [f"{_show(material, screen, part, text, made)};"]
    if isinstance(part, Picture):
        call = (pictures.calls if pictures else {}).get((screen.name, part.name))
        return [f"{layout}_show_picture_(port, {call}, {own}_X, {own}_Y);"] if call else []
    fill = f"{upper(layout)}_FILL_(port, "
    if isinstance(part, Rule):
        size = (f"{own}_LENGTH", f"{own}_THICKNESS")
        first, second = size if part.direction == "across" else size[::-1]
        return [f"{fill}{own}_X, {own}_Y, {first}, {second}, {own}_INK);"]
    assert isinstance(part, Box)
    x, y, width, height, thickness = (f"{own}_{end}" for end in ("X", "Y", "WIDTH", "HEIGHT", "THICKNESS"))
    lines = []
    if part.fill is not None:
        lines.append(f"{fill}{x}, {y}, {width}, {height}, {own}_FILL);")
    if part.outline is None:
        return lines
    if 2 * part.thickness >= min(part.width, part.height):
        return [*lines, f"{fill}{x}, {y}, {width}, {height}, {own}_OUTLINE);"]
    rest = f"{height} - 2 * {thickness}"
    for area in (
        f"{x}, {y}, {width}, {thickness}",
        f"{x}, {y} + {height} - {thickness}, {width}, {thickness}",
        f"{x}, {y} + {thickness}, {thickness}, {rest}",
        f"{x} + {width} - {thickness}, {y} + {thickness}, {thickness}, {rest}",
    ):
        lines.append(f"{fill}{area}, {own}_OUTLINE);")
    return lines
