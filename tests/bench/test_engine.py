"""Speed of the engine, as ratios within one run (machines are noisy: nothing here fails on a time).

    python -m pytest tests/bench -s

prints each figure beside its aim.
"""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from msgspec.structs import replace
from PIL import ImageFont

from panelproof.content import build
from panelproof.content.spec import Content, RealRange, WholeRange
from panelproof.glyphs import type as types
from panelproof.glyphs.catalogue import find
from panelproof.glyphs.type import Type, open_type
from panelproof.ink import footprint
from panelproof.ink.footprint import Footprint
from panelproof.ink.walk import walk
from panelproof.layout.document import Ink, Layout, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field, Part
from panelproof.material import Material, gather
from panelproof.proof import extent
from panelproof.proof.check import prove

ROOT = Path(__file__).parents[2]
FIELD = Content("%.2f", (RealRange(-40, 125),))
COUNTER = Content("%u", (WholeRange(0, 4_294_967_295),))


def best(work: Callable[[], object], rounds: int = 5) -> float:
    """The shortest of several runs, in seconds."""
    times = []
    for _ in range(rounds):
        began = time.perf_counter()
        work()
        times.append(time.perf_counter() - began)
    return min(times)


def told(capsys: pytest.CaptureFixture[str], what: str, value: float, aim: str) -> None:
    with capsys.disabled():
        print(f"\n  {what}: {value:.2f} (aim: {aim})", end="")


def _type() -> Type:
    made = open_type(find("SourceSansPro", ROOT), 24, "one-bit", False, True)
    for char in "0123456789.- ":
        made.glyph(char)
    return made


def _footprint(content: Content, type_: Type) -> object:
    build._built.cache_clear()
    graph = build.graph(content)
    print_ = Footprint.__new__(Footprint)
    print_.graph, print_.type, print_.align, print_.walk = graph, type_, "right", walk(graph, type_)
    return print_.mask, print_.longest, print_.shortest


def test_footprints(capsys: pytest.CaptureFixture[str]) -> None:
    type_ = _type()
    font = ImageFont.truetype(str(find("SourceSansPro", ROOT)), 24)
    texts = list(build.graph(FIELD).texts())
    brute = best(lambda: [font.getbbox(text) for text in texts], 1)
    ours = best(lambda: _footprint(FIELD, type_))
    told(capsys, f"getbbox of {len(texts)} texts / footprint", brute / ours, "at least 300")
    counter = best(lambda: _footprint(COUNTER, type_))
    told(capsys, "%u over 32 bits / %.2f over -40…125", counter / ours, "at most 10")


def screen_of(count: int) -> Material:
    """A screen of many fields, each with a content of its own."""
    parts: list[Part] = []
    for number in range(count):
        x, y = 4 + number % 4 * 78, 4 + number // 4 * 22
        content = Content("%.1f", (RealRange(-number, 10 + 20 * number),), fault="--.-")
        parts.append(
            Field(f"f{number}", content, "text", "white", x + 70, y + 15, "right", padding=(x, y, 74, 20))
        )
    made = Layout(
        1,
        "bench",
        Panel(320, 240),
        (TypeSpec("text", "SourceSansPro", 16),),
        (Ink("black", "#000000"), Ink("white", "#ffffff")),
        (Screen("main", "black", tuple(parts)),),
    )
    return gather(made, ROOT)


def _cold(material: Material) -> None:
    for cache in (
        build._built, extent._field, extent.spared_by, footprint.footprint, footprint._walk, types._open,
    ):  # fmt: skip
        cache.cache_clear()
    prove(gather(material.layout, ROOT))


def test_one_part_moved_of_forty(capsys: pytest.CaptureFixture[str]) -> None:
    material = screen_of(40)
    cold = best(lambda: _cold(material), 3)
    prove(material)
    (screen,) = material.layout.screens
    moves = iter(range(1, 1000))

    def move() -> None:
        part = screen.parts[17]
        assert isinstance(part, Field)
        moved = replace(part, x=part.x - next(moves) % 3, baseline=part.baseline + next(moves) % 97 - 48)
        parts = (*screen.parts[:17], moved, *screen.parts[18:])
        layout = replace(material.layout, screens=(replace(screen, parts=parts),))
        prove(gather(layout, ROOT))

    warm = best(move, 60)
    told(capsys, "cold check / verdict after one move", cold / warm, "at least 30")
    told(capsys, "verdict after one move, in frames of 60 Hz", warm * 60, "at most 1")


def test_the_whole_process(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    # As this shell has it, which may read every source anew; and compiled, as an installed program is.
    plain = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    conditions = (
        ("", dict(os.environ), "at most 2.5"),
        (", compiled", {**plain, "PYTHONPYCACHEPREFIX": str(tmp_path)}, "at most 2.3"),
    )
    for name, environment, aim in conditions:

        def process(*words: str, environment: dict[str, str] = environment) -> Callable[[], object]:
            return lambda: subprocess.run(
                [sys.executable, *words], check=True, capture_output=True, cwd=ROOT, env=environment
            )

        bare = best(process("-c", "import PIL.ImageFont, fontTools.ttLib, freetype"), 7)
        check = best(process("-m", "panelproof", "check", "examples/kiln/kiln.panel.json"), 7)
        told(capsys, f"process `check` of the kiln{name} / process of three imports", check / bare, aim)
