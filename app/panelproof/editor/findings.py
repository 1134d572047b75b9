"""The findings in words, most serious first, with what ends them."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, QRectF, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QListView,
    QMenu,
    QProgressBar,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from panelproof.editor import signs, theme
from panelproof.editor.accepting import accept, acceptable, take_back
from panelproof.editor.applying import apply, has_remedy
from panelproof.editor.asking import Ask, Questions
from panelproof.editor.findingrows import (
    ACCEPTED_ROLE,
    FINDING_ROLE,
    FindingDelegate,
    FindingModel,
    apply_area,
)
from panelproof.editor.hub import Hub
from panelproof.editor.mender import Mender
from panelproof.layout.parts import Field
from panelproof.material import Material, field_graph
from panelproof.mending import Mended
from panelproof.problem import Problem
from panelproof.proof.finding import Finding
from panelproof.proof.words import counted, grouped
from panelproof.report import tally
from panelproof.verdict import Accepted

CLEAN = "Clean: every text of every field fits"
NOTHING = "Nothing to prove yet"
NO_FIELDS = "Clean: everything fits"


class FindingList(QListView):
    """The list itself; a press on a row's button does not choose the row."""

    wanted = Signal(object)
    """A finding to be shown: chosen, or pressed again."""
    remedied = Signal(object)
    """A finding whose button was pressed."""
    menu_wanted = Signal(QPoint)
    """The chosen row's menu is wanted, at this place of the screen."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Findings")
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.stale = False
        """Whether what is listed is of an earlier layout, whose remedies may not fit this one."""
        self.empty: tuple[signs.Sign, str, str] = ("pending", "", "")
        """What is said where there is no finding: a sign, a sentence, and a quieter one below."""

    def button_at(self, point: QPoint) -> Finding | None:
        """Return the finding whose button is at a point."""
        index = self.indexAt(point)
        if not index.isValid():
            return None
        finding: Finding = index.data(FINDING_ROLE)
        hit = (
            has_remedy(finding)
            and index.data(ACCEPTED_ROLE) is None
            and apply_area(self.visualRect(index)).contains(point)
        )
        hit = hit and not self.stale
        return finding if hit else None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Press a button, or choose a row; the chosen row pressed again is shown again."""
        point = event.position().toPoint()
        finding = self.button_at(point)
        if finding is not None:
            self.remedied.emit(finding)
            return
        before = self.currentIndex()
        super().mousePressEvent(event)
        if before.isValid() and before == self.indexAt(point):
            self.wanted.emit(before.data(FINDING_ROLE))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter shows a finding again; with Ctrl it applies the remedy."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.currentIndex().isValid():
            finding = self.currentIndex().data(FINDING_ROLE)
            control = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
            (self.remedied if control else self.wanted).emit(finding)
            return
        super().keyPressEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Ask for the chosen row's menu, by the pointer or the keyboard."""
        if self.currentIndex().isValid():
            self.menu_wanted.emit(event.globalPos())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Let the rows take the height that the new width needs."""
        super().resizeEvent(event)
        self.scheduleDelayedItemsLayout()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Say that all is well where there is nothing to list."""
        super().paintEvent(event)
        if self.model().rowCount():
            return
        sign, words, quiet = self.empty
        painter = QPainter(self.viewport())
        area, tones = self.viewport().rect(), theme.colours()
        painter.setFont(theme.font("heading"))
        line = painter.fontMetrics().height() + 6
        middle = area.center().y()
        width = min(painter.fontMetrics().horizontalAdvance(words), area.width() - 64)
        left = (area.width() - width - 28) // 2
        signs.draw(painter, QRectF(left, middle - line + (line - 18) / 2, 18, 18), sign)
        painter.setPen(tones.text)
        painter.drawText(
            QRect(left + 28, middle - line, width + 4, line), Qt.AlignmentFlag.AlignVCenter, words
        )
        painter.setPen(tones.quiet)
        painter.setFont(theme.font("small"))
        painter.drawText(QRect(0, middle, area.width(), line), Qt.AlignmentFlag.AlignCenter, quiet)


class FindingsView(QWidget):
    """The list with its heading: how many there are, whether they are current, and the remedy's button."""

    shown = Signal(object)
    """A finding is to be seen on the glass."""
    cleared = Signal()
    """The finding that was to be seen is not there any more."""

    def __init__(self, hub: Hub, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._hub = hub
        self.ask: Ask = Questions(self)
        self._shown: Finding | None = None
        self._renewing = False
        self._mender = Mender(self)
        self._mended: Material | None = None
        self.list = FindingList(self)
        self.model = FindingModel(self)
        self.list.setModel(self.model)
        self._delegate = FindingDelegate(self.list)
        self.list.setItemDelegate(self._delegate)
        self.summary = theme.Elided()
        theme.set_role(self.summary, "quiet")
        self.summary.setAccessibleName("Summary of the findings")
        self.progress = QProgressBar()
        self.progress.setAccessibleName("Progress of the proof")
        self.progress.setTextVisible(False)
        self.progress.setFixedSize(80, 8)
        self.stop = QPushButton("Stop")
        self.stop.setAccessibleName("Stop the proof")
        self.again = QPushButton("Prove again")
        self.remedy = QPushButton("Apply remedy")
        self.remedy.setToolTip("Apply the remedy of the chosen finding (Ctrl+Enter in the list)")
        self.acceptance = QPushButton("Accept…")
        top = QHBoxLayout()
        theme.space(top)
        top.addWidget(theme.heading("Findings"))
        top.addWidget(self.summary, 1)
        for widget in (self.progress, self.stop, self.again, self.acceptance, self.remedy):
            top.addWidget(widget)
        column = QVBoxLayout(self)
        theme.space(column)
        column.addLayout(top)
        column.addWidget(self.list, 1)
        self.setFocusProxy(self.list)
        self.list.wanted.connect(self._show)
        self.list.remedied.connect(self.apply_remedy)
        self.list.menu_wanted.connect(lambda place: self.menu().exec(place))
        self.acceptance.clicked.connect(lambda: self.take_back() if self.chosen_accepted() else self.accept())
        self.list.selectionModel().currentChanged.connect(self._chosen)
        self.stop.clicked.connect(self.stop_work)
        self.again.clicked.connect(hub.prove_again)
        self.remedy.clicked.connect(lambda: self.apply_remedy(self.chosen()))
        hub.findings_changed.connect(self.renew)
        hub.proving.connect(self._advance)
        hub.layout_changed.connect(self._left_behind)
        self._mender.stepped.connect(self._trying)
        self._mender.ended.connect(self._mending_ended)
        theme.watch(self, self.list.viewport().update)
        self.renew()

    # -- showing ---------------------------------------------------------------------------------------

    def renew(self) -> None:
        """Show the findings as they are now, and whether they are current."""
        hub = self._hub
        if (hub.findings, hub.accepted) != (self.model.findings, self.model.accepted):
            self._refill()
        running = not hub.findings_current and hub.proof_running
        self._delegate.faint = self.list.stale = not hub.findings_current
        mending = self._mender.busy
        self.progress.setVisible(running or mending)
        self.stop.setVisible(running or mending)
        self.stop.setAccessibleName("Stop mending" if mending else "Stop the proof")
        self.again.setVisible(not hub.findings_current and not running)
        # In one place: the remedies of an earlier layout may not fit this one.
        self.remedy.setVisible(hub.findings_current and not mending)
        self.acceptance.setVisible(hub.findings_current and not mending)
        self.progress.setAccessibleName("Progress of mending" if mending else "Progress of the proof")
        if running or mending:
            self.progress.setRange(0, 0)
        self._say(running)
        self._enable()
        self.list.viewport().update()

    def _refill(self) -> None:
        """Show other findings; the chosen one stays chosen where it is still there."""
        chosen = self.chosen()
        self._renewing = True
        self.model.show_findings(self._hub.findings, self._hub.accepted)
        rows = self.model.rows
        if chosen in rows:
            self.list.setCurrentIndex(self.model.index(rows.index(chosen)))
        self._renewing = False
        if self._shown is not None and self._shown not in rows:
            self._shown = None
            self.cleared.emit()

    def _say(self, running: bool) -> None:
        hub = self._hub
        if running:
            said = "being proved again (listed: an earlier layout)"
            self.list.empty = "pending", "Being proved", ""
        elif not hub.findings_current:
            said = "not proved: stopped (listed: an earlier layout)"
            self.list.empty = "pending", "Not proved", "The proof was stopped."
        else:
            counts = tally(hub.findings)
            words = [counted(number, level) for level, number in counts.items() if number]
            words += [f"{len(hub.accepted)} accepted"] if hub.accepted else []
            listed = ", ".join(words)
            proved = self._proved()
            # Where nothing is listed the list itself says it.
            said = f"{listed}; {proved}" if listed and proved else listed
            self.list.empty = "good", CLEAN if proved else NO_FIELDS, proved
            if not any(screen.parts for screen in hub.layout.screens):
                self.list.empty = "note", NOTHING, ""
        self.summary.setText(said)
        self.summary.setToolTip(said)

    def _proved(self) -> str:
        fields = [
            part for screen in self._hub.layout.screens for part in screen.parts if isinstance(part, Field)
        ]
        if not fields:
            return ""
        texts = sum(field_graph(field).count() for field in fields)
        return f"{grouped(texts)} {'text' if texts == 1 else 'texts'} proved"

    def _advance(self, screen: str) -> None:
        if self._hub.findings_current:
            return
        names = [one.name for one in self._hub.layout.screens]
        if screen in names:
            self.progress.setRange(0, len(names))
            self.progress.setValue(names.index(screen))
            self.summary.setText(f"proving screen `{screen}` (listed: an earlier layout)")

    # -- choosing --------------------------------------------------------------------------------------

    def chosen(self) -> Finding | None:
        """Return the finding of the chosen row."""
        finding = self.list.currentIndex().data(FINDING_ROLE)
        return finding if isinstance(finding, Finding) else None

    def chosen_accepted(self) -> Accepted | None:
        """Return how the chosen row's finding is accepted, None where it is not."""
        accepted = self.list.currentIndex().data(ACCEPTED_ROLE)
        return accepted if isinstance(accepted, Accepted) else None

    def _chosen(self) -> None:
        self._enable()
        finding = self.chosen()
        if finding is not None and not self._renewing:
            self._show(finding)

    def _enable(self) -> None:
        finding, accepted = self.chosen(), self.chosen_accepted()
        self.remedy.setEnabled(finding is not None and accepted is None and has_remedy(finding))
        self.acceptance.setText("Take back" if accepted else "Accept…")
        self.acceptance.setToolTip(
            "Let the rule find this again"
            if accepted
            else "Let the part have this, with a reason that is kept"
        )
        self.acceptance.setEnabled(accepted is not None or (finding is not None and acceptable(finding)))

    def _show(self, finding: Finding) -> None:
        self._shown = finding
        self.shown.emit(finding)

    # -- accepting -------------------------------------------------------------------------------------

    def menu(self) -> QMenu:
        """Return what can be done with the chosen row."""
        menu, finding, accepted = QMenu(self), self.chosen(), self.chosen_accepted()
        if accepted is not None:
            menu.addAction("&Take acceptance back").triggered.connect(self.take_back)
        elif finding is not None:
            remedy = menu.addAction("Apply &remedy")
            remedy.setEnabled(has_remedy(finding))
            remedy.triggered.connect(lambda: self.apply_remedy(finding))
            accept_ = menu.addAction("&Accept with a reason…")
            accept_.setEnabled(acceptable(finding))
            accept_.triggered.connect(self.accept)
        return menu

    def accept(self) -> None:
        """Let the chosen finding's part have it, with a reason; undo takes that back."""
        hub, finding = self._hub, self.chosen()
        if finding is None or self.chosen_accepted() is not None:
            hub.told.emit("choose a finding first that is not accepted yet")
            return
        if not acceptable(finding):
            hub.told.emit("this speaks of more than one part, so that no part can accept it")
            return
        reason = self.ask.reason(finding.rule, finding.part, finding.message)
        if reason is None:
            return
        try:
            layout = accept(hub.layout, finding, reason)
        except Problem as problem:
            hub.told.emit(problem.message)
            return
        if hub.apply(f"accept {finding.rule} of {finding.part}", layout) is None:
            hub.told.emit(f"`{finding.part}` may have this: {reason}")

    def take_back(self) -> None:
        """Take the chosen finding's acceptance out of the layout."""
        hub, accepted = self._hub, self.chosen_accepted()
        if accepted is None:
            hub.told.emit("choose an accepted finding first")
            return
        rule, screen = accepted.finding.rule, accepted.finding.screen
        try:
            layout = take_back(hub.layout, screen, accepted.part, rule)
        except Problem as problem:
            hub.told.emit(problem.message)
            return
        if hub.apply(f"take back the acceptance of {rule}", layout) is None:
            hub.told.emit(f"`{rule}` can find `{accepted.part}` again")

    def mend(self) -> None:
        """Find every remedy that is safe, beside the window, and carry them out as one change that can be undone."""
        hub = self._hub
        if not hub.findings_current:
            hub.told.emit("the findings are of an earlier layout; wait until the proof is current")
            return
        if self._mender.busy:
            return
        self._mended = hub.material
        self._mender.start(hub.material)
        self.renew()
        self._trying("")

    @property
    def mending(self) -> bool:
        """Whether remedies are being tried beside the window."""
        return self._mender.busy

    def stop_work(self) -> None:
        """Stop the mending that is under way, else the proof."""
        if self._mender.busy:
            self._mender.stop()
            self.renew()
            self._hub.told.emit("mending was stopped; nothing has been changed")
        else:
            self._hub.stop_proof()

    def _left_behind(self) -> None:
        """Drop the mending of a layout that is not there any more."""
        if self._mender.busy and self._hub.material is not self._mended:
            self._mender.stop()
            self.renew()
            self._hub.told.emit("the layout changed meanwhile, so that nothing was mended")

    def _trying(self, sentence: str) -> None:
        said = f"mending: trying {sentence}" if sentence else "mending …"
        self.summary.setText(said)
        self.summary.setToolTip(said)

    def _mending_ended(self, found: object) -> None:
        hub = self._hub
        self.renew()
        if not isinstance(found, Mended):
            hub.told.emit(str(found))
        elif hub.material is not self._mended:
            hub.told.emit("the layout changed meanwhile, so that nothing was mended")
        elif not found.done:
            hub.told.emit("no remedy is safe to carry out; what is listed has to be changed by hand")
        elif hub.apply("mend what is safe", found.layout) is None:
            left = f"; {len(found.left)} left" if found.left else ""
            hub.told.emit(f"{counted(len(found.done), 'remedy', 'remedies')} carried out{left}")

    def apply_remedy(self, finding: Finding | None) -> None:
        """Carry out a finding's remedy; undo takes it back."""
        hub = self._hub
        if finding is None or self.chosen_accepted() is not None:
            return
        if not hub.findings_current:
            hub.told.emit("the remedy is of an earlier layout; wait until the proof is current")
            return
        try:
            layout = apply(hub.layout, finding)
        except Problem as problem:
            hub.told.emit(problem.message)
            return
        assert finding.remedy is not None
        if hub.apply(f"remedy: {finding.remedy.sentence}", layout) is None:
            hub.told.emit(f"applied: {finding.remedy.sentence}")
