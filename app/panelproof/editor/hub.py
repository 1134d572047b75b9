"""The one place that holds what the window shows; every view listens to it, and changes it only through it."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path

from PySide6.QtCore import QObject, QTimer, Signal

from panelproof.editor.history import Edit, History
from panelproof.editor.prover import Prover
from panelproof.layout.checking import problems
from panelproof.layout.document import Layout, Screen
from panelproof.layout.parts import Part
from panelproof.layout.reading import valid
from panelproof.material import Material, gather
from panelproof.picture.moments import ShownMoment, moments
from panelproof.picture.values import Values
from panelproof.problem import Problem
from panelproof.proof.finding import Finding
from panelproof.verdict import Accepted, Verdict

SETTLED = 150
"""Milliseconds without a change after which the remedies are looked for that a gesture left out."""


class Hub(QObject):
    """The layout, its history, and what of it is looked at.

    A layout here can always be drawn: an edit that would break it is refused, and the last good one holds.
    """

    layout_changed = Signal()
    """The document is another: an edit, undo, redo, or a file opened."""
    selection_changed = Signal()
    screen_changed = Signal()
    """Another screen is shown."""
    moment_changed = Signal()
    """Another moment, or another second moment of a step, is shown."""
    findings_changed = Signal()
    """The findings are another, or have become current or stale (see `findings_current`)."""
    view_changed = Signal()
    """Parts were hidden, shown, locked or unlocked."""
    file_changed = Signal()
    """The path, or whether there is unsaved work, is another."""
    proving = Signal(str)
    """A proof is under way beside the window, at this screen."""
    told = Signal(str)
    """A sentence for the person."""

    def __init__(self, layout: Layout, folder: Path, parent: QObject | None = None) -> None:
        """Begin with a layout that can be drawn; raises Problem where it cannot."""
        super().__init__(parent)
        self._prover = Prover(self)
        self._prover.proved.connect(self._take_findings)
        self._prover.progress.connect(self.proving)
        # While a gesture goes on, the findings come without what would hold it up.
        self._settling = QTimer(self)
        self._settling.setSingleShot(True)
        self._settling.setInterval(SETTLED)
        self._settling.timeout.connect(self._settle)
        self.path: Path | None = None
        self._start(layout, folder, None)

    def _start(self, layout: Layout, folder: Path, path: Path | None) -> None:
        material = gather(layout, folder)
        self.history = History(layout)
        self.folder, self.path, self.material = folder, path, material
        self._screen = layout.screens[0].name if layout.screens else ""
        self.selection: frozenset[str] = frozenset()
        self.hidden: frozenset[tuple[str, str]] = frozenset()
        self.locked: frozenset[tuple[str, str]] = frozenset()
        self.moment_name = ""
        self.second_name = ""
        self.findings: tuple[Finding, ...] = ()
        self.accepted: tuple[Accepted, ...] = ()
        self.findings_current = False
        self._moments: dict[str, tuple[ShownMoment, ...]] = {}
        self._prove()

    # -- the document ----------------------------------------------------------------------------------

    @property
    def layout(self) -> Layout:
        """The layout as it is now."""
        return self.history.layout

    def open(self, layout: Layout, folder: Path, path: Path | None) -> None:
        """Show another document; raises Problem, and nothing changes, where it cannot be drawn."""
        self._start(layout, folder, path)
        for signal in (
            self.layout_changed,
            self.screen_changed,
            self.selection_changed,
            self.moment_changed,
            self.view_changed,
            self.file_changed,
        ):
            signal.emit()

    def _examined(self, layout: Layout) -> Material | Problem:
        """Return the material of a layout that can take the place of this one, or why it cannot."""
        try:
            found = problems(valid(layout))
            if found:
                return found[0]
            return gather(layout, self.folder)
        except Problem as problem:
            return problem

    def apply(self, title: str, layout: Layout, merge: str = "") -> Problem | None:
        """Make a change that can be undone, or return why it cannot be made (and tell it)."""
        if layout == self.layout:
            return None
        examined = self._examined(layout)
        if isinstance(examined, Problem):
            self.told.emit(examined.message)
            return examined
        self.history.do(Edit(title, layout, merge))
        self._renewed(examined, hasty=bool(merge))
        return None

    def end_gesture(self) -> None:
        """Let the next change count on its own, though it has the same `merge`."""
        self.history.close()
        if self._settling.isActive():
            self._settle()

    def undo(self) -> None:
        """Take back the last change."""
        title = self.history.undo_title
        if self.history.undo():
            examined = self._examined(self.layout)
            if isinstance(examined, Problem):
                # A font or picture has gone from the disk since.
                self.history.redo()
                self.told.emit(f"cannot be undone: {examined.message}")
                return
            self.told.emit(f"undone: {title}")
            self._renewed(examined)

    def redo(self) -> None:
        """Do again what was taken back."""
        if self.history.redo():
            examined = self._examined(self.layout)
            if isinstance(examined, Problem):
                self.history.undo()
                self.told.emit(f"cannot be done again: {examined.message}")
                return
            self.told.emit(f"done again: {self.history.undo_title}")
            self._renewed(examined)

    def saved(self, path: Path, rebase: Callable[[Layout], Layout] | None = None) -> None:
        """Note that the layout now stands in a file; its paths count from there.

        `rebase` gives a layout with its paths seen from there, where the folder is another.
        """
        if rebase is not None:
            self.history.rebase(rebase)
        self.history.saved()
        self.path = path
        if path.parent != self.folder or self.material.layout != self.layout:
            self.folder = path.parent
            self._renewed()
        else:
            self.file_changed.emit()

    def _renewed(self, material: Material | None = None, *, hasty: bool = False) -> None:
        before = [screen.name for screen in self.material.layout.screens]
        self.material = material or gather(self.layout, self.folder)
        self._moments.clear()
        names = [screen.name for screen in self.layout.screens]
        moved = self._screen not in names
        if moved:
            # A screen of another name in the same place is the same screen renamed, or its neighbour.
            number = before.index(self._screen) if self._screen in before else 0
            self._screen = names[min(number, len(names) - 1)] if names else ""
        parts = {part.name for part in self.screen.parts} if self.screen else set()
        lost = not self.selection <= parts
        self.selection &= parts
        self._prove(hasty=hasty)
        self.layout_changed.emit()
        self.file_changed.emit()
        if moved:
            self.screen_changed.emit()
        if lost or moved:
            self.selection_changed.emit()

    # -- what is looked at -----------------------------------------------------------------------------

    @property
    def screen(self) -> Screen | None:
        """The screen that is shown; None where the layout has none."""
        return next((screen for screen in self.layout.screens if screen.name == self._screen), None)

    def show_screen(self, name: str) -> None:
        """Show another screen."""
        if name != self._screen and any(screen.name == name for screen in self.layout.screens):
            self._screen = name
            self.selection = frozenset()
            self.moment_name = self.second_name = ""
            self.screen_changed.emit()
            self.selection_changed.emit()
            self.moment_changed.emit()

    def part(self, name: str) -> Part | None:
        """Return a part of the shown screen."""
        return next((part for part in (self.screen.parts if self.screen else ()) if part.name == name), None)

    def select(self, names: Iterable[str]) -> None:
        """Choose parts of the shown screen."""
        chosen = frozenset(names)
        if chosen != self.selection:
            self.selection = chosen
            self.selection_changed.emit()

    def set_hidden(self, name: str, hidden: bool) -> None:
        """Hide a part of the shown screen while working; the file does not know of it."""
        key = (self._screen, name)
        self.hidden = self.hidden | {key} if hidden else self.hidden - {key}
        self.view_changed.emit()

    def set_locked(self, name: str, locked: bool) -> None:
        """Keep a part of the shown screen from being moved by the pointer."""
        key = (self._screen, name)
        self.locked = self.locked | {key} if locked else self.locked - {key}
        self.view_changed.emit()

    def is_hidden(self, name: str) -> bool:
        """Tell whether a part of the shown screen is hidden."""
        return (self._screen, name) in self.hidden

    def is_locked(self, name: str) -> bool:
        """Tell whether a part of the shown screen is locked."""
        return (self._screen, name) in self.locked

    # -- moments ---------------------------------------------------------------------------------------

    @property
    def moments(self) -> tuple[ShownMoment, ...]:
        """The shown screen's moments, the named ones first."""
        if self.screen is None:
            return ()
        if self._screen not in self._moments:
            self._moments[self._screen] = moments(self.material, self.screen)
        return self._moments[self._screen]

    @property
    def moment(self) -> ShownMoment | None:
        """The moment on the glass: the chosen one, else the screen's first."""
        return self._named(self.moment_name) or (self.moments[0] if self.moments else None)

    @property
    def second_moment(self) -> ShownMoment | None:
        """The moment that a step leads to, where one is shown."""
        return self._named(self.second_name) if self.second_name else None

    @property
    def values(self) -> Values:
        """The texts and states on the glass."""
        return self.moment.values if self.moment else Values({}, {})

    def _named(self, name: str) -> ShownMoment | None:
        return next((moment for moment in self.moments if moment.name == name), None)

    def show_moment(self, name: str, second: str = "") -> None:
        """Show one moment, or with `second` the step from one to another."""
        if (name, second) != (self.moment_name, self.second_name):
            self.moment_name, self.second_name = name, second
            self.moment_changed.emit()

    # -- the proof -------------------------------------------------------------------------------------

    def _prove(self, *, hasty: bool = False) -> None:
        self.findings_current = False
        self._settling.stop()
        if self._prover.prove(self.material, hasty=hasty):
            self._settling.start()
        if not self.findings_current:
            self.findings_changed.emit()

    def _settle(self) -> None:
        """Prove the layout as it now stands in full."""
        self._prove()

    def _take_findings(self, material: Material, found: Verdict) -> None:
        # A verdict on a layout that has changed since is never shown as current.
        if material is self.material:
            self.findings, self.accepted = found.findings, found.accepted
            self.findings_current = True
            self.findings_changed.emit()

    def stop_proof(self) -> None:
        """Cancel a proof that is under way; the findings stay marked as not current."""
        self._prover.cancel()
        self.findings_changed.emit()
        self.told.emit("the proof was stopped; it starts again with the next change, or when you ask for it")

    def prove_again(self) -> None:
        """Begin a proof that was stopped anew."""
        if not self.findings_current:
            self._prove()

    @property
    def proof_running(self) -> bool:
        """Whether a proof is under way beside the window."""
        return self._prover.busy

    def shut(self) -> None:
        """End work in the background, before the window goes."""
        self._settling.stop()
        self._prover.shut()
