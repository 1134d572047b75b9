"""Every state of the layout that undo and redo can bring back."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from panelproof.layout.document import Layout

DEPTH = 2000


@dataclass(frozen=True, slots=True)
class Edit:
    """One change: its title in words ("move `chamber`"), and the layout after it.

    Edits in a row with the same `merge` (not empty) count as one, such as the moves of one drag.
    """

    title: str
    layout: Layout
    merge: str = ""


class History:
    """A row of layouts and the place in it; the oldest are forgotten beyond `DEPTH`."""

    def __init__(self, layout: Layout) -> None:
        self._edits = [Edit("", layout)]
        self._now = 0
        self._saved: Layout | None = layout
        self._open = False

    @property
    def layout(self) -> Layout:
        """The layout as it is now."""
        return self._edits[self._now].layout

    @property
    def unsaved(self) -> bool:
        """Whether the layout differs from the one saved last."""
        return self._saved is None or self.layout != self._saved

    @property
    def undo_title(self) -> str:
        """What undo would take back; empty where there is nothing."""
        return self._edits[self._now].title if self._now else ""

    @property
    def redo_title(self) -> str:
        """What redo would do again; empty where there is nothing."""
        return self._edits[self._now + 1].title if self._now + 1 < len(self._edits) else ""

    def saved(self) -> None:
        """Note that the layout as it is now has been saved."""
        self._saved = self.layout
        self._open = False

    def recovered(self) -> None:
        """Note that the layout as it is now stands in no file."""
        self._saved = None

    def rebase(self, change: Callable[[Layout], Layout]) -> None:
        """Change every layout alike, such as its paths when the file moves; what is unsaved stays so."""
        unsaved = self.unsaved
        self._edits = [Edit(edit.title, change(edit.layout), edit.merge) for edit in self._edits]
        if self._saved is not None:
            self._saved = change(self._saved) if unsaved else self.layout

    def do(self, edit: Edit) -> None:
        """Add a change; what had been undone is forgotten."""
        if edit.layout == self.layout:
            return
        del self._edits[self._now + 1 :]
        merging = self._open and edit.merge and self._edits[-1].merge == edit.merge
        if merging:
            self._edits[-1] = edit
            # Back where the gesture began: nothing to undo.
            if len(self._edits) > 1 and self._edits[-2].layout == edit.layout:
                self._edits.pop()
                self._open = False
        else:
            self._edits.append(edit)
            self._open = True
        if len(self._edits) > DEPTH:
            del self._edits[: len(self._edits) - DEPTH]
        self._now = len(self._edits) - 1

    def close(self) -> None:
        """End a gesture: the next edit counts on its own."""
        self._open = False

    def undo(self) -> bool:
        """Go back one change; False where there is none."""
        self._open = False
        if not self._now:
            return False
        self._now -= 1
        return True

    def redo(self) -> bool:
        """Go forward one change; False where there is none."""
        self._open = False
        if self._now + 1 == len(self._edits):
            return False
        self._now += 1
        return True
