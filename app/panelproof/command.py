"""The command line."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any, NoReturn

from panelproof import __version__
from panelproof.problem import Problem

CLEAN, FAULTY, UNUSABLE, BROKEN = 0, 1, 2, 3
Commands = Any  # argparse keeps the name of its own type to itself

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

    mend = commands.add_parser(
        "mend",
        help="carry out the remedies that are safe",
        description="Carry out each remedy that ends its finding and brings no other; print what was done and what is "
        "left. Exit code 0: no fault is left. 1: faults are left. 2: the file cannot be used.",
        epilog=CAUTION,
    )
    _layout(mend)
    mend.add_argument("--dry-run", action="store_true", help="print only, and write nothing")
    mend.add_argument("-o", "--output", type=Path, help="write here, and leave LAYOUT as it is")

    measure = commands.add_parser(
        "measure",
        help="print the longest and shortest text of each field, and the room it needs",
        description="Print, for every field, its extreme texts, the pixels they ink, "
        "the padding box needed and given, and the bytes of its text buffer.",
    )
    _layout(measure)
    measure.add_argument(
        "--cost",
        action="store_true",
        help="print instead what the layout costs: bytes and time on the bus for each update and screen, flash and RAM",
    )
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
        "--depends",
        type=Path,
        metavar="FILE",
        help="also write a rule for make: the files that the header comes from",
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

    _beginning(commands)
    _compare(commands)
    _adopt(commands)
    _bake(commands)
    _sheet(commands)
    desktop = commands.add_parser(
        "desktop",
        help="let the Linux desktop know the editor and its files",
        description="Install for this user, or remove, a desktop entry, an icon and a type for *.panel.json files.",
    )
    desktop.add_argument("--remove", action="store_true", help="take them away again")
    return parser


def _compare(commands: Commands) -> None:
    compare = commands.add_parser(
        "compare",
        help="hold a frame read back from the device, or a photograph of it, against a moment",
        description="Say part by part whether the device shows a moment, and what is likely wrong where it does not. "
        "CAPTURE is a picture (PNG, PPM, PGM, PBM, BMP) or raw bytes (--as). "
        "Exit code 0: the same. 1: it differs. 2: a file cannot be used.",
        epilog=CAUTION,
    )
    _layout(compare)
    compare.add_argument(
        "capture", type=Path, metavar="CAPTURE", help="the frame, or with --photo the photograph"
    )
    compare.add_argument(
        "--moment", required=True, help="a moment's name, or SCREEN:longest and the like, as of `render`"
    )
    compare.add_argument(
        "--shows",
        action="append",
        metavar="PART=VALUE",
        help="the field's text, icon's state or meter's value where it is not the moment's; may be repeated",
    )
    compare.add_argument(
        "--as",
        dest="form",
        choices=["picture", "rgb565", "rgb565-low", "rows", "rows-low", "pages", "pages-high", "bytes"],
        help="how the bytes are to be read (default: by the suffix): rgb565 high byte first; rows: codes packed from the "
        "left in the highest bits; pages: eight rows a byte, the uppermost in the lowest bit; bytes: a code a byte",
    )
    compare.add_argument("--photo", action="store_true", help="CAPTURE is a photograph of the glass")
    compare.add_argument(
        "--corners",
        type=_point,
        nargs=4,
        metavar="X,Y",
        help="the glass's corners in the photograph: upper left, upper right, lower right, lower left",
    )
    compare.add_argument("-o", "--output", type=Path, help="write a picture of the differences (PNG)")
    compare.add_argument("--scale", type=_scale, help="of that picture, 1 to 32")
    compare.add_argument("--json", action="store_true", help="print the outcome as one line of JSON")


def _adopt(commands: Commands) -> None:
    adopt = commands.add_parser(
        "adopt",
        help="take values nudged by hand in the header back into the layout",
        description="Take coordinates, sizes, padding, alignment and inks that were changed by hand in HEADER back into "
        "the layout, and prove the outcome. What both sides changed since the header was made is told and not written. "
        "Exit code 0: header and layout say the same. 1: faults, conflicts, or values that cannot be taken back.",
        epilog=CAUTION,
    )
    _layout(adopt)
    adopt.add_argument("header", type=Path, metavar="HEADER", help="the header, as it was changed")
    adopt.add_argument(
        "--base",
        type=Path,
        metavar="LAYOUT",
        help="the layout as it was when the header was made, where it has changed since (default: sought in git)",
    )
    adopt.add_argument("--dry-run", action="store_true", help="say what would be taken and write nothing")
    adopt.add_argument(
        "--despite-conflicts", action="store_true", help="where both sides changed a value, take the header's"
    )


def _bake(commands: Commands) -> None:
    bake = commands.add_parser(
        "bake",
        help="write types as bitmap files beside the layout, the same on every machine",
        description="Draw the glyphs of types once, write them as BDF files beside the layout, and let the layout take "
        "them from there: headers are then the same whatever release of the rasteriser is installed.",
    )
    _layout(bake)
    bake.add_argument(
        "--type",
        action="append",
        metavar="NAME",
        help="only this type (may be repeated; default: all from outlines)",
    )
    bake.add_argument(
        "--all", action="store_true", help="all characters of the font, not only those that are shown"
    )
    bake.add_argument(
        "--again", action="store_true", help="bake types anew from the fonts that they came from"
    )


def _sheet(commands: Commands) -> None:
    sheet = commands.add_parser(
        "sheet",
        help="write the sheet that hangs beside the bench, as PDF and HTML",
        description="Write the whole layout for people: the panel, every screen with its dimensions and moments, "
        "the parts, what they can show, and what the proof finds or a part accepts.",
        epilog=CAUTION,
    )
    _layout(sheet)
    sheet.add_argument(
        "-o", "--output", type=Path, help="FILE.pdf or FILE.html (default: both, beside the layout)"
    )
    sheet.add_argument("--paper", choices=["a4", "letter"], default="a4", help="of the PDF (default a4)")


def _point(text: str) -> tuple[float, float]:
    try:
        x, y = map(float, text.split(","))
        if not (abs(x) < 1e6 and abs(y) < 1e6):  # nor what is no number at all
            raise ValueError
    except ValueError:
        raise argparse.ArgumentTypeError("a corner is X,Y in pixels of the photograph") from None
    return x, y


def _beginning(commands: argparse._SubParsersAction[_Parser]) -> None:
    """Add the commands that a layout begins with: panels, starters, new."""
    panels = commands.add_parser(
        "panels",
        help="list panels in common use",
        description="List panels in common use by size and kind, each figure with where it comes from.",
    )
    panels.add_argument("search", nargs="?", default="", help="only panels whose id, kind or size holds this")
    panels.add_argument("--json", action="store_true", help="print JSON, with every source and the starters")

    starters = commands.add_parser(
        "starters",
        help="list starter layouts",
        description="List the layouts to begin from, and the panels that each is for.",
    )
    starters.add_argument("--panel", metavar="ID", help="only those for this panel, the closest first")
    starters.add_argument("--json", action="store_true", help="print JSON, with the panels that each claims")

    new = commands.add_parser(
        "new",
        help="write a starter layout",
        description="Write a layout that checks clean, to begin from: a starter, set for a listed panel or for a "
        "panel of your own.",
    )
    new.add_argument("layout", type=Path, metavar="LAYOUT", help="the file to write (NAME.panel.json)")
    new.add_argument(
        "--starter", metavar="NAME", help="as `starters` lists it, or `empty` (default: the closest)"
    )
    new.add_argument("--panel", metavar="ID", help="as `panels` lists it (default colour-240x135-1.14)")
    own = new.add_argument_group("a panel of your own, instead of --panel")
    own.add_argument("--size", type=_size, help="WIDTHxHEIGHT in pixels (default 240x135)")
    own.add_argument(
        "--colours", choices=["mono", "grey4", "grey16", "rgb565", "indexed"], help="default rgb565"
    )
    own.add_argument(
        "--palette",
        nargs="+",
        metavar="COLOUR",
        help="for indexed: #rrggbb from code 0 (default black, white)",
    )
    own.add_argument("--shape", choices=["rectangular", "rounded", "round"], help="default rectangular")
    own.add_argument("--corner-radius", type=int, help="pixels, for rounded")
    own.add_argument("--refresh", choices=["part", "whole"], help="whole: frames are composed in memory")


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
