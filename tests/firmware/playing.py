"""Screens and updates at random, drawn by a compiled header and by the drawing room side by side."""

from __future__ import annotations

import random

import numpy as np
from tests.firmware.harness import Answer, Program
from tests.firmware.layouts import some_level, some_text, some_values

from panelproof.firmware.data import changes_by_parts
from panelproof.layout.document import Screen
from panelproof.layout.parts import Field, Icon, Meter
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
                if changes_by_parts(part):
                    former, text = text, some_text(field_graph(part), chance)
                    program.change_field(screen, part, former, text)
                    frames.update_field(frame, material, screen, part, text)
                    both(f"{part.name} = {text!r} after {former!r}")
            elif isinstance(part, Icon):
                state = chance.choice(part.states).name
                program.update_icon(screen, part, state)
                frames.update_icon(frame, material, screen, part, state)
                both(f"{part.name} = {state}")
                if changes_by_parts(part):
                    before, state = state, chance.choice(part.states).name
                    program.change_icon(screen, part, before, state)
                    frames.update_icon(frame, material, screen, part, state)
                    both(f"{part.name} = {state} after {before}")
            elif isinstance(part, Meter):
                level = some_level(part, chance)
                program.update_meter(screen, part, level)
                frames.update_meter(frame, material, screen, part, level)
                both(f"{part.name} = {level}")
                was, level = level, some_level(part, chance)
                program.change_meter(screen, part, was, level)
                frames.update_meter(frame, material, screen, part, level)
                both(f"{part.name} = {level} after {was}")
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
    texts, states, levels = dict(values.texts), dict(values.states), dict(values.levels)
    shown = [part for part in screen.parts if isinstance(part, Field | Icon | Meter)]
    for _ in range(steps):
        part = chance.choice(shown)
        if isinstance(part, Field):
            former, texts[part.name] = texts[part.name], some_text(field_graph(part), chance)
            if changes_by_parts(part) and chance.random() < 0.7:
                program.change_field(screen, part, former, texts[part.name])
            else:
                program.update_field(screen, part, texts[part.name])
        elif isinstance(part, Meter):
            was, levels[part.name] = levels[part.name], some_level(part, chance)
            if chance.random() < 0.7:
                program.change_meter(screen, part, was, levels[part.name])
            else:
                program.update_meter(screen, part, levels[part.name])
        else:
            before, states[part.name] = states[part.name], chance.choice(part.states).name
            if changes_by_parts(part) and chance.random() < 0.7:
                program.change_icon(screen, part, before, states[part.name])
            else:
                program.update_icon(screen, part, states[part.name])
    program.frame()
    last = Values(texts, states, levels)
    program.draw(screen, last)
    program.frame()
    updated, fresh = program.run()
    assert np.array_equal(updated.codes, fresh.codes)
    assert np.array_equal(fresh.codes, frames.screen_frame(program.material, screen, last).codes)
