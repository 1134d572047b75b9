"""What in a layout cannot be, though every value is of the right kind: names, shapes, bitmaps, moments."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from panelproof.layout.document import Ink, Layout, Moment, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box, Field, Icon, IconState, Label, Meter, Part, Picture, Rule
from panelproof.layout.rulenames import OF_PARTS, OF_SCREENS
from panelproof.layout.wording import hint, one, quote, unprintable, within
from panelproof.problem import Problem

Named = TypeSpec | Ink | Screen | Moment | Part | IconState


def check_references(layout: Layout) -> None:
    """Raise Problem for the first thing in the layout that cannot be, with its place in the layout."""
    for problem in _problems(layout):
        raise problem


def problems(layout: Layout) -> list[Problem]:
    """Return everything in the layout that cannot be, in the order of the file.

    Places are relative to the layout, e.g. ``screens[0].parts[3].type``. The files of fonts and pictures and
    the contents of fields are looked at by `material.gather`.
    """
    return list(_problems(layout))


def _problems(layout: Layout) -> Iterator[Problem]:
    yield from _panel(layout.panel)
    yield from _types(layout)
    if not layout.inks:
        yield Problem("the layout has no inks; it needs at least one, for the ground", "inks")
    yield from _unique(layout.inks, "inks", "ink")
    yield from _unique(layout.screens, "screens", "screen")
    names = _Names(layout)
    for number, screen in enumerate(layout.screens):
        yield from names.screen(screen, f"screens[{number}]")
    yield from _unique(layout.moments, "moments", "moment")
    screens = {screen.name: screen for screen in layout.screens}
    for number, moment in enumerate(layout.moments):
        yield from _moment(moment, screens, f"moments[{number}]")


def _unique(entries: Sequence[Named], place: str, noun: str) -> Iterator[Problem]:
    first: dict[str, int] = {}
    for number, entry in enumerate(entries):
        if entry.name in first:
            message = (
                f"there is {one(noun)} {quote(entry.name)} already, {place}[{first[entry.name]}]; rename one"
            )
            yield Problem(message, f"{place}[{number}].name")
        first.setdefault(entry.name, number)


def _panel(panel: Panel) -> Iterator[Problem]:
    if panel.shape == "round" and panel.width != panel.height:
        message = f"a round panel is as wide as it is high, not {panel.width} × {panel.height}"
        yield Problem(message, "panel.shape")
    if panel.shape != "rounded" and panel.corner_radius:
        message = f"a {panel.shape} panel has no corner radius; take it out, or let the shape be `rounded`"
        yield Problem(message, "panel.corner_radius")
    if panel.shape == "rounded" and not panel.corner_radius:
        yield Problem("a rounded panel needs a `corner_radius` of at least 1", "panel")
    shorter = min(panel.width, panel.height)
    if panel.shape == "rounded" and 2 * panel.corner_radius > shorter:
        message = (
            f"a corner radius of {panel.corner_radius} is more than half the shorter side, {shorter} pixels"
        )
        yield Problem(message, "panel.corner_radius")
    if (panel.width_mm is None) != (panel.height_mm is None):
        given, missing = ("height_mm", "width_mm") if panel.width_mm is None else ("width_mm", "height_mm")
        yield Problem(f"`{given}` is given without `{missing}`; give both or neither", "panel")
    if panel.colour_format == "indexed" and len(panel.palette) < 2:
        yield Problem("an `indexed` panel needs a `palette` of at least two colours", "panel")
    if panel.colour_format != "indexed" and panel.palette:
        message = (
            f"a panel of `{panel.colour_format}` has no palette; take it out, or let the format be `indexed`"
        )
        yield Problem(message, "panel.palette")
    yield from _text(panel.name, "panel.name")


def _types(layout: Layout) -> Iterator[Problem]:
    yield from _unique(layout.types, "types", "type")
    for number, spec in enumerate(layout.types):
        yield from _text(spec.font, f"types[{number}].font")
        if spec.rendering == "antialiased" and not layout.panel.colours.blends:
            panel = f"{one(layout.panel.colour_format)} panel"
            message = f"{panel} has no levels between two colours; let the rendering be `one-bit`"
            yield Problem(message, f"types[{number}].rendering")


def _text(text: str, place: str) -> Iterator[Problem]:
    char = unprintable(text)
    if char is not None:
        yield Problem(
            f"{char} is a control character or line break and cannot stand here; take it out", place
        )


class _Names:
    """The names that parts refer to."""

    def __init__(self, layout: Layout) -> None:
        self._types = [spec.name for spec in layout.types]
        self._inks = [ink.name for ink in layout.inks]

    def screen(self, screen: Screen, place: str) -> Iterator[Problem]:
        """Yield what is wrong with a screen and its parts."""
        yield from self._ink(screen.ground, f"{place}.ground")
        yield from _unique(screen.parts, f"{place}.parts", "part")
        for number, part in enumerate(screen.parts):
            yield from self._part(part, f"{place}.parts[{number}]")
            yield from _accepted(part, f"{place}.parts[{number}].accepted")

    def _part(self, part: Part, place: str) -> Iterator[Problem]:
        match part:
            case Label():
                if not part.text:
                    yield Problem("the text is empty; write one, or take the label out", f"{place}.text")
                yield from _text(part.text, f"{place}.text")
                yield from self._typed(part, place)
            case Field():
                yield from self._typed(part, place)
                yield from _sensors(part, place)
                if part.clearing in {"pad", "box"} and part.padding is None:
                    message = (
                        f"clearing by `{part.clearing}` repaints the padding box, and this field has none;"
                        " give it `padding`, or let `clearing` be `cell` or `none`"
                    )
                    yield Problem(message, place)
            case Icon():
                yield from self._icon(part, place)
            case Rule():
                yield from self._ink(part.ink, f"{place}.ink")
            case Box():
                yield from self._box(part, place)
            case Meter():
                yield from self._meter(part, place)
            case Picture():
                yield from _text(part.picture, f"{place}.picture")

    def _typed(self, part: Label | Field, place: str) -> Iterator[Problem]:
        if part.type not in self._types:
            message = f"there is no type {quote(part.type)}{hint(part.type, self._types)}"
            yield Problem(message, f"{place}.type")
        yield from self._ink(part.ink, f"{place}.ink")
        yield from self._ink(part.ground, f"{place}.ground")

    def _ink(self, name: str | None, place: str) -> Iterator[Problem]:
        if name is not None and name not in self._inks:
            yield Problem(f"there is no ink {quote(name)}{hint(name, self._inks)}", place)

    def _icon(self, icon: Icon, place: str) -> Iterator[Problem]:
        yield from self._ink(icon.ink, f"{place}.ink")
        yield from _unique(icon.states, f"{place}.states", "state")
        for number, state in enumerate(icon.states):
            state_place = f"{place}.states[{number}]"
            yield from _bitmap(state, state_place)
            yield from self._ink(state.ink, f"{state_place}.ink")
        yield from self._ink(icon.ground, f"{place}.ground")

    def _box(self, box: Box, place: str) -> Iterator[Problem]:
        if box.fill is None and box.outline is None:
            yield Problem("a box needs `fill`, `outline` or both", place)
        yield from self._ink(box.fill, f"{place}.fill")
        yield from self._ink(box.outline, f"{place}.outline")
        shorter = min(box.width, box.height)
        if box.outline is not None and 2 * box.thickness > shorter:
            message = (
                f"an outline {_pixels(box.thickness)} thick on both sides does not go into {_pixels(shorter)}"
            )
            yield Problem(message, f"{place}.thickness")

    def _meter(self, meter: Meter, place: str) -> Iterator[Problem]:
        least, greatest = meter.least, meter.greatest
        if least >= greatest:
            message = f"`greatest` must be more than `least`, which is {least}; {greatest} is not"
            yield Problem(message, f"{place}.greatest")
        yield from self._ink(meter.ink, f"{place}.ink")
        for number, limit in enumerate(meter.limits):
            limit_place = f"{place}.limits[{number}]"
            below = meter.limits[number - 1].at if number else None
            if least < greatest and not least <= limit.at <= greatest:
                message = f"{limit.at} is outside the meter's range, {least} to {greatest}"
                yield Problem(message, f"{limit_place}.at")
            elif below is not None and limit.at <= below:
                message = f"limits rise, and {limit.at} is not more than the one before it, {below}"
                yield Problem(message, f"{limit_place}.at")
            yield from self._ink(limit.ink, f"{limit_place}.ink")
        yield from self._ink(meter.ground, f"{place}.ground")


def _accepted(part: Part, place: str) -> Iterator[Problem]:
    before: list[str] = []
    for number, entry in enumerate(part.accepted):
        where = f"{place}[{number}].rule"
        if entry.rule in OF_SCREENS:
            message = f"{quote(entry.rule)} speaks of more than one part, so that no part can accept it"
            yield Problem(message, where)
        elif entry.rule not in OF_PARTS:
            yield Problem(f"there is no rule {quote(entry.rule)}{hint(entry.rule, OF_PARTS)}", where)
        elif entry.rule in before:
            yield Problem(f"the rule {quote(entry.rule)} is accepted twice; one reason is enough", where)
        before.append(entry.rule)
        yield from _text(entry.reason, f"{place}[{number}].reason")


def _sensors(part: Field, place: str) -> Iterator[Problem]:
    for number, argument in enumerate(part.content.arguments):
        sensor = getattr(argument, "sensor", None)
        if sensor is not None and not sensor[0] <= sensor[1]:
            message = (
                f"a sensor gives numbers from the least up, not {sensor[0]} to {sensor[1]}: exchange them"
            )
            yield Problem(message, f"{place}.content.arguments[{number}].sensor")


def _pixels(count: int) -> str:
    return f"{count} pixel{'' if count == 1 else 's'}"


def _bitmap(state: IconState, place: str) -> Iterator[Problem]:
    if state.picture is not None:
        if state.rows:
            yield Problem("a state has `rows` or a `picture`, not both", place)
        yield from _text(state.picture, f"{place}.picture")
        return
    if not state.rows:
        yield Problem("a state needs `rows` or a `picture`", place)
    for number, row in enumerate(state.rows):
        foreign = row.strip("#.").lstrip("#.")
        if foreign:
            yield Problem(
                f"a row is of `#` and `.` only, and {quote(foreign[0])} is neither", f"{place}.rows[{number}]"
            )
        elif not row:
            yield Problem("a row has at least one pixel, and this one is empty", f"{place}.rows[{number}]")
        elif len(row) != len(state.rows[0]):
            message = (
                f"this row is {_pixels(len(row))} long, the first one {len(state.rows[0])}; let all be alike"
            )
            yield Problem(message, f"{place}.rows[{number}]")


def _moment(moment: Moment, screens: Mapping[str, Screen], place: str) -> Iterator[Problem]:
    if moment.screen not in screens:
        message = f"there is no screen {quote(moment.screen)}{hint(moment.screen, list(screens))}"
        yield Problem(message, f"{place}.screen")
        return
    parts = screens[moment.screen].parts
    fields = [part.name for part in parts if isinstance(part, Field)]
    icons = {part.name: part for part in parts if isinstance(part, Icon)}
    yield from _complete(moment.fields, fields, f"{place}.fields", "field", moment.screen)
    yield from _complete(moment.icons, list(icons), f"{place}.icons", "icon", moment.screen)
    meters = [part.name for part in parts if isinstance(part, Meter)]
    yield from _complete(moment.meters, meters, f"{place}.meters", "meter", moment.screen)
    for name, state in moment.icons.items():
        states = [known.name for known in icons[name].states] if name in icons else [state]
        if state not in states:
            message = f"the icon {quote(name)} has no state {quote(state)}{hint(state, states)}"
            yield Problem(message, within(f"{place}.icons", name))


def _complete(
    given: Mapping[str, object], known: Sequence[str], place: str, noun: str, screen: str
) -> Iterator[Problem]:
    for name in given:
        if name not in known:
            message = f"the screen {quote(screen)} has no {noun} {quote(name)}{hint(name, known)}"
            yield Problem(message, within(place, name))
    for name in known:
        if name not in given:
            message = f"the moment leaves out the {noun} {quote(name)}; a moment has a value for every {noun}"
            if noun == "icon":
                message = f"the moment leaves out the icon {quote(name)}; a moment has a state for every icon"
            yield Problem(message, place)
