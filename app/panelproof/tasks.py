"""What each command does, once its words are understood."""

from __future__ import annotations

import json
import sys
import time
from argparse import Namespace
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from panelproof.command import CLEAN, FAULTY, UNUSABLE
from panelproof.material import Material, gather
from panelproof.problem import Problem
from panelproof.proof.finding import Finding

if TYPE_CHECKING:
    from PIL.Image import Image

    from panelproof.layout.document import Screen
    from panelproof.picture.values import Values


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
    from panelproof.layout.starting import starter, starter_panel  # noqa: PLC0415
    from panelproof.layout.writing import write  # noqa: PLC0415

    if options.layout.exists():
        raise Problem(
            "there is a file of this name already; choose another or remove it", str(options.layout)
        )
    panel = starter_panel(
        options.size, options.colours, options.shape, options.corner_radius, options.refresh
    )
    write(starter(options.layout.name.removesuffix(".json").removesuffix(".panel"), panel), options.layout)
    print(f"wrote {options.layout}")
    return CLEAN


def render(options: Namespace) -> int:
    """Write a picture of one moment, or of all."""
    from panelproof.layout.saving import save  # noqa: PLC0415
    from panelproof.picture.image import image, png  # noqa: PLC0415
    from panelproof.picture.moments import every_moment, moment  # noqa: PLC0415
    from panelproof.picture.sheet import sheet  # noqa: PLC0415

    material = load(options.layout)
    with _placed(options.layout):
        every = every_moment(material)
        if options.list:
            print("\n".join(f"{one.name}  ({one.screen}: {one.title})" for one in every))
            return CLEAN
        if not every:
            raise Problem("the layout has no screen, so there is nothing to draw", "screens")
        if options.sheet:
            name, picture = "sheet", sheet(material, options.scale)
        else:
            shown = moment(material, options.moment) if options.moment else every[0]
            name, screen = shown.name.replace(":", "-"), material.screen(shown.screen)
            if options.marks:
                picture = _marked(material, screen, shown.values, options.scale or 4)
            else:
                from panelproof.picture.frame import screen_frame  # noqa: PLC0415

                frame = screen_frame(material, screen, shown.values)
                picture = image(frame, material.layout.panel, options.scale or 4)
    output = options.output or options.layout.parent / f"{name}.png"
    save(output, png(picture))
    print(f"wrote {output} ({picture.width} × {picture.height})")
    return CLEAN


def _marked(material: Material, screen: Screen, values: Values, scale: int) -> Image:
    """Draw a screen with its footprints, padding boxes and findings."""
    from panelproof.picture.marks import Overlay, footprints, marks  # noqa: PLC0415
    from panelproof.proof.check import prove_screen  # noqa: PLC0415
    from panelproof.proof.extent import stage  # noqa: PLC0415

    overlays = [
        Overlay(
            "stale" if finding.rule == "stale" else "finding",
            finding.part,
            finding.pixels,
            f"{finding.rule}, {finding.part}: {finding.message}",
        )
        for finding in prove_screen(stage(material, screen))
        if finding.pixels
    ]
    return marks(material, screen, values, scale, [*footprints(material, screen), *overlays])


@contextmanager
def _placed(path: Path) -> Iterator[None]:
    """Put the file's name before the place of a problem."""
    try:
        yield
    except Problem as problem:
        raise Problem(problem.message, f"{path}: {problem.place}" if problem.place else str(path)) from None


def export(options: Namespace) -> int:
    """Write the header, or compare the one on disk with what the layout gives now."""
    from panelproof.firmware.header import header  # noqa: PLC0415
    from panelproof.layout.saving import save  # noqa: PLC0415

    material = load(options.layout)
    with _placed(options.layout):
        now = header(material)
    if options.verify:
        return _verify(options.verify, now)
    faults = [finding for finding in _proved(material) if finding.level == "fault"]
    if faults:
        from panelproof import report  # noqa: PLC0415

        print(report.as_text(options.layout, material, faults), file=sys.stderr)
        if not options.despite_faults:
            print(
                "panelproof: no header was written; mend the faults, or use --despite-faults", file=sys.stderr
            )
            return FAULTY
    output = options.output or options.layout.parent / f"{material.layout.name.replace('-', '_')}.h"
    save(output, now.encode())
    print(f"wrote {output}")
    return CLEAN


def _verify(path: Path, now: str) -> int:
    from panelproof.firmware.verify import differences  # noqa: PLC0415
    from panelproof.layout.saving import in_words  # noqa: PLC0415

    try:
        on_disk = path.read_bytes().decode()
    except OSError as error:
        raise Problem(f"the header cannot be read ({in_words(error)})", str(path)) from None
    except UnicodeDecodeError:
        raise Problem("this is no header of Panelproof: it is not UTF-8 text", str(path)) from None
    differing = differences(on_disk, now)
    for sentence in differing:
        print(f"{path}: {sentence}")
    if not differing:
        print(f"{path}: up to date")
    return FAULTY if differing else CLEAN


def desktop(options: Namespace) -> int:
    """Install or remove what a Linux desktop needs to know."""
    from panelproof.editor.desktop import install, remove  # noqa: PLC0415

    paths = remove() if options.remove else install()
    for path in paths:
        print(f"{'removed' if options.remove else 'wrote'} {path}")
    return CLEAN


TASKS: dict[str, Callable[[Namespace], int]] = {
    "check": check,
    "measure": measure,
    "render": render,
    "export": export,
    "schema": schema,
    "fonts": fonts,
    "new": new,
    "desktop": desktop,
}
