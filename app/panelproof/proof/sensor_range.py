"""sensor-range: a field can show every number that its sensor can give.

What lies outside the range shows the fault text on the device, whatever the sensor says.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from msgspec.structs import replace

from panelproof.content.format import Conversion
from panelproof.content.spec import Content, RealRange, WholeRange
from panelproof.layout.parts import Field
from panelproof.proof.extent import Stage
from panelproof.proof.finding import Change, Finding, Remedy
from panelproof.proof.neighbours import Number, number, numeric, units
from panelproof.proof.no_fault_text import with_values
from panelproof.proof.words import quoted

NAME = "sensor-range"


def findings(stage: Stage) -> Iterator[Finding]:
    """Yield each end of a range that the sensor goes beyond."""
    for extent in stage.extents:
        part = extent.part
        if not isinstance(part, Field):
            continue
        for place, conversion, argument in numeric(part.content):
            for message, text in _beyond(conversion, argument):
                wider = _widened(argument)
                yield Finding(
                    NAME, "caution", stage.screen.name, part.name, message, (text,) if text else (), 0,
                    extent.padding or extent.reach.bounds(),
                    Remedy(
                        f"range {argument.least} to {argument.greatest} → {wider.least} to {wider.greatest}",
                        (Change(part.name, "content", _with(part.content, place, wider)),),
                    ),
                )  # fmt: skip


def _with(content: Content, place: int, argument: Number) -> object:
    arguments = tuple(argument if n == place else one for n, one in enumerate(content.arguments))
    return with_values(content, arguments=arguments)


@lru_cache(maxsize=512)
def _beyond(conversion: Conversion, argument: Number) -> tuple[tuple[str, str], ...]:
    """Return, for each end that the sensor goes beyond, the sentence and the first text that is lacking."""
    if argument.sensor is None:
        return ()
    least, greatest = argument.sensor
    found = []
    if greatest > argument.greatest:
        text = _first_lacking(conversion, argument, up=True)
        found.append((_said(f"up to {greatest}", argument.greatest, text), text))
    if least < argument.least:
        text = _first_lacking(conversion, argument, up=False)
        found.append((_said(f"down to {least}", argument.least, text), text))
    return tuple(found)


def _said(reaches: str, end: float, text: str) -> str:
    lacking = f"{quoted(text)} is the first that cannot be shown" if text else "readings beyond are lost"
    return f"the sensor gives numbers {reaches}, and the range ends at {end}: {lacking}"


def _first_lacking(conversion: Conversion, argument: Number, *, up: bool) -> str:
    """Return the first text beyond an end, nothing where the sensor's readings beyond all round to one inside."""
    assert argument.sensor is not None
    if isinstance(argument, WholeRange):
        last = argument.greatest - (argument.greatest - argument.least) % argument.step
        value = last + argument.step if up else argument.least - argument.step
        value = min(value, int(argument.sensor[1])) if up else max(value, int(argument.sensor[0]))
        size = value * 10 ** (0 if conversion.kind == "whole" else conversion.precision or 0)
        return _printed(conversion, size)
    inside = units(conversion, argument.greatest if up else argument.least)
    reached = units(conversion, argument.sensor[1] if up else argument.sensor[0])
    if inside == reached:
        return ""
    return _printed(conversion, inside + (1 if up else -1))


def _printed(conversion: Conversion, size: int) -> str:
    head = "-" if size < 0 else conversion.sign
    return number(conversion, head, abs(size))


def _widened(argument: Number) -> Number:
    """Return the range with room for the sensor, on the same steps."""
    assert argument.sensor is not None
    least, greatest = argument.sensor
    if isinstance(argument, RealRange):
        return replace(argument, least=min(least, argument.least), greatest=max(greatest, argument.greatest))
    down = max(argument.least - int(least), 0)
    steps = -(-down // argument.step)
    return replace(
        argument,
        least=argument.least - steps * argument.step,
        greatest=max(int(greatest), argument.greatest),
    )
