"""Every example: clean, its header what the layout gives, its program drawing every moment pixel for pixel."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest
from PIL import Image
from tests.firmware.harness import LANGUAGES, SANITIZERS, WARNINGS, compiled

from panelproof.firmware.header import header
from panelproof.firmware.verify import differences
from panelproof.layout.reading import read
from panelproof.material import Material, gather
from panelproof.picture.frame import screen_frame
from panelproof.picture.image import image
from panelproof.picture.moments import every_moment
from panelproof.verdict import verdict

EXAMPLES = Path(__file__).parents[2] / "examples"
LAYOUTS = [EXAMPLES / name / f"{name}.panel.json" for name in ("kiln", "rain-tank", "bench-supply")]
each = pytest.mark.parametrize("path", LAYOUTS, ids=lambda path: path.stem.split(".")[0])


def load(path: Path) -> Material:
    return gather(read(path), path.parent)


def test_no_example_is_forgotten() -> None:
    assert {path.parent.name for path in EXAMPLES.glob("*/main.c")} == {path.parent.name for path in LAYOUTS}


@each
def test_it_has_no_fault_and_no_caution(path: Path) -> None:
    told = verdict(load(path))
    assert [finding for finding in told.findings if finding.level != "note"] == []


@each
def test_its_header_is_what_the_layout_gives(path: Path) -> None:
    (on_disk,) = path.parent.glob("*.h")
    assert differences(on_disk.read_text(encoding="ascii"), header(load(path))) == []


@each
@pytest.mark.parametrize(("using", "standard"), LANGUAGES)
def test_its_program_draws_every_moment(path: Path, tmp_path: Path, using: str, standard: str) -> None:
    kind = ["-x", "c++"] if "++" in using else []
    source = path.parent / "main.c"
    options: list[str | Path] = [
        f"-std={standard}",
        "-O1",
        *WARNINGS,
        *SANITIZERS,
        *kind,
        source,
        "-o",
        "device",
    ]
    compiled(tmp_path, options, using)
    subprocess.run([tmp_path / "device", tmp_path], check=True)
    material = load(path)
    named = [moment for moment in every_moment(material) if not moment.automatic]
    assert len(named) >= 12
    for moment in named:
        frame = screen_frame(material, material.screen(moment.screen), moment.values)
        (written,) = tmp_path.glob(f"{moment.name}.p[bp]m")
        with Image.open(written) as drawn:
            assert drawn.convert("RGB").tobytes() == image(frame, material.layout.panel).tobytes(), (
                moment.name
            )
