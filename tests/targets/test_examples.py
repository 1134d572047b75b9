"""Every example's compiled header against the previews: each moment, each update, thousands of updates."""

from __future__ import annotations

import random
from pathlib import Path

import pytest
from tests.firmware.harness import Program, build
from tests.firmware.playing import agree, play, wander

from panelproof.layout.parts import Field, Icon
from panelproof.layout.reading import read
from panelproof.material import gather
from panelproof.picture import frame as frames
from panelproof.picture.moments import every_moment
from panelproof.proof.check import prove

ROOT = Path(__file__).parents[2]
LAYOUTS = sorted((ROOT / "examples").glob("*/*.panel.json"))


@pytest.fixture(scope="module", params=LAYOUTS, ids=lambda path: path.name.removesuffix(".panel.json"))
def program(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Program:
    path: Path = request.param
    return build(gather(read(path), path.parent), tmp_path_factory.mktemp("example"))


def test_there_are_examples() -> None:
    assert LAYOUTS


def test_every_moment_is_drawn_as_it_is_rendered(program: Program) -> None:
    material = program.material
    expected = []
    for moment in every_moment(material):
        screen = material.screen(moment.screen)
        frame = frames.screen_frame(material, screen, moment.values)
        program.clear(material.code(screen.ground))
        program.draw(screen, moment.values)
        program.frame()
        expected.append((frame, f"{moment.screen}: {moment.name}"))
    assert expected
    agree(expected, program.run())


def test_from_each_moment_to_each_other_by_updates(program: Program) -> None:
    material = program.material
    if material.layout.panel.refresh == "whole":
        pytest.skip("a whole frame is drawn anew each time")
    expected = []
    chance = random.Random(8)
    for screen in material.layout.screens:
        moments = [moment for moment in every_moment(material) if moment.screen == screen.name]
        for before in moments:
            frame = frames.screen_frame(material, screen, before.values)
            program.clear(material.code(screen.ground))
            program.draw(screen, before.values)
            after = chance.choice(moments)
            order = [part for part in screen.parts if isinstance(part, Field | Icon)]
            chance.shuffle(order)
            for part in order:
                value = after.values.of(part.name)
                if isinstance(part, Field):
                    program.update_field(screen, part, value)
                    frames.update_field(frame, material, screen, part, value)
                else:
                    program.update_icon(screen, part, value)
                    frames.update_icon(frame, material, screen, part, value)
                program.frame()
                expected.append((frame.copy(), f"{screen.name}: {before.name} to {after.name}, {part.name}"))
    if expected:
        agree(expected, program.run())


def test_random_screens_and_updates(program: Program) -> None:
    agree(play(program, 15, random.Random(9)), program.run())


def test_what_is_proved_clean_keeps_no_ghost(program: Program) -> None:
    material = program.material
    if material.layout.panel.refresh == "whole":
        pytest.skip("a whole frame is drawn anew each time")
    if any(finding.level == "fault" for finding in prove(material)):
        pytest.skip("this layout has faults on purpose")
    for screen in material.layout.screens:
        if any(isinstance(part, Field | Icon) for part in screen.parts):
            wander(program, screen, 3000, random.Random(10))
