"""How the characters of a text are numbered in a font that may have no Unicode table."""

from __future__ import annotations

import codecs
from collections.abc import Callable

from panelproof.glyphs.face import Face
from panelproof.problem import Problem

Coder = Callable[[str], int | None]

_SYMBOL, _ROMAN = int.from_bytes(b"symb"), int.from_bytes(b"armn")
_MANY_BYTE = ("jisx0208", "jisx0212", "jisx0213", "ksc5601", "ksx1001", "gb2312", "gbk", "big5", "cns11643")


def choose(face: Face, name: str) -> Coder:
    """Set the face to one of its character tables and return what turns a character into a code of it.

    Unicode where the font has it. Else a bitmap font's codes are those of its charset where Python knows that
    charset as one byte a character, and Unicode's own numbers where the font names none (the BDF 2.1 standard
    leaves their meaning open). `name` is the file's, for messages. Raises Problem where there is no table, or
    the charset needs two bytes a character.
    """
    if face.choose_unicode():
        return ord
    encodings = face.encodings
    if not encodings:
        raise Problem(
            f"the font file {name} does not say which glyph shows which character; use another font"
        )
    face.choose_encoding(0)
    if face.scalable:
        return {_SYMBOL: _symbol(face), _ROMAN: _by_codec("mac_roman")}.get(encodings[0], ord)
    registry, encoding = face.charset()
    charset = f"{registry}-{encoding}".lower()
    if charset.startswith(_MANY_BYTE):
        raise Problem(
            f"the characters of {name} are numbered by {registry}-{encoding}; "
            "use the font's ISO10646-1 (Unicode) file"
        )
    charset = charset.removeprefix("microsoft-").removeprefix("ibm-")
    if charset.startswith(("iso8859-", "koi8-", "cp")):
        try:
            codecs.lookup(charset)
        except LookupError:
            return ord
        return _by_codec(charset)
    return ord


def _by_codec(codec: str) -> Coder:
    def code(char: str) -> int | None:
        try:
            encoded = char.encode(codec)
        except UnicodeEncodeError:
            return None
        return encoded[0] if len(encoded) == 1 else None

    return code


def _symbol(face: Face) -> Coder:
    def code(char: str) -> int | None:
        # OpenType spec, cmap: symbol fonts number their glyphs from F000 up.
        number = ord(char)
        return number if face.index(number) or number > 0xFF else 0xF000 | number

    return code
