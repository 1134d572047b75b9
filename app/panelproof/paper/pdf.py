"""The sheet as one PDF, for a printer."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from io import BytesIO
from pathlib import Path
from typing import Any
from xml.sax.saxutils import escape

from reportlab.lib.pagesizes import A4, LETTER, landscape
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.utils import ImageReader
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFError, TTFont
from reportlab.platypus import (
    BaseDocTemplate,
    CondPageBreak,
    Flowable,
    Frame,
    KeepTogether,
    PageBreak,
    PageTemplate,
    Paragraph,
    Spacer,
    Table,
    TableStyle,
)

from panelproof.glyphs.catalogue import find
from panelproof.paper.dimensions import dimensions
from panelproof.paper.facts import BYTES_HEAD, TYPE_HEAD, ScreenFacts, SheetFacts, Shot
from panelproof.paper.flowables import FAINT, INK, LINE, Counting, Dimensions, Picture, Swatch
from panelproof.picture.image import image
from panelproof.problem import Problem

PAPERS = {"a4": landscape(A4), "letter": landscape(LETTER)}
MARGIN, FOOT = 36.0, 16.0
# Panel pixels are drawn in whole dots of a printer of 600 dots an inch.
DOT = 72 / 600
SHOT_WIDTH, SHOT_GAP = 146.0, 10.0
DRAWING_WIDTH, DRAWING_HEIGHT, LETTER_HEIGHT = 690.0, 340.0, 7.5
MOST_KEPT = 16  # rows of a table that is kept on one page
ENLARGED = 4
TEXT, BOLD = "panelproof-text", "panelproof-bold"


def document(facts: SheetFacts, paper: str = "a4") -> bytes:
    """Return the PDF, `paper` a key of `PAPERS`; the same facts give the same bytes."""
    return _Maker(facts, PAPERS[paper]).made()


def _fonts() -> tuple[str, str]:
    """Register the typeface of the sheet and return its names, regular and bold; a PDF's own where it is not there."""
    try:
        for name, face in ((TEXT, "SourceSansPro"), (BOLD, "SourceSansProSemibold")):
            pdfmetrics.registerFont(TTFont(name, str(find(face, Path()))))
    except (Problem, TTFError, OSError):
        return "Helvetica", "Helvetica-Bold"
    return TEXT, BOLD


class _Maker:
    def __init__(self, facts: SheetFacts, paper: tuple[float, float]) -> None:
        self.facts, self.paper = facts, paper
        self._title = facts.title[:1].upper() + facts.title[1:]
        self.panel = facts.material.layout.panel
        self.room = paper[0] - 2 * MARGIN
        self.fonts = _fonts()
        text, bold = self.fonts
        self.style = ParagraphStyle(
            "text", fontName=text, fontSize=9, leading=11.5, textColor=INK, splitLongWords=1
        )
        faint = partial(ParagraphStyle, parent=self.style)
        self.faint = faint("faint", textColor=FAINT)
        self.strong = faint("strong", fontName=bold)
        self.head = faint("head", fontName=bold, textColor=FAINT, fontSize=8.5)
        self.title = faint("title", fontName=bold, fontSize=20, leading=25)
        self.screen = faint("screen", fontName=bold, fontSize=15, leading=19, spaceAfter=3)
        self.section = faint(
            "section", fontName=bold, fontSize=10.5, leading=13, spaceBefore=10, spaceAfter=3
        )
        self.boxed = faint(
            "boxed",
            borderWidth=1,
            borderColor=INK,
            borderPadding=6,
            spaceBefore=16,
            leftIndent=8,
            rightIndent=8,
        )

    def made(self) -> bytes:
        """Return the whole document's bytes."""
        out = BytesIO()
        document = BaseDocTemplate(
            out,
            pagesize=self.paper,
            leftMargin=MARGIN,
            rightMargin=MARGIN,
            title=self._title,
            author=self.facts.made,
            creator="Panelproof",
            invariant=1,
        )
        room = Frame(
            MARGIN, MARGIN + FOOT, self.room, self.paper[1] - 2 * MARGIN - FOOT, *([0] * 4), id="room"
        )
        document.addPageTemplates([PageTemplate("page", [room])])
        document.build(self._story(), canvasmaker=partial(Counting, foot=self._foot))
        return out.getvalue()

    def _foot(self, canvas: Any, page: int, pages: int) -> None:
        canvas.setFont(self.fonts[0], 8)
        canvas.setFillColor(FAINT)
        canvas.drawString(MARGIN, MARGIN - 4, f"{self._title}: {self.facts.made}")
        canvas.drawRightString(self.paper[0] - MARGIN, MARGIN - 4, f"{page} of {pages}")

    def _story(self) -> list[Any]:
        facts = self.facts
        story: list[Any] = [self._said(self._title, self.title)]
        story += [self._said(facts.made, self.faint), Spacer(0, 8), self._beginning()]
        if facts.types:
            story += self._under("Types", self._table(TYPE_HEAD, facts.types), len(facts.types))
        if facts.bytes:
            story += self._under("Bytes", self._table(BYTES_HEAD, facts.bytes))
        if facts.findings:
            rows = [
                (one.level, one.rule, one.where, f"{one.message}\n{one.more}".rstrip())
                for one in facts.findings
            ]
            story += self._under(
                "Proof", self._table(("level", "rule", "where", "what"), rows), 2 * len(rows)
            )
        else:
            story += self._under(
                "Proof", self._said("Nothing is open: no fault, no caution, no note.", self.style)
            )
        if facts.accepted:
            rows5 = [(one.level, one.rule, one.where, one.message, one.more) for one in facts.accepted]
            head = ("level", "rule", "where", "what", "reason")
            story += self._under("Accepted, with reasons", self._table(head, rows5), 2 * len(rows5))
        for screen in facts.screens:
            story += [PageBreak(), *self._screen(screen)]
        caution = f"<b>Not a safety device.</b> {escape(facts.caution)}"
        story.append(KeepTogether([Spacer(0, 12), Paragraph(self._shown(caution), self.boxed)]))
        return story

    def _under(self, title: str, flowable: Any, rows: int = 0) -> list[Any]:
        """Return a section under its title, all on one page unless it is a table of many rows."""
        heading = self._said(title, self.section)
        if rows <= MOST_KEPT:
            return [KeepTogether([heading, flowable])]
        return [CondPageBreak(160), heading, flowable]

    def _beginning(self) -> Any:
        """Return the panel's facts beside the inks."""
        panel = self._table(
            ("the panel", ""), [(label, value) for label, value in self.facts.panel], 0.52 * self.room
        )
        inks = [(ink.name, Swatch(ink.shown), ink.shown, ink.given, ink.code) for ink in self.facts.inks]
        head = ("ink", "", "shown", "asked for", "code")
        right = self._table(head, inks, 0.44 * self.room)
        both = Table([[panel, right]], colWidths=[0.56 * self.room, 0.44 * self.room], hAlign="LEFT")
        both.setStyle(TableStyle([("VALIGN", (0, 0), (-1, -1), "TOP"), *_tight()]))
        return both if len(inks) <= 20 else KeepTogether([panel, Spacer(0, 8), right])

    def _screen(self, screen: ScreenFacts) -> list[Any]:
        facts = ", ".join(f"{label}: {value}" for label, value in screen.facts)
        story = [
            self._said(screen.name[:1].upper() + screen.name[1:], self.screen),
            self._said(facts, self.faint),
            self._said(f"Dimensions in pixels ({screen.pictured.title})", self.section),
            self._drawing(screen),
            self._said(
                "Above and left: anchors or left edges, baselines or upper edges. Below and right: the first column and"
                " row after a box. Dashed: what a part may paint or repaint. Crosses: anchors on the baseline.",
                self.faint,
            ),
        ]
        if screen.rows:
            head = (
                "no.",
                "part",
                "kind",
                "place",
                "size or alignment",
                "type",
                "ink",
                "padding box x, y, size",
                "clearing",
            )
            rows = [
                (
                    str(row.number),
                    row.name,
                    row.kind,
                    row.place,
                    row.size,
                    row.type,
                    row.ink,
                    row.padding,
                    row.clearing,
                )
                for row in screen.rows
            ]
            story += self._under("Parts, in drawing order", self._table(head, rows), len(rows))
        if screen.shows:
            rows3 = [
                (
                    one.name,
                    "\n".join(one.sentences),
                    "\n".join(f"{label}: {value}" for label, value in one.extremes),
                )
                for one in screen.shows
            ]
            story += self._under(
                "What they can show", self._table(("part", "shows", "figures"), rows3), 4 * len(rows3)
            )
        return story + self._shots(screen.shots)

    def _drawing(self, screen: ScreenFacts) -> Flowable:
        width, height = self.panel.width, self.panel.height
        letter = LETTER_HEIGHT
        scale = _dots(min((DRAWING_WIDTH - 12 * letter) / width, DRAWING_HEIGHT / height, 6.0))
        made = dimensions(screen.marks, (width, height), scale, letter)
        return Dimensions(made, self._stored(screen.pictured), (width * scale, height * scale), self.fonts)

    def _stored(self, shot: Shot) -> ImageReader:
        return ImageReader(image(shot.frame, self.panel, ENLARGED))

    def _shots(self, shots: Sequence[Shot]) -> list[Any]:
        pixel = _dots(min(SHOT_WIDTH / self.panel.width, 3.0))
        width, height = self.panel.width * pixel, self.panel.height * pixel
        cell = max(width, 92.0) + SHOT_GAP
        across = max(1, int((self.room + SHOT_GAP) // cell))
        story: list[Any] = []
        for first in range(0, len(shots), across):
            row = shots[first : first + across]
            captions = [self._said(shot.title, self.faint if shot.automatic else self.style) for shot in row]
            pictures = [Picture(self._stored(shot), width, height) for shot in row]
            table = Table([captions, pictures], colWidths=[cell] * len(row), hAlign="LEFT")
            table.setStyle(
                TableStyle(
                    [
                        ("VALIGN", (0, 0), (-1, 0), "BOTTOM"),
                        ("BOTTOMPADDING", (0, 0), (-1, 0), 2),
                        *_tight(-1),
                    ]
                )
            )
            piece: list[Any] = [table, Spacer(0, 8)]
            if not first:
                piece.insert(0, self._said("Moments", self.section))
            story.append(KeepTogether(piece))
        return story

    # -- words and tables ------------------------------------------------------------------------------------------

    def _shown(self, text: str) -> str:
        """Return a text in which characters that the typeface lacks are written out."""
        if self.fonts[0] != TEXT:
            return "".join(char if ord(char) < 256 else f"[U+{ord(char):04X}]" for char in text)
        known = pdfmetrics.getFont(TEXT).face.charToGlyph
        return "".join(
            char if char == "\n" or ord(char) in known else f"[U+{ord(char):04X}]" for char in text
        )

    def _said(self, text: str, style: ParagraphStyle) -> Paragraph:
        return Paragraph(escape(self._shown(text)).replace("\n", "<br/>"), style)

    def _table(self, head: Sequence[str], rows: Sequence[Sequence[Any]], room: float | None = None) -> Table:
        """Return a table whose head is repeated on each page; columns as wide as their texts, as far as there is room."""
        widths = self._widths([head, *rows], self.room if room is None else room)
        body = [[self._cell(cell) for cell in row] for row in rows]
        table = Table(
            [[self._said(cell, self.head) for cell in head], *body],
            colWidths=widths,
            repeatRows=1,
            hAlign="LEFT",
        )
        table.setStyle(
            TableStyle(
                [
                    ("VALIGN", (0, 0), (-1, -1), "TOP"),
                    ("LEFTPADDING", (0, 0), (-1, -1), 0),
                    ("RIGHTPADDING", (0, 0), (-1, -1), 10),
                    ("TOPPADDING", (0, 0), (-1, -1), 1.5),
                    ("BOTTOMPADDING", (0, 0), (-1, -1), 2.5),
                    ("LINEBELOW", (0, 0), (-1, 0), 0.8, INK),
                    ("LINEBELOW", (0, 1), (-1, -1), 0.4, LINE),
                ]
            )
        )
        return table

    def _cell(self, cell: Any) -> Any:
        return self._said(cell, self.style) if isinstance(cell, str) else cell

    def _widths(self, rows: Sequence[Sequence[Any]], room: float) -> list[float]:
        """Return the columns' widths: what the longest lines need, the longest columns giving way first."""

        def width(text: str) -> float:
            return float(pdfmetrics.stringWidth(self._shown(text), self.fonts[1], self.style.fontSize)) + 12

        wanted, least = [], []
        for column in zip(*rows, strict=True):
            texts = [cell for cell in column if isinstance(cell, str)]
            lines = [line for text in texts for line in text.split("\n")]
            words = [word for line in lines for word in line.split(" ")]
            wanted.append(max(map(width, lines), default=30.0) if lines and any(lines) else 30.0)
            least.append(min(max(map(width, words), default=30.0), room / 4))
        while sum(wanted) > room:
            loose = [n for n in range(len(wanted)) if wanted[n] > least[n] + 0.5]
            if not loose:
                return [one * room / sum(wanted) for one in wanted]
            widest = max(loose, key=lambda n: wanted[n])
            wanted[widest] = max(least[widest], wanted[widest] - max(1.0, min(sum(wanted) - room, 8.0)))
        return wanted


def _dots(points: float) -> float:
    """Return the greatest whole number of dots that goes into a length, in points."""
    return max(1, int(points / DOT)) * DOT


def _tight(first: int = 0) -> list[tuple[Any, ...]]:
    return [
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("RIGHTPADDING", (0, 0), (-1, -1), 0),
        ("TOPPADDING", (0, first), (-1, -1), 0),
        ("BOTTOMPADDING", (0, first), (-1, -1), 0),
    ]
