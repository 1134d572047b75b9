"""What can be done to the chosen parts, by whatever menu or key."""

from __future__ import annotations

from PySide6.QtCore import QByteArray, QMimeData
from PySide6.QtGui import QGuiApplication

from panelproof.editor import edits
from panelproof.editor.arranging import Direction
from panelproof.editor.clipboard import MIME
from panelproof.editor.gestures import several
from panelproof.editor.grasp import pulled, sized
from panelproof.editor.hub import Hub
from panelproof.layout.parts import Part
from panelproof.problem import Problem

STEP = 8
"""Panel pixels that a copy lies beside its original."""


def chosen(hub: Hub) -> tuple[Part, ...]:
    """Return the chosen parts in drawing order."""
    return tuple(part for part in (hub.screen.parts if hub.screen else ()) if part.name in hub.selection)


def _movable(hub: Hub) -> frozenset[str]:
    return frozenset(name for name in hub.selection if not hub.is_locked(name))


def select_all(hub: Hub) -> None:
    """Choose every part of the screen that is not hidden."""
    if hub.screen is not None:
        hub.select(part.name for part in hub.screen.parts if not hub.is_hidden(part.name))


def step(hub: Hub, by: int) -> None:
    """Choose the next part in drawing order, or with -1 the one before; hidden parts are passed over."""
    names = [part.name for part in (hub.screen.parts if hub.screen else ()) if not hub.is_hidden(part.name)]
    if not names:
        return
    places = [number for number, name in enumerate(names) if name in hub.selection]
    if places:
        hub.select([names[(places[-1 if by > 0 else 0] + by) % len(names)]])
    else:
        hub.select([names[0 if by > 0 else -1]])


def delete(hub: Hub) -> None:
    """Take the chosen parts away."""
    names = _movable(hub)
    if names and hub.screen is not None:
        hub.apply(several(names, "delete"), edits.delete_parts(hub.layout, hub.screen.name, names))
        hub.end_gesture()


def nudge(hub: Hub, dx: int, dy: int) -> None:
    """Move the chosen parts; moves in a row count as one change until `hub.end_gesture`."""
    names = _movable(hub)
    if names and hub.screen is not None:
        moved = edits.move_parts(hub.layout, hub.screen.name, names, dx, dy)
        hub.apply(several(names, "move"), moved, f"nudge {' '.join(sorted(names))}")


def grow(hub: Hub, dx: int, dy: int) -> None:
    """Pull the right and lower side of the one chosen box, rule or padding box."""
    parts = chosen(hub)
    if len(parts) != 1 or hub.screen is None or hub.is_locked(parts[0].name):
        return
    part = parts[0]
    area = sized(part)
    if area is None:
        hub.told.emit(f"`{part.name}` has no size of its own to change")
        return
    sides = [side for side, by in (("right", dx), ("bottom", dy)) if by]
    larger = pulled(area, sides, dx, dy)  # type: ignore[arg-type]
    changed = edits.resize(hub.layout, hub.screen.name, part.name, larger)
    hub.apply(f"change the size of `{part.name}`", changed, f"grow {part.name}")


def align(hub: Hub, edge: edits.Edge) -> None:
    """Bring the chosen parts into line; one alone, with the panel."""
    names = _movable(hub)
    if names and hub.screen is not None:
        aligned = edits.align(hub.layout, hub.material, hub.screen.name, names, edge)
        hub.apply(several(names, "align"), aligned)
        hub.end_gesture()


def distribute(hub: Hub, direction: Direction) -> None:
    """Space the chosen parts evenly."""
    names = _movable(hub)
    if len(names) < 3:
        hub.told.emit("choose three parts or more to space them evenly")
    elif hub.screen is not None:
        spread = edits.distribute(hub.layout, hub.material, hub.screen.name, names, direction)
        hub.apply(several(names, "space"), spread)
        hub.end_gesture()


def duplicate(hub: Hub) -> None:
    """Add copies of the chosen parts beside them, and choose the copies."""
    if hub.selection and hub.screen is not None:
        screen = hub.screen.name
        layout, names = edits.duplicate_parts(hub.layout, screen, hub.selection, STEP, STEP)
        if hub.apply(several(hub.selection, "duplicate"), layout) is None:
            hub.select(names)
        hub.end_gesture()


def copy(hub: Hub) -> None:
    """Put the chosen parts on the clipboard."""
    if not hub.selection or hub.screen is None:
        return
    data = edits.parts_to_clipboard(hub.layout, hub.screen.name, hub.selection, hub.folder)
    mime = QMimeData()
    mime.setData(MIME, QByteArray(data))
    QGuiApplication.clipboard().setMimeData(mime)


def cut(hub: Hub) -> None:
    """Put the chosen parts on the clipboard and take them away."""
    copy(hub)
    delete(hub)


def can_paste() -> bool:
    """Tell whether parts are on the clipboard."""
    mime = QGuiApplication.clipboard().mimeData()
    return mime is not None and mime.hasFormat(MIME)


def paste(hub: Hub) -> None:
    """Add the clipboard's parts to the screen, beside what already lies in their place, and choose them."""
    if not can_paste() or hub.screen is None:
        return
    data = bytes(QGuiApplication.clipboard().mimeData().data(MIME).data())
    screen = hub.screen.name
    standing = {_corner(part) for part in hub.screen.parts}
    try:
        for times in range(64):
            shift = times * STEP
            layout, names = edits.from_clipboard(hub.layout, screen, data, shift, shift, folder=hub.folder)
            shown = next(one for one in layout.screens if one.name == screen)
            if not standing & {_corner(part) for part in shown.parts if part.name in names}:
                break
    except Problem as problem:
        hub.told.emit(problem.message)
        return
    if hub.apply(several(names, "paste"), layout) is None:
        hub.select(names)
    hub.end_gesture()


def _corner(part: Part) -> tuple[str, int, int]:
    """Return the kind and place of a part: two of one kind in one place cannot be told apart."""
    return type(part).__name__, part.x, getattr(part, "baseline", getattr(part, "y", 0))
