"""Writing: read, write, read gives the same bytes; a change of the layout is a small change of the file."""

from __future__ import annotations

import difflib
import json
import math
import subprocess
import sys
from pathlib import Path
from typing import Any

import msgspec
import pytest
from hypothesis import given, settings
from tests.layout.strategies import layouts
from tests.layout.tree import TREE, changed, encoded

from panelproof.content.spec import Content, RealRange
from panelproof.layout.document import Ink, Layout, Moment, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field, Label
from panelproof.layout.reading import from_tree, parse, read
from panelproof.layout.writing import OPEN, WIDTH, encode, write
from panelproof.problem import Problem

CANONICAL = """\
{
  "format": 1,
  "name": "tank",
  "panel": {"width": 128, "height": 64, "width_mm": 29.4, "height_mm": 14.7},
  "types": [
    {"name": "text", "font": "SourceSansPro", "size": 16, "kerning": true}
  ],
  "inks": [
    {"name": "black", "colour": "#000000"},
    {"name": "white", "colour": "#ffffff"}
  ],
  "screens": [
    {
      "name": "main", "ground": "black",
      "parts": [
        {
          "kind": "label", "name": "title", "text": "Rain tank", "type": "text", "ink": "white", "x": 2,
          "baseline": 14
        },
        {
          "kind": "field", "name": "level",
          "content": {
            "format": "%.1f %% %s %s",
            "arguments": [
              {"kind": "real", "least": 0.0, "greatest": 100.0},
              {"kind": "choice", "texts": ["full", "low"]},
              {"kind": "free", "longest": 3, "ranges": [["a", "z"]]}
            ],
            "fault": "--.- %"
          },
          "type": "text", "ink": "white", "x": 2, "baseline": 40, "padding": [2, 24, 100, 24]
        },
        {
          "kind": "icon", "name": "pump", "x": 112, "y": 2, "ink": "white",
          "states": [
            {
              "name": "off",
              "rows": [
                "....",
                "...."
              ]
            },
            {"name": "on", "picture": "on.png"}
          ]
        },
        {"kind": "rule", "name": "line", "x": 0, "y": 20, "length": 128, "ink": "white"},
        {"kind": "box", "name": "frame", "x": 0, "y": 50, "width": 20, "height": 10, "fill": "white"},
        {
          "kind": "meter", "name": "depth", "x": 24, "y": 50, "width": 60, "height": 10, "least": 0,
          "greatest": 2500, "ink": "white", "direction": "left",
          "limits": [{"at": 300, "ink": "white"}, {"at": 2000, "mark": false}]
        },
        {"kind": "picture", "name": "logo", "x": 90, "y": 50, "picture": "drop.png"}
      ]
    }
  ],
  "moments": [
    {
      "name": "full", "screen": "main",
      "fields": {"level": [99, "full", "ab"]},
      "icons": {"pump": "off"},
      "meters": {"depth": 2500}
    },
    {
      "name": "lost", "screen": "main",
      "fields": {"level": "--.- %"},
      "icons": {"pump": "on"},
      "meters": {"depth": null}
    }
  ]
}
"""


def test_the_form() -> None:
    assert encode(from_tree(TREE)).decode() == CANONICAL


def test_other_forms_of_the_same_layout_become_this_one() -> None:
    pretty = json.dumps(TREE, indent=7, sort_keys=True).encode()
    spelled_out = changed(("screens", 0, "parts", 0, "align"), "left")
    spelled_out = changed(("screens", 0, "parts", 0, "ground"), None, spelled_out)
    content = ("screens", 0, "parts", 1, "content")
    spelled_out = changed((*content, "arguments", 0, "greatest"), 100, spelled_out)
    spelled_out = changed((*content, "also"), [], spelled_out)
    for data in (pretty, encoded(spelled_out), b"\r\n\t " + encoded(TREE)):
        assert encode(parse(data)).decode() == CANONICAL


@given(layouts())
@settings(max_examples=150, deadline=None)
def test_there_and_back(layout: Layout) -> None:
    data = encode(layout)
    again = parse(data)
    assert again == layout
    assert encode(again) == data
    assert data.endswith(b"}\n")


@given(layouts())
@settings(max_examples=60, deadline=None)
def test_lines_are_short_and_nothing_that_fits_is_broken(layout: Layout) -> None:
    lines = encode(layout).decode().splitlines()
    for number, line in enumerate(lines):
        assert line == line.rstrip()
        indent = len(line) - len(line.lstrip())
        assert indent % 2 == 0
        # A line may only be longer where it holds a single text, number or the like.
        assert len(line) <= WIDTH or not isinstance(json.loads(f"[{_value(line)}]")[0], dict | list)
        if line.endswith(("{", "[")) and number:
            end = next(
                n
                for n in range(number, len(lines))
                if lines[n].startswith(" " * indent + "}]"[line[-1] == "["])
            )
            inside = " ".join(inner.strip() for inner in lines[number + 1 : end])
            joined = f"{line}{inside}{lines[end].strip()}"
            assert len(joined) > WIDTH or any(f'"{key}": [' in joined for key in OPEN) or indent == 0


def _value(line: str) -> str:
    body = line.strip().rstrip(",")
    return body.partition(": ")[2] if body.startswith('"') and '": ' in body else body


def test_moving_a_part_changes_one_line() -> None:
    layout = from_tree(TREE)
    moved = from_tree(changed(("screens", 0, "parts", 3, "y"), 21))
    assert _changed_lines(layout, moved) == 2
    longer = [*TREE["inks"], {"name": "red", "colour": "#ff0000"}]
    assert _changed_lines(layout, from_tree(changed(("inks",), longer))) == 3


def _changed_lines(old: Layout, new: Layout) -> int:
    before, after = encode(old).decode().splitlines(), encode(new).decode().splitlines()
    changes = list(difflib.unified_diff(before, after, n=0))[2:]
    return sum(line[0] in "+-" for line in changes)


def test_other_letters_stay_as_they_are() -> None:
    layout = from_tree(changed(("screens", 0, "parts", 0, "text"), 'Öl "°C" \\ 漢 \U0001f525 \u202e'))
    assert '"text": "Öl \\"°C\\" \\\\ 漢 \U0001f525 \u202e"' in encode(layout).decode()
    assert parse(encode(layout)) == layout


@pytest.mark.parametrize(
    ("number", "written"),
    [
        (1320, "1320.0"),
        (0.1, "0.1"),
        (-0.0, "-0.0"),
        (1e22, "1e+22"),
        (5e-324, "5e-324"),
        (2**53, "9007199254740992.0"),
        (math.pi, "3.141592653589793"),
    ],
)
def test_real_numbers_have_one_form(number: float, written: str) -> None:
    layout = _with_range(number)
    assert f'"greatest": {written}}}' in encode(layout).decode()
    assert encode(parse(encode(layout))) == encode(layout)


def _with_range(greatest: float) -> Layout:
    content = Content("%.1f", (RealRange(-1, greatest),))
    layout = from_tree(TREE)
    field = Field("level", content, "text", "white", 0, 0, clearing="none")
    screen = msgspec.structs.replace(layout.screens[0], parts=(field,))
    return msgspec.structs.replace(layout, screens=(screen,), moments=())


@pytest.mark.parametrize("number", [math.inf, -math.inf, math.nan])
def test_what_is_no_number_is_refused(number: float) -> None:
    with pytest.raises(Problem, match="a number is infinite or not a number"):
        encode(_with_range(number))


def test_equal_layouts_have_the_same_bytes_whatever_the_order_of_their_moments_values() -> None:
    layout = from_tree(TREE)
    parts = (
        *(Label(name, "x", "text", "white", 0, 0) for name in "ab"),
        *(Field(name, Content("x"), "text", "white", 0, 0, clearing="none") for name in "zyx"),
    )
    screen = msgspec.structs.replace(layout.screens[0], parts=parts)

    def with_moment(names: str) -> Layout:
        moment = Moment("m", "main", dict.fromkeys(names, ()))
        return msgspec.structs.replace(layout, screens=(screen,), moments=(moment,))

    assert with_moment("zyx") == with_moment("xyz")
    assert encode(with_moment("zyx")) == encode(with_moment("xyz"))
    assert '"fields": {"z": [], "y": [], "x": []}' in encode(with_moment("yxz")).decode()
    # Labels have no place among a moment's fields, but a wrong layout has one form too.
    assert encode(with_moment("baz")) == encode(with_moment("zab"))


def test_what_no_file_can_hold_is_refused() -> None:
    layout = from_tree(TREE)
    with pytest.raises(Problem) as caught:
        encode(msgspec.structs.replace(layout, name="Tank"))
    assert caught.value.place == "name"
    half = Label("a", "\ud800", "text", "white", 0, 0)
    screen = msgspec.structs.replace(layout.screens[0], parts=(half,))
    with pytest.raises(Problem, match="half a character"):
        encode(msgspec.structs.replace(layout, screens=(screen,), moments=()))


def test_writing_a_file(tmp_path: Path) -> None:
    path = tmp_path / "tank.panel.json"
    write(from_tree(TREE), path)
    assert path.read_text(encoding="utf-8") == CANONICAL
    assert read(path) == from_tree(TREE)
    with pytest.raises(Problem) as caught:
        write(msgspec.structs.replace(from_tree(TREE), name=""), path)
    assert caught.value.place == f"{path}: name"
    assert path.read_text(encoding="utf-8") == CANONICAL


def test_usual_values_are_left_out_whatever_was_imported_first() -> None:
    """Equal words may be two objects in memory; the file must not tell them apart."""
    other: Any = "".join(("one", "-bit"))
    made = Layout(1, "a", Panel(8, 8), (TypeSpec("t", "SourceSansPro", 9, other),), (Ink("k", "#000000"),))
    assert b"one-bit" not in encode(made)
    code = (
        "import sys; import panelproof.glyphs.type; from pathlib import Path;"
        "from panelproof.layout.reading import read; from panelproof.layout.writing import encode;"
        "sys.exit(encode(read(Path(sys.argv[1]))) != Path(sys.argv[1]).read_bytes())"
    )
    example = Path(__file__).parents[2] / "examples/kiln/kiln.panel.json"
    subprocess.run([sys.executable, "-c", code, example], check=True)
