"""The integer types that hold a panel's places and numbers of pixels."""

from __future__ import annotations

from panelproof.layout.panel import Panel


def area_type(panel: Panel) -> str:
    """Return the integer type that holds a panel's places; an `int` in expressions, even where that has 16 bits."""
    return "uint8" if max(panel.width, panel.height) < 256 else "int16"


def count_type(panel: Panel) -> str:
    """Return the integer type that holds the number of a panel's pixels."""
    return "uint16_t" if panel.width * panel.height < 1 << 16 else "uint32_t"
