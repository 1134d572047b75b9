"""Pictures in a panel's colours: against Pillow's own error diffusion, slow drawing, and what mixtures must average."""

from __future__ import annotations

import io
import random
from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from panelproof.dithering import GREATEST_SIDE, Raster, bayer, dithered, raster
from panelproof.layout.colour import Colours, Rgb, quantise, shown
from panelproof.layout.parts import Dither
from panelproof.problem import Problem

MONO, GREY4, GREY16, TRUE = Colours("mono"), Colours("grey4"), Colours("grey16"), Colours("rgb565")
PAPER = Colours("indexed", ((255, 255, 255), (20, 20, 20), (190, 20, 30)))
MANY = Colours(
    "indexed", tuple((r, g, b) for r in (0, 128, 255) for g in (0, 128, 255) for b in (0, 128, 255))
)
EVERY = [MONO, GREY4, GREY16, TRUE, PAPER, MANY]
DITHERS: list[Dither] = ["none", "ordered", "diffused"]


def rgba(picture: Image.Image) -> bytes:
    return picture.convert("RGBA").tobytes()


def slope(width: int = 64, height: int = 48) -> Image.Image:
    """Return a grey slope from black to white, the same in each row."""
    row = np.linspace(0, 255, width).round().astype(np.uint8)
    return Image.fromarray(np.repeat(row[None, :], height, axis=0)).convert("RGB")


def scene(width: int = 48, height: int = 40) -> Image.Image:
    y, x = np.mgrid[0:height, 0:width]
    red = 127 + 120 * np.sin(x / 7.0)
    green = 255.0 * y / height
    blue = 127 + 100 * np.cos((x + y) / 11.0)
    return Image.fromarray(np.stack([red, green, blue], axis=2).round().astype(np.uint8))


def codes(made: Raster) -> np.ndarray:
    return np.frombuffer(made.codes, dtype="<u2").reshape(made.height, made.width)


def seen(made: Raster, colours: Colours) -> np.ndarray:
    return np.array([[shown(int(code), colours) for code in row] for row in codes(made)], dtype=float)


@pytest.mark.parametrize("colours", EVERY, ids=lambda colours: f"{colours.format}-{len(colours.palette)}")
def test_none_takes_the_nearest_of_each(colours: Colours) -> None:
    picture = scene()
    made = dithered(*picture.size, rgba(picture), "none", colours)
    for y in range(made.height):
        for x in range(made.width):
            pixel = picture.getpixel((x, y))
            assert isinstance(pixel, tuple)
            assert made.code(x, y) == quantise((pixel[0], pixel[1], pixel[2]), colours)


@pytest.mark.parametrize("colours", EVERY, ids=lambda colours: f"{colours.format}-{len(colours.palette)}")
@pytest.mark.parametrize("dither", DITHERS)
def test_colours_of_the_panel_stay_as_they_are(colours: Colours, dither: Dither) -> None:
    rng = random.Random(7)
    wanted = [rng.randrange(colours.count) for _ in range(24 * 10)]
    pixels = b"".join(bytes((*shown(code, colours), 255)) for code in wanted)
    made = dithered(24, 10, pixels, dither, colours)
    assert [shown(int(code), colours) for code in codes(made).reshape(-1)] == [
        shown(code, colours) for code in wanted
    ]


def test_the_matrix_is_bayers() -> None:
    """The 4 × 4 corner's order, as published (B. E. Bayer 1973; here from memory), spread by four."""
    assert sorted(value for row in bayer() for value in row) == list(range(64))
    assert [[value // 4 for value in row[:4]] for row in bayer()[:4]] == [
        [0, 8, 2, 10],
        [12, 4, 14, 6],
        [3, 11, 1, 9],
        [15, 7, 13, 5],
    ]


@pytest.mark.parametrize("grey", range(0, 256, 5))
def test_ordered_shows_a_grey_by_its_share_of_64(grey: int) -> None:
    """On one bit the tile of 8 × 8 holds as many lit pixels as the grey's share, to half a pixel."""
    made = dithered(8, 8, bytes((grey, grey, grey, 255)) * 64, "ordered", MONO)
    assert abs(int(codes(made).sum()) - 64 * grey / 255) <= 0.5 + 1e-9


@pytest.mark.parametrize("dither", ["ordered", "diffused"])
@pytest.mark.parametrize("colours", [MONO, GREY4, GREY16, TRUE, MANY], ids=lambda colours: colours.format)
def test_areas_average_what_the_picture_has(dither: Dither, colours: Colours) -> None:
    """A slope in 16 × 16 blocks: as light as the picture's own, within 8 of 255; without dither it is not."""
    picture = slope(128, 64)
    wanted = np.asarray(picture, dtype=float).reshape(4, 16, 8, 16, 3).mean(axis=(1, 3))

    def off(how: Dither) -> float:
        made = seen(dithered(*picture.size, rgba(picture), how, colours), colours)
        blocks = made.reshape(4, 16, 8, 16, 3).mean(axis=(1, 3))
        return float(np.abs(blocks - wanted).max())

    assert off(dither) < 8
    if colours not in (TRUE, GREY16):
        assert off("none") > 15


def test_ordered_mixes_colours_of_a_palette() -> None:
    """Pink on paper of three colours: red and white by turns, half and half."""
    half = tuple((a + b) // 2 for a, b in zip(PAPER.palette[0], PAPER.palette[2], strict=True))
    made = dithered(8, 8, bytes((*half, 255)) * 64, "ordered", PAPER)
    assert sorted(set(codes(made).reshape(-1).tolist())) == [0, 2]
    assert abs(int((codes(made) == 2).sum()) - 32) <= 1


def test_diffused_is_as_pillows_own() -> None:
    """Pillow's convert("1") diffuses by the same weights; its arithmetic differs, so areas are compared."""
    picture = scene(96, 80)
    theirs = np.asarray(picture.convert("L").convert("1"), dtype=float)
    ours = codes(dithered(*picture.size, rgba(picture), "diffused", MONO)).astype(float)
    ours_blocks = ours.reshape(10, 8, 12, 8).mean(axis=(1, 3))
    theirs_blocks = theirs.reshape(10, 8, 12, 8).mean(axis=(1, 3))
    assert np.abs(ours_blocks - theirs_blocks).max() <= 3 / 64


def test_diffused_on_a_palette_is_as_pillows_own() -> None:
    picture = scene(96, 80)
    carrier = Image.new("P", (1, 1))
    carrier.putpalette([value for rgb in PAPER.palette for value in rgb])
    theirs = picture.quantize(palette=carrier, dither=Image.Dither.FLOYDSTEINBERG)
    made = dithered(*picture.size, rgba(picture), "diffused", PAPER)
    theirs_seen = np.asarray(theirs.convert("RGB"), dtype=float)
    blocks = [one.reshape(10, 8, 12, 8, 3).mean(axis=(1, 3)) for one in (seen(made, PAPER), theirs_seen)]
    assert np.abs(blocks[0] - blocks[1]).mean() < 8


def slow_diffused(pixels: list[list[Rgb]], opaque: list[list[bool]], colours: Colours) -> list[list[int]]:
    """Diffuse errors with fractions instead of whole numbers, each channel by itself; rgb565 only."""
    height, width = len(pixels), len(pixels[0])
    values = [[[Fraction(value) for value in rgb] for rgb in row] for row in pixels]
    found = [[0] * width for _ in range(height)]
    for y in range(height):
        for x in range(width):
            if not opaque[y][x]:
                continue
            wanted = [min(max(value, Fraction(0)), Fraction(255)) for value in values[y][x]]
            steps = [
                (value * count / 255 + Fraction(1, 2)) // 1
                for value, count in zip(wanted, (31, 63, 31), strict=True)
            ]
            found[y][x] = int(steps[0]) << 11 | int(steps[1]) << 5 | int(steps[2])
            got = shown(found[y][x], colours)
            for dx, dy, weight in ((1, 0, 7), (-1, 1, 3), (0, 1, 5), (1, 1, 1)):
                if 0 <= x + dx < width and y + dy < height:
                    for channel in range(3):
                        error = wanted[channel] - got[channel]
                        values[y + dy][x + dx][channel] += error * weight / 16
    return found


@settings(max_examples=15, deadline=None)
@given(st.data())
def test_diffused_is_as_the_slow_one(data: st.DataObject) -> None:
    """Rounding to thousandths may tip a pixel that lies just between two steps; hardly any does."""
    width, height = data.draw(st.integers(1, 9)), data.draw(st.integers(1, 7))
    rng = random.Random(data.draw(st.integers(0, 10**6)))
    pixels = [
        [(rng.randrange(256), rng.randrange(256), rng.randrange(256)) for _ in range(width)]
        for _ in range(height)
    ]
    opaque = [[rng.random() < 0.8 for _ in range(width)] for _ in range(height)]
    flat = b"".join(
        bytes((*rgb, 255 if on else 0))
        for row, clear in zip(pixels, opaque, strict=True)
        for rgb, on in zip(row, clear, strict=True)
    )
    made = dithered(width, height, flat, "diffused", TRUE)
    slow = slow_diffused(pixels, opaque, TRUE)
    for y in range(height):
        for x in range(width):
            assert ((x, y) in made.mask) == opaque[y][x]
            ours, theirs = shown(made.code(x, y), TRUE), shown(slow[y][x], TRUE)
            assert all(abs(a - b) <= 9 for a, b in zip(ours, theirs, strict=True))
    same = sum(made.code(x, y) == slow[y][x] for y in range(height) for x in range(width))
    assert same >= 0.9 * width * height


def test_half_opaque_pixels_are_painted() -> None:
    pixels = b"".join(bytes((255, 255, 255, alpha)) for alpha in (0, 127, 128, 255))
    for dither in DITHERS:
        made = dithered(4, 1, pixels, dither, MONO)
        assert list(made.mask.pixels()) == [(2, 0), (3, 0)]
        assert made.used() == {1}
        assert made.other_than(1).count() == 0 and made.other_than(0).count() == 2


def test_what_is_clear_neither_takes_nor_passes_on() -> None:
    """A clear wall one pixel wide: what lies behind it is as if it stood alone."""
    grey = bytes((90, 90, 90, 255))
    wall = bytes((255, 255, 255, 0))
    both = dithered(9, 1, grey * 4 + wall + grey * 4, "diffused", MONO)
    alone = dithered(4, 1, grey * 4, "diffused", MONO)
    assert codes(both)[0, 5:].tolist() == codes(alone)[0].tolist()


def written(path: Path, picture: Image.Image, **more: object) -> Path:
    picture.save(path, format="PNG", **more)
    return path


def test_files_of_every_mode(tmp_path: Path) -> None:
    """One grey slope as each kind of PNG gives the same pixels."""
    grey = slope(16, 4).convert("L")
    wanted = raster(written(tmp_path / "l.png", grey), "none", GREY16).codes
    for mode in ("RGB", "RGBA", "LA"):
        assert raster(written(tmp_path / f"{mode}.png", grey.convert(mode)), "none", GREY16).codes == wanted
    wide = Image.fromarray(np.asarray(grey, dtype=np.uint16) * 257)
    assert raster(written(tmp_path / "wide.png", wide), "none", GREY16).codes == wanted
    indexed = grey.convert("P", palette=Image.Palette.ADAPTIVE, colors=256)
    assert raster(written(tmp_path / "p.png", indexed), "none", GREY16).codes == wanted


def test_one_clear_grey_of_a_16_bit_file(tmp_path: Path) -> None:
    wide = Image.fromarray(np.array([[0, 300, 301, 65535]], dtype=np.uint16))
    made = raster(written(tmp_path / "clear.png", wide, transparency=300), "none", MONO)
    assert list(made.mask.pixels()) == [(0, 0), (2, 0), (3, 0)]


@pytest.mark.parametrize(
    ("data", "message"),
    [
        (None, "the picture `x.png` cannot be read (no such file or directory)"),
        (b"", "the picture `x.png` is not a PNG file"),
        (b"GIF89a", "the picture `x.png` is not a PNG file"),
    ],
)
def test_files_that_are_no_picture(tmp_path: Path, data: bytes | None, message: str) -> None:
    path = tmp_path / "x.png"
    if data is not None:
        path.write_bytes(data)
    with pytest.raises(Problem) as caught:
        raster(path, "none", TRUE)
    assert caught.value.message == message


def test_broken_and_too_large_files(tmp_path: Path) -> None:
    large = written(tmp_path / "large.png", Image.new("1", (GREATEST_SIDE + 1, 1)))
    with pytest.raises(Problem, match="a picture may have 2048 a side at most"):
        raster(large, "none", TRUE)
    held = io.BytesIO()
    scene().save(held, format="PNG")
    cut = tmp_path / "cut.png"
    cut.write_bytes(held.getvalue()[: len(held.getvalue()) // 2])
    with pytest.raises(Problem, match=r"the picture `cut\.png` cannot be read"):
        raster(cut, "none", TRUE)
    with pytest.raises(Problem, match="cannot be read"):
        raster(tmp_path, "none", TRUE)


def test_a_changed_file_is_read_again(tmp_path: Path) -> None:
    path = written(tmp_path / "a.png", Image.new("RGB", (2, 2), "white"))
    before = raster(path, "none", MONO)
    assert raster(path, "none", MONO) is before
    written(path, Image.new("RGB", (3, 2), "black"))
    assert raster(path, "none", MONO).width == 3
