"""Bitmap fonts: rows against those printed in the file, and against bdfparser's and Pillow's readers."""

from __future__ import annotations

import gzip
import shutil
import subprocess
import warnings
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path

import bdfparser
import pytest
from PIL import BdfFontFile, FontFile, PcfFontFile
from tests.glyphs.sources import ASCII, DATA, X11, drawn, inked, opened

from panelproof.glyphs.glyph import Glyph
from panelproof.glyphs.type import Type
from panelproof.problem import Problem

LATH = "-.0123456789ACMVfj° "


@dataclass(frozen=True, slots=True)
class Printed:
    """One character as a BDF file prints it."""

    advance: int
    box: tuple[int, int, int, int]
    rows: tuple[str, ...]

    def inked(self) -> set[tuple[int, int]]:
        width, height, left, bottom = self.box
        return {
            (left + column, row - height - bottom)
            for row, digits in enumerate(self.rows)
            for column in range(width)
            if int(digits, 16) >> (4 * len(digits) - 1 - column) & 1
        }


def printed(path: Path) -> dict[int, Printed]:
    """Read a BDF file by its words alone (BDF 2.1 standard, Glyph Bitmap Distribution Format)."""
    found = {}
    for block in path.read_text().split("STARTCHAR ")[1:]:
        head, _, bits = block.partition("BITMAP\n")
        words = {line.split()[0]: line.split()[1:] for line in head.splitlines()[1:]}
        width, height, left, bottom = map(int, words["BBX"])
        rows = tuple(bits.partition("ENDCHAR")[0].split())
        found[int(words["ENCODING"][0])] = Printed(
            int(words["DWIDTH"][0]), (width, height, left, bottom), rows
        )
    return found


@pytest.mark.parametrize("name", ("lath.bdf", "lath-codes.bdf", "standard.bdf"))
def test_rows_are_those_printed_in_the_file(name: str) -> None:
    type, characters = opened(DATA / name), printed(DATA / name)
    assert {chr(code) for code in range(0x3000) if type.glyph(chr(code))} == set(map(chr, characters))
    for code, character in characters.items():
        glyph = drawn(type, chr(code))
        assert inked(glyph) == character.inked()
        assert glyph.advance == character.advance


@pytest.mark.parametrize("name", ("lath.bdf", "standard.bdf"))
def test_rows_are_bdfparsers(name: str) -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # it wants properties, which the standard does not
        font = bdfparser.Font(str(DATA / name))
    type = opened(DATA / name)
    for theirs in font.iterglyphs():
        glyph = drawn(type, chr(theirs.cp()))
        # Mode 1: the character's own box; todata(1): one text a row, "1" for an inked pixel.
        rows = theirs.draw(1).todata(1)
        left, top = theirs.meta["bbxoff"], theirs.meta["bbyoff"] + theirs.meta["bbh"]
        assert inked(glyph) == {
            (left + column, row - top)
            for row, text in enumerate(rows)
            for column, bit in enumerate(text)
            if bit == "1"
        }
        assert glyph.advance == theirs.meta["dwx0"]


def test_the_standards_own_example() -> None:
    # BDF 2.1 standard, X Consortium: DWIDTH, BBX and rows of `j` and `quoteright`, as in CHECK_VALUES.
    type = opened(DATA / "standard.bdf")
    quote = drawn(type, "'")
    assert quote == Glyph(-0 + 2, 18, 4, 6, 5, quote.rows)
    assert [f"{int(f'{row:08b}'[::-1], 2) >> 0:02X}" for row in (row << 0 for row in quote.rows)] == [
        "70", "70", "70", "60", "E0", "C0",
    ]  # fmt: skip
    letter = drawn(type, "j")
    assert (letter.left, letter.top, letter.width, letter.height, letter.advance) == (-2, 16, 9, 22, 8)
    assert [f"{int(f'{row:016b}'[::-1], 2):04X}" for row in letter.rows] == (
        ["0380"] * 4
        + ["0000"]
        + ["0700"] * 4
        + ["0E00"] * 5
        + ["1C00"] * 4
        + ["3C00", "7800", "F000", "E000"]
    )
    assert type.glyph("q") is None
    # 24 points at 75 dots an inch are 25 pixels.
    assert (type.size, opened(DATA / "standard.bdf", 25).glyph("j")) == (25, letter)


def test_metrics_of_the_test_font() -> None:
    type = opened(DATA / "lath.bdf")
    assert (type.ascent, type.descent, type.size, type.rasteriser) == (8, 2, 10, "native bitmaps")
    # `j` starts two pixels left of the pen; `f` is five wide with an advance of four.
    assert (drawn(type, "j").left, drawn(type, "j").advance) == (-2, 3)
    assert (drawn(type, "f").width, drawn(type, "f").advance) == (5, 4)
    # `V` is printed with a row and a column of blanks on each side.
    assert (drawn(type, "V").left, drawn(type, "V").top, drawn(type, "V").width, drawn(type, "V").height) == (
        0,
        7,
        5,
        7,
    )
    assert drawn(type, " ") == Glyph(0, 0, 0, 0, 3, ())


@pytest.mark.parametrize("name", ("lath.pcf", "lath.pcf.gz"))
def test_pcf_is_the_bdf_it_was_made_from(name: str) -> None:
    type, source = opened(DATA / name), opened(DATA / "lath.bdf")
    # 0 is the default character, which FreeType also keeps as the glyph of what is missing.
    assert {chr(code) for code in range(0x3000) if type.glyph(chr(code))} == set(LATH)
    assert [type.glyph(char) for char in LATH] == [source.glyph(char) for char in LATH]
    assert (type.ascent, type.descent, type.size) == (source.ascent, source.descent, source.size)


@pytest.mark.skipif(not shutil.which("bdftopcf"), reason="bdftopcf is not installed")
@pytest.mark.parametrize("options", ((), ("-l",), ("-m",), ("-p4", "-l"), ("-u2",), ("-t",)))
def test_pcf_in_every_byte_and_bit_order(options: tuple[str, ...], tmp_path: Path) -> None:
    path = tmp_path / "made.pcf"
    subprocess.run(["bdftopcf", *options, "-o", str(path), str(DATA / "lath.bdf")], check=True)
    type, source = opened(path), opened(DATA / "lath.bdf")
    if "-t" not in options:
        assert [type.glyph(char) for char in LATH] == [source.glyph(char) for char in LATH]
    # -t pads every glyph to the font's box: the same ink in another box.
    assert [inked(drawn(type, char)) for char in LATH] == [inked(drawn(source, char)) for char in LATH]


def test_bits_beyond_the_width_are_no_pixels(tmp_path: Path) -> None:
    data = (DATA / "lath.pcf").read_bytes()
    # The hyphen's one row, three pixels wide, is padded to four bytes; the period's follows.
    assert data.count(b"\xe0\0\0\0\x80\0\0\0") == 1
    path = tmp_path / "padded.pcf"
    path.write_bytes(data.replace(b"\xe0\0\0\0\x80\0\0\0", b"\xff" * 8))
    assert [opened(path).glyph(char) for char in "-."] == [
        opened(DATA / "lath.pcf").glyph(char) for char in "-."
    ]


def test_bdf_packed_by_gzip(tmp_path: Path) -> None:
    path = tmp_path / "lath.bdf.gz"
    path.write_bytes(gzip.compress((DATA / "lath.bdf").read_bytes()))
    assert drawn(opened(path), "M") == drawn(opened(DATA / "lath.bdf"), "M")


def pillow_inked(font: FontFile.FontFile, code: int) -> tuple[int, set[tuple[int, int]]]:
    """Return advance and pixels of one character as Pillow's own readers give them."""
    entry = font.glyph[code]
    assert entry is not None
    (advance, _), (left, top, _, _), _, image = entry
    width, height = image.size
    places = ((x, y) for y in range(height) for x in range(width) if image.getpixel((x, y)))
    return advance, {(left + x, top + y) for x, y in places}


def same_as_pillow(type: Type, font: FontFile.FontFile, characters: str) -> None:
    for char in characters:
        glyph = drawn(type, char)
        assert (glyph.advance, inked(glyph)) == pillow_inked(font, ord(char)), char


def test_bdf_against_pillows_reader() -> None:
    with (DATA / "lath.bdf").open("rb") as source:
        font = BdfFontFile.BdfFontFile(source)
    same_as_pillow(opened(DATA / "lath.bdf"), font, LATH.replace(" ", ""))


@pytest.mark.parametrize("name", ("6x13.pcf.gz", "9x15B.pcf.gz", "10x20.pcf.gz", "4x6.pcf.gz"))
def test_system_fonts_against_pillows_reader(name: str) -> None:
    if not (X11 / name).exists():
        pytest.skip("the X11 fonts are not installed")
    font = PcfFontFile.PcfFontFile(BytesIO(gzip.decompress((X11 / name).read_bytes())))
    type = opened(X11 / name)
    same_as_pillow(type, font, ASCII[1:])
    assert drawn(type, "°").rows
    assert type.glyph("\U0001f525") is None


def test_size_may_be_given_if_the_font_has_it() -> None:
    assert drawn(opened(DATA / "lath.bdf", 10), "8") == drawn(opened(DATA / "lath.bdf"), "8")
    with pytest.raises(
        Problem, match=r"^`lath.bdf` is a bitmap font of 10 pixels and cannot be drawn at 11; set a size"
    ):
        opened(DATA / "lath.bdf", 11)


def test_bitmap_font_is_never_antialiased() -> None:
    with pytest.raises(
        Problem, match=r"^`lath.pcf` is a bitmap font and cannot be antialiased; set its rendering"
    ):
        opened(DATA / "lath.pcf", None, "antialiased")


def test_bitmap_font_has_no_kerning() -> None:
    assert opened(DATA / "lath.bdf", kerning=True).kern("A", "V") == 0


def test_hinting_means_nothing_to_bitmaps() -> None:
    type, other = opened(DATA / "lath.pcf", hinting=False), opened(DATA / "lath.pcf")
    assert [type.glyph(char) for char in LATH] == [other.glyph(char) for char in LATH]


def test_bdf_of_several_tones_is_turned_down(tmp_path: Path) -> None:
    path = tmp_path / "tones.bdf"
    text = (DATA / "standard.bdf").read_text().replace("SIZE 24 75 75", "SIZE 24 75 75 2")
    path.write_text(text)
    with pytest.raises(Problem, match=r"^`tones.bdf` holds bitmaps of several tones or colours"):
        opened(path).glyph("j")
