from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from panelproof.editor.places import Place
from panelproof.editor.snapping import Guide, snap, snap_sides

PANEL = (200, 100)
coordinate = st.integers(-20, 220)
length = st.integers(1, 60)
places = st.builds(
    lambda x, y, width, height, baseline: Place((x, y, width, height), baseline),
    *(coordinate, coordinate, length, length, st.one_of(st.none(), coordinate)),
)


def test_a_part_near_an_edge_of_another_is_drawn_to_it() -> None:
    found = snap(Place((52, 33, 10, 7)), [Place((50, 60, 21, 9))], PANEL, 3)
    assert (found.dx, found.dy) == (-2, 0)
    assert Guide("x", 50, 33, 69, "edge") in found.guides


def test_a_part_out_of_reach_is_left_alone() -> None:
    found = snap(Place((55, 33, 10, 7)), [Place((50, 60, 41, 9))], PANEL, 3)
    assert (found.dx, found.dy, found.guides) == (0, 0, ())


def test_parts_can_stand_side_by_side() -> None:
    assert snap(Place((29, 33, 20, 7)), [Place((50, 60, 91, 9))], PANEL, 2).dx == 1


def test_middles_go_to_middles() -> None:
    found = snap(Place((94, 33, 10, 7)), [], PANEL, 2)
    assert (found.dx, found.guides) == (1, (Guide("x", 100, 0, 100, "middle"),))


def test_a_middle_never_goes_to_an_edge() -> None:
    assert snap(Place((46, 33, 10, 7)), [Place((50, 60, 91, 9))], PANEL, 2).dx == 0


def test_baselines_go_before_edges_that_are_as_near() -> None:
    moving = Place((10, 30, 20, 12), 40)
    beside = Place((60, 20, 20, 24), 38)  # its baseline 2 above, its lower edge 2 below
    found = snap(moving, [beside], PANEL, 3)
    assert found.dy == -2
    assert Guide("y", 38, 10, 80, "baseline") in found.guides


def test_the_panel_has_edges_too() -> None:
    found = snap(Place((188, 2, 10, 7)), [], PANEL, 3)
    assert (found.dx, found.dy) == (2, -2)


def test_lines_that_hold_anyway_are_shown_without_reach() -> None:
    found = snap(Place((50, 33, 10, 7)), [Place((50, 60, 21, 9))], PANEL, 0)
    assert (found.dx, found.dy) == (0, 0)
    assert [guide.at for guide in found.guides] == [50]


@given(places, st.lists(places, max_size=6), st.integers(0, 8))
def test_the_shift_stays_within_reach_and_every_line_shown_holds(
    moving: Place, others: list[Place], reach: int
) -> None:
    found = snap(moving, others, PANEL, reach)
    assert abs(found.dx) <= reach
    assert abs(found.dy) <= reach
    x, y, width, height = moving.area
    x, y = x + found.dx, y + found.dy
    for guide in found.guides:
        start, size = (x, width) if guide.axis == "x" else (y, height)
        # The middle of an odd length in an even one lies half a pixel before the other's.
        mine: dict[str, set[float]] = {
            "edge": {start, start + size},
            "middle": {start + size / 2, start + size / 2 + 0.5},
        }
        baseline: set[float] = set() if moving.baseline is None else {moving.baseline + found.dy}
        assert guide.at in mine.get(guide.kind, baseline)


@given(places, st.lists(places, max_size=4), st.integers(1, 8))
def test_snapping_twice_moves_nothing_the_second_time(moving: Place, others: list[Place], reach: int) -> None:
    first = snap(moving, others, PANEL, reach)
    x, y, width, height = moving.area
    baseline = None if moving.baseline is None else moving.baseline + first.dy
    again = snap(Place((x + first.dx, y + first.dy, width, height), baseline), others, PANEL, reach)
    assert (again.dx, again.dy) == (0, 0)


def test_a_side_is_drawn_to_an_edge_and_the_others_stay() -> None:
    area, guides = snap_sides((10, 10, 38, 20), ["right"], [Place((50, 40, 9, 9))], PANEL, 3)
    assert area == (10, 10, 40, 20)
    assert guides == (Guide("x", 50, 10, 49, "edge"),)


def test_a_corner_is_drawn_both_ways() -> None:
    area, _ = snap_sides((10, 10, 38, 28), ["right", "bottom"], [Place((50, 40, 9, 9))], PANEL, 3)
    assert area == (10, 10, 40, 30)


@given(
    st.tuples(coordinate, coordinate, length, length),
    st.sampled_from([["left"], ["top", "right"], ["bottom", "left"]]),
    st.lists(places, max_size=5),
)
def test_a_side_never_passes_the_one_opposite(
    area: tuple[int, int, int, int], sides: list[str], others: list[Place]
) -> None:
    found, _ = snap_sides(area, sides, others, PANEL, 8)  # type: ignore[arg-type]
    assert found[2] >= 1
    assert found[3] >= 1
    if "left" not in sides:
        assert found[0] == area[0]
    if "right" not in sides:
        assert found[0] + found[2] == area[0] + area[2]
