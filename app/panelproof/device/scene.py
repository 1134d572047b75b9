"""A screen as it should be drawn, part by part, so that one part can be drawn in another way."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import numpy as np
from numpy.typing import NDArray

from panelproof.ink.mask import Area
from panelproof.layout.document import Screen
from panelproof.layout.parts import Box, Field, Icon, Label, Part
from panelproof.material import Material
from panelproof.picture import drawing
from panelproof.picture.drawing import Operation, common, padding_of, panel_area
from panelproof.picture.frame import Codes, Frame, draw, new_frame
from panelproof.picture.image import hidden
from panelproof.picture.values import Values

Draw = Callable[[Frame], None]
Chosen = NDArray[np.bool_]

NOBODY = -1


class Scene:
    """One screen with the values of one moment.

    `expected` is the whole frame's codes, [height, width]; `owners` the number of the part that each pixel belongs to
    (the last drawn one whose ink, line or padding box it is; `NOBODY`: bare ground); `visible` what the glass shows of
    the rectangle.
    """

    def __init__(self, material: Material, screen: Screen, values: Values) -> None:
        self.material = material
        self.screen = screen
        self.values = values
        self.panel = material.layout.panel
        self._layers = [tuple(drawing.part(material, screen, part, values)) for part in screen.parts]
        self.expected = self.composed({}).codes
        self.visible: Chosen = ~hidden(self.panel)
        self.owners = np.full(self.expected.shape, NOBODY, dtype=np.int32)
        for number, part in enumerate(screen.parts):
            self.owners[self._own(part, self._layers[number])] = number

    def layer(self, number: int) -> tuple[Operation, ...]:
        """Return what drawing a part paints."""
        return self._layers[number]

    def composed(self, changes: Mapping[int, Draw], last: int | None = None) -> Frame:
        """Return the frame with some parts drawn otherwise; `last`: drawn up to this part only, without it."""
        frame = new_frame(self.panel, self.material.code(self.screen.ground))
        for number, layer in enumerate(self._layers):
            if number == last:
                break
            if number in changes:
                changes[number](frame)
            else:
                draw(frame, layer)
        return frame

    def _own(self, part: Part, layer: tuple[Operation, ...]) -> Chosen:
        own = np.zeros(self.expected.shape, dtype=np.bool_)
        if isinstance(part, Icon):
            x, y, width, height = common(padding_of(self.material, part), panel_area(self.panel))
            own[y : y + height, x : x + width] = True
        elif isinstance(part, Field) and part.padding:
            x, y, width, height = common(part.padding, panel_area(self.panel))
            own[y : y + height, x : x + width] = True
        else:
            own |= painted(layer, own.shape)
        return own

    def mine(self, number: int) -> Chosen:
        """Return the pixels that belong to a part, [height, width]."""
        found: Chosen = self.owners == number
        return found

    def foreign(self, number: int) -> Chosen:
        """Return the pixels of all other parts that are no ground for others."""
        grounds = [place for place in range(len(self.screen.parts)) if self.is_fill(place)]
        found: Chosen = ~np.isin(self.owners, [number, NOBODY, *grounds])
        return found

    def box(self, number: int, grown: int = 0) -> Area:
        """Return the smallest rectangle that holds a part's pixels, grown on all sides but inside the panel."""
        rows, columns = np.nonzero(self.mine(number))
        if not rows.size:
            part = self.screen.parts[number]
            around = painted(self._layers[number], self.expected.shape)
            rows, columns = np.nonzero(around)
            if not rows.size:
                y = part.baseline if isinstance(part, Label | Field) else part.y
                return common(
                    (part.x - grown, y - grown, 1 + 2 * grown, 1 + 2 * grown), panel_area(self.panel)
                )
        x, y = int(columns.min()) - grown, int(rows.min()) - grown
        width, height = int(columns.max()) + 1 + grown - x, int(rows.max()) + 1 + grown - y
        return common((x, y, width, height), panel_area(self.panel))

    def is_fill(self, number: int) -> bool:
        """Tell whether a part is ground for others: a filled box."""
        part = self.screen.parts[number]
        return isinstance(part, Box) and part.fill is not None


def painted(layer: tuple[Operation, ...], shape: tuple[int, ...]) -> Chosen:
    """Return the pixels that operations paint, [height, width]: those that no longer show what was under them."""
    over, under = (Frame(shape[1], shape[0], np.full(shape, code, dtype=np.uint16)) for code in (0, 1))
    draw(over, layer)
    draw(under, layer)
    same: Chosen = over.codes == under.codes
    return same


def crop(codes: Codes, area: Area) -> Codes:
    """Return the pixels of an area."""
    x, y, width, height = area
    return codes[y : y + height, x : x + width]


def bounds(chosen: Chosen) -> Area | None:
    """Return the smallest rectangle that holds every chosen pixel, None where there is none."""
    rows, columns = np.nonzero(chosen)
    if not rows.size:
        return None
    x, y = int(columns.min()), int(rows.min())
    return x, y, int(columns.max()) + 1 - x, int(rows.max()) + 1 - y
