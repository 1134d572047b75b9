"""One character of a type, as the pixels that will be handed over."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Glyph:
    """A glyph's bitmap and metrics, all in whole pixels.

    The bitmap's first column lies at pen + `left`, its first row at baseline - `top`; the pen then moves by
    `advance`. Bit k of `rows[r]` is set where the pixel of column k (from the left) in row r is inked.
    `levels` is empty in one-bit rendering, else `width * height` bytes of 0 to 15, row by row; a pixel is
    inked where its level is above 0. Rows and columns without ink at the bitmap's border are cut away.
    """

    left: int
    top: int
    width: int
    height: int
    advance: int
    rows: tuple[int, ...]
    levels: bytes = b""
