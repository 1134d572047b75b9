"""The layout as a value: what the file holds, nothing looked up yet."""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import Meta, Struct, field

from panelproof.content.spec import Text
from panelproof.layout.panel import Colour, Millimetres, Panel
from panelproof.layout.parts import Name, Part, Whole

FORMAT = 1

Argument = str | int | float
Rendering = Literal["one-bit", "antialiased"]


class TypeSpec(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True):
    """One font at one pixel size in one rendering.

    `font` is a path relative to the layout file (it ends in a font file's suffix), or the name of an
    installed font as `panelproof fonts` lists it. `size` is the pixels per em; a bitmap font needs none.
    """

    name: Annotated[Name, Meta(description="What the parts call this type.")]
    font: Annotated[
        str,
        Meta(
            min_length=1,
            max_length=1000,
            description="Path of a font file, relative to the layout file, or the name of an installed font.",
        ),
    ]
    size: Annotated[
        Annotated[int, Meta(ge=1, le=512)] | None,
        Meta(description="Pixels per em; a bitmap font needs none."),
    ] = None
    rendering: Annotated[
        Rendering,
        Meta(description="`one-bit`: a pixel is inked or not; `antialiased`: 16 levels from ground to ink."),
    ] = "one-bit"
    kerning: Annotated[
        bool, Meta(description="Whether pairs of characters are set closer as the font says.")
    ] = False
    hinting: Annotated[bool, Meta(description="Whether outlines are fitted to the pixels.")] = True


class Ink(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True):
    """A named colour of the layout, as `#rrggbb` in sRGB."""

    name: Annotated[Name, Meta(description="What the parts call this ink.")]
    colour: Colour


class Screen(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True):
    """What the panel shows as a whole at one time; `parts` in drawing order.

    With `clears`, drawing the screen begins by filling the panel with `ground`.
    """

    name: Annotated[Name, Meta(description="The screen's name, the only one in the layout.")]
    ground: Annotated[Name, Meta(description="Name of the ink that lies under all parts.")]
    parts: Annotated[
        tuple[Part, ...], Meta(max_length=500, description="What stands there, in drawing order.")
    ] = ()
    clears: Annotated[
        bool, Meta(description="Whether drawing the screen fills the panel with ground first.")
    ] = True


class Moment(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True):
    """A named state of the device: a value for every field and meter and a state for every icon of one screen.

    A field's value is its text, or the list of its format's arguments; a meter's is a whole number, or null
    where there is none.
    """

    name: Annotated[Name, Meta(description="The moment's name, the only one in the layout.")]
    screen: Annotated[Name, Meta(description="Name of the screen that is shown.")]
    fields: Annotated[
        dict[Name, Text | tuple[Argument, ...]],
        Meta(description="For every field its text, or the list of its format's arguments."),
    ] = field(default_factory=dict)
    icons: Annotated[dict[Name, Name], Meta(description="For every icon the name of its state.")] = field(
        default_factory=dict
    )
    meters: Annotated[
        dict[Name, Whole | None],
        Meta(description="For every meter its value; null is no value, which shows the fault pattern."),
    ] = field(default_factory=dict)


class Limits(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True):
    """What the device can spare for the screen; nothing is limited that is not given."""

    flash_bytes: Annotated[
        Annotated[int, Meta(ge=1)] | None,
        Meta(description="Bytes of glyphs, icons, tables and drawing code."),
    ] = None
    ram_bytes: Annotated[
        Annotated[int, Meta(ge=1)] | None, Meta(description="Bytes of text buffers and drawing state.")
    ] = None
    update_ms: Annotated[
        Annotated[float, Meta(gt=0)] | None,
        Meta(description="Milliseconds on the bus that one update may take."),
    ] = None


class Layout(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True):
    """One panel, its types, inks, screens and moments. `name` begins every name in the C header."""

    format: Annotated[int, Meta(ge=1, description="Number of this file format.")]
    name: Annotated[Name, Meta(description="The layout's name; it begins every name in the C header.")]
    panel: Annotated[Panel, Meta(description="The glass.")]
    types: Annotated[
        tuple[TypeSpec, ...], Meta(max_length=100, description="The types that texts are set in.")
    ] = ()
    inks: Annotated[tuple[Ink, ...], Meta(min_length=1, max_length=256, description="The colours.")] = ()
    screens: Annotated[tuple[Screen, ...], Meta(max_length=100, description="The screens.")] = ()
    moments: Annotated[
        tuple[Moment, ...], Meta(max_length=1000, description="Named states of the device, for previews.")
    ] = ()
    reading_distance_mm: Annotated[
        Millimetres | None,
        Meta(description="From how far it is read, in millimetres; for the height of characters."),
    ] = None
    limits: Annotated[Limits | None, Meta(description="What the device can spare for the screen.")] = None
