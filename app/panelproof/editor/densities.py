"""How dense each monitor's pixels are, as measured against a card or a ruler; remembered between runs."""

from __future__ import annotations

import json
from contextlib import suppress
from pathlib import Path

from panelproof.editor.session import state_folder
from panelproof.layout.saving import save
from panelproof.problem import Problem

LEAST, GREATEST = 1.0, 40.0
"""Device pixels a millimetre that any monitor can have: 25 to 1000 an inch."""


class Densities:
    """Device pixels a millimetre by monitor; what cannot be kept is forgotten, never told."""

    def __init__(self, folder: Path | None = None) -> None:
        self._file = (folder or state_folder()) / "monitors.json"

    def _known(self) -> dict[str, float]:
        try:
            notes = json.loads(self._file.read_bytes())
        except (OSError, ValueError):
            return {}
        if not isinstance(notes, dict):
            return {}
        return {
            key: float(value)
            for key, value in notes.items()
            if isinstance(value, int | float) and LEAST <= value <= GREATEST
        }

    def measured(self, monitor: str) -> float | None:
        """Return what was measured on a monitor, None where nothing was."""
        return self._known().get(monitor)

    def keep(self, monitor: str, density: float) -> None:
        """Remember what was measured on a monitor."""
        self._write({**self._known(), monitor: round(min(max(density, LEAST), GREATEST), 5)})

    def forget(self, monitor: str) -> None:
        """Go by what the monitor says of itself again."""
        self._write({key: value for key, value in self._known().items() if key != monitor})

    def _write(self, known: dict[str, float]) -> None:
        with suppress(OSError, Problem):
            self._file.parent.mkdir(parents=True, exist_ok=True)
            save(self._file, json.dumps(known, indent=1, ensure_ascii=False).encode())
