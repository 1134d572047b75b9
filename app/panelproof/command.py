"""The command line."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import NoReturn

from panelproof import __version__
from panelproof.problem import Problem

CLEAN, FAULTY, UNUSABLE, BROKEN = 0, 1, 2, 3

CAUTION = (
    "A proof of pixels, not of measurements: a status screen is not a safety device. "
    "Local codes and licensed practice come first."
)


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        self.exit(UNUSABLE, f"{self.prog}: {message}\nTry `{self.prog} --help`.\n")


def _layout(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("layout", type=Path, metavar="LAYOUT", help="a layout file (NAME.panel.json)")


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog="panelproof",
        description="Design what a small screen shows, prove it for every value, hand it to firmware. "
        "Without a command it opens the editor, on LAYOUT if one is given: panelproof [LAYOUT].",
        epilog=CAUTION,
    )
    parser.add_argument("--version", action="version", version=f"panelproof {__version__}")
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")

    check = commands.add_parser(
        "check",
        help="prove layouts and list what will go wrong",
        description="Prove each layout for every text its fields can show. "
        "Exit code 0: clean. 1: faults found. 2: a file cannot be used.",
        epilog=CAUTION,
    )
    check.add_argument(
        "layouts", type=Path, nargs="+", metavar="LAYOUT", help="layout files (NAME.panel.json)"
    )
    check.add_argument("--json", action="store_true", help="print one JSON object a file, one a line")

    measure = commands.add_parser(
        "measure",
        help="print the longest and shortest text of each field, and the room it needs",
        description="Print, for every field, its extreme texts, the pixels they ink, "
        "the padding box needed and given, and the bytes of its text buffer.",
    )
    _layout(measure)
    measure.add_argument("--json", action="store_true", help="print the figures as JSON")

    render = commands.add_parser(
        "render",
        help="write a picture of the panel",
        description="Write one moment of a screen as PNG, each panel pixel as a square of SCALE pixels.",
    )
    _layout(render)
    render.add_argument(
        "-o", "--output", type=Path, help="the PNG file (default: MOMENT.png beside the layout)"
    )
    render.add_argument(
        "--moment",
        help="a moment's name, or SCREEN:longest, SCREEN:shortest, SCREEN:tallest, SCREEN:fault "
        "(default: the first moment)",
    )
    render.add_argument("--scale", type=_scale, help="1 to 32 (default 4; of a sheet, what fits)")
    render.add_argument(
        "--marks", action="store_true", help="show footprints, padding boxes, baselines and stale pixels"
    )
    render.add_argument("--list", action="store_true", help="list the moments and write nothing")
    render.add_argument("--sheet", action="store_true", help="write all moments on one picture")

    export = commands.add_parser(
        "export",
        help="write the C header for the firmware",
        description="Prove the layout, then write one C header that draws the same pixels.",
        epilog=CAUTION,
    )
    _layout(export)
    export.add_argument("-o", "--output", type=Path, help="the header (default: NAME.h beside the layout)")
    export.add_argument(
        "--verify",
        type=Path,
        metavar="HEADER",
        help="write nothing; exit 1 and say what differs if HEADER is not what the layout gives now",
    )
    export.add_argument(
        "--despite-faults", action="store_true", help="write the header although faults are found"
    )

    commands.add_parser(
        "schema",
        help="print the JSON Schema of layout files",
        description="Print the JSON Schema of layout files.",
    )

    fonts = commands.add_parser(
        "fonts",
        help="list the fonts that a layout can name",
        description="List the fonts that a layout can name: bundled, from installed packages, and the system's.",
    )
    fonts.add_argument("search", nargs="?", default="", help="only names that hold this")
    fonts.add_argument("--licence", action="store_true", help="also print embedding bits and licence of each")

    new = commands.add_parser(
        "new",
        help="write a starter layout",
        description="Write a small layout that checks clean, to begin from.",
    )
    new.add_argument("layout", type=Path, metavar="LAYOUT", help="the file to write (NAME.panel.json)")
    new.add_argument(
        "--size", type=_size, default=(240, 135), help="WIDTHxHEIGHT in pixels (default 240x135)"
    )
    new.add_argument("--colours", choices=["mono", "rgb565"], default="rgb565", help="default rgb565")
    new.add_argument("--shape", choices=["rectangular", "rounded", "round"], default="rectangular")
    new.add_argument("--corner-radius", type=int, default=0, help="pixels, for rounded")
    new.add_argument(
        "--refresh", choices=["part", "whole"], default="part", help="whole: frames are composed in memory"
    )
    desktop = commands.add_parser(
        "desktop",
        help="let the Linux desktop know the editor and its files",
        description="Install for this user, or remove, a desktop entry, an icon and a type for *.panel.json files.",
    )
    desktop.add_argument("--remove", action="store_true", help="take them away again")
    return parser


def _scale(text: str) -> int:
    if not (text.isdecimal() and 1 <= int(text[:4]) <= 32):
        raise argparse.ArgumentTypeError("a scale is a whole number from 1 to 32")
    return int(text)


def _size(text: str) -> tuple[int, int]:
    width, times, height = text.lower().replace("×", "x").partition("x")
    if not (times and width.isdecimal() and height.isdecimal() and len(text) < 12):
        raise argparse.ArgumentTypeError("a size is WIDTHxHEIGHT, such as 240x135")
    return int(width), int(height)


def _window(path: Path | None) -> int:
    """Open the editor, on a file or where one left off."""
    from panelproof.editor.app import run  # noqa: PLC0415 - the commands need no window

    return run(path)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code."""
    words = list(sys.argv[1:] if arguments is None else arguments)
    if not words or (len(words) == 1 and words[0].endswith(".json")):
        return _window(Path(words[0]) if words else None)
    options = _parser().parse_args(words)
    from panelproof import tasks  # noqa: PLC0415 - `--help` needs none of it

    try:
        code = tasks.TASKS[options.command](options)
        sys.stdout.flush()
        return code
    except Problem as problem:
        print(f"panelproof: {problem}", file=sys.stderr)
        return UNUSABLE
    except BrokenPipeError:
        # The reader has gone (a pager closed): keep the interpreter from failing again at exit.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return CLEAN
    except KeyboardInterrupt:
        print("panelproof: stopped", file=sys.stderr)
        return 130
    except (Exception, RecursionError, MemoryError) as error:
        if os.environ.get("PANELPROOF_TRACE"):
            raise
        print(
            f"panelproof: this is a mistake in Panelproof, not in your file ({type(error).__name__}: {error}); "
            "set PANELPROOF_TRACE=1 to see where it arose",
            file=sys.stderr,
        )
        return BROKEN


if __name__ == "__main__":
    sys.exit(main())
