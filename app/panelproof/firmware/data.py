"""The constant data of a header: bitmaps, glyphs, kerning, texts of labels, parts and states."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from panelproof.content.graph import max_bytes
from panelproof.firmware import literals
from panelproof.firmware.bus import pixel_bits
from panelproof.firmware.constants import ALIGNMENTS
from panelproof.firmware.encoding import FORMS, Encoding, cheapest, packed
from panelproof.firmware.glyphdata import (
    Pool,
    TypeGlyphs,
    code_of,
    icon_glyph,
    icon_states,
    texts_by_type,
    type_glyphs,
)
from panelproof.firmware.names import lower, upper
from panelproof.firmware.overlap import overlaps
from panelproof.firmware.reading import MOST_IN_A_BYTE
from panelproof.firmware.records import Array, Member, Record, Table, ordered, record, table
from panelproof.glyphs.glyph import Glyph
from panelproof.layout.document import Screen
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field, Icon, Label, Part
from panelproof.material import Material, field_graph
from panelproof.problem import Problem

CLEARINGS = ("none", "cell", "pad", "box")
ICONS, ICON = "the icons", "icon"
GREATEST_BITS = (1 << 32) - 1
MOST_STATES = 255
# Columns that a change looks at together: narrower costs more windows, wider sends more that has not changed
# (tests/bench/test_changes.py). A window takes 11 bytes on the bus (MIPI Display Command Set).
STRIP = 8
WINDOW_BITS = 11 * 8
# On targets whose `int` has 16 bits; the rest is kept free for sizes of the panel.
GREATEST_PLACE = 32_767 - 4_096

Shown = Label | Field | Icon


@dataclass(frozen=True, slots=True)
class Data:
    """What the templates of the implementation need to know."""

    records: tuple[Record, ...]
    tables: tuple[Table, ...]
    bitmaps: tuple[tuple[str, tuple[str, ...]], ...]
    bits_size: int
    bit_type: str
    px: str
    count_type: str
    area_holds: str
    code_type: str
    code_bits: int
    lead: int
    place_type: str
    place_bits: int
    kern_holds: str
    kern_bits: int
    pair_count: int
    reach: int
    ramps: tuple[tuple[str, str], ...]
    kerning: bool
    overlaps: bool
    rows: bool
    repeats: bool
    runs: bool
    half_type: str
    one_depth: bool
    opaque: bool
    modes: bool
    cells: bool
    cell_icons: bool
    boxes: bool
    aligned: bool
    fixed: bool
    fields_too: bool
    icons: bool
    inks_vary: bool
    changes: bool
    icon_changes: bool
    seen_type: str
    strip: int
    window_cost: int


def area_type(panel: Panel) -> str:
    """Return the integer type that holds a panel's places; an `int` in expressions, even where that has 16 bits."""
    return "uint8" if max(panel.width, panel.height) < 256 else "int16"


def count_type(panel: Panel) -> str:
    """Return the integer type that holds the number of a panel's pixels."""
    return "uint16_t" if panel.width * panel.height < 1 << 16 else "uint32_t"


def changes_by_parts(part: Part) -> bool:
    """Tell whether a part can be brought up to date by what differs: its whole padding box is known."""
    return isinstance(part, Field | Icon) and part.clearing in ("pad", "box")


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


@dataclass(frozen=True, slots=True)
class _Set:
    """The glyphs of a type, or the states of an icon: `first` is the place of the first among all.

    A glyph's columns count from `left` px off the pen, its rows from `top` px over the baseline.
    """

    first: int
    count: int
    left: int
    top: int
    encoding: Encoding = "rows"


@dataclass(frozen=True, slots=True)
class _Entry:
    title: str
    code: int
    glyph: Glyph
    of: str


def _set(entries: Sequence[_Entry], first: int, cells: bool) -> _Set:
    inked = [one.glyph for one in entries if one.glyph.width and one.glyph.height]
    return _Set(
        first,
        len(entries),
        # Where cells are painted, pens have to be known as they are.
        0 if cells else min((glyph.left for glyph in inked), default=0),
        max((glyph.top for glyph in inked), default=0),
    )


def _by(pixels: int) -> str:
    return f" {'-' if pixels < 0 else '+'} {abs(pixels)}" if pixels else ""


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
        self.texts = [part for _, part in self.shown if not isinstance(part, Icon)]
        self.icons = [(screen, part) for screen, part in self.shown if isinstance(part, Icon)]
        self.clearings = {"none" if isinstance(part, Label) else part.clearing for _, part in self.shown}
        self.cells = "cell" in self.clearings
        self.pool = Pool()
        self.entries: list[_Entry] = []
        self.sections: dict[int, str] = {}
        self.sets: dict[str, _Set] = {}
        self.icon_sets: dict[tuple[str, str], _Set] = {}
        for one in self.types:
            name = one.spec.name
            made = [
                _Entry(f"U+{ord(c):04X}{f' {c}' if '!' <= c <= '~' else ''}", code_of(c), glyph, name)
                for c, glyph in one.glyphs
            ]
            found = _set(made, len(self.entries), self.cells)
            self.sections[len(self.entries)] = type_title(one)
            # Of a type without glyphs the code looks through one entry all the same.
            self.entries += made or [_Entry("none", 0, Glyph(0, 0, 0, 0, 0, ()), name)]
            self.sets[name] = replace(found, count=max(len(made), 1))
        if self.icons:
            self.sections[len(self.entries)] = ICONS
        states = icon_states(material)
        for screen, icon in self.icons:
            mine = [state for name, part, state in states if (name, part) == (screen.name, icon)]
            if len(mine) > MOST_STATES:
                raise Problem(f"the icon `{icon.name}` has {len(mine)} states; {MOST_STATES} are the most")
            made = [
                _Entry(
                    f"{screen.name} {icon.name} {state.name}", n, icon_glyph(material.bitmaps[state]), ICON
                )
                for n, state in enumerate(mine, start=1)
            ]
            self.icon_sets[screen.name, icon.name] = _set(made, len(self.entries), self.cells)
            self.entries += made
        self.ramps: dict[tuple[str, str], int] = {}
        self.encode()

    def encode(self) -> None:
        """Choose each type's encoding, and that of all icons."""
        glyphs: dict[str, list[Glyph]] = {}
        for one in self.entries:
            glyphs.setdefault(one.of, []).append(one.glyph)
        chosen = cheapest(glyphs)
        for name, found in self.sets.items():
            self.sets[name] = replace(found, encoding=chosen[name])
        for key, found in self.icon_sets.items():
            self.icon_sets[key] = replace(found, encoding=chosen[ICON])

    def sets_in_order(self) -> list[_Set]:
        return sorted([*self.sets.values(), *self.icon_sets.values()], key=lambda one: one.first)

    def set_of(self, screen: Screen, part: Shown) -> _Set:
        return self.icon_sets[screen.name, part.name] if isinstance(part, Icon) else self.sets[part.type]

    def kerning(self) -> bool:
        return any(one.pairs for one in self.types)

    def wide(self) -> bool:
        """Tell whether a place among all glyphs takes 16 bits."""
        return len(self.entries) > MOST_IN_A_BYTE

    def code_holds(self) -> str:
        pairs = [0xFFFF_FFFF if self.wide() else 0xFFFF] if self.kerning() else []
        return literals.integer_type([*(one.code for one in self.entries), *pairs])

    def glyph_record(self) -> Record:
        lists: dict[str, list[int]] = {
            name: [] for name in ("first_byte", "left", "drop", "width", "height", "advance")
        }
        of = [found for found in self.sets_in_order() for _ in range(found.count)]
        for one, place in zip(self.entries, of, strict=True):
            glyph = one.glyph
            inked = bool(glyph.width and glyph.height)
            blob = packed(glyph, place.encoding) if inked else b""
            lists["first_byte"].append(self.pool.place(blob, f"{one.of} {one.title}", glyph))
            lists["left"].append(glyph.left - place.left if inked else 0)
            lists["drop"].append(place.top - glyph.top if inked else 0)
            lists["width"].append(glyph.width if inked else 0)
            lists["height"].append(glyph.height if inked else 0)
            lists["advance"].append(glyph.advance)
        comments = {"left": "columns between the pen and the first", "drop": "rows over the first"}
        members = ordered(
            [
                Member(
                    name,
                    literals.integer_type(values) if name == "first_byte" else literals.pixels_type(values),
                    comments.get(name, ""),
                )
                for name, values in lists.items()
            ]
        )
        rows = [{name: str(values[n]) for name, values in lists.items()} for n in range(len(self.entries))]
        lines = []
        for n, line in enumerate(table(members, rows)):
            if n in self.sections:
                origin = (
                    f"columns from {of[n].left} px off the pen, rows from {of[n].top} px over the baseline"
                )
                lines += [f"/* {self.sections[n]} */", f"/* {origin}; bitmaps as {of[n].encoding} */"]
            lines.append(f"{line} /* {literals.clipped(self.entries[n].title)} */")
        array = Array(f"{self.layout}_glyphs_[]", tuple(lines))
        return record(self.layout, "glyph", "A glyph, in pixels.", members, [array])

    def code_table(self) -> Table:
        lines = []
        for found in self.sets_in_order():
            codes = [one.code for one in self.entries[found.first : found.first + found.count]]
            lines += literals.rows(f"0x{code:02X}" for code in codes)
        comment = (
            "Of each glyph, the bytes of its character as one number; of an icon's state, its number from 1."
        )
        return Table(f"{self.layout}_codes_", self.code_holds(), comment, tuple(lines))

    def pair_tables(self) -> list[Table]:
        pairs = [
            (one, self.sets[one.spec.name].first + 1, left, right, pixels)
            for one in self.types
            for left, right, pixels in one.pairs
        ]
        shift = 16 if self.wide() else 8
        keys, kerns = [], []
        for one in self.types:
            mine = [pair for pair in pairs if pair[0] is one]
            if mine:
                title = f"    /* {one.spec.name} */"
                keys += [
                    title,
                    *literals.rows(f"0x{a + first << shift | b + first:04X}" for _, first, a, b, _ in mine),
                ]
                kerns += [title, *literals.rows(str(pixels) for *_, pixels in mine)]
        return [
            Table(
                f"{self.layout}_pairs_",
                self.code_holds(),
                f"Pairs of glyphs: the place of the left one, from 1, times {1 << shift}, and of the right one.",
                tuple(keys),
            ),
            Table(
                f"{self.layout}_kerns_",
                literals.integer_type(pixels for *_, pixels in pairs),
                "How far the pen moves on between the two glyphs of each pair, in pixels.",
                tuple(kerns),
            ),
        ]

    def text_tables(self) -> list[Table]:
        made = []
        for screen, part in self.shown:
            if isinstance(part, Label):
                name = f"{lower(self.layout, 'text', screen.name, part.name)}_"
                text = f"{upper(self.layout, screen.name, part.name)}_TEXT"
                made.append(Table(name, "char", f"the label `{part.name}`", (text,)))
        return made

    def ink_tables(self) -> list[Table]:
        made = []
        for screen, part in self.icons:
            if any(state.ink for state in part.states):
                own = upper(self.layout, screen.name, part.name)
                inks = [
                    upper(self.layout, "ink", state.ink) if state.ink else f"{own}_INK"
                    for state in part.states
                ]
                name = f"{lower(self.layout, 'inks', screen.name, part.name)}_"
                comment = f"Inks of the states of the icon `{part.name}`."
                made.append(Table(name, "uint16", comment, tuple(literals.rows(inks))))
        return made

    def reach(self, one: TypeGlyphs) -> int:
        """Return how far behind a pen this or a later glyph can begin to ink (0 or less).

        Where columns count from the least left bearing, the glyph at the pen itself begins at the pen or later.
        """
        texts = [longest(part) for part in self.texts if part.type == one.spec.name]
        return min(one.least_left, 0) * self.cells - one.steps[0] * max(texts)

    def px(self) -> str:
        """Return the C type that holds every place of every text."""
        greatest = 0
        by_name = {one.spec.name: one for one in self.types}
        for part in self.texts:
            one = by_name[part.type]
            way = abs(part.x) + 2 * max(one.steps) * longest(part) + 2 * one.extent - self.reach(one)
            greatest = max(greatest, way)
        return "int" if greatest <= GREATEST_PLACE else "int32_t"

    def part_record(self) -> Record:
        rows = [self._part(screen, part) for screen, part in self.shown]
        area = area_type(self.material.layout.panel)
        found = [self.set_of(screen, part) for screen, part in self.shown]
        members = [
            Member("x", "int16", "of the first pen; or of the last, or the middle"),
            Member("y", "int16", "of the rows from which its glyphs drop"),
            *(Member(name, area) for name in ("left", "top", "right", "bottom")),
        ]
        if self.cells:
            members += [Member(name, area) for name in ("cell_top", "cell_bottom")]
        folded = [
            Member("ink", "uint16"),
            Member("ground", "uint16"),
            Member(
                "longest",
                literals.integer_type([1, *map(longest, self.texts)]),
                comment="bytes of its text",
            ),
            Member("first", literals.integer_type([len(self.entries)]), comment="place of its first glyph"),
            Member("glyphs", literals.integer_type(one.count for one in found)),
            Member("depth", "uint8", comment="bits a pixel"),
            Member("form", "uint8", comment="of its bitmaps"),
            Member("ramp", literals.integer_type([len(self.ramps)])),
            Member("alignment", "uint8"),
            Member("clearing", "uint8"),
        ]
        if self.cells:
            folded.append(Member("own_cell", "uint8", comment="whether its cell is as high as its bitmap"))
        for member in folded:
            values = {row[member.name] for row in rows}
            members.append(replace(member, may_fold=True, always=values.pop() if len(values) == 1 else ""))
        # Coordinates first: what lies near the beginning of a structure is reached by the shortest instructions.
        kept = [member for member in members if not member.always]
        kept = ordered(kept)
        arrays = []
        for (screen, part), row in zip(self.shown, rows, strict=True):
            name = f"{lower(self.layout, 'part', screen.name, part.name)}_"
            arrays.append(Array(name, tuple(literals.rows((row[member.name] for member in kept), ""))))
        made = record(
            self.layout,
            "part",
            "A text or an icon: its place, and what an update repaints.",
            [*kept, *(member for member in members if member.always)],
            arrays,
        )
        prefix = upper(self.layout)
        words = [*enumerate(CLEARINGS), *((n, f"as_{form}") for n, form in enumerate(FORMS))]
        clearings = literals.aligned([(f"#define {prefix}_{word.upper()}_", str(n)) for n, word in words])
        return Record(made.name, made.comment, made.members, (*made.accessors, *clearings), made.arrays)

    def _part(self, screen: Screen, part: Shown) -> dict[str, str]:
        prefix, own = upper(self.layout), upper(self.layout, screen.name, part.name)
        found = self.set_of(screen, part)
        width, height = f"{prefix}_PANEL_WIDTH", f"{prefix}_PANEL_HEIGHT"
        across, down = f"{prefix}_ACROSS_", f"{prefix}_DOWN_"
        if isinstance(part, Icon) or (isinstance(part, Field) and part.padding is not None):
            pad = f"{own}_PADDING"
            area = [
                f"{across}({pad}_X)",
                f"{down}({pad}_Y)",
                f"{across}({pad}_X + {pad}_WIDTH)",
                f"{down}({pad}_Y + {pad}_HEIGHT)",
            ]
        else:
            area = ["0", "0", width, height]
        row = dict(zip(("left", "top", "right", "bottom"), area, strict=True))
        row |= {"ink": f"{own}_INK", "ground": f"{own}_GROUND", "ramp": "0", "depth": "1"}
        row["form"] = f"{prefix}_AS_{found.encoding.upper()}_"
        row |= {"first": str(found.first), "glyphs": str(found.count)}
        clearing = "none" if isinstance(part, Label) else part.clearing
        row["clearing"] = f"{prefix}_{clearing.upper()}_"
        row["x"] = f"{own}_X{_by(found.left)}"
        y, ascent, descent = f"{own}_Y", "0", "0"
        if isinstance(part, Icon):
            row |= {"longest": "1", "alignment": f"{prefix}_{ALIGNMENTS['left']}"}
        else:
            kind = upper(self.layout, "type", part.type)
            y, ascent, descent = f"{own}_BASELINE", f"{kind}_ASCENT", f"{kind}_DESCENT"
            one = next(one for one in self.types if one.spec.name == part.type)
            row |= {"longest": str(longest(part)), "alignment": f"{own}_ALIGNMENT", "depth": str(one.depth)}
            row["alignment"] = f"{prefix}_{ALIGNMENTS[part.align]}"
            if one.depth > 1:
                pair = part.ink, part.ground or screen.ground
                row["ramp"] = str(self.ramps.setdefault(pair, len(self.ramps)))
        row["y"] = f"{y}{_by(-found.top)}"
        if self.cells:
            bottom = f"{y} + {descent}"
            row["own_cell"] = str(int(isinstance(part, Icon)))
            inside = f"({area_type(self.material.layout.panel)}_t){prefix}_WITHIN_"
            row["cell_top"] = f"{inside}({y} - {ascent}, {row['top']}, {row['bottom']})"
            row["cell_bottom"] = f"{inside}({bottom}, {row['top']}, {row['bottom']})"
        return row

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


def _overlapping(maker: _Maker) -> bool:
    used = texts_by_type(maker.material)
    return any(overlaps(one, *used[one.spec.name]) for one in maker.types)


def data(material: Material) -> Data:
    """Return the constant data of a layout.

    Raises Problem where it would be larger than 4 GiB, or an icon has more states than a byte tells.
    """
    maker = _Maker(material)
    panel = material.layout.panel
    kerning = maker.kerning()
    glyph = maker.glyph_record()
    if maker.pool.size > GREATEST_BITS:
        raise Problem("the bitmaps of this layout take more than 4 GiB; use smaller types")
    part = maker.part_record()
    codes = maker.code_table()
    pairs = maker.pair_tables() if kerning else []
    tables = [codes, *pairs, *maker.text_tables(), *maker.ink_tables()]
    depth_of = {one.spec.name: one.depth for one in maker.types}
    most = max((e.glyph.width * e.glyph.height * depth_of.get(e.of, 1) for e in maker.entries), default=0)
    greatest = max((one.code for one in maker.entries), default=0)
    place = "uint16" if maker.wide() else "uint8"
    changed = [part for _, part in maker.shown if changes_by_parts(part)] if panel.refresh == "part" else []
    opaque = maker.clearings & ({"pad", "cell", "box"} if changed else {"pad", "cell"})
    clear = maker.clearings & {"none", "cell", "box"}
    return Data(
        records=(glyph, part),
        tables=tuple(tables),
        bitmaps=maker.bitmaps(),
        bits_size=maker.pool.size,
        bit_type="unsigned" if most < 1 << 16 else "uint32_t",
        px=maker.px(),
        count_type=count_type(panel),
        area_holds=area_type(panel),
        code_type=f"{codes.holds}_t",
        code_bits=codes.bits,
        lead=max(1, (greatest.bit_length() + 7) // 8),
        place_type=f"{place}_t",
        place_bits=16 if maker.wide() else 8,
        kern_holds=pairs[1].holds if pairs else "",
        kern_bits=pairs[1].bits if pairs else 0,
        pair_count=sum(len(one.pairs) for one in maker.types),
        reach=min((maker.reach(one) for one in maker.types), default=0),
        ramps=maker.ramp_lines(),
        kerning=kerning,
        overlaps=_overlapping(maker),
        rows=any(one.encoding != "runs" for one in maker.sets_in_order()),
        repeats=any(one.encoding == "repeats" for one in maker.sets_in_order()),
        runs=any(one.encoding == "runs" for one in maker.sets_in_order()),
        half_type="uint16_t" if maker.pool.size < 1 << 15 else "uint32_t",
        one_depth=len({one.depth for one in maker.types} | ({1} if maker.icons else set())) < 2,
        opaque=bool(opaque),
        modes=bool(opaque and clear),
        cells=maker.cells,
        cell_icons=any(icon.clearing == "cell" for _, icon in maker.icons),
        boxes="box" in maker.clearings,
        aligned=any(part.align != "left" for part in maker.texts),
        fixed=any(isinstance(part, Label) for part in maker.texts),
        fields_too=any(isinstance(part, Field) for part in maker.texts) or bool(maker.icons),
        icons=bool(maker.icons),
        changes=bool(changed),
        icon_changes=any(isinstance(part, Icon) for part in changed),
        seen_type="uint8_t" if all(one.depth == 1 for one in maker.types) else "uint32_t",
        strip=STRIP,
        window_cost=-(-WINDOW_BITS // pixel_bits(panel)),
        inks_vary=any(state.ink for _, icon in maker.icons for state in icon.states),
    )
