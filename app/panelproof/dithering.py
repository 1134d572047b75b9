"""Pictures in a panel's colours: each pixel to the nearest, or neighbouring pixels mixed.

All arithmetic is on sRGB values, as everywhere, and in whole numbers, so that every machine gives the same pixels.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from panelproof.ink.mask import Mask, from_rows
from panelproof.ink.png import rgba
from panelproof.layout.colour import GREYS, Colours, Rgb, luma, quantise, shown
from panelproof.layout.parts import Dither

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.int64]

GREATEST_SIDE = 2048
OPAQUE = 128
# Errors and mixtures are reckoned in thousandths of an 8-bit step, as luma is.
UNIT = 1000
# Up to so many colours every pair is tried as a mixture, beyond it the nearest colour with every other.
FEW = 16


@dataclass(frozen=True, slots=True, eq=False)
class Raster:
    """A picture in the panel's colours, its top left corner at (0, 0); compared by identity.

    `codes` holds two bytes a pixel, low byte first, row by row, 0 where nothing is painted; `mask` what is painted.
    """

    width: int
    height: int
    codes: bytes
    mask: Mask

    def code(self, x: int, y: int) -> int:
        """Return the code of one pixel."""
        place = 2 * (y * self.width + x)
        return self.codes[place] | self.codes[place + 1] << 8

    def used(self) -> frozenset[int]:
        """Return every code that is painted."""
        found = set[int]()
        for number, row in enumerate(self.mask.rows()):
            begin = 2 * number * self.width
            low = self.codes[begin : begin + 2 * self.width : 2]
            high = self.codes[begin + 1 : begin + 2 * self.width : 2]
            painted = f"{row:0{self.width}b}"[::-1]
            found.update(a | b << 8 for a, b, on in zip(low, high, painted, strict=True) if on == "1")
        return frozenset(found)

    def other_than(self, code: int) -> Mask:
        """Return what is painted in another colour than `code`."""
        same = code.to_bytes(2, "little")
        rows = (
            sum(
                1 << column
                for column in range(self.width)
                if self.codes[2 * (row + column) : 2 * (row + column) + 2] != same
            )
            for row in range(0, self.width * self.height, self.width)
        )
        return self.mask & from_rows(0, 0, self.width, rows)


def raster(path: Path, dither: Dither, colours: Colours) -> Raster:
    """Return a PNG file in a panel's colours; raises Problem where it cannot be read or a side has over 2048 pixels."""
    width, height, pixels, _ = rgba(path, GREATEST_SIDE, "a picture")
    return dithered(width, height, pixels, dither, colours)


@lru_cache(maxsize=64)
def dithered(width: int, height: int, pixels: bytes, dither: Dither, colours: Colours) -> Raster:
    """Return pixels (red, green, blue, alpha, 8 bits each) in a panel's colours; half opaque ones and more count."""
    opaque = [alpha >= OPAQUE for alpha in pixels[3::4]]
    how = {"none": _nearest, "ordered": _ordered, "diffused": _diffused}[dither]
    codes = how(width, pixels, opaque, colours)
    painted = bytearray(2 * len(opaque))
    painted[::2] = bytes(code & 255 if on else 0 for code, on in zip(codes, opaque, strict=True))
    painted[1::2] = bytes(code >> 8 if on else 0 for code, on in zip(codes, opaque, strict=True))
    rows = (opaque[top : top + width] for top in range(0, len(opaque), width))
    bits = (int("".join("1" if on else "0" for on in reversed(row)), 2) for row in rows)
    return Raster(width, height, bytes(painted), from_rows(0, 0, width, bits))


def _colours_of(pixels: bytes) -> list[Rgb]:
    return list(zip(pixels[::4], pixels[1::4], pixels[2::4], strict=True))


def _nearest(_width: int, pixels: bytes, _opaque: Sequence[bool], colours: Colours) -> Sequence[int]:
    seen = _colours_of(pixels)
    each = list(set(seen))
    if colours.format == "indexed":
        import numpy as np  # noqa: PLC0415

        nearest = _nearest_of(np.array(each, dtype=np.int64).reshape(-1, 3), colours.palette)
        code_of = dict(zip(each, nearest.tolist(), strict=True))
    else:
        code_of = {rgb: quantise(rgb, colours) for rgb in each}
    return [code_of[rgb] for rgb in seen]


def _nearest_of(each: Numbers, palette: Sequence[Rgb]) -> Numbers:
    """Return the number of the first palette entry that is nearest to each colour, [n, 3]."""
    import numpy as np  # noqa: PLC0415

    nearest, away = np.zeros(len(each), dtype=np.int64), np.full(len(each), 1 << 40)
    red, green, blue = each.T
    for code, (r, g, b) in enumerate(palette):
        far = (red - r) ** 2 + (green - g) ** 2 + (blue - b) ** 2
        closer = far < away
        nearest[closer] = code
        np.minimum(far, away, out=away)
    return nearest


# -- ordered -----------------------------------------------------------------------------------------------


@lru_cache(maxsize=1)
def bayer() -> tuple[tuple[int, ...], ...]:
    """Return the 8 × 8 matrix of thresholds 0 to 63 (B. E. Bayer 1973): each doubling spreads the one before."""
    matrix: tuple[tuple[int, ...], ...] = ((0,),)
    while len(matrix) < 8:
        top = [(*(4 * v for v in row), *(4 * v + 2 for v in row)) for row in matrix]
        low = [(*(4 * v + 3 for v in row), *(4 * v + 1 for v in row)) for row in matrix]
        matrix = (*top, *low)
    return matrix


def _ordered(width: int, pixels: bytes, opaque: Sequence[bool], colours: Colours) -> Sequence[int]:
    import numpy as np  # noqa: PLC0415 - only where a picture is used

    height = len(opaque) // width
    rgb = np.frombuffer(pixels, dtype=np.uint8).reshape(height, width, 4)[:, :, :3].astype(np.int64)
    # 1, 3 … 127 of 128: what a colour of the panel is stays as it is, half way between two is half of each.
    tile = 2 * np.array(bayer(), dtype=np.int64) + 1
    over = np.tile(tile, (height // 8 + 1, width // 8 + 1))[:height, :width]
    if colours.format == "indexed":
        codes = _mixed(rgb.reshape(-1, 3), over.reshape(-1), colours)
    elif colours.format == "rgb565":
        fives = [shown(code << 11, colours)[0] for code in range(32)]
        sixes = [shown(code << 5, colours)[1] for code in range(64)]
        red, green, blue = (
            _stepped(rgb[:, :, channel], levels, over) for channel, levels in enumerate((fives, sixes, fives))
        )
        codes = red << 11 | green << 5 | blue
    else:
        grey = rgb @ np.array([299, 587, 114], dtype=np.int64)
        codes = _stepped(grey, [luma(shown(code, colours)) for code in range(colours.count)], over)
    return [int(code) for code in codes.reshape(-1)]


def _stepped(value: Any, levels: Sequence[int], over: Any) -> Any:
    """Return the number of the level at or below a value, or the next where its share of the way is over the threshold."""
    import numpy as np  # noqa: PLC0415

    shows = np.array(levels, dtype=np.int64)
    below = np.minimum(np.searchsorted(shows, value, side="right") - 1, len(levels) - 2)
    way = shows[below + 1] - shows[below]
    return below + ((value - shows[below]) * 128 + over * way) // (128 * way)


def _mixed(rgb: Numbers, over: Numbers, colours: Colours) -> Numbers:
    """Return for each pixel one of the two colours whose mixture comes nearest to it, by its threshold.

    Of mixtures that come about equally near, one of colours close to each other shows less grain: their distance
    counts too, though little. A colour of the palette stays as it is: no mixture comes nearer.
    """
    import numpy as np  # noqa: PLC0415

    palette = np.array(colours.palette, dtype=np.int64)
    count = len(palette)
    packed, which = np.unique((rgb[:, 0] << 16) + (rgb[:, 1] << 8) + rgb[:, 2], return_inverse=True)
    each = np.stack([packed >> 16, packed >> 8 & 255, packed & 255], axis=1)
    none = 1 << 40
    nearest = _nearest_of(each, colours.palette)
    first, second = nearest, nearest
    share, best = np.zeros(len(each), dtype=np.int64), np.full(len(each), none)
    pairs: list[tuple[Any, int]] = (
        [(one, other) for one in range(count) for other in range(one + 1, count)]
        if count <= FEW
        else [(nearest, other) for other in range(count)]
    )
    for one, other in pairs:
        start = palette[one]
        along = palette[other] - start
        size = (along * along).sum(axis=-1)
        part = np.clip(
            (((each - start) * along).sum(axis=-1) * 128 + size // 2) // np.maximum(size, 1), 0, 128
        )
        off = 128 * (each - start) - part[:, None] * along
        far = np.where(size > 0, (off * off).sum(axis=1) // 64 + size, none)
        better = far < best
        best, share = np.where(better, far, best), np.where(better, part, share)
        first, second = np.where(better, one, first), np.where(better, other, second)
    which = which.reshape(-1)
    mixed: Numbers = np.where(share[which] + over > 128, second[which], first[which])
    return mixed


# -- diffused ----------------------------------------------------------------------------------------------

Pick = Callable[[Sequence[int]], tuple[int, Sequence[int]]]


def _diffused(width: int, pixels: bytes, opaque: Sequence[bool], colours: Colours) -> Sequence[int]:
    """Return codes by error diffusion (R. W. Floyd, L. Steinberg 1976): 7, 3, 5 and 1 sixteenths to those that follow.

    Rows from left to right. What is clear neither takes nor passes on an error, and none is passed over the edge.
    """
    pick, channels = _picking(colours)
    seen = _colours_of(pixels)
    wanted: list[list[int]] = (
        [[luma(rgb)] for rgb in seen] if channels == 1 else [[UNIT * value for value in rgb] for rgb in seen]
    )
    codes = [0] * len(seen)
    for place in range(len(seen)):
        if not opaque[place]:
            continue
        target = [min(max(value, 0), 255 * UNIT) for value in wanted[place]]
        codes[place], got = pick(target)
        column = place % width
        for channel in range(channels):
            error = target[channel] - got[channel]
            if not error:
                continue
            right, left_below, below = error * 7 // 16, error * 3 // 16, error * 5 // 16
            if column + 1 < width:
                wanted[place + 1][channel] += right
            if place + width < len(seen):
                if column:
                    wanted[place + width - 1][channel] += left_below
                wanted[place + width][channel] += below
                if column + 1 < width:
                    wanted[place + width + 1][channel] += error - right - left_below - below
    return codes


def _entry_of_many(palette: list[tuple[int, ...]]) -> Pick:
    """Return what finds the nearest of many colours, faster than one by one."""
    import numpy as np  # noqa: PLC0415

    red, green, blue = np.array(palette, dtype=np.int64).T

    def entry(target: Sequence[int]) -> tuple[int, Sequence[int]]:
        r, g, b = target
        code = int(((red - r) ** 2 + (green - g) ** 2 + (blue - b) ** 2).argmin())
        return code, palette[code]

    return entry


def _picking(colours: Colours) -> tuple[Pick, int]:
    """Return what finds the nearest code and what it shows, in units, and how many channels it takes."""
    if colours.format == "rgb565":

        def channels(target: Sequence[int]) -> tuple[int, Sequence[int]]:
            red, green, blue = target
            full = 255 * UNIT
            code = (
                ((2 * red * 31 + full) // (2 * full)) << 11
                | ((2 * green * 63 + full) // (2 * full)) << 5
                | (2 * blue * 31 + full) // (2 * full)
            )
            return code, [UNIT * value for value in shown(code, colours)]

        return channels, 3
    if colours.format == "indexed":
        palette = [tuple(UNIT * value for value in rgb) for rgb in colours.palette]
        if len(palette) > FEW:
            return _entry_of_many(palette), 3

        def entry(target: Sequence[int]) -> tuple[int, Sequence[int]]:
            red, green, blue = target
            far = [(red - r) ** 2 + (green - g) ** 2 + (blue - b) ** 2 for r, g, b in palette]
            code = far.index(min(far))
            return code, palette[code]

        return entry, 3
    steps = GREYS.get(colours.format, 2) - 1

    def level(target: Sequence[int]) -> tuple[int, Sequence[int]]:
        code = (2 * target[0] * steps + 255 * UNIT) // (510 * UNIT)
        return code, [luma(shown(code, colours))]

    return level, 1
