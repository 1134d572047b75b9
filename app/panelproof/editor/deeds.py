# ruff: noqa: PLW0108 - hub and bench come into being after the table has been made
"""What each entry of the menus does."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING, Any

from panelproof.editor import theme
from panelproof.editor.menus import ZOOM, Entry

if TYPE_CHECKING:
    from panelproof.editor.bench import Bench
    from panelproof.editor.hub import Hub
    from panelproof.editor.window import MainWindow

KINDS = ("label", "field", "icon", "rule", "box", "meter", "picture")
EDGES = ("left", "centre", "right", "top", "middle", "bottom", "baseline")
SCHEMES: tuple[theme.Scheme, ...] = ("system", "light", "dark")
SELECTING = ("cut", "copy", "paste", "duplicate", "delete", "select_all")


class Deeds:
    """Carries out the menus' entries on a window; without a document those that need one do nothing."""

    def __init__(self, window: MainWindow) -> None:
        self._window = window

    @property
    def _hub(self) -> Hub:
        hub = self._window.hub
        assert hub is not None
        return hub

    @property
    def _bench(self) -> Bench:
        assert self._window.bench is not None
        return self._window.bench

    def table(self) -> dict[str, Callable[[], object]]:
        """Return what each entry does, by its key."""
        window = self._window
        deeds: dict[str, Callable[[], object]] = {
            "new": lambda: window.begin().new(),
            "open": lambda: window.begin().open(),
            "another": lambda: window.another(None),
            "save": lambda: window.begin().save(),
            "save_as": lambda: window.begin().save_as(),
            "export": self.export,
            "close": window.close,
            "quit": self.quit,
            "undo": lambda: self._hub.undo(),
            "redo": lambda: self._hub.redo(),
            "select_none": lambda: self._hub.select(()),
            "rename": lambda: self._bench.parts.rename_chosen(),
            "hide": lambda: self._switch("hidden"),
            "lock": lambda: self._switch("locked"),
            "show_all": self.show_all,
            "draw_earlier": lambda: self._bench.parts.step(-1),
            "draw_later": lambda: self._bench.parts.step(1),
            "draw_first": lambda: self._bench.parts.to_end(last=False),
            "draw_last": lambda: self._bench.parts.to_end(last=True),
            "next_finding": lambda: self._bench.step_finding(1),
            "previous_finding": lambda: self._bench.step_finding(-1),
            "remedy": lambda: self._bench.findings.apply_remedy(self._bench.findings.chosen()),
            "mend": lambda: self._bench.findings.mend(),
            "accept": lambda: self._bench.findings.accept(),
            "take_back": lambda: self._bench.findings.take_back(),
            "stop_proof": lambda: self._bench.findings.stop_work(),
            "prove_again": lambda: self._hub.prove_again(),
            "zoom_in": lambda: self._bench.glass.zoom_in(),
            "zoom_out": lambda: self._bench.glass.zoom_out(),
            "fit": lambda: self._bench.glass.fit(),
            "grid": lambda: self._bench.glass.set_grid(window.menus.actions["grid"].isChecked()),
            "true_size": self.true_size,
            "next_moment": lambda: self.step_moment(1),
            "previous_moment": lambda: self.step_moment(-1),
            "next_screen": lambda: self.step_screen(1),
            "previous_screen": lambda: self.step_screen(-1),
            "next_pane": lambda: self._bench.go_round(1),
            "previous_pane": lambda: self._bench.go_round(-1),
            "full_screen": self.full_screen,
            "shortcuts": self.shortcuts,
            "about": window.about,
        }
        deeds |= {f"insert_{kind}": partial(self._insert, kind) for kind in KINDS}
        deeds |= {f"align_{edge}": partial(self._select, "align", edge) for edge in EDGES}
        deeds |= {f"space_{way}": partial(self._select, "distribute", way) for way in ("across", "down")}
        deeds |= {name: partial(self._select, name) for name in SELECTING}
        deeds |= {f"colours_{scheme}": partial(self._colours, scheme) for scheme in SCHEMES}
        for entry in ZOOM.entries:
            assert isinstance(entry, Entry)
            deeds[entry.deed] = partial(self._zoom, int(entry.deed.removeprefix("zoom_")))
        return deeds

    # -- parts -----------------------------------------------------------------------------------------

    def _select(self, name: str, *arguments: str) -> None:
        from panelproof.editor import selecting  # noqa: PLC0415 - after the window has been painted

        deed: Callable[..., Any] = getattr(selecting, name)
        deed(self._hub, *arguments)

    def _insert(self, kind: Any) -> None:
        self._bench.tray.insert(kind)

    def _switch(self, what: str) -> None:
        hub = self._hub
        check, change = (
            (hub.is_hidden, hub.set_hidden) if what == "hidden" else (hub.is_locked, hub.set_locked)
        )
        on = not all(map(check, hub.selection))
        for name in hub.selection:
            change(name, on)

    def show_all(self) -> None:
        """Show and unlock every part of the screen."""
        hub = self._hub
        for part in hub.screen.parts if hub.screen else ():
            hub.set_hidden(part.name, False)
            hub.set_locked(part.name, False)

    # -- view ------------------------------------------------------------------------------------------

    def _zoom(self, times: int) -> None:
        self._bench.glass.set_zoom(times)

    def step_moment(self, step: int) -> None:
        """Show the next moment of the screen, or with -1 the one before."""
        names = [moment.name for moment in self._hub.moments]
        if names and self._hub.moment is not None:
            here = names.index(self._hub.moment.name)
            self._hub.show_moment(names[(here + step) % len(names)])

    def step_screen(self, step: int) -> None:
        """Show the next screen, or with -1 the one before."""
        names = [screen.name for screen in self._hub.layout.screens]
        if self._hub.screen is not None:
            self._hub.show_screen(names[(names.index(self._hub.screen.name) + step) % len(names)])

    def true_size(self) -> None:
        """Show the panel as large as it is."""
        from panelproof.editor.truesize import TrueSize  # noqa: PLC0415 - only when it is asked for

        TrueSize(self._hub, self._window).show()

    def _colours(self, scheme: theme.Scheme) -> None:
        theme.choose(scheme)
        self._window.session.remember({"colours": scheme})
        self.mark_colours()

    def mark_colours(self) -> None:
        """Let the menu show which colours were chosen."""
        for scheme in SCHEMES:
            self._window.menus.actions[f"colours_{scheme}"].setChecked(scheme == theme.scheme())

    def full_screen(self) -> None:
        """Let the window take the whole screen, or give it back."""
        if self._window.isFullScreen():
            self._window.showNormal()
        else:
            self._window.showFullScreen()

    # -- file and help ---------------------------------------------------------------------------------

    def export(self) -> None:
        """Hand the layout over to the firmware."""
        from panelproof.editor.exporting import ExportDialog  # noqa: PLC0415 - only when it is asked for

        ExportDialog(self._hub, self._window).exec()

    def quit(self) -> None:
        """Close every window; one that wants to stay stays."""
        from PySide6.QtWidgets import QApplication  # noqa: PLC0415

        QApplication.closeAllWindows()

    def shortcuts(self) -> None:
        """List the shortcuts."""
        from panelproof.editor.shortcuts import ShortcutList  # noqa: PLC0415

        ShortcutList(self._window.menus, self._window).show()
