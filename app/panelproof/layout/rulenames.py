"""The names of the rules, where checking a layout and proving it can both reach them."""

from __future__ import annotations

FAULTS = ("fit", "stale", "erases", "collides", "missing-glyph", "text-bytes", "ground")
CAUTIONS = (
    "contrast",
    "height",
    "matrix",
    "stroke",
    "lookalike",
    "told-apart",
    "jumps",
    "flickers",
    "too-fast",
    "no-fault-text",
    "link-states",
    "sensor-range",
    "embedding",
    "update-time",
)
OF_PARTS = FAULTS + CAUTIONS
"""Rules that speak of one part, which may accept being found by them."""

OF_SCREENS = ("residue", "unshown", "flash", "ram", "frame-time")
"""Rules that speak of a screen or the whole layout: no part can accept for it."""

ACCEPTED = "accepted"
"""What the note on an acceptance is listed under that accepts nothing."""
