"""README says what there is: commands, rules, panels, starters, pictures and paths."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from panelproof.layout.rulenames import CAUTIONS, FAULTS, OF_SCREENS
from panelproof.starters.description import descriptions
from panelproof.starters.panels import panels
from panelproof.tasks import TASKS

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
NUMBERS = {9: "nine", 10: "ten", 11: "eleven", 12: "twelve"}


def rows(heading: str) -> list[str]:
    """The first column of the table under a head row, its words apart."""
    _, _, rest = README.partition(f"| {heading} |")
    table, _, _ = rest.partition("\n\n")
    return [word for row in table.splitlines()[2:] for word in re.split(r"[,\s]+", row.split("|")[1].strip())]


def test_every_rule_is_in_a_table() -> None:
    assert set(rows("fault")) | set(rows("caution")) == {*FAULTS, *CAUTIONS, *OF_SCREENS}


def test_every_command_is_in_the_table() -> None:
    _, _, rest = README.partition("| command |")
    table, _, _ = rest.partition("\n\n")
    named = set(re.findall(r"`panelproof ([a-z]+)", table))
    assert named == set(TASKS)


def test_panels_and_starters_are_counted_right() -> None:
    assert f"lists {len(panels())} panels" in README
    assert f"lists {NUMBERS[len(descriptions())]} layouts" in README


@pytest.mark.parametrize("page", ["README.md", "DEVELOPERS.md", "layouts/README.md", "fonts_free/README.md"])
def test_every_link_and_picture_is_there(page: str) -> None:
    text = (ROOT / page).read_text(encoding="utf-8")
    links = [link for link in re.findall(r"\]\(([^)#]+)", text) if not link.startswith("http")]
    assert [link for link in links if not (ROOT / page).parent.joinpath(link).exists()] == []


@pytest.mark.parametrize("page", ["README.md", "DEVELOPERS.md"])
def test_every_path_that_is_named_is_there(page: str) -> None:
    text = (ROOT / page).read_text(encoding="utf-8")
    paths = re.findall(r"`((?:app|tests|examples|layouts|fonts_free)/[\w./-]+)`", text)
    assert paths
    assert [path for path in paths if "NAME" not in path and not (ROOT / path).exists()] == []
