"""Headers on small processors, in simulators: the frames that `render` makes, and the texts that the proof knows."""

from __future__ import annotations

import random
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from tests.firmware.functions import material_of
from tests.firmware.layouts import levels, mono, rich, some_values
from tests.targets.calls import calls
from tests.targets.examples import clean
from tests.targets.machine import MACHINES, Machine, build, run
from tests.targets.replay import Replay, replay
from tests.targets.script import Script, Shown

from panelproof.content.spec import Choice, Content, FreeText, RealRange, WholeRange
from panelproof.firmware.data import changes_by_parts
from panelproof.firmware.header import header
from panelproof.layout.document import Screen
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field
from panelproof.material import Material
from panelproof.picture import drawing
from panelproof.picture import frame as frames
from panelproof.picture.moments import every_moment
from panelproof.picture.values import Values

MADE = {"rich": rich, "mono": mono, "levels": levels}


@pytest.fixture(params=MACHINES, ids=lambda one: one.name)
def on(request: pytest.FixtureRequest) -> Machine:
    one: Machine = request.param
    one.needed()
    return one


def agree(expected: list[tuple[frames.Frame, str]], sent: Replay) -> None:
    assert len(sent.frames) == len(expected)
    for (frame, what), codes in zip(expected, sent.frames, strict=True):
        differing = np.argwhere(frame.codes != codes)
        assert not len(differing), (
            f"{what}: {len(differing)} pixels differ, (y, x) {differing[:4].tolist()} ..."
        )


def with_new(values: Values, new: Values, part: str) -> Values:
    """Return values in which one part's is another."""
    texts = {name: new.texts[name] if name == part else text for name, text in values.texts.items()}
    states = {name: new.states[name] if name == part else state for name, state in values.states.items()}
    levels = {name: new.levels[name] if name == part else level for name, level in values.levels.items()}
    return Values(texts, states, levels)


def stands(frame: frames.Frame, material: Material, screen: Screen, part: Shown, values: Values) -> bool:
    """Tell whether a frame shows a part as an update would leave it."""
    drawn_again = frame.copy()
    frames.draw(drawn_again, drawing.part(material, screen, part, values))
    return bool(np.array_equal(frame.codes, drawn_again.codes))


def play(script: Script, rounds: int, updates: int, chance: random.Random) -> list[tuple[frames.Frame, str]]:
    """Script every moment, then screens and updates at random; return the frames that must come."""
    material = script.material
    expected = []
    frame = frames.new_frame(material.layout.panel)

    def both(what: str) -> None:
        script.mark()
        expected.append((frame.copy(), what))

    for moment in every_moment(material):
        screen = material.screen(moment.screen)
        script.draw(screen, moment.values)
        frames.draw_screen(frame, material, screen, moment.values)
        if screen.clears:
            assert np.array_equal(frame.codes, frames.screen_frame(material, screen, moment.values).codes)
        both(f"{screen.name}: {moment.name}")
    for _ in range(rounds):
        screen = chance.choice(material.layout.screens)
        values = some_values(screen, chance)
        script.draw(screen, values)
        frames.draw_screen(frame, material, screen, values)
        both(f"drawing {screen.name}")
        shown = [part for part in screen.parts if isinstance(part, Shown)]
        for _ in range(updates if shown and material.layout.panel.refresh == "part" else 0):
            part, new = chance.choice(shown), some_values(screen, chance)
            former, values = values, with_new(values, new, part.name)
            before = frame.copy()
            frames.draw(frame, drawing.part(material, screen, part, values))
            # A change is right only where the glass shows what it is told, as it does after a drawing of that part alone.
            if (
                changes_by_parts(part)
                and stands(before, material, screen, part, former)
                and chance.random() < 0.6
            ):
                script.change(screen, part, former, values)
            else:
                script.update(screen, part, values)
            both(f"{screen.name}: {part.name} = {values.of(part.name)!r}")
    return expected


def drawn(material: Material, on: Machine, folder: Path, rounds: int, updates: int) -> None:
    script = Script(material)
    expected = play(script, rounds, updates, random.Random(21))
    assert expected
    text = header(material)
    agree(expected, replay(run(build(folder, on, script.source(), text), on), material.layout.panel))


@pytest.mark.parametrize("name", clean())
def test_examples_draw_what_is_rendered(tmp_path: Path, on: Machine, name: str) -> None:
    drawn(clean()[name], on, tmp_path, 4, 15)


@pytest.mark.parametrize("name", MADE)
def test_every_kind_of_part_clearing_and_alignment(tmp_path: Path, on: Machine, name: str) -> None:
    drawn(MADE[name](tmp_path), on, tmp_path, 6, 25)


def written(material: Material, on: Machine, folder: Path) -> int:
    """Call every text function, and return how many calls were made."""
    script = Script(material)
    expected: list[tuple[str | None, str]] = []
    chance = random.Random(22)
    for screen in material.layout.screens:
        for part in screen.parts:
            if not isinstance(part, Field):
                continue
            for call in calls(part, on.int_bits, chance):
                script.text(screen, part, call.values)
                expected.append((call.written, f"{screen.name}, {part.name}: {call.values}"))
    if expected:
        lines = run(build(folder, on, script.source(), header(material), ["-DTEXTS"]), on)
        sent = replay(lines, material.layout.panel).texts
        found = [(text, what) for text, (_, what) in zip(sent, expected, strict=True)]
        assert found == expected
    return len(expected)


@pytest.mark.parametrize("name", clean())
def test_examples_write_what_is_proved(tmp_path: Path, on: Machine, name: str) -> None:
    written(clean()[name], on, tmp_path)


NARROW = (
    Content("%d:%02u", (WholeRange(-32_768, 32_767), WholeRange(0, 65_535)), fault="--"),
    Content("%+d", (WholeRange(-300, 300, 20),), fault="--"),
    Content("% 5ld|%-4d|", (WholeRange(-(1 << 31), 5, 3), WholeRange(-1, 9))),
    Content("%lu", (WholeRange(0, (1 << 32) - 1),), fault="--"),
    Content(
        "%x %X %o %c", (WholeRange(0, 4095), WholeRange(7, 4095), WholeRange(0, 511), Choice(("a", "b")))
    ),
    Content("%s%%", (Choice(("on", "off", "")),), fault="?"),
    Content("%s", (FreeText(8, 1, "\N{DEGREE SIGN}", (("a", "z"),)),), fault="--"),
    Content("steady", (), fault=None),
)
REALS = (
    Content("%.1f", (RealRange(-40, 125),), fault="--"),
    Content("%.2f", (RealRange(0, 99.96),), fault="--"),
    Content("%+.0f", (RealRange(-3.5, 3.5),)),
    Content("%06.3f|", (RealRange(-9.5, 1000),), fault="none"),
)


def test_whole_numbers_and_texts_are_written_as_proved(tmp_path: Path, on: Machine) -> None:
    assert written(material_of(NARROW), on, tmp_path) > 90


def test_reals_are_written_as_proved(tmp_path: Path, on: Machine) -> None:
    """The C library of AVR prints no reals, that of RISC-V makes +1 of one half: the header has its own way."""
    assert written(material_of(REALS), on, tmp_path) > 60


def test_a_fault_of_the_processor_is_not_passed_over(tmp_path: Path, on: Machine) -> None:
    if on.name == "avr":
        pytest.skip("this processor has no faults")
    script = Script(mono(tmp_path))
    source = script.source().replace("    while ((command", "    __builtin_trap();\n    while ((command")
    program = build(tmp_path, on, source, header(script.material))
    with pytest.raises(AssertionError, match="ended with 99"):
        run(program, on)


def test_a_missing_tool_is_skipped_at_home_and_fails_on_ci(monkeypatch: pytest.MonkeyPatch) -> None:
    lost = replace(MACHINES[0], prefix="no-such-processor")
    monkeypatch.setenv("CI", "true")
    with pytest.raises(pytest.fail.Exception, match="no-such-processor-gcc is not installed"):
        lost.needed()
    monkeypatch.delenv("CI")
    with pytest.raises(pytest.skip.Exception, match="no-such-processor-gcc is not installed"):
        lost.needed()


def test_a_run_outside_its_window_is_not_passed_over() -> None:
    panel = Panel(16, 8)
    with pytest.raises(AssertionError, match="does not fit"):
        replay(["w0,0,2,2", "1:5"], panel)
    with pytest.raises(AssertionError, match="missing"):
        replay(["w0,0,2,2", "1:3", "m"], panel)
    with pytest.raises(AssertionError, match="outside"):
        replay([f"w{panel.width - 1:x},0,2,2"], panel)
