from __future__ import annotations

import hashlib
import re
import subprocess
import sys
from pathlib import Path

import pytest
from tests.firmware.harness import WARNINGS, compiled
from tests.firmware.layouts import SANS, rich

from panelproof import __version__
from panelproof.content.spec import Choice, Content, RealRange
from panelproof.firmware.header import digest, header
from panelproof.firmware.names import RESERVED
from panelproof.layout.document import Ink, Layout, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box, Field, Icon, IconState, Label, Part, Rule
from panelproof.layout.writing import encode
from panelproof.material import Material, gather
from panelproof.problem import Problem

INK = (Ink("dark", "#000000"), Ink("lit", "#ffffff"))


def simple(*screens: Screen, name: str = "it", types: tuple[TypeSpec, ...] = ()) -> Material:
    return gather(Layout(1, name, Panel(40, 20), types, INK, screens), Path())


def constants(text: str) -> dict[str, str]:
    pattern = re.compile(r"^#define (\w+) +(.*?)(?: +/\*.*)?$", re.MULTILINE)
    return dict(pattern.findall(text))


def test_the_same_layout_gives_the_same_bytes_in_any_process(tmp_path: Path) -> None:
    here = header(rich(tmp_path))
    code = (
        "import sys; from pathlib import Path; from tests.firmware.layouts import rich;"
        "from panelproof.firmware.header import header; sys.stdout.write(header(rich(Path(sys.argv[1]))))"
    )
    root = Path(__file__).parents[2]
    for seed in ("1", "2"):
        done = subprocess.run(
            [sys.executable, "-c", code, tmp_path], cwd=root, capture_output=True, text=True, check=True,
            env={"PYTHONHASHSEED": seed, "PATH": ""},
        )  # fmt: skip
        assert done.stdout == here


def test_no_paths_and_nothing_but_ascii(tmp_path: Path) -> None:
    made = header(rich(tmp_path))
    assert made.isascii()
    assert str(tmp_path) not in made
    assert "/usr" not in made
    assert made.endswith("\n")
    assert all(line == line.rstrip() for line in made.splitlines())
    assert "\t" not in made


def test_the_top_says_what_it_was_made_from(tmp_path: Path) -> None:
    material = rich(tmp_path)
    made = header(material)
    top = made.partition("*/")[0]
    expected = hashlib.sha256(encode(material.layout)).hexdigest()
    assert digest(material) == expected
    for fact in (
        "layout     rain-tank",
        f"digest     sha256 {expected}",
        "format     1",
        f"made by    Panelproof {__version__}",
        "tight: tight.bdf, 7 px, one-bit, native bitmaps",
        f"one-bit, kerning, {material.types['small'].rasteriser}",
        "Not a safety device",
        "a proof of pixels, not of measurements",
        "#define RAIN_TANK_IMPLEMENTATION",
    ):
        assert fact in top
    assert constants(made)["RAIN_TANK_LAYOUT_DIGEST"] == f'"{expected}"'


def test_constants_are_the_layouts(tmp_path: Path) -> None:
    found = constants(header(rich(tmp_path)))
    expected = {
        "PANEL_WIDTH": "160",
        "INK_WATER": "0x351F",  # 0x30 a0 ff: 6 of 31, 40 of 63, 31 of 31
        "READINGS_GROUND": "RAIN_TANK_INK_NIGHT",
        "READINGS_LEVEL_X": "150",
        "READINGS_LEVEL_BASELINE": "60",
        "READINGS_LEVEL_ALIGNMENT": "RAIN_TANK_ENDS_AT_X",
        "READINGS_LEVEL_PADDING_WIDTH": "98",
        "READINGS_LEVEL_INK": "RAIN_TANK_INK_WATER",
        "READINGS_LEVEL_FORMAT": r'"%.1f\302\260 %%"',
        "READINGS_LEVEL_LEAST": "(-0.5)",
        "READINGS_LEVEL_GREATEST": "99.96",
        "READINGS_LEVEL_TEXT_BYTES": "10",  # 100.0, the degree sign's two bytes, space, percent, terminator
        "READINGS_LEVEL_FAULT": r'"AV\342\200\224"',
        "READINGS_LEVEL_FIRST": '"..."',
        "READINGS_INFLOW_LEAST": "(-50)",
        "READINGS_INFLOW_GREATEST": "1000",
        "READINGS_INFLOW_STEP": "50U",
        "READINGS_INFLOW_GROUND": "RAIN_TANK_INK_SLATE",
        "READINGS_INFLOW_ALSO_1": '"none"',
        "READINGS_INFLOW_ALSO_2": '""',
        "READINGS_SEASON_CHOICE_DRY_SEASON": "0",
        "READINGS_NETWORK_LONGEST": "8",
        "READINGS_FRAME_X": "(-3)",
        "READINGS_LINE_LENGTH": "200",
        "READINGS_VALVE_STATE_OPEN": "1",
        "READINGS_VALVE_STATES": "2",
        "READINGS_VALVE_PADDING_WIDTH": "5",
        "READINGS_VALVE_PADDING_X": "RAIN_TANK_READINGS_VALVE_X",
        "TYPE_TIGHT_ASCENT": "6",
    }
    assert {name: found[f"RAIN_TANK_{name}"] for name in expected} == expected


def test_only_what_is_used_is_there(tmp_path: Path) -> None:
    lines = simple(Screen("main", "dark", (Rule("line", 1, 1, 9, "lit"),)))
    made = header(lines)
    for absent in ("glyphs_", "bits_", "show_text_", "snprintf", "take_", "stdio", "ramps_", "outline_"):
        assert absent not in made
    types = (TypeSpec("body", SANS, 12), TypeSpec("unused", SANS, 40))
    made = header(simple(Screen("main", "dark", (Label("a", "ab", "body", "lit", 1, 9),)), types=types))
    assert "unused" not in made
    assert "ramps_" not in made
    assert "pairs_" not in made
    assert "U+0061" in made
    assert "U+0063" not in made


CLASHES: tuple[tuple[tuple[Screen, ...], str], ...] = (
    (
        (
            Screen("a", "dark", (Rule("b-c", 1, 1, 9, "lit"),)),
            Screen("a-b", "dark", (Rule("c", 1, 1, 9, "lit"),)),
        ),
        "the part `b-c` of the screen `a` and the part `c` of the screen `a-b`"
        " would both be called `IT_A_B_C_…`",
    ),
    (
        (Screen("ink", "dark"), Screen("x", "dark")),
        "",
    ),
    (
        (
            Screen(
                "a",
                "dark",
                (Rule("padding", 1, 1, 9, "lit"), Icon("b", 0, 0, "lit", (IconState("s", ("#",)),))),
            ),
            Screen("a-b", "dark", (Rule("padding", 1, 1, 9, "lit"),)),
        ),
        "the part `b` of the screen `a` and the screen `a-b` would both be called `IT_A_B_GROUND`",
    ),
    (
        (
            Screen("a", "dark", (Icon("b", 0, 0, "lit", (IconState("s", ("#",)),)),)),
            Screen("a-b-update", "dark"),
        ),
        "",
    ),
    (
        (
            Screen("a", "dark", (Icon("x-draw", 0, 0, "lit", (IconState("s", ("#",)),)),)),
            Screen("a-x-draw-update", "dark"),
        ),
        "",
    ),
)


@pytest.mark.parametrize(("screens", "sentence"), CLASHES)
def test_names_that_meet_are_told_before_anything_is_written(
    screens: tuple[Screen, ...], sentence: str
) -> None:
    if not sentence:
        assert "_draw(" in header(simple(*screens))
        return
    with pytest.raises(Problem) as raised:
        header(simple(*screens))
    assert raised.value.message.startswith(sentence)
    assert raised.value.message.endswith("in the C header; rename one of them")


def test_an_ink_and_a_screen_that_meet() -> None:
    inks = (*INK, Ink("ground", "#123456"))
    material = gather(Layout(1, "it", Panel(40, 20), (), inks, (Screen("ink", "dark"),)), Path())
    with pytest.raises(
        Problem, match=r"the ink `ground` and the screen `ink` would both be called `IT_INK_GROUND`"
    ):
        header(material)


def _hard_parts(types: str) -> tuple[Part, ...]:
    words = sorted(word for word in RESERVED if "_" not in word)
    texts = Content("%s", (Choice(("*/", "/*", "??/", "\\", 'a"b', "%s")),), fault="//")
    fields = tuple(
        Field(word, texts, types, "lit", 1, 9, padding=(0, 0, 30, 12)) for word in words[: len(words) // 2]
    )
    icons = tuple(
        Icon(word, 1, 1, "lit", (IconState("states", ("#",)), IconState("x", ("##",))))
        for word in words[len(words) // 2 :]
    )
    return (*fields, *icons, Label("label", "*/ /* ??/ \\", types, "lit", 1, 9), Box("box", 0, 0, 9, 9))


@pytest.mark.parametrize("name", ["int", "unix", "a-1"])
@pytest.mark.parametrize(("using", "standard"), [("gcc", "gnu17"), ("g++", "gnu++17"), ("clang++", "c++11")])
def test_words_of_the_language_are_no_obstacle(tmp_path: Path, name: str, using: str, standard: str) -> None:
    parts = _hard_parts("body")
    material = simple(
        Screen("class", "dark", parts), Screen("values", "lit", clears=False), name=name,
        types=(TypeSpec("body", SANS, 12),),
    )  # fmt: skip
    (tmp_path / "layout.h").write_text(header(material))
    define = name.replace("-", "_").upper()
    source = tmp_path / ("a.cpp" if using.endswith("+") else "a.c")
    source.write_text(f'#define {define}_IMPLEMENTATION\n#include "layout.h"\n')
    compiled(tmp_path, [f"-std={standard}", *WARNINGS, "-c", source.name, "-o", "a.o"], using)


def test_texts_too_long_for_16_bits_get_wider_places() -> None:
    types = (TypeSpec("body", SANS, 12, kerning=True),)
    short = simple(Screen("main", "dark", (Label("a", "W" * 40, "body", "lit", 1, 9),)), types=types)
    assert "typedef int it_px_;" in header(short)
    long = simple(
        Screen("main", "dark", (Label("a", "W" * 250, "body", "lit", 1, 9),)),
        types=(TypeSpec("body", SANS, 300),),
    )
    assert "typedef int32_t it_px_;" in header(long)


def test_a_real_range_reads_back_exactly() -> None:
    least, greatest = -1 / 3, 1.7976931348623157e308
    field = Field(
        "a", Content("%.0f", (RealRange(least, greatest),)), "body", "lit", 1, 9, padding=(0, 0, 9, 9)
    )
    found = constants(header(simple(Screen("main", "dark", (field,)), types=(TypeSpec("body", SANS, 12),))))
    assert float(found["IT_MAIN_A_LEAST"].strip("()")) == least
    assert float(found["IT_MAIN_A_GREATEST"]) == greatest
