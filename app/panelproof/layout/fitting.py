"""Names that a layout can have."""

from __future__ import annotations

import re


def fitting(name: str) -> str:
    """Return a name made one that a layout can have."""
    words = re.findall("[a-z0-9]+", name.lower())
    joined = "-".join(words)[:40].rstrip("-")
    return joined if joined[:1].isalpha() else f"panel-{joined}"[:40].rstrip("-")
