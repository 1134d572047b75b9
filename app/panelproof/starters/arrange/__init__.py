"""How each starter stands on the glass: attempts in order of preference, one file a starter.

An arrangement yields functions; each gives a setting or raises NoRoom.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from panelproof.layout.panel import Panel
from panelproof.starters.arrange import level, mono, page, pair, reading, ring, start, steps, table
from panelproof.starters.description import Description
from panelproof.starters.setting import Setting

Attempts = Iterator[Callable[[], Setting]]

ARRANGEMENTS: dict[str, Callable[[Panel, Description], Attempts]] = {
    "one-reading": reading.attempts,
    "two-readings": pair.attempts,
    "four-readings": table.attempts,
    "start-up": start.attempts,
    "set-up": steps.attempts,
    "round-status": ring.attempts,
    "mono-status": mono.attempts,
    "level-bar": level.attempts,
    "long-text": page.attempts,
}
