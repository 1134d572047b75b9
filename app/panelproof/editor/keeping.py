"""Keeping the named moments complete while parts come, go, and change what they can show."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec.structs import replace

from panelproof.content.build import graph, text
from panelproof.content.graph import Graph
from panelproof.content.spec import Argument as Range
from panelproof.content.spec import Choice, Content, RealRange, WholeRange
from panelproof.layout.document import Argument, Layout, Moment, Screen
from panelproof.layout.parts import Field, Icon, Meter, Part
from panelproof.problem import Problem

Value = str | tuple[Argument, ...]
LONGEST_SAMPLE = 8


def with_screen(
    layout: Layout, name: str, screen: Screen, renamed: Mapping[str, str] | None = None
) -> Layout:
    """Return the layout with another screen in the place of the one called `name`; raises KeyError.

    The screen's moments stay complete: a new field, icon or meter gets a value, one that is gone is taken out, and
    a value that can no longer be shown gives way to one that can. `renamed` holds old part names to new.
    """
    number = place(layout, name)
    old = layout.screens[number]
    screens = (*layout.screens[:number], screen, *layout.screens[number + 1 :])
    if screen.name == old.name and not renamed and _shows(old.parts) == _shows(screen.parts):
        return replace(layout, screens=screens)
    before = {part.name: part for part in old.parts}
    origin = {new: gone for gone, new in (renamed or {}).items()}
    moments = tuple(
        _kept(moment, screen, before, origin) if moment.screen == name else moment
        for moment in layout.moments
    )
    return replace(layout, screens=screens, moments=moments)


def place(layout: Layout, screen: str) -> int:
    """Return a screen's number; raises KeyError."""
    for number, known in enumerate(layout.screens):
        if known.name == screen:
            return number
    raise KeyError(screen)


def usual(content: Content) -> Value:
    """Return a value in the middle of what a content can show: arguments where they fit, else a text."""
    arguments = tuple(_middle(argument) for argument in content.arguments)
    if arguments:
        try:
            text(content, arguments)
        except Problem:
            pass
        else:
            return arguments
    try:
        return _any_text(graph(content))
    except Problem:
        return ""


def _shows(parts: Sequence[Part]) -> list[tuple[str, object]]:
    """Return what the moments depend on: fields' contents, icons' state names, meters' ranges."""
    found: list[tuple[str, object]] = []
    for part in parts:
        if isinstance(part, Field):
            found.append((part.name, part.content))
        elif isinstance(part, Icon):
            found.append((part.name, [state.name for state in part.states]))
        elif isinstance(part, Meter):
            found.append((part.name, (part.least, part.greatest)))
    return found


def _kept(moment: Moment, screen: Screen, before: Mapping[str, Part], origin: Mapping[str, str]) -> Moment:
    fields: dict[str, Value] = {}
    icons: dict[str, str] = {}
    meters: dict[str, int | None] = {}
    for part in screen.parts:
        gone = origin.get(part.name, part.name)
        old = before.get(gone)
        if isinstance(part, Field):
            value = moment.fields.get(gone)
            if value is None or not isinstance(old, Field):
                fields[part.name] = usual(part.content)
            else:
                fields[part.name] = value if old.content == part.content else _fitted(value, old, part)
        elif isinstance(part, Icon):
            icons[part.name] = _state(moment.icons.get(gone), old, part)
        elif isinstance(part, Meter):
            known = gone in moment.meters and isinstance(old, Meter)
            meters[part.name] = _level(moment.meters[gone], old, part) if known else _half(part)
    return replace(moment, screen=screen.name, fields=fields, icons=icons, meters=meters)


def _half(meter: Meter) -> int:
    return (meter.least + meter.greatest) // 2


def _level(value: int | None, old: Part | None, new: Meter) -> int | None:
    """Return a meter's value after a change of its range: what it could show, it still can."""
    if value is None or not isinstance(old, Meter) or not old.least <= value <= old.greatest:
        return value
    return min(max(value, new.least), new.greatest)


def _state(name: str | None, old: Part | None, icon: Icon) -> str:
    """Return the state that a moment shows now: the same, else the one in its place, else the first."""
    names = [state.name for state in icon.states]
    if name in names:
        return name
    if isinstance(old, Icon) and len(old.states) == len(names):
        earlier = [state.name for state in old.states]
        if name in earlier:
            return names[earlier.index(name)]
    return names[0]


def _fitted(value: Value, old: Field, new: Field) -> Value:
    """Return a moment's value that the new content can show, the old one if it still can."""
    content = new.content
    try:
        shown = graph(content)
    except Problem:
        return value
    if isinstance(value, str):
        if shown.accepts(value):
            return value
        for role in ("fault", "first"):
            instead = getattr(content, role)
            if value == getattr(old.content, role) and instead is not None:
                return str(instead)
        return usual(content)
    for attempt in (value, tuple(map(_within, value, content.arguments))):
        try:
            text(content, attempt)
        except Problem:
            continue
        return attempt
    return usual(content)


def _within(value: Argument, argument: Range) -> Argument:
    """Return the nearest number of a range to a number; anything else as it is."""
    if isinstance(value, str) or not isinstance(argument, WholeRange | RealRange):
        return value
    inside = min(max(value, argument.least), argument.greatest)
    if isinstance(argument, RealRange):
        return float(inside)
    return int(inside) - (int(inside) - argument.least) % argument.step


def _middle(argument: Range) -> Argument:
    if isinstance(argument, WholeRange):
        steps = (argument.greatest - argument.least) // argument.step
        return argument.least + steps // 2 * argument.step
    if isinstance(argument, RealRange):
        return round((argument.least + argument.greatest) / 2, 3)
    if isinstance(argument, Choice):
        return argument.texts[0]
    sample = argument.characters or "".join(first for first, _ in argument.ranges)
    length = min(max(argument.shortest, min(argument.longest, LONGEST_SAMPLE)), argument.longest)
    return (sample * length)[:length] if sample else ""


def _any_text(shown: Graph) -> str:
    node, found = 0, ""
    while shown.edges[node] and not (found and shown.ends[node]):
        node, chars = shown.edges[node][0]
        found += chars[0]
    return found
