"""Where a text starts, given its anchor."""

from __future__ import annotations

from typing import Literal

Align = Literal["left", "centre", "right"]


def start(align: Align, width: int) -> int:
    """Return where the pen starts, relative to the anchor, for a text whose advances sum to `width`."""
    if align == "left":
        return 0
    return -width if align == "right" else -(width // 2)
