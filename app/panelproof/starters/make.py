"""Setting a starter on a panel: attempts from the largest type down, until the proof finds one clean."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from msgspec.structs import replace

from panelproof.layout.checking import check_references
from panelproof.layout.colour import ColourFormat
from panelproof.layout.document import FORMAT, Ink, Layout, Screen
from panelproof.layout.fitting import fitting
from panelproof.layout.panel import Panel, Refresh, Shape
from panelproof.layout.reading import valid
from panelproof.material import Material, gather
from panelproof.problem import Problem
from panelproof.proof.characters import alphabet, height, pitch_mm
from panelproof.proof.check import prove
from panelproof.proof.extent import stage
from panelproof.proof.height import least_pixels
from panelproof.starters.arrange import ARRANGEMENTS
from panelproof.starters.description import Description, claiming, description, descriptions, refusal
from panelproof.starters.panels import USUAL, panel_of
from panelproof.starters.piece import NoRoom
from panelproof.starters.theme import theme

ROUND_MM = (*range(2000, 1000, -250), *range(1000, 250, -50), *range(250, 0, -10))
"""Reading distances in millimetres, greatest first."""
EMPTY = "empty"
"""The starter that is none: one screen without parts."""


def own_panel(
    size: tuple[int, int],
    colours: ColourFormat,
    shape: Shape,
    corner_radius: int,
    refresh: Refresh,
    *,
    palette: tuple[str, ...] = (),
) -> Panel:
    """Return a panel of `size` (width, height) pixels; raises Problem, its place in ``panel``.

    An `indexed` panel without a palette is black and white.
    """
    if colours == "indexed" and not palette:
        palette = ("#000000", "#ffffff")
    panel = Panel(*size, colours, shape, corner_radius, refresh, palette=palette)
    bare = Layout(FORMAT, "panel", panel, inks=(Ink("ground", "#000000"),))
    check_references(valid(bare))
    return panel


def chosen_panel(
    listed: str | None = None,
    *,
    size: tuple[int, int] | None = None,
    colours: ColourFormat | None = None,
    shape: Shape | None = None,
    corner_radius: int | None = None,
    refresh: Refresh | None = None,
    palette: Sequence[str] | None = None,
) -> Panel:
    """Return the panel that a command's options mean: a listed one or one's own; raises Problem."""
    own = (size, colours, shape, corner_radius, refresh, palette)
    if listed is not None and any(option is not None for option in own):
        raise Problem("give --panel, or the size and colours of a panel of your own, not both", "--panel")
    if all(option is None for option in own):
        return panel_of(listed or USUAL).panel
    return own_panel(
        size or (240, 135), colours or "rgb565", shape or "rectangular", corner_radius or 0,
        refresh or "part", palette=tuple(palette or ()),
    )  # fmt: skip


def empty(name: str, panel: Panel) -> Layout:
    """Return a layout with one screen and nothing on it, with inks that the panel can tell apart."""
    inks = theme(panel)
    used = ("ground", "text") if panel.colour_format != "rgb565" else ("ground", "text", "quiet", "accent")
    return Layout(
        FORMAT, fitting(name), panel, (), inks.inks(set(used)), (Screen("main", inks.name("ground")),)
    )


def best(panel: Panel) -> str:
    """Return the starter made most closely for a panel; raises Problem where none claims it."""
    claimed = claiming(panel)
    if not claimed:
        name, least = min(
            ((name, one.claims.least) for name, one in descriptions().items()), key=lambda one: one[1]
        )
        raise Problem(
            f"no starter is for {panel.width} × {panel.height} pixels; the smallest, `{name}`, "
            f"needs {least[0]} × {least[1]}; take `{EMPTY}`"
        )
    return claimed[0]


def make(starter: str, panel: Panel, name: str) -> Layout:
    """Return a starter set on a panel, proved: no fault and no caution.

    Raises Problem for an unknown starter, one that does not claim the panel, or one that finds no room.
    """
    if starter == EMPTY:
        return empty(name, panel)
    plan = description(starter)
    reason = refusal(plan.claims, panel)
    if reason is not None:
        others = [f"`{one}`" for one in claiming(panel)[:3]]
        offer = f"take {' or '.join(others)}" if others else f"take `{EMPTY}`"
        raise Problem(f"the starter `{starter}` {reason}; {offer}")
    layout = _first_clean(starter, plan, panel, fitting(name))
    if layout is None:
        raise Problem(
            f"the starter `{starter}` found no setting on {panel.width} × {panel.height} pixels that proves clean; "
            f"take another, or `{EMPTY}`"
        )
    return layout


def _first_clean(starter: str, plan: Description, panel: Panel, name: str) -> Layout | None:
    for attempt in ARRANGEMENTS[starter](panel, plan):
        try:
            layout = valid(attempt().layout(name))
        except NoRoom:
            continue
        layout = replace(layout, reading_distance_mm=_distance(gather(layout, Path())))
        if all(finding.level == "note" for finding in prove(gather(layout, Path()))):
            return layout
    return None


def _distance(material: Material) -> float | None:
    """Return the greatest round distance in mm from which every text is high enough, None where no size is known."""
    pitch = pitch_mm(material.layout.panel)
    prints = [
        extent.footprint
        for screen in material.layout.screens
        for extent in stage(material, screen).extents
        if extent.footprint is not None
    ]
    heights = [high.pixels for one in prints if (high := height(one.type, alphabet(one.graph)))]
    if pitch is None or not heights:
        return None
    return next((float(far) for far in ROUND_MM if least_pixels(pitch, far) <= min(heights)), None)
