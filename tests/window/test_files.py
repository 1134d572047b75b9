"""The layout file on disk."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from msgspec.structs import replace
from tests.window.answers import tank, written

from panelproof.editor import edits, files
from panelproof.layout.document import TypeSpec
from panelproof.layout.parts import Icon, IconState
from panelproof.problem import Problem


def test_a_stamp_is_of_what_the_file_holds_not_of_its_clock(tmp_path: Path) -> None:
    path = written(tmp_path / "tank.panel.json")
    before = files.stamp(path)
    os.utime(path, (1, 1))
    assert files.stamp(path) == before
    data = path.read_bytes()
    stat = path.stat()
    path.write_bytes(data.replace(b"#ffffff", b"#fffffe"))
    os.utime(path, ns=(stat.st_atime_ns, stat.st_mtime_ns))
    assert files.stamp(path) != before, "same size, same time, other content"


def test_there_is_no_stamp_of_what_is_no_file(tmp_path: Path) -> None:
    assert files.stamp(tmp_path / "nothing.panel.json") == files.GONE
    assert files.stamp(tmp_path) == files.GONE
    assert not files.GONE.there


def test_what_is_loaded_belongs_to_its_stamp(tmp_path: Path) -> None:
    path = written(tmp_path / "tank.panel.json")
    layout, stamp = files.load(path)
    assert layout == tank()
    assert stamp == files.stamp(path)
    assert files.store(layout, path) == stamp, "written the same way again"


def test_a_file_that_is_no_layout_is_refused_with_its_place(tmp_path: Path) -> None:
    path = tmp_path / "bad.panel.json"
    path.write_text('{"format": 1}')
    with pytest.raises(Problem, match=r"bad\.panel\.json"):
        files.load(path)


@pytest.mark.parametrize(
    ("typed", "wanted"),
    [("kiln", "kiln.panel.json"), ("kiln.panel.json", "kiln.panel.json"), ("kiln.v2", "kiln.v2.panel.json"),
     ("kiln.json", "kiln.json")],
)  # fmt: skip
def test_a_name_without_ending_gets_it(typed: str, wanted: str) -> None:
    assert files.suited(Path("/work") / typed) == Path("/work") / wanted


def test_an_untitled_layout_is_named_after_its_file() -> None:
    layout = replace(tank(), name=files.UNTITLED)
    assert files.named_after(layout, Path("/a/Kiln Room 2.panel.json")).name == "kiln-room-2"
    assert files.named_after(tank(), Path("/a/other.panel.json")).name == "tank"


def test_paths_are_kept_when_the_file_moves(tmp_path: Path) -> None:
    old, new = tmp_path / "a", tmp_path / "b" / "c"
    icon = Icon("link", 0, 0, "white", (IconState("up", picture="up.png"), IconState("down", ("#",))))
    full = tmp_path / "full.ttf"
    types = (
        TypeSpec("own", "fonts/own.bdf"),
        TypeSpec("named", "SourceSansPro", 12),
        TypeSpec("full", str(full), 12),
    )
    layout = tank()
    screen = replace(layout.screens[0], parts=(icon,))
    layout = replace(layout, types=types, screens=(screen,), moments=())
    moved = files.rebased(layout, old, new)
    assert [spec.font for spec in moved.types] == ["../../a/fonts/own.bdf", "SourceSansPro", str(full)]
    states = moved.screens[0].parts[0]
    assert isinstance(states, Icon)
    assert states.states[0].picture == "../../a/up.png"
    assert (new / states.states[0].picture).resolve() == (old / "up.png").resolve()
    assert files.rebased(moved, new, old) == edits.set_part(layout, "main", "link", icon), "and back again"
