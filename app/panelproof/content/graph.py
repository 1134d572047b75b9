"""Acyclic word graphs: a finite set of texts, held without listing it."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass

Edge = tuple[int, str]


@dataclass(frozen=True, slots=True, eq=False)
class Graph:
    """A deterministic, minimal, acyclic word graph.

    Node 0 is the start; every edge leads to a node of a higher number. `edges[n]` holds pairs
    (target, characters): each one of `characters`, in ascending order, leads from n to target. The
    characters that leave one node are all different, the targets too. `ends[n]` tells whether a text may end
    at n. Every node lies on some path from the start to an end. Compared by identity, so that it can key a
    cache.
    """

    edges: tuple[tuple[Edge, ...], ...]
    ends: tuple[bool, ...]

    def count(self) -> int:
        """Return how many texts there are."""
        counts = [0] * len(self.edges)
        for node in range(len(self.edges) - 1, -1, -1):
            counts[node] = self.ends[node] + sum(len(chars) * counts[to] for to, chars in self.edges[node])
        return counts[0]

    def accepts(self, text: str) -> bool:
        """Tell whether `text` is one of the texts."""
        node = 0
        for char in text:
            for to, chars in self.edges[node]:
                if char in chars:
                    node = to
                    break
            else:
                return False
        return self.ends[node]

    def alphabet(self) -> frozenset[str]:
        """Return every character that some text holds."""
        return frozenset(char for out in self.edges for _, chars in out for char in chars)

    def texts(self) -> Iterator[str]:
        """Yield every text, in ascending order of characters (only for small contents)."""
        stack: list[tuple[int, str]] = [(0, "")]
        while stack:
            node, text = stack.pop()
            if self.ends[node]:
                yield text
            onward = sorted(((char, to) for to, chars in self.edges[node] for char in chars), reverse=True)
            stack.extend((to, text + char) for char, to in onward)


def max_bytes(graph: Graph) -> tuple[int, str]:
    """Return the most bytes that a text takes in UTF-8, and the first such text in ascending order.

    The terminating NUL of C is not counted.
    """
    # Per node: bytes from there to an end, and the edge taken (target, character); -1 where the text ends.
    best: list[tuple[int, int, str]] = [(0, -1, "")] * len(graph.edges)
    for node in range(len(graph.edges) - 1, -1, -1):
        found = (0, -1, "")
        for to, chars in graph.edges[node]:
            # UTF-8 grows with the code: the last character takes the most bytes.
            size = _bytes(chars[-1])
            char = chars[bisect_left(chars, size, key=_bytes)]
            total = size + best[to][0]
            if total > found[0] or (total == found[0] and char < found[2]):
                found = (total, to, char)
        best[node] = found
    text, node = "", 0
    while best[node][1] >= 0:
        text += best[node][2]
        node = best[node][1]
    return best[0][0], text


def _bytes(char: str) -> int:
    return len(char.encode())
