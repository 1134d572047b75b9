"""One thing that will go wrong, may go wrong, or is worth knowing."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from panelproof.ink.mask import NOTHING, Area, Mask

Level = Literal["fault", "caution", "note"]
LEVELS: tuple[Level, ...] = ("fault", "caution", "note")
"""The most serious first."""


Kind = Literal["part", "ink", "type"]


@dataclass(frozen=True, slots=True)
class Change:
    """One value to set: the key, and the new value as the layout file would hold it.

    `part` names what is changed: a part of the finding's screen (the screen itself where it is empty), or an ink or a
    type of the layout, as `kind` says.
    """

    part: str
    key: str
    value: object
    kind: Kind = "part"


@dataclass(frozen=True, slots=True)
class Remedy:
    """A change that ends a finding, and the sentence that says it."""

    sentence: str
    changes: tuple[Change, ...] = ()


@dataclass(frozen=True, slots=True)
class Finding:
    """A finding on one screen and part.

    `texts` are the offending texts in order of time, `count` the pixels that are wrong, `area` the smallest
    rectangle that holds them (None where no pixel is meant), `other` a second part concerned, `pixels` the wrong pixels
    themselves, in panel coordinates (empty where the finding is about none), `former` the screen that was shown before,
    where the change from it to `screen` goes wrong.
    """

    rule: str
    level: Level
    screen: str
    part: str
    message: str
    texts: tuple[str, ...] = ()
    count: int = 0
    area: Area | None = None
    remedy: Remedy | None = None
    other: str = ""
    pixels: Mask = NOTHING
    former: str = ""
