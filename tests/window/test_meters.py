"""Meters, pictures and palettes in the window: brought in, sized, filled in, and shown."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from msgspec.structs import replace
from PIL import Image
from PySide6.QtCore import QMimeData, QUrl
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot
from tests.picture import tank
from tests.window.looking import assert_glass_shows, at_work, carry, carry_data, drag, drawn, open_glass

from panelproof.editor import edits, grasp, picturefile
from panelproof.editor.files import rebased
from panelproof.editor.glass import Glass
from panelproof.editor.hub import Hub
from panelproof.editor.replay import scenes
from panelproof.editor.sheet import Sheet
from panelproof.editor.sheet.entry import LineEntry
from panelproof.editor.sheet.meter import RangeEditor
from panelproof.editor.sheet.picture import PictureEditor
from panelproof.layout.document import Layout, Moment, Screen
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field, Meter, MeterLimit, Picture, Rule
from panelproof.problem import Problem

DEPTH = Meter("depth", 10, 30, 60, 8, 0, 2500, "water", limits=(MeterLimit(2000, "alarm"),))
LINE = Rule("line", 4, 5, 112, "water")
FLOW = next(part for part in tank.parts() if part.name == "flow")


def levels(*parts: Meter | Rule | Picture | Field) -> Layout:
    screen = Screen("levels", "night", parts or (DEPTH, LINE))
    moments = (
        Moment("half", "levels", meters={"depth": 1250}),
        Moment("lost", "levels", meters={"depth": None}),
    )
    own = moments if DEPTH in screen.parts else ()
    return replace(tank.layout(), screens=(screen,), moments=own)


@pytest.fixture
def hub(qtbot: QtBot) -> Iterator[Hub]:
    with at_work(levels(), "levels") as made:
        yield made


@pytest.fixture
def glass(hub: Hub, qtbot: QtBot) -> Glass:
    made = open_glass(hub)
    qtbot.addWidget(made)
    return made


@pytest.fixture
def sheet(hub: Hub, qtbot: QtBot) -> Sheet:
    made = Sheet(hub)
    qtbot.addWidget(made)
    made.show()
    return made


def depth(hub: Hub) -> Meter:
    part = hub.part("depth")
    assert isinstance(part, Meter)
    return part


def drop_of(folder: Path, size: tuple[int, int] = (9, 7)) -> Path:
    Image.new("RGB", size, "white").save(folder / "drop.png")
    return folder / "drop.png"


# -- edits -------------------------------------------------------------------------------------------------


def test_a_new_meter_gets_a_value_in_each_moment() -> None:
    layout = tank.layout()
    after, name = edits.add_part(layout, tank.material(layout), "readings", "meter", (60, 32))
    assert [moment.meters for moment in after.moments] == [{name: 50}, {name: 50}]
    gone = edits.delete_parts(after, "readings", [name])
    assert gone == layout


def test_another_range_keeps_what_can_be_kept() -> None:
    layout = levels()
    smaller = edits.set_part(layout, "levels", "depth", replace(DEPTH, greatest=1000, limits=()))
    assert [moment.meters["depth"] for moment in smaller.moments] == [1000, None]
    renamed = edits.rename_part(layout, "levels", "depth", "level")
    assert [moment.meters for moment in renamed.moments] == [{"level": 1250}, {"level": None}]
    over = edits.set_moment_value(layout, "half", "depth", 9000)
    kept = edits.set_part(over, "levels", "depth", replace(DEPTH, greatest=3000))
    assert kept.moments[0].meters["depth"] == 9000


def test_copies_show_the_same() -> None:
    after, (copy,) = edits.duplicate_parts(levels(), "levels", ["depth"])
    assert [moment.meters[copy] for moment in after.moments] == [1250, None]


def test_a_moment_is_named_from_what_the_glass_shows(hub: Hub) -> None:
    hub.show_moment("limit-1")
    layout, name = edits.add_moment(hub.layout, "levels", "at-limit", hub.values)
    assert next(one for one in layout.moments if one.name == name).meters == {"depth": 2000}


def test_its_inks_follow_their_names() -> None:
    layout = edits.rename_ink(levels(), "alarm", "red")
    meter = next(part for part in layout.screens[0].parts if isinstance(part, Meter))
    assert meter.limits[0].ink == "red"
    layout = edits.rename_ink(layout, "water", "blue")
    meter = next(part for part in layout.screens[0].parts if isinstance(part, Meter))
    assert meter.ink == "blue"


def test_a_picture_is_as_large_as_its_file_and_follows_its_layout(tmp_path: Path) -> None:
    drop_of(tmp_path)
    layout = levels(Picture("logo", 5, 5, "drop.png"))
    with pytest.raises(Problem, match="as large as its file"):
        edits.resize(layout, "levels", "logo", (0, 0, 5, 5))
    (tmp_path / "below").mkdir()
    moved = rebased(layout, tmp_path, tmp_path / "below")
    assert moved.screens[0].parts[0] == Picture("logo", 5, 5, "../drop.png")
    copied = edits.parts_to_clipboard(layout, "levels", ["logo"], tmp_path)
    pasted, (name,) = edits.from_clipboard(levels(), "levels", copied, folder=tmp_path / "below")
    part = next(one for one in pasted.screens[0].parts if one.name == name)
    assert isinstance(part, Picture) and part.picture == "../drop.png"


def test_a_palette_comes_with_the_format_and_goes_with_it() -> None:
    layout = tank.layout()
    indexed = edits.set_panel(layout, replace(layout.panel, colour_format="indexed"))
    assert indexed.panel.palette == tuple(ink.colour for ink in tank.INKS)
    assert all(spec.rendering == "one-bit" for spec in indexed.types)
    grey = edits.set_panel(indexed, replace(indexed.panel, colour_format="grey16"))
    assert grey.panel.palette == ()
    one_ink = replace(layout, inks=layout.inks[:1], screens=(), moments=())
    bare = edits.set_panel(one_ink, replace(layout.panel, colour_format="indexed"))
    assert bare.panel.palette == ("#000000", "#ffffff")


# -- on the glass ------------------------------------------------------------------------------------------


def test_every_moment_is_shown_as_drawn(glass: Glass, hub: Hub) -> None:
    glass.set_zoom(2)
    for moment in hub.moments:
        hub.show_moment(moment.name)
        assert assert_glass_shows(glass, drawn(hub)) == 120 * 64
    assert [moment.name for moment in hub.moments] == [
        "half", "lost", "longest", "shortest", "limit-1", "fault",
    ]  # fmt: skip


@pytest.mark.parametrize(
    "panel",
    [
        Panel(120, 64, "grey4"),
        Panel(120, 64, "grey16"),
        Panel(120, 64, "indexed", palette=("#ffffff", "#000000", "#c01818"), refresh="whole"),
    ],
)
def test_greys_and_palettes_are_shown_as_they_are(qtbot: QtBot, panel: Panel) -> None:
    with at_work(replace(levels(), panel=panel, types=()), "levels") as hub:
        glass = open_glass(hub)
        qtbot.addWidget(glass)
        glass.set_zoom(2)
        assert assert_glass_shows(glass, drawn(hub)) == 120 * 64


def test_a_meter_is_sized_by_its_handles(glass: Glass, hub: Hub) -> None:
    glass.set_zoom(6)
    hub.select(["depth"])
    assert grasp.sized(depth(hub)) == (10, 30, 60, 8)
    drag(glass, (70, 38), (80, 42))
    assert (depth(hub).x, depth(hub).y) == (10, 30)
    assert (depth(hub).width, depth(hub).height) == (80 - 10, 42 - 30)
    assert hub.history.undo_title == "change the size of `depth`"
    hub.undo()
    assert depth(hub) == DEPTH


def test_a_png_file_from_a_folder_is_shown_and_dropped(glass: Glass, hub: Hub, tmp_path: Path) -> None:
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(drop_of(tmp_path)))])
    before = hub.layout
    carry_data(glass, data, 90, 50, drop=False)
    assert hub.layout == before
    assert not np.array_equal(glass.frame().codes, drawn(hub).codes)
    carry_data(glass, data, 90, 50, drop=True)
    part = hub.part("picture")
    assert isinstance(part, Picture)
    assert (hub.folder / part.picture).samefile(tmp_path / "drop.png")
    assert (part.x, part.y) == (90 - 4, 50 - 3)
    assert np.array_equal(glass.frame().codes, drawn(hub).codes)
    hub.undo()
    assert hub.layout == before


def test_a_file_that_is_no_picture_is_told(glass: Glass, hub: Hub, tmp_path: Path) -> None:
    (tmp_path / "bad.png").write_bytes(b"nothing")
    data, told = QMimeData(), list[str]()
    data.setUrls([QUrl.fromLocalFile(str(tmp_path / "bad.png"))])
    hub.told.connect(told.append)
    before = hub.layout
    carry_data(glass, data, 90, 50, drop=True)
    assert hub.layout == before
    assert "the picture `bad.png` is not a PNG file" in told


def test_a_picture_from_the_tray_asks_for_its_file_when_it_is_dropped(
    glass: Glass, hub: Hub, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    drop_of(tmp_path)
    answers = ["", str(tmp_path / "drop.png")]
    monkeypatch.setattr(picturefile, "choose", lambda *_: answers.pop(0))
    before = hub.layout
    carry(glass, "picture", 90, 50, drop=True)
    QApplication.processEvents()
    assert len(answers) == 1 and hub.layout == before
    carry(glass, "picture", 90, 50, drop=True)
    QApplication.processEvents()
    assert not answers and hub.selection == {"picture"}


def test_a_finding_with_a_meter_is_acted_out(qtbot: QtBot) -> None:
    line = Rule("line", 60, 20, 30, "chalk", "down")
    with at_work(levels(DEPTH, line), "levels") as hub:
        glass = open_glass(hub)
        qtbot.addWidget(glass)
        qtbot.waitUntil(lambda: hub.findings_current)
        view = glass.canvas.view()
        assert view is not None
        erases = next(one for one in hub.findings if one.rule == "erases")
        before, after = scenes(view, erases)
        assert before.words == "before an update of `depth`"
        assert int(before.frame.codes[33, 60]) == hub.material.code("chalk") != int(after.frame.codes[33, 60])
        collides = next(one for one in hub.findings if one.rule == "collides")
        (scene,) = scenes(view, collides)
        # The least value that reaches the line: 51 of 60 pixels of 0 to 2500.
        assert collides.texts == (str(2125),)
        assert scene.words == "`2125`"


# -- the sheet ---------------------------------------------------------------------------------------------


def ranges(sheet: Sheet) -> RangeEditor:
    found = sheet.part.findChild(RangeEditor)
    assert isinstance(found, RangeEditor)
    return found


def test_the_range_is_changed_refused_and_undone(hub: Hub, sheet: Sheet) -> None:
    hub.select(["depth"])
    editor = ranges(sheet)
    assert editor.facts.text() == "one of its 60 px stands for 41.67"
    editor.greatest.spin.setValue(3000)
    assert depth(hub).greatest == 3000
    editor.greatest.spin.setValue(1500)  # below the limit
    assert depth(hub).greatest == 3000
    assert "2000 is outside the meter's range, 0 to 1500" in editor.greatest.complaint.text()
    hub.undo()
    assert depth(hub) == DEPTH
    assert editor.greatest.spin.value() == 2500


def test_limits_are_added_sorted_marked_and_deleted(hub: Hub, sheet: Sheet) -> None:
    hub.select(["depth"])
    editor = ranges(sheet)
    editor.add.click()
    assert [limit.at for limit in depth(hub).limits] == [2000, 2250]
    editor.rows[1].value.setValue(300)
    assert [limit.at for limit in depth(hub).limits] == [300, 2000]
    assert depth(hub).limits[1].ink == "alarm"
    editor.rows[0].ink.setCurrentIndex(editor.rows[0].ink.findData("chalk"))
    editor.rows[0].ink.activated.emit(0)
    assert depth(hub).limits[0] == MeterLimit(300, "chalk")
    editor.rows[0].mark.click()
    assert depth(hub).limits[0] == MeterLimit(300, "chalk", mark=False)
    editor.rows[0].value.setValue(2000)  # there is one
    assert [limit.at for limit in depth(hub).limits] == [300, 2000]
    assert "limits rise" in editor.complaint.text()
    assert editor.rows[0].value.value() == 300
    editor.rows[1].away.click()
    assert depth(hub).limits == (MeterLimit(300, "chalk", mark=False),)
    assert editor.complaint.isHidden() and len(editor.rows) == 1


def test_a_full_range_takes_no_more_limits(hub: Hub, sheet: Sheet) -> None:
    few = replace(DEPTH, greatest=2, limits=tuple(MeterLimit(at) for at in (0, 1, 2)))
    assert hub.apply("few", edits.set_part(hub.layout, "levels", "depth", few)) is None
    hub.select(["depth"])
    ranges(sheet).add.click()
    assert ranges(sheet).complaint.text() == "✕ every value of the range is a limit already"
    assert depth(hub).limits == few.limits


def test_the_way_it_grows_and_its_size(hub: Hub, sheet: Sheet) -> None:
    hub.select(["depth"])
    assert sheet.part._set("direction", "up") is None
    assert sheet.part._set("width", 61) is None
    assert (depth(hub).direction, depth(hub).width) == ("up", 61)
    assert ranges(sheet).facts.text().startswith("one of its 8 px")


def test_how_often_it_changes(hub: Hub, sheet: Sheet) -> None:
    hub.select(["depth"])
    assert sheet.part._set_period("250") is None and depth(hub).period_ms == 250
    assert "no whole number" in str(sheet.part._set_period("often"))
    assert "outside its limits" in str(sheet.part._set_period("0"))
    assert sheet.part._set_period("") is None and depth(hub).period_ms is None


def test_a_moments_value_is_typed(hub: Hub, sheet: Sheet) -> None:
    sheet.tabs.setCurrentIndex(2)
    sheet.moments.chosen = "half"
    sheet.moments.refresh()
    row = sheet.moments._rows["depth"]
    assert isinstance(row, LineEntry) and row.line.text() == "1250"

    def typed(text: str) -> str:
        assert isinstance(row, LineEntry)
        row.line.setText(text)
        row.line.editingFinished.emit()
        return row.complaint.text()

    assert typed("−5") == "" and hub.layout.moments[0].meters == {"depth": -5}
    assert typed("full") == "✕ `full` is no whole number; leave it empty for no value"
    assert "outside its limits" in typed("99999999999")
    assert hub.layout.moments[0].meters == {"depth": -5}
    assert typed("") == ""
    assert hub.layout.moments[0].meters == {"depth": None}


def test_a_pictures_sheet(qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    drop_of(tmp_path)
    Image.linear_gradient("L").resize((30, 20)).save(tmp_path / "slope.png")
    hub = Hub(
        replace(levels(Picture("logo", 5, 5, "drop.png")), panel=Panel(120, 64, "mono"), types=()), tmp_path
    )
    sheet = Sheet(hub)
    qtbot.addWidget(sheet)
    hub.select(["logo"])
    editor = sheet.part.findChild(PictureEditor)
    assert isinstance(editor, PictureEditor)
    assert editor.facts.text() == "9 × 7 px, 1 colour of the panel"
    monkeypatch.setattr(picturefile, "choose", lambda *_: "slope.png")
    editor.choose.click()
    assert hub.part("logo") == Picture("logo", 5, 5, "slope.png")
    assert editor.facts.text() == "30 × 20 px, 2 colours of the panel"
    frame = drawn(hub)
    editor.dither.combo.setCurrentIndex(2)
    editor.dither.combo.activated.emit(2)
    assert hub.part("logo") == Picture("logo", 5, 5, "slope.png", "diffused")
    assert not np.array_equal(drawn(hub).codes, frame.codes)
    editor.file.tell(sheet.part._set("picture", "gone.png"))
    assert "the picture `gone.png` cannot be read" in editor.file.complaint.text()
    hub.undo()
    assert np.array_equal(drawn(hub).codes, frame.codes)
    hub.shut()


def test_the_palette_is_edited(qtbot: QtBot) -> None:
    with at_work(replace(levels(), types=()), "levels") as hub:
        sheet = Sheet(hub)
        qtbot.addWidget(sheet)
        sheet.tabs.setCurrentIndex(5)
        editor = sheet.panel.palette_editor
        assert editor.isHidden()
        assert sheet.panel._set(colour_format="indexed") is None
        assert not editor.isHidden()
        first = tuple(ink.colour for ink in tank.INKS)
        assert [editor.list.item(k).text() for k in range(5)] == [f"{k}: {c}" for k, c in enumerate(first)]
        editor.list.setCurrentRow(4)
        assert editor._set_colour("c01010") is None
        assert hub.layout.panel.palette == (*first[:4], "#c01010")
        assert "hexadecimal" in str(editor._set_colour("red"))
        editor.buttons["Up"].click()
        assert hub.layout.panel.palette == (*first[:3], "#c01010", first[3])
        assert editor.list.currentRow() == 3
        editor.buttons["Add"].click()
        assert len(hub.layout.panel.palette) == 6 and editor.list.currentRow() == 5
        for _ in range(4):
            editor.buttons["Delete"].click()
        assert len(hub.layout.panel.palette) == 2
        assert not editor.buttons["Delete"].isEnabled()
        hub.undo()
        assert len(hub.layout.panel.palette) > 2
        assert sheet.panel._set(colour_format="grey4") is None
        assert hub.layout.panel.palette == () and editor.isHidden()
