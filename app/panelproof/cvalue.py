"""The value of a constant written in C, as far as people write coordinates: numbers, constants, + - * /, brackets."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import NoReturn

_TOKEN = re.compile(r"\s*(?:(0[xX][0-9a-fA-F]+|\d+)[uUlL]*\b|([A-Za-z_]\w*)|([-+*/()]))")
_DEEPEST = 32


class NoValue(Exception):
    """The text is no whole number that can be worked out; the argument says why."""


def value(text: str, constants: Mapping[str, str]) -> int:
    """Return the whole number that a C constant expression stands for; `constants` gives other constants' texts.

    Raises NoValue where it is none.
    """
    return _Reader(text, constants, 0).whole()


class _Reader:
    def __init__(self, text: str, constants: Mapping[str, str], depth: int) -> None:
        if depth > _DEEPEST:
            raise NoValue("it refers to itself")
        self._constants, self._depth = constants, depth
        self._tokens = self._cut(text.strip())
        self._place = 0

    @staticmethod
    def _cut(text: str) -> list[str]:
        tokens, place = [], 0
        while place < len(text):
            match = _TOKEN.match(text, place)
            if match is None:
                raise NoValue(f"`{text[place:].strip()[:20]}` is no number")
            number, name, sign = match.groups()
            # A number with a leading 0 is octal in C (ISO C 6.4.4.1).
            if number and len(number) > 1 and number[0] == "0" and number[1] not in "xX":
                number = f"0o{number.lstrip('0') or '0'}"
            tokens.append(number or name or sign)
            place = match.end()
        return tokens

    def whole(self) -> int:
        """Return the value of the whole text."""
        try:
            found = self._sum()
        except (ValueError, ZeroDivisionError, RecursionError):
            raise NoValue("it cannot be worked out") from None
        if self._place < len(self._tokens):
            raise NoValue(f"`{self._tokens[self._place]}` stands where nothing should")
        return found

    def _next(self) -> str:
        return self._tokens[self._place] if self._place < len(self._tokens) else ""

    def _taken(self) -> str:
        token = self._next()
        self._place += 1
        return token

    def _sum(self) -> int:
        found = self._product()
        while self._next() in ("+", "-"):
            found = found + self._product() if self._taken() == "+" else found - self._product()
        return found

    def _product(self) -> int:
        found = self._single()
        while self._next() in ("*", "/"):
            if self._taken() == "*":
                found *= self._single()
                continue
            by = self._single()
            # C divides towards zero.
            found = abs(found) // abs(by) * (1 if (found < 0) == (by < 0) else -1)
        return found

    def _single(self) -> int:
        token = self._taken()
        if token in ("-", "+"):
            return -self._single() if token == "-" else self._single()
        if token == "(":
            found = self._sum()
            if self._taken() != ")":
                self._open()
            return found
        if token[:1].isdigit():
            return int(token, 0)
        if token in self._constants:
            return _Reader(self._constants[token], self._constants, self._depth + 1).whole()
        if not token or token in "*/)":
            raise NoValue("a number is missing")
        raise NoValue(f"`{token}` is no constant of the header")

    @staticmethod
    def _open() -> NoReturn:
        raise NoValue("a bracket is not closed")
