"""The characters each kind of face has."""

from __future__ import annotations

ASCII = "".join(map(chr, range(0x20, 0x7F)))
LATIN_1 = "".join(map(chr, range(0xA0, 0x100)))
SIGNS = "Ωμ\u2126−–—…←↑→↓≤≥≈≠€‘’“”•\u2007\u0131"
MISSING = "\ufffd"

TEXT = ASCII + LATIN_1 + SIGNS + MISSING
FIGURES = "0123456789"
NUMERALS = FIGURES + " -−–—+.,:%/°\u2007" + MISSING
STEADY = FIGURES + "+-−\u2007"
"""Characters that share one advance in every face, so that a changing number does not jump.

The hyphen is one of them: it is what a C format writes as minus.
"""
