"""A header read back: what it says of itself, its constants, and its glyphs by character."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import cast

from panelproof.firmware.encoding import Encoding, pixels

Numbers = tuple[int, ...]
# Places are counted from 1; of the values of a byte, the last is not used.
MOST_IN_A_BYTE = 254

_FACT = re.compile(r"^\s+(layout|digest|format|made by|type)\s+(.*)$")
_DEFINE = re.compile(r'^#define (\w+[A-Z0-9])[ \t]+((?:"(?:[^"\\]|\\.)*"|[^"/\n]|/(?!\*))*)', re.MULTILINE)
_ARRAY = re.compile(
    r"^static \w+ \w+ (\w+?_)(?:\[\w*\])*(?:\[14\])? = \{\n(.*?)\n\};", re.MULTILINE | re.DOTALL
)
_STRUCT = re.compile(r"^typedef struct \w+?_glyph_ \{\n(.*?)\n\}", re.MULTILINE | re.DOTALL)
_SECTION = re.compile(r"^/\* (the icons|[a-z][a-z0-9-]*(?=: )).* \*/$")
_ORIGIN = re.compile(
    r"^/\* columns from (-?\d+) px off the pen, rows from (-?\d+) px over the baseline; bitmaps as (rows|repeats|runs) \*/$"
)
_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_NUMBER = re.compile(r"-?(?:0x[0-9A-Fa-f]+|\d+)\b")


@dataclass(frozen=True, slots=True)
class TypeFact:
    """What a header says of one of its types."""

    title: str
    rasteriser: str


@dataclass(frozen=True, slots=True)
class Parsed:
    """A header taken apart.

    `glyphs` holds, by type (or `the icons`) and title (``U+0041 A``), the metrics and the pixels' levels;
    `arrays` the values of every other array, as source.
    """

    facts: Mapping[str, str]
    types: Mapping[str, TypeFact]
    constants: Mapping[str, str]
    glyphs: Mapping[str, Mapping[str, tuple[Numbers, bytes]]]
    arrays: Mapping[str, str]


def parsed(text: str) -> Parsed | None:
    """Take a header apart; None where it is none that Panelproof has written, or is damaged."""
    text = text.replace("\r\n", "\n")
    facts, types = _facts(text.partition("*/")[0].splitlines())
    if not {"layout", "digest", "format", "made by"} <= facts.keys():
        return None
    constants = {name: value.strip() for name, value in _DEFINE.findall(text)}
    arrays = dict(_ARRAY.findall(text))
    prefix = facts["layout"].replace("-", "_")
    try:
        glyphs = _glyphs(text, arrays.pop(f"{prefix}_glyphs_", ""), arrays.pop(f"{prefix}_bits_", ""), types)
        pairs, kerns = (_plain(arrays.pop(f"{prefix}_{name}_", "")) for name in ("pairs", "kerns"))
        arrays[f"{prefix}_pairs_"] = _kerning(glyphs, pairs, kerns)
        arrays.pop(f"{prefix}_codes_", "")  # they say what the titles of the glyphs say
    except (ValueError, IndexError, KeyError):
        return None
    return Parsed(facts, types, constants, glyphs, {name: _plain(body) for name, body in arrays.items()})


def _facts(lines: Iterable[str]) -> tuple[dict[str, str], dict[str, TypeFact]]:
    facts: dict[str, str] = {}
    types: dict[str, TypeFact] = {}
    for line in lines:
        match = _FACT.match(line)
        if match is None:
            continue
        key, value = match.groups()
        if key != "type":
            facts[key] = value
            continue
        name, _, title = value.partition(": ")
        title, _, rasteriser = title.rpartition(", ")
        types[name] = TypeFact(title, rasteriser)
    return facts, types


def _plain(body: str) -> str:
    return " ".join(_COMMENT.sub(" ", body).split())


def _numbers(text: str) -> list[int]:
    return [int(number, 0) for number in _NUMBER.findall(text)]


def _kerning(glyphs: Mapping[str, Mapping[str, object]], pairs: str, kerns: str) -> str:
    """Return the kerning by the glyphs' own titles, so that it is the same wherever they lie in the table."""
    entries = [f"{section} {title}" for section, titles in glyphs.items() for title in titles]
    bits = 16 if len(entries) > MOST_IN_A_BYTE else 8
    rows = zip(_numbers(pairs), _numbers(kerns), strict=True)
    return "; ".join(
        f"{entries[(key >> bits) - 1]}, {entries[(key & (1 << bits) - 1) - 1]}: {pixels}"
        for key, pixels in rows
    )


def _blobs(bits: str) -> dict[int, bytes]:
    """Return the bitmaps by their first byte; in the header a comment stands over each."""
    found, first = {}, 0
    for part in _COMMENT.split(bits):
        blob = bytes(_numbers(part))
        if blob:
            found[first] = blob
        first += len(blob)
    return found


def _glyphs(
    text: str, rows: str, bits: str, types: Mapping[str, TypeFact]
) -> dict[str, dict[str, tuple[Numbers, bytes]]]:
    struct = _STRUCT.search(text)
    if struct is None:
        return {}
    names = re.findall(r"^\s+\w+ (\w+);", struct.group(1), re.MULTILINE)
    width, height, first, left, drop = (
        names.index(name) for name in ("width", "height", "first_byte", "left", "drop")
    )
    origin: tuple[int, int, Encoding] = 0, 0, "rows"
    blobs = _blobs(bits)
    found: dict[str, dict[str, tuple[Numbers, bytes]]] = {}
    section = ""
    for raw in rows.splitlines():
        line = raw.strip()
        title = _SECTION.match(line)
        if title is not None:
            section = title.group(1)
            continue
        counted = _ORIGIN.match(line)
        if counted is not None:
            origin = (
                int(counted.group(1)),
                int(counted.group(2)),
                cast("Encoding", counted.group(3)),
            )
            continue
        values, _, name = line.partition("/*")
        numbers = _numbers(values)
        depth = 4 if section in types and "antialiased" in types[section].title else 1
        inked = numbers[width] and numbers[height]
        blob = blobs[numbers[first]] if inked else b""
        levels = pixels(blob, numbers[width], numbers[height], depth, origin[2])
        numbers[left] += origin[0]
        numbers[drop] = origin[1] - numbers[drop]
        metrics = tuple(number for place, number in enumerate(numbers) if place != first)
        found.setdefault(section, {})[name.removesuffix("*/").strip()] = (metrics, levels)
    return found
