"""What is installed carries the fonts, icons and starters, which lie at the repository's top."""

from __future__ import annotations

import subprocess
import sys
import zipfile
from pathlib import Path

ROOT = Path(__file__).parents[2]


def test_the_wheel_holds_every_font_and_template(tmp_path: Path) -> None:
    made = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(tmp_path)]
    subprocess.run(made, cwd=ROOT, check=True, capture_output=True)
    (wheel,) = tmp_path.glob("*.whl")
    held = set(zipfile.ZipFile(wheel).namelist())
    fonts = {f"panelproof/fonts_free/{path.name}" for path in (ROOT / "fonts_free").glob("*.bdf")}
    assert len(fonts) == 16
    templates = {
        f"panelproof/firmware/templates/{path.name}"
        for path in (ROOT / "app/panelproof/firmware/templates").iterdir()
    }
    layouts = {
        f"panelproof/layouts/{path.relative_to(ROOT / 'layouts')}"
        for path in (ROOT / "layouts").rglob("*")
        if path.is_file() and "gallery" not in path.parts and path.suffix != ".pyc"
    }
    wanted = fonts | templates | layouts | {"panelproof/fonts_free/LICENCE", "panelproof/py.typed"}
    assert wanted - held == set()
    assert not [name for name in held if name.startswith(("tests/", "examples/", "app/"))]
