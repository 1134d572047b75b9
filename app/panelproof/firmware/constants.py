"""The constants of a header: what the layout says, as macros, each with its unit."""

from __future__ import annotations

from dataclasses import dataclass

from panelproof.content.format import Conversion, pieces
from panelproof.content.graph import max_bytes
from panelproof.content.spec import Argument, Choice, RealRange, WholeRange
from panelproof.firmware import literals
from panelproof.firmware.names import Names, upper, word
from panelproof.layout.document import Screen
from panelproof.layout.parts import Box, Field, Icon, Label, Meter, Part, Picture, Rule
from panelproof.material import Material, field_graph

ALIGNMENTS = {"left": "STARTS_AT_X", "centre": "CENTRED_ON_X", "right": "ENDS_AT_X"}
# Suffix of a literal of each C type that a whole number is passed in.
SUFFIXES = {
    "int": "",
    "unsigned int": "U",
    "long": "L",
    "unsigned long": "UL",
    "long long": "LL",
    "unsigned long long": "ULL",
    "intmax_t": "LL",
    "uintmax_t": "ULL",
    "ptrdiff_t": "L",
    "size_t": "UL",
}
SIGNED = {"l": "long", "ll": "long long", "j": "intmax_t", "z": "ptrdiff_t", "t": "ptrdiff_t"}
UNSIGNED = {
    "l": "unsigned long",
    "ll": "unsigned long long",
    "j": "uintmax_t",
    "z": "size_t",
    "t": "size_t",
}

Row = tuple[str, str, str]


@dataclass(frozen=True, slots=True)
class Block:
    """Macros that belong together: (name, value, comment or nothing), under a title."""

    title: str
    rows: tuple[Row, ...]

    def lines(self) -> list[str]:
        """Return the macros as C source, values in one column."""
        table = [
            (f"#define {name}", value, f"/* {comment} */" if comment else "")
            for name, value, comment in self.rows
        ]
        return literals.aligned(table)


def c_type(conversion: Conversion, argument: Argument) -> str:
    """Return the C type of a conversion's parameter (`int` for the number of a choice's text)."""
    if conversion.kind == "real":
        return "long double" if conversion.length == "L" else "double"
    if conversion.kind == "whole":
        short = "int" if conversion.signed else "unsigned int"
        return (SIGNED if conversion.signed else UNSIGNED).get(conversion.length, short)
    return "const char *" if not isinstance(argument, Choice | WholeRange) else "int"


def last_member(argument: WholeRange) -> tuple[int, int]:
    """Return the greatest number of a whole range, and its step (1 where the range holds one number only)."""
    greatest = argument.greatest - (argument.greatest - argument.least) % argument.step
    return greatest, argument.step if greatest > argument.least else 1


def c_format(format: str) -> str:
    """Return a format as C compilers take it without a warning; it prints the same."""
    return "".join(
        piece.replace("%", "%%") if isinstance(piece, str) else piece.canonical for piece in pieces(format)
    )


def panel_block(material: Material, names: Names) -> Block:
    """Return the panel's constants."""
    layout = material.layout
    prefix = upper(layout.name)
    owner = "the panel"
    rows = [
        (names.claim(f"{prefix}_PANEL_WIDTH", owner), str(layout.panel.width), "px"),
        (names.claim(f"{prefix}_PANEL_HEIGHT", owner), str(layout.panel.height), "px"),
    ]
    ways = zip("XY", layout.panel.offset, ("column", "row"), strict=True)
    rows += [
        (names.claim(f"{prefix}_PANEL_OFFSET_{way}", owner), str(at), f"{line} of the display's memory")
        for way, at, line in ways
        if at
    ]
    return Block("The panel", tuple(rows))


def alignment_block(material: Material, names: Names) -> Block:
    """Return the words for how a text lies at its x."""
    prefix = upper(material.layout.name)
    named = [names.claim(f"{prefix}_{name}", "an alignment") for name in ALIGNMENTS.values()]
    return Block("How a text lies at its x", tuple((name, str(n), "") for n, name in enumerate(named)))


def ink_block(material: Material, names: Names) -> Block:
    """Return the inks in the panel's colours."""
    layout = material.layout
    how = {
        "mono": "1: lit, 0: dark",
        "grey4": "0 black to 3 white",
        "grey16": "0 black to 15 white",
        "indexed": f"0 to {layout.panel.colours.count - 1}: {', '.join(layout.panel.palette)}",
    }.get(layout.panel.colour_format, "16 bits: 5 red, 6 green, 5 blue")
    small = layout.panel.colour_format != "rgb565"
    rows = []
    for ink in layout.inks:
        name = names.claim(upper(layout.name, "ink", ink.name), f"the ink `{ink.name}`")
        code = material.code(ink.name)
        rows.append((name, str(code) if small else literals.colour(code), ink.colour))
    return Block(f"Inks, as the panel's colours ({how})", tuple(rows))


def type_block(material: Material, used: set[str], names: Names) -> Block:
    """Return the line metrics of every type that some part is set in."""
    rows = []
    for spec in material.layout.types:
        if spec.name not in used:
            continue
        prefix, owner = upper(material.layout.name, "type", spec.name), f"the type `{spec.name}`"
        type_ = material.types[spec.name]
        for end, pixels, where in (("ASCENT", type_.ascent, "over"), ("DESCENT", type_.descent, "under")):
            name = names.claim(f"{prefix}_{end}", owner)
            rows.append((name, literals.whole(pixels), f"px {where} the baseline"))
    return Block("Types: the height of a line", tuple(rows))


def screen_block(material: Material, screen: Screen, names: Names) -> Block:
    """Return what holds for a screen as a whole."""
    prefix, owner = upper(material.layout.name, screen.name), f"the screen `{screen.name}`"
    ground = upper(material.layout.name, "ink", screen.ground)
    return Block(f"Screen `{screen.name}`", ((names.claim(f"{prefix}_GROUND", owner), ground, ""),))


class _PartRows:
    """Collects the macros of one part."""

    def __init__(self, material: Material, screen: Screen, part: Part, names: Names) -> None:
        self.layout, self.screen, self.names = material.layout, screen, names
        self.prefix = upper(material.layout.name, screen.name, part.name)
        self.owner = f"the part `{part.name}` of the screen `{screen.name}`"
        self.rows: list[Row] = []
        names.claim(f"{self.prefix}_…", self.owner)

    def add(self, end: str, value: str | int, comment: str = "") -> None:
        name = self.names.claim(f"{self.prefix}_{end}", self.owner)
        self.rows.append((name, literals.whole(value) if isinstance(value, int) else value, comment))

    def ink(self, end: str, name: str) -> None:
        self.add(end, upper(self.layout.name, "ink", name))

    def text(self, part: Label | Field) -> None:
        self.add("X", part.x, "px")
        self.add("BASELINE", part.baseline, "px")
        self.add("ALIGNMENT", f"{upper(self.layout.name)}_{ALIGNMENTS[part.align]}")
        self.ink("INK", part.ink)
        self.ink("GROUND", part.ground or self.screen.ground)

    def padding(self, padding: tuple[int, int, int, int]) -> None:
        for end, value in zip(("X", "Y", "WIDTH", "HEIGHT"), padding, strict=True):
            self.add(f"PADDING_{end}", value, "px")

    def field(self, part: Field) -> None:
        self.text(part)
        if part.padding is not None:
            self.padding(part.padding)
        content = part.content
        self.add("TEXT_BYTES", text_bytes(part), "the text's buffer, terminator included")
        self.add("FORMAT", literals.text(c_format(content.format)))
        conversions = [piece for piece in pieces(content.format) if isinstance(piece, Conversion)]
        for number, (conversion, argument) in enumerate(
            zip(conversions, content.arguments, strict=True), start=1
        ):
            self.argument(conversion, argument, f"_{number}" if len(conversions) > 1 else "")
        for end, shown in (("FAULT", content.fault), ("FIRST", content.first)):
            if shown is not None:
                self.add(end, literals.text(shown))
        for number, shown in enumerate(content.also, start=1):
            self.add(f"ALSO_{number}", literals.text(shown))

    def argument(self, conversion: Conversion, argument: Argument, number: str) -> None:
        if isinstance(argument, RealRange):
            self.add(f"LEAST{number}", literals.real(argument.least))
            self.add(f"GREATEST{number}", literals.real(argument.greatest))
        elif isinstance(argument, WholeRange):
            greatest, step = last_member(argument)
            if conversion.kind == "real":
                self.add(f"LEAST{number}", literals.real(float(argument.least)))
                self.add(f"GREATEST{number}", literals.real(float(greatest)))
                suffix = "LL"
            else:
                suffix = SUFFIXES[c_type(conversion, argument)]
                self.add(f"LEAST{number}", literals.whole(argument.least, suffix))
                self.add(f"GREATEST{number}", literals.whole(greatest, suffix))
            if step > 1:
                unsigned = suffix if "U" in suffix or conversion.kind == "real" else f"U{suffix}"
                self.add(f"STEP{number}", literals.whole(step, unsigned))
        elif isinstance(argument, Choice):
            taken: set[str] = set()
            for place, shown in enumerate(argument.texts):
                end = word(shown) or f"TEXT_{place}"
                while end in taken:
                    end = f"{end}_{place}"
                taken.add(end)
                self.add(f"CHOICE{number}_{end}", place, literals.clipped(literals.text(shown)))
        else:
            self.add(f"SHORTEST{number}", argument.shortest, "characters")
            self.add(f"LONGEST{number}", argument.longest, "characters")


def text_bytes(part: Field) -> int:
    """Return the size of a field's text buffer: as the layout has it, or just enough."""
    return part.buffer if part.buffer is not None else max_bytes(field_graph(part))[0] + 1


def part_block(material: Material, screen: Screen, part: Part, names: Names) -> Block:
    """Return the constants of a part."""
    made = _PartRows(material, screen, part, names)
    if isinstance(part, Label):
        made.text(part)
        made.add("TEXT", literals.text(part.text))
        return Block(f"label `{part.name}`", tuple(made.rows))
    if isinstance(part, Field):
        made.field(part)
        return Block(f"field `{part.name}`, clearing: {part.clearing}", tuple(made.rows))
    made.add("X", part.x, "px")
    made.add("Y", part.y, "px")
    if isinstance(part, Icon):
        masks = [material.bitmaps[state] for state in part.states]
        size = max(mask.width for mask in masks), max(mask.height for mask in masks)
        made.ink("INK", part.ink)
        made.ink("GROUND", part.ground or screen.ground)
        if part.padding is not None:
            made.padding(part.padding)
        else:
            made.add("PADDING_X", f"{made.prefix}_X", "px")
            made.add("PADDING_Y", f"{made.prefix}_Y", "px")
            made.add("PADDING_WIDTH", size[0], "px")
            made.add("PADDING_HEIGHT", size[1], "px")
        for place, state in enumerate(part.states):
            made.add(f"STATE_{upper(state.name)}", place)
        made.add("STATES", len(part.states))
        return Block(f"icon `{part.name}`, clearing: {part.clearing}", tuple(made.rows))
    if isinstance(part, Rule):
        made.add("LENGTH", part.length, f"px {part.direction}")
        made.add("THICKNESS", part.thickness, "px")
        made.ink("INK", part.ink)
        return Block(f"rule `{part.name}`", tuple(made.rows))
    if isinstance(part, Meter):
        return _meter_block(made, part)
    if isinstance(part, Picture):
        raster = material.raster(part)
        made.add("WIDTH", raster.width, "px")
        made.add("HEIGHT", raster.height, "px")
        return Block(f"picture `{part.name}`", tuple(made.rows))
    return _box_block(made, part)


def _meter_block(made: _PartRows, part: Meter) -> Block:
    ways = {"right": "to the right", "left": "to the left", "up": "upwards", "down": "downwards"}
    made.add("WIDTH", part.width, "px")
    made.add("HEIGHT", part.height, "px")
    made.add("LEAST", part.least, "the value of an empty bar")
    made.add("GREATEST", part.greatest, "the value of a full one")
    made.ink("INK", part.ink)
    made.ink("GROUND", part.ground or made.screen.ground)
    for number, limit in enumerate(part.limits, start=1):
        made.add(f"LIMIT_{number}", limit.at, "marked by a line" if limit.mark else "")
        if limit.ink:
            made.ink(f"LIMIT_{number}_INK", limit.ink)
    return Block(f"level bar `{part.name}`, growing {ways[part.direction]}", tuple(made.rows))


def _box_block(made: _PartRows, part: Box) -> Block:
    made.add("WIDTH", part.width, "px")
    made.add("HEIGHT", part.height, "px")
    if part.fill is not None:
        made.ink("FILL", part.fill)
    if part.outline is not None:
        made.add("THICKNESS", part.thickness, "px of the outline, inwards")
        made.ink("OUTLINE", part.outline)
    return Block(f"box `{part.name}`", tuple(made.rows))
