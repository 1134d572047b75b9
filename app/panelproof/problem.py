"""The one error that reaches a user: a sentence and the place it speaks of."""

from __future__ import annotations


class Problem(Exception):
    """Input that cannot be used.

    `message` is one clear sentence; `place` says where, e.g. ``kiln.panel.json: screens[0].parts[3]``
    (empty where there is no place to name).
    """

    def __init__(self, message: str, place: str = "") -> None:
        super().__init__(message, place)
        self.message = message
        self.place = place

    def __str__(self) -> str:
        return f"{self.place}: {self.message}" if self.place else self.message

    def within(self, outer: str) -> Problem:
        """Return the same problem, its place put inside `outer` (``outer.place``)."""
        joined = f"{outer}{'' if self.place.startswith('[') or not self.place else '.'}{self.place}"
        return Problem(self.message, joined)
