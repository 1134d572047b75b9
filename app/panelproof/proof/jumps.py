"""jumps: what does not change stays where it is while a number counts.

Digits of unequal advance push what stands behind them (or, aligned right, before them) to and fro; a centred text
also shifts by half a digit when its number grows longer. That a unit behind a number aligned left moves on by a
whole digit then is what that alignment means, and is not found.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from panelproof.content.build import graph
from panelproof.content.spec import Content, WholeRange
from panelproof.glyphs.run import placed
from panelproof.glyphs.type import Type
from panelproof.ink.anchor import Align, start
from panelproof.layout.parts import Field
from panelproof.proof.extent import Extent, Stage
from panelproof.proof.finding import Change, Finding, Remedy
from panelproof.proof.neighbours import neighbours, numeric
from panelproof.proof.words import listed, quoted

NAME = "jumps"
DIGITS = "0123456789"


@dataclass(frozen=True, slots=True)
class Jump:
    """Two neighbouring texts, and by how many pixels `char` (nothing: the whole text) shifts between them."""

    before: str
    after: str
    pixels: int
    char: str


def findings(stage: Stage) -> Iterator[Finding]:
    """Yield each field whose numbers jump while they count."""
    for extent in stage.extents:
        part, print_ = extent.part, extent.footprint
        if not isinstance(part, Field) or print_ is None or print_.missing:
            continue
        for found in jumps(part.content, print_.type, part.align):
            if found is not None:
                yield Finding(
                    NAME, "caution", stage.screen.name, part.name, _said(found, print_.type),
                    (found.before, found.after), 0, extent.padding or extent.reach.bounds(),
                    _steadied(stage, extent, part, print_.type),
                )  # fmt: skip


def _said(found: Jump, type_: Type) -> str:
    pair = f"from {quoted(found.before)} to {quoted(found.after)}"
    if not found.char:
        return f"{pair} the centred text shifts by {found.pixels} px, as its number grows longer"
    why = "the digits are not equally wide"
    if len(_advances(type_)) == 1:
        why = "a space is not as wide as a digit" if " " in found.before else "signs are not equally wide"
    return f"{pair} {quoted(found.char)} jumps by {found.pixels} px though it does not change: {why}"


@lru_cache(maxsize=64)
def _advances(type_: Type) -> frozenset[int]:
    return frozenset(glyph.advance for char in DIGITS if (glyph := type_.glyph(char)) is not None)


@lru_cache(maxsize=512)
def jumps(content: Content, type_: Type, align: Align) -> tuple[Jump | None, Jump | None]:
    """Return the farthest jump between texts of one length, and of a centred text that grows; None: none.

    Neither depends on where the field stands. Shifts are in pixels.
    """
    if not numeric(content):
        return None, None
    still, grown = None, None
    kerned = type_.kerning and _kerned(type_, graph(content).alphabet())
    even = len(_advances(type_)) == 1 and not kerned and not _varied(content)
    if even and align != "centre":
        return None, None
    # Kerning hangs on the digit before, and halves on whether a width is odd.
    for before, after in neighbours(content, not even and (kerned or align == "centre")):
        if len(before) == len(after):
            pixels, char = shift(type_, align, before, after)
            if pixels > (still.pixels if still else 0):
                still = Jump(before, after, pixels, char)
        elif align == "centre":
            pixels = drift(type_, before, after)
            if pixels > (grown.pixels if grown else 0):
                grown = Jump(before, after, pixels, "")
    return still, grown


def _kerned(type_: Type, alphabet: frozenset[str]) -> bool:
    """Tell whether some digit is set closer to or farther from another character of the content."""
    digits = alphabet & set(DIGITS)
    return any(type_.kern(one, other) or type_.kern(other, one) for one in digits for other in alphabet)


def _varied(content: Content) -> bool:
    """Tell whether neighbours of one length can differ in more than digits: spaces that fill, letters, signs."""
    return any(
        conversion.width
        or conversion.letter in "xX"
        or "+" in conversion.flags
        or " " in conversion.flags
        # A wide step over zero, as from -70 to 180: a sign stands where a digit stood.
        or (
            isinstance(argument, WholeRange) and argument.step > 1 and argument.least < 0 <= argument.greatest
        )
        for _, conversion, argument in numeric(content)
    )


def shift(type_: Type, align: Align, before: str, after: str) -> tuple[int, str]:
    """Return how far an inked character moves that stands at one place in both texts, and which, at most."""
    one, width = placed(type_, before)
    other, other_width = placed(type_, after)
    by = start(align, other_width) - start(align, width)
    farthest, moved = 0, ""
    for (glyph, pen), (same, new_pen), char, new_char in zip(one, other, before, after, strict=True):
        if char == new_char and glyph.rows and same.rows and abs(new_pen - pen + by) > farthest:
            farthest, moved = abs(new_pen - pen + by), char
    return farthest, moved


def drift(type_: Type, before: str, after: str) -> int:
    """Return how far the nearer end of a centred text shifts when the text grows."""
    width, new_width = placed(type_, before)[1], placed(type_, after)[1]
    left = start("centre", new_width) - start("centre", width)
    return max(abs(left), abs(left + new_width - width))


def _steadied(stage: Stage, extent: Extent, part: Field, type_: Type) -> Remedy | None:
    """Return the alignment that steadies the number, its longest text where it was; else types that do."""
    if extent.footprint is None:
        return None
    width = extent.footprint.widths[-1]
    left = part.x + start(part.align, width)
    for align, x in (("right", left + width), ("left", left)):
        if align != part.align and not any(jumps(part.content, type_, align)):
            return Remedy(
                f"align it {align}, x {part.x} → {x}",
                (Change(part.name, "align", align), Change(part.name, "x", x)),
            )
    able = [
        f"`{name}`"
        for name, other in stage.material.types.items()
        if all(other.glyph(char) for char in extent.footprint.graph.alphabet())
        and not any(jumps(part.content, other, part.align))
    ]
    return Remedy(f"a type whose digits are equally wide: {listed(able)}") if able else None
