"""What a layout file says of a content: a C format, its arguments, and texts outside the format."""

from __future__ import annotations

from typing import Annotated

from msgspec import Meta, Struct

Text = Annotated[str, Meta(max_length=256)]
Whole = Annotated[int, Meta(description="A whole number; 64-bit ranges reach -2^63 to 2^64 - 1.")]


class WholeRange(
    Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True, tag_field="kind", tag="whole"
):
    """Whole numbers `least`, `least + step`, … up to `greatest` (both inclusive).

    `sensor` is the least and greatest value that the sensor can give, for the record and for a check.
    """

    least: Whole
    greatest: Whole
    step: Annotated[int, Meta(ge=1)] = 1
    sensor: tuple[int, int] | None = None


class RealRange(
    Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True, tag_field="kind", tag="real"
):
    """Every real number from `least` to `greatest`; `sensor` as of a whole range."""

    least: float
    greatest: float
    sensor: tuple[float, float] | None = None


class Choice(
    Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True, tag_field="kind", tag="choice"
):
    """One text of a list."""

    texts: Annotated[tuple[Text, ...], Meta(min_length=1, max_length=1000)]


class FreeText(
    Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True, tag_field="kind", tag="free"
):
    """Any text over an alphabet, `shortest` to `longest` characters.

    The alphabet is every character of `characters` and of each inclusive pair in `ranges`.
    """

    longest: Annotated[int, Meta(ge=0, le=256)]
    shortest: Annotated[int, Meta(ge=0, le=256)] = 0
    characters: Text = ""
    ranges: Annotated[tuple[tuple[str, str], ...], Meta(max_length=100)] = ()


Argument = WholeRange | RealRange | Choice | FreeText


class Content(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True):
    """The set of all texts a field can ever show.

    `format` is an ISO C `fprintf` format with one entry of `arguments` per conversion. `fault` is shown when
    there is no valid reading, `first` before the first one; `also` lists any further texts.
    """

    format: Text
    arguments: Annotated[tuple[Argument, ...], Meta(max_length=16)] = ()
    fault: Text | None = None
    first: Text | None = None
    also: Annotated[tuple[Text, ...], Meta(max_length=1000)] = ()
