"""Measure what headers cost on each processor: real compilations at -Os, stacks painted in the simulators.

    python -m tests.targets.sizes            writes README's table and sizes.json beside this file
    python -m tests.targets.sizes --check    only tells what differs from them (exit code 1)

With the compilers that made the table every figure must be the same; with others it may differ by a tenth.
"""

from __future__ import annotations

import json
import re
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from tests.firmware.harness import WARNINGS, compiled
from tests.targets.examples import clean, header_of
from tests.targets.machine import BOARDS, MACHINES, Machine, build, run
from tests.targets.replay import replay
from tests.targets.script import Script, Shown

from panelproof.firmware.data import changes_by_parts
from panelproof.firmware.names import lower, upper
from panelproof.material import Material
from panelproof.picture.moments import every_moment
from panelproof.picture.values import Values

ROOT = Path(__file__).parents[2]
README = ROOT / "README.md"
FIGURES = Path(__file__).with_name("sizes.json")
BEGIN, END = "<!-- sizes: begin -->", "<!-- sizes: end -->"
TOLERANCE = 0.1
COLUMNS = {
    "drawing": "drawing code",
    "extra": "level bars, pictures",
    "screens": "its screens",
    "changes": "changes",
    "texts": "text functions",
    "data": "data",
    "ram": "RAM",
    "stack": "stack",
    "changes_stack": "of changes",
}
# Sections of constants; on AVR a program copies all but the last to memory when it starts: there they are RAM, too.
CONSTANT = (".rodata", ".srodata", ".progmem")

TEMPLATES = ROOT / "app" / "panelproof" / "firmware" / "templates"
Figures = dict[str, Any]


def version(on: Machine) -> str:
    """Return a compiler's version as it gives it, such as ``12.2.1``."""
    done = subprocess.run(
        [on.compiler, "-dumpfullversion", "-dumpversion"], capture_output=True, text=True, check=True
    )
    return done.stdout.split()[0]


def sections(path: Path, on: Machine) -> Iterator[tuple[str, int]]:
    """Yield the name and size in bytes of each section of an object file."""
    listed = subprocess.run([on.tool("size"), "-A", path], capture_output=True, text=True, check=True).stdout
    for name, size in re.findall(r"^(\.\S+)\s+(\d+)", listed, re.MULTILINE):
        yield name, int(size)


def functions(path: Path, on: Machine) -> Iterator[tuple[str, int]]:
    """Yield the name and size in bytes of each function of an object file."""
    listed = subprocess.run([on.tool("nm"), "-S", path], capture_output=True, text=True, check=True).stdout
    for size, kind, name in re.findall(r"^\S+ (\S+) (\w) (\S+)$", listed, re.MULTILINE):
        if kind in "tT":
            yield name, int(size, 16)


def extras() -> set[str]:
    """Return the ends of the names of what draws level bars and pictures, such as ``show_meter_``."""
    found = set()
    for name in ("meters.c", "pictures.c"):
        source = (TEMPLATES / name).read_text(encoding="utf-8")
        found |= set(re.findall(r"^static [\w ]*?\*?\bour_(\w+_)\(", source, re.MULTILINE))
    return found


def object_file(folder: Path, on: Machine, layout: str, header: str, *more: str) -> Path:
    """Compile a header's implementation as a firmware would, and return the object file."""
    (folder / "layout.h").write_text(header, encoding="ascii")
    prefix = upper(layout)
    lines = [
        '#include "board.h"',
        f"#define {prefix}_CONST BOARD_CONST",
        *(f"#define {prefix}_READ{n}(address) BOARD_READ{n}(address)" for n in (8, 16, 32)),
        f"#define {prefix}_IMPLEMENTATION",
        '#include "layout.h"',
    ]
    (folder / "size.c").write_text("\n".join([*lines, ""]))
    flags = ["-std=gnu99", "-Os", *WARNINGS, f"-I{BOARDS}", *on.own, *more]
    compiled(folder, [*flags, "-c", "size.c", "-o", "size.o"], on.compiler)
    return folder / "size.o"


def code_and_data(path: Path, on: Machine) -> tuple[int, int, int]:
    """Return the bytes of code, of constants, and of memory taken by variables."""
    code = data = ram = 0
    for name, size in sections(path, on):
        if name.startswith(".text"):
            code += size
        elif name.startswith(CONSTANT):
            data += size
            ram += size if on.name == "avr" and not name.startswith(".progmem") else 0
        elif name.startswith((".data", ".bss", ".sdata", ".sbss")):
            ram += size
    return code, data, ram


def stack(folder: Path, on: Machine, material: Material, header: str) -> tuple[int, int]:
    """Return the greatest depth of the stack in bytes under any screen or update of any moment, and under any change.

    The port's functions do nothing there; theirs comes on top.
    """
    script = Script(material)
    former: dict[str, Values] = {}
    for moment in every_moment(material):
        screen = material.screen(moment.screen)
        script.draw(screen, moment.values)
        for part in screen.parts if material.layout.panel.refresh == "part" else ():
            if isinstance(part, Shown):
                script.update(screen, part, moment.values)
                if changes_by_parts(part):
                    script.change(screen, part, former.get(moment.screen, moment.values), moment.values)
        former[moment.screen] = moment.values
    lines = run(build(folder, on, script.source(), header, ["-DMEASURE"]), on)
    found = list(zip(script.drawn, replay(lines, material.layout.panel).depths, strict=True))
    changes = [depth for kind, depth in found if kind == "change"]
    return max(depth for kind, depth in found if kind != "change"), max(changes, default=0)


def figures(folder: Path, on: Machine, material: Material, header: str) -> dict[str, int]:
    """Return what one layout costs on one processor, in bytes."""
    name = material.layout.name
    whole, data, ram = code_and_data(object_file(folder, on, name, header), on)
    prefix, special = lower(name), extras()
    no_texts, no_changes = f"-D{upper(name)}_NO_TEXT_FUNCTIONS", f"-D{upper(name)}_NO_CHANGES"
    drawing, _, _ = code_and_data(object_file(folder, on, name, header, no_texts), on)
    code, _, _ = code_and_data(object_file(folder, on, name, header, no_texts, no_changes), on)
    # Where nothing is put into another function, it is seen what is whose: the drawing code's own names end with
    # an underscore, behind which a compiler may add `.part.0` and the like.
    apart = dict(functions(object_file(folder, on, name, header, no_texts, no_changes, "-fno-inline"), on))
    screens = sum(size for function, size in apart.items() if not re.search(r"_(\.|$)", function))
    depth, changes_depth = stack(folder, on, material, header)
    extra = sum(
        size
        for function, size in apart.items()
        if function.partition(".")[0].removeprefix(f"{prefix}_") in special
    )
    return {
        "drawing": code - screens - extra,
        "extra": extra,
        "screens": screens,
        "changes": drawing - code,
        "texts": whole - drawing,
        "data": data,
        "ram": ram,
        "stack": depth,
        "changes_stack": changes_depth,
    }


def measured() -> Figures:
    """Return every figure, by processor and example."""
    found: Figures = {}
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        for on in MACHINES:
            of = {}
            for example, material in clean().items():
                of[example] = figures(folder, on, material, header_of(material))
            found[on.name] = {
                "title": on.title, "compiler": f"{on.compiler} {version(on)}", "flags": [*on.own, "-Os"], "examples": of,
            }  # fmt: skip
    return {"made_by": "python -m tests.targets.sizes", "unit": "bytes", "processors": found}


def table(found: Figures) -> str:
    """Return README's table."""
    heads = ["example", "processor", *COLUMNS.values()]
    lines = [f"| {' | '.join(heads)} |", f"| --- | --- |{' ---: |' * len(COLUMNS)}"]
    examples = list(dict.fromkeys(name for one in found["processors"].values() for name in one["examples"]))
    for example in examples:
        for one in found["processors"].values():
            bytes_of = one["examples"][example]
            cells = [f"{bytes_of[key]:,}".replace(",", " ") for key in COLUMNS]
            lines.append(f"| {example} | {one['title']} | {' | '.join(cells)} |")
    compilers = "; ".join(f"{one['title']} by `{one['compiler']}`" for one in found["processors"].values())
    return "\n".join([*lines, "", f"Bytes at `-Os`: {compilers}."])


def in_readme(readme: str, shown: str) -> str:
    """Return README with the table put between its marks."""
    begin, end = readme.find(BEGIN), readme.find(END)
    if begin < 0 or end < begin:
        raise SystemExit(f"README.md lacks the marks {BEGIN} and {END}")
    return f"{readme[: begin + len(BEGIN)]}\n{shown}\n{readme[end:]}"


def written(found: Figures) -> str:
    """Return figures as sizes.json holds them."""
    return json.dumps(found, indent=1) + "\n"


def differences(old: Figures, now: Figures) -> list[str]:
    """Return a sentence for each figure that is not as it was, in the bounds that its compiler allows."""
    found = []
    for name in old["processors"].keys() | now["processors"].keys():
        was, one = old["processors"].get(name), now["processors"].get(name)
        if was is None or one is None or was["examples"].keys() != one["examples"].keys():
            found.append(f"{name}: other examples are measured than before")
            continue
        allowed = 0.0 if was["compiler"] == one["compiler"] else TOLERANCE
        for example, then in was["examples"].items():
            for key, title in COLUMNS.items():
                before, after = then[key], one["examples"][example][key]
                if abs(after - before) > allowed * before:
                    found.append(f"{example} on {name}: {title} was {before} bytes and is {after}")
    return sorted(found)


def main(words: list[str]) -> int:
    """Write the figures, or check them; return the exit code."""
    now = measured()
    if "--check" in words:
        old = json.loads(FIGURES.read_text())
        found = differences(old, now)
        if table(old) not in README.read_text(encoding="utf-8"):
            found.append("README.md does not show the table of sizes.json")
        print("\n".join(found or ["every figure is as it was"]))
        return 1 if found else 0
    FIGURES.write_text(written(now), encoding="ascii")
    README.write_text(in_readme(README.read_text(encoding="utf-8"), table(now)), encoding="utf-8")
    print(table(now))
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
