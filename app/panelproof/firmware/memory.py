"""What a header's constants take in memory, read off the header itself: structures, tables, strings.

On processors of 32 bits members lie at multiples of their size; on AVR without gaps, and a pointer takes two bytes.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from panelproof.firmware.constants import text_bytes
from panelproof.layout.document import Layout
from panelproof.layout.parts import Field

_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_STRUCTURE = re.compile(r"typedef struct (\w+_) \{(.*?)\} \1;", re.DOTALL)
_MEMBER = re.compile(r"(u?int\d+_t) \w+(?:\[(\d+)\])?;")
_LITERALS = r"(?:\"(?:[^\"\\]|\\.)*\"\s*)+"
_CONSTANT = re.compile(
    r"^( *)static \w+_CONST ([\w ]+?) (\w+)((?:\[[^\]]*\])*) =\s+"
    rf"(\{{[^\n]*\}}|\{{.*?\n *\}}|\w+|{_LITERALS});",
    re.DOTALL | re.MULTILINE,
)
_TEXT = re.compile(rf"^#define (\w+)[ \t]+({_LITERALS})", re.MULTILINE)
_PRINTED = re.compile(rf"snprintf\(\w+,[^,;]+,\s*(\w+|{_LITERALS})")
_STRING = re.compile(r'"((?:[^"\\]|\\.)*)"')
_ESCAPE = re.compile(r"\\(x[0-9A-Fa-f]+|[0-7]{1,3}|.)")


@dataclass(frozen=True, slots=True)
class Target:
    """How a processor lays out data: whether members are aligned, and the bytes of a pointer."""

    aligned: bool
    pointer: int


WORDS = Target(True, 4)
BYTES = Target(False, 2)


@dataclass(frozen=True, slots=True)
class Constants:
    """Bytes of constant data.

    `bitmaps` of glyphs and icons, `tables` beside them, `strings` of the text functions, and `formats`: those that are
    handed to the C library, each once.
    """

    bitmaps: int
    tables: int
    strings: int
    formats: int


def constants(header: str, target: Target) -> Constants:
    """Return the bytes of the constant data in a header as `firmware.header` makes it."""
    text = _COMMENT.sub("", header)
    sizes = {name: _structure(members, target) for name, members in _STRUCTURE.findall(text)}
    texts = dict(_TEXT.findall(text))
    bitmaps = tables = strings = 0
    for inside, kind, name, dimensions, value in _CONSTANT.findall(text):
        if not value.startswith("{"):
            size = _string(texts.get(value, value))
        elif kind in sizes:
            size = sizes[kind] * (value.count("{") - 1 if dimensions else 1)
        else:
            size = _scalar(kind, target) * _numbers(value)
        if inside:
            strings += size
        elif name.endswith("_bits_"):
            bitmaps += size
        else:
            tables += size
    formats = {texts.get(value, value).strip() for value in _PRINTED.findall(text)}
    return Constants(bitmaps, tables, strings, sum(map(_string, formats)))


def _string(literals: str) -> int:
    """Return the bytes of a string of C, its terminator included."""
    return sum(len(_ESCAPE.sub("?", one)) for one in _STRING.findall(literals)) + 1


def _structure(members: str, target: Target) -> int:
    at, widest = 0, 1
    for kind, many in _MEMBER.findall(members):
        size = int(re.sub(r"\D", "", kind)) // 8
        if target.aligned:
            at += -at % size
            widest = max(widest, size)
        at += size * int(many or 1)
    return at + -at % widest


def _scalar(kind: str, target: Target) -> int:
    if "char *" in kind:
        return target.pointer
    bits = re.search(r"int(\d+)_t", kind)
    return int(bits[1]) // 8 if bits else 1


def _numbers(value: str) -> int:
    return sum(1 for entry in re.split(r"[,{}]", value) if entry.strip())


def fields(layout: Layout) -> tuple[Field, ...]:
    """Return every field of a layout."""
    return tuple(part for screen in layout.screens for part in screen.parts if isinstance(part, Field))


def buffers(layout: Layout) -> int:
    """Return the bytes of the text buffers of all fields, each with one of its own."""
    return sum(map(text_bytes, fields(layout)))
