"""Findings chosen and mended, in the steps of a user."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from msgspec.structs import replace
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot
from tests.window.answers import cramped, tank, written

from panelproof.editor import edits, theme
from panelproof.editor.applying import apply, has_remedy
from panelproof.editor.findingrows import FINDING_ROLE, apply_area, spoken
from panelproof.editor.findings import CLEAN, NOTHING, FindingsView
from panelproof.editor.hub import Hub
from panelproof.editor.window import MainWindow
from panelproof.layout.document import Layout
from panelproof.layout.parts import Box, Field, Part
from panelproof.material import gather
from panelproof.problem import Problem
from panelproof.proof.check import prove
from panelproof.proof.finding import Change, Finding, Remedy

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
Open = Callable[[Layout], tuple[Hub, FindingsView]]


def changed(layout: Layout, **values: object) -> Layout:
    """The layout with the field `level` changed."""
    part = next(part for part in layout.screens[0].parts if part.name == "level")
    return edits.set_part(layout, "main", "level", replace(part, **values))


def with_part(layout: Layout, part: Part) -> Layout:
    screen = layout.screens[0]
    return replace(layout, screens=(replace(screen, parts=(*screen.parts, part)), *layout.screens[1:]))


@pytest.fixture
def opened(qtbot: QtBot) -> Iterator[Open]:
    """Show the findings of a layout."""
    theme.apply()
    hubs: list[Hub] = []

    def show(layout: Layout) -> tuple[Hub, FindingsView]:
        hub = Hub(layout, Path())
        hubs.append(hub)
        view = FindingsView(hub)
        qtbot.addWidget(view)
        view.resize(560, 260)
        view.show()
        qtbot.waitUntil(lambda: hub.findings_current)
        return hub, view

    yield show
    for hub in hubs:
        hub.shut()


# -- what is listed ----------------------------------------------------------------------------------------


def test_findings_are_listed_most_serious_first_as_the_proof_has_them(opened: Open) -> None:
    layout = replace(cramped(), panel=replace(cramped().panel, refresh="whole"))
    hub, view = opened(layout)
    assert view.model.findings == prove(hub.material)
    levels = [finding.level for finding in view.model.findings]
    assert levels == sorted(levels, key=("fault", "caution", "note").index)
    assert set(levels) >= {"fault", "note"}
    first = view.model.index(0)
    assert first.data(FINDING_ROLE) == hub.findings[0]
    heard = first.data(Qt.ItemDataRole.AccessibleTextRole)
    assert heard.startswith("fault, main › level: `100.0 %` reaches beyond the padding box")
    assert "Remedy: padding width 60" in heard
    assert "1 fault" in view.summary.text()
    assert "1 note" in view.summary.text()


def test_where_nothing_is_wrong_it_says_what_was_proved(opened: Open) -> None:
    _, view = opened(tank())
    assert view.model.rowCount() == 0
    sign, words, quiet = view.list.empty
    assert (sign, words) == ("good", CLEAN)
    # 0.0 … 100.0 in tenths are 1001 texts, "-0.0" is not among them, and the fault text is one more.
    assert quiet == "1 002 texts proved"
    assert view.summary.text() == ""
    assert not view.remedy.isEnabled()


def test_where_nothing_stands_nothing_is_called_proved(opened: Open) -> None:
    screen = replace(tank().screens[0], parts=())
    _, view = opened(replace(tank(), screens=(screen,), moments=()))
    assert view.list.empty == ("note", NOTHING, "")


def test_a_stale_list_is_marked_and_a_current_one_is_not(opened: Open, qtbot: QtBot) -> None:
    hub, view = opened(cramped())
    before = view.model.findings
    part = hub.part("level")
    assert isinstance(part, Field)
    content = replace(part.content, also=("overflow",))
    assert hub.apply("also", changed(hub.layout, content=content)) is None
    assert not hub.findings_current
    assert view.model.findings == before, "the list stays to be read"
    assert "being proved again" in view.summary.text()
    assert view._delegate.faint
    assert view.progress.isVisible()
    assert view.stop.isVisible()
    told: list[str] = []
    hub.told.connect(told.append)
    held = hub.layout
    view.apply_remedy(view.model.findings[0])
    assert "earlier layout" in told[0]
    assert hub.layout == held, "the remedy of an earlier layout may not fit this one"
    qtbot.waitUntil(lambda: hub.findings_current)
    assert "being proved" not in view.summary.text()
    assert not view._delegate.faint
    assert not view.progress.isVisible()
    assert not view.stop.isVisible()
    assert "1 003 texts proved" in view.summary.text()


def test_a_proof_can_be_stopped_and_begun_again(opened: Open, qtbot: QtBot) -> None:
    hub, view = opened(tank())
    part = hub.part("level")
    assert isinstance(part, Field)
    content = replace(part.content, also=("another",))
    # Stopped before the thread has had a chance: the events that start it are still waiting.
    hub.apply("also", changed(hub.layout, content=content))
    view.stop.click()
    assert not hub.proof_running
    assert "not proved" in view.summary.text()
    assert not view.stop.isVisible()
    assert view.again.isVisible()
    assert view.list.empty[0] == "pending"
    if not hub.findings_current:
        view.again.click()
    qtbot.waitUntil(lambda: hub.findings_current)
    assert not view.again.isVisible()


def test_rows_are_as_high_as_their_words_need(opened: Open) -> None:
    _, view = opened(cramped())
    wide = view.list.visualRect(view.model.index(0)).height()
    view.resize(300, 260)
    QTest.qWait(50)
    assert view.list.visualRect(view.model.index(0)).height() > wide


# -- choosing ----------------------------------------------------------------------------------------------


def test_choosing_a_finding_asks_to_show_it_and_a_second_press_again(opened: Open) -> None:
    hub, view = opened(cramped())
    seen: list[Finding] = []
    view.shown.connect(seen.append)
    point = view.list.visualRect(view.model.index(0)).topLeft() + QPoint(60, 14)
    QTest.mouseClick(view.list.viewport(), LEFT, NONE, point)
    assert seen == [hub.findings[0]]
    QTest.mouseClick(view.list.viewport(), LEFT, NONE, point)
    assert seen == [hub.findings[0]] * 2
    QTest.keyClick(view.list, Qt.Key.Key_Return)
    assert seen == [hub.findings[0]] * 3


def test_a_finding_that_is_gone_is_let_go(opened: Open) -> None:
    hub, view = opened(cramped())
    gone: list[bool] = []
    view.cleared.connect(lambda: gone.append(True))
    view.list.setCurrentIndex(view.model.index(0))
    assert hub.apply("mend", tank()) is None
    assert gone == [True]
    assert view.chosen() is None


def test_the_chosen_finding_stays_chosen_while_others_come(opened: Open) -> None:
    hub, view = opened(cramped())
    view.list.setCurrentIndex(view.model.index(0))
    chosen = view.chosen()
    outside = Box("edge", 230, 2, 20, 4, outline="white")
    assert hub.apply("more", with_part(hub.layout, outside)) is None
    assert len(hub.findings) > 1
    assert view.chosen() == chosen


def test_in_the_window_a_chosen_finding_is_on_the_glass(window: MainWindow, tmp_path: Path) -> None:
    layout, _ = edits.add_screen(cramped(), "menu")
    assert window.open(written(tmp_path / "tank.panel.json", layout))
    hub, bench = window.hub, window.bench
    assert hub is not None
    assert bench is not None
    QTest.qWait(100)
    hub.show_screen("menu")
    window.menus.actions["next_finding"].trigger()
    assert hub.screen is not None
    assert hub.screen.name == "main"
    assert hub.selection == {"level"}
    assert bench.glass.finding == hub.findings[0]
    window.menus.actions["remedy"].trigger()
    assert bench.glass.finding is None
    assert not [finding for finding in hub.findings if finding.level == "fault"]


def test_a_finding_chosen_while_it_is_proved_again_leaves_the_glass_when_it_is_gone(
    window: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    assert window.open(written(tmp_path / "tank.panel.json", cramped()))
    hub, bench = window.hub, window.bench
    assert hub is not None
    assert bench is not None
    qtbot.waitUntil(lambda: hub.findings_current)
    part = hub.part("level")
    assert isinstance(part, Field)
    content = replace(part.content, also=("a text that was never proved",))
    wide = changed(tank(), content=content, padding=(0, 60, 240, 75), type="text")
    assert hub.apply("wider, and another text", wide) is None
    assert not hub.findings_current
    bench.findings.list.setCurrentIndex(bench.findings.model.index(0))
    gone = bench.glass.finding
    assert gone is not None
    qtbot.waitUntil(lambda: hub.findings_current)
    assert gone not in hub.findings
    assert bench.glass.finding is None


# -- remedies ----------------------------------------------------------------------------------------------


def test_one_press_applies_the_remedy_and_undo_takes_it_back(opened: Open) -> None:
    hub, view = opened(cramped())
    area = apply_area(view.list.visualRect(view.model.index(0)))
    QTest.mouseClick(view.list.viewport(), LEFT, NONE, area.center())
    assert [finding for finding in hub.findings if finding.level == "fault"] == []
    assert hub.history.undo_title.startswith("remedy: padding width 60")
    assert view.list.empty[1] == CLEAN
    hub.undo()
    assert hub.layout == cramped()
    assert hub.findings[0].level == "fault"


@pytest.mark.parametrize("way", ["button", "ctrl+enter"])
def test_the_chosen_findings_remedy_is_applied_by_the_keyboard(opened: Open, way: str) -> None:
    hub, view = opened(cramped())
    view.list.setCurrentIndex(view.model.index(0))
    assert view.remedy.isEnabled()
    if way == "button":
        QTest.keyClick(view.remedy, Qt.Key.Key_Space)
    else:
        QTest.keyClick(view.list, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert not hub.findings


def broken() -> dict[str, Layout]:
    """Layouts each of which breaks one rule that has a remedy."""
    base = tank()
    field = next(part for part in base.screens[0].parts if isinstance(part, Field))
    behind = Box("behind", 0, 60, 240, 75, fill="amber")
    second, _ = edits.add_screen(base, "menu")
    dirty = tuple(
        replace(screen, clears=False) if screen.name == "menu" else screen for screen in second.screens
    )
    return {
        "padding": cramped(),
        "stale": changed(base, clearing="cell", padding=None, content=replace(field.content, format="%.1f")),
        "outside": with_part(base, Box("edge", 232, 4, 20, 10, outline="white")),
        "buffer": changed(base, buffer=3),
        "ground": edits.set_part(base, "main", "title", replace(base.screens[0].parts[0], ground="white")),
        "fill": replace(base, screens=(replace(base.screens[0], parts=(behind, *base.screens[0].parts)),)),
        "residue": replace(second, screens=dirty),
    }


@pytest.mark.parametrize("name", sorted(broken()))
def test_every_remedy_ends_its_finding(name: str) -> None:
    layout = broken()[name]
    found = prove(gather(layout, Path()))
    mended = [finding for finding in found if has_remedy(finding)]
    assert mended, f"nothing to mend among {[finding.message for finding in found]}"
    for finding in mended:
        after = prove(gather(apply(layout, finding), Path()))
        same = [other for other in after if (other.rule, other.screen, other.part) == (
            finding.rule, finding.screen, finding.part) and other.level == finding.level]  # fmt: skip
        assert not same, f"{finding.message}; {finding.remedy}"


def test_a_finding_without_a_ready_remedy_cannot_be_applied() -> None:
    plain = Finding("collides", "fault", "main", "level", "touches")
    worded = replace_remedy(plain, Remedy("move one of them"))
    for finding in (plain, worded):
        assert not has_remedy(finding)
        with pytest.raises(Problem, match="by hand"):
            apply(tank(), finding)
    assert "Remedy: move one" in spoken(worded)


def test_a_remedy_that_came_too_late_is_told(opened: Open) -> None:
    hub, view = opened(tank())
    told: list[str] = []
    hub.told.connect(told.append)
    late = Remedy("padding", (Change("gone", "padding", [0, 0, 1, 1]),))
    view.apply_remedy(replace_remedy(Finding("fit", "fault", "main", "gone", "x"), late))
    assert "not there any more" in told[0]
    assert hub.layout == tank()


def replace_remedy(finding: Finding, remedy: Remedy) -> Finding:
    import dataclasses

    return dataclasses.replace(finding, remedy=remedy)
