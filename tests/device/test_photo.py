"""Photographs made by a camera of our own: no false alarm, and one wrong part is named."""

from __future__ import annotations

import builtins
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray
from PIL import Image
from tests.device.making import KILN, changed, kiln, mono, ramp, right, shown, with_part
from tests.device.photographing import Shot, photograph

from panelproof.command import main
from panelproof.device.photo import PhotoOutcome, judged
from panelproof.device.scene import Scene
from panelproof.device.straighten import straightened
from panelproof.picture.frame import Codes, screen_frame
from panelproof.picture.moments import moment
from panelproof.picture.values import Values
from panelproof.problem import Problem


def light(shot: Shot, turn: int = 0) -> NDArray[np.float32]:
    return np.rot90(shot.pixels, turn).astype(np.float32) / np.float32(255)


def scene() -> Scene:
    return Scene(kiln(), kiln().screen("readings"), ramp().values)


def seen(shot: Shot, *, given: bool = False, turn: int = 0) -> PhotoOutcome:
    return judged(scene(), light(shot, turn), tuple(shot.corners) if given else None)


def wrong(outcome: PhotoOutcome) -> list[str]:
    return [part.name for part in outcome.parts if part.state == "differs"]


def taken(codes: Codes, seed: int, **more: float) -> Shot:
    return photograph(codes, kiln().layout.panel, seed, **more)


@pytest.mark.parametrize("seed", range(20))
def test_no_false_alarm(seed: int) -> None:
    shot = taken(right(), seed)
    outcome = seen(shot, given=seed % 2 == 1)
    assert wrong(outcome) == []
    assert outcome.same
    # Little is too faint to tell, and what is told is told with some room.
    assert sum(part.state == "unclear" for part in outcome.parts) <= 1
    assert max(part.share for part in outcome.parts if part.kind != "box") < 0.23
    assert np.abs(np.array(outcome.corners) - shot.corners).max() < 3


CHANGES: list[tuple[str, Callable[[], Codes]]] = [
    ("chamber", lambda: shown(kiln().layout, changed(chamber="871"))),
    ("chamber", lambda: shown(kiln().layout, changed(chamber="no probe"))),
    ("phase", lambda: shown(kiln().layout, changed(phase="ramp 3"))),
    ("left", lambda: shown(kiln().layout, changed(left="5 h 43 min to go"))),
    ("server", lambda: shown(kiln().layout, changed(server="fault"))),
    ("radio", lambda: shown(kiln().layout, changed(radio="off"))),
    ("title", lambda: shown(with_part(kiln().layout, "readings", "title", x=12))),
    ("unit", lambda: shown(with_part(kiln().layout, "readings", "unit", text="°F"))),
    ("set-point", lambda: shown(kiln().layout, changed(set_point="1000 °C"))),
]


@pytest.mark.parametrize("number", range(len(CHANGES)))
def test_the_one_part_that_differs_is_named(number: int) -> None:
    name, made = CHANGES[number]
    assert wrong(seen(taken(made(), 100 + number), given=number % 2 == 1)) == [name]


@pytest.mark.parametrize(
    ("turn", "more"),
    [
        (2, {}),
        (1, {}),
        (0, {"bench": 0.6}),
        (0, {"bezel": 0.12, "bench": 0.4, "glow": 0.01}),
        (0, {"bench": 0.002, "glow": 0.0}),
    ],
    ids=["upside down", "on its side", "on a bright bench", "in a black rim", "in a dark room"],
)
def test_the_glass_is_found_as_it_lies(turn: int, more: dict[str, float]) -> None:
    assert wrong(seen(taken(right(), 31, **more), turn=turn)) == []
    assert wrong(seen(taken(CHANGES[0][1](), 32, **more), turn=turn)) == ["chamber"]


def test_a_one_bit_panel() -> None:
    material = mono()
    found = moment(material, "half-full")
    screen = material.screen(found.screen)
    other = Values({**found.values.texts, "level": "121.6"}, found.values.states)
    expected = Scene(material, screen, found.values)
    for values, names in ((found.values, []), (other, ["level"])):
        shot = photograph(screen_frame(material, screen, values).codes, material.layout.panel, 5)
        assert wrong(judged(expected, light(shot), None)) == names


def test_a_photograph_of_something_else() -> None:
    noise = np.random.default_rng(2).random((600, 800, 3)).astype(np.float32)
    with pytest.raises(Problem, match="the glass was not found in the photograph; give its four corners"):
        straightened(noise, np.zeros((135, 240, 3), np.float32), None)
    shot = taken(right(), 3)
    photo = light(shot)
    moved = tuple((x + 300, y) for x, y in shot.corners)
    with pytest.raises(Problem, match="not like the moment at all; check the corners"):
        judged(scene(), photo, moved)
    with pytest.raises(Problem, match="the four corners enclose nothing"):
        judged(scene(), photo, ((1.0, 1.0),) * 4)


def test_the_command(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path, picture = tmp_path / "photo.png", tmp_path / "seen.png"
    shot = taken(CHANGES[0][1](), 7)
    Image.fromarray(shot.pixels).save(path)
    corners = ["--corners", *(f"{x:.1f},{y:.1f}" for x, y in shot.corners)]
    words = ["compare", str(KILN), "--moment", "ramp", str(path)]
    assert main([*words, *corners, "-o", str(picture)]) == 1
    said = capsys.readouterr().out
    assert "not `ramp`: 1 part differs\n  differs: chamber\n" in said
    assert "the glass was taken to lie at" in said
    with Image.open(picture) as drawn:
        assert drawn.width > 400
    assert main([*words, "--photo", "--json"]) == 1
    found = json.loads(capsys.readouterr().out)
    assert {part["part"] for part in found["parts"] if part["state"] == "differs"} == {"chamber"}
    Image.fromarray(taken(right(), 8).pixels).save(path)
    assert main([*words, "--photo"]) == 0
    assert "as far as a photograph tells, the same as `ramp`" in capsys.readouterr().out
    for few in (["1,2", "3,4", "5"], ["1,2", "3,4", "5,6", "7"]):
        with pytest.raises(SystemExit, match="2"):
            main([*words, "--corners", *few])
    path.write_bytes(b"no picture")
    assert main([*words, "--photo"]) == 2
    assert "this is no picture file" in capsys.readouterr().err


def test_without_opencv_a_sentence_says_what_to_install(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    honest = builtins.__import__

    def refusing(name: str, *arguments: Any, **named: Any) -> Any:
        if name == "cv2":
            raise ImportError(name)
        return honest(name, *arguments, **named)

    monkeypatch.setattr(builtins, "__import__", refusing)
    assert main(["compare", str(KILN), "--moment", "ramp", str(tmp_path / "a.png"), "--photo"]) == 2
    assert "photographs need the package opencv-python-headless" in capsys.readouterr().err
