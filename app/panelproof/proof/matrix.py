"""matrix: characters have pixels enough to be drawn with: 5 x 7 at least, 7 x 9 for continuous reading.

Source: ISO 9241-3: 5 x 7 for numerals and capitals, 7 x 9 for continuous reading; width to height 0.5 to 1.0 allowed.
What is judged is the type: the usual width and the least height that it gives to its figures (1 excepted) and,
where the content has capitals, to its capitals (I excepted; DOD-HDBK-791(AM) 6-5.3.2.2). Continuous reading is a text of
six words and forty characters or more; a shorter one is read at a glance.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from panelproof.content.graph import Graph
from panelproof.glyphs.type import Type
from panelproof.layout.parts import Field, Label
from panelproof.proof.behind import inked
from panelproof.proof.characters import CAPITALS, DIGITS, alphabet, matrix
from panelproof.proof.extent import Stage
from panelproof.proof.finding import Finding, Level

NAME = "matrix"
LEAST, READING = (5, 7), (7, 9)
NARROWEST, WIDEST = 0.5, 1.0
READING_WORDS, READING_LENGTH = 6, 40


@lru_cache(maxsize=512)
def is_reading(graph: Graph) -> bool:
    """Tell whether some text of a content is for continuous reading."""
    # Per node: the most words that can begin from there on, and the most characters.
    words, length = [0] * len(graph.edges), [0] * len(graph.edges)
    for node in range(len(graph.edges) - 1, -1, -1):
        for to, chars in graph.edges[node]:
            length[node] = max(length[node], 1 + length[to])
            spaced = " " in chars and bool(graph.edges[to])
            words[node] = max(words[node], words[to] + spaced)
    # A run of free characters could be all spaces: a word takes at least one more.
    return length[0] >= READING_LENGTH and min(words[0], length[0] // 2) + 1 >= READING_WORDS


@lru_cache(maxsize=1024)
def _judged(type_: Type, used: frozenset[str], reading: bool) -> tuple[Level, str] | None:
    for what, chars in (("figures", DIGITS), ("capitals", CAPITALS)):
        if used.isdisjoint(chars):
            continue
        found = matrix(type_, chars)
        if found is None:
            continue
        size = f"{what} are {found.width} × {found.height} px in this type"
        if found.width < LEAST[0] or found.height < LEAST[1]:
            return (
                "caution",
                f"{size}; fewer than {LEAST[0]} × {LEAST[1]} cannot be drawn so as to be read for certain",
            )
        if not NARROWEST <= found.width / found.height <= WIDEST:
            share = found.width / found.height
            word = "narrow" if share < NARROWEST else "wide"
            return "caution", (
                f"{size}, {share:.2f} of their height wide: too {word}, "
                f"{NARROWEST:g} to {WIDEST:g} is read for certain"
            )
        if reading and (found.width < READING[0] or found.height < READING[1]):
            return "note", f"{size}; text as long as this reads better from {READING[0]} × {READING[1]} on"
    return None


def findings(stage: Stage) -> Iterator[Finding]:
    """Yield each text whose type has too few pixels a character."""
    for extent in stage.extents:
        print_ = extent.footprint
        if print_ is None or not isinstance(extent.part, Field | Label) or not extent.ink:
            continue
        found = _judged(print_.type, alphabet(print_.graph), is_reading(print_.graph))
        if found:
            level, message = found
            yield Finding(NAME, level, stage.screen.name, extent.name, message, (), 0, inked(extent))
