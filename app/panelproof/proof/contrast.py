"""contrast: every text, icon and meter stands out against what is really behind it, in the colours the panel shows.

Source: WCAG 2.2, 1.4.3 and 1.4.11: text 4.5, large text 3 (18 pt, or 14 pt bold), parts and graphics 3. A point is a 72nd
of an inch on the glass; where the panel's size is not given no text counts as large. Lines and outlines only have to be
seen at all. Ink counts as not standing out where a twentieth of it, or more, lies on such a ground.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

import msgspec

from panelproof.layout import level
from panelproof.layout.colour import Colours, Rgb, quantise, shown, written
from panelproof.layout.parts import Box, Field, Icon, Label, Meter, Rule
from panelproof.material import Material
from panelproof.proof.behind import Behind, behind, inked
from panelproof.proof.characters import large
from panelproof.proof.extent import Extent, Stage, stage
from panelproof.proof.finding import Change, Finding, Remedy
from panelproof.proof.words import listed
from panelproof.sight.luminance import contrast

NAME = "contrast"
TEXT, LARGE_TEXT, GRAPHIC = 4.5, 3.0, 3.0
SHARE = 20
"""One in so many inked pixels on a ground that is too near is too many."""


class Use(NamedTuple):
    """One ink of one part: what it paints (`what`, for a message), on which grounds, and the ratio it needs.

    `states` are the icon's states, or the one limit of a meter, that paint it; `key` is the key that names it.
    """

    ink: str
    behind: Behind
    needed: float
    what: str
    states: tuple[str, ...] = ()
    key: str = "ink"


def findings(stage: Stage, *, proposing: bool = True) -> Iterator[Finding]:
    """Yield each part whose ink is too near to what lies behind it; without `proposing` no other ink is looked for."""
    for number, extent in enumerate(stage.extents):
        if isinstance(extent.part, Rule | Box):
            yield from _unseen(stage, number, extent)
        elif extent.ink:
            for use in uses(stage, number):
                found = _judged(stage.material.code(use.ink), use.behind, use.needed, _colours(stage))
                if found:
                    remedy = _remedy(stage, extent, use) if proposing else None
                    yield _finding(stage, extent, use, *found, remedy=remedy)


def _colours(stage: Stage) -> Colours:
    return stage.material.layout.panel.colours


def uses(stage: Stage, number: int) -> Iterator[Use]:
    """Yield each ink of a part that has to stand out."""
    extent, material = stage.extents[number], stage.material
    part = extent.part
    if isinstance(part, Label | Field):
        big = large(material.types[part.type], material.layout.panel)
        what = "text as large as this" if big else "text"
        yield Use(part.ink, behind(stage, number), LARGE_TEXT if big else TEXT, what)
    elif isinstance(part, Icon):
        grounds = behind(stage, number)
        for ink in dict.fromkeys(state.ink or part.ink for state in part.states):
            states = tuple(state.name for state in part.states if (state.ink or part.ink) == ink)
            yield Use(ink, grounds, GRAPHIC, "an icon", states, "states")
    elif isinstance(part, Meter):
        for ink in level.inks(part):
            yield Use(
                ink, behind(stage, number), GRAPHIC, "a meter", (), "ink" if ink == part.ink else "limits"
            )


@lru_cache(maxsize=4096)
def _judged(code: int, grounds: Behind, needed: float, colours: Colours) -> tuple[float, int] | None:
    """Return the least ratio among the grounds that are too near, and that ground; None where all is well."""
    ink, total = shown(code, colours), sum(count for _, count in grounds)
    near = [
        (ratio, ground, count)
        for ground, count in grounds
        if (ratio := contrast(ink, shown(ground, colours))) < needed
    ]
    if sum(count for *_, count in near) * SHARE < max(total, 1):
        return None
    ratio, ground, _ = min(near)
    return ratio, ground


def _rounded(ratio: float) -> str:
    # Downwards, so that what falls short of a limit never reads as the limit.
    return f"{int(ratio * 100) / 100:.2f}:1"


def _finding(
    stage: Stage, extent: Extent, use: Use, ratio: float, ground: int, *, remedy: Remedy | None
) -> Finding:
    material, colours = stage.material, _colours(stage)
    ink = shown(material.code(use.ink), colours)
    where = (
        f"state{'s' if len(use.states) > 1 else ''} {listed([f'`{one}`' for one in use.states])}: "
        if use.states
        else ""
    )
    return Finding(
        NAME, "caution", stage.screen.name, extent.name,
        f"{where}ink `{use.ink}`, which the panel shows as {written(ink)}, has a contrast of {_rounded(ratio)} to "
        f"{_ground_name(stage, extent, ground)}, shown as {written(shown(ground, colours))}; "
        f"{use.what} needs {use.needed:g}:1",
        use.states, 0, inked(extent), remedy,
    )  # fmt: skip


def _ground_name(stage: Stage, extent: Extent, code: int) -> str:
    material = stage.material
    likely = [getattr(extent.part, "ground", None), stage.screen.ground, *material.inks]
    name = next((name for name in likely if name and material.code(name) == code), "")
    return f"`{name}` behind it" if name else "what lies behind it"


# -- remedies ----------------------------------------------------------------------------------------------


@lru_cache(maxsize=4)
def _demands(material: Material) -> dict[str, frozenset[tuple[frozenset[int], float]]]:
    """Return for each ink what it lies on anywhere, and the ratio needed there."""
    found: dict[str, set[tuple[frozenset[int], float]]] = {}
    for screen in material.layout.screens:
        stage_ = stage(material, screen)
        for number in range(len(stage_.extents)):
            for use in uses(stage_, number):
                grounds = frozenset(code for code, _ in use.behind)
                found.setdefault(use.ink, set()).add((grounds, use.needed))
    return {ink: frozenset(demands) for ink, demands in found.items()}


@lru_cache(maxsize=4)
def _grounds(material: Material) -> frozenset[str]:
    """Return the inks that lie under something."""
    found: set[str | None] = set()
    for screen in material.layout.screens:
        found.add(screen.ground)
        for part in screen.parts:
            found |= {getattr(part, "ground", None), getattr(part, "fill", None)}
    return frozenset(name for name in found if name)


@lru_cache(maxsize=1024)
def least(rgb: Rgb, grounds: frozenset[int], needed: float, colours: Colours) -> float:
    """Return how far a colour's least contrast to some grounds, as shown, exceeds what is needed (below 0: it does not)."""
    ink = shown(quantise(rgb, colours), colours)
    return min((contrast(ink, shown(ground, colours)) for ground in grounds), default=21.0) - needed


@lru_cache(maxsize=256)
def _shade(rgb: Rgb, demands: frozenset[tuple[frozenset[int], float]], colours: Colours) -> Rgb | None:
    from panelproof.sight.shade import nearest  # noqa: PLC0415 - only where something is found

    return nearest(rgb, lambda shade: all(least(shade, *demand, colours) >= 0 for demand in demands))


def _remedy(stage: Stage, extent: Extent, use: Use) -> Remedy | None:
    """Return the nearest shade of the ink that serves wherever it is used, else the nearest other ink."""
    material, colours = stage.material, _colours(stage)
    grounds = frozenset(code for code, _ in use.behind)
    old = material.inks[use.ink]
    if colours.blends and use.ink not in _grounds(material):
        shade = _shade(old, _demands(material)[use.ink], colours)
        if shade is not None:
            words = f"ink `{use.ink}` {written(old)} → {written(shade)}: {_reached(shade, grounds, colours)}"
            return _safe(stage, Remedy(words, (Change(use.ink, "colour", written(shade), "ink"),)))
    able = [name for name, rgb in material.inks.items() if least(rgb, grounds, use.needed, colours) >= 0]
    if able:
        name = min(
            able, key=lambda one: sum((a - b) ** 2 for a, b in zip(material.inks[one], old, strict=True))
        )
        words = f"ink `{name}`: {_reached(material.inks[name], grounds, colours)}"
        return _safe(stage, Remedy(words, _other_ink(extent, use, name)))
    if colours.blends:
        shade = _shade(old, frozenset([(grounds, use.needed)]), colours)
        if shade is not None:
            return Remedy(f"an ink of its own, {written(shade)}: {_reached(shade, grounds, colours)}")
    return None


def _safe(stage: Stage, remedy: Remedy) -> Remedy:
    """Return the remedy, without its changes where what is seen then stays behind on a screen that does not clear."""
    from panelproof.proof.mending import tried  # noqa: PLC0415 - only where something is found

    material = stage.material
    if all(screen.clears for screen in material.layout.screens):
        return remedy
    return remedy if tried(material, stage.screen.name, remedy.changes) else Remedy(remedy.sentence)


def _reached(rgb: Rgb, grounds: frozenset[int], colours: Colours) -> str:
    return f"contrast {_rounded(least(rgb, grounds, 0.0, colours))}"


def _other_ink(extent: Extent, use: Use, name: str) -> tuple[Change, ...]:
    part = extent.part
    if isinstance(part, Icon):
        states = [
            msgspec.structs.replace(state, ink=name) if (state.ink or part.ink) == use.ink else state
            for state in part.states
        ]
        return (Change(extent.name, "states", msgspec.to_builtins(states)),)
    if isinstance(part, Meter) and use.key == "limits":
        limits = [
            msgspec.structs.replace(limit, ink=name) if limit.ink == use.ink else limit
            for limit in part.limits
        ]
        return (Change(extent.name, "limits", msgspec.to_builtins(limits)),)
    return (Change(extent.name, "ink", name),)


# -- lines and outlines ------------------------------------------------------------------------------------


def _unseen(stage: Stage, number: int, extent: Extent) -> Iterator[Finding]:
    """Yield a line, or the outline of a box without fill, of the very colour that lies behind it."""
    part = extent.part
    if isinstance(part, Box) and (part.fill or not part.outline):
        return
    if not extent.ink or any(code not in extent.ink_codes for code, _ in behind(stage, number)):
        return
    colour = written(shown(next(iter(extent.ink_codes)), _colours(stage)))
    what = "line" if isinstance(part, Rule) else "outline"
    yield Finding(
        NAME, "caution", stage.screen.name, extent.name,
        f"the {what} cannot be seen: the panel shows it and what lies behind it as {colour}",
        (), 0, inked(extent),
    )  # fmt: skip
