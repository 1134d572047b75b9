"""Guarded text functions: values inside the proof become its texts, all others the fault text."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from panelproof.content.format import Conversion, pieces
from panelproof.content.graph import max_bytes
from panelproof.content.spec import Argument, Choice, FreeText, RealRange, WholeRange
from panelproof.content.words import alphabet
from panelproof.firmware import literals
from panelproof.firmware.constants import c_type as type_of
from panelproof.firmware.constants import last_member, text_bytes
from panelproof.firmware.decimals import Fixed, fixed
from panelproof.firmware.glyphdata import code_of
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
    chooses: bool = False
    wide_int: bool = False
    fixed: tuple[Fixed, ...] = ()
    scaled: bool = False

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
    scaled: bool
    only: bool  # the text is one conversion alone, without anything to it
    lines: list[str] = field(default_factory=list)
    statics: list[str] = field(default_factory=list)
    tables: list[tuple[str, tuple[int, ...]]] = field(default_factory=list)
    fixed: list[Fixed] = field(default_factory=list)
    chooses: bool = False

    def refuse(self, condition: str) -> None:
        if self.fault != "-1":
            self.constant("fault", f"{self.prefix}_FAULT")
        self.lines += [f"    {line}" for line in literals.wrapped(f"if ({condition})")]
        self.lines.append(f"        return {self.fault};")

    def constant(self, name: str, value: str) -> str:
        """Keep a text among the constants and return its name."""
        line = f"    static {self.layout.upper()}_CONST char {name}[] = {value};"
        if line not in self.statics:
            self.statics.append(line)
        return name


@dataclass(frozen=True, slots=True)
class _Printed:
    """What stands for one conversion: its parameter, and the conversion and expression that print it."""

    parameter: str
    spec: str
    expression: str


def guards(material: Material, screen: Screen, part: Field) -> tuple[Guard, ...]:
    """Return the text functions of a field: the second, where there is one, takes reals as whole numbers."""
    made = _guard(material, screen, part, scaled=False)
    real = any(isinstance(argument, RealRange) for argument in part.content.arguments)
    conversions = [piece for piece in pieces(part.content.format) if isinstance(piece, Conversion)]
    every = all(
        conversion.kind != "real" or fixed(conversion, argument) is not None
        for conversion, argument in zip(conversions, part.content.arguments, strict=True)
    )
    return (made, _guard(material, screen, part, scaled=True)) if real and every else (made,)


def _guard(material: Material, screen: Screen, part: Field, *, scaled: bool) -> Guard:
    names = material.layout.name, screen.name, part.name
    prefix, layout = upper(*names), lower(material.layout.name)
    room = f"{prefix}_TEXT_BYTES"
    content = part.content
    listed = pieces(content.format)
    only = content.format == "%s" and max_bytes(field_graph(part))[0] < text_bytes(part)
    body = _Body(layout, prefix, lower(*names), "-1", scaled, only)
    conversions = [piece for piece in listed if isinstance(piece, Conversion)]
    if content.fault is not None and conversions:
        body.fault = f"{layout}_copy_(buffer, {room}, fault, 1)"
    several = len(conversions) > 1
    made: list[_Printed] = []
    accepted = []
    for number, (conversion, argument) in enumerate(
        zip(conversions, content.arguments, strict=True), start=1
    ):
        end = f"_{number}" if several else ""
        made.append(_check(body, conversion, argument, end))
        accepted.append(_accepted(prefix, conversion, argument, end, scaled))
    result = _result(body, part, listed, made)
    body.lines += [f"    {line}" for line in literals.wrapped(f"return {result};")]
    lines = (*body.statics, *([""] if body.statics else []), *body.lines)
    return Guard(
        f"{body.name}_text{'_scaled' if scaled else ''}",
        tuple(one.parameter for one in made),
        tuple(accepted),
        f"{prefix}_FAULT" if content.fault is not None else "-1, the buffer untouched",
        lines,
        () if scaled else tuple(body.tables),
        copies=any(f"{layout}_copy_(" in line for line in lines),
        chooses=body.chooses,
        wide_int=any(map(_needs_wide_int, conversions, content.arguments)),
        fixed=tuple(body.fixed),
        scaled=scaled,
    )


def _result(body: _Body, part: Field, listed: Sequence[str | Conversion], made: Sequence[_Printed]) -> str:
    """Return the expression that writes the text into the buffer."""
    room, copy = f"{body.prefix}_TEXT_BYTES", f"{body.layout}_copy_"
    if not made:
        text = literals.text("".join(piece for piece in listed if isinstance(piece, str)))
        return f"{copy}(buffer, {room}, {body.constant('text', text)}, 1)"
    format = f"{body.prefix}_FORMAT"
    specs = iter(made)
    exact = [piece if isinstance(piece, str) else next(specs).spec or piece.canonical for piece in listed]
    if any(one.spec for one in made):
        shown = (
            one.replace("%", "%%") if isinstance(piece, str) else one
            for one, piece in zip(exact, listed, strict=True)
        )
        format = literals.text("".join(shown))
    printed = ", ".join(one.expression for one in made)
    needed = max_bytes(field_graph(part))[0] + 1
    if needed > text_bytes(part):
        # The layout has a fault, and the text is cut; printed at once into so small a buffer, gcc would warn.
        body.statics.append(f"    char full[{needed}];")
        call = f"if (snprintf(full, sizeof full, {format}, {printed}) < 0)"
        body.lines += [f"    {line}" for line in literals.wrapped(call)]
        body.lines.append("        return -1;")
        return f"{copy}(buffer, {room}, full, 0)"
    if body.only and made[0].spec:
        return made[0].expression
    return f"snprintf(buffer, {room}, {format}, {printed})"


def _word(argument: Argument, scaled: bool) -> str:
    if isinstance(argument, Choice):
        return "choice"
    if isinstance(argument, FreeText):
        return "text"
    return "scaled" if scaled and isinstance(argument, RealRange) else "value"


def _accepted(prefix: str, conversion: Conversion, argument: Argument, end: str, scaled: bool) -> str:
    name = f"{_word(argument, scaled)}{end}"
    if isinstance(argument, Choice):
        return f"{name}: 0 to {len(argument.texts) - 1}, one of {prefix}_CHOICE{end}_..."
    if isinstance(argument, FreeText):
        return f"{name}: {argument.shortest} to {argument.longest} characters of the alphabet"
    made = fixed(conversion, argument)
    if scaled and isinstance(argument, RealRange) and made is not None:
        return f"{name}: {made.least} to {made.greatest}, in steps of {made.step}"
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


def _check(body: _Body, conversion: Conversion, argument: Argument, end: str) -> _Printed:
    """Add the lines that refuse what the argument lacks, and return how it is printed."""
    prefix, layout = body.prefix, body.layout
    c_type, name = type_of(conversion, argument), f"{_word(argument, body.scaled)}{end}"
    parameter = f"{c_type}{'' if c_type.endswith('*') else ' '}{name}"
    least, greatest = f"{prefix}_LEAST{end}", f"{prefix}_GREATEST{end}"
    if isinstance(argument, Choice):
        return _Printed(parameter, *_choice(body, conversion, argument, name, end))
    if isinstance(argument, FreeText):
        table = f"{layout}_alphabet_{body.name.removeprefix(f'{layout}_')}{end}_"
        ends = _ranges(alphabet(argument)) or (0, 0)
        body.tables.append((table, ends))
        limits = f"{prefix}_SHORTEST{end}, {prefix}_LONGEST{end}"
        body.refuse(f"!{layout}_accepts_({name}, {limits}, {table}, {len(ends) // 2})")
        return _Printed(parameter, "", name)
    if conversion.kind == "real":
        return _real(body, conversion, argument, name, end)
    assert isinstance(argument, WholeRange)
    lowest, highest = SPANS.get(c_type, (-(1 << 64), 1 << 64))
    last, step = last_member(argument)
    conditions = []
    if argument.least > lowest:
        conditions.append(_below(name, least, argument.least, c_type))
    if last < highest:
        conditions.append(_above(name, greatest, last, c_type))
    if conditions:
        body.refuse(" || ".join(conditions))
    if step > 1:
        unsigned = DISTANCE.get(c_type)
        distance = f"({unsigned}){name} - ({unsigned}){least}" if unsigned else f"{name} - {least}"
        body.refuse(f"({distance}) % {prefix}_STEP{end}")
    narrow = NARROW.get((conversion.length, conversion.signed)) if conversion.kind == "whole" else None
    return _Printed(parameter, "", f"({narrow}){name}" if narrow else name)


def _below(name: str, least: str, value: int, c_type: str) -> str:
    """Return the condition under `least`; where that is the end of 16 bits, one that gcc does not warn of there."""
    if c_type == "int" and value == -(1 << 15):
        return f"({name} < {least} + 1 && {name} != {least})"
    return f"{name} < {least}"


def _above(name: str, greatest: str, value: int, c_type: str) -> str:
    """Return the condition over `greatest`, as `_below`."""
    if (c_type, value) in (("int", (1 << 15) - 1), ("unsigned int", (1 << 16) - 1)):
        return f"({name} > {greatest} - 1 && {name} != {greatest})"
    return f"{name} > {greatest}"


def _whole_type(*ends: float) -> tuple[str, str]:
    """Return the C type that holds whole numbers up to these, and the suffix of its literals."""
    return ("int32_t", "") if all(abs(end) < 1 << 31 for end in ends) else ("int64_t", "LL")


def _real(
    body: _Body, conversion: Conversion, argument: RealRange | WholeRange, name: str, end: str
) -> _Printed:
    """Refuse reals outside a range; print the others without floating point where that can be."""
    made, c_type = fixed(conversion, argument), type_of(conversion, argument)
    prefix, layout = body.prefix, body.layout
    if isinstance(argument, WholeRange):
        whole = _whole_real(body, conversion, argument, name, end)
        parameter = f"{_whole_type(argument.least, argument.greatest)[0] if body.scaled else c_type} {name}"
        if made is None:
            return _Printed(parameter, "", f"({c_type}){whole}")
        number = f"({layout}_scaled_)({whole} < 0 ? -{whole} : {whole}) * {made.scale}u"
        return _Printed(parameter, made.spec, _decimal(body, made, number, f"{whole} < 0", end))
    if body.scaled and made is not None:
        kind, suffix = _whole_type(made.least, made.greatest)
        ends = literals.whole(made.least, suffix), literals.whole(made.greatest, suffix)
        body.refuse(f"{name} < {ends[0]} || {name} > {ends[1]}")
        number = f"({layout}_scaled_)({name} < 0 ? -{name} : {name})"
        return _Printed(f"{kind} {name}", made.spec, _decimal(body, made, number, f"{name} < 0", end))
    body.refuse(f"!({name} >= {prefix}_LEAST{end} && {name} <= {prefix}_GREATEST{end})")
    if argument.least == 0:
        body.lines += [f"    if ({name} <= 0)", f"        {name} = 0; /* -0.0 */"]
    parameter = f"{c_type} {name}"
    if made is None:
        return _Printed(parameter, "", name)
    number, negative = f"number{end}", f"{layout}_negative_({name})"
    body.statics.append(f"    {layout}_scaled_ {number};")
    body.lines.append(f"    {number} = {layout}_round_({name}, {made.scale}u);")
    _refuse_beyond(body, made, number, negative)
    return _Printed(parameter, made.spec, _decimal(body, made, number, negative, end))


def _decimal(body: _Body, made: Fixed, number: str, negative: str, end: str) -> str:
    """Add the lines that write a number as a decimal, and return where the text is."""
    body.fixed.append(made)
    body.statics.append(f"    char decimal{end}[{made.room}];")
    body.statics.append(f"    const char *real{end};")
    plus = f"'{made.sign}'" if made.sign else "'\\0'"
    room = f"decimal{end}, sizeof decimal{end}"
    call = f"{body.layout}_decimal_({room}, {number}, {negative} ? '-' : {plus}, {made.places}, {made.zeros})"
    body.lines += [f"    {line}" for line in literals.wrapped(f"real{end} = {call};")]
    return f"real{end}"


def _refuse_beyond(body: _Body, made: Fixed, number: str, negative: str) -> None:
    """Where a double has 32 bits, the nearest one to an end of the range may round to a text beyond that."""
    most = f"({negative} ? {max(0, -made.least)}u : {max(0, made.greatest)}u)"
    least = max(made.least, -made.greatest, 0)
    body.lines.append("#if DBL_MANT_DIG == 24")
    body.refuse(f"{number} > {most}" + (f" || {number} < {least}u" if least else ""))
    body.lines.append("#endif")


def _whole_real(body: _Body, conversion: Conversion, argument: WholeRange, name: str, end: str) -> str:
    """Refuse what is no whole number of a range; return the whole number's name."""
    c_type = type_of(conversion, argument)
    last, step = last_member(argument)
    kind, suffix = _whole_type(argument.least, argument.greatest)
    least = literals.whole(argument.least, suffix)
    if body.scaled:
        whole = name
        conditions = [f"{name} < {least}", f"{name} > {literals.whole(last, suffix)}"]
    else:
        whole = f"whole{end}"
        body.refuse(f"!({name} >= {body.prefix}_LEAST{end} && {name} <= {body.prefix}_GREATEST{end})")
        body.statics.append(f"    {kind} {whole};")
        body.lines.append(f"    {whole} = ({kind}){name};")
        conditions = [f"({c_type}){whole} < {name}", f"({c_type}){whole} > {name}"]
    if step > 1:
        conditions.append(f"({whole} - {least}) % {step}")
    body.refuse(" || ".join(conditions))
    return whole


def _choice(body: _Body, conversion: Conversion, argument: Choice, name: str, end: str) -> tuple[str, str]:
    """Refuse numbers of no text; return the conversion that prints the text, and the expression."""
    body.refuse(f"{name} < 0 || {name} >= {len(argument.texts)}")
    if conversion.kind == "character":
        texts = body.constant(f"texts{end}", literals.text("".join(argument.texts)))
        return "", f"{body.layout.upper()}_READ8({texts} + {name})"
    texts = body.constant(f"texts{end}", literals.texts(argument.texts))
    body.chooses = True
    found = f"{body.layout}_choice_({texts}, {name})"
    if body.only:
        return "%s", f"{body.layout}_copy_(buffer, {body.prefix}_TEXT_BYTES, {found}, 1)"
    shown = f"shown{end}"
    body.statics.append(f"    char {shown}[{1 + max(len(text.encode()) for text in argument.texts)}];")
    body.lines.append(f"    (void){body.layout}_copy_({shown}, sizeof {shown}, {found}, 1);")
    return "", shown


def _ranges(chars: str) -> tuple[int, ...]:
    """Return ascending characters as pairs of codes, first and last of each unbroken range.

    A code is the bytes of the character as one number; no range holds characters of different lengths, so that
    every number inside that a text can form is a character of the range.
    """
    ends: list[str] = []
    for char in chars:
        if ends and ord(ends[-1]) == ord(char) - 1 and len(ends[-1].encode()) == len(char.encode()):
            ends[-1] = char
        else:
            ends += [char, char]
    return tuple(map(code_of, ends))
