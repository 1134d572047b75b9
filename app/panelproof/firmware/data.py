"""What the templates of the implementation need to know of a layout, its constant data first."""

from __future__ import annotations

from dataclasses import dataclass

from panelproof.firmware.bus import pixel_bits
from panelproof.firmware.glyphdata import texts_by_type
from panelproof.firmware.overlap import overlaps
from panelproof.firmware.partrecord import part_record
from panelproof.firmware.records import Record, Table
from panelproof.firmware.stock import Stock
from panelproof.firmware.tables import (
    bitmaps,
    code_table,
    glyph_record,
    ink_tables,
    pair_tables,
    ramp_lines,
    text_tables,
)
from panelproof.firmware.widths import area_type, count_type
from panelproof.layout.parts import Field, Icon, Label, Part
from panelproof.material import Material

# Columns that a change looks at together: narrower costs more windows, wider sends more that has not changed
# (tests/bench/test_changes.py). A window takes 11 bytes on the bus (MIPI Display Command Set).
STRIP = 8
WINDOW_BITS = 11 * 8


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


def changes_by_parts(part: Part) -> bool:
    """Tell whether a part can be brought up to date by what differs: its whole padding box is known."""
    return isinstance(part, Field | Icon) and part.clearing in ("pad", "box")


def _overlapping(stock: Stock) -> bool:
    used = texts_by_type(stock.material)
    return any(overlaps(one, *used[one.spec.name]) for one in stock.types)


def data(material: Material) -> Data:
    """Return the constant data of a layout.

    Raises Problem where it would be larger than 4 GiB, or an icon has more states than a byte tells.
    """
    stock = Stock(material)
    panel = material.layout.panel
    kerning = stock.kerning()
    glyph = glyph_record(stock)
    part = part_record(stock)
    codes = code_table(stock)
    pairs = pair_tables(stock) if kerning else []
    tables = [codes, *pairs, *text_tables(stock), *ink_tables(stock)]
    most = max((e.glyph.width * e.glyph.height * stock.depths.get(e.of, 1) for e in stock.entries), default=0)
    greatest = max((one.code for one in stock.entries), default=0)
    place = "uint16" if stock.wide() else "uint8"
    changed = [part for _, part in stock.shown if changes_by_parts(part)] if panel.refresh == "part" else []
    opaque = stock.clearings & ({"pad", "cell", "box"} if changed else {"pad", "cell"})
    clear = stock.clearings & {"none", "cell", "box"}
    return Data(
        records=(glyph, part),
        tables=tuple(tables),
        bitmaps=bitmaps(stock),
        bits_size=stock.pool.size,
        bit_type="unsigned" if most < 1 << 16 else "uint32_t",
        px=stock.px(),
        count_type=count_type(panel),
        area_holds=area_type(panel),
        code_type=f"{codes.holds}_t",
        code_bits=codes.bits,
        lead=max(1, (greatest.bit_length() + 7) // 8),
        place_type=f"{place}_t",
        place_bits=16 if stock.wide() else 8,
        kern_holds=pairs[1].holds if pairs else "",
        kern_bits=pairs[1].bits if pairs else 0,
        pair_count=sum(len(one.pairs) for one in stock.types),
        reach=min((stock.reach(one) for one in stock.types), default=0),
        ramps=ramp_lines(stock),
        kerning=kerning,
        overlaps=_overlapping(stock),
        rows=any(one.encoding != "runs" for one in stock.sets_in_order()),
        repeats=any(one.encoding == "repeats" for one in stock.sets_in_order()),
        runs=any(one.encoding == "runs" for one in stock.sets_in_order()),
        half_type="uint16_t" if stock.pool.size < 1 << 15 else "uint32_t",
        one_depth=len({one.depth for one in stock.types} | ({1} if stock.icons else set())) < 2,
        opaque=bool(opaque),
        modes=bool(opaque and clear),
        cells=stock.cells,
        cell_icons=any(icon.clearing == "cell" for _, icon in stock.icons),
        boxes="box" in stock.clearings,
        aligned=any(part.align != "left" for part in stock.texts),
        fixed=any(isinstance(part, Label) for part in stock.texts),
        fields_too=any(isinstance(part, Field) for part in stock.texts) or bool(stock.icons),
        icons=bool(stock.icons),
        changes=bool(changed),
        icon_changes=any(isinstance(part, Icon) for part in changed),
        seen_type="uint8_t" if all(one.depth == 1 for one in stock.types) else "uint32_t",
        strip=STRIP,
        window_cost=-(-WINDOW_BITS // pixel_bits(panel)),
        inks_vary=any(state.ink for _, icon in stock.icons for state in icon.states),
    )
