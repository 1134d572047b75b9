"""C formats: a format string taken apart into literal text and conversions (ISO C, `fprintf`)."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal

from msgspec import Struct

from panelproof.problem import Problem

WIDEST = 512
FLAGS = "-+ #0"
LENGTHS = ("hh", "h", "ll", "l", "j", "z", "t", "L")
# Bits of a whole number; `long`, `size_t` and `ptrdiff_t` as on small processors.
BITS = {"": 32, "hh": 8, "h": 16, "l": 32, "ll": 64, "j": 64, "z": 32, "t": 32}
SEEMING_LONG = {"l": "`long`", "z": "`size_t`", "t": "`ptrdiff_t`"}

Kind = Literal["whole", "real", "text", "character"]
KINDS: dict[str, Kind] = {
    **dict.fromkeys("diuxXo", "whole"),
    **dict.fromkeys("fF", "real"),
    "s": "text",
    "c": "character",
}
# ISO C leaves the other pairs of flag and letter undefined or without effect.
MEANINGFUL = {
    **dict.fromkeys("di", "-+ 0"),
    "u": "-0",
    **dict.fromkeys("xXo", "-#0"),
    **dict.fromkeys("fF", "-+ #0"),
    **dict.fromkeys("sc", "-"),
}
REFUSED = {
    **dict.fromkeys(
        "eEgGaA",
        "changes its length with the size of the number, which a range cannot bound:"
        " use `%f` with a precision, such as `%.2f`",
    ),
    "n": "prints nothing and writes into memory: take it out",
    "p": "prints an address, each C library in its own way: use `%x` with a whole range",
    "S": "takes wide characters: use `%s`, whose texts are UTF-8",
    "C": "takes a wide character: use `%c` for one ASCII character, or `%s` for texts in UTF-8",
}
ALLOWED = "d i u x X o c s f F"


class Conversion(Struct, frozen=True):
    """One conversion of a format.

    `flags` holds each flag once, in the order ``- + space # 0``; without a width, `width` is 0; without a
    precision, `precision` is None; `length` is the length modifier. `source` is the conversion as written
    and `start` its place in the format, in characters.
    """

    letter: str
    source: str
    start: int = 0
    flags: str = ""
    width: int = 0
    precision: int | None = None
    length: str = ""

    @property
    def kind(self) -> Kind:
        """Return what is printed: whole, real, text or character."""
        return KINDS[self.letter]

    @property
    def signed(self) -> bool:
        """Tell whether the conversion takes a signed whole number."""
        return self.letter in "di"

    @property
    def bits(self) -> int:
        """Return the bits of the C type that a whole number is passed in (`int` and `long` counted as 32)."""
        return BITS[self.length]

    @property
    def span(self) -> tuple[int, int]:
        """Return the least and the greatest whole number of the C type."""
        if self.signed:
            return -(1 << (self.bits - 1)), (1 << (self.bits - 1)) - 1
        return 0, (1 << self.bits) - 1

    @property
    def left(self) -> bool:
        """Tell whether spaces go after the text instead of before it."""
        return "-" in self.flags

    @property
    def zeros(self) -> bool:
        """Tell whether zeros fill the width (ISO C: not with `-`, nor with a whole number's precision)."""
        return "0" in self.flags and not self.left and (self.kind == "real" or self.precision is None)

    @property
    def sign(self) -> str:
        """Return what stands before a number that is not negative: ``+``, a space or nothing."""
        return "+" if "+" in self.flags else " " if " " in self.flags else ""

    @property
    def canonical(self) -> str:
        """Return the conversion for C source: as written, less the flags that ISO C says are ignored.

        It prints the same, and compilers do not warn of it.
        """
        ignored = (" " if "+" in self.flags else "") + ("" if self.zeros else "0")
        flags = "".join(flag for flag in self.flags if flag not in ignored)
        precision = "" if self.precision is None else f".{self.precision}"
        return f"%{flags}{self.width or ''}{precision}{self.length}{self.letter}"


@lru_cache(maxsize=512)
def pieces(format: str) -> tuple[str | Conversion, ...]:
    """Take a format apart, in order: literal text (``%%`` already ``%``, never empty) and conversions.

    Raises Problem, with the place ``format``, for all that ISO C does not define or a range cannot bound.
    """
    found: list[str | Conversion] = []
    literal = ""
    at = 0
    while at < len(format):
        if format[at] != "%":
            literal += format[at]
            at += 1
        elif format[at : at + 2] == "%%":
            literal += "%"
            at += 2
        else:
            conversion = _read(format, at)
            found.extend((literal, conversion) if literal else (conversion,))
            literal = ""
            at += len(conversion.source)
    if literal:
        found.append(literal)
    return tuple(found)


def conversions(format: str) -> tuple[Conversion, ...]:
    """Return the conversions of a format, one per argument, in order. Raises Problem as `pieces` does."""
    return tuple(piece for piece in pieces(format) if not isinstance(piece, str))


def _read(format: str, start: int) -> Conversion:
    """Read the conversion whose ``%`` stands at `start`."""
    at = start + 1
    while format[at : at + 1] and format[at] in FLAGS + "'":
        if format[at] == "'":
            raise _refuse("the flag `'` groups digits, which ISO C does not have: take it out")
        at += 1
    flags = "".join(flag for flag in FLAGS if flag in format[start + 1 : at])
    width, at = _number(format, start, at, "width")
    if format[at : at + 1] == "$":
        raise _refuse(
            f"`{format[start : at + 1]}` picks its argument by number, which ISO C does not have:"
            " take the number and `$` out, and put the arguments in the order of the format"
        )
    precision: int | None = None
    if format[at : at + 1] == ".":
        precision, at = _number(format, start, at + 1, "precision")
    length = next((length for length in LENGTHS if format.startswith(length, at)), "")
    at += len(length)
    if at >= len(format):
        where = f"inside `{format[start:]}`: finish it" if at > start + 1 else "in a lone `%`: finish it"
        raise _refuse(f"the format ends {where}, or write `%%` for a percent sign")
    conversion = Conversion(
        letter=format[at],
        source=format[start : at + 1],
        start=start,
        flags=flags,
        width=width,
        precision=precision,
        length=length,
    )
    _check(conversion)
    return conversion


def _number(format: str, start: int, at: int, what: str) -> tuple[int, int]:
    """Read the digits of a width or precision at `at` (none: 0); return the number and where it ends."""
    if format[at : at + 1] == "*":
        raise _refuse(
            f"`{format[start : at + 1]}` takes its {what} from an argument: write the number in place of `*`"
        )
    if what == "precision" and format[at : at + 1] == "-":
        raise _refuse(f"`{format[start : at + 1]}` has a negative precision: give 0 or more")
    end = at
    while format[end : end + 1] and format[end] in "0123456789":
        end += 1
    number = int(format[at:end] or "0")
    if number > WIDEST:
        raise _refuse(f"the {what} in `{format[start:end]}` is too large: {WIDEST} is the most")
    return number, end


def _check(conversion: Conversion) -> None:
    """Raise Problem where the letter, the length, a flag or the precision is not defined by ISO C."""
    letter, source, length = conversion.letter, conversion.source, conversion.length
    if letter == "%":
        raise _refuse(f"nothing may stand inside `{source}`: write `%%` for a percent sign")
    if letter in REFUSED:
        raise _refuse(f"`{source}` {REFUSED[letter]}")
    if letter not in KINDS:
        shown = letter if letter.isprintable() else f"U+{ord(letter):04X}"
        raise _refuse(
            f"`{shown}` is no conversion: after `%` comes one of {ALLOWED}; write `%%` for a percent sign"
        )
    if length == "l" and letter in "sc":
        raise _refuse(f"`{source}` {REFUSED[letter.upper()]}")
    lengths = {"whole": LENGTHS[:-1], "real": ("l", "L")}.get(conversion.kind, ())
    if length and length not in lengths:
        wide = length == "L" and conversion.kind == "whole"
        instead = f"use `%ll{letter}`" if wide else "take it out"
        raise _refuse(f"`{length}` means nothing with `{letter}` in `{source}`: {instead}")
    for flag in conversion.flags:
        if flag not in MEANINGFUL[letter]:
            name = "a space" if flag == " " else f"the flag `{flag}`"
            percent = ", or write `%%` for a percent sign" if flag == " " else ""
            raise _refuse(f"{name} means nothing with `{letter}` in `{source}`: take it out{percent}")
    if letter == "c" and conversion.precision is not None:
        raise _refuse(f"a precision means nothing with `c` in `{source}`: take it out")


def _refuse(sentence: str) -> Problem:
    return Problem(sentence, "format")
