"""The C library's own snprintf, called in this process: it judges what a format prints (ISO C)."""

from __future__ import annotations

import ctypes
import itertools
import os
from collections.abc import Iterable, Iterator
from typing import Any

import pytest

from panelproof.content.format import Conversion, conversions
from panelproof.content.graph import Graph
from panelproof.content.spec import Argument, Choice, Content, FreeText, WholeRange
from panelproof.content.words import alphabet

ROOM = 10_000
BUFFER = ctypes.create_string_buffer(ROOM)
SIGNED: dict[str, Any] = {
    "": ctypes.c_int,
    "hh": ctypes.c_int,
    "h": ctypes.c_int,
    "l": ctypes.c_long,
    "ll": ctypes.c_longlong,
    "j": ctypes.c_longlong,
    "z": ctypes.c_ssize_t,
    "t": ctypes.c_ssize_t,
}
UNSIGNED: dict[str, Any] = {
    "": ctypes.c_uint,
    "hh": ctypes.c_uint,
    "h": ctypes.c_uint,
    "l": ctypes.c_ulong,
    "ll": ctypes.c_ulonglong,
    "j": ctypes.c_ulonglong,
    "z": ctypes.c_size_t,
    "t": ctypes.c_size_t,
}


def _find() -> Any:
    try:
        function = ctypes.CDLL(None).snprintf
    except (OSError, TypeError, AttributeError) as error:
        if os.environ.get("CI") == "true":
            raise
        pytest.skip(f"no C library to ask in this process: {error}", allow_module_level=True)
    # Only the fixed arguments have types, so that the rest go by the rules for variadic ones.
    function.argtypes = [ctypes.c_char_p, ctypes.c_size_t, ctypes.c_char_p]
    function.restype = ctypes.c_int
    return function


SNPRINTF = _find()


def c_value(conversion: Conversion, value: str | int | float) -> Any:
    if conversion.kind == "text":
        assert isinstance(value, str)
        return ctypes.c_char_p(value.encode())
    if conversion.kind == "character":
        return ctypes.c_int(ord(value) if isinstance(value, str) else int(value))
    if conversion.kind == "real":
        assert not isinstance(value, str)
        return (ctypes.c_longdouble if conversion.length == "L" else ctypes.c_double)(value)
    return (SIGNED if conversion.signed else UNSIGNED)[conversion.length](value)


def c_prints(format: str, *values: str | int | float) -> str:
    """What the C library prints for a format and its arguments."""
    passed = [c_value(one, value) for one, value in zip(conversions(format), values, strict=True)]
    written = SNPRINTF(BUFFER, ROOM, format.encode(), *passed)
    assert 0 <= written < ROOM
    return BUFFER.value.decode()


def every_value(argument: Argument) -> Iterable[str | int | float]:
    """Every value of an argument that has not many (not a real range)."""
    if isinstance(argument, WholeRange):
        return range(argument.least, argument.greatest + 1, argument.step)
    if isinstance(argument, Choice):
        return argument.texts
    assert isinstance(argument, FreeText)
    chars = alphabet(argument)
    return [
        "".join(text)
        for length in range(argument.shortest, argument.longest + 1)
        for text in itertools.product(chars, repeat=length)
    ]


def every_text(content: Content) -> set[str]:
    """Every text of a content by brute force: what C prints for every combination, and the texts outside."""
    outside = {text for text in (content.fault, content.first, *content.also) if text is not None}
    return outside | set(c_texts(content))


def c_texts(content: Content) -> Iterator[str]:
    for values in itertools.product(*map(every_value, content.arguments)):
        yield c_prints(content.format, *values)


def check_shape(graph: Graph) -> None:
    """What the Graph promises: numbered forwards, deterministic, ordered, minimal, without dead nodes."""
    rights: dict[tuple[bool, tuple[tuple[int, str], ...]], int] = {}
    reached = {0}
    for node, out in enumerate(graph.edges):
        assert node in reached
        targets = [to for to, _ in out]
        chars = [char for _, part in out for char in part]
        assert all(to > node for to in targets)
        assert len(set(targets)) == len(targets)
        assert len(set(chars)) == len(chars)
        assert all(part and list(part) == sorted(part) for _, part in out)
        assert [part[0] for _, part in out] == sorted(part[0] for _, part in out)
        assert out or graph.ends[node]
        # Acyclic and deterministic: minimal when no two nodes have the same edges and the same end.
        assert rights.setdefault((graph.ends[node], tuple(sorted(out))), node) == node
        reached.update(targets)


def check_all(content: Content, graph: Graph, expected: set[str]) -> None:
    """The graph holds just the expected texts."""
    check_shape(graph)
    assert graph.count() == len(expected)
    found = set(graph.texts())
    assert found == expected, (content, sorted(found ^ expected)[:5])
