"""The bundled faces, largest first, as starters set them."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from panelproof.glyphs.catalogue import find
from panelproof.glyphs.type import Type, open_type


@dataclass(frozen=True, slots=True)
class Face:
    """One bundled bitmap font: `cap` is the height of its digits in pixels, `height` its line height."""

    font: str
    height: int
    cap: int
    bold: bool = False
    numerals: bool = False

    @property
    def type(self) -> Type:
        """The opened font."""
        return _opened(self.font)

    @property
    def lead(self) -> int:
        """The least room between two lines of it, from ink to ink."""
        return max(2, self.cap * 2 // 3)


@lru_cache(maxsize=64)
def _opened(font: str) -> Type:
    return open_type(find(font, Path()), None, "one-bit", False, True)


PLAIN = (
    Face("pellucet-48", 48, 34),
    Face("pellucet-32", 32, 22),
    Face("pellucet-24", 24, 16),
    Face("pellucet-20", 20, 14),
    Face("pellucet-16", 16, 10),
    Face("pellucet-12", 12, 8),
    Face("pellucet-8", 8, 7),
)
"""Regular weight, largest first. The 10 is the 8 with more lead, so it is left out."""
BOLD = tuple(
    Face(f"pellucet-bold-{height}", height, cap, bold=True)
    for height, cap in ((48, 34), (32, 22), (24, 16), (20, 14), (16, 10), (12, 8))
)
NUMERALS = (
    Face("pellucet-numerals-64", 64, 56, numerals=True),
    Face("pellucet-numerals-48", 48, 42, numerals=True),
)
READINGS = (*NUMERALS, *BOLD, PLAIN[-1])
"""What a reading can be set in, largest first."""


def heavier(face: Face) -> Face:
    """Return the bold face of the same height, or the face itself where there is none."""
    return next((bold for bold in BOLD if bold.height == face.height), face)


def icon_size(face: Face) -> int:
    """Return the side of the icons that go with a face."""
    return 24 if face.cap >= 16 else 16 if face.cap >= 10 else 12
