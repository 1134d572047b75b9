"""Frames and their pictures, read back from the PNG file by Pillow."""

from __future__ import annotations

import os
import subprocess
import sys
import zlib
from io import BytesIO

import numpy as np
import pytest
from PIL import Image
from tests.picture import tank

from panelproof.layout.colour import Colours, shown
from panelproof.layout.panel import Panel
from panelproof.picture.frame import Frame, new_frame, screen_frame
from panelproof.picture.image import BEZEL, image, pixels, png
from panelproof.picture.moments import moment


def half_full() -> Frame:
    material = tank.tank()
    return screen_frame(material, material.screen("readings"), moment(material, "half-full").values)


def test_a_frame_is_its_pixels() -> None:
    panel = Panel(7, 3)
    frame = new_frame(panel, 0xF81F)
    assert (
        frame.codes.shape == (3, 7) and frame.codes.dtype == np.uint16 and set(frame.codes.flat) == {0xF81F}
    )
    other = frame.copy()
    assert other == frame
    other.codes[2, 6] = 0
    assert other != frame and frame.codes[2, 6] == 0xF81F
    assert frame != new_frame(Panel(3, 7), 0xF81F) and frame != "frame"
    with pytest.raises(ValueError, match="codes must be uint16"):
        Frame(3, 7, frame.codes)
    with pytest.raises(TypeError, match="unhashable"):
        hash(frame)


@pytest.mark.parametrize("scale", [1, 3])
def test_the_file_shows_what_the_panel_shows(scale: int) -> None:
    frame, panel = half_full(), tank.tank().layout.panel
    with Image.open(BytesIO(png(image(frame, panel, scale)))) as read:
        assert (read.format, read.mode, read.size) == ("PNG", "RGB", (120 * scale, 64 * scale))
        seen = np.asarray(read)
    for y in range(64 * scale):
        for x in range(120 * scale):
            assert tuple(seen[y, x]) == shown(int(frame.codes[y // scale, x // scale]), Colours("rgb565")), (
                x,
                y,
            )


def test_every_code_has_its_colour() -> None:
    """rgb565 widened to 8 bits: the nearest of 255 * c / 31 and 255 * c / 63."""
    codes = np.arange(65536, dtype=np.uint16).reshape(256, 256)
    seen = pixels(Frame(256, 256, codes), Panel(256, 256)).reshape(-1, 3)
    wide = codes.reshape(-1).astype(np.float64)
    channels = [(wide // 2048, 31), (wide // 32 % 64, 63), (wide % 32, 31)]
    for number, (channel, most) in enumerate(channels):
        assert np.array_equal(seen[:, number], np.floor(channel * 255 / most + 0.5))
    lit = pixels(Frame(2, 1, np.array([[0, 1]], dtype=np.uint16)), Panel(2, 1, "mono"))
    assert lit.tolist() == [[[0, 0, 0], [255, 255, 255]]]


def test_outside_a_round_panel_is_bezel() -> None:
    panel = Panel(41, 41, "mono", "round")
    seen = np.asarray(image(new_frame(panel, 1), panel, 2))
    for y in range(82):
        for x in range(82):
            # A pixel is seen where its centre lies within the circle.
            inside = (2 * (x // 2) + 1 - 41) ** 2 + (2 * (y // 2) + 1 - 41) ** 2 <= 41**2
            assert tuple(seen[y, x]) == ((255, 255, 255) if inside else BEZEL), (x, y)


def test_the_picture_of_a_frame_leaves_the_frame_alone() -> None:
    panel = Panel(40, 40, "mono", "round")
    frame = new_frame(panel, 1)
    seen = pixels(frame, panel)
    seen[:] = 7
    assert frame == new_frame(panel, 1) and pixels(frame, panel)[20, 20].tolist() == [255, 255, 255]


def test_only_whole_sensible_scales() -> None:
    panel = Panel(4, 4)
    for scale in (0, -1, 33):
        with pytest.raises(ValueError, match="scale must be 1 to 32"):
            image(new_frame(panel), panel, scale)


def chunks(file: bytes) -> list[bytes]:
    assert file[:8] == b"\x89PNG\r\n\x1a\n"
    at, names = 8, []
    while at < len(file):
        length = int.from_bytes(file[at : at + 4], "big")
        body = file[at + 4 : at + 8 + length]
        assert zlib.crc32(body) == int.from_bytes(file[at + 8 + length : at + 12 + length], "big")
        names.append(body[:4])
        at += 12 + length
    return names


def test_a_file_holds_nothing_but_the_picture() -> None:
    """Chunks as the PNG specification (ISO/IEC 15948) lays them out: no time, text or density among them."""
    panel = tank.tank().layout.panel
    picture = image(half_full(), panel, 2)
    picture.info.update(dpi=(300, 300), icc_profile=b"made up", transparency=(0, 0, 0))
    assert set(chunks(png(picture))) == {b"IHDR", b"IDAT", b"IEND"}


def test_the_same_picture_gives_the_same_bytes_in_another_process() -> None:
    program = (
        "import sys; from tests.picture.test_image import half_full, image, png, tank;"
        "sys.stdout.buffer.write(png(image(half_full(), tank.tank().layout.panel, 2)))"
    )
    paths = os.pathsep.join(path for path in sys.path if path)
    around = {**os.environ, "PYTHONPATH": paths, "PYTHONHASHSEED": "7"}
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, check=True, env=around)
    assert done.stdout == png(image(half_full(), tank.tank().layout.panel, 2))
