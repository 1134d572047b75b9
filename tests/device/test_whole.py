"""Causes of a whole frame, each made on purpose with nothing but numpy."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from tests.device.making import judged, kiln, mono, ramp, right, shown, told, with_part

from panelproof.device.capture import Capture, Reading
from panelproof.device.outcome import compare
from panelproof.picture.frame import Codes, screen_frame
from panelproof.picture.moments import moment

Change = Callable[[Codes], Codes]


def moved(dx: int, dy: int, junk: int = 0x1234) -> Change:
    def change(codes: Codes) -> Codes:
        height, width = codes.shape
        out = np.full_like(codes, junk)
        out[max(dy, 0) : height + min(dy, 0), max(dx, 0) : width + min(dx, 0)] = codes[
            max(-dy, 0) : height - max(dy, 0), max(-dx, 0) : width - max(dx, 0)
        ]
        return out

    return change


def leaning(more: int) -> Change:
    """Rows written `240 + more` apart in memory, read 240 apart."""

    def change(codes: Codes) -> Codes:
        height, width = codes.shape
        memory = np.zeros(height * (width + 20), dtype=np.uint16)
        for row in range(height):
            memory[row * (width + more) : row * (width + more) + width] = codes[row]
        return memory[: height * width].reshape(height, width)

    return change


def red_and_blue(codes: Codes) -> Codes:
    red, green, blue = codes >> 11, codes >> 5 & 63, codes & 31
    return (blue << 11 | green << 5 | red).astype(np.uint16)


CAUSES: list[tuple[str, Change, tuple[str, ...]]] = [
    ("half a turn", lambda c: np.rot90(c, 2), ("rotated by 180°",)),
    ("a quarter clockwise", lambda c: np.rot90(c, -1), ("rotated by 90° clockwise",)),
    ("a quarter back", np.rot90, ("rotated by 270° clockwise",)),
    ("left for right", np.fliplr, ("mirrored across",)),
    ("top for bottom", np.flipud, ("mirrored down",)),
    ("rows for columns", lambda c: c.T, ("rows and columns are swapped",)),
    ("bytes", lambda c: c.byteswap(), ("two bytes of each pixel are swapped",)),
    ("red for blue", red_and_blue, ("red and blue are swapped",)),
    ("negative", lambda c: ~c, ("the colours are inverted",)),
    ("a row on", moved(0, 1), ("moved 1 px down", "offset")),
    ("two columns on", moved(2, 0), ("moved 2 px right", "offset")),
    ("back and up", moved(-5, -3), ("moved 5 px left and 3 px up", "offset")),
    ("far, with ground beside", moved(40, 20, 0), ("moved 40 px right and 20 px down",)),
    ("places in memory", lambda c: np.roll(c.ravel(), 7).reshape(c.shape), ("7 places too late",)),
    ("early places", lambda c: np.roll(c.ravel(), -250).reshape(c.shape), ("250 places too early",)),
    ("rows too long", leaning(1), ("each row is 1 pixel too long", "241")),
    ("rows too short", leaning(-2), ("each row is 2 pixels too short", "238")),
    ("bytes and mirrored", lambda c: np.fliplr(c).byteswap(), ("mirrored across", "two bytes")),
    ("bytes, red for blue", lambda c: red_and_blue(c).byteswap(), ("two bytes", "red and blue")),
    ("red for blue, moved", lambda c: red_and_blue(moved(3, 0)(c)), ("moved 3 px right", "red and blue")),
]


@pytest.mark.parametrize(("change", "words"), [case[1:] for case in CAUSES], ids=[case[0] for case in CAUSES])
def test_a_whole_cause_is_named_and_explains_all(change: Change, words: tuple[str, ...]) -> None:
    outcome = judged(change(right()))
    said = told(outcome)
    assert not outcome.same
    assert outcome.left == 0
    assert set(said) == {"*"}
    assert all(cause.explains == 1 for cause in outcome.causes)
    for one in words:
        assert one in said["*"]
    assert len(outcome.causes) <= 2


def test_the_same_frame_is_the_same_and_no_cause_is_told() -> None:
    outcome = judged(right())
    assert outcome.same
    assert (outcome.wrong, outcome.left, outcome.causes) == (0, 0, ())
    assert all(part.same for part in outcome.parts)


def test_every_moment_is_the_same_as_itself_and_not_as_another() -> None:
    material = kiln()
    names = [spec.name for spec in material.layout.moments]
    for name, other in zip(names, names[1:] + names[:1], strict=True):
        found = moment(material, name)
        frame = screen_frame(material, material.screen(found.screen), found.values).codes
        assert judged(frame, name=name).same
        assert not judged(frame, name=other).same


def test_another_moment_is_named_even_mirrored() -> None:
    material = kiln()
    found = moment(material, "joining")
    frame = screen_frame(material, material.screen(found.screen), found.values).codes
    assert told(judged(frame))["*"] == "it shows the moment `joining`"
    said = told(judged(np.fliplr(frame)))["*"]
    assert "mirrored across" in said
    assert "`joining`" in said


def test_a_dark_glass_is_told_as_such() -> None:
    assert "nothing is drawn" in told(judged(np.zeros_like(right())))["*"]


def test_offsets_of_the_layout_are_corrected_in_words() -> None:
    from msgspec.structs import replace

    from panelproof.material import gather

    material = kiln()
    panel = replace(material.layout.panel, offset=(40, 53))
    placed = gather(replace(material.layout, panel=panel), material.folder)
    said = told(judged(moved(1, -2)(right()), placed))["*"]
    assert "try 39, 55" in said


def test_a_controllers_whole_memory_is_looked_through() -> None:
    from msgspec.structs import replace

    from panelproof.material import gather

    material = kiln()
    panel = replace(material.layout.panel, offset=(40, 53))
    placed = gather(replace(material.layout, panel=panel), material.folder)
    memory = np.zeros((240, 320), dtype=np.uint16)
    memory[53:188, 40:280] = right()
    found = ramp()
    screen = placed.screen(found.screen)
    assert compare(placed, screen, found.values, Capture("picture", (Reading("", memory),))).same
    memory = np.roll(memory, (0, 12), axis=(0, 1))
    outcome = compare(placed, screen, found.values, Capture("picture", (Reading("", memory),)))
    assert told(outcome)["*"] == (
        "the picture begins at column 52, row 53 of the memory; the layout's offset is 40, 53"
    )


def test_a_whole_cause_and_a_part_that_is_wrong_besides() -> None:
    codes = shown(with_part(kiln().layout, "readings", "unit", x=206, baseline=68))
    outcome = judged(codes.byteswap())
    assert told(outcome) == {
        "*": "the two bytes of each pixel are swapped: send the other one first",
        "unit": "it stands 3 px right and 2 px up of its place",
    }
    assert outcome.left == 0
    assert 0.9 < outcome.causes[0].explains < 1


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (lambda c: 1 - c, "the colours are inverted"),
        (lambda c: np.rot90(1 - c, 2), "the picture is rotated by 180°; the colours are inverted"),
        (moved(0, -2, 0), "everything is moved 2 px up"),
    ],
)
def test_a_one_bit_panel(change: Change, words: str) -> None:
    material = mono()
    found = moment(material, "half-full")
    frame = screen_frame(material, material.screen(found.screen), found.values).codes
    outcome = judged(change(frame).astype(np.uint16), material, "half-full")
    assert told(outcome)["*"].startswith(words)
    assert outcome.left == 0


def test_a_round_glass_is_judged_by_what_is_seen() -> None:
    from msgspec.structs import replace

    from panelproof.material import gather

    material = kiln()
    panel = replace(material.layout.panel, shape="rounded", corner_radius=20)
    rounded = gather(replace(material.layout, panel=panel), material.folder)
    codes = right().copy()
    codes[0, 0] ^= 1
    assert judged(codes, rounded).same
    codes[70, 120] ^= 1
    assert judged(codes, rounded).wrong == 1
