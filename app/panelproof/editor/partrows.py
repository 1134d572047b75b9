"""What the list of parts says of each part, and the order of drawing."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from msgspec.structs import replace

from panelproof.editor.edits import replace_screen
from panelproof.editor.signs import WORDS, Sign
from panelproof.layout.document import Layout, Screen
from panelproof.layout.parts import Box, Field, Icon, Label, Meter, Part, Picture, Rule
from panelproof.proof.extent import Extent
from panelproof.proof.finding import Finding
from panelproof.proof.words import counted

LEVELS: tuple[Sign, ...] = ("fault", "caution", "note", "good")
SIDES = ("left", "top", "right", "bottom")


@dataclass(frozen=True, slots=True)
class Figure:
    """What a part shows at most, in words, and the pixels it leaves on each side of what holds it.

    `spare` (left, top, right, bottom) counts to the padding box, or without one to the panel's edges;
    negative where ink is cut off, None where a part inks nothing.
    """

    kind: Sign
    detail: str
    spare: tuple[int, int, int, int] | None


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the list; `verdict` is `pending` while the proof is not current."""

    name: str
    figure: Figure
    verdict: Sign
    tip: str = ""
    hidden: bool = False
    locked: bool = False

    @property
    def spare_words(self) -> str:
        """The spare pixels as arrows and numbers, empty where there are none to count."""
        spare = self.figure.spare
        if spare is None:
            return ""
        shown = (f"{arrow} {by}".replace("-", "−") for arrow, by in zip("←↑→↓", spare, strict=True))
        return "  ".join(shown)

    @property
    def spoken(self) -> str:
        """The whole row in words, for those who hear it."""
        spare = self.figure.spare
        detail = f"longest text {self.figure.detail}" if self.figure.kind == "field" else self.figure.detail
        parts = [f"{self.figure.kind} {self.name}", detail]
        if spare is not None:
            sides = ", ".join(f"{by} {side}" for by, side in zip(spare, SIDES, strict=True))
            parts.append(f"spare pixels {sides}")
        parts.append(WORDS[self.verdict])
        parts += [word for word, on in (("hidden", self.hidden), ("locked", self.locked)) if on]
        return "; ".join(parts)


def figure(extent: Extent) -> Figure:
    """Return what the list says of a part."""
    part = extent.part
    kind, detail = _detail(part, extent)
    if not extent.reach:
        return Figure(kind, detail, None)
    x, y, width, height = extent.reach.bounds()
    left, top, outer_width, outer_height = extent.padding or extent.ink.frame
    spare = x - left, y - top, left + outer_width - x - width, top + outer_height - y - height
    return Figure(kind, detail, spare)


def _detail(part: Part, extent: Extent) -> tuple[Sign, str]:
    match part:
        case Label():
            return "label", part.text
        case Field():
            return "field", extent.footprint.longest if extent.footprint else ""
        case Icon():
            return "icon", counted(len(part.states), "state")
        case Rule():
            return "rule", f"{part.length} × {part.thickness}, {part.direction}"
        case Box():
            return "box", f"{part.width} × {part.height}"
        case Meter():
            return "meter", f"{part.least} to {part.greatest}"
        case Picture():
            return "picture", Path(part.picture).name


def verdict(part: str, screen: str, findings: Iterable[Finding]) -> tuple[Sign, str]:
    """Return the most serious level among a part's findings, and the message of the first of that level."""
    about = [
        finding
        for finding in findings
        if finding.screen == screen
        and (finding.part == part or (finding.other == part and finding.rule != "residue"))
    ]
    for level in LEVELS:
        message = next((finding.message for finding in about if finding.level == level), None)
        if message is not None:
            return level, message
    return "good", ""


# -- order -------------------------------------------------------------------------------------------------


def carried(order: Sequence[str], chosen: Collection[str], index: int) -> list[str]:
    """Return an order in which the chosen names stand together before what was number `index`."""
    head = [name for name in order[:index] if name not in chosen]
    tail = [name for name in order[index:] if name not in chosen]
    return head + [name for name in order if name in chosen] + tail


def stepped(order: Sequence[str], chosen: Collection[str], step: int) -> list[str]:
    """Return an order in which each chosen name stands one place earlier (-1) or later (1)."""
    names = list(order)[:: step * -1]
    for place, name in enumerate(names):
        if name in chosen and place and names[place - 1] not in chosen:
            names[place - 1], names[place] = name, names[place - 1]
    return names[:: step * -1]


def in_order(layout: Layout, screen: Screen, order: Sequence[str]) -> Layout:
    """Return the layout with a screen's parts drawn in another order."""
    parts = {part.name: part for part in screen.parts}
    return replace_screen(layout, screen.name, replace(screen, parts=tuple(parts[name] for name in order)))
