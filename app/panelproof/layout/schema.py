"""The layout file's JSON Schema (draft 2020-12), for editors and other programs."""

from __future__ import annotations

from collections.abc import Iterator
from inspect import cleandoc
from typing import Any

import msgspec

from panelproof.layout.document import FORMAT, Layout
from panelproof.layout.wording import one

Schema = dict[str, Any]

TITLES = {
    "TypeSpec": "Type",
    "IconState": "Icon state",
    "MeterLimit": "Meter limit",
    "WholeRange": "Whole range",
    "RealRange": "Real range",
    "FreeText": "Free text",
}
# What the keys of a content mean; the layout's own keys say it beside their types.
CONTENT_KEYS = {
    "Content": {
        "format": "An ISO C `fprintf` format, such as `%.1f`; write `%%` for a percent sign.",
        "arguments": "What each conversion of the format can be given, in order.",
        "fault": "Shown when there is no valid reading.",
        "first": "Shown before the first reading.",
        "also": "Further texts that the field can show.",
    },
    "WholeRange": {
        "least": "The least whole number; 64-bit ranges reach from -2^63 to 2^64 - 1.",
        "greatest": "The greatest whole number; 64-bit ranges reach from -2^63 to 2^64 - 1.",
        "step": "The distance from each number to the next.",
        "sensor": "The least and the greatest value that the sensor can give.",
    },
    "RealRange": {
        "least": "The least number.",
        "greatest": "The greatest number.",
        "sensor": "The least and the greatest value that the sensor can give.",
    },
    "Choice": {"texts": "The texts, of which one is shown."},
    "FreeText": {
        "longest": "Characters of the longest text.",
        "shortest": "Characters of the shortest text.",
        "characters": "Characters that a text can hold.",
        "ranges": "Further characters: pairs of the first and the last of a row in Unicode.",
    },
}


def schema() -> Schema:
    """Return the JSON Schema of a layout file.

    It says what `reading.parse` says of kinds, limits and keys, but for two things that JSON Schema does not
    tell apart: `1.0` is a whole number to it, and a key may stand twice. What a layout's names refer to is
    beyond a schema too.
    """
    (top,), made = msgspec.json.schema_components([Layout], ref_template="#/$defs/{name}")
    definitions: dict[str, Schema] = msgspec.json.decode(msgspec.json.encode(made))
    for name, definition in definitions.items():
        _describe(name, definition)
    for node in _nodes(definitions):
        # An OpenAPI word; the constant `kind` of each alternative says the same in JSON Schema.
        node.pop("discriminator", None)
    # A default that the list's own least length forbids: the key cannot be left out.
    layout = definitions["Layout"]
    del layout["properties"]["inks"]["default"]
    layout["required"] = [key for key in layout["properties"] if key in {*layout["required"], "inks"}]
    # Older files are migrated when they are read; a schema is of one format.
    layout["properties"]["format"] = {"description": "Number of this file format.", "const": FORMAT}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": f"urn:panelproof:layout:{FORMAT}",
        "title": f"Panelproof layout, format {FORMAT}",
        "description": "A small screen's panel, types, inks, screens and moments (NAME.panel.json).",
        **top,
        "$defs": definitions,
    }


def _describe(name: str, definition: Schema) -> None:
    definition["title"] = TITLES.get(name, name)
    definition["description"] = " ".join(cleandoc(definition["description"]).split())
    for key, entry in definition["properties"].items():
        if key == "kind":
            (kind,) = entry.pop("enum")
            entry.update(const=kind, description=f"Says that this is {one(definition['title'].lower())}.")
        elif key in CONTENT_KEYS.get(name, {}):
            definition["properties"][key] = {**entry, "description": CONTENT_KEYS[name][key]}


def _nodes(node: object) -> Iterator[Schema]:
    if isinstance(node, dict):
        yield node
        for entry in node.values():
            yield from _nodes(entry)
    elif isinstance(node, list):
        for entry in node:
            yield from _nodes(entry)
