"""Texts under `%s` and characters under `%c`; C counts their width and precision in bytes of UTF-8."""

from __future__ import annotations

from bisect import bisect_left
from functools import lru_cache

from panelproof.content.builder import Builder
from panelproof.content.format import Conversion
from panelproof.content.graph import Edge
from panelproof.content.sentence import check_drawable, padded, shown
from panelproof.content.spec import Choice, FreeText, WholeRange
from panelproof.content.whole import check_order
from panelproof.problem import Problem

LARGEST_ALPHABET = 30_000
# The first code that takes one byte more (UTF-8, RFC 3629).
LONGER = ("\x80", "\u0800", "\U00010000")


@lru_cache(maxsize=64)
def alphabet(argument: FreeText) -> str:
    """Return every character of a free text's alphabet once, in ascending order.

    Raises Problem for characters that cannot be drawn, ranges that are not two characters in order, and an
    alphabet above 30 000 characters.
    """
    found = set(argument.characters)
    check_drawable(argument.characters, "characters")
    for index, (first, last) in enumerate(argument.ranges):
        place = f"ranges[{index}]"
        if len(first) != 1 or len(last) != 1:
            raise Problem('a range of characters is two single characters, such as ["a", "z"]', place)
        if first > last:
            raise Problem(
                f"the range is empty, {shown(first)} comes after {shown(last)}: exchange them", place
            )
        if ord(last) - ord(first) >= LARGEST_ALPHABET:
            raise Problem(
                f"the alphabet is too large, {LARGEST_ALPHABET} characters are the most:"
                " give only those that the type will have",
                place,
            )
        chars = "".join(map(chr, range(ord(first), ord(last) + 1)))
        check_drawable(chars, place)
        found.update(chars)
    if len(found) > LARGEST_ALPHABET:
        raise Problem(
            f"the alphabet is too large, {len(found)} characters where {LARGEST_ALPHABET} are the most:"
            " give only those that the type will have"
        )
    return "".join(sorted(found))


def check(conversion: Conversion, argument: Choice | FreeText | WholeRange) -> None:
    """Raise Problem for texts that C does not print whole and drawable, and for empty or unfit arguments."""
    if isinstance(argument, FreeText):
        _check_free(conversion, argument)
    elif isinstance(argument, Choice):
        if not argument.texts:
            raise Problem("the choice is empty: give at least one text", "texts")
        for index, text in enumerate(argument.texts):
            _check_text(conversion, text, f"texts[{index}]")
    else:
        check_order(argument)
        for key, code in (("least", argument.least), ("greatest", argument.greatest)):
            if not 32 <= code <= 126:
                raise Problem(
                    f"`{conversion.source}` prints the character with this code, and that of {shown(code)}"
                    f" {'ends a text in C' if code == 0 else 'cannot be drawn'}: give codes from 32 to 126",
                    key,
                )


def _check_text(conversion: Conversion, text: str, place: str) -> None:
    check_drawable(text, place)
    if conversion.kind == "character" and (len(text) != 1 or not text.isascii()):
        raise Problem(
            f"`{conversion.source}` prints one ASCII character, and {shown(text)} is not one: use `%s`",
            place,
        )
    if _cut(conversion, text) is None:
        raise _cut_in_two(conversion, f"of {shown(text)}", place)


def _check_free(conversion: Conversion, argument: FreeText) -> None:
    chars = alphabet(argument)
    if argument.shortest > argument.longest:
        raise Problem(
            f"the free text is empty, its shortest ({argument.shortest}) is longer than its longest"
            f" ({argument.longest}): exchange them"
        )
    if argument.longest and not chars:
        raise Problem("the alphabet is empty: give `characters` or `ranges`")
    limit = conversion.precision
    if limit is None:
        return
    # Bit b of `reached` is set where some text of so many characters takes b bytes.
    reached = 1
    within = (1 << limit) - 1
    sizes = [size for size, _ in _by_size(chars)]
    for _ in range(argument.longest):
        longer = 0
        for size in sizes:
            longer |= (reached & within) << size
        if longer >> (limit + 1):
            raise _cut_in_two(conversion, "of some text", "")
        reached = longer


def _cut_in_two(conversion: Conversion, whose: str, place: str) -> Problem:
    return Problem(
        f"`{conversion.source}` cuts after {conversion.precision} bytes, and that cuts a character {whose}"
        " in two (beyond ASCII a character takes 2 to 4 bytes): give another precision, or none and shorter"
        " texts",
        place,
    )


def build(
    builder: Builder, conversion: Conversion, argument: Choice | FreeText | WholeRange, follow: int
) -> int:
    """Return every text of a checked argument as the conversion prints it, and then what may follow."""
    if isinstance(argument, FreeText):
        return _free(builder, conversion, argument, follow)
    if isinstance(argument, Choice):
        texts = [_cut(conversion, text) or "" for text in argument.texts]
    else:
        texts = [chr(code) for code in range(argument.least, argument.greatest + 1, argument.step)]
    return builder.choice([padded(conversion, text) for text in texts], follow)


def printed(conversion: Conversion, argument: Choice | FreeText, value: object) -> str:
    """Return one text as the conversion prints it. Raises Problem where the argument lacks it."""
    if not isinstance(value, str):
        raise Problem(f"`{conversion.source}` takes a text: give one, in quotes")
    if isinstance(argument, Choice):
        if value not in argument.texts:
            raise Problem(
                f"{shown(value)} is none of the choice's texts: take one of these, or add it to them"
            )
    else:
        if not argument.shortest <= len(value) <= argument.longest:
            raise Problem(
                f"{shown(value)} has {len(value)} characters: give {argument.shortest} to {argument.longest}"
            )
        chars = alphabet(argument)
        for char in value:
            if char not in chars:
                raise Problem(
                    f"{shown(char)} is not in the free text's alphabet: take it out, or add it to that"
                )
    return padded(conversion, _cut(conversion, value) or "")


def _cut(conversion: Conversion, text: str) -> str | None:
    """Return what the precision leaves of a text; None where it cuts a character in two."""
    if conversion.kind == "character" or conversion.precision is None:
        return text
    try:
        return text.encode()[: conversion.precision].decode()
    except UnicodeDecodeError:
        return None


@lru_cache(maxsize=64)
def _by_size(chars: str) -> tuple[tuple[int, str], ...]:
    """Split ascending characters by the bytes that one takes in UTF-8: (bytes, characters)."""
    starts = [0, *(bisect_left(chars, first) for first in LONGER), len(chars)]
    parts = ((size, chars[starts[size - 1] : starts[size]]) for size in range(1, 5))
    return tuple((size, part) for size, part in parts if part)


def _free(builder: Builder, conversion: Conversion, argument: FreeText, follow: int) -> int:
    """Return the free texts: a node for each count of characters, and of bytes where these matter."""
    by_size = _by_size(alphabet(argument))
    width, limit = conversion.width, conversion.precision
    # Beyond this many bytes all texts are alike.
    most = max(width, limit or 0)
    reached: list[set[int]] = [{0}]
    for _ in range(argument.longest):
        reached.append(
            {min(most, taken + size) for taken in reached[-1] if taken != limit for size, _ in by_size}
        )
    spaces = [follow]
    for _ in range(width):
        spaces.append(builder.node(False, ((spaces[-1], " "),)))

    def texts(exactly: int | None) -> int | None:
        """Return the texts of exactly so many bytes, or all that fill the width; None if there are none."""
        nodes: dict[int, int | None] = {}
        for count in range(argument.longest, -1, -1):
            level: dict[int, int | None] = {}
            for taken in reached[count]:
                builder.spend(1)
                edges: list[Edge] = []
                if count < argument.longest and taken != limit:
                    onward = ((nodes[min(most, taken + size)], chars) for size, chars in by_size)
                    edges = [(to, chars) for to, chars in onward if to is not None]
                stops = (count >= argument.shortest or taken == limit) and _fits(conversion, taken, exactly)
                node = builder.node(False, edges) if edges else None
                if stops:
                    end = spaces[max(0, width - taken)] if conversion.left else follow
                    node = end if node is None else builder.union((node, end))
                level[taken] = node
            nodes = level
        return nodes[0]

    bodies: list[tuple[int, int]] = []
    lengths = range(0) if conversion.left else range(width)
    for exactly in (*lengths, None):
        node = texts(exactly)
        if node is not None:
            bodies.append((width if exactly is None else exactly, node))
    return builder.right_aligned(0 if conversion.left else width, bodies)


def _fits(conversion: Conversion, taken: int, exactly: int | None) -> bool:
    """Tell whether a text of so many bytes is one of those asked for."""
    if exactly is not None:
        return taken == exactly
    return conversion.left or taken >= conversion.width
