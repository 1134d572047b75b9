"""A starter as `layouts/starters/NAME.toml` describes it: its words, contents, icons, moments and claims."""

from __future__ import annotations

from functools import lru_cache
from typing import Annotated, Literal

from msgspec import Meta, Struct
from msgspec import field as default

from panelproof.content.spec import Content, Text
from panelproof.layout.colour import ColourFormat
from panelproof.layout.document import Argument
from panelproof.layout.panel import Panel, Refresh, Shape
from panelproof.layout.parts import Name, Period
from panelproof.problem import Problem
from panelproof.starters.panels import near
from panelproof.starters.shelf import read, shelf
from panelproof.starters.theme import Role, paper

Size = tuple[Annotated[int, Meta(ge=1)], Annotated[int, Meta(ge=1)]]


class Claims(Struct, frozen=True, forbid_unknown_fields=True):
    """The panels that a starter is for; `look` is `paper` for dark on light, `least` width and height."""

    least: Size
    greatest: Size | None = None
    shapes: tuple[Shape, ...] = ("rectangular", "rounded", "round")
    formats: tuple[ColourFormat, ...] = ("rgb565", "grey16", "grey4", "mono", "indexed")
    refresh: tuple[Refresh, ...] = ("part", "whole")
    look: Literal["any", "paper"] = "any"
    least_round: Size | None = None


class FieldText(Struct, frozen=True, forbid_unknown_fields=True):
    """What a field can show, and how often it is updated."""

    content: Content
    period_ms: Period = None


class IconPlan(Struct, frozen=True, forbid_unknown_fields=True):
    """A bundled icon, the states it uses, and whether it shows a link."""

    icon: str
    states: tuple[str, ...]
    link: bool = False
    period_ms: Period = None


class LimitPlan(Struct, frozen=True, forbid_unknown_fields=True):
    """A value that means something on a level bar, its word, and what the bar's ink is for from there."""

    at: int
    word: Name
    ink: Role | None = None
    mark: bool = True


class LevelPlan(Struct, frozen=True, forbid_unknown_fields=True):
    """The range of a level bar, the values that mean something, and how often it is updated."""

    least: int
    greatest: int
    limits: tuple[LimitPlan, ...] = ()
    period_ms: Period = None


class PlannedMoment(Struct, frozen=True, forbid_unknown_fields=True):
    """A moment of one screen; values of parts that a small panel leaves out are left out with them.

    `fields` may name the running text, whose value is the name of a notice; a level may be `none`.
    """

    name: Name
    screen: Name
    fields: dict[Name, Text | tuple[Argument, ...]] = default(default_factory=dict)
    icons: dict[Name, Name] = default(default_factory=dict)
    levels: dict[Name, int | Literal["none"]] = default(default_factory=dict)


class Description(Struct, frozen=True, forbid_unknown_fields=True):
    """One starter. Of each word's texts the first that has room is taken.

    `order` is its place in lists.
    """

    title: str
    purpose: str
    order: int
    claims: Claims
    words: dict[Name, Annotated[tuple[Text, ...], Meta(min_length=1)]] = default(default_factory=dict)
    fields: dict[Name, FieldText] = default(default_factory=dict)
    icons: dict[Name, IconPlan] = default(default_factory=dict)
    levels: dict[Name, LevelPlan] = default(default_factory=dict)
    notices: dict[Name, Text] = default(default_factory=dict)
    moments: tuple[PlannedMoment, ...] = ()


@lru_cache(maxsize=1)
def descriptions() -> dict[str, Description]:
    """Return every starter by its name, in the order of lists."""
    found = {path.stem: read(path, Description) for path in sorted((shelf() / "starters").glob("*.toml"))}
    return dict(sorted(found.items(), key=lambda one: one[1].order))


def description(name: str) -> Description:
    """Return the starter of that name; raises Problem with the nearest names where there is none."""
    every = descriptions()
    if name not in every:
        raise Problem(f"there is no starter `{name[:40]}`; {near(name, list(every), 'starters')}")
    return every[name]


_LOOKS = {
    "rgb565": "16-bit colour", "grey16": "16 greys", "grey4": "4 greys", "mono": "monochrome",
    "indexed": "a palette",
}  # fmt: skip


def refusal(claims: Claims, panel: Panel) -> str | None:
    """Return why a starter is not for a panel, as the end of a sentence that begins with its name, or None."""
    if panel.shape not in claims.shapes:
        return f"is for {_either(claims.shapes)} panels, and this one is {panel.shape}"
    if panel.colour_format not in claims.formats:
        looks = [_LOOKS[one] for one in claims.formats]
        return f"is for panels of {_either(looks)}, and this one has {_LOOKS[panel.colour_format]}"
    if panel.refresh not in claims.refresh:
        return f"is for panels with refresh `{claims.refresh[0]}`, and this one has `{panel.refresh}`"
    if claims.look == "paper" and not paper(panel):
        return "is for panels that are dark on light, such as e-paper"
    least = claims.least_round if panel.shape == "round" and claims.least_round else claims.least
    if panel.width < least[0] or panel.height < least[1]:
        return f"needs at least {least[0]} × {least[1]} pixels, and this panel has {panel.width} × {panel.height}"
    most = claims.greatest
    if most and (panel.width > most[0] or panel.height > most[1]):
        return (
            f"is for at most {most[0]} × {most[1]} pixels, and this panel has {panel.width} × {panel.height}"
        )
    return None


def _either(words: tuple[str, ...] | list[str]) -> str:
    return " or ".join(part for part in (", ".join(words[:-1]), words[-1]) if part)


def claiming(panel: Panel) -> tuple[str, ...]:
    """Return the starters that claim a panel, the one made most closely for it first."""
    fits = [(name, one) for name, one in descriptions().items() if refusal(one.claims, panel) is None]
    fits.sort(key=lambda one: (len(one[1].claims.shapes), len(one[1].claims.formats), one[1].order))
    return tuple(name for name, _ in fits)
