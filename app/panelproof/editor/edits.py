"""Changes of a layout as pure functions: a layout in, another out, every one of them valid again.

Parts are named by their names on one screen; names that are not there are passed over where several are
given, and raise KeyError where one is meant. What a person can get wrong raises Problem. Everything in
`__all__` may be used by any view; some of it lives in the modules beside this one.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence

from msgspec.structs import replace

from panelproof.editor.arranging import Edge, align, distribute
from panelproof.editor.clipboard import from_clipboard, parts_to_clipboard
from panelproof.editor.entries import (
    add_ink,
    add_moment,
    add_screen,
    add_type,
    delete_ink,
    delete_moment,
    delete_screen,
    delete_type,
    duplicate_moment,
    duplicate_screen,
    rename_ink,
    rename_layout,
    rename_moment,
    rename_screen,
    rename_type,
    reorder_screen,
    set_ink,
    set_moment,
    set_moment_value,
    set_panel,
    set_type,
)
from panelproof.editor.keeping import place, usual, with_screen
from panelproof.editor.naming import check_free, free_name
from panelproof.editor.newparts import KINDS, Kind, add_part
from panelproof.editor.shifting import moved, room
from panelproof.ink.mask import Area
from panelproof.layout.document import Layout, Screen
from panelproof.layout.parts import Box, Field, Icon, Meter, Part, Picture, Rule
from panelproof.problem import Problem
from panelproof.proof.finding import Change
from panelproof.proof.mending import changed

__all__ = [
    "KINDS",
    "Edge",
    "Kind",
    "add_ink",
    "add_moment",
    "add_part",
    "add_screen",
    "add_type",
    "align",
    "apply_changes",
    "delete_ink",
    "delete_moment",
    "delete_parts",
    "delete_screen",
    "delete_type",
    "distribute",
    "duplicate_moment",
    "duplicate_parts",
    "duplicate_screen",
    "free_name",
    "from_clipboard",
    "move_parts",
    "parts_to_clipboard",
    "rename_ink",
    "rename_layout",
    "rename_moment",
    "rename_part",
    "rename_screen",
    "rename_type",
    "reorder",
    "reorder_screen",
    "replace_screen",
    "resize",
    "resize_box",
    "resize_meter",
    "resize_padding",
    "resize_rule",
    "set_ink",
    "set_moment",
    "set_moment_value",
    "set_padding",
    "set_panel",
    "set_part",
    "set_type",
    "usual",
]

GREATEST_LENGTH, GREATEST_THICKNESS = 4096, 256


def _screen(layout: Layout, name: str) -> Screen:
    return layout.screens[place(layout, name)]


def _part(layout: Layout, screen: str, name: str) -> Part:
    for part in _screen(layout, screen).parts:
        if part.name == name:
            return part
    raise KeyError(name)


def _with_parts(
    layout: Layout, screen: str, parts: Iterable[Part], renamed: Mapping[str, str] | None = None
) -> Layout:
    return with_screen(layout, screen, replace(_screen(layout, screen), parts=tuple(parts)), renamed)


def move_parts(layout: Layout, screen: str, names: Collection[str], dx: int, dy: int) -> Layout:
    """Move parts, their padding boxes with them, as far as coordinates go."""
    parts = _screen(layout, screen).parts
    moving = [part for part in parts if part.name in names]
    dx, dy = room(moving, dx, dy)
    if not moving or not (dx or dy):
        return layout
    return _with_parts(
        layout, screen, [moved(part, dx, dy) if part.name in names else part for part in parts]
    )


def set_part(layout: Layout, screen: str, name: str, part: Part) -> Layout:
    """Put a part in the place of another; a new name is taken over in the moments.

    Raises Problem where another part of the screen has the new name.
    """
    old = _part(layout, screen, name)
    parts = _screen(layout, screen).parts
    if part.name != name:
        check_free(part.name, [one.name for one in parts], "part", "on this screen")
    renamed = {name: part.name} if part.name != name else None
    return _with_parts(layout, screen, [part if one is old else one for one in parts], renamed)


def rename_part(layout: Layout, screen: str, name: str, new: str) -> Layout:
    """Give a part another name; raises Problem where that is taken or is no name."""
    return set_part(layout, screen, name, replace(_part(layout, screen, name), name=new))


def delete_parts(layout: Layout, screen: str, names: Collection[str]) -> Layout:
    """Take parts away, out of the moments too."""
    parts = _screen(layout, screen).parts
    kept = [part for part in parts if part.name not in names]
    return layout if len(kept) == len(parts) else _with_parts(layout, screen, kept)


def duplicate_parts(
    layout: Layout, screen: str, names: Collection[str], dx: int = 8, dy: int = 8
) -> tuple[Layout, tuple[str, ...]]:
    """Add copies of parts, drawn last, moved by (dx, dy); the copies' names come with the layout.

    In the moments a copy shows what its original shows.
    """
    parts = _screen(layout, screen).parts
    taken = [part.name for part in parts]
    originals = [part for part in parts if part.name in names]
    dx, dy = room(originals, dx, dy)
    copies: list[Part] = []
    for part in originals:
        name = free_name(part.name, taken)
        taken.append(name)
        copies.append(replace(moved(part, dx, dy), name=name))
    result = _with_parts(layout, screen, (*parts, *copies))
    pairs = {copy.name: part.name for copy, part in zip(copies, originals, strict=True)}
    moments = []
    for moment in result.moments:
        if moment.screen == screen:
            fields = {name: moment.fields[pairs.get(name, name)] for name in moment.fields}
            icons = {name: moment.icons[pairs.get(name, name)] for name in moment.icons}
            meters = {name: moment.meters[pairs.get(name, name)] for name in moment.meters}
            moments.append(replace(moment, fields=fields, icons=icons, meters=meters))
        else:
            moments.append(moment)
    return replace(result, moments=tuple(moments)), tuple(pairs)


def reorder(layout: Layout, screen: str, name: str, new_index: int) -> Layout:
    """Let a part be the one of number `new_index` in the drawing order (0 is drawn first)."""
    part = _part(layout, screen, name)
    parts = [one for one in _screen(layout, screen).parts if one is not part]
    parts.insert(max(new_index, 0), part)
    return _with_parts(layout, screen, parts)


def replace_screen(layout: Layout, name: str, screen: Screen) -> Layout:
    """Put a screen in the place of another; the moments are kept complete, under a new name too.

    Raises Problem where another screen has the new name.
    """
    if screen.name != name:
        check_free(screen.name, [one.name for one in layout.screens], "screen")
    return with_screen(layout, name, screen)


# -- sizes -------------------------------------------------------------------------------------------------


def _length(value: int, least: int = 1) -> int:
    return min(max(value, least), GREATEST_LENGTH)


def resize(layout: Layout, screen: str, name: str, area: Area) -> Layout:
    """Give a box, a rule or a meter its rectangle, a field or an icon its padding box.

    Raises Problem for a label, which is as large as its text, and a picture, which is as large as its file.
    """
    match _part(layout, screen, name):
        case Box():
            return resize_box(layout, screen, name, area)
        case Rule():
            return resize_rule(layout, screen, name, area)
        case Meter():
            return resize_meter(layout, screen, name, area)
        case Field() | Icon():
            return resize_padding(layout, screen, name, area)
        case Picture():
            raise Problem("a picture is as large as its file; bring in a larger or a smaller one")
    raise Problem("a label is as large as its text; set it in another type to change its size")


def resize_box(layout: Layout, screen: str, name: str, area: Area) -> Layout:
    """Give a box its rectangle; it stays large enough for its outline."""
    part = _part(layout, screen, name)
    if not isinstance(part, Box):
        raise KeyError(name)
    least = 2 * part.thickness if part.outline is not None else 1
    x, y, width, height = area
    box = replace(part, x=x, y=y, width=_length(width, least), height=_length(height, least))
    return set_part(layout, screen, name, box)


def resize_rule(layout: Layout, screen: str, name: str, area: Area) -> Layout:
    """Give a rule its rectangle; it keeps its direction."""
    part = _part(layout, screen, name)
    if not isinstance(part, Rule):
        raise KeyError(name)
    x, y, width, height = area
    length, thick = (width, height) if part.direction == "across" else (height, width)
    thickness = min(max(thick, 1), GREATEST_THICKNESS)
    return set_part(
        layout, screen, name, replace(part, x=x, y=y, length=_length(length), thickness=thickness)
    )


def resize_meter(layout: Layout, screen: str, name: str, area: Area) -> Layout:
    """Give a meter its rectangle."""
    part = _part(layout, screen, name)
    if not isinstance(part, Meter):
        raise KeyError(name)
    x, y, width, height = area
    return set_part(
        layout, screen, name, replace(part, x=x, y=y, width=_length(width), height=_length(height))
    )


def resize_padding(layout: Layout, screen: str, name: str, area: Area) -> Layout:
    """Give a field or an icon its padding box."""
    return set_padding(layout, screen, name, (area[0], area[1], _length(area[2]), _length(area[3])))


def set_padding(layout: Layout, screen: str, name: str, area: Area | None) -> Layout:
    """Give a field or an icon its padding box, or none.

    Raises Problem where a field's clearing needs one.
    """
    part = _part(layout, screen, name)
    if not isinstance(part, Field | Icon):
        raise KeyError(name)
    if area is None and isinstance(part, Field) and part.clearing in ("pad", "box"):
        raise Problem(f"clearing by `{part.clearing}` repaints the padding box; the field cannot do without")
    return set_part(layout, screen, name, replace(part, padding=area))


# -- remedies ----------------------------------------------------------------------------------------------


def apply_changes(layout: Layout, screen: str, changes: Sequence[Change]) -> Layout:
    """Carry out the changes of a remedy; raises Problem where a name is gone or a value is refused."""
    return changed(layout, screen, changes)
