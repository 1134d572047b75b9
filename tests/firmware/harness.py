"""Compiled headers, driven from Python: a frame buffer behind the port, and a port that counts.

The program reads commands and dumps raw frames; it stops with a message where a window leaves the panel, or
where runs do not fill their window exactly.
"""

from __future__ import annotations

import os
import shutil
import subprocess
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np
import pytest
from numpy.typing import NDArray

from panelproof.firmware.data import changes_by_parts
from panelproof.firmware.header import header
from panelproof.firmware.names import lower, member, upper
from panelproof.layout.document import Screen
from panelproof.layout.parts import Field, Icon, Meter
from panelproof.material import Material
from panelproof.picture.values import Values

# What the header promises: C99 to C23, C++11 to C++20.
LANGUAGES = (
    ("gcc", "c99"),
    ("gcc", "c11"),
    ("gcc", "c17"),
    ("gcc", "c2x"),
    ("clang", "c99"),
    ("clang", "c17"),
    ("clang", "c2x"),
    ("g++", "c++11"),
    ("g++", "c++14"),
    ("g++", "c++17"),
    ("g++", "c++20"),
    ("clang++", "c++11"),
    ("clang++", "c++17"),
    ("clang++", "c++20"),
)
WARNINGS = ("-Wall", "-Wextra", "-Wpedantic", "-Wconversion", "-Wshadow", "-Werror")
SANITIZERS = ("-fsanitize=address,undefined", "-fno-sanitize-recover=all")

MAIN = r"""
#define %(L)s_IMPLEMENTATION
#include "%(header)s"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static uint16_t frame[%(L)s_PANEL_HEIGHT][%(L)s_PANEL_WIDTH];
static uint8_t touched[%(L)s_PANEL_HEIGHT][%(L)s_PANEL_WIDTH];
static uint32_t windows, runs, rest;
static unsigned left, right, x, y;

static void stop(const char *why)
{
    fprintf(stderr, "%%s\n", why);
    exit(3);
}

static void window(void *context, uint16_t at_x, uint16_t at_y, uint16_t width, uint16_t height)
{
    if (context != frame) stop("another context");
    if (rest) stop("the runs do not fill their window");
    if (!width || !height) stop("an empty window");
    if (at_x + width > %(L)s_PANEL_WIDTH || at_y + height > %(L)s_PANEL_HEIGHT) stop("outside the panel");
    left = x = at_x;
    right = (unsigned)(at_x + width);
    y = at_y;
    rest = (uint32_t)width * height;
    ++windows;
}

static void run(void *context, uint16_t colour, uint32_t count)
{
    if (context != frame) stop("another context");
    if (!count) stop("an empty run");
    if (count > rest) stop("a run beyond its window");
    rest -= count;
    ++runs;
    while (count--) {
        frame[y][x] = colour;
        if (touched[y][x] < 255) ++touched[y][x];
        if (++x == right) {
            x = left;
            ++y;
        }
    }
}

/* A text of exactly its own size on the heap, so that a sanitizer sees every byte read beyond it. */
static char *decoded(const char *hex)
{
    size_t bytes = strlen(hex) / 2, n;
    char *text = (char *)malloc(bytes + 1);
    unsigned byte;

    for (n = 0; n < bytes; ++n) {
        if (sscanf(hex + 2 * n, "%%2x", &byte) != 1) stop("not hexadecimal");
        text[n] = (char)byte;
    }
    text[bytes] = '\0';
    return text;
}

static void dump(void)
{
    uint32_t counts[3] = {0, 0, 0};
    unsigned row, column;

    for (row = 0; row < %(L)s_PANEL_HEIGHT; ++row)
        for (column = 0; column < %(L)s_PANEL_WIDTH; ++column)
            if (touched[row][column] > counts[2]) counts[2] = touched[row][column];
    counts[0] = windows;
    counts[1] = runs;
    fwrite(counts, sizeof counts, 1, stdout);
    fwrite(touched, sizeof touched, 1, stdout);
    fwrite(frame, sizeof frame, 1, stdout);
}

%(values)s

int main(void)
{
    static char line[100000];
    const %(l)s_port port = {window, run, frame};

    (void)decoded;

    while (fgets(line, sizeof line, stdin)) {
        int command, screen = 0, part = 0, begin = 0, n;
        unsigned number = 0, former = 0;
        char *rest_of_line;

        line[strcspn(line, "\n")] = '\0';
        command = line[0];
        sscanf(line + 1, "%%d %%d %%n", &screen, &part, &begin);
        rest_of_line = line + 1 + begin;
        if (command == 'f') {
            dump();
            continue;
        }
        n = sscanf(rest_of_line, "%%u %%u", &number, &former);
        (void)n;
        (void)former;
        windows = runs = 0;
        memset(touched, 0, sizeof touched);
        if (command == 'c') {
            for (y = 0; y < %(L)s_PANEL_HEIGHT; ++y)
                for (x = 0; x < %(L)s_PANEL_WIDTH; ++x) frame[y][x] = (uint16_t)number;
            continue;
        }
        switch (screen * 1000 + part) {
%(cases)s
        default:
            stop("no such part");
        }
        if (rest) stop("the runs do not fill their window");
    }
    return 0;
}
"""


def installed(name: str) -> str:
    """Return the path of a compiler; without it the test is skipped, on CI it fails."""
    found = shutil.which(name)
    if found is None:
        if os.environ.get("CI") == "true":
            pytest.fail(f"{name} is not installed, and CI must have it")
        pytest.skip(f"{name} is not installed")
    return found


def compiled(folder: Path, arguments: Sequence[str | Path], using: str = "gcc") -> str:
    """Run a compiler in a folder and return what it said; it must succeed."""
    done = subprocess.run(
        [installed(using), *map(str, arguments)], cwd=folder, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr[:4000]
    return done.stderr


@dataclass(frozen=True, slots=True)
class Answer:
    """A frame, how often the last command painted each of its pixels, and what the port was asked for."""

    codes: NDArray[np.uint16]
    touched: NDArray[np.uint8]
    windows: int
    runs: int


@dataclass(slots=True)
class Program:
    """A compiled header. Commands are collected, then run all at once."""

    path: Path
    material: Material
    commands: list[str] = field(default_factory=list)

    def _place(self, screen: Screen, part: Field | Icon | Meter) -> str:
        return f"{self.material.layout.screens.index(screen)} {screen.parts.index(part) + 1}"

    def clear(self, code: int) -> None:
        """Fill the frame buffer, not through the port."""
        self.commands.append(f"c0 0 {code}")

    def draw(self, screen: Screen, values: Values) -> None:
        """Draw a whole screen."""
        for part in screen.parts:
            if isinstance(part, Field):
                self.commands.append(f"v{self._place(screen, part)} {values.texts[part.name].encode().hex()}")
            elif isinstance(part, Icon):
                self.commands.append(f"v{self._place(screen, part)} {_state(part, values.states[part.name])}")
            elif isinstance(part, Meter):
                self.commands.append(f"v{self._place(screen, part)} {_level(values.levels[part.name])}")
        self.commands.append(f"d{self.material.layout.screens.index(screen)} 0")

    def update_field(self, screen: Screen, part: Field, text: str | bytes) -> None:
        """Update one field."""
        raw = text.encode() if isinstance(text, str) else text
        self.commands.append(f"u{self._place(screen, part)} {raw.hex()}")

    def update_icon(self, screen: Screen, part: Icon, state: str | int) -> None:
        """Set one icon; a number may be no state of it."""
        number = state if isinstance(state, int) else _state(part, state)
        self.commands.append(f"u{self._place(screen, part)} {number}")

    def change_field(
        self, screen: Screen, part: Field, former: str | bytes | None, text: str | bytes
    ) -> None:
        """Bring one field up to date that shows `former` already (None: not known)."""
        was, now = (one.encode() if isinstance(one, str) else one for one in (former, text))
        shown = "-" if was is None else f"={was.hex()}"
        self.commands.append(f"g{self._place(screen, part)} {(now or b'').hex()},{shown}")

    def change_icon(self, screen: Screen, part: Icon, former: str | int, state: str | int) -> None:
        """Bring one icon up to date that shows `former` already; numbers may be no states of it."""
        was, now = (one if isinstance(one, int) else _state(part, one) for one in (former, state))
        self.commands.append(f"g{self._place(screen, part)} {now} {was}")

    def update_meter(self, screen: Screen, part: Meter, value: int | None) -> None:
        """Set one meter; None is no value."""
        self.commands.append(f"u{self._place(screen, part)} {_level(value)}")

    def change_meter(self, screen: Screen, part: Meter, former: int | None, value: int | None) -> None:
        """Bring one meter up to date that shows `former` already."""
        self.commands.append(f"g{self._place(screen, part)} {_level(value)} {_level(former)}")

    def frame(self) -> None:
        """Ask for the frame."""
        self.commands.append("f")

    def run(self) -> list[Answer]:
        """Run the commands collected and return the frames asked for."""
        asked = "\n".join([*self.commands, ""])
        self.commands.clear()
        done = subprocess.run([self.path], input=asked.encode(), capture_output=True, check=False)
        assert done.returncode == 0, done.stderr.decode()[:4000]
        panel = self.material.layout.panel
        pixels = panel.width * panel.height
        record = np.dtype([("counts", "<u4", 3), ("touched", "u1", pixels), ("codes", "=u2", pixels)])
        shape = panel.height, panel.width
        return [
            Answer(
                one["codes"].reshape(shape),
                one["touched"].reshape(shape),
                int(one["counts"][0]),
                int(one["counts"][1]),
            )
            for one in np.frombuffer(done.stdout, dtype=record)
        ]


def _level(value: int | None) -> int:
    return (-(1 << 31) if value is None else value) % (1 << 32)


def _state(part: Icon, name: str) -> int:
    return [state.name for state in part.states].index(name)


def main_source(material: Material, header_name: str = "layout.h") -> str:
    """Return the source of the program that drives a layout's header."""
    layout = material.layout
    low = lower(layout.name)
    whole = layout.panel.refresh == "whole"
    values, cases = [], []
    for number, screen in enumerate(layout.screens):
        own = lower(layout.name, screen.name)
        shown = [part for part in screen.parts if isinstance(part, Field | Icon | Meter)]
        if shown:
            values.append(f"static {own}_values values{number};")
        argument = f", &values{number}" if shown else ""
        cases.append(f"case {number * 1000}: {own}_draw(&port{argument}); break;")
        for place, part in enumerate(screen.parts, start=1):
            name = member(part.name) if isinstance(part, Field | Icon | Meter) else ""
            update = f"{own}_{lower(part.name)}_update"
            cases.append(f"case {number * 1000 + place}:")
            changes = changes_by_parts(part) and not whole
            change = f"{own}_{lower(part.name)}_change"
            if isinstance(part, Field):
                cases.append("{ char *comma = strchr(rest_of_line, ','), *text;")
                cases.append("if (comma) *comma = 0;")
                cases.append("text = decoded(rest_of_line);")
                if changes:
                    cases.append("if (comma) { char *shown = comma[1] == '=' ? decoded(comma + 2) : NULL;")
                    cases.append(f"{change}(&port, shown, text); free(shown); free(text); break; }}")
                cases.append("if (command == 'v') {")
                cases.append(f"free((char *)values{number}.{name}); values{number}.{name} = text; break; }}")
                if not whole:
                    cases.append(f"{update}(&port, text);")
                cases.append("free(text); break; }")
            elif isinstance(part, Icon):
                if changes:
                    call = f"{change}(&port, (uint8_t)former, (uint8_t)number)"
                    cases.append(f"if (command == 'g') {call}; else")
                cases.append(f"if (command == 'v') values{number}.{name} = (uint8_t)number;")
                cases.append(f"else {update}(&port, (uint8_t)number);" if not whole else "")
                cases.append("break;")
            elif isinstance(part, Meter):
                if not whole:
                    call = f"{change}(&port, (int32_t)former, (int32_t)number)"
                    cases.append(f"if (command == 'g') {call}; else")
                cases.append(f"if (command == 'v') values{number}.{name} = (int32_t)number;")
                cases.append(f"else {update}(&port, (int32_t)number);" if not whole else "")
                cases.append("break;")
            else:
                cases.append("break;")
    return MAIN % {
        "l": low,
        "L": upper(layout.name),
        "header": header_name,
        "values": "\n".join(values),
        "cases": "\n".join(cases),
    }


def build(
    material: Material,
    folder: Path,
    flags: Sequence[str] = ("-std=c99", *SANITIZERS),
    using: str = "gcc",
    text: str | None = None,
) -> Program:
    """Compile a layout's header (or another text of it) with the driver."""
    cpp = using.endswith("++")
    (folder / "layout.h").write_text(header(material) if text is None else text, encoding="ascii")
    source = folder / ("main.cpp" if cpp else "main.c")
    source.write_text(main_source(material), encoding="ascii")
    program = folder / "program"
    compiled(folder, ["-O1", *WARNINGS, *flags, source.name, "-o", program], using)
    return Program(program, material)
