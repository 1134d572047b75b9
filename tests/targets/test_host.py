"""Headers under the host's compilers: standards, languages, several files and layouts, a constant space."""

from __future__ import annotations

import random
import re
import subprocess
from pathlib import Path

import pytest
from tests.firmware.functions import Functions, build_functions
from tests.firmware.harness import LANGUAGES, SANITIZERS, WARNINGS, build, compiled, installed, main_source
from tests.firmware.layouts import mono, rich
from tests.firmware.playing import agree, play

from panelproof.content.spec import Choice, Content, FreeText, RealRange
from panelproof.firmware.header import header
from panelproof.material import Material

WITHOUT_TEXTS = '#define RAIN_TANK_NO_TEXT_FUNCTIONS\n#define RAIN_TANK_IMPLEMENTATION\n#include "layout.h"\n'


@pytest.fixture
def tank(tmp_path: Path) -> Material:
    return rich(tmp_path)


@pytest.mark.parametrize(("using", "standard"), LANGUAGES)
def test_every_language_draws_the_same(tmp_path: Path, tank: Material, using: str, standard: str) -> None:
    program = build(tank, tmp_path, (f"-std={standard}", *SANITIZERS), using)
    agree(play(program, 12, random.Random(5)), program.run())


@pytest.mark.parametrize("level", ["-Os", "-O3", "-funsigned-char", "-fshort-enums", "-fno-strict-aliasing"])
def test_optimised_and_with_other_habits(tmp_path: Path, tank: Material, level: str) -> None:
    program = build(tank, tmp_path, ("-std=c99", level))
    agree(play(program, 12, random.Random(6)), program.run())


def written(folder: Path, name: str, source: str) -> str:
    (folder / name).write_text(source)
    return name


def objects(folder: Path, sources: dict[str, str]) -> list[str]:
    """Compile each file by itself and return the object files."""
    made = []
    for name, source in sources.items():
        cpp = name.endswith("cpp")
        standard = "-std=c++11" if cpp else "-std=c99"
        arguments = [standard, *WARNINGS, "-O1", "-c", written(folder, name, source), "-o", f"{name}.o"]
        compiled(folder, arguments, "g++" if cpp else "gcc")
        made.append(f"{name}.o")
    return made


def symbols(folder: Path, file: str) -> list[tuple[str, str]]:
    """Return (kind, name) of each symbol that a file defines, as nm lists them."""
    listed = subprocess.run(
        ["nm", "--defined-only", folder / file], capture_output=True, text=True, check=True
    )
    return [(line.split()[-2], line.split()[-1]) for line in listed.stdout.splitlines()]


def test_included_in_many_files_there_is_one_copy(tmp_path: Path, tank: Material) -> None:
    (tmp_path / "layout.h").write_text(header(tank))
    use = (
        '#include "layout.h"\nint {name}(void);\nint {name}(void) {{ return RAIN_TANK_READINGS_LEVEL_X; }}\n'
    )
    sources = {
        # The driver is the one file that asks for the implementation; it includes the header before, too.
        "main.c": '#include "layout.h"\n#include "layout.h"\n' + main_source(tank),
        "other.c": use.format(name="other"),
        "third.cpp": use.format(name="third") + "void draw(const rain_tank_port *port);\n"
        "void draw(const rain_tank_port *port) { rain_tank_nothing_draw(port); }\n",
    }
    made = objects(tmp_path, sources)
    for unit in made[1:]:
        assert not [name for kind, name in symbols(tmp_path, unit) if kind in "rRdDbB"]
    compiled(tmp_path, [*made, "-o", "program"], "g++")
    found = [name for _, name in symbols(tmp_path, "program")]
    data = [name for name in found if re.fullmatch(r"rain_tank_(bits|codes|glyphs|pairs|ramps)_", name)]
    assert sorted(data) == [f"rain_tank_{word}_" for word in ("bits", "codes", "glyphs", "pairs", "ramps")]
    assert found.count("rain_tank_readings_draw") == 1


def test_the_implementation_may_be_c_plus_plus_and_its_users_c(tmp_path: Path, tank: Material) -> None:
    (tmp_path / "layout.h").write_text(header(tank))
    sources = {
        "panel.cpp": '#define RAIN_TANK_IMPLEMENTATION\n#include "layout.h"\n',
        "main.c": main_source(tank).replace("#define RAIN_TANK_IMPLEMENTATION", ""),
    }
    compiled(tmp_path, [*objects(tmp_path, sources), "-o", "program"])


def test_two_layouts_in_one_program(tmp_path: Path, tank: Material) -> None:
    (tmp_path / "tank.h").write_text(header(tank))
    (tmp_path / "gauge.h").write_text(header(mono(tmp_path)))
    both = (
        "#define RAIN_TANK_IMPLEMENTATION\n#define GAUGE_IMPLEMENTATION\n"
        '#include "tank.h"\n#include "gauge.h"\n'
        "int main(void) { return RAIN_TANK_PANEL_WIDTH + GAUGE_PANEL_WIDTH - 224; }\n"
    )
    for name in ("both.c", "both.cpp"):
        compiled(tmp_path, [*objects(tmp_path, {name: both}), "-o", "both"])
        subprocess.run([tmp_path / "both"], check=True)


def test_the_text_functions_can_be_left_out(tmp_path: Path, tank: Material) -> None:
    (tmp_path / "layout.h").write_text(header(tank))
    source = (
        "#define RAIN_TANK_NO_TEXT_FUNCTIONS\n#define RAIN_TANK_IMPLEMENTATION\n" + '#include "layout.h"\n'
    )
    # Without hosted headers at all: what stdio would bring in is not there.
    (tmp_path / "stdio.h").write_text("#error stdio.h is included\n")
    for name in ("a.c", "a.cpp"):
        cpp = name.endswith("cpp")
        flags = ["-std=c++11" if cpp else "-std=c99", *WARNINGS, "-I.", "-c", written(tmp_path, name, source)]
        compiled(tmp_path, [*flags, "-o", "a.o"], "g++" if cpp else "gcc")
    undefined = subprocess.run(
        ["nm", "-u", tmp_path / "a.o"], capture_output=True, text=True, check=True
    ).stdout
    assert undefined.strip() in ("", "U _GLOBAL_OFFSET_TABLE_")
    assert not [name for _, name in symbols(tmp_path, "a.o") if name.endswith("_text")]


def test_the_drawing_code_has_no_heap_no_floating_point_and_no_memory_of_its_own(
    tmp_path: Path, tank: Material
) -> None:
    (tmp_path / "layout.h").write_text(header(tank))
    source = (
        "#define RAIN_TANK_NO_TEXT_FUNCTIONS\n#define RAIN_TANK_IMPLEMENTATION\n" + '#include "layout.h"\n'
    )
    # With the general registers only, gcc refuses any use of floating point.
    compiled(
        tmp_path,
        [
            "-std=c99",
            *WARNINGS,
            "-Os",
            "-mgeneral-regs-only",
            "-c",
            written(tmp_path, "a.c", source),
            "-o",
            "a.o",
        ],
    )
    assert not [name for kind, name in symbols(tmp_path, "a.o") if kind in "bBdDcC"]


# Constants out of reach: every page of theirs is locked once it is copied, and only the macros know the copy.
APART = r"""
#define _GNU_SOURCE
#include <stddef.h>
#include <stdint.h>
#include <string.h>
#include <sys/mman.h>
#define SPACE __attribute__((section("apart")))
static ptrdiff_t away;
static unsigned long reads;
#define RAIN_TANK_CONST const SPACE
#define RAIN_TANK_READ8(address) (*(const uint8_t *)moved(address))
#define RAIN_TANK_READ16(address) (*(const uint16_t *)moved(address))
#define RAIN_TANK_READ32(address) (*(const uint32_t *)moved(address))
static const void *moved(const void *address)
{
    ++reads;
    return (const char *)address + away;
}
static const SPACE char before[4096] __attribute__((aligned(4096), used)) = {1};
"""
LOCK = r"""
static const SPACE char behind[8192] __attribute__((aligned(4096), used)) = {1};
extern const char __start_apart[], __stop_apart[];
static char copy[1 << 20] __attribute__((aligned(4096)));
__attribute__((constructor)) static void lock(void)
{
    size_t bytes = (size_t)(__stop_apart - __start_apart) / 4096 * 4096;
    if (bytes > sizeof copy || (uintptr_t)__start_apart % 4096) __builtin_trap();
    memcpy(copy, __start_apart, bytes);
    away = copy - __start_apart;
    if (mprotect((void *)(uintptr_t)__start_apart, bytes, PROT_NONE)) __builtin_trap();
}
__attribute__((destructor)) static void check(void)
{
    if (!reads) __builtin_trap();
}
"""


def test_constants_are_read_through_the_macros_only(tmp_path: Path, tank: Material) -> None:
    program = build(tank, tmp_path)
    source = main_source(tank).replace('#include "layout.h"', '#include "layout.h"\n' + LOCK)
    written(tmp_path, "apart.c", APART + source)
    # Not pedantic: sections and constructors are extensions.
    compiled(tmp_path, ["-std=gnu99", "-Wall", "-Werror", "-O1", "apart.c", "-o", "program"])
    agree(play(program, 12, random.Random(7)), program.run())


def test_text_functions_read_constants_through_the_macros_only(tmp_path: Path) -> None:
    """Fault texts and texts of choices lie apart; formats, and the texts that are given, do not."""
    contents = (
        Content("%s", (Choice(("off", "cooling", "21 \N{DEGREE SIGN}")),), fault="no pump"),
        Content("<%-8.5s|%c>", (Choice(("abcdefg", "x")), Choice(("p", "q"))), fault="?"),
        Content("%.1f", (RealRange(-5, 5),), fault="no probe"),
        Content("%s", (FreeText(5, 1, "ab"),), fault="none"),
    )
    build_functions(tmp_path, contents)
    source = (tmp_path / "g.c").read_text().replace('#include "g.h"', '#include "g.h"\n' + LOCK)
    written(tmp_path, "apart.c", APART.replace("RAIN_TANK", "G") + source)
    compiled(tmp_path, ["-std=gnu99", "-Wall", "-Werror", "-O1", "apart.c", "-o", "g"])
    functions = Functions(tmp_path / "g", contents)
    calls: list[tuple[int, tuple[str | int | float | None, ...]]] = [
        (0, (0,)), (0, (2,)), (0, (3,)), (1, (0, 1)), (1, (1, 0)), (1, (9, 0)), (2, (2.25,)), (2, (6.0,)), (3, ("aab",)),
        (3, ("c",)),
    ]  # fmt: skip
    shown = [
        "off",
        "21 \N{DEGREE SIGN}",
        "no pump",
        "<abcde   |q>",
        "<x       |p>",
        "?",
        "2.2",
        "no probe",
        "aab",
        "none",
    ]
    assert functions(calls) == shown


def test_a_missing_compiler_is_skipped_at_home_and_fails_on_ci(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("CI", "true")
    with pytest.raises(pytest.fail.Exception, match="CI must have it"):
        installed("no-such-compiler")
    monkeypatch.delenv("CI")
    with pytest.raises(pytest.skip.Exception):
        installed("no-such-compiler")
