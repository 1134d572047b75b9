"""Glyph data in five forms on real fonts: bytes of data and of decoder, and instructions.

    python -m tests.bench.encodings

Every form can be read from any row on, so that a text is drawn row by row, in one pass and without a buffer:

- rows: the pixels of a glyph row after row with nothing between (firmware/encoding.py)
- repeats: a bit a row that tells whether it is as the one before, then the other rows as above (the same file)
- shared: each row as the number of a row in one table of the type
- runs: rows as run lengths in halves of bytes, each row with its length before it (the same file)

Beside them stand plain cells (advance times the height of a line, each row filled up to a byte; 4 bits a pixel where
antialiased) and what zlib and LZMA make of the rows of all glyphs at once, which no one can draw from without a buffer.
Decoders are compiled by arm-none-eabi-gcc and avr-gcc at -Os. Instructions are those of the host under valgrind's
callgrind, for each pixel of every glyph's box; each decoder's pixels are compared with the font's before.
"""

from __future__ import annotations

import lzma
import shutil
import subprocess
import sys
import tempfile
import zlib
from collections.abc import Callable, Sequence
from pathlib import Path

from panelproof.firmware.encoding import packed
from panelproof.glyphs.catalogue import find
from panelproof.glyphs.glyph import Glyph
from panelproof.glyphs.type import open_type

ROOT = Path(__file__).parents[2]
ASCII = [chr(code) for code in range(32, 127)] + ["\N{DEGREE SIGN}"]
NUMERALS = list("0123456789.-+:% \N{DEGREE SIGN}CVA")
FONTS: list[tuple[str, int | None, bool]] = [
    *((f"pellucet-{size}", None, False) for size in (8, 12, 16, 24, 32, 48)),
    ("pellucet-numerals-64", None, False),
    *((font, size, soft) for soft in (False, True) for font in ("SourceSansPro", "HankenGrotesk")
      for size in (12, 16, 24, 32, 48)),
]  # fmt: skip

COMMON = r"""
#include <stdint.h>
void to(int x, unsigned level);
typedef struct glyph { unsigned first, width, height; } glyph;
extern const uint8_t bits[];
#ifdef __AVR__
#include <avr/pgmspace.h>
#define READ8(address) pgm_read_byte(address)
#else
#define READ8(address) (*(address))
#endif
void row_of(const glyph *one, unsigned row);
"""
LEVEL = r"""
static unsigned level(const uint8_t *from, unsigned pixel)
{
    pixel *= DEPTH;
    return (unsigned)READ8(from + (pixel >> 3)) >> (pixel & 7) & ((1u << DEPTH) - 1);
}
static void pixels(const uint8_t *from, unsigned first, unsigned width)
{
    unsigned x;
    for (x = 0; x < width;) { unsigned now = level(from, first + x); to((int)++x, now); }
}
"""
DECODERS = {
    "rows": LEVEL
    + r"""
void row_of(const glyph *one, unsigned row) { pixels(bits + one->first, row * one->width, one->width); }
""",
    "repeats": LEVEL
    + r"""
void row_of(const glyph *one, unsigned row)
{
    const uint8_t *from = bits + one->first;
    unsigned n, distinct = 0;
    for (n = 1; n <= row; ++n) distinct += !(READ8(from + (n >> 3)) >> (n & 7) & 1);
    pixels(from + ((one->height + 7) >> 3), distinct * one->width, one->width);
}
""",
    "shared": LEVEL
    + r"""
void row_of(const glyph *one, unsigned row)
{
#if WIDE
    const uint8_t *at = bits + TABLE + one->first + 2 * row;
    unsigned number = READ8(at) | READ8(at + 1) << 8;
#else
    unsigned number = READ8(bits + TABLE + one->first + row);
#endif
    const uint8_t *place = bits + 2 * number;
    pixels(bits + (READ8(place) | READ8(place + 1) << 8), 0, one->width);
}
""",
    "runs": r"""
static unsigned half;
static unsigned take(void)
{
    unsigned byte = READ8(bits + (half >> 1));
    return half++ & 1 ? byte >> 4 : byte & 15;
}
static unsigned number(void)
{
    unsigned sum = 0, one;
    do { one = take(); sum += one; } while (one == 15);
    return sum;
}
void row_of(const glyph *one, unsigned row)
{
    unsigned begin = 0, end = 0, x = 0, level = 1, halves;
    half = one->first * 2;
    do {
        halves = number();
        if (halves) { begin = half; half = end = begin + halves - 1; }
    } while (row--);
    half = begin;
    while (half != end) {
#if DEPTH == 1
        level ^= 1;
        x += number();
#else
        level = take();
        x += level == 0 || level == 15 ? number() + 1 : 1;
#endif
        to((int)x, level);
    }
    to((int)one->width, 0);
}
""",
}
DRIVER = r"""
#include <stdio.h>
#include <string.h>
static int at, checks;
static unsigned char seen[4096];
static volatile unsigned sink;
void to(int x, unsigned level)
{
    sink = level;
    if (checks) for (; at < x; ++at) seen[at] = (unsigned char)level;
}
int main(int count, char **words)
{
    const unsigned char *next = expected;
    unsigned n, row;
    (void)words;
    checks = count > 1;
    for (n = 0; n < sizeof glyphs / sizeof *glyphs; ++n)
        for (row = 0; row < glyphs[n].height; ++row, next += glyphs[n].width) {
            at = 0;
            row_of(&glyphs[n], row);
            if (checks && memcmp(seen, next, glyphs[n].width)) return 1;
        }
    return 0;
}
"""

Form = tuple[bytes, list[int], str]  # data, where each glyph begins, and macros


def levels(glyph: Glyph) -> list[bytes]:
    """Return the rows of a glyph as levels, 0 and 1 where it has one bit a pixel."""
    if glyph.levels:
        return [glyph.levels[n * glyph.width : (n + 1) * glyph.width] for n in range(glyph.height)]
    return [bytes(row >> x & 1 for x in range(glyph.width)) for row in glyph.rows]


def tight(rows: Sequence[bytes], depth: int) -> bytes:
    """Pack rows with nothing between."""
    flat = b"".join(rows)
    bits = sum(level << place * depth for place, level in enumerate(flat))
    return bits.to_bytes((len(flat) * depth + 7) // 8, "little")


def one_by_one(glyphs: Sequence[Glyph], pack: Callable[[Glyph], bytes]) -> Form:
    """Put each glyph's data after the one before."""
    data, firsts = b"", []
    for glyph in glyphs:
        firsts.append(len(data))
        data += pack(glyph)
    return data, firsts, ""


def shared(glyphs: Sequence[Glyph], depth: int) -> Form:
    """A table of the rows' places, the rows, then each glyph's rows as numbers."""
    known: dict[bytes, int] = {}
    numbers = [[known.setdefault(tight([row], depth), len(known)) for row in levels(one)] for one in glyphs]
    wide = 2 if len(known) > 256 else 1
    places, rows = b"", b""
    for row in known:
        places += (2 * len(known) + len(rows)).to_bytes(2, "little")
        rows += row
    data, firsts = places + rows, []
    table = len(data)
    for listed in numbers:
        firsts.append(len(data) - table)
        data += b"".join(number.to_bytes(wide, "little") for number in listed)
    return data, firsts, f"-DTABLE={table} -DWIDE={int(wide == 2)}"


def forms(glyphs: Sequence[Glyph], depth: int) -> dict[str, Form]:
    """Return the data of every form."""
    return {
        "rows": one_by_one(glyphs, lambda glyph: packed(glyph, "rows")),
        "repeats": one_by_one(glyphs, lambda glyph: packed(glyph, "repeats")),
        "shared": shared(glyphs, depth),
        "runs": one_by_one(glyphs, lambda glyph: packed(glyph, "runs")),
    }


def size(folder: Path, compiler: str, source: Path, macros: str) -> int:
    """Return the bytes of code that a compiler makes of a decoder."""
    flags = "-mcpu=cortex-m0 -mthumb" if compiler.startswith("arm") else "-mmcu=atmega328p"
    made = folder / "size.o"
    command = [
        f"{compiler}-gcc",
        *flags.split(),
        "-Os",
        "-std=gnu99",
        *macros.split(),
        "-c",
        str(source),
        "-o",
        str(made),
    ]
    subprocess.run(command, check=True)
    listed = subprocess.run([f"{compiler}-size", made], capture_output=True, text=True, check=True).stdout
    return int(listed.splitlines()[1].split()[0])


def instructions(folder: Path, program: Path) -> int:
    """Return how many instructions a run takes under callgrind, inside `row_of` and what it calls."""
    out = folder / "counts"
    command = [
        "valgrind",
        "-q",
        "--tool=callgrind",
        "--toggle-collect=row_of",
        f"--callgrind-out-file={out}",
        str(program),
    ]
    subprocess.run(command, check=True, capture_output=True)
    return next(int(line.split()[1]) for line in out.read_text().splitlines() if line.startswith("summary:"))


def measured(
    folder: Path, name: str, form: Form, glyphs: Sequence[Glyph], depth: int
) -> tuple[int, int, float]:
    """Return a decoder's bytes on Cortex-M0 and AVR, and its instructions a pixel."""
    data, firsts, macros = form
    macros = f"-DDEPTH={depth} {macros}"
    source = folder / "decoder.c"
    source.write_text(COMMON + DECODERS[name])
    sizes = size(folder, "arm-none-eabi", source, macros), size(folder, "avr", source, macros)
    expected = b"".join(b"".join(levels(glyph)) for glyph in glyphs)
    rows = ",".join(
        f"{{{first},{glyph.width},{glyph.height}}}" for first, glyph in zip(firsts, glyphs, strict=True)
    )
    (folder / "whole.c").write_text(
        COMMON
        + f"const uint8_t bits[] = {{{','.join(map(str, data))}}};\nconst glyph glyphs[] = {{{rows}}};\n"
        + f"static const unsigned char expected[] = {{{','.join(map(str, expected))}}};\n"
        + DRIVER
    )
    program = folder / "program"
    command = [
        "gcc",
        "-O1",
        "-fno-inline",
        *macros.split(),
        str(folder / "whole.c"),
        str(source),
        "-o",
        str(program),
    ]
    subprocess.run(command, check=True)
    subprocess.run([program, "check"], check=True)
    return *sizes, instructions(folder, program) / len(expected)


def main() -> None:
    """Print the table."""
    for tool in ("arm-none-eabi-gcc", "avr-gcc", "valgrind"):
        if shutil.which(tool) is None:
            sys.exit(f"{tool} is not installed")
    names = list(DECODERS)
    heads = ["cells", *names, "zlib", "lzma"]
    print(f"{'':34}{'bytes of data (ratio to plain cells)':^97}   instructions a pixel")
    print(
        f"{'type':26}{'glyphs':>7} {''.join(f'{head:>14}' for head in heads)}   {' '.join(f'{n:>8}' for n in names)}"
    )
    code: dict[tuple[str, int], tuple[int, int]] = {}
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        for font, pixels, soft in FONTS:
            own = ROOT / "fonts_free" / f"{font}.bdf"
            type_ = open_type(
                own if own.exists() else find(font, ROOT),
                pixels,
                "antialiased" if soft else "one-bit",
                False,
                True,
            )
            for kind, chars in (("ASCII", ASCII), ("numbers", NUMERALS)):
                found = [glyph for char in chars if (glyph := type_.glyph(char)) is not None]
                inked = list(dict.fromkeys(glyph for glyph in found if glyph.width and glyph.height))
                depth = 4 if soft else 1
                cells = sum(-(-glyph.advance * depth // 8) for glyph in found) * (
                    type_.ascent + type_.descent
                )
                every = forms(inked, depth)
                rows = every["rows"][0]
                filters = [{"id": lzma.FILTER_LZMA2, "preset": 9 | lzma.PRESET_EXTREME}]
                sizes = [
                    *(len(every[name][0]) for name in names),
                    len(zlib.compress(rows, 9)),
                    len(lzma.compress(rows, format=lzma.FORMAT_RAW, filters=filters)),
                ]
                speeds = []
                for name in names:
                    *bytes_of_code, speed = measured(folder, name, every[name], inked, depth)
                    code.setdefault((name, depth), (bytes_of_code[0], bytes_of_code[1]))
                    speeds.append(f"{speed:8.1f}")
                shown = "".join(f"{one:7} ({one / cells:.2f})" for one in sizes)
                title = f"{font} {pixels or ''}{' antialiased' if soft else ''}"
                print(
                    f"{title if kind == 'ASCII' else '':26}{kind:>7} {cells:14}{shown}   {' '.join(speeds)}",
                    flush=True,
                )
    print("\ndecoder, bytes of code: Cortex-M0 / AVR")
    for (name, depth), (arm, avr) in code.items():
        print(f"  {name}, {'one-bit' if depth == 1 else 'antialiased'}: {arm} / {avr}")


if __name__ == "__main__":
    main()
