"""Fonts that the tests of this room use, and glyphs as sets of pixels."""

from __future__ import annotations

import struct
from collections.abc import Callable
from fractions import Fraction
from math import floor
from pathlib import Path
from typing import Any

from fontTools.feaLib.builder import addOpenTypeFeaturesFromString
from fontTools.fontBuilder import FontBuilder
from fontTools.pens.ttGlyphPen import TTGlyphPen

from panelproof.glyphs.catalogue import find
from panelproof.glyphs.glyph import Glyph
from panelproof.glyphs.type import Rendering, Type, open_type

DATA = Path(__file__).parent / "data"
X11 = Path("/usr/share/fonts/X11/misc")
SANS = find("SourceSansPro", Path())
GROTESK = find("HankenGrotesk", Path())
OUTLINES = (SANS, GROTESK, SANS.with_suffix(".otf"))
ASCII = "".join(map(chr, range(32, 127)))


def opened(
    path: Path,
    size: int | None = None,
    rendering: Rendering = "one-bit",
    *,
    kerning: bool = False,
    hinting: bool = True,
) -> Type:
    return open_type(path, size, rendering, kerning, hinting)


def drawn(type: Type, char: str) -> Glyph:
    glyph = type.glyph(char)
    assert glyph is not None, char
    return glyph


def inked(glyph: Glyph) -> set[tuple[int, int]]:
    """Return the glyph's pixels as (column from the pen, row down from the baseline)."""
    return {
        (glyph.left + column, row - glyph.top)
        for row, bits in enumerate(glyph.rows)
        for column in range(glyph.width)
        if bits >> column & 1
    }


def levels(glyph: Glyph) -> dict[tuple[int, int], int]:
    """Return the level of each of the glyph's pixels that has one."""
    places = ((k % glyph.width, k // glyph.width, level) for k, level in enumerate(glyph.levels))
    return {(glyph.left + column, row - glyph.top): level for column, row, level in places if level}


def rounded(value: Fraction) -> int:
    """Round to the nearest whole number, halves upwards."""
    return floor(value + Fraction(1, 2))


def built(
    path: Path,
    *,
    units_per_em: int = 1000,
    advance: int = 500,
    height: int = 700,
    width: int = 400,
    characters: str = "ABCD\u0301",
    features: str = "",
    change: Callable[[Any], None] | None = None,
) -> Path:
    """Write a TrueType font of equal rectangles; `change` may alter it before it is written."""
    names = {ord(char): f"g{ord(char):04X}" for char in characters}
    pen = TTGlyphPen(None)
    pen.moveTo((0, 0))
    pen.lineTo((0, height))
    pen.lineTo((width, height))
    pen.lineTo((width, 0))
    pen.closePath()
    box = pen.glyph()
    builder = FontBuilder(units_per_em, isTTF=True)
    builder.setupGlyphOrder([".notdef", *names.values()])
    builder.setupCharacterMap(names)
    builder.setupGlyf(dict.fromkeys((".notdef", *names.values()), box))
    builder.setupHorizontalMetrics(dict.fromkeys((".notdef", *names.values()), (advance, 0)))
    builder.setupHorizontalHeader(ascent=min(units_per_em, 32767), descent=-units_per_em // 4)
    builder.setupNameTable({"familyName": "Slab", "styleName": "Regular"})
    builder.setupOS2()
    builder.setupPost()
    if features:
        addOpenTypeFeaturesFromString(builder.font, features)
    if change is not None:
        change(builder.font)
    builder.save(path)
    return path


def pcf_with_metrics(left: int, right: int, advance: int, ascent: int, descent: int) -> bytes:
    """Return lath.pcf with every character's metrics replaced, in the uncompressed form."""
    data = (DATA / "lath.pcf").read_bytes()
    count = struct.unpack_from("<I", data, 4)[0]
    start = 8 + 16 * count
    directory, body = b"", b""
    for number in range(count):
        kind, layout, size, offset = struct.unpack_from("<4I", data, 8 + 16 * number)
        content = data[offset : offset + size]
        if kind == 4:
            metrics = struct.pack("<5hH", left, right, advance, ascent, descent, 0)
            layout, content = 0, struct.pack("<II", 0, 20) + metrics * 20
        directory += struct.pack("<4I", kind, layout, len(content), start + len(body))
        body += content
    return data[:8] + directory + body
