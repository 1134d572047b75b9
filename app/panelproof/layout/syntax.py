"""From the bytes of a layout file to plain values: JSON (RFC 8259), and nothing that JSON leaves open."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from panelproof.layout.wording import quote, within
from panelproof.problem import Problem

GREATEST_SIZE = 4 * 1024 * 1024
GREATEST_DEPTH = 64
GREATEST_DIGITS = 100

_HALF = "half a character: `\\ud800` to `\\udfff` stand for one only in pairs; take it out"
_INFINITY = float("inf")

# Possessive, so that even four million backslashes need no memory to go back over.
_STRING = r'"[^"\\]*+(?:\\.[^"\\]*+)*+"?'
_TEXT = re.compile(_STRING, re.DOTALL)
_BRACKET = re.compile(r"[\[\]{}]")
_TOKEN = re.compile(rf"{_STRING}|[\[\]{{}}]", re.DOTALL)
_STEP = {"[": 1, "{": 1, "]": -1, "}": -1}
_WORD = re.compile(r"[A-Za-z]+")
_WORDS = {"True": "true", "TRUE": "true", "False": "false", "FALSE": "false", "None": "null", "nil": "null"}
_MESSAGES = {
    "Expecting ':' delimiter": "a colon is missing between a key and its value",
    "Unterminated string starting at": "the text that begins here has no closing double quote",
    "Invalid control character at": "a text holds a line end, a tab or the like; write it in one line",
    "Invalid \\escape": "a backslash in a text is written `\\\\`",
    "Invalid \\uXXXX escape": "`\\u` must be followed by four hexadecimal digits",
    "Extra data": "something follows the end of the layout; a file holds one object",
}


@dataclass(frozen=True, slots=True)
class _Bad:
    """Stands in the tree where something was that no layout may hold."""

    message: str
    key: str | None = None


def load(data: bytes) -> object:
    """Return the value that a file's bytes hold.

    Raises Problem for what is too large, not UTF-8, not JSON, has a key twice, or a number out of all
    measure; the place is `line L, column C` (of the first column, 1) or the path of the value.
    """
    text = _decode(data)
    _check_depth(text)
    bad: list[_Bad] = []

    def entries(pairs: list[tuple[str, object]]) -> object:
        tree = dict(pairs)
        if len(tree) == len(pairs):
            return tree
        return mark("this key stands twice in one object; keep one", _first_again(pairs))

    def mark(message: str, key: str | None = None) -> object:
        bad.append(_Bad(message, key))
        return bad[-1]

    def whole(digits: str) -> object:
        return int(digits) if len(digits) <= GREATEST_DIGITS else mark(_long(digits))

    def real(digits: str) -> object:
        if len(digits) > GREATEST_DIGITS:
            return mark(_long(digits))
        value = float(digits)
        return (
            mark(f"{digits} is greater than any number that can be held")
            if abs(value) == _INFINITY
            else value
        )

    def constant(word: str) -> object:
        return mark(f"`{word}` is not a number that a layout can hold")

    try:
        tree: object = json.loads(
            text, object_pairs_hook=entries, parse_int=whole, parse_float=real, parse_constant=constant
        )
    except json.JSONDecodeError as error:
        message, position = _in_words(text, error.msg, error.pos)
        raise Problem(message, _line_and_column(text, position)) from None
    if bad or _may_hold_halves(text):
        for problem in _marked(tree):
            raise problem
    return tree


def _first_again(pairs: list[tuple[str, object]]) -> str:
    seen = set()
    for key, _ in pairs:
        if key in seen:
            return key
        seen.add(key)
    return ""


def _decode(data: bytes) -> str:
    if len(data) > GREATEST_SIZE:
        raise Problem(f"the file is larger than {GREATEST_SIZE // 1024**2} MB; no layout is")
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise Problem("the file is saved as UTF-16; save it as UTF-8")
    if data.startswith(b"\xef\xbb\xbf"):
        raise Problem("the file begins with a byte order mark; save it as UTF-8 without one (“no BOM”)")
    try:
        text = data.decode()
    except UnicodeDecodeError as error:
        before = data[: error.start]
        line, column = before.count(b"\n") + 1, len(before[before.rfind(b"\n") + 1 :].decode()) + 1
        message = f"the byte 0x{data[error.start]:02X} is not UTF-8; save the file as UTF-8"
        raise Problem(message, f"line {line}, column {column}") from None
    if not text.strip(" \t\r\n"):
        raise Problem("the file is empty")
    return text


def _line_and_column(text: str, position: int) -> str:
    return (
        f"line {text.count(chr(10), 0, position) + 1}, column {position - text.rfind(chr(10), 0, position)}"
    )


def _long(digits: str) -> str:
    return (
        f"the number {digits[:12]}… is {len(digits)} characters long; at most {GREATEST_DIGITS} can be read"
    )


def _check_depth(text: str) -> None:
    # How deep the json module can read, and that it survives, differs from one Python to the next.
    if _deepest(_BRACKET.finditer(_TEXT.sub("", text))) is None:
        return
    position = _deepest(_TOKEN.finditer(text)) or 0
    message = f"objects and lists stand deeper in one another than {GREATEST_DEPTH}; no layout needs that"
    raise Problem(message, _line_and_column(text, position))


def _deepest(tokens: Iterator[re.Match[str]]) -> int | None:
    """Return where the tokens first go too deep, or None."""
    depth = 0
    for match in tokens:
        depth += _STEP.get(match.group(), 0)
        if depth > GREATEST_DEPTH:
            return match.start()
    return None


def _in_words(text: str, said: str, position: int) -> tuple[str, int]:
    """Return the sentence and the position for what Python's json module said of the text."""
    if "trailing comma" in said:  # Python 3.13 points at the comma, earlier ones at what follows
        position = len(text) - len(text[position + 1 :].lstrip(" \t\r\n"))
    here = text[position : position + 1]
    before = text[:position].rstrip(" \t\r\n")[-1:]
    for beginning, message in _MESSAGES.items():
        if said.startswith(beginning) and (here or beginning != "Expecting ':' delimiter"):
            return message, position
    if not here:
        return "the file ends too early: a value, a comma or a closing bracket is missing", position
    if text.startswith(("//", "/*", "#"), position):
        return "JSON has no comments; take this one out", position
    if here in "}]" and before == ",":
        return f"the last comma before this {quote(here)} is one too many", position
    if here == "'":
        return "texts and keys stand in double quotes, not single ones", position
    if said.startswith("Expecting ',' delimiter"):
        if before.isdigit() and not text[position - 1].isspace() and here not in '"[{':
            return "this number is not written as JSON has it, such as 7, -0.5 or 1e3", position
        return "a comma is missing before this, or a closing bracket", position
    if said.startswith("Expecting property name"):
        return f"a key in double quotes is expected here, not {quote(here)}", position
    if here in "+.-" or here.isdigit():
        return "this number is not written as JSON has it, such as 7, -0.5 or 1e3", position
    word = _WORD.match(text, position)
    if word and word.group() in _WORDS:
        return f"`{word.group()}` is written `{_WORDS[word.group()]}`", position
    if word:
        return f"a text stands in double quotes: {quote(word.group())} does not", position
    return f"a value is expected here, not {quote(here)}", position


def _may_hold_halves(text: str) -> bool:
    return "\\ud" in text or "\\uD" in text


def _halved(text: str) -> bool:
    return any("\ud800" <= char <= "\udfff" for char in text)


def _marked(tree: object) -> Iterator[Problem]:
    """Yield a problem for each mark and each half of a surrogate pair, in the order of the file."""
    stack: list[tuple[str, object]] = [("", tree)]
    while stack:
        place, value = stack.pop()
        if isinstance(value, _Bad):
            yield Problem(value.message, place if value.key is None else within(place, value.key))
        elif isinstance(value, str):
            if _halved(value):
                yield Problem(_HALF, place)
        elif isinstance(value, Mapping):
            for key in value:
                if _halved(key):
                    yield Problem(_HALF, place)
            stack.extend(reversed([(within(place, key), entry) for key, entry in value.items()]))
        elif isinstance(value, list):
            stack.extend(reversed([(within(place, number), entry) for number, entry in enumerate(value)]))
