"""Fonts that installed packages register by entry points, in the groups `fonts_ttf` and `fonts_otf`.

Read from the files themselves: importlib.metadata takes longer to load than everything else here together.
"""

from __future__ import annotations

import importlib
import os
import sys
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

GROUPS = ("fonts_ttf", "fonts_otf")


@dataclass(frozen=True, slots=True)
class Registration:
    """One entry point: `target` (``module:attribute``) is a mapping of font names to paths."""

    group: str
    package: str
    target: str


def package_fonts() -> Iterator[tuple[str, Path, str]]:
    """Yield (name, path, package) of every registered font that exists, TTF before OTF.

    A package that is broken is passed over, since others may be sound.
    """
    found = registrations(tuple(sys.path))
    for group in GROUPS:
        for registration in found:
            if registration.group == group:
                for name, path in _fonts(registration.target):
                    yield name, path, registration.package


@lru_cache(maxsize=8)
def registrations(folders: tuple[str, ...]) -> tuple[Registration, ...]:
    """Return the entry points of both groups that are installed in `folders`, in their order."""
    found: dict[tuple[str, str, str], Registration] = {}
    for folder in folders:
        try:
            names = sorted(
                entry.name
                for entry in os.scandir(folder or ".")
                if entry.name.endswith((".dist-info", ".egg-info"))
            )
        except OSError:
            continue
        for name in names:
            package = name.partition("-")[0].removesuffix(".egg-info").replace("_", "-")
            try:
                text = Path(folder, name, "entry_points.txt").read_text("utf-8")
            except (OSError, UnicodeDecodeError):
                continue
            for group, entry, target in _parsed(text):
                found.setdefault((group, package, entry), Registration(group, package, target))
    return tuple(found.values())


def _parsed(text: str) -> Iterator[tuple[str, str, str]]:
    """Yield (group, name, target) of the wanted groups of an entry_points.txt file."""
    if not any(group in text for group in GROUPS):
        return
    group = ""
    for line in text.splitlines():
        stripped = line.strip()
        if stripped.startswith("["):
            group = stripped.strip("[]").strip()
        elif group in GROUPS and not stripped.startswith(("#", ";")):
            name, equals, target = stripped.partition("=")
            if equals:
                yield group, name.strip(), target.partition("[")[0].strip()


@lru_cache(maxsize=64)
def _fonts(target: str) -> tuple[tuple[str, Path], ...]:
    module, _, attributes = target.partition(":")
    try:
        value = importlib.import_module(module)
        for attribute in filter(None, attributes.split(".")):
            value = getattr(value, attribute)
        if not isinstance(value, Mapping):
            return ()
        listed = [(name, Path(path)) for name, path in value.items() if isinstance(name, str) and name]
        return tuple(sorted((name, path) for name, path in listed if path.is_file()))
    except (Exception, SystemExit):  # whatever somebody else's module does when it is loaded
        return ()
