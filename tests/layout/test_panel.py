"""What of a panel can be seen, compared with the circle's own equation pixel by pixel."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from panelproof.layout.panel import Panel, Shape, visible_spans

SHAPES: tuple[Shape, ...] = ("rectangular", "rounded", "round")


def seen(panel: Panel, x: int, y: int) -> bool:
    """Tell whether the pixel's centre lies in the rectangle less its corners, each a circle's quarter."""
    if panel.shape == "rectangular":
        return True
    radius = Fraction(panel.width, 2) if panel.shape == "round" else Fraction(panel.corner_radius)
    half = Fraction(1, 2)
    beyond_x = max(radius - (x + half), (x + half) - (panel.width - radius), Fraction(0))
    beyond_y = max(radius - (y + half), (y + half) - (panel.height - radius), Fraction(0))
    return beyond_x**2 + beyond_y**2 <= radius**2


@st.composite
def shaped(draw: st.DrawFn) -> Panel:
    width, height = draw(st.integers(1, 40)), draw(st.integers(1, 40))
    shape = draw(st.sampled_from(SHAPES))
    if shape == "round":
        return Panel(width, width, shape=shape)
    radius = draw(st.integers(0, min(width, height) // 2)) if shape == "rounded" else 0
    return Panel(width, height, shape=shape, corner_radius=radius)


@given(shaped())
@settings(max_examples=150, deadline=None)
def test_spans_are_the_pixels_inside_the_shape(panel: Panel) -> None:
    spans = visible_spans(panel)
    assert len(spans) == panel.height
    for y, (first, end) in enumerate(spans):
        inside = [x for x in range(panel.width) if seen(panel, x, y)]
        assert list(range(first, end)) == inside


def test_a_small_circle_by_hand() -> None:
    assert visible_spans(Panel(4, 4, shape="round")) == ((1, 3), (0, 4), (0, 4), (1, 3))
    assert visible_spans(Panel(1, 1, shape="round")) == ((0, 1),)
