"""Numbers that jump while they count, against counting through small ranges one by one."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path
from typing import Any, cast

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from tests.firmware.layouts import MadeType
from tests.proof.test_verdict import layout
from tests.proof.typefaces import EVEN, SIGNS, UNEVEN, bdf

from panelproof.content.build import text
from panelproof.content.spec import Choice, Content, RealRange, WholeRange
from panelproof.glyphs.glyph import Glyph
from panelproof.glyphs.type import Type, open_type
from panelproof.ink.anchor import Align
from panelproof.layout.checking import problems
from panelproof.layout.document import TypeSpec
from panelproof.layout.parts import Field
from panelproof.material import gather
from panelproof.proof import jumps as rule
from panelproof.proof.extent import stage
from panelproof.proof.finding import Finding
from panelproof.proof.mending import changed
from panelproof.proof.neighbours import neighbours

WIDTHS = {"uneven": {**UNEVEN, **SIGNS}, "even": {**EVEN, **SIGNS}, "odd": {**EVEN, **SIGNS, "7": 5, "0": 9}}
# Halves of odd widths hang on the digit before: of 11 and 12 nothing shifts, of 21 and 22 one pixel does.
WIDTHS["tilted"] = {**EVEN, **SIGNS, "1": 5, "7": 5}
WIDTHS["even"] |= {"+": 4, " ": 6}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("fonts")
    for name, advances in WIDTHS.items():
        bdf(made / f"{name}.bdf", advances)
    return made


def opened(folder: Path, name: str) -> Type:
    return open_type(folder / f"{name}.bdf", None, "one-bit", False, True)


def beginnings(shown: str, advances: dict[str, int], align: str) -> list[int]:
    """Where each character begins, counted by hand."""
    width = sum(advances[char] for char in shown)
    x = {"left": 0, "right": -width, "centre": -(width // 2)}[align]
    found = []
    for char in shown:
        found.append(x)
        x += advances[char]
    return [*found, x]


def by_counting(texts: list[str], advances: dict[str, int], align: str) -> tuple[int, int]:
    """The farthest jump between texts of one length, and of a centred one that grows."""
    still = grown = 0
    for before, after in pairwise(texts):
        one, other = beginnings(before, advances, align), beginnings(after, advances, align)
        if len(before) == len(after):
            same = [n for n in range(len(before)) if before[n] == after[n] != " "]
            still = max([still, *(abs(one[n] - other[n]) for n in same)])
        elif align == "centre":
            grown = max(grown, abs(one[0] - other[0]), abs(one[-1] - other[-1]))
    return still, grown


def pixels(content: Content, type_: Type, align: Align) -> tuple[int, int]:
    still, grown = rule.jumps(content, type_, align)
    return still.pixels if still else 0, grown.pixels if grown else 0


@st.composite
def whole_contents(draw: Any) -> tuple[Content, list[str]]:
    step = draw(st.sampled_from([1, 1, 2, 5, 7, 10, 20, 25, 100, 125, 250]))
    least = draw(st.integers(-1200, 1200))
    greatest = least + step * draw(st.integers(1, 1500)) + draw(st.integers(0, step - 1))
    letters = ["d", "+d", "5d", "-5d", "05d", ".3d", " d"] + ([] if least < 0 else ["u", "o", "4u"])
    written = draw(st.sampled_from(["", "h "])) + "%" + draw(st.sampled_from(letters))
    content = Content(written + draw(st.sampled_from(["", " C", "%%"])), (WholeRange(least, greatest, step),))
    return content, [text(content, (value,)) for value in range(least, greatest + 1, step)]


@settings(max_examples=150, deadline=None)
@example((Content("%d", (WholeRange(-320, 180, 250),)), ["-320", "-70", "180"]), "even", "left")
@given(whole_contents(), st.sampled_from(sorted(WIDTHS)), st.sampled_from(["left", "right", "centre"]))
def test_whole_numbers_as_by_counting(
    folder: Path, made: tuple[Content, list[str]], name: str, align: Align
) -> None:
    content, texts = made
    # Numbers below zero count towards it: what jumps forth jumps back.
    assert pixels(content, opened(folder, name), align) == by_counting(texts, WIDTHS[name], align)


@st.composite
def real_contents(draw: Any) -> tuple[Content, list[str]]:
    least, more, places = draw(st.integers(-2500, 2500)), draw(st.integers(1, 3000)), draw(st.integers(0, 3))
    unit, plus = 10**places, draw(st.sampled_from(["", "+"]))
    content = Content(f"%{plus}.{places}f C", (RealRange(least / unit, (least + more) / unit),))
    values = [value for value in range(least, least + more + 1) if value or least >= 0]
    texts = [text(content, (value / unit,)) for value in values]
    if least < 0 <= least + more:
        # A real just below zero is shown as -0.
        zero = text(content, (0.0,))
        behind = values.index(-1) + 1
        texts[behind:behind] = ["-" + zero.lstrip("+"), zero]
    return content, texts


@settings(max_examples=60, deadline=None)
@given(real_contents(), st.sampled_from(sorted(WIDTHS)), st.sampled_from(["left", "right", "centre"]))
def test_reals_as_by_counting(folder: Path, made: tuple[Content, list[str]], name: str, align: Align) -> None:
    content, texts = made
    assert pixels(content, opened(folder, name), align) == by_counting(texts, WIDTHS[name], align)


def test_halves_of_odd_widths_hang_on_the_digits_before(folder: Path) -> None:
    content = Content("%d", (WholeRange(0, 999),))
    counted = by_counting([str(n) for n in range(1000)], WIDTHS["tilted"], "centre")
    assert pixels(content, opened(folder, "tilted"), "centre") == counted == (1, 3)


def test_kerning_hangs_on_the_digit_before() -> None:
    """Digits of one width, but 7 and 1 are set closer: only numbers that hold 71 are narrower."""
    block = Glyph(0, 5, 4, 5, 5, (15,) * 5)
    type_ = cast(Type, MadeType(dict.fromkeys("0123456789 C", block), {("7", "1"): -2}))
    still, _ = rule.jumps(Content("%dC", (WholeRange(0, 999),)), type_, "left")
    assert still is not None
    assert (still.pixels, still.char, "71" in still.before + still.after) == (2, "C", True)
    assert rule.jumps(Content("%dC", (WholeRange(0, 70),)), type_, "left") == (None, None)


def test_a_pair_stands_for_many() -> None:
    pairs = neighbours(Content("%u", (WholeRange(0, 2**32 - 1),)), False)
    assert len(pairs) < 200
    assert ("9", "10") in pairs
    assert all(int(after) - int(before) == 1 for before, after in pairs)


# -- the rule ----------------------------------------------------------------------------------------------

COUNT = Content("%d C", (WholeRange(0, 99),), fault="?")


def shown(folder: Path, field: Field, **types: str) -> list[Finding]:
    specs = tuple(TypeSpec(name, f"{font}.bdf") for name, font in ({"plain": "uneven"} | types).items())
    made = layout(field, types=specs)
    assert problems(made) == []
    material = gather(made, folder)
    return list(rule.findings(stage(material, made.screens[0])))


def field(content: Content = COUNT, **changes: Any) -> Field:
    return replace(Field("level", content, "plain", "white", 40, 30, padding=(10, 10, 100, 30)), **changes)


def test_a_unit_behind_uneven_digits_jumps_and_behind_even_ones_not(folder: Path) -> None:
    (found,) = shown(folder, field())
    assert (found.rule, found.level, found.part) == ("jumps", "caution", "level")
    # 0 to 1 and 1 to 2: three pixels narrower, three wider; 3 to 4 is one.
    assert found.texts == ("0 C", "1 C")
    assert "`C` jumps by 3 px" in found.message
    assert "not equally wide" in found.message
    assert shown(folder, field(), plain="even") == []


def test_digits_before_the_last_jump_where_the_text_ends_at_x(folder: Path) -> None:
    bare = Content("%d", (WholeRange(10, 19),))
    (found,) = shown(folder, field(bare, align="right"))
    assert "`1` jumps by 3 px" in found.message
    assert shown(folder, field(Content("%d", (WholeRange(0, 9),)), align="right")) == [], (
        "nothing stands before"
    )
    assert shown(folder, field(bare)) == [], "the first digit stands still, and nothing is behind the last"


def test_a_centred_number_shifts_when_it_grows(folder: Path) -> None:
    bare = Content("%d", (WholeRange(0, 10),))
    (found,) = shown(folder, field(bare, align="centre"), plain="even")
    assert found.texts == ("9", "10")
    assert "shifts by 3 px" in found.message, "half of a digit 6 px wide"
    assert shown(folder, field(Content("%d", (WholeRange(0, 9),)), align="centre"), plain="even") == []
    assert shown(folder, field(Content("%02d", (WholeRange(0, 10),)), align="centre"), plain="even") == []


def test_a_space_that_fills_is_narrower_than_a_digit(folder: Path) -> None:
    filled = Content("%2d C", (WholeRange(8, 11),))
    assert shown(folder, field(filled), plain="even") == [], "six pixels like the digits"
    narrow = {**WIDTHS["even"], " ": 3}
    bdf(folder / "narrow.bdf", narrow)
    (finding,) = shown(folder, field(filled), plain="narrow")
    assert finding.texts == (" 9 C", "10 C")
    assert "a space is not as wide as a digit" in finding.message
    assert "jumps by 3 px" in finding.message


def test_the_alignment_that_steadies_keeps_the_longest_text_in_its_place(folder: Path) -> None:
    made = layout(field(align="centre"), types=(TypeSpec("plain", "even.bdf"),))
    material = gather(made, folder)
    (found,) = rule.findings(stage(material, made.screens[0]))
    assert found.remedy is not None
    assert found.remedy.sentence.startswith("align it right")
    after = changed(made, "main", found.remedy.changes)
    steady = stage(gather(after, folder), after.screens[0])
    assert list(rule.findings(steady)) == []
    before = stage(material, made.screens[0]).extents[0].reach
    assert steady.extents[0].reach.bounds()[0] == before.bounds()[0]


def test_uneven_digits_are_steadied_by_another_type_only(folder: Path) -> None:
    (found,) = shown(folder, field(), other="even")
    assert found.remedy is not None
    assert "`other`" in found.remedy.sentence
    assert not found.remedy.changes


def test_texts_that_are_no_numbers_do_not_count(folder: Path) -> None:
    words = Content("%s C", (Choice(("1", "2", "4")),))
    assert shown(folder, field(words)) == []
