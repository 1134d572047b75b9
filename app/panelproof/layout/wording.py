"""Small pieces that the sentences about a layout are made of."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Mapping, Sequence

_PLAIN_KEY = re.compile(r"[A-Za-z_][A-Za-z0-9_-]{0,39}")
_GREATEST_LISTED = 12


def within(place: str, key: str | int) -> str:
    """Return the place of an entry of the object or list at `place`: `place.key` or `place[key]`."""
    if isinstance(key, int):
        return f"{place}[{key}]"
    if not _PLAIN_KEY.fullmatch(key):
        return f"{place}[{_printed(key)}]"
    return f"{place}.{key}" if place else key


def one(noun: str) -> str:
    """Return a noun with its article."""
    return f"{'an' if noun[0] in 'aeiou' else 'a'} {noun}"


def clipped(text: str) -> str:
    """Return a text of 40 characters at most."""
    return text if len(text) <= 40 else text[:39] + "…"


def quote(text: str) -> str:
    """Return a text between backticks, shortened, and fit to be printed whatever it holds."""
    return f"`{clipped(text)}`" if text.isprintable() else f"`{_printed(text)}`"


def nearest(word: str, known: Iterable[str]) -> str | None:
    """Return the known word that is most like `word`, if any is like it."""
    from difflib import get_close_matches  # noqa: PLC0415 - only needed when something is wrong

    found = get_close_matches(word[:100], list(known), n=1, cutoff=0.7)
    return found[0] if found else None


def hint(word: str, known: Sequence[str]) -> str:
    """Return how a sentence about an unknown word goes on: with the nearest known word, or all."""
    near = nearest(word, known)
    if near is not None:
        return f"; the nearest is {quote(near)}"
    return (
        f"; there {'is only' if len(known) == 1 else 'are'} {listed(known, 'and')}"
        if known
        else "; there are none"
    )


def listed(words: Sequence[str], joint: str) -> str:
    """Return words in backticks, with commas, and `joint` before the last; of a long list the beginning."""
    shown = [quote(word) for word in words]
    if len(shown) > _GREATEST_LISTED:
        shown = [*shown[: _GREATEST_LISTED - 1], f"{len(shown) - _GREATEST_LISTED + 1} more"]
    return f" {joint} ".join(part for part in (", ".join(shown[:-1]), shown[-1]) if part)


def described(value: object) -> str:
    """Return what a JSON value is, in words."""
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int | float):
        return f"the number {clipped(repr(value))}"
    if isinstance(value, str):
        return f"the text {quote(value)}" if value else "an empty text"
    if isinstance(value, Mapping):
        return "an object { }"
    return "a list [ ]"


def unprintable(text: str) -> str | None:
    """Return the first control character, line end or lone surrogate of a text as `U+XXXX`, or None."""
    if text.isprintable():
        return None
    from unicodedata import category  # noqa: PLC0415

    for char in text:
        if category(char) in {"Cc", "Cs", "Zl", "Zp"}:
            return f"U+{ord(char):04X}"
    return None


def _printed(text: str) -> str:
    return json.dumps(clipped(text), ensure_ascii=not clipped(text).isprintable())
