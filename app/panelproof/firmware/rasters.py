"""Pictures in the header: their opaque pixels as rectangles, and those as bytes in the smallest of a few forms."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import groupby

from panelproof.dithering import Raster
from panelproof.firmware import literals
from panelproof.firmware.names import lower, upper
from panelproof.ink.mask import Area, Mask
from panelproof.layout.document import Screen
from panelproof.layout.parts import Picture
from panelproof.material import Material

# A byte of several pixels; one of a colour's number and a run; two of a run and a number; two of a code itself.
PACKED, RUNS, COUNTED, DIRECT = range(4)
FORMS = ("packed", "runs", "counted", "direct")
MOST_COLOURS = 256
WIDTHS = (1, 2, 4, 8)
TITLES = ("several pixels a byte", "runs of pixels", "counted runs of pixels", "one pixel after the other")


@dataclass(frozen=True, slots=True)
class Stream:
    """Pixels as bytes: in which form, how many bits a colour's number takes, the colours that are numbered."""

    form: int
    bits: int
    colours: tuple[int, ...]
    dots: bytes

    @property
    def size(self) -> int:
        """Bytes that it takes, its colours included."""
        return len(self.dots) + 2 * len(self.colours)


@dataclass(frozen=True, slots=True)
class Shown:
    """One picture's constants: their names, and the lines of each."""

    title: str
    dots: str
    dot_lines: tuple[str, ...]
    colours: str
    colour_lines: tuple[str, ...]
    areas: str
    area_lines: tuple[str, ...]
    call: str


@dataclass(frozen=True, slots=True)
class Rasters:
    """What the templates need to know of a layout's pictures."""

    pictures: tuple[Shown, ...]
    forms: list[str]
    bits: int
    calls: dict[tuple[str, str], str]


@lru_cache(maxsize=256)
def areas(mask: Mask) -> tuple[Area, ...]:
    """Return rectangles, from the top, that hold every pixel of a mask once: stretches alike in rows that follow."""
    open_: dict[tuple[int, int], int] = {}
    found: list[Area] = []
    rows = mask.rows()
    for row in range(len(rows) + 1):
        here = _stretches(rows[row], mask.width) if row < len(rows) else ()
        for stretch in [one for one in open_ if one not in here]:
            top = open_.pop(stretch)
            found.append((mask.x + stretch[0], mask.y + top, stretch[1], row - top))
        for stretch in here:
            open_.setdefault(stretch, row)
    return tuple(sorted(found, key=lambda area: (area[1], area[0])))


def _stretches(row: int, width: int) -> tuple[tuple[int, int], ...]:
    found, at = [], 0
    for member, run in groupby(row >> column & 1 for column in range(width)):
        length = len(list(run))
        if member:
            found.append((at, length))
        at += length
    return tuple(found)


def stream(codes: Sequence[int]) -> Stream:
    """Return pixels in the smallest form."""
    colours = tuple(sorted(set(codes)))
    direct = Stream(DIRECT, 16, (), b"".join(code.to_bytes(2, "little") for code in codes))
    if len(colours) > MOST_COLOURS:
        return direct
    number = {code: place for place, code in enumerate(colours)}
    numbers = [number[code] for code in codes]
    bits = max((len(colours) - 1).bit_length(), 1)
    wide = next(width for width in WIDTHS if width >= bits)
    ways = (
        Stream(PACKED, wide, colours, _packed(numbers, wide)),
        Stream(RUNS, bits, colours, _runs(numbers, bits)),
        Stream(COUNTED, 8, colours, _counted(numbers)),
        direct,
    )
    return min(ways, key=lambda way: way.size)


def _packed(numbers: Sequence[int], bits: int) -> bytes:
    """Return 8 / `bits` numbers a byte, the first in the lowest bits."""
    each = 8 // bits
    groups = (numbers[at : at + each] for at in range(0, len(numbers), each))
    return bytes(sum(number << bits * place for place, number in enumerate(group)) for group in groups)


def _runs(numbers: Sequence[int], bits: int) -> bytes:
    """Return bytes of a number in the lowest `bits`, over it the run's length less one."""
    most, made = 1 << 8 - bits, bytearray()
    for number, run in groupby(numbers):
        rest = len(list(run))
        while rest:
            count = min(rest, most)
            made.append(number | count - 1 << bits)
            rest -= count
    return bytes(made)


def _counted(numbers: Sequence[int]) -> bytes:
    """Return pairs of bytes: the run's length less one, and the number."""
    made = bytearray()
    for number, run in groupby(numbers):
        rest = len(list(run))
        while rest:
            count = min(rest, 256)
            made += bytes((count - 1, number))
            rest -= count
    return bytes(made)


@lru_cache(maxsize=256)
def encoded(raster: Raster) -> tuple[tuple[Area, ...], Stream]:
    """Return a picture's rectangles, and the pixels of all of them one after the other."""
    found = areas(raster.mask)
    codes = [
        raster.code(x, y)
        for left, top, width, height in found
        for y in range(top, top + height)
        for x in range(left, left + width)
    ]
    return found, stream(codes)


def rasters(material: Material) -> Rasters | None:
    """Return what a layout's pictures need; None where it has none that paints anything."""
    layout = material.layout
    first: dict[Raster, Shown] = {}
    calls: dict[tuple[str, str], str] = {}
    forms, greatest = set(), 0
    for screen in layout.screens:
        for part in screen.parts:
            if not isinstance(part, Picture):
                continue
            raster = material.raster(part)
            if not raster.mask:
                continue
            if raster not in first:
                first[raster] = _shown(material, screen, part)
            found, made = encoded(raster)
            forms.add(FORMS[made.form])
            greatest = max(greatest, *(value for area in found for value in area))
            calls[screen.name, part.name] = first[raster].call
    if not first:
        return None
    return Rasters(tuple(first.values()), sorted(forms), 8 if greatest < 256 else 16, calls)


def _shown(material: Material, screen: Screen, part: Picture) -> Shown:
    layout, raster = material.layout.name, material.raster(part)
    found, made = encoded(raster)

    def name(word: str) -> str:
        return f"{lower(layout, word, screen.name, part.name)}_"

    form = TITLES[made.form]
    title = (
        f"The picture `{part.picture}`, {raster.width} x {raster.height} px, dither {part.dither}: {form}."
    )
    colours = name("colours") if made.colours else "NULL"
    form_name = f"{upper(layout)}_{FORMS[made.form].upper()}_"
    return Shown(
        literals.comment(title),
        name("dots"),
        tuple(literals.rows(f"0x{byte:02X}" for byte in made.dots)),
        colours,
        tuple(literals.rows(literals.colour(code) for code in made.colours)),
        name("areas"),
        tuple(literals.rows(f"{x}, {y}, {width}, {height}" for x, y, width, height in found)),
        f"{name('dots')}, {colours}, {name('areas')}, {len(found)}, {form_name}, {made.bits}",
    )
