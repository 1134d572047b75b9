"""Digits of whole numbers that lie evenly spaced between two ends, as C prints them, without listing them."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct

from panelproof.content.builder import Builder
from panelproof.content.format import Conversion
from panelproof.content.graph import Edge

Span = tuple[int, int]

LOWER = "0123456789abcdef"
UPPER = "0123456789ABCDEF"
BASES = {"x": 16, "X": 16, "o": 8}


class Run(Struct, frozen=True):
    """The numbers `first`, `first` + `step`, … up to `last`, none negative, all printed after `head`.

    `head` is a sign, a base prefix or nothing; `last` is one of the numbers.
    """

    head: str
    first: int
    last: int
    step: int = 1


def least_digits(conversion: Conversion, head: str) -> int:
    """Return how many digits are printed at least, zeros in front included, the point not counted."""
    if conversion.kind == "real":
        least = decimals(conversion) + 1
    else:
        least = 1 if conversion.precision is None else conversion.precision
        # `#` gives an octal number a zero in front; zero itself shows that zero even with precision 0.
        least = max(least, 1) if _octal(conversion) else least
    if conversion.zeros:
        least = max(least, conversion.width - len(head) - len(point(conversion)))
    return least


def digits_of(conversion: Conversion, number: int, head: str) -> str:
    """Return the digits printed for one number that is not negative, without sign, prefix and point."""
    digits = "" if number == 0 else format(number, conversion.letter if conversion.letter in BASES else "d")
    digits = digits.rjust(least_digits(conversion, head), "0")
    return "0" + digits if _octal(conversion) and not digits.startswith("0") else digits


def decimals(conversion: Conversion) -> int:
    """Return the digits after the point that a real conversion prints (6 where the format does not say)."""
    return 6 if conversion.precision is None else conversion.precision


def point(conversion: Conversion) -> str:
    """Return the decimal point that a conversion prints, or nothing."""
    real = conversion.kind == "real"
    return "." if real and (decimals(conversion) > 0 or "#" in conversion.flags) else ""


def numbers(builder: Builder, conversion: Conversion, runs: Iterable[Run], follow: int) -> int:
    """Return every number of `runs` as the conversion prints it, and then what may follow.

    For a real conversion the numbers count units of the last decimal.
    """
    shape = _Shape(builder, conversion)
    dot = point(conversion)
    trail = [follow]
    bodies: list[tuple[int, int]] = []
    for run in runs:
        for count, first, last in _by_length(
            run, least_digits(conversion, run.head), shape.base, _octal(conversion)
        ):
            length = len(run.head) + count + len(dot)
            spaces = max(0, conversion.width - length) if conversion.left else 0
            while len(trail) <= spaces:
                trail.append(builder.node(False, ((trail[-1], " "),)))
            body = shape.spelled(Run(run.head, first, last, run.step), count, trail[spaces])
            bodies.append((length, builder.literal(run.head, body)))
    if conversion.left:
        return builder.union(node for _, node in bodies)
    return builder.right_aligned(conversion.width, bodies)


def _octal(conversion: Conversion) -> bool:
    return conversion.letter == "o" and "#" in conversion.flags


def _by_length(run: Run, least: int, base: int, zero_first: bool) -> Iterable[tuple[int, int, int]]:
    """Split a run by the digits printed: (digits, first number, last number)."""
    first, count = run.first, least
    while first <= run.last:
        top = base ** max(0, count - zero_first) - 1
        last = min(run.last, top)
        last -= (last - run.first) % run.step
        if last >= first:
            yield count, first, last
            first = last + run.step
        count += 1


class _Shape:
    """How one conversion writes digits: its base, letters and point; and the digits written so far."""

    def __init__(self, builder: Builder, conversion: Conversion) -> None:
        self.base = BASES.get(conversion.letter, 10)
        self._builder = builder
        self._letters = UPPER if conversion.letter == "X" else LOWER
        self._places = decimals(conversion) if point(conversion) else -1
        self._free: dict[int, list[int]] = {}

    def spelled(self, run: Run, count: int, follow: int) -> int:
        """Return the numbers of `run` in exactly `count` digits, and then `follow`.

        With n digits to come, a node is just the first and the last number that those digits can still spell:
        together with the step they say the whole set, so equal sets meet without a search.
        """
        step = run.step
        free = self._any(count, follow) if step == 1 else []
        levels: list[dict[Span, list[tuple[Span, str]]]] = [{(run.first, run.last): []}]
        for power in range(count - 1, -1, -1):
            unit = self.base**power
            below: dict[Span, list[tuple[Span, str]]] = {}
            for (first, last), onward in levels[-1].items():
                self._builder.spend(3)
                if free and last - first + 1 == unit * self.base:
                    continue
                for digit in range(first // unit, last // unit + 1):
                    low, high = digit * unit, digit * unit + unit - 1
                    least = first if low <= first else low + (first - low) % step
                    most = last if high >= last else high - (high - last) % step
                    if least <= most:
                        child = (least - low, most - low)
                        below.setdefault(child, [])
                        onward.append((child, self._letters[digit]))
            if not below:
                break
            levels.append(below)
        nodes: dict[Span, int] = {}
        for left, level in enumerate(reversed(levels), count + 1 - len(levels)):
            # A set without edges is any digits at all, or the end of the number.
            nodes = {
                span: free[left]
                if free and not onward
                else self._node(left, [(nodes[to], char) for to, char in onward], follow)
                for span, onward in level.items()
            }
        return nodes[run.first, run.last]

    def _any(self, count: int, follow: int) -> list[int]:
        """Return the nodes from which any 0, 1, … `count` digits lead to `follow`."""
        free = self._free.setdefault(follow, [])
        while len(free) <= count:
            onward = [(free[-1], self._letters[: self.base])] if free else []
            free.append(self._node(len(free), onward, follow))
        return free

    def _node(self, left: int, onward: list[Edge], follow: int = 0) -> int:
        """Return the node with `left` digits to come, the point before them where its place is."""
        node = self._builder.node(False, onward) if onward else follow
        return self._builder.node(False, ((node, "."),)) if left == self._places else node
