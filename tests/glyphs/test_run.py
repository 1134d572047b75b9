"""A text set in a type, glyph by glyph."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.glyphs.sources import DATA, SANS, drawn, opened

from panelproof.glyphs.run import placed


def test_pens_and_width_of_a_reading() -> None:
    # Advances as printed in lath.bdf: 1 is 4 wide, 2 is 6, the point 2, 5 is 6, the degree sign 4, C 6.
    type = opened(DATA / "lath.bdf")
    glyphs, width = placed(type, "12.5°C")
    assert [pen for _, pen in glyphs] == [0, 4, 10, 12, 18, 22]
    assert width == 28
    assert [glyph for glyph, _ in glyphs] == [drawn(type, char) for char in "12.5°C"]


def test_no_text_no_width() -> None:
    assert placed(opened(DATA / "lath.bdf"), "") == ((), 0)


def test_missing_characters_leave_nothing() -> None:
    type = opened(DATA / "lath.bdf")
    assert placed(type, "1?2") == placed(type, "12")
    assert placed(type, "??") == ((), 0)


def test_kerning_moves_the_next_pen() -> None:
    type = opened(SANS, 48, kerning=True)
    kern = type.kern("T", "o")
    assert kern < 0
    plain, loose = placed(opened(SANS, 48), "To")
    kerned, tight = placed(type, "To")
    assert kerned[1][1] == plain[1][1] + kern
    assert tight == loose + kern


def test_no_kerning_across_a_missing_character() -> None:
    type = opened(SANS, 48, kerning=True)
    assert type.glyph("窯") is None
    assert placed(type, "T窯o") == placed(opened(SANS, 48), "To")
    assert placed(type, "T窯o") != placed(type, "To")


@settings(max_examples=60, deadline=None)
@given(st.text("ATVo.71 窯-", max_size=12))
def test_width_is_the_sum_of_advances_and_kerning(text: str) -> None:
    type = opened(SANS, 31, kerning=True)
    glyphs, width = placed(type, text)
    parts = text.split("窯")
    kerns = sum(type.kern(*part[k : k + 2]) for part in parts for k in range(len(part) - 1))
    assert width == sum(drawn(type, char).advance for char in text if char != "窯") + kerns
    assert len(glyphs) == len(text) - text.count("窯")
