"""Everything about the chosen part."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from msgspec.structs import replace
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from panelproof.content.spec import Content
from panelproof.editor import edits, theme
from panelproof.editor.hub import Hub
from panelproof.editor.sheet.content import ContentEditor
from panelproof.editor.sheet.entry import (
    ChoiceEntry,
    Entry,
    LineEntry,
    NumberEntry,
    RectangleEntry,
    TickEntry,
    group,
    tried,
)
from panelproof.editor.sheet.icon import StatesEditor
from panelproof.editor.sheet.meter import GROWING, RangeEditor
from panelproof.editor.sheet.picture import PictureEditor
from panelproof.layout.parts import Box, Field, Icon, Label, Meter, Part, Picture, Rule
from panelproof.problem import Problem
from panelproof.proof.extent import stage
from panelproof.proof.measure import Measure, of_stage

ALIGNS = (("starts at x", "left"), ("centred on x", "centre"), ("ends at x", "right"))
CLEARINGS = (
    ("pad: no ghost, no flicker", "pad"),
    ("box: no ghost, flickers", "box"),
    ("cell: its own cell", "cell"),
    ("none: ink only", "none"),
)
NONE = "\0"
RUNNING = ("x", "y", "baseline", "width", "height", "length", "thickness", "padding", "least", "greatest")


class PartSheet(QWidget):
    """The sheet of one part; another kind of part gets another form."""

    def __init__(self, hub: Hub) -> None:
        super().__init__()
        self._hub = hub
        self._name, self._kind = "", ""
        self._refreshers: list[Callable[[Any], None]] = []
        self._column = QVBoxLayout(self)
        theme.space(self._column, theme.GAP, theme.GAP)
        self._body = QWidget()
        self._column.addWidget(self._body)
        self._column.addStretch(1)

    def refresh(self) -> None:
        """Show the chosen part as it is now."""
        chosen = sorted(self._hub.selection)
        part = self._hub.part(chosen[0]) if len(chosen) == 1 else None
        kind = type(part).__name__ if part else f"{min(len(chosen), 2)}"
        if kind != self._kind or (part and part.name != self._name):
            self._kind, self._name = kind, part.name if part else ""
            self._build(part, len(chosen))
        if part:
            for show in self._refreshers:
                show(part)

    def _build(self, part: Part | None, count: int) -> None:
        self._refreshers = []
        old, self._body = self._body, QWidget()
        column = QVBoxLayout(self._body)
        theme.space(column, 0, theme.GAP)
        if part is None:
            words = (
                f"{count} parts are chosen. Move them together, or use Arrange to align them."
                if count
                else "Choose a part on the glass or in the list, or drag a new one from the tray."
            )
            label = QLabel(words)
            label.setWordWrap(True)
            theme.set_role(label, "quiet")
            column.addWidget(label)
        else:
            for section in self._sections(part):
                column.addWidget(section)
        self._column.replaceWidget(old, self._body)
        old.hide()
        old.deleteLater()

    # -- making rows -----------------------------------------------------------------------------------

    def _commit(self, key: str) -> Callable[[Any], Problem | None]:
        return lambda value: self._set(key, None if value == NONE else value)

    def _set(self, key: str, value: object) -> Problem | None:
        hub = self._hub
        part, screen = hub.part(self._name), hub.screen
        if part is None or screen is None:
            return None
        if getattr(part, key) == value:
            return None
        name = self._name
        if key == "name":
            self._name = str(value)
        changed = replace(part, **{key: value})
        problem = tried(
            hub.apply,
            f"{key} of `{name}`",
            lambda: edits.set_part(hub.layout, screen.name, name, changed),
            # Numbers run while a wheel turns; what is typed and entered counts on its own.
            f"{key} {screen.name} {self._name}" if key in RUNNING else "",
        )
        if key == "name":
            if problem:
                self._name = name
            else:
                hub.select([self._name])
        return problem

    def _row(self, column: QVBoxLayout, entry: Any, read: Callable[[Any], object]) -> Entry:
        column.addWidget(entry)
        self._refreshers.append(lambda part: entry.show_value(read(part)))
        made: Entry = entry
        return made

    def _number(self, column: QVBoxLayout, caption: str, key: str, least: int = -4096) -> None:
        self._row(
            column, NumberEntry(caption, self._commit(key), least, 4096), lambda part: getattr(part, key)
        )

    def _named(self, column: QVBoxLayout, caption: str, key: str, of: str, none: str = "") -> None:
        """Add a row that chooses one of the layout's inks or types."""
        entry = ChoiceEntry(caption, self._commit(key))
        column.addWidget(entry)

        def show(part: Any) -> None:
            words = [(one.name, one.name) for one in getattr(self._hub.layout, of)]
            entry.offer([(none, NONE), *words] if none else words)
            entry.show_value(getattr(part, key) or NONE)

        self._refreshers.append(show)

    # -- sections --------------------------------------------------------------------------------------

    def _sections(self, part: Part) -> list[QWidget]:
        head, column = group(f"{type(part).__name__}")
        self._row(column, LineEntry("Name", self._commit("name")), lambda part: part.name)
        sections = [head]
        if isinstance(part, Label):
            self._row(column, LineEntry("Text", self._commit("text")), lambda part: part.text)
        if isinstance(part, Field):
            sections.append(self._content())
        if isinstance(part, Icon):
            holder, column = group("States")
            states = StatesEditor(self._hub, lambda states: self._set("states", states))
            column.addWidget(states)
            self._refreshers.append(states.show_icon)
            link = TickEntry("Link", "shows a link", lambda on: self._set("link", on))
            self._row(column, link, lambda part: part.link)
            sections.append(holder)
        if isinstance(part, Meter):
            holder, column = group("Range and limits")
            ranges = RangeEditor(self._hub, self._set)
            column.addWidget(ranges)
            self._refreshers.append(ranges.show_meter)
            sections.append(holder)
        if isinstance(part, Picture):
            holder, column = group("What it shows")
            shows = PictureEditor(self._hub, self._set)
            column.addWidget(shows)
            self._refreshers.append(shows.show_picture)
            return [*sections, holder, self._place(part)]
        sections += [self._place(part), self._look(part)]
        if isinstance(part, Field | Icon):
            sections.append(self._clearing(part))
        if isinstance(part, Meter):
            holder, column = group("When it changes")
            self._period(column)
            sections.append(holder)
        return sections

    def _content(self) -> QWidget:
        holder, column = group("What it can show")
        editor = ContentEditor(self._set_content)
        column.addWidget(editor)
        self._refreshers.append(lambda part: editor.show_content(part.content, self._measure(part.name)))
        return holder

    def _set_content(self, content: Content) -> Problem | None:
        return self._set("content", content)

    def _measure(self, name: str) -> Measure | None:
        screen = self._hub.screen
        if screen is None:
            return None
        alone = replace(screen, parts=tuple(part for part in screen.parts if part.name == name))
        return next(of_stage(stage(self._hub.material, alone)), None)

    def _place(self, part: Part) -> QWidget:
        holder, column = group("Place")
        self._number(column, "x", "x")
        if isinstance(part, Label | Field):
            self._number(column, "Baseline", "baseline")
            self._row(column, ChoiceEntry("Text", self._commit("align"), ALIGNS), lambda part: part.align)
        else:
            self._number(column, "y", "y")
        if isinstance(part, Rule):
            self._number(column, "Length", "length", 1)
            self._number(column, "Thickness", "thickness", 1)
            words = (("across", "across"), ("down", "down"))
            self._row(
                column,
                ChoiceEntry("Direction", self._commit("direction"), words),
                lambda part: part.direction,
            )
        if isinstance(part, Box | Meter):
            self._number(column, "Width", "width", 1)
            self._number(column, "Height", "height", 1)
        if isinstance(part, Box):
            self._number(column, "Outline", "thickness", 1)
        if isinstance(part, Meter):
            grows = ChoiceEntry("Grows", self._commit("direction"), GROWING)
            self._row(column, grows, lambda part: part.direction)
        return holder

    def _look(self, part: Part) -> QWidget:
        holder, column = group("Look")
        if isinstance(part, Label | Field):
            self._named(column, "Type", "type", "types")
        if isinstance(part, Box):
            self._named(column, "Fill", "fill", "inks", "no fill")
            self._named(column, "Outline ink", "outline", "inks", "no outline")
            return holder
        self._named(column, "Ink", "ink", "inks")
        if not isinstance(part, Rule):
            self._named(column, "Ground", "ground", "inks", "as the screen")
        return holder

    def _clearing(self, part: Field | Icon) -> QWidget:
        holder, column = group("When it changes")
        self._row(
            column, ChoiceEntry("Clearing", self._commit("clearing"), CLEARINGS), lambda part: part.clearing
        )
        tick = TickEntry("Padding box", "has one", self._set_padding)
        self._row(column, tick, lambda part: part.padding is not None)
        self._row(column, RectangleEntry("x, y, w, h", self._commit("padding")), lambda part: part.padding)
        needed = QLabel()
        needed.setWordWrap(True)
        theme.set_role(needed, "small")
        fit = QPushButton("Fit to what it needs")
        fit.clicked.connect(self._fit)
        row = QHBoxLayout()
        theme.space(row)
        row.addWidget(needed, 1)
        row.addWidget(fit)
        column.addLayout(row)

        def show(_: Any) -> None:
            area = self._needed()
            if area:
                needed.setText(f"needs {area[2]} × {area[3]} at {area[0]}, {area[1]}")

        self._refreshers.append(show)
        self._period(column)
        if isinstance(part, Field):
            entry = LineEntry("Text buffer", self._set_buffer, "bytes; just enough if empty")
            self._row(column, entry, lambda part: str(part.buffer or ""))
        return holder

    def _period(self, column: QVBoxLayout) -> None:
        entry = LineEntry("Every", self._set_period, "milliseconds, where it is steady")
        self._row(column, entry, lambda part: str(part.period_ms or ""))

    def _set_period(self, text: str) -> Problem | None:
        if text and not text.isdecimal():
            return Problem(f"`{text}` is no whole number of milliseconds")
        return self._set("period_ms", int(text) if text else None)

    def _needed(self) -> tuple[int, int, int, int] | None:
        screen, part = self._hub.screen, self._hub.part(self._name)
        if screen is None or part is None:
            return None
        alone = replace(screen, parts=(part,))
        return stage(self._hub.material, alone).extents[0].reach.bounds()

    def _fit(self) -> None:
        area = self._needed()
        if area and area[2] and area[3]:
            self._set("padding", area)

    def _set_padding(self, wanted: bool) -> Problem | None:
        return self._set("padding", self._needed() if wanted else None)

    def _set_buffer(self, text: str) -> Problem | None:
        if text and not text.isdecimal():
            return Problem(f"`{text}` is no whole number of bytes")
        return self._set("buffer", int(text) if text else None)
