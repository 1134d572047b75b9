"""The sheet's two files, read back with pypdf and the standard library's HTML parser."""

from __future__ import annotations

import re
from base64 import b64decode
from functools import lru_cache
from html.parser import HTMLParser
from io import BytesIO
from pathlib import Path

import numpy as np
import pytest
from msgspec.structs import replace
from numpy.typing import NDArray
from PIL import Image
from pypdf import PdfReader

from panelproof.command import main
from panelproof.layout.parts import Box, Field, Icon, Label, Meter, Rule
from panelproof.layout.reading import read
from panelproof.material import Material, gather
from panelproof.paper.facts import SheetFacts
from panelproof.paper.facts import gather as facts_of
from panelproof.paper.html import page
from panelproof.paper.pdf import ENLARGED, document
from panelproof.picture.drawing import padding_of
from panelproof.picture.image import image
from panelproof.proof.measure import measures

ROOT = Path(__file__).parents[2]
LAYOUTS = [ROOT / "examples" / "kiln" / "kiln.panel.json", ROOT / "examples" / "kiln" / "by-eye.panel.json"]


@lru_cache(maxsize=4)
def material(path: Path) -> Material:
    return gather(read(path), path.parent)


@lru_cache(maxsize=4)
def facts(path: Path) -> SheetFacts:
    return facts_of(material(path))


class _Words(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.words: list[str] = []
        self.pictures: list[tuple[dict[str, str | None], bytes]] = []
        self.links: list[str] = []
        self._skipping = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._skipping = tag == "style"
        named = dict(attrs)
        for key in ("src", "href"):
            link = named.get(key) or ""
            if link.startswith("data:image/png;base64,") and tag in ("img", "image"):
                self.pictures.append((named, b64decode(link.partition(",")[2])))
            elif link:
                self.links.append(link)

    def handle_endtag(self, tag: str) -> None:
        self._skipping = False

    def handle_data(self, data: str) -> None:
        if not self._skipping:
            self.words.append(data)


@lru_cache(maxsize=4)
def html(path: Path) -> _Words:
    words = _Words()
    words.feed(page(facts(path)))
    return words


@lru_cache(maxsize=4)
def pdf(path: Path) -> PdfReader:
    return PdfReader(BytesIO(document(facts(path))))


def plain(text: str) -> str:
    return re.sub(r"\s+", "", text)


@lru_cache(maxsize=8)
def said(path: Path, kind: str) -> str:
    """All words of a file with spaces taken out, as line breaks fall where they will."""
    if kind == "html":
        return plain("".join(html(path).words))
    return plain("".join(one.extract_text() for one in pdf(path).pages))


def place(made: Material, part: object) -> list[str]:
    """What a part's row must say, put together here from the layout alone."""
    match part:
        case Label() | Field():
            found = [f"x {part.x}, baseline {part.baseline}", part.type, part.ink]
            if isinstance(part, Field) and part.padding:
                found.append("{}, {}, {} × {}".format(*part.padding))
        case Icon():
            found = [f"x {part.x}, y {part.y}", "{}, {}, {} × {}".format(*padding_of(made, part))]
            found += [state.name for state in part.states]
        case Rule():
            found = [f"x {part.x}, y {part.y}", f"{part.length} {part.direction}, {part.thickness} thick"]
        case Box() | Meter():
            found = [f"x {part.x}, y {part.y}", f"{part.width} × {part.height}"]
        case _:
            found = []
    return [part.name, *found]  # type: ignore[attr-defined]


@pytest.mark.parametrize("kind", ["html", "pdf"])
@pytest.mark.parametrize("path", LAYOUTS, ids=lambda path: path.name)
def test_every_part_and_coordinate_content_and_finding_stands_there(path: Path, kind: str) -> None:
    text, made = said(path, kind), material(path)
    wanted = [word for screen in made.layout.screens for part in screen.parts for word in place(made, part)]
    for ink in facts(path).inks:
        wanted += [ink.name, ink.given, ink.shown, ink.code]
    for spec in made.layout.types:
        wanted += [spec.name, made.types[spec.name].path.name, made.types[spec.name].rasteriser]
    for figure in measures(made):
        wanted += [f"“{figure.longest.text}”, {figure.longest.pixels} px", f"“{figure.shortest.text}”"]
        wanted += ["{}, {}, {} × {}".format(*figure.ink)]
    for one in (*facts(path).findings, *facts(path).accepted):
        wanted += [one.rule, one.where, one.message, one.more]
    wanted += ["Not a safety device", "Local codes and licensed practice come first"]
    for word in wanted:
        # A character that the typeface lacks is written out, in one file as in the other.
        shown = "".join(char if kind == "html" or char != "♨" else "[U+2668]" for char in word)
        assert plain(shown) in text, word


def test_findings_and_reasons_are_not_left_out() -> None:
    by_eye, kiln = facts(LAYOUTS[1]), facts(LAYOUTS[0])
    assert sum(one.level == "fault" for one in by_eye.findings) == 9
    assert "Remedy: padding width 180 → 207 px" in {one.more for one in by_eye.findings}
    layout = material(LAYOUTS[0]).layout
    reasons = {entry.reason for screen in layout.screens for part in screen.parts for entry in part.accepted}
    assert {one.more.partition(" (accepted by")[0] for one in kiln.accepted} == reasons
    assert len(reasons) >= 1


def pictured(pixels: NDArray[np.uint8], scale: int) -> NDArray[np.uint8]:
    small = pixels[::scale, ::scale]
    assert np.array_equal(small.repeat(scale, axis=0).repeat(scale, axis=1), pixels)
    return small


@pytest.mark.parametrize("path", LAYOUTS, ids=lambda path: path.name)
def test_the_pictures_of_the_page_are_the_frames(path: Path) -> None:
    panel = material(path).layout.panel
    shots = [shot for screen in facts(path).screens for shot in screen.shots]
    wanted = [np.asarray(image(shot.frame, panel)) for shot in shots]
    found = [np.asarray(Image.open(BytesIO(data)).convert("RGB")) for _, data in html(path).pictures]
    drawings = len(facts(path).screens)
    assert len(found) == len(wanted) + drawings
    moments = [one for (tags, _), one in zip(html(path).pictures, found, strict=True) if "alt" in tags]
    for frame, picture in zip(wanted, moments, strict=True):
        assert np.array_equal(frame, picture)
    for tags, data in html(path).pictures:
        with Image.open(BytesIO(data)) as opened:
            for key, size in (("width", opened.width), ("height", opened.height)):
                assert float(tags[key] or 0) % size == 0
    assert html(path).links == []
    assert "image-rendering: pixelated" in page(facts(path))


@pytest.mark.parametrize("path", LAYOUTS[:1], ids=lambda path: path.name)
def test_the_pictures_of_the_pdf_are_the_frames(path: Path) -> None:
    panel = material(path).layout.panel
    wanted = {
        np.asarray(image(shot.frame, panel)).tobytes()
        for screen in facts(path).screens
        for shot in screen.shots
    }
    found = {
        pictured(np.asarray(one.image.convert("RGB")), ENLARGED).tobytes()
        for sheet in pdf(path).pages
        for one in sheet.images
        if one.image is not None
    }
    assert found == wanted


def test_the_same_layout_gives_the_same_bytes_and_both_papers() -> None:
    made = facts(LAYOUTS[0])
    assert document(made) == document(made)
    width, height = (
        float(side) for side in PdfReader(BytesIO(document(made, "letter"))).pages[0].mediabox[2:]
    )
    assert (width, height) == (792, 612)
    # ISO 216: A4 is 210 × 297 mm.
    a4 = pdf(LAYOUTS[0]).pages[0].mediabox
    assert (round(float(a4.width) * 25.4 / 72), round(float(a4.height) * 25.4 / 72)) == (297, 210)


def test_words_that_could_be_markup_are_words() -> None:
    made = material(LAYOUTS[0])
    panel = replace(made.layout.panel, name="<b>5 & 6</b>")
    odd = facts_of(gather(replace(made.layout, panel=panel), made.folder))
    words = _Words()
    words.feed(page(odd))
    assert "<b>5 & 6</b>" in "".join(words.words)
    text = "".join(one.extract_text() for one in PdfReader(BytesIO(document(odd))).pages)
    assert plain("<b>5 & 6</b>") in plain(text)


def test_the_command(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for file in LAYOUTS[0].parent.iterdir():
        if file.is_file():
            (tmp_path / file.name).write_bytes(file.read_bytes())
    layout = tmp_path / "kiln.panel.json"
    assert main(["sheet", str(layout)]) == 0
    assert (tmp_path / "kiln.pdf").read_bytes().startswith(b"%PDF-")
    assert (tmp_path / "kiln.html").read_text(encoding="utf-8").startswith("<!DOCTYPE html>")
    assert main(["sheet", str(layout), "-o", str(tmp_path / "only.html")]) == 0
    assert not (tmp_path / "only.pdf").exists()
    capsys.readouterr()
    assert main(["sheet", str(layout), "-o", str(tmp_path / "a.txt")]) == 2
    assert "a sheet's name ends in .pdf or .html" in capsys.readouterr().err
    assert main(["sheet", str(tmp_path / "none.panel.json")]) == 2
