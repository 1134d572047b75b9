"""Finding fonts by path and by name, and listing them."""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from tests.glyphs.sources import DATA, GROTESK, SANS

from panelproof.glyphs import catalogue
from panelproof.glyphs.catalogue import FontEntry, bundled_folder, find, fonts, stem
from panelproof.problem import Problem


@pytest.fixture
def system(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """A system whose fonts are those in one folder, and no bundled fonts."""
    folder = tmp_path / "system"
    folder.mkdir()
    monkeypatch.setattr(catalogue, "_system_folders", lambda: [folder, tmp_path / "none"])
    monkeypatch.setattr(catalogue, "bundled_folder", lambda: None)
    catalogue.forget()
    yield folder
    catalogue.forget()


@pytest.mark.parametrize("name", ("a.ttf", "b/c.OTF", "../d.pcf.gz", "e.bdf", "f.ttc", "g.Pcf", "h.woff"))
def test_a_suffix_makes_a_path(name: str, tmp_path: Path) -> None:
    assert find(name, tmp_path) == tmp_path / name


def test_a_path_from_the_root(tmp_path: Path) -> None:
    assert find(str(SANS), tmp_path) == SANS


def test_names_of_packages() -> None:
    assert SANS.name == "SourceSansPro-Regular.ttf"
    assert GROTESK.name == "HankenGrotesk-Regular.otf"
    assert find("SourceSansProBoldIt", Path()).name == "SourceSansPro-BoldIt.ttf"


def test_names_of_system_fonts(system: Path) -> None:
    (system / "deep" / "deeper").mkdir(parents=True)
    shutil.copy(DATA / "lath.bdf", system / "deep" / "deeper" / "Kiln 7.bdf")
    shutil.copy(DATA / "lath.pcf.gz", system / "deep" / "tank-8.pcf.gz")
    shutil.copy(SANS, system / "SourceSansPro.ttf")
    (system / "deep" / "back").symlink_to(system)
    (system / "notes.txt").write_text("no font")
    assert find("Kiln 7", Path()) == system / "deep" / "deeper" / "Kiln 7.bdf"
    assert find("tank-8", Path()) == system / "deep" / "tank-8.pcf.gz"
    assert find("SourceSansPro", Path()) == SANS
    with pytest.raises(Problem):
        find("notes", Path())


def test_bundled_names_come_first(tmp_path: Path, system: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    own = tmp_path / "own"
    own.mkdir()
    shutil.copy(DATA / "lath.bdf", own / "SourceSansPro.bdf")
    shutil.copy(DATA / "lath.bdf", system / "lath.bdf")
    monkeypatch.setattr(catalogue, "bundled_folder", lambda: own)
    assert find("SourceSansPro", Path()) == own / "SourceSansPro.bdf"
    listed = fonts()
    assert listed[0] == FontEntry(
        "SourceSansPro", own / "SourceSansPro.bdf", "bundled", "Lath", "Regular", "BDF"
    )
    assert listed[-1] == FontEntry("lath", system / "lath.bdf", "system", "Lath", "Regular", "BDF")
    assert {entry.origin for entry in listed[1:-1]} == {
        "package font-hanken-grotesk",
        "package font-source-sans-pro",
    }


def test_bundled_folder_is_a_folder_or_none() -> None:
    folder = bundled_folder()
    assert folder is None or (folder.is_dir() and folder.name == "fonts_free")


def test_every_listed_name_is_found_and_once() -> None:
    listed = fonts()
    names = [entry.name for entry in listed]
    assert len(names) == len(set(names)) >= 22
    for entry in listed[:40] + listed[-3:]:
        assert find(entry.name, Path()) == entry.path
    sans = next(entry for entry in listed if entry.name == "SourceSansPro")
    assert (sans.family, sans.style, sans.kind) == ("Source Sans Pro", "Regular", "TTF")


def test_broken_and_double_system_fonts_do_not_stop_the_list(system: Path) -> None:
    (system / "a").mkdir()
    (system / "empty.ttf").write_bytes(b"")
    (system / "rubbish.otf").write_bytes(bytes(range(256)) * 9)
    (system / "cut.pcf").write_bytes((DATA / "lath.pcf").read_bytes()[:99])
    (system / "folder.ttf").mkdir()
    (system / "gone.bdf").symlink_to(system / "nowhere")
    shutil.copy(DATA / "lath.bdf", system / "a" / "lath.bdf")
    shutil.copy(DATA / "lath.pcf", system / "lath.pcf")
    assert [entry.name for entry in fonts() if entry.origin == "system"] == ["lath"]
    assert find("lath", Path()) == system / "lath.pcf"


@pytest.mark.parametrize(
    ("name", "sentence"),
    [
        (
            "SourceSanPro",
            r"there is no font named `SourceSanPro`; the nearest names are `SourceSansPro`, `SourceSans.*",
        ),
        (
            "hankengrotesk",
            r"there is no font named `hankengrotesk`; the nearest names are `HankenGrotesk`, .*",
        ),
        (
            "qqqqqqq",
            r"there is no font named `qqqqqqq`; a font file's name must end in .ttf, .otf, .bdf or .pcf",
        ),
        ("", r"there is no font named ``; a font file's name must end in .ttf, .otf, .bdf or .pcf"),
        ("\0\n", r"there is no font named `\?\?`; a font file's .*"),
        ("z" * 1000, r"there is no font named `z{77}\.\.\.`; a font file's .*"),
    ],
)
def test_unknown_names(name: str, sentence: str, system: Path) -> None:
    with pytest.raises(Problem) as caught:
        find(name, Path())
    assert re.fullmatch(sentence, caught.value.message), caught.value.message


@pytest.mark.parametrize(
    ("file", "name"),
    [
        ("a.ttf", "a"),
        ("6x13.pcf.gz", "6x13"),
        ("b.c.OTF", "b.c"),
        (".ttf", None),
        ("x.gz", None),
        ("ttf", None),
    ],
)
def test_stems(file: str, name: str | None) -> None:
    assert stem(file) == name


def test_finding_a_packages_font_costs_a_few_milliseconds() -> None:
    # In a process of its own, nothing read before; the bound is ten times what one machine took.
    code = (
        "import sys, time\nfrom pathlib import Path\nfrom panelproof.glyphs.catalogue import find\n"
        "began = time.process_time()\nfind('SourceSansPro', Path())\nprint(time.process_time() - began)\n"
        "assert not {'importlib.metadata', 'platformdirs', 'freetype', 'fontTools'} & set(sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert float(done.stdout) < 0.05
    began = time.process_time()
    for _ in range(100):
        find("SourceSansPro", Path())
    assert time.process_time() - began < 1
