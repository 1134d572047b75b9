"""One font at one pixel size in one rendering: its metrics and its glyphs."""

from __future__ import annotations

import os
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from panelproof.glyphs import baking
from panelproof.glyphs.file import FontFile, Stamp, read, stamp
from panelproof.glyphs.glyph import Glyph
from panelproof.problem import Problem

if TYPE_CHECKING:
    from panelproof.glyphs.charset import Coder
    from panelproof.glyphs.face import Extent, Face, Raster
    from panelproof.glyphs.kerning import Kerning

Rendering = Literal["one-bit", "antialiased"]

GREATEST_SIZE = 512
GREATEST_REACH = 4096  # pixels from the pen to any ink, and of an advance: more than any panel has
GREATEST_AREA = 1 << 20  # pixels of one glyph

_NO_HINTING, _NO_BITMAP, _TARGET_MONO = 0x2, 0x8, 0x2 << 16
_MODE_NORMAL, _MODE_MONO = 0, 2
_REVERSED = bytes(int(f"{byte:08b}"[::-1], 2) for byte in range(256))
_LEVELS = bytes((value * 15 + 127) // 255 for value in range(256))
_INKED = bytes([ord("0")] + [ord("1")] * 255)


def open_type(path: Path, size: int | None, rendering: Rendering, kerning: bool, hinting: bool) -> Type:
    """Open a font file as a type; the same arguments give the same value until the file changes.

    `size` is the pixels per em, 1 to 512. A bitmap font (BDF, PCF) needs none; if given, it must be a size
    that the font has. With `hinting` outlines are fitted to the pixels as the font asks for the rendering;
    without, they are drawn as designed, and advances are the designed ones, rounded to the nearest pixel
    (halves upwards).

    Raises Problem where the file cannot be read as a font, or cannot be used with these arguments.
    """
    if size is not None and not 1 <= size <= GREATEST_SIZE:
        raise Problem(f"a type's size must be 1 to {GREATEST_SIZE} pixels, not {size}")
    path = Path(os.path.abspath(path))  # noqa: PTH100 - Path.resolve would follow links and change the name
    return _open(path, stamp(path), size, rendering, kerning, hinting)


@lru_cache(maxsize=256)
def _open(
    path: Path, _stamp: Stamp, size: int | None, rendering: Rendering, kerning: bool, hinting: bool
) -> Type:
    return Type(read(path), size, rendering, kerning, hinting)


class Type:
    """A font at a pixel size; all metrics in whole pixels, `descent` counted downwards from the baseline.

    `rasteriser` names what drew the glyphs: FreeType and its version, or ``native bitmaps``. Equal only to
    itself; may be used from several threads. Made by `open_type`.
    """

    def __init__(
        self, file: FontFile, size: int | None, rendering: Rendering, kerning: bool, hinting: bool
    ) -> None:
        from panelproof.glyphs import face as faces  # noqa: PLC0415 - loads FreeType, only where a font is used
        from panelproof.glyphs.charset import choose  # noqa: PLC0415

        self._faces = faces
        self._file = file
        self.path = file.path
        self.antialiased = rendering == "antialiased"
        self.kerning = kerning
        try:
            self._face: Face = faces.Face(file.data)
            self.native = not self._face.scalable
            self.baked = baking.read(file.data, file.shown) if file.kind == "BDF" else baking.Baked()
            if self.native:
                self._choose_strike(size)
            else:
                self._choose_size(size)
            self.size = size if size is not None else self._face.strikes[0]
        except faces.FaceError:
            raise self._damaged() from None
        self.rasteriser = "native bitmaps" if self.native else f"FreeType {faces.version()}"
        self.ascent, self.descent = -(-self._face.ascender // 64), -(self._face.descender // 64)
        self._remedy = "use another font" if self.native else "choose a smaller size"
        height = self.ascent + self.descent
        if max(abs(self.ascent), abs(self.descent)) > GREATEST_REACH:
            raise Problem(f"a line of {file.shown} would be {height} pixels high; {self._remedy}")
        self._code: Coder = choose(self._face, file.shown)
        # Fonts with outlines may also hold bitmaps, drawn by hand for one-bit panels at small sizes.
        self._flags = _TARGET_MONO if not self.antialiased else _NO_BITMAP
        if not hinting:
            self._flags |= _NO_HINTING | _NO_BITMAP
        if self.native:
            self._flags &= ~_NO_BITMAP
        self._unhinted = not hinting and not self.native
        self._glyphs: dict[str, Glyph | None] = {}
        self._kerns: dict[tuple[str, str], int] = {}
        self._pairs: Kerning | None = None
        if kerning and not self.native:
            from panelproof.glyphs.kerning import Kerning  # noqa: PLC0415 - few types are kerned

            self._pairs = Kerning(file, self._index)

    def __repr__(self) -> str:
        return f"<Type {self.path.name} {self.size} px>"

    def glyph(self, char: str) -> Glyph | None:
        """Return the glyph of one character, None where the font lacks it.

        Raises Problem where the font file is damaged there, or the glyph would be too large for any panel.
        """
        try:
            return self._glyphs[char]
        except KeyError:
            with self._faces.LOCK:
                glyph = self._glyphs[char] = self._load(char)
            return glyph

    def characters(self) -> tuple[str, ...]:
        """Return every character that the font has a glyph for, in the order of Unicode."""
        with self._faces.LOCK:
            codes = set(self._face.codes())
        return tuple(char for char in map(chr, range(0x20, 0x110000)) if self._code(char) in codes)

    def kern(self, left: str, right: str) -> int:
        """Return by how many pixels the pen moves on further between two characters; 0 where kerning is off.

        Font units scaled to the size, rounded to the nearest pixel, halves upwards. Raises Problem where the
        font's kerning is damaged.
        """
        if self._pairs is None:
            return self.baked.kerning.get((left, right), 0) if self.kerning and self.baked.kerning else 0
        pair = left, right
        try:
            return self._kerns[pair]
        except KeyError:
            with self._faces.LOCK:
                units = self._pairs.units(left, right)
            kern = self._kerns[pair] = self._scaled(units)
            return kern

    def _character(self, char: str) -> str:
        named = f"`{char}`" if char.isprintable() else f"U+{ord(char):04X}"
        return f"the character {named} of {self._file.shown}"

    def _damaged(self) -> Problem:
        return Problem(f"the font file {self._file.shown} is damaged or cut short; fetch it anew")

    def _scaled(self, units: int) -> int:
        """Return font units as whole pixels, halves upwards."""
        per_em = self._face.units_per_em
        return (2 * units * self.size + per_em) // (2 * per_em)

    def _choose_size(self, size: int | None) -> None:
        if size is None:
            raise Problem(f"{self._file.shown} needs a size, in pixels, since it is drawn from outlines")
        if not self._face.units_per_em:
            raise self._damaged()
        self._face.choose_size(size)

    def _choose_strike(self, size: int | None) -> None:
        strikes, name = self._face.strikes, self._file.shown
        if not strikes:
            raise self._damaged()
        if self.baked.bits == 4 and not self.antialiased:
            raise Problem(f"{name} holds 16 levels of ink; set its rendering to `antialiased`")
        if self.antialiased and self.baked.bits != 4:
            raise Problem(
                f"{name} is a bitmap font and cannot be antialiased; set its rendering to `one-bit`"
            )
        sizes = ", ".join(str(strike) for strike in sorted(set(strikes)))
        if size is None and len(strikes) > 1:
            raise Problem(f"{name} holds bitmaps of several sizes; set one of {sizes} pixels")
        if size is not None and size not in strikes:
            raise Problem(
                f"{name} is a bitmap font of {sizes} pixels and cannot be drawn at {size}; set a size that it has"
            )
        self._face.choose_strike(0 if size is None else strikes.index(size))

    def _index(self, char: str) -> int:
        """Return the number of a character's glyph in the font, 0 where it has none."""
        code = self._code(char)
        return 0 if code is None else self._face.index(code)

    def _load(self, char: str) -> Glyph | None:
        index = self._index(char)
        if not index:
            return None
        try:
            extent = self._face.measure(index, self._flags)
            advance = self._scaled(self._face.advance_units(index)) if self._unhinted else 0
            self._check_extent(char, extent, advance)
            mode = _MODE_NORMAL if self.antialiased else _MODE_MONO
            raster = self._face.raster(index, self._flags, mode, extent.outline)
        except self._faces.FaceError:
            raise Problem(
                f"{self._character(char)} cannot be drawn, as the font file is damaged; fetch it anew"
            ) from None
        depth = (4 if self.native else 8) if self.antialiased else 1
        if raster.width and raster.bits != depth:
            raise Problem(f"{self._file.shown} holds bitmaps of several tones or colours; use a one-bit font")
        return _cut_out(raster, advance if self._unhinted else (extent.advance + 32) >> 6, self.antialiased)

    def _check_extent(self, char: str, extent: Extent, advance: int) -> None:
        """Raise Problem where a glyph about to be drawn is beyond all measure."""
        width, height = extent.right - extent.left, extent.top - extent.bottom
        edges = (extent.left, extent.right, extent.top, extent.bottom)
        reach = max(map(abs, edges)) if width * height else 0
        who = self._character(char)
        if reach > GREATEST_REACH or width * height > GREATEST_AREA:
            raise Problem(f"{who} would be {width} × {height} pixels; {self._remedy}")
        if max(extent.advance >> 6, advance) > GREATEST_REACH:
            raise Problem(f"{who} moves the pen by more than {GREATEST_REACH} pixels; {self._remedy}")
        if min(extent.advance, advance) < 0:
            raise Problem(f"{who} moves the pen to the left; use a font that is written rightwards")


def _cut_out(raster: Raster, advance: int, antialiased: bool) -> Glyph:
    """Return a bitmap as a glyph, rows and columns without ink at its border cut away."""
    width, levels = raster.width, []
    if antialiased:
        if raster.bits == 4:
            levels = [
                bytes(level for byte in row for level in (byte >> 4, byte & 15))[:width]
                for row in raster.rows
            ]
        else:
            levels = [row[:width].translate(_LEVELS) for row in raster.rows]
        rows = [int(row[::-1].translate(_INKED), 2) for row in levels]
    else:
        # FreeType's leftmost pixel is a byte's highest bit; bits beyond the width mean nothing.
        full = (1 << width) - 1
        rows = [int.from_bytes(row.translate(_REVERSED), "little") & full for row in raster.rows]
    inked = [number for number, row in enumerate(rows) if row]
    if not inked:
        return Glyph(0, 0, 0, 0, advance, ())
    first, end = inked[0], inked[-1] + 1
    merged = 0
    for row in rows[first:end]:
        merged |= row
    left, right = (merged & -merged).bit_length() - 1, merged.bit_length()
    return Glyph(
        raster.left + left,
        raster.top - first,
        right - left,
        end - first,
        advance,
        tuple(row >> left for row in rows[first:end]),
        b"".join(row[left:right] for row in levels[first:end]),
    )
