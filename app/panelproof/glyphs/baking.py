"""A type's glyphs as a BDF file: drawn once, and the same on every machine from then on.

One-bit types become plain BDF 2.1 (X Consortium standard). Antialiased ones need more than the standard has, and the
file says so in its first line, `STARTFONT 3.0`, at which readers of version 2.1 stop: `SIZE` has a fourth number, 4 bits a
pixel, and the rows under `BITMAP` hold one hexadecimal digit a pixel, the level of ink from 0 to F (FreeType reads
them so). The property `LEVELS_PER_PIXEL` is 16 then. Kerning stands in comments such as `COMMENT KERN 65 86 -1`: between
the characters of these codes the pen moves so many pixels further; the property `KERNED_PAIRS` counts them.
`BAKED_FROM`, `BAKED_BY` and `BAKED_AS` keep where the glyphs came from. The file has a family name of its own, as many
licences reserve the font's.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from panelproof.problem import Problem

if TYPE_CHECKING:
    from panelproof.glyphs.glyph import Glyph
    from panelproof.glyphs.type import Type

MOST_KERNED = 2000  # characters whose pairs are all looked at
_PROPERTY = re.compile(
    rb'^(BAKED_FROM|BAKED_BY|BAKED_AS|KERNED_PAIRS)[ \t]+(?:"((?:[^"]|"")*)"|(\d+))', re.MULTILINE
)
_KERN = re.compile(rb"^COMMENT KERN (\d{1,7}) (\d{1,7}) (-?\d{1,4})\r?$", re.MULTILINE)
_SIZE = re.compile(rb"^SIZE[ \t]+\S+[ \t]+\S+[ \t]+\S+[ \t]+(\d+)", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Baked:
    """What a BDF file says beyond the standard: bits a pixel, kerning in pixels, and where the glyphs came from.

    `source` is the font as the layout named it, `rasteriser` what drew it, `as_` how ("46 px, antialiased"); all empty in a
    file that was not baked.
    """

    bits: int = 1
    kerning: Mapping[tuple[str, str], int] | None = None
    source: str = ""
    rasteriser: str = ""
    as_: str = ""


def read(data: bytes, shown: str) -> Baked:
    """Return what a BDF file's bytes say beyond the standard; raises Problem where its kerning is not whole."""
    head = data.partition(b"\nCHARS ")[0]
    size = _SIZE.search(head)
    said = {
        name.decode(): text.replace(b'""', b'"') or number for name, text, number in _PROPERTY.findall(head)
    }
    pairs = None
    if "KERNED_PAIRS" in said:
        pairs = {
            (chr(int(a)), chr(int(b))): int(by)
            for a, b, by in _KERN.findall(head)
            if int(a) | int(b) <= 0x10FFFF
        }
        if str(len(pairs)).encode() != said["KERNED_PAIRS"]:
            raise Problem(f"the kerning in {shown} is cut short; bake the type again")
    texts = [
        said.get(name, b"").decode("ascii", "replace") for name in ("BAKED_FROM", "BAKED_BY", "BAKED_AS")
    ]
    texts[0] = re.sub(r"\\u\{([0-9A-F]{1,5})\}", lambda match: chr(int(match[1], 16)), texts[0])
    return Baked(int(size.group(1)) if size else 1, pairs, *texts)


@dataclass(frozen=True, slots=True)
class Origin:
    """Where glyphs come from: the font as the layout names it, whether hinted, and what its maker says of its use."""

    source: str
    hinting: bool = True
    copyright: str = ""
    licence: str = ""


def bdf(type_: Type, characters: Iterable[str], family: str, origin: Origin) -> bytes:
    """Return the BDF file of a type's glyphs of these characters; those that it lacks are left out.

    `family` is the file's own name. The same arguments give the same bytes. Raises Problem where a glyph cannot be drawn,
    or there are too many pairs to kern.
    """
    glyphs = {char: glyph for char in sorted(set(characters)) if (glyph := type_.glyph(char)) is not None}
    if not glyphs:
        raise Problem("there is no glyph to bake")
    kerning = _kerning(type_, list(glyphs))
    grey = type_.antialiased
    rendering = "antialiased" if grey else "one-bit"
    extra = (", kerned" if type_.kerning else "") + ("" if origin.hinting else ", without hinting")
    width = 10 * sum(glyph.advance for glyph in glyphs.values()) // len(glyphs)
    family = "".join(char for char in family.title() if char.isascii() and char.isalnum()) or "Baked"
    properties = [
        ("FOUNDRY", '"Panelproof"'),
        ("FAMILY_NAME", f'"{family}"'),
        ("WEIGHT_NAME", '"Medium"'),
        ("SLANT", '"R"'),
        ("SETWIDTH_NAME", '"Normal"'),
        ("ADD_STYLE_NAME", '""'),
        ("PIXEL_SIZE", str(type_.size)),
        ("POINT_SIZE", str(10 * type_.size)),
        ("RESOLUTION_X", "72"),
        ("RESOLUTION_Y", "72"),
        ("SPACING", '"P"'),
        ("AVERAGE_WIDTH", str(width)),
        ("CHARSET_REGISTRY", '"ISO10646"'),
        ("CHARSET_ENCODING", '"1"'),
        ("FONT_ASCENT", str(type_.ascent)),
        ("FONT_DESCENT", str(type_.descent)),
        ("BAKED_FROM", _quoted(_ascii(origin.source))),
        ("BAKED_BY", _quoted(type_.rasteriser)),
        ("BAKED_AS", _quoted(f"{type_.size} px, {rendering}{extra}")),
    ]
    for name, text in (("COPYRIGHT", origin.copyright), ("NOTICE", origin.licence)):
        if text:
            properties.append((name, _quoted(text)))
    if grey:
        properties.append(("LEVELS_PER_PIXEL", "16"))
    if type_.kerning:
        properties.append(("KERNED_PAIRS", str(len(kerning))))
    lines = [
        f"STARTFONT {'3.0' if grey else '2.1'}",
        "COMMENT Baked by Panelproof: the glyphs of one type of a layout, the same on every machine.",
        *(["COMMENT One hexadecimal digit a pixel, the level of ink from 0 to F."] if grey else []),
        *(f"COMMENT KERN {ord(a)} {ord(b)} {by}" for (a, b), by in kerning.items()),
        f"FONT -Panelproof-{family}-Medium-R-Normal--{type_.size}-{10 * type_.size}-72-72-P-{width}-ISO10646-1",
        f"SIZE {type_.size} 72 72{' 4' if grey else ''}",
        "FONTBOUNDINGBOX {} {} {} {}".format(*_bounds(glyphs.values())),
        f"STARTPROPERTIES {len(properties)}",
        *(f"{name} {value}" for name, value in properties),
        "ENDPROPERTIES",
        f"CHARS {len(glyphs)}",
    ]
    for char, glyph in glyphs.items():
        lines += _character(char, glyph, type_.size, grey)
    return ("\n".join([*lines, "ENDFONT"]) + "\n").encode("ascii")


def _ascii(name: str) -> str:
    """Return a file's name with characters beyond ASCII written as numbers, to be read back."""
    return "".join(char if " " <= char <= "~" else f"\\u{{{ord(char):X}}}" for char in name)


def _quoted(text: str) -> str:
    plain = "".join(char if " " <= char <= "~" else "?" for char in " ".join(text.split()))
    return '"' + plain[:1000].replace('"', '""') + '"'


def _kerning(type_: Type, characters: list[str]) -> dict[tuple[str, str], int]:
    if not type_.kerning:
        return {}
    if len(characters) > MOST_KERNED:
        raise Problem(
            f"kerning between {len(characters)} characters cannot be baked; bake only those that the layout shows"
        )
    return {(a, b): by for a in characters for b in characters if (by := type_.kern(a, b))}


def _bounds(glyphs: Iterable[Glyph]) -> tuple[int, int, int, int]:
    """Return the box that holds every glyph: width, height, and its lower left corner from the pen."""
    seen = [glyph for glyph in glyphs if glyph.width]
    if not seen:
        return 0, 0, 0, 0
    left, bottom = min(one.left for one in seen), min(one.top - one.height for one in seen)
    right, top = max(one.left + one.width for one in seen), max(one.top for one in seen)
    return right - left, top - bottom, left, bottom


def _character(char: str, glyph: Glyph, size: int, grey: bool) -> list[str]:
    width, height = glyph.width, glyph.height
    if grey:
        digits = [
            "".join(f"{level:X}" for level in glyph.levels[k * width : (k + 1) * width])
            for k in range(height)
        ]
        rows = [row + "0" * (len(row) % 2) for row in digits]
    else:
        places = -(-width // 8) * 8
        rows = [f"{int(f'{row:0{width}b}'[::-1], 2) << places - width:0{places // 4}X}" for row in glyph.rows]
    code = ord(char)
    return [
        f"STARTCHAR {f'uni{code:04X}' if code <= 0xFFFF else f'u{code:05X}'}",
        f"ENCODING {code}",
        f"SWIDTH {round(1000 * glyph.advance / size)} 0",
        f"DWIDTH {glyph.advance} 0",
        f"BBX {width} {height} {glyph.left} {glyph.top - height}",
        "BITMAP",
        *rows,
        "ENDCHAR",
    ]
