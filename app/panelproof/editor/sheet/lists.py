"""The layout's own lists: screens and inks, edited in place."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec.structs import replace
from PySide6.QtCore import QSignalBlocker
from PySide6.QtGui import QColor, QIcon, QPixmap
from PySide6.QtWidgets import QColorDialog, QHBoxLayout, QListWidget, QPushButton, QVBoxLayout, QWidget

from panelproof.editor import entries, theme
from panelproof.editor.hub import Hub
from panelproof.editor.sheet.entry import ChoiceEntry, Entry, LineEntry, TickEntry, group, tried
from panelproof.layout import colour
from panelproof.layout.document import Ink, Layout, Screen
from panelproof.problem import Problem


class ListSheet(QWidget):
    """A list of named things, buttons for it, and rows for the chosen one."""

    noun = "thing"

    def __init__(self, hub: Hub) -> None:
        super().__init__()
        self.hub = hub
        self.chosen = ""
        column = QVBoxLayout(self)
        theme.space(column, theme.GAP, theme.UNIT)
        self.list = QListWidget()
        self.list.setAccessibleName(f"{self.noun}s")
        self.list.setMaximumHeight(150)
        self.list.currentTextChanged.connect(self._choose)
        column.addWidget(self.list)
        row = QHBoxLayout()
        theme.space(row, 0, theme.TIGHT)
        for words, slot in self.buttons():
            button = QPushButton(words)
            button.setAccessibleName(f"{words} {self.noun}")
            button.clicked.connect(slot)
            row.addWidget(button)
        row.addStretch(1)
        column.addLayout(row)
        self.name = LineEntry("Name", self._rename)
        self.body, self.column = group("")
        self.column.addWidget(self.name)
        column.addWidget(self.body)
        column.addStretch(1)

    def buttons(self) -> Sequence[tuple[str, Callable[[], None]]]:
        """Return the words of the buttons under the list, and what they do."""
        return (("Add", self.add), ("Delete", self.delete))

    # -- for subclasses --------------------------------------------------------------------------------

    def names(self) -> list[str]:
        """Return what the list shows."""
        raise NotImplementedError

    def added(self) -> tuple[Layout, str]:
        """Return the layout with one more, and its name."""
        raise NotImplementedError

    def deleted(self) -> Layout:
        """Return the layout without the chosen one."""
        raise NotImplementedError

    def renamed(self, new: str) -> Layout:
        """Return the layout with another name for the chosen one."""
        raise NotImplementedError

    def show_chosen(self) -> None:
        """Bring the rows up to date."""

    def icon_of(self, name: str) -> QIcon | None:  # noqa: ARG002
        """Return a sign beside a name."""
        return None

    # -- the list --------------------------------------------------------------------------------------

    def refresh(self) -> None:
        """Show the layout as it is now."""
        names = self.names()
        if self.chosen not in names:
            self.chosen = names[0] if names else ""
        with QSignalBlocker(self.list):
            if [self.list.item(k).text() for k in range(self.list.count())] != names:
                self.list.clear()
                self.list.addItems(names)
            if self.chosen:
                self.list.setCurrentRow(names.index(self.chosen))
            for number, name in enumerate(names):
                icon = self.icon_of(name)
                if icon is not None:
                    self.list.item(number).setIcon(icon)
        self.body.setVisible(bool(self.chosen))
        if self.chosen:
            self.name.show_value(self.chosen)
            self.show_chosen()

    def _choose(self, name: str) -> None:
        if name and name != self.chosen:
            self.chosen = name
            self.refresh()

    def do(self, title: str, make: Callable[[], Layout], merge: str = "") -> Problem | None:
        """Apply a change, or return why not."""
        return tried(self.hub.apply, title, make, merge)

    def _rename(self, new: str) -> Problem | None:
        old, self.chosen = self.chosen, new
        problem = self.do(f"rename {self.noun} `{old}`", lambda: self._renamed_from(old, new))
        if problem:
            self.chosen = old
        return problem

    def _renamed_from(self, old: str, new: str) -> Layout:
        self.chosen = old
        try:
            return self.renamed(new)
        finally:
            self.chosen = new

    def add(self) -> None:
        """Add one and choose it."""
        try:
            layout, name = self.added()
        except Problem as problem:
            self.name.tell(problem)
            return
        self.chosen = name
        self.name.tell(self.hub.apply(f"add {self.noun} `{name}`", layout))

    def delete(self) -> None:
        """Delete the chosen one, where nothing needs it."""
        if self.chosen:
            self.name.tell(self.do(f"delete {self.noun} `{self.chosen}`", self.deleted))


class ScreenSheet(ListSheet):
    """The screens; the chosen one is on the glass."""

    noun = "screen"

    def __init__(self, hub: Hub) -> None:
        super().__init__(hub)
        self._ground = ChoiceEntry("Ground", lambda ink: self._set(ground=ink))
        self._clears = TickEntry("Drawing", "fills the panel first", lambda on: self._set(clears=on))
        self.column.addWidget(self._ground)
        self.column.addWidget(self._clears)

    def buttons(self) -> Sequence[tuple[str, Callable[[], None]]]:
        return (
            *super().buttons(),
            ("Copy", self._copy),
            ("Up", lambda: self._move(-1)),
            ("Down", lambda: self._move(1)),
        )

    def refresh(self) -> None:
        if self.hub.screen:
            self.chosen = self.hub.screen.name
        super().refresh()

    def _choose(self, name: str) -> None:
        if name:
            self.hub.show_screen(name)

    def names(self) -> list[str]:
        return [screen.name for screen in self.hub.layout.screens]

    def added(self) -> tuple[Layout, str]:
        return entries.add_screen(self.hub.layout)

    def add(self) -> None:
        super().add()
        self.hub.show_screen(self.chosen)

    def deleted(self) -> Layout:
        return entries.delete_screen(self.hub.layout, self.chosen)

    def renamed(self, new: str) -> Layout:
        return entries.rename_screen(self.hub.layout, self.chosen, new)

    def _rename(self, new: str) -> Problem | None:
        problem = super()._rename(new)
        if not problem:
            self.hub.show_screen(new)
        return problem

    def _copy(self) -> None:
        layout, name = entries.duplicate_screen(self.hub.layout, self.chosen)
        if not self.hub.apply(f"copy screen `{self.chosen}`", layout):
            self.hub.show_screen(name)

    def _move(self, by: int) -> None:
        number = self.names().index(self.chosen)
        self.do(
            f"move screen `{self.chosen}`",
            lambda: entries.reorder_screen(self.hub.layout, self.chosen, max(number + by, 0)),
        )

    def _set(self, **changes: object) -> Problem | None:
        screen = self.hub.screen
        if screen is None:
            return None
        screens = tuple(replace(one, **changes) if one is screen else one for one in self.hub.layout.screens)
        return self.hub.apply(f"screen `{screen.name}`", replace(self.hub.layout, screens=screens))

    def show_chosen(self) -> None:
        screen: Screen | None = self.hub.screen
        if screen is not None:
            self._ground.offer([(ink.name, ink.name) for ink in self.hub.layout.inks])
            self._ground.show_value(screen.ground)
            self._clears.show_value(screen.clears)


class InkSheet(ListSheet):
    """The inks, each with what the panel really shows."""

    noun = "ink"

    def __init__(self, hub: Hub) -> None:
        super().__init__(hub)
        self._colour = LineEntry("Colour", self._set_colour, "#rrggbb")
        self._pick = QPushButton("Choose…")
        self._pick.setAccessibleName("Choose the ink's colour")
        self._pick.clicked.connect(self._ask)
        self._shown = Entry("On the panel", QPushButton())
        assert isinstance(self._shown.control, QPushButton)
        self._swatch: QPushButton = self._shown.control
        self._swatch.setEnabled(False)
        for row in (self._colour, self._pick, self._shown):
            self.column.addWidget(row)

    def names(self) -> list[str]:
        return [ink.name for ink in self.hub.layout.inks]

    def _ink(self, name: str) -> Ink:
        return next(ink for ink in self.hub.layout.inks if ink.name == name)

    def _seen(self, name: str) -> QColor:
        colours = self.hub.layout.panel.colours
        code = colour.quantise(colour.parse(self._ink(name).colour), colours)
        return QColor(*colour.shown(code, colours))

    def icon_of(self, name: str) -> QIcon:
        pixmap = QPixmap(16, 16)
        pixmap.fill(self._seen(name))
        return QIcon(pixmap)

    def added(self) -> tuple[Layout, str]:
        return entries.add_ink(self.hub.layout, Ink("ink", "#808080"))

    def deleted(self) -> Layout:
        return entries.delete_ink(self.hub.layout, self.chosen)

    def renamed(self, new: str) -> Layout:
        return entries.rename_ink(self.hub.layout, self.chosen, new)

    def _set_colour(self, text: str) -> Problem | None:
        text = text if text.startswith("#") else f"#{text}"
        if not QColor.isValidColorName(text) or len(text) != 7:
            return Problem("write a colour as # and six hexadecimal digits, such as #ffb040")
        changed = replace(self._ink(self.chosen), colour=text.lower())
        return self.do(
            f"colour of `{self.chosen}`",
            lambda: entries.set_ink(self.hub.layout, self.chosen, changed),
            "colour",
        )

    def _ask(self) -> None:
        picked = QColorDialog.getColor(QColor(self._ink(self.chosen).colour), self, "Colour of the ink")
        if picked.isValid():
            self._colour.tell(self._set_colour(picked.name()))

    def show_chosen(self) -> None:
        self._colour.show_value(self._ink(self.chosen).colour)
        seen = self._seen(self.chosen)
        words = "#ffffff" if seen.lightnessF() < 0.5 else "#000000"
        self._swatch.setText(seen.name())
        self._swatch.setStyleSheet(f"background: {seen.name()}; color: {words}")
        self._swatch.setAccessibleName(f"The panel shows {seen.name()}")
