"""The glyphs of a layout in the order of its header: types one after the other, then icons, each in its encoding."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from panelproof.content.graph import max_bytes
from panelproof.firmware import literals
from panelproof.firmware.encoding import Encoding, cheapest, packed
from panelproof.firmware.glyphdata import Pool, TypeGlyphs, code_of, icon_glyph, icon_states, type_glyphs
from panelproof.firmware.names import lower
from panelproof.firmware.reading import MOST_IN_A_BYTE
from panelproof.glyphs.glyph import Glyph
from panelproof.layout.document import Screen
from panelproof.layout.parts import Field, Icon, Label
from panelproof.material import Material, field_graph
from panelproof.problem import Problem

ICONS, ICON = "the icons", "icon"
GREATEST_BITS = (1 << 32) - 1
MOST_STATES = 255
# On targets whose `int` has 16 bits; the rest is kept free for sizes of the panel.
GREATEST_PLACE = 32_767 - 4_096

Shown = Label | Field | Icon


def longest(part: Label | Field) -> int:
    """Return the most bytes that a text of the part takes."""
    return len(part.text.encode()) if isinstance(part, Label) else max_bytes(field_graph(part))[0]


def type_title(one: TypeGlyphs) -> str:
    """Return what a type is made of, in one line."""
    size = f", {one.type.size} px"
    return literals.comment(
        f"{one.spec.name}: {one.type.path.name}{size}, {one.spec.rendering}"
        f"{', kerning' if one.spec.kerning else ''}, {one.type.rasteriser}"
    )


@dataclass(frozen=True, slots=True)
class GlyphSet:
    """The glyphs of a type, or the states of an icon: `first` is the place of the first among all.

    A glyph's columns count from `left` px off the pen, its rows from `top` px over the baseline.
    """

    first: int
    count: int
    left: int
    top: int
    encoding: Encoding = "rows"


@dataclass(frozen=True, slots=True)
class Entry:
    """A glyph or a state of an icon: its title in comments, its code, and what it is of."""

    title: str
    code: int
    glyph: Glyph
    of: str


def _set(entries: Sequence[Entry], first: int, cells: bool) -> GlyphSet:
    inked = [one.glyph for one in entries if one.glyph.width and one.glyph.height]
    return GlyphSet(
        first,
        len(entries),
        # Where cells are painted, pens have to be known as they are.
        0 if cells else min((glyph.left for glyph in inked), default=0),
        max((glyph.top for glyph in inked), default=0),
    )


class Stock:
    """What the tables of a header are made of.

    Raises Problem where the bitmaps take more than 4 GiB, or an icon has more states than a byte tells.
    """

    def __init__(self, material: Material) -> None:
        self.material = material
        self.layout = lower(material.layout.name)
        self.types = type_glyphs(material)
        self.shown: list[tuple[Screen, Shown]] = [
            (screen, part)
            for screen in material.layout.screens
            for part in screen.parts
            if isinstance(part, Label | Field | Icon)
        ]
        self.texts = [part for _, part in self.shown if not isinstance(part, Icon)]
        self.icons = [(screen, part) for screen, part in self.shown if isinstance(part, Icon)]
        self.clearings = {"none" if isinstance(part, Label) else part.clearing for _, part in self.shown}
        self.cells = "cell" in self.clearings
        self.pool = Pool()
        self.entries: list[Entry] = []
        self.sections: dict[int, str] = {}
        self.sets: dict[str, GlyphSet] = {}
        self.icon_sets: dict[tuple[str, str], GlyphSet] = {}
        for one in self.types:
            name = one.spec.name
            made = [
                Entry(f"U+{ord(c):04X}{f' {c}' if '!' <= c <= '~' else ''}", code_of(c), glyph, name)
                for c, glyph in one.glyphs
            ]
            found = _set(made, len(self.entries), self.cells)
            self.sections[len(self.entries)] = type_title(one)
            # Of a type without glyphs the code looks through one entry all the same.
            self.entries += made or [Entry("none", 0, Glyph(0, 0, 0, 0, 0, ()), name)]
            self.sets[name] = replace(found, count=max(len(made), 1))
        if self.icons:
            self.sections[len(self.entries)] = ICONS
        states = icon_states(material)
        for screen, icon in self.icons:
            mine = [state for name, part, state in states if (name, part) == (screen.name, icon)]
            if len(mine) > MOST_STATES:
                raise Problem(f"the icon `{icon.name}` has {len(mine)} states; {MOST_STATES} are the most")
            made = [
                Entry(f"{screen.name} {icon.name} {state.name}", n, icon_glyph(material.bitmaps[state]), ICON)
                for n, state in enumerate(mine, start=1)
            ]
            self.icon_sets[screen.name, icon.name] = _set(made, len(self.entries), self.cells)
            self.entries += made
        self._encode()
        self.first_bytes = tuple(self._stored())
        if self.pool.size > GREATEST_BITS:
            raise Problem("the bitmaps of this layout take more than 4 GiB; use smaller types")
        self.depths = {one.spec.name: one.depth for one in self.types}
        # Pairs of an ink and a ground, in the order of their first use.
        pairs = [
            (part.ink, part.ground or screen.ground)
            for screen, part in self.shown
            if not isinstance(part, Icon) and self.depths[part.type] > 1
        ]
        self.ramps = {pair: n for n, pair in enumerate(dict.fromkeys(pairs))}

    def _encode(self) -> None:
        """Choose each type's encoding, and that of all icons."""
        glyphs: dict[str, list[Glyph]] = {}
        for one in self.entries:
            glyphs.setdefault(one.of, []).append(one.glyph)
        chosen = cheapest(glyphs)
        for name, found in self.sets.items():
            self.sets[name] = replace(found, encoding=chosen[name])
        for key, found in self.icon_sets.items():
            self.icon_sets[key] = replace(found, encoding=chosen[ICON])

    def sets_in_order(self) -> list[GlyphSet]:
        """Return the sets as their entries follow each other."""
        return sorted([*self.sets.values(), *self.icon_sets.values()], key=lambda one: one.first)

    def of_each(self) -> list[GlyphSet]:
        """Return of each entry the set that it is in."""
        return [found for found in self.sets_in_order() for _ in range(found.count)]

    def _stored(self) -> Iterator[int]:
        """Yield where the bitmap of each entry begins, once all are in the pool."""
        for one, found in zip(self.entries, self.of_each(), strict=True):
            glyph = one.glyph
            blob = packed(glyph, found.encoding) if glyph.width and glyph.height else b""
            yield self.pool.place(blob, f"{one.of} {one.title}", glyph)

    def set_of(self, screen: Screen, part: Shown) -> GlyphSet:
        """Return the set that a part takes its glyphs from."""
        return self.icon_sets[screen.name, part.name] if isinstance(part, Icon) else self.sets[part.type]

    def kerning(self) -> bool:
        """Tell whether any pair is kerned."""
        return any(one.pairs for one in self.types)

    def wide(self) -> bool:
        """Tell whether a place among all glyphs takes 16 bits."""
        return len(self.entries) > MOST_IN_A_BYTE

    def code_holds(self) -> str:
        """Return the integer type that holds every code, and every pair of places where there is kerning."""
        pairs = [0xFFFF_FFFF if self.wide() else 0xFFFF] if self.kerning() else []
        return literals.integer_type([*(one.code for one in self.entries), *pairs])

    def reach(self, one: TypeGlyphs) -> int:
        """Return how far behind a pen this or a later glyph can begin to ink (0 or less).

        Where columns count from the least left bearing, the glyph at the pen itself begins at the pen or later.
        """
        texts = [longest(part) for part in self.texts if part.type == one.spec.name]
        return min(one.least_left, 0) * self.cells - one.steps[0] * max(texts)

    def px(self) -> str:
        """Return the C type that holds every place of every text."""
        greatest = 0
        by_name = {one.spec.name: one for one in self.types}
        for part in self.texts:
            one = by_name[part.type]
            way = abs(part.x) + 2 * max(one.steps) * longest(part) + 2 * one.extent - self.reach(one)
            greatest = max(greatest, way)
        return "int" if greatest <= GREATEST_PLACE else "int32_t"
