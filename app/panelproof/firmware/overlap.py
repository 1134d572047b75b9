"""Whether glyphs of one text can overlap or stand out of order: then the drawing code looks at several at a time."""

from __future__ import annotations

from collections.abc import Iterable

from panelproof.content.graph import Graph
from panelproof.firmware.glyphdata import TypeGlyphs
from panelproof.glyphs.glyph import Glyph

NEVER = -(1 << 30)
Reach = tuple[int, ...]  # of each row, how far ink reaches beyond the pen


def overlaps(one: TypeGlyphs, graphs: Iterable[Graph], texts: Iterable[str]) -> bool:
    """Tell whether in some text a glyph's box begins before an earlier one's ends, in a row that both have.

    `graphs` and `texts` are all that is set in the type. A glyph's box counts, with its pixels that are not
    inked.
    """
    glyphs = dict(one.glyphs)
    if not one.pairs and all(
        glyph.left >= 0 and max(glyph.left + glyph.width, 0) <= glyph.advance for glyph in glyphs.values()
    ):
        return False
    walker = _Walker(one, glyphs)
    return any(map(walker.in_text, texts)) or any(map(walker.in_graph, graphs))


class _Walker:
    def __init__(self, one: TypeGlyphs, glyphs: dict[str, Glyph]) -> None:
        chars = [char for char, _ in one.glyphs]
        self.glyphs = glyphs
        self.kerns = {(chars[left], chars[right]): pixels for left, right, pixels in one.pairs}
        boxes = [glyph for glyph in glyphs.values() if glyph.width and glyph.height]
        self.top = max((glyph.top for glyph in boxes), default=0)
        bottom = max((glyph.height - glyph.top for glyph in boxes), default=0)
        self.nothing: Reach = (NEVER,) * (self.top + bottom)

    def after(self, reach: Reach, previous: str, char: str) -> tuple[Reach, str] | None:
        """Return the reach behind one more character and that character; None where boxes overlap."""
        glyph = self.glyphs.get(char)
        if glyph is None:
            return reach, ""
        move = self.kerns.get((previous, char), 0)
        begin, end = self.top - glyph.top, self.top - glyph.top + glyph.height
        right = move + glyph.left + glyph.width
        rows = list(reach)
        if glyph.width:
            for row in range(begin, end):
                if rows[row] > move + glyph.left:
                    return None
                rows[row] = right
        by = move + glyph.advance
        # Only pairs with kerning make the character before it matter.
        return tuple(max(at - by, NEVER) for at in rows), char if self.kerns else ""

    def in_text(self, text: str) -> bool:
        reach, previous = self.nothing, ""
        for char in text:
            found = self.after(reach, previous, char)
            if found is None:
                return True
            reach, previous = found
        return False

    def in_graph(self, graph: Graph) -> bool:
        reaches: list[dict[str, Reach]] = [{} for _ in graph.edges]
        reaches[0][""] = self.nothing
        for node, out in enumerate(graph.edges):
            for previous, reach in reaches[node].items():
                for to, chars in out:
                    for char in chars:
                        found = self.after(reach, previous, char)
                        if found is None:
                            return True
                        farthest, last = found
                        known = reaches[to].get(last)
                        if known is not None:
                            farthest = tuple(map(max, known, farthest))
                        reaches[to][last] = farthest
        return False
