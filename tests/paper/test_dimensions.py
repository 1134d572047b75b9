"""Numbers around a picture: apart from one another, on the page, and those of the layout."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.picture import tank

from panelproof.layout.parts import Field, Label
from panelproof.paper.dimensions import Disc, Frame, Line, Word, dimensions, spread
from panelproof.paper.facts import gather


@settings(max_examples=200, deadline=None)
@given(st.lists(st.floats(0, 500), min_size=1, max_size=30), st.floats(1, 60))
def test_spread_keeps_order_gap_and_bounds(wanted: list[float], gap: float) -> None:
    wanted.sort()
    found = spread(wanted, gap, 0, 500)
    room = min(gap, 500 / max(len(wanted) - 1, 1))
    assert len(found) == len(wanted)
    assert all(0 - 1e-6 <= one <= 500 + 1e-6 for one in found)
    assert all(b - a >= room - 1e-6 for a, b in pairwise(found))


def test_where_there_is_no_room_the_gap_is_smaller() -> None:
    found = spread([250.0] * 26, 40, 0, 500)
    assert found == [20.0 * number for number in range(26)]


@settings(max_examples=100, deadline=None)
@given(st.lists(st.integers(0, 20), min_size=1, max_size=12, unique=True))
def test_spread_leaves_alone_what_stands_apart(places: list[int]) -> None:
    wanted = sorted(place * 25.0 for place in places)
    assert spread(wanted, 25, -1000, 1000) == wanted


def test_every_coordinate_is_a_number_on_the_page() -> None:
    screen = gather(tank.tank()).screens[1]
    made = dimensions(screen.marks, (120, 64), 4, 11)
    words = {mark.text for mark in made.marks if isinstance(mark, Word)}
    for part in tank.parts():
        assert str(part.x) in words
        assert str(part.baseline if isinstance(part, Label | Field) else part.y) in words
    assert {"120 px", "64 px"} <= words
    # The level's padding box (20, 24, 56, 24) ends at column 76, row 48.
    assert {"76", "48"} <= words
    assert [mark.text for mark in made.marks if isinstance(mark, Disc)] == [
        str(number) for number in range(1, len(tank.parts()) + 1)
    ]


def test_nothing_leaves_the_page_and_numbers_do_not_cover_one_another() -> None:
    for screen in gather(tank.tank()).screens:
        for letter, scale in ((11.0, 8.0), (7.5, 2.4)):
            made = dimensions(screen.marks, (120, 64), scale, letter)
            words = [mark for mark in made.marks if isinstance(mark, Word) and not mark.turned]
            boxes = []
            for mark in made.marks:
                if isinstance(mark, Line):
                    xs, ys = (mark.x1, mark.x2), (mark.y1, mark.y2)
                elif isinstance(mark, Frame):
                    xs, ys = (mark.x, mark.x + mark.width), (mark.y, mark.y + mark.height)
                else:
                    xs, ys = (mark.x, mark.x), (mark.y, mark.y)
                assert min(xs) >= 0 and max(xs) <= made.width
                assert min(ys) >= 0 and max(ys) <= made.height
            for word in words:
                wide = 0.55 * letter * len(word.text)
                left = word.x - {"left": 0, "centre": wide / 2, "right": wide}[word.align]
                boxes.append((left, word.y - 0.75 * letter, left + wide, word.y))
                assert left >= 0 and left + wide <= made.width
            clear = [
                (one, other)
                for number, one in enumerate(boxes)
                for other in boxes[:number]
                if one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
            ]
            assert clear == []


def test_frames_are_the_padding_boxes() -> None:
    screen = gather(tank.tank()).screens[1]
    made = dimensions(screen.marks, (120, 64), 2, 10)
    frames = {
        (
            (mark.x - made.x) / 2,
            (mark.y - made.y) / 2,
            mark.width / 2,
            mark.height / 2,
        )
        for mark in made.marks
        if isinstance(mark, Frame)
    }
    assert {(20, 24, 56, 24), (68, 49, 48, 14), (0, 0, 120, 64), (4, 19, 112, 1)} <= frames
