"""Reals printed without floating point: which conversions can be, and what they take."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import ROUND_HALF_EVEN, Context, Decimal

from panelproof.content.format import Conversion
from panelproof.content.spec import Argument, RealRange, WholeRange

# The drawing code holds a real times a power of ten in 63 bits, and the power in 32.
MOST_PLACES = 9
GREATEST = (1 << 63) - 1
_EXACT = Context(prec=2000)


@dataclass(frozen=True, slots=True)
class Fixed:
    """A real conversion printed from a whole number: `scale` times the value, from `least` to `greatest`."""

    places: int
    least: int
    greatest: int
    sign: str
    zeros: int
    spec: str
    room: int

    @property
    def scale(self) -> int:
        """What a value is multiplied by."""
        return int(10**self.places)

    @property
    def step(self) -> str:
        """One step of the whole number, as a decimal."""
        return f"0.{'0' * (self.places - 1)}1" if self.places else "1"


def fixed(conversion: Conversion, argument: Argument) -> Fixed | None:
    """Return how a conversion is printed without floating point, or None where it cannot be."""
    if (
        conversion.kind != "real"
        or conversion.length == "L"
        or not isinstance(argument, RealRange | WholeRange)
    ):
        return None
    places = 6 if conversion.precision is None else conversion.precision
    if places > MOST_PLACES or (places == 0 and "#" in conversion.flags):
        return None
    ends = [rounded(float(end), places) for end in (argument.least, argument.greatest)]
    most = max(map(abs, ends))
    if most > GREATEST:
        return None
    flags = conversion.flags
    sign = "+" if "+" in flags else " " if " " in flags else ""
    zeros = conversion.width if "0" in flags and "-" not in flags else 0
    digits = max(len(str(most)), places + 1) + (places > 0) + 1
    spec = f"%{'-' if '-' in flags else ''}{conversion.width or ''}s"
    return Fixed(places, ends[0], ends[1], sign, zeros, spec, max(digits, zeros) + 1)


def rounded(value: float, places: int) -> int:
    """Return a double times a power of ten as C prints it: to the nearest, of two as near to the even one (C17, F.5)."""
    scaled = Decimal(value).scaleb(places, _EXACT)
    return int(scaled.quantize(Decimal(1), ROUND_HALF_EVEN, _EXACT))
