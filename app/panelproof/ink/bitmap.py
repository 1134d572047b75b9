"""One-bit bitmaps of icons: rows written in place, or a PNG file."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from panelproof.ink.mask import Mask, from_rows
from panelproof.problem import Problem

GREATEST_SIDE = 512


@lru_cache(maxsize=4096)
def from_text(rows: tuple[str, ...]) -> Mask:
    """Return the mask of rows in which `#` is inked and `.` is not, its top left corner at (0, 0)."""
    width = len(rows[0])
    return from_rows(0, 0, width, (int(row[::-1].replace("#", "1").replace(".", "0"), 2) for row in rows))


def from_picture(path: Path) -> Mask:
    """Return the mask of a PNG file, its top left corner at (0, 0).

    Where the picture has transparency, its opaque half (alpha from 128 up) is inked; else its dark half (luma
    below 128). Raises Problem where the file is missing, is no PNG, or is larger than 512 pixels a side.
    """
    try:
        stamp = path.stat().st_mtime_ns
    except OSError as error:
        raise Problem(
            f"the picture `{path.name}` cannot be read ({(error.strerror or 'unknown').lower()})"
        ) from None
    return _read(path, stamp)


@lru_cache(maxsize=256)
def _read(path: Path, _stamp: int) -> Mask:
    from PIL import Image, UnidentifiedImageError  # noqa: PLC0415 - only where a picture is used

    try:
        with Image.open(path, formats=["PNG"]) as picture:
            width, height = picture.size
            if width > GREATEST_SIDE or height > GREATEST_SIDE:
                raise Problem(
                    f"the picture `{path.name}` is {width} × {height} pixels; "
                    f"an icon may have {GREATEST_SIDE} a side at most"
                )
            clear = picture.mode in ("RGBA", "LA", "PA") or "transparency" in picture.info
            tones = picture.convert("RGBA").getchannel("A") if clear else picture.convert("L")
            values = tones.tobytes()
    except UnidentifiedImageError:
        raise Problem(f"the picture `{path.name}` is not a PNG file") from None
    except Image.DecompressionBombError:
        raise Problem(f"the picture `{path.name}` is far too large for an icon") from None
    except (OSError, ValueError, SyntaxError) as error:
        raise Problem(f"the picture `{path.name}` cannot be read ({error})") from None
    rows = []
    for top in range(0, width * height, width):
        inked = [(value >= 128) == clear for value in values[top : top + width]]
        rows.append(sum(1 << column for column, on in enumerate(inked) if on))
    return from_rows(0, 0, width, rows)
