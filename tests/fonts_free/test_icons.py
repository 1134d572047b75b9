"""The icons: one box size a set, every state told from every other by shape alone, at one bit."""

from __future__ import annotations

from itertools import combinations

import pytest
from fonts_free.drawing import icons
from fonts_free.drawing.icons import SIZES, Rows, read_icons

LEAST = {12: 8, 16: 12, 24: 24}
"""Pixels two states of an icon differ in at least, wherever one picture is shifted by a pixel.

Two frames of one state (`trying-1`, `trying-2`) differ in half as many, two icons in twice as many.
"""
NAMES = {"radio", "server", "power", "clock", "sensor", "storage", "warning", "update", "lock"}


def ink(rows: Rows) -> set[tuple[int, int]]:
    return {(x, y) for y, row in enumerate(rows) for x, mark in enumerate(row) if mark == "#"}


def distance(one: Rows, other: Rows) -> int:
    first, second = ink(one), ink(other)
    shifts = [(dx, dy) for dx in (-1, 0, 1) for dy in (-1, 0, 1)]
    return min(len(first ^ {(x + dx, y + dy) for x, y in second}) for dx, dy in shifts)


@pytest.mark.parametrize("size", SIZES)
def test_states_are_told_apart_by_shape(size: int) -> None:
    """WCAG 2.2, 1.4.1: colour is not the only means."""
    near = {}
    for name, states in read_icons(size).items():
        for first, second in combinations(states, 2):
            frames = first.partition("-")[0] == second.partition("-")[0]
            found = distance(states[first], states[second])
            if found < LEAST[size] // (2 if frames else 1):
                near[name, first, second] = found
    assert near == {}


@pytest.mark.parametrize("size", SIZES)
def test_icons_are_told_apart(size: int) -> None:
    drawn = {(name, state): rows for name, s in read_icons(size).items() for state, rows in s.items()}
    for one, other in combinations(drawn, 2):
        if one[0] != other[0]:
            assert distance(drawn[one], drawn[other]) >= 2 * LEAST[size], (one, other)


@pytest.mark.parametrize("size", SIZES)
def test_frames_read_as_movement(size: int) -> None:
    """From frame to frame, and from the last to the first, half the ink stands still and some of it moves."""
    for name, states in read_icons(size).items():
        frames = [ink(states[state]) for state in states if state.startswith("trying-")]
        assert len(frames) in (0, 2, 3), name
        for frame, following in zip(frames, frames[1:] + frames[:1], strict=True):
            assert 2 * len(frame & following) >= max(len(frame), len(following)), name
            assert len(frame ^ following) >= LEAST[size] // 2, name


@pytest.mark.parametrize("size", SIZES)
def test_links_have_frames(size: int) -> None:
    """A link that is being made is shown moving; a lock or a warning is not."""
    moving = {name for name, states in read_icons(size).items() if "trying-1" in states}
    assert moving == {"radio", "server", "clock", "sensor", "storage", "update"}


@pytest.mark.parametrize("size", SIZES)
def test_faults_carry_one_mark(size: int) -> None:
    """The cross of a fault has the same pixels in every icon; a warning's fault is the warning itself."""
    faults = [ink(states["fault"]) for name, states in read_icons(size).items() if name != "warning"]
    cross = set.intersection(*faults)
    assert len(cross) >= size * 3 // 4
    assert min(x for x, _ in cross) >= size // 2 and min(y for _, y in cross) >= size // 2


@pytest.mark.parametrize("size", SIZES)
def test_every_set_has_the_same_icons_and_states(size: int) -> None:
    assert read_icons(size).keys() == NAMES
    for name, states in read_icons(size).items():
        assert states.keys() == read_icons(SIZES[0])[name].keys()
        assert {"off", "up", "fault"} <= states.keys()


def test_a_shifted_picture_is_no_other_state() -> None:
    rows = read_icons(12)["lock"]["up"]
    shifted = tuple("." + row[:-1] for row in rows)
    assert distance(rows, shifted) == 0


def test_a_grid_of_the_wrong_size_is_refused(tmp_path: object, monkeypatch: pytest.MonkeyPatch) -> None:
    class Short:
        name = "12.txt"

        def __truediv__(self, _: str) -> Short:
            return self

        def read_text(self, encoding: str) -> str:
            return "= lock up\n" + "............\n" * 11

    monkeypatch.setattr(icons, "ICONS", Short())
    with pytest.raises(ValueError, match="has 11 rows, not 12"):
        read_icons(12)
