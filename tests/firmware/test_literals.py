"""Literals are compiled and read back: the compiler is the judge."""

from __future__ import annotations

import math
import subprocess
from pathlib import Path

import pytest
from tests.firmware.harness import WARNINGS, compiled

from panelproof.firmware import literals

TEXTS = (
    "",
    "plain",
    'quote " and \\ backslash',
    "what??/ is ??= this ????",
    "21.5 \N{DEGREE SIGN}C",
    "\N{DEGREE SIGN}7",
    "\u2014\U0001d11e",
    "/* no */ // comment",
    "%d %%",
)
REALS = (0.0, -0.0, 1.0, -40.0, 99.96, 0.1, 1e22, 1e300, -1.7976931348623157e308, 5e-324, 2.0**53 + 2, 1 / 3)
WHOLES = (
    (-(1 << 31), ""),
    ((1 << 31) - 1, ""),
    ((1 << 32) - 1, "U"),
    (-(1 << 63), "LL"),
    ((1 << 64) - 1, "ULL"),
    (-7, "L"),
)


@pytest.mark.parametrize(("using", "standard"), [("gcc", "c99"), ("g++", "c++11"), ("clang", "c99")])
def test_the_compiler_reads_back_what_was_meant(tmp_path: Path, using: str, standard: str) -> None:
    lines = ["#include <stdio.h>", "int main(void) {"]
    for text in TEXTS:
        lines.append(f"/* {literals.comment(text)} */")
        lines.append(f'printf("%s\\n", {literals.text(text)});')
    lines += [f'printf("%a\\n", {literals.real(real)});' for real in REALS]
    for whole, suffix in WHOLES:
        kind = "llu" if "U" in suffix else "lld"
        cast = "unsigned long long" if "U" in suffix else "long long"
        lines.append(f'printf("%{kind}\\n", ({cast}){literals.whole(whole, suffix)});')
    lines.append("return 0; }")
    source = tmp_path / ("a.cpp" if using.endswith("+") else "a.c")
    source.write_text("\n".join(lines) + "\n", encoding="ascii")
    # What cannot be compiled here is what -Wtrigraphs and -Wcomment of -Wall would say.
    compiled(tmp_path, [f"-std={standard}", *WARNINGS, source.name, "-o", "a"], using)
    said = subprocess.run([tmp_path / "a"], capture_output=True, check=True).stdout.decode().split("\n")
    assert said[: len(TEXTS)] == list(TEXTS)
    reals = said[len(TEXTS) : len(TEXTS) + len(REALS)]
    assert [float.fromhex(real) for real in reals] == list(REALS)
    # A range that begins at -0.0 begins at 0.
    assert math.copysign(1, float.fromhex(reals[1])) == 1
    assert [int(whole) for whole in said[-1 - len(WHOLES) : -1]] == [whole for whole, _ in WHOLES]


@pytest.mark.parametrize(
    ("values", "holds"),
    [
        ((), "uint8"),
        ((0, 255), "uint8"),
        ((-1,), "int8"),
        ((-128, 127), "int8"),
        ((-1, 128), "int16"),
        ((256,), "uint16"),
        ((65536,), "uint32"),
        ((-1, 32768), "int32"),
    ],
)
def test_the_smallest_type_that_holds_all(values: tuple[int, ...], holds: str) -> None:
    assert literals.integer_type(values) == holds


def test_no_type_holds_more_than_32_bits() -> None:
    with pytest.raises(OverflowError):
        literals.integer_type([1 << 32])


def test_long_calls_are_broken_after_commas() -> None:
    call = f'kiln_fill_(port, {", ".join(f"KILN_READINGS_A_LONG_NAME_{n}" for n in range(8))}, "a, b");'
    lines = literals.wrapped(call)
    assert len(lines) > 1
    assert max(map(len, lines)) <= literals.CALL_WIDTH - 4
    assert all(line.startswith(" " * len("kiln_fill_(") + "KILN") for line in lines[1:])
    assert " ".join("".join(lines).split()).replace(" ", "") == call.replace(" ", "")
    assert literals.wrapped("short(a, b);") == ["short(a, b);"]


def test_rows_and_columns() -> None:
    assert literals.rows(map(str, range(3)), "  ") == ["  0, 1, 2,"]
    assert max(map(len, literals.rows(["0xFF"] * 200))) <= literals.WIDTH
    assert literals.aligned([("a", "1", ""), ("long", "22", "/* px */")]) == ["a    1", "long 22 /* px */"]
    assert literals.clipped("x" * 100) == "x" * 56 + " ..."
