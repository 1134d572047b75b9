"""The nearest shade of a colour."""

from __future__ import annotations

from colorsys import rgb_to_hls

from hypothesis import given
from hypothesis import strategies as st

from panelproof.layout.colour import Rgb
from panelproof.sight.luminance import contrast
from panelproof.sight.shade import nearest

RGB = st.tuples(st.integers(0, 255), st.integers(0, 255), st.integers(0, 255))


def hls(rgb: Rgb) -> tuple[float, float, float]:
    return rgb_to_hls(*(value / 255 for value in rgb))


@given(RGB, RGB, st.sampled_from([3.0, 4.5]))
def test_the_shade_fits_and_a_nearer_one_does_not(rgb: Rgb, ground: Rgb, needed: float) -> None:
    tried: list[Rgb] = []

    def fits(shade: Rgb) -> bool:
        tried.append(shade)
        return contrast(shade, ground) >= needed

    shade = nearest(rgb, fits)
    # Black or white stands out from any colour by 4.58 at least.
    assert shade is not None
    assert fits(shade)
    aim = abs(hls(shade)[1] - hls(rgb)[1])
    for other in tried[: tried.index(shade)]:
        assert abs(hls(other)[1] - hls(rgb)[1]) <= aim + 2 / 255
    hue, lightness, saturation = hls(shade)
    if saturation > 0.2 and 0.2 < lightness < 0.8 and hls(rgb)[2] > 0.2:
        turned = abs(hue - hls(rgb)[0])
        assert min(turned, 1 - turned) < 0.02


def test_what_fits_stays_and_what_nothing_fits_is_none() -> None:
    assert nearest((1, 2, 3), lambda _: True) == (1, 2, 3)
    assert nearest((1, 2, 3), lambda _: False) is None


def test_white_and_black_are_tried() -> None:
    assert nearest((40, 90, 60), lambda shade: shade == (255, 255, 255)) == (255, 255, 255)
    assert nearest((40, 90, 60), lambda shade: shade == (0, 0, 0)) == (0, 0, 0)
