"""Reads the icon sets: `= icon state state ...`, and under it the states' grids side by side."""

from __future__ import annotations

from pathlib import Path

ICONS = Path(__file__).resolve().parent.parent / "icons"
SIZES = (12, 16, 24)

Rows = tuple[str, ...]


def read_icons(size: int) -> dict[str, dict[str, Rows]]:
    """Every icon of one size: its states by name, each as rows of `#` and `.`."""
    path = ICONS / f"{size}.txt"
    icons: dict[str, dict[str, Rows]] = {}
    name, states = "", list[str]()
    strips: list[list[str]] = []

    def close() -> None:
        if len(strips) != size:
            raise ValueError(f"{path.name}: {name} {states} has {len(strips)} rows, not {size}")
        for state, rows in zip(states, zip(*strips, strict=True), strict=True):
            if any(len(row) != size or set(row) - {"#", "."} for row in rows):
                raise ValueError(f"{path.name}: {name} {state} is not a square of # and .")
            if state in icons.setdefault(name, {}):
                raise ValueError(f"{path.name}: {name} {state} is drawn twice")
            icons[name][state] = rows

    for line in [*path.read_text(encoding="utf-8").splitlines(), ""]:
        words = line.split()
        if words and words[0] != "=" and not line.startswith(";"):
            strips.append(words)
            continue
        if strips:
            close()
            strips = []
        if words and words[0] == "=":
            name, states = words[1], words[2:]
    return icons
