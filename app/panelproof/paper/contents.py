"""What a part can show, in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from panelproof.content.spec import Argument, Choice, Content, FreeText, RealRange, WholeRange
from panelproof.firmware.bus import Sent
from panelproof.firmware.constants import text_bytes
from panelproof.ink.mask import Area
from panelproof.layout.parts import Field, Icon, Label, Meter, Part, Picture
from panelproof.proof.measure import Measure

MOST_LISTED = 24
PX = "\N{NO-BREAK SPACE}px"


@dataclass(frozen=True, slots=True)
class Shows:
    """What one part can show: sentences, and for a field its extremes and bytes."""

    name: str
    kind: str
    sentences: tuple[str, ...]
    extremes: tuple[tuple[str, str], ...]


def area(box: Area) -> str:
    """Return a rectangle in words: x, y, width × height."""
    return f"{box[0]}, {box[1]}, {box[2]} × {box[3]}"


def shows(part: Part, figures: Mapping[str, Measure], sent: Sent | None) -> Iterator[Shows]:
    """Yield what a part can show; nothing for lines and boxes. `figures` are those of its screen's fields."""
    updates = _updates(part, sent)
    if isinstance(part, Label):
        yield Shows(part.name, "label", (f"always {said(part.text)}",), ())
    elif isinstance(part, Field):
        figure = figures[part.name]
        extremes = [
            ("longest", f"{said(figure.longest.text)}, {figure.longest.pixels}{PX}"),
            ("shortest", f"{said(figure.shortest.text)}, {figure.shortest.pixels}{PX}"),
            ("tallest", f"{said(figure.tallest.text)}, {figure.tallest.pixels}{PX}"),
            ("padding needed", area(figure.ink)),
        ]
        if figure.spare is not None:
            extremes.append(("spare left, top, right, bottom", ", ".join(map(str, figure.spare)) + PX))
        extremes.append(("text buffer", f"{text_bytes(part)} bytes"))
        yield Shows(part.name, "field", tuple(_content(part.content, figure.texts)), (*extremes, *updates))
    elif isinstance(part, Icon):
        states = ", ".join(f"{state.name} ({state.ink or part.ink})" for state in part.states)
        yield Shows(part.name, "icon", (f"states: {states}",), updates)
    elif isinstance(part, Meter):
        sentences = [f"{part.least} (empty) to {part.greatest} (full)"]
        sentences += [
            f"from {limit.at}{f' in {limit.ink}' if limit.ink else ''}{', marked' if limit.mark else ''}"
            for limit in part.limits
        ]
        yield Shows(
            part.name, "meter", (*sentences, "outside, or without a value: every fourth pixel"), updates
        )
    elif isinstance(part, Picture):
        yield Shows(part.name, "picture", (f"{part.picture}, dither: {part.dither}",), ())


def _updates(part: Part, sent: Sent | None) -> tuple[tuple[str, str], ...]:
    from panelproof.proof.words import grouped  # noqa: PLC0415

    found = []
    if sent is not None:
        time = f", {sent.ms:.2f} ms" if sent.ms is not None else ""
        found.append(("sent by an update at most", f"{grouped(sent.bytes)} bytes{time}"))
    if isinstance(part, Field | Icon | Meter) and part.period_ms is not None:
        found.append(("updated every", f"{part.period_ms} ms"))
    return tuple(found)


def said(text: str) -> str:
    """Return a text between quotation marks, or that it is empty."""
    return f"“{text}”" if text else "an empty text"


def _content(content: Content, count: int) -> Iterator[str]:
    from panelproof.proof.words import grouped  # noqa: PLC0415

    yield f"format {said(content.format)}, {grouped(count)} text{'' if count == 1 else 's'}"
    for number, argument in enumerate(content.arguments, 1):
        before = f"argument {number}: " if len(content.arguments) > 1 else ""
        yield before + _argument(argument)
    if content.first is not None:
        yield f"before the first reading {said(content.first)}"
    if content.fault is not None:
        yield f"without a valid reading {said(content.fault)}"
    if content.also:
        yield f"also {_texts(content.also)}"


def _argument(argument: Argument) -> str:
    if isinstance(argument, WholeRange):
        step = f" in steps of {argument.step}" if argument.step != 1 else ""
        return f"whole numbers {argument.least} to {argument.greatest}{step}{_sensor(argument.sensor)}"
    if isinstance(argument, RealRange):
        return f"real numbers {argument.least:g} to {argument.greatest:g}{_sensor(argument.sensor)}"
    if isinstance(argument, Choice):
        return f"one of {_texts(argument.texts)}"
    assert isinstance(argument, FreeText)
    ranges = [f"{first} to {last}" for first, last in argument.ranges]
    alphabet = ", ".join(filter(None, [argument.characters, *ranges]))
    return f"{argument.shortest} to {argument.longest} characters of: {alphabet}"


def _sensor(sensor: tuple[float, float] | None) -> str:
    return f" (the sensor gives {sensor[0]:g} to {sensor[1]:g})" if sensor is not None else ""


def _texts(texts: tuple[str, ...]) -> str:
    more = f" and {len(texts) - MOST_LISTED} more" if len(texts) > MOST_LISTED else ""
    return ", ".join(said(text) for text in texts[:MOST_LISTED]) + more
