"""The findings in words, most serious first, with what ends them."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QListView,
    QProgressBar,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from panelproof.editor import signs, theme
from panelproof.editor.applying import apply, has_remedy
from panelproof.editor.findingrows import FINDING_ROLE, FindingDelegate, FindingModel, apply_area
from panelproof.editor.hub import Hub
from panelproof.layout.parts import Field
from panelproof.material import field_graph
from panelproof.problem import Problem
from panelproof.proof.finding import Finding
from panelproof.proof.words import counted
from panelproof.report import grouped, tally

CLEAN = "Clean: every text of every field fits"
NOTHING = "Nothing to prove yet"
NO_FIELDS = "Clean: everything fits"


class FindingList(QListView):
    """The list itself; a press on a row's button does not choose the row."""

    wanted = Signal(object)
    """A finding to be shown: chosen, or pressed again."""
    remedied = Signal(object)
    """A finding whose button was pressed."""

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
        hit = has_remedy(finding) and apply_area(self.visualRect(index)).contains(point)
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
        self._shown: Finding | None = None
        self._renewing = False
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
        top = QHBoxLayout()
        theme.space(top)
        top.addWidget(theme.heading("Findings"))
        top.addWidget(self.summary, 1)
        for widget in (self.progress, self.stop, self.again, self.remedy):
            top.addWidget(widget)
        column = QVBoxLayout(self)
        theme.space(column)
        column.addLayout(top)
        column.addWidget(self.list, 1)
        self.setFocusProxy(self.list)
        self.list.wanted.connect(self._show)
        self.list.remedied.connect(self.apply_remedy)
        self.list.selectionModel().currentChanged.connect(self._chosen)
        self.stop.clicked.connect(hub.stop_proof)
        self.again.clicked.connect(hub.prove_again)
        self.remedy.clicked.connect(lambda: self.apply_remedy(self.chosen()))
        hub.findings_changed.connect(self.renew)
        hub.proving.connect(self._advance)
        theme.watch(self, self.list.viewport().update)
        self.renew()

    # -- showing ---------------------------------------------------------------------------------------

    def renew(self) -> None:
        """Show the findings as they are now, and whether they are current."""
        hub = self._hub
        if hub.findings != self.model.findings:
            self._refill()
        running = not hub.findings_current and hub.proof_running
        self._delegate.faint = self.list.stale = not hub.findings_current
        self.progress.setVisible(running)
        self.stop.setVisible(running)
        self.again.setVisible(not hub.findings_current and not running)
        # In one place: the remedies of an earlier layout may not fit this one.
        self.remedy.setVisible(hub.findings_current)
        if running:
            self.progress.setRange(0, 0)
        self._say(running)
        self._enable()
        self.list.viewport().update()

    def _refill(self) -> None:
        """Show other findings; the chosen one stays chosen where it is still there."""
        chosen = self.chosen()
        self._renewing = True
        self.model.show_findings(self._hub.findings)
        if chosen in self.model.findings:
            self.list.setCurrentIndex(self.model.index(self.model.findings.index(chosen)))
        self._renewing = False
        if self._shown is not None and self._shown not in self.model.findings:
            self._shown = None
            self.cleared.emit()

    def _say(self, running: bool) -> None:
        hub = self._hub
        if running:
            words = "being proved again (listed: an earlier layout)"
            self.list.empty = "pending", "Being proved", ""
        elif not hub.findings_current:
            words = "not proved: stopped (listed: an earlier layout)"
            self.list.empty = "pending", "Not proved", "The proof was stopped."
        else:
            counts = tally(hub.findings)
            listed = ", ".join(counted(number, level) for level, number in counts.items() if number)
            proved = self._proved()
            # Where nothing is listed the list itself says it.
            words = f"{listed}; {proved}" if listed and proved else listed
            self.list.empty = "good", CLEAN if proved else NO_FIELDS, proved
            if not any(screen.parts for screen in hub.layout.screens):
                self.list.empty = "note", NOTHING, ""
        self.summary.setText(words)
        self.summary.setToolTip(words)

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

    def _chosen(self) -> None:
        self._enable()
        finding = self.chosen()
        if finding is not None and not self._renewing:
            self._show(finding)

    def _enable(self) -> None:
        finding = self.chosen()
        self.remedy.setEnabled(finding is not None and has_remedy(finding))

    def _show(self, finding: Finding) -> None:
        self._shown = finding
        self.shown.emit(finding)

    def apply_remedy(self, finding: Finding | None) -> None:
        """Carry out a finding's remedy; undo takes it back."""
        hub = self._hub
        if finding is None:
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
