"""Layouts and captures with one thing wrong, made on purpose."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
from msgspec.structs import replace
from tests.picture import tank

from panelproof.device.capture import Capture, Reading
from panelproof.device.outcome import Outcome, compare
from panelproof.layout.document import Layout
from panelproof.layout.panel import Panel
from panelproof.layout.reading import read
from panelproof.material import Material, gather
from panelproof.picture.frame import Codes, screen_frame
from panelproof.picture.moments import ShownMoment, moment
from panelproof.picture.values import Values

ROOT = Path(__file__).parents[2]
KILN = ROOT / "examples" / "kiln" / "kiln.panel.json"


@lru_cache(maxsize=1)
def kiln() -> Material:
    return gather(read(KILN), KILN.parent)


@lru_cache(maxsize=1)
def ramp() -> ShownMoment:
    return moment(kiln(), "ramp")


@lru_cache(maxsize=1)
def mono() -> Material:
    """The rain tank on a one-bit panel."""
    described = tank.layout(Panel(120, 64, "mono", refresh="whole"))
    types = tuple(replace(spec, rendering="one-bit") for spec in described.types)
    inks = tuple(
        replace(ink, colour="#000000" if ink.name == "slate" else ink.colour) for ink in described.inks
    )
    return gather(replace(described, types=types, inks=inks), Path())


def with_part(layout: Layout, screen: str, part: str, **changes: Any) -> Layout:
    screens = tuple(
        replace(
            one,
            parts=tuple(replace(each, **changes) if each.name == part else each for each in one.parts),
        )
        if one.name == screen
        else one
        for one in layout.screens
    )
    return replace(layout, screens=screens)


def with_type(layout: Layout, name: str, **changes: Any) -> Layout:
    types = tuple(replace(one, **changes) if one.name == name else one for one in layout.types)
    return replace(layout, types=types)


def shown(layout: Layout, values: Values | None = None) -> Codes:
    """The kiln's readings, drawn by another layout than the one they are compared with."""
    material = gather(layout, KILN.parent)
    return screen_frame(material, material.screen("readings"), values or ramp().values).codes


def changed(**parts: str) -> Values:
    values = ramp().values
    texts = {name: parts.get(name.replace("-", "_"), text) for name, text in values.texts.items()}
    states = {name: parts.get(name, state) for name, state in values.states.items()}
    return Values(texts, states, values.levels)


def right() -> Codes:
    return shown(kiln().layout)


def judged(codes: Codes, material: Material | None = None, name: str = "ramp") -> Outcome:
    material = material or kiln()
    found = moment(material, name)
    capture = Capture("rgb565", (Reading("", np.ascontiguousarray(codes)),))
    return compare(material, material.screen(found.screen), found.values, capture)


def told(outcome: Outcome) -> dict[str, str]:
    """The words about each part that is wrong; `*` for the whole picture."""
    found = {
        part.name: "; ".join(cause.words for cause in part.causes) for part in outcome.parts if part.causes
    }
    if outcome.causes:
        found["*"] = "; ".join(cause.words for cause in outcome.causes)
    return found
