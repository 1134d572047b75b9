"""Fonts of installed packages, sound and broken ones."""

from __future__ import annotations

import sys
from importlib.metadata import entry_points
from pathlib import Path

import pytest
from tests.glyphs.sources import SANS

from panelproof.glyphs import packages
from panelproof.glyphs.packages import Registration, package_fonts, registrations


def install(folder: Path, name: str, entries: str, module: str | None = None) -> None:
    info = folder / f"{name}-1.0.dist-info"
    info.mkdir(parents=True)
    (info / "entry_points.txt").write_text(entries)
    (info / "METADATA").write_text(f"Metadata-Version: 2.1\nName: {name}\nVersion: 1.0\n")
    if module is not None:
        (folder / f"{name}.py").write_text(module)


def test_registrations_are_those_that_importlib_finds() -> None:
    ours = {(found.group, found.package, found.target) for found in registrations(tuple(sys.path))}
    theirs = {
        (group, entry.dist.name if entry.dist else "", entry.value)
        for group in packages.GROUPS
        for entry in entry_points(group=group)
    }
    assert len(theirs) >= 3
    assert ours == theirs


def test_entries_among_others(tmp_path: Path) -> None:
    install(
        tmp_path,
        "kiln_fonts",
        "[console_scripts]\nfire = kiln_fonts:fire\n\n# fonts\n[fonts_ttf]\n; none\na=kiln_fonts:ttf\n"
        "b = kiln_fonts:more.ttf [extra]\n\n[fonts_otf]\na = kiln_fonts:otf\n[other]\nc = kiln_fonts:c\n",
    )
    assert registrations((str(tmp_path), str(tmp_path), str(tmp_path / "none"))) == (
        Registration("fonts_ttf", "kiln-fonts", "kiln_fonts:ttf"),
        Registration("fonts_ttf", "kiln-fonts", "kiln_fonts:more.ttf"),
        Registration("fonts_otf", "kiln-fonts", "kiln_fonts:otf"),
    )


def test_broken_packages_are_passed_over(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for number, (entries, module) in enumerate(
        [
            ("[fonts_ttf]\nx = font_broken_0:fonts\n", None),
            ("[fonts_ttf]\nx = font_broken_1:fonts\n", "raise RuntimeError('broken')\n"),
            ("[fonts_ttf]\nx = font_broken_2:fonts\n", "import sys\nsys.exit(3)\n"),
            ("[fonts_ttf]\nx = font_broken_3:fonts\n", "fonts = ['no', 'mapping']\n"),
            ("[fonts_ttf]\nx = font_broken_4:missing\n", "fonts = {}\n"),
            (
                "[fonts_ttf]\nx = font_broken_5:fonts\n",
                f"fonts = {{'Gone': '/nowhere/gone.ttf', 7: {str(SANS)!r}}}\n",
            ),
            ("[fonts_ttf]\nx = font_broken_6:fonts\n", "fonts = {'Odd': object()}\n"),
            ("[fonts_ttf]\nx =\n = font_broken_7:fonts\nno equals sign\n", "fonts = {}\n"),
            ("[fonts_ttf]\nx = font_broken_8:fonts\n", f"fonts = {{'Sound': {str(SANS)!r}}}\n"),
        ]
    ):
        install(tmp_path, f"font_broken_{number}", entries, module)
    (tmp_path / "font_binary-1.0.dist-info").mkdir()
    (tmp_path / "font_binary-1.0.dist-info" / "entry_points.txt").write_bytes(b"[fonts_ttf]\n\xff\xfe")
    (tmp_path / "empty-1.0.dist-info").mkdir()
    monkeypatch.setattr(sys, "path", [str(tmp_path), *sys.path])
    ours = [entry for entry in package_fonts() if entry[2].startswith("font-b")]
    assert ours == [("Sound", SANS, "font-broken-8")]
    assert any(name == "SourceSansPro" for name, _, _ in package_fonts())


def test_ttf_comes_before_otf() -> None:
    suffixes = [path.suffix for name, path, _ in package_fonts() if name == "SourceSansPro"]
    assert suffixes == [".ttf", ".otf"]
