"""What a pointer does to the layout while its button is held: one gesture, one change to undo."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from itertools import count
from typing import Protocol

from panelproof.content.build import text
from panelproof.editor import edits, places
from panelproof.editor.grasp import pulled, sized, touching
from panelproof.editor.hub import Hub
from panelproof.editor.places import Place, View
from panelproof.editor.snapping import Guide, Side, snap, snap_sides
from panelproof.ink.mask import Area
from panelproof.layout.document import Layout
from panelproof.layout.parts import Box, Field, Icon, Meter, Part
from panelproof.material import gather
from panelproof.picture.values import Values

Point = tuple[float, float]

_number = count(1)


@dataclass(frozen=True, slots=True)
class Pull:
    """Where the pointer is, in panel pixels with parts of them, and how many pixels off lines draw it there.

    A `reach` of -1: no snapping is wanted, and no lines are shown.
    """

    point: Point
    reach: int


class Gesture(Protocol):
    """What goes on between press and release."""

    guides: tuple[Guide, ...]

    def to(self, pull: Pull) -> None:
        """Follow the pointer."""

    def cancel(self) -> None:
        """Take back what the gesture did."""

    def end(self) -> None:
        """Let what the gesture did stand."""


def several(names: Collection[str], verb: str) -> str:
    """Return the title of a change to parts."""
    return f"{verb} `{next(iter(names))}`" if len(names) == 1 else f"{verb} {len(names)} parts"


def panel_size(view: View) -> tuple[int, int]:
    """Return width and height of the view's panel."""
    panel = view.material.layout.panel
    return panel.width, panel.height


class _Change:
    """A gesture that changes the layout from what it was when it began."""

    def __init__(self, hub: Hub, view: View, start: Point) -> None:
        self._hub, self._start = hub, start
        self._base, self._screen = hub.layout, view.screen.name
        self._panel = panel_size(view)
        self._merge = f"gesture {next(_number)}"
        self.guides: tuple[Guide, ...] = ()

    def _step(self, pull: Pull) -> tuple[int, int]:
        return round(pull.point[0] - self._start[0]), round(pull.point[1] - self._start[1])

    def cancel(self) -> None:
        self._hub.apply("", self._base, self._merge)
        self.end()

    def end(self) -> None:
        self.guides = ()
        self._hub.end_gesture()


class Move(_Change):
    """Moving parts; `grabbed` is the one under the pointer, whose baseline counts."""

    def __init__(self, hub: Hub, view: View, start: Point, names: Collection[str], grabbed: Part) -> None:
        super().__init__(hub, view, start)
        self._names = frozenset(names)
        standing = {part.name: view.place(part) for part in view.screen.parts}
        whole = places.together([standing[name].area for name in self._names])
        self._place = Place(whole, standing[grabbed.name].baseline)
        self._others = [
            place for name, place in standing.items() if name not in self._names and not hub.is_hidden(name)
        ]

    def to(self, pull: Pull) -> None:
        """Move the parts by whole pixels, drawn to lines nearby."""
        dx, dy = self._step(pull)
        x, y, width, height = self._place.area
        baseline = None if self._place.baseline is None else self._place.baseline + dy
        found = snap(
            Place((x + dx, y + dy, width, height), baseline), self._others, self._panel, max(pull.reach, 0)
        )
        self.guides = found.guides if pull.reach >= 0 else ()
        moved = edits.move_parts(self._base, self._screen, self._names, dx + found.dx, dy + found.dy)
        self._hub.apply(several(self._names, "move"), moved, self._merge)


class Resize(_Change):
    """Pulling sides of a padding box, a box, a rule or a meter."""

    def __init__(self, hub: Hub, view: View, start: Point, part: Part, sides: tuple[Side, ...]) -> None:
        super().__init__(hub, view, start)
        area = sized(part)
        assert area is not None
        self._part, self._area, self._sides = part, area, sides
        self._least = 2 * part.thickness if isinstance(part, Box) and part.outline is not None else 1
        self._others = [
            view.place(other)
            for other in view.screen.parts
            if not hub.is_hidden(other.name) and (other is not part or isinstance(part, Field))
        ]

    def to(self, pull: Pull) -> None:
        """Pull the sides by whole pixels, drawn to edges nearby."""
        area = pulled(self._area, self._sides, *self._step(pull), self._least)
        reach = max(pull.reach, 0)
        drawn, guides = snap_sides(area, self._sides, self._others, self._panel, reach)
        if drawn[2] < self._least or drawn[3] < self._least:
            drawn, guides = area, ()
        self.guides = guides if pull.reach >= 0 else ()
        what = "the padding of" if isinstance(self._part, Field) else "the size of"
        changed = edits.resize(self._base, self._screen, self._part.name, drawn)
        self._hub.apply(f"change {what} `{self._part.name}`", changed, self._merge)


class Marquee:
    """A rectangle drawn over the panel that chooses what it touches."""

    def __init__(self, hub: Hub, view: View, start: Point, *, adding: bool) -> None:
        self._hub, self._view, self._start = hub, view, start
        self._before = hub.selection
        self._kept = hub.selection if adding else frozenset[str]()
        self.guides: tuple[Guide, ...] = ()
        self.corners = (start, start)

    def to(self, pull: Pull) -> None:
        """Choose the parts that the rectangle touches, and those chosen before where it adds."""
        self.corners = (self._start, pull.point)
        (x1, y1), (x2, y2) = self.corners
        left, top, right, bottom = int(min(x1, x2) // 1), int(min(y1, y2) // 1), max(x1, x2), max(y1, y2)
        frame: Area = left, top, int(right // 1) + 1 - left, int(bottom // 1) + 1 - top
        without = [part.name for part in self._view.screen.parts if self._hub.is_hidden(part.name)]
        self._hub.select(self._kept | touching(self._view, frame, without))

    def cancel(self) -> None:
        """Choose what was chosen before."""
        self._hub.select(self._before)

    def end(self) -> None:
        """Let the choice stand."""


class Drop:
    """A part from the tray over the glass: what it would be there, not yet in the layout."""

    def __init__(self, hub: Hub, view: View, kind: edits.Kind, picture: str = "") -> None:
        self._hub, self._view, self.kind = hub, view, kind
        self.picture = picture
        self._others = [view.place(part) for part in view.screen.parts if not hub.is_hidden(part.name)]
        self.guides: tuple[Guide, ...] = ()
        self.view: View | None = None
        self.part: Part | None = None

    def to(self, pull: Pull) -> None:
        """Put the part under the pointer, drawn to lines nearby; raises Problem where it cannot be made.

        A picture whose file is still to be chosen is nowhere yet.
        """
        if self.kind == "picture" and not self.picture:
            return
        hub, screen = self._hub, self._view.screen.name
        at = int(pull.point[0] // 1), int(pull.point[1] // 1)
        layout, name = edits.add_part(hub.layout, hub.material, screen, self.kind, at, picture=self.picture)
        material = gather(layout, hub.folder)
        part = View(material, material.screen(screen), self._view.values).named(name)
        assert part is not None
        found = snap(places.place(material, part), self._others, panel_size(self._view), max(pull.reach, 0))
        layout = edits.move_parts(layout, screen, [name], found.dx, found.dy)
        self.guides = found.guides if pull.reach >= 0 else ()
        material = gather(layout, hub.folder)
        self.view = View(material, material.screen(screen), self._shown(layout, name))
        self.part = self.view.named(name)

    def _shown(self, layout: Layout, name: str) -> Values:
        """Return what the glass shows, with the new part's usual text or its first state."""
        values = self._view.values
        part = next(one for screen in layout.screens for one in screen.parts if one.name == name)
        if isinstance(part, Field):
            usual = edits.usual(part.content)
            shown = usual if isinstance(usual, str) else text(part.content, usual)
            return Values({**values.texts, name: shown}, values.states, values.levels)
        if isinstance(part, Icon):
            return Values(values.texts, {**values.states, name: part.states[0].name}, values.levels)
        if isinstance(part, Meter):
            half = (part.least + part.greatest) // 2
            return Values(values.texts, values.states, {**values.levels, name: half})
        return values

    def end(self) -> None:
        """Add the part to the layout and choose it."""
        if self.view is None or self.part is None:
            return
        if self._hub.apply(f"add `{self.part.name}`", self.view.material.layout) is None:
            self._hub.select([self.part.name])
        self._hub.end_gesture()
