"""What a meter shows, against shares reckoned as fractions and against every value of small meters."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.layout.strategies import meters

from panelproof.layout import level
from panelproof.layout.parts import Growing, Meter, MeterLimit

INKS = ["bar", "warn", "alarm"]


@st.composite
def small_meters(draw: st.DrawFn) -> Meter:
    """Meters of few values and few pixels."""
    least = draw(st.integers(-9, 9))
    greatest = least + draw(st.integers(1, 40))
    at = sorted(draw(st.lists(st.integers(least, greatest), max_size=4, unique=True)))
    ink = st.none() | st.sampled_from(INKS)
    limits = tuple(MeterLimit(value, draw(ink), draw(st.booleans())) for value in at)
    width, height = draw(st.integers(1, 12)), draw(st.integers(1, 12))
    growing: st.SearchStrategy[Growing] = st.sampled_from(("right", "left", "up", "down"))
    return Meter("m", 3, 2, width, height, least, greatest, "bar", draw(growing), limits)


def shares(meter: Meter, value: int) -> int:
    """Count the pixels of the length whose far end the value's share of the range reaches."""
    length = meter.width if meter.direction in ("left", "right") else meter.height
    share = Fraction(value - meter.least, meter.greatest - meter.least)
    return sum(Fraction(pixel + 1, length) <= share for pixel in range(length))


@given(st.data(), small_meters() | meters("m", INKS))
@settings(max_examples=200, deadline=None)
def test_a_pixel_is_filled_when_the_share_covers_it_whole(data: st.DataObject, meter: Meter) -> None:
    value = data.draw(st.integers(meter.least, meter.greatest))
    assert level.filled(meter, value) == shares(meter, value)
    assert level.filled(meter, meter.least) == 0
    assert level.filled(meter, meter.greatest) == level.length(meter)


@given(small_meters())
@settings(max_examples=100, deadline=None)
def test_the_least_value_that_fills_and_that_inks(meter: Meter) -> None:
    every = range(meter.least, meter.greatest + 1)
    length = level.length(meter)
    for count in range(length + 1):
        assert level.least_filling(meter, count) == min(v for v in every if shares(meter, v) >= count)
    for column in range(meter.width):
        for row in range(meter.height):
            from_the_empty_end = {
                "right": column, "left": meter.width - 1 - column, "down": row, "up": meter.height - 1 - row,
            }[meter.direction]  # fmt: skip
            inking = [v for v in every if level.bar(meter, v)[from_the_empty_end] is not None]
            assert level.least_inking(meter, column, row) == inking[0]


@given(small_meters())
@settings(max_examples=100, deadline=None)
def test_every_pixel_as_the_rules_say(meter: Meter) -> None:
    length = level.length(meter)
    for value in range(meter.least, meter.greatest + 1):
        ink = meter.ink
        for limit in meter.limits:
            if limit.at <= value and limit.ink is not None:
                ink = limit.ink
        expected: list[str | None] = [
            ink if pixel < shares(meter, value) else None for pixel in range(length)
        ]
        own = meter.ink
        for limit in meter.limits:
            own = limit.ink or own
            place = min(shares(meter, limit.at), length - 1)
            if limit.mark:
                expected[place] = None if place < shares(meter, value) else own
        assert level.bar(meter, value) == expected


def test_a_worked_meter() -> None:
    """0 to 100 on 10 pixels: 39 fills three; from 80 up the bar is red, and its mark is cut out at 90."""
    meter = Meter("m", 0, 0, 10, 4, 0, 100, "bar", limits=(MeterLimit(80, "alarm"),))

    def shown(value: int) -> str:
        return "".join("." if ink is None else ink[0] for ink in level.bar(meter, value))

    assert shown(0) == "........a."
    assert shown(39) == "bbb.....a."
    assert shown(79) == "bbbbbbb.a."
    assert shown(80) == "aaaaaaaaa."
    assert shown(90) == "aaaaaaaa.."
    assert shown(100) == "aaaaaaaa.a"
    assert level.inks(meter) == ("bar", "alarm")
    assert [level.can_show(meter, value) for value in (None, -1, 0, 100, 101)] == [
        False, False, True, True, False,
    ]  # fmt: skip


@pytest.mark.parametrize(("value", "said"), [(None, "no value"), (-7, "-7"), (0, "0")])
def test_words(value: int | None, said: str) -> None:
    assert level.words(value) == said
