"""no-fault-text, unshown, link-states and sensor-range: one layout with just that finding, one a value away."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from tests.proof.test_verdict import judge, layout

from panelproof.content.build import graph
from panelproof.content.spec import Choice, Content, FreeText, RealRange, WholeRange
from panelproof.layout.checking import problems
from panelproof.layout.document import Layout, Moment, Screen
from panelproof.layout.parts import Field, Icon, IconState, Label
from panelproof.proof.mending import changed


def field(content: Content, **changes: Any) -> Field:
    return replace(Field("level", content, "plain", "white", 10, 30, padding=(0, 10, 120, 30)), **changes)


def found(made: Layout) -> list[tuple[str, str]]:
    return [(one.rule, one.level) for one in judge(made).findings]


class TestNoFaultText:
    def test_a_number_without_one(self) -> None:
        bare = Content("%03d", (WholeRange(0, 999),))
        assert found(layout(field(bare))) == [("no-fault-text", "caution")]
        assert found(layout(field(replace(bare, fault="--")))) == []
        assert found(layout(field(Content("%s", (Choice(("low", "high")),))))) == []
        assert found(layout(field(Content("%s", (FreeText(6, characters="abc"),))))) == []

    def test_the_text_proposed_is_another_than_those_there_are(self) -> None:
        for first, proposed in ((None, "--"), ("--", "-")):
            made = layout(field(Content("%03d", (WholeRange(0, 999),), first=first)))
            (one,) = judge(made).findings
            assert one.remedy is not None
            after = changed(made, "main", one.remedy.changes)
            part = after.screens[0].parts[0]
            assert isinstance(part, Field)
            assert part.content.fault == proposed
            assert found(after) == []


class TestUnshown:
    def made(self, *moments: str) -> Layout:
        label = Label("name", "Tank", "plain", "white", 5, 30)
        screens = tuple(Screen(name, "black", (label,)) for name in ("main", "menu"))
        return layout(screens=screens, moments=tuple(Moment(name, name) for name in moments))

    def test_a_screen_that_no_moment_shows(self) -> None:
        assert found(self.made("main")) == [("unshown", "caution")]
        (one,) = judge(self.made("main")).findings
        assert (one.screen, one.part) == ("menu", "")
        assert found(self.made("main", "menu")) == []

    def test_where_no_moment_is_named_none_is_missed(self) -> None:
        assert found(self.made()) == []

    def test_an_empty_screen_shows_nothing_to_look_at(self) -> None:
        made = self.made("main")
        assert found(replace(made, screens=(made.screens[0], Screen("menu", "black")))) == []


class TestLinkStates:
    ROWS = (
        ("up", ("#####", "#...#", "#...#", "#...#", "#####")),
        ("trying-1", ("..#..", "..#..", "..#..", "..#..", "..#..")),
        ("fault", ("#...#", ".#.#.", "..#..", ".#.#.", "#...#")),
        ("faulty", (".....", "#####", ".....", ".....", ".....")),
    )

    def made(self, *names: str, link: bool = True) -> Layout:
        states = tuple(IconState(name, rows) for name, rows in self.ROWS if name in names)
        return layout(Icon("radio", 5, 5, "white", states, link=link))

    def rules(self, made: Layout) -> list[str]:
        return [rule for rule, _ in found(made) if rule == "link-states"]

    def test_a_link_needs_both(self) -> None:
        assert self.rules(self.made("up", "trying-1", "fault")) == []
        assert self.rules(self.made("up", link=False)) == []
        for names, words in (
            (("up", "trying-1"), "no state for having failed"),
            (("up", "fault"), "no state for being on its way up"),
            (("up",), "no state for being on its way up and having failed"),
            (("up", "trying-1", "faulty"), "no state for having failed"),
        ):
            made = self.made(*names)
            (one,) = (one for one in judge(made).findings if one.rule == "link-states")
            assert one.level == "caution"
            assert words in one.message


class TestSensorRange:
    @pytest.mark.parametrize(
        ("content", "lacking"),
        [
            (Content("%03d", (WholeRange(0, 99, sensor=(0, 99)),)), []),
            (Content("%03d", (WholeRange(0, 99, sensor=(0, 100)),)), ["100"]),
            (Content("%+04d", (WholeRange(0, 99, sensor=(-1, 99)),)), ["-001"]),
            (Content("%+04d", (WholeRange(-9, 99, sensor=(-40, 125)),)), ["+100", "-010"]),
            (Content("%03d", (WholeRange(0, 99, 5, sensor=(0, 500)),)), ["100"]),
            (Content("%05.1f", (WholeRange(0, 99, sensor=(0, 120)),)), ["100.0"]),
            (Content("%05.1f", (RealRange(0.0, 99.9, sensor=(0.0, 99.9)),)), []),
            (Content("%05.1f", (RealRange(0.0, 99.9, sensor=(0.0, 100.0)),)), ["100.0"]),
            # 99.94 is shown as 99.9 too, but the header's guard lets no number over 99.9 pass.
            (Content("%05.1f", (RealRange(0.0, 99.9, sensor=(0.0, 99.94)),)), [""]),
        ],
    )
    def test_the_first_text_that_cannot_be_shown(self, content: Content, lacking: list[str]) -> None:
        made = layout(field(replace(content, fault="?")))
        about = [one for one in judge(made).findings if one.rule == "sensor-range"]
        assert [one.texts for one in about] == [(text,) if text else () for text in lacking]
        assert {one.level for one in about} <= {"caution"}
        for text in filter(None, lacking):
            assert not graph(content).accepts(text)

    @settings(max_examples=60, deadline=None)
    @given(
        st.integers(-50, 50),
        st.integers(0, 100),
        st.integers(1, 7),
        st.integers(-90, 90),
        st.integers(0, 150),
    )
    def test_the_wider_range_holds_what_was_lacking(
        self, least: int, more: int, step: int, low: int, span: int
    ) -> None:
        argument = WholeRange(least, least + more, step, sensor=(low, low + span))
        made = layout(field(Content("%d", (argument,), fault="?")))
        about = [one for one in judge(made).findings if one.rule == "sensor-range"]
        last = least + more - more % step
        assert bool(about) == (low < least or low + span > argument.greatest)
        if about:
            assert about[0].remedy is not None
            after = changed(made, "main", about[0].remedy.changes)
            part = after.screens[0].parts[0]
            assert isinstance(part, Field)
            assert [one for one in judge(after).findings if one.rule == "sensor-range"] == []
            held = graph(part.content)
            assert all(held.accepts(str(value)) for value in range(least, last + 1, step)), (
                "on the same steps"
            )

    def test_a_sensor_from_greater_to_less_is_told(self) -> None:
        (problem,) = problems(layout(field(Content("%d", (WholeRange(0, 9, sensor=(9, 0)),)))))
        assert problem.place == "screens[0].parts[0].content.arguments[0].sensor"
        assert "exchange" in problem.message
