"""Answers in place of dialogs, and layouts for tests of the whole window."""

from __future__ import annotations

from pathlib import Path

from msgspec.structs import replace
from tests.window.begun import starter

from panelproof.editor import edits
from panelproof.editor.asking import Foreign, Recover, Unsaved
from panelproof.editor.recovery import Left
from panelproof.layout.document import Layout
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field
from panelproof.layout.writing import encode


class Answers:
    """Answers every question of the window as a test has laid down, and notes what was asked."""

    def __init__(self) -> None:
        self.asked: list[str] = []
        self.unsaved_answer: Unsaved = "cancel"
        self.foreign_answer: Foreign = "cancel"
        self.recover_answer: Recover = "later"
        self.layout: Layout | None = None
        self.to_open: Path | None = None
        self.to_save: Path | None = None
        self.reason_answer: str | None = None

    def unsaved(self, path: Path | None) -> Unsaved:
        self.asked.append(f"unsaved {path.name if path else 'untitled'}")
        return self.unsaved_answer

    def foreign(self, path: Path) -> Foreign:
        self.asked.append(f"foreign {path.name}")
        return self.foreign_answer

    def recover(self, left: Left, more: int) -> Recover:
        self.asked.append(f"recover {left.path.name if left.path else 'untitled'} +{more}")
        return self.recover_answer

    def new(self) -> Layout | None:
        self.asked.append("new")
        return self.layout

    def open_path(self, folder: Path) -> Path | None:
        self.asked.append("open")
        return self.to_open

    def save_path(self, suggested: Path) -> Path | None:
        self.asked.append(f"save {suggested.name}")
        return self.to_save

    def reason(self, rule: str, part: str, message: str) -> str | None:
        self.asked.append(f"reason {rule} of {part}")
        return self.reason_answer

    def sorry(self, message: str, detail: str = "") -> None:
        self.asked.append(f"sorry {message}")


def tank() -> Layout:
    """A clean layout: a title and the level of a rain tank."""
    return starter("tank", Panel(240, 135))


def cramped() -> Layout:
    """The same with a padding box that is too narrow, which is a fault that has a remedy."""
    layout = tank()
    level = next(part for part in layout.screens[0].parts if isinstance(part, Field))
    assert level.padding is not None
    x, y, _, height = level.padding
    return edits.set_part(layout, "main", "level", replace(level, padding=(x, y, 60, height)))


def written(path: Path, layout: Layout | None = None) -> Path:
    """Write a layout as another program would: without the window's knowing."""
    path.write_bytes(encode(layout or tank()))
    return path


def renamed(layout: Layout, name: str) -> Layout:
    """A change that another program might make."""
    return replace(layout, name=name)
