"""What the drawing code holds of each text and icon: its place, and what an update repaints."""

from __future__ import annotations

from dataclasses import replace

from panelproof.firmware import literals
from panelproof.firmware.constants import ALIGNMENTS
from panelproof.firmware.encoding import FORMS
from panelproof.firmware.names import lower, upper
from panelproof.firmware.records import Array, Member, Record, ordered, record
from panelproof.firmware.stock import Shown, Stock, longest
from panelproof.firmware.widths import area_type
from panelproof.layout.document import Screen
from panelproof.layout.parts import Field, Icon, Label

CLEARINGS = ("none", "cell", "pad", "box")


def _by(pixels: int) -> str:
    return f" {'-' if pixels < 0 else '+'} {abs(pixels)}" if pixels else ""


def part_record(stock: Stock) -> Record:
    """Return the structure of a part, and each part as one."""
    rows = [_row(stock, screen, part) for screen, part in stock.shown]
    area = area_type(stock.material.layout.panel)
    found = [stock.set_of(screen, part) for screen, part in stock.shown]
    members = [
        Member("x", "int16", "of the first pen; or of the last, or the middle"),
        Member("y", "int16", "of the rows from which its glyphs drop"),
        *(Member(name, area) for name in ("left", "top", "right", "bottom")),
    ]
    if stock.cells:
        members += [Member(name, area) for name in ("cell_top", "cell_bottom")]
    folded = [
        Member("ink", "uint16"),
        Member("ground", "uint16"),
        Member(
            "longest",
            literals.integer_type([1, *map(longest, stock.texts)]),
            comment="bytes of its text",
        ),
        Member("first", literals.integer_type([len(stock.entries)]), comment="place of its first glyph"),
        Member("glyphs", literals.integer_type(one.count for one in found)),
        Member("depth", "uint8", comment="bits a pixel"),
        Member("form", "uint8", comment="of its bitmaps"),
        Member("ramp", literals.integer_type([len(stock.ramps)])),
        Member("alignment", "uint8"),
        Member("clearing", "uint8"),
    ]
    if stock.cells:
        folded.append(Member("own_cell", "uint8", comment="whether its cell is as high as its bitmap"))
    for member in folded:
        values = {row[member.name] for row in rows}
        members.append(replace(member, may_fold=True, always=values.pop() if len(values) == 1 else ""))
    # Coordinates first: what lies near the beginning of a structure is reached by the shortest instructions.
    kept = [member for member in members if not member.always]
    kept = ordered(kept)
    arrays = []
    for (screen, part), row in zip(stock.shown, rows, strict=True):
        name = f"{lower(stock.layout, 'part', screen.name, part.name)}_"
        arrays.append(Array(name, tuple(literals.rows((row[member.name] for member in kept), ""))))
    made = record(
        stock.layout,
        "part",
        "A text or an icon: its place, and what an update repaints.",
        [*kept, *(member for member in members if member.always)],
        arrays,
    )
    prefix = upper(stock.layout)
    words = [*enumerate(CLEARINGS), *((n, f"as_{form}") for n, form in enumerate(FORMS))]
    clearings = literals.aligned([(f"#define {prefix}_{word.upper()}_", str(n)) for n, word in words])
    return Record(made.name, made.comment, made.members, (*made.accessors, *clearings), made.arrays)


def _row(stock: Stock, screen: Screen, part: Shown) -> dict[str, str]:
    prefix, own = upper(stock.layout), upper(stock.layout, screen.name, part.name)
    found = stock.set_of(screen, part)
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
        kind = upper(stock.layout, "type", part.type)
        y, ascent, descent = f"{own}_BASELINE", f"{kind}_ASCENT", f"{kind}_DESCENT"
        one = next(one for one in stock.types if one.spec.name == part.type)
        row |= {"longest": str(longest(part)), "alignment": f"{own}_ALIGNMENT", "depth": str(one.depth)}
        row["alignment"] = f"{prefix}_{ALIGNMENTS[part.align]}"
        if one.depth > 1:
            pair = part.ink, part.ground or screen.ground
            row["ramp"] = str(stock.ramps[pair])
    row["y"] = f"{y}{_by(-found.top)}"
    if stock.cells:
        bottom = f"{y} + {descent}"
        row["own_cell"] = str(int(isinstance(part, Icon)))
        inside = f"({area_type(stock.material.layout.panel)}_t){prefix}_WITHIN_"
        row["cell_top"] = f"{inside}({y} - {ascent}, {row['top']}, {row['bottom']})"
        row["cell_bottom"] = f"{inside}({bottom}, {row['top']}, {row['bottom']})"
    return row
