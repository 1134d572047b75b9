"""Rules that a part may break: what stands, what is accepted, and what is accepted for nothing."""

from __future__ import annotations

import json
import pkgutil
from importlib import import_module
from pathlib import Path

import pytest
from msgspec.structs import replace

from panelproof import command, firmware, proof
from panelproof.content.spec import Content, WholeRange
from panelproof.layout import rulenames
from panelproof.layout.checking import problems
from panelproof.layout.document import Ink, Layout, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Accepted, Box, Field, Part, Rule
from panelproof.layout.writing import write
from panelproof.material import gather
from panelproof.verdict import Verdict, judged, verdict

COUNT = Content("%d", (WholeRange(0, 99),), fault="--")
NARROW = Field("level", COUNT, "plain", "white", 40, 30, padding=(40, 12, 12, 24))
WHY = "the frame covers it"


def layout(*parts: Part, **others: object) -> Layout:
    made = Layout(
        1,
        "tank",
        Panel(120, 60),
        (TypeSpec("plain", "SourceSansPro", 16),),
        (Ink("black", "#000000"), Ink("white", "#ffffff"), Ink("grey", "#808080")),
        (Screen("main", "black", parts),),
    )
    return replace(made, **others)


def judge(made: Layout) -> Verdict:
    assert problems(made) == []
    return verdict(gather(made, Path()))


def rules_that_there_are() -> set[str]:
    found = set()
    for package in (proof, firmware):
        for module in pkgutil.iter_modules(package.__path__, package.__name__ + "."):
            made = import_module(module.name)
            found |= {made.NAME} if hasattr(made, "NAME") else set()
            found |= set(getattr(made, "NAMES", ()))
    return found


def test_the_names_known_to_checking_are_those_of_the_rules() -> None:
    named = [*rulenames.OF_PARTS, *rulenames.OF_SCREENS]
    assert len(set(named)) == len(named)
    assert set(named) == rules_that_there_are()


def test_an_accepted_fault_is_listed_apart_with_its_reason() -> None:
    (fault,) = judge(layout(NARROW)).findings
    assert judge(layout(NARROW)).faulty
    accepting = replace(NARROW, accepted=(Accepted("fit", WHY),))
    found = judge(layout(accepting))
    assert not found.faulty
    assert found.findings == ()
    (one,) = found.accepted
    assert (one.part, one.reason) == ("level", WHY)
    assert one.finding.message == fault.message


def test_only_the_rule_named_is_accepted_and_only_for_that_part() -> None:
    other = replace(NARROW, name="other", x=80, padding=(80, 12, 12, 24), accepted=(Accepted("fit", WHY),))
    found = judge(layout(NARROW, other))
    assert [finding.part for finding in found.findings] == ["level"]
    assert [one.finding.part for one in found.accepted] == ["other"]
    wrong = judge(layout(replace(NARROW, accepted=(Accepted("stale", WHY),))))
    assert [(finding.rule, finding.level) for finding in wrong.findings] == [
        ("fit", "fault"),
        ("accepted", "note"),
    ]


@pytest.mark.parametrize("accepting", [0, 1])
def test_either_of_two_parts_can_accept_that_they_meet(accepting: int) -> None:
    lines: list[Part] = [Rule("one", 5, 5, 20, "white"), Box("two", 10, 0, 20, 20, outline="grey")]
    assert [finding.rule for finding in judge(layout(*lines)).findings] == ["collides"]
    lines[accepting] = replace(lines[accepting], accepted=(Accepted("collides", WHY),))
    found = judge(layout(*lines))
    assert found.findings == ()
    assert [one.part for one in found.accepted] == [lines[accepting].name]


def test_an_acceptance_of_nothing_is_a_note_that_offers_to_take_it_out() -> None:
    kept = Accepted("fit", WHY)
    found = judge(layout(replace(NARROW, accepted=(kept, Accepted("collides", WHY)))))
    (note,) = found.findings
    assert (note.level, note.rule, note.part) == ("note", "accepted", "level")
    assert "nothing to accept" in note.message
    assert note.remedy is not None
    assert note.remedy.changes[0].value == [{"rule": "fit", "reason": WHY}]


def test_a_screen_alone_says_nothing_of_acceptances_elsewhere() -> None:
    part = replace(NARROW, accepted=(Accepted("stale", WHY),))
    made = layout(screens=(Screen("main", "black", (part,)), Screen("other", "black")))
    assert judged(made, (), ("other",)).findings == ()
    assert [note.rule for note in judged(made, (), ("main",)).findings] == ["accepted"]


@pytest.mark.parametrize(
    ("rules", "place", "words"),
    [
        (("stael",), "[0].rule", "nearest is `stale`"),
        (("fit", "fit"), "[1].rule", "accepted twice"),
        (("residue",), "[0].rule", "more than one part"),
    ],
)
def test_what_cannot_be_accepted_is_told_with_its_place(
    rules: tuple[str, ...], place: str, words: str
) -> None:
    part = replace(NARROW, accepted=tuple(Accepted(rule, WHY) for rule in rules))
    (problem,) = problems(layout(part))
    assert problem.place == f"screens[0].parts[0].accepted{place}"
    assert words in problem.message


def test_check_and_export_go_by_what_stands(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path, header = tmp_path / "tank.panel.json", tmp_path / "tank.h"
    write(layout(NARROW), path)
    assert command.main(["check", str(path)]) == 1
    assert command.main(["export", str(path), "-o", str(header)]) == 1
    assert not header.exists()
    write(layout(replace(NARROW, accepted=(Accepted("fit", WHY),))), path)
    capsys.readouterr()
    assert command.main(["check", str(path)]) == 0
    text = capsys.readouterr().out
    assert "accepted: fit: main / level" in text
    assert f"reason given by `level`: {WHY}" in text
    assert text.endswith("clean: no fault, no caution; 1 accepted\n")
    assert command.main(["check", "--json", str(path)]) == 0
    answer = json.loads(capsys.readouterr().out)
    assert (answer["findings"], answer["faults"]) == ([], 0)
    (one,) = answer["accepted"]
    assert (one["rule"], one["part"], one["accepted_by"], one["reason"]) == ("fit", "level", "level", WHY)
    assert command.main(["export", str(path), "-o", str(header)]) == 0
    assert header.exists()
