"""A finding acted out: what the glass shows before and after, with the texts that show what goes wrong."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from panelproof.content.graph import Graph
from panelproof.editor.places import View
from panelproof.ink.mask import NOTHING, Mask, rectangle
from panelproof.layout.document import Screen
from panelproof.layout.parts import Field, Icon, Meter, Part
from panelproof.material import field_graph
from panelproof.picture import drawing
from panelproof.picture.frame import Frame, draw, draw_screen, new_frame, screen_frame
from panelproof.picture.moments import automatic
from panelproof.picture.step import step
from panelproof.picture.values import Values
from panelproof.proof.finding import Finding


@dataclass(frozen=True, slots=True)
class Scene:
    """What the glass shows at one time of a replay, the pixels to mark in it, and a sentence."""

    frame: Frame
    marked: Mask
    words: str


def scenes(view: View, finding: Finding) -> tuple[Scene, ...]:
    """Return the scenes of a finding on the view's screen, in order of time; the last one shows what is wrong.

    Texts that the finding does not give are the view's. Raises Problem where the screen cannot be drawn.
    """
    part, other = view.named(finding.part), view.named(finding.other)
    area = _marked(finding)
    if finding.rule == "residue":
        return _left_over(view, finding, area)
    if finding.rule == "stale" and part is not None and len(finding.texts) == 2:
        return _stale(view, part, finding, area)
    if finding.rule == "jumps" and len(finding.texts) == 2:
        return _jumping(view, part, finding.texts)
    if finding.rule == "erases" and isinstance(part, Field | Icon | Meter):
        return _wiped(view, part, finding, area)
    texts = list(finding.texts)
    shown = view.values
    for one in (part, other):
        if texts and isinstance(one, Field | Icon | Meter):
            shown = _with(shown, one, (texts.pop(0),))
        elif texts and one is not None and getattr(one, "text", None) == texts[0]:
            texts.pop(0)
    return (Scene(screen_frame(view.material, view.screen, shown), area, _said(finding)),)


def _named(screen: Screen, name: str) -> Part | None:
    return next((part for part in screen.parts if part.name == name), None)


def _marked(finding: Finding) -> Mask:
    if finding.area is None or finding.area[2] <= 0 or finding.area[3] <= 0:
        return NOTHING
    return rectangle(*finding.area)


def _with(values: Values, part: Part | None, texts: tuple[str, ...]) -> Values:
    """Return values in which a field, icon or meter shows what a finding says, where it can show it."""
    if not texts or part is None:
        return values
    if isinstance(part, Field) and _accepts(part, texts[0]):
        return replace(values, texts=_set(values.texts, part.name, texts[0]))
    if isinstance(part, Icon) and texts[0] in [state.name for state in part.states]:
        return replace(values, states=_set(values.states, part.name, texts[0]))
    if isinstance(part, Meter) and texts[0].removeprefix("-").isdecimal():
        return replace(values, levels={**values.levels, part.name: int(texts[0])})
    return values


def _accepts(field: Field, text: str) -> bool:
    shown: Graph = field_graph(field)
    return shown.accepts(text)


def _set(values: Mapping[str, str], name: str, value: str) -> dict[str, str]:
    return {**values, name: value}


def _said(finding: Finding) -> str:
    return ", ".join(f"`{text}`" for text in finding.texts)


def _stale(view: View, part: Part, finding: Finding, area: Mask) -> tuple[Scene, ...]:
    earlier, later = finding.texts
    first, second = _with(view.values, part, (earlier,)), _with(view.values, part, (later,))
    taken = step(view.material, view.screen, first, second)
    behind = taken.differs or area
    return (
        Scene(taken.start, NOTHING, f"first `{earlier}`"),
        Scene(taken.end, behind, f"then `{later}`: {_counted(behind, taken.differs)} behind"),
    )


def _jumping(view: View, part: Part | None, texts: tuple[str, ...]) -> tuple[Scene, ...]:
    shown = [_with(view.values, part, (text,)) for text in texts]
    first, second = (screen_frame(view.material, view.screen, values) for values in shown)
    return Scene(first, NOTHING, f"first `{texts[0]}`"), Scene(
        second, NOTHING, f"then `{texts[1]}`: watch what stays"
    )


def _wiped(view: View, part: Field | Icon | Meter, finding: Finding, area: Mask) -> tuple[Scene, ...]:
    material, screen, other = view.material, view.screen, view.named(finding.other)
    values = _with(view.values, other, finding.texts[:1])
    before = screen_frame(material, screen, values)
    if material.layout.panel.refresh == "whole":
        return (Scene(before, area, f"`{part.name}` is drawn over `{finding.other}`"),)
    # The other part as it is when it was drawn last, then the update that wipes it.
    if other is not None:
        draw(before, drawing.part(material, screen, other, values))
    after = before.copy()
    draw(after, drawing.part(material, screen, part, values))
    return (
        Scene(before, NOTHING, f"before an update of `{part.name}`"),
        Scene(after, area, f"after an update of `{part.name}`"),
    )


def _left_over(view: View, finding: Finding, area: Mask) -> tuple[Scene, ...]:
    material, screen = view.material, view.screen
    former = next((one for one in material.layout.screens if one.name == finding.former), None)
    if former is None:
        before = new_frame(material.layout.panel, material.code(screen.ground))
        draw_screen(before, material, screen, view.values)
        return (Scene(before, area, f"screen `{screen.name}`"),)
    shown = _with(automatic(material, former)[0].values, _named(former, finding.other), finding.texts[:1])
    before = screen_frame(material, former, shown)
    after = before.copy()
    draw_screen(after, material, screen, view.values)
    return (
        Scene(before, NOTHING, f"first screen `{former.name}`"),
        Scene(after, area, f"then screen `{screen.name}`"),
    )


def _counted(behind: Mask, exact: Mask) -> str:
    if not exact:
        return "pixels can stay"
    count = behind.count()
    return f"{count} pixel{' stays' if count == 1 else 's stay'}"
