"""What a meter shows for a value, in whole numbers: how far the bar reaches, its ink, where the marks stand."""

from __future__ import annotations

from panelproof.layout.parts import Meter

FAULT_PITCH = 4
"""Of the fault pattern every so many-th pixel is inked, the next row one to the left."""


def length(meter: Meter) -> int:
    """Return the pixels in the direction in which the bar grows."""
    return meter.width if meter.direction in ("right", "left") else meter.height


def can_show(meter: Meter, value: int | None) -> bool:
    """Tell whether there is a value, and it lies in the meter's range."""
    return value is not None and meter.least <= value <= meter.greatest


def filled(meter: Meter, value: int) -> int:
    """Return how many pixels of the length a value of the range fills."""
    return (value - meter.least) * length(meter) // (meter.greatest - meter.least)


def mark_place(meter: Meter, value: int) -> int:
    """Return the pixel of the length that a mark at a value stands on, from 0 at the empty end."""
    return min(filled(meter, value), length(meter) - 1)


def least_filling(meter: Meter, count: int) -> int:
    """Return the least value that fills `count` pixels of the length, or more."""
    return meter.least - (meter.least - meter.greatest) * count // length(meter)


def bar_ink(meter: Meter, value: int) -> str:
    """Return the name of the bar's ink at a value."""
    return next((limit.ink for limit in reversed(meter.limits) if limit.ink and limit.at <= value), meter.ink)


def marks(meter: Meter) -> dict[int, str]:
    """Return where marks stand, as pixels from the empty end, and the names of their inks."""
    return {mark_place(meter, limit.at): bar_ink(meter, limit.at) for limit in meter.limits if limit.mark}


def inks(meter: Meter) -> tuple[str, ...]:
    """Return the names of all inks that a meter can show, its own first."""
    return tuple(dict.fromkeys([meter.ink, *(limit.ink for limit in meter.limits if limit.ink)]))


def bar(meter: Meter, value: int) -> list[str | None]:
    """Return the ink of each pixel of the length, from the empty end; None is ground."""
    full = filled(meter, value)
    pixels: list[str | None] = [bar_ink(meter, value)] * full + [None] * (length(meter) - full)
    for place, ink in marks(meter).items():
        pixels[place] = None if place < full else ink
    return pixels


def least_inking(meter: Meter, column: int, row: int) -> int:
    """Return the least value that inks a pixel, counted from the rectangle's top left."""
    place = {
        "right": column,
        "left": meter.width - 1 - column,
        "up": meter.height - 1 - row,
        "down": row,
    }[meter.direction]
    return meter.least if place in marks(meter) else least_filling(meter, place + 1)


def words(value: int | None) -> str:
    """Return a meter's value as findings and steps say it."""
    return "no value" if value is None else str(value)
