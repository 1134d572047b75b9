"""A valid layout as plain values, and ways to change it."""

from __future__ import annotations

import json
from copy import deepcopy
from typing import Any

from hypothesis import strategies as st
from tests.layout.strategies import places

Tree = dict[str, Any]
Path = tuple[str | int, ...]

TREE: Tree = {
    "format": 1,
    "name": "tank",
    "panel": {"width": 128, "height": 64, "width_mm": 29.4, "height_mm": 14.7},
    "types": [{"name": "text", "font": "SourceSansPro", "size": 16, "kerning": True}],
    "inks": [{"name": "black", "colour": "#000000"}, {"name": "white", "colour": "#ffffff"}],
    "screens": [
        {
            "name": "main",
            "ground": "black",
            "parts": [
                {
                    "kind": "label",
                    "name": "title",
                    "text": "Rain tank",
                    "type": "text",
                    "ink": "white",
                    "x": 2,
                    "baseline": 14,
                },
                {
                    "kind": "field",
                    "name": "level",
                    "content": {
                        "format": "%.1f %% %s %s",
                        "arguments": [
                            {"kind": "real", "least": 0.0, "greatest": 100.0},
                            {"kind": "choice", "texts": ["full", "low"]},
                            {"kind": "free", "longest": 3, "ranges": [["a", "z"]]},
                        ],
                        "fault": "--.- %",
                    },
                    "type": "text",
                    "ink": "white",
                    "x": 2,
                    "baseline": 40,
                    "padding": [2, 24, 100, 24],
                },
                {
                    "kind": "icon",
                    "name": "pump",
                    "x": 112,
                    "y": 2,
                    "ink": "white",
                    "states": [
                        {"name": "off", "rows": ["....", "...."]},
                        {"name": "on", "picture": "on.png"},
                    ],
                },
                {"kind": "rule", "name": "line", "x": 0, "y": 20, "length": 128, "ink": "white"},
                {"kind": "box", "name": "frame", "x": 0, "y": 50, "width": 20, "height": 10, "fill": "white"},
                {
                    "kind": "meter",
                    "name": "depth",
                    "x": 24,
                    "y": 50,
                    "width": 60,
                    "height": 10,
                    "least": 0,
                    "greatest": 2500,
                    "ink": "white",
                    "direction": "left",
                    "limits": [{"at": 300, "ink": "white"}, {"at": 2000, "mark": False}],
                },
                {"kind": "picture", "name": "logo", "x": 90, "y": 50, "picture": "drop.png"},
            ],
        }
    ],
    "moments": [
        {
            "name": "full",
            "screen": "main",
            "fields": {"level": [99, "full", "ab"]},
            "icons": {"pump": "off"},
            "meters": {"depth": 2500},
        },
        {
            "name": "lost",
            "screen": "main",
            "fields": {"level": "--.- %"},
            "icons": {"pump": "on"},
            "meters": {"depth": None},
        },
    ],
}

SCALARS = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(-5, 5),
    st.sampled_from((4096, 4097, -4097, 2**31, 2**63, 2**64, 10**90, 1.0, 0.5, -0.0, 1e300)),
    st.sampled_from(
        ("", "a", "a-b", "A", "white", "text", "label", "real", "#12345", "#abcdef", "x" * 300, "a\n")
    ),
    st.text(max_size=5),
)
TREES = st.recursive(
    SCALARS,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=4), inner, max_size=3),
)
KEYS = st.sampled_from(("name", "kind", "x", "padding", "nam", "format", "rows", "", "a b", "é"))


def encoded(tree: object) -> bytes:
    return json.dumps(tree, ensure_ascii=False).encode()


def changed(path: Path, value: object, tree: Tree = TREE) -> Tree:
    """Return the tree with another value at a path."""
    new: Any = deepcopy(tree)
    node = new
    for key in path[:-1]:
        node = node[key]
    node[path[-1]] = value
    return new  # type: ignore[no-any-return]


@st.composite
def mutated(draw: st.DrawFn, tree: object = TREE) -> Any:
    """The tree with one to three values deleted, replaced or inserted, new or copied from elsewhere."""
    tree = deepcopy(tree)
    for _ in range(draw(st.integers(1, 3))):
        path = draw(st.sampled_from(places(tree)))
        value = (
            draw(TREES) if draw(st.booleans()) else deepcopy(at(tree, draw(st.sampled_from(places(tree)))))
        )
        if not path:
            tree = value if draw(st.integers(0, 9)) == 0 else tree
            continue
        parent: Any = at(tree, path[:-1])
        what = draw(st.sampled_from(("delete", "replace", "insert")))
        if what == "delete":
            del parent[path[-1]]
        elif what == "replace" or not isinstance(parent, list | dict):
            parent[path[-1]] = value
        elif isinstance(parent, list):
            parent.insert(int(path[-1]), value)
        else:
            parent[draw(KEYS)] = value
    return tree


def at(tree: object, path: Path) -> object:
    """Return the value at a path."""
    node: Any = tree
    for key in path:
        node = node[key]
    return node
