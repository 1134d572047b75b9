"""What a screen shows: a text for each field, a state for each icon, a value for each meter."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from panelproof.layout.level import words


@dataclass(frozen=True, slots=True)
class Values:
    """The text of every field, the name of every icon's state, the value of every meter, by the part's name."""

    texts: Mapping[str, str] = field(default_factory=dict)
    states: Mapping[str, str] = field(default_factory=dict)
    levels: Mapping[str, int | None] = field(default_factory=dict)

    def of(self, part: str) -> str:
        """Return a field's text, an icon's state name or a meter's value in words; raises KeyError."""
        if part in self.levels:
            return words(self.levels[part])
        return self.texts[part] if part in self.texts else self.states[part]
