"""The layout file on disk: what stands there, whether another program changed it, and moving it elsewhere."""

from __future__ import annotations

import hashlib
import os
import stat
from dataclasses import dataclass
from pathlib import Path

from msgspec.structs import replace

from panelproof.glyphs.file import SUFFIXES
from panelproof.layout.document import Layout, Screen
from panelproof.layout.fitting import fitting
from panelproof.layout.parts import Icon, Part, Picture
from panelproof.layout.reading import read
from panelproof.layout.writing import write

ENDING = ".panel.json"
UNTITLED = "untitled"
"""Name of a layout that has not been saved; it takes its file's name then."""


@dataclass(frozen=True, slots=True)
class Stamp:
    """What stood in a file when it was looked at; `digest` is empty where there was none."""

    digest: str = ""

    @property
    def there(self) -> bool:
        """Whether there was a file."""
        return bool(self.digest)


GONE = Stamp()


def stamp(path: Path) -> Stamp:
    """Return the stamp of a file by all that it holds, so that neither a clock nor a mere touch matters."""
    try:
        if not stat.S_ISREG(path.stat().st_mode):
            return GONE
        with path.open("rb") as file:
            return Stamp(hashlib.file_digest(file, "sha256").hexdigest())
    except (OSError, ValueError):
        return GONE


def load(path: Path) -> tuple[Layout, Stamp]:
    """Return the layout in a file and the stamp of just that content; raises Problem as `read` does."""
    before = stamp(path)
    while True:
        layout = read(path)
        after = stamp(path)
        if after == before:
            return layout, after
        before = after


def store(layout: Layout, path: Path) -> Stamp:
    """Write a layout's file whole or not at all and return its stamp; raises Problem as `write` does."""
    write(layout, path)
    return stamp(path)


def suited(path: Path) -> Path:
    """Return a path that a person typed with the ending of a layout file."""
    if path.name.lower().endswith(".json"):
        return path
    return path.with_name(path.name + ENDING)


def title(path: Path | None) -> str:
    """Return what a file is called in a title."""
    return UNTITLED if path is None else path.name


def named_after(layout: Layout, path: Path) -> Layout:
    """Return an untitled layout with a name after its file; another layout keeps its name."""
    if layout.name != UNTITLED:
        return layout
    return replace(layout, name=fitting(path.name.removesuffix(".json").removesuffix(".panel")))


def rebased(layout: Layout, old: Path, new: Path) -> Layout:
    """Return the layout with its relative paths, so far seen from `old`, seen from `new`."""
    if old == new:
        return layout
    types = tuple(
        replace(spec, font=_seen(spec.font, old, new)) if spec.font.lower().endswith(SUFFIXES) else spec
        for spec in layout.types
    )
    screens = tuple(_screen(screen, old, new) for screen in layout.screens)
    return replace(layout, types=types, screens=screens)


def _screen(screen: Screen, old: Path, new: Path) -> Screen:
    return replace(screen, parts=tuple(_part(part, old, new) for part in screen.parts))


def _part(part: Part, old: Path, new: Path) -> Part:
    if isinstance(part, Picture):
        return replace(part, picture=_seen(part.picture, old, new))
    if not isinstance(part, Icon):
        return part
    states = tuple(
        state if state.picture is None else replace(state, picture=_seen(state.picture, old, new))
        for state in part.states
    )
    return replace(part, states=states)


def _seen(path: str, old: Path, new: Path) -> str:
    if Path(path).is_absolute():
        return path
    full = os.path.normpath(old.absolute() / path)
    try:
        return Path(os.path.relpath(full, new.absolute())).as_posix()
    except ValueError:  # on another drive
        return Path(full).as_posix()
