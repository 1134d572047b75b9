"""Broken and hostile font files: each gives one sentence, soon, in little memory, and never anything else."""

from __future__ import annotations

import gzip
import os
import random
import re
import struct
import subprocess
import sys
import time
import zlib
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from fontTools.ttLib import TTFont
from tests.glyphs.sources import DATA, GROTESK, SANS, built, opened, pcf_with_metrics

from panelproof.glyphs.licence import embedding
from panelproof.glyphs.type import Rendering
from panelproof.problem import Problem

CUT = r"the font file `NAME` is damaged or cut short; fetch it anew"
NO_FONT = r"`NAME` is not a font file that can be used; use TTF, OTF, TTC, WOFF, BDF or PCF"
DAMAGED_CHARACTER = r"the character `.` of `NAME` cannot be drawn, as the font file is damaged; fetch it anew"


def cut(source: Path, share: float) -> bytes:
    data = source.read_bytes()
    return data[: int(len(data) * share)]


def woff() -> bytes:
    from io import BytesIO

    font, written = TTFont(SANS), BytesIO()
    font.flavor = "woff"
    font.save(written)
    return written.getvalue()


@cache
def gzip_bomb() -> bytes:
    """Return 320 MiB of nothing, packed."""
    return gzip.compress(bytes(320 << 20), 1, mtime=0)


def woff_bomb() -> bytes:
    """Return a WOFF file whose one table states 4 KiB and unpacks to 16 MiB."""
    packed = zlib.compress(bytes(16 << 20), 9)
    head = struct.pack(">4s4sIHHIHHIIIII", b"wOFF", b"\0\1\0\0", 64 + len(packed), 1, *[0] * 9)
    return head + struct.pack(">4sIIII", b"glyf", 64, len(packed), 20 << 20, 0) + packed


def woff_giant() -> bytes:
    head = struct.pack(">4s4sIHHIHHIIIII", b"wOFF", b"\0\1\0\0", 84, 1, *[0] * 9)
    return head + struct.pack(">4sIIII", b"glyf", 64, 20, 0xFFFFFFF0, 0) + bytes(20)


def lath(old: str, new: str) -> bytes:
    text = (DATA / "lath.bdf").read_text()
    assert old in text
    return text.replace(old, new).encode()


CASES: dict[str, tuple[str, Callable[[], bytes], str]] = {
    # name: the file's name, what is in it, the sentence
    "zero bytes": ("empty.ttf", lambda: b"", "the font file `NAME` is empty"),
    "one byte": ("one.otf", lambda: b"\0", CUT),
    "random bytes": ("noise.ttf", lambda: random.Random(1).randbytes(5000), NO_FONT),
    "random bytes as a bdf": ("noise.bdf", lambda: random.Random(2).randbytes(5000), NO_FONT),
    "a text": ("notes.ttf", lambda: b"Nothing but a few notes on the rain tank.\n" * 9, NO_FONT),
    "a ttf cut in its directory": ("cut.ttf", lambda: cut(SANS, 0.0005), CUT),
    "a ttf cut in half": ("cut.ttf", lambda: cut(SANS, 0.5), CUT),
    "a ttf less its last bytes": ("cut.ttf", lambda: SANS.read_bytes()[:-9], CUT),
    "an otf cut in half": ("cut.otf", lambda: cut(GROTESK, 0.5), CUT),
    "a collection of nothing": ("none.ttc", lambda: b"ttcf\0\1\0\0" + bytes(20), CUT),
    "a collection that leads nowhere": ("far.ttc", lambda: b"ttcf\0\1\0\0\0\0\0\1\xff\xff\xff\xff", CUT),
    "a head alone": ("head.ttf", lambda: b"\0\1\0\0\0\0" + bytes(50), CUT),
    "a directory of empty tables": (
        "hollow.ttf",
        lambda: b"\0\1\0\0" + struct.pack(">HHHH", 2, 0, 0, 0) + (b"cmap" + bytes(12)) * 2,
        CUT,
    ),
    "a woff cut in half": ("cut.woff", lambda: woff()[: len(woff()) // 2], CUT),
    "a woff bomb": ("bomb.woff", woff_bomb, CUT),
    "a woff of a giant table": ("giant.woff", woff_giant, "the font file `NAME` unpacks to far too much; .*"),
    "a woff2": ("web.woff", lambda: b"wOF2" + bytes(60), "`NAME` is a WOFF2 file, which is for web pages; .*"),
    "a gzip bomb": (
        "bomb.pcf.gz",
        gzip_bomb,
        "the font file `NAME` unpacks to more than 64 MiB; use a smaller font",
    ),
    "a cut gzip": ("cut.pcf.gz", lambda: cut(DATA / "lath.pcf.gz", 0.6), CUT),
    "a gzip less its checksum": ("cut.pcf.gz", lambda: (DATA / "lath.pcf.gz").read_bytes()[:-6], CUT),
    "no gzip": ("wrong.pcf.gz", lambda: b"\x1f\x8b" + bytes(90), CUT),
    "a gzip of nothing": ("void.pcf.gz", lambda: gzip.compress(b""), CUT),
    "a bdf cut in half": ("cut.bdf", lambda: cut(DATA / "lath.bdf", 0.5), CUT),
    "a bdf less its end": ("cut.bdf", lambda: cut(DATA / "lath.bdf", 1)[:-8], CUT),
    "a bdf without characters": ("bare.bdf", lambda: b"STARTFONT 2.1\nENDFONT\n", CUT),
    "a bdf of giant boxes": ("box.bdf", lambda: lath("BBX 5 7 0 0", "BBX 65535 65535 0 0"), CUT),
    "a pcf cut in half": ("cut.pcf", lambda: cut(DATA / "lath.pcf", 0.5), CUT),
    "a pcf cut in its list of tables": ("cut.pcf", lambda: cut(DATA / "lath.pcf", 0.02), CUT),
    "a pcf of countless tables": ("many.pcf", lambda: b"\1fcp\xff\xff\xff\xff" + bytes(500), CUT),
    "a pcf whose tables lead nowhere": (
        "far.pcf",
        lambda: b"\1fcp" + struct.pack("<I", 5) + struct.pack("<IIII", 4, 0, 90, 0xFFFFFF00) * 5,
        CUT,
    ),
    "a pcf of giant characters": (
        "giant.pcf",
        lambda: pcf_with_metrics(-32768, 32767, 9, 32767, 32767),
        "the character `.` of `NAME` would be 65535 × 65534 pixels; use another font",
    ),
    "a pcf of far characters": (
        "far.pcf",
        lambda: pcf_with_metrics(30000, 30008, 9, 8, 0),
        "the character `.` of `NAME` would be 8 × 8 pixels; use another font",
    ),
    "a pcf of bitmaps beyond its end": ("beyond.pcf", lambda: pcf_with_metrics(0, 900, 9, 900, 0), DAMAGED_CHARACTER),
    "a pcf of endless advances": (
        "wide.pcf",
        lambda: pcf_with_metrics(0, 5, 32767, 7, 0),
        "the character `.` of `NAME` moves the pen by more than 4096 pixels; use another font",
    ),
    "a pcf written leftwards": (
        "left.pcf",
        lambda: pcf_with_metrics(0, 5, -6, 7, 0),
        "the character `.` of `NAME` moves the pen to the left; use a font that is written rightwards",
    ),
}  # fmt: skip


def use(path: Path, size: int | None, rendering: Rendering = "one-bit") -> None:
    """Do with a font what a check does with it."""
    type = opened(path, size, rendering, kerning=True)
    for char in "0123456789-.AVj° ":
        type.glyph(char)
        type.kern("A", char)


@pytest.mark.parametrize("case", CASES)
def test_every_broken_file_has_its_sentence(case: str, tmp_path: Path) -> None:
    name, content, sentence = CASES[case]
    path = tmp_path / name
    path.write_bytes(content())
    bitmaps = path.suffix in (".bdf", ".pcf", ".gz")
    began = time.process_time()
    with pytest.raises(Problem) as caught:
        use(path, None if bitmaps else 24)
    assert re.fullmatch(sentence.replace("NAME", name), caught.value.message), caught.value.message
    assert time.process_time() - began < 2


def test_giant_outlines(tmp_path: Path) -> None:
    giant = built(tmp_path / "giant.ttf", units_per_em=16, height=32000, width=32000)
    with pytest.raises(
        Problem, match=r"^the character `A` of `giant.ttf` would be 48000 × 48000 pixels; choose a sm"
    ):
        opened(giant, 24).glyph("A")
    large = built(tmp_path / "large.ttf", units_per_em=16, height=64, width=64)
    assert opened(large, 128).glyph("A")
    with pytest.raises(
        Problem, match=r"^the character `A` of `large.ttf` would be 2048 × 2048 pixels; choose a small"
    ):
        opened(large, 512).glyph("A")


def test_giant_advances_and_lines(tmp_path: Path) -> None:
    wide = built(tmp_path / "wide.ttf", units_per_em=16, height=8, width=8, advance=32000)
    for hinting in (True, False):
        with pytest.raises(
            Problem, match=r"^the character `A` of `wide.ttf` moves the pen by more than 4096 pixels"
        ):
            opened(wide, 24, hinting=hinting).glyph("A")

    def change(font: Any) -> None:
        font["hhea"].ascent = font["OS/2"].sTypoAscender = 32000

    high = built(tmp_path / "high.ttf", units_per_em=16, height=8, width=8, change=change)
    with pytest.raises(
        Problem, match=r"^a line of `high.ttf` would be 480\d\d pixels high; choose a smaller size$"
    ):
        opened(high, 24)


def test_a_false_count_of_characters_does_no_harm(tmp_path: Path) -> None:
    path = tmp_path / "many.bdf"
    path.write_bytes(lath("CHARS 20", "CHARS 1000000"))
    assert opened(path).glyph("M") == opened(DATA / "lath.bdf").glyph("M")


@pytest.mark.parametrize("source", (DATA / "lath.bdf", DATA / "lath.pcf", DATA / "lath.pcf.gz"), ids=str)
def test_cut_anywhere(source: Path, tmp_path: Path) -> None:
    data = source.read_bytes()
    for length in (*range(1, len(data), 37), len(data) - 1):
        path = tmp_path / f"{length}{''.join(source.suffixes)}"
        path.write_bytes(data[:length])
        with pytest.raises(Problem, match=r"damaged or cut short; fetch it anew$"):
            opened(path)


def test_a_size_far_beyond_the_bound(tmp_path: Path) -> None:
    for size in (2**31, 2**63, -(2**63)):
        with pytest.raises(Problem, match=r"^a type's size must be 1 to 512 pixels, not "):
            opened(SANS, size)


def test_what_is_no_file(tmp_path: Path) -> None:
    (tmp_path / "folder.ttf").mkdir()
    os.mkfifo(tmp_path / "pipe.ttf")
    (tmp_path / "loop.ttf").symlink_to(tmp_path / "loop.ttf")
    (tmp_path / "file").write_text("")
    sentences = {
        "none.ttf": r"there is no font file `none\.ttf` in `.*`",
        "folder.ttf": r"`folder\.ttf` is a folder; name the font file inside it",
        "pipe.ttf": r"`pipe\.ttf` is not a font file but a device or a pipe",
        "loop.ttf": r"the font file `loop\.ttf` cannot be read \(too many levels of symbolic links\)",
        "file/inside.ttf": r"the font file `inside\.ttf` cannot be read \(not a directory\)",
        "x" * 300 + ".ttf": r"the font file `x{77}\.\.\.` cannot be read \(file name too long\)",
        "a\0b.ttf": r"`a\?b\.ttf` cannot be the name of a file",
        "a\ud800.ttf": r"`a\?\.ttf` cannot be the name of a file",
        "a\n.ttf": r"there is no font file `a\?\.ttf` in `.*`",
    }
    for name, sentence in sentences.items():
        for act in (lambda path: opened(path, 24), embedding):
            with pytest.raises(Problem) as caught:
                act(tmp_path / name)
            assert re.fullmatch(sentence, caught.value.message), caught.value.message


@pytest.mark.skipif(os.geteuid() == 0, reason="root may read everything")
def test_file_that_may_not_be_read(tmp_path: Path) -> None:
    path = built(tmp_path / "shut.ttf")
    path.chmod(0)
    with pytest.raises(Problem, match=r"^the font file `shut.ttf` cannot be read \(permission denied\)$"):
        opened(path, 24)


def test_file_beyond_all_measure(tmp_path: Path) -> None:
    path = tmp_path / "vast.ttf"
    with path.open("wb") as file:
        file.truncate(1 << 40)  # a hole: takes no room on the disk
    with pytest.raises(
        Problem, match=r"^the font file `vast.ttf` is larger than 64 MiB; use a smaller font$"
    ):
        opened(path, 24)


def test_damaged_outlines(tmp_path: Path) -> None:
    path = tmp_path / "holes.ttf"
    data = bytearray(SANS.read_bytes())
    entry = data.index(b"glyf", 12)
    offset, length = struct.unpack_from(">II", data, entry + 8)
    data[offset : offset + length] = b"\x7f" * length
    path.write_bytes(data)
    with pytest.raises(Problem) as caught:
        use(path, 24)
    assert re.fullmatch(DAMAGED_CHARACTER.replace("NAME", "holes.ttf"), caught.value.message)


FUZZED = (DATA / "lath.bdf", DATA / "lath.pcf", DATA / "lath.pcf.gz", SANS, GROTESK, SANS.with_suffix(".otf"))


@pytest.mark.parametrize("source", FUZZED, ids=lambda path: path.name)
def test_random_damage(source: Path, tmp_path: Path) -> None:
    # The same damage on every run; half of it among the first bytes, where sizes and offsets stand.
    random_ = random.Random(source.name)
    whole, refused, worst = source.read_bytes(), 0, 0.0
    for number in range(60):
        data = bytearray(whole)
        for _ in range(random_.choice((1, 4, 40))):
            place = random_.randrange(random_.choice((min(400, len(data)), len(data))))
            data[place : place + 2] = random_.choice(
                (b"\xff\xff", b"\0\0", b"\x7f\xff", random_.randbytes(2))
            )
        path = tmp_path / f"{number}{''.join(source.suffixes)}"
        path.write_bytes(data)
        began = time.process_time()
        for act in (
            lambda path: use(path, None),
            lambda path: use(path, 24),
            lambda path: use(path, 512, "antialiased"),
            embedding,
        ):
            try:
                act(path)
            except Problem as problem:
                refused += 1
                assert "\n" not in problem.message
        worst = max(worst, time.process_time() - began)
    assert refused > 60
    assert worst < 3


@pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="the peak of memory is read from /proc")
def test_memory_stays_within_bounds(tmp_path: Path) -> None:
    # In a process of its own: the most it ever held, after every broken file above.
    for number, (name, content, _) in enumerate(CASES.values()):
        (tmp_path / f"{number}-{name}").write_bytes(content())
    code = (
        "import sys\nfrom pathlib import Path\nfrom panelproof.glyphs.type import open_type\n"
        "from panelproof.problem import Problem\nrefused = 0\n"
        "for path in sorted(Path(sys.argv[1]).iterdir()):\n"
        "    for size in (None, 24):\n        try:\n"
        "            type = open_type(path, size, 'one-bit', True, True)\n"
        "            for char in 'A0':\n                type.glyph(char)\n"
        "        except Problem:\n            refused += 1\n"
        # Not ru_maxrss: that remembers the process this one was forked from.
        "peak = [line for line in open('/proc/self/status') if line.startswith('VmHWM')]\n"
        "print(refused, int(peak[0].split()[1]) // 1024)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, str(tmp_path)], capture_output=True, text=True, check=True
    )
    refused, mebibytes = map(int, done.stdout.split())
    assert refused == 2 * len(CASES), done.stderr
    assert mebibytes < 250
