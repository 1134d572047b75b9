"""One attempt at setting a starter on a panel: which faces, which wording, and the parts that come of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from panelproof.content.build import graph
from panelproof.content.spec import Choice, Content
from panelproof.ink.footprint import Footprint, footprint
from panelproof.layout.document import FORMAT, Layout, Moment, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Align, Field, Icon, IconState, Label, Part, Rule
from panelproof.starters.description import Description
from panelproof.starters.face import Face
from panelproof.starters.glass import Glass
from panelproof.starters.icons import SIZES, enlarged, icons
from panelproof.starters.piece import Line, NoRoom, Piece, even, joined, spread
from panelproof.starters.running import breaks, evened
from panelproof.starters.theme import Role, Theme, theme


@dataclass
class Setting:
    """Collects types, screens and parts. Of each word's texts the one numbered `wording` is taken, else its last."""

    panel: Panel
    plan: Description
    wording: int = 0
    faces: dict[str, Face] = field(default_factory=dict)
    screens: list[Screen] = field(default_factory=list)
    lines: dict[str, dict[str, tuple[str, ...]]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.glass = Glass(self.panel)
        self.theme: Theme = theme(self.panel)

    # -- pieces ------------------------------------------------------------------------------------------

    def word(self, name: str) -> str:
        """Return one of the description's words, as this attempt words it."""
        texts = self.plan.words[name]
        return texts[min(self.wording, len(texts) - 1)]

    def _type(self, face: Face, role: str) -> str:
        """Return the name of the type of a face; one face has one type, called after its first use."""
        for name, known in self.faces.items():
            if known.font == face.font:
                return name
        free = role
        while free in self.faces:
            free = f"{free}-{face.height}"
        self.faces[free] = face
        return free

    def label(
        self,
        name: str,
        face: Face,
        role: str,
        ink: Role = "text",
        *,
        text: str | None = None,
        on: Role | None = None,
    ) -> Piece:
        """Return a text that never changes: a word of the description, or `text`; `on` is a fill under it."""
        shown = self.word(name) if text is None else text
        print_ = inked(Content(shown.replace("%", "%%")), face, "left")
        x, y, width, height = print_.mask.bounds()
        type_, colour = self._type(face, role), self.theme.name(ink)

        def make(left: int, baseline: int) -> tuple[Part, ...]:
            return (Label(name, shown, type_, colour, left - x, baseline, ground=on and self.theme.name(on)),)

        return Piece(width, -y, y + height, make)

    def roomy(self, name: str, face: Face, ink: Role, room: int) -> Piece:
        """Return the first of a word's texts that goes into `room` pixels; raises NoRoom."""
        for text in self.plan.words[name]:
            piece = self.label(name, face, "text", ink, text=text)
            if piece.width <= room:
                return piece
        raise NoRoom

    def field(
        self,
        name: str,
        face: Face,
        role: str,
        ink: Role = "text",
        align: Align = "left",
        *,
        content: Content | None = None,
        period_ms: int | None = None,
    ) -> Piece:
        """Return a text that changes, as wide as all its texts need; its content is the description's or `content`."""
        if content is None:
            content, period_ms = self.plan.fields[name].content, self.plan.fields[name].period_ms
        bounds = inked(content, face, align).mask.bounds()
        if bounds is None:
            raise NoRoom
        x, y, width, height = bounds
        held, type_, colour = content, self._type(face, role), self.theme.name(ink)

        def make(left: int, baseline: int) -> tuple[Part, ...]:
            return (
                Field(
                    name, held, type_, colour, left - x, baseline, align,
                    padding=(left, baseline + y, width, height), period_ms=period_ms,
                ),
            )  # fmt: skip

        return Piece(width, -y, y + height, make)

    def measured(
        self, name: str, face: Face, small: Face, ink: Role = "text", quiet: Role = "quiet"
    ) -> Piece:
        """Return a number, right-aligned in the room of its widest, and its unit in `small` on the same baseline."""
        number = self.field(name, face, "reading" if face.cap > small.cap else "text", ink, "right")
        unit = self.label(f"{name}-unit", small, "text", quiet, text=self.unit(name))
        return joined(number, unit, gap=max(3, face.cap // 7, small.cap // 2 - 1))

    def table(
        self, names: Sequence[str], face: Face, small: Face, ink: Role = "text", *, centred: bool = False,
        stretch: int = 0, lead: int | None = None,
    ) -> list[Line]:  # fmt: skip
        """Return a line for each number: its word at the left, the digits in line, the units in line."""
        if not names:
            return []
        labels = [
            self.label(
                f"{name}-label" if name in self.plan.fields else name,
                small,
                "text",
                "quiet",
                text=self.word(name),
            )
            for name in names
        ]
        values = self.values(names, face, small, (ink,) * len(names), in_line=True)
        widest = max(piece.width for piece in labels)
        gap = max(3, face.cap // 7, small.cap // 2 - 1)
        lines = []
        for label, value in zip(labels, values, strict=True):
            room = self.glass.margin if lead is None else lead
            if centred:
                both = joined(spread(label, widest), value, gap=2 * gap)
                lines.append(Line(centre=both, lead=room, stretch=stretch))
            else:
                lines.append(Line(left=label, right=value, lead=room, stretch=stretch, apart=gap))
        return even(lines)

    def values(
        self, names: Sequence[str], face: Face, small: Face, inks: Sequence[Role], *, in_line: bool
    ) -> list[Piece]:
        """Return numbers with their units; `in_line`: all of one width, so that digits and units stand in line."""
        if not in_line:
            return [self.measured(name, face, small, ink) for name, ink in zip(names, inks, strict=True)]
        role = "reading" if face.cap > small.cap else "text"
        numbers = [self.field(name, face, role, ink, "right") for name, ink in zip(names, inks, strict=True)]
        units = [self.label(f"{name}-unit", small, "text", "quiet", text=self.unit(name)) for name in names]
        widest, room = max(piece.width for piece in numbers), max(piece.width for piece in units)
        gap = max(3, face.cap // 7, small.cap // 2 - 1)
        return [
            joined(spread(number, widest, at_right=True), spread(unit, room), gap=gap)
            for number, unit in zip(numbers, units, strict=True)
        ]

    def unit(self, name: str) -> str:
        """Return the unit of a field: the word `NAME-unit`, or `unit` where all have one."""
        return self.word(f"{name}-unit" if f"{name}-unit" in self.plan.words else "unit")

    def icon(self, name: str, size: int, face: Face | None = None, on: Role | None = None) -> Piece:
        """Return an icon in the middle of the capitals of a face, or standing on the baseline.

        On a fill `on`, all its states are painted in the ground's ink. Twice a native size doubles each pixel.
        """
        plan = self.plan.icons[name]
        native = size if size in SIZES else size // 2
        drawn = icons(native)[plan.icon]
        text = self.theme.name("ground" if on else "text")
        states = []
        for state in plan.states:
            ink = text if on else self.theme.name(_state_ink(state))
            rows = enlarged(drawn[state], size // native)
            states.append(IconState(state, rows, ink=None if ink == text else ink))
        above = size if face is None else (face.cap + size + 1) // 2

        def make(left: int, baseline: int) -> tuple[Part, ...]:
            return (
                Icon(
                    name, left, baseline - above, text, tuple(states), link=plan.link,
                    period_ms=plan.period_ms, ground=on and self.theme.name(on),
                ),
            )  # fmt: skip

        return Piece(size, above, size - above, make)

    def rule(self, name: str, width: int, thickness: int = 1) -> Piece:
        """Return a line across, standing on the baseline."""
        ink = self.theme.name("line")

        def make(left: int, baseline: int) -> tuple[Part, ...]:
            return (Rule(name, left, baseline - thickness, width, ink, thickness=thickness),)

        return Piece(width, thickness, 0, make)

    def upright(self, name: str, height: int, below: int) -> Piece:
        """Return a line down that ends `below` pixels under the baseline."""
        ink = self.theme.name("line")

        def make(left: int, baseline: int) -> tuple[Part, ...]:
            return (Rule(name, left, baseline + below - height, height, ink, "down"),)

        return Piece(1, height - below, below, make)

    # -- running text ------------------------------------------------------------------------------------

    def wrapped(
        self, name: str, texts: dict[str, str], face: Face, *, width: int, most: int, align: Align = "left"
    ) -> list[Piece]:
        """Return up to `most` fields, one a line, that show one of several texts broken into lines.

        Raises NoRoom where a text needs more lines, or a word is wider than `width`.
        """
        broken = {key: breaks(text, face, width) for key, text in texts.items()}
        needed = max(len(lines) for lines in broken.values())
        if needed > most:
            raise NoRoom
        if align == "centre":
            broken = {key: evened(text, face, width) for key, text in texts.items()}
        filled = {key: (*lines, *[""] * (needed - len(lines))) for key, lines in broken.items()}
        self.lines[name] = filled
        return [
            self.field(f"{name}-{number + 1}", face, "text", "text", align, content=_choice(filled, number))
            for number in range(needed)
        ]

    # -- screens -----------------------------------------------------------------------------------------

    def stack(
        self, lines: Sequence[Line], top: int | None = None, bottom: int | None = None, tail: int = 0,
        edges: tuple[int, int] | None = None,
    ) -> list[Part]:  # fmt: skip
        """Return the parts of lines set one under the other, what is left over shared between them.

        `tail` is the share of the room below the last; lines begin and end at `edges`, by default where all of them
        can be seen. Raises NoRoom.
        """
        top = self.glass.top if top is None else top
        bottom = self.glass.bottom if bottom is None else bottom
        needed = sum(line.lead + line.above + line.below for line in lines)
        spare = bottom - top - needed
        if spare < 0:
            raise NoRoom
        shares = sum(line.stretch for line in lines) + tail
        y, taken = top, 0
        placed: list[tuple[Line, int, tuple[int, int]]] = []
        for line in lines:
            taken += line.stretch
            y += line.lead + line.above
            baseline = y + (spare * taken // shares if shares else 0)
            placed.append((line, baseline, self.glass.band(baseline - line.above, baseline + line.below)))
            y += line.below
        edged = [band for line, _, band in placed if line.edged]
        if edges is None:
            edges = max((left for left, _ in edged), default=0), min((right for _, right in edged), default=0)
        return [
            part
            for line, baseline, band in placed
            for part in line.parts(*(edges if line.edged else band), baseline)
        ]

    def screen(self, name: str, parts: Sequence[Part]) -> None:
        """Add a screen; boxes and lines are drawn before what stands on them."""
        self.screens.append(Screen(name, self.theme.name("ground"), tuple(parts)))

    def layout(self, name: str) -> Layout:
        """Return the layout of everything that was set."""
        return Layout(
            FORMAT,
            name,
            self.panel,
            tuple(TypeSpec(role, face.font) for role, face in self.faces.items() if role in self._used()),
            self.theme.inks({"ground"} | self._inks()),
            tuple(self.screens),
            tuple(self._moments()),
        )

    def _used(self) -> set[str]:
        return {part.type for part in self._parts() if isinstance(part, Label | Field)}

    def _parts(self) -> list[Part]:
        return [part for screen in self.screens for part in screen.parts]

    def _inks(self) -> set[str]:
        used: set[str | None] = {screen.ground for screen in self.screens}
        for part in self._parts():
            for key in ("ink", "fill", "outline", "ground"):
                used.add(getattr(part, key, None))
            for inner in (*getattr(part, "states", ()), *getattr(part, "limits", ())):
                used.add(inner.ink)
        return {ink for ink in used if ink}

    def _moments(self) -> list[Moment]:
        """Return the description's moments, of each screen that was set the values of what stands there."""
        moments = []
        shown = {screen.name: screen for screen in self.screens}
        for moment in self.plan.moments:
            if moment.screen not in shown:
                continue
            values = dict(moment.fields)
            for name, texts in self.lines.items():
                chosen = values.pop(name, None)
                if isinstance(chosen, str):
                    values |= {f"{name}-{n + 1}": line for n, line in enumerate(texts[chosen])}
            parts = {part.name: part for part in shown[moment.screen].parts}
            moments.append(
                Moment(
                    moment.name,
                    moment.screen,
                    {key: value for key, value in values.items() if key in parts},
                    {key: state for key, state in moment.icons.items() if key in parts},
                    {
                        key: None if value == "none" else value
                        for key, value in moment.levels.items()
                        if key in parts
                    },
                )
            )
        return moments


def inked(content: Content, face: Face, align: Align) -> Footprint:
    """Return the footprint of a content in a face; raises NoRoom where the face lacks a character of it."""
    print_ = footprint(graph(content), face.type, align)
    if print_.missing:
        raise NoRoom
    return print_


def _choice(lines: dict[str, tuple[str, ...]], number: int) -> Content:
    return Content("%s", (Choice(tuple(dict.fromkeys(texts[number] for texts in lines.values()))),))


def _state_ink(state: str) -> Role:
    if state in ("off",):
        return "quiet"
    if state == "fault":
        return "alarm"
    if state == "up":
        return "good"
    return "accent"
