"""Simulated colour-deficient sight against colour-science's Machado 2009."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelproof.layout.colour import Rgb
from panelproof.sight.deficiency import MATRICES, Deficiency, seen

NAMES = {"protan": "Protanomaly", "deutan": "Deuteranomaly", "tritan": "Tritanomaly"}
# Told of parts of the package that are not used here.
pytestmark = pytest.mark.filterwarnings("ignore")
RGB = st.tuples(st.integers(0, 255), st.integers(0, 255), st.integers(0, 255))


def published(kind: Deficiency) -> np.ndarray:
    from colour.blindness import matrix_cvd_Machado2009

    return np.asarray(matrix_cvd_Machado2009(NAMES[kind], 1.0))


@pytest.mark.parametrize("kind", sorted(MATRICES))
def test_the_matrices_are_the_published_ones(kind: Deficiency) -> None:
    assert np.asarray(MATRICES[kind]) == pytest.approx(published(kind), abs=1e-9)
    # A grey stays the same grey.
    assert np.asarray(MATRICES[kind]).sum(axis=1) == pytest.approx([1, 1, 1], abs=1e-5)


@pytest.mark.parametrize("kind", sorted(MATRICES))
@given(rgb=RGB)
def test_colours_are_seen_as_colour_science_has_them(kind: Deficiency, rgb: Rgb) -> None:
    from colour.models import eotf_inverse_sRGB, eotf_sRGB

    light = published(kind) @ eotf_sRGB(np.asarray(rgb) / 255)
    expected = eotf_inverse_sRGB(np.clip(light, 0, 1)) * 255
    assert np.abs(np.asarray(seen(rgb, kind)) - expected).max() <= 0.5001


@given(st.integers(0, 255))
def test_greys_stay_as_they_are(value: int) -> None:
    for kind in MATRICES:
        assert seen((value, value, value), kind) == (value, value, value)
