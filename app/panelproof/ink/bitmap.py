"""One-bit bitmaps of icons: rows written in place, or a PNG file."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from panelproof.ink.mask import Mask, from_rows
from panelproof.ink.png import rgba

GREATEST_SIDE = 512


@lru_cache(maxsize=4096)
def from_text(rows: tuple[str, ...]) -> Mask:
    """Return the mask of rows in which `#` is inked and `.` is not, its top left corner at (0, 0)."""
    width = len(rows[0])
    return from_rows(0, 0, width, (int(row[::-1].replace("#", "1").replace(".", "0"), 2) for row in rows))


def from_picture(path: Path) -> Mask:
    """Return the mask of a PNG file, its top left corner at (0, 0).

    Where the picture has transparency, its opaque half (alpha from 128 up) is inked; else its dark half (luma
    below 127.5). Raises Problem where the file is missing, is no PNG, or is larger than 512 pixels a side.
    """
    width, height, pixels, clear = rgba(path, GREATEST_SIDE, "an icon")
    return _inked(width, height, pixels, clear)


@lru_cache(maxsize=256)
def _inked(width: int, height: int, pixels: bytes, clear: bool) -> Mask:
    if clear:
        inked = [alpha >= 128 for alpha in pixels[3::4]]
    else:
        colours = zip(pixels[::4], pixels[1::4], pixels[2::4], strict=True)
        # ITU-R BT.601 weights, in thousandths.
        inked = [299 * red + 587 * green + 114 * blue < 127_500 for red, green, blue in colours]
    rows = (inked[top : top + width] for top in range(0, width * height, width))
    return from_rows(0, 0, width, (sum(1 << column for column, on in enumerate(row) if on) for row in rows))
