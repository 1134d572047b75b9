"""The marks themselves, each one kind of line or pattern, and the legend that says them in words."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw

from panelproof.layout.colour import Rgb
from panelproof.picture.image import Pixels
from panelproof.picture.lettering import PAGE, TEXT, line_height, lines, width, write

BLUE: Rgb = (56, 150, 255)
AMBER: Rgb = (240, 165, 0)
RED: Rgb = (214, 24, 60)
ORANGE: Rgb = (255, 128, 20)
GREEN: Rgb = (0, 190, 110)
DARK: Rgb = (20, 20, 24)
LIGHT: Rgb = (255, 255, 255)

SIZE = 14
MARGIN = 14
SWATCH = (22, 14)
INDENT = 32
GAP = 24
LEADING = 5
HAIRLINE: Rgb = (206, 210, 216)

Box = tuple[int, int, int, int]
Chosen = NDArray[np.bool_]
Entry = tuple[Callable[[Image.Image, Box], None], str]


def tint(canvas: Pixels, chosen: Chosen, scale: int) -> None:
    """Blend the chosen pixels with blue, as tiles: one for each `scale` × `scale`, gaps between them."""
    grid = chosen.copy()
    if scale > 2:
        grid[::scale] = False
        grid[:, ::scale] = False
    canvas[grid] = (canvas[grid].astype(np.uint16) + 2 * np.array(BLUE, dtype=np.uint16)) // 3


def hatch(canvas: Pixels, chosen: Chosen, chequered: bool, scale: int) -> None:
    """Paint the chosen pixels with amber and dark stripes, or with red and light chequers."""
    rows, columns = np.nonzero(chosen)
    if chequered:
        square = max(scale // 2, 2)
        first = (rows // square + columns // square) % 2 == 0
    else:
        stripe = max(scale // 2, 2)
        first = (rows + columns) // stripe % 2 == 0
    colours = np.array([LIGHT, RED] if chequered else [DARK, AMBER], dtype=np.uint8)
    canvas[rows, columns] = colours[first.astype(np.intp)]


def dashes(pen: ImageDraw.ImageDraw, box: Box) -> None:
    """Outline a box (inclusive corners) with orange dashes, dark between them: it shows on every ground."""
    left, top, right, bottom = box
    for number, x in enumerate(range(left, right + 1, 4)):
        colour = ORANGE if number % 2 == 0 else DARK
        for y in (top, bottom):
            pen.line((x, y, min(x + 3, right), y), fill=colour)
    for number, y in enumerate(range(top, bottom + 1, 4)):
        colour = ORANGE if number % 2 == 0 else DARK
        for x in (left, right):
            pen.line((x, y, x, min(y + 3, bottom)), fill=colour)


def anchor(pen: ImageDraw.ImageDraw, x: int, y: int, arm: int) -> None:
    """Draw a tick along the baseline, the upper edge of pixel row y, and a wedge up to the anchor."""
    pen.line((x - arm - 1, y, x + arm + 1, y), fill=DARK, width=3)
    pen.polygon([(x, y), (x - arm // 2 - 2, y + arm), (x + arm // 2 + 2, y + arm)], fill=DARK)
    pen.line((x - arm, y, x + arm, y), fill=GREEN)
    pen.polygon([(x, y + 1), (x - arm // 2, y + arm - 1), (x + arm // 2, y + arm - 1)], fill=GREEN)


def ring(pen: ImageDraw.ImageDraw, box: Box, colour: Rgb) -> None:
    """Draw a ring around a box (inclusive corners), a little off it."""
    left, top, right, bottom = box[0] - 4, box[1] - 4, box[2] + 4, box[3] + 4
    pen.rounded_rectangle((left - 1, top - 1, right + 1, bottom + 1), radius=5, outline=DARK, width=4)
    pen.rounded_rectangle((left, top, right, bottom), radius=4, outline=colour, width=2)


def tag(pen: ImageDraw.ImageDraw, place: tuple[int, int], number: int, colour: Rgb) -> None:
    """Write a number on a small plate, its top left corner at `place`."""
    x, y = place
    wide, high = tag_size(number)
    pen.rounded_rectangle((x, y, x + wide - 1, y + high - 1), radius=4, fill=colour, outline=DARK)
    write(pen, (x + 4, y - 1), str(number), SIZE - 1, LIGHT if colour == RED else DARK)


def tag_size(number: int) -> tuple[int, int]:
    """Return width and height of a number's plate."""
    return width(str(number), SIZE - 1) + 8, SIZE + 3


def _swatch_of(paint: Callable[[Pixels, Chosen], None], outline: Rgb) -> Callable[[Image.Image, Box], None]:
    def draw(picture: Image.Image, box: Box) -> None:
        left, top, right, bottom = box
        piece = np.full((bottom - top + 1, right - left + 1, 3), 64, dtype=np.uint8)
        paint(piece, np.ones(piece.shape[:2], dtype=np.bool_))
        picture.paste(Image.fromarray(piece), (left, top))
        ImageDraw.Draw(picture).rectangle(box, outline=outline)

    return draw


def _dashed(picture: Image.Image, box: Box) -> None:
    dashes(ImageDraw.Draw(picture), box)


def _anchored(picture: Image.Image, box: Box) -> None:
    anchor(ImageDraw.Draw(picture), (box[0] + box[2]) // 2, box[1] + 2, 9)


def key(kinds: Collection[str], *, padding: bool, texts: bool) -> list[Entry]:
    """Return the legend's entries for the kinds of marks that are there."""
    entries: list[Entry] = []
    if "footprint" in kinds:
        entries.append(
            (_swatch_of(lambda at, on: tint(at, on, 4), DARK), "tiles: some text or state can ink it")
        )
    if padding:
        entries.append((_dashed, "dashed: padding box"))
    if texts:
        entries.append((_anchored, "wedge on a line: anchor on the baseline"))
    if "stale" in kinds:
        entries.append((_swatch_of(lambda at, on: hatch(at, on, False, 6), AMBER), "striped: stays behind"))
    if "finding" in kinds:
        entries.append((_swatch_of(lambda at, on: hatch(at, on, True, 6), RED), "chequered: a finding"))
    return entries


def _columns(entries: Sequence[Entry], room: int) -> int:
    widest = max(width(text, SIZE) for _, text in entries) + INDENT + GAP
    return max(1, min(len(entries), (room + GAP) // widest))


def beneath(
    picture: Image.Image, entries: Sequence[Entry], words: Sequence[tuple[int, Rgb, str]], wide: int
) -> Image.Image:
    """Return the picture, centred in `wide` pixels, with the legend under it."""
    room, high = wide - 2 * MARGIN, line_height(SIZE)
    columns = _columns(entries, room) if entries else 1
    pitch = (room + GAP) // columns
    told = [(number, colour, lines(text, SIZE, room - INDENT)) for number, colour, text in words]
    height = -(-len(entries) // columns) * (high + LEADING)
    height += sum(len(pieces) * high + LEADING for _, _, pieces in told)
    strip = height - LEADING + 2 * MARGIN if height else 0
    whole = Image.new("RGB", (wide, picture.height + strip), PAGE)
    whole.paste(picture, ((wide - picture.width) // 2, 0))
    if not strip:
        return whole
    pen = ImageDraw.Draw(whole)
    pen.line((MARGIN, picture.height, wide - MARGIN - 1, picture.height), fill=HAIRLINE)
    y = picture.height + MARGIN
    for first in range(0, len(entries), columns):
        for column, (draw, text) in enumerate(entries[first : first + columns]):
            left, top = MARGIN + column * pitch, y + (high - SWATCH[1]) // 2
            draw(whole, (left, top, left + SWATCH[0] - 1, top + SWATCH[1] - 1))
            write(pen, (left + INDENT, y), text, SIZE, TEXT)
        y += high + LEADING
    for number, colour, pieces in told:
        tag(pen, (MARGIN, y + 1), number, colour)
        for count, line in enumerate(pieces):
            write(pen, (MARGIN + INDENT, y + count * high), line, SIZE, TEXT)
        y += len(pieces) * high + LEADING
    return whole
