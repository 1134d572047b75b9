"""What the commands are told wrongly: each gives one sentence with the place, and nothing that was there is lost."""

from __future__ import annotations

import json
import re
import shutil
from pathlib import Path

import pytest

from panelproof.command import main

EXAMPLES = Path(__file__).parents[2] / "examples"
RAW = 2 * 240 * 135


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    for name in ("kiln.panel.json", "by-eye.panel.json", "kiln.h"):
        shutil.copy(EXAMPLES / "kiln" / name, tmp_path)
    shutil.copy(EXAMPLES / "rain-tank" / "rain_tank.h", tmp_path)
    (tmp_path / "dir").mkdir()
    for name in ("empty.png", "empty.h", "empty"):
        (tmp_path / name).write_bytes(b"")
    (tmp_path / "latin.h").write_bytes(b"/* \xff */")
    (tmp_path / "bad.png").write_bytes(b"\x89PNG\r\n\x1a\nxxxx")
    (tmp_path / "cut.ppm").write_bytes(b"P6 240 135 255\n" + bytes(10))
    (tmp_path / "odd.ppm").write_bytes(b"P6 10 10 255\n" + bytes(300))
    (tmp_path / "bomb.ppm").write_bytes(b"P6 99999 99999 255\n" + bytes(300))
    (tmp_path / "short.565").write_bytes(bytes(99))
    (tmp_path / "frame.565").write_bytes(bytes(RAW))
    (tmp_path / "frame.bin").write_bytes(bytes(RAW))
    monkeypatch.chdir(tmp_path)
    return tmp_path


def _kept(folder: Path) -> dict[str, bytes]:
    return {str(path): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


COMPARE = "compare kiln.panel.json --moment ramp"
WRONG = {
    "mend gone.panel.json": "gone.panel.json: the file cannot be read: there is no such file or folder",
    "mend by-eye.panel.json -o dir": "dir: the file cannot be written: this is a folder",
    "mend by-eye.panel.json -o away/x.panel.json": "away/x.panel.json: there is no folder `away` to write it to",
    "measure --cost gone": "gone: the file cannot be read",
    "render kiln.panel.json --moment nope": "kiln.panel.json: --moment: there is no moment `nope`",
    "render kiln.panel.json --moment=": "kiln.panel.json: --moment: there is no moment",
    "render kiln.panel.json -o x.jpg": "x.jpg: the picture is written as PNG",
    "render kiln.panel.json -o kiln.panel.json": "kiln.panel.json: the picture is written as PNG",
    "render kiln.panel.json --sheet --scale 32": "--scale: at this scale there would be",
    "render kiln.panel.json --sheet --marks": "--sheet: a sheet shows all moments",
    "export kiln.panel.json -o dir": "dir: the file cannot be written: this is a folder",
    "export kiln.panel.json -o kiln.panel.json": "kiln.panel.json: this file is read",
    "export kiln.panel.json --depends kiln.panel.json": "kiln.panel.json: this file is read",
    "export kiln.panel.json -o x --depends x": "x: this file is read",
    "export kiln.panel.json --verify gone.h": "gone.h: the header cannot be read: there is no such file",
    "export kiln.panel.json --verify dir": "dir: the header cannot be read: this is a folder",
    "export kiln.panel.json --verify latin.h": "latin.h: this is no header of Panelproof",
    "export kiln.panel.json --verify kiln.h -o x.h": "--verify: verifying writes nothing",
    "adopt kiln.panel.json gone.h": "gone.h: the header cannot be read: there is no such file",
    "adopt kiln.panel.json empty.h": "empty.h: it is not a whole header",
    "adopt kiln.panel.json latin.h": "latin.h: this is no header of Panelproof",
    "adopt kiln.panel.json rain_tank.h": "rain_tank.h: it is of the layout `rain-tank`",
    "bake kiln.panel.json --type nope": "--type: there is no type `nope`",
    "sheet kiln.panel.json -o x.txt": "x.txt: a sheet's name ends in .pdf or .html",
    "sheet kiln.panel.json -o away/x.html": "away/x.html: there is no folder `away`",
    f"{COMPARE} gone.png": "gone.png: the capture cannot be read",
    f"{COMPARE} dir": "dir: the capture cannot be read: this is a folder",
    f"{COMPARE} empty": "empty: the suffix does not say",
    f"{COMPARE} empty.png": "empty.png: this is no picture file",
    f"{COMPARE} bad.png": "bad.png: this is no picture file",
    f"{COMPARE} cut.ppm": "cut.ppm: the picture is damaged or cut short",
    f"{COMPARE} bomb.ppm": "bomb.ppm: the picture is damaged or cut short",
    f"{COMPARE} odd.ppm": "odd.ppm: the picture is 10 × 10 pixels",
    f"{COMPARE} short.565": "short.565: the file has 99 bytes",
    f"{COMPARE} frame.bin": "frame.bin: the suffix does not say",
    f"{COMPARE} frame.565 --as pages": "frame.565: a frame of 65536 colours cannot be read as `pages`",
    f"{COMPARE} frame.565 --shows nope": "--shows: `nope` is no PART=VALUE",
    f"{COMPARE} frame.565 --shows nope=1": "--shows: nothing called `nope`",
    f"{COMPARE} frame.565 -o frame.565": "frame.565: the picture is written as PNG",
    f"{COMPARE} bad.png -o bad.png": "bad.png: this file is read",
    f"{COMPARE} odd.ppm --photo --as rgb565": "--as: a photograph is a picture",
    f"{COMPARE} odd.ppm --corners nan,0 9,0 9,9 0,9": "--corners: a corner is X,Y",
    "compare kiln.panel.json frame.565 --moment nope": "kiln.panel.json: --moment: there is no moment `nope`",
    "panels nope": "no panel's id, kind or size holds `nope`",
    "fonts nopenope": "no font's name holds `nopenope`",
    "starters --panel nope": "there is no panel `nope`",
    "new kiln.panel.json": "kiln.panel.json: there is a file of this name already",
    "new dir": "dir: there is a folder of this name already",
    "new x.txt": "x.txt: a layout's name ends in .panel.json",
    "new away/x.panel.json": "away/x.panel.json: there is no folder `away`",
    "new x.panel.json --starter nope": "there is no starter `nope`",
    "new x.panel.json --size 0x0": "panel.width: the number 0 is outside its limits",
    "new x.panel.json --size 99999x9": "panel.width: the number 99999 is outside its limits",
}


@pytest.mark.parametrize("words", WRONG)
def test_one_sentence_and_nothing_lost(folder: Path, words: str, capsys: pytest.CaptureFixture[str]) -> None:
    before = _kept(folder)
    try:
        code = main(words.split())
    except SystemExit as end:  # how argparse ends
        code = end.code if isinstance(end.code, int) else -1
    said = capsys.readouterr()
    assert code == 2, said
    assert WRONG[words] in said.err
    assert "Traceback" not in said.err
    assert len(said.err.strip().splitlines()) == (2 if "Try `" in said.err else 1)
    assert "carried out" not in said.out, "told as done, though nothing was written"
    assert _kept(folder) == before


NUDGED = {
    "(" * 5000 + "1" + ")" * 5000: (1, "KILN_READINGS_CHAMBER_X"),
    "(1/0)": (1, "cannot be worked out"),
    "KILN_READINGS_CHAMBER_X": (1, "refers to itself"),
    "99999999999999": (2, "outside its limits"),
}


@pytest.mark.parametrize("number", NUDGED, ids=["deep", "by zero", "itself", "huge"])
def test_a_constant_that_is_no_coordinate(
    folder: Path, number: str, capsys: pytest.CaptureFixture[str]
) -> None:
    text = (folder / "kiln.h").read_text(encoding="utf-8")
    nudged = re.sub(r"(#define KILN_READINGS_CHAMBER_X +)\d+", lambda match: match[1] + number, text)
    assert nudged != text
    (folder / "kiln.h").write_text(nudged, encoding="utf-8")
    before = _kept(folder)
    code, words = NUDGED[number]
    assert main(["adopt", "kiln.panel.json", "kiln.h"]) == code
    said = capsys.readouterr()
    assert words in said.out + said.err
    assert _kept(folder) == before


def test_the_cost_of_a_field_that_lies_beyond_the_panel(folder: Path) -> None:
    tree = json.loads((folder / "kiln.panel.json").read_text(encoding="utf-8"))
    field = next(part for part in tree["screens"][1]["parts"] if part["name"] == "chamber")
    field["padding"] = [300, 30, 192, 50]
    (folder / "kiln.panel.json").write_text(json.dumps(tree), encoding="utf-8")
    assert main(["measure", "--cost", "kiln.panel.json"]) == 0
