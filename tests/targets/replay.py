"""What a board sent, played back into frames; each breach of the port's rules is an error."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from panelproof.layout.panel import Panel


@dataclass(slots=True)
class Replay:
    """Frames at the marks, texts (None: nothing written), and stack depths in bytes, in the order sent."""

    frames: list[NDArray[np.uint16]] = field(default_factory=list)
    texts: list[str | None] = field(default_factory=list)
    depths: list[int] = field(default_factory=list)


def replay(lines: Iterable[str], panel: Panel, code: int = 0) -> Replay:
    """Play lines back on a panel that starts filled with a code."""
    found = Replay()
    frame = np.full((panel.height, panel.width), code, np.uint16)
    area: tuple[int, ...] = (0, 0, 0, 0)
    pixels = np.empty(0, np.uint16)
    at = 0

    def full() -> None:
        assert at == len(pixels), f"{len(pixels) - at} pixels of the window {area} are missing"

    for line in lines:
        first = line[0]
        if first == "w":
            full()
            x, y, width, height = area = tuple(int(word, 16) for word in line[1:].split(","))
            assert width and height, f"the window {area} is empty"
            assert x + width <= panel.width and y + height <= panel.height, f"{area} is outside the panel"
            pixels, at = np.empty(width * height, np.uint16), 0
        elif first == "m":
            full()
            found.frames.append(frame.copy())
        elif first == "t":
            raw = line[1:]
            # Each byte is sent as three digits, 1 before its two.
            each = [raw[n + 1 : n + 3] for n in range(0, len(raw), 3)]
            found.texts.append(None if raw == "-" else bytes.fromhex("".join(each)).decode())
        elif first == "s":
            found.depths.append(int(line[1:], 16))
        else:
            colour, _, count = line.partition(":")
            to = at + int(count, 16)
            assert at < to <= len(pixels), f"the run {line} does not fit the window {area}"
            pixels[at:to] = int(colour, 16)
            at = to
            if at == len(pixels):
                x, y, width, height = area
                frame[y : y + height, x : x + width] = pixels.reshape(height, width)
    full()
    return found
