"""Walks through a word graph with a pen: every advance that a prefix or a suffix can have."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from panelproof.content.graph import Graph
from panelproof.glyphs.glyph import Glyph
from panelproof.glyphs.type import Type

BLANK = Glyph(0, 0, 0, 0, 0, ())


@dataclass(frozen=True, slots=True, eq=False)
class Step:
    """One character on the way from a state to `to`: kerning first, then the glyph, then its advance."""

    to: int
    char: str
    glyph: Glyph
    kern: int

    @property
    def advance(self) -> int:
        """How far the pen moves in all."""
        return self.kern + self.glyph.advance


def members(bits: int, origin: int) -> Iterator[int]:
    """Yield, in ascending order, the numbers of a bit set whose bit `origin` stands for 0."""
    while bits:
        lowest = bits & -bits
        yield lowest.bit_length() - 1 - origin
        bits ^= lowest


def moved(bits: int, by: int) -> int:
    """Return a bit set with `by` added to each number."""
    return bits << by if by >= 0 else bits >> -by


@dataclass(frozen=True, slots=True, eq=False)
class Walk:
    """A word graph unrolled so that each step has one kerning.

    A state is a node of the graph, and with kerning also the last glyph; state 0 is the start and steps lead to higher
    numbers. `before[s]` and `after[s]` are bit sets of the advances that can lie before and after state s; bit
    `origin` stands for 0.
    """

    steps: tuple[tuple[Step, ...], ...]
    ends: tuple[bool, ...]
    before: tuple[int, ...]
    after: tuple[int, ...]
    origin: int
    missing: tuple[str, ...]

    def widths(self) -> int:
        """Return the bit set of the advances of whole texts."""
        return self.after[0]

    def suffix(self, state: int, advance: int, *, greatest: bool = False) -> str:
        """Return a text that leads from `state` to an end in exactly `advance`.

        Of several it is the first in character order, or the last with `greatest`.
        """
        text: list[str] = []
        bit, after = 1 << (advance + self.origin), self.after
        while True:
            at_end = self.ends[state] and bit == 1 << self.origin
            if at_end and not greatest:
                return "".join(text)
            steps = sorted(self.steps[state], key=lambda step: step.char, reverse=greatest)
            for step in steps:
                rest = moved(bit, -step.advance)
                if after[step.to] & rest:
                    text.append(step.char)
                    state, bit = step.to, rest
                    break
            else:
                return "".join(text)

    def prefix(self, state: int, advance: int) -> str:
        """Return a text that leads from the start to `state` in exactly `advance`."""
        text: list[str] = []
        bit = 1 << (advance + self.origin)
        while state:
            source, step = next(
                (source, step)
                for source in range(state)
                for step in self.steps[source]
                if step.to == state and self.before[source] & moved(bit, -step.advance)
            )
            text.append(step.char)
            state, bit = source, moved(bit, -step.advance)
        return "".join(reversed(text))


def _left_classes(type_: Type, alphabet: list[str]) -> dict[str, int]:
    """Number the characters so that those which kern alike before every other share a number."""
    rows: dict[tuple[int, ...], int] = {}
    return {
        char: rows.setdefault(tuple(type_.kern(char, right) for right in alphabet), len(rows))
        for char in alphabet
    }


def _unroll(graph: Graph, type_: Type, glyphs: dict[str, Glyph]) -> tuple[list[list[Step]], list[bool]]:
    """Split nodes by the kerning class of the last glyph; -1 stands for none."""
    if not type_.kerning:
        steps = [
            [Step(to, char, glyphs[char], 0) for to, chars in out for char in chars] for out in graph.edges
        ]
        return steps, list(graph.ends)
    alphabet = sorted(char for char, glyph in glyphs.items() if glyph is not BLANK)
    classes = _left_classes(type_, alphabet)
    # Node by node, so that a state's number is above those of all states that lead to it.
    lasts: list[dict[int, str]] = [{} for _ in graph.edges]
    lasts[0][-1] = ""
    for node, out in enumerate(graph.edges):
        if not lasts[node]:
            continue
        for to, chars in out:
            for char in chars:
                lasts[to].setdefault(classes.get(char, -1), char if char in classes else "")
    numbers: dict[tuple[int, int], int] = {}
    for node, kinds in enumerate(lasts):
        for kind in kinds:
            numbers[node, kind] = len(numbers)
    unrolled: list[list[Step]] = []
    for node, kinds in enumerate(lasts):
        for last in kinds.values():
            unrolled.append(
                [
                    Step(
                        numbers[to, classes.get(char, -1)],
                        char,
                        glyphs[char],
                        type_.kern(last, char) if last and char in classes else 0,
                    )
                    for to, chars in graph.edges[node]
                    for char in chars
                ]
            )
    return unrolled, [graph.ends[node] for node, kinds in enumerate(lasts) for _ in kinds]


def walk(graph: Graph, type_: Type) -> Walk:
    """Walk through a graph once forward and once backward."""
    missing: list[str] = []
    glyphs: dict[str, Glyph] = {}
    for char in sorted(graph.alphabet()):
        glyph = type_.glyph(char)
        glyphs[char] = BLANK if glyph is None else glyph
        if glyph is None:
            missing.append(char)
    steps, ends = _unroll(graph, type_, glyphs)
    depth = [0] * len(steps)
    for state, out in enumerate(steps):
        for step in out:
            depth[step.to] = max(depth[step.to], depth[state] + 1)
    backward = max((-step.advance for out in steps for step in out), default=0)
    origin = max(backward, 0) * max(depth)
    # Steps that share target and advance move the same set: shift it once.
    hops = [sorted({(step.to, step.advance) for step in out}) for out in steps]
    before = [0] * len(steps)
    before[0] = 1 << origin
    for state, out_hops in enumerate(hops):
        for to, advance in out_hops:
            before[to] |= moved(before[state], advance)
    after = [1 << origin if end else 0 for end in ends]
    for state in range(len(steps) - 1, -1, -1):
        for to, advance in hops[state]:
            after[state] |= moved(after[to], advance)
    return Walk(tuple(map(tuple, steps)), tuple(ends), tuple(before), tuple(after), origin, tuple(missing))


def first_text(walk_: Walk, wanted: Callable[[Step], bool]) -> str:
    """Return the first text, in order of states, that takes a step that is `wanted`; raises LookupError."""
    for state, out in enumerate(walk_.steps):
        for step in out:
            if wanted(step):
                before = next(members(walk_.before[state], walk_.origin))
                after = next(members(walk_.after[step.to], walk_.origin))
                return walk_.prefix(state, before) + step.char + walk_.suffix(step.to, after)
    raise LookupError
