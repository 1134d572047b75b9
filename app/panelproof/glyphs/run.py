"""One text set in a type: which glyph stands where."""

from __future__ import annotations

from panelproof.glyphs.glyph import Glyph
from panelproof.glyphs.type import Type


def placed(type: Type, text: str) -> tuple[tuple[tuple[Glyph, int], ...], int]:
    """Return ((glyph, pen), ...) for each character that the type has, and the sum of the advances.

    In pixels; the pen starts at 0 and includes the kerning of neighbours. A character that the type lacks
    leaves no ink and no advance, and its neighbours are not kerned with one another. Raises Problem as
    `Type.glyph` does.
    """
    glyphs: list[tuple[Glyph, int]] = []
    pen, previous = 0, ""
    for char in text:
        glyph = type.glyph(char)
        if glyph is None:
            previous = ""
            continue
        if previous:
            pen += type.kern(previous, char)
        glyphs.append((glyph, pen))
        pen += glyph.advance
        previous = char
    return tuple(glyphs), pen
