"""What can be wrong with a whole frame: turned, mirrored, in other colours, at another place in memory.

Each cause is undone on the captured frame and the outcome compared; nothing is guessed from its looks.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from panelproof.device.capture import Capture, coded, seen
from panelproof.layout.colour import Colours
from panelproof.layout.panel import Panel
from panelproof.picture.frame import Codes

Chosen = NDArray[np.bool_]

GREATEST_LEAN = 16
# How much of the glass, and of what can be seen on it, a moved frame must still show to be believed.
LEAST_SEEN = 0.5


@dataclass(frozen=True, slots=True)
class Undone:
    """A captured frame with one or more causes undone.

    `codes` and `known` are [height, width] of the panel; unknown pixels lay outside of what was captured. `words`
    name the causes, `cost` says how far-fetched they are together.
    """

    words: tuple[str, ...]
    cost: float
    codes: Codes
    known: Chosen

    def differing(self, expected: Codes, visible: Chosen) -> Chosen:
        """Return the visible pixels that are known to differ."""
        differing: Chosen = (self.codes != expected) & visible & self.known
        return differing


_Turn = tuple[str, float, Callable[[Codes], Codes]]
# Named by what was done to the frame; the function undoes it.
TURNS: tuple[_Turn, ...] = (
    ("", 0.0, lambda codes: codes),
    ("the picture is rotated by 180°", 1.0, lambda codes: codes[::-1, ::-1]),
    ("the picture is mirrored across (left and right swapped)", 1.0, lambda codes: codes[:, ::-1]),
    ("the picture is mirrored down (top and bottom swapped)", 1.0, lambda codes: codes[::-1]),
    ("the picture is rotated by 90° clockwise", 1.0, lambda codes: np.rot90(codes, 1)),
    (
        "the picture is rotated by 270° clockwise (90° counter-clockwise)",
        1.0,
        lambda codes: np.rot90(codes, -1),
    ),
    ("rows and columns are swapped", 1.2, lambda codes: codes.T),
    (
        "rows and columns are swapped, and the picture is rotated by 180°",
        1.5,
        lambda codes: codes[::-1, ::-1].T,
    ),
)


def _bytes_swapped(codes: Codes) -> Codes:
    return codes.byteswap()


def _red_and_blue(codes: Codes) -> Codes:
    return ((codes & 0x1F) << 11 | codes & 0x7E0 | codes >> 11).astype(np.uint16)


def _in_palette(
    colours: Colours, change: Callable[[NDArray[np.uint8]], NDArray[np.uint8]]
) -> Callable[[Codes], Codes]:
    return lambda codes: coded(change(seen(codes, colours)), colours)


def tints(colours: Colours) -> tuple[_Turn, ...]:
    """Return what can have happened to the colours of a panel, undone by each function."""
    top = colours.count - 1
    inverted: _Turn = (
        "the colours are inverted",
        1.0,
        lambda codes: (top - np.minimum(codes, top)).astype(np.uint16),
    )
    if colours.format == "rgb565":
        swapped: _Turn = (
            "the two bytes of each pixel are swapped: send the other one first",
            1.0,
            _bytes_swapped,
        )
        blue: _Turn = "red and blue are swapped", 1.0, _red_and_blue
        single = (swapped, blue, inverted)
        both = [(swapped, blue), (blue, swapped), (swapped, inverted), (blue, inverted)]
        return (("", 0.0, lambda codes: codes), *single, *(_chained(one, other) for one, other in both))
    if colours.format == "indexed":
        blue = "red and blue are swapped", 1.0, _in_palette(colours, lambda seen_: seen_[..., ::-1])
        negative: _Turn = "the colours are inverted", 1.0, _in_palette(colours, lambda seen_: 255 - seen_)
        reverse: _Turn = "the palette's codes count from the other end", 1.0, inverted[2]
        return (("", 0.0, lambda codes: codes), negative, reverse, blue)
    return (("", 0.0, lambda codes: codes), inverted)


def _chained(one: _Turn, other: _Turn) -> _Turn:
    """Return both causes, undone in this order."""
    return f"{one[0]}; {other[0]}", one[1] + other[1], lambda codes: other[2](one[2](codes))


def undone(capture: Capture, panel: Panel, expected: Codes, visible: Chosen) -> Iterator[Undone]:
    """Yield the frame as captured, then with each cause or row of causes undone, roughly the likeliest first."""
    colour_causes = tints(panel.colours)
    everywhere = np.ones((panel.height, panel.width), dtype=np.bool_)
    upright: list[Undone] = []
    for number, reading in enumerate(capture.readings):
        for turn_words, turn_cost, turn in TURNS:
            for words, cost, codes in _framed(turn(reading.codes), panel, expected):
                named = tuple(filter(None, (reading.words, turn_words, words)))
                found = Undone(
                    named, turn_cost + cost + (1.1 if number and reading.words else 0), codes, everywhere
                )
                upright.append(found)
                for tint_words, tint_cost, tint in colour_causes:
                    if tint_words:
                        tinted = (*found.words, *tint_words.split("; "))
                        yield Undone(tinted, found.cost + tint_cost, tint(codes), everywhere)
                    else:
                        yield found
    for found in upright:
        # Bytes misread and frames misplaced at once would fit anything.
        if found.cost > 1.0 and found.words[0] != "":
            continue
        for moved in _elsewhere(found, panel, expected, visible):
            for tint_words, tint_cost, tint in colour_causes:
                more = tuple(tint_words.split("; ")) if tint_words else ()
                yield replace(
                    moved, words=(*moved.words, *more), cost=moved.cost + tint_cost, codes=tint(moved.codes)
                )


def _framed(codes: Codes, panel: Panel, expected: Codes) -> Iterator[tuple[str, float, Codes]]:
    """Yield the panel's window of a frame: the frame itself, or a place in a controller's whole memory."""
    rows, columns = codes.shape
    if (columns, rows) == (panel.width, panel.height):
        yield "", 0.0, codes
        return
    if columns < panel.width or rows < panel.height:
        return
    right, down = panel.offset
    places = [(right, down)] if right + panel.width <= columns and down + panel.height <= rows else []
    padded = np.zeros((rows, columns), dtype=np.float64)
    padded[: panel.height, : panel.width] = edges(expected)
    places += [
        (dx, dy)
        for dx, dy in peaks(edges(codes), padded)
        if (dx, dy) != panel.offset and dx + panel.width <= columns and dy + panel.height <= rows
    ]
    for x, y in places:
        here = (x, y) == panel.offset
        words = (
            f"the picture begins at column {x}, row {y} of the memory; the layout's offset is {right}, {down}"
        )
        yield "" if here else words, 0.0 if here else 1.0, codes[y : y + panel.height, x : x + panel.width]


def _elsewhere(found: Undone, panel: Panel, expected: Codes, visible: Chosen) -> Iterator[Undone]:
    """Yield a frame moved back to where it belongs, for each place that is at all likely."""
    width, height = panel.width, panel.height
    there, wanted = edges(found.codes), edges(expected) * visible
    total = wanted.sum() or 1.0
    for right, down in peaks(there, wanted):
        for dx in {right, right - width}:
            for dy in {down, down - height}:
                if (dx, dy) == (0, 0) or abs(dx) > width // 2 or abs(dy) > height // 2:
                    continue
                codes = np.roll(found.codes, (-dy, -dx), axis=(0, 1))
                known = np.zeros((height, width), dtype=np.bool_)
                known[max(-dy, 0) : height - max(dy, 0), max(-dx, 0) : width - max(dx, 0)] = True
                if wanted[known].sum() >= LEAST_SEEN * total:
                    words = f"everything is moved {way(dx, dy)}: {_offset(panel, dx, dy)}"
                    yield Undone((*found.words, words), found.cost + 1.0, codes, known)
    count, line = width * height, wanted.ravel()
    for late in peaks(there.reshape(1, -1), wanted.reshape(1, -1), 2):
        for by in (late[0], late[0] - count):
            if by == 0 or abs(by) > count // 2:
                continue
            words = (
                f"every pixel comes {abs(by)} place{'s' if abs(by) > 1 else ''} too {'late' if by > 0 else 'early'} in"
                f" memory (a row has {width} places): writing or reading begins elsewhere"
            )
            places = np.arange(count) + by
            known = (places >= 0) & (places < count)
            # What stands at a row's end and came round to the next one's beginning tells this from a plain move.
            aside = (by + width // 2) % width - width // 2
            wrapped = expected[:, width - aside :] if aside > 0 else expected[:, :-aside]
            cost = 0.8 if aside and np.unique(wrapped).size > 1 else 1.3
            if line[known].sum() >= LEAST_SEEN * total:
                codes, shape = np.roll(found.codes.ravel(), -by), (height, width)
                named = (*found.words, words)
                yield Undone(named, found.cost + cost, codes.reshape(shape), known.reshape(shape))
    yield from _leaning(found, panel)


def _leaning(found: Undone, panel: Panel) -> Iterator[Undone]:
    """Yield the frame with its rows taken apart at another length than they were read at."""
    width, height = panel.width, panel.height
    flat = found.codes.ravel()
    for more in sorted(range(-GREATEST_LEAN, GREATEST_LEAN + 1), key=abs):
        if more == 0:
            continue
        places = np.arange(height)[:, None] * (width + more) + np.arange(width)[None, :]
        known = places < flat.size
        if more < 0:
            # A row written over the end of the one before it: that end is lost.
            known &= np.arange(width)[None, :] < width + more
        words = (
            f"each row is {abs(more)} pixel{'s' if abs(more) > 1 else ''} too {'long' if more > 0 else 'short'} in"
            f" memory ({width + more} in place of {width}), so the picture leans"
        )
        codes = flat[np.minimum(places, flat.size - 1)]
        yield Undone((*found.words, words), found.cost + 1.4, codes, known)


def way(dx: int, dy: int) -> str:
    """Return a movement in words: "2 px right and 1 px down"."""
    across = f"{abs(dx)} px {'right' if dx > 0 else 'left'}" if dx else ""
    down = f"{abs(dy)} px {'down' if dy > 0 else 'up'}" if dy else ""
    return " and ".join(filter(None, (across, down)))


def _offset(panel: Panel, dx: int, dy: int) -> str:
    right, down = panel.offset[0] - dx, panel.offset[1] - dy
    if (panel.offset[0] or panel.offset[1]) and right >= 0 and down >= 0:
        return (
            f"the memory offset is probably wrong; with the layout's {panel.offset[0]}, {panel.offset[1]} in use, try"
            f" {right}, {down}"
        )
    return "the offset of columns and rows in the controller's memory is probably wrong"


def edges(codes: Codes) -> NDArray[np.float64]:
    """Return 1 where a pixel differs from its left or upper neighbour: the same in whatever colours."""
    found = np.zeros(codes.shape, dtype=np.bool_)
    found[:, 1:] |= codes[:, 1:] != codes[:, :-1]
    found[1:] |= codes[1:] != codes[:-1]
    return found.astype(np.float64)


def peaks(one: NDArray[np.float64], other: NDArray[np.float64], most: int = 3) -> list[tuple[int, int]]:
    """Return by how far (columns, rows; cyclic) `one` lies off `other`, the best places first."""
    spectrum = np.fft.rfft2(one) * np.conj(np.fft.rfft2(other))
    alike = np.fft.irfft2(spectrum, s=one.shape)
    flat = alike.ravel()
    best = np.argpartition(flat, -min(most, flat.size))[-most:]
    order = best[np.argsort(flat[best])[::-1]]
    return [(int(place % one.shape[1]), int(place // one.shape[1])) for place in order]
