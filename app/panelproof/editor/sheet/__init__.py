"""The sheet: everything about the chosen part, and the layout's own lists, edited in place."""

from __future__ import annotations

from PySide6.QtWidgets import QFrame, QScrollArea, QTabWidget, QVBoxLayout, QWidget

from panelproof.editor import theme
from panelproof.editor.hub import Hub
from panelproof.editor.sheet.lists import InkSheet, ScreenSheet
from panelproof.editor.sheet.moments import MomentSheet
from panelproof.editor.sheet.panel import PanelSheet
from panelproof.editor.sheet.part import PartSheet
from panelproof.editor.sheet.types import TypeSheet


class Sheet(QWidget):
    """The right column. Choosing a part brings its page up; every page is one click away."""

    def __init__(self, hub: Hub) -> None:
        super().__init__()
        self._hub = hub
        column = QVBoxLayout(self)
        theme.space(column, 0, 0)
        self.tabs = QTabWidget()
        self.tabs.setDocumentMode(True)
        self.tabs.setUsesScrollButtons(False)
        self.tabs.setAccessibleName("Sheets")
        column.addWidget(self.tabs)
        self.part = PartSheet(hub)
        self.screens, self.moments = ScreenSheet(hub), MomentSheet(hub)
        self.types, self.inks, self.panel = TypeSheet(hub), InkSheet(hub), PanelSheet(hub)
        self._pages = (
            ("Part", self.part),
            ("Screens", self.screens),
            ("Moments", self.moments),
            ("Types", self.types),
            ("Inks", self.inks),
            ("Panel", self.panel),
        )
        for title, page in self._pages:
            area = QScrollArea()
            area.setWidgetResizable(True)
            area.setFrameShape(QFrame.Shape.NoFrame)
            area.setWidget(page)
            area.setAccessibleName(title)
            self.tabs.addTab(area, title)
        self.setMinimumWidth(304)
        self._dress()
        hub.layout_changed.connect(self.refresh)
        hub.screen_changed.connect(self.refresh)
        hub.moment_changed.connect(self._moment)
        hub.selection_changed.connect(self._selected)
        self.tabs.currentChanged.connect(self.refresh)
        theme.watch(self, self._dress)
        theme.watch(self, self.refresh)
        self.refresh()

    def _dress(self) -> None:
        tones = theme.colours()
        self.tabs.setStyleSheet(
            "QTabBar::tab { padding: 5px 5px; border-bottom: 2px solid transparent; }"
            f"QTabBar::tab:selected {{ border-bottom-color: {tones.accent.name()}; }}"
            f"QTabBar::tab:focus {{ border-bottom-color: {tones.text.name()}; }}"
        )

    def refresh(self) -> None:
        """Bring the page that is seen up to date."""
        self._pages[self.tabs.currentIndex()][1].refresh()

    def _moment(self) -> None:
        shown = self._hub.moment
        if shown and not shown.automatic:
            self.moments.chosen = shown.name
        if self.tabs.currentIndex() == 2:
            self.refresh()

    def _selected(self) -> None:
        if self._hub.selection:
            self.tabs.setCurrentIndex(0)
        self.refresh()

    def show_part(self) -> None:
        """Bring the chosen part's page up and put the focus into it."""
        self.tabs.setCurrentIndex(0)
        self.part.setFocus()
        self.part.focusNextChild()
