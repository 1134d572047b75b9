"""The pixels that leave for the firmware: glyphs of just the characters needed, kerning, icons' bitmaps."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from panelproof.content.graph import Graph
from panelproof.content.spec import Text
from panelproof.glyphs.glyph import Glyph
from panelproof.glyphs.type import Type
from panelproof.ink.mask import Mask
from panelproof.layout.document import TypeSpec
from panelproof.layout.parts import Field, Icon, IconState, Label
from panelproof.material import Material, field_graph

Pair = tuple[str, str]


@dataclass(frozen=True, slots=True)
class TypeGlyphs:
    """What the header holds of one type.

    `glyphs` in ascending order of the characters' codes; `pairs` as (left, right, pixels), ascending, the
    first two being places in `glyphs`, and no pixels 0.
    """

    spec: TypeSpec
    type: Type
    glyphs: tuple[tuple[str, Glyph], ...]
    pairs: tuple[tuple[int, int, int], ...]

    @property
    def depth(self) -> int:
        """Bits a pixel."""
        return 4 if self.type.antialiased else 1

    @property
    def steps(self) -> tuple[int, int]:
        """How far one character can move the pen to the left, and to the right, at most."""
        advances = [glyph.advance for _, glyph in self.glyphs]
        kerns = [pixels for *_, pixels in self.pairs]
        back = max(0, -min(advances, default=0) - min(kerns, default=0))
        return back, max(0, max(advances, default=0) + max(kerns, default=0))

    @property
    def extent(self) -> int:
        """How far ink can lie from its pen, at most."""
        return max((max(-glyph.left, glyph.left + glyph.width) for _, glyph in self.glyphs), default=0)

    @property
    def least_left(self) -> int:
        """The least left bearing."""
        return min((glyph.left for _, glyph in self.glyphs if glyph.width), default=0)


def pairs_of_text(text: str) -> set[Pair]:
    """Return the pairs of neighbours in one text."""
    return set(pairwise(text))


def pairs_of_graph(graph: Graph) -> set[Pair]:
    """Return the pairs of neighbours in all texts of a graph, without listing the texts."""
    into: list[set[str]] = [set() for _ in graph.edges]
    found: set[Pair] = set()
    for node, out in enumerate(graph.edges):
        for to, chars in out:
            into[to].update(chars)
            found.update((left, right) for left in into[node] for right in chars)
    return found


def texts_by_type(material: Material) -> dict[str, tuple[list[Graph], list[Text]]]:
    """Return, for each type that a part is set in, the graphs of its fields and the texts of its labels."""
    found: dict[str, tuple[list[Graph], list[Text]]] = {}
    for screen in material.layout.screens:
        for part in screen.parts:
            if isinstance(part, Field):
                found.setdefault(part.type, ([], []))[0].append(field_graph(part))
            elif isinstance(part, Label):
                found.setdefault(part.type, ([], []))[1].append(part.text)
    return found


def type_glyphs(material: Material) -> tuple[TypeGlyphs, ...]:
    """Return the glyphs of every type that some part is set in, in the layout's order."""
    needed = texts_by_type(material)
    made = []
    for spec in material.layout.types:
        if spec.name not in needed:
            continue
        graphs, texts = needed[spec.name]
        type_ = material.types[spec.name]
        chars = set("".join(texts)).union(*(graph.alphabet() for graph in graphs))
        glyphs = tuple((char, glyph) for char in sorted(chars) if (glyph := type_.glyph(char)) is not None)
        pairs: tuple[tuple[int, int, int], ...] = ()
        if type_.kerning:
            met = set().union(*map(pairs_of_text, texts), *map(pairs_of_graph, graphs))
            pairs = _kerned(type_, tuple(char for char, _ in glyphs), met)
        made.append(TypeGlyphs(spec, type_, glyphs, pairs))
    return tuple(made)


def _kerned(type_: Type, chars: tuple[str, ...], met: Iterable[Pair]) -> tuple[tuple[int, int, int], ...]:
    places = {char: place for place, char in enumerate(chars)}
    found = []
    for left, right in met:
        if left in places and right in places and (pixels := type_.kern(left, right)):
            found.append((places[left], places[right], pixels))
    return tuple(sorted(found))


def code_of(char: str) -> int:
    """Return the number that the drawing code makes of a character: its bytes, one after the other."""
    return int.from_bytes(char.encode(), "big")


def icon_glyph(mask: Mask) -> Glyph:
    """Return an icon state's bitmap as a glyph whose top left corner lies at the pen and on the baseline."""
    return Glyph(0, 0, mask.width, mask.height, mask.width, tuple(mask.rows()))


def icon_states(material: Material) -> tuple[tuple[str, Icon, IconState], ...]:
    """Return every icon state of every screen, in order: (screen, icon, state)."""
    return tuple(
        (screen.name, part, state)
        for screen in material.layout.screens
        for part in screen.parts
        if isinstance(part, Icon)
        for state in part.states
    )


class Pool:
    """All bitmaps in one row of bytes, equal ones held once."""

    def __init__(self) -> None:
        self.blobs: dict[bytes, int] = {}
        self.titles: dict[bytes, list[str]] = {}
        self.size = 0

    def place(self, blob: bytes, title: str, glyph: Glyph) -> int:
        """Put a bitmap in, unless it is there, and return where its first byte lies."""
        if not blob:
            return 0
        if blob not in self.blobs:
            self.blobs[blob] = self.size
            self.size += len(blob)
        self.titles.setdefault(blob, []).append(f"{title}: {glyph.width} x {glyph.height}")
        return self.blobs[blob]
