"""Headers compiled, not run, for small processors: 16-bit `int`, no operating system, no C library.

clang alone makes code for them all; the toolchains and simulators are not needed for what is asked here.
"""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest
from tests.firmware.functions import material_of
from tests.firmware.harness import WARNINGS, compiled, installed
from tests.firmware.layouts import rich

from panelproof.content.spec import Choice, Content, FreeText, RealRange, WholeRange
from panelproof.firmware.header import header

TARGETS = {
    "cortex-m0": ("--target=thumbv6m-none-eabi",),
    "cortex-m3": ("--target=thumbv7m-none-eabi",),
    "riscv32": ("--target=riscv32-unknown-none-elf", "-march=rv32imac"),
    "avr": ("--target=avr", "-mmcu=atmega328p"),
    "msp430": ("--target=msp430",),
}
SIXTEEN_BITS = ("avr", "msp430")
STDIO = "#include <stddef.h>\nint snprintf(char *buffer, size_t room, const char *format, ...);\n"
NARROW = (
    Content("%d:%02u", (WholeRange(-32_768, 32_767), WholeRange(0, 65_535))),
    Content("%+d", (WholeRange(-300, 300, 20),), fault="--"),
    Content("%lu", (WholeRange(0, (1 << 32) - 1),), fault="--"),
    Content("%ld %hhd", (WholeRange(-(1 << 31), 5, 3), WholeRange(-128, 127)), fault="--"),
    Content("%zu %td", (WholeRange(0, 9), WholeRange(-9, 9))),
    Content("%.1f", (RealRange(0, 1350),), fault="--"),
    Content("%s %s", (Choice(("on", "off")), FreeText(8, 0, "\N{DEGREE SIGN}", (("a", "z"),))), fault="--"),
)


def compile_for(folder: Path, target: str, layout: str, text: str) -> None:
    (folder / "stdio.h").write_text(STDIO)
    (folder / "layout.h").write_text(text)
    (folder / "a.c").write_text(f'#define {layout}_IMPLEMENTATION\n#include "layout.h"\n')
    # Up to clang's own code only: LLVM 14 stops at writing an object file for AVR.
    flags = ["-ffreestanding", "-std=c99", *WARNINGS, "-Os", "-I.", "-c", "-emit-llvm", "a.c", "-o", "a.bc"]
    compiled(folder, [*TARGETS[target], *flags], "clang")


def has(target: str) -> bool:
    """Tell whether this clang makes code for a target (some are built for few)."""
    known = subprocess.run(
        [installed("clang"), "--print-targets"], capture_output=True, text=True, check=True
    )
    word = {"cortex-m0": "thumb", "cortex-m3": "thumb"}.get(target, target)
    return f" {word} " in known.stdout


@pytest.fixture(params=TARGETS)
def target(request: pytest.FixtureRequest) -> str:
    name: str = request.param
    if not has(name):
        pytest.skip(f"this clang makes no code for {name}")
    return name


def test_no_warning_on_small_processors(tmp_path: Path, target: str) -> None:
    compile_for(tmp_path, target, "RAIN_TANK", header(rich(tmp_path)))


def test_text_functions_without_a_warning_too(tmp_path: Path, target: str) -> None:
    compile_for(tmp_path, target, "G", header(material_of(NARROW)))


def test_a_range_beyond_int_is_told_where_int_has_16_bits(tmp_path: Path, target: str) -> None:
    wide = header(material_of((Content("%d", (WholeRange(0, 40_000),)),)))
    if target not in SIXTEEN_BITS:
        compile_for(tmp_path, target, "G", wide)
        return
    with pytest.raises(AssertionError, match="int_has_32_bits_"):
        compile_for(tmp_path, target, "G", wide)
