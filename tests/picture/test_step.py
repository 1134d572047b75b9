"""The step from one moment to the next, against sets of pixels from `naive`."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from tests.picture import naive, tank

from panelproof.content.spec import Content, WholeRange
from panelproof.layout.document import Screen
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field, Icon, Label
from panelproof.material import Material
from panelproof.picture.frame import new_frame, screen_frame
from panelproof.picture.moments import moment
from panelproof.picture.step import step
from panelproof.picture.values import Values

values = st.builds(
    lambda level, flow, mode, link, valve: Values(
        {"level": level, "flow": flow, "mode": mode}, {"link": link, "valve": valve}
    ),
    st.sampled_from(["0.0", "9.9", "10.0", "250.0", "---", "..."]),
    st.sampled_from(["-1 l/h", "0 l/h", "80 l/h", "900 l/h", "no flow"]),
    st.sampled_from(["filling", "resting", "Overflow"]),
    st.sampled_from(["on", "off", "fault"]),
    st.sampled_from(["shut", "open"]),
)


def inked(material: Material, part: Field | Icon, value: str) -> set[naive.Pixel]:
    if isinstance(part, Icon):
        levels, clip = naive.icon_levels(part, value)[0], part.padding
    else:
        levels, clip = naive.text_levels(material, part, value)[0], part.padding
    return {p for p in levels if naive.inside(p, clip) and naive.inside(p, (0, 0, 120, 64))}


@settings(max_examples=25, deadline=None)
@given(first=values, second=values)
def test_each_update_erases_writes_and_leaves(first: Values, second: Values) -> None:
    material = tank.tank()
    screen = material.screen("readings")
    made = step(material, screen, first, second)

    def picture_of(shown: Values) -> naive.Picture:
        picture = dict.fromkeys(naive.everywhere(material), naive.code(material, "night"))
        for part in screen.parts:
            value = shown.of(part.name) if isinstance(part, Field | Icon) else getattr(part, "text", "")
            naive.paint(material, screen, part, value, picture)
        return picture

    picture = picture_of(first)
    left_behind: set[naive.Pixel] = set()
    assert made.start == screen_frame(material, screen, first)
    updates = iter(made.updates)
    previous = made.start
    for part in screen.parts:
        if not isinstance(part, Field | Icon) or first.of(part.name) == second.of(part.name):
            continue
        update = next(updates)
        old, new = first.of(part.name), second.of(part.name)
        assert (update.part, update.old, update.new) == (part.name, old, new)
        assert update.kind == ("field" if isinstance(part, Field) else "icon")
        painted = naive.paint(material, screen, part, new, picture)
        was, now = inked(material, part, old), inked(material, part, new)
        assert set(update.written.pixels()) == now
        assert set(update.stale.pixels()) == was - painted
        assert set(update.erased.pixels()) == (was & painted) - now
        assert update.before is previous
        assert {(x, y): int(update.after.codes[y, x]) for x, y in picture} == picture
        left_behind = (left_behind - painted) | (was - painted)
        previous = update.after
    assert next(updates, None) is None
    assert made.end == previous
    assert set(made.stale.pixels()) == left_behind
    fresh = picture_of(second)
    assert set(made.differs.pixels()) == {p for p in picture if picture[p] != fresh[p]}


def test_a_shorter_text_leaves_a_ghost_and_a_padding_wipes_a_neighbour() -> None:
    """`9.9` over `10.0`, and a padding box that reaches over the unit's label."""
    content = Content("%d", (WholeRange(0, 1000),))
    ghost = Field("ghost", content, "small", "chalk", 4, 20, "left", None, "cell")
    wiping = Field("wiping", content, "small", "chalk", 4, 50, "left", None, "pad", (4, 38, 60, 16))
    unit = Label("unit", "cm", "small", "chalk", 50, 50)
    screen = Screen("both", "night", (ghost, unit, wiping))
    material = tank.material(replace(tank.layout(), screens=(screen,), moments=()))
    drawn = Screen("both", "night", (ghost, wiping, unit))
    made = step(
        material, drawn, Values({"ghost": "1000", "wiping": "7"}), Values({"ghost": "1", "wiping": "8"})
    )
    first, second = made.updates
    assert first.stale.count() > 20 and not second.stale
    assert made.stale.same_pixels(first.stale)
    wiped = {p for p in made.differs.pixels() if naive.inside(p, (50, 38, 14, 16))}
    assert wiped and all(made.end.codes[y, x] == 0 for x, y in wiped)
    assert set(made.differs.pixels()) - wiped == set(first.stale.pixels())


def test_a_ghost_that_a_later_update_covers_is_gone_in_the_end() -> None:
    content = Content("%d", (WholeRange(0, 1000),))
    ghost = Field("ghost", content, "small", "chalk", 4, 20, "left", None, "cell")
    over = Field("over", content, "small", "water", 100, 20, "right", None, "pad", (12, 6, 90, 20))
    screen = Screen("both", "night", (ghost, over))
    material = tank.material(replace(tank.layout(), screens=(screen,), moments=()))
    made = step(material, screen, Values({"ghost": "1000", "over": "7"}), Values({"ghost": "1", "over": "8"}))
    assert made.updates[0].stale.count() > 20
    assert set(made.stale.pixels()) == {p for p in made.updates[0].stale.pixels() if p[0] < 12}
    assert len(set(made.stale.pixels())) < made.updates[0].stale.count()


def test_whole_frames_leave_nothing_behind() -> None:
    material = tank.material(tank.layout(Panel(120, 64, refresh="whole")))
    screen = material.screen("readings")
    first, second = moment(material, "half-full").values, moment(material, "sensor-lost").values
    made = step(material, screen, first, second)
    (update,) = made.updates
    assert (update.kind, update.part, update.old, update.new) == ("screen", "", "", "")
    assert not update.stale and not made.stale and not made.differs
    assert made.end == screen_frame(material, screen, second) and update.before == made.start
    changed = [part for part in screen.parts if isinstance(part, Field | Icon)]
    was = set().union(*(inked(material, part, first.of(part.name)) for part in changed))
    now = set().union(*(inked(material, part, second.of(part.name)) for part in changed))
    assert set(update.written.pixels()) == now and set(update.erased.pixels()) == was - now


@pytest.mark.parametrize("refresh", ["part", "whole"])
def test_no_change_is_no_update(refresh: str) -> None:
    panel = Panel(120, 64, refresh=refresh)  # type: ignore[arg-type]
    material = tank.material(tank.layout(panel))
    screen, shown = material.screen("readings"), moment(material, "half-full").values
    made = step(material, screen, shown, shown)
    assert made.updates == () and made.start == made.end and not made.differs


def test_a_step_can_begin_with_what_is_on_the_glass() -> None:
    material = tank.tank()
    screen, shown = material.screen("readings"), moment(material, "half-full").values
    glass = new_frame(material.layout.panel, 0x07E0)
    made = step(material, screen, shown, moment(material, "sensor-lost").values, glass)
    assert np.all(glass.codes == 0x07E0) and np.all(made.start.codes == 0x07E0)
    assert made.end.codes[0, 0] == 0x07E0 and (0, 0) in made.differs
