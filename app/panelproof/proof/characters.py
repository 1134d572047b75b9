"""A type's characters in figures, measured from the pixels that will be handed over.

Of antialiased glyphs a pixel counts as part of the shape from half of what its darkest pixels usually reach upwards,
so that faint overshoots are no height, and thin strokes between two pixels are.
"""

from __future__ import annotations

import string
from functools import lru_cache
from typing import NamedTuple, TypeVar

from panelproof.content.graph import Graph
from panelproof.glyphs.glyph import Glyph
from panelproof.glyphs.type import Type
from panelproof.ink.mask import Mask, from_rows
from panelproof.layout.panel import Panel

DIGITS, CAPITALS = string.digits, string.ascii_uppercase
SMALL = "acemnorsuvwxz"
"""Small letters without ascender, descender or dot."""
STEMS = frozenset("EHILNhilnu0147")
"""Characters enough to tell how thick a type's strokes are, whatever a content holds."""
POINTS_PER_MM = 72 / 25.4


def pitch_mm(panel: Panel) -> float | None:
    """Return the height of a pixel in millimetres, None where the panel's size is not given."""
    if panel.height_mm is not None:
        return panel.height_mm / panel.height
    return panel.width_mm / panel.width if panel.width_mm is not None else None


@lru_cache(maxsize=16)
def _from(least: int) -> bytes:
    """Return a table that turns levels into `1` from `least` upwards, else `0`."""
    return bytes(ord("1" if level >= least else "0") for level in range(256))


@lru_cache(maxsize=8192)
def shape(glyph: Glyph) -> Mask:
    """Return a glyph's shape around the pen on the baseline, without faint edges, in its least frame."""
    rows, width = glyph.rows, glyph.width
    if glyph.levels:
        lines = [glyph.levels[start : start + width] for start in range(0, len(glyph.levels), width)]
        table = _from((sorted(map(max, lines))[len(lines) // 2] + 1) // 2)
        rows = tuple(int(line[::-1].translate(table), 2) for line in lines)
    mask = from_rows(glyph.left, -glyph.top, width, rows)
    return mask.framed(*mask.bounds())


def shape_of(type_: Type, char: str) -> Mask | None:
    """Return a character's shape, None where the type lacks it or it has no ink."""
    glyph = type_.glyph(char)
    mask = shape(glyph) if glyph is not None and glyph.rows else None
    return mask or None


@lru_cache(maxsize=1024)
def alphabet(graph: Graph) -> frozenset[str]:
    """Return every character that some text of a content holds; remembered."""
    return graph.alphabet()


class Height(NamedTuple):
    """How high characters are: `pixels`, of the lowest one, `char`; `kind` says which were measured."""

    pixels: int
    char: str
    kind: str


@lru_cache(maxsize=1024)
def height(type_: Type, chars: frozenset[str]) -> Height | None:
    """Return the height of the capitals and figures of an alphabet, else of its small letters, else None.

    Digits and capitals without accents are measured; where there are none, small letters without ascender.
    """
    for kind, measured in (("figures and capitals", DIGITS + CAPITALS), ("small letters", SMALL)):
        found = [
            (mask.height, char)
            for char in measured
            if char in chars and (mask := shape_of(type_, char)) is not None
        ]
        if found:
            return Height(*min(found), kind)
    return None


class Matrix(NamedTuple):
    """The matrix of a class of characters, in pixels: the usual width, the least height."""

    width: int
    height: int


NARROW = frozenset("1I")
"""Left out where widths are judged (DOD-HDBK-791(AM) 6-5.3.2.2: 1 and I excepted)."""


Number = TypeVar("Number", int, float)


def _middle(numbers: list[Number]) -> Number:
    """Return the median, the lower of two in the middle (the statistics module loads too slowly)."""
    return sorted(numbers)[(len(numbers) - 1) // 2]


@lru_cache(maxsize=1024)
def matrix(type_: Type, chars: str) -> Matrix | None:
    """Return the matrix that a type gives to a class of characters; None where it has none of them."""
    masks = [mask for char in chars if char not in NARROW and (mask := shape_of(type_, char)) is not None]
    if not masks:
        return None
    return Matrix(_middle([mask.width for mask in masks]), min(mask.height for mask in masks))


@lru_cache(maxsize=8192)
def _runs(glyph: Glyph) -> tuple[float, ...]:
    """Return the width of each stroke that a row crosses, in pixels; strokes that run along the row left out."""
    found, width = [], glyph.width
    for number, row in enumerate(glyph.rows):
        rest = row
        while rest:
            start = (rest & -rest).bit_length() - 1
            # Adding one to a run of ones carries to the first zero beyond it.
            length = (~(rest >> start) & (rest >> start) + 1).bit_length() - 1
            rest &= ~((1 << length) - 1 << start)
            if 2 * length <= width or width <= 3:
                at = number * width + start
                found.append(sum(glyph.levels[at : at + length]) / 15 if glyph.levels else float(length))
    return tuple(found)


@lru_cache(maxsize=1024)
def stroke(type_: Type, chars: frozenset[str] = STEMS) -> float | None:
    """Return the width of the upright strokes of letters and digits: the median, in pixels; None where there is none."""
    found: list[float] = []
    for char in sorted(chars):
        glyph = type_.glyph(char) if char.isalnum() else None
        if glyph is not None:
            found.extend(_runs(glyph))
    return _middle(found) if found else None


BOLD = 0.175
"""From this stroke width upwards, as a share of the capitals' height, a type counts as bold (common practice)."""


@lru_cache(maxsize=256)
def bold(type_: Type) -> bool:
    """Tell whether a type's strokes are those of a bold one."""
    thick, high = stroke(type_), height(type_, STEMS)
    return thick is not None and high is not None and thick >= BOLD * high.pixels


def points(type_: Type, panel: Panel) -> float | None:
    """Return a type's size in points as it stands on the glass, None where the panel's size is not given."""
    pitch = pitch_mm(panel)
    return None if pitch is None else type_.size * pitch * POINTS_PER_MM


@lru_cache(maxsize=256)
def large(type_: Type, panel: Panel) -> bool:
    """Tell whether text is large: 18 points, or 14 bold (WCAG 2.2, "large scale"); never where no size is given."""
    size = points(type_, panel)
    return size is not None and (size >= 18 or (size >= 14 and bold(type_)))
