"""Guarded text functions: values inside the proof become its texts, all others the fault text."""

from __future__ import annotations

from dataclasses import dataclass, field

from panelproof.content.format import Conversion, pieces
from panelproof.content.graph import max_bytes
from panelproof.content.spec import Argument, Choice, FreeText, RealRange, WholeRange
from panelproof.content.words import alphabet
from panelproof.firmware import literals
from panelproof.firmware.constants import c_type as type_of
from panelproof.firmware.constants import last_member, text_bytes
from panelproof.firmware.names import lower, upper
from panelproof.layout.document import Screen
from panelproof.layout.parts import Field
from panelproof.material import Material, field_graph

# The unsigned type in which the distance of two numbers cannot overflow.
DISTANCE = {
    "int": "unsigned int",
    "long": "unsigned long",
    "long long": "unsigned long long",
    "intmax_t": "uintmax_t",
    "ptrdiff_t": "size_t",
}
# The ends that every C library gives these types: a comparison beyond them is always false.
SPANS = {
    "int": (-(1 << 31), (1 << 31) - 1),
    "unsigned int": (0, (1 << 32) - 1),
    "unsigned long": (0, 1 << 64),
    "size_t": (0, 1 << 64),
    "long long": (-(1 << 63), (1 << 63) - 1),
    "unsigned long long": (0, (1 << 64) - 1),
    "intmax_t": (-(1 << 63), (1 << 63) - 1),
    "uintmax_t": (0, (1 << 64) - 1),
}
# What `hh` and `h` print is converted to these first, as ISO C says.
NARROW = {
    ("hh", True): "signed char",
    ("hh", False): "unsigned char",
    ("h", True): "short",
    ("h", False): "unsigned short",
}


@dataclass(frozen=True, slots=True)
class Guard:
    """One text function: its declaration, the lines of its body, and what it needs beside it."""

    name: str
    parameters: tuple[str, ...]
    accepted: tuple[str, ...]
    otherwise: str
    body: tuple[str, ...]
    tables: tuple[tuple[str, tuple[int, ...]], ...] = ()
    copies: bool = False
    wide_int: bool = False

    @property
    def declaration(self) -> str:
        """The function's head, without a semicolon."""
        return f"int {self.name}({', '.join(('char *buffer', *self.parameters))})"


@dataclass(slots=True)
class _Body:
    layout: str
    prefix: str
    name: str
    fault: str
    lines: list[str] = field(default_factory=list)
    statics: list[str] = field(default_factory=list)
    tables: list[tuple[str, tuple[int, ...]]] = field(default_factory=list)

    def refuse(self, condition: str) -> None:
        self.lines += [f"    {line}" for line in literals.wrapped(f"if ({condition})")]
        self.lines.append(f"        return {self.fault};")


def guard(material: Material, screen: Screen, part: Field) -> Guard:
    """Return the text function of a field."""
    names = material.layout.name, screen.name, part.name
    prefix, layout = upper(*names), lower(material.layout.name)
    room = f"{prefix}_TEXT_BYTES"
    content = part.content
    fault = "-1" if content.fault is None else f"{layout}_copy_(buffer, {room}, {prefix}_FAULT)"
    body = _Body(layout, prefix, lower(*names), fault)
    conversions = [piece for piece in pieces(content.format) if isinstance(piece, Conversion)]
    several = len(conversions) > 1
    parameters, printed, accepted = [], [], []
    for number, (conversion, argument) in enumerate(
        zip(conversions, content.arguments, strict=True), start=1
    ):
        end = f"_{number}" if several else ""
        c_type = type_of(conversion, argument)
        name = f"{_word(argument)}{end}"
        parameters.append(f"{c_type}{'' if c_type.endswith('*') else ' '}{name}")
        printed.append(_check(body, conversion, argument, name, end))
        accepted.append(_accepted(prefix, argument, name, end))
    needed = max_bytes(field_graph(part))[0] + 1
    short = needed > text_bytes(part) and bool(conversions)
    if short:
        # The layout has a fault, and the text is cut; printed at once into so small a buffer, gcc would warn.
        body.statics.append(f"    char full[{needed}];")
        call = f"if (snprintf(full, sizeof full, {prefix}_FORMAT, {', '.join(printed)}) < 0)"
        body.lines += [f"    {line}" for line in literals.wrapped(call)]
        body.lines.append("        return -1;")
        result = f"{layout}_copy_(buffer, {room}, full)"
    elif conversions:
        result = f"snprintf(buffer, {room}, {prefix}_FORMAT, {', '.join(printed)})"
    else:
        text = "".join(piece for piece in pieces(content.format) if isinstance(piece, str))
        result = f"{layout}_copy_(buffer, {room}, {literals.text(text)})"
    body.lines += [f"    {line}" for line in literals.wrapped(f"return {result};")]
    return Guard(
        f"{body.name}_text",
        tuple(parameters),
        tuple(accepted),
        f"{prefix}_FAULT" if content.fault is not None else "-1, the buffer untouched",
        (*body.statics, *([""] if body.statics else []), *body.lines),
        tuple(body.tables),
        copies=content.fault is not None or not conversions or short,
        wide_int=any(map(_needs_wide_int, conversions, content.arguments)),
    )


def _word(argument: Argument) -> str:
    if isinstance(argument, Choice):
        return "choice"
    return "text" if isinstance(argument, FreeText) else "value"


def _accepted(prefix: str, argument: Argument, name: str, end: str) -> str:
    if isinstance(argument, Choice):
        return f"{name}: 0 to {len(argument.texts) - 1}, one of {prefix}_CHOICE{end}_..."
    if isinstance(argument, FreeText):
        return f"{name}: {argument.shortest} to {argument.longest} characters of the alphabet"
    least, greatest = argument.least, argument.greatest
    step = ""
    if isinstance(argument, WholeRange):
        greatest, by = last_member(argument)
        step = f" by {by}" if by > 1 else ""
    return f"{name}: {least!r} to {greatest!r}{step}"


def _needs_wide_int(conversion: Conversion, argument: Argument) -> bool:
    """Tell whether a range needs an `int` of more than the 16 bits that ISO C promises."""
    if not isinstance(argument, WholeRange) or conversion.kind != "whole":
        return False
    if conversion.signed:
        return type_of(conversion, argument) == "int" and not (
            argument.least >= -(1 << 15) and argument.greatest < 1 << 15
        )
    return type_of(conversion, argument) == "unsigned int" and argument.greatest >= 1 << 16


def _check(body: _Body, conversion: Conversion, argument: Argument, name: str, end: str) -> str:
    """Add the lines that refuse what the argument lacks, and return the expression to print."""
    prefix, layout = body.prefix, body.layout
    least, greatest = f"{prefix}_LEAST{end}", f"{prefix}_GREATEST{end}"
    if isinstance(argument, Choice):
        return _choice(body, conversion, argument, name, end)
    if isinstance(argument, FreeText):
        table = f"{layout}_alphabet_{body.name.removeprefix(f'{layout}_')}{end}_"
        ends = _ranges(alphabet(argument)) or (0, 0)
        body.tables.append((table, ends))
        limits = f"{prefix}_SHORTEST{end}, {prefix}_LONGEST{end}"
        body.refuse(f"!{layout}_accepts_({name}, {limits}, {table}, {len(ends) // 2})")
        return name
    if conversion.kind == "real":
        body.refuse(f"!({name} >= {least} && {name} <= {greatest})")
        if isinstance(argument, RealRange):
            if argument.least == 0:
                body.lines += [f"    if ({name} <= 0)", f"        {name} = 0; /* -0.0 */"]
            return name
        return _whole_real(body, conversion, argument, name, end)
    assert isinstance(argument, WholeRange)
    c_type = type_of(conversion, argument)
    lowest, highest = SPANS.get(c_type, (-(1 << 64), 1 << 64))
    last, step = last_member(argument)
    conditions = []
    if argument.least > lowest:
        conditions.append(f"{name} < {least}")
    if last < highest:
        conditions.append(f"{name} > {greatest}")
    if conditions:
        body.refuse(" || ".join(conditions))
    if step > 1:
        unsigned = DISTANCE.get(c_type)
        distance = f"({unsigned}){name} - ({unsigned}){least}" if unsigned else f"{name} - {least}"
        body.refuse(f"({distance}) % {prefix}_STEP{end}")
    narrow = NARROW.get((conversion.length, conversion.signed)) if conversion.kind == "whole" else None
    return f"({narrow}){name}" if narrow else name


def _whole_real(body: _Body, conversion: Conversion, argument: WholeRange, name: str, end: str) -> str:
    """Refuse reals between the whole numbers of a range; the expression printed has no -0.0."""
    whole, c_type = f"whole{end}", type_of(conversion, argument)
    _, step = last_member(argument)
    body.statics.append(f"    int64_t {whole};")
    body.lines.append(f"    {whole} = (int64_t){name};")
    conditions = [f"({c_type}){whole} < {name}", f"({c_type}){whole} > {name}"]
    if step > 1:
        conditions.append(f"({whole} - (int64_t){body.prefix}_LEAST{end}) % {body.prefix}_STEP{end}")
    body.refuse(" || ".join(conditions))
    return f"({c_type}){whole}"


def _choice(body: _Body, conversion: Conversion, argument: Choice, name: str, end: str) -> str:
    table, count = f"texts{end}", len(argument.texts)
    if conversion.kind == "character":
        body.statics.append(f"    static const char {table}[] = {literals.text(''.join(argument.texts))};")
    else:
        body.statics.append(f"    static const char *const {table}[] = {{")
        body.statics += literals.rows(map(literals.text, argument.texts), "        ")
        body.statics.append("    };")
    body.refuse(f"{name} < 0 || {name} >= {count}")
    return f"{table}[{name}]"


def _ranges(chars: str) -> tuple[int, ...]:
    """Return ascending characters as pairs of codes, first and last of each unbroken range."""
    ends: list[int] = []
    for code in map(ord, chars):
        if ends and ends[-1] == code - 1:
            ends[-1] = code
        else:
            ends += [code, code]
    return tuple(ends)
