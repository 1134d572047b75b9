"""embedding: the makers of the fonts allow that their glyphs are handed over.

A header carries glyphs of the characters needed only, as bitmaps. What a font says of that are the bits of OS/2
fsType (OpenType specification); what they mean for a device is for its maker to settle.
"""

from __future__ import annotations

from collections.abc import Iterator

from panelproof.glyphs.licence import embedding_bits
from panelproof.layout.parts import Field, Label
from panelproof.problem import Problem
from panelproof.proof.extent import Stage
from panelproof.proof.finding import Finding, Remedy

NAME = "embedding"


def findings(stages: tuple[Stage, ...]) -> Iterator[Finding]:
    """Yield each font that restricts embedding, at the first part that is set in it."""
    seen = set()
    for stage in stages:
        for extent in stage.extents:
            part = extent.part
            if not isinstance(part, Field | Label) or extent.footprint is None:
                continue
            path = extent.footprint.type.path
            if path in seen:
                continue
            seen.add(path)
            try:
                bits = embedding_bits(path)
            except Problem:
                # The file has gone since it was opened; reading the layout again will say so.
                continue
            if bits.restricts:
                yield Finding(
                    NAME, "caution", stage.screen.name, part.name,
                    f"the header would carry glyphs of the font `{path.name}`, which says of itself that it {bits}",
                    remedy=Remedy(
                        f"ask its maker for leave, or use another font for the type `{part.type}`"
                        " (`panelproof fonts --licence` lists what each allows)"
                    ),
                )  # fmt: skip
