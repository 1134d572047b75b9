"""Names for new things, and whether a name is free."""

from __future__ import annotations

import re
from collections.abc import Collection

from panelproof.layout.parts import NAME_PATTERN
from panelproof.layout.wording import one, quote
from panelproof.problem import Problem

GREATEST_LENGTH = 40


def free_name(wanted: str, taken: Collection[str]) -> str:
    """Return `wanted`, or the same with the first number from 2 up that nothing has."""
    if wanted not in taken:
        return wanted
    base = re.sub(r"-\d+$", "", wanted)
    number = 2
    while True:
        end = f"-{number}"
        name = base[: GREATEST_LENGTH - len(end)].rstrip("-") + end
        if name not in taken:
            return name
        number += 1


def check_free(name: str, taken: Collection[str], noun: str, where: str = "") -> None:
    """Raise Problem where a name is taken or is no name; `noun` and `where` tell of what."""
    if not re.fullmatch(NAME_PATTERN, name) or len(name) > GREATEST_LENGTH:
        raise Problem(
            f"{quote(name)} cannot be a name: small letters, digits and single hyphens between them,"
            f" a letter first, {GREATEST_LENGTH} at most"
        )
    if name in taken:
        raise Problem(
            f"there is {one(noun)} {quote(name)}{f' {where}' if where else ''} already; choose another name"
        )
