"""Layouts for the tests of headers: a rain tank's with everything in it, and one for a mono panel."""

from __future__ import annotations

import random
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path

from msgspec.structs import replace

from panelproof.content.graph import Graph
from panelproof.content.spec import Choice, Content, FreeText, RealRange, WholeRange
from panelproof.glyphs.glyph import Glyph
from panelproof.layout.document import Ink, Layout, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box, Field, Icon, IconState, Label, Meter, MeterLimit, Picture, Rule
from panelproof.material import Material, field_graph, gather
from panelproof.picture.values import Values

# From the packages font-hanken-grotesk and font-source-sans-pro; both have kerning.
GROTESK, SANS = "HankenGrotesk", "SourceSansPro"

# Ours: digits whose `1` begins left of its pen and whose `7` reaches over the next glyph.
TIGHT_BDF = """STARTFONT 2.1
FONT tight
SIZE 7 72 72
FONTBOUNDINGBOX 6 7 -2 -1
STARTPROPERTIES 2
FONT_ASCENT 6
FONT_DESCENT 1
ENDPROPERTIES
CHARS 4
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
STARTCHAR one
ENCODING 49
SWIDTH 500 0
DWIDTH 2 0
BBX 4 6 -2 -1
BITMAP
10
30
50
10
10
F0
ENDCHAR
STARTCHAR seven
ENCODING 55
SWIDTH 500 0
DWIDTH 3 0
BBX 6 6 0 0
BITMAP
FC
04
08
10
20
20
ENDCHAR
STARTCHAR minus
ENCODING 45
SWIDTH 500 0
DWIDTH 4 0
BBX 3 1 0 2
BITMAP
E0
ENDCHAR
ENDFONT
"""

INKS = (
    Ink("night", "#000000"),
    Ink("slate", "#223344"),
    Ink("water", "#30a0ff"),
    Ink("chalk", "#f0f0e0"),
    Ink("rust", "#c04010"),
)


@lru_cache(maxsize=1)
def _cached(folder: Path) -> Material:
    return gather(_rich(), folder)


def rich(folder: Path) -> Material:
    """Return a layout with every kind of part, clearing and alignment, outline and bitmap types, kerning."""
    (folder / "tight.bdf").write_text(TIGHT_BDF)
    return _cached(folder)


def _rich() -> Layout:
    level = Field(
        "level",
        Content("%.1f\N{DEGREE SIGN} %%", (RealRange(-0.5, 99.96),), fault="AV\N{EM DASH}", first="..."),
        "large",
        "water",
        150,
        60,
        "right",
        padding=(60, 36, 98, 30),
    )
    inside = (
        Box("frame", -3, -2, 170, 92, "slate", "water", 2),
        Box("button", 4, 60, 7, 5, None, "rust", 3),
        Label("title", "AVATAR Tj", "small", "chalk", 80, 16, "centre"),
        Label("edge", "Kante", "large", "rust", 150, 8, ground="slate"),
        Box("narrow", 140, 2, 3, 12, "night", "rust", 5),
        Rule("line", 2, 22, 200, "chalk", thickness=2),
        Rule("post", 30, -5, 40, "rust", "down", 3),
        level,
        Field(
            "inflow",
            Content("%+d l", (WholeRange(-50, 1000, 50),), also=("none", "")),
            "small",
            "chalk",
            10,
            40,
            ground="slate",
            clearing="cell",
            padding=(6, 24, 50, 22),
        ),
        Field(
            "network",
            Content("%-8.8s|", (FreeText(8, 0, "", (("A", "Z"),)),)),
            "small",
            "chalk",
            31,
            80,
            "centre",
            clearing="box",
            padding=(2, 66, 70, 18),
        ),
        Field(
            "season",
            Content("%s", (Choice(("dry season", "Tau", "WAVY")),)),
            "plain",
            "water",
            120,
            80,
            "centre",
            clearing="none",
        ),
        Field(
            "count",
            Content("%d", (WholeRange(-1177, 1177),)),
            "tight",
            "rust",
            158,
            88,
            "right",
            clearing="cell",
        ),
    )
    icons = (
        Icon(
            "valve",
            20,
            4,
            "chalk",
            (
                IconState("shut", ("#...#", ".#.#.", "..#..", ".#.#.", "#...#")),
                IconState("open", ("..#..", ".###.", "#####"), ink="rust"),
            ),
        ),
        Icon(
            "pump",
            152,
            70,
            "water",
            (IconState("off", ("....", "....")), IconState("on", ("###############", "#.#.#.#.#.#.#.#"))),
            ground="slate",
            clearing="box",
            padding=(150, 68, 20, 8),
        ),
        Icon(
            "link",
            90,
            2,
            "rust",
            (IconState("up", ("##", "##")), IconState("down", ("#.#",))),
            clearing="cell",
        ),
        Icon("dot", 5, 50, "rust", (IconState("a", ("##", ".#")), IconState("b", ("#",))), clearing="none"),
    )
    return Layout(
        1,
        "rain-tank",
        Panel(160, 90),
        (
            TypeSpec("large", GROTESK, 24, "antialiased", True),
            TypeSpec("small", SANS, 13, "one-bit", True),
            TypeSpec("plain", SANS, 15, "one-bit", False, False),
            TypeSpec("tight", "tight.bdf"),
        ),
        INKS,
        (
            Screen("readings", "night", (*inside, *icons)),
            Screen("over", "rust", (Label("only", "7101-17", "tight", "chalk", 40, 40), icons[0]), False),
            Screen("nothing", "slate"),
            Screen("untouched", "slate", (), False),
        ),
    )


def mono(folder: Path, refresh: str = "part") -> Material:
    """Return a small layout for a mono panel, one part of which bears a word of C for a name."""
    (folder / "tight.bdf").write_text(TIGHT_BDF)
    layout = Layout(
        1,
        "gauge",
        Panel(64, 32, "mono", refresh=refresh),  # type: ignore[arg-type]
        (TypeSpec("tight", "tight.bdf"), TypeSpec("soft", SANS, 14, "antialiased")),
        (Ink("dark", "#000000"), Ink("lit", "#ffffff")),
        (
            Screen(
                "main",
                "lit",
                (
                    Field(
                        "int",
                        Content("%d", (WholeRange(-17, 77),)),
                        "tight",
                        "dark",
                        60,
                        10,
                        "right",
                        padding=(30, 2, 32, 12),
                    ),
                    Field(
                        "soft-one",
                        Content("%s", (Choice(("Wave", "aus", "")),)),
                        "soft",
                        "dark",
                        4,
                        26,
                        clearing="box",
                        padding=(2, 14, 50, 16),
                    ),
                    Icon("new", 2, 2, "dark", (IconState("off", ("..",)), IconState("on", ("##",)))),
                ),
                clears=False,
            ),
        ),
    )
    return gather(layout, folder)


def levels(folder: Path) -> Material:
    """Return a layout of level bars of every way, one over all that 32 bits hold, and pictures of every form."""
    from PIL import Image

    noise = random.Random(7).randbytes(3 * 24 * 24)
    photo = Image.frombytes("RGB", (24, 24), noise)
    few = Image.new("RGBA", (20, 16), (48, 160, 255, 255))
    for place in range(16):
        few.putpixel((place, place), (0, 0, 0, 0))
        few.putpixel((19 - place, 3), (255, 58, 32, 255))
    photo.save(folder / "photo.png")
    few.save(folder / "few.png")
    limits = MeterLimit(300, "rust"), MeterLimit(2000, "chalk", mark=False), MeterLimit(2500)
    ends = -(1 << 31) + 1, (1 << 31) - 1
    bars = (
        Meter("depth", 4, 4, 60, 7, 0, 2500, "water", limits=limits),
        Meter("wide", 4, 16, 59, 5, *ends, "chalk", "left", (MeterLimit(0, "rust"),)),
        Meter("flow", 70, 2, 6, 40, -20, 900, "chalk", "up", (MeterLimit(700, "rust"),), "slate"),
        Meter("back", 80, -4, 6, 47, 0, 7, "rust", "down"),
        Picture("photo", 4, 23, "photo.png"),
        Picture("cut", 88, 38, "few.png"),
        Picture("soft", 36, 26, "few.png", "diffused"),
    )
    screens = Screen("main", "night", bars), Screen("second", "slate", (replace(bars[5], x=9),), clears=False)
    return gather(Layout(1, "bars", Panel(96, 48), (), INKS, screens), folder)


@dataclass(slots=True)
class MadeType:
    """A type of given glyphs and kernings, with the face that drawing and export ask for."""

    glyphs: dict[str, Glyph]
    kerns: dict[tuple[str, str], int] = field(default_factory=dict)
    ascent: int = 6
    descent: int = 1
    antialiased: bool = False
    path: Path = Path("made.bdf")
    size: int = 7
    rasteriser: str = "native bitmaps"

    __hash__ = object.__hash__

    @property
    def kerning(self) -> bool:
        return bool(self.kerns)

    def glyph(self, char: str) -> Glyph | None:
        return self.glyphs.get(char)

    def kern(self, left: str, right: str) -> int:
        return self.kerns.get((left, right), 0)


def some_text(graph: Graph, chance: random.Random) -> str:
    """Return one of a graph's texts, by a walk."""
    node, text = 0, ""
    while True:
        onward = graph.edges[node]
        if graph.ends[node] and (not onward or chance.random() < 0.3):
            return text
        node, chars = chance.choice(onward)
        text += chance.choice(chars)


def some_level(meter: Meter, chance: random.Random) -> int | None:
    """Return a value in a meter's range more often than not; else one beside it, far off it, or none."""
    near = [meter.least, meter.greatest, *(limit.at for limit in meter.limits)]
    ends = -(1 << 31), (1 << 31) - 1
    value = chance.choice(
        (
            chance.randint(meter.least, meter.greatest),
            chance.randint(meter.least, meter.greatest),
            chance.choice(near) + chance.choice((-1, 0, 1)),
            chance.choice((*ends, chance.randint(*ends), None)),
        )
    )
    return None if value is None else min(max(value, ends[0]), ends[1])


def some_values(screen: Screen, chance: random.Random) -> Values:
    """Return a text for each field, a state for each icon and a value for each meter."""
    return Values(
        {p.name: some_text(field_graph(p), chance) for p in screen.parts if isinstance(p, Field)},
        {p.name: chance.choice(p.states).name for p in screen.parts if isinstance(p, Icon)},
        {p.name: some_level(p, chance) for p in screen.parts if isinstance(p, Meter)},
    )
