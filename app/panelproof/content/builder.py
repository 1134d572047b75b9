"""Word graphs built from their ends backwards, where equal sets of texts are one node from the first."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise

from panelproof.content.graph import Edge, Graph

LIMIT = 300_000
BULK = 64

Part = tuple[str, tuple[int, ...]]


class TooLargeError(Exception):
    """The graph would need more work than `LIMIT` allows."""


class Builder:
    """A growing store of nodes, each one a set of texts: the texts that can follow there.

    A node is its number. It is found by its edges and by whether a text may end there, so two nodes never
    hold the same set, and any node is the start of a deterministic and minimal graph. Edges lead to lower
    numbers. Every operation is bounded: beyond `LIMIT` steps of work, TooLargeError.
    """

    def __init__(self) -> None:
        self._edges: list[tuple[Edge, ...]] = []
        self._ends: list[bool] = []
        self._known: dict[tuple[bool, tuple[Edge, ...]], int] = {}
        self._joined: dict[tuple[int, ...], int] = {}
        self._work = 0
        self.end = self.node(True, ())

    def spend(self, work: int) -> None:
        """Count steps of work."""
        self._work += work
        if self._work > LIMIT:
            raise TooLargeError

    def node(self, end: bool, edges: Sequence[Edge]) -> int:
        """Return the node with these edges: (target, ascending characters), no character twice."""
        if len(edges) > 1:
            merged: dict[int, list[str]] = {}
            for to, chars in edges:
                merged.setdefault(to, []).append(chars)
            canonical = tuple(sorted(((to, _merged(pieces)) for to, pieces in merged.items()), key=_first))
        else:
            canonical = tuple(edges)
        key = (end, canonical)
        number = self._known.get(key)
        if number is None:
            number = self._known[key] = len(self._edges)
            self._edges.append(canonical)
            self._ends.append(end)
            self.spend(1)
        return number

    def literal(self, text: str, follow: int) -> int:
        """Return `text` and then what may follow."""
        for char in reversed(text):
            follow = self.node(False, ((follow, char),))
        return follow

    def choice(self, texts: Iterable[str], follow: int) -> int:
        """Return any one of `texts` (at least one) and then what may follow."""
        ordered = sorted(set(texts))
        self.spend(len(ordered))
        # The open path from the start: for each depth the finished edges, and whether a text ends there.
        open_edges: list[list[Edge]] = [[]]
        open_ends = [False]
        last = ""
        for text in ordered:
            shared = _shared(last, text)
            self._close(open_edges, open_ends, last, shared, follow)
            open_edges.extend([] for _ in range(len(text) - shared))
            open_ends.extend(False for _ in range(len(text) - shared))
            open_ends[-1] = True
            last = text
        self._close(open_edges, open_ends, last, 0, follow)
        return self._closed(open_edges[0], open_ends[0], follow)

    def _close(self, edges: list[list[Edge]], ends: list[bool], text: str, depth: int, follow: int) -> None:
        while len(edges) > depth + 1:
            node = self._closed(edges.pop(), ends.pop(), follow)
            edges[-1].append((node, text[len(edges) - 1]))

    def _closed(self, edges: list[Edge], end: bool, follow: int) -> int:
        if not edges:
            return follow
        node = self.node(False, edges)
        return self.union((node, follow)) if end else node

    def right_aligned(self, width: int, bodies: Iterable[tuple[int, int]]) -> int:
        """Return every body with as many spaces before it as fill `width`.

        A body is (length, node) and the node holds what follows the body too.
        """
        by_spaces: dict[int, list[int]] = {}
        for length, node in bodies:
            by_spaces.setdefault(max(0, width - length), []).append(node)
        result: int | None = None
        for spaces in range(max(by_spaces), -1, -1):
            parts = by_spaces.get(spaces, [])
            if result is not None:
                parts = [*parts, self.node(False, ((result, " "),))]
            result = self.union(parts)
        assert result is not None
        return result

    def union(self, nodes: Iterable[int]) -> int:
        """Return the node that holds the texts of all these nodes (at least one)."""
        first, *others = sorted(set(nodes))
        # Two at a time: what is already joined is one node again, and so meets what was joined before.
        for other in others:
            first = self._union(first, other)
        return first

    def _union(self, one: int, other: int) -> int:
        if one == other:
            return one
        wanted = (min(one, other), max(one, other))
        joined = self._joined
        stack: list[tuple[tuple[int, ...], list[Part]]] = []
        if wanted not in joined:
            stack.append((wanted, self._parts(wanted)))
        while stack:
            key, parts = stack[-1]
            missing = [to for _, to in parts if len(to) > 1 and to not in joined]
            if missing:
                stack.extend((to, self._parts(to)) for to in missing)
                continue
            stack.pop()
            if key not in joined:
                edges = [(to[0] if len(to) == 1 else joined[to], chars) for chars, to in parts]
                joined[key] = self.node(any(self._ends[node] for node in key), edges)
        return joined[wanted]

    def _parts(self, nodes: tuple[int, ...]) -> list[Part]:
        """Split the characters that leave any of `nodes`: (ascending characters, nodes they all lead to)."""
        rows = [self._edges[node] for node in nodes if self._edges[node]]
        self.spend(2 + sum(map(len, rows)) // 4)
        if not rows:
            return []
        split = [chars for _, chars in rows[0]]
        groups: dict[tuple[int, ...], list[str]] = {}
        if all([chars for _, chars in row] == split for row in rows):
            for place, chars in enumerate(split):
                groups.setdefault(tuple(sorted({row[place][0] for row in rows})), []).append(chars)
        else:
            edges = [edge for row in rows for edge in row]
            # A long alphabet stays in one piece: only the characters that others share are cut out.
            bulk = max((chars for _, chars in edges), key=len)
            if len(bulk) < BULK or 4 * sum(len(chars) for _, chars in edges if chars != bulk) > len(bulk):
                bulk = ""
            by_char: dict[str, set[int]] = {}
            for to, chars in edges:
                if chars != bulk:
                    self.spend(len(chars) // 8)
                    for char in chars:
                        by_char.setdefault(char, set()).add(to)
            if bulk:
                targets = {to for to, chars in edges if chars == bulk}
                shared = sorted(char for char in by_char if char in bulk)
                for char in shared:
                    by_char[char] |= targets
                self.spend(len(bulk) * (1 + len(shared)) // 512)
                groups[tuple(sorted(targets))] = [_without(bulk, shared)]
            for char in sorted(by_char):
                groups.setdefault(tuple(sorted(by_char[char])), []).append(char)
        return [(_merged(pieces), to) for to, pieces in groups.items() if any(pieces)]

    def graph(self, start: int) -> Graph:
        """Return the graph that begins at node `start`."""
        reached = bytearray(start + 1)
        reached[start] = 1
        for node in range(start, -1, -1):
            if reached[node]:
                for to, _ in self._edges[node]:
                    reached[to] = 1
        order = [node for node in range(start, -1, -1) if reached[node]]
        number = {node: place for place, node in enumerate(order)}
        return Graph(
            tuple(tuple((number[to], chars) for to, chars in self._edges[node]) for node in order),
            tuple(self._ends[node] for node in order),
        )


def _first(edge: Edge) -> str:
    return edge[1][0]


def _merged(pieces: list[str]) -> str:
    """Return the characters of several ascending texts in ascending order."""
    if len(pieces) == 1:
        return pieces[0]
    joined = "".join(pieces)
    # Alphabets are long and mostly come in order: sort only where the pieces interlock.
    ordered = all(one[-1:] < other[:1] for one, other in pairwise(pieces))
    return joined if ordered else "".join(sorted(joined))


def _shared(left: str, right: str) -> int:
    """Return how many characters two texts have in common at their beginnings."""
    for place, (one, other) in enumerate(zip(left, right, strict=False)):
        if one != other:
            return place
    return min(len(left), len(right))


def _without(chars: str, taken: Iterable[str]) -> str:
    """Return ascending `chars` less those of `taken`, all of them among it."""
    for char in taken:
        place = chars.index(char)
        chars = chars[:place] + chars[place + 1 :]
    return chars
