"""A new layout: a common panel or a size of one's own, and something small to begin from."""

from __future__ import annotations

from msgspec.structs import replace
from PySide6.QtCore import QItemSelectionModel, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPainterPath, QPaintEvent, QPen, QStandardItem, QStandardItemModel
from PySide6.QtWidgets import (
    QAbstractItemView,
    QCheckBox,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QListView,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)

from panelproof.editor import theme
from panelproof.editor.files import UNTITLED
from panelproof.editor.panels import COMMON
from panelproof.layout.document import Layout
from panelproof.layout.panel import Panel, Shape
from panelproof.layout.starting import starter, starter_panel
from panelproof.problem import Problem

OWN = "A size of your own"
SHAPES: tuple[tuple[str, Shape], ...] = (
    ("Rectangular", "rectangular"), ("Rounded corners", "rounded"), ("Round", "round"),
)  # fmt: skip
GREATEST = 2048
ROW = 22
PANEL_ROLE = Qt.ItemDataRole.UserRole + 1


class Preview(QWidget):
    """The panel's outline at a common scale, so that sizes can be compared by eye."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._panel: Panel | None = None
        self.setMinimumSize(180, 130)
        self.setAccessibleName("Outline of the panel")

    def show_panel(self, panel: Panel | None) -> None:
        """Show a panel's outline; None: nothing."""
        self._panel = panel
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the outline in the middle."""
        del event
        if self._panel is None:
            return
        panel, tones = self._panel, theme.colours()
        scale = min((self.width() - 24) / panel.width, (self.height() - 24) / panel.height)
        width, height = panel.width * scale, panel.height * scale
        area = QRectF((self.width() - width) / 2, (self.height() - height) / 2, width, height)
        path = QPainterPath()
        if panel.shape == "round":
            path.addEllipse(area)
        else:
            radius = panel.corner_radius * scale if panel.shape == "rounded" else 0
            path.addRoundedRect(area, radius, radius)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(tones.accent, 1.5))
        painter.fillPath(path, tones.sunken)
        painter.drawPath(path)
        painter.setPen(tones.text)
        painter.setFont(theme.font("small"))
        painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, f"{panel.width} × {panel.height}")


class NewForm(QWidget):
    """The choice itself, for the dialog and for the page of an empty window."""

    changed = Signal()
    """Another panel is chosen, or the size of one's own has become right or wrong."""
    agreed = Signal()
    """A panel was chosen by a double click or the Enter key."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.list = self._make_list()
        self.width_box, self.height_box = self._pixels("Width"), self._pixels("Height")
        self.width_box.setValue(240)
        self.height_box.setValue(135)
        self.shape_box = QComboBox()
        self.shape_box.setAccessibleName("Shape")
        for words, shape in SHAPES:
            self.shape_box.addItem(words, shape)
        self.radius_box = self._pixels("Corner radius")
        self.radius_box.setValue(16)
        self.colours_box = QComboBox()
        self.colours_box.setAccessibleName("Colours")
        self.colours_box.addItem("16-bit colour (RGB 565)", "rgb565")
        self.colours_box.addItem("One colour, on or off", "mono")
        self.refresh_box = QComboBox()
        self.refresh_box.setAccessibleName("Refresh")
        self.refresh_box.addItem("Part by part on the glass", "part")
        self.refresh_box.addItem("Whole frames from memory", "whole")
        self.starter_box = QCheckBox("Begin with a small example: a label and a field")
        self._boxes = (
            self.width_box, self.height_box, self.shape_box, self.radius_box, self.colours_box,
            self.refresh_box,
        )  # fmt: skip
        self.preview = Preview()
        self.trouble = QLabel()
        self.trouble.setWordWrap(True)
        self.trouble.setAccessibleName("What is wrong with the size")
        self._arrange()
        self.list.selectionModel().currentChanged.connect(self._chosen)
        for box in (self.width_box, self.height_box, self.radius_box):
            box.valueChanged.connect(self._changed)
        for combo in (self.shape_box, self.colours_box, self.refresh_box):
            combo.currentIndexChanged.connect(self._changed)
        theme.watch(self, self._renew)
        self.choose("1.14 in · 240 × 135")

    def _make_list(self) -> QListView:
        view = QListView()
        view.setAccessibleName("Panels")
        view.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        view.setUniformItemSizes(False)
        view.activated.connect(lambda _: self.agreed.emit() if self.panel() else None)
        model = QStandardItemModel(view)
        own = QStandardItem(OWN)
        own.setSizeHint(QSize(0, ROW))
        model.appendRow(own)
        group = ""
        for entry in COMMON:
            if entry.group != group:
                group = entry.group
                title = QStandardItem(group)
                title.setFlags(Qt.ItemFlag.NoItemFlags)
                title.setFont(theme.font("heading"))
                title.setSizeHint(QSize(0, theme.ROW))
                model.appendRow(title)
            row = QStandardItem(f"    {entry.title}")
            row.setAccessibleText(f"{entry.group}, {entry.title}")
            row.setData(entry.panel, PANEL_ROLE)
            row.setSizeHint(QSize(0, ROW))
            model.appendRow(row)
        view.setModel(model)
        return view

    @staticmethod
    def _pixels(name: str) -> QSpinBox:
        box = QSpinBox()
        box.setRange(1, GREATEST)
        box.setSuffix(" px")
        box.setAccessibleName(name)
        return box

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
        right = QVBoxLayout()
        theme.space(right, 0, theme.GAP)
        right.addWidget(self.preview, 1)
        right.addLayout(form)
        right.addWidget(self.trouble)
        right.addWidget(self.starter_box)
        row = QHBoxLayout(self)
        theme.space(row, 0, theme.GAP)
        row.addWidget(self.list, 1)
        row.addLayout(right, 1)

    # -- choosing --------------------------------------------------------------------------------------

    def choose(self, title: str) -> None:
        """Choose the entry of the list with that title."""
        model = self.list.model()
        for row in range(model.rowCount()):
            index = model.index(row, 0)
            if index.data().strip() == title:
                self.list.selectionModel().setCurrentIndex(
                    index, QItemSelectionModel.SelectionFlag.ClearAndSelect
                )
                self.list.scrollTo(index)

    def _chosen(self) -> None:
        panel = self.list.currentIndex().data(PANEL_ROLE)
        for box in self._boxes:
            box.blockSignals(True)
        if isinstance(panel, Panel):
            self.width_box.setValue(panel.width)
            self.height_box.setValue(panel.height)
            self.shape_box.setCurrentIndex(self.shape_box.findData(panel.shape))
            if panel.corner_radius:
                self.radius_box.setValue(panel.corner_radius)
            self.colours_box.setCurrentIndex(self.colours_box.findData(panel.colour_format))
            self.refresh_box.setCurrentIndex(self.refresh_box.findData(panel.refresh))
        for box in self._boxes:
            box.blockSignals(False)
        self._renew()

    def _changed(self) -> None:
        """A value that is changed by hand makes it a size of one's own."""
        self.choose(OWN)
        self._renew()

    def _own_panel(self) -> Panel:
        shape: Shape = self.shape_box.currentData()
        return starter_panel(
            (self.width_box.value(), self.height_box.value()),
            self.colours_box.currentData(),
            shape,
            self.radius_box.value() if shape == "rounded" else 0,
            self.refresh_box.currentData(),
        )

    def _renew(self) -> None:
        self.radius_box.setEnabled(self.shape_box.currentData() == "rounded")
        self.trouble.clear()
        try:
            self.preview.show_panel(self._own_panel())
        except Problem as problem:
            self.preview.show_panel(None)
            tone = theme.colours().fault.name()
            self.trouble.setText(f'<span style="color: {tone}">{problem.message}</span>')
        self.trouble.setVisible(bool(self.trouble.text()))
        self.changed.emit()

    # -- the answer ------------------------------------------------------------------------------------

    def panel(self) -> Panel | None:
        """Return the panel chosen, None while the size of one's own is not right."""
        panel = self.list.currentIndex().data(PANEL_ROLE)
        if isinstance(panel, Panel):
            return panel
        try:
            return self._own_panel()
        except Problem:
            return None

    def layout_made(self) -> Layout | None:
        """Return a layout on the chosen panel, None while there is none to be had."""
        panel = self.panel()
        if panel is None:
            return None
        layout = starter(UNTITLED, panel)
        if self.starter_box.isChecked():
            return layout
        # The type and the inks stay, so that the first part finds something to be set in.
        bare = tuple(replace(screen, parts=()) for screen in layout.screens)
        return replace(layout, screens=bare, moments=())


class NewDialog(QDialog):
    """Asks for the panel of a new layout."""

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
        self.form.changed.connect(lambda: self._go.setEnabled(self.form.panel() is not None))
        self.resize(640, 480)

    def layout_made(self) -> Layout | None:
        """Return the layout that was asked for."""
        return self.form.layout_made()
