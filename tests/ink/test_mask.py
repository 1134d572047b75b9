"""Masks against plain sets of pixels."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from panelproof.ink.mask import Mask, from_rows, rectangle, union

Pixels = frozenset[tuple[int, int]]


@st.composite
def masks(draw: st.DrawFn) -> Mask:
    x, y = draw(st.integers(-9, 9)), draw(st.integers(-9, 9))
    width, height = draw(st.integers(0, 12)), draw(st.integers(0, 12))
    return Mask(x, y, width, height, draw(st.integers(0, (1 << width * height) - 1)))


def pixels(mask: Mask) -> Pixels:
    """Every member, asked one by one."""
    return frozenset(
        (mask.x + column, mask.y + row)
        for row in range(mask.height)
        for column in range(mask.width)
        if mask.bits >> (row * mask.width + column) & 1
    )


@given(masks(), masks())
def test_set_operations(one: Mask, other: Mask) -> None:
    assert pixels(one | other) == pixels(one) | pixels(other)
    assert pixels(one & other) == pixels(one) & pixels(other)
    assert pixels(one - other) == pixels(one) - pixels(other)
    assert one.same_pixels(other) == (pixels(one) == pixels(other))


@given(masks(), st.integers(-20, 20), st.integers(-20, 20), st.integers(0, 30), st.integers(0, 30))
def test_framed_keeps_what_lies_inside(mask: Mask, x: int, y: int, width: int, height: int) -> None:
    inside = {(px, py) for px, py in pixels(mask) if x <= px < x + width and y <= py < y + height}
    framed = mask.framed(x, y, width, height)
    assert framed.frame == (x, y, width, height)
    assert pixels(framed) == inside


@given(masks(), st.integers(-20, 20), st.integers(-20, 20))
def test_moved_counted_listed(mask: Mask, dx: int, dy: int) -> None:
    assert pixels(mask.moved(dx, dy)) == {(x + dx, y + dy) for x, y in pixels(mask)}
    assert mask.count() == len(pixels(mask))
    assert list(mask.pixels()) == sorted(pixels(mask), key=lambda pixel: (pixel[1], pixel[0]))
    assert all(pixel in mask for pixel in pixels(mask))
    assert (mask.x - 1, mask.y) not in mask
    assert bool(mask) == bool(pixels(mask))


@given(masks())
def test_bounds_are_the_smallest_rectangle(mask: Mask) -> None:
    held = pixels(mask)
    if held:
        left, top = min(x for x, _ in held), min(y for _, y in held)
        right, bottom = max(x for x, _ in held), max(y for _, y in held)
        assert mask.bounds() == (left, top, right - left + 1, bottom - top + 1)
    else:
        assert mask.bounds()[2:] == (0, 0)


@given(masks(), masks(), masks())
def test_union_in_a_frame(one: Mask, two: Mask, frame: Mask) -> None:
    whole = pixels(rectangle(*frame.frame))
    assert pixels(union((one, two), frame.frame)) == (pixels(one) | pixels(two)) & whole


@given(st.lists(st.integers(0, 255), max_size=70))
def test_rows_there_and_back(rows: list[int]) -> None:
    assert from_rows(3, 4, 8, rows).rows() == rows


def test_rectangle_of_nothing() -> None:
    assert pixels(rectangle(0, 0, -3, 5)) == frozenset()
