"""Which character a code of a bitmap font stands for."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.glyphs.sources import DATA, X11, built, drawn, inked, opened

from panelproof.problem import Problem


def with_charset(path: Path, registry: str, encoding: str) -> Path:
    text = (DATA / "lath-koi8.bdf").read_text()
    path.write_text(text.replace('"KOI8"', f'"{registry}"').replace('"R"', f'"{encoding}"'))
    return path


def test_codes_of_a_charset_are_translated() -> None:
    # RFC 1489 (KOI8-R): D3 is the small letter es, F4 the capital Te.
    type = opened(DATA / "lath-koi8.bdf")
    assert {chr(code) for code in range(0x3000) if type.glyph(chr(code))} == {"0", "с", "Т"}
    assert len(inked(drawn(type, "Т"))) == 11


@pytest.mark.parametrize(
    ("registry", "encoding", "characters"),
    [
        ("ISO8859", "5", "0гє"),  # ISO 8859-5: D3 small ghe, F4 small Ukrainian ie
        ("ISO8859", "1", "0Óô"),
        ("ISO10646", "1", "0Óô"),
        ("microsoft", "cp1251", "0Уф"),  # Windows-1251: D3 capital U, F4 small ef
        ("Panelproof", "Signs", "0Óô"),  # nobody's charset: the codes as they are
    ],
)
def test_charsets(registry: str, encoding: str, characters: str, tmp_path: Path) -> None:
    type = opened(with_charset(tmp_path / "font.bdf", registry, encoding))
    assert {chr(code) for code in range(0x3000) if type.glyph(chr(code))} == set(characters)


def test_charset_of_two_bytes_is_turned_down(tmp_path: Path) -> None:
    with pytest.raises(
        Problem, match=r"numbered by JISX0208\.1983-0; use the font's ISO10646-1 \(Unicode\) file$"
    ):
        opened(with_charset(tmp_path / "font.bdf", "JISX0208.1983", "0"))


def test_system_font_in_koi8() -> None:
    coded, unicode = X11 / "6x13-KOI8-R.pcf.gz", X11 / "6x13.pcf.gz"
    if not (coded.exists() and unicode.exists()):
        pytest.skip("the X11 fonts are not installed")
    text = "0AЖщЮ"
    assert [opened(coded).glyph(char) for char in text] == [opened(unicode).glyph(char) for char in text]


def test_symbol_font_answers_to_plain_codes(tmp_path: Path) -> None:
    def as_symbols(font: object) -> None:
        del font["cmap"].tables[1:]  # type: ignore[index]
        for table in font["cmap"].tables:  # type: ignore[index]
            table.platformID, table.platEncID = 3, 0
            table.cmap = {0xF000 + code: name for code, name in table.cmap.items() if code < 256}
        font["post"].formatType = 3.0  # type: ignore[index] # no names to guess Unicode from

    type = opened(built(tmp_path / "symbols.ttf", change=as_symbols), 20)
    assert drawn(type, "A") == drawn(type, "\uf041")
    assert type.glyph("E") is None


def test_font_without_any_table_of_characters(tmp_path: Path) -> None:
    def without(font: object) -> None:
        font["cmap"].tables = []  # type: ignore[index]
        font["post"].formatType = 3.0  # type: ignore[index]

    with pytest.raises(
        Problem, match=r"^the font file `mute.ttf` does not say which glyph shows which character"
    ):
        opened(built(tmp_path / "mute.ttf", change=without), 20)
