"""What every update surely repaints, and texts that leave a pixel as it was."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from panelproof.glyphs.run import placed
from panelproof.ink.anchor import start
from panelproof.ink.footprint import Footprint
from panelproof.ink.mask import Area, Mask
from panelproof.ink.walk import Step, members


def text_ink(footprint: Footprint, text: str) -> Mask:
    """Return the pixels that one text inks, relative to the anchor."""
    run, width = placed(footprint.type, text)
    first = start(footprint.align, width)
    frame = footprint.mask.frame
    bits = 0
    for glyph, pen in run:
        bits |= _stamp(glyph.rows, first + pen + glyph.left - frame[0], -glyph.top - frame[1], frame)
    return Mask(*frame, bits)


def _stamp(rows: tuple[int, ...], x: int, y: int, frame: Area) -> int:
    """Return the bits of glyph rows at (x, y) inside a frame; what lies outside is cut off."""
    _, _, width, height = frame
    full, bits = (1 << width) - 1, 0
    for row, columns in enumerate(rows, y):
        if 0 <= row < height:
            bits |= ((columns << x if x >= 0 else columns >> -x) & full) << row * width
    return bits


def _repainted(footprint: Footprint, text: str, cell: bool) -> Mask:
    ink = text_ink(footprint, text)
    if not cell:
        return ink
    return ink | footprint.cell(placed(footprint.type, text)[1])


@dataclass(frozen=True, slots=True, eq=False)
class Spared:
    """The pixels of a footprint that some text does not repaint, and the means to name one."""

    footprint: Footprint
    cell: bool
    mask: Mask

    def text(self, x: int, y: int) -> str:
        """Return a text whose update leaves the pixel as it was; raises LookupError where none does."""
        for sample in _samples(self.footprint):
            if (x, y) not in _repainted(self.footprint, sample, self.cell):
                return sample
        for search in _searches(self.footprint, (x, y, 1, 1), self.cell):
            if search.avoided():
                return search.text()
        raise LookupError


def _samples(footprint: Footprint) -> tuple[str, ...]:
    return tuple(dict.fromkeys((footprint.shortest, footprint.longest, footprint.tallest)))


def spared(footprint: Footprint, *, cell: bool) -> Spared:
    """Return what some update leaves as it was: with `cell` its cell and ink are repainted, else its ink only.

    Exact. A few sample texts settle most pixels; for those that all of them repaint every text is weighed at once.
    """
    always = footprint.mask
    for sample in _samples(footprint):
        always = always & _repainted(footprint, sample, cell)
    # Cells of one content are nested: the narrowest is repainted by every text.
    surely = always & footprint.cell(footprint.widths[0]) if cell else Mask(*always.frame, 0)
    unsure = always - surely
    if unsure:
        frame = unsure.bounds()
        for search in _searches(footprint, frame, cell):
            unsure = unsure - Mask(*frame, search.avoided())
            if not unsure:
                break
    return Spared(footprint, cell, footprint.mask - (surely | unsure))


def _searches(footprint: Footprint, frame: Area, cell: bool) -> Iterator[_Search]:
    """Yield searches that together weigh every text.

    One does for left and right, where a glyph's place hangs on what lies before or after it alone; centred, one a width.
    """
    if footprint.align == "centre":
        for width in footprint.widths:
            yield _Search(footprint, frame, cell, width)
    else:
        yield _Search(footprint, frame, cell, None)


class _Search:
    """For each state and key: which pixels of a frame some rest of a text leaves as they are.

    The key is the advance before the state, or for right alignment the advance after it.
    """

    def __init__(self, footprint: Footprint, frame: Area, cell: bool, width: int | None) -> None:
        self._footprint, self._frame, self._cell, self._width = footprint, frame, cell, width
        self._everything = (1 << frame[2] * frame[3]) - 1
        self._stamps: dict[tuple[int, int], int] = {}
        walk = footprint.walk
        self._from_right = footprint.align == "right"
        self._first = start(footprint.align, width or 0)
        # Past this pen nothing can reach back into the frame.
        self._past = (
            frame[0] + frame[2] - min((step.glyph.left for out in walk.steps for step in out), default=0)
        )
        if self._from_right or any(step.advance < 0 for out in walk.steps for step in out):
            self._past = 1 << 30
        self._table: list[dict[int, int]] = [{} for _ in walk.steps]
        for state in range(len(walk.steps) - 1, -1, -1):
            self._fill(state)

    def _keys(self, state: int) -> Iterator[int]:
        walk = self._footprint.walk
        if self._from_right:
            return members(walk.after[state], walk.origin)
        if self._width is None:
            return members(walk.before[state], walk.origin)
        # Only what can still be completed to the width; the set of what comes after, counted from its end.
        return (
            before
            for before in members(walk.before[state], walk.origin)
            if (place := self._width - before + walk.origin) >= 0 and walk.after[state] >> place & 1
        )

    def _at_end(self, state: int, key: int) -> int:
        """Return the pixels left alone by a text that ends at a state, as far as this is known there."""
        if not self._footprint.walk.ends[state] or (self._from_right and key):
            return 0
        if self._width is not None and key != self._width:
            return 0
        if self._cell and not self._from_right:
            return self._everything & ~self._footprint.cell(key).framed(*self._frame).bits
        return self._everything

    def _fill(self, state: int) -> None:
        walk, table = self._footprint.walk, self._table[state]
        for key in self._keys(state):
            if not self._cell and self._width is None and key + self._first >= self._past:
                table[key] = self._everything
                continue
            bits = self._at_end(state, key)
            for step in walk.steps[state]:
                rest = self._onward(step, key)
                if rest & ~bits:
                    bits |= rest & ~self._inked(step, key)
            table[key] = bits

    def _onward(self, step: Step, key: int) -> int:
        return self._table[step.to].get(key - step.advance if self._from_right else key + step.advance, 0)

    def _inked(self, step: Step, key: int) -> int:
        pen = -key + step.kern if self._from_right else self._first + key + step.kern
        place = id(step.glyph), pen
        if place not in self._stamps:
            glyph, frame = step.glyph, self._frame
            self._stamps[place] = _stamp(
                glyph.rows, pen + glyph.left - frame[0], -glyph.top - frame[1], frame
            )
        return self._stamps[place]

    def _begins(self) -> Iterator[tuple[int, int]]:
        """Yield each key that a text can begin with, and the pixels left alone from there."""
        for key, bits in self._table[0].items():
            if self._from_right:
                if self._cell:
                    yield key, bits & ~self._footprint.cell(key).framed(*self._frame).bits
                else:
                    yield key, bits
            elif key == 0:
                yield key, bits

    def avoided(self) -> int:
        """Return the pixels of the frame, as a mask's bits, that some text leaves as they are."""
        result = 0
        for _, bits in self._begins():
            result |= bits
        return result

    def text(self) -> str:
        """Return a text that leaves the frame's one pixel as it is; only where `avoided` is not 0."""
        walk, state, text = self._footprint.walk, 0, ""
        key = next(key for key, bits in self._begins() if bits)
        while not self._at_end(state, key):
            if not self._cell and self._width is None and key + self._first >= self._past:
                origin = walk.origin
                return text + walk.suffix(state, next(members(walk.after[state], origin)))
            step = next(
                step for step in walk.steps[state] if self._onward(step, key) and not self._inked(step, key)
            )
            text, state = text + step.char, step.to
            key += -step.advance if self._from_right else step.advance
        return text
