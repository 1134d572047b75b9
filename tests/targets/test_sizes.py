"""The table of sizes in README: as the compilers give it now, and as its file says."""

from __future__ import annotations

import copy
import json

import pytest
from tests.targets import sizes
from tests.targets.machine import MACHINES

OLD = json.loads(sizes.FIGURES.read_text())


def test_the_table_is_what_the_compilers_give() -> None:
    for on in MACHINES:
        on.needed()
    found = sizes.differences(OLD, sizes.measured())
    assert not found, "\n".join([*found, "run: python -m tests.targets.sizes"])


def test_readme_shows_the_table() -> None:
    readme = sizes.README.read_text(encoding="utf-8")
    assert sizes.in_readme(readme, sizes.table(OLD)) == readme


def test_every_processor_and_column_has_its_figures() -> None:
    assert set(OLD["processors"]) == {on.name for on in MACHINES}
    for one in OLD["processors"].values():
        for figures in one["examples"].values():
            assert set(figures) == set(sizes.COLUMNS)
            assert figures["drawing"] > 300 and figures["stack"] > 50


def test_the_drawing_code_for_one_bit_type_is_as_small_as_was_aimed_at() -> None:
    """On a panel of 16-bit colours with kerned, packed type it is a little more: the table says how much."""
    for name, most in {"cortex-m0": 1000, "avr": 1500}.items():
        assert OLD["processors"][name]["examples"]["rain-tank"]["drawing"] <= most


def test_only_avr_needs_memory_and_only_for_texts() -> None:
    """Its constants are copied to memory unless they are placed apart; the drawing code's are."""
    for name, one in OLD["processors"].items():
        for figures in one["examples"].values():
            assert name == "avr" or figures["ram"] == 0


def test_nothing_but_the_table_is_changed() -> None:
    before = f"a\n{sizes.BEGIN}\nold\n{sizes.END}\nb\n"
    assert sizes.in_readme(before, "new") == f"a\n{sizes.BEGIN}\nnew\n{sizes.END}\nb\n"
    with pytest.raises(SystemExit, match="lacks the marks"):
        sizes.in_readme("a\n", "new")


def test_one_byte_more_is_told_with_the_same_compiler_and_a_tenth_with_another() -> None:
    name, example = next(iter(OLD["processors"])), next(iter(OLD["processors"][MACHINES[0].name]["examples"]))
    now = copy.deepcopy(OLD)
    assert sizes.differences(OLD, now) == []
    figures = now["processors"][name]["examples"][example]
    figures["drawing"] += 1
    assert len(sizes.differences(OLD, now)) == 1
    now["processors"][name]["compiler"] = "another 99"
    assert sizes.differences(OLD, now) == []
    figures["drawing"] = OLD["processors"][name]["examples"][example]["drawing"] * 9 // 8
    assert "drawing code" in sizes.differences(OLD, now)[0]
    del now["processors"][name]
    assert "other examples" in sizes.differences(OLD, now)[0]
