"""What can be wrong with one part: each cause as another way to draw it, to be held against the capture."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

import numpy as np
from msgspec.structs import replace

from panelproof.device.scene import Chosen, Draw, Scene, bounds, crop, painted
from panelproof.device.whole import edges, peaks, way
from panelproof.glyphs.type import Type, open_type
from panelproof.layout import level
from panelproof.layout.parts import Box, Field, Icon, Label, Meter, Rule
from panelproof.material import Material, field_graph
from panelproof.picture import drawing
from panelproof.picture.drawing import Fill, Operation
from panelproof.picture.frame import Codes, Frame, draw
from panelproof.picture.moments import every_moment
from panelproof.problem import Problem
from panelproof.proof.words import counted, quoted

# How far a part is looked for around its place, and how many texts of a content are tried one by one.
REACH = 14
MOST_TEXTS = 3000
NEAR = 2
SIZES = 6
MOST_FONTS = 300


@dataclass(frozen=True, slots=True)
class Mishap:
    """One cause in words, how far-fetched it is, and how the part would then be drawn onto what lies under it.

    `least` is the share of the wrong pixels that it must explain to be told at all.
    """

    kind: str
    words: str
    cost: float
    draw: Draw
    least: float = 0.4


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
    yield from _recoloured(scene, number, captured)
    if isinstance(part, Field | Icon):
        yield from _ghosts(scene, number, captured)
    yield from _cut(scene, number, captured)


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


def _drawn(layer: tuple[Operation, ...]) -> Draw:
    return lambda frame: draw(frame, layer)


# -- another text or state -------------------------------------------------------------------------------------


def former_texts(material: Material, screen: str, field: Field) -> dict[str, str]:
    """Return the texts that a field is likeliest to show or to have shown, each with the moment's title."""
    found: dict[str, str] = {}
    for moment in every_moment(material):
        if moment.screen == screen:
            found.setdefault(moment.values.texts[field.name], moment.name if not moment.automatic else "")
    content = field.content
    extra = [content.fault, content.first, *content.also]
    extra += [text for one in content.arguments for text in getattr(one, "texts", ())]
    graph = field_graph(field)
    for text in extra:
        if text is not None and graph.accepts(text):
            found.setdefault(text, "")
    return found


def _text_shown(scene: Scene, part: Field, text: str, moment: str, cost: float) -> Mishap:
    now = scene.values.texts[part.name]
    of = f", as in the moment `{moment}`" if moment else ""
    layer = drawing.field(scene.material, scene.screen, part, text)
    return Mishap("other-text", f"it shows {quoted(text)} in place of {quoted(now)}{of}", cost, _drawn(layer))


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
            yield Mishap("other-state", words, 1.0, _drawn(layer))


def _other_levels(scene: Scene, part: Meter) -> Iterator[Mishap]:
    """Yield each height that the bar can have, and its fault pattern."""
    now = scene.values.levels[part.name]
    values = dict.fromkeys(level.least_filling(part, count) for count in range(level.length(part) + 1))
    for value in (None, *values):
        if value != now:
            words = f"it shows {_level(value)} in place of {_level(now)}"
            layer = drawing.meter(scene.material, scene.screen, part, value)
            yield Mishap("other-level", words, 1.0, _drawn(layer))


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
            yield Mishap("moved", words, 1.0, _drawn(within))
        yield Mishap("moved", words, 1.01, stamp.at(dx, dy))


# -- another type, alignment, length ---------------------------------------------------------------------------


def _other_setting(scene: Scene, part: Label | Field) -> Iterator[Mishap]:
    for align in ("left", "centre", "right"):
        if align != part.align:
            other = replace(part, align=align)
            words = f"it is aligned `{align}` in place of `{part.align}`"
            yield Mishap("other-alignment", words, 1.0, _drawn(_set(scene, other)))
    material = scene.material
    spec = next(one for one in material.layout.types if one.name == part.type)
    for name in material.types:
        if name != part.type and (material.types[name].antialiased <= scene.panel.colours.blends):
            words = f"it is set in the type `{name}` in place of `{part.type}`"
            yield Mishap("other-type", words, 1.0, _drawn(_set(scene, replace(part, type=name))))
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
    yield Mishap(*told, 1.1, _drawn(layer), least)


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
                yield Mishap("other-size", words, 1.0, _drawn(drawing.rule(scene.material, other)))


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
            yield Mishap("other-size", words, 1.0, _drawn(layer))


# -- other colours, ghosts, missing pixels ---------------------------------------------------------------------


def _recoloured(scene: Scene, number: int, captured: Codes) -> Iterator[Mishap]:
    """Yield the right shape in other colours, where each colour has become just one other."""
    layer = scene.layer(number)
    own = painted(layer, scene.expected.shape) & scene.mine(number) & scene.visible
    was, now = scene.expected[own], captured[own]
    if not was.size:
        return
    table: dict[int, int] = {}
    for code in np.unique(was):
        values, counts = np.unique(now[was == code], return_counts=True)
        table[int(code)] = int(values[counts.argmax()])
    if all(code == to for code, to in table.items()) or len(set(table.values())) < len(table):
        return
    changed = {code: to for code, to in table.items() if code != to}
    words = ", ".join(
        f"{colour_of(scene.material, to)} in place of {colour_of(scene.material, code)}"
        for code, to in list(changed.items())[:3]
    )
    if len(changed) > 3:
        words += ", and more"

    def paint(frame: Frame) -> None:
        draw(frame, layer)
        values = frame.codes[own]
        for code, to in table.items():
            values[frame.codes[own] == code] = to
        frame.codes[own] = values

    yield Mishap("other-colour", f"its shape is right, its colours are not: {words}", 1.0, paint)


def colour_of(material: Material, code: int) -> str:
    """Return a code as a person knows it: the ink's name, or the colour."""
    from panelproof.layout.colour import shown  # noqa: PLC0415

    for ink in material.layout.inks:
        if material.code(ink.name) == code:
            return f"`{ink.name}`"
    colours = material.layout.panel.colours
    if code >= colours.count:
        return f"the code {code}, which the panel does not have"
    return "#{:02x}{:02x}{:02x}".format(*shown(code, colours))


def _ghosts(scene: Scene, number: int, captured: Codes) -> Iterator[Mishap]:
    """Yield what is left where a former text or state was not cleared: all of it, what a cell leaves, or pieces."""
    part, layer = scene.screen.parts[number], scene.layer(number)
    wrong = (captured != scene.expected) & scene.mine(number) & scene.visible
    if not wrong.any():
        return
    for former, old, uncleared, celled in _formers(scene, number):
        now = scene.values.of(part.name)
        words = f"a ghost: {quoted(former)} shows through {quoted(now)}"
        yield Mishap("ghost", words, 1.0, _drawn((*old, *uncleared)))
        if celled:
            yield Mishap("ghost", f"{words}, beside the cell of the new text", 1.0, _drawn((*old, *celled)))
        left = scene.composed({number: _drawn(old)}).codes
        remains = wrong & (captured == left)
        if np.count_nonzero(remains) == np.count_nonzero(wrong):
            lost = np.count_nonzero((left != scene.expected) & scene.mine(number)) - np.count_nonzero(remains)
            yield Mishap("ghost", words, 1.1 + 0.0001 * lost, _with_pixels(layer, remains, left))


def _formers(
    scene: Scene, number: int
) -> Iterator[tuple[str, tuple[Operation, ...], tuple[Operation, ...], tuple[Operation, ...]]]:
    """Yield each former text or state, what drew it, and the new one drawn with nothing and with its cell cleared."""
    part, material, screen = scene.screen.parts[number], scene.material, scene.screen
    if isinstance(part, Field):
        now = scene.values.texts[part.name]
        bare, celled = (
            drawing.field(material, screen, replace(part, clearing=clearing), now)
            for clearing in ("none", "cell")
        )
        for text in former_texts(material, screen.name, part):
            if text != now:
                yield text, drawing.field(material, screen, part, text), bare, celled
    elif isinstance(part, Icon):
        state = scene.values.states[part.name]
        bare = drawing.icon(material, screen, replace(part, clearing="none"), state)
        for other in part.states:
            if other.name != state:
                yield other.name, drawing.icon(material, screen, part, other.name), bare, ()


def _with_pixels(layer: tuple[Operation, ...], where: Chosen, codes: Codes) -> Draw:
    def paint(frame: Frame) -> None:
        draw(frame, layer)
        frame.codes[where] = codes[where]

    return paint


def _cut(scene: Scene, number: int, captured: Codes) -> Iterator[Mishap]:
    """Yield the part with those pixels missing that show what lies under it."""
    layer = scene.layer(number)
    bare = scene.composed({number: _ground_only(scene, number)}).codes
    own = scene.mine(number) & scene.visible
    gone = (captured != scene.expected) & (captured == bare) & own
    area, whole = bounds(gone), bounds((scene.expected != bare) & own)
    if area is None or whole is None:
        return
    count = np.count_nonzero(gone)
    words = f"{counted(int(count), 'pixel')} of it {'is' if count == 1 else 'are'} missing"
    inked = (scene.expected != bare) & own
    sides = {
        "on the left": (area[0] + area[2] - whole[0], np.s_[:, : area[0] + area[2]]),
        "on the right": (whole[0] + whole[2] - area[0], np.s_[:, area[0] :]),
        "at the top": (area[1] + area[3] - whole[1], np.s_[: area[1] + area[3]]),
        "at the bottom": (whole[1] + whole[3] - area[1], np.s_[area[1] :]),
    }
    for side, (pixels, piece) in sides.items():
        if np.array_equal(inked[piece], gone[piece]) and count < np.count_nonzero(inked):
            words = f"it is cut off: {pixels} px {side} are missing"
            break
    yield Mishap("cut", words, 1.2, _with_pixels(layer, gone, bare), 0.9)


def _ground_only(scene: Scene, number: int) -> Draw:
    """Return the drawing of a part's ground alone, where an update paints one."""
    ground = tuple(
        Fill(one.x, one.y, one.width, one.height, one.ramp[0])
        for one in scene.layer(number)
        if isinstance(one, drawing.Paint) and one.opaque
    )
    return _drawn(ground)
