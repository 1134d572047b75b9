"""What a header's code takes in flash, estimated from figures that were fitted to compiled headers.

Nobody who checks a layout need have a compiler: `code.json` says, for each processor, what each thing a header can
hold adds to its code, in bytes. It is written by `python -m tests.firmware.codesizes`, which compiles many headers
at -Os.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from panelproof.content.format import conversions
from panelproof.content.spec import Choice, FreeText, RealRange, WholeRange
from panelproof.firmware.data import Data, changes_by_parts, data
from panelproof.firmware.levels import levels
from panelproof.firmware.memory import fields
from panelproof.firmware.names import lower
from panelproof.firmware.rasters import rasters
from panelproof.firmware.widths import area_type
from panelproof.layout.parts import Box, Field, Icon, Label, Meter, Picture, Rule
from panelproof.material import Material

FIGURES = Path(__file__).parent / "code.json"
GROUPS = ("drawing", "texts")
TEXTS_BEGIN = "/* ---- Texts of fields"
_HELPER = re.compile(r"^static (?!.*_CONST )[^;={\n]*?\b(\w+)\(", re.MULTILINE)
Needs = Mapping[str, int]


@dataclass(frozen=True, slots=True)
class Estimate:
    """Bytes of code: of what draws screens and parts, and of what prints texts."""

    drawing: int
    texts: int

    @property
    def bytes(self) -> int:
        """All of it."""
        return self.drawing + self.texts


@dataclass(frozen=True, slots=True)
class Processor:
    """A processor with its figures: of each group, the bytes that each need adds.

    `stack` is the deepest that was measured under a drawing function, in bytes; `within` how far estimates of
    code lay from what was compiled, at most, as a share.
    """

    name: str
    title: str
    pointer: int
    copies_strings: bool
    stack: int
    within: float
    figures: Mapping[str, Mapping[str, float]]

    def estimate(self, needs: Needs) -> Estimate:
        """Return the bytes of code that a layout with these needs takes, about."""
        sums = [
            max(round(sum(worth * needs.get(name, 0) for name, worth in self.figures[group].items())), 0)
            for group in GROUPS
        ]
        return Estimate(*sums)


@lru_cache(maxsize=1)
def processors() -> tuple[Processor, ...]:
    """Return the processors that there are figures of."""
    held = json.loads(FIGURES.read_text(encoding="utf-8"))["processors"]
    return tuple(
        Processor(
            name,
            one["title"],
            one["pointer"],
            one["copies_strings"],
            one["stack"],
            one["within"],
            one["figures"],
        )
        for name, one in held.items()
    )


def helpers(header: str) -> tuple[frozenset[str], frozenset[str]]:
    """Return the names of the functions that a header keeps to itself, its own name cut off: for drawing, for texts."""
    layout = lower(header.split(":", 1)[0].removeprefix("/* "))
    drawing, _, texts = header.partition(TEXTS_BEGIN)

    def named(part: str) -> frozenset[str]:
        return frozenset(name.removeprefix(f"{layout}_") for name in _HELPER.findall(part))

    return named(drawing), named(texts)


def needs(material: Material, header: str) -> Needs:
    """Count what a header of the layout needs code for; needs of texts begin with `text`."""
    layout = material.layout
    parts = [part for screen in layout.screens for part in screen.parts]
    found = Counter[str](type(part).__name__.lower() for part in parts)
    found["screen"] = len(layout.screens)
    shown = [part for part in parts if isinstance(part, Label | Field | Icon | Meter | Picture)]
    outlined = sum(isinstance(part, Box) and part.outline is not None for part in parts)
    found["outlined"] = outlined
    found["thin"] = sum(isinstance(part, Box) and part.fill is None for part in parts)
    found["fills"] = int(
        any(isinstance(part, Box | Rule) for part in parts) or any(s.clears for s in layout.screens)
    )
    found["meters"], found["pictures"] = int("meter" in found), int("picture" in found)
    found["passes"] = int(any(isinstance(part, Label | Field | Icon) for part in shown))
    if found["passes"]:
        made = data(material)
        # Each thing that the templates ask for: what it adds was fitted too.
        found.update({f"is {name}": 1 for name in Data.__slots__ if getattr(made, name) is True})
        found["blends"] = int(bool(made.ramps))
        found["long codes"] = int(made.lead > 1)
        found["wide places"] = int(made.px != "int")
        found["both encodings"] = int(made.rows and made.runs)
        found["both in one depth"] = int(made.rows and made.runs and made.one_depth)
        found["both in changes"] = int(made.rows and made.runs and made.changes)
        found["runs in changes"] = int(made.runs and made.changes)
    found["updates"] = (found["field"] + found["icon"] + found["meter"]) * (layout.panel.refresh == "part")
    bars, pictures = levels(layout, area_type(layout.panel)), rasters(material)
    if bars is not None:
        for name in ("upright", "lying", "backward"):
            found[f"bars {name}"] = int(getattr(bars, name))
        found["bars limits"] = int(bool(bars.limits))
        found["one bar"] = int(found["meter"] == 1)
    if pictures is not None:
        found.update({f"pictures {form}": 1 for form in pictures.forms})
        found["forms"] = int(len(pictures.forms) > 1)
        found["one picture"] = int(found["picture"] == 1)
    found["changing"] = sum(map(changes_by_parts, parts)) * (layout.panel.refresh == "part")
    for part in fields(layout):
        found["text functions"] += 1
        found["text faults"] += part.content.fault is not None
        for conversion, argument in zip(
            conversions(part.content.format), part.content.arguments, strict=True
        ):
            match argument:
                case WholeRange():
                    found["text wholes"] += 1
                    found["text stepped"] += argument.step > 1
                    found["text wide"] += conversion.length in ("l", "ll", "j")
                case RealRange():
                    found["text reals"] += 1
                case Choice():
                    found["text choices"] += 1
                case FreeText():
                    found["text frees"] += 1
    drawing, texts = helpers(header)
    found.update({f"has {name}": 1 for name in drawing})
    found.update({f"text has {name}": 1 for name in texts})
    return found
