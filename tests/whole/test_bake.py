"""Baking a layout's types: nothing on the glass changes, and no other release of the rasteriser can change it."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
from msgspec.structs import replace
from tests.device.making import KILN, with_part, with_type
from tests.firmware.layouts import rich

from panelproof.bake import bake, shown_in
from panelproof.command import main
from panelproof.firmware.header import header
from panelproof.layout.parts import Field
from panelproof.layout.reading import read
from panelproof.layout.writing import write
from panelproof.material import Material, gather
from panelproof.picture.frame import screen_frame
from panelproof.picture.moments import every_moment
from panelproof.problem import Problem
from panelproof.proof.extent import stage

OTHER_RELEASE = "freetype-py==2.2.0"  # carries FreeType 2.10.2, which draws some glyphs otherwise


def load(path: Path) -> Material:
    return gather(read(path), path.parent)


@pytest.fixture
def layout(tmp_path: Path) -> Path:
    path = tmp_path / "kiln.panel.json"
    path.write_bytes(KILN.read_bytes())
    return path


def without_titles(text: str) -> list[str]:
    """A header's lines but for digests and the names of the types' fonts."""
    names = r"\.(ttf|otf|bdf), \d+ px, "
    return [line for line in text.splitlines() if "digest" not in line.lower() and not re.search(names, line)]


def same_on_the_glass(before: Material, after: Material) -> None:
    for moment, other in zip(every_moment(before), every_moment(after), strict=True):
        one, two = (screen_frame(m, m.screen(moment.screen), moment.values) for m in (before, after))
        assert moment == other
        assert np.array_equal(one.codes, two.codes), moment.name
    for screen, again in zip(before.layout.screens, after.layout.screens, strict=True):
        for one_extent, two_extent in zip(
            stage(before, screen).extents, stage(after, again).extents, strict=True
        ):
            assert one_extent.reach.same_pixels(two_extent.reach)
            assert one_extent.surely.same_pixels(two_extent.surely)


def test_frames_footprints_and_header_are_the_same(layout: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = load(layout)
    text = header(before)
    assert main(["bake", str(layout)]) == 0
    said = capsys.readouterr().out
    assert "kiln-reading.bdf (18 glyphs)" in said
    assert "`reading`, `heading`, `text` are drawn from there now" in said
    after = load(layout)
    assert {type.rasteriser for type in after.types.values()} == {"native bitmaps"}
    same_on_the_glass(before, after)
    again = header(after)
    assert again != text
    assert without_titles(again) == without_titles(text)
    assert main(["check", str(layout)]) == main(["check", str(KILN)])


def test_a_layout_with_kerning_and_everything(tmp_path: Path) -> None:
    before = rich(tmp_path)
    batch = bake(before)
    assert [one.type for one in batch.baked] == ["large", "small", "plain"]
    assert batch.left == ("the type `tight` is of bitmaps already",)
    for one in batch.baked:
        (tmp_path / one.file).write_bytes(one.data)
    after = gather(batch.layout, tmp_path)
    same_on_the_glass(before, after)
    assert without_titles(header(after)) == without_titles(header(before))


def test_just_what_the_contents_can_show(layout: Path) -> None:
    material = load(layout)
    chamber = next(part for part in material.layout.screens[1].parts if part.name == "chamber")
    assert isinstance(chamber, Field)
    assert shown_in(material, "reading") == set("-0123456789no probe")
    assert main(["bake", str(layout), "--type", "reading"]) == 0
    baked = load(layout).types["reading"]
    assert set(baked.characters()) == set("-0123456789no probe")
    assert load(layout).types["text"].rasteriser.startswith("FreeType")


def test_all_of_the_font(layout: Path) -> None:
    assert main(["bake", str(layout), "--type", "text", "--all"]) == 0
    assert len(load(layout).types["text"].characters()) > 500


def test_baked_already_and_baked_anew(layout: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = layout.with_name("kiln-text.bdf")
    # Without hinting, so that what it was drawn with matters when it is drawn anew.
    write(with_type(read(layout), "text", hinting=False), layout)
    before = load(layout)
    assert main(["bake", str(layout)]) == 0
    files = {one.name: one.read_bytes() for one in layout.parent.iterdir()}
    capsys.readouterr()
    assert main(["bake", str(layout)]) == 0
    assert (
        "the type `text` is baked already, from SourceSansPro; --again bakes it anew"
        in capsys.readouterr().out
    )
    assert main(["bake", str(layout), "--again"]) == 0
    assert {one.name: one.read_bytes() for one in layout.parent.iterdir()} == files
    same_on_the_glass(before, load(layout))
    # A text that is new in the layout comes with its characters.
    write(with_part(read(layout), "readings", "set-word", text="Soll"), layout)
    assert "S" in load(layout).types["text"].characters()
    layout.write_text(layout.read_text(encoding="utf-8").replace('"Soll"', '"Ziel: Ω"'), encoding="utf-8")
    assert main(["bake", str(layout), "--again", "--type", "text"]) == 0
    assert path.read_bytes() != files["kiln-text.bdf"]
    assert {"Z", "Ω"} <= set(load(layout).types["text"].characters())


def test_what_stands_in_the_way(layout: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["bake", str(layout), "--type", "txt"]) == 2
    assert "there is no type `txt`; the nearest is `text`" in capsys.readouterr().err
    before = layout.read_bytes()
    layout.with_name("kiln-text.bdf").write_text("mine")
    assert main(["bake", str(layout)]) == 2
    told = capsys.readouterr().err
    assert "kiln.panel.json: types[2]: there is a file `kiln-text.bdf` already" in told
    assert layout.read_bytes() == before
    assert layout.with_name("kiln-text.bdf").read_text() == "mine"
    assert not layout.with_name("kiln-reading.bdf").exists()


def test_a_type_that_shows_nothing_is_left_alone(layout: Path) -> None:
    described = read(layout)
    unused = replace(described.types[2], name="spare")
    batch = bake(gather(replace(described, types=(*described.types, unused)), layout.parent), ["spare"])
    assert batch.baked == ()
    assert "shows nothing" in batch.left[0]


def test_a_source_that_is_gone(layout: Path) -> None:
    assert main(["bake", str(layout), "--type", "text"]) == 0
    path = layout.with_name("kiln-text.bdf")
    path.write_text(path.read_text().replace('BAKED_FROM "SourceSansPro"', 'BAKED_FROM "NoSuchFont"'))
    with pytest.raises(Problem, match=r"types|there is no font named `NoSuchFont`"):
        bake(load(layout), again=True)


@pytest.fixture(scope="module")
def other_release(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with another release of the rasteriser, fetched by pip."""
    folder = tmp_path_factory.mktemp("release")
    done = subprocess.run(
        [sys.executable, "-m", "pip", "--version"], capture_output=True, check=False, timeout=60
    )
    python = sys.executable if done.returncode == 0 else "python3"
    fetch = [python, "-m", "pip", "install", "-q", "--no-deps", "--target", str(folder), OTHER_RELEASE]
    done = subprocess.run(fetch, capture_output=True, check=False, timeout=180)
    if done.returncode != 0:
        pytest.skip("the package index cannot be reached")
    return folder


def run(*words: str | Path, release: Path | None = None) -> subprocess.CompletedProcess[str]:
    path = os.pathsep.join(filter(None, (str(release) if release else "", os.environ.get("PYTHONPATH", ""))))
    return subprocess.run(
        [sys.executable, "-m", "panelproof", *map(str, words)],
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
        env={**os.environ, "PYTHONPATH": path, "PYTHONIOENCODING": "utf-8"},
    )


@pytest.mark.slow
def test_two_releases_of_the_rasteriser_side_by_side(layout: Path, other_release: Path) -> None:
    script = "from panelproof.glyphs.face import version; print(version())"
    versions = [
        subprocess.run(
            [sys.executable, "-c", script],
            capture_output=True,
            text=True,
            check=True,
            timeout=60,
            env={**os.environ, "PYTHONPATH": path},
        ).stdout.strip()
        for path in (str(other_release), os.environ.get("PYTHONPATH", ""))
    ]
    assert versions[0] == "2.10.2"
    assert versions[0] != versions[1]
    ours, theirs = layout.with_name("ours.h"), layout.with_name("theirs.h")

    assert run("export", layout, "-o", ours).returncode == 0
    assert run("export", layout, "-o", theirs, release=other_release).returncode == 0
    assert ours.read_bytes() != theirs.read_bytes()
    done = run("export", layout, "--verify", theirs)
    assert done.returncode == 1
    reason = f"it was drawn by FreeType {versions[0]} then, and is by FreeType {versions[1]} now"
    sentences = done.stdout.splitlines()
    assert all(sentence.endswith(reason) for sentence in sentences)
    assert any("look otherwise now" in one or "looks otherwise now" in one for one in sentences)

    assert run("bake", layout).returncode == 0
    assert run("export", layout, "-o", ours).returncode == 0
    assert run("export", layout, "-o", theirs, release=other_release).returncode == 0
    assert ours.read_bytes() == theirs.read_bytes()
    assert run("export", layout, "--verify", theirs).returncode == 0
    found = [json.loads(run("check", "--json", layout, release=one).stdout) for one in (None, other_release)]
    assert found[0] == found[1]
