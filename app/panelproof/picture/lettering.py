"""Words around the pictures: one typeface, measured and broken into lines that fit."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from PIL import ImageDraw, ImageFont

from panelproof.glyphs.catalogue import find
from panelproof.layout.colour import Rgb
from panelproof.problem import Problem

Font = ImageFont.FreeTypeFont | ImageFont.ImageFont

FACE = "SourceSansPro"
PAGE: Rgb = (246, 247, 249)
TEXT: Rgb = (28, 32, 38)
FAINT: Rgb = (92, 98, 108)


@lru_cache(maxsize=16)
def font(size: int) -> Font:
    """Return the typeface of captions at a pixel size; Pillow's own where ours is not installed."""
    try:
        path = find(FACE, Path())
        return ImageFont.truetype(str(path), size, layout_engine=ImageFont.Layout.BASIC)
    except (Problem, OSError):
        return ImageFont.load_default(size)


def line_height(size: int) -> int:
    """Return the distance of two baselines in pixels."""
    return size + size // 3


def width(text: str, size: int) -> int:
    """Return how many pixels a line of text needs, rounded up."""
    return -int(-font(size).getlength(text) // 1)


def lines(text: str, size: int, room: int) -> list[str]:
    """Return the text in lines of at most `room` pixels, broken at spaces, inside a word if need be."""
    broken: list[str] = []
    line = ""
    for word in "".join(char if char.isprintable() else " " for char in text).split(" "):
        longer = f"{line} {word}" if line else word
        if width(longer, size) <= room:
            line = longer
            continue
        if line:
            broken.append(line)
        line = word
        while len(line) > 1 and width(line, size) > room:
            fits = max(1, next(n for n in range(len(line), 0, -1) if n == 1 or width(line[:n], size) <= room))
            broken.append(line[:fits])
            line = line[fits:]
    return [*broken, line]


def write(pen: ImageDraw.ImageDraw, place: tuple[int, int], text: str, size: int, colour: Rgb) -> None:
    """Write one line, its line box's top left corner at `place`."""
    x, y = place
    pen.text((x, y + line_height(size) * 4 // 5), text, font=font(size), fill=colour, anchor="ls")
