"""Findings and figures as a person or a program reads them."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING

from panelproof.layout.parts import Field
from panelproof.material import Material, field_graph
from panelproof.proof.finding import LEVELS, Finding
from panelproof.proof.words import counted, quoted

if TYPE_CHECKING:
    from panelproof.glyphs.catalogue import FontEntry
    from panelproof.ink.mask import Area
    from panelproof.proof.measure import Measure


def tally(found: Sequence[Finding]) -> dict[str, int]:
    """Count findings by level."""
    return {level: sum(finding.level == level for finding in found) for level in LEVELS}


def as_json(path: Path, found: Sequence[Finding]) -> str:
    """Return one file's findings as one line of JSON."""
    counts = tally(found)
    findings = [
        {
            "rule": finding.rule,
            "level": finding.level,
            "screen": finding.screen,
            "part": finding.part,
            "message": finding.message,
            "texts": list(finding.texts),
            "count": finding.count,
            "area": list(finding.area) if finding.area else None,
            "remedy": finding.remedy.sentence if finding.remedy else None,
        }
        for finding in found
    ]
    return json.dumps(
        {
            "layout": str(path),
            "findings": findings,
            "faults": counts["fault"],
            "cautions": counts["caution"],
            "notes": counts["note"],
        },
        ensure_ascii=False,
    )


def grouped(number: int) -> str:
    """Return a number with its thousands apart: 4 294 967 296."""
    return f"{number:,}".replace(",", " ") if number < 10**15 else f"{float(number):.1e}"


def as_text(path: Path, material: Material, found: Sequence[Finding]) -> str:
    """Return one file's findings for a person."""
    layout = material.layout
    fields = [part for screen in layout.screens for part in screen.parts if isinstance(part, Field)]
    texts = sum(field_graph(field).count() for field in fields)
    lines = [
        f"{path}: {layout.panel.width} × {layout.panel.height} {layout.panel.colour_format}, "
        f"{counted(len(layout.screens), 'screen')}, {counted(len(fields), 'field')}, "
        f"{grouped(texts)} {'text' if texts == 1 else 'texts'} proved"
    ]
    for finding in found:
        where = " / ".join(filter(None, (finding.screen, finding.part)))
        at = (
            f" [{finding.area[2]} × {finding.area[3]} at {finding.area[0]}, {finding.area[1]}]"
            if finding.area
            else ""
        )
        lines.append(f"  {finding.level}: {finding.rule}: {where}{at}")
        lines.append(f"      {finding.message}")
        if finding.remedy:
            lines.append(f"      remedy: {finding.remedy.sentence}")
    counts = tally(found)
    summary = ", ".join(counted(number, level) for level, number in counts.items() if number)
    lines.append(f"  {summary or 'clean: no fault, no caution'}")
    return "\n".join(lines)


def measures_json(figures: Sequence[Measure]) -> str:
    """Return every field's figures as JSON."""
    return json.dumps([asdict(figure) for figure in figures], ensure_ascii=False, indent=2)


def _area(area: Area | None) -> str:
    return f"{area[2]} × {area[3]} at {area[0]}, {area[1]}" if area else "none"


def measures_text(figures: Sequence[Measure]) -> str:
    """Return every field's figures for a person, one block a field."""
    from tabulate import tabulate  # noqa: PLC0415 - only this report needs it

    blocks = []
    for figure in figures:
        rows = [
            ("texts", grouped(figure.texts)),
            ("longest", f"{quoted(figure.longest.text)}, {figure.longest.pixels} px"),
            ("shortest", f"{quoted(figure.shortest.text)}, {figure.shortest.pixels} px"),
            ("tallest", f"{quoted(figure.tallest.text)}, {figure.tallest.pixels} px"),
            ("ink, and padding needed", _area(figure.ink)),
            ("padding given", _area(figure.padding)),
            ("spare left, top, right, bottom", _spare(figure)),
            ("text buffer", f"{figure.bytes} bytes, for {quoted(figure.bytes_text)}"),
        ]
        if figure.missing:
            rows.append(("missing from the type", " ".join(figure.missing)))
        body = tabulate(rows, tablefmt="plain", disable_numparse=True)
        blocks.append(
            f"{figure.screen} / {figure.field}\n" + "\n".join(f"  {line}" for line in body.splitlines())
        )
    return "\n\n".join(blocks) if blocks else "the layout has no field"


def _spare(figure: Measure) -> str:
    if figure.spare is None:
        return "no padding box"
    return ", ".join(str(side) for side in figure.spare) + " px"


def fonts_text(entries: Sequence[FontEntry], *, licences: bool) -> str:
    """Return a table of fonts, with embedding rights where asked for."""
    from tabulate import tabulate  # noqa: PLC0415

    table: str = tabulate(
        [(entry.name, entry.family, entry.style, entry.kind, entry.origin) for entry in entries],
        headers=["name in a layout", "family", "style", "kind", "from"],
        tablefmt="simple",
        disable_numparse=True,
    )
    if not licences:
        return table
    from panelproof.glyphs.licence import embedding  # noqa: PLC0415
    from panelproof.problem import Problem  # noqa: PLC0415

    lines = [table, ""]
    for entry in entries:
        try:
            lines.append(f"{entry.name}: {embedding(entry.path)}")
        except Problem as problem:
            lines.append(f"{entry.name}: {problem.message}")
    return "\n".join(lines)
