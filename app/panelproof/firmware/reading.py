"""A header read back: what it says of itself, its constants, and its glyphs by character."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

Numbers = tuple[int, ...]

_FACT = re.compile(r"^\s+(layout|digest|format|made by|type)\s+(.*)$")
_DEFINE = re.compile(r'^#define (\w+[A-Z0-9])[ \t]+((?:"(?:[^"\\]|\\.)*"|[^"/\n]|/(?!\*))*)', re.MULTILINE)
_ARRAY = re.compile(
    r"^static \w+ \w+ (\w+?_)(?:\[\w*\])*(?:\[14\])? = \{\n(.*?)\n\};", re.MULTILINE | re.DOTALL
)
_STRUCT = re.compile(r"^typedef struct \w+?_glyph_ \{\n(.*?)\n\}", re.MULTILINE | re.DOTALL)
_SECTION = re.compile(r"^/\* (the icons|[a-z][a-z0-9-]*(?=: )).* \*/$")
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

    `glyphs` holds, by type (or `the icons`) and title (``U+0041 A``), the metrics and the packed pixels;
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


def _glyphs(
    text: str, rows: str, bits: str, types: Mapping[str, TypeFact]
) -> dict[str, dict[str, tuple[Numbers, bytes]]]:
    struct = _STRUCT.search(text)
    if struct is None:
        return {}
    names = re.findall(r"^\s+\w+ (\w+);", struct.group(1), re.MULTILINE)
    width, height, first = (names.index(name) for name in ("width", "height", "first_byte"))
    pixels = bytes(_numbers(_plain(bits)))
    found: dict[str, dict[str, tuple[Numbers, bytes]]] = {}
    section = ""
    for raw in rows.splitlines():
        line = raw.strip()
        title = _SECTION.match(line)
        if title is not None:
            section = title.group(1)
            continue
        values, _, name = line.partition("/*")
        numbers = _numbers(values)
        depth = 4 if section in types and "antialiased" in types[section].title else 1
        size = (numbers[width] * numbers[height] * depth + 7) // 8
        blob = pixels[numbers[first] : numbers[first] + size]
        metrics = tuple(number for place, number in enumerate(numbers) if place != first)
        found.setdefault(section, {})[name.removesuffix("*/").strip()] = (metrics, blob)
    return found
