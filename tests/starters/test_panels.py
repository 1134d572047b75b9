"""The list of panels: its figures, its sources, and what it refuses."""

from __future__ import annotations

import math
import re
from collections import Counter
from pathlib import Path

import pytest

from panelproof.layout.reading import parse
from panelproof.layout.writing import encode
from panelproof.problem import Problem
from panelproof.starters.make import empty
from panelproof.starters.panels import ListedPanel, panel_of, panels, read_panels

GOOD = """
[[panel]]
id = "colour-240x135-1.14"
kind = "colour LCD"
pixels = { is = [240, 135], source = "common practice" }
diagonal = { is = 1.14, source = "common practice" }
glass = { is = [25.2, 14.2], source = "reckoned" }
colours = { is = "rgb565", source = "common practice" }
refresh = { is = "part", source = "common practice" }
bus = { is = { protocol = "spi", clock_hz = 40_000_000, lanes = 1 }, source = "common practice" }
offset = { is = [40, 53], source = "from memory" }
"""


def listed(text: str, folder: Path) -> tuple[ListedPanel, ...]:
    path = folder / f"{abs(hash(text))}.toml"
    path.write_text(text, encoding="utf-8")
    return read_panels(path)


def test_the_sizes_in_common_use_are_there() -> None:
    every = panels()
    assert len(every) >= 24
    sizes = {one.pixels.value for one in every if one.colours.value == "rgb565"}
    assert {(80, 160), (160, 80), (240, 135), (320, 240), (320, 480)} <= sizes
    looks = Counter((one.colours.value, len(one.palette.value) if one.palette else 0) for one in every)
    assert looks["mono", 0] >= 4
    assert looks["indexed", 2] >= 4, "two-colour e-paper"
    assert looks["indexed", 3] >= 3, "three-colour e-paper"
    assert looks["grey4", 0] and looks["grey16", 0]
    shapes = Counter(one.shape for one in every)
    assert shapes["round"] >= 3 and shapes["rounded"] >= 2
    mono = {one.pixels.value for one in every if one.colours.value == "mono"}
    assert {(128, 64), (128, 32), (72, 40)} <= mono


@pytest.mark.parametrize("one", panels(), ids=lambda one: one.id)
def test_the_millimetres_are_those_of_the_diagonal(one: ListedPanel) -> None:
    # Square pixels: sqrt(w² + h²) in millimetres is the diagonal times 25.4; of round glass the width alone.
    width, height = one.glass.value
    across = width if one.shape == "round" else math.sqrt(width * width + height * height)
    assert one.glass.source == "reckoned"
    assert across == pytest.approx(one.diagonal.value * 25.4, abs=0.1)
    columns, rows = one.pixels.value
    assert width / columns == pytest.approx(height / rows, abs=0.06 / min(columns, rows) * 2)


def test_the_pitch_is_the_published_one() -> None:
    # CHECK_VALUES: 240 × 135 at 1.14 inch is about 241.5 pixels an inch, a pitch of 0.105 mm.
    panel = panel_of("colour-240x135-1.14").panel
    assert panel.width_mm is not None
    assert panel.width_mm / panel.width == pytest.approx(0.105, abs=0.0005)


@pytest.mark.parametrize("one", panels(), ids=lambda one: one.id)
def test_an_id_says_the_size_and_every_panel_can_be_a_layout(one: ListedPanel) -> None:
    match = re.fullmatch(r"[a-z]+(-[a-z]+)?-(\d+)x(\d+)-(\d+\.\d+)", one.id)
    assert match
    assert (int(match[2]), int(match[3])) == one.pixels.value
    assert float(match[4]) == one.diagonal.value
    layout = empty("panel", one.panel)
    assert parse(encode(layout)) == layout


def test_every_figure_has_its_source() -> None:
    for one in panels():
        figures = one.figures()
        assert {"pixels", "diagonal", "glass", "colours", "refresh", "bus"} <= set(figures)
        assert ("corner_radius" in figures) == (one.shape == "rounded")
        assert ("palette" in figures) == (one.colours.value == "indexed")
        assert all(figure.source for figure in figures.values())
        # Whatever depends on one maker's controller or glass has not been looked up.
        for key in ("offset", "corner_radius"):
            assert key not in figures or figures[key].source == "from memory"


def test_the_good_list_is_read(tmp_path: Path) -> None:
    (one,) = listed(GOOD, tmp_path)
    assert one.panel == panel_of("colour-240x135-1.14").panel


@pytest.mark.parametrize(
    ("old", "new", "place", "said"),
    [
        ('id = "colour-240x135-1.14"', 'id = "Colour 1.14"', "panel[0].id", ""),
        ("is = [240, 135], ", "", "panel[0].pixels", "`is`"),
        (', source = "from memory"', "", "panel[0].offset", "`source`"),
        ('"from memory"', '"a friend"', "panel[0].offset.source", "`a friend`"),
        ("[240, 135]", "[240, 0]", "panel[0].pixels.is[1]", ""),
        ("[240, 135]", "[240]", "panel[0].pixels.is", ""),
        ("[25.2, 14.2]", "[25.2, 15.2]", "panel[0].glass", "14.2 mm"),
        ('"rgb565"', '"rgb666"', "panel[0].colours.is", "rgb565"),
        ('"rgb565"', '"indexed"', "panel[0]", "two colours"),
        (
            'kind = "colour LCD"',
            'kind = "colour LCD"\nshape = "round"',
            "panel[0].shape",
            "as wide as it is high",
        ),
        ('kind = "colour LCD"', 'kind = "colour LCD"\nshape = "rounded"', "panel[0]", "corner_radius"),
        ("offset =", "ofset =", "panel[0].ofset", "`offset`"),
        ("lanes = 1", "lanes = 0", "panel[0].bus.is.lanes", ""),
        ("[[panel]]", "[[panel]", "", "not TOML"),
    ],
)
def test_what_is_wrong_is_named_with_its_place(
    tmp_path: Path, old: str, new: str, place: str, said: str
) -> None:
    assert old in GOOD
    with pytest.raises(Problem) as caught:
        listed(GOOD.replace(old, new, 1), tmp_path)
    assert caught.value.place.split(": ")[1:] == ([place] if place else []), caught.value
    assert said in caught.value.message


def test_a_panel_twice(tmp_path: Path) -> None:
    with pytest.raises(Problem, match="already"):
        listed(GOOD * 2, tmp_path)


def test_files_that_are_none(tmp_path: Path) -> None:
    with pytest.raises(Problem, match="cannot be read"):
        read_panels(tmp_path / "nothing.toml")
    (tmp_path / "latin.toml").write_bytes(b"# \xe9")
    with pytest.raises(Problem, match="UTF-8"):
        read_panels(tmp_path / "latin.toml")


def test_a_name_that_is_not_there_gets_the_nearest() -> None:
    with pytest.raises(Problem, match=r"nearest are .*`mono-128x64-0.96`"):
        panel_of("mono-128x64")
    with pytest.raises(Problem, match="`panelproof panels` lists all"):
        panel_of("§§§")
