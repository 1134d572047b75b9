"""A new layout: a common panel or a size of one's own, and a starter or nothing to begin from."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)

from panelproof.editor import theme
from panelproof.editor.files import UNTITLED
from panelproof.editor.panellist import OWN, PanelList
from panelproof.editor.panelview import PanelView
from panelproof.editor.sketch import Sketch, Sketcher, sketch
from panelproof.editor.starterlist import StarterList
from panelproof.layout.colour import ColourFormat
from panelproof.layout.document import Layout
from panelproof.layout.panel import Panel, Shape
from panelproof.problem import Problem
from panelproof.starters.description import descriptions
from panelproof.starters.make import EMPTY, empty, own_panel
from panelproof.starters.panels import USUAL, panel_of

SHAPES: tuple[tuple[str, Shape], ...] = (
    ("Rectangular", "rectangular"), ("Rounded corners", "rounded"), ("Round", "round"),
)  # fmt: skip
Look = tuple[ColourFormat, tuple[str, ...]]
COLOURS: tuple[tuple[str, Look], ...] = (
    ("16-bit colour (RGB 565)", ("rgb565", ())),
    ("One colour, on or off", ("mono", ())),
    ("4 greys", ("grey4", ())),
    ("16 greys", ("grey16", ())),
    ("Black and white paper", ("indexed", ("#000000", "#ffffff"))),
    ("Black, white and red paper", ("indexed", ("#000000", "#ffffff", "#c00000"))),
    ("Black, white and yellow paper", ("indexed", ("#000000", "#ffffff", "#e0b000"))),
)
GREATEST = 2048
WAIT = "Drawing …"


class NewForm(QWidget):
    """The choice itself, for the dialog and for the page of an empty window."""

    changed = Signal()
    """Another panel or starter is chosen, or the size of one's own has become right or wrong."""
    agreed = Signal()
    """A panel or starter was chosen by a double click or the Enter key."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.panels = PanelList()
        self.list = self.panels.view
        self.starters = StarterList()
        self.width_box, self.height_box = self._pixels("Width"), self._pixels("Height")
        self.shape_box = QComboBox()
        self.shape_box.setAccessibleName("Shape")
        for words, shape in SHAPES:
            self.shape_box.addItem(words, shape)
        self.radius_box = self._pixels("Corner radius")
        self.radius_box.setValue(16)
        self.colours_box = QComboBox()
        self.colours_box.setAccessibleName("Colours")
        self._looks = [look for _, look in COLOURS]
        self.colours_box.addItems([words for words, _ in COLOURS])
        self.refresh_box = QComboBox()
        self.refresh_box.setAccessibleName("Refresh")
        self.refresh_box.addItem("Part by part on the glass", "part")
        self.refresh_box.addItem("Whole frames from memory", "whole")
        self._boxes = (
            self.width_box, self.height_box, self.shape_box, self.radius_box, self.colours_box,
            self.refresh_box,
        )  # fmt: skip
        self.preview = PanelView()
        self.caption = QLabel()
        self.caption.setWordWrap(True)
        theme.set_role(self.caption, "quiet")
        self.trouble = QLabel()
        self.trouble.setWordWrap(True)
        self.trouble.setAccessibleName("What is wrong with the panel")
        self._sketcher = Sketcher(self)
        self._sketch: Sketch | None = None
        self._arrange()
        self._connect()
        theme.watch(self, self._renew)
        self.choose(panel_of(USUAL).title)

    @staticmethod
    def _pixels(name: str) -> QSpinBox:
        box = QSpinBox()
        box.setRange(1, GREATEST)
        box.setSuffix(" px")
        box.setAccessibleName(name)
        return box

    def _connect(self) -> None:
        self.panels.chosen.connect(self._chosen)
        self.panels.agreed.connect(self._agree)
        self.starters.picked.connect(self._renew)
        self.starters.agreed.connect(self._agree)
        self._sketcher.made.connect(self._sketched)
        for box in (self.width_box, self.height_box, self.radius_box):
            box.valueChanged.connect(self._changed)
        for combo in (self.shape_box, self.colours_box, self.refresh_box):
            combo.currentIndexChanged.connect(self._changed)

    def _arrange(self) -> None:
        size = QHBoxLayout()
        theme.space(size, 0, theme.UNIT)
        size.addWidget(self.width_box, 1)
        size.addWidget(QLabel("×"))
        size.addWidget(self.height_box, 1)
        form = QFormLayout()
        theme.space(form)
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        form.setLabelAlignment(Qt.AlignmentFlag.AlignRight)
        form.addRow("Size", size)
        form.addRow("Shape", self.shape_box)
        form.addRow("Corner radius", self.radius_box)
        form.addRow("Colours", self.colours_box)
        form.addRow("Refresh", self.refresh_box)
        left = QVBoxLayout()
        theme.space(left, 0, theme.UNIT)
        glass = QLabel("&Panel")
        glass.setBuddy(self.panels.search)
        left.addWidget(glass)
        left.addWidget(self.panels, 1)
        left.addLayout(form)
        right = QVBoxLayout()
        theme.space(right, 0, theme.UNIT)
        begin = QLabel("&Begin with")
        begin.setBuddy(self.starters)
        right.addWidget(begin)
        right.addWidget(self.starters, 2)
        right.addWidget(self.preview, 3)
        right.addWidget(self.caption)
        right.addWidget(self.trouble)
        row = QHBoxLayout(self)
        theme.space(row, 0, theme.GAP)
        row.addLayout(left, 1)
        row.addLayout(right, 1)

    # -- choosing --------------------------------------------------------------------------------------

    def choose(self, title: str) -> None:
        """Choose the panel of the list with that title."""
        self.panels.choose(title)

    def set_colours(self, colour_format: ColourFormat, palette: tuple[str, ...] = ()) -> None:
        """Set what a pixel can show; a palette that is not offered yet is added to the choice."""
        look: Look = (colour_format, palette)
        if look not in self._looks:
            self._looks.append(look)
            self.colours_box.addItem(f"{len(palette)} colours of its own")
        self.colours_box.setCurrentIndex(self._looks.index(look))

    def _chosen(self) -> None:
        panel = self.panels.panel()
        if panel is not None:
            for box in self._boxes:
                box.blockSignals(True)
            self.width_box.setValue(panel.width)
            self.height_box.setValue(panel.height)
            self.shape_box.setCurrentIndex(self.shape_box.findData(panel.shape))
            if panel.corner_radius:
                self.radius_box.setValue(panel.corner_radius)
            self.set_colours(panel.colour_format, panel.palette)
            self.refresh_box.setCurrentIndex(self.refresh_box.findData(panel.refresh))
            for box in self._boxes:
                box.blockSignals(False)
        self._renew()

    def _changed(self) -> None:
        """A value that is changed by hand makes it a size of one's own."""
        self.choose(OWN)
        self._renew()

    def _agree(self) -> None:
        if self.ready():
            self.agreed.emit()

    def _own_panel(self) -> Panel:
        shape: Shape = self.shape_box.currentData()
        colours, palette = self._looks[self.colours_box.currentIndex()]
        return own_panel(
            (self.width_box.value(), self.height_box.value()),
            colours,
            shape,
            self.radius_box.value() if shape == "rounded" else 0,
            self.refresh_box.currentData(),
            palette=palette,
        )

    def _renew(self) -> None:
        self.radius_box.setEnabled(self.shape_box.currentData() == "rounded")
        self._say("")
        self._sketch = None
        panel = None
        try:
            panel = self.panels.panel() or self._own_panel()
        except Problem as problem:
            self._say(problem.message)
        self.starters.blockSignals(True)
        self.starters.offer(panel)
        self.starters.blockSignals(False)
        name = self.starters.name()
        self.preview.show_panel(panel)
        if panel is None or name == EMPTY:
            self.caption.setText(self.starters.currentItem().toolTip())
        else:
            self.caption.setText(WAIT)
            self._sketcher.ask(panel, name)
        self.changed.emit()

    def _sketched(self, panel: Panel, starter: str, made: Sketch) -> None:
        """Show a picture that has come, unless something else has been chosen since."""
        if panel != self.panel() or starter != self.starters.name():
            return
        self._sketch = made
        self._say(made.trouble)
        if made.layout is not None:
            self.preview.show_panel(panel, made.frame)
            distance = made.layout.reading_distance_mm
            far = f" Can be read from up to {distance / 10:g} cm." if distance else ""
            self.caption.setText(f"{descriptions()[starter].purpose}{far}")
        else:
            self.caption.setText("")
        self.changed.emit()

    def _say(self, message: str) -> None:
        tone = theme.colours().fault.name()
        self.trouble.setText(f'<span style="color: {tone}">{message}</span>' if message else "")
        self.trouble.setVisible(bool(message))

    # -- the answer ------------------------------------------------------------------------------------

    def panel(self) -> Panel | None:
        """Return the panel chosen, None while the size of one's own is not right."""
        try:
            return self.panels.panel() or self._own_panel()
        except Problem:
            return None

    def ready(self) -> bool:
        """Tell whether a layout can be made of what is chosen, as far as is known yet."""
        return self.panel() is not None and not (self._sketch is not None and self._sketch.layout is None)

    def layout_made(self) -> Layout | None:
        """Return a layout on the chosen panel, None while there is none to be had."""
        panel = self.panel()
        if panel is None:
            return None
        name = self.starters.name()
        return empty(UNTITLED, panel) if name == EMPTY else sketch(panel, name).layout


class NewDialog(QDialog):
    """Asks for the panel of a new layout, and for what to begin with."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("New layout")
        self.form = NewForm()
        self.buttons = QDialogButtonBox()
        self._go = self.buttons.addButton("&Create", QDialogButtonBox.ButtonRole.AcceptRole)
        self.buttons.addButton(QDialogButtonBox.StandardButton.Cancel)
        self._go.setDefault(True)
        column = QVBoxLayout(self)
        theme.space(column, theme.GAP, theme.GAP)
        column.addWidget(self.form)
        column.addWidget(self.buttons)
        self.buttons.accepted.connect(self.accept)
        self.buttons.rejected.connect(self.reject)
        self.form.agreed.connect(self.accept)
        self.form.changed.connect(lambda: self._go.setEnabled(self.form.ready()))
        self.resize(820, 620)

    def layout_made(self) -> Layout | None:
        """Return the layout that was asked for."""
        return self.form.layout_made()
