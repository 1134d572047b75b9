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
from panelproof.proof.words import counted, grouped, quoted

if TYPE_CHECKING:
    from panelproof.glyphs.catalogue import FontEntry
    from panelproof.ink.mask import Area
    from panelproof.mending import Mended
    from panelproof.proof.measure import Measure, MeterMeasure
    from panelproof.verdict import Verdict


def tally(found: Sequence[Finding]) -> dict[str, int]:
    """Count findings by level."""
    return {level: sum(finding.level == level for finding in found) for level in LEVELS}


def _entries(finding: Finding) -> dict[str, object]:
    return {
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


def as_json(path: Path, found: Verdict) -> str:
    """Return one file's findings as one line of JSON."""
    counts = tally(found.findings)
    return json.dumps(
        {
            "layout": str(path),
            "findings": [_entries(finding) for finding in found.findings],
            "accepted": [
                _entries(one.finding) | {"accepted_by": one.part, "reason": one.reason}
                for one in found.accepted
            ],
            "faults": counts["fault"],
            "cautions": counts["caution"],
            "notes": counts["note"],
        },
        ensure_ascii=False,
    )


def _where(finding: Finding) -> str:
    return " / ".join(filter(None, (finding.screen, finding.part))) or "the layout"


def as_text(path: Path, material: Material, found: Verdict) -> str:
    """Return one file's findings for a person."""
    layout = material.layout
    fields = [part for screen in layout.screens for part in screen.parts if isinstance(part, Field)]
    texts = sum(field_graph(field).count() for field in fields)
    lines = [
        f"{path}: {layout.panel.width} × {layout.panel.height} {layout.panel.colour_format}, "
        f"{counted(len(layout.screens), 'screen')}, {counted(len(fields), 'field')}, "
        f"{grouped(texts)} {'text' if texts == 1 else 'texts'} proved"
    ]
    for finding in found.findings:
        where = _where(finding)
        at = (
            f" [{finding.area[2]} × {finding.area[3]} at {finding.area[0]}, {finding.area[1]}]"
            if finding.area
            else ""
        )
        lines.append(f"  {finding.level}: {finding.rule}: {where}{at}")
        lines.append(f"      {finding.message}")
        if finding.remedy:
            lines.append(f"      remedy: {finding.remedy.sentence}")
    for one in found.accepted:
        lines.append(f"  accepted: {one.finding.rule}: {_where(one.finding)}")
        lines.append(f"      {one.finding.message}")
        lines.append(f"      reason given by `{one.part}`: {one.reason}")
    counts = tally(found.findings)
    summary = ", ".join(counted(number, level) for level, number in counts.items() if number)
    apart = f"; {len(found.accepted)} accepted" if found.accepted else ""
    lines.append(f"  {summary or 'clean: no fault, no caution'}{apart}")
    return "\n".join(lines)


def mended_text(path: Path, found: Mended) -> str:
    """Return what was mended and what is left, for a person."""
    lines = [f"{path}: {counted(len(found.done), 'remedy', 'remedies')} carried out, {len(found.left)} left"]
    for finding in found.done:
        assert finding.remedy is not None
        lines.append(f"  mended: {finding.rule}: {_where(finding)}: {finding.remedy.sentence}")
        lines.append(f"      {finding.message}")
    for left in found.left:
        lines.append(f"  left: {left.finding.level}: {left.finding.rule}: {_where(left.finding)}")
        lines.append(f"      {left.finding.message}")
        lines.append(f"      {left.reason}")
    return "\n".join(lines)


def measures_json(figures: Sequence[Measure], meters: Sequence[MeterMeasure] = ()) -> str:
    """Return every field's figures, then every meter's, as JSON; a field's have the key `field`, a meter's `meter`."""
    listed_ = [asdict(figure) for figure in figures] + [asdict(meter) for meter in meters]
    return json.dumps(listed_, ensure_ascii=False, indent=2)


def _area(area: Area | None) -> str:
    return f"{area[2]} × {area[3]} at {area[0]}, {area[1]}" if area else "none"


def measures_text(figures: Sequence[Measure], meters: Sequence[MeterMeasure] = ()) -> str:
    """Return every field's and meter's figures for a person, one block each."""
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
        if figure.height is not None:
            far = f", to be read from {int(figure.readable_mm)} mm at most" if figure.readable_mm else ""
            rows.append(("characters", f"{figure.height} px high{far}"))
        if figure.missing:
            rows.append(("missing from the type", " ".join(figure.missing)))
        body = tabulate(rows, tablefmt="plain", disable_numparse=True)
        blocks.append(
            f"{figure.screen} / {figure.field}\n" + "\n".join(f"  {line}" for line in body.splitlines())
        )
    for meter in meters:
        rows = [
            ("range", f"{meter.least} to {meter.greatest}"),
            ("rectangle", _area(meter.area)),
            ("one pixel stands for", f"{meter.per_pixel:.4g}; {meter.length} px in all"),
            *(("limit", f"{limit.at}, at pixel {limit.pixel}") for limit in meter.limits),
        ]
        body = tabulate(rows, tablefmt="plain", disable_numparse=True)
        blocks.append(
            f"{meter.screen} / {meter.meter}\n" + "\n".join(f"  {line}" for line in body.splitlines())
        )
    return "\n\n".join(blocks) if blocks else "the layout has no field and no meter"


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
