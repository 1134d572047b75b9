"""What outlives the window: recent files, and where the window and its panes stood."""

from __future__ import annotations

import json
import os
from contextlib import suppress
from pathlib import Path

from panelproof.layout.saving import save
from panelproof.problem import Problem

MOST_RECENT = 10
MOST_VIEWS = 50


def state_folder() -> Path:
    """Return where the system keeps what programs remember; `PANELPROOF_STATE` names another place."""
    chosen = os.environ.get("PANELPROOF_STATE")
    if chosen:
        return Path(chosen)
    from platformdirs import user_state_path  # noqa: PLC0415 - only where nothing is chosen

    return user_state_path("panelproof", appauthor=False)


class Session:
    """The notes of one person's work, in one small file; what cannot be kept is forgotten, never told."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._file = folder / "session.json"

    def _notes(self) -> dict[str, object]:
        try:
            notes = json.loads(self._file.read_bytes())
        except (OSError, ValueError):
            return {}
        return notes if isinstance(notes, dict) else {}

    def _note(self, **changed: object) -> None:
        notes = {**self._notes(), **changed}
        with suppress(OSError, Problem):
            self.folder.mkdir(parents=True, exist_ok=True)
            save(self._file, json.dumps(notes, indent=1, ensure_ascii=False).encode())

    def recent(self) -> tuple[Path, ...]:
        """Return the files opened or saved last that are still there, the latest first."""
        listed = self._notes().get("recent")
        names = [name for name in listed if isinstance(name, str)] if isinstance(listed, list) else []
        return tuple(path for path in map(Path, names) if path.is_file())

    def opened(self, path: Path) -> None:
        """Note that a file was opened or saved; it is the one to begin with next time."""
        full = path.absolute()
        others = [str(known) for known in self.recent() if known != full]
        self._note(recent=[str(full), *others][:MOST_RECENT], last=str(full))

    def left(self, path: Path | None) -> None:
        """Note what was on the window last; None where it was never saved."""
        self._note(last=str(path.absolute()) if path else "")

    def forget_recent(self) -> None:
        """Forget the recent files."""
        self._note(recent=[])

    def last(self) -> Path | None:
        """Return the file that one left off with, if it is still there."""
        name = self._notes().get("last")
        path = Path(name) if isinstance(name, str) and name else None
        return path if path and path.is_file() else None

    def remembered(self, key: str) -> str:
        """Return what the window asked to remember under a key, empty where there is nothing."""
        window = self._notes().get("window")
        value = window.get(key) if isinstance(window, dict) else ""
        return value if isinstance(value, str) else ""

    def view(self, path: Path) -> dict[str, str]:
        """Return how a file was looked at last; empty where it is not known."""
        known = self._views().get(str(path.absolute()), {})
        return {key: value for key, value in known.items() if isinstance(value, str)}

    def viewed(self, path: Path, view: dict[str, str]) -> None:
        """Note how a file is looked at; the files that were left longest ago are forgotten."""
        full = str(path.absolute())
        others = [(name, known) for name, known in self._views().items() if name != full]
        self._note(views=dict([*others, (full, view)][-MOST_VIEWS:]))

    def _views(self) -> dict[str, dict[str, object]]:
        views = self._notes().get("views")
        if not isinstance(views, dict):
            return {}
        return {name: view for name, view in views.items() if isinstance(view, dict)}

    def remember(self, values: dict[str, str]) -> None:
        """Remember values of the window, such as its place and its panes' sizes."""
        window = self._notes().get("window")
        self._note(window={**(window if isinstance(window, dict) else {}), **values})
