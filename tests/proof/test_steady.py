"""flickers and too-fast: one made layout that has just that finding, and one a value away that has it not."""

from __future__ import annotations

from typing import Any

import pytest
from msgspec.structs import replace
from tests.proof.test_verdict import judge, layout

from panelproof.content.spec import Choice, Content, WholeRange
from panelproof.layout.document import Layout
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field, Icon, IconState
from panelproof.proof.mending import changed

COUNT = Content("%02d", (WholeRange(0, 99),), fault="--")
WORDS = Content("%s", (Choice(("filling", "resting")),))


def field(**changes: Any) -> Field:
    base = Field("level", COUNT, "plain", "white", 40, 30, padding=(38, 12, 60, 24))
    return replace(base, **changes)


def found(made: Layout) -> list[tuple[str, str]]:
    return [(one.rule, one.level) for one in judge(made).findings]


@pytest.mark.parametrize(
    ("period", "level"),
    # Three flashes a second are the most that WCAG 2.2, 2.3.1 lets pass; one a second is common practice.
    [(333, "caution"), (334, "caution"), (999, "caution"), (1000, "note"), (None, "note")],
)
def test_clearing_by_box_flickers(period: int | None, level: str) -> None:
    part = field(content=WORDS, clearing="box", period_ms=period)
    assert found(layout(part)) == [("flickers", level)]
    (one,) = judge(layout(part)).findings
    assert ("2.3.1" in one.message) == (period == 333)
    assert found(layout(replace(part, clearing="pad"))) == []
    assert one.remedy is not None
    assert found(changed(layout(part), "main", one.remedy.changes)) == []


def test_nothing_flickers_where_frames_are_composed() -> None:
    part = field(content=WORDS, clearing="box", period_ms=100)
    made = layout(part, panel=Panel(120, 60, refresh="whole"))
    assert [rule for rule, _ in found(made)] == ["stale"], "the note that nothing can go stale"


def test_an_icon_that_never_changes_does_not_flicker() -> None:
    states = (IconState("on", ("##", "##")), IconState("off", ("#.", ".#")))
    icon = Icon("pump", 5, 5, "white", states, clearing="box", period_ms=500)
    assert ("flickers", "caution") in found(layout(icon))
    assert "flickers" not in [rule for rule, _ in found(layout(replace(icon, states=states[:1])))]


def test_a_number_renewed_oftener_than_twice_a_second() -> None:
    # From memory: MIL-STD-1472 on counters: no faster than two a second.
    assert found(layout(field(period_ms=500))) == []
    assert found(layout(field(period_ms=499))) == [("too-fast", "caution")]
    assert found(layout(field(period_ms=499, content=WORDS))) == [], "not a number"
