"""What can stand on a screen."""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import Meta, Struct

from panelproof.content.spec import Content, Text

# Python lets `$` match before a last line end; the look-ahead forbids that there and means nothing elsewhere.
NAME_PATTERN = "^[a-z][a-z0-9]*(-[a-z0-9]+)*$(?!\\n)"
Name = Annotated[str, Meta(pattern=NAME_PATTERN, max_length=40)]
Coordinate = Annotated[int, Meta(ge=-4096, le=4096)]
Length = Annotated[int, Meta(ge=1, le=4096)]
Rectangle = tuple[Coordinate, Coordinate, Length, Length]
Row = Annotated[str, Meta(max_length=512)]
Thickness = Annotated[int, Meta(ge=1, le=256)]
Align = Literal["left", "centre", "right"]
Clearing = Literal["none", "cell", "pad", "box"]

PartName = Annotated[Name, Meta(description="The part's name, the only one on its screen.")]
InkName = Annotated[Name, Meta(description="Name of the ink that is painted.")]
TypeName = Annotated[Name, Meta(description="Name of the type the text is set in.")]
Ground = Annotated[
    Name | None, Meta(description="Name of the ink that lies under the part; by default the screen's ground.")
]
Anchor = Annotated[Coordinate, Meta(description="Where the text is anchored, in pixels from the left.")]
Baseline = Annotated[Coordinate, Meta(description="Where the text stands, in pixels from the top.")]
Left = Annotated[Coordinate, Meta(description="Left edge, in pixels from the left of the panel.")]
Top = Annotated[Coordinate, Meta(description="Upper edge, in pixels from the top of the panel.")]
Alignment = Annotated[
    Align, Meta(description="How the text lies at `x`: it begins there, is centred there, or ends there.")
]
Cleared = Annotated[
    Clearing,
    Meta(
        description="How an update gets rid of what stood there: `none` paints only the ink, `cell` the new"
        " text's cell, `pad` each pixel of the padding box once, `box` the padding box with ground, then ink."
    ),
]
Padding = Annotated[
    Rectangle | None,
    Meta(description="The padding box [x, y, width, height] in panel pixels: what an update repaints."),
]

Dither = Literal["none", "ordered", "diffused"]
Period = Annotated[
    Annotated[int, Meta(ge=1, le=10**9)] | None,
    Meta(description="Milliseconds from one update to the next, where it is steady."),
]


class Accepted(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True):
    """A rule that one part may break, and why; the output lists it."""

    rule: Annotated[
        str, Meta(min_length=1, max_length=40, description="The rule's name, as `check` prints it.")
    ]
    reason: Annotated[str, Meta(min_length=1, max_length=200, description="Why it does not matter here.")]


Accepting = Annotated[
    tuple[Accepted, ...],
    Meta(max_length=50, description="Rules that this part may break, each with a reason."),
]


class Label(
    Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True, tag_field="kind", tag="label"
):
    """Text that never changes; only its inked pixels are painted, once, when the screen is drawn.

    `x` is the anchor that `align` refers to. `ground` (by default the screen's) is the ink under antialiased
    pixels.
    """

    name: PartName
    text: Annotated[Text, Meta(description="The text, one line.")]
    type: TypeName
    ink: InkName
    x: Anchor
    baseline: Baseline
    align: Alignment = "left"
    ground: Ground = None
    accepted: Accepting = ()


class Field(
    Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True, tag_field="kind", tag="field"
):
    """Text that changes while the device runs.

    `padding` is the padding box, in panel pixels: what an update repaints when `clearing` is `pad` or `box`,
    and what text is clipped to whatever the clearing. Without one, text is clipped to the panel only.
    `buffer` is the size of the firmware's text buffer in bytes (by default just enough).
    """

    name: PartName
    content: Annotated[Content, Meta(description="Everything the field can ever show.")]
    type: TypeName
    ink: InkName
    x: Anchor
    baseline: Baseline
    align: Alignment = "left"
    ground: Ground = None
    clearing: Cleared = "pad"
    padding: Padding = None
    buffer: Annotated[
        Annotated[int, Meta(ge=1, le=65535)] | None,
        Meta(description="Bytes of the firmware's text buffer, terminator included; by default just enough."),
    ] = None
    period_ms: Period = None
    accepted: Accepting = ()


class IconState(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True):
    """One state of an icon: a one-bit bitmap, written in place or read from a PNG file.

    In `rows`, `#` is an inked pixel and `.` is not; all rows have one length. `ink` overrides the icon's.
    """

    name: Annotated[Name, Meta(description="The state's name, the only one in its icon.")]
    rows: Annotated[
        tuple[Row, ...],
        Meta(max_length=512, description="The bitmap, a text a row: `#` inked, `.` not inked."),
    ] = ()
    picture: Annotated[
        Annotated[str, Meta(min_length=1, max_length=1000)] | None,
        Meta(description="Path of a PNG file, relative to the layout file, in place of `rows`."),
    ] = None
    ink: Annotated[Name | None, Meta(description="Name of this state's own ink; by default the icon's.")] = (
        None
    )


class Icon(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True, tag_field="kind", tag="icon"):
    """A small picture with several states, every state's top left corner at (x, y).

    An update repaints the padding box (by default the smallest that holds every state).
    """

    name: PartName
    x: Left
    y: Top
    ink: InkName
    states: Annotated[
        tuple[IconState, ...], Meta(min_length=1, max_length=64, description="Everything the icon can show.")
    ]
    ground: Ground = None
    clearing: Cleared = "pad"
    padding: Padding = None
    link: Annotated[
        bool,
        Meta(
            description="Whether it shows a link: then it needs a state named `trying`, or `trying-` and more, for being on"
            " its way up, and one named `fault`, or `fault-` and more, for having failed."
        ),
    ] = False
    period_ms: Period = None
    accepted: Accepting = ()


class Rule(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True, tag_field="kind", tag="rule"):
    """A straight line, `length` pixels across or down from (x, y), `thickness` pixels thick."""

    name: PartName
    x: Left
    y: Top
    length: Annotated[Length, Meta(description="Length in pixels.")]
    ink: InkName
    direction: Annotated[Literal["across", "down"], Meta(description="Which way the line runs.")] = "across"
    thickness: Annotated[Thickness, Meta(description="Thickness in pixels, downwards or to the right.")] = 1
    accepted: Accepting = ()


class Box(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True, tag_field="kind", tag="box"):
    """A rectangle: filled (`fill`), outlined inwards (`outline`, `thickness` pixels), or both.

    The fill is ground for the parts drawn after it; the outline is ink.
    """

    name: PartName
    x: Left
    y: Top
    width: Annotated[Length, Meta(description="Width in pixels.")]
    height: Annotated[Length, Meta(description="Height in pixels.")]
    fill: Annotated[Name | None, Meta(description="Name of the ink that fills the box.")] = None
    outline: Annotated[Name | None, Meta(description="Name of the ink of the outline.")] = None
    thickness: Annotated[Thickness, Meta(description="Thickness of the outline in pixels, inwards.")] = 1
    accepted: Accepting = ()


Whole = Annotated[int, Meta(ge=-(2**31), le=2**31 - 1)]
Growing = Literal["right", "left", "up", "down"]


class MeterLimit(Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True):
    """A value that means something: from it upwards the whole bar is of `ink`; with `mark` a line stands there."""

    at: Annotated[Whole, Meta(description="The value.")]
    ink: Annotated[
        Name | None,
        Meta(description="Name of the bar's ink from this value upwards; by default as below it."),
    ] = None
    mark: Annotated[
        bool,
        Meta(
            description="Whether a line one pixel thick marks the value, in this ink, or cut out of a longer bar."
        ),
    ] = True


class Meter(
    Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True, tag_field="kind", tag="meter"
):
    """A level bar: of a rectangle, the share that a whole number takes of its range is filled.

    An update paints each pixel of the rectangle once. Of its L pixels in `direction`, the first
    floor((value - least) * L / (greatest - least)) are of the bar's ink: that of the highest limit which the
    value has reached, else the meter's. The mark of a limit stands on the pixel
    floor((at - least) * L / (greatest - least)), counted from 0 and L - 1 at most: where the bar covers it
    it is of the ground, else of the limit's ink; of two on one pixel the higher counts. A value outside the range, or
    none, shows the fault pattern: of the meter's ink is each pixel whose column and row, counted from the rectangle's
    top left, add up to a multiple of four, the rest is ground.
    """

    name: PartName
    x: Left
    y: Top
    width: Annotated[Length, Meta(description="Width in pixels.")]
    height: Annotated[Length, Meta(description="Height in pixels.")]
    least: Annotated[
        Annotated[int, Meta(ge=-(2**31) + 1, le=2**31 - 1)],
        Meta(
            description="The value of an empty bar; the least 32-bit number is left to say that there is none."
        ),
    ]
    greatest: Annotated[Whole, Meta(description="The value of a full bar.")]
    ink: InkName
    direction: Annotated[Growing, Meta(description="Which way the bar grows.")] = "right"
    limits: Annotated[
        tuple[MeterLimit, ...], Meta(max_length=16, description="Values that mean something, rising.")
    ] = ()
    ground: Ground = None
    period_ms: Period = None
    accepted: Accepting = ()


class Picture(
    Struct, frozen=True, forbid_unknown_fields=True, omit_defaults=True, tag_field="kind", tag="picture"
):
    """A picture that never changes, its top left corner at (x, y), each pixel brought to the panel's colours.

    Pixels that the file makes clear (less than half opaque) are not painted.
    """

    name: PartName
    x: Left
    y: Top
    picture: Annotated[
        str,
        Meta(min_length=1, max_length=1000, description="Path of a PNG file, relative to the layout file."),
    ]
    dither: Annotated[
        Dither,
        Meta(
            description="How colours between the panel's are shown: `none` takes the nearest, `ordered` mixes"
            " neighbouring pixels by a regular pattern, `diffused` by passing on what each is off."
        ),
    ] = "none"
    accepted: Accepting = ()


Part = Label | Field | Icon | Rule | Box | Meter | Picture
