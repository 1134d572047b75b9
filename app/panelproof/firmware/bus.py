"""What drawing costs on the way to the panel: windows opened, pixels sent, bytes and milliseconds.

A window is the column and row address and the memory write command of the MIPI Display Command Set: 2Ah with four
bytes, 2Bh with four bytes, 2Ch: 11 bytes before the first pixel. A pixel takes the bits of the colour format; those
of one window are rounded up to whole bytes. Over I2C each byte has a ninth clock for its acknowledgement, and the
command bytes and the pixels of a window are a transfer each, which begins with a byte of address and (common
practice) one that tells commands from pixels; starts and stops are not counted.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import groupby

from panelproof.firmware.rasters import areas
from panelproof.layout.panel import Bus, Panel
from panelproof.picture.drawing import Copy, Operation, Paint

WINDOW_BYTES = 11
I2C_TRANSFERS = 2
I2C_HEAD = 2
I2C_CLOCKS = 9


@dataclass(frozen=True, slots=True)
class Traffic:
    """Windows opened, pixels sent in them, and the bytes that these take."""

    windows: int = 0
    pixels: int = 0
    data: int = 0

    def __add__(self, other: Traffic) -> Traffic:
        return Traffic(self.windows + other.windows, self.pixels + other.pixels, self.data + other.data)


@dataclass(frozen=True, slots=True)
class Sent:
    """Traffic on a panel's bus: bytes in all, and milliseconds where the bus is known."""

    windows: int
    pixels: int
    bytes: int
    ms: float | None


def pixel_bits(panel: Panel) -> int:
    """Return the bits that a pixel takes on the bus: 1, 2, 4, 8 or 16."""
    if panel.colour_format == "rgb565":
        return 16
    needed = (panel.colours.count - 1).bit_length()
    return next(bits for bits in (1, 2, 4, 8) if bits >= needed)


def sent(traffic: Traffic, panel: Panel) -> Sent:
    """Return what traffic costs on a panel's bus."""
    bus = panel.bus
    commands = traffic.windows * WINDOW_BYTES
    if bus is not None and bus.protocol == "i2c":
        commands += traffic.windows * I2C_TRANSFERS * I2C_HEAD
    ms = None if bus is None else clocks(bus, commands, traffic.data) * 1000 / bus.clock_hz
    return Sent(traffic.windows, traffic.pixels, commands + traffic.data, ms)


def clocks(bus: Bus, commands: int, data: int) -> int:
    """Return the clocks that so many bytes of commands and of pixels take."""
    if bus.protocol == "i2c":
        return (commands + data) * I2C_CLOCKS
    # A command byte takes clocks of its own; pixels fill all lanes.
    return commands * -(-8 // bus.lanes) + -(-data * 8 // bus.lanes)


def weight(traffic: Traffic) -> int:
    """Return the bytes that traffic takes, for comparison."""
    return traffic.windows * WINDOW_BYTES + traffic.data


def window(pixels: int, bits: int) -> Traffic:
    """Return the traffic of one window of so many pixels; nothing where there are none."""
    return Traffic(1, pixels, -(-pixels * bits // 8)) if pixels > 0 else Traffic()


def traffic(operations: Iterable[Operation], bits: int) -> Traffic:
    """Return what the drawing code sends for these operations, at so many bits a pixel.

    A fill and opaque painting take one window; ink alone takes one for each run of a row in one colour.
    """
    total = Traffic()
    for one in operations:
        match one:
            case Paint() if not one.opaque:
                total += runs(one.levels, one.width, one.ramp, bits)
            case Copy():
                total += _copied(one, bits)
            case _:
                total += window(one.width * one.height, bits)
    return total


def runs(levels: bytes, width: int, ramp: tuple[int, ...], bits: int) -> Traffic:
    """Return what sending ink alone takes: `levels` row by row, a window for each run of a row in one colour."""
    # Levels that the panel shows alike go on in one run; 0 is left as it is.
    table = bytes(ramp.index(code) + 1 if level else 0 for level, code in enumerate(ramp)).ljust(256, b"\0")
    alike, total = levels.translate(table), Traffic()
    for begin in range(0, len(alike), width):
        for level, run in groupby(alike[begin : begin + width]):
            if level:
                total += window(len(list(run)), bits)
    return total


def _copied(one: Copy, bits: int) -> Traffic:
    """Return what a picture takes: a window for each of its opaque rectangles."""
    total = Traffic()
    for _, _, width, height in areas(one.mask):
        total += window(width * height, bits)
    return total
