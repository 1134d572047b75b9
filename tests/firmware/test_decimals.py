"""Reals without floating point: what the C library prints, for whole ranges and for every tie's neighbours."""

from __future__ import annotations

import math
import random
import struct
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest
from tests.firmware.functions import Functions, build_functions, material_of
from tests.firmware.harness import WARNINGS, compiled

from panelproof.content.format import conversions
from panelproof.content.spec import Choice, Content, RealRange, WholeRange
from panelproof.firmware.decimals import fixed, rounded
from panelproof.firmware.header import header

CONTENTS = (
    Content("%.1f", (RealRange(-40, 125),), fault="no"),
    Content("%.0f", (RealRange(-7.5, 1000.5),), fault="no"),
    Content("%.2f V", (RealRange(0, 30),), fault="no"),
    Content("%+07.3f|", (RealRange(-9.9996, 9.9996),), fault="no"),
    Content("% -9.1f|", (RealRange(-1000, 1000),), fault="no"),
    Content("%f", (RealRange(-1e12, 1e12),), fault="no"),
    Content("%.9f", (RealRange(-9e9, 9e9),), fault="no"),
    Content("%012.5f", (RealRange(1e-7, 1e5),), fault="no"),
    Content("%.1f/%.2f %s", (RealRange(-1, 1), RealRange(0.5, 2), Choice(("a", "bc"))), fault="no"),
)


def near(value: float, ulps: int = 2) -> Iterator[float]:
    """A value and its neighbours among doubles."""
    yield value
    for way in (math.inf, -math.inf):
        at = value
        for _ in range(ulps):
            at = math.nextafter(at, way)
            yield at


def values(least: float, greatest: float, places: int, chance: random.Random) -> Iterator[float]:
    step = 10.0**-places / 10
    count = (greatest - least) / step
    if count < 30_000:
        yield from (least + n * step for n in range(int(count) + 1))
    else:
        yield from (chance.uniform(least, greatest) for _ in range(8000))
        # Numbers of many sizes, the smallest too.
        yield from (chance.choice((-1, 1)) * 2.0 ** chance.uniform(-1074, 40) for _ in range(2000))
    for _ in range(3000):  # ties, as near as doubles come to them, and those that are exact
        half = (round(chance.uniform(least, greatest) * 10**places) + 0.5) / 10**places
        yield from near(half)
        yield round(chance.uniform(least, greatest) * 8) / 8
    for end in (float(least), float(greatest), 0.0):
        yield from near(end)
    yield from (-0.0, 5e-324, -5e-324, math.nan, math.inf, -math.inf)


@pytest.fixture(scope="module", params=[("gcc", "c99"), ("clang++", "c++11")], ids=["gcc", "clang++"])
def functions(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Functions:
    using, standard = request.param
    return build_functions(tmp_path_factory.mktemp("decimals"), CONTENTS, using, standard)


PRINTER = r"""
#include <stdio.h>
#include <stdlib.h>
int main(int count, char **words)
{
    static char line[200];
    (void)count;
    while (fgets(line, sizeof line, stdin)) { printf(words[1], strtod(line, NULL)); printf("\n"); }
    return 0;
}
"""


@pytest.mark.parametrize("number", range(len(CONTENTS) - 1))
def test_what_the_c_library_prints(number: int, functions: Functions, tmp_path: Path) -> None:
    content = CONTENTS[number]
    (tmp_path / "p.c").write_text(PRINTER)
    compiled(tmp_path, ["-O1", "p.c", "-o", "p"])
    conversion, argument = conversions(content.format)[0], content.arguments[0]
    assert isinstance(argument, RealRange)
    places = 6 if conversion.precision is None else conversion.precision
    tried = list(values(argument.least, argument.greatest, places, random.Random(number)))
    done = subprocess.run(
        [tmp_path / "p", content.format],
        input="\n".join(value.hex() for value in tried),
        capture_output=True,
        text=True,
        check=True,
    )
    printed = done.stdout.splitlines()
    written = functions([(number, (value,)) for value in tried])
    inside = 0
    for value, text, expected in zip(tried, written, printed, strict=True):
        if not argument.least <= value <= argument.greatest:
            assert text == "no", value
        elif argument.least == 0 and value == 0:
            assert text == expected.replace("-0", "0"), value
        else:
            assert text == expected, value.hex()
            inside += 1
    assert inside > 5000
    assert "snprintf(buffer, G_S_F0_TEXT_BYTES, G_S_F0_FORMAT" not in header(material_of((content,)))


def test_every_hundredth_and_the_neighbours_of_every_tie(functions: Functions) -> None:
    """All of -40.00 to 125.00 by hundredths, and beside each half of a tenth two doubles on either side."""
    tried = [n / 100 for n in range(-4000, 12501)]
    tried += [one for n in range(-400, 1250) for one in near((n + 0.5) / 10)]
    written = functions([(0, (value,)) for value in tried])
    for value, text in zip(tried, written, strict=True):
        assert text == f"{value:.1f}", value.hex()  # Python rounds as C17 recommends in F.5, exactly


def test_several_in_one_text(functions: Functions) -> None:
    chance, last = random.Random(5), len(CONTENTS) - 1
    tried = [(chance.uniform(-1, 1), chance.uniform(0.5, 2), chance.randrange(2)) for _ in range(2000)]
    written = functions([(last, values) for values in tried])
    for (one, other, choice), text in zip(tried, written, strict=True):
        assert text == f"{one:.1f}/{other:.2f} {('a', 'bc')[choice]}"


# ---- A double of 32 bits, as on AVR ----

SINGLE = r"""
#include <float.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#undef DBL_MANT_DIG
#define DBL_MANT_DIG 24
#define double float
#define G_IMPLEMENTATION
#include "g.h"
#undef double
static unsigned tried;
static int same(float value, float least, float greatest, int places, int (*text)(char *, float))
{
    char expected[64], written[64];
    snprintf(expected, sizeof expected, "%.*f", places, (double)value);
    text(written, value);
    ++tried;
    if (!(value >= least && value <= greatest)) strcpy(expected, "no");
    if (!strcmp(expected, written)) return 1;
    printf("%a: %s, not %s\n", (double)value, written, expected);
    return 0;
}
int main(void)
{
    uint32_t bits, n;
    float value;
    int good = 1;
    for (n = 0; n < 3000000u; ++n) {
        bits = n * 1431u;  /* floats of every size and sign */
        memcpy(&value, &bits, sizeof value);
        good &= same(value, -40.0f, 125.0f, 1, g_s_f0_text);
        good &= same(value, -9e3f, 9e3f, 4, g_s_f1_text);
        if (!good) return 1;
    }
    for (n = 0; n <= 16500; ++n) {
        good &= same((float)n / 100.0f - 40.0f, -40.0f, 125.0f, 1, g_s_f0_text);
        if (!good) return 1;
    }
    /* The nearest float to 0.15 lies over it and would be 0.2, which the proof has not. */
    char written[64];
    g_s_f2_text(written, 0.15f);
    if (strcmp(written, "no")) return 2;
    g_s_f2_text(written, 0.1f);
    if (strcmp(written, "0.1")) return 3;
    return tried > 6000000u ? 0 : 4;
}
"""


def test_a_double_of_32_bits(tmp_path: Path) -> None:
    contents = (
        Content("%.1f", (RealRange(-40, 125),), fault="no"),
        Content("%.4f", (RealRange(-9000, 9000),), fault="no"),
        Content("%.1f", (RealRange(-1, 0.15),), fault="no"),
    )
    text = header(material_of(contents))
    (tmp_path / "g.h").write_text(text)
    (tmp_path / "m.c").write_text(SINGLE)
    assert "uint64_t low" in text
    compiled(tmp_path, ["-O2", "-std=c99", "m.c", "-o", "m"])
    done = subprocess.run([tmp_path / "m"], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout


def test_tenths_of_a_single_take_32_bits_only(tmp_path: Path) -> None:
    (tmp_path / "g.h").write_text(header(material_of((CONTENTS[0], CONTENTS[2]))))
    assert (
        "uint64_t"
        not in (tmp_path / "g.h").read_text().partition("DBL_MANT_DIG == 24")[2].partition("#else")[0]
    )


# ---- Whole numbers of the last places ----

SCALED = r"""
#define G_IMPLEMENTATION
#include "g.h"
#include <stdlib.h>
#include <string.h>
int main(void)
{
    char text[G_S_F0_TEXT_BYTES], other[G_S_F1_TEXT_BYTES], third[G_S_F2_TEXT_BYTES];
    int32_t n;
    for (n = -4100; n < 14000; ++n) {
        g_s_f0_text_scaled(text, n % 1500);
        g_s_f1_text_scaled(other, n * 100003LL, 1);
        g_s_f2_text_scaled(third, n, n % 7);
        printf("%d %s|%s|%s\n", (int)n, text, other, third);
    }
    return 0;
}
"""


def test_scaled(tmp_path: Path) -> None:
    contents = (
        Content("%6.1f", (RealRange(-40, 125),), fault="no"),
        Content("%+.3f%s", (RealRange(-1e6, 1e6), Choice(("a", "b"))), fault="no"),
        Content("%.2f %.1f", (RealRange(0.5, 99.999), WholeRange(-4, 4, 2)), fault="no"),
    )
    text = header(material_of(contents))
    assert "int g_s_f0_text_scaled(char *buffer, int32_t scaled);" in text
    assert "int g_s_f2_text_scaled(char *buffer, int32_t scaled_1, int32_t value_2);" in text
    assert "scaled: -400 to 1250, in steps of 0.1" in text
    (tmp_path / "g.h").write_text(text)
    (tmp_path / "m.c").write_text(SCALED)
    compiled(tmp_path, ["-O1", "-std=c99", *WARNINGS, "-fsanitize=address,undefined", "m.c", "-o", "m"])
    done = subprocess.run([tmp_path / "m"], capture_output=True, text=True, check=True)
    for line in done.stdout.splitlines():
        number, _, rest = line.partition(" ")
        n = int(number)
        one, other, third = rest.split("|")
        of = int(math.fmod(n, 1500))
        assert one == (f"{of / 10:6.1f}" if -400 <= of <= 1250 else "no")
        wide = n * 100003
        assert other == (f"{wide / 1000:+.3f}b" if abs(wide) <= 10**9 else "no")
        second = int(math.fmod(n, 7))
        good = 50 <= n <= 10000 and second % 2 == 0 and abs(second) <= 4
        assert third == (f"{n / 100:.2f} {second:.1f}" if good else "no")


def test_rounding_is_that_of_the_exact_value() -> None:
    assert [rounded(value, 1) for value in (0.25, 0.35, 0.45, -0.25, 0.05, 1e-300)] == [2, 3, 5, -2, 1, 0]
    single = struct.unpack("f", struct.pack("f", 0.45))[0]
    assert rounded(single, 1) == 4


@pytest.mark.parametrize(
    "content",
    [
        Content("%Lf", (RealRange(0, 1),)),
        Content("%.12f", (RealRange(0, 1),)),
        Content("%#.0f", (RealRange(0, 9),)),
        Content("%f", (RealRange(-1e15, 1e15),)),
    ],
)
def test_what_is_left_to_the_library(content: Content) -> None:
    assert fixed(conversions(content.format)[0], content.arguments[0]) is None
    made = header(material_of((content,)))
    assert "G_S_F0_FORMAT, value)" in made
    assert "_scaled(" not in made


def test_long_rows_of_texts(tmp_path: Path) -> None:
    """C99 promises literals of 4095 bytes only."""
    texts = tuple(f"{n:03d}\N{DEGREE SIGN}{'x' * 40}" for n in range(120))
    functions = build_functions(tmp_path, (Content("%s", (Choice(texts),)),))
    assert functions([(0, (n,)) for n in range(120)]) == list(texts)
    functions = build_functions(tmp_path, (Content("%s", (Choice(texts[::-1]),)),), "g++", "c++11")
    assert functions([(0, (n,)) for n in range(120)]) == list(texts[::-1])
