"""Footprints: every pixel that some text of a content can ink, exact and without enumeration."""

from __future__ import annotations

from functools import cached_property, lru_cache

from panelproof.content.graph import Graph
from panelproof.glyphs.glyph import Glyph
from panelproof.glyphs.type import Type
from panelproof.ink.anchor import Align, start
from panelproof.ink.mask import Mask, from_rows
from panelproof.ink.walk import BLANK, Step, Walk, first_text, members, moved, walk


def _halved(bits: int, origin: int) -> int:
    """Return the set of floor(n / 2) for each n of a bit set, with the same origin."""
    result = 0
    for number in members(bits, origin):
        result |= 1 << (number // 2 + origin)
    return result


def _smeared(places: int, bits: int) -> int:
    """Return every sum of a member of `places` and one of `bits` (both as bit sets)."""
    few, many = (places, bits) if places.bit_count() < bits.bit_count() else (bits, places)
    result = 0
    while few:
        lowest = few & -few
        result |= many << (lowest.bit_length() - 1)
        few ^= lowest
    return result


class Footprint:
    """What the texts of one content ink in one type, relative to an anchor at (0, 0) on the baseline.

    Where a character has no glyph it is skipped, as in the drawing code.
    """

    def __init__(self, graph: Graph, type_: Type, align: Align) -> None:
        self.graph = graph
        self.type = type_
        self.align: Align = align
        self.walk: Walk = _walk(graph, type_)

    # -- extremes of advance ---------------------------------------------------------------------------

    @cached_property
    def widths(self) -> tuple[int, ...]:
        """Every advance width that a text can have, ascending."""
        return tuple(members(self.walk.widths(), self.walk.origin))

    @cached_property
    def longest(self) -> str:
        """A text of the greatest advance width."""
        return self.walk.suffix(0, self.widths[-1], greatest=True)

    @cached_property
    def shortest(self) -> str:
        """A text of the least advance width."""
        return self.walk.suffix(0, self.widths[0])

    def cell(self, width: int) -> Mask:
        """Return the cell of a text of that advance width, as a rectangle."""
        height = max(self.type.ascent + self.type.descent, 0)
        return Mask(
            start(self.align, width),
            -self.type.ascent,
            max(width, 0),
            height,
            (1 << max(width, 0) * height) - 1,
        )

    # -- ink -------------------------------------------------------------------------------------------

    @cached_property
    def _pens(self) -> dict[Glyph, int]:
        """For each glyph the bit set of its pen places, relative to the anchor, with origin `_origin`."""
        pens: dict[Glyph, int] = {}
        origin, before, after = self._origin, self.walk.before, self.walk.after
        grown = origin - self.walk.origin
        differences: dict[tuple[int, int], int] = {}
        for state, out in enumerate(self.walk.steps):
            for step in out:
                glyph, to = step.glyph, step.to
                if not glyph.rows:
                    continue
                if self.align == "left":
                    places = moved(before[state] << grown, step.kern)
                elif self.align == "right":
                    # after[] counted downwards: reflected below.
                    places = moved(after[to] << grown, glyph.advance)
                else:
                    difference = differences.get((state, to))
                    if difference is None:
                        difference = self._difference(before[state], after[to])
                        differences[state, to] = difference
                    places = moved(difference, glyph.advance - step.kern)
                pens[glyph] = pens.get(glyph, 0) | places
        if self.align == "left":
            return pens
        if self.align == "centre":
            pens = {glyph: _halved(places, origin) for glyph, places in pens.items()}
        return {glyph: self._reflected(places) for glyph, places in pens.items()}

    @cached_property
    def _origin(self) -> int:
        """An origin roomy enough for differences of advances and their reflection."""
        widest = max(bits.bit_length() for bits in (*self.walk.before, *self.walk.after))
        step = max(
            (abs(step.kern) + abs(step.glyph.advance) for out in self.walk.steps for step in out), default=0
        )
        return widest + 2 * step + self.walk.origin

    def _difference(self, before: int, after: int) -> int:
        """Return the bit set of b - f for every b after and f before."""
        result = 0
        for advance in members(before, self.walk.origin):
            result |= moved(after, self._origin - self.walk.origin - advance)
        return result

    def _reflected(self, bits: int) -> int:
        """Return the bit set of -n."""
        result, origin = 0, self._origin
        for number in members(bits, origin):
            result |= 1 << (origin - number)
        return result

    @cached_property
    def mask(self) -> Mask:
        """Every pixel that some text inks."""
        pens, origin = self._pens, self._origin
        if not pens:
            return Mask(0, 0, 0, 0, 0)
        top = max(glyph.top for glyph in pens)
        bottom = max(glyph.height - glyph.top for glyph in pens)
        left = min((bits & -bits).bit_length() - 1 - origin + glyph.left for glyph, bits in pens.items())
        right = max(bits.bit_length() - 1 - origin + glyph.left + glyph.width for glyph, bits in pens.items())
        rows = [0] * (top + bottom)
        for glyph, bits in pens.items():
            lowest = (bits & -bits).bit_length() - 1
            places, offset = bits >> lowest, lowest - origin + glyph.left - left
            for row, columns in enumerate(glyph.rows, top - glyph.top):
                rows[row] |= _smeared(places, columns) << offset
        return from_rows(left, -top, right - left, rows)

    def witness(self, x: int, y: int) -> str:
        """Return a text that inks the pixel (x, y); raises LookupError where none does."""
        origin = self.walk.origin
        for state, out in enumerate(self.walk.steps):
            for step in out:
                glyph = step.glyph
                row = y + glyph.top
                if not 0 <= row < glyph.height:
                    continue
                for column in members(glyph.rows[row], 0):
                    found = self._around(state, step, x - glyph.left - column, origin)
                    if found:
                        before, after = found
                        return self.walk.prefix(state, before) + step.char + self.walk.suffix(step.to, after)
        raise LookupError

    def _around(self, state: int, step: Step, pen: int, origin: int) -> tuple[int, int] | None:
        """Return advances before and after a step that put its pen at `pen`, or None."""
        before, after = self.walk.before[state], self.walk.after[step.to]
        if self.align == "left":
            place = pen - step.kern + origin
            if place < 0 or not before >> place & 1:
                return None
            return place - origin, next(members(after, origin))
        if self.align == "right":
            place = -step.glyph.advance - pen + origin
            if place < 0 or not after >> place & 1:
                return None
            return next(members(before, origin)), place - origin
        for odd in (0, 1):
            # pen = -floor((advance + after - before - kern) / 2)
            difference = -2 * pen + odd + step.kern - step.glyph.advance
            both = before & moved(after, -difference)
            if both:
                first = next(members(both, origin))
                return first, first + difference
        return None

    # -- height ----------------------------------------------------------------------------------------

    @cached_property
    def tallest(self) -> str:
        """A text whose ink reaches over the most rows, from its highest to its lowest."""
        graph, glyph_of = self.graph, self.type.glyph
        # For each node every (rows above, rows below) that the rest of a text can reach; None: no ink.
        Reach = tuple[int, int] | None

        def joined(one: Reach, other: Reach) -> Reach:
            if one is None or other is None:
                return one or other
            return max(one[0], other[0]), max(one[1], other[1])

        def own(char: str) -> Reach:
            glyph = glyph_of(char) or BLANK
            return (glyph.top, glyph.height - glyph.top) if glyph.rows else None

        reaches: list[set[Reach]] = [set() for _ in graph.edges]
        for node in range(len(graph.edges) - 1, -1, -1):
            if graph.ends[node]:
                reaches[node].add(None)
            for to, chars in graph.edges[node]:
                for kind in {own(char) for char in chars}:
                    reaches[node].update(joined(kind, rest) for rest in reaches[to])
        goal = max(reaches[0], key=lambda reach: (sum(reach) if reach else -1, reach or (0, 0)))
        node, so_far, text = 0, None, ""
        while not (graph.ends[node] and so_far == goal):
            node, so_far, char = next(
                (to, grown, char)
                for to, chars in graph.edges[node]
                for char in chars
                for grown in (joined(so_far, own(char)),)
                if any(joined(grown, rest) == goal for rest in reaches[to])
            )
            text += char
        return text

    @property
    def missing(self) -> tuple[str, ...]:
        """The characters of the content that the type lacks, ascending."""
        return self.walk.missing

    def text_with(self, char: str) -> str:
        """Return a text that holds a character; raises LookupError where none does."""
        return first_text(self.walk, lambda step: step.char == char)


@lru_cache(maxsize=512)
def _walk(graph: Graph, type_: Type) -> Walk:
    return walk(graph, type_)


@lru_cache(maxsize=512)
def footprint(graph: Graph, type_: Type, align: Align) -> Footprint:
    """Return the footprint of a content in a type; the same object for the same arguments."""
    return Footprint(graph, type_, align)
