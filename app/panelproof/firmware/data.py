"""The constant data of a header: bitmaps, glyphs, kerning, types, parts and states, as structures of C."""

from __future__ import annotations

from dataclasses import dataclass

from panelproof.content.graph import max_bytes
from panelproof.firmware import literals
from panelproof.firmware.constants import ALIGNMENTS
from panelproof.firmware.glyphdata import Pool, TypeGlyphs, icon_glyph, icon_states, packed, type_glyphs
from panelproof.firmware.names import lower, upper
from panelproof.firmware.records import PIXELS, Array, Member, Record, ordered, record, table
from panelproof.glyphs.glyph import Glyph
from panelproof.layout.document import Screen
from panelproof.layout.parts import Field, Icon, Label
from panelproof.material import Material, field_graph
from panelproof.problem import Problem

CLEARINGS = ("none", "cell", "pad", "box")
ICONS = "the icons"
GREATEST_BITS = (1 << 32) - 1
# On targets whose `int` has 16 bits; the rest is kept free for sums with sizes of the panel.
GREATEST_PLACE = 32_767 - 12_288

Shown = Label | Field | Icon


@dataclass(frozen=True, slots=True)
class Data:
    """What the templates of the implementation need to know."""

    records: tuple[Record, ...]
    bitmaps: tuple[tuple[str, tuple[str, ...]], ...]
    bits_size: int
    bit_type: str
    px: str
    ramps: tuple[tuple[str, str], ...]
    kerning: bool
    texts: bool
    icons: bool


def longest(part: Label | Field) -> int:
    """Return the most bytes that a text of the part takes."""
    return len(part.text.encode()) if isinstance(part, Label) else max_bytes(field_graph(part))[0]


def type_title(one: TypeGlyphs) -> str:
    """Return what a type is made of, in one line."""
    size = f", {one.type.size} px"
    return literals.comment(
        f"{one.spec.name}: {one.type.path.name}{size}, {one.spec.rendering}"
        f"{', kerning' if one.spec.kerning else ''}, {one.type.rasteriser}"
    )


class _Maker:
    def __init__(self, material: Material) -> None:
        self.material = material
        self.layout = lower(material.layout.name)
        self.types = type_glyphs(material)
        self.shown: list[tuple[Screen, Shown]] = [
            (screen, part)
            for screen in material.layout.screens
            for part in screen.parts
            if isinstance(part, Label | Field | Icon)
        ]
        self.icons = any(isinstance(part, Icon) for _, part in self.shown)
        self.pool = Pool()
        self.glyphs: list[tuple[str, str, Glyph]] = []  # (title, code, glyph)
        self.sections: dict[int, str] = {}
        self.first: dict[str, int] = {}
        self.state_glyph: dict[tuple[str, str, str], int] = {}
        for one in self.types:
            self.first[one.spec.name] = self._section(type_title(one))
            for char, glyph in one.glyphs:
                shown = f" {char}" if "!" <= char <= "~" else ""
                self.glyphs.append((f"U+{ord(char):04X}{shown}", f"0x{ord(char):02X}", glyph))
        if self.icons:
            self.first_icon = self._section(ICONS)
            for screen, icon, state in icon_states(material):
                self.state_glyph[screen, icon.name, state.name] = len(self.glyphs)
                title = f"{screen} {icon.name} {state.name}"
                self.glyphs.append((title, "0", icon_glyph(material.bitmaps[state])))
        self.ramps: dict[tuple[str, str], int] = {}

    def _section(self, title: str) -> int:
        self.sections[len(self.glyphs)] = title
        return len(self.glyphs)

    def glyph_record(self) -> Record:
        glyphs = self.glyphs or [("none", "0", Glyph(0, 0, 0, 0, 0, ()))]
        places, section = [], ""
        for n, (name, _, glyph) in enumerate(glyphs):
            section = self.sections.get(n, section)
            of = "icon" if section == ICONS else section.split(":")[0]
            places.append(self.pool.place(packed(glyph), f"{of} {name}", glyph))
        values = {
            "code": [int(code, 16) for _, code, _ in glyphs],
            "first_byte": places,
            "left": [glyph.left for *_, glyph in glyphs],
            "top": [glyph.top for *_, glyph in glyphs],
            "width": [glyph.width for *_, glyph in glyphs],
            "height": [glyph.height for *_, glyph in glyphs],
            "advance": [glyph.advance for *_, glyph in glyphs],
        }
        read_as = {"code": "uint32_t", "first_byte": "unsigned"}
        comments = {"left": "from the pen to the first column", "top": "from the first row to the baseline"}
        comments["code"] = "Unicode"
        members = ordered(
            [
                Member(name, literals.integer_type(v), read_as.get(name, PIXELS), comments.get(name, ""))
                for name, v in values.items()
            ]
        )
        rows = [
            {name: str(v[n]) for name, v in values.items()} | {"code": glyphs[n][1]}
            for n in range(len(glyphs))
        ]
        lines = []
        for n, line in enumerate(table(members, rows)):
            if n in self.sections:
                lines.append(f"/* {self.sections[n]} */")
            lines.append(f"{line} /* {literals.clipped(glyphs[n][0])} */")
        array = Array(f"{self.layout}_glyphs_[]", tuple(lines))
        return record(self.layout, "glyph", "A glyph, in pixels.", members, [array])

    def pair_record(self) -> Record:
        pairs = [pair for one in self.types for pair in one.pairs]
        holds = [literals.integer_type(column) for column in zip(*pairs, strict=True)]
        members = [
            Member("left", holds[0], comment="place among the type's glyphs"),
            Member("right", holds[1]),
            Member("kern", holds[2], PIXELS, "px"),
        ]
        lines = []
        for one in self.types:
            if one.pairs:
                lines.append(f"/* {one.spec.name} */")
                rows = [{"left": str(a), "right": str(b), "kern": str(px)} for a, b, px in one.pairs]
                cells = table(members, rows)
                lines += literals.rows((cell.removesuffix(",") for cell in cells), "")
        array = Array(f"{self.layout}_pairs_[]", tuple(lines))
        return record(self.layout, "pair", "How far the pen moves on between two glyphs.", members, [array])

    def reach(self, one: TypeGlyphs) -> int:
        """Return how far from a pen this or a later glyph can begin to ink at the least (0 or less)."""
        texts = [longest(p) for _, p in self.shown if not isinstance(p, Icon) and p.type == one.spec.name]
        return min(one.least_left, 0) - one.steps[0] * max(texts)

    def px(self) -> str:
        """Return the C type that holds every place of every text."""
        greatest = 0
        by_name = {one.spec.name: one for one in self.types}
        for _, part in self.shown:
            if not isinstance(part, Icon):
                one = by_name[part.type]
                way = abs(part.x) + max(one.steps) * longest(part) + one.extent - self.reach(one)
                greatest = max(greatest, way)
        return "int" if greatest <= GREATEST_PLACE else "int32_t"

    def type_record(self, kerning: bool) -> Record:
        first_pair = 0
        rows, reaches = [], [0]
        for one in self.types:
            name = upper(self.layout, "type", one.spec.name)
            reaches.append(self.reach(one))
            rows.append(
                {
                    "first_glyph": str(self.first[one.spec.name]),
                    "glyph_count": str(len(one.glyphs)),
                    "first_pair": str(first_pair),
                    "pair_count": str(len(one.pairs)),
                    "reach": str(self.reach(one)),
                    "ascent": f"{name}_ASCENT",
                    "descent": f"{name}_DESCENT",
                    "depth": str(one.depth),
                }
            )
            first_pair += len(one.pairs)
        if self.icons:
            rows.append(
                dict.fromkeys(("first_pair", "pair_count", "reach", "ascent", "descent"), "0")
                | {"first_glyph": str(self.first_icon), "glyph_count": "0", "depth": "1"}
            )
        count = literals.integer_type([len(self.glyphs)])
        pairs = literals.integer_type([first_pair])
        members = [Member("first_glyph", count), Member("glyph_count", count)]
        if kerning:
            members += [Member("first_pair", pairs), Member("pair_count", pairs)]
        members += [
            Member(
                "reach",
                literals.integer_type([*reaches, -1]),
                PIXELS,
                "px from a pen to any later ink",
            ),
            Member("ascent", "int16", PIXELS),
            Member("descent", "int16", PIXELS),
            Member("depth", "uint8", comment="bits a pixel"),
        ]
        members = ordered(members)
        titles = [one.spec.name for one in self.types] + [ICONS] * self.icons
        lines = [f"{line} /* {title} */" for line, title in zip(table(members, rows), titles, strict=True)]
        comment = f"A type: its glyphs in {self.layout}_glyphs_, in ascending order of their codes."
        return record(self.layout, "type", comment, members, [Array(f"{self.layout}_types_[]", tuple(lines))])

    def part_record(self) -> Record:
        texts = [part for _, part in self.shown if not isinstance(part, Icon)]
        rows = [self._part(screen, part) for screen, part in self.shown]
        members = [
            Member(name, "int16", PIXELS)
            for name in ("x", "baseline", "area_x", "area_y", "area_width", "area_height")
        ]
        members += [Member("ink", "uint16", "uint16_t"), Member("ground", "uint16", "uint16_t")]
        if texts:
            members.append(
                Member(
                    "longest",
                    literals.integer_type(map(longest, texts)),
                    comment="bytes of its text",
                )
            )
        members.append(Member("type", literals.integer_type([len(self.types)])))
        if self.ramps:
            members.append(Member("ramp", literals.integer_type([len(self.ramps)])))
        if texts:
            members.append(Member("alignment", "uint8"))
        members.append(Member("clearing", "uint8"))
        members = ordered(members)
        arrays = []
        for (screen, part), row in zip(self.shown, rows, strict=True):
            name = f"{lower(self.layout, 'part', screen.name, part.name)}_"
            cells = [f"{row[member.name]}" for member in members]
            groups = (cells[:2], cells[2:6], cells[6:8], cells[8:])
            arrays.append(Array(name, tuple(line for group in groups for line in literals.rows(group, ""))))
        made = record(
            self.layout,
            "part",
            "A text or an icon: its place, and what an update repaints.",
            members,
            arrays,
        )
        prefix = upper(self.layout)
        clearings = literals.aligned(
            [(f"#define {prefix}_{word.upper()}_", str(n)) for n, word in enumerate(CLEARINGS)]
        )
        return Record(made.name, made.comment, made.members, (*made.accessors, *clearings), made.arrays)

    def _part(self, screen: Screen, part: Shown) -> dict[str, str]:
        prefix, own = upper(self.layout), upper(self.layout, screen.name, part.name)
        ends = ("X", "Y", "WIDTH", "HEIGHT")
        if isinstance(part, Icon) or (isinstance(part, Field) and part.padding is not None):
            area = [f"{own}_PADDING_{end}" for end in ends]
        else:
            area = ["0", "0", f"{prefix}_PANEL_WIDTH", f"{prefix}_PANEL_HEIGHT"]
        row = dict(zip(("area_x", "area_y", "area_width", "area_height"), area, strict=True))
        row |= {"x": f"{own}_X", "ink": f"{own}_INK", "ground": f"{own}_GROUND", "ramp": "0"}
        clearing = "none" if isinstance(part, Label) else part.clearing
        row["clearing"] = f"{prefix}_{clearing.upper()}_"
        if isinstance(part, Icon):
            return row | {
                "baseline": f"{own}_Y",
                "longest": "0",
                "type": str(len(self.types)),
                "alignment": f"{prefix}_{ALIGNMENTS['left']}",
            }
        number = next(n for n, one in enumerate(self.types) if one.spec.name == part.type)
        if self.types[number].depth > 1:
            pair = part.ink, part.ground or screen.ground
            row["ramp"] = str(self.ramps.setdefault(pair, len(self.ramps)))
        return row | {
            "baseline": f"{own}_BASELINE",
            "longest": str(longest(part)),
            "type": str(number),
            "alignment": f"{own}_ALIGNMENT",
        }

    def state_record(self) -> Record:
        members = [
            Member("ink", "uint16", "uint16_t"),
            Member("glyph", literals.integer_type([len(self.glyphs)])),
        ]
        members = ordered(members)
        arrays = []
        for screen, part in self.shown:
            if not isinstance(part, Icon):
                continue
            own = upper(self.layout, screen.name, part.name)
            rows = [
                {
                    "glyph": str(self.state_glyph[screen.name, part.name, state.name]),
                    "ink": upper(self.layout, "ink", state.ink) if state.ink else f"{own}_INK",
                }
                for state in part.states
            ]
            lines = [
                f"{line} /* {state.name} */"
                for line, state in zip(table(members, rows), part.states, strict=True)
            ]
            name = f"{lower(self.layout, 'states', screen.name, part.name)}_[{own}_STATES]"
            arrays.append(Array(name, tuple(lines)))
        return record(self.layout, "state", "A state of an icon.", members, arrays)

    def ramp_lines(self) -> tuple[tuple[str, str], ...]:
        made = []
        for (ink, ground), _ in self.ramps.items():
            codes = ", ".join(literals.colour(code) for code in self.material.ramp(ink, ground)[1:15])
            made.append((f"{ink} on {ground}", f"{{ {codes} }},"))
        return tuple(made)

    def bitmaps(self) -> tuple[tuple[str, tuple[str, ...]], ...]:
        made = []
        for blob in self.pool.blobs:
            title = literals.comment(", ".join(self.pool.titles[blob]))
            made.append((title, tuple(literals.rows(f"0x{byte:02X}" for byte in blob))))
        return tuple(made) or (("no pixels", ("    0,",)),)


def data(material: Material) -> Data:
    """Return the constant data of a layout. Raises Problem where it would be larger than 4 GiB."""
    maker = _Maker(material)
    texts = bool(maker.types)
    kerning = any(one.pairs for one in maker.types)
    glyph = maker.glyph_record()
    if maker.pool.size > GREATEST_BITS:
        raise Problem("the bitmaps of this layout take more than 4 GiB; use smaller types")
    part = maker.part_record()
    records = [glyph, *([maker.pair_record()] if kerning else []), maker.type_record(kerning), part]
    if maker.icons:
        records.append(maker.state_record())
    depths = [(one.depth, g) for one in maker.types for _, g in one.glyphs]
    depths += [(1, g) for *_, g in maker.glyphs[-len(maker.state_glyph) :]] if maker.icons else []
    most = max((g.width * g.height * depth for depth, g in depths), default=0)
    return Data(
        tuple(records),
        maker.bitmaps(),
        maker.pool.size,
        "unsigned" if most < 1 << 16 else "uint32_t",
        maker.px(),
        maker.ramp_lines(),
        kerning,
        texts,
        maker.icons,
    )
