"""Draws specimen sheets of every face and icon set: `python -m fonts_free.specimen [--scale N] [STEM ...]`.

Without arguments every face and set gets a sheet at its own size and one at six times that, in
`fonts_free/specimens/`, and `family.png` shows all of them together at twice their size.
"""

from __future__ import annotations

import argparse
from pathlib import Path

from fonts_free.build import HERE, characters
from fonts_free.drawing.faces import FACES, Face
from fonts_free.drawing.glyph import Glyph
from fonts_free.drawing.icons import SIZES, Rows, read_icons
from PIL import Image

LINES = (
    "0123456789 23.4 °C 1013 hPa",
    "-12.5 kΩ ±2 %  −0.05 mm/s",
    "+1,204.70 €  08:45  17/10",
    "Why did Max fetch a quiz box",
    "from the jolly vicar’s pool?",
    "Humid night air; battery low.",
    "System set-up: six glass sensors",
    "minimum hull savings, Tyrol 9",
    "PUMP JAMMED – CHECK FILTER",
    "Außen 4°, façade señor Ångström",
    "O0 1lI| 5S 8B rn m 2Z uv G6 cl d",
    "≤ 3.3 V ≥ 1.8 V ≈ 25 µA … ←↑→↓",
    '(a) [b] {c} <d> "e" #7 & 8*9=72 @x',
)
NUMERAL_LINES = ("0123456789", "23.4° −12.5", "+60,8 % 07:45", "1013/980 –3-4")
FAMILY = "Humid night air 23.4 °C, −0.5 bar"
MARGIN = 4


def text_width(text: str, glyphs: dict[str, Glyph]) -> int:
    """The sum of the advances."""
    return sum(glyphs[char].advance for char in text)


def put(image: Image.Image, text: str, glyphs: dict[str, Glyph], x: int, baseline: int) -> None:
    """Inks a text, the pen starting at x."""
    for char in text:
        for dx, dy in glyphs[char].ink():
            if 0 <= x + dx < image.width and 0 <= baseline - 1 - dy < image.height:
                image.putpixel((x + dx, baseline - 1 - dy), 0)
        x += glyphs[char].advance


def put_rows(image: Image.Image, rows: Rows, left: int, top: int) -> None:
    """Inks a grid, its top left at this place."""
    for y, row in enumerate(rows):
        for x, mark in enumerate(row):
            if mark == "#":
                image.putpixel((left + x, top + y), 0)


def table_lines(glyphs: dict[str, Glyph], width: int) -> list[str]:
    """All characters in lines no wider than this."""
    lines, line = [], ""
    for char in glyphs:
        if line and text_width(line + char, glyphs) > width:
            lines.append(line)
            line = ""
        line += char
    return [*lines, line]


def sheet(face: Face, scale: int = 1) -> Image.Image:
    """One face's sheet: lines of text, then every glyph."""
    glyphs = characters(face)
    text = NUMERAL_LINES if face.kind == "numerals" else LINES
    width = max(text_width(line, glyphs) for line in text)
    lines = [*text, *table_lines({c: g for c, g in glyphs.items() if g.rows}, width)]
    image = Image.new("1", (width + 2 * MARGIN, len(lines) * face.size + 2 * MARGIN), 1)
    for number, line in enumerate(lines):
        put(image, line, glyphs, MARGIN, MARGIN + number * face.size + face.ascent)
    return image.resize((image.width * scale, image.height * scale), Image.Resampling.NEAREST)


def icon_sheet(size: int, scale: int = 1) -> Image.Image:
    """One size's icons: a row an icon, its states side by side."""
    icons = read_icons(size)
    step = size + MARGIN
    columns = max(len(states) for states in icons.values())
    image = Image.new("1", (columns * step + MARGIN, len(icons) * step + MARGIN), 1)
    for number, states in enumerate(icons.values()):
        for column, rows in enumerate(states.values()):
            put_rows(image, rows, MARGIN + column * step, MARGIN + number * step)
    return image.resize((image.width * scale, image.height * scale), Image.Resampling.NEAREST)


def family_sheet(scale: int = 2) -> Image.Image:
    """A line of every face, smallest first, and under them the icons at 24."""
    shown = sorted(FACES, key=lambda face: (face.kind == "numerals", face.size, face.weight == "bold"))
    lines = [
        (face, characters(face), NUMERAL_LINES[1] if face.kind == "numerals" else FAMILY) for face in shown
    ]
    states = [rows for icon in read_icons(24).values() for rows in (icon["off"], icon["up"])]
    width = max(text_width(line, glyphs) for _, glyphs, line in lines)
    height = sum(face.size + MARGIN for face, _, _ in lines) + 24 + MARGIN
    image = Image.new("1", (max(width, len(states) * 28) + 2 * MARGIN, height + MARGIN), 1)
    top = MARGIN
    for face, glyphs, line in lines:
        put(image, line, glyphs, MARGIN, top + face.ascent)
        top += face.size + MARGIN
    for number, rows in enumerate(states):
        put_rows(image, rows, MARGIN + 28 * number, top)
    return image.resize((image.width * scale, image.height * scale), Image.Resampling.NEAREST)


def main() -> None:
    """Writes the sheets."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--scale", type=int, action="append", help="1 and 6 when not given")
    parser.add_argument("--to", type=Path, default=HERE / "specimens")
    parser.add_argument("stems", nargs="*", help="all faces when none is named")
    options = parser.parse_args()
    if not options.stems:
        family_sheet().save(options.to / "family.png", optimize=True)
    for face in FACES:
        if options.stems and face.stem not in options.stems:
            continue
        for scale in options.scale or (1, 6):
            name = f"{face.stem}.png" if scale == 1 else f"{face.stem}-{scale}x.png"
            sheet(face, scale).save(options.to / name, optimize=True)
    for size in SIZES:
        if options.stems and f"icons-{size}" not in options.stems:
            continue
        for scale in options.scale or (1, 6):
            name = f"icons-{size}.png" if scale == 1 else f"icons-{size}-{scale}x.png"
            icon_sheet(size, scale).save(options.to / name, optimize=True)


if __name__ == "__main__":
    main()
