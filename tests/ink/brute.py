"""Footprints the slow way: every text of a content drawn by itself, straight from the drawing rules."""

from __future__ import annotations

from collections.abc import Iterable

from panelproof.glyphs.glyph import Glyph

Pixels = set[tuple[int, int]]


class PlainType:
    """A type made of given glyphs and kernings, with the face that the engine asks for."""

    def __init__(
        self, glyphs: dict[str, Glyph], kerns: dict[tuple[str, str], int], ascent: int, descent: int
    ) -> None:
        self.glyphs = glyphs
        self.kerns = kerns
        self.ascent = ascent
        self.descent = descent
        self.kerning = bool(kerns)
        self.antialiased = False

    def glyph(self, char: str) -> Glyph | None:
        return self.glyphs.get(char)

    def kern(self, left: str, right: str) -> int:
        return self.kerns.get((left, right), 0)


def width_of(type_: PlainType, text: str) -> int:
    """Sum the advances and the kerning of each pair."""
    return _set(type_, text)[1]


def _set(type_: PlainType, text: str) -> tuple[list[tuple[Glyph, int]], int]:
    pen, last, run = 0, "", []
    for char in text:
        glyph = type_.glyph(char)
        if glyph is None:
            last = ""
            continue
        if last and type_.kerning:
            pen += type_.kern(last, char)
        run.append((glyph, pen))
        pen += glyph.advance
        last = char
    return run, pen


def start_of(align: str, width: int) -> int:
    return {"left": 0, "right": -width, "centre": -(width // 2)}[align]


def ink_of(type_: PlainType, text: str, align: str) -> Pixels:
    """The pixels that one text inks, relative to its anchor."""
    run, width = _set(type_, text)
    first = start_of(align, width)
    return {
        (first + pen + glyph.left + column, row - glyph.top)
        for glyph, pen in run
        for row, bits in enumerate(glyph.rows)
        for column in range(glyph.width)
        if bits >> column & 1
    }


def cell_of(type_: PlainType, text: str, align: str) -> Pixels:
    """The pixels of one text's cell."""
    width = width_of(type_, text)
    first = start_of(align, width)
    return {(x, y) for x in range(first, first + width) for y in range(-type_.ascent, type_.descent)}


def everything(sets: Iterable[Pixels]) -> Pixels:
    result: Pixels = set()
    for one in sets:
        result |= one
    return result
