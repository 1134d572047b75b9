"""Visual angles against the published formula's worked figures and plain trigonometry."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelproof.sight.arc import farthest, height_for, minutes_of


@pytest.mark.parametrize(("minutes", "height"), [(16, 2.327), (20, 2.909)])
def test_worked_figures_at_500_mm(minutes: float, height: float) -> None:
    """NUREG-0700 rev. 2, 1.3.1-4: H = 6.283 D MA / 21600."""
    assert round(height_for(minutes, 500), 3) == height


@given(st.floats(0.1, 200), st.floats(50, 5000))
def test_the_ways_back_agree(minutes: float, distance: float) -> None:
    height = height_for(minutes, distance)
    assert minutes_of(height, distance) == pytest.approx(minutes)
    assert farthest(height, minutes) == pytest.approx(distance)


@given(st.floats(1, 60), st.floats(50, 5000))
def test_it_is_the_angle_itself(minutes: float, distance: float) -> None:
    exact = 2 * distance * math.tan(math.radians(minutes / 60) / 2)
    assert height_for(minutes, distance) == pytest.approx(exact, rel=2e-4)
