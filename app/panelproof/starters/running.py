"""Running text: broken into lines that fit."""

from __future__ import annotations

from panelproof.glyphs.run import placed
from panelproof.starters.face import Face
from panelproof.starters.piece import NoRoom


def breaks(text: str, face: Face, width: int) -> tuple[str, ...]:
    """Return a text as lines of at most `width` pixels, broken at spaces; raises NoRoom for a word that is wider."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and _width(longer, face) <= width:
            lines[-1] = longer
        elif _width(word, face) <= width:
            lines.append(word)
        else:
            raise NoRoom
    return tuple(lines)


def evened(text: str, face: Face, width: int) -> tuple[str, ...]:
    """Return a text in as few lines as `breaks` gives, but lines as alike in width as can be."""
    lines = breaks(text, face, width)
    while width > 8:
        width -= 4
        try:
            narrower = breaks(text, face, width)
        except NoRoom:
            break
        if len(narrower) > len(lines):
            break
        lines = narrower
    return lines


def _width(text: str, face: Face) -> int:
    return placed(face.type, text)[1]
