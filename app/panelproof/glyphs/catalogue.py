"""The fonts that can be used: the project's own, those of installed packages, and the system's."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from panelproof.bundled import bundled
from panelproof.glyphs.file import SUFFIXES, Kind, read
from panelproof.glyphs.packages import package_fonts
from panelproof.problem import Problem


@dataclass(frozen=True, slots=True)
class FontEntry:
    """One font that a layout can name: `find(name, folder)` gives `path`.

    `origin` is ``bundled``, ``package NAME`` or ``system``; family and style are the font file's own words,
    empty where it has none; `kind` is the format of the file.
    """

    name: str
    path: Path
    origin: str
    family: str
    style: str
    kind: Kind


def find(name: str, folder: Path) -> Path:
    """Return the file of a font, named by its path relative to `folder` or by a name from `fonts`.

    It is a path if it ends as a font file's name does. Names are looked for among the bundled fonts, then the
    packages', then the system's (its files' names without the suffix). Whether a path leads to a file is not
    looked at. Raises Problem for a name that nothing has.
    """
    if name.lower().endswith(SUFFIXES):
        return folder / name
    path = _located(name)
    if path is None:
        raise Problem(_unknown(name))
    return path


@lru_cache(maxsize=256)
def _located(name: str) -> Path | None:
    return next((path for known, path, _ in _named() if known == name), None)


def fonts() -> list[FontEntry]:
    """Return every font that can be used by name, by origin and name; broken files are left out."""
    entries: dict[str, FontEntry] = {}
    known: set[str] = set()
    for name, path, origin in _named():
        if name not in known:
            known.add(name)
            entry = _described(name, path, origin)
            if entry is not None:
                entries[name] = entry
    order = ("bundled", "package", "system")
    return sorted(
        entries.values(), key=lambda entry: (order.index(entry.origin.split()[0]), entry.origin, entry.name)
    )


def bundled_folder() -> Path | None:
    """Return the folder of the fonts that come with the program, or None where there is none."""
    return bundled("fonts_free")


def forget() -> None:
    """Look names and the system's fonts up anew the next time, after fonts were added or removed."""
    _system_fonts.cache_clear()
    _located.cache_clear()


def stem(file_name: str) -> str | None:
    """Return a font file's name without its suffix, None for the name of any other file."""
    lower = file_name.lower()
    suffix = next((suffix for suffix in SUFFIXES if lower.endswith(suffix)), None)
    return file_name[: -len(suffix)] or None if suffix else None


def _named() -> Iterator[tuple[str, Path, str]]:
    """Yield (name, path, origin) of every font, in the order in which names are looked for."""
    folder = bundled_folder()
    if folder is not None:
        for name, path in sorted(_in_folder(folder).items()):
            yield name, path, "bundled"
    for name, path, package in package_fonts():
        yield name, path, f"package {package}"
    for name, path in _system_fonts().items():
        yield name, path, "system"


def _in_folder(folder: Path) -> dict[str, Path]:
    """Return the font files in a folder and the folders in it, by stem; of several alike the first."""
    found: dict[str, Path] = {}
    seen: set[str] = set()
    for parent, folders, files in os.walk(folder, followlinks=True):
        real = os.path.realpath(parent)
        if real in seen:  # a link that leads back up
            folders.clear()
            continue
        seen.add(real)
        folders.sort()
        for file in sorted(files):
            name = stem(file)
            if name is not None:
                found.setdefault(name, Path(parent, file))
    return found


def _system_folders() -> list[Path]:
    """Return where this system and its user keep fonts."""
    import platformdirs  # noqa: PLC0415 - only where a name is no package's

    home = Path.home()
    if sys.platform == "win32":
        windows = os.environ.get("WINDIR", r"C:\Windows")
        return [
            platformdirs.user_data_path(appauthor=False) / "Microsoft/Windows/Fonts",
            Path(windows, "Fonts"),
        ]
    if sys.platform == "darwin":
        return [home / "Library/Fonts", Path("/Library/Fonts"), Path("/System/Library/Fonts")]
    shared = os.environ.get("XDG_DATA_DIRS") or "/usr/local/share:/usr/share"
    return [
        platformdirs.user_data_path() / "fonts",
        home / ".fonts",
        *(Path(folder, "fonts") for folder in shared.split(":") if folder),
    ]


@lru_cache(maxsize=1)
def _system_fonts() -> dict[str, Path]:
    found: dict[str, Path] = {}
    for folder in _system_folders():
        for name, path in _in_folder(folder).items():
            found.setdefault(name, path)
    return dict(sorted(found.items()))


def _described(name: str, path: Path, origin: str) -> FontEntry | None:
    from panelproof.glyphs.face import Face, FaceError  # noqa: PLC0415 - loads FreeType

    try:
        file = read(path)
        face = Face(file.data)
    except (Problem, FaceError):
        return None
    return FontEntry(name, path, origin, face.family, face.style, file.kind)


def _unknown(name: str) -> str:
    from difflib import get_close_matches  # noqa: PLC0415 - only to word a message

    plain = {known.lower(): known for known, _, _ in _named()}
    near = [f"`{plain[match]}`" for match in get_close_matches(name.lower(), plain, n=3, cutoff=0.5)]
    shown = "".join(letter if letter.isprintable() else "?" for letter in name)
    shown = shown if len(shown) <= 80 else shown[:77] + "..."
    if near:
        hint = f"the nearest {'name is' if len(near) == 1 else 'names are'} {', '.join(near)}"
    else:
        hint = "a font file's name must end in .ttf, .otf, .bdf or .pcf"
    return f"there is no font named `{shown}`; {hint}"
