"""The port files of the examples, drawn through, against the frames that `render` makes."""

from __future__ import annotations

import random
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from numpy.typing import NDArray
from tests.firmware.harness import WARNINGS, compiled
from tests.firmware.layouts import mono, rich
from tests.targets.machine import BOARDS, HOST, MACHINES, Machine, build, machine, run
from tests.targets.panel_memory import BLUE_FIRST, MODE, UNTOUCHED, PanelMemory
from tests.targets.replay import replay
from tests.targets.script import Script, Shown
from tests.targets.test_machines import play

from panelproof.firmware.bus import traffic
from panelproof.firmware.header import header
from panelproof.material import Material
from panelproof.picture import drawing
from panelproof.picture.frame import Frame
from panelproof.picture.moments import every_moment

PORTS = Path(__file__).parents[2] / "examples" / "ports"
FILES = sorted(PORTS.glob("*.h"))

BUFFER = r"""
#include "frame_%(name)s.h"

static %(word)s pixels[%(words)d];
static %(name)s_frame frame = {pixels, %(stride)d, 0, 0, 0, 0};

static void mark(void)
{
    const uint8_t *byte = (const uint8_t *)pixels;
    size_t n;

    for (n = 0; n < sizeof pixels; ++n) {
        number(0x100u + byte[n]);
        if (n %% 16 == 15)
            send('\n');
    }
    send('m');
    send('\n');
}

#define PORT %(name)s_window, %(name)s_run, &frame
"""

STREAM = r"""
#include "byte_stream.h"

static void pass_on(void *bus, int command, const uint8_t *bytes, size_t count)
{
    if (bus != line)
        board_stop(91);
    send(command ? 'c' : 'd');
    while (count--)
        number(0x100u + *bytes++);
    send('\n');
}

static stream_display display = {pass_on, line, 0, 0};
static const stream_glass glass = {%(glass)s};

static void mark(void)
{
    (void)&glass;
    send('m');
    send('\n');
}

#define PORT stream_window, stream_run, &display
"""


def as_bytes(line: str) -> bytes:
    """Return the bytes of a line, each sent as three digits, 1 before its two."""
    return bytes.fromhex("".join(line[n + 1 : n + 3] for n in range(0, len(line), 3)))


def buffers(lines: list[str]) -> Iterator[bytes]:
    """Yield the bytes between marks."""
    raw = b""
    for line in lines:
        if line == "m":
            yield raw
            raw = b""
        else:
            raw += as_bytes(line)


def shown(material: Material, folder: Path, port: str, on: Machine = HOST) -> tuple[list[Frame], list[str]]:
    """Draw moments and updates through a port; return the frames that must come, and what was sent."""
    script = Script(material)
    frames = [frame for frame, _ in play(script, 3, 8, random.Random(31))]
    flags = [f"-I{PORTS}", *(["-fsanitize=address,undefined", "-fno-sanitize-recover"] if on is HOST else [])]
    program = build(folder, on, script.source(port), header(material), flags)
    return frames, run(program, on)


def same(frames: list[Frame], found: Iterator[NDArray[np.generic]]) -> None:
    for frame, codes in zip(frames, found, strict=True):
        assert np.array_equal(frame.codes, codes)


def test_the_ports_are_found() -> None:
    assert {path.name for path in FILES} == {
        "frame_rgb565.h",
        "frame_pages.h",
        "frame_rows.h",
        "byte_stream.h",
    }


def test_a_frame_of_16_bit_pixels(tmp_path: Path) -> None:
    material = rich(tmp_path)
    panel = material.layout.panel
    words = panel.width * panel.height
    port = BUFFER % {"name": "rgb565", "word": "uint16_t", "words": words, "stride": panel.width}
    frames, lines = shown(material, tmp_path, port)
    same(frames, (np.frombuffer(raw, "<u2").reshape(panel.height, -1) for raw in buffers(lines)))


@pytest.mark.parametrize("on", [HOST, machine("avr")], ids=lambda on: on.name)
def test_a_frame_of_eight_rows_a_byte(tmp_path: Path, on: Machine) -> None:
    on.needed()
    material = mono(tmp_path)
    width, height = material.layout.panel.width, material.layout.panel.height
    port = BUFFER % {"name": "pages", "word": "uint8_t", "words": width * (height // 8), "stride": width}
    frames, lines = shown(material, tmp_path, port, on)

    def unpacked(raw: bytes) -> NDArray[np.uint8]:
        pages = np.frombuffer(raw, np.uint8).reshape(height // 8, width)
        return np.stack([pages[y // 8] >> y % 8 & 1 for y in range(height)])

    same(frames, map(unpacked, buffers(lines)))


@pytest.mark.parametrize("on", [HOST, machine("avr")], ids=lambda on: on.name)
def test_a_frame_of_rows(tmp_path: Path, on: Machine) -> None:
    on.needed()
    material = mono(tmp_path)
    width, height = material.layout.panel.width, material.layout.panel.height
    port = BUFFER % {"name": "rows", "word": "uint8_t", "words": width // 8 * height, "stride": width // 8}
    frames, lines = shown(material, tmp_path, port, on)
    found = (np.unpackbits(np.frombuffer(raw, np.uint8)).reshape(height, width) for raw in buffers(lines))
    same(frames, found)


@pytest.mark.parametrize("order", ["high first", "blue first"])
@pytest.mark.parametrize("quarters", range(4))
def test_a_stream_to_a_display_with_its_own_memory(tmp_path: Path, quarters: int, order: str) -> None:
    material = rich(tmp_path)
    # The glass as it lies when it is not turned, somewhere in a larger memory.
    across, down = material.layout.panel.width, material.layout.panel.height
    width, height = (down, across) if quarters % 2 else (across, down)
    columns, rows, x, y = width + 105, height + 80, 52, 41
    glass = f"{columns}, {rows}, {width}, {height}, {x}, {y}"
    more = BLUE_FIRST if order == "blue first" else 0
    script = Script(material)
    frames = [frame for frame, _ in play(script, 3, 8, random.Random(31))]
    source = script.source(STREAM % {"glass": glass})
    turn = f"    stream_turn(&display, &glass, {quarters}u, {more}u);\n    while ((command"
    source = source.replace("    while ((command", turn)
    program = build(tmp_path, HOST, source, header(material), [f"-I{PORTS}", "-fsanitize=address,undefined"])
    memory = PanelMemory(columns, rows)
    seen = []
    for line in run(program, HOST):
        if line == "m":
            seen.append(memory.glass(x, y, width, height, quarters).copy())
            continue
        for byte in as_bytes(line[1:]):
            memory.take(line[0] == "c", byte)
    if more:
        swapped = [reordered(frame.codes, True, False) for frame in frames]
        assert all(np.array_equal(codes, glass) for codes, glass in zip(swapped, seen, strict=True))
    else:
        same(frames, iter(seen))
    around = memory.pixels.copy()
    around[y : y + height, x : x + width] = UNTOUCHED
    assert (around == UNTOUCHED).all()


def reordered(codes: NDArray[np.uint16], blue_first: bool, low_first: bool) -> NDArray[np.uint16]:
    if blue_first:
        codes = (codes >> 11 | codes & 0x07E0 | (codes & 31) << 11).astype(np.uint16)
    return codes.byteswap() if low_first else codes


@pytest.mark.parametrize("on", [HOST, machine("avr")], ids=lambda on: on.name)
@pytest.mark.parametrize("blue_first", [False, True])
@pytest.mark.parametrize("low_first", [False, True])
def test_the_header_gives_colours_in_the_order_of_the_display(
    tmp_path: Path, blue_first: bool, low_first: bool, on: Machine
) -> None:
    on.needed()
    material = rich(tmp_path)
    script = Script(material)
    frames = [frame for frame, _ in play(script, 1, 5, random.Random(32))]
    orders = {"RAIN_TANK_BLUE_FIRST": blue_first, "RAIN_TANK_LOW_BYTE_FIRST": low_first}
    flags = [f"-D{name}" for name, asked in orders.items() if asked]
    program = build(tmp_path, on, script.source(), header(material), flags)
    sent = replay(run(program, on), material.layout.panel).frames
    for frame, codes in zip(frames, sent, strict=True):
        assert np.array_equal(reordered(frame.codes, blue_first, low_first), codes)


def test_a_display_that_takes_the_low_byte_first(tmp_path: Path) -> None:
    material = rich(tmp_path)
    panel = material.layout.panel
    script = Script(material)
    frames = [frame for frame, _ in play(script, 1, 5, random.Random(33))]
    port = STREAM % {"glass": f"{panel.width}, {panel.height}, {panel.width}, {panel.height}, 0, 0"}
    flags = [f"-I{PORTS}", "-DRAIN_TANK_LOW_BYTE_FIRST"]
    program = build(tmp_path, HOST, script.source(port), header(material), flags)
    memory, seen = PanelMemory(panel.width, panel.height, low_first=True), []
    for line in run(program, HOST):
        if line == "m":
            seen.append(memory.pixels.copy())
            continue
        for byte in as_bytes(line[1:]):
            memory.take(line[0] == "c", byte)
    same(frames, iter(seen))


def test_a_window_takes_11_bytes_before_its_pixels_and_an_update_what_the_costs_say(tmp_path: Path) -> None:
    """The 11 are 2Ah and 2Bh with four bytes each, and 2Ch, as in the MIPI Display Command Set."""
    material = rich(tmp_path)
    script = Script(material)
    expected: list[tuple[str, int] | None] = []
    for moment in every_moment(material):
        screen = material.screen(moment.screen)
        script.draw(screen, moment.values)
        script.mark()
        expected.append(None)
        for part in screen.parts:
            if isinstance(part, Shown):
                script.update(screen, part, moment.values)
                script.mark()
                cost = traffic(drawing.part(material, screen, part, moment.values), 16)
                expected.append((f"{screen.name}, {part.name}", 11 * cost.windows + 2 * cost.pixels))
    panel = material.layout.panel
    port = STREAM % {"glass": f"{panel.width}, {panel.height}, {panel.width}, {panel.height}, 0, 0"}
    program = build(tmp_path, HOST, script.source(port), header(material), [f"-I{PORTS}"])
    counts = [0]
    for line in run(program, HOST):
        if line == "m":
            counts.append(0)
        else:
            counts[-1] += len(as_bytes(line[1:]))
    assert counts.pop() == 0
    for one, count in zip(expected, counts, strict=True):
        if one is not None:
            assert count == one[1], one[0]


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_no_warning_for_any_processor_or_language(tmp_path: Path, path: Path) -> None:
    (tmp_path / "a.c").write_text(f'#include "{path}"\n')
    (tmp_path / "a.cpp").write_text(f'#include "{path}"\n')
    for using, standard in (("gcc", "c99"), ("clang", "c99"), ("g++", "c++11"), ("clang++", "c++11")):
        name = "a.cpp" if using.endswith("+") else "a.c"
        compiled(tmp_path, [f"-std={standard}", *WARNINGS, "-O1", "-c", name, "-o", "a.o"], using)
    for on in MACHINES:
        on.needed()
        flags = ["-std=c99", "-Os", *WARNINGS, f"-I{BOARDS}", *on.own]
        compiled(tmp_path, [*flags, "-c", "a.c", "-o", "a.o"], on.compiler)


def test_the_examples_in_the_comments_compile(tmp_path: Path) -> None:
    """Each file's comment shows its use, indented by seven."""
    for path in FILES:
        comment = path.read_text().partition("*/")[0]
        lines = [
            line.strip()
            for line in comment.splitlines()
            if line.startswith("       ") and line.rstrip().endswith(";")
        ]
        assert len(lines) >= 2, path.name
        inside = [line for line in lines if line.startswith("stream_turn")]
        outside = [line for line in lines if line not in inside and not line.startswith("static void send")]
        port = "typedef struct kiln_port { void (*window)(void *, uint16_t, uint16_t, uint16_t, uint16_t);\n" \
            "    void (*run)(void *, uint16_t, uint32_t); void *context; } kiln_port, rain_tank_port;\n"  # fmt: skip
        send = "static int spi;\nstatic void send(void *bus, int command, const uint8_t *bytes, size_t count)\n" \
            "{ (void)bus; (void)command; (void)bytes; (void)count; }\n" if inside else ""  # fmt: skip
        uses = (
            "extern int use(const kiln_port *of);\nint main(void) { "
            + " ".join(inside)
            + " return use(&port); }\n"
        )
        source = f'#include "{path}"\n{port}{send}' + "\n".join(outside) + "\n" + uses
        (tmp_path / "use.c").write_text(source)
        compiled(tmp_path, ["-std=c99", "-Wall", "-Werror", "-c", "use.c", "-o", "use.o"])


def test_the_model_refuses_what_no_display_takes() -> None:
    memory = PanelMemory(8, 4)
    for command, byte in ((True, 0x2A), (False, 0), (False, 7), (False, 0)):
        memory.take(command, byte)
    with pytest.raises(ValueError, match="no span"):
        memory.take(False, 6)
    with pytest.raises(ValueError, match="not known"):
        memory.take(True, 0x77)
    memory.take(True, MODE)
    memory.take(False, 0)
    memory.take(True, 0x2C)
    memory.take(False, 0)
    with pytest.raises(ValueError, match="cut off"):
        memory.take(True, 0x2C)
