"""The JSON Schema says what reading says, by the word of the jsonschema package."""

from __future__ import annotations

import json
from pathlib import Path

import msgspec
import pytest
from hypothesis import given, settings
from jsonschema import Draft202012Validator
from tests.layout.strategies import layouts, places
from tests.layout.tree import TREE, mutated

from panelproof.layout.document import FORMAT, Layout
from panelproof.layout.explaining import faults
from panelproof.layout.reading import from_tree, parse
from panelproof.layout.schema import Schema, schema
from panelproof.layout.writing import encode
from panelproof.problem import Problem

ROOT = Path(__file__).parents[2]
SCHEMA = schema()
VALIDATOR = Draft202012Validator(SCHEMA)
SHIPPED = sorted([*ROOT.glob("examples/**/*.panel.json"), *ROOT.glob("layouts/**/*.panel.json")])
BROKEN = ROOT / "tests" / "layout" / "broken"


def test_it_is_a_schema_and_json() -> None:
    Draft202012Validator.check_schema(SCHEMA)
    assert json.loads(json.dumps(SCHEMA)) == SCHEMA
    assert SCHEMA["$id"] == "urn:panelproof:layout:1"


def test_it_is_of_one_format() -> None:
    assert VALIDATOR.is_valid(TREE)
    assert not VALIDATOR.is_valid({**TREE, "format": FORMAT + 1})


def test_it_is_made_anew_each_time() -> None:
    schema()["$defs"].clear()
    assert schema() == SCHEMA


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.name)
def test_the_layouts_that_are_handed_out_keep_to_it(path: Path) -> None:
    assert not list(VALIDATOR.iter_errors(json.loads(path.read_bytes())))


@given(layouts())
@settings(max_examples=60, deadline=None)
def test_what_is_written_keeps_to_it(layout: Layout) -> None:
    assert VALIDATOR.is_valid(json.loads(encode(layout)))


@given(mutated())
@settings(max_examples=300, deadline=None)
def test_it_refuses_what_reading_refuses(tree: object) -> None:
    assert VALIDATOR.is_valid(_without_whole_reals(tree)) == _of_right_kinds(_without_whole_reals(tree))


def _of_right_kinds(tree: object) -> bool:
    try:
        layout = from_tree(tree)
    except Problem:
        return False
    # The types leave the format number to `migrating`, and that there is an ink to `checking`.
    return layout.format == FORMAT and bool(layout.inks)


def _without_whole_reals(tree: object) -> object:
    # `1.0` is a whole number to JSON Schema, and none to reading.
    if isinstance(tree, dict):
        return {key: _without_whole_reals(entry) for key, entry in tree.items()}
    if isinstance(tree, list):
        return [_without_whole_reals(entry) for entry in tree]
    return tree + 0.5 if isinstance(tree, float) and tree.is_integer() and abs(tree) < 2**50 else tree


@pytest.mark.parametrize("path", sorted(BROKEN.glob("*.panel.json")), ids=lambda path: path.name)
def test_broken_files_that_are_json_fail_it_where_their_kinds_are_wrong(path: Path) -> None:
    try:
        tree = json.loads(path.read_bytes())
    except (ValueError, RecursionError):
        pytest.skip("not JSON")
    if path.name.startswith(
        ("key-twice", "lone-surrogate", "nan", "infin", "too-great", "many-dec", "format-")
    ):
        pytest.skip("beyond a schema, or a matter of the format number")
    found = any(True for _ in faults(tree)) or path.name == "inks-missing.panel.json"
    assert VALIDATOR.is_valid(tree) is not found


def test_every_key_and_kind_is_described() -> None:
    for name, definition in SCHEMA["$defs"].items():
        assert definition["title"] and "\n" not in definition["description"], name
        for key, entry in definition["properties"].items():
            assert entry.get("description", "").endswith("."), f"{name}.{key}"


def test_titles_are_words() -> None:
    titles = [definition["title"] for definition in SCHEMA["$defs"].values()]
    assert len(set(titles)) == len(titles)
    assert all(title.istitle() or title[1:].islower() for title in titles)


def test_only_words_of_json_schema_stand_in_it() -> None:
    known = set(Draft202012Validator.META_SCHEMA["allOf"][0]) | {
        *(
            "$schema",
            "$id",
            "$ref",
            "$defs",
            "title",
            "description",
            "type",
            "properties",
            "required",
            "enum",
        ),
        *(
            "const",
            "default",
            "items",
            "prefixItems",
            "minItems",
            "maxItems",
            "minLength",
            "maxLength",
            "pattern",
        ),
        *("minimum", "maximum", "exclusiveMinimum", "anyOf", "additionalProperties", "propertyNames"),
    }
    assert not {key for key in _keywords(SCHEMA) if key not in known}


def _keywords(node: Schema) -> set[str]:
    found = set(node)
    for key, entry in node.items():
        if key in {"properties", "$defs"}:
            for inner in entry.values():
                found |= _keywords(inner)
        elif isinstance(entry, dict) and key not in {"default"}:
            found |= _keywords(entry)
        elif key in {"anyOf", "prefixItems"}:
            for inner in entry:
                found |= _keywords(inner)
    return found


def test_every_default_is_what_reading_gives() -> None:
    for definition in SCHEMA["$defs"].values():
        for key, entry in definition["properties"].items():
            assert ("default" in entry) != (key in definition["required"])
    layout = msgspec.to_builtins(parse(json.dumps(TREE).encode()))
    assert VALIDATOR.is_valid(json.loads(json.dumps(layout)))


def test_mutations_reach_the_whole_tree() -> None:
    assert len(places(TREE)) > 100
