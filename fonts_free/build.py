"""Builds every font file of the family: `python -m fonts_free.build`.

With `--check` nothing is written; the exit status says whether the files at hand are what the sources give.
"""

from __future__ import annotations

import sys
from pathlib import Path

from fonts_free.drawing import coverage
from fonts_free.drawing.bdf import Head, write_bdf
from fonts_free.drawing.compose import SAME, composed
from fonts_free.drawing.faces import FACES, FAMILY, Face
from fonts_free.drawing.glyph import Glyph, smeared
from fonts_free.drawing.grids import read_grids
from fonts_free.drawing.strokes import Hand, Program, read_strokes

HERE = Path(__file__).resolve().parent


def _other_parity(name: str) -> str:
    """A mark for letters of even width serves those of odd width once both have grown by one, and back."""
    swaps = {"even": "odd", "odd": "even"}
    stem, dot, end = name.rpartition(".")
    return f"{stem}.{swaps[end]}" if dot and end in swaps else name


def drawn(face: Face) -> dict[str, Glyph]:
    """Every glyph and part that the face's sources draw."""
    glyphs: dict[str, Glyph] = {}
    for source in face.smear:
        for name, glyph in read_grids(HERE / "grids" / f"{source}.txt").items():
            glyphs[_other_parity(name)] = smeared(glyph)
    programs: dict[str, Program] = {}
    for source in face.strokes:
        programs |= read_strokes(HERE / "strokes" / f"{source}.txt")
    hand = Hand(programs, face.numbers())
    names = coverage.NUMERALS if face.kind == "numerals" else programs
    glyphs |= {name: hand.glyph(name) for name in names if name in programs}
    for source in face.grids:
        glyphs |= read_grids(HERE / "grids" / f"{source}.txt")
    return glyphs


def characters(face: Face) -> dict[str, Glyph]:
    """The glyph of every character the face must have; an error names those that cannot be made."""
    parts = drawn(face)
    wanted = coverage.NUMERALS if face.kind == "numerals" else coverage.TEXT
    glyphs: dict[str, Glyph] = {}
    lacking: list[str] = []
    for char in wanted:
        glyph = parts.get(char) or composed(char, parts) or parts.get(SAME.get(char, char))
        if glyph is None:
            lacking.append(f"{char} U+{ord(char):04X}")
        else:
            glyphs[char] = glyph
    if lacking:
        raise ValueError(f"{face.stem}: not drawn: {', '.join(lacking)}")
    uneven = [char for char in coverage.STEADY if char in glyphs and glyphs[char].advance != face.figure]
    if uneven:
        raise ValueError(f"{face.stem}: advance is not {face.figure}: {uneven}")
    return glyphs


def font_text(face: Face) -> str:
    """The font file of a face."""
    head = Head(
        family=FAMILY + (" Numerals" if face.kind == "numerals" else ""),
        weight=face.weight,
        size=face.size,
        ascent=face.ascent,
        descent=face.descent,
        cap_height=face.cap,
        x_height=face.x,
        figure_width=face.figure,
        default_char=ord(coverage.MISSING),
    )
    return write_bdf(head, characters(face))


def main(arguments: list[str]) -> int:
    """Writes or checks the font files."""
    stale = []
    for face in FACES:
        path = HERE / f"{face.stem}.bdf"
        text = font_text(face)
        if path.exists() and path.read_bytes() == text.encode("ascii"):
            continue
        stale.append(path.name)
        if "--check" not in arguments:
            path.write_bytes(text.encode("ascii"))
    print("\n".join(stale) or "every font file is what the sources give")
    return 1 if stale and "--check" in arguments else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
