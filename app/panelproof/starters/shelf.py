"""Reading the descriptions in `layouts/`: TOML files held to the values that the program works with."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import TypeVar

import msgspec

from panelproof.bundled import bundled
from panelproof.layout.saving import in_words
from panelproof.problem import Problem

Held = TypeVar("Held", bound=msgspec.Struct)


def shelf() -> Path:
    """Return the folder of panels and starters; raises Problem where the program came without it."""
    folder = bundled("layouts")
    if folder is None:
        raise Problem("the panels and starters did not come with the program; install it anew", "layouts")
    return folder


@lru_cache(maxsize=64)
def read(path: Path, kind: type[Held]) -> Held:
    """Return what a TOML file holds; raises Problem with the file and the place in it for the first fault."""
    import tomllib  # noqa: PLC0415 - only these files are TOML

    try:
        tree = tomllib.loads(path.read_text(encoding="utf-8"))
    except OSError as error:
        raise Problem(f"the file cannot be read: {in_words(error)}", str(path)) from None
    except UnicodeDecodeError:
        raise Problem("the file is not UTF-8 text", str(path)) from None
    except tomllib.TOMLDecodeError as error:
        raise Problem(f"the file is not TOML: {str(error)[0].lower()}{str(error)[1:]}", str(path)) from None
    try:
        return msgspec.convert(tree, kind)
    except msgspec.ValidationError as error:
        from panelproof.layout.explaining import faults  # noqa: PLC0415 - only where something is wrong

        for problem in faults(tree, msgspec.inspect.type_info(kind)):
            raise Problem(problem.message, f"{path}: {problem.place}") from None
        raise Problem(f"the file does not hold what it should ({error})", str(path)) from None
