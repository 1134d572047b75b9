"""The other sizes of a type's family."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from msgspec.structs import replace

from panelproof.glyphs.catalogue import stem
from panelproof.glyphs.type import GREATEST_SIZE, Type
from panelproof.layout.document import TypeSpec

NUMBERED = re.compile(r"(.*?)(\d+)(\D*)", re.DOTALL)


def larger(spec: TypeSpec, type_: Type, least: int) -> Iterator[tuple[TypeSpec, Path]]:
    """Yield the same type in each larger size from `least` pixels per em on, smallest first, with its font file.

    Outlines have every size; a bitmap font's are the files beside it whose names differ in the first number alone.
    """
    if not type_.native:
        for size in range(max(least, type_.size + 1), GREATEST_SIZE + 1):
            yield replace(spec, size=size), type_.path
        return
    yield from (entry for number, entry in _files(spec, type_) if number > 0)


def smaller(spec: TypeSpec, type_: Type) -> Iterator[tuple[TypeSpec, Path]]:
    """Yield the same type in each smaller size, the largest first, with its font file."""
    if not type_.native:
        for size in range(type_.size - 1, 0, -1):
            yield replace(spec, size=size), type_.path
        return
    yield from (entry for number, entry in reversed(_files(spec, type_)) if number < 0)


def _files(spec: TypeSpec, type_: Type) -> list[tuple[int, tuple[TypeSpec, Path]]]:
    """Return a bitmap font's other sizes, ascending, each with how much its number is above the font's own."""
    own = NUMBERED.fullmatch(stem(type_.path.name) or "")
    if own is None:
        return []
    found = []
    for path in type_.path.parent.iterdir():
        other = NUMBERED.fullmatch(stem(path.name) or "")
        alike = other and (other[1], other[3], path.suffix) == (own[1], own[3], type_.path.suffix)
        if alike and other and int(other[2]) != int(own[2]):
            named = path.name if stem(spec.font) else stem(path.name) or path.name
            entry = replace(spec, font=str(Path(spec.font).with_name(named)), size=None), path
            found.append((int(other[2]) - int(own[2]), entry))
    return sorted(found, key=lambda one: one[0])
