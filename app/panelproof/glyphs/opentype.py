"""Numbers and glyph sets in the tables of an OpenType font, looked up where they lie.

Nothing is unpacked ahead, so a damaged table costs no more time or memory than a sound one. Reading past a table's
end raises struct.error. Source: the OpenType specification, "Font file" and "OpenType layout common table formats".
"""

from __future__ import annotations

import struct
from dataclasses import dataclass

from panelproof.glyphs.file import FontFile

_U16, _I16, _U32 = struct.Struct(">H"), struct.Struct(">h"), struct.Struct(">I")


@dataclass(frozen=True, slots=True, eq=False)
class Table:
    """A table of a font, or a part of one: `data` from `start` on; offsets count from `start`."""

    data: bytes
    start: int = 0

    def u16(self, offset: int) -> int:
        """Return the unsigned 16-bit number at an offset."""
        number: int = _U16.unpack_from(self.data, self.start + offset)[0]
        return number

    def i16(self, offset: int) -> int:
        """Return the signed 16-bit number at an offset."""
        number: int = _I16.unpack_from(self.data, self.start + offset)[0]
        return number

    def u32(self, offset: int) -> int:
        """Return the unsigned 32-bit number at an offset."""
        number: int = _U32.unpack_from(self.data, self.start + offset)[0]
        return number

    def tag(self, offset: int) -> bytes:
        """Return the four-byte tag at an offset."""
        tag: bytes = struct.unpack_from("4s", self.data, self.start + offset)[0]
        return tag

    def at(self, offset: int) -> Table:
        """Return the part that begins at an offset."""
        return Table(self.data, self.start + offset)

    def part(self, offset: int) -> Table | None:
        """Return the part that the 16-bit offset at `offset` leads to, None where that is 0."""
        there = self.u16(offset)
        return self.at(there) if there else None


def table(file: FontFile, tag: bytes) -> Table | None:
    """Return a table of a file's first face, None where it has none of that tag."""
    whole = Table(file.data)
    directory = whole.at(whole.u32(12)) if file.kind == "TTC" else whole
    for number in range(directory.u16(4)):
        entry = directory.at(12 + 16 * number)
        if entry.tag(0) == tag:
            offset, length = entry.u32(8), entry.u32(12)
            return Table(file.data[offset : offset + length])
    return None


def _last_up_to(part: Table, first: int, count: int, step: int, glyph: int) -> int:
    """Return the place of the last of `count` records, sorted by their first number, that begins at most at `glyph`.

    -1 where all begin later.
    """
    low, high = 0, count
    while low < high:
        middle = (low + high) // 2
        if part.u16(first + step * middle) <= glyph:
            low = middle + 1
        else:
            high = middle
    return low - 1


def find(part: Table, first: int, count: int, step: int, glyph: int) -> int:
    """Return the offset of the record whose first number is `glyph`, -1 where there is none."""
    place = _last_up_to(part, first, count, step, glyph)
    offset = first + step * place
    return offset if place >= 0 and part.u16(offset) == glyph else -1


def coverage_index(part: Table, glyph: int) -> int | None:
    """Return a glyph's number in a Coverage table, None where it is not covered."""
    count = part.u16(2)
    if part.u16(0) == 1:
        offset = find(part, 4, count, 2, glyph)
        return None if offset < 0 else (offset - 4) // 2
    if part.u16(0) != 2:
        raise struct.error
    place = _last_up_to(part, 4, count, 6, glyph)
    if place < 0 or glyph > part.u16(6 + 6 * place):
        return None
    return part.u16(8 + 6 * place) + glyph - part.u16(4 + 6 * place)


def glyph_class(part: Table, glyph: int) -> int:
    """Return a glyph's class in a ClassDef table, 0 where it lists none."""
    if part.u16(0) == 1:
        place = glyph - part.u16(2)
        return part.u16(6 + 2 * place) if 0 <= place < part.u16(4) else 0
    if part.u16(0) != 2:
        raise struct.error
    place = _last_up_to(part, 4, part.u16(2), 6, glyph)
    return part.u16(8 + 6 * place) if place >= 0 and glyph <= part.u16(6 + 6 * place) else 0
