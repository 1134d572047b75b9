"""Reading frames: pictures by Pillow's own writers, raw bytes packed here pixel by pixel."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from tests.device.making import kiln, mono, ramp, right

from panelproof.device.capture import read
from panelproof.device.outcome import compare
from panelproof.layout.panel import Panel
from panelproof.picture.frame import Codes, Frame, screen_frame
from panelproof.picture.image import image
from panelproof.picture.moments import moment
from panelproof.problem import Problem


def packed(codes: Codes, form: str, bits: int = 1) -> bytes:
    """Bytes of a frame, made with loops and shifts only."""
    height, width = codes.shape
    if form == "bytes":
        return bytes(int(code) for code in codes.ravel())
    if form.startswith("pages"):
        out = bytearray(width * -(-height // 8))
        for y in range(height):
            for x in range(width):
                bit = 7 - y % 8 if form == "pages-high" else y % 8
                out[y // 8 * width + x] |= int(codes[y, x]) << bit
        return bytes(out)
    stride = -(-width * bits // 8)
    out = bytearray(stride * height)
    for y in range(height):
        for x in range(width):
            place, within = divmod(x * bits, 8)
            shift = within if form == "rows-low" else 8 - bits - within
            out[y * stride + place] |= int(codes[y, x]) << shift
    return bytes(out)


def tank_codes() -> Codes:
    material = mono()
    found = moment(material, "half-full")
    return screen_frame(material, material.screen(found.screen), found.values).codes


@pytest.mark.parametrize("suffix", [".png", ".ppm", ".bmp"])
@pytest.mark.parametrize("scale", [1, 3])
def test_pictures_of_a_colour_panel(tmp_path: Path, suffix: str, scale: int) -> None:
    path = tmp_path / f"frame{suffix}"
    image(Frame(240, 135, right()), kiln().layout.panel, scale).save(path)
    assert np.array_equal(read(path, kiln().layout.panel).codes, right())


def test_colours_widened_by_shifts_or_by_repeated_bits(tmp_path: Path) -> None:
    """The two usual ways in which devices make 8 bits of 5 and 6 (common practice)."""
    codes = right()
    red, green, blue = codes >> 11, codes >> 5 & 63, codes & 31
    shifted = np.stack([red << 3, green << 2, blue << 3], axis=-1).astype(np.uint8)
    repeated = np.stack([red << 3 | red >> 2, green << 2 | green >> 4, blue << 3 | blue >> 2], axis=-1)
    for pixels in (shifted, repeated.astype(np.uint8)):
        Image.fromarray(pixels).save(tmp_path / "frame.png")
        assert np.array_equal(read(tmp_path / "frame.png", kiln().layout.panel).codes, codes)


def test_every_code_of_16_bit_colour_survives(tmp_path: Path) -> None:
    panel = Panel(256, 256)
    codes = np.arange(65536, dtype=np.uint16).reshape(256, 256)
    image(Frame(256, 256, codes), panel).save(tmp_path / "all.png")
    assert np.array_equal(read(tmp_path / "all.png", panel).codes, codes)
    codes.astype("<u2").tofile(tmp_path / "all.raw")
    assert np.array_equal(read(tmp_path / "all.raw", panel, "rgb565-low").codes, codes)
    codes.astype(">u2").tofile(tmp_path / "all.565")
    assert np.array_equal(read(tmp_path / "all.565", panel).codes, codes)


def test_one_bit_pictures(tmp_path: Path) -> None:
    codes = tank_codes()
    grey = Image.fromarray((codes * 255).astype(np.uint8))
    grey.save(tmp_path / "frame.pgm")
    grey.convert("1").save(tmp_path / "frame.pbm")
    Image.fromarray((codes * 65535).astype(np.uint16)).save(tmp_path / "deep.png")
    for name in ("frame.pgm", "frame.pbm", "deep.png"):
        assert np.array_equal(read(tmp_path / name, mono().layout.panel).codes, codes), name


@pytest.mark.parametrize("form", ["rows", "rows-low", "pages", "pages-high", "bytes"])
def test_one_bit_bytes(tmp_path: Path, form: str) -> None:
    (tmp_path / "frame.bin").write_bytes(packed(tank_codes(), form))
    assert np.array_equal(read(tmp_path / "frame.bin", mono().layout.panel, form).codes, tank_codes())


@pytest.mark.parametrize(("colour_format", "bits"), [("grey4", 2), ("grey16", 4)])
@pytest.mark.parametrize("form", ["rows", "rows-low", "bytes"])
def test_greys_and_rows_that_end_inside_a_byte(
    tmp_path: Path, colour_format: str, bits: int, form: str
) -> None:
    panel = Panel(13, 7, colour_format)  # type: ignore[arg-type]
    codes = np.random.default_rng(5).integers(0, 1 << bits, (7, 13)).astype(np.uint16)
    (tmp_path / "frame.bin").write_bytes(packed(codes, form, bits))
    assert np.array_equal(read(tmp_path / "frame.bin", panel, form).codes, codes)


@pytest.mark.parametrize(("said", "was"), [("rows", "pages"), ("pages", "rows-low"), ("rows", "rows-low")])
def test_bytes_in_another_order_than_said_are_told(tmp_path: Path, said: str, was: str) -> None:
    material = mono()
    found = moment(material, "half-full")
    (tmp_path / "frame.bin").write_bytes(packed(tank_codes(), was))
    capture = read(tmp_path / "frame.bin", material.layout.panel, said)
    outcome = compare(material, material.screen(found.screen), found.values, capture)
    assert outcome.causes[0].words.startswith(f"the file is not `{said}` but `{was}`")
    assert outcome.left == 0


@pytest.mark.parametrize(("by", "words"), [(1, "one byte too many"), (-1, "one byte is missing")])
def test_a_byte_too_many_or_missing(tmp_path: Path, by: int, words: str) -> None:
    data = right().astype(">u2").tobytes()
    (tmp_path / "frame.565").write_bytes(data[-by:] + data[:-by])
    capture = read(tmp_path / "frame.565", kiln().layout.panel)
    outcome = compare(kiln(), kiln().screen("readings"), ramp().values, capture)
    assert words in outcome.causes[0].words
    assert outcome.left == 0


def test_a_turned_frame_as_raw_bytes(tmp_path: Path) -> None:
    np.rot90(right()).astype(">u2").tofile(tmp_path / "frame.565")
    capture = read(tmp_path / "frame.565", kiln().layout.panel)
    outcome = compare(kiln(), kiln().screen("readings"), ramp().values, capture)
    assert "270°" in outcome.causes[0].words
    assert outcome.left == 0


def cut_png() -> bytes:
    whole = BytesIO()
    Image.fromarray(np.random.default_rng(1).integers(0, 255, (135, 240, 3), np.uint8)).save(whole, "png")
    return whole.getvalue()[:5000]


@pytest.mark.parametrize(
    ("name", "data", "form", "words"),
    [
        ("a.565", b"12", None, "the file has 2 bytes, and 240 × 135 pixels as `rgb565`"),
        ("a.raw", b"12", None, "are no frame of 240 × 135 pixels"),
        ("a.raw", bytes(64800), None, "add --as rgb565 or --as rgb565-low"),
        ("a.raw", bytes(64800), "pages", "use `rgb565` or `rgb565-low`"),
        ("a.png", cut_png(), None, "is damaged or cut short"),
        ("a.ppm", b"P6 240 135 255\n123", None, "is damaged or cut short"),
        ("a.png", b"plain text", None, "this is no picture file"),
        ("a.png", b"", None, "this is no picture file"),
    ],
)
def test_a_file_that_cannot_be_a_frame(
    tmp_path: Path, name: str, data: bytes, form: str | None, words: str
) -> None:
    (tmp_path / name).write_bytes(data)
    with pytest.raises(Problem, match=r".") as caught:
        read(tmp_path / name, kiln().layout.panel, form)
    assert words in caught.value.message
    assert caught.value.place == str(tmp_path / name)


def test_a_picture_of_another_size_and_no_file(tmp_path: Path) -> None:
    Image.new("RGB", (100, 100)).save(tmp_path / "small.png")
    with pytest.raises(Problem, match="the picture is 100 × 100 pixels and the panel 240 × 135"):
        read(tmp_path / "small.png", kiln().layout.panel)
    with pytest.raises(Problem, match="there is no such file"):
        read(tmp_path / "none.png", kiln().layout.panel)
    with pytest.raises(Problem, match="this is a folder"):
        read(tmp_path, kiln().layout.panel, "rgb565")
