"""Structures of constant data: their members just as wide as their values need, and how each is read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from panelproof.firmware import literals
from panelproof.firmware.names import upper


@dataclass(frozen=True, slots=True)
class Member:
    """One member: its name, the integer type that holds all its values, and what it stands for.

    One that `may_fold` is read by a macro; with `always` the value is the same in every row, and no member is kept.
    """

    name: str
    holds: str
    comment: str = ""
    may_fold: bool = False
    always: str = ""

    @property
    def bits(self) -> int:
        """Width of the member."""
        return int(self.holds.lstrip("uint"))


@dataclass(frozen=True, slots=True)
class Array:
    """One constant, its declarator's name and the lines of its value."""

    name: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """A table of numbers: its declared name, the integer type of its entries, its comment, and its lines."""

    name: str
    holds: str
    comment: str
    lines: tuple[str, ...]

    @property
    def c_type(self) -> str:
        """The type of an entry in C."""
        return self.holds if self.holds == "char" else f"{self.holds}_t"

    @property
    def bits(self) -> int:
        """Width of an entry."""
        return int(self.holds.lstrip("uint"))


@dataclass(frozen=True, slots=True)
class Record:
    """A structure and the constants of its type."""

    name: str
    comment: str
    members: tuple[str, ...]
    accessors: tuple[str, ...]
    arrays: tuple[Array, ...]


def ordered(members: Sequence[Member]) -> list[Member]:
    """Return members from the widest to the narrowest, so that no gaps lie between them."""
    return sorted(members, key=lambda member: -member.bits)


def record(
    layout: str, word: str, comment: str, members: Sequence[Member], arrays: Sequence[Array]
) -> Record:
    """Return the structure `LAYOUT_WORD_` with its members in the order given."""
    name = f"{layout}_{word}_"
    declared = literals.aligned(
        [
            (f"{one.holds}_t {one.name};", f"/* {one.comment} */" if one.comment else "")
            for one in members
            if not one.always
        ]
    )
    accessors = literals.aligned(
        [
            (f"#define {upper(layout, one.name)}_({word})", one.always or f"(({word})->{one.name})")
            for one in members
            if one.may_fold
        ]
    )
    return Record(name, f"/* {comment} */", tuple(declared), tuple(accessors), tuple(arrays))


def table(members: Sequence[Member], rows: Sequence[dict[str, str]]) -> list[str]:
    """Return rows as initialisers, their columns aligned."""
    cells = [
        [
            f"{row[member.name]}{'' if last else ','}"
            for last, member in zip([*[False] * (len(members) - 1), True], members, strict=True)
        ]
        for row in rows
    ]
    return [f"{{ {line} }}," for line in _filled(cells)]


def _filled(cells: Sequence[Sequence[str]]) -> list[str]:
    widths = [max(map(len, column)) for column in zip(*cells, strict=True)] if cells else []
    return [" ".join(f"{c:>{w}}" for c, w in zip(row, widths, strict=True)) for row in cells]
