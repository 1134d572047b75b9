"""Format numbers: older ones are brought up to date, newer ones refused before anything else is looked at."""

from __future__ import annotations

import pytest
from tests.layout.tree import TREE, encoded

from panelproof.layout.document import FORMAT
from panelproof.layout.migrating import MIGRATIONS, Tree, present
from panelproof.layout.reading import parse
from panelproof.problem import Problem


def size_became_pixels(tree: Tree) -> Tree:
    types = [{"pixels": spec["size"], "name": spec["name"]} for spec in tree["types"]]
    return {**tree, "types": types}


def inks_became_named(tree: Tree) -> Tree:
    return {**tree, "inks": [{"name": name} for name in tree["inks"]]}


INJECTED = {1: size_became_pixels, 2: inks_became_named}
OLD: Tree = {"format": 1, "types": [{"name": "text", "size": 16}], "inks": ["black"]}
NEW: Tree = {"format": 3, "types": [{"name": "text", "pixels": 16}], "inks": [{"name": "black"}]}


def refusal(tree: object, newest: int = 3) -> str:
    with pytest.raises(Problem) as caught:
        present(tree, INJECTED, newest)
    return str(caught.value)


def test_old_trees_are_brought_up_to_date_step_by_step() -> None:
    assert present(OLD, INJECTED, 3) == NEW
    assert present(size_became_pixels({**OLD, "format": 2}), INJECTED, 3) == NEW
    assert OLD["format"] == 1


def test_a_present_tree_stays_as_it_is() -> None:
    assert present(NEW, INJECTED, 3) is NEW


def test_newer_trees_are_refused() -> None:
    assert refusal({"format": 4}) == (
        "format: the layout is of format 4, and this version of Panelproof reads none above 3;"
        " get a newer version"
    )


def test_the_number_is_looked_at_before_all_else() -> None:
    with pytest.raises(Problem, match="get a newer version"):
        parse(encoded({"format": FORMAT + 1, "panel": "of another kind", "and": "more"}))


def test_a_tree_that_does_not_keep_to_its_number_is_refused() -> None:
    does_not = "format: the layout does not keep to format 1, of which it says it is; it cannot be read"
    assert refusal({"format": 1}) == does_not
    assert refusal({"format": 1, "types": 5}) == does_not
    assert refusal({"format": 1, "types": ["text"]}) == does_not


def test_a_number_that_nothing_leads_on_from_is_refused() -> None:
    with pytest.raises(Problem, match="layouts of format 1 can no longer be read"):
        present({"format": 1}, {2: inks_became_named}, 3)


@pytest.mark.parametrize("number", [0, -1, True, 1.0, "1", None, [1]])
def test_what_is_no_format_number(number: object) -> None:
    assert refusal({"format": number}).startswith("format: a format number is a whole number from 1, not ")


def test_every_older_format_can_be_read() -> None:
    assert sorted(MIGRATIONS) == list(range(1, FORMAT))
    assert TREE["format"] == FORMAT
