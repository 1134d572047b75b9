"""Compiled drawing code against the drawing room, pixel for pixel."""

from __future__ import annotations

import itertools
import random
import re
import tempfile
from collections.abc import Iterator, Mapping
from pathlib import Path
from unittest import mock

import numpy as np
import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from tests.firmware.harness import SANITIZERS, Program, build
from tests.firmware.layouts import INKS, SANS, MadeType, mono, rich
from tests.firmware.playing import Expected, agree, play, wander
from tests.firmware.strategies import CHARS, made_material, materials

from panelproof.content.spec import Choice, Content, FreeText, RealRange, WholeRange
from panelproof.firmware.encoding import FORMS, Encoding
from panelproof.firmware.header import header
from panelproof.glyphs.glyph import Glyph
from panelproof.ink.footprint import footprint
from panelproof.layout.document import Layout, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Align, Clearing, Field, Icon, IconState
from panelproof.material import Material, field_graph, gather
from panelproof.picture import frame as frames


@pytest.fixture(scope="module")
def tank(tmp_path_factory: pytest.TempPathFactory) -> Program:
    folder = tmp_path_factory.mktemp("tank")
    return build(rich(folder), folder)


def test_every_kind_of_part_over_many_updates(tank: Program) -> None:
    agree(play(tank, 150, random.Random(1)), tank.run())


@pytest.mark.parametrize("refresh", ["part", "whole"])
def test_mono_panels(tmp_path: Path, refresh: str) -> None:
    program = build(mono(tmp_path, refresh), tmp_path)
    agree(play(program, 200, random.Random(2)), program.run())


def test_a_whole_frame_has_only_functions_for_screens(tmp_path: Path) -> None:
    made = header(mono(tmp_path, "whole"))
    assert "_draw(" in made
    assert "_update" not in made
    assert "composed in memory" in made


def test_an_update_paints_each_pixel_once_and_no_more_than_it_must(tank: Program) -> None:
    screen = tank.material.layout.screens[0]
    parts = {part.name: part for part in screen.parts}
    level, inflow, season = (parts[name] for name in ("level", "inflow", "season"))
    assert isinstance(level, Field)
    assert isinstance(inflow, Field)
    assert isinstance(season, Field)
    for part, text in ((level, "68.0\N{DEGREE SIGN} %"), (inflow, "+650 l"), (season, "WAVY")):
        tank.update_field(screen, part, text)
        tank.frame()
    padded, celled, inked = tank.run()
    x, y, width, height = level.padding or (0, 0, 0, 0)
    box = np.zeros_like(padded.touched)
    box[y : y + height, x : x + width] = 1
    assert np.array_equal(padded.touched, box)
    assert padded.windows == 1
    assert celled.touched.max() == 1
    frame = frames.new_frame(tank.material.layout.panel, 9)
    frames.update_field(frame, tank.material, screen, season, "WAVY")
    assert np.array_equal(inked.touched, frame.codes != 9)


def test_neighbours_of_one_colour_are_one_run(tank: Program) -> None:
    screen = tank.material.layout.screens[0]
    level = next(part for part in screen.parts if part.name == "level")
    assert isinstance(level, Field)
    tank.update_field(screen, level, "")
    tank.frame()
    assert [(one.windows, one.runs) for one in tank.run()] == [(1, 1)]


def test_a_state_that_an_icon_lacks_paints_nothing(tank: Program) -> None:
    screen = tank.material.layout.screens[0]
    valve = next(part for part in screen.parts if isinstance(part, Icon))
    for state in (1, 2, 255):
        tank.update_icon(screen, valve, state)
        tank.frame()
    assert [one.windows for one in tank.run()] == [1, 0, 0]


@settings(
    max_examples=20,
    deadline=None,
    suppress_health_check=list(HealthCheck),
    phases=[Phase.explicit, Phase.reuse, Phase.generate],
)
@given(materials(), st.integers(0, 1 << 30), st.lists(st.sampled_from(FORMS), min_size=1, max_size=3))
def test_whatever_is_laid_out_is_drawn_as_previewed(
    material: Material, seed: int, encodings: list[Encoding]
) -> None:
    def any_at_all(glyphs: Mapping[str, object]) -> dict[str, Encoding]:
        return dict(zip(glyphs, itertools.cycle(encodings), strict=False))

    with (
        mock.patch("panelproof.firmware.stock.cheapest", any_at_all),
        tempfile.TemporaryDirectory() as folder,
    ):
        program = build(material, Path(folder), ("-std=c99", "-O0", *SANITIZERS))
        agree(play(program, 40, random.Random(seed)), program.run())


def test_pens_that_go_back_and_widths_below_zero(tmp_path: Path) -> None:
    """Kerning beyond the advance: later glyphs stand left of earlier ones, and W is negative, even and odd."""
    bar, dot, wide = (
        Glyph(0, 6, 2, 6, 3, (3,) * 6),
        Glyph(-5, 3, 3, 2, 1, (7, 5)),
        Glyph(0, 2, 2, 2, 20, (1, 2)),
    )
    type_ = MadeType(
        {"0": bar, "1": dot, "8": bar, "V": wide},
        {("0", "1"): -9, ("1", "1"): -4, ("1", "8"): -2, ("8", "1"): -30},
    )
    content = Content(
        "%s", (Choice(("", "01", "011", "0111", "08", "1118", "01118", "8", "0a1", "111a0", "V81")),)
    )
    aligns: tuple[Align, ...] = ("left", "centre", "right", "centre")
    clearings: tuple[Clearing, ...] = ("pad", "cell", "box", "pad")
    parts = tuple(
        Field(
            f"p{n}",
            content,
            "one",
            "water",
            24,
            8 + 9 * n,
            align,
            clearing=clearing,
            padding=(0, 9 * n, 48, 9),
        )
        for n, (align, clearing) in enumerate(zip(aligns, clearings, strict=True))
    )
    specs = (TypeSpec("one", "made.bdf"),)
    layout = Layout(1, "back", Panel(48, 36), specs, INKS, (Screen("main", "night", parts),))
    program = build(made_material(layout, {"one": type_}), tmp_path)
    agree(play(program, 60, random.Random(11)), program.run())


# ---- Only what differs ----


def test_a_change_sends_no_more_than_what_differs(tank: Program) -> None:
    screen = tank.material.layout.screens[0]
    level = next(part for part in screen.parts if part.name == "level")
    assert isinstance(level, Field)
    first, second = "68.0\N{DEGREE SIGN} %", "68.1\N{DEGREE SIGN} %"
    tank.update_field(screen, level, first)
    tank.frame()
    tank.change_field(screen, level, first, first)
    tank.frame()
    tank.change_field(screen, level, first, second)
    tank.frame()
    tank.update_field(screen, level, second)
    tank.frame()
    former, same, changed, fresh = tank.run()
    assert same.windows == 0
    assert np.array_equal(changed.codes, fresh.codes)
    assert changed.touched.max() == 1
    differs = former.codes != fresh.codes
    assert not np.any(differs & (changed.touched == 0))
    assert changed.touched.sum() < fresh.touched.sum() / 4


def test_what_was_shown_need_not_be_known(tank: Program) -> None:
    screen = tank.material.layout.screens[0]
    parts = {part.name: part for part in screen.parts}
    level, pump, network = parts["level"], parts["pump"], parts["network"]
    assert isinstance(level, Field)
    assert isinstance(pump, Icon)
    assert isinstance(network, Field)
    tank.change_field(screen, level, None, "68.0\N{DEGREE SIGN} %")
    tank.frame()
    for former in (2, 255):
        tank.change_icon(screen, pump, former, 1)
        tank.frame()
    tank.change_icon(screen, pump, 0, 2)
    tank.frame()
    text, icon, other, none = tank.run()
    assert level.padding is not None
    assert text.touched.sum() == level.padding[2] * level.padding[3]
    assert icon.windows == other.windows > 0
    assert none.windows == 0


def test_a_change_keeps_to_the_padding_box_and_to_the_inks_of_states(tmp_path: Path) -> None:
    """Texts that reach beyond their padding boxes on each side; states that differ in ink, and in one pixel."""
    block = ("########",) * 30
    states = (
        IconState("a", (*block, "........")),
        IconState("b", (*block, "#......."), ink="rust"),
        IconState("c", (*block, "......##")),
    )
    content = Content("%d", (WholeRange(0, 99_999),))
    specs = (TypeSpec("hard", SANS, 20), TypeSpec("soft", SANS, 20, "antialiased", True))
    aligns: tuple[Align, ...] = ("left", "centre", "right")
    fields = tuple(
        Field(f"p{n}", content, "hard" if n % 2 else "soft", "water", 4 + 26 * n, 20, align, padding=(26 * n + 9, 8, 11, 9))
        for n, align in enumerate(aligns)
    )  # fmt: skip
    icon = Icon("i", 84, 1, "chalk", states)
    layout = Layout(1, "tight", Panel(100, 40), specs, INKS, (Screen("main", "night", (*fields, icon)),))
    program = build(gather(layout, tmp_path), tmp_path)
    agree(play(program, 120, random.Random(12)), program.run())


def test_changes_from_and_to_what_is_no_text(free: Program) -> None:
    screen = free.material.layout.screens[0]
    field = screen.parts[0]
    assert isinstance(field, Field)
    frame = frames.new_frame(free.material.layout.panel, 0)
    expected: Expected = []
    former = b""
    free.update_field(screen, field, former)
    for raw in itertools.islice(malformed(random.Random(8)), 600):
        free.change_field(screen, field, former, raw)
        free.frame()
        frames.update_field(frame, free.material, screen, field, raw.decode(errors="replace"))
        expected.append((frame.copy(), repr(raw)))
        former = raw
    agree(expected, free.run())


# ---- Text that is not UTF-8 ----


@pytest.fixture(scope="module")
def free(tmp_path_factory: pytest.TempPathFactory) -> Program:
    """A field over an alphabet with characters of 1 to 4 bytes, kerned in every pair."""
    glyphs = {char: Glyph(0, 5, 3, 5, 3 + n % 2, (7, 5, n % 8, 5, 7)) for n, char in enumerate(CHARS)}
    kerns = {(a, b): 1 for a in CHARS for b in CHARS}
    field = Field(
        "it", Content("%s", (FreeText(12, 0, CHARS),)), "one", "water", 2, 7, padding=(0, 0, 300, 9)
    )
    layout = Layout(
        1, "free", Panel(300, 9), (TypeSpec("one", "made.bdf"),), INKS, (Screen("main", "night", (field,)),)
    )
    material = made_material(layout, {"one": MadeType(glyphs, kerns)})
    return build(material, tmp_path_factory.mktemp("free"))


def malformed(chance: random.Random) -> Iterator[bytes]:
    pieces = [char.encode() for char in CHARS]
    # Overlong forms, a surrogate, beyond U+10FFFF, lone leads and continuations (RFC 3629 forbids all).
    pieces += [
        b"\xc1\xa1",
        b"\xe0\x81\xa1",
        b"\xf0\x80\x81\xa1",
        b"\xe0\x82\xb0",
        b"\xf0\x82\x82\xac",
        b"\xed\xa0\x80",
        b"\xf7\xbf\xbf\xbf",
        b"\xff",
        b"\x80",
    ]
    pieces += [bytes([byte]) for byte in (0xC2, 0xE2, 0xF0, 0xFE, 0xBF)]
    for _ in range(1500):
        text = b"".join(chance.choice(pieces) for _ in range(chance.randrange(1, 8)))
        yield text[: chance.randrange(1, len(text) + 1)]


def test_bytes_that_are_no_text_are_passed_over(free: Program) -> None:
    screen = free.material.layout.screens[0]
    field = screen.parts[0]
    assert isinstance(field, Field)
    frame = frames.new_frame(free.material.layout.panel, 0)
    expected: Expected = []
    for raw in malformed(random.Random(3)):
        # Python decodes by the Unicode standard; U+FFFD is a character that the type lacks.
        text = raw.decode(errors="replace")
        free.update_field(screen, field, raw)
        free.frame()
        frames.update_field(frame, free.material, screen, field, text)
        expected.append((frame.copy(), repr(raw)))
    agree(expected, free.run())


def test_of_a_text_beyond_the_content_only_so_many_bytes_are_read(free: Program) -> None:
    screen = free.material.layout.screens[0]
    field = screen.parts[0]
    assert isinstance(field, Field)
    for text in ("0" * 48, "0" * 5000):
        free.update_field(screen, field, text)
        free.frame()
    one, other = free.run()
    assert np.array_equal(one.codes, other.codes)


def test_a_character_cut_by_that_length_is_not_read_to_its_end(free: Program) -> None:
    screen = free.material.layout.screens[0]
    field = screen.parts[0]
    assert isinstance(field, Field)
    # 12 characters of 4 bytes each are the most: of the degree sign's two bytes the second would be the 49th.
    for text in ("0" * 47, "0" * 47 + "\N{DEGREE SIGN}", "0" * 45 + "\U0001d11e1"):
        free.update_field(screen, field, text)
        free.frame()
    one, other, third = free.run()
    assert np.array_equal(one.codes, other.codes)
    assert not np.array_equal(one.codes, third.codes)


# ---- No ghosts ----


def sound(folder: Path) -> Material:
    """A layout whose padding boxes are just as large as the footprints."""
    specs = (TypeSpec("soft", SANS, 18, "antialiased", True), TypeSpec("hard", SANS, 14))
    anchors = (
        ("volt", Content("%.2f V", (RealRange(-1, 30),), fault="----"), "soft", 70, 24, "right"),
        ("amps", Content("%u mA", (WholeRange(0, 3000),), fault="?"), "hard", 40, 48, "centre"),
        ("mode", Content("%s", (Choice(("CV", "CC limit", "off")),)), "soft", 12, 72, "left"),
    )
    bare = Layout(1, "bench", Panel(96, 80), specs, INKS, (Screen("main", "night"),))
    types = gather(bare, folder).types
    fields = []
    for n, (name, content, type_, x, baseline, align) in enumerate(anchors):
        field = Field(name, content, type_, "water", x, baseline, align, clearing="pad" if n < 2 else "box")  # type: ignore[arg-type]
        left, top, width, height = footprint(field_graph(field), types[type_], field.align).mask.bounds()
        padding = (x + left, baseline + top, width, height)
        fields.append(replace(field, padding=padding))
    icon = Icon("fan", 80, 60, "rust", (IconState("off", ("...",)), IconState("on", ("#.#", "###"))))
    screen = Screen("main", "night", (*fields, icon))
    return gather(Layout(1, "bench", Panel(96, 80), specs, INKS, (screen,)), folder)


def test_after_thousands_of_updates_nothing_old_is_left(tmp_path: Path) -> None:
    program = build(sound(tmp_path), tmp_path)
    for seed in range(4):
        wander(program, program.material.layout.screens[0], 2000, random.Random(seed))


EDITS = {
    "left": (("X", 1), ("WIDTH", -1)),
    "top": (("Y", 1), ("HEIGHT", -1)),
    "right": (("WIDTH", -1),),
    "bottom": (("HEIGHT", -1),),
}


@pytest.mark.parametrize("side", EDITS)
def test_one_pixel_of_padding_less_is_seen(tmp_path: Path, side: str) -> None:
    material = sound(tmp_path)
    text = header(material)
    for constant, by in EDITS[side]:
        define = re.search(rf"#define BENCH_MAIN_AMPS_PADDING_{constant} +(\d+)", text)
        assert define is not None
        text = text[: define.start(1)] + str(int(define[1]) + by) + text[define.end(1) :]
    program = build(material, tmp_path, text=text)
    assert any(_differs(program, random.Random(seed)) for seed in range(3))


def _differs(program: Program, chance: random.Random) -> bool:
    expected = play(program, 60, chance)
    return any(
        not np.array_equal(frame.codes, answer.codes)
        for (frame, _), answer in zip(expected, program.run(), strict=True)
    )
