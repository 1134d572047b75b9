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

if TYPE_CHECKING:
    from PIL.Image import Image

    from panelproof.layout.document import Screen
    from panelproof.picture.moments import ShownMoment
    from panelproof.picture.values import Values
    from panelproof.verdict import Verdict


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


def _proved(material: Material) -> Verdict:
    from panelproof.verdict import verdict  # noqa: PLC0415

    progress = _Progress()
    try:
        return verdict(material, lambda screen: progress(f"proving screen `{screen}`"))
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
        if found.faulty:
            code = max(code, FAULTY)
    return code


def measure(options: Namespace) -> int:
    """Print each field's figures, and each meter's."""
    from panelproof import report  # noqa: PLC0415
    from panelproof.proof.measure import measures, meter_measures  # noqa: PLC0415

    material = load(options.layout)
    if options.cost:
        from panelproof import costreport  # noqa: PLC0415
        from panelproof.firmware.cost import costs  # noqa: PLC0415

        with _placed(options.layout):
            found = costs(material)
        print(costreport.as_json(found) if options.json else costreport.as_text(found))
        return CLEAN
    figures = tuple(measures(material)), tuple(meter_measures(material))
    print(report.measures_json(*figures) if options.json else report.measures_text(*figures))
    return CLEAN


def mend(options: Namespace) -> int:
    """Carry out the remedies that are safe, and say what is left."""
    from panelproof import report  # noqa: PLC0415
    from panelproof.layout.writing import write  # noqa: PLC0415
    from panelproof.mending import mend as mended  # noqa: PLC0415

    progress = _Progress()
    try:
        found = mended(load(options.layout), lambda remedy: progress(f"trying {remedy}"))
    finally:
        progress.done()
    output = options.output or options.layout
    writes = not options.dry_run and (found.done or options.output)
    if writes:
        layout = found.layout
        if output.parent.resolve() != options.layout.parent.resolve():
            from panelproof.editor.files import rebased  # noqa: PLC0415 - only where paths have to follow

            layout = rebased(layout, options.layout.parent, output.parent)
        write(layout, output)
    # Told when it is done: a file that cannot be written leaves nothing carried out.
    print(report.mended_text(options.layout, found))
    if writes:
        print(f"wrote {output}")
    elif options.dry_run:
        print("nothing was written (--dry-run)")
    return FAULTY if any(one.finding.level == "fault" for one in found.left) else CLEAN


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
        raise Problem(f"no font's name holds `{options.search}`")
    print(report.fonts_text(entries, licences=options.licence))
    return CLEAN


def panels(options: Namespace) -> int:
    """List the panels in common use."""
    from panelproof.starters import listing  # noqa: PLC0415

    found = listing.found(options.search)
    if not found:
        raise Problem(f"no panel's id, kind or size holds `{options.search}`")
    print(listing.panels_json(found) if options.json else listing.panels_text(found))
    return CLEAN


def starters(options: Namespace) -> int:
    """List the starters."""
    from panelproof.starters import listing  # noqa: PLC0415
    from panelproof.starters.description import claiming, descriptions  # noqa: PLC0415
    from panelproof.starters.panels import panel_of  # noqa: PLC0415

    names = claiming(panel_of(options.panel).panel) if options.panel is not None else tuple(descriptions())
    print(listing.starters_json(names) if options.json else listing.starters_text(names))
    return CLEAN


def new(options: Namespace) -> int:
    """Write a starter layout, never over a file that is there."""
    from panelproof.layout.writing import write  # noqa: PLC0415
    from panelproof.starters.make import best, chosen_panel, make  # noqa: PLC0415

    if options.layout.exists():
        kind = "folder" if options.layout.is_dir() else "file"
        raise Problem(
            f"there is a {kind} of this name already; choose another or remove it", str(options.layout)
        )
    if options.layout.suffix != ".json":
        raise Problem("a layout's name ends in .panel.json", str(options.layout))
    panel = chosen_panel(
        options.panel,
        size=options.size,
        colours=options.colours,
        shape=options.shape,
        corner_radius=options.corner_radius,
        refresh=options.refresh,
        palette=options.palette,
    )
    starter = best(panel) if options.starter is None else options.starter
    name = options.layout.name.removesuffix(".json").removesuffix(".panel")
    write(make(starter, panel, name), options.layout)
    print(f"wrote {options.layout} (starter `{starter}`, {panel.name or f'{panel.width} × {panel.height}'})")
    return CLEAN


def render(options: Namespace) -> int:
    """Write a picture of one moment, or of all."""
    from panelproof.layout.saving import save  # noqa: PLC0415
    from panelproof.outputs import check_apart, check_pixels, check_png  # noqa: PLC0415
    from panelproof.picture.image import image, png  # noqa: PLC0415
    from panelproof.picture.moments import every_moment  # noqa: PLC0415
    from panelproof.picture.sheet import sheet  # noqa: PLC0415

    if options.sheet and (options.marks or options.moment is not None):
        raise Problem("a sheet shows all moments, without marks; leave --moment and --marks out", "--sheet")
    check_png(options.output)
    check_apart(options.output, options.layout)
    material = load(options.layout)
    with _placed(options.layout):
        every = every_moment(material)
        if options.list:
            print("\n".join(f"{one.name}  ({one.screen}: {one.title})" for one in every))
            return CLEAN
        if not every:
            raise Problem("the layout has no screen, so there is nothing to draw", "screens")
        check_pixels(material.layout.panel, options.scale, len(every) if options.sheet else 1)
        if options.sheet:
            name, picture = "sheet", sheet(material, options.scale)
        else:
            shown = every[0] if options.moment is None else _moment(material, options.moment)
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


def _moment(material: Material, name: str) -> ShownMoment:
    from panelproof.picture.moments import moment  # noqa: PLC0415

    try:
        return moment(material, name)
    except Problem as problem:
        raise Problem(
            problem.message, f"{problem.place}: --moment" if problem.place else "--moment"
        ) from None


def _marked(material: Material, screen: Screen, values: Values, scale: int) -> Image:
    """Draw a screen with its footprints, padding boxes and findings."""
    from panelproof.picture.marks import Overlay, footprints, marks  # noqa: PLC0415
    from panelproof.proof.check import prove_screen  # noqa: PLC0415
    from panelproof.proof.extent import stage  # noqa: PLC0415
    from panelproof.verdict import judged  # noqa: PLC0415

    found = judged(material.layout, prove_screen(stage(material, screen)), (screen.name,))
    overlays = [
        Overlay(
            "stale" if finding.rule == "stale" else "finding",
            finding.part,
            finding.pixels,
            f"{finding.rule}, {finding.part}: {finding.message}",
        )
        for finding in found.findings
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
    from panelproof.outputs import check_apart  # noqa: PLC0415

    if options.verify and (options.output or options.depends):
        raise Problem("verifying writes nothing; leave -o and --depends out", "--verify")
    check_apart(options.output, options.layout)
    check_apart(options.depends, options.layout, options.output)
    material = load(options.layout)
    with _placed(options.layout):
        now = header(material)
    if options.verify:
        return _verify(options.verify, now)
    found = _proved(material)
    if found.faulty:
        from panelproof import report  # noqa: PLC0415

        print(report.as_text(options.layout, material, found.faults), file=sys.stderr)
        if not options.despite_faults:
            print(
                "panelproof: no header was written; mend the faults, or use --despite-faults", file=sys.stderr
            )
            return FAULTY
    output = options.output or options.layout.parent / f"{material.layout.name.replace('-', '_')}.h"
    if options.depends:
        from panelproof.firmware.depends import rule, sources  # noqa: PLC0415

        save(options.depends, rule(output, sources(material, options.layout)).encode())
    save(output, now.encode())
    print(f"wrote {output}")
    return CLEAN


def _verify(path: Path, now: str) -> int:
    from panelproof.firmware.verify import differences  # noqa: PLC0415
    from panelproof.layout.saving import in_words  # noqa: PLC0415

    try:
        on_disk = path.read_bytes().decode()
    except OSError as error:
        raise Problem(f"the header cannot be read: {in_words(error)}", str(path)) from None
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


def compare(options: Namespace) -> int:
    """Hold what a device shows against a moment."""
    from panelproof.device.task import compare as held_against  # noqa: PLC0415

    return held_against(options)


def adopt(options: Namespace) -> int:
    """Take a header's hand-changed values back into its layout."""
    from panelproof.takingback import adopt as taken_back  # noqa: PLC0415

    return taken_back(options)


def bake(options: Namespace) -> int:
    """Write types as bitmap files and point the layout to them."""
    from panelproof.bake import run  # noqa: PLC0415

    return run(options)


def sheet(options: Namespace) -> int:
    """Write a layout's sheet for people."""
    from panelproof.paper.task import sheet as written  # noqa: PLC0415

    return written(options)


TASKS: dict[str, Callable[[Namespace], int]] = {
    "check": check,
    "mend": mend,
    "measure": measure,
    "render": render,
    "export": export,
    "schema": schema,
    "fonts": fonts,
    "panels": panels,
    "starters": starters,
    "new": new,
    "compare": compare,
    "adopt": adopt,
    "bake": bake,
    "sheet": sheet,
    "desktop": desktop,
}
