"""The stroke language of the larger faces: a glyph is a few bars, rings, slants and curves.

    = H N bs bs               the glyph's name, its width, the blank columns left and right of it
      bar 0 0 v c             a rectangle: left, low, right, high
      bar w-v 0 w c
      bar 0 mid w mid+h

Every number is a sum of the face's measures (`v` upright stroke, `h` level stroke, `c` capital height, ...),
of `w`, the glyph's own width, and of what `let NAME SUM` has set. The words of the language:

    let NAME SUM              a name for a sum, from here to the end of the glyph
    bar X Y X Y               a filled rectangle
    cut X Y X Y               takes the ink of a rectangle away
    ring X Y X Y [corners]    a stroke inside the edge of a box; corners `nw ne sw se` are rounded, all when
                              none is named, `square` for none; `r=`, `rx=`, `ry=` radii, `v=`, `h=` its own
                              thickness
    disc X Y X Y [corners]    the same box filled
    slant X Y X Y [t=]        a straight stroke between its left edges at the foot and at the head
    curve X Y X Y X Y X Y ... the pen along cubic curves; `v=`, `h=` its size
    both                      adds the mirror image within the width
    turn HEIGHT               adds the ink turned half round within the width and this height
    spin HEIGHT               the ink turned half round, instead of the ink
    flip                      the mirror image, instead of the ink
    use NAME [X Y]            the ink of another glyph, moved
    small NAME [X Y]          the same, drawn to the measures of raised digits: `sc` for `c`, `sv` for `v`
    low NAME [X Y]            the same, as low as a capital is that carries an accent: `lc` for `c`, `lk` for `k`
    lose                      takes away the ink of the next `use`, `disc`, `slant` or `curve`
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path

from fonts_free.drawing import pen
from fonts_free.drawing.glyph import Glyph, from_ink
from fonts_free.drawing.grids import key
from fonts_free.drawing.sums import total

OPTION = re.compile(r"[a-z]+=.")


@dataclass
class Program:
    """One glyph's heading and the lines that draw it."""

    width: str
    left: str
    right: str
    lines: list[list[str]] = field(default_factory=list)


def read_strokes(path: Path) -> dict[str, Program]:
    """The programs of one stroke file by key."""
    programs: dict[str, Program] = {}
    current: Program | None = None
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
        words = line.split()
        if not words or words[0].startswith(";"):
            continue
        if words[0] == "=" and len(words) == 5:
            if key(words[1]) in programs:
                raise ValueError(f"{path.name}:{number}: {words[1]} is drawn twice")
            current = programs[key(words[1])] = Program(words[2], words[3], words[4])
        elif current is None:
            raise ValueError(f"{path.name}:{number}: a stroke before the first glyph")
        else:
            current.lines.append(words)
    return programs


@dataclass
class Hand:
    """Draws the programs of one face."""

    programs: Mapping[str, Program]
    measures: Mapping[str, Fraction]

    def glyph(self, name: str) -> Glyph:
        """The finished glyph of that name."""
        program = self.programs[name]
        try:
            width = total(program.width, self.measures)
            names = {**self.measures, "w": width}
            left, right = total(program.left, names), total(program.right, names)
            ink = self.ink(name)
        except (ValueError, ZeroDivisionError) as error:
            raise ValueError(f"in {name}: {error}") from error
        moved = {(x + math.floor(left), y) for x, y in ink}
        return from_ink(moved, math.floor(left + width + right))

    def ink(self, name: str) -> pen.Ink:
        """The ink of a glyph, its left edge at 0."""
        program = self.programs[name]
        names = {**self.measures, "w": total(program.width, self.measures)}
        ink: pen.Ink = set()
        lose = False
        for word, *rest in program.lines:
            options = dict(part.split("=", 1) for part in rest if OPTION.match(part))
            plain = [part for part in rest if not OPTION.match(part)]
            if word == "let":
                names[plain[0]] = total(plain[1], names)
            elif word == "lose":
                lose = True
            elif word == "both":
                ink |= pen.mirrored(ink, names["w"])
            elif word == "flip":
                ink = pen.mirrored(ink, names["w"])
            elif word == "turn":
                ink |= pen.turned(ink, names["w"], total(plain[0], names))
            elif word == "spin":
                ink = pen.turned(ink, names["w"], total(plain[0], names))
            elif lose or word == "cut":
                ink -= self._stroke(word, plain, options, names)
                lose = False
            else:
                ink |= self._stroke(word, plain, options, names)
        return ink

    def _stroke(
        self, word: str, plain: list[str], options: dict[str, str], names: dict[str, Fraction]
    ) -> pen.Ink:
        if word == "use":
            dx, dy = (math.floor(total(part, names)) for part in (plain[1:] or ["0", "0"]))
            return {(x + dx, y + dy) for x, y in self.ink(key(plain[0]))}
        if word == "small":
            dx, dy = (math.floor(total(part, names)) for part in (plain[1:] or ["0", "0"]))
            small = {name: self.measures.get(f"s{name}", value) for name, value in self.measures.items()}
            return {(x + dx, y + dy) for x, y in Hand(self.programs, small).ink(key(plain[0]))}
        if word == "low":
            dx, dy = (math.floor(total(part, names)) for part in (plain[1:] or ["0", "0"]))
            lowered = {**self.measures, **{name: self.measures[f"l{name}"] for name in "ck"}}
            return {(x + dx, y + dy) for x, y in Hand(self.programs, lowered).ink(key(plain[0]))}
        corners = tuple(part for part in plain if part in pen.CORNERS)
        numbers = [total(part, names) for part in plain if part not in pen.CORNERS and part != "square"]
        sides = total(options.get("v", "v"), names)
        ends = total(options.get("h", "h"), names)
        quarters = math.floor(total(options.get("q", "q"), names))
        points = list(zip(numbers[::2], numbers[1::2], strict=True))
        match word:
            case "bar" | "cut":
                return set(pen.pixels(*numbers))
            case "ring" | "disc":
                if not corners and "square" not in plain:
                    corners = pen.CORNERS
                half_wide, half_high = (numbers[2] - numbers[0]) / 2, (numbers[3] - numbers[1]) / 2
                radius = options.get("r")
                across = min(total(options.get("rx", radius or "999"), names), self._most(half_wide, corners))
                up = min(total(options.get("ry", radius or "999"), names), half_high)
                left, low, right, high = numbers
                box = pen.Box(left, low, right, high, across, up, corners)
                return pen.filled(box, quarters) if word == "disc" else pen.ring(box, sides, ends, quarters)
            case "slant":
                (x0, y0), (x1, y1) = points
                width = options.get("t")
                auto = pen.slant_width(x1 - x0, y1 - y0, sides, ends)
                return pen.slant(points[0], points[1], math.floor(total(width, names)) if width else auto)
            case "curve":
                return pen.curve(points, sides, ends)
        raise ValueError(f"no such word: {word}")

    @staticmethod
    def _most(half_wide: Fraction, corners: tuple[str, ...]) -> Fraction:
        """The widest a corner may be: half the box, or all of it where the other side is square."""
        east, west = {"ne", "se"} & set(corners), {"nw", "sw"} & set(corners)
        return half_wide if east and west else 2 * half_wide
