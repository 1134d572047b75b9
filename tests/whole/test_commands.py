"""The command line, as a maker and a build system use it."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from PIL import Image

ROOT = Path(__file__).parents[2]
KILN = ROOT / "examples" / "kiln"


def run(*words: str | Path, folder: Path | None = None) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "panelproof", *map(str, words)],
        capture_output=True,
        text=True,
        check=False,
        cwd=folder,
        timeout=60,
        env={**os.environ, "PYTHONIOENCODING": "utf-8"},
    )


def test_check_says_clean_and_counts() -> None:
    done = run("check", KILN / "kiln.panel.json")
    assert done.returncode == 0
    assert "clean" in done.stdout
    assert "texts proved" in done.stdout


def test_check_lists_faults_with_texts_and_remedies() -> None:
    done = run("check", KILN / "by-eye.panel.json", KILN / "kiln.panel.json")
    assert done.returncode == 1
    assert "`0` after `no probe`" in done.stdout
    assert "remedy: padding width 180 → 207 px" in done.stdout
    assert "clean" in done.stdout


def test_check_json_is_as_published() -> None:
    done = run("check", "--json", KILN / "by-eye.panel.json", KILN / "kiln.panel.json")
    assert done.returncode == 1
    by_eye, kiln = map(json.loads, done.stdout.splitlines())
    assert set(by_eye) == {"layout", "findings", "accepted", "faults", "cautions", "notes"}
    assert (by_eye["faults"], kiln["faults"]) == (9, 0)
    for finding in by_eye["findings"]:
        assert set(finding) == {
            "rule", "level", "screen", "part", "message", "texts", "count", "area", "remedy",
        }  # fmt: skip
    stale = next(finding for finding in by_eye["findings"] if finding["rule"] == "stale")
    assert stale["texts"] == ["no probe", "0"]
    assert stale["count"] > 0
    assert len(stale["area"]) == 4
    assert stale["remedy"]


def test_measure_prints_each_field() -> None:
    done = run("measure", KILN / "kiln.panel.json")
    assert done.returncode == 0
    for words in (
        "longest",
        "spare left, top, right, bottom",
        "text buffer",
        "`no probe`",
        "`47 h 59 min to go`",
    ):
        assert words in done.stdout
    figures = json.loads(run("measure", "--json", KILN / "kiln.panel.json").stdout)
    chamber = next(figure for figure in figures if figure["field"] == "chamber")
    assert chamber["bytes"] == len(b"no probe") + 1


def test_render_a_moment_its_marks_and_the_sheet(tmp_path: Path) -> None:
    picture = tmp_path / "ramp.png"
    assert (
        run("render", KILN / "kiln.panel.json", "--moment", "ramp", "--scale", "3", "-o", picture).returncode
        == 0
    )
    with Image.open(picture) as image:
        assert image.size == (720, 405)
    again = picture.read_bytes()
    run("render", KILN / "kiln.panel.json", "--moment", "ramp", "--scale", "3", "-o", picture)
    assert picture.read_bytes() == again
    for options in (["--marks"], ["--sheet"]):
        marked = tmp_path / f"{options[0]}.png"
        assert run("render", KILN / "by-eye.panel.json", *options, "-o", marked).returncode == 0
        assert marked.stat().st_size > 1000
    listed = run("render", KILN / "kiln.panel.json", "--list").stdout
    assert "probe-lost" in listed
    assert "readings:longest" in listed or "longest" in listed


def test_render_knows_the_nearest_moment() -> None:
    done = run("render", KILN / "kiln.panel.json", "--moment", "rump")
    assert done.returncode == 2
    assert "`ramp`" in done.stderr


def test_export_verify_and_what_differs(tmp_path: Path) -> None:
    header = tmp_path / "kiln.h"
    assert run("export", KILN / "kiln.panel.json", "-o", header).returncode == 0
    done = run("export", KILN / "kiln.panel.json", "--verify", header)
    assert (done.returncode, "up to date" in done.stdout) == (0, True)
    text = header.read_text(encoding="ascii")
    nudged = text.replace("KILN_READINGS_UNIT_X         203", "KILN_READINGS_UNIT_X         204")
    assert nudged != text
    header.write_text(nudged, encoding="ascii")
    done = run("export", KILN / "kiln.panel.json", "--verify", header)
    assert done.returncode == 1
    assert "KILN_READINGS_UNIT_X" in done.stdout
    assert "203" in done.stdout
    assert "204" in done.stdout


def test_export_writes_no_header_with_faults_in_it(tmp_path: Path) -> None:
    header = tmp_path / "by_eye.h"
    done = run("export", KILN / "by-eye.panel.json", "-o", header)
    assert done.returncode == 1
    assert not header.exists()
    assert run("export", KILN / "by-eye.panel.json", "-o", header, "--despite-faults").returncode == 0
    assert header.exists()


def test_schema_and_the_examples_agree() -> None:
    """Validated with the jsonschema package (JSON Schema 2020-12)."""
    schema = json.loads(run("schema").stdout)
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema)
    for example in sorted((ROOT / "examples").rglob("*.panel.json")):
        validator.validate(json.loads(example.read_text(encoding="utf-8")))
    wrong = json.loads((KILN / "kiln.panel.json").read_text(encoding="utf-8"))
    wrong["screens"][0]["parts"][0]["baselin"] = 3
    assert not validator.is_valid(wrong)


def test_fonts_are_listed() -> None:
    done = run("fonts", "SourceSansPro")
    assert done.returncode == 0
    assert "SourceSansProBold" in done.stdout
    done = run("fonts", "SourceSansProBold", "--licence")
    assert "Open Font License" in done.stdout
    assert run("fonts", "no such font at all").returncode == 2


def test_new_writes_a_layout_that_checks_clean_and_never_over_another(tmp_path: Path) -> None:
    path = tmp_path / "rain tank.panel.json"
    assert run("new", path, "--size", "128x64", "--colours", "mono", "--refresh", "whole").returncode == 0
    assert run("check", path).returncode == 0
    before = path.read_bytes()
    assert run("new", path).returncode == 2
    assert path.read_bytes() == before
    assert run("new", tmp_path / "b.panel.json", "--size", "12").returncode == 2
    assert run("new", tmp_path / "b.panel.json", "--size", "240x135", "--shape", "round").returncode == 2
    assert not (tmp_path / "b.panel.json").exists()


def test_written_files_are_canonical() -> None:
    from panelproof.layout.reading import read
    from panelproof.layout.writing import encode

    for example in sorted((ROOT / "examples").rglob("*.panel.json")):
        assert encode(read(example)) == example.read_bytes()


def test_help_and_wrong_words() -> None:
    for words in (["--help"], ["check", "--help"], ["render", "--help"], ["export", "--help"]):
        assert run(*words).returncode == 0
    done = run("chek")
    assert done.returncode == 2
    assert "Traceback" not in done.stderr


@pytest.mark.skipif(os.geteuid() == 0, reason="root may write everywhere")
def test_a_folder_that_cannot_be_written(tmp_path: Path) -> None:
    tmp_path.chmod(0o500)
    done = run("export", KILN / "kiln.panel.json", "-o", tmp_path / "kiln.h")
    assert done.returncode == 2


def test_a_reader_that_goes_away_is_no_error(tmp_path: Path) -> None:
    shutil.copy(KILN / "kiln.panel.json", tmp_path / "kiln.panel.json")
    with subprocess.Popen(
        [sys.executable, "-m", "panelproof", "schema"], stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as process:
        assert process.stdout is not None
        process.stdout.close()
        assert process.stderr is not None
        assert process.stderr.read() == b""
