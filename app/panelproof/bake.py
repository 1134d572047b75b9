"""The command `bake`: types of a layout written as bitmap files beside it, and the layout pointed to them."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from msgspec.structs import replace

from panelproof.command import CLEAN
from panelproof.glyphs import baking
from panelproof.glyphs.catalogue import find
from panelproof.glyphs.file import read
from panelproof.glyphs.type import Type, open_type
from panelproof.layout.document import Layout, TypeSpec
from panelproof.layout.parts import Field, Label
from panelproof.layout.wording import hint, quote
from panelproof.material import Material, field_graph
from panelproof.problem import Problem


@dataclass(frozen=True, slots=True)
class Baked:
    """One type baked: the file's name beside the layout, its bytes, how many glyphs, and what is worth knowing."""

    type: str
    file: str
    data: bytes
    glyphs: int
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Batch:
    """The layout with its types pointed to their files, those files, and why the other types were left alone."""

    layout: Layout
    baked: tuple[Baked, ...]
    left: tuple[str, ...]


def bake(material: Material, names: Iterable[str] = (), *, every: bool = False, again: bool = False) -> Batch:
    """Bake the types of these names (by default all that are drawn from outlines).

    Baked are the characters that the layout's contents can show in a type, or with `every` all of its font. With `again`
    types that were baked are baked anew from the font that they came from.
    Raises Problem where there is no such type, a type's characters cannot be drawn, or its font is not to be found.
    """
    layout = material.layout
    wanted = list(names)
    known = [spec.name for spec in layout.types]
    for name in wanted:
        if name not in known:
            raise Problem(f"there is no type {quote(name)}{hint(name, known)}", "--type")
    types, made, left = [], [], []
    for number, spec in enumerate(layout.types):
        types.append(spec)
        if wanted and spec.name not in wanted:
            continue
        try:
            outcome = _baked(material, spec, every=every, again=again)
        except Problem as problem:
            raise Problem(problem.message, f"types[{number}]") from None
        if isinstance(outcome, str):
            left.append(outcome)
            continue
        made.append(outcome)
        types[-1] = replace(spec, font=outcome.file, size=material.types[spec.name].size, hinting=True)
    return Batch(replace(layout, types=tuple(types)), tuple(made), tuple(left))


def shown_in(material: Material, name: str) -> set[str]:
    """Return every character that the layout's contents can show in a type."""
    found: set[str] = set()
    for screen in material.layout.screens:
        for part in screen.parts:
            if isinstance(part, Label) and part.type == name:
                found.update(part.text)
            elif isinstance(part, Field) and part.type == name:
                found |= field_graph(part).alphabet()
    return found


def _baked(material: Material, spec: TypeSpec, *, every: bool, again: bool) -> Baked | str:
    type_, source, hinting = material.types[spec.name], spec.font, spec.hinting
    if type_.native:
        if not type_.baked.source:
            return f"the type `{spec.name}` is of bitmaps already"
        if not again:
            return (
                f"the type `{spec.name}` is baked already, from {type_.baked.source}; --again bakes it anew"
            )
        source, hinting = type_.baked.source, "without hinting" not in type_.baked.as_
        type_ = _source(material, spec, source, hinting)
    characters = set(type_.characters()) if every else shown_in(material, spec.name)
    if not characters:
        return f"the type `{spec.name}` shows nothing in this layout; --all bakes all of its font"
    file = f"{material.layout.name}-{spec.name}.bdf"
    _check_file(material.folder / file)
    lacking = sorted(char for char in characters if type_.glyph(char) is None)
    notes = [f"the font has no {', '.join(quote(char) for char in lacking[:8])}"] if lacking else []
    origin, said = _origin(type_.path, source, hinting)
    data = baking.bdf(type_, characters, file.removesuffix(".bdf"), origin)
    return Baked(spec.name, file, data, len(characters) - len(lacking), tuple(notes + said))


def _source(material: Material, spec: TypeSpec, source: str, hinting: bool) -> Type:
    return open_type(find(source, material.folder), spec.size, spec.rendering, spec.kerning, hinting)


def _origin(path: Path, source: str, hinting: bool) -> tuple[baking.Origin, list[str]]:
    """Return where the glyphs come from, and a sentence where the font's maker restricts its use."""
    from panelproof.glyphs.licence import embedding  # noqa: PLC0415 - loads fontTools

    try:
        found = embedding(path)
    except Problem:
        return baking.Origin(source, hinting), []
    licence = " ".join(filter(None, (found.licence, found.licence_url)))
    said = f"ask the font's maker before you hand the file on: the font {found}"
    return baking.Origin(source, hinting, found.copyright, licence), [said[:300]] if found.restricts else []


def _check_file(path: Path) -> None:
    """Raise Problem where a file of that name is there that is no baked type."""
    if not path.exists():
        return
    try:
        ours = bool(baking.read(read(path).data, path.name).source)
    except Problem:
        ours = False
    if not ours:
        raise Problem(
            f"there is a file {quote(path.name)} already that is no baked type; move it away, or rename the type"
        )


def run(options: Namespace) -> int:
    """Write the files, then the layout that names them."""
    from panelproof.layout.saving import save  # noqa: PLC0415
    from panelproof.layout.writing import write  # noqa: PLC0415
    from panelproof.tasks import load  # noqa: PLC0415 - which knows this command

    path: Path = options.layout
    material = load(path)
    try:
        batch = bake(material, options.type or (), every=options.all, again=options.again)
    except Problem as problem:
        place = problem.place if problem.place.startswith("--") else f"{path}: {problem.place}"
        raise Problem(problem.message, place) from None
    for reason in batch.left:
        print(reason)
    for one in batch.baked:
        save(path.parent / one.file, one.data)
        print(f"wrote {path.parent / one.file} ({one.glyphs} glyphs)")
        for note in one.notes:
            print(f"  {note}")
    if batch.baked:
        write(batch.layout, path)
        names = ", ".join(f"`{one.type}`" for one in batch.baked)
        print(f"wrote {path}: {names} {'is' if len(batch.baked) == 1 else 'are'} drawn from there now")
    return CLEAN
