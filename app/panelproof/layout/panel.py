"""The glass: how many pixels, in which shape and colours, and how a frame reaches it."""

from __future__ import annotations

from functools import lru_cache
from math import isqrt
from typing import Annotated, Literal

from msgspec import Meta, Struct

from panelproof.layout.colour import ColourFormat

Shape = Literal["rectangular", "rounded", "round"]
Refresh = Literal["part", "whole"]
Extent = Annotated[int, Meta(ge=1, le=2048)]
Millimetres = Annotated[float, Meta(gt=0, le=10000)]


class Panel(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True):
    """A panel of `width` × `height` pixels, counted after rotation.

    `shape` is what of the rectangle can be seen; `corner_radius` goes with `rounded`. `refresh` is `part`
    where single parts are written to the glass, `whole` where a frame composed in memory is sent at once.
    """

    width: Annotated[Extent, Meta(description="Pixels across, after rotation.")]
    height: Annotated[Extent, Meta(description="Pixels down, after rotation.")]
    colour_format: Annotated[
        ColourFormat,
        Meta(description="What a pixel can show: `mono` two states, `rgb565` 16-bit colour."),
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
