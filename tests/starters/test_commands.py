"""`panels`, `starters` and `new` as a maker uses them."""

from __future__ import annotations

import json
import time
from pathlib import Path

import pytest

from panelproof.command import main
from panelproof.layout.reading import read
from panelproof.starters.description import descriptions
from panelproof.starters.panels import panels


def said(capsys: pytest.CaptureFixture[str], *words: str, code: int = 0) -> str:
    assert main(list(words)) == code
    shown = capsys.readouterr()
    return shown.out if code == 0 else shown.err


def test_panels_are_listed_with_their_sources(capsys: pytest.CaptureFixture[str]) -> None:
    shown = said(capsys, "panels")
    lines = shown.splitlines()
    assert len(lines) == 2 + len(panels()) + 1
    usual = next(line for line in lines if line.startswith("colour-240x135-1.14 "))
    assert usual.split("  ")[0] == "colour-240x135-1.14"
    assert "25.2 × 14.2 =" in usual, "reckoned"
    assert "40, 53 ?" in usual, "from memory"
    assert "= reckoned" in lines[-1]


def test_panels_can_be_searched(capsys: pytest.CaptureFixture[str]) -> None:
    assert said(capsys, "panels", "128x32").splitlines()[2].startswith("mono-128x32-0.91 ")
    assert "no panel" in said(capsys, "panels", "elephant", code=2)


def test_panels_as_json(capsys: pytest.CaptureFixture[str]) -> None:
    (one,) = json.loads(said(capsys, "panels", "round-240x240", "--json"))
    assert one["pixels"] == {"is": [240, 240], "source": "common practice"}
    assert one["glass"]["source"] == "reckoned"
    assert one["starters"][0] == "round-status"


def test_starters_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    assert [line.split()[0] for line in said(capsys, "starters").splitlines()[2:]] == list(descriptions())
    of_one = said(capsys, "starters", "--panel", "mono-72x40-0.42").splitlines()[2:]
    assert [line.split()[0] for line in of_one] == ["one-reading"]
    as_json = json.loads(said(capsys, "starters", "--json"))
    assert {one["name"] for one in as_json} == set(descriptions())
    assert all(one["panels"] for one in as_json)


@pytest.mark.parametrize(
    ("words", "starter", "size"),
    [
        ((), "one-reading", (240, 135)),
        (("--panel", "round-240x240-1.28"), "round-status", (240, 240)),
        (("--panel", "paper-red-296x128-2.9", "--starter", "two-readings"), "two-readings", (296, 128)),
        (("--size", "300x100"), "one-reading", (300, 100)),
        (("--size", "128x64", "--colours", "mono", "--refresh", "whole"), "mono-status", (128, 64)),
        (("--size", "200x200", "--colours", "indexed", "--refresh", "whole"), "long-text", (200, 200)),
        (("--size", "9x9", "--starter", "empty"), "empty", (9, 9)),
    ],
)
def test_a_new_layout_checks_clean(
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    words: tuple[str, ...],
    starter: str,
    size: tuple[int, int],
) -> None:
    path = tmp_path / "my-device.panel.json"
    assert f"(starter `{starter}`, " in said(capsys, "new", str(path), *words)
    layout = read(path)
    assert layout.name == "my-device"
    assert (layout.panel.width, layout.panel.height) == size
    checked = json.loads(said(capsys, "check", "--json", str(path)))
    assert (checked["faults"], checked["cautions"]) == (0, 0) or starter == "empty"


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (("--panel", "mono-128x64"), "there is no panel `mono-128x64`; the nearest are `mono-128x64-0.96`"),
        (("--starter", "level"), "there is no starter `level`; the nearest is `level-bar`"),
        (
            ("--panel", "mono-72x40-0.42", "--starter", "four-readings"),
            "the starter `four-readings` needs at least 96 × 64 pixels, and this panel has 72 × 40; take `one-reading`",
        ),
        (
            ("--starter", "round-status"),
            "is for round panels, and this one is rectangular; take `one-reading`",
        ),
        (("--size", "20x10"), "no starter is for 20 × 10 pixels"),
        (("--panel", "mono-72x40-0.42", "--size", "9x9"), "not both"),
        (("--size", "200x100", "--shape", "round"), "as wide as it is high"),
        (("--colours", "indexed", "--palette", "#000000", "red"), "`red` is not a colour"),
        (("--palette", "#000000", "#ffffff"), "has no palette"),
    ],
)
def test_what_cannot_be_is_said_in_a_sentence(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], words: tuple[str, ...], sentence: str
) -> None:
    path = tmp_path / "x.panel.json"
    shown = said(capsys, "new", str(path), *words, code=2)
    assert sentence in shown
    assert shown.count("\n") == 1
    assert not path.exists()


def test_a_file_that_is_there_is_kept(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "x.panel.json"
    path.write_text("mine")
    assert "already" in said(capsys, "new", str(path), code=2)
    assert path.read_text() == "mine"


def test_it_does_not_keep_one_waiting(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    # Process time, so that a busy machine does not count; two seconds are the promise.
    for number, words in enumerate((("--panel", "paper-grey-400x300-4.2"), ("--panel", "round-480x480-2.1"))):
        before = time.process_time()
        said(capsys, "new", str(tmp_path / f"{number}.panel.json"), *words)
        assert time.process_time() - before < 2
