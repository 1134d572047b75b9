"""The measures of every face, in pixels.

Strokes: `v` upright, `h` level, `st` slanted, `sl` slanted where two cross or meet, `m` the middle bar of e
and B, `tv` and `th` thin.
Heights: `c` capitals and digits, `x` lower case, `d` a descender, `k` the low edge of a capital's middle bar,
`lo` and `hi` the reach of brackets, `ax` the low edge of a minus, `ah` an accent, `ag` its gap over a letter; in
the large faces `la` and `lg` over lower case, and over a capital `cg` the gap, `lc` and `lk` that capital's own
height and middle bar.
Widths: `f` digit, `N` H and its like, `R` round capitals, `E` narrow ones, `A` slanted ones, `M` `W` `I`
themselves, `n` n and its like, `o` round lower case, `mm` the letter m, `p` a full stop, `z` the pill in the
zero, `pl` a plus (its height is `pv`). Raised digits have the same measures with an `s` before them.
Blank columns beside a glyph: `bs` and `bt` a straight side left and right, `br` a round, `bd` a slanted one,
`fl` and `fr` a digit's left and right. `q` is the squareness of curves in quarters: 8 is an ellipse.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

FAMILY = "Pellucet"


@dataclass(frozen=True)
class Face:
    """One font file: its line, its heights, its sources, later ones overriding earlier."""

    size: int
    ascent: int
    cap: int
    x: int
    figure: int
    weight: str = "medium"
    kind: str = "text"
    grids: tuple[str, ...] = ()
    strokes: tuple[str, ...] = ()
    smear: tuple[str, ...] = ()
    measures: str = ""

    @property
    def descent(self) -> int:
        """Pixels of the line below the baseline."""
        return self.size - self.ascent

    @property
    def stem(self) -> str:
        """The font file's name without its ending."""
        middle = {"medium": "", "bold": "-bold"}[self.weight]
        kind = "-numerals" if self.kind == "numerals" else ""
        return f"{FAMILY.lower()}{kind}{middle}-{self.size}"

    def numbers(self) -> dict[str, Fraction]:
        """Every measure by name."""
        given = dict(pair.split("=") for pair in self.measures.split())
        return {
            "c": Fraction(self.cap),
            "x": Fraction(self.x),
            "fa": Fraction(self.figure),
            "asc": Fraction(self.ascent),
            "desc": Fraction(self.descent),
            **{name: Fraction(value) for name, value in given.items()},
        }


DRAWN = ("letters", "digits", "signs")
LARGE = (*DRAWN, "large")
NUMERALS = ("digits", "signs", "numerals")

FACES = (
    Face(8, 7, 7, 5, 6, grids=("10", "8")),
    Face(10, 8, 7, 5, 6, grids=("10",)),
    Face(12, 10, 8, 6, 8, grids=("12",)),
    Face(16, 13, 10, 7, 9, grids=("16",)),
    Face(
        20,
        17,
        14,
        10,
        12,
        strokes=DRAWN,
        grids=("20",),
        measures="st=2 sl=2 v=2 h=2 m=2 d=3 k=6 q=10 p=3 z=2 f=10 fl=1 fr=1 N=10 R=11 E=8 A=12 M=12 W=18"
        " ww=14 I=6 n=8 o=9 mm=14 bs=2 bt=1 br=1 bd=1 pl=8 pv=8 ax=6 lo=-2 hi=15 ah=2 ag=1 tv=2"
        " th=1 sc=8 sf=6 sv=2 sh=1 sm=1 sk=3 sx=6 sn=5 so=6",
    ),
    Face(
        24,
        20,
        16,
        12,
        14,
        strokes=DRAWN,
        grids=("24",),
        measures="st=3 sl=2 v=2 h=2 m=2 d=4 k=7 q=10 p=3 z=2 f=12 fl=1 fr=1 N=12 R=13 E=10 A=14 M=14 W=22"
        " ww=18 I=6 n=10 o=11 mm=16 bs=2 bt=2 br=1 bd=1 pl=10 pv=10 ax=7 lo=-3 hi=18 ah=3 ag=1"
        " tv=2 th=1 sc=9 sf=6 sv=2 sh=1 sm=1 sk=4 sx=7 sn=6 so=6",
    ),
    Face(
        32,
        26,
        22,
        16,
        20,
        strokes=LARGE,
        grids=("32",),
        measures="st=4 sl=4 v=3 h=3 m=3 d=6 k=10 q=10 p=4 z=3 f=17 fl=1 fr=2 N=17 R=19 E=14 A=19 M=21 W=31"
        " ww=23 I=9 n=14 o=15 mm=23 bs=3 bt=2 br=2 bd=1 pl=15 pv=15 ax=10 lo=-4 hi=24 ah=3 ag=1 la=5 lg=2 cg=1 lc=21 lk=9"
        " tv=2 th=2 sc=13 sf=9 sv=2 sh=2 sm=1 sk=6 sx=9 sn=8 so=8",
    ),
    Face(
        48,
        39,
        34,
        24,
        28,
        strokes=LARGE,
        grids=("48",),
        measures="st=6 sl=6 v=5 h=4 m=4 d=9 k=16 q=10 p=6 z=4 f=24 fl=2 fr=2 N=25 R=29 E=21 A=29 M=31 W=45"
        " ww=37 I=13 n=21 o=23 mm=35 bs=4 bt=4 br=2 bd=1 pl=21 pv=20 ax=15 lo=-6 hi=37 ah=4 ag=1 la=7 lg=2 cg=2 lc=32 lk=15"
        " tv=3 th=3 sc=19 sf=13 sv=3 sh=3 sm=2 sk=8 sx=13 sn=11 so=12",
    ),
    Face(12, 10, 8, 6, 9, "bold", smear=("12",), grids=("bold-12",)),
    Face(16, 13, 10, 7, 10, "bold", smear=("16",), grids=("bold-16",)),
    Face(
        20,
        17,
        14,
        10,
        13,
        "bold",
        strokes=DRAWN,
        grids=("bold-20",),
        measures="st=4 sl=3 v=3 h=2 m=2 d=3 k=6 q=10 p=3 z=1 f=11 fl=1 fr=1 N=11 R=12 E=9 A=13 M=15 W=23"
        " ww=19 I=7 n=9 o=10 mm=17 bs=2 bt=1 br=1 bd=1 pl=9 pv=8 ax=6 lo=-2 hi=15 ah=2 ag=1 tv=2"
        " th=1 sc=8 sf=6 sv=2 sh=1 sm=1 sk=3 sx=6 sn=5 so=6",
    ),
    Face(
        24,
        20,
        16,
        12,
        15,
        "bold",
        strokes=DRAWN,
        grids=("bold-24",),
        measures="st=5 sl=4 v=4 h=3 m=2 d=4 k=7 q=10 p=4 z=1 f=13 fl=1 fr=1 N=13 R=15 E=11 A=16 M=18 W=28"
        " ww=24 I=10 n=12 o=12 mm=20 bs=2 bt=2 br=1 bd=1 pl=12 pv=11 ax=6 lo=-3 hi=18 ah=3 ag=1"
        " tv=2 th=2 sc=9 sf=7 sv=2 sh=1 sm=1 sk=4 sx=7 sn=6 so=7",
    ),
    Face(
        32,
        26,
        22,
        16,
        21,
        "bold",
        strokes=LARGE,
        grids=("bold-32",),
        measures="st=6 sl=6 v=5 h=4 m=3 d=6 k=9 q=10 p=5 z=2 f=18 fl=1 fr=2 N=19 R=21 E=15 A=21 M=25 W=33"
        " ww=29 I=13 n=16 o=17 mm=27 bs=3 bt=2 br=2 bd=1 pl=15 pv=14 ax=9 lo=-4 hi=24 ah=3 ag=1 la=5 lg=2 cg=1 lc=21 lk=8"
        " tv=3 th=3 sc=13 sf=9 sv=3 sh=2 sm=2 sk=6 sx=9 sn=8 so=9",
    ),
    Face(
        48,
        39,
        34,
        24,
        30,
        "bold",
        strokes=LARGE,
        grids=("bold-48",),
        measures="st=10 sl=9 v=8 h=6 m=5 d=9 k=14 q=10 p=8 z=4 f=26 fl=2 fr=2 N=28 R=32 E=23 A=32 M=36"
        " W=52 ww=40 I=18 n=24 o=25 mm=40 bs=4 bt=4 br=2 bd=1 pl=22 pv=20 ax=14 lo=-6 hi=37 ah=4"
        " ag=1 la=7 lg=2 cg=2 lc=32 lk=13 tv=4 th=4 sc=19 sf=14 sv=5 sh=3 sm=3 sk=8 sx=13 sn=12 so=13",
    ),
    Face(
        48,
        42,
        42,
        30,
        35,
        kind="numerals",
        strokes=NUMERALS,
        measures="st=7 v=6 h=5 m=5 d=6 k=19 q=10 p=7 f=30 fl=2 fr=3 br=2 bs=3 bt=3 n=24 bd=2 pl=26 pv=25"
        " ax=18 lo=-1 hi=43 tv=5 th=4 sc=24 sf=16 sv=4 sh=3 sk=11",
    ),
    Face(
        64,
        56,
        56,
        40,
        46,
        kind="numerals",
        strokes=NUMERALS,
        measures="st=10 v=8 h=7 m=7 d=8 k=25 q=10 p=9 f=40 fl=3 fr=3 br=3 bs=4 bt=4 n=32 bd=3 pl=34 pv=33"
        " ax=24 lo=-1 hi=57 tv=6 th=5 sc=32 sf=20 sv=5 sh=4 sk=14",
    ),
)
