"""What starters are put together from: icons, inks, text in lines, claims."""

from __future__ import annotations

import pytest
from fonts_free.drawing.icons import read_icons

from panelproof.glyphs.run import placed
from panelproof.layout.colour import parse
from panelproof.layout.panel import Panel, visible_spans
from panelproof.problem import Problem
from panelproof.sight.luminance import contrast
from panelproof.starters.description import Claims, description, descriptions, refusal
from panelproof.starters.face import BOLD, NUMERALS, PLAIN
from panelproof.starters.glass import Glass
from panelproof.starters.icons import SIZES, enlarged, icons
from panelproof.starters.panels import ListedPanel, panels
from panelproof.starters.piece import Line, NoRoom, Piece, cell, centre, even, joined, spread, stacked
from panelproof.starters.running import breaks, evened
from panelproof.starters.setting import Setting
from panelproof.starters.theme import theme


@pytest.mark.parametrize("size", SIZES)
def test_icons_are_those_of_the_font_folder(size: int) -> None:
    assert icons(size) == read_icons(size)


def test_enlarged() -> None:
    assert enlarged(("#.", ".#"), 2) == ("##..", "##..", "..##", "..##")


@pytest.mark.parametrize("one", descriptions().values(), ids=list(descriptions()))
def test_icons_have_the_states_that_are_asked_for(one: object) -> None:
    for plan in one.icons.values():  # type: ignore[attr-defined]
        for size in SIZES:
            assert set(plan.states) <= set(icons(size)[plan.icon])
        if plan.link:
            assert {"off", "trying-1", "up", "fault"} <= set(plan.states)


@pytest.mark.parametrize("face", [*PLAIN, *BOLD, *NUMERALS], ids=lambda face: face.font)
def test_faces_are_as_high_as_they_say(face: object) -> None:
    type_ = face.type  # type: ignore[attr-defined]
    glyph = type_.glyph("0")
    assert (glyph.top, type_.ascent + type_.descent) == (face.cap, face.height)  # type: ignore[attr-defined]


@pytest.mark.parametrize("listed", panels(), ids=lambda one: one.id)
def test_inks_stand_out(listed: ListedPanel) -> None:
    # WCAG 2.2: text 4.5 (1.4.3), graphics 3 (1.4.11).
    colours = theme(listed.panel).colours
    ground = parse(colours["ground"])
    for role, colour in colours.items():
        if role != "ground":
            assert contrast(parse(colour), ground) >= (3 if role == "line" else 4.5), role


def test_what_is_urgent_is_vivid_where_the_paper_has_such_an_ink() -> None:
    red = Panel(200, 200, "indexed", palette=("#000000", "#ffffff", "#c00000"))
    assert theme(red).colours["alarm"] == "#c00000"
    yellow = Panel(200, 200, "indexed", palette=("#000000", "#ffffff", "#e0b000"))
    assert theme(yellow).colours["alarm"] == "#000000", "yellow on white cannot be read"
    assert theme(Panel(128, 64, "mono")).name("alarm") == "text"


@pytest.mark.parametrize(
    "panel", [Panel(240, 240, shape="round"), Panel(280, 240, "rgb565", "rounded", 40), Panel(128, 64)]
)
def test_a_band_can_be_seen_whole(panel: Panel) -> None:
    glass = Glass(panel)
    for top in range(glass.top, glass.bottom - 10, 7):
        left, right = glass.band(top, top + 10)
        assert all(first < left and right < end for first, end in visible_spans(panel)[top : top + 10])


# -- text in lines -----------------------------------------------------------------------------------------


def test_text_is_broken_at_spaces_and_loses_none() -> None:
    text = "The tank is nearly empty. The pump has been stopped."
    lines = breaks(text, PLAIN[4], 100)
    assert " ".join(lines) == text
    assert all(placed(PLAIN[4].type, line)[1] <= 100 for line in lines)
    with pytest.raises(NoRoom):
        breaks("Unbreakable", PLAIN[0], 100)


def test_evened_lines_are_as_many_and_more_alike() -> None:
    text = "With the tank empty, press the key."
    plain, even_ = breaks(text, PLAIN[4], 150), evened(text, PLAIN[4], 150)
    assert len(plain) == len(even_)
    assert " ".join(even_) == text
    assert max(map(len, even_)) <= max(map(len, plain))


# -- pieces ------------------------------------------------------------------------------------------------


def piece(width: int, above: int, below: int, seen: list[tuple[int, int, int]]) -> Piece:
    def make(left: int, baseline: int) -> tuple[()]:
        seen.append((width, left, baseline))
        return ()

    return Piece(width, above, below, make)


def test_pieces_beside_and_above_each_other() -> None:
    seen: list[tuple[int, int, int]] = []
    one, two = piece(10, 5, 1, seen), piece(20, 8, 2, seen)
    both = joined(one, two, gap=3)
    assert (both.width, both.above, both.below) == (33, 8, 2)
    both.make(100, 50)
    assert seen == [(10, 100, 50), (20, 113, 50)]
    seen.clear()
    over = stacked(one, two, 4)
    assert (over.width, over.above, over.below) == (20, 8 + 4 + 1 + 5, 2)
    over.make(0, 50)
    assert seen == [(10, 5, 50 - 8 - 4 - 1), (20, 0, 50)]
    seen.clear()
    cell(one, two, 40, 4).make(0, 50)
    assert seen == [(10, 0, 37), (20, 20, 50)], "the label at the left, the value at the right"
    seen.clear()
    centre(one, 20).make(0, 0)
    spread(one, 20, at_right=True).make(0, 0)
    assert [left for _, left, _ in seen] == [5, 10]
    with pytest.raises(NoRoom):
        spread(two, 19)


def test_a_line_keeps_its_pieces_apart() -> None:
    seen: list[tuple[int, int, int]] = []
    one, two = piece(10, 5, 1, seen), piece(20, 8, 2, seen)
    Line(left=one, right=two, apart=5).parts(2, 37, 9)
    assert seen == [(10, 2, 9), (20, 17, 9)]
    with pytest.raises(NoRoom):
        Line(left=one, right=two, apart=5).parts(2, 36, 9)
    first, second = even([Line(left=one), Line(left=two)])
    assert (first.above, first.below) == (second.above, second.below) == (8, 2)


def test_lines_share_what_is_left_over() -> None:
    seen: list[tuple[int, int, int]] = []
    setting = Setting(Panel(100, 100), description("one-reading"))
    lines = [Line(left=piece(n, 10, 0, seen), lead=5) for n in (1, 2, 3)]
    setting.stack(lines, top=0, bottom=95, tail=1)
    # 45 needed, 50 left over: a quarter before each line, a quarter under the last.
    assert [baseline for _, _, baseline in seen] == [27, 55, 82]
    with pytest.raises(NoRoom):
        setting.stack(lines, top=0, bottom=44)


# -- claims ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("claims", "panel", "said"),
    [
        (Claims((64, 32)), Panel(64, 32), None),
        (Claims((96, 48)), Panel(95, 48), "needs at least 96 × 48 pixels, and this panel has 95 × 48"),
        (Claims((96, 48)), Panel(96, 47), "needs at least 96 × 48 pixels, and this panel has 96 × 47"),
        (Claims((8, 8), greatest=(64, 64)), Panel(65, 64), "is for at most 64 × 64 pixels, and this panel has 65 × 64"),
        (Claims((8, 8), shapes=("round",)), Panel(64, 64), "is for round panels, and this one is rectangular"),
        (
            Claims((8, 8), formats=("mono", "grey4")),
            Panel(64, 64),
            "is for panels of monochrome or 4 greys, and this one has 16-bit colour",
        ),
        (Claims((8, 8), refresh=("whole",)), Panel(64, 64), "is for panels with refresh `whole`, and this one has `part`"),
        (Claims((8, 8), look="paper"), Panel(64, 64), "is for panels that are dark on light, such as e-paper"),
        (
            Claims((8, 8), least_round=(96, 96)),
            Panel(64, 64, shape="round"),
            "needs at least 96 × 96 pixels, and this panel has 64 × 64",
        ),
    ],
)  # fmt: skip
def test_claims(claims: Claims, panel: Panel, said: str | None) -> None:
    assert refusal(claims, panel) == said


def test_an_unknown_starter_gets_the_nearest() -> None:
    with pytest.raises(Problem, match=r"nearest are .*`two-readings`"):
        description("readings")
