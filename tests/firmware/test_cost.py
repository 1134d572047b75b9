"""Costs: worst texts against all texts of small contents, memory against compilers, limits a value apart."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from tests.firmware.codesizes import PROCESSORS, compiled_code, prepared
from tests.firmware.harness import installed
from tests.firmware.layouts import mono, rich

from panelproof import command
from panelproof.content.spec import Choice, Content, WholeRange
from panelproof.firmware import bus, cost, memory
from panelproof.firmware.bus import Traffic, pixel_bits, sent
from panelproof.firmware.changing import change_bar
from panelproof.firmware.code import needs, processors
from panelproof.firmware.header import header
from panelproof.layout.document import Ink, Layout, Limits, Screen, TypeSpec
from panelproof.layout.panel import Bus, Panel
from panelproof.layout.parts import Clearing, Field, Growing, Icon, IconState, Meter, MeterLimit, Part
from panelproof.material import Material, field_graph, gather
from panelproof.picture import drawing
from panelproof.picture.frame import draw, new_frame
from panelproof.proof.finding import Finding
from panelproof.proof.mending import changed
from panelproof.tasks import load
from panelproof.verdict import verdict

EXAMPLES = Path(__file__).parents[2] / "examples"
SPI = Bus("spi", 10_000_000)
COUNT = Content("%d C", (WholeRange(-9, 120),), fault="lost", first="--")
TYPES = (
    TypeSpec("plain", "SourceSansPro", 16),
    TypeSpec("smooth", "SourceSansPro", 16, "antialiased"),
)
INKS = (Ink("black", "#000000"), Ink("white", "#ffffff"), Ink("red", "#ff0000"))


def layout(*parts: Part, **others: Any) -> Layout:
    panel = Panel(160, 80, bus=SPI)
    made = Layout(1, "tank", panel, TYPES, INKS, (Screen("main", "black", parts),))
    return replace(made, **others)


def field(**changes: Any) -> Field:
    return replace(Field("level", COUNT, "plain", "white", 20, 40, padding=(10, 20, 100, 30)), **changes)


def material(*parts: Part, **others: Any) -> Material:
    return gather(layout(*parts, **others), Path())


# -- updates -----------------------------------------------------------------------------------------------


@pytest.mark.parametrize("clearing", ["pad", "box", "none", "cell"])
@pytest.mark.parametrize("type_", ["plain", "smooth"])
def test_the_worst_text_is_that_of_all(clearing: Clearing, type_: str) -> None:
    made = material(field(clearing=clearing, type=type_))
    screen = made.layout.screens[0]
    part = screen.parts[0]
    assert isinstance(part, Field)
    every = {
        text: bus.weight(bus.traffic(drawing.field(made, screen, part, text), 16))
        for text in field_graph(part).texts()
    }
    shown, traffic = cost.worst(made, screen, part)
    assert bus.weight(traffic) == every[shown] == max(every.values())


@settings(max_examples=30, deadline=None)
@given(
    st.lists(st.text("0123456789 CiM.-", min_size=1, max_size=7), min_size=1, max_size=12, unique=True),
    st.sampled_from(["box", "none"]),
)
def test_glyphs_that_take_most_make_the_text_that_takes_most(texts: list[str], clearing: Clearing) -> None:
    made = material(
        field(content=Content("%s", (Choice(tuple(texts)),)), clearing=clearing, padding=(0, 0, 160, 80))
    )
    screen = made.layout.screens[0]
    part = screen.parts[0]
    assert isinstance(part, Field)
    every = [bus.weight(bus.traffic(drawing.field(made, screen, part, text), 16)) for text in texts]
    # Glyphs that touch share a window, which the weights of single glyphs do not know: a few bytes at most.
    assert 0.995 * max(every) <= bus.weight(cost.worst(made, screen, part)[1]) <= max(every)


def test_an_icon_and_a_meter_paint_their_box_once() -> None:
    states = (IconState("on", ("###", "###")), IconState("off", ("#.#", ".#.")))
    icon, meter = Icon("pump", 100, 5, "white", states), Meter("bar", 5, 60, 80, 9, 0, 99, "white")
    found = {one.part: one for one in cost.updates(material(icon, meter))}
    assert (found["pump"].sent.windows, found["pump"].sent.pixels) == (1, 6)
    assert (found["bar"].sent.windows, found["bar"].sent.pixels) == (1, 80 * 9)
    clear = material(replace(icon, clearing="none"))
    (one,) = cost.updates(clear)
    # Of two states the one that takes most: two rows in one run each, or three runs of one pixel.
    assert (one.shown, one.sent.bytes) == ("off", 3 * (11 + 2))


def test_beside_each_update_stands_the_least_that_would_do() -> None:
    (one,) = cost.updates(material(field()))
    assert one.sent.bytes == 11 + 100 * 30 * 2
    assert one.sent.ms == pytest.approx(one.sent.bytes * 8 / 10_000)
    assert one.steps == ("118 C", "119 C")
    assert one.step is not None
    assert one.step_least is not None
    # One digit 8 px wide and 11 px high, or less.
    assert one.step_least.windows == 1
    assert one.step_least.bytes <= 11 + 8 * 11 * 2
    assert 0 < one.step_least.bytes <= one.step.bytes < one.change.bytes < one.sent.bytes
    assert 0 < one.least.bytes <= one.change.bytes


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(["right", "left", "up", "down"]),
    st.lists(st.one_of(st.none(), st.integers(-3, 103)), min_size=2, max_size=2),
)
def test_a_bar_renews_the_stretch_between_two_values(direction: Growing, values: list[int | None]) -> None:
    limits = (MeterLimit(80, "red", mark=False),)
    bar = Meter("bar", 5, 6, 80, 9, 0, 99, "white", direction, limits)
    made = material(bar)
    sent_ = change_bar(made, bar, *values)
    frame = new_frame(made.layout.panel)
    screen = made.layout.screens[0]
    draw(frame, drawing.meter(made, screen, bar, values[0]))
    before = frame.codes.copy()
    draw(frame, drawing.meter(made, screen, bar, values[1]))
    differing = int((frame.codes != before).sum())
    assert sent_.windows == (differing > 0)
    shown = [value for value in values if value is not None and 0 <= value <= 99]
    if len(shown) == 2:
        assert sent_.pixels == differing, "just the pixels that differ"
    else:
        assert sent_.pixels in (0, 80 * 9)


def test_where_there_is_no_function_for_changes_all_is_sent() -> None:
    (one,) = cost.updates(material(field(clearing="none", content=Content("%d", (WholeRange(8, 9),)))))
    assert one.change.bytes == one.sent.bytes


def test_a_screen_is_drawn_part_by_part_and_could_be_drawn_once() -> None:
    made = material(field())
    (one,) = cost.changes(made)
    assert one.sent.pixels == 160 * 80 + 100 * 30
    assert one.least.bytes == 11 + 160 * 80 * 2


def test_a_whole_frame_is_what_each_update_sends() -> None:
    made = material(field(), panel=Panel(128, 64, "mono", refresh="whole", bus=Bus("i2c", 400_000)))
    assert list(cost.updates(made)) == []
    (one,) = cost.changes(made)
    assert one.sent.bytes == 11 + 4 + 1024
    # UM10204: nine clocks a byte.
    assert one.sent.ms == pytest.approx((11 + 4 + 1024) * 9 / 400)
    assert cost.frame_bytes(made.layout) == 1024


# -- memory ------------------------------------------------------------------------------------------------


MADE = """
typedef struct a_ {
    uint8_t x; /* a gap of three bytes follows, but not on AVR */
    int32_t y[2];
    uint16_t z;
} a_;
#define A_NAME "\\302\\260C"
static A_CONST uint8_t a_bits_[] = {
    1, 2, 3,
};
static A_CONST a_ a_some_[] = {
    { 1, { 2, 3 }, 4 },
};
static A_CONST a_ a_one_ = { 1, { 2, 3 }, 4 };
static A_CONST char a_text_[] = A_NAME;
static A_CONST uint16_t a_ramps_[][2] = {
    { 1, 2 },
    { 3, 4 },
};
"""


def test_structures_are_laid_out_as_processors_do() -> None:
    # ISO C leaves gaps to the processor: on 32 bits members lie at multiples of their size, on AVR without gaps.
    plain = replace_nested(MADE)
    assert memory.constants(plain, memory.WORDS) == memory.Constants(3, 2 * 16 + 4 + 8, 0, 0)
    assert memory.constants(plain, memory.BYTES) == memory.Constants(3, 2 * 11 + 4 + 8, 0, 0)


def replace_nested(text: str) -> str:
    """Return the text as headers have it: no braces inside a structure's braces."""
    return text.replace("{ 2, 3 }", "2, 3")


def compiled_data(made: Material, name: str, folder: Path) -> tuple[int, int, int]:
    """The bytes of bitmaps, of other constants, and of those inside functions, that a compiler lays down."""
    processor = PROCESSORS[name]
    prepared(made.layout.name, header(made), processor, folder)
    tool = installed(f"{processor.prefix}-gcc")
    # Not optimised: else a small table may become part of the code that reads it.
    subprocess.run([tool, "-O0", *processor.flags, "-c", "a.c", "-o", "a.o"], cwd=folder, check=True)
    listed = subprocess.run(
        [installed(f"{processor.prefix}-nm"), "-S", "a.o"],
        cwd=folder,
        check=True,
        capture_output=True,
        text=True,
    ).stdout
    rows = [cells for line in listed.splitlines() if len(cells := line.split()) == 4 and cells[2] in "rRdD"]
    # On AVR constants in flash are among the code.
    rows += [
        cells for line in listed.splitlines()
        if len(cells := line.split()) == 4 and cells[2] in "tT" and not _function(folder, processor.prefix, cells[3])
    ]  # fmt: skip
    bitmaps = sum(int(size, 16) for _, size, _, name_ in rows if name_.endswith("_bits_"))
    whole = sum(int(size, 16) for _, size, _, _ in rows)
    strings = sum(int(size, 16) for _, size, _, name_ in rows if re.search(r"\.\d+$", name_))
    return bitmaps, whole - bitmaps - strings, strings


def _function(folder: Path, prefix: str, name: str) -> bool:
    listed = subprocess.run(
        [installed(f"{prefix}-objdump"), "-t", "a.o"], cwd=folder, check=True, capture_output=True, text=True
    ).stdout
    return any(line.split()[-1:] == [name] and " F " in line for line in listed.splitlines())


@pytest.mark.parametrize("name", sorted(PROCESSORS))
@pytest.mark.parametrize("which", ["kiln", "bench-supply", "rich", "mono"])
def test_constants_are_those_that_compilers_lay_down(name: str, which: str, tmp_path: Path) -> None:
    if which in ("rich", "mono"):
        made = rich(tmp_path) if which == "rich" else mono(tmp_path, "whole")
    else:
        made = load(EXAMPLES / which / f"{which}.panel.json")
    target = memory.BYTES if PROCESSORS[name].pointer == 2 else memory.WORDS
    found = memory.constants(header(made), target)
    assert (found.bitmaps, found.tables, found.strings) == compiled_data(made, name, tmp_path)


@pytest.mark.parametrize("name", sorted(PROCESSORS))
def test_code_is_estimated_from_figures_that_still_hold(name: str, tmp_path: Path) -> None:
    """Where this fails the drawing code has changed: run `python -m tests.firmware.codesizes` again."""
    if shutil.which(f"{PROCESSORS[name].prefix}-gcc") is None:
        installed(f"{PROCESSORS[name].prefix}-gcc")
    processor = next(one for one in processors() if one.name == name)
    for path in sorted(EXAMPLES.glob("*/[a-z]*.panel.json")):
        made = load(path)
        text = header(made)
        real = sum(compiled_code(made.layout.name, text, PROCESSORS[name], tmp_path).values())
        assert processor.estimate(needs(made, text)).bytes == pytest.approx(real, rel=0.15), path.name


def test_each_field_has_a_buffer_of_its_own() -> None:
    made = material(field(), field(name="other", buffer=30))
    assert memory.buffers(made.layout) == len("120 C") + 1 + 30
    # Each has a fault text of its own; the format is one string.
    found = memory.constants(header(made), memory.WORDS)
    assert (found.strings, found.formats) == (2 * len("lost\0"), len("%d C\0"))


# -- limits ------------------------------------------------------------------------------------------------


def found(made: Layout, rule: str) -> list[Finding]:
    return [one for one in verdict(gather(made, Path())).findings if one.rule == rule]


def test_an_update_that_takes_longer_than_is_allowed() -> None:
    ms = sent(bus.window(100 * 30, 16), Panel(160, 80, bus=SPI)).ms
    assert ms is not None
    assert found(layout(field(), limits=Limits(update_ms=ms)), "update-time") == []
    made = layout(field(), limits=Limits(update_ms=ms - 0.001))
    (one,) = found(made, "update-time")
    assert (one.level, one.part) == ("caution", "level")
    assert "6 011 bytes in 4.8 ms" in one.message
    assert one.remedy is not None
    assert one.remedy.sentence.startswith("padding width 100 →")
    assert found(changed(made, "main", one.remedy.changes), "update-time") == []


def test_ink_in_many_windows_is_slower_than_a_padding_box_painted_once() -> None:
    part = field(type="smooth", clearing="box", padding=(10, 20, 60, 30))
    made = layout(part, limits=Limits(update_ms=4.0))
    (one,) = found(made, "update-time")
    assert "windows" in one.message
    assert one.remedy is not None
    assert one.remedy.sentence.startswith("clearing `pad`")
    assert found(changed(made, "main", one.remedy.changes), "update-time") == []


def test_without_a_bus_no_time_can_be_told() -> None:
    made = layout(field(), limits=Limits(update_ms=1.0), panel=Panel(160, 80))
    (one,) = found(made, "update-time")
    assert (one.level, one.screen, one.part) == ("note", "", "")


def test_a_frame_that_takes_longer_than_is_allowed() -> None:
    panel = Panel(128, 64, "mono", refresh="whole", bus=Bus("i2c", 400_000))
    ms = (11 + 4 + 1024) * 9 / 400
    plain = TYPES[:1]
    assert found(layout(field(), panel=panel, types=plain, limits=Limits(update_ms=ms)), "frame-time") == []
    (one,) = found(
        layout(field(), panel=panel, types=plain, limits=Limits(update_ms=ms - 0.01)), "frame-time"
    )
    assert (one.level, one.part) == ("caution", "")


@pytest.mark.parametrize("what", ["flash", "ram"])
def test_more_memory_than_is_allowed(what: str) -> None:
    most = max(getattr(one, what) for one in cost.memories(material(field())))
    assert found(layout(field(), limits=Limits(**{f"{what}_bytes": most})), what) == []
    (one,) = found(layout(field(), limits=Limits(**{f"{what}_bytes": most - 1})), what)
    assert (one.level, one.screen, one.part) == ("caution", "", "")
    assert f"{most:,}".replace(",", " ") in one.message


def test_where_a_part_stands_changes_no_size() -> None:
    one, other = (
        cost.memories(material(field())),
        cost.memories(material(field(x=33, padding=(20, 20, 100, 30)))),
    )
    assert one is other
    assert cost.memories(material(field(type="smooth"))) != one


# -- the command -------------------------------------------------------------------------------------------


def test_costs_are_printed_for_people_and_for_programs(capsys: pytest.CaptureFixture[str]) -> None:
    path = str(EXAMPLES / "kiln" / "kiln.panel.json")
    assert command.main(["measure", "--cost", path]) == 0
    text = capsys.readouterr().out
    for words in ("readings / chamber", "19 211", "Cortex-M0", "AVR", "drawing the screen", "one step"):
        assert words in text
    assert command.main(["measure", "--cost", "--json", path]) == 0
    answer = json.loads(capsys.readouterr().out)
    assert set(answer) == {"bus", "updates", "changes", "memories"}
    chamber = next(one for one in answer["updates"] if one["part"] == "chamber")
    assert chamber["sent"]["bytes"] == 11 + 192 * 50 * 2
    for one in answer["memories"]:
        parts = ("bitmaps", "tables", "strings", "drawing", "texts")
        assert one["flash"] == sum(one[name] for name in parts)


def test_pixels_of_few_bits_end_in_whole_bytes() -> None:
    made = material(field(), panel=Panel(128, 64, "mono", bus=SPI), types=TYPES[:1])
    assert pixel_bits(made.layout.panel) == 1
    assert bus.window(3, 1) == Traffic(1, 3, 1)
