"""Visual angles: how large a height appears from a distance, in minutes of arc.

Source: NUREG-0700 rev. 2, 1.3.1-4: H = 6.283 D MA / 21600, height and distance in one unit.
"""

from __future__ import annotations

TURN = 6.283
MINUTES = 21600
LEAST, PREFERRED_LEAST, PREFERRED_MOST, MOST_READING, MOST_GROUP = 16.0, 20.0, 22.0, 24.0, 45.0
"""Minutes of arc (NUREG-0700 rev. 2, 1.3.1-4): the least; the preferred; the most for reading text, and for any group."""


def height_for(minutes: float, distance_mm: float) -> float:
    """Return the height in millimetres that appears so large from a distance."""
    return TURN * distance_mm * minutes / MINUTES


def minutes_of(height_mm: float, distance_mm: float) -> float:
    """Return the minutes of arc under which a height appears from a distance."""
    return height_mm * MINUTES / (TURN * distance_mm)


def farthest(height_mm: float, minutes: float = LEAST) -> float:
    """Return the distance in millimetres from which a height still appears so large."""
    return height_mm * MINUTES / (TURN * minutes)
