"""Writes this folder's fonts anew: `python tests/glyphs/data/make.py` (needs bdftopcf for the PCF files).

`lath` is drawn here, by this project, for its tests: proportional, a `j` that starts left of the pen, an `f`
that reaches beyond its advance, a degree sign, and 0 as its default character. `lath-koi8` has some of the
same drawings under the numbers of KOI8-R. `standard` holds the two glyphs whose values the BDF 2.1 standard
prints.
"""

from __future__ import annotations

import gzip
import subprocess
from pathlib import Path

HERE = Path(__file__).parent

# name, code, advance, left, lowest row above (or below, if negative) the baseline, drawing
Drawing = tuple[str, int, int, int, int, str]

LATH: list[Drawing] = [
    ("space", 32, 3, 0, 0, ""),
    ("hyphen", 45, 5, 1, 3, "###"),
    ("period", 46, 2, 0, 0, "#"),
    ("zero", 48, 6, 0, 0, ".###. #...# #..## #.#.# ##..# #...# .###."),
    ("one", 49, 4, 0, 0, ".#. ##. .#. .#. .#. .#. ###"),
    ("two", 50, 6, 0, 0, ".###. #...# ....# ..##. .#... #.... #####"),
    ("three", 51, 6, 0, 0, "####. ....# ....# .###. ....# ....# ####."),
    ("four", 52, 6, 0, 0, "...#. ..##. .#.#. #..#. ##### ...#. ...#."),
    ("five", 53, 6, 0, 0, "##### #.... ####. ....# ....# #...# .###."),
    ("six", 54, 6, 0, 0, "..##. .#... #.... ####. #...# #...# .###."),
    ("seven", 55, 5, 0, 0, "#### ...# ..#. ..#. .#.. .#.. .#.."),
    ("eight", 56, 6, 0, 0, ".###. #...# #...# .###. #...# #...# .###."),
    ("nine", 57, 6, 0, 0, ".###. #...# #...# .#### ....# ...#. .##.."),
    ("A", 65, 6, 0, 0, ".###. #...# #...# ##### #...# #...# #...#"),
    ("C", 67, 6, 0, 0, ".###. #...# #.... #.... #.... #...# .###."),
    ("M", 77, 11, 0, 0, "#........# ##......## #.#....#.# #..#..#..# #...##...# #........# #........#"),
    # Drawn with spare rows and columns without ink, which the reader has to cut away.
    ("V", 86, 6, -1, -1, "....... .#...#. .#...#. .#...#. ..#.#.. ..#.#.. ...#... ...#... ......."),
    ("f", 102, 4, 0, 0, "...## ..#.. ####. ..#.. ..#.. .#... .#..."),
    ("j", 106, 3, -2, -2, "...# .... ..## ...# ...# ...# ...# #..# .##."),
    ("degree", 176, 4, 0, 4, ".#. #.# .#."),
]

KOI8: list[Drawing] = [
    ("zero", 48, 6, 0, 0, ".###. #...# #..## #.#.# ##..# #...# .###."),
    ("Cyrillic es", 0xD3, 5, 0, 0, ".### #... #... #... .###"),
    ("Cyrillic Te", 0xF4, 6, 0, 0, "##### ..#.. ..#.. ..#.. ..#.. ..#.. ..#.."),
]

STANDARD = """\
STARTCHAR j
ENCODING 106
SWIDTH 355 0
DWIDTH 8 0
BBX 9 22 -2 -6
BITMAP
0380 0380 0380 0380 0000 0700 0700 0700 0700 0E00 0E00 0E00 0E00 0E00
1C00 1C00 1C00 1C00 3C00 7800 F000 E000
ENDCHAR
STARTCHAR quoteright
ENCODING 39
SWIDTH 223 0
DWIDTH 5 0
BBX 4 6 2 12
BITMAP
70 70 70 60 E0 C0
ENDCHAR
"""


def character(drawing: Drawing) -> str:
    name, code, advance, left, bottom, picture = drawing
    rows = picture.split()
    width = len(rows[0]) if rows else 0
    digits = (width + 7) // 8 * 2
    bits = [
        f"{int(row.replace('#', '1').replace('.', '0').ljust(digits * 4, '0'), 2):0{digits}X}" for row in rows
    ]
    head = [f"STARTCHAR {name}", f"ENCODING {code}", f"SWIDTH {advance * 100} 0", f"DWIDTH {advance} 0"]
    return "\n".join([*head, f"BBX {width} {len(rows)} {left} {bottom}", "BITMAP", *bits, "ENDCHAR", ""])


def font(name: str, charset: tuple[str, str] | None, drawings: list[Drawing]) -> str:
    registry, encoding = charset or ("", "")
    properties = [
        "FONT_ASCENT 8",
        "FONT_DESCENT 2",
        "PIXEL_SIZE 10",
        "DEFAULT_CHAR 48",
        f'FAMILY_NAME "{name}"',
        'COPYRIGHT "Drawn for these tests"',
        'NOTICE "Free for any use"',
    ]
    if charset:
        properties += [f'CHARSET_REGISTRY "{registry}"', f'CHARSET_ENCODING "{encoding}"']
    lines = [
        "STARTFONT 2.1",
        f"FONT -panelproof-{name}-medium-r-normal--10-100-72-72-p-50-{registry or 'none'}-{encoding or '0'}",
        "SIZE 10 72 72",
        "FONTBOUNDINGBOX 12 11 -2 -2",
        f"STARTPROPERTIES {len(properties)}",
        *properties,
        "ENDPROPERTIES",
        f"CHARS {len(drawings)}",
        "",
    ]
    return "\n".join(lines) + "".join(map(character, drawings)) + "ENDFONT\n"


def standard() -> str:
    """The published glyphs, one row a line as BDF has it; the head names no charset."""
    head = ["STARTFONT 2.1", "FONT standard", "SIZE 24 75 75", "FONTBOUNDINGBOX 9 24 -2 -6", "CHARS 2"]
    body: list[str] = []
    for line in STANDARD.splitlines():
        # Rows of bits stand several to a line above.
        body += line.split() if set(line) <= set("0123456789ABCDEF ") else [line]
    return "\n".join([*head, *body, "ENDFONT", ""])


def main() -> None:
    (HERE / "lath.bdf").write_text(font("Lath", ("ISO10646", "1"), LATH))
    (HERE / "lath-koi8.bdf").write_text(font("Lath", ("KOI8", "R"), KOI8))
    (HERE / "lath-codes.bdf").write_text(font("Lath", None, LATH))
    (HERE / "standard.bdf").write_text(standard())
    subprocess.run(["bdftopcf", "-o", str(HERE / "lath.pcf"), str(HERE / "lath.bdf")], check=True)
    # Without a time in its head the packed file is the same on every run.
    (HERE / "lath.pcf.gz").write_bytes(gzip.compress((HERE / "lath.pcf").read_bytes(), mtime=0))


if __name__ == "__main__":
    main()
