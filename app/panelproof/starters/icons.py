"""The bundled icons as rows: `= icon state state ...`, and under it the states' grids side by side."""

from __future__ import annotations

from functools import lru_cache

from panelproof.bundled import bundled
from panelproof.problem import Problem

SIZES = (24, 16, 12)

Rows = tuple[str, ...]


@lru_cache(maxsize=8)
def icons(size: int) -> dict[str, dict[str, Rows]]:
    """Return every icon of one size: its states by name, each as `size` rows of `#` and `.`.

    Raises Problem where the program came without its icons, or where a grid is not of that size.
    """
    folder = bundled("fonts_free")
    path = folder / "icons" / f"{size}.txt" if folder else None
    if path is None or not path.is_file():
        raise Problem("the icons did not come with the program; install it anew", f"icons/{size}.txt")
    found: dict[str, dict[str, Rows]] = {}
    heading: list[str] = []
    strips: list[list[str]] = []
    for line in [*path.read_text(encoding="utf-8").splitlines(), ""]:
        words = line.split()
        if words and words[0] != "=" and not line.startswith(";"):
            strips.append(words)
            continue
        if strips:
            name, *states = heading
            grids = list(zip(*strips, strict=False))
            if len(grids) != len(states) or any(
                len(grid) != size or any(len(row) != size or set(row) - {"#", "."} for row in grid)
                for grid in grids
            ):
                raise Problem(f"{name} is not drawn in {size} rows of {size} pixels", path.name)
            found.setdefault(name, {}).update(zip(states, grids, strict=True))
            strips = []
        if words and words[0] == "=":
            heading = words[1:]
    return found


def enlarged(rows: Rows, scale: int) -> Rows:
    """Return a grid with each pixel `scale` × `scale`."""
    return tuple("".join(pixel * scale for pixel in row) for row in rows for _ in range(scale))
