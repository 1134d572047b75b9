"""Colours as the panel shows them, compared with a search over every value a channel has."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelproof.layout.colour import Colours, Rgb, parse, quantise, ramp, shown

CHANNELS = st.tuples(*[st.integers(0, 255)] * 3)


def test_parse() -> None:
    assert parse("#ff8001") == parse("#FF8001") == (255, 128, 1)


@given(CHANNELS)
def test_rgb565_is_the_nearest_of_all_codes(rgb: Rgb) -> None:
    code = quantise(rgb, Colours("rgb565"))
    for value, field, greatest in zip(
        rgb, (code >> 11, code >> 5 & 63, code & 31), (31, 63, 31), strict=True
    ):
        errors = [abs(value * greatest - step * 255) for step in range(greatest + 1)]
        assert errors[field] == min(errors)


@given(st.integers(0, 0xFFFF))
def test_what_is_shown_has_its_own_code(code: int) -> None:
    assert quantise(shown(code, Colours("rgb565")), Colours("rgb565")) == code


@pytest.mark.parametrize(
    ("rgb", "lit"),
    [
        ((0, 0, 0), 0),
        ((127, 127, 127), 0),
        ((128, 128, 128), 1),
        ((255, 0, 0), 0),
        ((0, 255, 0), 1),
        ((0, 0, 255), 0),
    ],
)
def test_mono_is_lit_from_half_luma(rgb: Rgb, lit: int) -> None:
    # ITU-R BT.601: 0.299 R + 0.587 G + 0.114 B.
    assert (
        quantise(rgb, Colours("mono"))
        == lit
        == int(0.299 * rgb[0] + 0.587 * rgb[1] + 0.114 * rgb[2] >= 127.5)
    )
    assert shown(lit, Colours("mono")) == (255 * lit,) * 3


@given(CHANNELS, CHANNELS)
def test_a_ramp_runs_from_ground_to_ink(ink: Rgb, ground: Rgb) -> None:
    codes = ramp(ink, ground, Colours("rgb565"))
    assert len(codes) == 16
    assert (codes[0], codes[15]) == (quantise(ground, Colours("rgb565")), quantise(ink, Colours("rgb565")))
    for shift, mask in ((11, 31), (5, 63), (0, 31)):
        steps = [code >> shift & mask for code in codes]
        assert steps in (sorted(steps), sorted(steps, reverse=True))
    exact = tuple(round(g + (i - g) * 8 / 15) for i, g in zip(ink, ground, strict=True))
    assert codes[8] == quantise(exact, Colours("rgb565"))  # type: ignore[arg-type]
