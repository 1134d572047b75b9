from __future__ import annotations

import itertools
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.firmware.layouts import MadeType, rich
from tests.firmware.strategies import CONTENTS, made_types

from panelproof.content.build import graph
from panelproof.content.spec import FreeText
from panelproof.firmware.glyphdata import TypeGlyphs, pairs_of_graph, texts_by_type, type_glyphs
from panelproof.firmware.overlap import overlaps
from panelproof.glyphs.run import placed
from panelproof.layout.document import TypeSpec

FEW = [content for content in CONTENTS if not any(isinstance(one, FreeText) for one in content.arguments)]


def type_of(made: MadeType, text_pairs: set[tuple[str, str]]) -> TypeGlyphs:
    chars = sorted(made.glyphs)
    pairs = tuple(
        (chars.index(a), chars.index(b), made.kern(a, b))
        for a, b in sorted(text_pairs)
        if a in made.glyphs and b in made.glyphs and made.kern(a, b)
    )
    glyphs = tuple((char, made.glyphs[char]) for char in chars)
    return TypeGlyphs(TypeSpec("one", "made.bdf"), made, glyphs, pairs)  # type: ignore[arg-type]


def not_in_order(made: MadeType, text: str) -> bool:
    """Look at each two glyphs that share a row: does the later one's box begin before the earlier one's ends?"""
    boxes = [
        (pen + glyph.left, pen + glyph.left + glyph.width, -glyph.top, glyph.height - glyph.top)
        for glyph, pen in placed(made, text)[0]  # type: ignore[arg-type]
        if glyph.width and glyph.height
    ]
    return any(
        later[0] < earlier[1] and later[2] < earlier[3] and earlier[2] < later[3]
        for earlier, later in itertools.combinations(boxes, 2)
    )


@settings(max_examples=150, deadline=None)
@given(made_types(), st.sampled_from(FEW))
def test_overlaps_are_those_of_some_text(made: MadeType, content: object) -> None:
    built = graph(content)  # type: ignore[arg-type]
    one = type_of(made, pairs_of_graph(built))
    some = [text for text in built.texts() if not_in_order(made, text)]
    found = overlaps(one, [built], [])
    assert found == bool(some)
    assert overlaps(one, [], list(built.texts())) == bool(some)


def test_real_types(tmp_path: Path) -> None:
    material = rich(tmp_path)
    used = texts_by_type(material)
    found = {one.spec.name: overlaps(one, *used[one.spec.name]) for one in type_glyphs(material)}
    assert found["tight"]  # its `7` reaches over the next glyph
    assert not found["plain"]
