"""Bringing a layout file of an older format number up to the present one."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from panelproof.layout.document import FORMAT
from panelproof.layout.wording import clipped, described
from panelproof.problem import Problem

Tree = dict[str, Any]
Migration = Callable[[Tree], Tree]

# From each older format number to the next; a migration may take its file to be right and raise where not.
MIGRATIONS: Mapping[int, Migration] = {}


def present(tree: object, migrations: Mapping[int, Migration] = MIGRATIONS, newest: int = FORMAT) -> Tree:
    """Return the tree of a layout file in the format `newest`, whatever number it was written with.

    Raises Problem (place `format`, or none) for a tree that is no object, has no usable format number, is of
    a newer format, or of an older one that it does not keep to.
    """
    if not isinstance(tree, dict):
        raise Problem(f"a layout is an object {{ }}, but the file holds {described(tree)}")
    if "format" not in tree:
        raise Problem(f'the key `format` is missing from the layout; begin it with "format": {newest}')
    number = tree["format"]
    if not isinstance(number, int) or isinstance(number, bool) or number < 1:
        raise Problem(f"a format number is a whole number from 1, not {described(number)}", "format")
    if number > newest:
        raise Problem(
            f"the layout is of format {clipped(str(number))}, and this version of Panelproof reads none above"
            f" {newest}; get a newer version",
            "format",
        )
    while number < newest:
        if number not in migrations:
            raise Problem(f"layouts of format {number} can no longer be read", "format")
        try:
            tree = migrations[number](tree)
        except (LookupError, TypeError, ValueError, AttributeError):
            message = (
                f"the layout does not keep to format {number}, of which it says it is; it cannot be read"
            )
            raise Problem(message, "format") from None
        number += 1
        tree = {**tree, "format": number}
    return tree
