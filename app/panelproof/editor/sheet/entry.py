"""Rows of a sheet: a caption, a control, and under it why the last entry was not taken."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QSignalBlocker, Qt
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QSizePolicy,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)

from panelproof.editor import theme
from panelproof.layout.document import Layout
from panelproof.problem import Problem

CAPTION = 92
HEIGHT = 26
Commit = Callable[[str], Problem | None]


class Entry(QWidget):
    """One row; subclasses bring the control."""

    def __init__(self, caption: str, control: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.control = control
        control.setAccessibleName(caption)
        control.setMinimumHeight(HEIGHT)
        label = QLabel(caption)
        label.setFixedWidth(CAPTION)
        label.setWordWrap(True)
        label.setBuddy(control)
        theme.set_role(label, "quiet")
        self.complaint = QLabel()
        self.complaint.setWordWrap(True)
        self.complaint.setVisible(False)
        self.complaint.setContentsMargins(CAPTION + theme.UNIT, 0, 0, 0)
        theme.set_role(self.complaint, "small")
        row = QHBoxLayout()
        theme.space(row)
        row.addWidget(
            label,
            0,
            Qt.AlignmentFlag.AlignTop if control.sizeHint().height() > 60 else Qt.AlignmentFlag.AlignVCenter,
        )
        row.addWidget(control, 1)
        whole = QVBoxLayout(self)
        theme.space(whole, 0, 2)
        whole.addLayout(row)
        whole.addWidget(self.complaint)

    def tell(self, problem: Problem | None) -> None:
        """Show why an entry was not taken, or that it was."""
        self.complaint.setText(f"✕ {problem.message}" if problem else "")
        self.complaint.setStyleSheet(f"color: {theme.colours().fault.name()}" if problem else "")
        self.complaint.setVisible(problem is not None)


class LineEntry(Entry):
    """One line of text, taken when it is left or Enter is pressed."""

    def __init__(self, caption: str, commit: Commit, hint: str = "") -> None:
        self.line = QLineEdit()
        self.line.setPlaceholderText(hint)
        super().__init__(caption, self.line)
        self._commit, self._held = commit, ""
        self.line.editingFinished.connect(self._finished)

    def show_value(self, value: str) -> None:
        """Show a value; what is being typed stays."""
        if value != self._held:
            self.tell(None)
        untouched = self.line.text() in (self._held, value) or not self.line.hasFocus()
        if untouched and self.complaint.isHidden():
            self.line.setText(value)
        self._held = value

    def _finished(self) -> None:
        if self.line.text() != self._held or not self.complaint.isHidden():
            self.tell(self._commit(self.line.text()))


class LinesEntry(Entry):
    """Several lines of text, taken when they are left."""

    def __init__(
        self, caption: str, commit: Callable[[tuple[str, ...]], Problem | None], hint: str = ""
    ) -> None:
        self.box = _Lines(self._finished)
        self.box.setPlaceholderText(hint)
        super().__init__(caption, self.box)
        self._commit = commit
        self._held: tuple[str, ...] = ()

    def show_value(self, value: tuple[str, ...]) -> None:
        """Show a value; what is being typed stays."""
        if value != self._held or not self.box.toPlainText():
            self._held = value
            if not self.box.hasFocus():
                self.box.setPlainText("\n".join(value))
                self.tell(None)

    def _finished(self) -> None:
        lines = tuple(line for line in self.box.toPlainText().split("\n") if line)
        if lines != self._held:
            self.tell(self._commit(lines))


class _Lines(QPlainTextEdit):
    def __init__(self, left: Callable[[], None]) -> None:
        super().__init__()
        self._left = left
        self.setTabChangesFocus(True)
        self.setFixedHeight(76)

    def focusOutEvent(self, event: object) -> None:
        super().focusOutEvent(event)  # type: ignore[arg-type]
        self._left()


class NumberEntry(Entry):
    """A whole number."""

    def __init__(
        self,
        caption: str,
        commit: Callable[[int], Problem | None],
        least: int,
        greatest: int,
        suffix: str = " px",
    ) -> None:
        self.spin = Spin(least, greatest, suffix)
        super().__init__(caption, self.spin)
        self.spin.valueChanged.connect(lambda value: self.tell(commit(value)))

    def show_value(self, value: int) -> None:
        """Show a value."""
        with QSignalBlocker(self.spin):
            self.spin.setValue(value)


class Spin(QSpinBox):
    """A number that the wheel changes only where it has the focus."""

    def __init__(self, least: int, greatest: int, suffix: str = "") -> None:
        super().__init__()
        self.setRange(least, greatest)
        self.setSuffix(suffix)
        self.setKeyboardTracking(False)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)

    def wheelEvent(self, event: object) -> None:
        if self.hasFocus():
            super().wheelEvent(event)  # type: ignore[arg-type]
        else:
            event.ignore()  # type: ignore[attr-defined]


class RectangleEntry(Entry):
    """Four numbers: x, y, width, height."""

    def __init__(self, caption: str, commit: Callable[[tuple[int, int, int, int]], Problem | None]) -> None:
        holder = QWidget()
        row = QHBoxLayout(holder)
        theme.space(row, 0, theme.TIGHT)
        self.spins = [Spin(-4096, 4096), Spin(-4096, 4096), Spin(1, 4096), Spin(1, 4096)]
        super().__init__(caption, holder)
        for spin, word in zip(self.spins, ("x", "y", "width", "height"), strict=True):
            spin.setAccessibleName(f"{caption}: {word}")
            spin.setMinimumHeight(HEIGHT)
            spin.setToolTip(f"{word} in pixels")
            spin.setButtonSymbols(QSpinBox.ButtonSymbols.NoButtons)
            row.addWidget(spin, 1)
            spin.valueChanged.connect(lambda _: self.tell(commit(self.value())))

    def value(self) -> tuple[int, int, int, int]:
        """Return the rectangle."""
        x, y, width, height = (spin.value() for spin in self.spins)
        return x, y, width, height

    def show_value(self, value: tuple[int, int, int, int] | None) -> None:
        """Show a rectangle, or that there is none."""
        self.setEnabled(value is not None)
        for spin, number in zip(self.spins, value or (0, 0, 1, 1), strict=True):
            with QSignalBlocker(spin):
                spin.setValue(number)


class ChoiceEntry(Entry):
    """One of several words; `words` pairs what is shown with what is meant."""

    def __init__(self, caption: str, commit: Commit, words: Sequence[tuple[str, str]] = ()) -> None:
        self.combo = QComboBox()
        self.combo.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.combo.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        super().__init__(caption, self.combo)
        self.combo.installEventFilter(self)
        self.offer(words)
        self.combo.activated.connect(lambda: self.tell(commit(self.combo.currentData())))

    def offer(self, words: Sequence[tuple[str, str]]) -> None:
        """Offer other words."""
        if [self.combo.itemText(k) for k in range(self.combo.count())] != [shown for shown, _ in words]:
            with QSignalBlocker(self.combo):
                self.combo.clear()
                for shown, meant in words:
                    self.combo.addItem(shown, meant)

    def show_value(self, value: str) -> None:
        """Show a value."""
        with QSignalBlocker(self.combo):
            self.combo.setCurrentIndex(self.combo.findData(value))

    def eventFilter(self, watched: object, event: object) -> bool:
        # The wheel scrolls the sheet, not a choice that it happens to pass.
        if event.type() == event.Type.Wheel and not self.combo.hasFocus():  # type: ignore[attr-defined]
            event.ignore()  # type: ignore[attr-defined]
            return True
        return super().eventFilter(watched, event)  # type: ignore[arg-type]


class TickEntry(Entry):
    """Yes or no."""

    def __init__(self, caption: str, words: str, commit: Callable[[bool], Problem | None]) -> None:
        self.box = QCheckBox(words)
        super().__init__(caption, self.box)
        self.box.setAccessibleName(words)
        self.box.clicked.connect(lambda on: self.tell(commit(on)))

    def show_value(self, value: bool) -> None:
        """Show a value."""
        with QSignalBlocker(self.box):
            self.box.setChecked(value)


def group(title: str) -> tuple[QWidget, QVBoxLayout]:
    """Return a titled group of rows and the column to add them to."""
    holder = QWidget()
    column = QVBoxLayout(holder)
    theme.space(column, 0, theme.UNIT)
    if title:
        column.addWidget(theme.heading(title))
    return holder, column


def tried(
    apply: Callable[[str, Layout, str], Problem | None],
    title: str,
    make: Callable[[], Layout],
    merge: str = "",
) -> Problem | None:
    """Make a layout and apply it; return why it cannot be made or taken."""
    try:
        layout = make()
    except Problem as problem:
        return problem
    return apply(title, layout, merge)
