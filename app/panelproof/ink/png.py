"""PNG files read to plain bytes, each thing that can be wrong in a sentence."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING

from panelproof.problem import Problem

if TYPE_CHECKING:
    from PIL.Image import Image

# Where the high byte of each 16-bit grey lies: (first, step).
_HIGH_BYTES = {"I;16": (1, 2), "I;16L": (1, 2), "I;16B": (0, 2), "I": (1, 4)}


def rgba(path: Path, greatest_side: int, noun: str) -> tuple[int, int, bytes, bool]:
    """Return width, height, the pixels (red, green, blue, alpha, 8 bits each, row by row), and whether it has alpha.

    Raises Problem where the file is missing, is no whole PNG, or has a side longer than `greatest_side`; `noun` says
    what it is for ("an icon").
    """
    try:
        stamp = path.stat()
    except OSError as error:
        raise Problem(
            f"the picture `{path.name}` cannot be read ({(error.strerror or 'unknown').lower()})"
        ) from None
    except ValueError:  # a NUL in the path
        raise Problem("there can be no file of this name") from None
    return _read(path, greatest_side, noun, (stamp.st_mtime_ns, stamp.st_size))


@lru_cache(maxsize=64)
def _read(path: Path, greatest_side: int, noun: str, _stamp: tuple[int, int]) -> tuple[int, int, bytes, bool]:
    from PIL import Image, UnidentifiedImageError  # noqa: PLC0415 - only where a picture is used

    try:
        with Image.open(path, formats=["PNG"]) as picture:
            width, height = picture.size
            if width > greatest_side or height > greatest_side:
                raise Problem(
                    f"the picture `{path.name}` is {width} × {height} pixels; "
                    f"{noun} may have {greatest_side} a side at most"
                )
            clear = picture.mode in ("RGBA", "LA", "PA") or "transparency" in picture.info
            return width, height, _eight_bits(picture).convert("RGBA").tobytes(), clear
    except UnidentifiedImageError:
        raise Problem(f"the picture `{path.name}` is not a PNG file") from None
    except Image.DecompressionBombError:
        raise Problem(f"the picture `{path.name}` is far too large for {noun}") from None
    except (OSError, ValueError, SyntaxError) as error:
        raise Problem(f"the picture `{path.name}` cannot be read ({error})") from None


def _eight_bits(picture: Image) -> Image:
    """Return a picture of 16-bit greys with their high bytes; Pillow itself cuts them off at 255."""
    if picture.mode not in _HIGH_BYTES:
        return picture
    from PIL import Image as Images  # noqa: PLC0415

    first, step = _HIGH_BYTES[picture.mode]
    clear = picture.info.get("transparency")
    wide = picture.tobytes()
    grey = Images.frombytes("L", picture.size, wide[first::step])
    if not isinstance(clear, int):
        return grey
    # One of the 65 536 greys is named as clear.
    low = wide[(0 if first else 1) :: step]
    alpha = bytes(
        0 if high << 8 | rest == clear else 255 for high, rest in zip(wide[first::step], low, strict=True)
    )
    return Images.merge("LA", (grey, Images.frombytes("L", picture.size, alpha)))
