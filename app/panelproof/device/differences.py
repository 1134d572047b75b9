"""A picture of what differs: the frame as it should be, as captured, and the wrong pixels marked."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw

from panelproof.device.capture import seen
from panelproof.device.outcome import Outcome
from panelproof.device.telling import part_words
from panelproof.layout.colour import Rgb
from panelproof.layout.panel import Panel
from panelproof.picture import legend
from panelproof.picture.image import BEZEL, enlarged, hidden
from panelproof.picture.lettering import FAINT, PAGE, TEXT, line_height, lines, width, write

MARGIN, GAP, AIR, TITLE = 20, 18, 6, 15
GOOD_WIDTH = 480
LEAST_WIDTH = 420
WRONG = (255, 0, 200)

Pixels = NDArray[np.uint8]


def good_scale(panel: Panel) -> int:
    """Return the greatest scale, to 8, at which a picture is at most some 480 pixels wide."""
    return max(1, min(8, GOOD_WIDTH // panel.width))


def differences(outcome: Outcome, panel: Panel, scale: int) -> Image.Image:
    """Return the three pictures side by side (one under another where wide), each part that differs numbered.

    The third shows the frame dimmed, wrong pixels in magenta, and a ring around each wrong part; it is the frame with
    the whole picture's causes undone where there are such. Raises ValueError where the scale is not 1 to 32.
    """
    causes = any(cause.explains for cause in outcome.causes)
    should, captured = seen(outcome.expected, panel.colours), seen(outcome.captured, panel.colours)
    straight = seen(outcome.codes, panel.colours)
    wrong = (outcome.codes != outcome.expected) & ~hidden(panel)
    marked = (straight // 3 + 60).astype(np.uint8)
    marked[wrong] = WRONG
    pieces = [("as it should be", _shaped(should, panel)), ("as captured", _shaped(captured, panel))]
    if causes:
        pieces.append(("as captured, the whole picture's causes undone", _shaped(straight, panel)))
    pieces.append(("what differs" + (" then" if causes else ""), _shaped(marked, panel)))
    large = [(title, Image.fromarray(enlarged(piece, scale))) for title, piece in pieces]
    pen = ImageDraw.Draw(large[-1][1])
    words: list[tuple[int, Rgb, str]] = []
    told = [part for part in outcome.parts if part.area and (part.causes or not causes) and not part.same]
    for number, part in enumerate(told, 1):
        assert part.area is not None
        x, y, wide, high = (edge * scale for edge in part.area)
        legend.ring(pen, (x, y, x + wide - 1, y + high - 1), legend.AMBER)
        plate = legend.tag_size(number)
        place = (
            min(max(x + wide + 2, 0), large[-1][1].width - plate[0]),
            min(max(y - plate[1] // 2, 0), large[-1][1].height - plate[1]),
        )
        legend.tag(pen, place, number, legend.AMBER)
        words.append((number, legend.AMBER, part_words(part)))
    whole = page(large, [cause.words for cause in outcome.causes])
    return legend.beneath(whole, [], words, max(whole.width, LEAST_WIDTH))


def _shaped(piece: Pixels, panel: Panel) -> Pixels:
    if panel.shape != "rectangular" and piece.shape[:2] == (panel.height, panel.width):
        piece = piece.copy()
        piece[hidden(panel)] = BEZEL
    return piece


def page(pieces: list[tuple[str, Image.Image]], causes: list[str]) -> Image.Image:
    """Return the pictures with their titles, side by side where they are not wide."""
    high = line_height(TITLE)
    cell = max(max(picture.width, width(title, TITLE)) for title, picture in pieces)
    across = 2 if 2 * cell + GAP <= 1300 else 1
    room = across * (cell + GAP) - GAP
    told = [line for cause in causes for line in lines(f"Whole picture: {cause}", TITLE, room)]
    rows = [pieces[first : first + across] for first in range(0, len(pieces), across)]
    heights = [max(picture.height for _, picture in row) + high + AIR for row in rows]
    top = MARGIN + len(told) * high + (GAP if told else 0)
    page = Image.new("RGB", (room + 2 * MARGIN, top + sum(heights) + GAP * (len(rows) - 1) + MARGIN), PAGE)
    pen = ImageDraw.Draw(page)
    for number, line in enumerate(told):
        write(pen, (MARGIN, MARGIN + number * high), line, TITLE, TEXT)
    y = top
    for row, height in zip(rows, heights, strict=True):
        for column, (title, picture) in enumerate(row):
            x = MARGIN + column * (cell + GAP)
            write(pen, (x, y), title, TITLE, TEXT)
            left, upper = x, y + high + AIR
            pen.rectangle((left - 1, upper - 1, left + picture.width, upper + picture.height), outline=FAINT)
            page.paste(picture, (left, upper))
        y += height + GAP
    return page
