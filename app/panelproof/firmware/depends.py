"""What a header comes from, as a rule that make, ninja and CMake read."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from panelproof.layout.parts import Icon, Picture
from panelproof.material import Material


def sources(material: Material, layout: Path) -> tuple[Path, ...]:
    """Return the files that a header is made of: the layout's own, its fonts and its pictures, each once."""
    found = [layout, *(type.path for type in material.types.values())]
    for screen in material.layout.screens:
        for part in screen.parts:
            if isinstance(part, Icon):
                found += [
                    material.folder / state.picture for state in part.states if state.picture is not None
                ]
            elif isinstance(part, Picture):
                found.append(material.folder / part.picture)
    return tuple(dict.fromkeys(found))


def rule(header: Path, needed: Iterable[Path]) -> str:
    """Return the rule `header: files`, and for each file one without a recipe, so that a lost one stops no make."""
    words = [_escaped(path) for path in needed]
    first = " \\\n  ".join([f"{_escaped(header)}:", *words])
    return "\n".join([first, *(f"{word}:" for word in words), ""])


def _escaped(path: Path) -> str:
    text = str(path).replace("$", "$$")
    for char in " #:":
        text = text.replace(char, f"\\{char}")
    return text
