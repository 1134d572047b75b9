"""Where the folders that come with the program lie: fonts, panels, starters."""

from __future__ import annotations

from pathlib import Path


def bundled(name: str) -> Path | None:
    """Return the folder of that name that comes with the program, or None where there is none.

    It is beside the code where it is installed, at the repository's top where it runs from there.
    """
    inside = Path(__file__).parent
    for folder in (inside / name, inside.parent.parent / name):
        if folder.is_dir():
            return folder
    return None
