"""What a command is told to write, judged before it does any work."""

from __future__ import annotations

from pathlib import Path

from panelproof.layout.panel import Panel
from panelproof.problem import Problem
from panelproof.proof.words import grouped

MOST_PIXELS = 250_000_000


def check_apart(output: Path | None, *inputs: Path | None) -> None:
    """Raise Problem where a file to write is one of those that are read: it would be lost."""
    if output is None:
        return
    for path in inputs:
        try:
            # A device such as /dev/null may stand for several.
            same = path is not None and (output == path or (output.is_file() and output.samefile(path)))
        except (OSError, ValueError):
            continue
        if same:
            raise Problem(
                "this file is read, and writing it would destroy it; give another name", str(output)
            )


def check_png(output: Path | None) -> None:
    """Raise Problem where a picture would be written under the name of another kind of file."""
    if output is not None and output.suffix and output.suffix.lower() != ".png":
        raise Problem("the picture is written as PNG; let its name end in .png", str(output))


def check_pixels(panel: Panel, scale: int | None, pictures: int = 1) -> None:
    """Raise Problem where a scale asked for gives more pixels than a computer can well hold."""
    pixels = panel.width * panel.height * (scale or 1) ** 2 * pictures
    if (scale or 1) > 1 and pixels > MOST_PIXELS:
        raise Problem(
            f"at this scale there would be {grouped(pixels)} pixels, more than {grouped(MOST_PIXELS)};"
            " give a smaller one",
            "--scale",
        )
