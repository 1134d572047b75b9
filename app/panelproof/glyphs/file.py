"""One font file: its bytes, read with care, and the kind that they say it is."""

from __future__ import annotations

import os
import stat
import struct
import zlib
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Literal

from panelproof.problem import Problem

Kind = Literal["TTF", "OTF", "TTC", "BDF", "PCF"]
Stamp = tuple[int, int]

SUFFIXES = (".ttf", ".otf", ".ttc", ".otc", ".otb", ".woff", ".bdf", ".bdf.gz", ".pcf", ".pcf.gz")
GREATEST_BYTES = 64 << 20

_SFNT: dict[bytes, Kind] = {b"\0\1\0\0": "TTF", b"true": "TTF", b"OTTO": "OTF"}


@dataclass(frozen=True, slots=True, eq=False)
class FontFile:
    """A font file's bytes, unpacked where the file is gzip or WOFF."""

    path: Path
    kind: Kind
    data: bytes

    @property
    def shown(self) -> str:
        """The file's name as messages show it."""
        return shown(self.path)


def shown(path: Path) -> str:
    """Return a file's name between backticks, fit to be printed anywhere."""
    name = "".join(letter if letter.isprintable() else "?" for letter in path.name)
    return f"`{name if len(name) <= 80 else name[:77] + '...'}`"


def stamp(path: Path) -> Stamp:
    """Return (time of the last change in ns, size in bytes) of a font file.

    Raises Problem where it is missing, is no file, is empty, is larger than 64 MiB, or may not be looked at.
    """
    try:
        found = path.stat()
    except FileNotFoundError:
        raise Problem(f"there is no font file {shown(path)} in `{path.parent}`") from None
    except OSError as error:
        raise _unreadable(path, error) from None
    except ValueError:
        raise Problem(f"{shown(path)} cannot be the name of a file") from None
    if stat.S_ISDIR(found.st_mode):
        raise Problem(f"{shown(path)} is a folder; name the font file inside it")
    if not stat.S_ISREG(found.st_mode):
        raise Problem(f"{shown(path)} is not a font file but a device or a pipe")
    if found.st_size == 0:
        raise Problem(f"the font file {shown(path)} is empty")
    if found.st_size > GREATEST_BYTES:
        raise Problem(
            f"the font file {shown(path)} is larger than {GREATEST_BYTES >> 20} MiB; use a smaller font"
        )
    return found.st_mtime_ns, found.st_size


def read(path: Path) -> FontFile:
    """Read a TTF, OTF, TTC, WOFF, BDF or PCF file, the last two also packed by gzip; cached until it changes.

    Raises Problem with a sentence where it cannot be a whole font file of these kinds.
    """
    path = Path(os.path.abspath(path))  # noqa: PTH100 - Path.resolve would follow links and change the name
    return _read(path, stamp(path))


@lru_cache(maxsize=16)
def _read(path: Path, _stamp: Stamp) -> FontFile:
    try:
        with path.open("rb") as source:
            data = source.read(GREATEST_BYTES + 1)
    except OSError as error:
        raise _unreadable(path, error) from None
    if data.startswith(b"\x1f\x8b"):
        data = _unpacked(data, GREATEST_BYTES, path, wbits=31)
    if data.startswith(b"wOFF"):
        data = _from_woff(data, path)
    return FontFile(path, _kind(data, path), data)


def _unreadable(path: Path, error: OSError) -> Problem:
    reason = (error.strerror or "the reason is unknown").lower()
    return Problem(f"the font file {shown(path)} cannot be read ({reason})")


def _cut(path: Path) -> Problem:
    return Problem(f"the font file {shown(path)} is damaged or cut short; fetch it anew")


def _kind(data: bytes, path: Path) -> Kind:
    if data.startswith(b"ttcf"):
        if len(data) < 16:
            raise _cut(path)
        _check_tables(data, struct.unpack_from(">I", data, 12)[0], path)
        return "TTC"
    if data[:4] in _SFNT:
        _check_tables(data, 0, path)
        return _SFNT[data[:4]]
    if data.startswith(b"\1fcp"):
        return "PCF"
    if data.lstrip()[:9] == b"STARTFONT" or data.lstrip()[:7] == b"COMMENT":
        return "BDF"
    if data.startswith(b"wOF2"):
        raise Problem(
            f"{shown(path)} is a WOFF2 file, which is for web pages; use the font's TTF or OTF file"
        )
    if len(data) < 16:
        raise _cut(path)
    raise Problem(f"{shown(path)} is not a font file that can be used; use TTF, OTF, TTC, WOFF, BDF or PCF")


def _check_tables(data: bytes, start: int, path: Path) -> None:
    """Raise Problem where a table of the OpenType font at `start` reaches past the end of the file."""
    if start + 12 > len(data):
        raise _cut(path)
    count = struct.unpack_from(">H", data, start + 4)[0]
    if not count or start + 12 + 16 * count > len(data):
        raise _cut(path)
    for number in range(count):
        offset, length = struct.unpack_from(">II", data, start + 20 + 16 * number)
        if offset + length > len(data):
            raise _cut(path)


def _unpacked(packed: bytes, most: int, path: Path, wbits: int = 15) -> bytes:
    """Return what a zlib (or, with wbits 31, gzip) stream holds; raises Problem above `most` bytes."""
    unpacker = zlib.decompressobj(wbits)
    try:
        data = unpacker.decompress(packed, most + 1)
    except zlib.error:
        raise _cut(path) from None
    if len(data) > most:
        raise Problem(
            f"the font file {shown(path)} unpacks to more than {GREATEST_BYTES >> 20} MiB; use a smaller font"
        )
    if not unpacker.eof:
        raise _cut(path)
    return data


def _from_woff(data: bytes, path: Path) -> bytes:
    """Return the OpenType font that a WOFF file packs (W3C: WOFF File Format 1.0, sections 3 to 5).

    Unpacked here rather than by FreeType and fontTools, which trust the sizes it states.
    """
    if len(data) < 44:
        raise _cut(path)
    flavour, length, count = struct.unpack_from(">4sIH", data, 4)
    if length > len(data) or 44 + 20 * count > len(data):
        raise _cut(path)
    directory, body, start = [], bytearray(), 12 + 16 * count
    for number in range(count):
        tag, offset, packed, whole, checksum = struct.unpack_from(">4sIIII", data, 44 + 20 * number)
        if offset + packed > len(data):
            raise _cut(path)
        if start + len(body) + whole > GREATEST_BYTES:
            raise Problem(f"the font file {shown(path)} unpacks to far too much; use a smaller font")
        table = data[offset : offset + packed]
        if packed < whole:
            table = _unpacked(table, whole, path)
        if len(table) != whole:
            raise _cut(path)
        directory.append(struct.pack(">4sIII", tag, checksum, start + len(body), whole))
        body += table + bytes(-whole % 4)
    # searchRange and its two companions speed a search up; readers do without.
    return struct.pack(">4sHHHH", flavour, count, 0, 0, 0) + b"".join(directory) + bytes(body)
