"""What each command does, once its words are understood."""

from __future__ import annotations

import json
import sys
import time
from argparse import Namespace
from collections.abc import Callable
from pathlib import Path

from panelproof.command import CLEAN, FAULTY, UNUSABLE
from panelproof.material import Material, gather
from panelproof.problem import Problem
from panelproof.proof.finding import Finding


class _Progress:
    """A line on standard error that shows where long work stands; nothing where it is not a terminal."""

    def __init__(self) -> None:
        self._began = time.monotonic()
        self._shown = False

    def __call__(self, what: str) -> None:
        if sys.stderr.isatty() and time.monotonic() - self._began > 0.4:
            print(f"\r\033[K{what} …", end="", file=sys.stderr, flush=True)
            self._shown = True

    def done(self) -> None:
        if self._shown:
            print("\r\033[K", end="", file=sys.stderr, flush=True)


def load(path: Path) -> Material:
    """Read a layout and find all it names; raises Problem with the file in its place."""
    from panelproof.layout.reading import read  # noqa: PLC0415

    layout = read(path)
    try:
        return gather(layout, path.parent)
    except Problem as problem:
        raise Problem(problem.message, f"{path}: {problem.place}") from None


def _proved(material: Material) -> tuple[Finding, ...]:
    from panelproof.proof.check import prove  # noqa: PLC0415

    progress = _Progress()
    try:
        return prove(material, lambda screen: progress(f"proving screen `{screen}`"))
    finally:
        progress.done()


def check(options: Namespace) -> int:
    """Prove each file; the worst outcome is the exit code."""
    from panelproof import report  # noqa: PLC0415

    code = CLEAN
    for path in options.layouts:
        try:
            material = load(path)
            found = _proved(material)
        except Problem as problem:
            print(f"panelproof: {problem}", file=sys.stderr)
            code = UNUSABLE
            continue
        print(report.as_json(path, found) if options.json else report.as_text(path, material, found))
        if any(finding.level == "fault" for finding in found):
            code = max(code, FAULTY)
    return code


def measure(options: Namespace) -> int:
    """Print each field's figures."""
    from panelproof import report  # noqa: PLC0415
    from panelproof.proof.measure import measures  # noqa: PLC0415

    figures = tuple(measures(load(options.layout)))
    print(report.measures_json(figures) if options.json else report.measures_text(figures))
    return CLEAN


def schema(_: Namespace) -> int:
    """Print the JSON Schema."""
    from panelproof.layout.schema import schema as layout_schema  # noqa: PLC0415

    print(json.dumps(layout_schema(), indent=2, ensure_ascii=False))
    return CLEAN


def fonts(options: Namespace) -> int:
    """List the fonts that can be used."""
    from panelproof import report  # noqa: PLC0415
    from panelproof.glyphs.catalogue import fonts as all_fonts  # noqa: PLC0415

    wanted = options.search.lower()
    entries = [entry for entry in all_fonts() if wanted in f"{entry.name} {entry.family}".lower()]
    if not entries:
        print(f"panelproof: no font's name holds `{options.search}`", file=sys.stderr)
        return UNUSABLE
    print(report.fonts_text(entries, licences=options.licence))
    return CLEAN


def new(options: Namespace) -> int:
    """Write a starter layout, never over a file that is there."""
    from panelproof.layout.starting import starter_panel, starter  # noqa: PLC0415
    from panelproof.layout.writing import write  # noqa: PLC0415

    if options.layout.exists():
        raise Problem("there is a file of this name already; choose another or remove it", str(options.layout))
    panel = starter_panel(
        options.size, options.colours, options.shape, options.corner_radius, options.refresh
    )
    write(starter(options.layout.name.removesuffix(".json").removesuffix(".panel"), panel), options.layout)
    print(f"wrote {options.layout}")
    return CLEAN


TASKS: dict[str, Callable[[Namespace], int]] = {
    "check": check,
    "measure": measure,
    "schema": schema,
    "fonts": fonts,
    "new": new,
}
