"""Constant expressions, compared with what the C compiler makes of them."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.firmware.harness import compiled, installed

from panelproof.cvalue import NoValue, value

CONSTANTS = {
    "WIDE": "240",
    "EDGE": "(WIDE - 2 * GAP)",
    "GAP": "6",
    "LOW": "(-20)",
    "LOOP": "POOL",
    "POOL": "(LOOP)",
}
EXPRESSIONS = [
    "7", "(-7)", "0x1F", "010", "0", "12U", "12UL", "0x7fffL", "WIDE", "EDGE", "WIDE/2", "-7/2", "7/-2", "-WIDE / 7",
    "2 + 3 * 4", "(2 + 3) * 4", "10 - 3 - 2", "100 / 7 / 2", "- -5", "+LOW", "LOW*-1", "((GAP))", "1-(2-(3-4))",
]  # fmt: skip


def test_as_the_compiler_works_it_out(tmp_path: Path) -> None:
    defines = "".join(f"#define {name} {text}\n" for name, text in CONSTANTS.items() if "OO" not in name)
    prints = "".join(f'    printf("%ld\\n", (long)({one}));\n' for one in EXPRESSIONS)
    source = tmp_path / "values.c"
    source.write_text(f"#include <stdio.h>\n{defines}int main(void) {{\n{prints}    return 0;\n}}\n")
    program = tmp_path / "values"
    compiled(tmp_path, [source, "-o", program])
    import subprocess

    done = subprocess.run([program], capture_output=True, text=True, check=True, timeout=10)
    assert [value(one, CONSTANTS) for one in EXPRESSIONS] == list(map(int, done.stdout.split()))


@pytest.mark.parametrize(
    "text",
    [
        "",
        "(",
        "(3",
        "3)",
        "3 4",
        "WIDTH",
        "LOOP",
        '"text"',
        "1.5",
        "1/0",
        "3 +",
        "* 3",
        "WIDE GAP",
        "08",
        "x ? 1 : 2",
    ],
)
def test_what_is_no_whole_number(text: str) -> None:
    with pytest.raises(NoValue):
        value(text, CONSTANTS)


def test_the_compiler_is_there() -> None:
    assert installed("gcc")
