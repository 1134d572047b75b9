"""What the font tests share: the files, read three ways, and small measurements."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path

import freetype
from bdfparser import Font
from fonts_free.build import HERE
from fonts_free.drawing.faces import FACES, Face

Ink = frozenset[tuple[int, int]]
TEXT_FACES = [face for face in FACES if face.kind == "text"]
NAMES = [face.stem for face in FACES]
TEXT_NAMES = [face.stem for face in TEXT_FACES]


@dataclass(frozen=True)
class Read:
    """A glyph as a reader of font files gives it: pixels (x from the pen, y over the baseline), advance."""

    ink: Ink
    advance: int
    box: tuple[int, int, int, int]  # left, bottom, right, top


def path(face: Face) -> Path:
    return HERE / f"{face.stem}.bdf"


def _read(ink: Ink, advance: int) -> Read:
    xs, ys = [x for x, _ in ink] or [0], [y for _, y in ink] or [0]
    empty = not ink
    return Read(ink, advance, (min(xs), min(ys), max(xs) + (not empty), max(ys) + (not empty)))


@cache
def by_freetype(face: Face) -> dict[str, Read]:
    font = freetype.Face(str(path(face)))
    font.select_size(0)
    glyphs = {}
    for code, index in font.get_chars():
        if not code:  # how the listing ends in freetype-py; the file has no such character
            continue
        font.load_glyph(index, freetype.FT_LOAD_RENDER | freetype.FT_LOAD_TARGET_MONO)
        slot, bitmap = font.glyph, font.glyph.bitmap
        ink = frozenset(
            (slot.bitmap_left + x, slot.bitmap_top - 1 - y)
            for y in range(bitmap.rows)
            for x in range(bitmap.width)
            if bitmap.buffer[y * bitmap.pitch + x // 8] >> (7 - x % 8) & 1
        )
        glyphs[chr(code)] = _read(ink, slot.advance.x >> 6)
    return glyphs


@cache
def parsed(face: Face) -> Font:
    return Font(str(path(face)))


@cache
def by_bdfparser(face: Face) -> dict[str, Read]:
    font = parsed(face)
    glyphs = {}
    for code in font.glyphs:
        glyph = font.glyphbycp(code)
        rows = glyph.draw(1).todata(2) if glyph.meta["bbw"] else []
        left, bottom = glyph.meta["bbxoff"], glyph.meta["bbyoff"]
        ink = frozenset(
            (left + x, bottom + len(rows) - 1 - y)
            for y, row in enumerate(rows)
            for x, bit in enumerate(row)
            if bit
        )
        glyphs[chr(code)] = _read(ink, glyph.meta["dwx0"])
    return glyphs


def width(read: Read) -> int:
    return read.box[2] - read.box[0]


def height(read: Read) -> int:
    return read.box[3] - read.box[1]


def least_distance(one: Ink, other: Ink) -> int:
    """The fewest pixels in which two glyphs differ, one of them shifted up to two columns either way."""
    return min(len(one ^ {(x + shift, y) for x, y in other}) for shift in range(-2, 3))


def thickest_run(ink: Ink, row: int) -> list[int]:
    """The lengths of the runs of ink in a row, from the left."""
    xs = sorted(x for x, y in ink if y == row)
    runs: list[int] = []
    for number, x in enumerate(xs):
        if number and xs[number - 1] == x - 1:
            runs[-1] += 1
        else:
            runs.append(1)
    return runs


def enclosed(ink: Ink) -> int:
    """The number of grounds shut in by ink, where grounds join along pixel edges only."""
    xs, ys = [x for x, _ in ink], [y for _, y in ink]
    ground = {
        (x, y)
        for x in range(min(xs) - 1, max(xs) + 2)
        for y in range(min(ys) - 1, max(ys) + 2)
        if (x, y) not in ink
    }
    count = 0
    while ground:
        edge = [ground.pop()]
        count += 1
        while edge:
            x, y = edge.pop()
            for beside in ((x + 1, y), (x - 1, y), (x, y + 1), (x, y - 1)):
                if beside in ground:
                    ground.remove(beside)
                    edge.append(beside)
    return count - 1
