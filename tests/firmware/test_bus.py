"""What is sent to the panel, against what compiled drawing code asks of the port, and against arithmetic by hand."""

from __future__ import annotations

import random
from pathlib import Path
from typing import Any

import pytest
from tests.firmware.harness import Program, build
from tests.firmware.layouts import rich, some_values

from panelproof.firmware import bus
from panelproof.firmware.bus import Traffic, clocks, pixel_bits, sent, window
from panelproof.firmware.changing import change, change_bar
from panelproof.firmware.data import changes_by_parts
from panelproof.layout.document import Screen
from panelproof.layout.panel import Bus, Panel
from panelproof.layout.parts import Field, Icon, Meter
from panelproof.picture import drawing
from panelproof.picture.drawing import Paint
from panelproof.tasks import load

KILN = Path(__file__).parents[2] / "examples" / "kiln" / "kiln.panel.json"


def agrees(program: Program, rounds: int) -> int:
    """Let compiled code draw and update at random, and compare what it sent; return how much was compared."""
    material, rng, expected = program.material, random.Random(3), []
    for _ in range(rounds):
        screen = rng.choice(material.layout.screens)
        values = some_values(screen, rng)
        program.draw(screen, values)
        program.frame()
        expected.append(bus.traffic(drawing.screen_operations(material, screen, values), 16))
        for part in screen.parts:
            if isinstance(part, Field):
                program.update_field(screen, part, values.texts[part.name])
                operations = drawing.field(material, screen, part, values.texts[part.name])
            elif isinstance(part, Icon):
                program.update_icon(screen, part, values.states[part.name])
                operations = drawing.icon(material, screen, part, values.states[part.name])
            elif isinstance(part, Meter):
                program.update_meter(screen, part, values.levels[part.name])
                operations = drawing.meter(material, screen, part, values.levels[part.name])
            else:
                continue
            program.frame()
            expected.append(bus.traffic(operations, 16))
            if isinstance(part, Field | Icon) and changes_by_parts(part):
                expected.append(_changed(program, screen, part, rng, values.of(part.name)))
            elif isinstance(part, Meter):
                former, now = (some_values(screen, rng).levels[part.name] for _ in range(2))
                program.change_meter(screen, part, former, now)
                program.frame()
                expected.append(change_bar(material, part, former, now))
    answers = program.run()
    for answer, traffic in zip(answers, expected, strict=True):
        assert (answer.windows, int(answer.touched.sum(dtype=int))) == (traffic.windows, traffic.pixels)
    return len(answers)


def _changed(program: Program, screen: Screen, part: Field | Icon, rng: random.Random, shown: str) -> Traffic:
    """Bring a part that is shown up to date by what differs; return what that should send."""
    material = program.material
    other = some_values(screen, rng).of(part.name)
    if isinstance(part, Field):
        program.change_field(screen, part, shown, other)
        whole = drawing.field(material, screen, part, other)
    else:
        program.change_icon(screen, part, shown, other)
        whole = drawing.icon(material, screen, part, other)
    program.frame()
    traffic = change(material, part, shown, other)
    return bus.traffic(whole, 16) if traffic is None else traffic


def test_compiled_code_sends_just_that(tmp_path: Path) -> None:
    assert agrees(build(rich(tmp_path), tmp_path), 25) > 100


def test_the_kiln_sends_just_that(tmp_path: Path) -> None:
    assert agrees(build(load(KILN), tmp_path), 8) > 20


# -- by hand -----------------------------------------------------------------------------------------------


def test_a_window_is_eleven_bytes_and_a_pixel_two() -> None:
    # MIPI Display Command Set: 2Ah and 4 bytes, 2Bh and 4 bytes, 2Ch.
    panel = Panel(240, 135, bus=Bus("spi", 40_000_000))
    one = sent(window(192 * 50, 16), panel)
    assert (one.windows, one.pixels, one.bytes) == (1, 9600, 11 + 19_200)
    assert one.ms == pytest.approx(19_211 * 8 / 40_000)
    assert sent(Traffic(), panel).bytes == 0
    assert sent(window(100, 16), Panel(240, 135)).ms is None


@pytest.mark.parametrize(
    ("protocol", "lanes", "expected"),
    [
        ("spi", 1, (11 + 20) * 8),
        ("spi", 4, 11 * 2 + 20 * 2),
        ("parallel", 8, 11 + 20),
        ("parallel", 16, 11 + 10),
        # UM10204: nine clocks a byte; each of the two transfers of a window begins with address and control byte.
        ("i2c", 1, (11 + 4 + 20) * 9),
    ],
)
def test_clocks_of_a_window_of_ten_pixels(protocol: Any, lanes: int, expected: int) -> None:
    panel = Panel(10, 10, bus=Bus(protocol, 1_000_000, lanes))
    ms = sent(window(10, 16), panel).ms
    assert ms is not None
    assert round(ms * 1000) == expected
    if protocol != "i2c":
        assert clocks(Bus(protocol, 1000, lanes), 11, 20) == expected


@pytest.mark.parametrize(
    ("panel", "bits"),
    [
        (Panel(8, 8, "mono"), 1),
        (Panel(8, 8, "grey4"), 2),
        (Panel(8, 8, "grey16"), 4),
        (Panel(8, 8), 16),
        (Panel(8, 8, "indexed", palette=("#000000", "#ffffff")), 1),
        (Panel(8, 8, "indexed", palette=("#000000", "#ffffff", "#ff0000")), 2),
        (Panel(8, 8, "indexed", palette=tuple(f"#0000{n:02x}" for n in range(20))), 8),
    ],
)
def test_bits_of_a_pixel(panel: Panel, bits: int) -> None:
    assert pixel_bits(panel) == bits
    assert window(9, bits).data == -(-9 * bits // 8)


def test_ink_alone_opens_a_window_for_each_run_of_one_colour() -> None:
    levels = bytes((0, 15, 15, 0, 15, 0)) + bytes((15, 15, 15, 15, 15, 15)) + bytes(6)
    one_bit = Paint(0, 0, 6, 3, levels, tuple([0] * 15 + [9]), False)
    assert bus.traffic((one_bit,), 16) == Traffic(3, 9, 18)
    assert bus.traffic((Paint(0, 0, 6, 3, levels, one_bit.ramp, True),), 16) == Traffic(1, 18, 36)
    # Levels 7 and 8 are one colour on this panel, 15 another.
    blended = Paint(0, 0, 4, 1, bytes((7, 8, 15, 0)), (0, *[1] * 8, *[2] * 7), False)
    assert bus.traffic((blended,), 16) == Traffic(2, 3, 6)
