"""Contrast against the examples of WCAG 2.2's formula, luminance against colour-science's sRGB."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelproof.layout.colour import Rgb, parse
from panelproof.sight.luminance import contrast, encoded, linear, luminance

# Told of parts of the package that are not used here.
pytestmark = pytest.mark.filterwarnings("ignore")
RGB = st.tuples(st.integers(0, 255), st.integers(0, 255), st.integers(0, 255))


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        # Examples of WCAG 2.2's formula, as published.
        ("#0000ff", "#ffffff", 8.59),
        ("#0000ff", "#ff0000", 2.15),
        ("#767676", "#ffffff", 4.54),
        ("#777777", "#ffffff", 4.48),
        ("#000000", "#ffffff", 21.0),
    ],
)
def test_published_contrasts(one: str, other: str, ratio: float) -> None:
    assert round(contrast(parse(one), parse(other)), 2) == ratio


@given(RGB, RGB)
def test_contrast_has_no_direction_and_lies_between_1_and_21(one: Rgb, other: Rgb) -> None:
    assert contrast(one, other) == contrast(other, one)
    assert 1 <= contrast(one, other) <= 21.0001


def test_linear_light_is_that_of_colour_science() -> None:
    from colour.models import eotf_sRGB

    for value in range(256):
        assert linear(value) == pytest.approx(float(eotf_sRGB(value / 255)), abs=1e-9)
        assert encoded(linear(value)) == value


@given(RGB)
def test_luminance_is_that_of_colour_science(rgb: Rgb) -> None:
    from colour.models import RGB_COLOURSPACE_sRGB, RGB_luminance, eotf_sRGB

    space = RGB_COLOURSPACE_sRGB
    light = eotf_sRGB([value / 255 for value in rgb])
    expected = float(RGB_luminance(light, space.primaries, space.whitepoint))
    # WCAG gives the weights to four places.
    assert luminance(rgb) == pytest.approx(expected, abs=2e-4)
