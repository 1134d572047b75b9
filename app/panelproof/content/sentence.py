"""Pieces of messages and of printed text that every kind of argument shares."""

from __future__ import annotations

from panelproof.content.format import Conversion
from panelproof.problem import Problem

LONG = 40


def shown(value: float | str) -> str:
    """Return a number or a text for a message, shortened where it is long."""
    if isinstance(value, int) and value.bit_length() > 256:
        return "a number of more than 70 digits"
    if value == "":
        return "an empty text"
    if isinstance(value, str):
        text = "".join(char if char.isprintable() else "\N{REPLACEMENT CHARACTER}" for char in value)
        return f"`{text if len(text) <= LONG else text[:LONG] + '…'}`"
    return repr(value)


def padded(conversion: Conversion, text: str) -> str:
    """Return a text filled with spaces to the conversion's width, which C counts in bytes."""
    spaces = " " * max(0, conversion.width - len(text.encode()))
    return text + spaces if conversion.left else spaces + text


def check_drawable(text: str, place: str) -> None:
    """Raise Problem for a character that no panel can draw: NUL, controls, line ends, surrogates."""
    if text.isascii() and text.isprintable():
        return
    for char in text:
        code = ord(char)
        if code == 0:
            raise Problem("U+0000 ends a text in C: leave it out", place)
        if code < 32 or 127 <= code < 160 or code in (0x2028, 0x2029):
            raise Problem(
                f"U+{code:04X} is a control character (a tab or line break, say) and cannot be drawn:"
                " leave it out",
                place,
            )
        if 0xD800 <= code < 0xE000:
            raise Problem(
                f"U+{code:04X} is a surrogate, half a character, and cannot be drawn: leave it out", place
            )
