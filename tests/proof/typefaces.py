"""Small bitmap fonts made for tests: every character a filled block of its own advance."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

EVEN = dict.fromkeys("0123456789", 6)
UNEVEN = {**EVEN, "1": 3, "4": 7}
SIGNS = {"-": 4, "+": 5, ".": 2, " ": 3, "C": 8, "%": 9, "h": 6, "?": 5}


def bdf(path: Path, advances: Mapping[str, int], height: int = 8) -> Path:
    """Write a BDF 2.1 font: each character one pixel narrower than its advance, a space without ink."""
    lines = [
        "STARTFONT 2.1", "FONT made", f"SIZE {height} 75 75", f"FONTBOUNDINGBOX 16 {height} 0 0",
        "STARTPROPERTIES 2", f"FONT_ASCENT {height}", "FONT_DESCENT 1", "ENDPROPERTIES", f"CHARS {len(advances)}",
    ]  # fmt: skip
    for char, advance in sorted(advances.items()):
        inked = 0 if char == " " else advance - 1
        row = ((1 << inked) - 1) << (16 - inked)
        lines += [
            f"STARTCHAR u{ord(char):04X}", f"ENCODING {ord(char)}", "SWIDTH 500 0", f"DWIDTH {advance} 0",
            f"BBX {max(inked, 1)} {height} 0 0", "BITMAP",
            *[f"{row:04X}"[: 2 if inked <= 8 else 4]] * height, "ENDCHAR",
        ]  # fmt: skip
    path.write_text("\n".join([*lines, "ENDFONT", ""]), encoding="utf-8")
    return path
