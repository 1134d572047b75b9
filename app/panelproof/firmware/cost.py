"""What a layout costs the device: flash and RAM, and for each update and each change of screen the time on the bus.

An update's cost is that of the worst text of the content: with clearing `pad` every text costs alike, else the one
whose glyphs take the most is found in the word graph, not by listing texts. Beside it stand what the header's
function for changes sends (`changing.change`) and the least that any code could do with, one window and the pixels
that change: between two texts of the extremes, and for one step of a number.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from msgspec.structs import replace

from panelproof.content.graph import Graph
from panelproof.firmware import bus, code, memory
from panelproof.firmware.bus import Sent, Traffic, pixel_bits, sent
from panelproof.firmware.changing import change, change_bar
from panelproof.firmware.header import header
from panelproof.glyphs.glyph import Glyph
from panelproof.glyphs.type import Type
from panelproof.ink.footprint import Footprint, footprint
from panelproof.ink.mask import Area
from panelproof.layout.document import Layout, Screen
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field, Icon, Label, Meter, Part
from panelproof.material import Material, field_graph
from panelproof.picture import drawing
from panelproof.picture.drawing import Operation, common, panel_area
from panelproof.picture.values import Values
from panelproof.proof.neighbours import last_step

Shown = Field | Icon | Meter
FULL = 15
MOST_KNOWN = 8


@dataclass(frozen=True, slots=True)
class Update:
    """One update of a part, at worst: what it shows then, what is sent, and the least that would do.

    `sent` is for the whole part. `change` is what the header's function for changes sends between the two texts of
    the extremes for which it sends most (as much as `sent` where there is none), `least` one window and the pixels
    that change. `steps` is a step of a number near its greatest, `step` and `step_least` what that takes (None where
    there is no number).
    """

    screen: str
    part: str
    shown: str
    sent: Sent
    between: tuple[str, str]
    change: Sent
    least: Sent
    steps: tuple[str, str] | None
    step: Sent | None
    step_least: Sent | None


@dataclass(frozen=True, slots=True)
class Change:
    """Drawing a whole screen, at worst; `least` is each pixel of the panel once."""

    screen: str
    sent: Sent
    least: Sent


@dataclass(frozen=True, slots=True)
class Memory:
    """Bytes on one processor; code is what the fitted figures of `code` give.

    Flash: `bitmaps` of glyphs and icons, `tables` beside them, `strings` of the text functions with the pointers to
    them, code for `drawing` and for `texts`. RAM: `buffers` of the texts, `frame` where one is composed in memory, `copies`
    of strings where constants do not stay in flash, `stack` under a drawing function, the port's own not counted.
    """

    processor: str
    title: str
    bitmaps: int
    tables: int
    strings: int
    drawing: int
    texts: int
    buffers: int
    frame: int
    copies: int
    stack: int

    @property
    def flash(self) -> int:
        """Bytes of flash in all."""
        return self.bitmaps + self.tables + self.strings + self.drawing + self.texts

    @property
    def ram(self) -> int:
        """Bytes of RAM in all."""
        return self.buffers + self.frame + self.copies + self.stack


@dataclass(frozen=True, slots=True)
class Costs:
    """All costs of a layout; `bus` is its bus in words."""

    bus: str
    updates: tuple[Update, ...]
    changes: tuple[Change, ...]
    memories: tuple[Memory, ...]


def costs(material: Material) -> Costs:
    """Return all costs of a layout; raises Problem where it has no header."""
    return Costs(
        _bus_words(material.layout.panel),
        tuple(updates(material)),
        tuple(changes(material)),
        memories(material),
    )


def _bus_words(panel: Panel) -> str:
    if panel.bus is None:
        return "not given: bytes only"
    lanes = f", {panel.bus.lanes} lanes" if panel.bus.lanes > 1 else ""
    return f"{panel.bus.protocol}, {panel.bus.clock_hz / 1e6:g} MHz{lanes}"


_known: dict[tuple[Layout, tuple[Type, ...]], tuple[Memory, ...]] = {}


# -- updates -----------------------------------------------------------------------------------------------


def updates(material: Material) -> Iterator[Update]:
    """Yield what each update costs; nothing where only whole frames are sent."""
    if material.layout.panel.refresh == "whole":
        return
    panel = material.layout.panel
    for screen in material.layout.screens:
        for part in screen.parts:
            if not isinstance(part, Shown):
                continue
            shown, most = worst(material, screen, part)
            texts = _extremes(material, part)
            pairs = {
                (former, now): _change(material, screen, part, former, now)
                for former in texts
                for now in texts
                if former != now
            }
            between = max(pairs, key=lambda pair: bus.weight(pairs[pair]), default=(shown, shown))
            steps = last_step(part.content) if isinstance(part, Field) else None
            yield Update(
                screen.name,
                part.name,
                shown,
                sent(most, panel),
                between,
                sent(pairs.get(between, Traffic()), panel),
                sent(_least(material, screen, part, *between), panel),
                steps,
                sent(_change(material, screen, part, *steps), panel) if steps else None,
                sent(_least(material, screen, part, *steps), panel) if steps else None,
            )


def _change(material: Material, screen: Screen, part: Shown, former: str, now: str) -> Traffic:
    """Return what the header's function for changes sends, or where there is none an update."""
    if isinstance(part, Meter):
        return change_bar(material, part, *(int(value) if value else None for value in (former, now)))
    found = change(material, part, former, now)
    if found is not None:
        return found
    return bus.traffic(_operations(material, screen, part, now), pixel_bits(material.layout.panel))


def worst(material: Material, screen: Screen, part: Shown) -> tuple[str, Traffic]:
    """Return the text (an icon's state, a meter's value in words) whose update sends most, and what it sends."""
    panel = material.layout.panel
    bits = pixel_bits(panel)
    if isinstance(part, Meter) or part.clearing == "pad":
        # Every text alike: each pixel of the padding box once.
        area = common(painted_area(material, part), panel_area(panel))
        return _candidates(material, screen, part)[0], bus.window(area[2] * area[3], bits)
    found = [
        (shown, bus.traffic(_operations(material, screen, part, shown), bits))
        for shown in _candidates(material, screen, part)
    ]
    return max(found, key=lambda one: bus.weight(one[1]))


def painted_area(material: Material, part: Shown) -> Area:
    """Return the rectangle that a meter fills, or the padding box of a field or icon that is cleared by `pad`."""
    if isinstance(part, Meter):
        return part.x, part.y, part.width, part.height
    if isinstance(part, Icon):
        return drawing.padding_of(material, part)
    return part.padding or panel_area(material.layout.panel)


def _candidates(material: Material, screen: Screen, part: Shown) -> tuple[str, ...]:
    if isinstance(part, Icon):
        return tuple(state.name for state in part.states)
    if isinstance(part, Meter):
        return (str(part.greatest),)
    print_ = _footprint(material, part)
    if part.clearing == "pad":
        return (print_.longest,)
    codes = material.ramp(part.ink, part.ground or screen.ground)
    heavy = heaviest(print_.graph, print_.type, codes, pixel_bits(material.layout.panel))
    return (heavy, print_.longest) if part.clearing == "cell" else (heavy,)


def _footprint(material: Material, part: Field) -> Footprint:
    return footprint(field_graph(part), material.types[part.type], part.align)


@lru_cache(maxsize=512)
def heaviest(graph: Graph, type_: Type, ramp: tuple[int, ...], bits: int) -> str:
    """Return the text whose glyphs take the most bytes when only their ink is sent."""
    best: list[tuple[int, str, int]] = [(0, "", -1)] * len(graph.edges)
    for node in range(len(graph.edges) - 1, -1, -1):
        ways = [(0, "", -1)] if graph.ends[node] else []
        for to, chars in graph.edges[node]:
            glyphs = ((char, type_.glyph(char)) for char in chars)
            # Of several alike the first in order.
            weight, char = max(
                ((_glyph_weight(glyph, ramp, bits) if glyph else 0, char) for char, glyph in glyphs),
                key=lambda one: (one[0], -ord(one[1])),
            )
            ways.append((weight + best[to][0], char, to))
        best[node] = max(ways, key=lambda way: way[0])
    text, node = "", 0
    while best[node][2] >= 0:
        text += best[node][1]
        node = best[node][2]
    return text


@lru_cache(maxsize=8192)
def _glyph_weight(glyph: Glyph, ramp: tuple[int, ...], bits: int) -> int:
    if not glyph.rows:
        return 0
    levels = glyph.levels or bytes(
        FULL * (row >> column & 1) for row in glyph.rows for column in range(glyph.width)
    )
    return bus.weight(bus.runs(levels, glyph.width, ramp, bits))


def _operations(material: Material, screen: Screen, part: Shown, shown: str) -> tuple[Operation, ...]:
    if isinstance(part, Field):
        return drawing.field(material, screen, part, shown)
    if isinstance(part, Icon):
        return drawing.icon(material, screen, part, shown)
    return drawing.meter(material, screen, part, int(shown) if shown else None)


def _extremes(material: Material, part: Shown) -> tuple[str, ...]:
    """Return the texts of the extremes, of icons every state."""
    if isinstance(part, Icon):
        return tuple(state.name for state in part.states)
    if isinstance(part, Meter):
        return (str(part.least), str(part.greatest), "")
    print_, content = _footprint(material, part), part.content
    texts = (print_.shortest, print_.longest, print_.tallest, content.fault, content.first)
    return tuple(dict.fromkeys(text for text in texts if text is not None))


def _least(material: Material, screen: Screen, part: Shown, before: str, after: str) -> Traffic:
    """Return one window and the pixels that change: no code could do with less."""
    from panelproof.picture.frame import draw, new_frame  # noqa: PLC0415 - loads numpy

    panel = material.layout.panel
    frame = new_frame(panel, material.code(part.ground or screen.ground))
    draw(frame, _operations(material, screen, part, before))
    old = frame.codes.copy()
    draw(frame, _operations(material, screen, part, after))
    return bus.window(int((frame.codes != old).sum()), pixel_bits(panel))


# -- changes of screen -------------------------------------------------------------------------------------


def changes(material: Material) -> Iterator[Change]:
    """Yield what drawing each screen costs, every part at its worst."""
    panel = material.layout.panel
    bits, whole = pixel_bits(panel), bus.window(panel.width * panel.height, pixel_bits(panel))
    for screen in material.layout.screens:
        if panel.refresh == "whole":
            yield Change(screen.name, sent(whole, panel), sent(whole, panel))
            continue
        shown = {
            part.name: worst(material, screen, part)[0] for part in screen.parts if isinstance(part, Shown)
        }
        kinds = {part.name: type(part) for part in screen.parts}
        values = Values(
            {name: text for name, text in shown.items() if kinds[name] is Field},
            {name: text for name, text in shown.items() if kinds[name] is Icon},
            {name: int(text) for name, text in shown.items() if kinds[name] is Meter},
        )
        traffic = bus.traffic(drawing.screen_operations(material, screen, values), bits)
        yield Change(screen.name, sent(traffic, panel), sent(whole, panel))


# -- memory ------------------------------------------------------------------------------------------------


def memories(material: Material) -> tuple[Memory, ...]:
    """Return what the layout takes on each processor of the figures; raises Problem where it has no header.

    Remembered for layouts that differ in places only: where a part stands changes no size.
    """
    key = still(material.layout), tuple(material.types.values())
    if key not in _known:
        while len(_known) >= MOST_KNOWN:
            del _known[next(iter(_known))]
        _known[key] = _memories(material)
    return _known[key]


def still(layout: Layout) -> Layout:
    """Return the layout with every part at the origin and without moments."""
    screens = tuple(
        replace(screen, parts=tuple(_at_origin(part) for part in screen.parts)) for screen in layout.screens
    )
    return replace(layout, screens=screens, moments=())


def _at_origin(part: Part) -> Part:
    if isinstance(part, Label):
        return replace(part, x=0, baseline=0, accepted=())
    if isinstance(part, Field):
        padding = part.padding and (0, 0, 1, 1)
        return replace(part, x=0, baseline=0, padding=padding, accepted=())
    return replace(part, x=0, y=0, accepted=())


def _memories(material: Material) -> tuple[Memory, ...]:
    text, layout = header(material), material.layout
    needs = code.needs(material, text)
    found = []
    for processor in code.processors():
        target = memory.BYTES if processor.pointer == 2 else memory.WORDS
        data = memory.constants(text, target)
        estimated = processor.estimate(needs)
        found.append(
            Memory(
                processor.name,
                processor.title,
                data.bitmaps,
                data.tables,
                data.strings + data.formats,
                estimated.drawing,
                estimated.texts,
                memory.buffers(layout),
                frame_bytes(layout),
                data.formats if processor.copies_strings else 0,
                processor.stack,
            )
        )
    return tuple(found)


def frame_bytes(layout: Layout) -> int:
    """Return the bytes of the frame that is composed in memory; 0 where parts are written to the glass."""
    panel = layout.panel
    if panel.refresh == "part":
        return 0
    return -(-panel.width * pixel_bits(panel) // 8) * panel.height
