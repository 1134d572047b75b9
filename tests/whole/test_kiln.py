"""The kiln example, the whole way: proved, drawn, compiled, and compared pixel for pixel."""

from __future__ import annotations

import random
from pathlib import Path

import numpy as np
import pytest
from tests.firmware.harness import Program, build
from tests.firmware.layouts import some_text, some_values

from panelproof.firmware.header import header
from panelproof.layout.document import Screen
from panelproof.layout.parts import Field, Icon
from panelproof.layout.reading import read
from panelproof.material import Material, field_graph, gather
from panelproof.picture.frame import new_frame, screen_frame, update_field, update_icon
from panelproof.picture.moments import every_moment
from panelproof.picture.values import Values
from panelproof.proof.check import prove
from panelproof.proof.finding import Finding

KILN = Path(__file__).parents[2] / "examples" / "kiln"


def load(name: str) -> Material:
    path = KILN / f"{name}.panel.json"
    return gather(read(path), path.parent)


@pytest.fixture(scope="module")
def kiln() -> Material:
    return load("kiln")


@pytest.fixture(scope="module")
def program(kiln: Material, tmp_path_factory: pytest.TempPathFactory) -> Program:
    return build(kiln, tmp_path_factory.mktemp("kiln"))


def faults(material: Material) -> list[Finding]:
    return [finding for finding in prove(material) if finding.level == "fault"]


def test_as_first_drawn_by_eye_just_these_faults_are_found() -> None:
    found = {
        (finding.rule, finding.screen, finding.part, finding.other) for finding in faults(load("by-eye"))
    }
    assert found == {
        ("fit", "start", "message", ""),
        ("stale", "readings", "chamber", ""),
        ("erases", "readings", "chamber", "unit"),
        ("erases", "readings", "set-point", "set-word"),
        ("collides", "readings", "chamber", "unit"),
        ("missing-glyph", "readings", "title", ""),
        ("text-bytes", "readings", "left", ""),
        ("residue", "fault", "", "title"),
        ("residue", "fault", "", "bar"),
    }


def test_every_moment_and_every_step_between_two(kiln: Material, program: Program) -> None:
    expected = []
    for screen in kiln.layout.screens:
        shown = [moment for moment in every_moment(kiln) if moment.screen == screen.name]
        for former in shown:
            program.draw(screen, former.values)
            program.frame()
            expected.append(screen_frame(kiln, screen, former.values).codes)
            for later in shown:
                # In and against drawing order, from one moment to another.
                for parts in (screen.parts, screen.parts[::-1]):
                    program.draw(screen, former.values)
                    _update(program, screen, parts, later.values)
                    program.frame()
                    expected.append(screen_frame(kiln, screen, later.values).codes)
    answers = program.run()
    assert len(answers) == len(expected)
    for answer, frame in zip(answers, expected, strict=True):
        assert np.array_equal(answer.codes, frame)


def _update(program: Program, screen: Screen, parts: tuple[object, ...], values: Values) -> None:
    for part in parts:
        if isinstance(part, Field):
            program.update_field(screen, part, values.texts[part.name])
        elif isinstance(part, Icon):
            program.update_icon(screen, part, values.states[part.name])


def test_after_thousands_of_random_updates_nothing_old_is_left(kiln: Material, program: Program) -> None:
    chance = random.Random(7)
    for screen in kiln.layout.screens:
        begun = some_values(screen, chance)
        texts, states = dict(begun.texts), dict(begun.states)
        program.draw(screen, begun)
        expected = []
        changing = [part for part in screen.parts if isinstance(part, Field | Icon)]
        for number in range(3000):
            part = chance.choice(changing)
            if isinstance(part, Field):
                texts[part.name] = some_text(field_graph(part), chance)
                program.update_field(screen, part, texts[part.name])
            else:
                states[part.name] = chance.choice(part.states).name
                program.update_icon(screen, part, states[part.name])
            if number % 50 == 49:
                program.frame()
                expected.append(screen_frame(kiln, screen, Values(dict(texts), dict(states))).codes)
        for answer, frame in zip(program.run(), expected, strict=True):
            assert np.array_equal(answer.codes, frame)


@pytest.mark.parametrize(
    ("constant", "whole", "less"),
    [("KILN_START_MESSAGE_PADDING_WIDTH", 206, 205), ("KILN_READINGS_LEFT_PADDING_HEIGHT", 17, 16)],
)
def test_one_pixel_of_padding_less_turns_it_red(
    kiln: Material, tmp_path: Path, constant: str, whole: int, less: int
) -> None:
    """The least padding that the proof allows draws all; one pixel less in the header cuts ink off."""
    screen_name, part_name = ("start", "message") if "MESSAGE" in constant else ("readings", "left")
    tight = _tightened(kiln, screen_name, part_name)
    assert faults(tight) == []
    text = header(tight)
    lines = [line for line in text.splitlines() if line.startswith(f"#define {constant} ")]
    assert len(lines) == 1
    assert lines[0].split()[2] == str(whole)
    screen = tight.screen(screen_name)
    moments = [moment for moment in every_moment(tight) if moment.screen == screen_name]

    def same(source: str, folder: Path) -> bool:
        folder.mkdir()
        program = build(tight, folder, text=source)
        for moment in moments:
            program.draw(screen, moment.values)
            program.frame()
        frames = [screen_frame(kiln, screen, moment.values).codes for moment in moments]
        return all(
            np.array_equal(answer.codes, frame) for answer, frame in zip(program.run(), frames, strict=True)
        )

    assert same(text, tmp_path / "tight")
    changed = text.replace(lines[0], lines[0].replace(f" {whole} ", f" {less} "))
    assert changed != text
    assert not same(changed, tmp_path / "cut")


def _tightened(material: Material, screen_name: str, part_name: str) -> Material:
    """Return the layout with one field's padding box just as large as its footprint."""
    from msgspec.structs import replace

    from panelproof.proof.measure import measures

    needed = next(
        one.ink for one in measures(material) if (one.screen, one.field) == (screen_name, part_name)
    )
    screens = tuple(
        replace(
            screen,
            parts=tuple(
                replace(part, padding=needed) if isinstance(part, Field) and part.name == part_name else part
                for part in screen.parts
            ),
        )
        if screen.name == screen_name
        else screen
        for screen in material.layout.screens
    )
    return gather(replace(material.layout, screens=screens), material.folder)


def test_the_preview_itself_leaves_nothing_old(kiln: Material) -> None:
    """The same claim on the preview, with frames that begin with rubbish."""
    for screen in kiln.layout.screens:
        shown = [moment for moment in every_moment(kiln) if moment.screen == screen.name]
        frame = new_frame(kiln.layout.panel, 0x1234)
        frame.codes[...] = screen_frame(kiln, screen, shown[0].values).codes
        for moment in (*shown, *shown[::-1]):
            for part in screen.parts:
                if isinstance(part, Field):
                    update_field(frame, kiln, screen, part, moment.values.texts[part.name])
                elif isinstance(part, Icon):
                    update_icon(frame, kiln, screen, part, moment.values.states[part.name])
            assert np.array_equal(frame.codes, screen_frame(kiln, screen, moment.values).codes)
