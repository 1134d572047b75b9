"""Reads glyphs drawn as text grids.

A strip of glyphs stands side by side under a line that names them:

    = A B(0,1) U+0023
    ..#..  ####.  .#.#.
    ...

A name is the character itself, `U+` and its number, or a longer name for a shape that only serves others
(`A.low`). After a name, `(l,r)` sets the blank columns before and after the grid; otherwise the line
`sides l r` in force does. `@ -2` at the end of the naming line puts the last row two pixels below the
baseline.
A line that starts with `;` is a remark. `space U+2007 8` gives a blank character its advance.
"""

from __future__ import annotations

import re
from pathlib import Path

from fonts_free.drawing.glyph import Glyph

NAME = re.compile(r"(?P<name>.|U\+[0-9A-F]{4,5}|[^\s()]{2,})(\((?P<left>-?\d+),(?P<right>-?\d+)\))?")


def key(name: str) -> str:
    """The key of a glyph: its character, or its longer name."""
    return chr(int(name[2:], 16)) if re.fullmatch(r"U\+[0-9A-F]{4,5}", name) else name


def read_grids(path: Path) -> dict[str, Glyph]:
    """All glyphs of one grid file by key."""
    glyphs: dict[str, Glyph] = {}
    sides = (0, 1)
    names: list[str] = []
    bottom = 0
    strips: list[list[str]] = []

    def close() -> None:
        for name, rows in zip(names, zip(*strips, strict=True), strict=True):
            found = NAME.fullmatch(name)
            if found is None or len({len(row) for row in rows}) != 1 or set("".join(rows)) - {"#", "."}:
                raise ValueError(f"{path.name}: the grid of {name} is not a rectangle of # and .")
            left, right = sides
            if found["left"] is not None:
                left, right = int(found["left"]), int(found["right"])
            if key(found["name"]) in glyphs:
                raise ValueError(f"{path.name}: {name} is drawn twice")
            glyphs[key(found["name"])] = Glyph(tuple(rows), bottom, left, left + len(rows[0]) + right)

    for number, line in enumerate([*path.read_text(encoding="utf-8").splitlines(), ""], 1):
        words = line.split()
        if words and words[0] not in {"=", "sides", "space"} and not line.startswith(";"):
            if len(words) != len(names):
                raise ValueError(f"{path.name}:{number}: {len(words)} grids under {len(names)} names")
            strips.append(words)
            continue
        if strips:
            close()
            names, strips = [], []
        if not words or line.startswith(";"):
            continue
        if words[0] == "sides":
            sides = (int(words[1]), int(words[2]))
        elif words[0] == "space":
            glyphs[key(words[1])] = Glyph((), 0, 0, int(words[2]))
        else:
            names, bottom = words[1:], 0
            if len(names) > 2 and names[-2] == "@":
                names, bottom = names[:-2], int(names[-1])
    return glyphs
