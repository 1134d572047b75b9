"""Values as C source: the same meaning in C99 and C++11, in ASCII, and without a compiler's warning."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

WIDTH = 100
CALL_WIDTH = 116
# C99 5.2.4.1 promises 4095; compilers warn of more.
LONGEST_LITERAL = 4000


def text(value: str) -> str:
    """Return a text as a C string literal: UTF-8, bytes beyond ASCII in octal, no trigraphs."""
    made = []
    for byte in value.encode():
        char = chr(byte)
        if char in '"\\':
            made.append(f"\\{char}")
        elif char == "?" and made and made[-1].endswith("?"):
            made.append("\\?")
        else:
            made.append(char if 32 <= byte < 127 else f"\\{byte:03o}")
    return f'"{"".join(made)}"'


def texts(values: Sequence[str]) -> str:
    """Return texts, each with a zero at its end, as one constant of C (the last zero is the literal's own)."""
    raw = b"\0".join(value.encode() for value in values)
    if len(raw) < LONGEST_LITERAL:
        return '"' + "\\000".join(text(value)[1:-1] for value in values) + '"'
    return "{ " + ", ".join(f"'\\{byte:03o}'" for byte in (*raw, 0)) + " }"


def comment(value: str) -> str:
    """Return a text that can stand inside a C comment: ASCII, and no beginning or end of a comment."""
    ascii_only = "".join(char if " " <= char <= "~" else f"U+{ord(char):04X}" for char in value)
    while "*/" in ascii_only or "/*" in ascii_only:
        ascii_only = ascii_only.replace("*/", "* /").replace("/*", "/ *")
    return ascii_only.rstrip("\\")


def clipped(value: str) -> str:
    """Return a text for the end of a line, as `comment` does, shortened where it is long."""
    made = comment(value)
    return made if len(made) <= 60 else f"{made[:56].rstrip(chr(92))} ..."


def whole(value: int, suffix: str = "") -> str:
    """Return a whole number, in parentheses where negative; the least of a type has no literal."""
    if value >= 0:
        return f"{value}{suffix}"
    if value in (-(1 << 31), -(1 << 63)):
        return f"(-{-value - 1}{suffix} - 1)"
    return f"(-{-value}{suffix})"


def real(value: float) -> str:
    """Return a finite double as the shortest decimal that reads back as the same double."""
    made = repr(value + 0.0)
    return f"({made})" if value < 0 else made


def colour(code: int) -> str:
    """Return a code of the panel's own colours."""
    return f"0x{code:04X}"


def rows(values: Iterable[str], indent: str = "    ") -> list[str]:
    """Return values with a comma after each, in lines of at most 100 columns."""
    lines: list[str] = []
    line = indent
    for value in values:
        piece = f"{value},"
        if line.strip() and len(line) + 1 + len(piece) > WIDTH:
            lines.append(line)
            line = indent
        line += piece if not line.strip() else f" {piece}"
    return [*lines, line] if line.strip() else lines


def wrapped(statement: str, indent: int = 4) -> list[str]:
    """Return a call as lines of at most 116 columns with the indent, broken after commas outside texts."""
    if indent + len(statement) <= CALL_WIDTH:
        return [statement]
    hang = statement.index("(", statement.index("snprintf") if "snprintf" in statement else 0) + 1
    lines, line = [], ""
    for piece in re.findall(r'(?:"(?:[^"\\]|\\.)*"|[^",])+,? ?|"', statement):
        if line and indent + len(line) + len(piece.rstrip()) > CALL_WIDTH:
            lines.append(line.rstrip())
            line = " " * hang
        line += piece
    return [*lines, line]


def integer_type(values: Iterable[int]) -> str:
    """Return the smallest of `uint8`, `int8`, `uint16`, `int16`, `uint32`, `int32` that holds every value."""
    listed = [0, *values]
    least, greatest = min(listed), max(listed)
    for bits in (8, 16, 32):
        if least >= 0 and greatest < 1 << bits:
            return f"uint{bits}"
        if -(1 << bits - 1) <= least and greatest < 1 << bits - 1:
            return f"int{bits}"
    raise OverflowError(f"{least} to {greatest}")


def pixels_type(values: Iterable[int]) -> str:
    """Return the smallest of `uint8`, `int8`, `int16`, `int32` that holds every value.

    All but the last become an `int` in an expression, even where that has 16 bits.
    """
    found = integer_type(values)
    return {"uint16": integer_type([-1, *values]), "uint32": "int32"}.get(found, found)


def aligned(table: Sequence[Sequence[str]], gap: str = " ") -> list[str]:
    """Return the rows of a table as lines, every column but the last filled to its widest entry."""
    widths = [max(map(len, column)) for column in zip(*table, strict=True)] if table else []
    return [
        gap.join(f"{cell:<{width}}" for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in table
    ]
