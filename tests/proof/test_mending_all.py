"""Every safe remedy carried out: its finding is gone, nothing worse has come, and what is left says why."""

from __future__ import annotations

import dataclasses
import shutil
from collections import Counter
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from tests.proof.test_verdict import layout

from panelproof import command
from panelproof.content.spec import Choice, Content, RealRange, WholeRange
from panelproof.layout.checking import problems
from panelproof.layout.document import Ink, Layout, Screen, TypeSpec
from panelproof.layout.parts import Accepted, Box, Field, Icon, IconState, Label, Part
from panelproof.layout.reading import read
from panelproof.layout.writing import encode, write
from panelproof.material import Material, gather
from panelproof.mending import BY_HAND, Mended, attempt, mend
from panelproof.proof.finding import Change, Remedy
from panelproof.tasks import load
from panelproof.verdict import Verdict, verdict

KILN = Path(__file__).parents[2] / "examples" / "kiln"
COUNT = Content("%d", (WholeRange(0, 99),), fault="--")
NARROW = Field("level", COUNT, "plain", "white", 40, 30, padding=(40, 12, 12, 24))


def mended(made: Layout) -> Mended:
    assert problems(made) == []
    return mend(gather(made, Path()))


def keys(made: Layout, folder: Path = Path()) -> Counter[tuple[str, str, str, str, str]]:
    found = verdict(gather(made, folder)).findings
    return Counter(
        (one.rule, one.level, one.screen, one.part, one.other) for one in found if one.level != "note"
    )


def test_a_remedy_that_ends_its_finding_is_kept() -> None:
    found = mended(layout(NARROW))
    assert [one.rule for one in found.done] == ["fit"]
    assert found.left == ()
    assert keys(found.layout) == Counter()


def tried(made: Layout, *changes: Change) -> str | tuple[Material, Verdict]:
    """What comes of mending the first finding by these changes."""
    material = gather(made, Path())
    before = verdict(material)
    finding = dataclasses.replace(before.findings[0], remedy=Remedy("so", changes))
    return attempt(material, before, finding)


def test_a_remedy_that_brings_a_fault_is_undone_and_says_which() -> None:
    line = Box("line", 52, 10, 2, 30, fill="white")
    made = layout(line, replace(NARROW, ground="black"))
    wider = Change("level", "padding", [40, 12, 18, 24])
    answer = tried(made, wider)
    assert isinstance(answer, str)
    assert answer.startswith("was undone: it would bring another fault, ")
    assert "of main / level" in answer
    assert not isinstance(tried(layout(replace(line, x=60), NARROW), wider), str)


def test_a_remedy_that_ends_nothing_or_cannot_be_is_undone() -> None:
    made = layout(NARROW)
    assert (
        tried(made, Change("level", "padding", [40, 12, 13, 24])) == "was undone: it did not end the finding"
    )
    for change, words in (
        (Change("level", "padding", None), "has none"),
        (Change("level", "type", "gone"), "no type `gone`"),
        (Change("gone", "x", 3), "not there any more"),
        (Change("level", "x", "left"), "cannot be changed so"),
    ):
        answer = tried(made, change)
        assert isinstance(answer, str)
        assert words in answer


def test_a_remedy_that_makes_another_finding_worse_is_undone() -> None:
    line = Box("line", 50, 10, 8, 30, fill="white")
    made = layout(
        replace(NARROW, ground="black"),
        line,
        Field("next", COUNT, "plain", "white", 90, 30, padding=(88, 12, 3, 24)),
    )
    first = verdict(gather(made, Path())).findings[0]
    assert first.part == "level"
    answer = tried(
        made, Change("level", "padding", [40, 12, 18, 24]), Change("next", "padding", [88, 12, 2, 24])
    )
    assert isinstance(answer, str)
    assert "another fault" in answer


def test_what_is_accepted_is_left_as_it_is() -> None:
    made = layout(replace(NARROW, accepted=(Accepted("fit", "the frame covers it"),)))
    found = mended(made)
    assert (found.layout, found.done, found.left) == (made, (), ())


def test_what_has_no_remedy_is_left_for_a_person() -> None:
    made = layout(Label("name", "Tank ♨", "plain", "white", 5, 30))
    (left,) = mended(made).left
    assert (left.finding.rule, left.reason) == ("missing-glyph", BY_HAND)


INKS = (Ink("black", "#000000"), Ink("white", "#ffffff"), Ink("grey", "#303030"), Ink("blue", "#0000a0"))
CONTENTS = (
    COUNT,
    Content("%d", (WholeRange(0, 99, sensor=(0, 120)),)),
    Content("%.1f", (RealRange(-9.0, 40.0),), fault="none"),
    Content("%s", (Choice(("filling", "resting")),), fault="?"),
)
ROWS = (("##.", "#.#", ".##"), ("###", "###", "###"))


@st.composite
def layouts(draw: Any) -> Layout:
    def ink() -> str:
        return str(draw(st.sampled_from([one.name for one in INKS])))

    def part(number: int) -> Part:
        name, x, y = f"part-{number}", draw(st.integers(-4, 110)), draw(st.integers(6, 64))
        match draw(st.sampled_from(["field", "field", "label", "box", "icon"])):
            case "label":
                return Label(name, "Tank", draw(st.sampled_from(["plain", "smooth"])), ink(), x, y)
            case "box":
                return Box(name, x, y, draw(st.integers(1, 60)), draw(st.integers(1, 30)), fill=ink())
            case "icon":
                states = tuple(IconState(f"s{n}", rows) for n, rows in enumerate(ROWS))
                clearing = draw(st.sampled_from(["pad", "none", "cell", "box"]))
                return Icon(
                    name, x, y, ink(), states, clearing=clearing, period_ms=draw(st.sampled_from([None, 200]))
                )
        padding = (
            draw(st.integers(-2, 60)),
            draw(st.integers(0, 30)),
            draw(st.integers(8, 80)),
            draw(st.integers(8, 30)),
        )
        return Field(
            name, draw(st.sampled_from(CONTENTS)), draw(st.sampled_from(["plain", "smooth"])), ink(), x, y,
            draw(st.sampled_from(["left", "centre", "right"])), draw(st.sampled_from([None, "blue", "black"])),
            draw(st.sampled_from(["pad", "none", "cell", "box"])), padding, draw(st.sampled_from([None, 3])),
        )  # fmt: skip

    parts = tuple(part(number) for number in range(draw(st.integers(1, 4))))
    second = Screen("second", "black", parts[:1], clears=draw(st.booleans()))
    types = (TypeSpec("plain", "SourceSansPro", 14), TypeSpec("smooth", "SourceSansPro", 14, "antialiased"))
    return layout(screens=(Screen("main", "black", parts), second), types=types, inks=INKS)


@settings(max_examples=40, deadline=None)
@given(layouts())
def test_mending_never_brings_anything_worse(made: Layout) -> None:
    before, found = keys(made), mended(made)
    after = keys(found.layout)
    assert after <= before, "no fault or caution of a kind and place that was not there"
    assert sum(before.values()) - sum(after.values()) >= len(found.done), "each remedy ended one"
    assert sum(after.values()) == len(found.left)
    assert all(one.reason for one in found.left)
    assert mend(found.material).done == (), "once is enough"


# -- the kiln as first drawn by eye ------------------------------------------------------------------------


def test_the_kiln_drawn_by_eye_is_mended_as_far_as_remedies_go() -> None:
    found = mend(load(KILN / "by-eye.panel.json"))
    gone = {(one.rule, one.screen, one.part) for one in found.done}
    assert {
        ("fit", "start", "message"),
        ("stale", "readings", "chamber"),
        ("erases", "readings", "set-point"),
        ("text-bytes", "readings", "left"),
        ("residue", "fault", ""),
    } <= gone
    left = {
        (one.finding.rule, one.finding.part): one.reason for one in found.left if one.finding.level == "fault"
    }
    # A character that the font lacks is the maker's to choose.
    assert left[("missing-glyph", "title")] == BY_HAND
    assert keys(found.layout, KILN) <= keys(read(KILN / "by-eye.panel.json"), KILN)


# -- the command -------------------------------------------------------------------------------------------


@pytest.fixture
def by_eye(tmp_path: Path) -> Path:
    return Path(shutil.copy(KILN / "by-eye.panel.json", tmp_path / "kiln.panel.json"))


def test_a_dry_run_prints_and_changes_nothing(by_eye: Path, capsys: pytest.CaptureFixture[str]) -> None:
    held = by_eye.read_bytes()
    assert command.main(["mend", "--dry-run", str(by_eye)]) == 1
    said = capsys.readouterr().out
    assert "mended: residue: fault: let screen `fault` clear the panel" in said
    assert "left: fault: missing-glyph: readings / title" in said
    assert said.endswith("nothing was written (--dry-run)\n")
    assert by_eye.read_bytes() == held
    assert (
        command.main(["mend", "--dry-run", "-o", str(by_eye.with_name("new.panel.json")), str(by_eye)]) == 1
    )
    assert [path.name for path in by_eye.parent.iterdir()] == ["kiln.panel.json"]


def test_what_was_mended_is_written_and_reads_back(by_eye: Path, capsys: pytest.CaptureFixture[str]) -> None:
    held = by_eye.read_bytes()
    other = by_eye.with_name("mended.panel.json")
    assert command.main(["mend", "-o", str(other), str(by_eye)]) == 1
    assert by_eye.read_bytes() == held
    assert command.main(["mend", str(by_eye)]) == 1
    assert by_eye.read_bytes() == other.read_bytes() != held
    assert by_eye.read_bytes() == encode(read(by_eye))
    capsys.readouterr()
    stamp = by_eye.stat().st_mtime_ns
    assert command.main(["mend", str(by_eye)]) == 1
    assert "0 remedies carried out" in capsys.readouterr().out
    assert by_eye.stat().st_mtime_ns == stamp, "a file without a change is not written"


def test_fonts_are_found_from_where_the_copy_stands(tmp_path: Path) -> None:
    from tests.proof.typefaces import EVEN, SIGNS, bdf

    bdf(tmp_path / "own.bdf", {**EVEN, **SIGNS})
    path = tmp_path / "tank.panel.json"
    part = replace(NARROW, content=replace(COUNT, fault="--"), padding=(40, 20, 8, 12))
    write(layout(part, types=(TypeSpec("plain", "own.bdf"),)), path)
    (tmp_path / "deeper").mkdir()
    assert command.main(["mend", "-o", str(tmp_path / "deeper" / "tank.panel.json"), str(path)]) == 0
    assert read(tmp_path / "deeper" / "tank.panel.json").types[0].font == "../own.bdf"


def test_a_clean_layout_needs_nothing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "tank.panel.json"
    write(mended(layout(NARROW)).layout, path)
    assert command.main(["mend", str(path)]) == 0
    assert capsys.readouterr().out == f"{path}: 0 remedies carried out, 0 left\n"
