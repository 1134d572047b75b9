"""The strip of moments above the glass: small true pictures of the screen; two of them make a step."""

from __future__ import annotations

from time import perf_counter

from PySide6.QtCore import QEvent, QSize, Qt, QTimer
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QScrollArea,
    QSizePolicy,
    QStackedWidget,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from panelproof.editor import edits, theme, thumbnail
from panelproof.editor.card import CAPTION, MARGIN, PICTURE, Card
from panelproof.editor.hub import Hub
from panelproof.editor.player import player
from panelproof.editor.steps import StepBar
from panelproof.picture.frame import screen_frame
from panelproof.picture.moments import ShownMoment
from panelproof.problem import Problem

REST = 60
"""Milliseconds between two turns of drawing pictures that have become old."""
TURN = 0.006
"""Seconds that one turn takes at most, beyond its first picture."""
QUIET = 0.2
"""Seconds after the last change during which a turn draws one picture only: something may be dragged."""
HINT = "With Shift, a second one shows the step."


class Strip(QWidget):
    """The moments of the shown screen, in a row."""

    def __init__(self, hub: Hub, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._hub, self._player = hub, player(hub)
        self.cards: list[Card] = []
        self._old: set[str] = set()
        self._changed = 0.0
        self._timer = QTimer(self)
        self._timer.setInterval(REST)
        self._timer.timeout.connect(self._draw_some)
        self.setAccessibleName("Moments")
        self._head = self._made_head()
        self.step_bar = StepBar(self._player)
        self._top = QStackedWidget()
        self._top.addWidget(self._head)
        self._top.addWidget(self.step_bar)
        self._row = QWidget()
        self._cards_in = QHBoxLayout(self._row)
        theme.space(self._cards_in, 0, theme.UNIT // 2)
        self._cards_in.addStretch(1)
        self._scroll = _Sideways(self._row)
        column = QVBoxLayout(self)
        column.setContentsMargins(theme.UNIT, theme.UNIT // 2, theme.UNIT, theme.UNIT // 2)
        column.setSpacing(theme.UNIT // 2)
        column.addWidget(self._top)
        column.addWidget(self._scroll)
        for signal in (hub.layout_changed, hub.screen_changed):
            signal.connect(self._renew)
        hub.moment_changed.connect(self._choose)
        hub.view_changed.connect(self._all_old)
        self._player.changed.connect(self._step)
        self._renew()
        self.draw_now()

    def _made_head(self) -> QWidget:
        head = QWidget()
        row = QHBoxLayout(head)
        theme.space(row, 0, theme.UNIT)
        row.addWidget(theme.heading("Moments", head))
        self._hint = QLabel(HINT, head)
        self._hint.setToolTip("Press one to show it; then another with Shift, or its button “then”.")
        self._hint.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        theme.set_role(self._hint, "small")
        row.addWidget(self._hint, 1)
        self.keep = QToolButton(head)
        self.keep.setText("Keep")
        self.keep.setAccessibleName("Keep what the glass shows as a moment with a name")
        self.keep.setToolTip(self.keep.accessibleName())
        self.keep.clicked.connect(self._keep)
        row.addWidget(self.keep)
        return head

    # -- what is there ---------------------------------------------------------------------------------

    def _renew(self) -> None:
        moments = self._hub.moments
        if [moment.name for moment in moments] != [card.name for card in self.cards]:
            self._rebuild(moments)
        ratio, panel = self.devicePixelRatioF(), self._hub.layout.panel
        wide = round(thumbnail.size(panel, PICTURE, ratio)[0] / ratio)
        for card, moment in zip(self.cards, moments, strict=True):
            card.describe(moment.name, moment.title, automatic=moment.automatic, wide=wide)
        self.keep.setEnabled(bool(moments))
        self._choose()
        self._all_old()

    def _rebuild(self, moments: tuple[ShownMoment, ...]) -> None:
        focused = next((card.name for card in self.cards if card.hasFocus()), "")
        while len(self.cards) > len(moments):
            card = self.cards.pop()
            self._cards_in.removeWidget(card)
            card.hide()
            card.deleteLater()
        while len(self.cards) < len(moments):
            card = Card(self._row)
            card.clicked.connect(lambda _=False, card=card: self._hub.show_moment(card.name))
            card.step_wanted.connect(lambda card=card: self._step_to(card))
            card.neighbour_wanted.connect(lambda by, card=card: self._focus(card, by))
            self._cards_in.insertWidget(len(self.cards), card)
            card.show()
            self.cards.append(card)
        for card, moment in zip(self.cards, moments, strict=True):
            card.name = moment.name
            if moment.name == focused:
                card.setFocus()

    def _choose(self) -> None:
        first, second = self._hub.moment, self._hub.second_moment
        for card, moment in zip(self.cards, self._hub.moments, strict=True):
            role = ""
            if first is not None and moment is first:
                role = "shown"
            elif second is not None and moment is second:
                role = "then"
            card.set_role(role, first.title if first else "")
            if role == "shown":
                self.setFocusProxy(card)
            if role:
                self._scroll.ensureWidgetVisible(card, 8, 0)

    def _step(self) -> None:
        self._top.setCurrentWidget(self._head if self._player.step is None else self.step_bar)

    # -- what can be done ------------------------------------------------------------------------------

    def _step_to(self, card: Card) -> None:
        first = self._hub.moment
        if first is None or first.name == card.name:
            return
        self._hub.show_moment(first.name, card.name)
        self._player.play()

    def _focus(self, card: Card, by: int) -> None:
        number = self.cards.index(card) + by
        if 0 <= number < len(self.cards):
            self.cards[number].setFocus(Qt.FocusReason.TabFocusReason)
            self._scroll.ensureWidgetVisible(self.cards[number], 8, 0)

    def _keep(self) -> None:
        hub, screen, moment = self._hub, self._hub.screen, self._hub.moment
        if screen is None or moment is None:
            return
        wanted = f"{moment.name}-kept" if moment.automatic else moment.name
        layout, name = edits.add_moment(hub.layout, screen.name, wanted[:40].rstrip("-"), moment.values)
        if hub.apply(f"keep the moment `{name}`", layout) is None:
            hub.end_gesture()
            hub.show_moment(name)

    # -- pictures --------------------------------------------------------------------------------------

    def _all_old(self) -> None:
        self._old = {card.name for card in self.cards}
        self._changed = perf_counter()
        # Not started anew while it runs: during a drag the pictures follow all the same.
        if self._old and not self._timer.isActive():
            self._timer.start()

    def draw_now(self) -> None:
        """Draw every picture that has become old."""
        while self._old:
            self._draw(next(iter(self._old)))
        self._timer.stop()

    def _draw_some(self) -> None:
        began = perf_counter()
        end = began + (TURN if began - self._changed > QUIET else 0)
        names = [card.name for card in self.cards if card.name in self._old]
        names.sort(key=lambda name: name != self._hub.moment_name)
        for name in names:
            self._draw(name)
            if perf_counter() > end:
                break
        if not self._old:
            self._timer.stop()

    def _draw(self, name: str) -> None:
        self._old.discard(name)
        hub, screen = self._hub, self._hub.screen
        moment = next((moment for moment in hub.moments if moment.name == name), None)
        card = next((card for card in self.cards if card.name == name), None)
        if screen is None or moment is None or card is None:
            return
        try:
            frame = screen_frame(hub.material, screen, moment.values)
        except Problem as problem:
            hub.told.emit(str(problem))
            return
        card.show_picture(thumbnail.picture(frame, hub.layout.panel, PICTURE, self.devicePixelRatioF()))

    def event(self, event: QEvent) -> bool:
        """Follow the window to a monitor of another density."""
        if event.type() == QEvent.Type.DevicePixelRatioChange:
            self._renew()
        return super().event(event)


class _Sideways(QScrollArea):
    """Scrolls from side to side, by a turning wheel too."""

    def __init__(self, inside: QWidget) -> None:
        super().__init__()
        self.setWidget(inside)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        bar = self.horizontalScrollBar()
        bar.setAccessibleName("Scroll the moments")
        self.setFixedHeight(PICTURE.height() + CAPTION + 2 * MARGIN + bar.sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        return QSize(120, self.height())

    def wheelEvent(self, event: QWheelEvent) -> None:
        turned = event.angleDelta().y() or event.angleDelta().x()
        bar = self.horizontalScrollBar()
        bar.setValue(bar.value() - turned)
        event.accept()
