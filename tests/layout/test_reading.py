"""Reading: every broken file gives its one sentence, and nothing ever comes out but a layout or Problem."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.layout.strategies import layouts
from tests.layout.tree import TREE, changed, encoded, mutated

from panelproof.layout.document import Layout, Moment
from panelproof.layout.parts import Field
from panelproof.layout.reading import parse, read, valid
from panelproof.layout.syntax import GREATEST_SIZE
from panelproof.layout.writing import encode
from panelproof.problem import Problem

BROKEN = Path(__file__).parent / "broken"
SENTENCES = (BROKEN / "sentences.txt").read_text(encoding="utf-8").splitlines()
FILES = {sentence.partition(": ")[0]: sentence for sentence in SENTENCES}


def refusal(data: bytes, name: str = "") -> str:
    with pytest.raises(Problem) as caught:
        parse(data, name)
    return str(caught.value)


@pytest.mark.parametrize("name", sorted(FILES))
def test_each_broken_file_gives_its_sentence(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(BROKEN)
    began = time.process_time()
    with pytest.raises(Problem) as caught:
        read(Path(name))
    assert str(caught.value) == FILES[name]
    assert time.process_time() - began < 2


def test_every_broken_file_has_a_sentence_and_every_sentence_a_file() -> None:
    assert sorted(FILES) == sorted(path.name for path in BROKEN.glob("*.json"))
    assert len(FILES) == len(SENTENCES)


def test_no_sentence_speaks_of_the_works() -> None:
    for sentence in SENTENCES:
        assert not any(
            word in sentence for word in ("msgspec", "str`", "int`", "regex", "Struct", "dict", "Error")
        )


def test_a_whole_layout_is_read() -> None:
    layout = parse(encoded(TREE))
    assert [part.name for part in layout.screens[0].parts] == [
        "title", "level", "pump", "line", "frame", "depth", "logo",
    ]  # fmt: skip
    field = layout.screens[0].parts[1]
    assert isinstance(field, Field)
    assert field.padding == (2, 24, 100, 24)
    assert layout.moments[0].fields["level"] == (99, "full", "ab")


def test_parts_can_key_a_cache() -> None:
    assert len({part for screen in parse(encoded(TREE)).screens for part in screen.parts}) == 7


@given(mutated())
@settings(max_examples=400, deadline=None)
def test_a_changed_file_gives_a_layout_or_a_problem(tree: object) -> None:
    try:
        layout = parse(encoded(tree), "x")
    except Problem as problem:
        assert problem.place == "x" or problem.place.startswith("x: ")
        assert "\n" not in str(problem)
        assert str(problem).isprintable()
        assert "this is no layout" not in problem.message
    else:
        assert parse(encode(layout)) == layout


@given(st.data())
@settings(max_examples=200, deadline=None)
def test_damaged_bytes_give_a_layout_or_a_problem(data: st.DataObject) -> None:
    whole = encoded(TREE)
    start = data.draw(st.integers(0, len(whole)))
    end = data.draw(st.integers(start, min(len(whole), start + 40)))
    piece = data.draw(
        st.binary(max_size=6) | st.sampled_from((b'"', b"{", b"]", b"\\", b",", b"//", b"0", b"\n"))
    )
    try:
        parse(whole[:start] + piece + whole[end:])
    except Problem as problem:
        assert str(problem).isprintable()


@given(layouts())
@settings(max_examples=40, deadline=None)
def test_a_layout_made_in_code_is_what_a_file_would_give(layout: Layout) -> None:
    assert valid(layout) == layout


def test_a_layout_made_in_code_with_a_value_no_file_holds_is_refused() -> None:
    layout = parse(encoded(TREE))
    wrong = Layout(1, "Tank", layout.panel, inks=layout.inks)
    with pytest.raises(Problem, match="is not a name") as caught:
        valid(wrong)
    assert caught.value.place == "name"
    assert valid(Layout(1, "tank", layout.panel, moments=[Moment("a", "b")])).moments == (Moment("a", "b"),)  # type: ignore[arg-type]


def test_the_size_is_bounded() -> None:
    assert refusal(b" " * (GREATEST_SIZE + 1), "x") == "x: the file is larger than 4 MB; no layout is"
    assert refusal(b" " * GREATEST_SIZE, "x") == "x: the file is empty"


def test_an_endless_file_is_not_read_to_its_end(tmp_path: Path) -> None:
    path = tmp_path / "large.panel.json"
    with path.open("wb") as file:
        file.truncate(50 * 1024**3)
    with pytest.raises(Problem, match="larger than 4 MB"):
        read(path)


@pytest.mark.parametrize(
    "data",
    [
        b"[" * GREATEST_SIZE,
        b'{"a":' * (GREATEST_SIZE // 5),
        b"9" * GREATEST_SIZE,
        b"[" + b"9," * (GREATEST_SIZE // 2 - 2) + b"9]",
        b'"' + b"\\" * (GREATEST_SIZE - 1),
        b"{" + b",".join(b'"%d":0' % (number // 2) for number in range(300_000)) + b"}",
        b"{" + b",".join(b'"%d":0' % number for number in range(300_000)) + b',"0":1}',
        b'{"format":1,"screens":' + b"[" * 900 + b"]" * 900 + b"}",
        b'{"format":1,"' + b"x" * 4_000_000 + b'":1}',
    ],
    ids=["lists", "objects", "digit", "numbers", "backslashes", "twice", "twice at last", "deep", "key"],
)
def test_hostile_files_take_bounded_time(data: bytes) -> None:
    began = time.process_time()
    assert len(refusal(data)) < 500
    assert time.process_time() - began < 3


def test_a_path_that_is_no_file(tmp_path: Path) -> None:
    with pytest.raises(Problem) as caught:
        read(tmp_path / "none.panel.json")
    missing = f"{tmp_path / 'none.panel.json'}: the file cannot be read: there is no such file or folder"
    assert str(caught.value) == missing
    with pytest.raises(Problem, match="this is a folder, not a layout file"):
        read(tmp_path)
    with pytest.raises(Problem, match="there can be no file of this name"):
        read(Path("a\0b"))
    with pytest.raises(Problem, match="the name is too long"):
        read(Path("x" * 1000))
    with pytest.raises(Problem, match="no ordinary file"):
        read(Path(os.devnull))


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes with names here")
def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    with pytest.raises(Problem, match="no ordinary file"):
        read(tmp_path / "pipe")


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="root may read everything")
def test_a_file_that_may_not_be_read(tmp_path: Path) -> None:
    path = tmp_path / "a.panel.json"
    path.write_bytes(b"{}")
    path.chmod(0)
    with pytest.raises(Problem, match="there is no permission"):
        read(path)


def test_the_place_holds_the_path(tmp_path: Path) -> None:
    path = tmp_path / "tank.panel.json"
    path.write_bytes(encoded(changed(("panel", "width"), 0)))
    with pytest.raises(Problem) as caught:
        read(path)
    assert caught.value.place == f"{path}: panel.width"
    path.write_bytes(encoded(TREE))
    assert read(path) == parse(encoded(TREE))


def test_reading_is_light() -> None:
    code = (
        "import sys, panelproof.layout.reading, panelproof.layout.writing\n"
        "heavy = {'jsonschema', 'numpy', 'PIL', 'fontTools', 'freetype', 'jinja2', 'difflib'}\n"
        "print(sorted(heavy & set(sys.modules)))"
    )
    found = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, env=_env()
    )
    assert found.stdout.strip() == "[]"


def _env() -> dict[str, str]:
    app = Path(__file__).parents[2] / "app"
    return {**os.environ, "PYTHONPATH": os.pathsep.join([str(app), os.environ.get("PYTHONPATH", "")])}


def test_a_normal_file_is_read_quickly() -> None:
    parts = TREE["screens"][0]["parts"]
    many = [{**part, "name": f"{part['name']}-{number}"} for number in range(20) for part in parts]
    data = encoded({**changed(("screens", 0, "parts"), many), "moments": []})
    best = min(_seconds(data) for _ in range(20))
    assert len(data) > 10_000
    assert best < 0.003


def _seconds(data: bytes) -> float:
    began = time.perf_counter()
    parse(data)
    return time.perf_counter() - began
