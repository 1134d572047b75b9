"""What stands on the pages of a PDF beside words: pictures, drawings, swatches, and the foot of each page."""

from __future__ import annotations

from typing import Any

from reportlab.lib import colors
from reportlab.lib.utils import ImageReader
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Flowable

from panelproof.paper.dimensions import Disc, Drawing, Line, Shape
from panelproof.paper.dimensions import Frame as Outline

INK, FAINT, LINE = colors.HexColor("#1c2026"), colors.HexColor("#5c626c"), colors.HexColor("#ced2d8")


class Picture(Flowable):  # type: ignore[misc]
    """A frame, each panel pixel `pixel` points wide; stored enlarged, so that no viewer blurs it."""

    def __init__(self, picture: ImageReader, width: float, height: float) -> None:
        super().__init__()
        self.picture, self.width, self.height = picture, width, height

    def wrap(self, *_: float) -> tuple[float, float]:
        """Return the room it takes."""
        return self.width, self.height

    def draw(self) -> None:
        """Draw it with a hairline around."""
        self.canv.drawImage(self.picture, 0, 0, self.width, self.height)
        self.canv.setStrokeColor(LINE)
        self.canv.setLineWidth(0.4)
        self.canv.rect(0, 0, self.width, self.height)


class Dimensions(Flowable):  # type: ignore[misc]
    """A drawing with dimensions around a picture."""

    def __init__(
        self, drawing: Drawing, picture: ImageReader, size: tuple[float, float], fonts: tuple[str, str]
    ) -> None:
        super().__init__()
        self.drawing, self.picture, self.size, self.fonts = drawing, picture, size, fonts

    def wrap(self, *_: float) -> tuple[float, float]:
        """Return the room it takes."""
        return self.drawing.width, self.drawing.height

    def draw(self) -> None:
        """Draw the picture, then the marks in order; a PDF counts upwards."""
        made, canvas = self.drawing, self.canv
        wide, high = self.size
        canvas.drawImage(self.picture, made.x, made.height - made.y - high, wide, high)
        for mark in made.marks:
            self._mark(canvas, mark, made.height)

    def _mark(self, canvas: Any, mark: Shape, height: float) -> None:
        if isinstance(mark, Line | Outline):
            canvas.setStrokeColor(colors.HexColor(mark.colour))
            canvas.setLineWidth(mark.thick if isinstance(mark, Line) else 0.6)
            canvas.setDash([mark.dash] if isinstance(mark, Outline) and mark.dash else [])
        if isinstance(mark, Line):
            canvas.line(mark.x1, height - mark.y1, mark.x2, height - mark.y2)
        elif isinstance(mark, Outline):
            canvas.rect(mark.x, height - mark.y - mark.height, mark.width, mark.height)
        elif isinstance(mark, Disc):
            canvas.setFillColor(colors.HexColor(mark.colour))
            canvas.setStrokeColor(colors.white)
            canvas.setLineWidth(0.4)
            canvas.setDash([])
            canvas.circle(mark.x, height - mark.y, mark.radius, stroke=1, fill=1)
            canvas.setFillColor(colors.white)
            canvas.setFont(self.fonts[1], mark.radius * 1.25)
            canvas.drawCentredString(mark.x, height - mark.y - mark.radius * 0.42, mark.text)
        else:
            canvas.setFillColor(colors.HexColor(mark.colour))
            canvas.setFont(self.fonts[0], mark.size)
            canvas.saveState()
            canvas.translate(mark.x, height - mark.y)
            if mark.turned:
                canvas.rotate(90)
            draw = {
                "left": canvas.drawString,
                "centre": canvas.drawCentredString,
                "right": canvas.drawRightString,
            }
            draw[mark.align](0, 0, mark.text)
            canvas.restoreState()


class Swatch(Flowable):  # type: ignore[misc]
    """A little of a colour."""

    def __init__(self, colour: str) -> None:
        super().__init__()
        self.colour, self.width, self.height = colour, 18.0, 8.0

    def wrap(self, *_: float) -> tuple[float, float]:
        """Return the room it takes."""
        return self.width, self.height

    def draw(self) -> None:
        """Draw it with a hairline around."""
        self.canv.setFillColor(colors.HexColor(self.colour))
        self.canv.setStrokeColor(FAINT)
        self.canv.setLineWidth(0.4)
        self.canv.rect(0, 0, self.width, self.height, fill=1)


class Counting(Canvas):  # type: ignore[misc]
    """A canvas that knows at the end how many pages there are."""

    def __init__(self, *arguments: Any, foot: Any, **named: Any) -> None:
        super().__init__(*arguments, **named)
        self._foot = foot
        self._kept: list[dict[str, Any]] = []

    def showPage(self) -> None:
        """Keep the page for the end."""
        self._kept.append(dict(self.__dict__))
        self._startPage()

    def save(self) -> None:
        """Write every page with its foot."""
        for number, page in enumerate(self._kept, 1):
            self.__dict__.update(page)
            self._foot(self, number, len(self._kept))
            super().showPage()
        super().save()
