"""What a screen shows: a text for each field, a state for each icon."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Values:
    """The text of every field and the name of every icon's state, by the part's name."""

    texts: Mapping[str, str] = field(default_factory=dict)
    states: Mapping[str, str] = field(default_factory=dict)

    def of(self, part: str) -> str:
        """Return a field's text or an icon's state name; raises KeyError."""
        return self.texts[part] if part in self.texts else self.states[part]
