"""Kerning of pairs of characters, in font units: from GPOS, else from the `kern` table.

Read by hand, pair by pair: fontTools unpacks whole tables, which takes longer than all else that a check does,
and makes gigabytes of a damaged one.

Source: the OpenType specification, chapters GPOS (lookup types 2 and 9), GDEF and kern.
"""

from __future__ import annotations

import struct
import unicodedata
from collections.abc import Callable
from typing import Protocol

from panelproof.glyphs.file import FontFile
from panelproof.glyphs.opentype import Table, coverage_index, find, glyph_class, table
from panelproof.problem import Problem

_PAIRS, _EXTENSION = 2, 9
_X_ADVANCE, _BEFORE_X_ADVANCE = 0x4, 0x3
_BASE, _MARK = 1, 3
_IGNORE = {_BASE: 0x2, 2: 0x4, _MARK: 0x8}  # by class of glyph; 2 is a ligature
_MARKS_OF_SET, _MARKS_OF_CLASS = 0x10, 0xFF00
_MOST_SUBTABLES = 1000  # far above any real font; a damaged count must not cost minutes
_ABSENT = -1


class _Subtable(Protocol):
    """Something that kerns pairs of glyphs; None where it does not speak of the pair."""

    def value(self, left: int, right: int) -> int | None: ...


class _ByGlyph:
    """GPOS pair adjustment, format 1: each pair listed."""

    def __init__(self, part: Table) -> None:
        self._part = part
        self._coverage = part.at(part.u16(2))
        self._value = _Value(part.u16(4))
        self._step = 2 + self._value.size + _Value(part.u16(6)).size
        self._sets: dict[int, Table | None] = {}

    def value(self, left: int, right: int) -> int | None:
        if left not in self._sets:
            row = coverage_index(self._coverage, left)
            known = row is not None and row < self._part.u16(8)
            self._sets[left] = self._part.part(10 + 2 * row) if known and row is not None else None
        pairs = self._sets[left]
        if pairs is None:
            return None
        record = find(pairs, 2, pairs.u16(0), self._step, right)
        return None if record < 0 else self._value.advance(pairs, record + 2)


class _ByClass:
    """GPOS pair adjustment, format 2: a grid of classes of glyphs."""

    def __init__(self, part: Table) -> None:
        self._part = part
        self._coverage, self._first, self._second = (part.at(part.u16(offset)) for offset in (2, 8, 10))
        self._value = _Value(part.u16(4))
        self._step = self._value.size + _Value(part.u16(6)).size
        self._rows, self._columns = part.u16(12), part.u16(14)
        self._row: dict[int, int] = {}
        self._column: dict[int, int] = {}

    def value(self, left: int, right: int) -> int | None:
        if left not in self._row:
            covered = coverage_index(self._coverage, left) is not None
            self._row[left] = glyph_class(self._first, left) if covered else _ABSENT
        row = self._row[left]
        if not 0 <= row < self._rows:
            return None
        if right not in self._column:
            self._column[right] = glyph_class(self._second, right)
        column = self._column[right]
        if column >= self._columns:
            return None
        return self._value.advance(self._part, 16 + (row * self._columns + column) * self._step)


class _Value:
    """A value record of some format: its size in bytes, and where in it the advance stands."""

    def __init__(self, value_format: int) -> None:
        self.size = 2 * (value_format & 0xFF).bit_count()
        self._has_advance = bool(value_format & _X_ADVANCE)
        self._offset = 2 * (value_format & _BEFORE_X_ADVANCE).bit_count()

    def advance(self, part: Table, offset: int) -> int:
        return part.i16(offset + self._offset) if self._has_advance else 0


class _Lookup:
    """Subtables of which the first that speaks of a pair counts."""

    def __init__(self, part: Table, gdef: Table | None) -> None:
        self._flag = part.u16(2)
        count = part.u16(4)
        self.size = count
        if count > _MOST_SUBTABLES:
            raise struct.error
        self._subtables: list[_Subtable] = []
        for number in range(count):
            kind, subtable = part.u16(0), part.at(part.u16(6 + 2 * number))
            if kind == _EXTENSION:
                kind, subtable = subtable.u16(2), subtable.at(subtable.u32(4))
            if kind == _PAIRS:
                self._subtables.append(_ByGlyph(subtable) if subtable.u16(0) == 1 else _ByClass(subtable))
        self._classes = gdef.part(4) if gdef is not None else None
        self._attached: Table | None = None
        self._kept: Table | None = None
        if gdef is not None and self._flag & _MARKS_OF_SET:
            sets = gdef.part(12)
            if sets is not None:
                self._kept = sets.at(sets.u32(4 + 4 * part.u16(6 + 2 * count)))
        elif gdef is not None and self._flag & _MARKS_OF_CLASS:
            self._attached = gdef.part(10)

    def value(self, left: int, right: int) -> int:
        for subtable in self._subtables:
            value = subtable.value(left, right)
            if value is not None:
                return value
        return 0

    def passes_over(self, glyph: int, char: str) -> bool:
        """Tell whether the lookup acts as if a glyph were not there (its flags, and GDEF)."""
        if self._classes is not None:
            kind = glyph_class(self._classes, glyph)
        else:
            # HarfBuzz's rule where the font classes nothing: a mark is what Unicode calls one.
            kind = _MARK if unicodedata.category(char) == "Mn" else _BASE
        if self._flag & _IGNORE.get(kind, 0):
            return True
        if kind != _MARK:
            return False
        if self._kept is not None:
            return coverage_index(self._kept, glyph) is None
        return self._attached is not None and glyph_class(self._attached, glyph) != self._flag >> 8


class _Listed:
    """The horizontal subtables of the `kern` table: values add up, or replace those before."""

    def __init__(self, part: Table) -> None:
        self._subtables: list[tuple[Table, int, bool]] = []
        apple = part.u32(0) == 0x10000
        count, offset = (part.u32(4), 8) if apple else (part.u16(2), 4)
        if count > _MOST_SUBTABLES:
            raise struct.error
        for _ in range(count):
            here = part.at(offset)
            if apple:
                length, coverage, kind, pairs = here.u32(0), here.u16(4) >> 8, here.u16(4) & 0xFF, 8
                # Bits 7 vertical, 6 across, 5 variations.
                along, replaces = not coverage & 0xE0, False
            else:
                length, coverage, kind, pairs = here.u16(2), here.u16(4) & 0xFF, here.u16(4) >> 8, 6
                # Bits 0 horizontal, 1 least values, 2 across, 3 replaces.
                along, replaces = coverage & 0x7 == 0x1, bool(coverage & 0x8)
            if along and kind == 0:
                # The length overflows in tables of many pairs, so that their own count is what holds.
                self._subtables.append((here.at(pairs + 8), here.u16(pairs), replaces))
            offset += length

    def value(self, left: int, right: int) -> int:
        total, wanted = 0, left << 16 | right
        for pairs, count, replaces in self._subtables:
            low, high = 0, count
            while low < high:
                middle = (low + high) // 2
                if pairs.u32(6 * middle) < wanted:
                    low = middle + 1
                else:
                    high = middle
            if low < count and pairs.u32(6 * low) == wanted:
                value = pairs.i16(6 * low + 4)
                total = value if replaces else total + value
        return total

    def passes_over(self, _glyph: int, _char: str) -> bool:
        return False


class Kerning:
    """The kerning of an OpenType font: the `kern` feature of GPOS for Latin, else the `kern` table.

    Read from GPOS are pair adjustments (format 1 and 2, also as extensions) of the script's default language;
    of each pair the first glyph's advance. `index` gives a character's glyph in the font, 0 where it has none.
    Raises Problem where the tables are damaged.
    """

    def __init__(self, file: FontFile, index: Callable[[str], int]) -> None:
        self._shown = file.shown
        self._index = index
        self._glyphs: dict[str, int] = {}
        self._passed: dict[str, list[bool]] = {}
        self._lookups: list[_Lookup | _Listed] = []
        try:
            gpos, kern = table(file, b"GPOS"), table(file, b"kern")
            numbers = _feature_lookups(gpos) if gpos is not None else None
            if gpos is not None and numbers is not None:
                self._lookups.extend(_from_gpos(gpos, numbers, table(file, b"GDEF")))
            elif kern is not None:
                self._lookups.append(_Listed(kern))
        except struct.error:
            raise self._damaged() from None

    def units(self, left: str, right: str) -> int:
        """Return the kerning between two characters in font units, 0 where the font has none.

        Raises Problem where the font's tables are damaged there.
        """
        try:
            first, second = self._glyph(left), self._glyph(right)
            if not first or not second:
                return 0
            lookups = zip(self._lookups, self._passed[left], self._passed[right], strict=True)
            return sum(
                lookup.value(first, second)
                for lookup, left_passed, right_passed in lookups
                if not (left_passed or right_passed)
            )
        except struct.error:
            raise self._damaged() from None

    def _glyph(self, char: str) -> int:
        if char not in self._glyphs:
            glyph = self._index(char)
            self._passed[char] = [lookup.passes_over(glyph, char) for lookup in self._lookups]
            self._glyphs[char] = glyph
        return self._glyphs[char]

    def _damaged(self) -> Problem:
        return Problem(
            f"the kerning of {self._shown} cannot be read, as the file is damaged; "
            "switch kerning off for this type"
        )


def _feature_lookups(gpos: Table) -> list[int] | None:
    """Return the numbers of the kern feature's lookups, ascending, None where there is no such feature."""
    scripts, features = gpos.part(4), gpos.part(6)
    if scripts is None or features is None:
        return None
    offsets = {scripts.tag(2 + 6 * number): 6 + 6 * number for number in range(scripts.u16(0))}
    offset = offsets.get(b"latn") or offsets.get(b"DFLT") or offsets.get(b"dflt")
    script = scripts.part(offset) if offset else None
    language = script.part(0) if script is not None else None
    if language is None:
        return None
    wanted = [language.u16(6 + 2 * number) for number in range(language.u16(4))]
    if language.u16(2) != 0xFFFF:
        wanted.append(language.u16(2))
    for number in wanted:
        if number >= features.u16(0):
            raise struct.error
        if features.tag(2 + 6 * number) == b"kern":
            feature = features.at(features.u16(6 + 6 * number))
            return sorted({feature.u16(4 + 2 * place) for place in range(feature.u16(2))})
    return None


def _from_gpos(gpos: Table, numbers: list[int], gdef: Table | None) -> list[_Lookup]:
    listed = gpos.part(8)
    if listed is None:
        return []
    lookups, total = [], 0
    for number in numbers:
        if number >= listed.u16(0):
            raise struct.error
        lookup = _Lookup(listed.at(listed.u16(2 + 2 * number)), gdef)
        total += lookup.size + 1
        if total > _MOST_SUBTABLES:
            raise struct.error
        lookups.append(lookup)
    return lookups
