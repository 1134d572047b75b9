"""A frame read back from a device, as the panel's own colour codes."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import numpy as np
from numpy.typing import NDArray

from panelproof.layout.colour import Colours, quantise, shown
from panelproof.layout.panel import Panel
from panelproof.layout.saving import in_words
from panelproof.layout.wording import listed
from panelproof.picture.frame import Codes
from panelproof.problem import Problem

if TYPE_CHECKING:
    from PIL.Image import Image

PICTURES = (".png", ".ppm", ".pgm", ".pbm", ".pnm", ".bmp")
# What the bytes of a raw file mean, by the word that says so.
FORMS = {
    "picture": "a PNG, PPM, PGM, PBM or BMP file",
    "rgb565": "two bytes a pixel, the high byte first",
    "rgb565-low": "two bytes a pixel, the low byte first",
    "rows": "the panel's codes packed row by row, the leftmost pixel in the highest bits",
    "rows-low": "the panel's codes packed row by row, the leftmost pixel in the lowest bits",
    "pages": "one bit a pixel, eight rows a byte, the uppermost row in the lowest bit",
    "pages-high": "one bit a pixel, eight rows a byte, the uppermost row in the highest bit",
    "bytes": "one byte a pixel, the panel's code",
}
SUFFIXES = {".565": "rgb565", ".rgb565": "rgb565", ".rows": "rows", ".pages": "pages"}
GREATEST_BYTES = 64 << 20

Bytes = NDArray[np.uint8]


@dataclass(frozen=True, slots=True)
class Reading:
    """One way to read a file: the codes, [rows, columns], and what was wrong if this is the right way.

    `words` is empty for the way the file was said to be. The codes have the panel's size, that size turned, or are
    larger where a controller's whole memory was read.
    """

    words: str
    codes: Codes


@dataclass(frozen=True, slots=True)
class Capture:
    """A frame as it was read, and the other ways to read the same bytes that give a frame of a fitting size."""

    form: str
    readings: tuple[Reading, ...]

    @property
    def codes(self) -> Codes:
        """The codes as the file was said to be read."""
        return self.readings[0].codes


def read(path: Path, panel: Panel, form: str | None = None) -> Capture:
    """Read a capture; `form` is a word of `FORMS`, by default told by the file's suffix.

    Raises Problem, the file its place, where it cannot be read or its size is not the panel's.
    """
    chosen = form or _by_suffix(path)
    try:
        with path.open("rb") as file:
            data = file.read(GREATEST_BYTES + 1)
    except OSError as error:
        raise Problem(f"the capture cannot be read: {in_words(error)}", str(path)) from None
    except ValueError:
        raise Problem("there can be no file of this name", repr(str(path))) from None
    if len(data) > GREATEST_BYTES:
        raise Problem("the capture is larger than 64 MiB, more than any panel's frame", str(path))
    try:
        if chosen == "picture":
            return Capture(chosen, (Reading("", of_picture(picture(data), panel)),))
        if chosen is None:
            raise Problem(_which(len(data), panel))
        return _raw(data, panel, chosen)
    except Problem as problem:
        raise Problem(problem.message, str(path)) from None


def _by_suffix(path: Path) -> str | None:
    suffix = path.suffix.lower()
    return "picture" if suffix in PICTURES else SUFFIXES.get(suffix)


def picture(data: bytes) -> NDArray[np.uint8]:
    """Return a picture file's pixels as 8-bit sRGB, [height, width, 3]; raises Problem where it is none."""
    from PIL import Image, UnidentifiedImageError  # noqa: PLC0415

    try:
        with Image.open(BytesIO(data)) as opened:
            opened.load()
            return _rgb(opened)
    except UnidentifiedImageError:
        raise Problem("this is no picture file; use PNG, PPM, PGM, PBM or BMP") from None
    except (OSError, ValueError, SyntaxError, EOFError, Image.DecompressionBombError):
        raise Problem("the picture is damaged or cut short") from None


def _rgb(opened: Image) -> NDArray[np.uint8]:
    if opened.mode.startswith("I") or opened.mode == "F":
        deep = np.asarray(opened.convert("I"), dtype=np.int64)
        greys = np.clip(deep >> 8 if deep.max(initial=0) > 255 else deep, 0, 255).astype(np.uint8)
        return np.repeat(greys[:, :, None], 3, axis=2)
    return np.asarray(opened.convert("RGB"), dtype=np.uint8)


def of_picture(pixels: NDArray[np.uint8], panel: Panel) -> Codes:
    """Return a picture's pixels in the panel's colours, an enlarged picture taken back to single pixels."""
    pixels = _reduced(pixels, panel)
    height, width = pixels.shape[:2]
    if (width, height) not in _sizes(panel) and not (width >= panel.width and height >= panel.height):
        raise Problem(
            f"the picture is {width} × {height} pixels and the panel {panel.width} × {panel.height}; a capture has the"
            " panel's size (turned, enlarged by a whole number, or the controller's whole memory)"
        )
    return coded(pixels, panel.colours)


def _sizes(panel: Panel) -> tuple[tuple[int, int], tuple[int, int]]:
    return (panel.width, panel.height), (panel.height, panel.width)


def _reduced(pixels: NDArray[np.uint8], panel: Panel) -> NDArray[np.uint8]:
    height, width = pixels.shape[:2]
    for wide, high in _sizes(panel):
        factor = width // wide
        if factor > 1 and (width, height) == (wide * factor, high * factor):
            small = pixels[::factor, ::factor]
            if np.array_equal(small.repeat(factor, axis=0).repeat(factor, axis=1), pixels):
                return small
    return pixels


def coded(pixels: NDArray[np.uint8], colours: Colours) -> Codes:
    """Return sRGB pixels, [height, width, 3], as the nearest codes of a panel's colours.

    Where a device has widened 16-bit colours by shifting alone, their low bits are all 0; those are shifted back.
    """
    wide = pixels.astype(np.uint32)
    red, green, blue = wide[..., 0], wide[..., 1], wide[..., 2]
    if colours.format == "rgb565":
        if not ((red | blue) & 7).any() and not (green & 3).any():
            return (red >> 3 << 11 | green >> 2 << 5 | blue >> 3).astype(np.uint16)
        return (
            (red * 31 + 127) // 255 << 11 | (green * 63 + 127) // 255 << 5 | (blue * 31 + 127) // 255
        ).astype(np.uint16)
    packed, places = np.unique(red << 16 | green << 8 | blue, return_inverse=True)
    table = [quantise((int(one) >> 16, int(one) >> 8 & 255, int(one) & 255), colours) for one in packed]
    return np.array(table, dtype=np.uint16)[places].reshape(pixels.shape[:2])


def seen(codes: Codes, colours: Colours) -> NDArray[np.uint8]:
    """Return the sRGB values that codes show; those that the panel does not have as the last one."""
    used, places = np.unique(np.minimum(codes, colours.count - 1), return_inverse=True)
    table = np.array([shown(int(code), colours) for code in used], dtype=np.uint8)
    return table[places].reshape(*codes.shape, 3)


def depth(colours: Colours) -> int:
    """Return the bits of a pixel packed in rows: 1, 2, 4, 8 or 16."""
    least = max(1, math.ceil(math.log2(colours.count)))
    return next(bits for bits in (1, 2, 4, 8, 16) if bits >= least)


def raw_forms(panel: Panel) -> tuple[str, ...]:
    """Return the words of `FORMS` that can hold a panel's frame as raw bytes."""
    if panel.colours.count > 256:
        return "rgb565", "rgb565-low"
    paged = panel.colours.count == 2
    return tuple(form for form in FORMS if form != "picture" and (paged or not form.startswith("pages")))


def _which(size: int, panel: Panel) -> str:
    fitting = [form for form in raw_forms(panel) if size in _bytes_of(form, panel)]
    if not fitting:
        return (
            f"the suffix does not say how the file is to be read, and its {size} bytes are no frame of"
            f" {panel.width} × {panel.height} pixels; a picture's name ends in {listed(PICTURES, 'or')}"
        )
    return f"the suffix does not say how the file is to be read; add --as {' or --as '.join(fitting)}"


def _bytes_of(form: str, panel: Panel) -> list[int]:
    """Return how many bytes a frame takes, upright and turned."""
    return [_count(form, wide, high, panel.colours) for wide, high in _sizes(panel)]


def _count(form: str, wide: int, high: int, colours: Colours) -> int:
    if form.startswith("rgb565"):
        return 2 * wide * high
    if form == "bytes":
        return wide * high
    if form.startswith("pages"):
        return wide * -(-high // 8)
    return -(-wide * depth(colours) // 8) * high


def _raw(data: bytes, panel: Panel, form: str) -> Capture:
    allowed = raw_forms(panel)
    if form not in allowed:
        raise Problem(
            f"a frame of {panel.colours.count} colours cannot be read as `{form}` ({FORMS[form]});"
            f" use {listed(allowed, 'or')}"
        )
    readings = list(_read_as(data, panel, form, ""))
    if not readings:
        needed = _bytes_of(form, panel)[0]
        fitting = [other for other in allowed if len(data) in _bytes_of(other, panel)]
        raise Problem(
            f"the file has {len(data)} bytes, and {panel.width} × {panel.height} pixels as `{form}` ({FORMS[form]}) take"
            f" {needed}" + (f"; as {listed(fitting, 'or')} they would fit" if fitting else "")
        )
    if form.startswith("rgb565"):
        readings += _read_as(data[1:] + data[:1], panel, form, "one byte too many stands before the pixels")
        readings += _read_as(data[-1:] + data[:-1], panel, form, "one byte is missing before the pixels")
    for other in allowed:
        # Two bytes swapped are a cause of their own where the panel has such colours.
        if other != form and panel.colours.format != "rgb565":
            readings += _read_as(
                data, panel, other, f"the file is not `{form}` but `{other}`: {FORMS[other]}"
            )
    return Capture(form, tuple(readings))


def _read_as(data: bytes, panel: Panel, form: str, words: str) -> Iterator[Reading]:
    """Yield the upright and the turned reading, as far as the number of bytes fits each."""
    for wide, high in dict.fromkeys(_sizes(panel)):
        if len(data) == _count(form, wide, high, panel.colours):
            yield Reading(
                words, _decoded(form, np.frombuffer(data, dtype=np.uint8), wide, high, panel.colours)
            )


def _decoded(form: str, data: Bytes, wide: int, high: int, colours: Colours) -> Codes:
    low = form.endswith("low")
    if form.startswith("rgb565"):
        codes = data.view("<u2" if low else ">u2").astype(np.uint16).reshape(high, wide)
        return codes if colours.format == "rgb565" else coded(seen(codes, Colours("rgb565")), colours)
    if form.startswith("pages"):
        order: Literal["big", "little"] = "big" if form.endswith("high") else "little"
        bits = np.unpackbits(data.reshape(-1, wide, 1), axis=2, bitorder=order)
        return bits.transpose(0, 2, 1).reshape(-1, wide)[:high].astype(np.uint16)
    if form == "bytes":
        codes = data.astype(np.uint16).reshape(high, wide)
        return np.minimum(codes, 1) if colours.format == "mono" else codes
    each = depth(colours)
    bits = np.unpackbits(data.reshape(high, -1), axis=1, bitorder="little" if low else "big")
    weights = 1 << np.arange(each, dtype=np.uint16)
    pixels = bits[:, : wide * each].reshape(high, wide, each) * (weights if low else weights[::-1])
    return np.asarray(pixels.sum(axis=2), dtype=np.uint16)
