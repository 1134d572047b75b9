"""What is left of a part where it was drawn wrongly: other colours, ghosts of former texts, missing pixels."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from msgspec.structs import replace

from panelproof.device.scene import Chosen, Draw, Scene, bounds, painted
from panelproof.layout.colour import shown, written
from panelproof.layout.parts import Field, Icon
from panelproof.material import Material, field_graph
from panelproof.picture import drawing
from panelproof.picture.drawing import Fill, Operation
from panelproof.picture.frame import Codes, Frame, draw
from panelproof.picture.moments import every_moment
from panelproof.proof.words import counted, quoted


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


def drawn(layer: tuple[Operation, ...]) -> Draw:
    """Return the carrying out of operations."""
    return lambda frame: draw(frame, layer)


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


def recoloured(scene: Scene, number: int, captured: Codes) -> Iterator[Mishap]:
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
    for ink in material.layout.inks:
        if material.code(ink.name) == code:
            return f"`{ink.name}`"
    colours = material.layout.panel.colours
    if code >= colours.count:
        return f"the code {code}, which the panel does not have"
    return written(shown(code, colours))


def ghosts(scene: Scene, number: int, captured: Codes) -> Iterator[Mishap]:
    """Yield what is left where a former text or state was not cleared: all of it, what a cell leaves, or pieces."""
    part, layer = scene.screen.parts[number], scene.layer(number)
    wrong = (captured != scene.expected) & scene.mine(number) & scene.visible
    if not wrong.any():
        return
    for former, old, uncleared, celled in _formers(scene, number):
        now = scene.values.of(part.name)
        words = f"a ghost: {quoted(former)} shows through {quoted(now)}"
        yield Mishap("ghost", words, 1.0, drawn((*old, *uncleared)))
        if celled:
            yield Mishap("ghost", f"{words}, beside the cell of the new text", 1.0, drawn((*old, *celled)))
        left = scene.composed({number: drawn(old)}).codes
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


def cut(scene: Scene, number: int, captured: Codes) -> Iterator[Mishap]:
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
    return drawn(ground)
