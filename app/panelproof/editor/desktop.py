"""The program in the menus of a Linux desktop, and as what opens layout files.

Files and places follow the Desktop Entry, Icon Theme, Shared MIME-info and Base Directory specifications of
freedesktop.org.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

from panelproof.layout.saving import in_words, save
from panelproof.problem import Problem

MIME = "application/x-panelproof+json"
ICON = """<svg xmlns="http://www.w3.org/2000/svg" width="128" height="128" viewBox="0 0 64 64">
  <rect x="3" y="9" width="58" height="46" rx="8" fill="#39454b"/>
  <rect x="8" y="14" width="48" height="36" rx="3" fill="#10181b"/>
  <g fill="#55c5c9">
    <rect x="16" y="31" width="5" height="5"/><rect x="21" y="36" width="5" height="5"/>
    <rect x="26" y="41" width="5" height="5"/><rect x="31" y="36" width="5" height="5"/>
    <rect x="36" y="31" width="5" height="5"/><rect x="41" y="26" width="5" height="5"/>
    <rect x="46" y="21" width="5" height="5"/>
  </g>
  <g fill="#f0bd55"><rect x="12" y="18" width="19" height="4"/><rect x="12" y="24" width="11" height="3"/></g>
</svg>
"""
ENTRY = """[Desktop Entry]
Type=Application
Version=1.5
Name=Panelproof
GenericName=Small Screen Designer
Comment=Design what a small screen shows, and prove it for every value
Exec={command} %f
Icon=panelproof
Terminal=false
Categories=Development;Electronics;
Keywords=display;firmware;embedded;layout;font;
MimeType={mime};
StartupWMClass=panelproof
"""
TYPE = """<?xml version="1.0" encoding="UTF-8"?>
<mime-info xmlns="http://www.freedesktop.org/standards/shared-mime-info">
  <mime-type type="{mime}">
    <comment>Panelproof layout</comment>
    <sub-class-of type="application/json"/>
    <icon name="panelproof"/>
    <glob pattern="*.panel.json" weight="60"/>
  </mime-type>
</mime-info>
"""
ENTRY_FILE = Path("applications/panelproof.desktop")
ICON_FILE = Path("icons/hicolor/scalable/apps/panelproof.svg")
TYPE_FILE = Path("mime/packages/panelproof.xml")


def data_folder() -> Path:
    """Return where a person's own desktop entries are."""
    chosen = os.environ.get("XDG_DATA_HOME", "")
    # The specification has relative paths ignored.
    return Path(chosen) if Path(chosen).is_absolute() else Path.home() / ".local" / "share"


def _quoted(argument: str) -> str:
    """Return an argument as the Exec key of a desktop entry wants it."""
    for char in '\\"`$':
        argument = argument.replace(char, f"\\{char}")
    # A string value is unescaped once before the quoting rule applies.
    return '"' + argument.replace("\\", "\\\\").replace("%", "%%") + '"'


def command() -> str:
    """Return the command line that starts the program, for a desktop entry."""
    beside = Path(sys.executable).parent / "panelproof"
    if beside.is_file():
        return _quoted(str(beside))
    return f"{_quoted(sys.executable)} -m panelproof"


def install(folder: Path | None = None) -> tuple[Path, ...]:
    """Write desktop entry, icon and file type, and return their paths; raises Problem where that fails."""
    folder = folder or _linux()
    written = []
    for file, text in (
        (ENTRY_FILE, ENTRY.format(command=command(), mime=MIME)),
        (ICON_FILE, ICON),
        (TYPE_FILE, TYPE.format(mime=MIME)),
    ):
        path = folder / file
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise Problem(f"the folder cannot be made: {in_words(error)}", str(path.parent)) from None
        save(path, text.encode())
        written.append(path)
    _tell(folder)
    return tuple(written)


def remove(folder: Path | None = None) -> tuple[Path, ...]:
    """Take away what `install` wrote, and return the paths; raises Problem where that fails."""
    folder = folder or _linux()
    removed = []
    for file in (ENTRY_FILE, ICON_FILE, TYPE_FILE):
        path = folder / file
        try:
            path.unlink()
        except FileNotFoundError:
            continue
        except OSError as error:
            raise Problem(f"the file cannot be removed: {in_words(error)}", str(path)) from None
        removed.append(path)
    if removed:
        _tell(folder)
    return tuple(removed)


def _linux() -> Path:
    if not sys.platform.startswith("linux"):
        raise Problem("desktop entries are for Linux desktops; this system has its own way to link programs")
    return data_folder()


def _tell(folder: Path) -> None:
    """Let the desktop's own lists be made anew, where the programs for that are there."""
    for program, place in (("update-mime-database", "mime"), ("update-desktop-database", "applications")):
        found = shutil.which(program)
        if found and (folder / place).is_dir():
            subprocess.run([found, str(folder / place)], capture_output=True, check=False, timeout=60)
