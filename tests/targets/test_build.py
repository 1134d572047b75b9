"""The build snippets of the examples, with make and CMake themselves, in a copy."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from tests.firmware.harness import installed

from panelproof.firmware.depends import rule, sources
from panelproof.glyphs.catalogue import find
from panelproof.layout.reading import read
from panelproof.material import gather

EXAMPLES = Path(__file__).parents[2] / "examples"
FONT = "SourceSansPro"

Build = Callable[..., subprocess.CompletedProcess[str]]


@pytest.fixture(params=["make", "cmake with make", "cmake with ninja"])
def build(request: pytest.FixtureRequest, tmp_path: Path) -> Build:
    """Copy the examples, one font of the kiln beside its layout, and return how to build them."""
    system: str = request.param
    installed("make" if system == "make" else "cmake")
    installed("ninja" if "ninja" in system else "make")
    for folder in ("kiln", "build", "ports"):
        shutil.copytree(EXAMPLES / folder, tmp_path / folder)
    shutil.copy(EXAMPLES / "write_picture.h", tmp_path)
    layout = tmp_path / "kiln" / "kiln.panel.json"
    shutil.copy(find(FONT, layout.parent), layout.parent / "own.ttf")
    layout.write_text(layout.read_text().replace(f'"{FONT}"', '"own.ttf"'))
    programs = tmp_path / "programs"
    programs.mkdir()
    (programs / "panelproof").write_text(f'#!/bin/sh\nexec "{sys.executable}" -m panelproof "$@"\n')
    (programs / "panelproof").chmod(0o755)
    for path in tmp_path.rglob("*"):
        os.utime(path, (1_000_000_000, 1_000_000_000))
    layout.touch()

    def run(ci: bool = False) -> subprocess.CompletedProcess[str]:
        environment = {**os.environ, "PATH": f"{programs}:{os.environ['PATH']}", "CI": "true" if ci else ""}
        if system == "make":
            where, commands = tmp_path / "build" / "make", [["make"]]
        else:
            where, out = tmp_path / "build" / "cmake", f"out-{ci}"
            generator = "Ninja" if "ninja" in system else "Unix Makefiles"
            commands = [["cmake", "-G", generator, "-B", out], ["cmake", "--build", out]]
        for command in commands:
            done = subprocess.run(
                command, cwd=where, capture_output=True, text=True, env=environment, check=False, timeout=120
            )
            if done.returncode:
                break
        return done

    return run


def program(folder: Path) -> Path:
    return next(path for path in folder.glob("build/**/kiln") if path.is_file())


def test_the_header_is_made_anew_when_what_it_comes_from_changes(tmp_path: Path, build: Build) -> None:
    layout, header = tmp_path / "kiln" / "kiln.panel.json", tmp_path / "kiln" / "kiln.h"

    def built() -> bool:
        """Build, and tell whether the header was written."""
        before = header.stat().st_mtime_ns
        time.sleep(0.02)
        done = build()
        assert done.returncode == 0, done.stdout + done.stderr
        return header.stat().st_mtime_ns != before

    assert built(), "the header is of the layout with another font"
    assert not built()
    said = subprocess.run([program(tmp_path), tmp_path], check=False)
    assert said.returncode == 0
    assert (tmp_path / "ramp.ppm").exists()

    layout.write_text(layout.read_text().replace("#ffb040", "#ffc050"))
    assert built(), "an ink has changed"
    assert "#ffc050" in header.read_text()
    assert not built()

    time.sleep(0.02)
    (layout.parent / "own.ttf").touch()
    assert built(), "a font has changed"
    assert not built()

    text = layout.read_text()
    layout.write_text(text.replace("[6, 30, 192, 50]", "[60, 30, 138, 50]"))
    done = build()
    assert done.returncode, "the layout has a fault"
    assert "fault: " in done.stdout + done.stderr
    layout.write_text(text)
    assert built()


def test_on_ci_an_old_header_stops_the_build_and_nothing_is_written(tmp_path: Path, build: Build) -> None:
    layout, header = tmp_path / "kiln" / "kiln.panel.json", tmp_path / "kiln" / "kiln.h"
    done = build(ci=True)
    assert done.returncode, "the font is named otherwise in the header"
    assert "digest" in done.stdout + done.stderr
    assert build().returncode == 0
    made = header.read_bytes()
    assert build(ci=True).returncode == 0
    (layout.parent / "own.ttf").touch()
    layout.touch()
    assert build(ci=True).returncode == 0, "it is newer, but says the same"
    layout.write_text(layout.read_text().replace("#ffb040", "#ffc050"))
    done = build(ci=True)
    assert done.returncode
    assert "INK_GLOW" in done.stdout + done.stderr
    assert header.read_bytes() == made
    header.unlink()
    assert build(ci=True).returncode


def test_the_rule_names_fonts_and_pictures_once(tmp_path: Path) -> None:
    from PIL import Image

    shutil.copytree(EXAMPLES / "kiln", tmp_path / "k")
    path = tmp_path / "k" / "kiln.panel.json"
    Image.new("1", (14, 14), 1).save(path.parent / "up.png")
    value = json.loads(path.read_text())
    icon = next(part for part in value["screens"][1]["parts"] if part["kind"] == "icon")
    icon["states"][3].pop("rows")
    icon["states"][3]["picture"] = "up.png"
    path.write_text(json.dumps(value))
    found = sources(gather(read(path), path.parent), path)
    assert [one.name for one in found] == [
        "kiln.panel.json", "SourceSansPro-Semibold.ttf", "SourceSansPro-Regular.ttf", "up.png",
    ]  # fmt: skip


def test_make_takes_any_file_name(tmp_path: Path) -> None:
    names = ["a b.json", "c#d.ttf", "e$f.png", "g:h.png"]
    for name in names:
        (tmp_path / name).write_text("")
    (tmp_path / "rule.d").write_text(rule(Path("my header.h"), [Path(name) for name in [*names, "lost.png"]]))
    (tmp_path / "Makefile").write_text("include rule.d\nmy\\ header.h:\n\techo made > '$@'\n")
    done = subprocess.run(
        [installed("make")], cwd=tmp_path, capture_output=True, text=True, check=False, timeout=60
    )
    assert done.returncode == 0, done.stderr
    assert (tmp_path / "my header.h").exists()
