"""The menus: what can be done, with the platform's own keys; what does it comes from the window."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMainWindow, QMenu

Needs = Literal["", "layout", "screen", "parts", "several", "choice"]
Keys = QKeySequence.StandardKey


@dataclass(frozen=True, slots=True)
class Entry:
    """One entry: its key in the window's deeds, its words, its shortcut, and what it needs to be of use.

    `needs`: `layout` one open; `screen` one shown; `parts` some on it; `choice` some chosen; `several` two or
    more chosen. `local`: its shortcut counts only on the glass and in the list of parts, where it cannot be
    meant for a text that is being written.
    """

    deed: str
    words: str
    keys: str | Keys = ""
    needs: Needs = "layout"
    local: bool = False
    checkable: bool = False


@dataclass(frozen=True, slots=True)
class Group:
    """A menu inside a menu."""

    words: str
    entries: tuple[Entry | None, ...]


Item = Entry | Group | None
FALLBACK = {"quit": "Ctrl+Q"}

INSERT = Group(
    "&New part",
    tuple(
        Entry(f"insert_{kind}", f"New &{kind}", f"Ctrl+{number}", "screen")
        for number, kind in enumerate(("label", "field", "icon", "rule", "box", "meter", "picture"), 1)
    ),
)
ALIGN = Group(
    "&Align",
    (
        Entry("align_left", "&Left edges", needs="choice"),
        Entry("align_centre", "&Centres", needs="choice"),
        Entry("align_right", "&Right edges", needs="choice"),
        None,
        Entry("align_top", "&Top edges", needs="choice"),
        Entry("align_middle", "&Middles", needs="choice"),
        Entry("align_bottom", "&Bottom edges", needs="choice"),
        None,
        Entry("align_baseline", "B&aselines", needs="choice"),
    ),
)
SPACE = Group(
    "&Space evenly",
    (Entry("space_across", "&Across", needs="several"), Entry("space_down", "&Down", needs="several")),
)
ORDER = Group(
    "Drawing &order",
    (
        Entry("draw_first", "Draw &first", "Alt+Home", "choice"),
        Entry("draw_earlier", "Draw &earlier", "Alt+Up", "choice"),
        Entry("draw_later", "Draw &later", "Alt+Down", "choice"),
        Entry("draw_last", "Draw l&ast", "Alt+End", "choice"),
    ),
)
ZOOM = Group(
    "&Enlarge",
    tuple(Entry(f"zoom_{times}", f"{times} times") for times in (1, 2, 3, 4, 6, 8, 12, 16)),
)
COLOURS = Group(
    "&Colours",
    (
        Entry("colours_system", "As the &system", needs="", checkable=True),
        Entry("colours_light", "&Light", needs="", checkable=True),
        Entry("colours_dark", "&Dark", needs="", checkable=True),
    ),
)
MENUS: tuple[tuple[str, tuple[Item, ...]], ...] = (
    ("&File", (
        Entry("new", "&New…", Keys.New, ""),
        Entry("open", "&Open…", Keys.Open, ""),
        Group("Open &recent", ()),
        Entry("another", "Another &window", "Ctrl+Shift+N", ""),
        None,
        Entry("save", "&Save", Keys.Save),
        Entry("save_as", "Save &as…", "Ctrl+Shift+S"),
        None,
        Entry("export", "&Export…", "Ctrl+E"),
        None,
        Entry("close", "&Close", Keys.Close, ""),
        Entry("quit", "&Quit", Keys.Quit, ""),
    )),
    ("&Edit", (
        Entry("undo", "&Undo", Keys.Undo),
        Entry("redo", "&Redo", Keys.Redo),
        None,
        Entry("cut", "Cu&t", Keys.Cut, "choice", local=True),
        Entry("copy", "&Copy", Keys.Copy, "choice", local=True),
        Entry("paste", "&Paste", Keys.Paste, "screen", local=True),
        Entry("duplicate", "D&uplicate", "Ctrl+D", "choice"),
        Entry("delete", "&Delete", Keys.Delete, "choice", local=True),
        None,
        Entry("select_all", "Select &all", Keys.SelectAll, "parts", local=True),
        Entry("select_none", "Select n&one", "Ctrl+Shift+A", "choice"),
    )),
    ("&Arrange", (
        INSERT,
        None,
        ALIGN,
        SPACE,
        ORDER,
        None,
        Entry("rename", "Re&name", "F2", "choice"),
        Entry("hide", "&Hide while working", "Ctrl+Shift+H", "choice", checkable=True),
        Entry("lock", "&Lock", "Ctrl+L", "choice", checkable=True),
        Entry("show_all", "Show and &unlock all"),
    )),
    ("&Proof", (
        Entry("next_finding", "&Next finding", "F8"),
        Entry("previous_finding", "&Previous finding", "Shift+F8"),
        Entry("remedy", "Apply &remedy", "Ctrl+R"),
        Entry("mend", "&Mend what is safe", "Ctrl+Shift+M"),
        Entry("accept", "&Accept with a reason…", "Ctrl+Shift+R"),
        Entry("take_back", "&Take acceptance back"),
        None,
        Entry("stop_proof", "&Stop"),
        Entry("prove_again", "Prove &again"),
    )),
    ("&View", (
        Entry("zoom_in", "Enlarge &more", Keys.ZoomIn),
        Entry("zoom_out", "Enlarge &less", Keys.ZoomOut),
        Entry("fit", "&Fit into the window", "Ctrl+0"),
        ZOOM,
        Entry("grid", "Pixel &grid", "Ctrl+G", checkable=True),
        Entry("true_size", "&True size…", "Ctrl+T"),
        None,
        Entry("next_moment", "Next &moment", "Ctrl+PgDown"),
        Entry("previous_moment", "Previous moment", "Ctrl+PgUp"),
        Entry("next_screen", "Next &screen", "Ctrl+Shift+PgDown"),
        Entry("previous_screen", "Previous screen", "Ctrl+Shift+PgUp"),
        None,
        Entry("next_pane", "Next &pane", "F6"),
        Entry("previous_pane", "Previous pane", "Shift+F6"),
        COLOURS,
        Entry("full_screen", "F&ull screen", Keys.FullScreen, "", checkable=True),
    )),
    ("&Help", (
        Entry("shortcuts", "&Shortcuts", Keys.HelpContents, ""),
        Entry("about", "&About Panelproof", needs=""),
    )),
)  # fmt: skip


class Menus:
    """The window's menus and actions, by deed."""

    def __init__(self, window: QMainWindow, deeds: Mapping[str, Callable[[], object]]) -> None:
        self._window = window
        self.actions: dict[str, QAction] = {}
        self.entries: dict[str, Entry] = {}
        self.titles: list[tuple[str, list[str]]] = []
        """The menus' titles, each with the deeds in it, for the list of shortcuts."""
        self.recent = QMenu("Open &recent", window)
        for title, items in MENUS:
            menu = window.menuBar().addMenu(title)
            self.titles.append((title.replace("&", ""), [entry.deed for entry in _flat(items)]))
            for item in items:
                self._add(menu, item, deeds)

    def _add(self, menu: QMenu, item: Item, deeds: Mapping[str, Callable[[], object]]) -> None:
        match item:
            case None:
                menu.addSeparator()
            case Group(words, entries):
                if entries:
                    inner = menu.addMenu(words)
                    for entry in entries:
                        self._add(inner, entry, deeds)
                else:
                    menu.addMenu(self.recent)
            case Entry():
                menu.addAction(self._action(item, deeds[item.deed]))

    def _action(self, entry: Entry, deed: Callable[[], object]) -> QAction:
        action = QAction(entry.words, self._window)
        action.setObjectName(entry.deed)
        if isinstance(entry.keys, QKeySequence.StandardKey):
            # Not every desktop has a key of its own for leaving a program.
            keys = QKeySequence.keyBindings(entry.keys) or [QKeySequence(FALLBACK.get(entry.deed, ""))]
            action.setShortcuts(keys)
        elif entry.keys:
            action.setShortcut(QKeySequence(entry.keys))
        action.setCheckable(entry.checkable)
        action.triggered.connect(lambda _=False: deed())
        self.actions[entry.deed], self.entries[entry.deed] = action, entry
        return action

    def local(self) -> Iterator[QAction]:
        """Yield the actions whose shortcuts count only where parts can be meant."""
        return (self.actions[deed] for deed, entry in self.entries.items() if entry.local)

    def enable(self, has: frozenset[str]) -> None:
        """Let the actions be of use whose needs are among `has`."""
        for deed, entry in self.entries.items():
            self.actions[deed].setEnabled(not entry.needs or entry.needs in has)


def _flat(items: tuple[Item, ...]) -> Iterator[Entry]:
    for item in items:
        if isinstance(item, Group):
            yield from _flat(item.entries)
        elif item is not None:
            yield item
