"""lookalike: characters that can stand in for each other in a content do not look alike in this type.

Two characters stand in for each other where two texts of the content differ by this pair alone. They look alike where, laid
over each other (by their pens, or by their left edges or middles), they differ in a fifth of the ink at most, and no single
spot of difference is as large as a piece of the type's stroke that is an eighth of the height long; one pixel always
counts as smaller. So `8` and `B` with bare corners between them, or `I` and `l` of nearly one
height, are told at any size, while a tail, a bar or an ascender tells characters apart. Characters other
than letters and digits are told where their pixels are the same.

The bounds are ours, chosen on the fonts at hand: in a 5 × 7 matrix, the least that ISO 9241-3 allows for figures, `3` and
`8` differ in one spot of three pixels and pass.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from itertools import combinations
from typing import NamedTuple

from panelproof.content.graph import Graph
from panelproof.content.spec import FreeText
from panelproof.glyphs.type import Type
from panelproof.ink.footprint import Footprint
from panelproof.ink.mask import Mask
from panelproof.layout.parts import Field
from panelproof.proof.characters import STEMS, alphabet, height, shape_of, stroke
from panelproof.proof.extent import Stage
from panelproof.proof.finding import Finding, Level, Remedy
from panelproof.proof.words import listed, quoted

NAME = "lookalike"
SHARE = 5
PIECE = 8
MOST_CHARACTERS = 400
"""Of larger alphabets, only so many characters are compared with one another: no type tells thousands apart."""


class Likeness(NamedTuple):
    """Two characters that look alike; `same` where their pixels are the same."""

    first: str
    second: str
    same: bool


class Standing(NamedTuple):
    """Where two sets of characters stand in for each other: the node they leave, and where they lead."""

    node: int
    first: int
    second: int


def _spots(bits: int, width: int) -> Iterator[int]:
    """Yield the sizes of the connected spots (corners connect) of a mask whose outer columns are free."""
    while bits:
        spot = bits & -bits
        while True:
            grown = spot | spot << 1 | spot >> 1
            grown = (grown | grown << width | grown >> width) & bits
            if grown == spot:
                break
            spot = grown
        yield spot.bit_count()
        bits &= ~spot


class Cut(NamedTuple):
    """A character's shape in a frame that all of a type share, with room to move sideways."""

    char: str
    mask: Mask
    bits: int
    ink: int


def _cut(type_: Type, chars: str) -> tuple[list[Cut], int]:
    """Return the shapes of those characters that have ink, and the width of their frame."""
    masks = [(char, mask) for char in chars[:MOST_CHARACTERS] if (mask := shape_of(type_, char))]
    if not masks:
        return [], 1
    left = min(mask.x for _, mask in masks)
    top = min(mask.y for _, mask in masks)
    room = max(mask.x + mask.width for _, mask in masks) - left
    high = max(mask.y + mask.height for _, mask in masks) - top
    frame = (left - room - 1, top, 3 * room + 2, high)
    return [Cut(char, mask, mask.framed(*frame).bits, mask.count()) for char, mask in masks], frame[2]


def _alike(one: Cut, other: Cut, piece: float, width: int) -> bool:
    """Tell whether two shapes look alike, where a piece of stroke of so many pixels tells apart."""
    if abs(one.ink - other.ink) * SHARE > max(one.ink, other.ink):
        return False
    mine, theirs = one.mask, other.mask
    middle = (2 * mine.x + mine.width - 2 * theirs.x - theirs.width) // 2
    for dx in {0, mine.x - theirs.x, middle, 1, -1}:
        bits = other.bits << dx if dx >= 0 else other.bits >> -dx
        differing = one.bits ^ bits
        if differing.bit_count() * SHARE <= (one.bits | bits).bit_count() and all(
            spot < piece or spot == 1 for spot in _spots(differing, width)
        ):
            return True
    return False


@lru_cache(maxsize=1024)
def _pairs(type_: Type, chars: str) -> tuple[Likeness, ...]:
    """Return the pairs among some characters that look alike in a type, those of the same pixels first."""
    high = height(type_, STEMS)
    piece = (stroke(type_) or 1) * (high.pixels if high else type_.size) / PIECE
    shapes, width = _cut(type_, chars)
    found = []
    for one, other in combinations(shapes, 2):
        if (one.mask.y, one.mask.width, one.mask.bits) == (other.mask.y, other.mask.width, other.mask.bits):
            found.append(Likeness(one.char, other.char, True))
        elif one.char.isalnum() and other.char.isalnum() and _alike(one, other, piece, width):
            found.append(Likeness(one.char, other.char, False))
    return tuple(sorted(found, key=lambda pair: not pair.same))


@lru_cache(maxsize=512)
def _standings(graph: Graph) -> dict[tuple[str, str], Standing]:
    """Return for each pair of characters that can stand in for each other one place where they do."""
    found: dict[tuple[str, str], Standing] = {}
    apart: set[tuple[int, int]] = set()
    # Long contents lead through the same characters again and again.
    noted: set[tuple[str, str]] = set()
    for node, out in enumerate(graph.edges):
        for number, (to, chars) in enumerate(out):
            if (chars, chars) not in noted:
                noted.add((chars, chars))
                for pair in combinations(chars[:MOST_CHARACTERS], 2):
                    found.setdefault(pair, Standing(node, to, to))
            for other, more in out[number + 1 :]:
                if (chars, more) in noted or _ending(graph, to, other, apart) is None:
                    continue
                noted.add((chars, more))
                for one in chars[:MOST_CHARACTERS]:
                    for two in more[:MOST_CHARACTERS]:
                        if one < two:
                            found.setdefault((one, two), Standing(node, to, other))
                        else:
                            found.setdefault((two, one), Standing(node, other, to))
    return found


def _ending(graph: Graph, one: int, other: int, apart: set[tuple[int, int]]) -> str | None:
    """Return a text with which both nodes come to an end, None where there is none.

    `apart` holds pairs of nodes known to have none, and takes in what is found.
    """
    seen = {(one, other)}
    waiting = [(one, other, "")]
    for first, second, text in waiting:
        if graph.ends[first] and graph.ends[second]:
            return text
        for to, chars in graph.edges[first]:
            for to_second, more in graph.edges[second]:
                pair = (to, to_second)
                if pair in seen or pair in apart:
                    continue
                common = next((char for char in chars if char in more), "")
                if common:
                    seen.add(pair)
                    waiting.append((*pair, text + common))
    apart |= seen
    return None


def _beginning(graph: Graph, node: int) -> str:
    """Return a text that leads to a node."""
    text = ""
    while node:
        node, char = next(
            (source, chars[0]) for source in range(node) for to, chars in graph.edges[source] if to == node
        )
        text = char + text
    return text


@lru_cache(maxsize=512)
def likenesses(graph: Graph, type_: Type) -> tuple[Likeness, ...]:
    """Return the pairs of a content that can stand in for each other and look alike in a type."""
    standings = _standings(graph)
    chars = "".join(sorted({char for pair in standings for char in pair}))
    return tuple(pair for pair in _pairs(type_, chars) if (pair.first, pair.second) in standings)


@lru_cache(maxsize=512)
def _texts(graph: Graph, pair: Likeness) -> tuple[str, str]:
    """Return two texts of a content that differ by a pair alone."""
    at = _standings(graph)[pair.first, pair.second]
    before, after = _beginning(graph, at.node), _ending(graph, at.first, at.second, set()) or ""
    return before + pair.first + after, before + pair.second + after


def findings(stage: Stage, *, proposing: bool = True) -> Iterator[Finding]:
    """Yield each field in which one text can be taken for another; without `proposing` no other type is looked for."""
    for extent in stage.extents:
        part, print_ = extent.part, extent.footprint
        if print_ is None or not isinstance(part, Field):
            continue
        found = likenesses(print_.graph, print_.type)
        if not found:
            continue
        pair, texts = found[0], _texts(print_.graph, found[0])
        names = [f"`{one.first}` and `{one.second}`" for one in found]
        how = "are the same pixels" if pair.same else "look alike"
        rest = f"; {listed(names[1:])} look alike too" if names[1:] else ""
        yield Finding(
            NAME, _level(part, found), stage.screen.name, extent.name,
            f"{names[0]} {how} in the type `{part.type}`: "
            f"{quoted(texts[0])} can be taken for {quoted(texts[1])}{rest}",
            texts, 0, extent.padding or extent.reach.bounds(),
            _remedy(stage, part, print_) if proposing else None,
        )  # fmt: skip


def _level(part: Field, found: tuple[Likeness, ...]) -> Level:
    """Where people choose the words, as in the name of a network, near likeness is common and only worth knowing."""
    free = any(isinstance(one, FreeText) for one in part.content.arguments)
    digits = any(pair.first.isdigit() and pair.second.isdigit() for pair in found)
    return "note" if free and not digits and not any(pair.same for pair in found) else "caution"


def _remedy(stage: Stage, part: Field, print_: Footprint) -> Remedy | None:
    """Return the first of the layout's types that has no such pair and fits; else name those that have none."""
    from panelproof.proof.shorter import by_size, set_in  # noqa: PLC0415 - only where something is found

    graph = print_.graph
    able = [
        name
        for name, type_ in stage.material.types.items()
        if all(type_.glyph(char) is not None for char in alphabet(graph)) and not likenesses(graph, type_)
    ]
    for name in by_size(stage.material, part.type, able):
        ready = set_in(stage.material, stage.screen.name, part, print_, name)
        if ready:
            return Remedy(f"type `{name}` tells them apart", ready)
    if not able:
        return None
    return Remedy(
        f"{listed([f'type `{name}`' for name in able])} tell{'s' if len(able) == 1 else ''} them apart"
    )
