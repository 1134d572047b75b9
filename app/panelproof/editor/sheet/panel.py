"""The panel: its pixels, shape, colours, and how a frame reaches it."""

from __future__ import annotations

from msgspec.structs import replace
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from panelproof.editor import entries, theme
from panelproof.editor.hub import Hub
from panelproof.editor.sheet.entry import ChoiceEntry, LineEntry, NumberEntry, group, tried
from panelproof.editor.sheet.palette import PaletteEditor
from panelproof.problem import Problem

SHAPES = (("rectangular", "rectangular"), ("rounded corners", "rounded"), ("round", "round"))
FORMATS = (
    ("16 bits: 5 red, 6 green, 5 blue", "rgb565"),
    ("one bit", "mono"),
    ("4 greys", "grey4"),
    ("16 greys", "grey16"),
    ("a palette", "indexed"),
)
REFRESHES = (("part by part, on the glass", "part"), ("whole frames, composed in memory", "whole"))


class PanelSheet(QWidget):
    """The sheet of the panel and the layout's name."""

    def __init__(self, hub: Hub) -> None:
        super().__init__()
        self._hub = hub
        column = QVBoxLayout(self)
        theme.space(column, theme.GAP, theme.GAP)
        head, rows = group("Layout")
        self._name = LineEntry("Name", self._rename, "begins every name in the header")
        rows.addWidget(self._name)
        column.addWidget(head)
        body, rows = group("Panel")
        self._title = LineEntry("Called", lambda text: self._set(name=text))
        self._width = NumberEntry("Width", lambda value: self._set(width=value), 1, 2048)
        self._height = NumberEntry("Height", lambda value: self._set(height=value), 1, 2048)
        self._format = ChoiceEntry("Colours", lambda word: self._set(colour_format=word), FORMATS)
        self._shape = ChoiceEntry("Shape", self._reshape, SHAPES)
        self._radius = NumberEntry("Corner radius", lambda value: self._set(corner_radius=value), 1, 1024)
        self._refresh = ChoiceEntry("Written", lambda word: self._set(refresh=word), REFRESHES)
        self._size = LineEntry("Seen size", self._set_size, "millimetres, such as 25.2 x 14.2")
        self.palette_editor = PaletteEditor(self._set_palette)
        for row in (
            self._title, self._width, self._height, self._format, self.palette_editor, self._shape, self._radius,
            self._refresh, self._size,
        ):  # fmt: skip
            rows.addWidget(row)
        self._facts = QLabel()
        self._facts.setWordWrap(True)
        theme.set_role(self._facts, "small")
        rows.addWidget(self._facts)
        column.addWidget(body)
        column.addStretch(1)

    def refresh(self) -> None:
        """Show the layout as it is now."""
        panel = self._hub.layout.panel
        self._name.show_value(self._hub.layout.name)
        self._title.show_value(panel.name)
        self._width.show_value(panel.width)
        self._height.show_value(panel.height)
        self._format.show_value(panel.colour_format)
        self.palette_editor.show_palette(panel.palette)
        self._shape.show_value(panel.shape)
        self._radius.show_value(panel.corner_radius)
        self._radius.setVisible(panel.shape == "rounded")
        self._refresh.show_value(panel.refresh)
        if panel.width_mm and panel.height_mm:
            self._size.show_value(f"{panel.width_mm:g} x {panel.height_mm:g}")
            pitch = panel.width_mm / panel.width
            self._facts.setText(f"a pixel is {pitch:.3f} mm wide: {25.4 / pitch:.0f} pixels an inch")
        else:
            self._size.show_value("")
            self._facts.setText("With the seen size given, the rulers count millimetres too.")

    def _rename(self, name: str) -> Problem | None:
        return tried(
            self._hub.apply, "name of the layout", lambda: entries.rename_layout(self._hub.layout, name)
        )

    def _set(self, **changes: object) -> Problem | None:
        layout = self._hub.layout
        return tried(
            self._hub.apply,
            "panel",
            lambda: entries.set_panel(layout, replace(layout.panel, **changes)),
            "panel",
        )

    def _set_palette(self, colours: tuple[str, ...]) -> Problem | None:
        layout = self._hub.layout
        panel = replace(layout.panel, palette=colours)
        return tried(self._hub.apply, "palette", lambda: entries.set_panel(layout, panel))

    def _reshape(self, shape: str) -> Problem | None:
        panel = self._hub.layout.panel
        if shape == "round" and panel.width != panel.height:
            return Problem("a round panel is as wide as it is high; make width and height equal first")
        return self._set(shape=shape)

    def _set_size(self, text: str) -> Problem | None:
        if not text.strip():
            return self._set(width_mm=None, height_mm=None)
        try:
            width, height = (float(word) for word in text.lower().replace("×", "x").split("x"))
        except ValueError:
            return Problem("write width x height in millimetres, such as 25.2 x 14.2")
        return self._set(width_mm=width, height_mm=height)
