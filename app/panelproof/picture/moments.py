"""The moments of a screen: those the layout names, and those that come from the contents by themselves."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from panelproof.ink.footprint import Footprint, footprint
from panelproof.layout.document import Screen
from panelproof.layout.parts import Field, Icon, IconState, Meter
from panelproof.layout.wording import hint, listed, quote, within
from panelproof.material import Material, field_graph, shown_text
from panelproof.picture.values import Values
from panelproof.problem import Problem


@dataclass(frozen=True, slots=True)
class ShownMoment:
    """A moment with the values it shows.

    `name` is the layout's own, or for the automatic ones `longest`, `shortest`, `tallest`, `limit-1` and so on,
    `fault` or `first`; `title` is what to write above its picture, `screen` the name of its screen.
    """

    screen: str
    name: str
    title: str
    automatic: bool
    values: Values


def _fields(screen: Screen) -> tuple[Field, ...]:
    return tuple(part for part in screen.parts if isinstance(part, Field))


def _icons(screen: Screen) -> tuple[Icon, ...]:
    return tuple(part for part in screen.parts if isinstance(part, Icon))


def _meters(screen: Screen) -> tuple[Meter, ...]:
    return tuple(part for part in screen.parts if isinstance(part, Meter))


def _footprint(material: Material, field: Field) -> Footprint:
    return footprint(field_graph(field), material.types[field.type], field.align)


def named(material: Material, number: int) -> ShownMoment:
    """Return the layout's moment of that number with its values.

    Raises Problem, its place `moments[number]…`, where a field or icon of the screen has no value there or
    one that it cannot show.
    """
    spec = material.layout.moments[number]
    place = f"moments[{number}]"
    try:
        screen = material.screen(spec.screen)
    except KeyError:
        near = hint(spec.screen, [screen.name for screen in material.layout.screens])
        raise Problem(f"there is no screen `{spec.screen}`{near}", f"{place}.screen") from None
    texts, states = {}, {}
    for field in _fields(screen):
        if field.name not in spec.fields:
            raise Problem(
                f"the moment `{spec.name}` has no value for the field `{field.name}`", f"{place}.fields"
            )
        try:
            texts[field.name] = shown_text(field, spec.fields[field.name])
        except Problem as problem:
            raise problem.within(within(f"{place}.fields", field.name)) from None
    for icon in _icons(screen):
        if icon.name not in spec.icons:
            raise Problem(
                f"the moment `{spec.name}` has no state for the icon `{icon.name}`", f"{place}.icons"
            )
        state = spec.icons[icon.name]
        known = [state.name for state in icon.states]
        if state not in known:
            near = hint(state, known)
            raise Problem(
                f"the icon `{icon.name}` has no state `{state}`{near}", within(f"{place}.icons", icon.name)
            )
        states[icon.name] = state
    for meter in _meters(screen):
        if meter.name not in spec.meters:
            raise Problem(
                f"the moment `{spec.name}` has no value for the meter `{meter.name}`", f"{place}.meters"
            )
    levels = {meter.name: spec.meters[meter.name] for meter in _meters(screen)}
    title = spec.name.replace("-", " ")
    return ShownMoment(
        screen.name, spec.name, title[0].upper() + title[1:], False, Values(texts, states, levels)
    )


def _first_state(icon: Icon) -> IconState:
    return icon.states[0]


def _fault_state(icon: Icon) -> IconState:
    return next((state for state in icon.states if state.name == "fault"), icon.states[-1])


def _full(meter: Meter) -> int:
    return meter.greatest


def _nothing(_: Meter) -> None:
    return None


@dataclass(frozen=True, slots=True)
class _Limit:
    """A meter's limit of that number; where it has none, its greatest value."""

    number: int

    def __call__(self, meter: Meter) -> int:
        return meter.limits[self.number].at if self.number < len(meter.limits) else meter.greatest


def automatic(material: Material, screen: Screen) -> tuple[ShownMoment, ...]:
    """Return the moments that a screen has by itself.

    A screen with fields has `longest`, `shortest` and `tallest`: those texts in every field, every icon in
    its first state; meters are full in `longest` and `tallest`, empty in `shortest`. `limit-1`, `limit-2` and so on show
    each meter at that limit of its own (or full). `fault` shows each field's fault text, each icon's state named `fault`
    or else its last, and each meter without a value; it is left out where no field has a fault text, no icon a
    second state, and there is no meter. `first` shows each field's text before the first reading, where some field has
    one, and meters without a value. Fields without such a text show their longest. A screen without
    fields and meters has just `longest`, and `fault` where an icon has several states.
    """
    fields, icons, meters = _fields(screen), _icons(screen), _meters(screen)
    prints = {field.name: _footprint(material, field) for field in fields}

    def shown(
        name: str,
        title: str,
        text: Callable[[Field], str],
        state: Callable[[Icon], IconState] = _first_state,
        level: Callable[[Meter], int | None] = _full,
    ) -> ShownMoment:
        values = Values(
            {field.name: text(field) for field in fields},
            {icon.name: state(icon).name for icon in icons},
            {meter.name: level(meter) for meter in meters},
        )
        return ShownMoment(screen.name, name, title, True, values)

    def longest(field: Field) -> str:
        return prints[field.name].longest

    def fault(field: Field) -> str:
        return longest(field) if field.content.fault is None else field.content.fault

    def first(field: Field) -> str:
        return longest(field) if field.content.first is None else field.content.first

    def shortest(field: Field) -> str:
        return prints[field.name].shortest

    found = [shown("longest", "Longest texts" if fields else "Full" if meters else "As it is", longest)]
    if fields or meters:
        title = "Shortest texts" if fields else "Empty"
        found.append(shown("shortest", title, shortest, level=lambda meter: meter.least))
    if fields:
        found.append(shown("tallest", "Tallest texts", lambda field: prints[field.name].tallest))
    for number in range(max((len(meter.limits) for meter in meters), default=0)):
        found.append(shown(f"limit-{number + 1}", f"At limit {number + 1}", longest, level=_Limit(number)))
    if (
        meters
        or any(field.content.fault is not None for field in fields)
        or any(len(icon.states) > 1 for icon in icons)
    ):
        found.append(shown("fault", "Fault", fault, _fault_state, _nothing))
    if any(field.content.first is not None for field in fields):
        found.append(shown("first", "Before the first reading", first, level=_nothing))
    return tuple(found)


def moments(material: Material, screen: Screen) -> tuple[ShownMoment, ...]:
    """Return every moment of a screen: the layout's own first, in its order, then the automatic ones.

    Raises Problem as `named` does.
    """
    own = [n for n, spec in enumerate(material.layout.moments) if spec.screen == screen.name]
    return (*(named(material, number) for number in own), *automatic(material, screen))


def every_moment(material: Material) -> tuple[ShownMoment, ...]:
    """Return every moment of every screen, screen by screen."""
    return tuple(shown for screen in material.layout.screens for shown in moments(material, screen))


def moment(material: Material, name: str) -> ShownMoment:
    """Return the moment that a person means by `name`: one of the layout's, or `screen:longest` and the like.

    `screen:name` works for every moment; an automatic one can go without its screen where only one screen has
    it. Raises Problem, with the nearest names, where there is none.
    """
    layout = material.layout
    screen_name, colon, wanted = name.rpartition(":")
    if colon:
        screens = [screen for screen in layout.screens if screen.name == screen_name]
        if not screens:
            near = hint(screen_name, [screen.name for screen in layout.screens])
            raise Problem(f"there is no screen {quote(screen_name)}{near}")
    else:
        screens = list(layout.screens)
    for number, spec in enumerate(layout.moments):
        if spec.name == wanted and (not colon or spec.screen == screen_name):
            return named(material, number)
    own = [spec.name for spec in layout.moments if not colon or spec.screen == screen_name]
    by_themselves = [shown for screen in screens for shown in automatic(material, screen)]
    found = [shown for shown in by_themselves if shown.name == wanted]
    if len(found) == 1:
        return found[0]
    full = [f"{shown.screen}:{shown.name}" for shown in by_themselves]
    if found:
        choices = listed([f"{shown.screen}:{shown.name}" for shown in found], "or")
        raise Problem(f"several screens have a moment `{wanted}`; say {choices}")
    if colon:
        raise Problem(
            f"the screen `{screen_name}` has no moment {quote(wanted)}"
            + hint(wanted, [*own, *(shown.name for shown in by_themselves)])
        )
    raise Problem(f"there is no moment {quote(name)}{hint(name, [*own, *full])}")
