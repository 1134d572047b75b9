"""One font file as FreeType opens it; the only place that speaks to FreeType.

Goes through freetype-py's plain bindings, since its classes copy bitmaps number by number. FreeType wants
one thread at a time in a library handle, hence the one lock.
"""

from __future__ import annotations

import weakref
from collections.abc import Iterator
from ctypes import POINTER, Structure, byref, c_char_p, c_int, c_int32, c_long, c_uint, c_ulong, string_at
from dataclasses import dataclass
from threading import RLock
from typing import Any

import freetype as ft

LOCK = RLock()


class FaceError(Exception):
    """FreeType cannot do what it was asked; the argument is its error number."""


class _Property(Structure):
    """FreeType's BDF_PropertyRec: type 1 is a text, 2 and 3 are numbers."""

    _fields_ = (("type", c_int), ("text", c_char_p))


@dataclass(frozen=True, slots=True)
class Raster:
    """A bitmap as FreeType holds it: `rows` of abs(`pitch`) bytes, from the top; 1, 4 or 8 bits a pixel."""

    left: int
    top: int
    width: int
    rows: tuple[bytes, ...]
    bits: int


@dataclass(frozen=True, slots=True)
class Extent:
    """A loaded glyph's ink in whole pixels around the pen, y upwards, and its advance in 1/64 pixel."""

    left: int
    bottom: int
    right: int
    top: int
    advance: int
    outline: bool


def version() -> str:
    """Return FreeType's version, such as ``2.13.2``."""
    with LOCK:
        return ".".join(str(part) for part in ft.version())


def _check(error: int) -> None:
    if error:
        raise FaceError(error)


def _done(face: Any) -> None:
    with LOCK:
        ft.FT_Done_Face(face)


class Face:
    """The first face of a font file held in memory; its methods raise FaceError where FreeType refuses."""

    def __init__(self, data: bytes) -> None:
        with LOCK:
            self._face = ft.FT_Face()
            _check(
                ft.FT_New_Memory_Face(ft.get_handle(), data, c_long(len(data)), c_long(0), byref(self._face))
            )
            self._data = data  # FreeType reads from it as long as the face lives
            weakref.finalize(self, _done, self._face).atexit = False
            self._record = self._face.contents

    @property
    def scalable(self) -> bool:
        """Whether it has outlines."""
        return bool(self._record.face_flags & ft.FT_FACE_FLAG_SCALABLE)

    @property
    def family(self) -> str:
        """The family's name, empty where it has none."""
        return _text(self._record.family_name)

    @property
    def style(self) -> str:
        """The style's name, empty where it has none."""
        return _text(self._record.style_name)

    @property
    def units_per_em(self) -> int:
        """Font units per em, 0 for a bitmap font."""
        return int(self._record.units_per_EM)

    @property
    def strikes(self) -> tuple[int, ...]:
        """Pixel sizes of its bitmaps, in the file's order."""
        count = self._record.num_fixed_sizes
        return tuple((self._record.available_sizes[k].y_ppem + 32) >> 6 for k in range(count))

    @property
    def ascender(self) -> int:
        """Ascent at the chosen size, in 1/64 pixel, y upwards."""
        return int(self._record.size.contents.metrics.ascender)

    @property
    def descender(self) -> int:
        """Descent at the chosen size, in 1/64 pixel, y upwards (negative below the baseline)."""
        return int(self._record.size.contents.metrics.descender)

    @property
    def encodings(self) -> tuple[int, ...]:
        """FreeType's tags of its character tables, in the file's order."""
        return tuple(
            self._record.charmaps[k].contents.encoding & 0xFFFFFFFF for k in range(self._record.num_charmaps)
        )

    def choose_size(self, pixels: int) -> None:
        """Scale outlines to `pixels` per em."""
        _check(ft.FT_Set_Pixel_Sizes(self._face, c_uint(0), c_uint(pixels)))

    def choose_strike(self, number: int) -> None:
        """Take bitmaps from strike `number`."""
        _check(ft.FT_Select_Size(self._face, c_int(number)))

    def choose_unicode(self) -> bool:
        """Look characters up by Unicode; False where the font has no such table."""
        return not ft.FT_Select_Charmap(self._face, c_int(ft.FT_ENCODING_UNICODE))

    def choose_encoding(self, number: int) -> None:
        """Look characters up in table `number`."""
        _check(ft.FT_Set_Charmap(self._face, self._record.charmaps[number]))

    def index(self, code: int) -> int:
        """Return the glyph's number for a character code, 0 where the font lacks it."""
        return int(ft.FT_Get_Char_Index(self._face, c_ulong(code))) & 0xFFFFFFFF

    def codes(self) -> Iterator[int]:
        """Yield every character code of the chosen table, ascending."""
        index = c_uint()
        code = ft.FT_Get_First_Char(self._face, byref(index))
        while index.value:
            yield int(code) & 0xFFFFFFFF
            code = ft.FT_Get_Next_Char(self._face, c_ulong(code), byref(index))

    def advance_units(self, index: int) -> int:
        """Return an outline glyph's advance in font units."""
        advance = c_long()
        _check(ft.FT_Get_Advance(self._face, c_uint(index), c_int32(ft.FT_LOAD_NO_SCALE), byref(advance)))
        return advance.value

    def measure(self, index: int, flags: int) -> Extent:
        """Load a glyph without making its bitmap, so that a monstrous one can be turned down first."""
        _check(ft.FT_Load_Glyph(self._face, c_uint(index), c_int32(flags | ft.FT_LOAD_BITMAP_METRICS_ONLY)))
        slot = self._record.glyph.contents
        if slot.format == ft.FT_GLYPH_FORMAT_OUTLINE:
            box = ft.FT_BBox()
            ft.FT_Outline_Get_CBox(byref(slot.outline), byref(box))
            return Extent(
                box.xMin >> 6, box.yMin >> 6, -(-box.xMax >> 6), -(-box.yMax >> 6), slot.advance.x, True
            )
        if slot.format != ft.FT_GLYPH_FORMAT_BITMAP:
            raise FaceError(0x12)  # FreeType's "invalid glyph format"
        left, top, bitmap = slot.bitmap_left, slot.bitmap_top, slot.bitmap
        width, height = bitmap.width & 0xFFFFFFFF, bitmap.rows & 0xFFFFFFFF
        return Extent(left, top - height, left + width, top, slot.advance.x, False)

    def raster(self, index: int, flags: int, mode: int, outline: bool) -> Raster:
        """Return the bitmap of the glyph just measured, an outline drawn in FreeType's render mode `mode`."""
        slot = self._record.glyph
        if outline:
            _check(ft.FT_Render_Glyph(slot, c_int(mode)))
        else:
            _check(ft.FT_Load_Glyph(self._face, c_uint(index), c_int32(flags)))
        bitmap = slot.contents.bitmap
        depths = {ft.FT_PIXEL_MODE_MONO: 1, ft.FT_PIXEL_MODE_GRAY4: 4, ft.FT_PIXEL_MODE_GRAY: 8}
        bits = depths.get(bitmap.pixel_mode, 0)
        width, height, pitch = bitmap.width, bitmap.rows, abs(bitmap.pitch)
        if not width or not height or not bitmap.buffer:
            return Raster(0, 0, 0, (), bits or 1)
        data = string_at(bitmap.buffer, height * pitch)
        rows = tuple(data[k * pitch : (k + 1) * pitch] for k in range(height))
        # A negative pitch means that the rows are stored from the bottom.
        ordered = rows if bitmap.pitch > 0 else rows[::-1]
        return Raster(slot.contents.bitmap_left, slot.contents.bitmap_top, width, ordered, bits)

    def charset(self) -> tuple[str, str]:
        """Return registry and encoding of a BDF or PCF font's character set, empty where it names none."""
        encoding, registry = c_char_p(), c_char_p()
        error = ft.FT_Get_BDF_Charset_ID(self._face, byref(encoding), byref(registry))
        return ("", "") if error else (_text(registry.value), _text(encoding.value))

    def property(self, name: str) -> str:
        """Return a text property of a BDF or PCF font, empty where it has none of that name."""
        found = _Property()
        error = ft.FT_Get_BDF_Property(self._face, c_char_p(name.encode()), byref(found))
        return "" if error or found.type != 1 else _text(found.text)


def _text(value: bytes | None) -> str:
    return (value or b"").decode("utf-8", "replace")


# freetype-py leaves these to ctypes' guesses, which cut a pointer in half on some machines.
ft.FT_Get_First_Char.restype = ft.FT_Get_Next_Char.restype = c_ulong
ft.FT_Get_BDF_Property.argtypes = [ft.FT_Face, c_char_p, POINTER(_Property)]
