"""Screens and updates at random, drawn by a compiled header and by the drawing room side by side."""

from __future__ import annotations

import random

import numpy as np
from tests.firmware.harness import Answer, Program
from tests.firmware.layouts import some_text, some_values

from panelproof.layout.document import Screen
from panelproof.layout.parts import Field, Icon
from panelproof.material import field_graph
from panelproof.picture import frame as frames
from panelproof.picture.values import Values

Expected = list[tuple[frames.Frame, str]]


def play(program: Program, rounds: int, chance: random.Random) -> Expected:
    """Draw screens and update parts at random, on both sides; return the frames of this side."""
    material = program.material
    frame = frames.new_frame(material.layout.panel, 9)
    program.clear(9)
    expected: Expected = []

    def both(what: str) -> None:
        program.frame()
        expected.append((frame.copy(), what))

    for _ in range(rounds):
        screen = chance.choice(material.layout.screens)
        values = some_values(screen, chance)
        program.draw(screen, values)
        frames.draw_screen(frame, material, screen, values)
        both(f"drawing {screen.name}")
        for part in screen.parts if material.layout.panel.refresh == "part" else ():
            if isinstance(part, Field):
                text = some_text(field_graph(part), chance)
                program.update_field(screen, part, text)
                frames.update_field(frame, material, screen, part, text)
                both(f"{part.name} = {text!r}")
            elif isinstance(part, Icon):
                state = chance.choice(part.states).name
                program.update_icon(screen, part, state)
                frames.update_icon(frame, material, screen, part, state)
                both(f"{part.name} = {state}")
    return expected


def agree(expected: Expected, answers: list[Answer]) -> None:
    for (frame, what), answer in zip(expected, answers, strict=True):
        differing = np.argwhere(frame.codes != answer.codes)
        assert not len(differing), (
            f"{what}: {len(differing)} pixels differ, (y, x) {differing[:4].tolist()} ..."
        )


def wander(program: Program, screen: Screen, steps: int, chance: random.Random) -> None:
    """Update fields and icons at random; the last frame must be the one that a fresh drawing gives."""
    values = some_values(screen, chance)
    program.draw(screen, values)
    texts, states = dict(values.texts), dict(values.states)
    shown = [part for part in screen.parts if isinstance(part, Field | Icon)]
    for _ in range(steps):
        part = chance.choice(shown)
        if isinstance(part, Field):
            texts[part.name] = some_text(field_graph(part), chance)
            program.update_field(screen, part, texts[part.name])
        else:
            states[part.name] = chance.choice(part.states).name
            program.update_icon(screen, part, states[part.name])
    program.frame()
    last = Values(texts, states)
    program.draw(screen, last)
    program.frame()
    updated, fresh = program.run()
    assert np.array_equal(updated.codes, fresh.codes)
    assert np.array_equal(fresh.codes, frames.screen_frame(program.material, screen, last).codes)
