"""Accented letters from a base and a mark, and characters that share a shape with another."""

from __future__ import annotations

import unicodedata

from fonts_free.drawing.glyph import Glyph, from_ink

CEDILLA = "\u0327"
DOTLESS = {"i": "\u0131"}
SAME: dict[str, str] = {
    "\u00a0": " ",
    "\u00ad": "-",
    "\u03bc": "\u00b5",
    "\u2126": "\u03a9",
}


def _mark(letter: str, mark: str, width: int, glyphs: dict[str, Glyph]) -> Glyph | None:
    """The mark as drawn for this letter, else for capitals, else for odd or even widths, else plain."""
    name = f"U+{ord(mark):04X}"
    parity = "odd" if width % 2 else "even"
    capital = [f"{name}.cap.{parity}", f"{name}.cap"] if letter.isupper() else []
    for found in [f"{name}.{letter}", *capital, f"{name}.{parity}", mark]:
        if found in glyphs:
            return glyphs[found]
    return None


def composed(char: str, glyphs: dict[str, Glyph]) -> Glyph | None:
    """The glyph of an accented letter, made from the parts among `glyphs`; None where it has no such parts.

    A capital takes its low form (`A.low`) where one is drawn. The `bottom` of a mark's grid is its gap over
    the base, or for the cedilla its place under the baseline; the mark is centred on the ink of the base,
    which moves in from its sides where the mark would reach past the pen.
    """
    parts = unicodedata.normalize("NFD", char)
    if len(parts) != 2:
        return None
    letter, mark = parts[0], parts[1]
    base = glyphs.get(f"{letter}.low") if mark != CEDILLA else None
    base = base or glyphs.get(DOTLESS.get(letter, letter))
    if base is None:
        return None
    body = base.trimmed()
    over = _mark(letter, mark, body.width, glyphs)
    if over is None:
        return None
    rise = 0 if mark == CEDILLA else body.top
    shift = body.left + (body.width - over.width) // 2 - over.left
    ink = base.ink() | {(x + shift, y + rise) for x, y in over.ink()}
    spill = max(0, -min(x for x, _ in ink))
    return from_ink({(x + spill, y) for x, y in ink}, base.advance + 2 * spill)
