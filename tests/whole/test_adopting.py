"""Values nudged by hand in a header come back into the layout, each kind of constant, and both sides' changes are told."""

from __future__ import annotations

import random
import re
import subprocess
from functools import lru_cache
from pathlib import Path

import pytest
from msgspec.structs import replace
from tests.device.making import KILN, kiln, with_part
from tests.firmware.harness import installed
from tests.firmware.layouts import rich

from panelproof.adopting import Adoption, Slot, adopt, slots
from panelproof.command import main
from panelproof.cvalue import NoValue
from panelproof.cvalue import value as worked_out
from panelproof.firmware.header import header
from panelproof.firmware.names import upper
from panelproof.firmware.reading import parsed
from panelproof.layout.reading import read
from panelproof.layout.writing import encode, write
from panelproof.material import Material, gather
from panelproof.problem import Problem


@lru_cache(maxsize=4)
def headed(material: Material) -> str:
    return header(material)


def nudged(text: str, constant: str, value: object) -> str:
    changed, count = re.subn(
        rf"^(#define {constant}[ \t]+)(\"(?:[^\"\\]|\\.)*\"|\S+)",
        lambda match: f"{match[1]}{value}",
        text,
        flags=re.M,
    )
    assert count == 1, constant
    return changed


def constants(text: str) -> dict[str, str]:
    found = parsed(text)
    assert found is not None
    return dict(found.constants)


def other(material: Material, constant: str, slot: Slot, text: str) -> str:
    """Another value for a constant, of its own kind, that makes a layout."""
    layout = material.layout
    now = constants(text)[constant]
    if slot.kind == "ink":
        names = [upper(layout.name, "ink", ink.name) for ink in layout.inks]
        return next(name for name in names if name != now)
    if slot.kind == "alignment":
        names = [f"{upper(layout.name)}_{end}" for end in ("STARTS_AT_X", "CENTRED_ON_X", "ENDS_AT_X")]
        return next(name for name in names if name != now)
    if slot.kind == "colour":
        return "0x0841" if now != "0x0841" else "0x1082"
    number = int(now.strip("()")) if now.strip("()").lstrip("-").isdigit() else None
    if number is None:
        return f"({now} + 3)"
    # A thinner outline always goes into its box.
    return str(number + (-1 if slot.key == "thickness" and number > 1 else 1))


def numbers(text: str) -> dict[str, int | str]:
    """What constants stand for, where that is a number."""
    known = constants(text)
    found: dict[str, int | str] = {}
    for name, source in known.items():
        try:
            found[name] = worked_out(source, known)
        except NoValue:
            found[name] = source
    return found


def valid_rich(folder: Path) -> Material:
    """The layout with everything in it, its two fat outlines made such that a file may hold them."""
    material = rich(folder)
    layout = with_part(material.layout, "readings", "button", thickness=2)
    return gather(with_part(layout, "readings", "narrow", thickness=1, outline=None), folder)


@pytest.mark.parametrize("which", ["kiln", "rich"])
def test_each_constant_comes_back_alone(which: str, tmp_path: Path) -> None:
    material = kiln() if which == "kiln" else valid_rich(tmp_path)
    text = headed(material)
    known, before = constants(text), numbers(text)
    tried = [(constant, slot) for constant, slot in slots(material.layout) if constant in known]
    kinds = {slot.kind for _, slot in tried} | {slot.key for _, slot in tried}
    wanted = {
        "number",
        "ink",
        "alignment",
        "colour",
        "baseline",
        "padding.x",
        "length",
        "thickness",
        "ground",
    }
    assert kinds >= wanted
    # Every screen's grounds and inks, and of numbers those of some parts: a header takes a while to make.
    chance = random.Random(5)
    for constant, slot in chance.sample(tried, 18):
        nudge = nudged(text, constant, other(material, constant, slot, text))
        adopted = adopt(material, nudge)
        assert [change.constant for change in adopted.changes] == [constant]
        assert (adopted.refused, adopted.conflicts) == ((), ())
        after = numbers(header(gather(adopted.layout, material.folder)))
        asked = numbers(nudge)
        assert after[constant] == asked[constant] != before[constant]
        differing = {one for one in asked if after[one] != asked[one]}
        assert differing == {f"{upper(material.layout.name)}_LAYOUT_DIGEST"}


def test_many_at_once_and_the_header_of_the_outcome_is_the_nudged_one() -> None:
    material, chance = kiln(), random.Random(11)
    text = headed(material)
    tried = [(constant, slot) for constant, slot in slots(material.layout) if constant in constants(text)]
    for _ in range(4):
        changed = text
        for constant, slot in chance.sample(tried, 12):
            changed = nudged(changed, constant, other(material, constant, slot, text))
        adopted = adopt(material, changed)
        after, asked = numbers(header(gather(adopted.layout, material.folder))), numbers(changed)
        assert {one for one in asked if after[one] != asked[one]} == {"KILN_LAYOUT_DIGEST"}


def test_expressions_and_other_spellings_of_the_same_are_understood() -> None:
    material = kiln()
    text = headed(material)
    same = nudged(text, "KILN_READINGS_UNIT_X", "(KILN_READINGS_CHAMBER_X+7)")
    same = nudged(same, "KILN_READINGS_PHASE_ALIGNMENT", "2")
    same = nudged(same, "KILN_READINGS_PHASE_INK", "0xFFFF")
    assert adopt(material, same).changes == ()
    moved = nudged(text, "KILN_READINGS_UNIT_X", "(KILN_READINGS_CHAMBER_X + 2 * 4)")
    assert [(one.old, one.new) for one in adopt(material, moved).changes] == [(203, 204)]
    assert adopt(material, text.replace("\n", "\r\n")).changes == ()


@pytest.mark.parametrize(
    ("constant", "value", "words"),
    [
        ("KILN_READINGS_UNIT_TEXT", '"F"', 'is "F", and "\\302\\260C" by the layout'),
        ("KILN_READINGS_CHAMBER_GREATEST", "1400", "is 1400, and 1320 by the layout"),
        ("KILN_READINGS_CHAMBER_FORMAT", '"%i"', "change it there"),
        ("KILN_PANEL_WIDTH", "320", "is 320, and 240 by the layout"),
        ("KILN_READINGS_RADIO_STATE_UP", "9", "is 9, and 3 by the layout"),
        ("KILN_READINGS_UNIT_X", "NOWHERE", "`NOWHERE` is no constant of the header"),
        ("KILN_READINGS_UNIT_INK", "0x1234", "no ink of the code 0x1234"),
        ("KILN_READINGS_UNIT_ALIGNMENT", "7", "is no alignment"),
    ],
)
def test_what_cannot_be_taken_back_is_listed(constant: str, value: str, words: str) -> None:
    adopted = adopt(kiln(), nudged(headed(kiln()), constant, value))
    assert adopted.changes == ()
    assert adopted.layout == kiln().layout
    assert len(adopted.refused) == 1
    assert f"`{constant}`" in adopted.refused[0]
    assert words in adopted.refused[0]


def test_other_changes_of_a_header_are_told() -> None:
    text = headed(kiln())
    added = text.replace("#endif", "#define KILN_READINGS_BRIGHTNESS 7\n#endif", 1)
    assert adopt(kiln(), added).refused == ("`KILN_READINGS_BRIGHTNESS` (7) is no constant of the layout",)
    gone = re.sub(r"#define KILN_READINGS_UNIT_X .*\n", "", text)
    assert "`KILN_READINGS_UNIT_X` is missing from the header" in adopt(kiln(), gone).refused
    edited = nudged(text, "KILN_READINGS_UNIT_X", 204).replace("(void)port;", "(void) port;")
    if edited != nudged(text, "KILN_READINGS_UNIT_X", 204):
        assert any("by hand" in one for one in adopt(kiln(), edited).refused)


@pytest.mark.parametrize("value", ["99999", "(-5000)"])
def test_a_value_that_no_layout_can_hold(value: str) -> None:
    with pytest.raises(Problem, match="make no layout"):
        adopt(kiln(), nudged(headed(kiln()), "KILN_READINGS_UNIT_X", value))


def test_no_header_or_another_layouts(tmp_path: Path) -> None:
    with pytest.raises(Problem, match="not a whole header"):
        adopt(kiln(), "int main(void) { return 0; }")
    with pytest.raises(Problem, match="of the layout `rain-tank`, not of `kiln`"):
        adopt(kiln(), headed(rich(tmp_path)))


# -- both sides changed ------------------------------------------------------------------------------------------


def both(prefer: bool = False, with_base: bool = True) -> Adoption:
    """The header: unit 203 → 204, line y 84 → 86, left x 6 → 8. The layout: unit → 210, phase x → 230, left x → 8."""
    text = headed(kiln())
    for constant, value in (("UNIT_X", 204), ("LINE_Y", 86), ("LEFT_X", 8)):
        text = nudged(text, f"KILN_READINGS_{constant}", value)
    layout = kiln().layout
    for name, x in (("unit", 210), ("phase", 230), ("left", 8)):
        layout = with_part(layout, "readings", name, x=x)
    return adopt(gather(layout, kiln().folder), text, kiln() if with_base else None, prefer_header=prefer)


def test_with_a_base_only_true_conflicts_are_conflicts() -> None:
    adopted = both()
    assert [(one.slot.where, one.old, one.new) for one in adopted.changes] == [("readings / line: y", 84, 86)]
    assert [(one.slot.where, one.header, one.layout, one.base) for one in adopted.conflicts] == [
        ("readings / unit: x", 204, 210, 203)
    ]
    parts = {part.name: part for part in adopted.layout.screens[1].parts}
    assert [parts[name].x for name in ("unit", "phase", "left")] == [210, 230, 8]
    taken = both(prefer=True)
    assert {part.name: part for part in taken.layout.screens[1].parts}["unit"].x == 204
    assert len(taken.conflicts) == 1


def test_without_a_base_every_difference_is_one() -> None:
    adopted = both(with_base=False)
    assert adopted.changes == ()
    assert [(one.slot.where, one.base) for one in adopted.conflicts] == [
        ("readings / unit: x", None),
        ("readings / line: y", None),
        ("readings / phase: x", None),
    ]


def test_a_part_that_the_layout_no_longer_has() -> None:
    text = nudged(headed(kiln()), "KILN_READINGS_UNIT_X", 204)
    layout = kiln().layout
    screens = tuple(
        replace(one, parts=tuple(p for p in one.parts if p.name != "unit")) for one in layout.screens
    )
    later = gather(replace(layout, screens=screens), kiln().folder)
    assert adopt(later, text, kiln()).refused == (
        "`KILN_READINGS_UNIT_X` is 204, but the layout has no readings / unit: x any more",
    )
    assert adopt(later, headed(kiln()), kiln()).refused == ()


# -- the command -------------------------------------------------------------------------------------------------


@pytest.fixture
def workshop(tmp_path: Path) -> tuple[Path, Path]:
    """A folder of the kiln's layout and its header, in a git repository."""
    installed("git")
    layout, text = tmp_path / "kiln.panel.json", tmp_path / "kiln.h"
    layout.write_bytes(KILN.read_bytes())
    text.write_text(headed(kiln()), encoding="ascii")
    for words in (["init", "-q"], ["add", "."], ["commit", "-q", "-m", "As it was"]):
        identity = ["-c", "user.name=Test", "-c", "user.email=test@example.org"]
        subprocess.run(["git", "-C", str(tmp_path), *identity, *words], check=True, capture_output=True)
    return layout, text


def rewrite(path: Path, constant: str, value: object) -> None:
    path.write_text(nudged(path.read_text(encoding="ascii"), constant, value), encoding="ascii")


def test_nothing_to_take(workshop: tuple[Path, Path], capsys: pytest.CaptureFixture[str]) -> None:
    layout, text = workshop
    before = layout.read_bytes()
    assert main(["adopt", str(layout), str(text)]) == 0
    assert "nothing to take back" in capsys.readouterr().out
    assert layout.read_bytes() == before


def test_taking_back_proves_and_writes(
    workshop: tuple[Path, Path], capsys: pytest.CaptureFixture[str]
) -> None:
    layout, text = workshop
    before = layout.read_bytes()
    rewrite(text, "KILN_READINGS_UNIT_X", 204)
    assert main(["adopt", str(layout), str(text), "--dry-run"]) == 0
    said = capsys.readouterr().out
    assert "readings / unit: x 203 → 204  (KILN_READINGS_UNIT_X)" in said
    assert "nothing was written" in said
    assert layout.read_bytes() == before
    assert main(["adopt", str(layout), str(text)]) == 0
    assert "texts proved" in capsys.readouterr().out
    assert layout.read_bytes() == encode(with_part(kiln().layout, "readings", "unit", x=204))
    assert main(["export", str(layout), "-o", str(text)]) == 0
    assert main(["adopt", str(layout), str(text)]) == 0


def test_faults_of_the_outcome_are_told(
    workshop: tuple[Path, Path], capsys: pytest.CaptureFixture[str]
) -> None:
    layout, text = workshop
    rewrite(text, "KILN_READINGS_CHAMBER_PADDING_WIDTH", 150)
    assert main(["adopt", str(layout), str(text)]) == 1
    assert "fault: fit: readings / chamber" in capsys.readouterr().out


def test_the_layout_of_the_headers_day_is_found_in_git(
    workshop: tuple[Path, Path], capsys: pytest.CaptureFixture[str]
) -> None:
    layout, text = workshop
    rewrite(text, "KILN_READINGS_LINE_Y", 86)
    write(with_part(read(layout), "readings", "phase", x=233), layout)
    assert main(["adopt", str(layout), str(text)]) == 0
    assert "readings / line: y 84 → 86" in capsys.readouterr().out
    parts = {part.name: part for part in read(layout).screens[1].parts}
    assert (parts["phase"].x, parts["line"].y) == (233, 86)  # type: ignore[union-attr]


def test_conflicts_are_told_and_nothing_is_written(
    workshop: tuple[Path, Path], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    layout, text = workshop
    rewrite(text, "KILN_READINGS_UNIT_X", 204)
    write(with_part(read(layout), "readings", "unit", x=205), layout)
    before = layout.read_bytes()
    assert main(["adopt", str(layout), str(text)]) == 1
    told = capsys.readouterr()
    assert (
        "conflict: readings / unit: x: 204 in the header, 205 in the layout, 203 when the header was made"
        in told.out
    )
    assert "nothing was written: 1 value changed on both sides" in told.err
    assert layout.read_bytes() == before
    assert main(["adopt", str(layout), str(text), "--base", str(layout)]) == 2
    assert "not the layout that the header was made from" in capsys.readouterr().err
    assert main(["adopt", str(layout), str(text), "--base", str(KILN)]) == 1
    assert main(["adopt", str(layout), str(text), "--despite-conflicts"]) == 0
    parts = {part.name: part for part in read(layout).screens[1].parts}
    assert parts["unit"].x == 204


def test_files_that_cannot_be_used(workshop: tuple[Path, Path], capsys: pytest.CaptureFixture[str]) -> None:
    layout, text = workshop
    assert main(["adopt", str(layout), str(text.with_name("none.h"))]) == 2
    assert "the header cannot be read" in capsys.readouterr().err
    text.write_bytes(b"\xff\xfe")
    assert main(["adopt", str(layout), str(text)]) == 2
    text.write_text("nothing")
    assert main(["adopt", str(layout), str(text)]) == 2
    assert "not a whole header" in capsys.readouterr().err
