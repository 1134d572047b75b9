"""The types and inks that a part names."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec.structs import replace

from panelproof.layout.parts import Box, Field, Icon, Label, Meter, Part, Picture, Rule

NONE: Mapping[str, str] = {}


def type_of(part: Part) -> str | None:
    """Return the name of the type that a part's text is set in; None for parts without text."""
    return part.type if isinstance(part, Label | Field) else None


def inks_of(part: Part) -> frozenset[str]:
    """Return the names of every ink of a part, grounds and states included."""
    named: set[str | None] = set()
    if isinstance(part, Box):
        named = {part.fill, part.outline}
    elif isinstance(part, Rule):
        named = {part.ink}
    elif not isinstance(part, Picture):
        named = {part.ink, part.ground}
        if isinstance(part, Icon):
            named |= {state.ink for state in part.states}
        if isinstance(part, Meter):
            named |= {limit.ink for limit in part.limits}
    return frozenset(name for name in named if name is not None)


def renamed(part: Part, types: Mapping[str, str] = NONE, inks: Mapping[str, str] = NONE) -> Part:
    """Return a part that names other types and inks; what a mapping does not hold stays."""

    def ink(name: str) -> str:
        return inks.get(name, name)

    def may(name: str | None) -> str | None:
        return None if name is None else ink(name)

    if isinstance(part, Box):
        return replace(part, fill=may(part.fill), outline=may(part.outline))
    if isinstance(part, Rule):
        return replace(part, ink=ink(part.ink))
    if isinstance(part, Picture):
        return part
    if isinstance(part, Icon):
        states = tuple(replace(state, ink=may(state.ink)) for state in part.states)
        return replace(part, ink=ink(part.ink), ground=may(part.ground), states=states)
    if isinstance(part, Meter):
        limits = tuple(replace(limit, ink=may(limit.ink)) for limit in part.limits)
        return replace(part, ink=ink(part.ink), ground=may(part.ground), limits=limits)
    set_in = types.get(part.type, part.type)
    return replace(part, type=set_in, ink=ink(part.ink), ground=may(part.ground))
