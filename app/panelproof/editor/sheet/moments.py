"""The shown screen's named moments, edited in place."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from panelproof.editor import entries
from panelproof.editor.hub import Hub
from panelproof.editor.sheet.entry import ChoiceEntry, LineEntry
from panelproof.editor.sheet.lists import ListSheet
from panelproof.layout.document import Layout
from panelproof.layout.parts import Field, Icon, Meter
from panelproof.layout.wording import quote
from panelproof.problem import Problem


class MomentSheet(ListSheet):
    """The shown screen's named moments, with a value for every field, icon and meter."""

    noun = "moment"

    def __init__(self, hub: Hub) -> None:
        super().__init__(hub)
        self._rows: dict[str, LineEntry | ChoiceEntry] = {}
        self._shape: object = None

    def buttons(self) -> Sequence[tuple[str, Callable[[], None]]]:
        return (("Add as shown", self.add), ("Delete", self.delete))

    def names(self) -> list[str]:
        return [moment.name for moment in self.hub.moments if not moment.automatic]

    def _choose(self, name: str) -> None:
        super()._choose(name)
        if name:
            self.hub.show_moment(name)

    def added(self) -> tuple[Layout, str]:
        screen = self.hub.screen
        if screen is None:
            raise Problem("add a screen first")
        return entries.add_moment(self.hub.layout, screen.name, "moment", self.hub.values)

    def deleted(self) -> Layout:
        return entries.delete_moment(self.hub.layout, self.chosen)

    def renamed(self, new: str) -> Layout:
        return entries.rename_moment(self.hub.layout, self.chosen, new)

    def show_chosen(self) -> None:
        screen = self.hub.screen
        if screen is None:
            return
        parts = [part for part in screen.parts if isinstance(part, Field | Icon | Meter)]
        shape = [(part.name, type(part)) for part in parts]
        if shape != self._shape:
            self._shape = shape
            for row in self._rows.values():
                self.column.removeWidget(row)
                row.hide()
                row.deleteLater()
            self._rows = {part.name: self._row(part) for part in parts}
            for row in self._rows.values():
                self.column.addWidget(row)
        shown = next(moment for moment in self.hub.moments if moment.name == self.chosen)
        for part in parts:
            row = self._rows[part.name]
            if isinstance(part, Icon) and isinstance(row, ChoiceEntry):
                row.offer([(state.name, state.name) for state in part.states])
            if isinstance(part, Meter):
                value = shown.values.levels[part.name]
                row.show_value("" if value is None else str(value))
            else:
                row.show_value(shown.values.of(part.name))

    def _row(self, part: Field | Icon | Meter) -> LineEntry | ChoiceEntry:
        def commit(value: str) -> Problem | None:
            return self.do(
                f"`{part.name}` in `{self.chosen}`",
                lambda: entries.set_moment_value(
                    self.hub.layout,
                    self.chosen,
                    part.name,
                    _level(value) if isinstance(part, Meter) else value,
                ),
            )

        if isinstance(part, Meter):
            return LineEntry(part.name, commit, "no value")
        return LineEntry(part.name, commit) if isinstance(part, Field) else ChoiceEntry(part.name, commit)


def _level(typed: str) -> int | None:
    """Return a meter's value as it was typed; nothing is no value."""
    said = typed.strip().replace("−", "-")
    if not said:
        return None
    if not said.removeprefix("-").isdecimal():
        raise Problem(f"{quote(typed)} is no whole number; leave it empty for no value")
    return int(said)
