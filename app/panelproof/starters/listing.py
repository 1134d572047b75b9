"""Panels and starters as a person or a program reads them."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any

import msgspec

from panelproof.starters.description import Claims, claiming, descriptions
from panelproof.starters.panels import Figure, ListedPanel, panels

MARKS = {"common practice": "", "from memory": " ?", "reckoned": " ="}
LEGEND = (
    "? from memory: measure yours, or look into its data sheet"
    "   = reckoned from diagonal and pixels   else common practice"
)


def _marked(shown: str, *figures: Figure[Any]) -> str:
    """Return a cell's text with the marks of its figures' sources."""
    marks = dict.fromkeys(MARKS[figure.source] for figure in figures)
    return shown + "".join(marks) if shown else ""


def row(listed: ListedPanel) -> tuple[str, ...]:
    """Return a panel's cells, each with the mark of its source."""
    bus, glass = listed.bus.value, listed.glass.value
    clock = f"{bus.clock_hz / 1e6:g} MHz" if bus.clock_hz >= 10**6 else f"{bus.clock_hz / 1e3:g} kHz"
    lanes = f" × {bus.lanes}" if bus.lanes > 1 else ""
    colours = _marked(listed.colours.value, listed.colours)
    if listed.palette:
        colours = _marked(f"{len(listed.palette.value)} colours", listed.colours, listed.palette)
    shape = listed.shape
    if listed.corner_radius:
        shape_text = _marked(f"{shape} {listed.corner_radius.value}", listed.corner_radius)
    else:
        shape_text = "" if shape == "rectangular" else shape
    offset = _marked("{}, {}".format(*listed.offset.value), listed.offset) if listed.offset else ""
    return (
        listed.id, listed.kind, _marked(listed.size, listed.pixels), shape_text, colours,
        _marked(f"{listed.diagonal.value:g}", listed.diagonal),
        _marked(f"{glass[0]:g} × {glass[1]:g}", listed.glass), _marked(listed.refresh.value, listed.refresh),
        _marked(f"{bus.protocol} {clock}{lanes}", listed.bus), offset,
    )  # fmt: skip


HEADERS = ("id", "kind", "pixels", "shape", "colours", "inches", "mm", "refresh", "bus", "offset")


def table(rows: Sequence[Sequence[str]], headers: Sequence[str], form: str = "simple") -> str:
    """Return a plain table, or one in another form that tabulate knows."""
    from tabulate import tabulate  # noqa: PLC0415 - only lists need it

    made: str = tabulate(rows, headers=headers, tablefmt=form, disable_numparse=True)
    return made


def panels_text(listed: Sequence[ListedPanel]) -> str:
    """Return panels as a table with a line that explains its marks."""
    return f"{table([row(one) for one in listed], HEADERS)}\n{LEGEND}"


def panels_json(listed: Sequence[ListedPanel]) -> str:
    """Return panels as JSON, every figure with its source, and the starters that claim them."""
    held = [msgspec.to_builtins(one) | {"starters": list(claiming(one.panel))} for one in listed]
    return json.dumps(held, ensure_ascii=False, indent=2)


def found(wanted: str) -> tuple[ListedPanel, ...]:
    """Return the panels whose id, kind or size holds a text."""
    low = wanted.lower().replace(" x ", "x")
    return tuple(
        one
        for one in panels()
        if low in f"{one.id} {one.kind} {one.title} {one.size.replace(' × ', 'x')}".lower()
    )


def claims_text(claims: Claims) -> str:
    """Return in words which panels a starter is for."""
    words = []
    if len(claims.shapes) < 3:
        words.append(" or ".join(claims.shapes))
    if claims.look == "paper":
        words.append("dark on light")
    elif len(claims.formats) < 5:
        words.append(" or ".join(claims.formats))
    words.append(f"from {claims.least[0]} × {claims.least[1]}")
    if claims.least_round and "round" in claims.shapes and claims.least_round != claims.least:
        words.append(f"round from {claims.least_round[0]} × {claims.least_round[1]}")
    if claims.greatest:
        words.append(f"to {claims.greatest[0]} × {claims.greatest[1]}")
    return ", ".join(words)


def starters_text(names: Sequence[str]) -> str:
    """Return starters as a table, in the order of `names`."""
    every = descriptions()
    rows = [(name, every[name].title, claims_text(every[name].claims), every[name].purpose) for name in names]
    return table(rows, ("name", "what", "panels", "example"))


def starters_json(names: Sequence[str]) -> str:
    """Return starters as JSON, with the listed panels that they claim."""
    every = descriptions()
    held = [
        {
            "name": name,
            "title": every[name].title,
            "purpose": every[name].purpose,
            "claims": msgspec.to_builtins(every[name].claims),
            "panels": [one.id for one in panels() if name in claiming(one.panel)],
        }
        for name in names
    ]
    return json.dumps(held, ensure_ascii=False, indent=2)
