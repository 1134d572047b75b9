"""The sentences stand in for msgspec's verdict: there is one just where msgspec refuses a tree."""

from __future__ import annotations

from collections.abc import Iterator

import msgspec
import pytest
from hypothesis import given, settings
from msgspec import inspect
from tests.layout.strategies import places
from tests.layout.tree import TREE, at, changed, mutated

from panelproof.layout.document import Layout
from panelproof.layout.explaining import _PATTERNS, faults, layout_type, noun


def refused(tree: object) -> bool:
    try:
        msgspec.convert(tree, Layout)
    except msgspec.ValidationError:
        return True
    return False


@given(mutated())
@settings(max_examples=500, deadline=None)
def test_there_are_sentences_just_where_msgspec_refuses(tree: object) -> None:
    assert bool(list(faults(tree))) == refused(tree)


EDGES = (-4097, -1, 1, 64, 256, 512, 1024, 2048, 4096, 65535)
BORDERS = [edge + step for edge in EDGES for step in (0, 1)]


@pytest.mark.parametrize("value", [*BORDERS, 10_000, 10_000.5, 0.0, 1e-300, 2**63, 2**64, 10**90])
def test_limits_lie_where_msgspec_has_them(value: float) -> None:
    tree = changed(("screens", 0, "parts", 4, "thickness"), 1)
    tree = changed(("screens", 0, "parts", 1, "buffer"), 1, tree)
    tree = changed(("panel", "corner_radius"), 0, tree)
    for path in places(tree):
        if isinstance(at(tree, path), int | float):
            other = changed(path, value, tree)
            assert bool(list(faults(other))) == refused(other), path


@pytest.mark.parametrize("size", [0, 1, 39, 40, 41, 100, 101, 256, 257, 512, 513, 1000, 1001])
def test_lengths_lie_where_msgspec_has_them(size: int) -> None:
    for path in places(TREE):
        value = at(TREE, path)
        if path and isinstance(value, str | list):
            other = changed(path, "a" * size if isinstance(value, str) else (value[:1] * size))
            assert bool(list(faults(other))) == refused(other), path


@given(mutated())
@settings(max_examples=150, deadline=None)
def test_the_place_is_one_that_msgspec_can_name(tree: object) -> None:
    found = {problem.place for problem in faults(tree)}
    try:
        msgspec.convert(tree, Layout)
    except msgspec.ValidationError as error:
        # msgspec ends with the place after `$`, names a dict's entries `[...]`, and no unknown key.
        named = str(error).partition(" - at `$")[2].rstrip("`").lstrip(".")
        assert any(place.startswith(named.partition("[...]")[0]) for place in found)


def test_everything_wrong_is_told_in_the_order_of_the_file() -> None:
    tree = changed(("panel",), {"width": "240", "hieght": 135})
    tree = changed(("screens", 0, "parts", 3, "length"), 0, tree)
    assert [(problem.place, problem.message) for problem in faults(tree)] == [
        ("panel.hieght", "a panel has no key `hieght`; the nearest is `height`"),
        ("panel.width", "a whole number is expected here, not the text `240`"),
        ("panel", "the key `height` is missing from this panel"),
        ("screens[0].parts[3].length", "the number 0 is outside its limits: it must be at least 1"),
    ]


def types(kind: inspect.Type, seen: set[int]) -> Iterator[inspect.Type]:
    if id(kind) in seen:
        return
    seen.add(id(kind))
    yield kind
    inner: tuple[inspect.Type, ...] = ()
    match kind:
        case inspect.Metadata():
            inner = (kind.type,)
        case inspect.StructType():
            inner = tuple(entry.type for entry in kind.fields)
        case inspect.UnionType():
            inner = kind.types
        case inspect.VarTupleType():
            inner = (kind.item_type,)
        case inspect.TupleType():
            inner = kind.item_types
        case inspect.DictType():
            inner = (kind.key_type, kind.value_type)
    for entry in inner:
        yield from types(entry, seen)


ALL = list(types(layout_type(), set()))


def test_every_kind_of_type_in_a_layout_is_known_here() -> None:
    known = (
        inspect.Metadata,
        inspect.StructType,
        inspect.UnionType,
        inspect.VarTupleType,
        inspect.TupleType,
        inspect.DictType,
        inspect.LiteralType,
        inspect.StrType,
        inspect.IntType,
        inspect.FloatType,
        inspect.BoolType,
        inspect.NoneType,
    )
    assert {type(kind) for kind in ALL} == set(known)


def test_every_pattern_has_its_words() -> None:
    assert {kind.pattern for kind in ALL if isinstance(kind, inspect.StrType) and kind.pattern} == set(
        _PATTERNS
    )


def test_least_lengths_are_one() -> None:
    bounded = [kind.min_length for kind in ALL if isinstance(kind, inspect.StrType | inspect.VarTupleType)]
    assert {least for least in bounded if least is not None} == {1}


@pytest.mark.parametrize("kind", [kind for kind in ALL if isinstance(kind, inspect.StructType)], ids=str)
def test_structs_have_nouns_without_capitals(kind: inspect.StructType) -> None:
    assert noun(kind.cls).islower()


def test_a_right_tree_has_nothing_wrong() -> None:
    assert not list(faults(TREE))
