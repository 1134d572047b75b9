"""The player of a step: from one moment to the next, one update at a time."""

from __future__ import annotations

from PySide6.QtCore import QObject, QTimer, Signal

from panelproof.editor.hub import Hub
from panelproof.ink.mask import NOTHING, Mask
from panelproof.picture.frame import Frame
from panelproof.picture.step import Step, Update, step
from panelproof.problem import Problem

SLOW = 1100
"""Milliseconds that one update stands while it plays."""


class Player(QObject):
    """Where a step stands; there is one for each hub, see `player`.

    Position 0 is the first moment before any update, position n the glass after n updates.
    """

    changed = Signal()
    """Another step, another position, or playing began or ended."""

    def __init__(self, hub: Hub) -> None:
        super().__init__(hub)
        self._hub = hub
        self.step: Step | None
        self.position = 0
        self._timer = QTimer(self)
        self._timer.setInterval(SLOW)
        self._timer.timeout.connect(self._tick)
        hub.moment_changed.connect(self._chosen)
        hub.screen_changed.connect(self._chosen)
        hub.layout_changed.connect(self._renew)
        self.step = self._made()

    # -- where it stands -------------------------------------------------------------------------------

    @property
    def count(self) -> int:
        """How many updates the step has."""
        return len(self.step.updates) if self.step else 0

    @property
    def playing(self) -> bool:
        """Whether updates follow one another by themselves."""
        return self._timer.isActive()

    @property
    def update(self) -> Update | None:
        """The update that led to the present position; None before the first."""
        return self.step.updates[self.position - 1] if self.step and self.position else None

    @property
    def frame(self) -> Frame | None:
        """What the glass shows; None where no step is shown."""
        if self.step is None:
            return None
        return self.update.after if self.update else self.step.start

    @property
    def erased(self) -> Mask:
        """The pixels that the present update turned from ink to ground."""
        return self.update.erased if self.update else NOTHING

    @property
    def written(self) -> Mask:
        """The pixels that the present update inked."""
        return self.update.written if self.update else NOTHING

    @property
    def behind(self) -> Mask:
        """The pixels that stay behind: of the present update, at the end of the whole step."""
        if self.step is None or self.update is None:
            return NOTHING
        return self.step.differs if self.position == self.count else self.update.stale

    @property
    def words(self) -> str:
        """A sentence on the present position; empty where no step is shown."""
        if self.step is None:
            return ""
        if not self.count:
            return "nothing changes between the two moments"
        update = self.update
        if update is None:
            return f"before {_counted(self.count, 'update')}"
        what = f"`{update.part}` `{update.old}` → `{update.new}`"
        if update.kind == "screen":
            what = "the whole frame is sent at once"
        sentence = f"{self.position} of {self.count}: {what}"
        if self.position < self.count:
            return sentence
        left = self.behind.count()
        return sentence + (f"; at the end {left} px are wrong" if left else "; nothing stays behind")

    # -- what can be done ------------------------------------------------------------------------------

    def play(self) -> None:
        """Play slowly, from the beginning where the end is reached."""
        if self.step and self.count:
            if self.position == self.count:
                self.position = 0
            self._timer.start()
            self.changed.emit()

    def pause(self) -> None:
        """Stop where it stands."""
        self._timer.stop()
        self.changed.emit()

    def forward(self) -> None:
        """Go one update on."""
        self._go(self.position + 1)

    def back(self) -> None:
        """Go one update back."""
        self._go(self.position - 1)

    def leave(self) -> None:
        """Leave the step; the first moment stays on the glass."""
        moment = self._hub.moment
        self._hub.show_moment(moment.name if moment else "")

    def _go(self, position: int) -> None:
        self._timer.stop()
        self.position = min(max(position, 0), self.count)
        self.changed.emit()

    def _tick(self) -> None:
        if self.position < self.count:
            self.position += 1
        if self.position >= self.count:
            self._timer.stop()
        self.changed.emit()

    # -- following the hub -----------------------------------------------------------------------------

    def _chosen(self) -> None:
        had = self.step is not None
        self._timer.stop()
        self.position = 0
        self.step = self._made()
        if self.step is not None or had:
            self.changed.emit()

    def _renew(self) -> None:
        if self.step is None:
            return
        self.step = self._made()
        self.position = min(self.position, self.count)
        if self.step is None:
            self._timer.stop()
        self.changed.emit()

    def _made(self) -> Step | None:
        first, second, screen = self._hub.moment, self._hub.second_moment, self._hub.screen
        if first is None or second is None or screen is None:
            return None
        try:
            return step(self._hub.material, screen, first.values, second.values)
        except Problem:
            return None


def player(hub: Hub) -> Player:
    """Return the hub's player; the same one for every view."""
    found = hub.findChild(Player)
    return found if isinstance(found, Player) else Player(hub)


def _counted(number: int, noun: str) -> str:
    return f"{number} {noun}{'' if number == 1 else 's'}"
