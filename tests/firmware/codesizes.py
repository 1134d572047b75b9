"""Fit what each thing in a header adds to its code, on processors whose compilers are installed.

    python -m tests.firmware.codesizes      writes app/panelproof/firmware/code.json

Many random layouts are compiled at -Os; a least squares fit gives the bytes that each need adds. `within` is the
farthest that an estimate lies from what was compiled, as a share, over layouts that were not fitted to.
"""

from __future__ import annotations

import json
import random
import re
import subprocess
import sys
import tempfile
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from tests.firmware.harness import installed

from panelproof.content.spec import Choice, Content, FreeText, RealRange, WholeRange
from panelproof.firmware.code import FIGURES, GROUPS, helpers, needs
from panelproof.firmware.header import header
from panelproof.firmware.names import lower, upper
from panelproof.layout.document import Ink, Layout, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import (
    Align,
    Box,
    Clearing,
    Field,
    Growing,
    Icon,
    IconState,
    Label,
    Meter,
    MeterLimit,
    Part,
    Picture,
    Rule,
)
from panelproof.material import Material, gather

STACKS = Path(__file__).parents[1] / "targets" / "sizes.json"
FITTED, TRIED, LITTLE = 200, 24, 1000


@dataclass(frozen=True, slots=True)
class Processor:
    title: str
    prefix: str
    flags: tuple[str, ...]
    pointer: int = 4
    copies_strings: bool = False


PROCESSORS = {
    "cortex-m0": Processor("Cortex-M0", "arm-none-eabi", ("-mcpu=cortex-m0", "-mthumb")),
    "cortex-m3": Processor("Cortex-M3", "arm-none-eabi", ("-mcpu=cortex-m3", "-mthumb")),
    "riscv32": Processor(
        "RISC-V 32", "riscv64-unknown-elf", ("-march=rv32imac", "-mabi=ilp32", "--specs=picolibc.specs")
    ),
    "avr": Processor("AVR", "avr", ("-mmcu=atmega1284p",), 2, copies_strings=True),
}
AVR_MEMORY = """#include <avr/pgmspace.h>
#define %(L)s_CONST const PROGMEM
#define %(L)s_READ8(address) pgm_read_byte(address)
#define %(L)s_READ16(address) pgm_read_word(address)
#define %(L)s_READ32(address) pgm_read_dword(address)
"""


def prepared(name: str, text: str, processor: Processor, folder: Path) -> None:
    """Write a source file that holds a layout's implementation, as a firmware would; `text` is its header."""
    prefix = upper(name)
    before = AVR_MEMORY % {"L": prefix} if processor.prefix == "avr" else ""
    (folder / "layout.h").write_text(text, encoding="ascii")
    (folder / "a.c").write_text(
        f'{before}#define {prefix}_IMPLEMENTATION\n#include "layout.h"\n', encoding="ascii"
    )


def compiled_code(name: str, text: str, processor: Processor, folder: Path) -> dict[str, int]:
    """Return the bytes of code of each group, as a compiler makes it of a layout's header."""
    prepared(name, text, processor, folder)
    tool = installed(f"{processor.prefix}-gcc")
    flags = ("-std=gnu99", "-Os", *processor.flags)
    subprocess.run([tool, *flags, "-c", "a.c", "-o", "a.o"], cwd=folder, check=True)
    # Not by the letters of `nm`: on AVR constants in flash are called text, too.
    listed = subprocess.run(
        [installed(f"{processor.prefix}-objdump"), "-t", "a.o"],
        cwd=folder,
        check=True,
        capture_output=True,
        text=True,
    ).stdout
    own = {f"{lower(name)}_{helper}" for helper in helpers(text)[1]}
    found = dict.fromkeys(GROUPS, 0)
    for size, function in re.findall(
        r"^[0-9a-f]+ .{6}F \S+\t([0-9a-f]+)\s+(?:\.hidden )?(\S+)$", listed, re.MULTILINE
    ):
        # A compiler may have made several of one: `name.part.0`.
        texts = function.endswith("_text") or function.split(".")[0] in own
        found["texts" if texts else "drawing"] += int(size, 16)
    return found


def content(rng: random.Random) -> Content:
    """Return a random content; hardly two alike, since a compiler makes one function of two that are."""
    least, greatest = rng.randint(-99, 0), rng.randint(1, 9999)
    fault = rng.choice((None, "?" * rng.randint(1, 5), f"no {rng.randint(0, 99)}"))
    unit = rng.choice(("", " C", " %%", " l/h"))
    whole = WholeRange(least, greatest, rng.choice((1, 1, 1, 5)))
    natural = WholeRange(0, greatest)
    words = tuple(f"word {n} {rng.randint(0, 999)}" for n in range(rng.randint(2, 6)))
    return rng.choice(
        (
            Content(f"%d{unit}", (whole,), fault),
            Content(f"%u{unit}", (natural,), fault),
            Content(f"%lu{unit}", (WholeRange(0, greatest * 100_000),), fault),
            Content(f"%.{rng.randint(0, 2)}f{unit}", (RealRange(float(least), float(greatest)),), fault),
            Content(f"%u:%02u{unit}", (natural, WholeRange(0, 59)), fault),
            Content("%s", (Choice(words),), fault),
            Content("%s", (Choice(words),), fault),
            Content("%s", (FreeText(rng.randint(3, 9), ranges=(("a", rng.choice("hsz")),)),), fault),
            Content(f"on {greatest}", also=("no",)),
        )
    )


INKS = (Ink("black", "#000000"), Ink("white", "#ffffff"), Ink("red", "#ff0000"))


KINDS = ("label", "field", "icon", "rule", "box", "meter", "picture")


def layout(rng: random.Random) -> Layout:
    """Return a random layout, some with few kinds of things, some with many."""
    rich = rng.random()
    kinds = [kind for kind in KINDS if rng.random() < 0.35 + rich / 2] or ["field"]
    every: list[Clearing] = ["pad", "none", "cell", "box"]
    clearings = rng.sample(every, rng.choice((1, 1, 2, 3)))
    types = rng.sample(["plain", "smooth", "kerned"], rng.choice((1, 1, 2)))
    aligns: list[Align] = ["left"] if rng.random() < 0.3 else ["left", "centre", "right"]
    outlined = rng.random() < 0.5

    def part(number: int) -> Part:
        kind, name = rng.choice(kinds), f"part-{number}"
        x, y = rng.randint(0, 60), rng.randint(20, 60)
        if kind == "label":
            return Label(
                name,
                rng.choice(("Tank", "Flow", "Set")),
                rng.choice(types),
                "white",
                x,
                y,
                rng.choice(aligns),
            )
        if kind == "field":
            clearing = rng.choice(clearings)
            return Field(
                name, content(rng), rng.choice(types), "white", x, y, rng.choice(aligns), clearing=clearing,
                padding=(0, 0, 120, 40),
            )  # fmt: skip
        if kind == "icon":
            states = tuple(
                IconState(f"s{n}", ("#.#", ".#.", "#.#"), ink=rng.choice((None, "red")))
                for n in range(rng.randint(1, 3))
            )
            return Icon(name, x, y, "white", states, clearing=rng.choice(clearings))
        if kind == "meter":
            limits = tuple(MeterLimit(at, rng.choice((None, "red"))) for at in (20, 80)[: rng.randint(0, 2)])
            ways: tuple[Growing, ...] = ("right", "left", "up", "down")
            return Meter(name, x, y, 40, 12, 0, 99 + number, "white", rng.choice(ways), limits)
        if kind == "picture":
            return Picture(name, x, y, rng.choice(PICTURES))
        if kind == "rule":
            return Rule(name, x, y, rng.randint(1, 40), "white")
        return Box(name, x, y, 20, 20, fill="red", outline="white" if outlined else None)

    screens = tuple(
        Screen(f"screen-{n}", "black", tuple(part(number) for number in range(rng.randint(1, 9))))
        for n in range(rng.randint(1, 3))
    )
    specs = (
        TypeSpec("plain", "SourceSansPro", rng.choice((12, 16, 48))),
        TypeSpec("smooth", "SourceSansPro", rng.choice((14, 20, 46)), "antialiased"),
        TypeSpec("kerned", "SourceSansPro", rng.choice((18, 50)), kerning=rng.random() < 0.7),
    )
    return Layout(1, "tank", Panel(160, 120), specs, INKS, screens)


PICTURES = ("full.png", "clear.png", "flat.png", "photo.png")


def materials(count: int, seed: int, folder: Path) -> Iterable[Material]:
    """Yield random layouts; `folder` takes the pictures that they show."""
    from PIL import Image

    grey = Image.linear_gradient("L")
    made = {
        "full.png": grey.resize((20, 12)).convert("RGBA"),
        "flat.png": grey.resize((30, 8)).point(lambda level: 255 * (level > 99)).convert("RGBA"),
        "photo.png": Image.merge("RGB", (grey, grey.rotate(90), grey.rotate(180)))
        .resize((40, 30))
        .convert("RGBA"),
    }
    made["clear.png"] = made["full.png"].copy()
    made["clear.png"].putpixel((0, 0), (255, 255, 255, 9))
    for name in PICTURES:
        made[name].save(folder / name)
    rng = random.Random(seed)
    for _ in range(count):
        yield gather(layout(rng), folder)


def fitted(rows: list[Mapping[str, int]], sizes: list[int], group: str) -> dict[str, float]:
    """Return the bytes that each need adds; needs that never come add nothing."""
    names = sorted({name for row in rows for name, count in row.items() if count})
    kept = [name for name in names if name.startswith("text ") == (group == "texts")]
    matrix = np.array([[row.get(name, 0) for name in kept] for row in rows], dtype=float)
    # A little weight towards 0 keeps needs that always come together from growing apart.
    matrix = np.vstack([matrix, np.eye(len(kept)) * 0.3])
    wanted = np.concatenate([np.array(sizes, dtype=float), np.zeros(len(kept))])
    worth = np.linalg.lstsq(matrix, wanted, rcond=None)[0]
    return {name: round(float(one), 1) for name, one in zip(kept, worth, strict=True)}


def deepest(name: str) -> int:
    """Return the deepest stack under a drawing function of the examples, as the simulators measured it."""
    measured_ = json.loads(STACKS.read_text(encoding="utf-8"))["processors"]
    return max(int(one["stack"]) for one in measured_[name]["examples"].values())


@dataclass(frozen=True, slots=True)
class Sample:
    """A layout's header, and what it needs."""

    name: str
    text: str
    needs: Mapping[str, int]


def samples(count: int, seed: int, folder: Path) -> list[Sample]:
    """Return random layouts' headers, all made before the first is compiled."""
    made = []
    for material in materials(count, seed, folder):
        text = header(material)
        made.append(Sample(material.layout.name, text, needs(material, text)))
    return made


def measured(
    name: str, processor: Processor, fitted_to: list[Sample], tried: list[Sample], folder: Path
) -> dict[str, object]:
    """Compile, fit, and try the fit on layouts of another seed."""
    rows = [one.needs for one in fitted_to]
    sizes = [compiled_code(one.name, one.text, processor, folder) for one in fitted_to]
    figures = {group: fitted(rows, [one[group] for one in sizes], group) for group in GROUPS}
    shares = []
    for one in tried:
        real = sum(compiled_code(one.name, one.text, processor, folder).values())
        guess = sum(
            worth * one.needs.get(need, 0) for group in GROUPS for need, worth in figures[group].items()
        )
        # Of a header that hardly draws a few bytes are a large share.
        shares.append(abs(guess - real) / max(real, LITTLE))
    return {
        "title": processor.title,
        "compiler": f"{processor.prefix}-gcc -Os {' '.join(processor.flags)}",
        "pointer": processor.pointer,
        "copies_strings": processor.copies_strings,
        "stack": deepest(name),
        "within": round(max(shares), 3),
        "usually_within": round(sorted(shares)[int(len(shares) * 0.8)], 3),
        "figures": figures,
    }


def main() -> None:
    held = {"made_by": "python -m tests.firmware.codesizes", "unit": "bytes of code"}
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        fitted_to, tried = samples(FITTED, 1, folder), samples(TRIED, 2, folder)
        found = {
            name: measured(name, processor, fitted_to, tried, folder)
            for name, processor in PROCESSORS.items()
        }
    FIGURES.write_text(json.dumps(held | {"processors": found}, indent=1) + "\n", encoding="utf-8")
    for name, one in found.items():
        print(f"{name}: within {one['within']:.1%}, mostly {one['usually_within']:.1%}", file=sys.stderr)


if __name__ == "__main__":
    main()
