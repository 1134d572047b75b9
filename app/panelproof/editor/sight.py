"""From the panel's pixels to the monitor's, and back: whole device pixels only."""

from __future__ import annotations

from dataclasses import dataclass

from panelproof.ink.mask import Area

LEAST_ZOOM, GREATEST_ZOOM = 1, 16


@dataclass(frozen=True, slots=True)
class Sight:
    """The panel's corner lies at device pixel (`x`, `y`), each of its pixels is `size` device pixels wide.

    `ratio` is device pixels per logical pixel of the window.
    """

    size: int
    x: int
    y: int
    ratio: float = 1.0

    def pixel(self, x: float, y: float) -> tuple[int, int]:
        """Return the panel pixel under a logical place of the window."""
        return (
            int((x * self.ratio - self.x) // self.size),
            int((y * self.ratio - self.y) // self.size),
        )

    def exact(self, x: float, y: float) -> tuple[float, float]:
        """Return a logical place in panel pixels, parts of them included."""
        return (x * self.ratio - self.x) / self.size, (y * self.ratio - self.y) / self.size

    def area(self, area: Area) -> Area:
        """Return the device rectangle of an area of the panel."""
        return (
            self.x + area[0] * self.size,
            self.y + area[1] * self.size,
            area[2] * self.size,
            area[3] * self.size,
        )

    def across(self, x: float) -> int:
        """Return the device column of a line between panel pixels."""
        return self.x + round(x * self.size)

    def down(self, y: float) -> int:
        """Return the device row of a line between panel pixels."""
        return self.y + round(y * self.size)


def device_size(zoom: int, ratio: float) -> int:
    """Return how many device pixels show one panel pixel at a zoom: whole, so that each is as large."""
    return max(round(zoom * ratio), 1)


def fitting_zoom(width: int, height: int, room: tuple[float, float], ratio: float) -> int:
    """Return the greatest zoom at which a panel fits into `room` (logical width and height)."""
    for zoom in range(GREATEST_ZOOM, LEAST_ZOOM, -1):
        size = device_size(zoom, ratio) / ratio
        if width * size <= room[0] and height * size <= room[1]:
            return zoom
    return LEAST_ZOOM
