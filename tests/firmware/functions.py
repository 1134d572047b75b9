"""Compiled text functions, called from Python."""

from __future__ import annotations

import subprocess
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from tests.firmware.harness import SANITIZERS, WARNINGS, compiled
from tests.firmware.layouts import INKS, MadeType
from tests.firmware.strategies import made_material

from panelproof.content.build import graph
from panelproof.content.format import Conversion, conversions
from panelproof.content.spec import Argument, Content
from panelproof.firmware.constants import c_type
from panelproof.firmware.header import header
from panelproof.glyphs.glyph import Glyph
from panelproof.layout.document import Layout, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field
from panelproof.material import Material

Value = str | int | float | None

MAIN = r"""
#define G_IMPLEMENTATION
#include "g.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static char *decoded(const char *hex)
{
    size_t bytes = strlen(hex) / 2, n;
    char *text = (char *)malloc(bytes + 1);
    unsigned byte;

    for (n = 0; n < bytes; ++n) {
        (void)sscanf(hex + 2 * n, "%2x", &byte);
        text[n] = (char)byte;
    }
    text[bytes] = '\0';
    return text;
}

static void show(int written, char *buffer, int room)
{
    int n;

    printf("%d ", written);
    if (written < 0)
        for (n = 0; n < room; ++n) if (buffer[n] != '~') printf("touched");
    if (written >= 0 && (written >= room || strlen(buffer) != (size_t)written)) printf("wrong length ");
    for (n = 0; written >= 0 && buffer[n]; ++n) printf("%02x", (unsigned)(unsigned char)buffer[n]);
    printf("\n");
    free(buffer);
}

int main(void)
{
    static char line[10000], w[4][2000];
    char *buffer, *texts[4];
    int field, n;

    while (fgets(line, sizeof line, stdin)) {
        for (n = 0; n < 4; ++n) strcpy(w[n], "-");
        if (sscanf(line, "%d %1999s %1999s %1999s %1999s", &field, w[0], w[1], w[2], w[3]) < 1) return 2;
        for (n = 0; n < 4; ++n) texts[n] = w[n][0] == '=' ? decoded(w[n] + 1) : NULL;
        switch (field) {
CASES
        default:
            return 2;
        }
        for (n = 0; n < 4; ++n) free(texts[n]);
    }
    return 0;
}
"""


def material_of(contents: tuple[Content, ...], buffers: Mapping[int, int] | None = None) -> Material:
    chars = sorted(set().union(*(graph(content).alphabet() for content in contents)))
    glyphs = {char: Glyph(0, 1, 1, 1, 2, (1,)) for char in chars}
    fields = tuple(
        Field(f"f{n}", content, "one", "water", 0, 9, padding=(0, 0, 99, 9), buffer=(buffers or {}).get(n))
        for n, content in enumerate(contents)
    )
    layout = Layout(
        1, "g", Panel(99, 9), (TypeSpec("one", "made.bdf"),), INKS, (Screen("s", "night", fields),)
    )
    return made_material(layout, {"one": MadeType(glyphs)})


def _passed(conversion: Conversion, argument: Argument, place: int) -> str:
    kind = c_type(conversion, argument)
    if kind == "const char *":
        return f"texts[{place}]"
    if "double" in kind:
        return f"({kind})strto{'l' if 'long' in kind else ''}d(w[{place}], NULL)"
    return f"({kind})strto{'ull' if 'u' in kind or kind == 'size_t' else 'll'}(w[{place}], NULL, 10)"


@dataclass(frozen=True, slots=True)
class Functions:
    path: Path
    contents: tuple[Content, ...]

    def __call__(self, calls: list[tuple[int, tuple[Value, ...]]]) -> list[str | None]:
        """Call text functions; return what each wrote, None where it wrote nothing."""
        asked = "".join(f"{n} {' '.join(map(_word, values))}\n" for n, values in calls)
        done = subprocess.run([self.path], input=asked.encode(), capture_output=True, check=False)
        assert done.returncode == 0, done.stderr.decode()[:4000]
        answers = done.stdout.decode().splitlines()
        assert len(answers) == len(calls)
        found: list[str | None] = []
        for answer, call in zip(answers, calls, strict=True):
            written, _, shown = answer.partition(" ")
            assert "w" not in shown, (answer, call)
            found.append(None if written == "-1" else bytes.fromhex(shown).decode())
        return found


def _word(value: Value) -> str:
    if value is None:
        return "-"
    if isinstance(value, str):
        return f"={value.encode(errors='surrogateescape').hex()}"
    return value.hex() if isinstance(value, float) else str(value)


def build_functions(
    folder: Path, contents: tuple[Content, ...], using: str = "gcc", standard: str = "c99",
    buffers: Mapping[int, int] | None = None,
) -> Functions:  # fmt: skip
    cases = []
    for n, content in enumerate(contents):
        pairs = zip(conversions(content.format), content.arguments, strict=True)
        values = [_passed(conversion, argument, place) for place, (conversion, argument) in enumerate(pairs)]
        room = f"G_S_F{n}_TEXT_BYTES"
        cases.append(f"case {n}: buffer = (char *)malloc({room}); memset(buffer, '~', {room});")
        cases.append(f"show(g_s_f{n}_text({', '.join(['buffer', *values])}), buffer, {room}); break;")
    source = folder / ("g.cpp" if using.endswith("+") else "g.c")
    source.write_text(MAIN.replace("CASES", "\n".join(cases)), encoding="ascii")
    (folder / "g.h").write_text(header(material_of(contents, buffers)), encoding="ascii")
    compiled(folder, ["-O1", f"-std={standard}", *WARNINGS, *SANITIZERS, source.name, "-o", "g"], using)
    return Functions(folder / "g", contents)
