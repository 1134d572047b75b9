"""A model of a display's memory behind the MIPI Display Command Set's address windows.

The commands 2Ah, 2Bh, 2Ch, 3Ch and 36h as the standard describes them: parameters high byte first, both ends of a window
inside it, pixels row by row inside the window, starting anew at its begin with 2Ch. Which bit of 36h mirrors what
once rows and columns are exchanged is from memory of the controllers' datasheets: the bits belong to the memory's
own rows and columns, whichever of the two the window's columns run along.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

COLUMNS, ROWS, WRITE, GO_ON, MODE = 0x2A, 0x2B, 0x2C, 0x3C, 0x36
ROWS_BACKWARDS, COLUMNS_BACKWARDS, EXCHANGED, BLUE_FIRST = 0x80, 0x40, 0x20, 0x08
UNTOUCHED = -1


class PanelMemory:
    """A memory of `columns` by `rows` pixels of 16 bits; `low_first` swaps the bytes of a pixel.

    `pixels` [rows, columns] holds what was written, or UNTOUCHED.
    """

    def __init__(self, columns: int, rows: int, low_first: bool = False) -> None:
        self.pixels: NDArray[np.int32] = np.full((rows, columns), UNTOUCHED, np.int32)
        self.low_first = low_first
        self.mode = 0
        self._spans = {COLUMNS: (0, columns - 1), ROWS: (0, rows - 1)}
        self._command = 0
        self._bytes: list[int] = []
        self._places: Iterator[tuple[int, int]] = iter(())

    def take(self, command: bool, byte: int) -> None:
        """Take one byte off the bus. Raises ValueError where no display could make sense of it."""
        if command:
            if self._bytes:
                raise ValueError(f"{self._command:#x} was cut off after {len(self._bytes)} bytes")
            self._command = byte
            if byte == WRITE:
                self._places = self._window()
            elif byte not in (COLUMNS, ROWS, GO_ON, MODE):
                raise ValueError(f"the command {byte:#x} is not known")
            return
        self._bytes.append(byte)
        if self._command in (COLUMNS, ROWS):
            if len(self._bytes) == 4:
                self._set_span()
        elif self._command in (WRITE, GO_ON):
            if len(self._bytes) == 2:
                self._put()
        elif self._command == MODE:
            self.mode = self._bytes.pop()
        else:
            raise ValueError("data came before any command")

    def glass(self, x: int, y: int, width: int, height: int, quarters: int) -> NDArray[np.int32]:
        """Return what a person sees of that part of the memory who turned the display back by quarters."""
        return np.rot90(self.pixels[y : y + height, x : x + width], quarters)

    def _limits(self) -> dict[int, int]:
        rows, columns = self.pixels.shape
        across, down = (rows, columns) if self.mode & EXCHANGED else (columns, rows)
        return {COLUMNS: across, ROWS: down}

    def _set_span(self) -> None:
        high, low, last_high, last_low = self._bytes
        first, last = high << 8 | low, last_high << 8 | last_low
        self._bytes.clear()
        if not first <= last < self._limits()[self._command]:
            raise ValueError(f"{self._command:#x} from {first} to {last} is no span of the memory")
        self._spans[self._command] = first, last

    def _window(self) -> Iterator[tuple[int, int]]:
        """Yield (row, column) of the memory in the order of writing, round and round."""
        (left, right), (top, bottom) = self._spans[COLUMNS], self._spans[ROWS]
        rows, columns = self.pixels.shape
        while True:
            for y in range(top, bottom + 1):
                for x in range(left, right + 1):
                    row, column = (x, y) if self.mode & EXCHANGED else (y, x)
                    if self.mode & ROWS_BACKWARDS:
                        row = rows - 1 - row
                    if self.mode & COLUMNS_BACKWARDS:
                        column = columns - 1 - column
                    yield row, column

    def _put(self) -> None:
        first, second = self._bytes
        self._bytes.clear()
        code = second << 8 | first if self.low_first else first << 8 | second
        if self.mode & BLUE_FIRST:
            code = code >> 11 | code & 0x07E0 | (code & 31) << 11
        self.pixels[next(self._places)] = code
