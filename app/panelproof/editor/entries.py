"""The layout's own lists - screens, types, inks, moments - and its panel: adding, renaming, deleting."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TypeVar

from msgspec.structs import replace

from panelproof.editor.keeping import Value, place, with_screen
from panelproof.editor.naming import check_free, free_name
from panelproof.editor.references import inks_of, renamed, type_of
from panelproof.layout.checking import problems
from panelproof.layout.document import Ink, Layout, Moment, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Part
from panelproof.layout.wording import one, quote
from panelproof.picture.values import Values
from panelproof.problem import Problem

MOST_LISTED = 6

Entry = TypeVar("Entry", Screen, TypeSpec, Ink, Moment)


def _names(entries: Sequence[Screen | TypeSpec | Ink | Moment | Part]) -> list[str]:
    return [entry.name for entry in entries]


def _number(entries: Sequence[Entry], name: str) -> int:
    try:
        return _names(entries).index(name)
    except ValueError:
        raise KeyError(name) from None


def _put(entries: tuple[Entry, ...], name: str, entry: Entry, noun: str) -> tuple[Entry, ...]:
    place_ = _number(entries, name)
    if entry.name != name:
        check_free(entry.name, _names(entries), noun)
    return tuple(entry if number == place_ else one for number, one in enumerate(entries))


def _without(entries: tuple[Entry, ...], name: str) -> tuple[Entry, ...]:
    gone = _number(entries, name)
    return tuple(entry for number, entry in enumerate(entries) if number != gone)


# -- the layout and its panel ------------------------------------------------------------------------------


def rename_layout(layout: Layout, name: str) -> Layout:
    """Give the layout another name; raises Problem for what is no name."""
    check_free(name, (), "layout")
    return replace(layout, name=name)


def set_panel(layout: Layout, panel: Panel) -> Layout:
    """Put the layout on another panel.

    Corners follow the shape, a palette the format (at first the layout's inks), and types become one-bit where the
    panel has no levels. Raises Problem where the panel cannot be, such as a round one that is not as wide as high.
    """
    if panel.colour_format != "indexed":
        panel = replace(panel, palette=())
    elif not panel.palette:
        panel = replace(panel, palette=_palette_of(layout))
    if panel.shape != "rounded":
        panel = replace(panel, corner_radius=0)
    elif not panel.corner_radius:
        panel = replace(panel, corner_radius=max(min(panel.width, panel.height) // 8, 1))
    types = layout.types
    if not panel.colours.blends:
        types = tuple(replace(spec, rendering="one-bit") for spec in types)
    changed = replace(layout, panel=panel, types=types)
    for problem in problems(replace(changed, types=(), screens=(), moments=())):
        raise problem
    return changed


def _palette_of(layout: Layout) -> tuple[str, ...]:
    """Return the colours of the layout's inks as a palette: two at least, 256 at most."""
    colours = dict.fromkeys(ink.colour.lower() for ink in layout.inks)
    for more in ("#ffffff", "#000000"):
        if len(colours) < 2:
            colours[more] = None
    return tuple(colours)[:256]


# -- screens -----------------------------------------------------------------------------------------------


def add_screen(layout: Layout, name: str = "screen") -> tuple[Layout, str]:
    """Add an empty screen on the ground of the others; its name, made free, comes with the layout."""
    name = free_name(name, _names(layout.screens))
    check_free(name, (), "screen")
    ground = layout.screens[-1].ground if layout.screens else layout.inks[0].name
    return replace(layout, screens=(*layout.screens, Screen(name, ground))), name


def duplicate_screen(layout: Layout, name: str) -> tuple[Layout, str]:
    """Add a copy of a screen behind it, with copies of its moments."""
    number = place(layout, name)
    copy = replace(layout.screens[number], name=free_name(name, _names(layout.screens)))
    screens = (*layout.screens[: number + 1], copy, *layout.screens[number + 1 :])
    moments = list(layout.moments)
    for moment in layout.moments:
        if moment.screen == name:
            moments.append(replace(moment, name=free_name(moment.name, _names(moments)), screen=copy.name))
    return replace(layout, screens=screens, moments=tuple(moments)), copy.name


def rename_screen(layout: Layout, name: str, new: str) -> Layout:
    """Give a screen another name, in the moments too; raises Problem where it is taken or no name."""
    screen = layout.screens[place(layout, name)]
    if new != name:
        check_free(new, _names(layout.screens), "screen")
    return with_screen(layout, name, replace(screen, name=new))


def reorder_screen(layout: Layout, name: str, new_index: int) -> Layout:
    """Let a screen be the one of number `new_index`."""
    screens = list(layout.screens)
    screen = screens.pop(place(layout, name))
    screens.insert(max(new_index, 0), screen)
    return replace(layout, screens=tuple(screens))


def delete_screen(layout: Layout, name: str) -> Layout:
    """Take a screen away, with its moments."""
    moments = tuple(moment for moment in layout.moments if moment.screen != name)
    return replace(layout, screens=_without(layout.screens, name), moments=moments)


# -- types -------------------------------------------------------------------------------------------------


def _levels_fit(layout: Layout, spec: TypeSpec) -> None:
    if spec.rendering == "antialiased" and not layout.panel.colours.blends:
        raise Problem(
            f"{one(layout.panel.colour_format)} panel has no levels between two colours; let the rendering be `one-bit`"
        )


def add_type(layout: Layout, spec: TypeSpec) -> tuple[Layout, str]:
    """Add a type; its name, made free, comes with the layout.

    Raises Problem for an antialiased one on a mono panel.
    """
    spec = replace(spec, name=free_name(spec.name, _names(layout.types)))
    check_free(spec.name, (), "type")
    _levels_fit(layout, spec)
    return replace(layout, types=(*layout.types, spec)), spec.name


def set_type(layout: Layout, name: str, spec: TypeSpec) -> Layout:
    """Put a type in the place of another; parts follow a new name.

    Raises Problem where the name is taken, and for an antialiased type on a mono panel.
    """
    _levels_fit(layout, spec)
    changed = replace(layout, types=_put(layout.types, name, spec, "type"))
    return changed if spec.name == name else _retyped(changed, name, spec.name)


def rename_type(layout: Layout, name: str, new: str) -> Layout:
    """Give a type another name; raises Problem where it is taken or no name."""
    return set_type(layout, name, replace(layout.types[_number(layout.types, name)], name=new))


def delete_type(layout: Layout, name: str, instead: str | None = None) -> Layout:
    """Take a type away; parts set in it take `instead`, or Problem is raised where that is not given."""
    changed = replace(layout, types=_without(layout.types, name))
    users = _users(layout, lambda part: type_of(part) == name)
    if not users:
        return changed
    if instead is None or instead == name:
        raise Problem(f"the type {quote(name)} is used by {_some(users)}; set them in another type first")
    _number(changed.types, instead)
    return _retyped(changed, name, instead)


def _retyped(layout: Layout, old: str, new: str) -> Layout:
    return _each_part(layout, lambda part: renamed(part, types={old: new}))


def _each_part(layout: Layout, change: Callable[[Part], Part]) -> Layout:
    screens = tuple(
        replace(screen, parts=tuple(change(part) for part in screen.parts)) for screen in layout.screens
    )
    return replace(layout, screens=screens)


def _some(words: Sequence[str]) -> str:
    more = f" and {len(words) - MOST_LISTED} more" if len(words) > MOST_LISTED else ""
    return ", ".join(quote(word) for word in words[:MOST_LISTED]) + more


def _users(layout: Layout, uses: Callable[[Part], bool]) -> list[str]:
    several = len(layout.screens) > 1
    return [
        f"{screen.name}: {part.name}" if several else part.name
        for screen in layout.screens
        for part in screen.parts
        if uses(part)
    ]


# -- inks --------------------------------------------------------------------------------------------------


def add_ink(layout: Layout, ink: Ink) -> tuple[Layout, str]:
    """Add an ink; its name, made free, comes with the layout."""
    ink = replace(ink, name=free_name(ink.name, _names(layout.inks)))
    check_free(ink.name, (), "ink")
    return replace(layout, inks=(*layout.inks, ink)), ink.name


def set_ink(layout: Layout, name: str, ink: Ink) -> Layout:
    """Put an ink in the place of another; all that is painted with it follows a new name."""
    changed = replace(layout, inks=_put(layout.inks, name, ink, "ink"))
    return changed if ink.name == name else _reinked(changed, name, ink.name)


def rename_ink(layout: Layout, name: str, new: str) -> Layout:
    """Give an ink another name; raises Problem where it is taken or no name."""
    return set_ink(layout, name, replace(layout.inks[_number(layout.inks, name)], name=new))


def delete_ink(layout: Layout, name: str, instead: str | None = None) -> Layout:
    """Take an ink away; what is painted with it takes `instead`.

    Raises Problem where it is the last one, or where it is used and `instead` is not given.
    """
    if len(layout.inks) == 1:
        raise Problem("a layout needs at least one ink, for the ground")
    changed = replace(layout, inks=_without(layout.inks, name))
    grounds = [screen.name for screen in layout.screens if screen.ground == name]
    users = _users(layout, lambda part: name in inks_of(part))
    if not grounds and not users:
        return changed
    if instead is None or instead == name:
        where = [f"the ground of {quote(screen)}" for screen in grounds] + ([_some(users)] if users else [])
        raise Problem(f"the ink {quote(name)} is used by {', '.join(where)}; give them another ink first")
    _number(changed.inks, instead)
    return _reinked(changed, name, instead)


def _reinked(layout: Layout, old: str, new: str) -> Layout:
    changed = _each_part(layout, lambda part: renamed(part, inks={old: new}))
    screens = tuple(
        replace(screen, ground=new) if screen.ground == old else screen for screen in changed.screens
    )
    return replace(changed, screens=screens)


# -- moments -----------------------------------------------------------------------------------------------


def add_moment(layout: Layout, screen: str, name: str, values: Values | None = None) -> tuple[Layout, str]:
    """Name a moment of a screen: `values`, where they are given and hold the part, else usual values.

    The moment's name, made free, comes with the layout.
    """
    name = free_name(name, _names(layout.moments))
    check_free(name, (), "moment")
    known = layout.screens[place(layout, screen)]
    bare = replace(layout, moments=(*layout.moments, Moment(name, screen)), screens=layout.screens)
    # The empty moment is filled as if every part had just come.
    emptied = replace(
        bare, screens=tuple(replace(one, parts=()) if one is known else one for one in bare.screens)
    )
    filled = with_screen(emptied, screen, known).moments[-1]
    if values is not None:
        filled = replace(
            filled,
            fields={part: values.texts.get(part, value) for part, value in filled.fields.items()},
            icons={part: values.states.get(part, state) for part, state in filled.icons.items()},
            meters={part: values.levels.get(part, level) for part, level in filled.meters.items()},
        )
    return replace(layout, moments=(*layout.moments, filled)), name


def set_moment(layout: Layout, name: str, moment: Moment) -> Layout:
    """Put a moment in the place of another; raises Problem where its name is taken."""
    return replace(layout, moments=_put(layout.moments, name, moment, "moment"))


def set_moment_value(layout: Layout, name: str, part: str, value: Value | int | None) -> Layout:
    """Set what one field (a text or arguments), icon (a state's name) or meter shows in a moment.

    A meter's value is a whole number, or None for none.
    """
    moment = layout.moments[_number(layout.moments, name)]
    if part in moment.meters and (value is None or isinstance(value, int)):
        return set_moment(layout, name, replace(moment, meters={**moment.meters, part: value}))
    if value is None or isinstance(value, int):
        raise KeyError(part)
    if part in moment.icons:
        return set_moment(layout, name, replace(moment, icons={**moment.icons, part: str(value)}))
    if part not in moment.fields:
        raise KeyError(part)
    return set_moment(layout, name, replace(moment, fields={**moment.fields, part: value}))


def rename_moment(layout: Layout, name: str, new: str) -> Layout:
    """Give a moment another name; raises Problem where it is taken or no name."""
    return set_moment(layout, name, replace(layout.moments[_number(layout.moments, name)], name=new))


def duplicate_moment(layout: Layout, name: str) -> tuple[Layout, str]:
    """Add a copy of a moment behind it; its name comes with the layout."""
    number = _number(layout.moments, name)
    copy = replace(layout.moments[number], name=free_name(name, _names(layout.moments)))
    moments = (*layout.moments[: number + 1], copy, *layout.moments[number + 1 :])
    return replace(layout, moments=moments), copy.name


def delete_moment(layout: Layout, name: str) -> Layout:
    """Take a moment away."""
    return replace(layout, moments=_without(layout.moments, name))
