"""Parts as bytes for the clipboard, with the types and inks they need, and back into a layout."""

from __future__ import annotations

import os
from collections.abc import Callable, Collection
from pathlib import Path

import msgspec
from msgspec import Struct
from msgspec.structs import replace

from panelproof.editor.keeping import place, with_screen
from panelproof.editor.naming import free_name
from panelproof.editor.references import inks_of, renamed, type_of
from panelproof.editor.shifting import moved, room
from panelproof.glyphs.catalogue import stem
from panelproof.layout.checking import problems
from panelproof.layout.document import FORMAT, Ink, Layout, Screen, TypeSpec
from panelproof.layout.parts import Icon, Part, Picture
from panelproof.problem import Problem

MIME = "application/x-panelproof-parts"


class _Clip(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True):
    """What is copied: parts, the types and inks they name, and the folder their paths are relative to."""

    format: int
    parts: tuple[Part, ...]
    types: tuple[TypeSpec, ...] = ()
    inks: tuple[Ink, ...] = ()
    folder: str = ""


def parts_to_clipboard(
    layout: Layout, screen: str, names: Collection[str], folder: Path | None = None
) -> bytes:
    """Return parts as JSON bytes; `folder` is what the layout's paths are relative to."""
    shown = layout.screens[place(layout, screen)]
    parts = tuple(part for part in shown.parts if part.name in names)
    types = {type_of(part) for part in parts}
    inks = frozenset[str]().union(*(inks_of(part) for part in parts))
    clip = _Clip(
        FORMAT,
        parts,
        tuple(spec for spec in layout.types if spec.name in types),
        tuple(ink for ink in layout.inks if ink.name in inks),
        str(folder.resolve()) if folder is not None else "",
    )
    return msgspec.json.encode(clip)


def from_clipboard(
    layout: Layout, screen: str, data: bytes, dx: int = 0, dy: int = 0, *, folder: Path | None = None
) -> tuple[Layout, tuple[str, ...]]:
    """Add copied parts to a screen, moved by (dx, dy); their names there come with the layout.

    A type or ink that the layout has, under whatever name, is taken from it; another is added. With `folder`,
    paths lead to the same files as where the parts were copied. Raises Problem for bytes that are no copied
    parts.
    """
    clip = _read(layout, data)
    if folder is not None and clip.folder and Path(clip.folder) != folder.resolve():
        clip = _seen_from(clip, folder.resolve())
    types, inks = list(layout.types), list(layout.inks)
    type_names = {spec.name: _type_here(spec, types) for spec in clip.types}
    ink_names = {ink.name: _ink_here(ink, inks) for ink in clip.inks}
    target = layout.screens[place(layout, screen)]
    taken = [part.name for part in target.parts]
    dx, dy = room(clip.parts, dx, dy)
    pasted: list[Part] = []
    for part in clip.parts:
        name = free_name(part.name, taken)
        taken.append(name)
        pasted.append(replace(renamed(moved(part, dx, dy), type_names, ink_names), name=name))
    grown = replace(layout, types=tuple(types), inks=tuple(inks))
    result = with_screen(grown, screen, replace(target, parts=(*target.parts, *pasted)))
    return result, tuple(part.name for part in pasted)


def _read(layout: Layout, data: bytes) -> _Clip:
    nothing = Problem("what was copied holds no parts of a layout")
    try:
        clip = msgspec.json.decode(data, type=_Clip)
    except (msgspec.DecodeError, UnicodeDecodeError, RecursionError):
        raise nothing from None
    if clip.format > FORMAT:
        raise Problem("these parts were copied from a newer version of the program")
    if not layout.panel.colours.blends:
        clip = replace(clip, types=tuple(replace(spec, rendering="one-bit") for spec in clip.types))
    # Bytes may come from anywhere: the parts must be able to stand in a layout of their own.
    if not clip.parts:
        raise nothing
    # Pictures bring no ink.
    inks = clip.inks or (Ink("ground", "#000000"),)
    alone = Screen("alone", inks[0].name, clip.parts)
    if problems(Layout(FORMAT, "copied", layout.panel, clip.types, inks, (alone,))):
        raise nothing
    return clip


def _seen_from(clip: _Clip, folder: Path) -> _Clip:
    """Return the same parts with their paths relative to another folder."""

    def path(old: str) -> str:
        return os.path.relpath(Path(clip.folder) / old, folder).replace(os.sep, "/")

    types = tuple(
        replace(spec, font=path(spec.font)) if stem(spec.font) is not None else spec for spec in clip.types
    )
    return replace(clip, types=types, parts=tuple(_with_pictures(part, path) for part in clip.parts))


def _with_pictures(part: Part, path: Callable[[str], str]) -> Part:
    if isinstance(part, Picture):
        return replace(part, picture=path(part.picture))
    if not isinstance(part, Icon):
        return part
    states = tuple(
        state if state.picture is None else replace(state, picture=path(state.picture))
        for state in part.states
    )
    return replace(part, states=states)


def _type_here(spec: TypeSpec, types: list[TypeSpec]) -> str:
    """Return the name of the same type among `types`, where it is added if there is none."""
    same = [known.name for known in types if replace(known, name=spec.name) == spec]
    if same:
        return spec.name if spec.name in same else same[0]
    name = free_name(spec.name, [known.name for known in types])
    types.append(replace(spec, name=name))
    return name


def _ink_here(ink: Ink, inks: list[Ink]) -> str:
    """Return the name of an ink of the same colour among `inks`, where it is added if there is none."""
    same = [known.name for known in inks if known.colour.lower() == ink.colour.lower()]
    if same:
        return ink.name if ink.name in same else same[0]
    name = free_name(ink.name, [known.name for known in inks])
    inks.append(replace(ink, name=name))
    return name
