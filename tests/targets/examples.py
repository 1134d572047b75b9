"""The examples that are proved clean, found by what lies there."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from panelproof.firmware.header import header
from panelproof.layout.reading import read
from panelproof.material import Material, gather
from panelproof.proof.check import prove

ROOT = Path(__file__).parents[2]


@cache
def clean() -> dict[str, Material]:
    """Return the examples without a fault, by file name."""
    found = {}
    for path in sorted((ROOT / "examples").glob("*/*.panel.json")):
        material = gather(read(path), path.parent)
        if not any(finding.level == "fault" for finding in prove(material)):
            found[path.name.removesuffix(".panel.json")] = material
    return found


@cache
def header_of(material: Material) -> str:
    """Return a layout's header."""
    return header(material)
