"""The glass: how many pixels, in which shape and colours, and how a frame reaches it."""

from __future__ import annotations

from functools import lru_cache
from math import isqrt
from typing import Annotated, Literal

from msgspec import Meta, Struct

from panelproof.layout.colour import ColourFormat, Colours, parse

Shape = Literal["rectangular", "rounded", "round"]
Refresh = Literal["part", "whole"]
Extent = Annotated[int, Meta(ge=1, le=2048)]
Millimetres = Annotated[float, Meta(gt=0, le=10000)]
COLOUR_PATTERN = "^#[0-9a-fA-F]{6}$(?!\\n)"
Colour = Annotated[str, Meta(pattern=COLOUR_PATTERN, description="The colour in sRGB, such as `#ff8800`.")]


class Bus(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True):
    """How pixels reach the panel: `lanes` bits at each of `clock_hz` clocks a second."""

    protocol: Annotated[
        Literal["spi", "i2c", "parallel"],
        Meta(
            description="`spi` and `parallel` as in the display command set, `i2c` with a byte of address before."
        ),
    ]
    clock_hz: Annotated[int, Meta(ge=1000, le=10**9, description="Clocks a second.")]
    lanes: Annotated[int, Meta(ge=1, le=24, description="Bits that go over at each clock.")] = 1


class Panel(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True):
    """A panel of `width` × `height` pixels, counted after rotation.

    `shape` is what of the rectangle can be seen; `corner_radius` goes with `rounded`. `refresh` is `part`
    where single parts are written to the glass, `whole` where a frame composed in memory is sent at once.
    """

    width: Annotated[Extent, Meta(description="Pixels across, after rotation.")]
    height: Annotated[Extent, Meta(description="Pixels down, after rotation.")]
    colour_format: Annotated[
        ColourFormat,
        Meta(
            description="What a pixel can show: `mono` two states, `grey4` and `grey16` so many levels, `rgb565` 16-bit"
            " colour, `indexed` the colours of its palette (e-paper of two or three colours, say)."
        ),
    ] = "rgb565"
    shape: Annotated[
        Shape,
        Meta(description="What of the rectangle can be seen; `round` needs width and height alike."),
    ] = "rectangular"
    corner_radius: Annotated[
        int, Meta(ge=0, le=1024, description="Radius of the corners in pixels, for the shape `rounded`.")
    ] = 0
    refresh: Annotated[
        Refresh,
        Meta(
            description="`part`: single parts are written to the glass; `whole`: a frame composed in memory."
        ),
    ] = "part"
    width_mm: Annotated[
        Millimetres | None, Meta(description="Width of the visible glass in millimetres.")
    ] = None
    height_mm: Annotated[
        Millimetres | None, Meta(description="Height of the visible glass in millimetres.")
    ] = None
    name: Annotated[str, Meta(max_length=100, description="What the maker calls this panel.")] = ""
    palette: Annotated[
        tuple[Colour, ...],
        Meta(max_length=256, description="For `indexed`: what each code from 0 shows, at least two colours."),
    ] = ()
    bus: Annotated[Bus | None, Meta(description="How pixels reach the panel, for times on the bus.")] = None
    offset: Annotated[
        tuple[Annotated[int, Meta(ge=0, le=4096)], Annotated[int, Meta(ge=0, le=4096)]],
        Meta(description="Column and row of the controller's memory that the top left pixel lies in."),
    ] = (0, 0)

    @property
    def colours(self) -> Colours:
        """What a pixel can show."""
        return _colours(self.colour_format, self.palette)


@lru_cache(maxsize=64)
def _colours(colour_format: ColourFormat, palette: tuple[str, ...]) -> Colours:
    return Colours(colour_format, tuple(parse(colour) for colour in palette))


@lru_cache(maxsize=16)
def visible_spans(panel: Panel) -> tuple[tuple[int, int], ...]:
    """Return, for each row of the panel, the half-open span (first, end) of columns that can be seen.

    A pixel can be seen where its centre lies inside the shape. All arithmetic is exact: lengths are doubled.
    """
    width, height = panel.width, panel.height
    if panel.shape == "rectangular":
        return ((0, width),) * height
    radius = min(width, height) if panel.shape == "round" else min(2 * panel.corner_radius, width, height)
    spans = []
    for y in range(height):
        # In half pixels: the row's centre line, and how far it lies beyond the corner's centre.
        centre = 2 * y + 1
        beyond = max(radius - centre, centre - (2 * height - radius), 0)
        first = (radius - isqrt(radius * radius - beyond * beyond)) // 2
        spans.append((first, width - first))
    return tuple(spans)
