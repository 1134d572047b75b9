"""The tables of a header but for the parts': glyphs, codes, kerning, texts of labels, inks of states, bitmaps."""

from __future__ import annotations

from panelproof.firmware import literals
from panelproof.firmware.names import lower, upper
from panelproof.firmware.records import Array, Member, Record, Table, ordered, record, table
from panelproof.firmware.stock import Stock
from panelproof.layout.parts import Label


def glyph_record(stock: Stock) -> Record:
    """Return the structure of a glyph and the table of all."""
    lists: dict[str, list[int]] = {
        name: [] for name in ("first_byte", "left", "drop", "width", "height", "advance")
    }
    of = stock.of_each()
    for one, place, first_byte in zip(stock.entries, of, stock.first_bytes, strict=True):
        glyph = one.glyph
        inked = bool(glyph.width and glyph.height)
        lists["first_byte"].append(first_byte)
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
    rows = [{name: str(values[n]) for name, values in lists.items()} for n in range(len(stock.entries))]
    lines = []
    for n, line in enumerate(table(members, rows)):
        if n in stock.sections:
            origin = f"columns from {of[n].left} px off the pen, rows from {of[n].top} px over the baseline"
            lines += [f"/* {stock.sections[n]} */", f"/* {origin}; bitmaps as {of[n].encoding} */"]
        lines.append(f"{line} /* {literals.clipped(stock.entries[n].title)} */")
    array = Array(f"{stock.layout}_glyphs_[]", tuple(lines))
    return record(stock.layout, "glyph", "A glyph, in pixels.", members, [array])


def code_table(stock: Stock) -> Table:
    """Return each glyph's code."""
    lines = []
    for found in stock.sets_in_order():
        codes = [one.code for one in stock.entries[found.first : found.first + found.count]]
        lines += literals.rows(f"0x{code:02X}" for code in codes)
    comment = (
        "Of each glyph, the bytes of its character as one number; of an icon's state, its number from 1."
    )
    return Table(f"{stock.layout}_codes_", stock.code_holds(), comment, tuple(lines))


def pair_tables(stock: Stock) -> list[Table]:
    """Return the pairs that are kerned, and how far."""
    pairs = [
        (one, stock.sets[one.spec.name].first + 1, left, right, pixels)
        for one in stock.types
        for left, right, pixels in one.pairs
    ]
    shift = 16 if stock.wide() else 8
    keys, kerns = [], []
    for one in stock.types:
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
            f"{stock.layout}_pairs_",
            stock.code_holds(),
            f"Pairs of glyphs: the place of the left one, from 1, times {1 << shift}, and of the right one.",
            tuple(keys),
        ),
        Table(
            f"{stock.layout}_kerns_",
            literals.integer_type(pixels for *_, pixels in pairs),
            "How far the pen moves on between the two glyphs of each pair, in pixels.",
            tuple(kerns),
        ),
    ]


def text_tables(stock: Stock) -> list[Table]:
    """Return the texts of labels."""
    made = []
    for screen, part in stock.shown:
        if isinstance(part, Label):
            name = f"{lower(stock.layout, 'text', screen.name, part.name)}_"
            text = f"{upper(stock.layout, screen.name, part.name)}_TEXT"
            made.append(Table(name, "char", f"the label `{part.name}`", (text,)))
    return made


def ink_tables(stock: Stock) -> list[Table]:
    """Return the inks of the states of each icon whose states have inks of their own."""
    made = []
    for screen, part in stock.icons:
        if any(state.ink for state in part.states):
            own = upper(stock.layout, screen.name, part.name)
            inks = [
                upper(stock.layout, "ink", state.ink) if state.ink else f"{own}_INK" for state in part.states
            ]
            name = f"{lower(stock.layout, 'inks', screen.name, part.name)}_"
            comment = f"Inks of the states of the icon `{part.name}`."
            made.append(Table(name, "uint16", comment, tuple(literals.rows(inks))))
    return made


def ramp_lines(stock: Stock) -> tuple[tuple[str, str], ...]:
    """Return of each ramp its title and its colours."""
    made = []
    for (ink, ground), _ in stock.ramps.items():
        codes = ", ".join(literals.colour(code) for code in stock.material.ramp(ink, ground)[1:15])
        made.append((f"{ink} on {ground}", f"{{ {codes} }},"))
    return tuple(made)


def bitmaps(stock: Stock) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Return of each bitmap its title and its bytes."""
    made = []
    for blob in stock.pool.blobs:
        title = literals.comment(", ".join(stock.pool.titles[blob]))
        made.append((title, tuple(literals.rows(f"0x{byte:02X}" for byte in blob))))
    return tuple(made) or (("no pixels", ("    0,",)),)
