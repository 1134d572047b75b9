"""The tables of an OpenType font, as fontTools reads them."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from panelproof.glyphs.file import FontFile
from panelproof.problem import Problem


def tables(file: FontFile) -> Any:
    """Return fontTools' TTFont of a file's first face, its tables read as they are asked for."""
    import logging  # noqa: PLC0415
    from io import BytesIO  # noqa: PLC0415

    from fontTools.ttLib import TTFont  # noqa: PLC0415 - slow to load, and most layouts need none of it

    # Its warnings about oddities in other people's fonts are nothing that a maker could act on.
    logging.getLogger("fontTools").setLevel(logging.CRITICAL)
    return TTFont(BytesIO(file.data), fontNumber=0 if file.kind == "TTC" else -1, lazy=True)


@contextmanager
def problem_instead(sentence: str) -> Iterator[None]:
    """Raise Problem with `sentence` for whatever a damaged table makes fontTools raise."""
    try:
        yield
    except Problem:
        raise
    except Exception:  # it raises what struct, slices and assertions raise
        raise Problem(sentence) from None
