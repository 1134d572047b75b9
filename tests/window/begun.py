"""A small layout that the tests begin from: one screen with a label and a field, where the panel has room."""

from __future__ import annotations

from math import ceil, sqrt

from panelproof.content.spec import Content, RealRange
from panelproof.layout.colour import luma, parse
from panelproof.layout.document import FORMAT, Ink, Layout, Moment, Rendering, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Align, Field, Label, Part, Rectangle

TYPE = "text"
LEAST_SIZE, GREATEST_SIZE = 9, 48


def starter(name: str, panel: Panel) -> Layout:
    """Return a layout that checks clean.

    On a panel too small for two rows of text the screen is empty.
    """
    return _layout(name, panel, _parts(panel))


def _layout(name: str, panel: Panel, parts: tuple[Part, ...]) -> Layout:
    dark, light = "#000000", "#ffffff"
    if panel.palette:
        by_tone = sorted(panel.palette, key=lambda colour: luma(parse(colour)))
        dark, light = by_tone[0], by_tone[-1]
    inks = [Ink("black", dark), Ink("white", light)]
    if panel.colour_format == "rgb565":
        inks.append(Ink("amber", "#ffb000"))
    types: tuple[TypeSpec, ...] = ()
    moments: tuple[Moment, ...] = ()
    if parts:
        rendering: Rendering = "antialiased" if panel.colours.blends else "one-bit"
        types = (TypeSpec(TYPE, "SourceSansPro", _size(*_inside(panel)[2:]), rendering),)
        moments = (
            Moment("half-full", "main", {"level": (52.5,)}),
            Moment("full", "main", {"level": (100.0,)}),
            Moment("sensor-lost", "main", {"level": "--.- %"}),
        )
    screens = (Screen("main", "black", parts),)
    return Layout(FORMAT, name, panel, types, tuple(inks), screens, moments)


def _inside(panel: Panel) -> Rectangle:
    """Return a rectangle of which every pixel can be seen, a small margin off."""
    margin = max(1, min(panel.width, panel.height) // 16)
    if panel.shape == "round":
        # The square in the circle leaves (1 - 1/√2)/2 of the diameter on each side.
        margin = ceil(panel.width * (1 - 1 / sqrt(2)) / 2) + 1
    elif panel.shape == "rounded":
        margin = max(margin, ceil(panel.corner_radius * (1 - 1 / sqrt(2))) + 1)
    return margin, margin, panel.width - 2 * margin, panel.height - 2 * margin


def _size(width: int, height: int) -> int:
    # A row is higher than an em by the font's own line gap; the label is a little more than four ems long.
    return min(GREATEST_SIZE, height * 10 // 27, width // 5)


def _parts(panel: Panel) -> tuple[Part, ...]:
    left, top, width, height = _inside(panel)
    size = _size(width, height)
    if size < LEAST_SIZE:
        return ()
    row = height // 2
    baseline = row // 2 + size * 23 // 100
    align: Align = "centre" if panel.shape == "round" else "left"
    x = panel.width // 2 if align == "centre" else left
    level = Content("%.1f %%", (RealRange(0.0, 100.0),), fault="--.- %")
    return (
        Label("title", "Rain tank", TYPE, "white", x, top + baseline, align),
        Field(
            "level",
            level,
            TYPE,
            "amber" if panel.colour_format == "rgb565" else "white",
            x,
            top + row + baseline,
            align,
            padding=(left, top + row, width, height - row),
        ),
    )
