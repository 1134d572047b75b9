"""Words that findings share."""

from __future__ import annotations

from collections.abc import Sequence

from panelproof.ink.mask import Area, Mask
from panelproof.layout.panel import Panel


def quoted(text: str) -> str:
    """Return a text as findings show it."""
    return f"`{text}`" if text else "an empty text"


def counted(number: int, one: str, many: str = "") -> str:
    """Return `number` with its noun: "1 pixel", "3 pixels"."""
    return f"{number} {one if number == 1 else many or one + 's'}"


def grouped(number: int) -> str:
    """Return a number with its thousands apart: 4 294 967 296."""
    return f"{number:,}".replace(",", " ") if number < 10**15 else f"{float(number):.1e}"


def listed(words: Sequence[str], most: int = 6) -> str:
    """Return words as a list in a sentence, the rest counted: "a, b and 3 more"."""
    shown, rest = list(words[:most]), len(words) - most
    if rest > 0:
        return f"{', '.join(shown)} and {rest} more"
    return shown[0] if len(shown) == 1 else f"{', '.join(shown[:-1])} and {shown[-1]}"


def overhang(inner: Area, outer: Area) -> str:
    """Return by how far, and on which sides, one rectangle leaves another ("3 px on the right")."""
    x, y, width, height = inner
    left, top, outer_width, outer_height = outer
    sides = (
        (left - x, "on the left"),
        (x + width - left - outer_width, "on the right"),
        (top - y, "at the top"),
        (y + height - top - outer_height, "at the bottom"),
    )
    return " and ".join(f"{by} px {side}" for by, side in sides if by > 0)


def hull(one: Area, other: Area) -> Area:
    """Return the smallest rectangle that holds both."""
    x, y = min(one[0], other[0]), min(one[1], other[1])
    right, bottom = max(one[0] + one[2], other[0] + other[2]), max(one[1] + one[3], other[1] + other[3])
    return x, y, right - x, bottom - y


def inside(area: Area, panel: Panel) -> bool:
    """Tell whether a rectangle lies on the panel's rectangle."""
    x, y, width, height = area
    return x >= 0 and y >= 0 and x + width <= panel.width and y + height <= panel.height


def box(area: Area) -> str:
    """Return a rectangle in words: "64 × 24 at (12, 30)"."""
    return f"{area[2]} × {area[3]} at ({area[0]}, {area[1]})"


def repadded(old: Area, new: Area) -> str:
    """Return how a padding box changes, in words ("padding width 58 → 64 px, x 12 → 6")."""
    changes = []
    for word, size, axis, place in (("width", 2, "x", 0), ("height", 3, "y", 1)):
        if new[size] != old[size]:
            moved = f", {axis} {old[place]} → {new[place]}" if new[place] != old[place] else ""
            changes.append(f"padding {word} {old[size]} → {new[size]} px{moved}")
    return "; ".join(changes)


def outermost(mask: Mask, around: Area) -> tuple[int, int]:
    """Return the pixel of a mask that lies farthest outside (or deepest inside the edge of) a rectangle."""
    x, y, width, height = mask.bounds()
    left, top, right, bottom = around[0], around[1], around[0] + around[2], around[1] + around[3]
    by_side = {
        "left": left - x,
        "right": x + width - right,
        "top": top - y,
        "bottom": y + height - bottom,
    }
    side = max(by_side, key=lambda name: by_side[name])
    if side in ("left", "right"):
        column = x if side == "left" else x + width - 1
        strip = mask.framed(column, mask.y, 1, mask.height)
    else:
        row = y if side == "top" else y + height - 1
        strip = mask.framed(mask.x, row, mask.width, 1)
    return next(iter(strip.pixels()))
