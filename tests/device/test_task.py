"""The command `compare` as a maker and a test bench use it."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from tests.device.making import KILN, changed, kiln, right, shown, with_part

from panelproof.command import main
from panelproof.picture.frame import Codes, Frame
from panelproof.picture.image import image


def png(codes: Codes, path: Path) -> str:
    image(Frame(240, 135, np.ascontiguousarray(codes)), kiln().layout.panel).save(path)
    return str(path)


def test_the_same_frame(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    capture = png(right(), tmp_path / "frame.png")
    assert main(["compare", str(KILN), "--moment", "ramp", capture]) == 0
    assert "the same as `ramp`: 11 parts, 32 400 pixels" in capsys.readouterr().out


def test_what_differs_in_words_and_as_a_picture(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    layout = with_part(kiln().layout, "readings", "unit", x=206)
    capture = png(shown(layout, changed(radio="fault"))[::-1, ::-1], tmp_path / "frame.png")
    picture = tmp_path / "differences.png"
    assert main(["compare", str(KILN), "--moment", "ramp", capture, "-o", str(picture), "--scale", "2"]) == 1
    said = capsys.readouterr().out
    assert "whole picture: the picture is rotated by 180° (explains 9" in said
    assert "differs: unit (label, " in said
    assert "it stands 3 px right of its place\n" in said
    assert "it shows its state `fault` in place of `up`\n" in said
    assert "right apart from that: bar, title, server, chamber" in said
    with Image.open(picture) as drawn:
        pixels = np.asarray(drawn)
    expected = image(Frame(240, 135, right()), kiln().layout.panel, 2)
    assert holds(pixels, np.asarray(expected))
    captured = image(
        Frame(240, 135, np.ascontiguousarray(shown(layout, changed(radio="fault"))[::-1, ::-1])),
        kiln().layout.panel,
        2,
    )
    assert holds(pixels, np.asarray(captured))
    # As many magenta pixels as differ once it is turned, those under numbers and rings aside.
    wrong = np.count_nonzero(shown(layout, changed(radio="fault")) != right())
    magenta = np.count_nonzero((pixels == (255, 0, 200)).all(axis=-1)) / 4
    assert 0.7 * wrong < magenta <= wrong


def holds(page: Codes, piece: Codes) -> bool:
    """Whether a picture lies somewhere on a page, pixel for pixel."""
    height, width = piece.shape[:2]
    first = (page[: page.shape[0] - height + 1, : page.shape[1] - width + 1] == piece[0, 0]).all(axis=-1)
    last = (page[height - 1 :, width - 1 :] == piece[-1, -1]).all(axis=-1)
    return any(
        np.array_equal(page[y : y + height, x : x + width], piece)
        for y, x in zip(*np.nonzero(first & last), strict=True)
    )


def test_as_json(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    capture = png(shown(kiln().layout, changed(radio="fault")), tmp_path / "frame.png")
    assert main(["compare", str(KILN), "--moment", "ramp", capture, "--json"]) == 1
    found = json.loads(capsys.readouterr().out)
    assert found["same"] is False
    assert found["unexplained_pixels"] == 0
    parts = {part["part"]: part for part in found["parts"]}
    assert parts["radio"]["causes"] == [
        {"words": "it shows its state `fault` in place of `up`", "explains": 1.0}
    ]
    assert parts["radio"]["area"] == [196, 5, 14, 13]
    assert parts["server"] == {
        "part": "server",
        "kind": "icon",
        "same": True,
        "differing_pixels": 0,
        "area": None,
        "causes": [],
    }


def test_other_values_than_the_moments(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    capture = png(shown(kiln().layout, changed(radio="fault", chamber="237")), tmp_path / "frame.png")
    words = ["compare", str(KILN), "--moment", "ramp", capture, "--shows", "radio=fault"]
    assert main(words) == 1
    assert main([*words, "--shows", "chamber=237"]) == 0
    for wrong, said in (
        ("chamber=9999", "`9999` is no text that the field `chamber` can show"),
        ("radio=on", "the icon `radio` has no state `on`"),
        ("unit=F", "nothing called `unit` changes"),
        ("chamber", "is no PART=VALUE"),
    ):
        assert main([*words, "--shows", wrong]) == 2
        assert said in capsys.readouterr().err


def test_moments_and_files_that_are_not_there(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    capture = png(right(), tmp_path / "frame.png")
    assert main(["compare", str(KILN), "--moment", "rump", capture]) == 2
    assert "`ramp`" in capsys.readouterr().err
    assert main(["compare", str(KILN), "--moment", "ramp", str(tmp_path / "none.png")]) == 2
    assert "there is no such file" in capsys.readouterr().err
    assert main(["compare", str(KILN), "--moment", "readings:longest", capture]) == 1
