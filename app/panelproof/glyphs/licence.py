"""What a font's maker allows: the embedding bits, the licence and the copyright that the file states."""

from __future__ import annotations

from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from struct import unpack_from
from typing import Any, Literal

from panelproof.glyphs.file import FontFile, read
from panelproof.problem import Problem

Permission = Literal["installable", "editable", "preview and print", "restricted", "not stated"]

_COPYRIGHT, _LICENCE, _LICENCE_URL = 0, 13, 14
_MEANING = {
    "installable": "may be embedded",
    "editable": "may be embedded in documents that can be edited",
    "preview and print": "may be embedded for viewing and printing only",
    "restricted": "must not be embedded without the maker's leave",
    "not stated": "says nothing on embedding",
}


@dataclass(frozen=True, slots=True)
class Embedding:
    """What a font file says of its use; texts are empty where it says nothing.

    `permission` is the usage permission of OS/2 fsType (``not stated`` where there is no such table, as in
    bitmap fonts); `no_subsetting` forbids embedding only some of its characters, `bitmap_only` anything but
    bitmaps.
    """

    permission: Permission
    no_subsetting: bool = False
    bitmap_only: bool = False
    licence: str = ""
    licence_url: str = ""
    copyright: str = ""

    @property
    def restricts(self) -> bool:
        """Whether a device that carries the font's glyphs may need its maker's leave."""
        return self.permission not in ("installable", "not stated") or self.no_subsetting

    def __str__(self) -> str:
        parts = [_MEANING[self.permission]]
        if self.no_subsetting:
            parts.append("not in part")
        if self.bitmap_only:
            parts.append("as bitmaps only")
        said = ", ".join(parts)
        for text in (self.licence or self.copyright, self.licence_url):
            if text:
                said += f"; {' '.join(text.split())}"
        return said


def embedding(path: Path) -> Embedding:
    """Return what a font file says of its use.

    Source: OpenType specification, OS/2 fsType and name IDs 0, 13 and 14; for BDF and PCF the properties
    COPYRIGHT and NOTICE. Raises Problem where the file cannot be read as a font.
    """
    file = read(path)
    if file.kind in ("BDF", "PCF"):
        return _of_bitmaps(file)
    try:
        return _of_tables(file)
    except Exception:  # fontTools lets through whatever struct, slices and assertions raise
        raise Problem(f"the licence of {file.shown} cannot be read, as the font file is damaged") from None


def embedding_bits(path: Path) -> Embedding:
    """Return what the bits of OS/2 fsType alone say; quick, since only the table directory is read.

    Source: OpenType specification: table directory, font collections, OS/2 fsType (at byte 8 of the table). Of a
    collection the first font. Raises Problem where the file cannot be read as a font.
    """
    file = read(path)
    fs_type = None if file.kind in ("BDF", "PCF") else _fs_type(file)
    if fs_type is None:
        return Embedding("not stated")
    return Embedding(permission_of(fs_type), bool(fs_type & 0x100), bool(fs_type & 0x200))


def _fs_type(file: FontFile) -> int | None:
    begin = unpack_from(">I", file.data, 12)[0] if file.kind == "TTC" else 0
    for number in range(unpack_from(">H", file.data, begin + 4)[0]):
        tag, _, offset, length = unpack_from(">4sIII", file.data, begin + 12 + 16 * number)
        if tag == b"OS/2" and length >= 10:
            return int(unpack_from(">H", file.data, offset + 8)[0])
    return None


def permission_of(fs_type: int) -> Permission:
    """Return the usage permission of an fsType value: bits 1 to 3, of several the least restrictive."""
    if fs_type & 0x8:
        return "editable"
    if fs_type & 0x4:
        return "preview and print"
    return "restricted" if fs_type & 0x2 else "installable"


def _tables(file: FontFile) -> Any:
    """Return fontTools' TTFont of a file's first face, its tables read as they are asked for."""
    import logging  # noqa: PLC0415

    from fontTools.ttLib import TTFont  # noqa: PLC0415 - slow to load, and only licences need it

    # Its warnings about oddities in other people's fonts are nothing that a maker could act on.
    logging.getLogger("fontTools").setLevel(logging.CRITICAL)
    return TTFont(BytesIO(file.data), fontNumber=0 if file.kind == "TTC" else -1, lazy=True)


def _of_tables(file: FontFile) -> Embedding:
    font = _tables(file)
    fs_type = int(font["OS/2"].fsType) if "OS/2" in font else None
    names = font.get("name")

    def said(number: int) -> str:
        return str(names.getDebugName(number) or "").strip() if names is not None else ""

    return Embedding(
        "not stated" if fs_type is None else permission_of(fs_type),
        bool((fs_type or 0) & 0x100),
        bool((fs_type or 0) & 0x200),
        said(_LICENCE),
        said(_LICENCE_URL),
        said(_COPYRIGHT),
    )


def _of_bitmaps(file: FontFile) -> Embedding:
    from panelproof.glyphs.face import Face, FaceError  # noqa: PLC0415 - loads FreeType, only where needed

    try:
        face = Face(file.data)
    except FaceError:
        raise Problem(f"the font file {file.shown} is damaged or cut short; fetch it anew") from None
    return Embedding("not stated", licence=face.property("NOTICE"), copyright=face.property("COPYRIGHT"))
