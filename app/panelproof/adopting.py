"""Values nudged by hand in a header, taken back into the layout that it was made from."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from msgspec.structs import replace

from panelproof.cvalue import NoValue, value
from panelproof.firmware.constants import ALIGNMENTS
from panelproof.firmware.header import digest, header
from panelproof.firmware.names import upper
from panelproof.firmware.reading import Parsed, parsed
from panelproof.layout.checking import check_references
from panelproof.layout.colour import shown, written
from panelproof.layout.document import Ink, Layout, Screen
from panelproof.layout.parts import Box, Field, Icon, Label, Meter, Part, Picture, Rule
from panelproof.layout.reading import valid
from panelproof.material import Material, icon_padding
from panelproof.problem import Problem

# The ends of constants' names, and the keys of the layout file that they stand for.
NUMBERS: dict[type[Part], dict[str, str]] = {
    Label: {"X": "x", "BASELINE": "baseline"},
    Field: {"X": "x", "BASELINE": "baseline", "TEXT_BYTES": "buffer"},
    Icon: {"X": "x", "Y": "y"},
    Rule: {"X": "x", "Y": "y", "LENGTH": "length", "THICKNESS": "thickness"},
    Box: {"X": "x", "Y": "y", "WIDTH": "width", "HEIGHT": "height", "THICKNESS": "thickness"},
    Meter: {
        "X": "x",
        "Y": "y",
        "WIDTH": "width",
        "HEIGHT": "height",
        "LEAST": "least",
        "GREATEST": "greatest",
    },
    Picture: {"X": "x", "Y": "y"},
}
INKS: dict[type[Part], dict[str, str]] = {
    Label: {"INK": "ink", "GROUND": "ground"},
    Field: {"INK": "ink", "GROUND": "ground"},
    Icon: {"INK": "ink", "GROUND": "ground"},
    Rule: {"INK": "ink"},
    Box: {"FILL": "fill", "OUTLINE": "outline"},
    Meter: {"INK": "ink", "GROUND": "ground"},
    Picture: {},
}
PADDING = ("X", "Y", "WIDTH", "HEIGHT")
Value = int | str


@dataclass(frozen=True, slots=True)
class Slot:
    """A value of the layout that a constant of the header holds.

    `part` and `screen` are names, empty where the value is none's; `key` is the layout file's, `padding.x` and the like
    for the padding box.
    """

    screen: str
    part: str
    key: str
    kind: str  # number, ink, alignment or colour

    @property
    def where(self) -> str:
        """The value's place as a person reads it."""
        return f"{' / '.join(filter(None, (self.screen, self.part)))}: {self.key}"


@dataclass(frozen=True, slots=True)
class Change:
    """A value taken from the header."""

    slot: Slot
    constant: str
    old: Value
    new: Value


@dataclass(frozen=True, slots=True)
class Conflict:
    """A value that is another one in the header and in the layout; `base` is what both began with, if known."""

    slot: Slot
    constant: str
    header: Value
    layout: Value
    base: Value | None


@dataclass(frozen=True, slots=True)
class Adoption:
    """The outcome: `layout` with all `changes` in it; `refused` says what of the header cannot be taken back, and why."""

    layout: Layout
    changes: tuple[Change, ...]
    conflicts: tuple[Conflict, ...]
    refused: tuple[str, ...]


def adopt(
    material: Material, text: str, base: Material | None = None, *, prefer_header: bool = False
) -> Adoption:
    """Take the values of a header's constants into its layout.

    Where the layout has changed since the header was made (their digests differ), `base` is the layout as it was then:
    a value that only one side changed is that side's, one that both changed differently is a conflict, and without a
    base every difference is one. With `prefer_header` conflicts are settled for the header.
    Raises Problem where the text is no header of this layout, or the outcome is no layout.
    """
    found = parsed(text)
    if found is None:
        raise Problem("it is not a whole header that Panelproof has written")
    if found.facts["layout"] != material.layout.name:
        raise Problem(f"it is of the layout `{found.facts['layout']}`, not of `{material.layout.name}`")
    return _Adopting(material, found, text, base, prefer_header).outcome()


def made_from(text: str) -> str | None:
    """Return the digest of the layout that a header was made from, None where it is no header."""
    found = parsed(text)
    return found.facts["digest"].removeprefix("sha256 ").strip() if found else None


@dataclass(slots=True)
class _Side:
    """One side's constants and what they mean."""

    constants: Mapping[str, str]
    material: Material
    names: Mapping[str, str] = field(default_factory=dict)  # ink names by macro

    def __post_init__(self) -> None:
        layout = self.material.layout
        self.names = {upper(layout.name, "ink", ink.name): ink.name for ink in layout.inks}

    def read(self, constant: str, slot: Slot) -> Value:
        """Return the value of a constant; raises NoValue."""
        source = self.constants[constant]
        while source.startswith("(") and source.endswith(")") and source[1:-1] in self.constants:
            source = source[1:-1]
        if slot.kind == "alignment":
            prefix = upper(self.material.layout.name)
            for number, (word, macro) in enumerate(ALIGNMENTS.items()):
                if source == f"{prefix}_{macro}" or source == str(number):
                    return word
            raise NoValue(f"`{source}` is no alignment")
        if slot.kind == "ink":
            return self.names[source] if source in self.names else self._by_code(source)
        return value(source, self.constants)

    def _by_code(self, source: str) -> str:
        code = value(source, self.constants)
        for macro, name in self.names.items():
            if macro in self.constants and value(self.constants[macro], self.constants) == code:
                return name
        raise NoValue(f"the layout has no ink of the code {source}")


class _Adopting:
    def __init__(
        self, material: Material, found: Parsed, text: str, base: Material | None, prefer: bool
    ) -> None:
        self.material, self.layout, self.found, self.text, self.prefer = (
            material,
            material.layout,
            found,
            text,
            prefer,
        )
        now = header(material)
        self.now_text = now
        self.now = _Side(_constants(now), material)
        self.theirs = _Side(found.constants, material)
        self.same = found.facts["digest"] == f"sha256 {digest(material)}"
        self.base: _Side | None = self.now if self.same else None
        if not self.same and base is not None:
            self.base = _Side(_constants(header(base)), base)
        self.slots = dict(slots(self.layout))
        self.values: dict[Slot, Value] = {}
        self.changes: list[Change] = []
        self.conflicts: list[Conflict] = []
        self.refused: list[str] = []

    def outcome(self) -> Adoption:
        """Go through every constant, then put the layout together."""
        for constant, slot in self.slots.items():
            if constant in self.now.constants:
                self._slot(constant, slot)
        self._others()
        layout = self._applied()
        check_references(layout)
        return Adoption(layout, tuple(self.changes), tuple(self.conflicts), tuple(self.refused))

    def _slot(self, constant: str, slot: Slot) -> None:
        ours, theirs = self.now.constants[constant], self.theirs.constants.get(constant)
        began = self.base.constants.get(constant) if self.base else None
        old = self.now.read(constant, slot)
        self.values[slot] = old
        if theirs is None:
            if self.same or began is not None:
                self.refused.append(f"`{constant}` is missing from the header")
            return
        if theirs in (ours, began):
            return
        try:
            new = self.theirs.read(constant, slot)
        except NoValue as reason:
            self.refused.append(f"`{constant}` is {theirs}: {reason}")
            return
        before = self.base.read(constant, slot) if self.base and began is not None else None
        if new in (old, before):
            return
        if before is None or (old != before and not self.same):
            self.conflicts.append(Conflict(slot, constant, new, old, before))
            if not self.prefer:
                return
        self.values[slot] = new
        self.changes.append(Change(slot, constant, old, new))

    def _others(self) -> None:
        """List what differs and is no value of the layout that a header could give back."""
        was = self.base or self.now
        gone = dict(slots(was.material.layout))
        for constant, theirs in self.theirs.constants.items():
            if constant in self.slots or constant.endswith("_LAYOUT_DIGEST"):
                continue
            ours = was.constants.get(constant)
            if self.base is not None and constant in gone:
                continue
            if ours is None:
                # Without a base it may be of a part that the layout no longer has.
                if self.base is not None and constant.startswith(f"{upper(self.layout.name)}_"):
                    self.refused.append(f"`{constant}` ({theirs}) is no constant of the layout")
            elif ours != theirs:
                self.refused.append(f"`{constant}` is {theirs}, and {ours} by the layout: change it there")
        if self.base is not None and not self.same:
            known = self.now.constants
            for constant, slot in dict(slots(self.base.material.layout)).items():
                nudged = self.theirs.constants.get(constant)
                if constant not in known and nudged not in (None, self.base.constants.get(constant)):
                    self.refused.append(
                        f"`{constant}` is {nudged}, but the layout has no {slot.where} any more"
                    )
        if self.same:
            self.refused += _beyond_constants(self.text, self.found, self.now_text)

    # -- the layout put together -----------------------------------------------------------------------------------

    def _applied(self) -> Layout:
        layout = self.layout
        inks = tuple(self._ink(ink) for ink in layout.inks)
        screens = tuple(self._screen(screen) for screen in layout.screens)
        try:
            return valid(replace(layout, inks=inks, screens=screens))
        except Problem as problem:
            raise Problem(f"the header's values make no layout: {problem.message}", problem.place) from None

    def _ink(self, ink: Ink) -> Ink:
        slot = Slot("", ink.name, "colour", "colour")
        code = self.values.get(slot)
        if not isinstance(code, int) or code == self.material.code(ink.name):
            return ink
        colours = self.layout.panel.colours
        if not 0 <= code < colours.count:
            raise Problem(
                f"the ink `{ink.name}` has the code {code} in the header, which the panel does not have"
            )
        return replace(ink, colour=written(shown(code, colours)))

    def _screen(self, screen: Screen) -> Screen:
        ground = self.values.get(Slot(screen.name, "", "ground", "ink"), screen.ground)
        assert isinstance(ground, str)
        parts = tuple(self._part(screen, part, ground) for part in screen.parts)
        return replace(screen, ground=ground, parts=parts)

    def _part(self, screen: Screen, part: Part, ground: str) -> Part:
        changes: dict[str, Any] = {}
        for constant, slot in self._of(screen, part):
            new = self.values.get(slot)
            if new is None or slot.key.startswith("padding.") or new == self.now.read(constant, slot):
                continue
            if slot.key != "ground":
                changes[slot.key] = new
        if "GROUND" in INKS[type(part)]:
            wanted = self.values.get(Slot(screen.name, part.name, "ground", "ink"))
            if wanted is not None and wanted != (part.ground or ground):  # type: ignore[union-attr]
                changes["ground"] = None if wanted == ground else wanted
        made: Part = replace(part, **changes) if changes else part
        if isinstance(made, Field | Icon):
            made = self._padded(screen, made)
        return made

    def _of(self, screen: Screen, part: Part) -> Iterator[tuple[str, Slot]]:
        return (
            (constant, slot)
            for constant, slot in self.slots.items()
            if (slot.screen, slot.part) == (screen.name, part.name) and constant in self.now.constants
        )

    def _padded(self, screen: Screen, part: Field | Icon) -> Field | Icon:
        """Return a part with the padding box that the constants give, its own left out where it is the usual one."""
        box = []
        for end in PADDING:
            edge = self.values.get(Slot(screen.name, part.name, f"padding.{end.lower()}", "number"))
            if not isinstance(edge, int):
                return part
            box.append(edge)
        if isinstance(part, Icon) and part.padding is None:
            # Constants that follow the icon's own x and y have moved with them.
            usual = icon_padding(part, tuple(self.material.bitmaps[state] for state in part.states))
            follows = [self._followed(screen, part, end) for end in PADDING]
            box = [one if not stays else own for one, own, stays in zip(box, usual, follows, strict=True)]
            if tuple(box) == usual:
                return part
        padding = box[0], box[1], box[2], box[3]
        return part if part.padding == padding else replace(part, padding=padding)

    def _followed(self, screen: Screen, part: Icon, end: str) -> bool:
        constant = f"{upper(self.layout.name, screen.name, part.name)}_PADDING_{end}"
        return self.theirs.constants.get(constant, "") == self.now.constants.get(constant)


def _constants(text: str) -> Mapping[str, str]:
    found = parsed(text)
    assert found is not None
    return found.constants


def slots(layout: Layout) -> Iterator[tuple[str, Slot]]:
    """Yield every constant that holds a value of the layout, with that value's place."""
    for ink in layout.inks:
        yield upper(layout.name, "ink", ink.name), Slot("", ink.name, "colour", "colour")
    for screen in layout.screens:
        yield upper(layout.name, screen.name) + "_GROUND", Slot(screen.name, "", "ground", "ink")
        for part in screen.parts:
            prefix = upper(layout.name, screen.name, part.name)
            for end, key in NUMBERS[type(part)].items():
                yield f"{prefix}_{end}", Slot(screen.name, part.name, key, "number")
            for end, key in INKS[type(part)].items():
                yield f"{prefix}_{end}", Slot(screen.name, part.name, key, "ink")
            if isinstance(part, Label | Field):
                yield f"{prefix}_ALIGNMENT", Slot(screen.name, part.name, "align", "alignment")
            if isinstance(part, Field | Icon):
                for end in PADDING:
                    slot = Slot(screen.name, part.name, f"padding.{end.lower()}", "number")
                    yield f"{prefix}_PADDING_{end}", slot


def _beyond_constants(text: str, found: Parsed, now: str) -> list[str]:
    """Return what a header has otherwise than its own layout, its constants aside."""
    from panelproof.firmware.verify import differences  # noqa: PLC0415

    ours = _constants(now)
    lines = []
    for line in text.replace("\r\n", "\n").split("\n"):
        words = line.split(None, 2)
        if len(words) > 1 and words[0] == "#define" and words[1] in ours and words[1] in found.constants:
            line = line.replace(found.constants[words[1]], ours[words[1]], 1)  # noqa: PLW2901
        lines.append(line)
    told = [one for one in differences("\n".join(lines), now) if not one.startswith("the constant `")]
    return (
        []
        if told == ["only line ends or spaces differ"]
        else [f"beyond its constants: {one}" for one in told]
    )
