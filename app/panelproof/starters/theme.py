"""Inks by what they are for, as far as the panel can tell them apart."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from panelproof.layout.colour import parse, quantise, shown, written
from panelproof.layout.document import Ink
from panelproof.layout.panel import Panel
from panelproof.sight.luminance import contrast, luminance

Role = Literal["ground", "text", "quiet", "line", "accent", "good", "alarm"]

# On a dark glass; on paper.
_DARK: dict[Role, str] = {
    "ground": "#000000", "text": "#ffffff", "quiet": "#a8b4c0", "line": "#708090",
    "accent": "#ffb840", "good": "#60e078", "alarm": "#ff6858",
}  # fmt: skip
_PAPER: dict[Role, str] = {
    "ground": "#ffffff", "text": "#000000", "quiet": "#555555", "line": "#555555",
    "accent": "#000000", "good": "#000000", "alarm": "#000000",
}  # fmt: skip
# WCAG 2.2: contrast of text (1.4.3), and of graphics (1.4.11).
LEAST_CONTRAST = 4.5
LEAST_OF_LINES = 3.0


@dataclass(frozen=True, slots=True)
class Theme:
    """The colour of each role; roles that look alike share one ink."""

    colours: dict[Role, str]

    def name(self, role: Role) -> str:
        """Return the name of a role's ink: the first role of that colour."""
        return next(known for known, colour in self.colours.items() if colour == self.colours[role])

    def inks(self, used: set[str]) -> tuple[Ink, ...]:
        """Return the inks of those names, in the order of the roles."""
        return tuple(
            Ink(role, colour)
            for role, colour in self.colours.items()
            if role in used and self.name(role) == role
        )


def paper(panel: Panel) -> bool:
    """Tell whether a panel is dark on light, as e-paper and reflective glass are."""
    return panel.colour_format == "indexed" or (panel.colour_format == "grey4" and panel.refresh == "whole")


def theme(panel: Panel) -> Theme:
    """Return the inks for a panel."""
    if panel.colour_format == "indexed":
        return Theme(_indexed(panel))
    wanted = _PAPER if paper(panel) else _DARK
    found: dict[Role, str] = {}
    for role, colour in wanted.items():
        seen = shown(quantise(parse(colour), panel.colours), panel.colours)
        found[role] = colour if panel.colour_format == "rgb565" else written(seen)
    ground = parse(found["ground"])
    for role, colour in list(found.items()):
        least = LEAST_OF_LINES if role == "line" else LEAST_CONTRAST
        if role != "ground" and contrast(parse(colour), ground) < least:
            found[role] = found["text"]
    return Theme(found)


def _indexed(panel: Panel) -> dict[Role, str]:
    """Return the palette's lightest colour as ground, its darkest as text, its most vivid for what is urgent."""
    palette = panel.colours.palette
    ground, text = max(palette, key=luminance), min(palette, key=luminance)
    vivid = max(palette, key=lambda rgb: max(rgb) - min(rgb))
    urgent = vivid if vivid != ground and contrast(vivid, ground) >= LEAST_CONTRAST else text
    roles: dict[Role, str] = dict.fromkeys(_DARK, written(text))
    roles["ground"] = written(ground)
    roles["accent"] = roles["alarm"] = written(urgent)
    return roles
