"""A rain tank's small panel, for tests: two screens, fields with and without fault texts, two icons."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from panelproof.content.spec import Choice, Content, RealRange, WholeRange
from panelproof.glyphs.catalogue import find
from panelproof.layout.document import Ink, Layout, Moment, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box, Field, Icon, IconState, Label, Part, Rule
from panelproof.material import Material, gather

SANS = find("SourceSansPro", Path())

# Digits 5 pixels high; `j` begins left of its pen and reaches over the next one, so glyphs overlap.
TINY_BDF = """STARTFONT 2.1
FONT tiny
SIZE 6 72 72
FONTBOUNDINGBOX 5 7 -2 -2
STARTPROPERTIES 2
FONT_ASCENT 5
FONT_DESCENT 2
ENDPROPERTIES
CHARS 4
STARTCHAR one
ENCODING 49
SWIDTH 500 0
DWIDTH 3 0
BBX 3 5 0 0
BITMAP
40
C0
40
40
E0
ENDCHAR
STARTCHAR zero
ENCODING 48
SWIDTH 500 0
DWIDTH 4 0
BBX 3 5 0 0
BITMAP
E0
A0
A0
A0
E0
ENDCHAR
STARTCHAR j
ENCODING 106
SWIDTH 500 0
DWIDTH 2 0
BBX 5 7 -2 -2
BITMAP
08
00
18
08
08
88
70
ENDCHAR
STARTCHAR space
ENCODING 32
SWIDTH 500 0
DWIDTH 2 0
BBX 0 0 0 0
BITMAP
ENDCHAR
ENDFONT
"""

INKS = (
    Ink("night", "#000000"),
    Ink("chalk", "#f4f1e8"),
    Ink("water", "#2f9be0"),
    Ink("alarm", "#ff3a20"),
    Ink("slate", "#303840"),
)

LINK = (
    ("on", ("..###..", ".#...#.", "...#...", "..#.#..", "...#...")),
    ("off", ("#.....#", ".#...#.", "..#.#..", "...#...", "..#.#..", ".#...#.")),
    ("fault", ("...#...", "...#...", "...#...", ".......", "...#...")),
)
VALVE = (("shut", ("####", "####")), ("open", ("#..#", "#..#", "#..#")))


def icon(name: str, states: tuple[tuple[str, tuple[str, ...]], ...], x: int, y: int, **more: object) -> Icon:
    made = tuple(IconState(state, rows) for state, rows in states)
    return Icon(name=name, x=x, y=y, ink="water", states=made, **more)  # type: ignore[arg-type]


LEVEL = Content("%.1f", (RealRange(0, 250),), fault="---", first="...")
FLOW = Content("%d l/h", (WholeRange(-20, 900),), fault="no flow")
MODE = Content("%s", (Choice(("filling", "resting", "Overflow")),))


def parts() -> tuple[Part, ...]:
    return (
        Box("frame", 0, 0, 120, 64, fill="slate", outline="chalk", thickness=1),
        Label("caption", "Rain tank", "small", "chalk", 5, 15, ground="slate"),
        Rule("line", 4, 19, 112, "water"),
        Field("level", LEVEL, "large", "chalk", 74, 43, "right", "slate", "pad", (20, 24, 56, 24)),
        Label("unit", "cm", "small", "chalk", 78, 43, ground="slate"),
        Field("flow", FLOW, "small", "water", 6, 59, "left", "slate", "cell"),
        Field("mode", MODE, "small", "chalk", 114, 59, "right", "slate", "box", (68, 49, 48, 14)),
        icon("link", LINK, 98, 6, ground="slate"),
        icon("valve", VALVE, 110, 6, ground="slate", clearing="cell"),
    )


def screens() -> tuple[Screen, ...]:
    return (
        Screen("start", "night", (Label("hello", "Rain tank", "large", "water", 60, 36, "centre"),)),
        Screen("readings", "night", parts()),
    )


MOMENTS = (
    Moment(
        "half-full", "readings",
        {"level": (121.5,), "flow": (80,), "mode": "filling"},
        {"link": "on", "valve": "open"},
    ),
    Moment(
        "sensor-lost", "readings",
        {"level": "---", "flow": "no flow", "mode": ("resting",)},
        {"link": "fault", "valve": "shut"},
    ),
)  # fmt: skip

TYPES = (
    TypeSpec("small", "SourceSansPro", 13),
    TypeSpec("large", "SourceSansPro", 26, "antialiased", True),
)


def layout(panel: Panel | None = None) -> Layout:
    glass = Panel(120, 64, name="rain tank glass") if panel is None else panel
    return Layout(1, "rain-tank", glass, TYPES, INKS, screens(), MOMENTS)


def material(described: Layout) -> Material:
    return gather(described, Path())


@lru_cache(maxsize=1)
def tank() -> Material:
    return material(layout())
