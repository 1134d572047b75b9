from __future__ import annotations

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelproof.firmware.encoding import FORMS, Encoding, cheapest, packed, pixels
from panelproof.glyphs.glyph import Glyph


def unpacked(blob: bytes, width: int, height: int, depth: int) -> list[list[int]]:
    """Pixels of a packed bitmap, read bit by bit."""
    bits = [byte >> place & 1 for byte in blob for place in range(8)]
    values = [sum(bits[n * depth + k] << k for k in range(depth)) for n in range(width * height)]
    assert not any(bits[width * height * depth :])
    return [values[row * width : (row + 1) * width] for row in range(height)]


@given(st.integers(0, 20), st.integers(0, 12), st.data())
def test_one_bit_glyphs_pack_tight(width: int, height: int, data: st.DataObject) -> None:
    rows = tuple(data.draw(st.integers(0, (1 << width) - 1)) for _ in range(height))
    blob = packed(Glyph(0, 0, width, height, 0, rows))
    assert len(blob) == -(-width * height // 8)
    assert unpacked(blob, width, height, 1) == [[row >> k & 1 for k in range(width)] for row in rows]


@given(st.integers(1, 9), st.integers(1, 7), st.data())
def test_antialiased_glyphs_take_four_bits_a_pixel(width: int, height: int, data: st.DataObject) -> None:
    levels = bytes(data.draw(st.lists(st.integers(0, 15), min_size=width * height, max_size=width * height)))
    blob = packed(Glyph(0, 0, width, height, 0, (0,) * height, levels))
    assert len(blob) == -(-width * height // 2)
    assert list(itertools.chain(*unpacked(blob, width, height, 4))) == list(levels)


@st.composite
def bitmaps(draw: st.DrawFn) -> Glyph:
    """Glyphs with long runs and rows that come again, and with none."""
    width, height = draw(st.integers(0, 40)), draw(st.integers(0, 9))
    antialiased = draw(st.booleans())
    level = st.sampled_from((0, 0, 0, 15, 15, 15, 1, 7, 14)) if antialiased else st.sampled_from((0, 15))
    run = st.tuples(level, st.integers(1, 20))
    kinds = []
    for _ in range(3):
        row = [one for value, count in draw(st.lists(run, max_size=6)) for one in [value] * count][:width]
        kinds.append(bytes(row + [0] * (width - len(row))))
    chosen = [draw(st.sampled_from(kinds)) for _ in range(height)]
    rows = tuple(sum(1 << x for x, value in enumerate(row) if value) for row in chosen)
    return Glyph(0, 0, width, height, 0, rows, b"".join(chosen) if antialiased else b"")


@given(bitmaps())
def test_every_encoding_holds_the_same_pixels(glyph: Glyph) -> None:
    antialiased = bool(glyph.levels)
    expected = glyph.levels or bytes(row >> x & 1 for row in glyph.rows for x in range(glyph.width))
    for encoding in FORMS:
        blob = packed(glyph, encoding)
        assert pixels(blob, glyph.width, glyph.height, 4 if antialiased else 1, encoding) == expected


def test_runs_written_out_by_hand() -> None:
    """A bar of 3 columns, 17 pixels of ground before it; the same row again; an empty one."""
    bar = 0b111 << 17
    blob = packed(Glyph(0, 0, 20, 3, 0, (bar, bar, 0)), "runs")
    # 4: three halves follow; 15 + 2 of ground, 3 of ink; 0: the same; 1: nothing follows
    assert [half for byte in blob for half in (byte & 15, byte >> 4)] == [4, 15, 2, 3, 0, 1]
    # One row is as the one before: its bit is set; 9 bits a row, the last one first.
    blob = packed(Glyph(0, 0, 9, 3, 0, (1, 1, 256)), "repeats")
    assert blob == bytes([0b010, 1, 0, 0b10])
    levels = bytes([0, 0, 7, 15, 15, 0])
    blob = packed(Glyph(0, 0, 6, 1, 0, (0b011100,), levels), "runs")
    # 6: five halves; ground and 1 more, 7, ink and 1 more
    assert [half for byte in blob for half in (byte & 15, byte >> 4)] == [6, 0, 1, 7, 15, 1]


@pytest.mark.parametrize("encoding", FORMS)
def test_a_bitmap_cut_short_is_told(encoding: Encoding) -> None:
    glyph = Glyph(0, 0, 9, 9, 9, tuple(range(101, 110)))
    with pytest.raises(IndexError):
        pixels(packed(glyph, encoding)[:-1], 9, 9, 1, encoding)


def test_each_set_gets_what_makes_the_whole_smallest() -> None:
    noise = [Glyph(0, 0, 8, 8, 8, tuple((n * 37 + row * 91) % 256 for row in range(8))) for n in range(60)]
    slabs = [
        Glyph(0, 0, 48, 60, 50, tuple((1 << 30 + n) - 1 << row % 9 for row in range(60))) for n in range(9)
    ]
    assert cheapest({"small": noise, "large": slabs}) == {"small": "rows", "large": "runs"}
    assert cheapest({"small": noise}) == {"small": "rows"}
    assert cheapest({"large": slabs}) == {"large": "runs"}
    bars = [Glyph(0, 0, 9, 16, 9, (n * 37 % 509,) * 7 + (n * 91 % 511,) * 9) for n in range(1, 60)]
    assert cheapest({"small": noise, "bars": bars}) == {"small": "rows", "bars": "repeats"}
    # One little slab is not worth the code that reads runs.
    assert cheapest({"small": noise, "large": slabs[:1]})["small"] == "rows"
    assert cheapest({}) == {}
