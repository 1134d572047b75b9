"""All moments of all screens on one page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from PIL import Image, ImageDraw

from panelproof.layout.colour import Rgb
from panelproof.material import Material
from panelproof.picture.frame import screen_frame
from panelproof.picture.image import image
from panelproof.picture.lettering import FAINT, PAGE, TEXT, line_height, lines, width, write
from panelproof.picture.moments import ShownMoment, every_moment

MARGIN, GAP, AIR = 28, 22, 5
HEAD, SCREEN, TITLE = 24, 18, 14
LEAST_CELL = 132
LEAST_WIDTH = 300
GOOD_WIDTH = 1240
GOOD_CELL = 240


@dataclass(slots=True)
class _Page:
    """Where everything goes, before there is a picture to put it on."""

    room: int
    y: int = MARGIN
    words: list[tuple[int, int, str, int, Rgb]] = field(default_factory=list)
    pictures: list[tuple[int, int, ShownMoment]] = field(default_factory=list)

    def heading(self, text: str, size: int, colour: Rgb) -> None:
        for line in lines(text, size, self.room):
            self.words.append((MARGIN, self.y, line, size, colour))
            self.y += line_height(size)

    def row(self, shown: Sequence[ShownMoment], cell: int, height: int) -> None:
        """Place pictures side by side, the last lines of their titles level."""
        captions = [lines(one.title, TITLE, cell) for one in shown]
        most, high = max(map(len, captions)), line_height(TITLE)
        for column, (one, caption) in enumerate(zip(shown, captions, strict=True)):
            left = MARGIN + column * (cell + GAP)
            for number, line in enumerate(caption, most - len(caption)):
                colour = FAINT if one.automatic else TEXT
                self.words.append((left, self.y + number * high, line, TITLE, colour))
            self.pictures.append((left, self.y + most * high + AIR, one))
        self.y += most * high + AIR + height


def _scale(panel_width: int) -> int:
    """Return the greatest scale, to 8, at which a picture is at most some 240 pixels wide."""
    return max(1, min(8, GOOD_CELL // panel_width))


def _columns(cell: int, most: int) -> int:
    """Return how many pictures go side by side: no more rows than it takes, those evenly filled."""
    room = max(1, (GOOD_WIDTH - 2 * MARGIN + GAP) // (cell + GAP))
    return max(1, -(-most // -(-most // room)))


def sheet(
    material: Material,
    scale: int | None = None,
    columns: int | None = None,
    chosen: Sequence[ShownMoment] | None = None,
) -> Image.Image:
    """Return one RGB picture of all moments (or the chosen ones), screen by screen, each with its title.

    `scale` is that of each picture, `columns` the pictures in a row; where None, both fit the panel by
    themselves. Raises Problem where a moment of the layout cannot be shown, ValueError where the scale is
    not 1 to 32.
    """
    layout, panel = material.layout, material.layout.panel
    every = every_moment(material) if chosen is None else chosen
    groups = [(screen, [one for one in every if one.screen == screen.name]) for screen in layout.screens]
    most = max((len(shown) for _, shown in groups), default=0) or 1
    scale = _scale(panel.width) if scale is None else scale
    cell = max(panel.width * scale, LEAST_CELL)
    across = min(columns or _columns(cell, most), most)
    title = layout.name.replace("-", " ")
    room = max(across * (cell + GAP) - GAP, min(width(title, HEAD), 2 * LEAST_WIDTH), LEAST_WIDTH)

    page = _Page(room)
    page.heading(title, HEAD, TEXT)
    page.heading(
        f"{panel.name + ', ' if panel.name else ''}{panel.width} × {panel.height} pixels", TITLE, FAINT
    )
    for screen, shown in groups:
        if not shown:
            continue
        page.y += GAP
        page.heading(screen.name, SCREEN, TEXT)
        for first in range(0, len(shown), across):
            page.y += GAP if first else AIR
            page.row(shown[first : first + across], cell, panel.height * scale)

    whole = Image.new("RGB", (room + 2 * MARGIN, page.y + MARGIN), PAGE)
    pen = ImageDraw.Draw(whole)
    for x, y, text, size, colour in page.words:
        write(pen, (x, y), text, size, colour)
    for x, y, one in page.pictures:
        frame = screen_frame(material, material.screen(one.screen), one.values)
        seen = image(frame, panel, scale)
        pen.rectangle((x - 1, y - 1, x + seen.width, y + seen.height), outline=FAINT)
        whole.paste(seen, (x, y))
    return whole
