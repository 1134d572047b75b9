"""Baked types: the same glyphs as before, in files that other readers take or turn down, but never misread."""

from __future__ import annotations

import shutil
import subprocess
import warnings
from io import BytesIO
from pathlib import Path

import bdfparser
import freetype
import pytest
from PIL import BdfFontFile
from tests.glyphs.sources import ASCII, DATA, GROTESK, SANS, drawn, inked, levels, opened

from panelproof.glyphs.baking import Origin, bdf, read
from panelproof.glyphs.type import Rendering, Type
from panelproof.problem import Problem

TEXT = ASCII + "°µ²×ÄÖß–—…€"
CASES = [
    (SANS, 9, "one-bit"), (SANS, 18, "one-bit"), (SANS, 46, "one-bit"), (GROTESK, 13, "one-bit"),
    (SANS, 11, "antialiased"), (SANS, 46, "antialiased"), (GROTESK, 24, "antialiased"),
]  # fmt: skip


def baked(type: Type, folder: Path, characters: str = TEXT) -> Path:
    path = folder / "baked.bdf"
    path.write_bytes(bdf(type, characters, "baked", Origin("SomeFont")))
    return path


@pytest.mark.parametrize("kerning", [False, True])
@pytest.mark.parametrize(("path", "size", "rendering"), CASES)
def test_glyphs_metrics_and_kerning_are_the_same(
    tmp_path: Path, path: Path, size: int, rendering: Rendering, kerning: bool
) -> None:
    before = opened(path, size, rendering, kerning=kerning)
    after = opened(baked(before, tmp_path), None, rendering, kerning=kerning)
    assert (after.ascent, after.descent, after.size) == (before.ascent, before.descent, size)
    assert after.rasteriser == "native bitmaps"
    assert [after.glyph(char) for char in TEXT] == [before.glyph(char) for char in TEXT]
    pairs = [(a, b) for a in ASCII for b in ASCII]
    kerns = [before.kern(a, b) for a, b in pairs]
    assert [after.kern(a, b) for a, b in pairs] == kerns
    assert any(kerns) == kerning
    assert opened(baked(before, tmp_path), size, rendering).glyph("j") == before.glyph("j")


def test_the_same_type_gives_the_same_bytes(tmp_path: Path) -> None:
    type = opened(SANS, 18)
    assert bdf(type, "ab", "one", Origin("x")) == bdf(type, "ba", "one", Origin("x"))


def test_what_the_font_lacks_is_left_out_and_still_lacking(tmp_path: Path) -> None:
    type = opened(SANS, 18)
    assert type.glyph("♨") is None
    after = opened(baked(type, tmp_path, "a♨"))
    assert after.glyph("♨") is None
    assert after.glyph("b") is None
    assert after.characters() == ("a",)
    with pytest.raises(Problem, match="no glyph to bake"):
        bdf(type, "♨", "none", Origin("x"))


def test_one_bit_files_as_bdfparser_and_pillow_read_them(tmp_path: Path) -> None:
    type = opened(SANS, 18, kerning=True)
    path = baked(type, tmp_path)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        font = bdfparser.Font(str(path))
    assert len(font) == len(TEXT)
    for theirs in font.iterglyphs():
        left, top = theirs.meta["bbxoff"], theirs.meta["bbyoff"] + theirs.meta["bbh"]
        pixels = {
            (left + column, row - top)
            for row, text in enumerate(theirs.draw(1).todata(1))
            for column, digit in enumerate(text)
            if digit == "1"
        }
        glyph = drawn(type, chr(theirs.cp()))
        assert pixels == inked(glyph), theirs.cp()
        assert theirs.meta["dwx0"] == glyph.advance
    pillow = BdfFontFile.BdfFontFile(BytesIO(path.read_bytes()))
    entry = pillow.glyph[ord("j")]
    assert entry is not None
    assert entry[0] == (drawn(type, "j").advance, 0)


def test_one_bit_files_as_the_x_tools_read_them(tmp_path: Path) -> None:
    """bdftopcf of the X consortium's font utilities; the PCF holds the same glyphs."""
    if shutil.which("bdftopcf") is None:
        pytest.skip("bdftopcf is not installed")
    type = opened(GROTESK, 13)
    path = baked(type, tmp_path)
    pcf = tmp_path / "baked.pcf"
    subprocess.run(["bdftopcf", "-o", str(pcf), str(path)], check=True, capture_output=True, timeout=20)
    converted = opened(pcf)
    assert [converted.glyph(char) for char in TEXT] == [type.glyph(char) for char in TEXT]


def test_grey_files_say_in_their_first_line_that_they_are_no_bdf_2_1(tmp_path: Path) -> None:
    path = baked(opened(SANS, 24, "antialiased"), tmp_path)
    assert path.read_text().startswith("STARTFONT 3.0\n")
    with pytest.raises(SyntaxError, match="not a valid BDF file"):
        BdfFontFile.BdfFontFile(BytesIO(path.read_bytes()))
    if shutil.which("bdftopcf") is not None:
        done = subprocess.run(["bdftopcf", str(path)], check=False, capture_output=True, timeout=20)
        assert done.returncode != 0


def test_grey_files_as_freetypes_own_classes_and_plain_words_read_them(tmp_path: Path) -> None:
    type = opened(SANS, 24, "antialiased")
    path = baked(type, tmp_path)
    face = freetype.Face(str(path))
    blocks = {
        int(block.split("ENCODING ")[1].split()[0]): block.split("BITMAP\n")[1].split("ENDCHAR")[0].split()
        for block in path.read_text().split("STARTCHAR ")[1:]
    }
    for char in "aQ8°":
        face.load_char(char)
        bitmap, glyph = face.glyph.bitmap, drawn(type, char)
        assert bitmap.pixel_mode == freetype.FT_PIXEL_MODE_GRAY4
        assert (bitmap.width, bitmap.rows) == (glyph.width, glyph.height)
        theirs = {}
        for row in range(bitmap.rows):
            line = bitmap.buffer[row * bitmap.pitch : (row + 1) * bitmap.pitch]
            digits = [digit for byte in line for digit in (byte >> 4, byte & 15)]
            for column, level in enumerate(digits[: bitmap.width]):
                if level:
                    theirs[face.glyph.bitmap_left + column, row - face.glyph.bitmap_top] = level
        assert theirs == levels(glyph)
        printed = b"".join(bytes(int(digit, 16) for digit in row[: glyph.width]) for row in blocks[ord(char)])
        assert printed == glyph.levels


def test_rendering_and_file_must_agree(tmp_path: Path) -> None:
    grey = baked(opened(SANS, 24, "antialiased"), tmp_path)
    with pytest.raises(Problem, match="holds 16 levels of ink; set its rendering to `antialiased`"):
        opened(grey)
    (tmp_path / "plain").mkdir()
    plain = baked(opened(SANS, 24), tmp_path / "plain")
    with pytest.raises(Problem, match="cannot be antialiased"):
        opened(plain, None, "antialiased")
    with pytest.raises(Problem, match="is a bitmap font of 24 pixels and cannot be drawn at 25"):
        opened(grey, 25, "antialiased")


@pytest.mark.parametrize("bits", [2, 8])
def test_other_depths_are_still_turned_down(tmp_path: Path, bits: int) -> None:
    path = tmp_path / "tones.bdf"
    path.write_text((DATA / "standard.bdf").read_text().replace("SIZE 24 75 75", f"SIZE 24 75 75 {bits}"))
    with pytest.raises(Problem, match="several tones or colours"):
        opened(path).glyph("j")
    with pytest.raises(Problem, match="cannot be antialiased"):
        opened(path, None, "antialiased")


def test_kerning_that_was_cut_is_told(tmp_path: Path) -> None:
    path = baked(opened(SANS, 24, kerning=True), tmp_path)
    lines = path.read_text().split("\n")
    kerns = [line for line in lines if line.startswith("COMMENT KERN")]
    assert len(kerns) > 50
    path.write_text("\n".join(line for line in lines if line != kerns[7]))
    with pytest.raises(Problem, match=r"the kerning in `baked.bdf` is cut short; bake the type again"):
        opened(path, kerning=True)


def test_where_the_glyphs_came_from_is_kept(tmp_path: Path) -> None:
    type = opened(SANS, 24, "antialiased", kerning=True)
    data = bdf(type, "AVTo", "kiln-reading", Origin('fonts/Ödes "Grün".ttf', False, "© 2010 Ödön", "OFL"))
    found = read(data, "x")
    assert (found.bits, found.source, found.as_) == (
        4,
        'fonts/Ödes "Grün".ttf',
        "24 px, antialiased, kerned, without hinting",
    )
    assert found.rasteriser.startswith("FreeType 2.")
    assert found.kerning == {(a, b): type.kern(a, b) for a in "ATVo" for b in "ATVo" if type.kern(a, b)}
    assert len(found.kerning) > 2
    assert b'FAMILY_NAME "KilnReading"' in data
    assert b'COPYRIGHT "? 2010 ?d?n"' in data
    assert read((DATA / "standard.bdf").read_bytes(), "x").source == ""


def test_characters_are_those_of_the_font() -> None:
    assert set(ASCII) <= set(opened(SANS, 12).characters())
    assert "".join(opened(DATA / "lath.bdf").characters()) == "".join(
        char for char in map(chr, range(32, 0x3000)) if opened(DATA / "lath.bdf").glyph(char) is not None
    )


def test_a_whole_font_bakes(tmp_path: Path) -> None:
    type = opened(SANS, 12)
    after = opened(baked(type, tmp_path, "".join(type.characters())))
    assert after.characters() == type.characters()
    assert len(type.characters()) > 500
    assert all(after.glyph(char) == type.glyph(char) for char in type.characters())
