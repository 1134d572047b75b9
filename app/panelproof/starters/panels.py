"""Panels in common use, by size and kind: what `layouts/panels.toml` says, each figure with its source."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from math import hypot
from pathlib import Path
from typing import Annotated, Any, Generic, Literal, TypeVar

from msgspec import Meta, Struct, field

from panelproof.layout.checking import check_references
from panelproof.layout.colour import ColourFormat
from panelproof.layout.document import FORMAT, Ink, Layout
from panelproof.layout.panel import Bus, Colour, Extent, Millimetres, Panel, Refresh, Shape
from panelproof.layout.reading import valid
from panelproof.layout.wording import quote
from panelproof.problem import Problem
from panelproof.starters.shelf import read, shelf

Source = Literal["from memory", "common practice", "reckoned"]
Kind = Literal[
    "colour LCD",
    "round colour LCD",
    "colour OLED",
    "monochrome OLED",
    "grey OLED",
    "reflective LCD",
    "e-paper",
]
Value = TypeVar("Value")
USUAL = "colour-240x135-1.14"
"""The panel where none is named."""
MILLIMETRES_AN_INCH = 25.4


class Figure(Struct, Generic[Value], frozen=True, forbid_unknown_fields=True):
    """One figure and where it comes from."""

    value: Value = field(name="is")
    source: Source


class ListedPanel(Struct, frozen=True, forbid_unknown_fields=True):
    """One panel of the list; `panels.toml` says what each figure means."""

    id: Annotated[str, Meta(pattern="^[a-z0-9]+([-.][a-z0-9]+)*$(?!\\n)", max_length=40)]
    kind: Kind
    pixels: Figure[tuple[Extent, Extent]]
    diagonal: Figure[Annotated[float, Meta(gt=0, le=100)]]
    glass: Figure[tuple[Millimetres, Millimetres]]
    colours: Figure[ColourFormat]
    refresh: Figure[Refresh]
    bus: Figure[Bus]
    shape: Shape = "rectangular"
    corner_radius: Figure[Annotated[int, Meta(ge=1, le=1024)]] | None = None
    palette: Figure[Annotated[tuple[Colour, ...], Meta(min_length=2, max_length=256)]] | None = None
    offset: Figure[tuple[Annotated[int, Meta(ge=0, le=4096)], Annotated[int, Meta(ge=0, le=4096)]]] | None = (
        None
    )

    @property
    def size(self) -> str:
        """The pixels in words, such as "240 × 135"."""
        return f"{self.pixels.value[0]} × {self.pixels.value[1]}"

    @property
    def title(self) -> str:
        """The panel in words, such as "1.14 in · 240 × 135"."""
        shape = "" if self.shape == "rectangular" else f", {self.shape}"
        return f"{self.diagonal.value:g} in · {self.size}{shape}{_looks(self)}"

    @property
    def panel(self) -> Panel:
        """The panel as a layout holds it."""
        return Panel(
            *self.pixels.value,
            self.colours.value,
            self.shape,
            self.corner_radius.value if self.corner_radius else 0,
            self.refresh.value,
            *self.glass.value,
            f"{self.diagonal.value:g} in {self.kind}, {self.size}",
            self.palette.value if self.palette else (),
            self.bus.value,
            self.offset.value if self.offset else (0, 0),
        )

    def figures(self) -> dict[str, Figure[Any]]:
        """Return every figure that is given, by its key."""
        held = {name: getattr(self, name) for name in self.__struct_fields__}
        return {name: value for name, value in held.items() if isinstance(value, Figure)}

    def reckoned_glass(self) -> tuple[float, float]:
        """Return the millimetres that diagonal and pixels give, pixels being square."""
        width, height = self.pixels.value
        across = width if self.shape == "round" else hypot(width, height)
        pitch = self.diagonal.value * MILLIMETRES_AN_INCH / across
        return width * pitch, height * pitch


class PanelList(Struct, frozen=True, forbid_unknown_fields=True):
    """The whole file."""

    panel: Annotated[tuple[ListedPanel, ...], Meta(min_length=1, max_length=1000)]


def _looks(listed: ListedPanel) -> str:
    """Return what sets panels of one size and shape apart: their colours."""
    if listed.palette and len(listed.palette.value) > 2:
        return f", {len(listed.palette.value)} colours"
    return ", greys" if listed.colours.value.startswith("grey") else ""


def read_panels(path: Path) -> tuple[ListedPanel, ...]:
    """Return the panels of a list; raises Problem with the place for the first thing that is wrong."""
    listed: tuple[ListedPanel, ...] = read(path, PanelList).panel
    for problem in _problems(listed):
        raise Problem(problem.message, f"{path}: {problem.place}")
    return listed


def _problems(listed: Sequence[ListedPanel]) -> Iterator[Problem]:
    seen: dict[str, int] = {}
    for number, one in enumerate(listed):
        place = f"panel[{number}]"
        if one.id in seen:
            yield Problem(
                f"there is a panel {quote(one.id)} already, panel[{seen[one.id]}]; rename one", f"{place}.id"
            )
        seen[one.id] = number
        try:
            check_references(valid(Layout(FORMAT, "panel", one.panel, inks=(Ink("ground", "#000000"),))))
        except Problem as problem:
            yield Problem(problem.message, place + problem.place.removeprefix("panel"))
        for given, worked in zip(one.glass.value, one.reckoned_glass(), strict=True):
            if one.glass.source == "reckoned" and abs(given - worked) > 0.051:
                yield Problem(
                    f"{given} mm is not what {one.diagonal.value:g} in and {one.size} pixels give, {worked:.1f} mm",
                    f"{place}.glass",
                )


@lru_cache(maxsize=1)
def panels() -> tuple[ListedPanel, ...]:
    """Return every panel of the bundled list, in its order."""
    return read_panels(shelf() / "panels.toml")


def panel_of(name: str) -> ListedPanel:
    """Return the panel of that id; raises Problem with the nearest ids where there is none."""
    for listed in panels():
        if listed.id == name:
            return listed
    raise Problem(f"there is no panel {quote(name)}; {near(name, [one.id for one in panels()], 'panels')}")


def near(word: str, known: Sequence[str], command: str) -> str:
    """Return how a sentence about an unknown word goes on: the nearest words, or the command that lists all."""
    from difflib import get_close_matches  # noqa: PLC0415 - only to word a message

    low = word[:100].lower()
    begin = [one for one in known if low and one.startswith(low)]
    like = [one for one in get_close_matches(low, known, n=3, cutoff=0.5) if one not in begin]
    found = [f"`{one}`" for one in (begin + like)[:3]]
    if not found:
        return f"`panelproof {command}` lists all"
    return f"the nearest {'is' if len(found) == 1 else 'are'} {', '.join(found)}"
