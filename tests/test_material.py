"""Pictures that a layout names: found, or told with their place in the file."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image

from panelproof.layout.document import Ink, Layout, Screen
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Picture, Rule
from panelproof.material import gather
from panelproof.problem import Problem


def made(*parts: Picture | Rule) -> Layout:
    inks = (Ink("night", "#000000"),)
    return Layout(1, "tank", Panel(40, 30, "mono"), (), inks, (Screen("main", "night", parts),))


def test_pictures_are_read_from_beside_the_layout(tmp_path: Path) -> None:
    (tmp_path / "pictures").mkdir()
    Image.new("RGB", (5, 3), "white").save(tmp_path / "pictures" / "über.png")
    part = Picture("logo", 0, 0, "pictures/über.png")
    raster = gather(made(part), tmp_path).raster(part)
    assert (raster.width, raster.height, raster.used()) == (5, 3, frozenset({1}))


@pytest.mark.parametrize(
    ("name", "message"),
    [
        ("gone.png", "the picture `gone.png` cannot be read (no such file or directory)"),
        ("text.png", "the picture `text.png` is not a PNG file"),
        ("cut.png", "the picture `cut.png` cannot be read"),
        ("large.png", "the picture `large.png` is 2049 × 2 pixels; a picture may have 2048 a side at most"),
        ("folder.png", "the picture `folder.png` cannot be read"),
    ],
)
def test_what_is_no_picture_is_told_with_its_place(tmp_path: Path, name: str, message: str) -> None:
    (tmp_path / "text.png").write_text("not a picture")
    Image.effect_noise((64, 64), 99).save(tmp_path / "whole.png")
    data = (tmp_path / "whole.png").read_bytes()
    (tmp_path / "cut.png").write_bytes(data[: len(data) // 2])
    Image.new("1", (2049, 2)).save(tmp_path / "large.png")
    (tmp_path / "folder.png").mkdir()
    with pytest.raises(Problem) as caught:
        gather(made(Rule("line", 0, 0, 9, "night"), Picture("logo", 0, 0, name)), tmp_path)
    assert caught.value.place == "screens[0].parts[1].picture"
    assert caught.value.message.startswith(message)
