from __future__ import annotations

import re
from pathlib import Path

import pytest
from tests.firmware.layouts import rich

from panelproof.firmware.header import header
from panelproof.firmware.reading import parsed
from panelproof.firmware.verify import differences
from panelproof.layout.document import Layout
from panelproof.layout.parts import Field, Label
from panelproof.material import Material, gather


@pytest.fixture
def material(tmp_path: Path) -> Material:
    return rich(tmp_path)


@pytest.fixture
def made(material: Material) -> str:
    return header(material)


def changed(material: Material, part_name: str, **values: object) -> Material:
    """The same layout with one part of its first screen changed."""
    screen, *others = material.layout.screens
    parts = tuple(
        part.__class__(**{**{key: getattr(part, key) for key in part.__struct_fields__}, **values})
        if part.name == part_name
        else part
        for part in screen.parts
    )
    first = screen.__class__(screen.name, screen.ground, parts, screen.clears)
    old = material.layout
    layout = Layout(old.format, old.name, old.panel, old.types, old.inks, (first, *others), old.moments)
    return gather(layout, material.folder)


def test_the_same_header_differs_in_nothing(made: str) -> None:
    assert differences(made, made) == []


def test_the_glyphs_are_read_back_by_character(material: Material, made: str) -> None:
    read = parsed(made)
    assert read is not None
    tight = material.types["tight"]
    seven = tight.glyph("7")
    assert seven is not None
    metrics, levels = read.glyphs["tight"]["U+0037 7"]
    assert sorted(metrics) == sorted((seven.left, seven.top, seven.width, seven.height, seven.advance))
    shown = [levels[row * seven.width : (row + 1) * seven.width] for row in range(seven.height)]
    assert [sum(level << x for x, level in enumerate(row)) for row in shown] == list(seven.rows)
    assert "U+00B0" in read.glyphs["large"]
    assert "readings valve open" in read.glyphs["the icons"]


def test_a_constant_nudged_by_hand(made: str) -> None:
    edited = re.sub(r"(READINGS_LEVEL_X +)150", r"\g<1>149", made)
    assert differences(edited, made) == [
        "the constant `RAIN_TANK_READINGS_LEVEL_X` is 149 in it and 150 in the layout"
    ]


def test_a_layout_that_was_changed(material: Material, made: str) -> None:
    now = header(changed(material, "level", x=148))
    old_digest, new_digest = (re.search(r"sha256 (\w{12})", text)[1] for text in (made, now))  # type: ignore[index]
    assert differences(made, now) == [
        f"the layout has changed since the header was made (digest {old_digest}..., now {new_digest}...)",
        "the constant `RAIN_TANK_READINGS_LEVEL_X` is 150 in it and 148 in the layout",
    ]


def test_constants_that_came_and_went(material: Material, made: str) -> None:
    level = next(part for part in material.layout.screens[0].parts if part.name == "level")
    assert isinstance(level, Field)
    content = level.content.__class__(level.content.format, level.content.arguments, None, "...", ("oh",))
    sentences = differences(made, header(changed(material, "level", content=content)))
    assert 'the constant `RAIN_TANK_READINGS_LEVEL_ALSO_1` ("oh") is missing from it' in sentences
    assert any(
        "`RAIN_TANK_READINGS_LEVEL_FAULT`" in one and "no longer in the layout" in one for one in sentences
    )


def test_characters_that_came_and_went(material: Material, made: str) -> None:
    now = header(changed(material, "edge", text="Kunst"))
    sentences = differences(made, now)
    assert "it lacks the characters `s`, `u` of the type `large`" in sentences
    assert "it holds the characters `a`, `e` of the type `large`, no longer needed" in sentences


def test_a_glyph_changed_by_hand(made: str) -> None:
    edited = re.sub(r"(tight U\+0037 7: 6 x 6 \*/\n +0x)(..)", r"\g<1>00", made)
    assert edited != made
    assert differences(edited, made) == ["the character `7` of the type `tight` looks otherwise now"]


def test_another_rasteriser_is_named_as_the_reason(material: Material, made: str) -> None:
    version = material.types["large"].rasteriser
    other = made.replace(version, "FreeType 2.99.0")
    assert differences(other, made) == [
        f"the type `{name}` looks the same, but it was drawn by FreeType 2.99.0 then, and is by {version} now"
        for name in ("large", "small", "plain")
    ]
    redrawn = re.sub(
        r"(small U\+0041 A: [^\n]*\n +0x)(..)",
        lambda found: f"{found[1]}{255 - int(found[2], 16):02X}",
        other,
    )
    assert (
        f"the character `A` of the type `small` looks otherwise now: it was drawn by FreeType 2.99.0 then,"
        f" and is by {version} now"
    ) in differences(redrawn, made)


def test_an_icon_redrawn(material: Material, made: str) -> None:
    edited = re.sub(r"(icon readings valve open: 5 x 3,.*\*/\n +0x)(..)", r"\g<1>00", made)
    assert differences(edited, made) == [
        "the states readings valve open, over valve open of the icons look otherwise now"
    ]


def test_kerning_and_colours(made: str) -> None:
    kerning = re.sub(r"(rain_tank_kerns_\[\] = \{\n.*\n +)-(\d)", r"\g<1>-1\2", made)
    assert differences(kerning, made) == ["the kerning differs"]
    colours = re.sub(r"(water on night \*/\n +\{ 0x)....", r"\g<1>1234", made)
    assert differences(colours, made) == ["the colours of antialiased texts differ"]


def test_line_ends_and_spaces(made: str) -> None:
    assert differences(made.replace("\n", "\r\n"), made) == ["only line ends or spaces differ"]
    assert differences(made + "\n", made) == ["only line ends or spaces differ"]
    assert differences(made.replace("    ", "\t"), made) == ["only line ends or spaces differ"]


def test_another_release_and_other_code(made: str) -> None:
    older = re.sub(r"Panelproof \d[\d.]*", "Panelproof 0.0.1", made)
    assert differences(older, made)[0].startswith("it was made by Panelproof 0.0.1; this is Panelproof ")
    edited = made.replace("if (x <= pass->x)", "if (pass->x >= x)")
    assert edited != made
    assert differences(edited, made) == [
        "its functions or comments were changed by hand, or by another release of Panelproof"
    ]


@pytest.mark.parametrize("other", ["", "int main(void);", "/* kiln\n   layout kiln */", "\0\ufffd"])
def test_what_is_no_header(other: str, made: str) -> None:
    assert differences(other, made) == ["it is not a whole header that Panelproof has written"]


def test_a_header_cut_short_is_told(made: str) -> None:
    for length in range(0, len(made), 997):
        assert differences(made[:length], made)


def test_the_header_of_another_layout(made: str) -> None:
    other = made.replace("   layout     rain-tank", "   layout     kiln")
    assert differences(other, made) == ["it is of the layout `kiln`, not of `rain-tank`"]


def test_labels_are_constants_too(material: Material, made: str) -> None:
    title = next(part for part in material.layout.screens[0].parts if part.name == "title")
    assert isinstance(title, Label)
    assert any(
        "READINGS_TITLE_TEXT` is" in one
        for one in differences(made, header(changed(material, "title", text="Tj")))
    )
