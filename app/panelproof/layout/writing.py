"""Writing a layout file: one way only, so that a change of the layout is a small change of the file."""

from __future__ import annotations

import json
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path

import msgspec

from panelproof.layout.document import Layout, Moment, Screen
from panelproof.layout.reading import valid
from panelproof.layout.saving import save
from panelproof.problem import Problem

WIDTH = 110
INDENT = 2
# Always one entry a line: the layout's own lists, so that adding one moves no other, and bitmaps, to be seen.
OPEN = frozenset({"types", "inks", "screens", "parts", "moments", "rows"})


def encode(layout: Layout) -> bytes:
    """Return the bytes of a layout's file, in UTF-8, with the keys in the order of the structs.

    An object or list takes one line where it fits in 110 columns. Else a list takes one line an entry, and an
    object as few as its plain entries go into, each other entry with lines of its own. What has its default
    value is left out. Raises Problem for a value that a file could not hold; references are not
    looked at.
    """
    layout = valid(layout)
    screens = {screen.name: screen for screen in layout.screens}
    moments = tuple(_in_order(moment, screens.get(moment.screen)) for moment in layout.moments)
    tree = _plain(msgspec.structs.replace(layout, moments=moments))
    try:
        return ("\n".join(_lines(tree, 0, opened=True)) + "\n").encode()
    except UnicodeEncodeError:
        raise Problem("a text holds half a character (a lone surrogate), which no file can hold") from None
    except ValueError:
        raise Problem("a number is infinite or not a number, which no file can hold") from None


@lru_cache(maxsize=64)
def _defaults(kind: type[msgspec.Struct]) -> dict[str, object]:
    """Return the usual value of each field that has one."""
    found: dict[str, object] = {}
    for field in msgspec.structs.fields(kind):
        if field.default is not msgspec.NODEFAULT:
            found[field.name] = field.default
        elif field.default_factory is not msgspec.NODEFAULT:
            found[field.name] = field.default_factory()
    return found


def _plain(value: object) -> object:
    """Return a value as lists and dicts, usual values left out.

    Not left to msgspec, which takes two equal words for different where they are two objects in memory.
    """
    if isinstance(value, msgspec.Struct):
        kind, config = type(value), value.__struct_config__
        tree: dict[str, object] = {config.tag_field: config.tag} if config.tag_field else {}
        usual = _defaults(kind)
        for name in value.__struct_fields__:
            held = getattr(value, name)
            if name not in usual or held != usual[name] or type(held) is not type(usual[name]):
                tree[name] = _plain(held)
        return tree
    if isinstance(value, tuple | list):
        return [_plain(one) for one in value]
    if isinstance(value, dict):
        return {key: _plain(one) for key, one in value.items()}
    return value


def write(layout: Layout, path: Path) -> None:
    """Write a layout's file whole or not at all; raises Problem as `encode` and `saving.save` do."""
    try:
        data = encode(layout)
    except Problem as problem:
        raise Problem(
            problem.message, ": ".join(part for part in (str(path), problem.place) if part)
        ) from None
    save(path, data)


def _in_order(moment: Moment, screen: Screen | None) -> Moment:
    """Return a moment whose values stand in the order of its screen's parts, strangers last."""
    place = {part.name: number for number, part in enumerate(screen.parts if screen else ())}

    def key(name: str) -> tuple[int, str]:
        return place.get(name, len(place)), name

    return msgspec.structs.replace(
        moment,
        fields={name: moment.fields[name] for name in sorted(moment.fields, key=key)},
        icons={name: moment.icons[name] for name in sorted(moment.icons, key=key)},
        meters={name: moment.meters[name] for name in sorted(moment.meters, key=key)},
    )


def _line(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, allow_nan=False)


def _lines(value: object, indent: int, before: str = "", after: str = "", opened: bool = False) -> list[str]:
    """Return the lines of a value, with its key before it and the comma after it."""
    margin = " " * indent
    if not opened and not _holds_open(value):
        line = f"{margin}{before}{_line(value)}{after}"
        if len(line) <= WIDTH:
            return [line]
    if isinstance(value, Mapping):
        return [f"{margin}{before}{{", *_entries(value, indent + INDENT, opened), f"{margin}}}{after}"]
    if isinstance(value, list | tuple):
        last = len(value) - 1
        lines = [f"{margin}{before}["]
        for number, entry in enumerate(value):
            lines += _lines(entry, indent + INDENT, after="," if number < last else "")
        return [*lines, f"{margin}]{after}"]
    return [f"{margin}{before}{_line(value)}{after}"]


def _entries(value: Mapping[str, object], indent: int, opened: bool) -> list[str]:
    """Return the lines between the braces of an object; plain entries share lines unless it is opened."""
    lines: list[str] = []
    last = len(value) - 1
    shared = False
    for number, (key, entry) in enumerate(value.items()):
        before, after = f"{_line(key)}: ", "," if number < last else ""
        own = _lines(entry, indent, before, after, _is_open(key, entry))
        plain = not opened and len(own) == 1 and _is_plain(entry)
        if plain and shared and len(lines[-1]) + 1 + len(own[0]) - indent <= WIDTH:
            lines[-1] += f" {own[0][indent:]}"
        else:
            lines += own
        shared = plain
    return lines


def _is_open(key: str, entry: object) -> bool:
    return key in OPEN and isinstance(entry, list | tuple)


def _is_plain(value: object) -> bool:
    """Tell whether a value is a text, number or the like, or a list of such."""
    entries = value if isinstance(value, list | tuple) else (value,)
    return not any(isinstance(entry, Mapping | list | tuple) for entry in entries)


def _holds_open(value: object) -> bool:
    if isinstance(value, Mapping):
        return any(_is_open(key, entry) or _holds_open(entry) for key, entry in value.items())
    return isinstance(value, list | tuple) and any(_holds_open(entry) for entry in value)
