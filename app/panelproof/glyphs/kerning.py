"""Kerning of pairs of characters, in font units: from GPOS, else from the `kern` table.

Source: the OpenType specification, chapters GPOS (lookup types 2 and 9), GDEF, kern, common table formats.
"""

from __future__ import annotations

import struct
import unicodedata
from collections.abc import Callable
from functools import lru_cache
from typing import Any, Protocol

from panelproof.glyphs.file import FontFile
from panelproof.glyphs.tables import problem_instead, tables

_BASE, _LIGATURE, _MARK = 1, 2, 3
_IGNORE = {_BASE: 0x2, _LIGATURE: 0x4, _MARK: 0x8}
_MARKS_OF_SET, _MARKS_OF_CLASS = 0x10, 0xFF00
_MOST_SUBTABLES = 1000  # far above any real font; a damaged count must not cost minutes


class _Pairs(Protocol):
    """Something that kerns pairs of glyph names; None where it does not speak of the pair."""

    def value(self, left: str, right: str) -> int | None: ...


class _ByGlyph:
    """GPOS pair adjustment, format 1: each pair listed."""

    def __init__(self, subtable: Any) -> None:
        self._rows = {name: k for k, name in enumerate(subtable.Coverage.glyphs)}
        self._sets = subtable.PairSet
        self._read: dict[int, dict[str, int]] = {}

    def value(self, left: str, right: str) -> int | None:
        row = self._rows.get(left)
        if row is None:
            return None
        if row not in self._read:
            records = self._sets[row].PairValueRecord
            # Of two records for one glyph the first counts, as it is the first that a search in order meets.
            self._read[row] = {record.SecondGlyph: _advance(record.Value1) for record in reversed(records)}
        return self._read[row].get(right)


class _ByClass:
    """GPOS pair adjustment, format 2: a table of classes of glyphs; a class not listed is class 0."""

    def __init__(self, subtable: Any) -> None:
        self._covered = frozenset(subtable.Coverage.glyphs)
        self._left = subtable.ClassDef1.classDefs
        self._right = subtable.ClassDef2.classDefs
        self._records = subtable.Class1Record

    def value(self, left: str, right: str) -> int | None:
        if left not in self._covered:
            return None
        row, column = self._left.get(left, 0), self._right.get(right, 0)
        if row >= len(self._records):
            return None
        records = self._records[row].Class2Record
        return _advance(records[column].Value1) if column < len(records) else None


class _Listed:
    """The pairs of the `kern` table."""

    def __init__(self, pairs: dict[tuple[str, str], int]) -> None:
        self._pairs = pairs

    def value(self, left: str, right: str) -> int | None:
        return self._pairs.get((left, right))


class _Lookup:
    """Subtables of which the first that speaks of a pair counts; a skipped glyph has no kerning."""

    def __init__(self, subtables: list[_Pairs], skips: Callable[[str], bool]) -> None:
        self._subtables = subtables
        self._skips = skips

    def value(self, left: str, right: str) -> int:
        if self._skips(left) or self._skips(right):
            return 0
        for subtable in self._subtables:
            value = subtable.value(left, right)
            if value is not None:
                return value
        return 0


class Kerning:
    """The kerning of one font; made by `read_kerning`."""

    def __init__(self, shown: str, names: dict[int, str], lookups: list[_Lookup]) -> None:
        self._shown = shown
        self._names = names
        self._lookups = lookups

    def units(self, left: str, right: str) -> int:
        """Return the kerning between two characters in font units, 0 where the font has none.

        Raises Problem where the font's tables are damaged there.
        """
        first, second = self._names.get(ord(left)), self._names.get(ord(right))
        if first is None or second is None:
            return 0
        with problem_instead(_sentence(self._shown)):
            return sum(lookup.value(first, second) for lookup in self._lookups)


def _sentence(shown: str) -> str:
    return f"the kerning of {shown} cannot be read, as the file is damaged; switch kerning off for this type"


@lru_cache(maxsize=16)
def read_kerning(file: FontFile) -> Kerning:
    """Return the kerning of an OpenType font: the `kern` feature of GPOS for Latin, else the `kern` table.

    Read from GPOS are pair adjustments (format 1 and 2, also as extensions) of the script's default language;
    of each pair the first glyph's advance. Raises Problem where the tables are damaged.
    """
    with problem_instead(_sentence(file.shown)):
        font = tables(file)
        names: dict[int, str] = font.getBestCmap() or {}
        positions = _feature_lookups(font["GPOS"].table) if "GPOS" in font else None
        if positions is not None:
            return Kerning(file.shown, names, _from_gpos(font, positions, names))
        return Kerning(file.shown, names, _from_kern(font) if "kern" in font else [])


def _advance(value: Any) -> int:
    return int(getattr(value, "XAdvance", 0) or 0)


def _feature_lookups(gpos: Any) -> list[Any] | None:
    """Return the lookups of the kern feature in the order they act in, None where it has none."""
    if gpos.ScriptList is None or gpos.FeatureList is None or gpos.LookupList is None:
        return None
    scripts = {record.ScriptTag: record.Script for record in gpos.ScriptList.ScriptRecord}
    script = scripts.get("latn") or scripts.get("DFLT") or scripts.get("dflt")
    language = script.DefaultLangSys if script is not None else None
    if language is None:
        return None
    wanted = list(language.FeatureIndex)
    if language.ReqFeatureIndex != 0xFFFF:
        wanted.append(language.ReqFeatureIndex)
    features = [gpos.FeatureList.FeatureRecord[k] for k in wanted]
    kern = [record.Feature.LookupListIndex for record in features if record.FeatureTag == "kern"]
    if not kern:
        return None
    return [gpos.LookupList.Lookup[k] for k in sorted({number for numbers in kern for number in numbers})]


def _from_gpos(font: Any, positions: list[Any], names: dict[int, str]) -> list[_Lookup]:
    classes = font["GDEF"].table if "GDEF" in font else None
    lookups, total = [], 0
    for lookup in positions:
        subtables: list[_Pairs] = []
        total += len(lookup.SubTable)
        if total > _MOST_SUBTABLES:
            raise ValueError(total)
        for entry in lookup.SubTable:
            subtable = entry.ExtSubTable if entry.LookupType == 9 else entry
            if subtable.LookupType == 2:
                subtables.append(_ByGlyph(subtable) if subtable.Format == 1 else _ByClass(subtable))
        if subtables:
            lookups.append(_Lookup(subtables, _skipper(lookup, classes, names)))
    return lookups


def _skipper(lookup: Any, gdef: Any, names: dict[int, str]) -> Callable[[str], bool]:
    """Return what tells whether a lookup passes a glyph over (its flags, and the glyph classes of GDEF)."""
    flag = lookup.LookupFlag
    listed = getattr(gdef, "GlyphClassDef", None)
    if listed is not None:
        kinds = listed.classDefs
    else:
        # HarfBuzz's rule where the font classes nothing: a mark is what Unicode calls one.
        kinds = {
            name: _MARK if unicodedata.category(chr(code)) == "Mn" else _BASE for code, name in names.items()
        }
    kept: frozenset[str] | None = None
    if flag & _MARKS_OF_SET:
        kept = frozenset(gdef.MarkGlyphSetsDef.Coverage[lookup.MarkFilteringSet].glyphs)
    elif flag & _MARKS_OF_CLASS:
        attached = gdef.MarkAttachClassDef.classDefs
        kept = frozenset(name for name, number in attached.items() if number == flag >> 8)

    def skips(name: str) -> bool:
        kind = kinds.get(name, 0)
        if flag & _IGNORE.get(kind, 0):
            return True
        return kept is not None and kind == _MARK and name not in kept

    return skips


def _from_kern(font: Any) -> list[_Lookup]:
    """Return the horizontal subtables of the `kern` table as one: values add up, or replace those before."""
    version, count = struct.unpack_from(">HH", font.reader["kern"])
    if version == 1:
        count = struct.unpack_from(">I", font.reader["kern"], 4)[0]
    if count > _MOST_SUBTABLES:
        raise ValueError(count)
    pairs: dict[tuple[str, str], int] = {}
    for subtable in font["kern"].kernTables:
        if not hasattr(subtable, "kernTable"):
            continue
        coverage = subtable.coverage
        # Bits 0 horizontal, 1 least values, 2 across, 3 replaces; Apple's 7 vertical, 6 across, 5 variations.
        along = not coverage & 0xE0 if subtable.apple else coverage & 0x7 == 0x1
        replaces = not subtable.apple and coverage & 0x8
        if along:
            for pair, value in subtable.kernTable.items():
                pairs[pair] = value if replaces else pairs.get(pair, 0) + value
    return [_Lookup([_Listed(pairs)], lambda _name: False)]
