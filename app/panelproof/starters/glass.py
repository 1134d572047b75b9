"""Where on a panel something may stand: what can be seen, an even margin off its edge."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from panelproof.layout.panel import Panel, visible_spans


@dataclass(frozen=True)
class Glass:
    """A panel's room for parts."""

    panel: Panel

    @cached_property
    def margin(self) -> int:
        """Pixels left free along each edge."""
        shorter = min(self.panel.width, self.panel.height)
        return max(1, shorter // (16 if self.panel.shape == "round" else 22))

    @property
    def top(self) -> int:
        """The first row that may be used."""
        return self.margin

    @property
    def bottom(self) -> int:
        """The row after the last that may be used."""
        return self.panel.height - self.margin

    @property
    def round(self) -> bool:
        """Whether the panel is round."""
        return self.panel.shape == "round"

    @property
    def across(self) -> bool:
        """Whether the panel is clearly wider than high."""
        return self.panel.width * 3 > self.panel.height * 4

    def band(self, top: int, bottom: int) -> tuple[int, int]:
        """Return the half-open span of columns that may be used in all rows from `top` up to `bottom`."""
        spans = visible_spans(self.panel)[max(top, 0) : max(bottom, top + 1)]
        left = max((first for first, _ in spans), default=0)
        right = min((end for _, end in spans), default=0)
        return max(left + (self.margin if self.round else self.margin // 2), self.margin), min(
            right - (self.margin if self.round else self.margin // 2), self.panel.width - self.margin
        )
