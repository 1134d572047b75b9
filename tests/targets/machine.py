"""The boards: how a program for each is compiled, and run in a simulator.

Cortex-M0 in QEMU's micro:bit, Cortex-M3 in its MPS2 board with AN385, RISC-V in its `virt` machine, all three
with semihosting; AVR in simavr, through its serial line.
"""

from __future__ import annotations

import re
import subprocess
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from tests.firmware.harness import WARNINGS, compiled, installed

BOARDS = Path(__file__).parent / "boards"
SIMULATOR_LIMIT = 120


@dataclass(frozen=True, slots=True)
class Machine:
    """A processor on a board.

    `own` are the flags of the processor, `link` those of the program; `source` is the board's start; `int_bits` tells
    how wide an `int` is.
    """

    name: str
    title: str
    prefix: str
    own: tuple[str, ...]
    link: tuple[str, ...]
    source: str
    simulator: tuple[str, ...]
    int_bits: int = 32

    @property
    def compiler(self) -> str:
        """The compiler's name."""
        return f"{self.prefix}-gcc" if self.prefix else "gcc"

    def tool(self, name: str) -> str:
        """Return the path of one of the binary utilities, as `installed` finds it."""
        return installed(f"{self.prefix}-{name}")

    def needed(self) -> None:
        """Skip the test where a tool is missing; on CI it fails."""
        for name in (self.compiler, *self.simulator[:1]):
            installed(name)


def _memory(flash: int, flash_size: int, ram: int, ram_size: int) -> tuple[str, ...]:
    places = {"flash_begin": flash, "flash_size": flash_size, "ram_begin": ram, "ram_size": ram_size}
    return (*(f"-Wl,--defsym={name}={value:#x}" for name, value in places.items()), f"-T{BOARDS / 'ram.ld'}")


# The small C library, whose `snprintf` prints no reals; AVR's does not, either.
_ARM = ("--specs=nano.specs", "--specs=nosys.specs", "-nostartfiles")
_HOSTED = (
    "-semihosting-config",
    "enable=on,target=native",
    "-nographic",
    "-monitor",
    "none",
    "-serial",
    "none",
)

MACHINES = (
    Machine(
        "cortex-m0", "Cortex-M0", "arm-none-eabi", ("-mcpu=cortex-m0", "-mthumb"),
        (*_ARM, *_memory(0, 256 << 10, 0x2000_0000, 16 << 10)), "cortex.c",
        ("qemu-system-arm", "-M", "microbit", *_HOSTED, "-kernel"),
    ),
    Machine(
        "cortex-m3", "Cortex-M3", "arm-none-eabi", ("-mcpu=cortex-m3", "-mthumb"),
        (*_ARM, *_memory(0, 4 << 20, 0x2000_0000, 4 << 20)), "cortex.c",
        ("qemu-system-arm", "-M", "mps2-an385", *_HOSTED, "-kernel"),
    ),
    Machine(
        "riscv32", "RISC-V 32", "riscv64-unknown-elf", ("-march=rv32imac", "-mabi=ilp32", "--specs=picolibc.specs"),
        ("-nostartfiles", *_memory(0x8000_0000, 4 << 20, 0x8040_0000, 4 << 20)),
        "riscv.c", ("qemu-system-riscv32", "-M", "virt", "-bios", "none", *_HOSTED, "-kernel"),
    ),
    Machine(
        "avr", "AVR", "avr", ("-mmcu=atmega1284p",), (), "avr.c",
        ("simavr", "-m", "atmega1284p", "-f", "16000000"), int_bits=16,
    ),
)  # fmt: skip

# The machine that the tests run on, driven in the same way; not one of the small processors.
HOST = Machine("host", "host", "", (), ("-fsanitize=address,undefined",), "host.c", ())


def machine(name: str) -> Machine:
    """Return the machine of a name."""
    return next(one for one in MACHINES if one.name == name)


def build(folder: Path, on: Machine, source: str, header: str, flags: Sequence[str] = ()) -> Path:
    """Compile a program with a layout's header, without warnings, and link it for a board."""
    (folder / "layout.h").write_text(header, encoding="ascii")
    (folder / "main.c").write_text(source, encoding="ascii")
    common = ("-std=gnu99", "-Os", f"-I{BOARDS}", *on.own, *flags)
    compiled(folder, [*common, *WARNINGS, "-c", "main.c", "-o", "main.o"], on.compiler)
    compiled(folder, [*common, "-Wall", "-c", BOARDS / on.source, "-o", "board.o"], on.compiler)
    compiled(folder, [*on.own, "main.o", "board.o", *on.link, "-o", "program.elf"], on.compiler)
    return folder / "program.elf"


def run(program: Path, on: Machine) -> list[str]:
    """Run a program on its board and return the lines that it sent."""
    if on is HOST:
        done = subprocess.run([program], capture_output=True, timeout=SIMULATOR_LIMIT, check=False)
        assert done.returncode == 0, done.stderr.decode(errors="replace")[-2000:]
        return done.stdout.decode().split("\n")[:-1]
    sent = program.with_name("records.txt")
    sent.unlink(missing_ok=True)
    done = subprocess.run(
        [installed(on.simulator[0]), *on.simulator[1:], program.name],
        cwd=program.parent, capture_output=True, timeout=SIMULATOR_LIMIT, check=False, stdin=subprocess.DEVNULL,
    )  # fmt: skip
    said = done.stderr.decode(errors="replace")
    assert done.returncode == 0, f"the program ended with {done.returncode}\n{said[-2000:]}"
    if on.simulator[0] != "simavr":
        return sent.read_text().split("\n")[:-1]
    # simavr shows each line of the serial output in colour, its newline as a point.
    lines = re.findall(r"\x1b\[32m(.*?)\.\n\x1b\[0m", said)
    assert lines and re.fullmatch(r"e\d\d", lines[-1]), said[-2000:]
    assert lines[-1] == "e00", f"the program ended with {lines[-1][1:]}"
    return lines[:-1]
