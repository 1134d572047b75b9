"""Writes the Glyph Bitmap Distribution Format, version 2.1 (X Consortium standard)."""

from __future__ import annotations

from dataclasses import dataclass

from fonts_free.drawing.glyph import Glyph

COPYRIGHT = "Drawn for Panelproof; CC0-1.0, no rights reserved"


@dataclass(frozen=True)
class Head:
    """What a font file says of the whole face."""

    family: str
    weight: str
    size: int
    ascent: int
    descent: int
    cap_height: int
    x_height: int
    figure_width: int
    default_char: int


def _hex(row: str) -> str:
    octets = (len(row) + 7) // 8
    bits = row.ljust(octets * 8, ".").replace("#", "1").replace(".", "0")
    return f"{int(bits, 2):0{octets * 2}X}"


def _name(char: str) -> str:
    """A glyph name of the form the Adobe Glyph List allows for any character."""
    return f"uni{ord(char):04X}" if ord(char) > 0x7E or not char.isalnum() else char


def _glyph(char: str, glyph: Glyph, size: int) -> list[str]:
    scalable = round(glyph.advance * 1000 / size)
    return [
        f"STARTCHAR {_name(char)}",
        f"ENCODING {ord(char)}",
        f"SWIDTH {scalable} 0",
        f"DWIDTH {glyph.advance} 0",
        f"BBX {glyph.width} {len(glyph.rows)} {glyph.left} {glyph.bottom}",
        "BITMAP",
        *(_hex(row) for row in glyph.rows),
        "ENDCHAR",
    ]


def bounding_box(glyphs: list[Glyph]) -> tuple[int, int, int, int]:
    """Width, height, left and bottom of the least box around all ink, every glyph at the same pen place."""
    inked = [glyph for glyph in glyphs if glyph.rows]
    left = min(glyph.left for glyph in inked)
    bottom = min(glyph.bottom for glyph in inked)
    right = max(glyph.left + glyph.width for glyph in inked)
    top = max(glyph.top for glyph in inked)
    return right - left, top - bottom, left, bottom


def write_bdf(head: Head, glyphs: dict[str, Glyph]) -> str:
    """The text of the font file."""
    trimmed = {char: glyphs[char].trimmed() for char in sorted(glyphs)}
    width, height, left, bottom = bounding_box(list(trimmed.values()))
    average = round(10 * sum(g.advance for g in trimmed.values()) / len(trimmed))
    weight = head.weight.capitalize()
    xlfd = (
        f"-Panelproof-{head.family}-{weight}-R-Normal--{head.size}-{head.size * 10}-72-72-P-{average}"
        "-ISO10646-1"
    )
    properties: dict[str, str | int] = {
        "FOUNDRY": "Panelproof",
        "FAMILY_NAME": head.family,
        "WEIGHT_NAME": weight,
        "SLANT": "R",
        "SETWIDTH_NAME": "Normal",
        "ADD_STYLE_NAME": "",
        "PIXEL_SIZE": head.size,
        "POINT_SIZE": head.size * 10,
        "RESOLUTION_X": 72,
        "RESOLUTION_Y": 72,
        "SPACING": "P",
        "AVERAGE_WIDTH": average,
        "CHARSET_REGISTRY": "ISO10646",
        "CHARSET_ENCODING": "1",
        "FONT_ASCENT": head.ascent,
        "FONT_DESCENT": head.descent,
        "CAP_HEIGHT": head.cap_height,
        "X_HEIGHT": head.x_height,
        "FIGURE_WIDTH": head.figure_width,
        "DEFAULT_CHAR": head.default_char,
        "FACE_NAME": f"{head.family} {weight} {head.size}",
        "COPYRIGHT": COPYRIGHT,
        "NOTICE": "https://creativecommons.org/publicdomain/zero/1.0/",
    }
    text = properties.items()
    lines = [
        "STARTFONT 2.1",
        f"COMMENT {COPYRIGHT}",
        "COMMENT Built by fonts_free/build.py from the grids and strokes beside it; change those, not this.",
        f"FONT {xlfd}",
        f"SIZE {head.size} 72 72",
        f"FONTBOUNDINGBOX {width} {height} {left} {bottom}",
        f"STARTPROPERTIES {len(properties)}",
        *(f'{name} "{value}"' if isinstance(value, str) else f"{name} {value}" for name, value in text),
        "ENDPROPERTIES",
        f"CHARS {len(trimmed)}",
    ]
    for char, glyph in trimmed.items():
        lines += _glyph(char, glyph, head.size)
    return "\n".join([*lines, "ENDFONT", ""])
