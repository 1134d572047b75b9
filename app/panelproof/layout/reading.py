"""Reading a layout file."""

from __future__ import annotations

import stat
from pathlib import Path

import msgspec

from panelproof.layout.checking import check_references
from panelproof.layout.document import Layout
from panelproof.layout.migrating import present
from panelproof.layout.saving import in_words
from panelproof.layout.syntax import GREATEST_SIZE, load
from panelproof.problem import Problem


def read(path: Path) -> Layout:
    """Return the layout that a file holds, its references checked; fonts and pictures are not looked at.

    Raises Problem for the first thing that is wrong, its place being the path, then the place in the file:
    ``kiln.panel.json: screens[0].parts[3].type``.
    """
    try:
        if not stat.S_ISREG(path.stat().st_mode):
            what = "a folder" if path.is_dir() else "no ordinary file"
            raise Problem(f"this is {what}, not a layout file", str(path))
        with path.open("rb") as file:
            data = file.read(GREATEST_SIZE + 1)
    except OSError as error:
        raise Problem(f"the file cannot be read: {in_words(error)}", str(path)) from None
    except ValueError:  # a NUL in the path
        raise Problem(
            "there can be no file of this name", str(path).replace("\0", "\N{REPLACEMENT CHARACTER}")
        ) from None
    return parse(data, str(path))


def parse(data: bytes, name: str = "") -> Layout:
    """Return the layout that the bytes of a file hold; `name` begins the place of a Problem, as in `read`."""
    try:
        layout = from_tree(present(load(data)))
        check_references(layout)
    except Problem as problem:
        place = ": ".join(part for part in (name, problem.place) if part)
        raise Problem(problem.message, place) from None
    return layout


def from_tree(tree: object) -> Layout:
    """Return the layout of a tree of plain values; raises Problem for what is of a wrong kind or size."""
    try:
        return msgspec.convert(tree, Layout)
    except msgspec.ValidationError as error:
        from panelproof.layout.explaining import faults  # noqa: PLC0415 - only needed when something is wrong

        for problem in faults(tree):
            raise problem from None
        raise Problem(f"this is no layout ({error})") from None


def valid(layout: Layout) -> Layout:
    """Return a layout made in code as a file would hold it: numbers of real ranges floats, lists tuples.

    Raises Problem for a value that a file could not hold; references are not looked at.
    """
    return from_tree(msgspec.to_builtins(layout, builtin_types=()))
