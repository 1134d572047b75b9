"""What can be wrong with one part: each cause as another way to draw it, to be held against the capture."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path

import numpy as np
from msgspec.structs import replace

from panelproof.device import leftover
from panelproof.device.leftover import Mishap, drawn, former_texts
from panelproof.device.scene import Draw, Scene, crop, painted
from panelproof.device.whole import edges, peaks, way
from panelproof.glyphs.type import Type, open_type
from panelproof.layout import level
from panelproof.layout.parts import Box, Field, Icon, Label, Meter, Rule
from panelproof.material import field_graph
from panelproof.picture import drawing
from panelproof.picture.drawing import Operation
from panelproof.picture.frame import Codes, Frame, draw
from panelproof.problem import Problem
from panelproof.proof.words import quoted

# How far a part is looked for around its place, and how many texts of a content are tried one by one.
REACH = 14
MOST_TEXTS = 3000
NEAR = 2
SIZES = 6
MOST_FONTS = 300


def mishaps(scene: Scene, number: int, captured: Codes) -> Iterator[Mishap]:
    """Yield what may have happened to a part, the likeliest first; `captured` is the frame with its codes."""
    part = scene.screen.parts[number]
    yield Mishap("missing", "it is not drawn", 0.9, lambda _: None, 0.9)
    if isinstance(part, Field):
        yield from _other_texts(scene, part)
    if isinstance(part, Icon):
        yield from _other_states(scene, part)
    if isinstance(part, Meter):
        yield from _other_levels(scene, part)
    yield from _moved(scene, number, captured)
    if isinstance(part, Label | Field):
        yield from _other_setting(scene, part)
    if isinstance(part, Rule):
        yield from _other_line(scene, part)
    if isinstance(part, Box):
        yield from _other_box(scene, part)
    yield from leftover.recoloured(scene, number, captured)
    if isinstance(part, Field | Icon):
        yield from leftover.ghosts(scene, number, captured)
    yield from leftover.cut(scene, number, captured)


def far_fetched(scene: Scene, number: int) -> Iterator[Mishap]:
    """Yield every single text of a field's content, where they are not too many, and every font there is."""
    part = scene.screen.parts[number]
    if isinstance(part, Field) and field_graph(part).count() <= MOST_TEXTS:
        now = scene.values.texts[part.name]
        for text in field_graph(part).texts():
            if text != now:
                yield _text_shown(scene, part, text, "", 1.2)
    if isinstance(part, Label | Field):
        yield from _other_fonts(scene, part)


@lru_cache(maxsize=1)
def _fonts() -> tuple[tuple[str, Path], ...]:
    from panelproof.glyphs.catalogue import fonts  # noqa: PLC0415 - opens every font there is

    return tuple((entry.name, entry.path) for entry in fonts()[:MOST_FONTS])


def _other_fonts(scene: Scene, part: Label | Field) -> Iterator[Mishap]:
    spec = next(one for one in scene.material.layout.types if one.name == part.type)
    size = scene.material.types[part.type].size
    for name, path in _fonts():
        if name != spec.font:
            opened = _opened(path, size, spec.rendering, spec.kerning, spec.hinting)
            words = f"its type is of the font `{name}` in place of `{spec.font}`"
            yield from _set_in(scene, part, opened, ("other-font", words), 0.8)


# -- another text or state -------------------------------------------------------------------------------------


def _text_shown(scene: Scene, part: Field, text: str, moment: str, cost: float) -> Mishap:
    now = scene.values.texts[part.name]
    of = f", as in the moment `{moment}`" if moment else ""
    layer = drawing.field(scene.material, scene.screen, part, text)
    return Mishap("other-text", f"it shows {quoted(text)} in place of {quoted(now)}{of}", cost, drawn(layer))


def _other_texts(scene: Scene, part: Field) -> Iterator[Mishap]:
    now = scene.values.texts[part.name]
    for text, moment in former_texts(scene.material, scene.screen.name, part).items():
        if text != now:
            yield _text_shown(scene, part, text, moment, 1.0)


def _other_states(scene: Scene, part: Icon) -> Iterator[Mishap]:
    now = scene.values.states[part.name]
    for state in part.states:
        if state.name != now:
            layer = drawing.icon(scene.material, scene.screen, part, state.name)
            words = f"it shows its state `{state.name}` in place of `{now}`"
            yield Mishap("other-state", words, 1.0, drawn(layer))


def _other_levels(scene: Scene, part: Meter) -> Iterator[Mishap]:
    """Yield each height that the bar can have, and its fault pattern."""
    now = scene.values.levels[part.name]
    values = dict.fromkeys(level.least_filling(part, count) for count in range(level.length(part) + 1))
    for value in (None, *values):
        if value != now:
            words = f"it shows {_level(value)} in place of {_level(now)}"
            layer = drawing.meter(scene.material, scene.screen, part, value)
            yield Mishap("other-level", words, 1.0, drawn(layer))


def _level(value: int | None) -> str:
    return "its fault pattern" if value is None else f"about {value}"


# -- another place ---------------------------------------------------------------------------------------------


class _Stamp:
    """What a part paints, to be put down elsewhere."""

    def __init__(self, scene: Scene, number: int) -> None:
        height, width = scene.expected.shape
        self._frame = Frame(width, height, np.zeros((height, width), dtype=np.uint16))
        draw(self._frame, scene.layer(number))
        self._rows, self._columns = np.nonzero(painted(scene.layer(number), scene.expected.shape))
        self.codes = self._frame.codes

    def at(self, dx: int, dy: int) -> Draw:
        """Return the drawing of it moved, as far as it still lies on the panel."""

        def paint(frame: Frame) -> None:
            rows, columns = self._rows + dy, self._columns + dx
            inside = (rows >= 0) & (rows < frame.height) & (columns >= 0) & (columns < frame.width)
            codes = self.codes[self._rows[inside], self._columns[inside]]
            frame.codes[rows[inside], columns[inside]] = codes

        return paint


def _moved(scene: Scene, number: int, captured: Codes) -> Iterator[Mishap]:
    part = scene.screen.parts[number]
    area = scene.box(number, REACH)
    stamp = _Stamp(scene, number)
    there = peaks(edges(crop(captured, area)), edges(crop(stamp.codes, area)), 6)
    places = [(dx, dy) for dx in range(-NEAR, NEAR + 1) for dy in range(-NEAR, NEAR + 1)]
    for right, down in there:
        places += [(dx, dy) for dx in (right, right - area[2]) for dy in (down, down - area[3])]
    for dx, dy in dict.fromkeys(places):
        if (dx, dy) == (0, 0) or max(abs(dx), abs(dy)) > REACH:
            continue
        words = f"it stands {way(dx, dy)} of its place"
        if isinstance(part, Field):
            nudged = replace(part, x=part.x + dx, baseline=part.baseline + dy)
            within = drawing.field(scene.material, scene.screen, nudged, scene.values.texts[part.name])
            yield Mishap("moved", words, 1.0, drawn(within))
        yield Mishap("moved", words, 1.01, stamp.at(dx, dy))


# -- another type, alignment, length ---------------------------------------------------------------------------


def _other_setting(scene: Scene, part: Label | Field) -> Iterator[Mishap]:
    for align in ("left", "centre", "right"):
        if align != part.align:
            other = replace(part, align=align)
            words = f"it is aligned `{align}` in place of `{part.align}`"
            yield Mishap("other-alignment", words, 1.0, drawn(_set(scene, other)))
    material = scene.material
    spec = next(one for one in material.layout.types if one.name == part.type)
    for name in material.types:
        if name != part.type and (material.types[name].antialiased <= scene.panel.colours.blends):
            words = f"it is set in the type `{name}` in place of `{part.type}`"
            yield Mishap("other-type", words, 1.0, drawn(_set(scene, replace(part, type=name))))
    path, now = material.types[part.type].path, material.types[part.type]
    if now.native:
        return
    sizes = sorted(range(now.size - SIZES, now.size + SIZES + 1), key=lambda size: abs(size - now.size))
    for size in sizes:
        if size >= 4 and size != now.size:
            opened = _opened(path, size, spec.rendering, spec.kerning, spec.hinting)
            words = f"its type is {size} px high in place of {now.size}"
            yield from _set_in(scene, part, opened, ("other-size", words))
    rendering = "one-bit" if spec.rendering == "antialiased" else "antialiased"
    if rendering == "one-bit" or scene.panel.colours.blends:
        opened = _opened(path, now.size, rendering, spec.kerning, spec.hinting)
        words = f"its type is drawn {rendering} in place of {spec.rendering}"
        yield from _set_in(scene, part, opened, ("other-rendering", words))
    opened = _opened(path, now.size, spec.rendering, not spec.kerning, spec.hinting)
    words = f"it is set {'without' if spec.kerning else 'with'} kerning"
    yield from _set_in(scene, part, opened, ("other-kerning", words))
    opened = _opened(path, now.size, spec.rendering, spec.kerning, not spec.hinting)
    words = f"its type is drawn {'without' if spec.hinting else 'with'} hinting"
    yield from _set_in(scene, part, opened, ("other-hinting", words))


def _opened(path: Path, size: int, rendering: str, kerning: bool, hinting: bool) -> Type | None:
    try:
        return open_type(path, size, rendering, kerning, hinting)  # type: ignore[arg-type]
    except Problem:
        return None


def _set_in(
    scene: Scene, part: Label | Field, type_: Type | None, told: tuple[str, str], least: float = 0.5
) -> Iterator[Mishap]:
    if type_ is None:
        return
    try:
        layer = _set(scene, part, type_)
    except Problem:
        return
    yield Mishap(*told, 1.1, drawn(layer), least)


def _set(scene: Scene, part: Label | Field, type_: Type | None = None) -> tuple[Operation, ...]:
    from dataclasses import replace as changed  # noqa: PLC0415 - its name is taken by that of structs

    material = scene.material
    if type_ is not None:
        material = changed(material, types={**material.types, part.type: type_})
    if isinstance(part, Label):
        return drawing.label(material, scene.screen, part)
    return drawing.field(material, scene.screen, part, scene.values.texts[part.name])


def _other_line(scene: Scene, part: Rule) -> Iterator[Mishap]:
    for thickness in range(max(1, part.thickness - 3), part.thickness + 4):
        for length in range(max(1, part.length - REACH), part.length + REACH + 1):
            if (length, thickness) != (part.length, part.thickness):
                now = f"{length} px long and {thickness} px thick"
                words = f"it is {now} in place of {part.length} and {part.thickness}"
                other = replace(part, length=length, thickness=thickness)
                yield Mishap("other-size", words, 1.0, drawn(drawing.rule(scene.material, other)))


def _other_box(scene: Scene, part: Box) -> Iterator[Mishap]:
    """Yield boxes of other widths, then heights, then thicknesses: one number is wrong, seldom two."""
    changes: list[dict[str, int]] = []
    for by in sorted(range(-REACH, REACH + 1), key=abs):
        if by:
            changes += [{"width": part.width + by}, {"height": part.height + by}]
            changes.append({"thickness": part.thickness + by})
    for change in changes:
        [(key, value)] = change.items()
        if value >= 1 and (key != "thickness" or part.outline):
            words = f"its {key} is {value} px in place of {getattr(part, key)}"
            layer = drawing.box(scene.material, replace(part, **change))
            yield Mishap("other-size", words, 1.0, drawn(layer))
