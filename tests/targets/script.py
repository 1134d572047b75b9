"""A test program for a board: a layout's header, a script of commands in it, and what it sends back.

The script is data of the program, since a small board has nobody to read commands from: drawing screens, updating
parts, calling text functions. The board sends lines: windows and runs as the port gets them, or with
`measure` the depth of the stack under each call.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from panelproof.content.format import conversions
from panelproof.content.spec import Argument
from panelproof.firmware.constants import c_type
from panelproof.firmware.data import changes_by_parts
from panelproof.firmware.names import lower, member, upper
from panelproof.layout.document import Screen
from panelproof.layout.parts import Field, Icon, Meter
from panelproof.material import Material
from panelproof.picture.values import Values

Value = str | int | float | None
Shown = Field | Icon | Meter

SOURCE = r"""
#include "board.h"
#define %(L)s_CONST BOARD_CONST
#define %(L)s_READ8(address) BOARD_READ8(address)
#define %(L)s_READ16(address) BOARD_READ16(address)
#define %(L)s_READ32(address) BOARD_READ32(address)
#define %(L)s_IMPLEMENTATION
#include "layout.h"

int main(void);

static BOARD_CONST uint8_t script[] = {
%(script)s
};

static char line[64];
static unsigned used;

static void send(char byte)
{
    line[used++] = byte;
    if (used == sizeof line) {
        board_send(line, used);
        used = 0;
    }
}

static void number(uint32_t value)
{
    unsigned digits = 1, digit;

    while (digits < 8 && value >> (4 * digits))
        ++digits;
    while (digits--) {
        digit = (unsigned)(value >> (4 * digits)) & 15u;
        send((char)(digit < 10 ? '0' + digit : 'a' + digit - 10));
    }
}

%(port)s
#ifdef MEASURE
#define CALL(call)                                                                        \
    do {                                                                                  \
        const uintptr_t top = BOARD_STACK();                                              \
        volatile uint8_t *place;                                                          \
        for (place = (volatile uint8_t *)(top - BOARD_PAINT); (uintptr_t)place < top; ++place) \
            *place = 0xa5;                                                                \
        call;                                                                             \
        for (place = (volatile uint8_t *)(top - BOARD_PAINT); *place == 0xa5; ++place) {   \
        }                                                                                 \
        send('s');                                                                        \
        number((uint32_t)(top - (uintptr_t)place));                                       \
        send('\n');                                                                       \
    } while (0)
#else
#define CALL(call) call
#endif

static char text[256], former[256];
%(values)s

#ifdef TEXTS
static void show(int written)
{
    int n;

    send('t');
    if (written < 0)
        send('-');
    for (n = 0; n < written; ++n)
        number((uint32_t)(uint8_t)text[n] + 0x100u);
    if (written >= 0 && text[written])
        board_stop(92);
    send('\n');
}

static void call_text(unsigned which)
{
    int written;

    switch (which) {
%(calls)s
    default:
        board_stop(93);
        return;
    }
    show(written);
}
#endif

/* A meter's value out of four bytes, the low one first. */
static inline int32_t level(const char *bytes)
{
    uint32_t value = 0;
    unsigned n;

    for (n = 4; n--;)
        value = value << 8 | (uint8_t)bytes[n];
    return value <= INT32_MAX ? (int32_t)value : -1 - (int32_t)~value;
}

/* Copy a script's text where the drawing code can read it. */
static char *taken(char *to, const uint8_t **at)
{
    unsigned count = BOARD_READ8(*at), n;

    for (n = 0; n < count; ++n)
        to[n] = (char)BOARD_READ8(*at + 1 + n);
    to[count] = '\0';
    *at += 1 + count;
    return to;
}

int main(void)
{
    const %(l)s_port port = {PORT};
    const uint8_t *at = script;
    unsigned command, screen, part;

%(begin)s
    while ((command = BOARD_READ8(at)) != 0) {
        screen = BOARD_READ8(at + 1);
        part = BOARD_READ8(at + 2);
        at += 3;
        switch (command << 8 | screen) {
%(cases)s
        default:
            if (command == 'm') {
                mark();
                break;
            }
#ifdef TEXTS
            if (command == 't') {
                call_text(screen << 8 | part);
                break;
            }
#endif
            board_stop(94);
        }
    }
    board_send(line, used);
    (void)taken;
    (void)text;
    (void)former;
    (void)part;
    (void)port;
    board_stop(0);
    return 0;
}
"""


# The port that tells the host each window and run; another one defines `window`, `run` and so on, PORT and `mark`.
TELLING = r"""
static void window(void *context, uint16_t x, uint16_t y, uint16_t width, uint16_t height)
{
    if (context != line)
        board_stop(91);
#ifndef MEASURE
    send('w');
    number(x);
    send(',');
    number(y);
    send(',');
    number(width);
    send(',');
    number(height);
    send('\n');
#else
    (void)x;
    (void)y;
    (void)width;
    (void)height;
#endif
}

static void run(void *context, uint16_t colour, uint32_t count)
{
    if (context != line)
        board_stop(91);
#ifndef MEASURE
    number(colour);
    send(':');
    number(count);
    send('\n');
#else
    (void)colour;
    (void)count;
#endif
}

static void mark(void)
{
    send('m');
    send('\n');
}

#define PORT window, run, line
"""


@dataclass(slots=True)
class Script:
    """Commands for one layout, collected; `drawn` tells of each drawing one whether it is a draw, update or change."""

    material: Material
    code: list[int] = field(default_factory=list)
    calls: list[str] = field(default_factory=list)
    drawn: list[str] = field(default_factory=list)

    def draw(self, screen: Screen, values: Values) -> None:
        """Draw a whole screen."""
        number = self.material.layout.screens.index(screen)
        for place, part in enumerate(screen.parts):
            if isinstance(part, Shown):
                self.code += [ord("v"), number, place, *_value(part, values)]
        self.code += [ord("d"), number, 0]
        self.drawn.append("draw")

    def update(self, screen: Screen, part: Shown, values: Values) -> None:
        """Bring one part up to date."""
        number, place = self.material.layout.screens.index(screen), screen.parts.index(part)
        self.code += [ord("u"), number, place, *_value(part, values)]
        self.drawn.append("update")

    def change(self, screen: Screen, part: Shown, former: Values, values: Values) -> None:
        """Bring one part up to date that shows its former value already."""
        number, place = self.material.layout.screens.index(screen), screen.parts.index(part)
        self.code += [ord("g"), number, place, *_value(part, former), *_value(part, values)]
        self.drawn.append("change")

    def mark(self) -> None:
        """Ask for the frame as it is now."""
        self.code += [ord("m"), 0, 0]

    def text(self, screen: Screen, part: Field, values: tuple[Value, ...]) -> None:
        """Call a field's text function."""
        kinds = map(c_type, conversions(part.content.format), part.content.arguments)
        words = [_literal(value, kind) for value, kind in zip(values, kinds, strict=True)]
        name = f"{lower(self.material.layout.name, screen.name, part.name)}_text"
        number = len(self.calls)
        self.calls.append(f"case {number}: written = {name}({', '.join(['text', *words])}); break;")
        self.code += [ord("t"), number >> 8, number & 255]

    def source(self, port: str = TELLING) -> str:
        """Return the program, drawing through a port."""
        values, begin, cases = _dispatch(self.material)
        code = [*self.code, 0]
        rows = [", ".join(map(str, code[n : n + 24])) + "," for n in range(0, len(code), 24)]
        return SOURCE % {
            "l": lower(self.material.layout.name),
            "L": upper(self.material.layout.name),
            "script": "\n".join(rows),
            "port": port,
            "values": "\n".join(values),
            "begin": "\n".join(begin),
            "cases": "\n".join(cases),
            "calls": "\n".join(self.calls),
        }


def _value(part: Shown, values: Values) -> list[int]:
    if isinstance(part, Field):
        return _text(values.texts[part.name])
    if isinstance(part, Icon):
        return [1, _state(part, values.states[part.name])]
    return _level(values.levels[part.name])


def _text(text: str) -> list[int]:
    raw = text.encode()
    return [len(raw), *raw]


def _state(part: Icon, name: str) -> int:
    return [state.name for state in part.states].index(name)


def _level(value: int | None) -> list[int]:
    given = -(1 << 31) if value is None else value
    return [4, *given.to_bytes(4, "little", signed=True)]


def _literal(value: Value, kind: str) -> str:
    if value is None:
        return "NULL"
    if isinstance(value, str):
        return '"' + "".join(f"\\{byte:03o}" for byte in value.encode()) + '"'
    if isinstance(value, float):
        special = {"nan": "(0.0 / zero)", "inf": "(1.0 / zero)", "-inf": "(-1.0 / zero)"}
        return f"({kind}){special.get(repr(value), value.hex())}"
    return f"({kind}){value}LL" if value >= 0 else f"({kind})({value + 1}LL - 1)"


def _dispatch(material: Material) -> tuple[list[str], list[str], list[str]]:
    """Return the variables, the first statements, and the cases of the program's switch."""
    layout = material.layout
    whole = layout.panel.refresh == "whole"
    values, begin, cases = ["#ifdef TEXTS", "static volatile double zero;", "#endif"], [], []
    for number, screen in enumerate(layout.screens):
        own = lower(layout.name, screen.name)
        shown = [(place, p) for place, p in enumerate(screen.parts) if isinstance(p, Shown)]
        if shown:
            values.append(f"static {own}_values values{number};")
        argument = f", &values{number}" if shown else ""
        cases += [f"case 'd' << 8 | {number}:", f"CALL({own}_draw(&port{argument}));", "break;"]
        given, updated, changed = [], [], []
        for place, part in shown:
            name, update = member(part.name), f"{own}_{lower(part.name)}_update"
            given.append(f"case {place}:")
            updated.append(f"case {place}:")
            if changes_by_parts(part):
                read = "%s" if isinstance(part, Field) else "(uint8_t)%s[0]"
                call = f"{own}_{lower(part.name)}_change(&port, {read % 'former'}, {read % 'text'})"
                changed += [f"case {place}:", "(void)taken(former, &at);", "(void)taken(text, &at);"]
                changed += [f"CALL({call});", "break;"]
            if isinstance(part, Field):
                buffer = f"text{number}_{place}"
                values.append(f"static char {buffer}[{_room(part)}];")
                begin.append(f"    values{number}.{name} = {buffer};")
                given.append(f"(void)taken({buffer}, &at); break;")
                updated.append(f"(void)taken(text, &at); CALL({update}(&port, text)); break;")
                continue
            read = "(uint8_t)text[0]" if isinstance(part, Icon) else "level(text)"
            given.append(f"(void)taken(text, &at); values{number}.{name} = {read}; break;")
            updated.append(f"(void)taken(text, &at); CALL({update}(&port, {read})); break;")
        for letter, inner in (("v", given), ("u", updated), ("g", changed)):
            if inner and not (letter != "v" and whole):
                cases += [f"case '{letter}' << 8 | {number}:", "switch (part) {", *inner]
                cases += ["default: board_stop(95);", "}", "break;"]
    return values, begin, cases


def _room(part: Field) -> int:
    from panelproof.content.graph import max_bytes
    from panelproof.material import field_graph

    return int(max_bytes(field_graph(part))[0]) + 1


def arguments_of(part: Field) -> tuple[tuple[Argument, str], ...]:
    """Return a field's arguments, each with the C type of its parameter."""
    found = conversions(part.content.format)
    return tuple((a, c_type(c, a)) for c, a in zip(found, part.content.arguments, strict=True))
