"""The sheet: every moment on it, whole, in even rows."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from typing import Any

import numpy as np
import pytest
from msgspec.structs import replace
from PIL import Image
from tests.picture import tank

from panelproof.layout.document import Moment
from panelproof.layout.panel import Panel
from panelproof.material import Material
from panelproof.picture.frame import screen_frame
from panelproof.picture.image import image, png
from panelproof.picture.lettering import PAGE, line_height
from panelproof.picture.moments import every_moment, moment, moments
from panelproof.picture.sheet import AIR, GAP, MARGIN, TITLE, sheet
from panelproof.problem import Problem

Picture = np.ndarray[Any, np.dtype[np.uint8]]


def places(whole: Picture, part: Picture) -> Iterator[tuple[int, int]]:
    """Yield each (x, y) at which `part` lies in `whole`, pixel for pixel."""
    first, height = part[0].tobytes(), part.shape[0]
    for y in range(whole.shape[0] - height + 1):
        row = whole[y].tobytes()
        at = row.find(first)
        while at >= 0:
            x = at // 3
            if at % 3 == 0 and np.array_equal(whole[y : y + height, x : x + part.shape[1]], part):
                yield x, y
            at = row.find(first, at + 1)


def expected(material: Material, scale: int) -> list[Picture]:
    return [
        np.asarray(
            image(
                screen_frame(material, material.screen(one.screen), one.values), material.layout.panel, scale
            )
        )
        for one in every_moment(material)
    ]


def as_array(picture: Image.Image) -> Picture:
    return np.asarray(picture)


def test_every_moment_is_there_in_order_and_aligned() -> None:
    material = tank.tank()
    whole = as_array(sheet(material, scale=2, columns=4))
    pitch = 240 + GAP
    found = []
    for number, part in enumerate(expected(material, 2)):
        every = set(places(whole, part))
        column, row = (0, 0) if number == 0 else ((number - 1) % 4, 1 + (number - 1) // 4)
        found.append((row, {y for x, y in every if x == MARGIN + column * pitch}))
    rows = [set.intersection(*(ys for row, ys in found if row == wanted)) for wanted in range(3)]
    assert all(rows) and max(rows[0]) < min(rows[1]) and min(rows[1]) + 128 < max(rows[2])


def ink_box(whole: Picture) -> tuple[int, int, int, int]:
    inked = np.any(whole != np.array(PAGE), axis=2)
    rows, columns = np.flatnonzero(inked.any(axis=1)), np.flatnonzero(inked.any(axis=0))
    return int(columns[0]), int(rows[0]), int(columns[-1]), int(rows[-1])


@pytest.mark.parametrize(("scale", "columns"), [(None, None), (1, 1), (1, 3), (3, 2), (2, 20)])
def test_margins_are_even_and_nothing_is_cut_off(scale: int | None, columns: int | None) -> None:
    long = "a-moment-of-quite-unreasonable-length-ww"
    own = (replace(tank.MOMENTS[0], name=long), *tank.MOMENTS)
    panel = Panel(120, 64, name="a glass whose name is far longer than one line of this sheet " * 2)
    material = tank.material(replace(tank.layout(panel), moments=own))
    whole = as_array(sheet(material, scale, columns))
    left, top, right, bottom = ink_box(whole)
    # Pictures have a line around them, one pixel wide, in the margin.
    assert left == MARGIN - 1 and bottom == whole.shape[0] - MARGIN
    assert MARGIN <= top <= MARGIN + 12
    assert right <= whole.shape[1] - MARGIN
    if columns in (None, 20):
        assert right == whole.shape[1] - MARGIN


def test_long_titles_are_broken_and_stand_level_with_short_ones() -> None:
    long = replace(tank.MOMENTS[0], name="a-moment-of-quite-unreasonable-length-ww")
    material = tank.material(replace(tank.layout(Panel(120, 64)), moments=(long, tank.MOMENTS[1])))
    whole = as_array(sheet(material, 1, 2))
    inked = np.any(whole != np.array(PAGE), axis=2)
    # Between the columns is nothing, so no title reaches into its neighbour's.
    assert not inked[:, MARGIN + 132 + 1 : MARGIN + 132 + GAP - 1].any()
    ys = [
        {y for x, y in places(whole, part) if x == MARGIN + column * (132 + GAP)}
        for column, part in enumerate(expected(material, 1)[1:3])
    ]
    (y,) = ys[0] & ys[1]
    row = line_height(TITLE)
    for line, both in ((1, True), (2, False)):
        band = inked[y - AIR - line * row : y - AIR - (line - 1) * row]
        assert band[:, MARGIN : MARGIN + 132].any()
        assert band[:, MARGIN + 132 + GAP :].any() is np.bool_(both)


def test_chosen_moments_only() -> None:
    material = tank.tank()
    chosen = [moment(material, "readings:tallest")]
    whole = as_array(sheet(material, 2, chosen=chosen))
    pictures = expected(material, 2)
    assert list(places(whole, pictures[5]))
    assert not list(places(whole, pictures[0]))
    assert whole.shape[0] < sheet(material, 2).height // 2


def test_a_sheet_without_moments_is_a_page_with_its_title() -> None:
    material = tank.material(replace(tank.layout(), screens=(), moments=()))
    whole = as_array(sheet(material))
    assert whole.shape[1] == 300 + 2 * MARGIN and np.any(whole != np.array(PAGE))


def test_a_moment_that_cannot_be_shown_is_told() -> None:
    bad = Moment("bad", "readings", {"level": "high"}, {})
    material = dataclasses.replace(tank.tank(), layout=replace(tank.layout(), moments=(bad,)))
    with pytest.raises(Problem) as caught:
        sheet(material)
    assert caught.value.place == "moments[0].fields.level"


def test_the_same_sheet_gives_the_same_bytes() -> None:
    material = tank.tank()
    assert png(sheet(material)) == png(sheet(material))
    assert len(moments(material, material.screen("readings"))) == 7
