"""Guarded text functions, compiled: inside the proof they print what C prints, outside the fault text."""

from __future__ import annotations

import math
import random
from collections.abc import Iterator
from pathlib import Path

import pytest
from tests.content.c_library import c_prints
from tests.firmware.functions import Functions, Value, build_functions, material_of

from panelproof.content.build import graph
from panelproof.content.build import text as text_of
from panelproof.content.format import Conversion, conversions
from panelproof.content.spec import Argument, Choice, Content, FreeText, RealRange, WholeRange
from panelproof.content.words import alphabet
from panelproof.firmware.constants import c_type
from panelproof.firmware.header import header
from panelproof.problem import Problem

CONTENTS = (
    Content("%d", (WholeRange(-(1 << 31), (1 << 31) - 1),)),
    Content("%i rpm", (WholeRange(-30, 12_000, 7),), fault="stall"),
    Content("%u", (WholeRange(0, (1 << 32) - 1),), fault="no"),
    Content("%04u", (WholeRange(3, 900, 3),), fault="no"),
    Content("%hhd", (WholeRange(-128, 127),), fault="no"),
    Content("%hhu", (WholeRange(0, 255, 5),), fault="no"),
    Content("%hd", (WholeRange(-32768, 32767),), fault="no"),
    Content("%hu", (WholeRange(1, 65535),)),
    Content("%5ld", (WholeRange(-(1 << 31), 77),), fault="no"),
    Content("%lu", (WholeRange(0, (1 << 32) - 1),), fault="no"),
    Content("%lld", (WholeRange(-(1 << 63), (1 << 63) - 1),)),
    Content("%lli", (WholeRange(-(1 << 63), (1 << 63) - 2, 1 << 62),), fault="no"),
    Content("%llu", (WholeRange(0, (1 << 64) - 1),)),
    Content("%#llx", (WholeRange(0, (1 << 64) - 1, 3),), fault="no"),
    Content("%jd", (WholeRange(-5, 5),), fault="no"),
    Content("%ju", (WholeRange(0, 5),), fault="no"),
    Content("%zd", (WholeRange(-5, 500, 10),), fault="no"),
    Content("%zu", (WholeRange(4, 5),), fault="no"),
    Content("%td", (WholeRange(-9, 9, 9),), fault="no"),
    Content("%tu", (WholeRange(0, 9),), fault="no"),
    Content("%#X|%o", (WholeRange(0, 255), WholeRange(8, 64, 8)), fault="no"),
    # Flags that ISO C says are ignored, and of which compilers warn.
    Content("%+ 05d|%-05d|%05.2d", (WholeRange(-5, 5), WholeRange(-5, 5), WholeRange(-5, 5)), fault="no"),
    Content("%u", (WholeRange(7, 9, 5),), fault="no"),
    Content("%.1f \N{DEGREE SIGN}C", (RealRange(0, 99.96),), fault="no probe"),
    Content("%.1f", (RealRange(-0.04, 10),)),
    Content("%.2f", (RealRange(-40, 125),), fault="no"),
    Content("%.0f", (RealRange(-7.5, 0.0),), fault="no"),
    Content("%6.3F", (RealRange(0.1, 1 / 3),), fault="no"),
    Content("%lf", (RealRange(-1e15, 1e15),), fault="no"),
    Content("%.1Lf", (RealRange(0, 1e6),), fault="no"),
    Content("%+.1f", (WholeRange(-100, 100, 25),), fault="no"),
    Content("%.0Lf", (WholeRange(0, 9),), fault="no"),
    Content("%f", (WholeRange(-(1 << 53), 1 << 53),), fault="no"),
    Content("%c", (Choice(("a", "?", "\\", '"', "%")),), fault="no"),
    Content("<%3c>", (WholeRange(48, 57, 3),), fault="no"),
    Content("%s", (Choice(("", "cooling down", "??/", "21 \N{DEGREE SIGN}", "%d")),)),
    Content("%-6.3s|", (Choice(("abcdef", "x", "2\N{DEGREE SIGN}C")),), fault="no"),
    Content("%s", (FreeText(8, 1, "_", (("a", "z"), ("0", "9"))),), fault="?"),
    Content("%6.4s.", (FreeText(4, 0, "ab"),), fault="?"),
    Content("%s", (FreeText(3, 2, "x\u20ac\U0001d11e\N{DEGREE SIGN}"),), fault="?"),
    Content("%s", (FreeText(0),), fault="?"),
    Content(
        "%02d:%02d %s %s",
        (WholeRange(0, 23), WholeRange(0, 45, 15), Choice(("Mo", "Tu")), FreeText(2, 0, "\u2191\u2193")),
        fault="--:--",
    ),
    Content("100 %%", fault="no", first="...", also=("off",)),
    Content("", also=("off",)),
)


@pytest.fixture(scope="module", params=[("gcc", "c99"), ("clang++", "c++11")], ids=["gcc", "clang++"])
def functions(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Functions:
    using, standard = request.param
    return build_functions(tmp_path_factory.mktemp("guards"), CONTENTS, using, standard)


def _span(conversion: Conversion, argument: Argument) -> tuple[int, int]:
    """What the parameter's type holds on this machine, where `long` and `size_t` have 64 bits."""
    kind = c_type(conversion, argument)
    bits = 32 if kind in ("int", "unsigned int") else 64
    unsigned = kind.startswith("u") or kind == "size_t"
    return (0, (1 << bits) - 1) if unsigned else (-(1 << bits - 1), (1 << bits - 1) - 1)


def values_of(conversion: Conversion, argument: Argument, chance: random.Random) -> Iterator[Value]:
    """Values inside, at the ends, between the steps, and outside."""
    if isinstance(argument, Choice):
        yield from (-(1 << 31), -1, *range(len(argument.texts) + 1), (1 << 31) - 1)
        return
    if isinstance(argument, FreeText):
        chars = alphabet(argument) or "?"
        for length in range(argument.longest + 2):
            yield "".join(chance.choice(chars) for _ in range(length))
        text = "".join(chance.choice(chars) for _ in range(max(argument.shortest, 1)))
        yield from (
            None,
            text[:-1] + "A",
            text[:-1] + "\u00e9",
            "\N{LATIN SMALL LETTER O WITH STROKE}" * argument.longest,
        )
        # Half a character, a lone continuation, an overlong form.
        for raw in (b"\xe2\x82", b"\x80", b"\xc1\xb8", chars[0].encode() + b"\xf0\x9d\x84"):
            yield raw.decode(errors="surrogateescape")
        return
    least, greatest = argument.least, argument.greatest
    if conversion.kind == "real":
        for end in (float(least), float(greatest)):
            yield from (
                end,
                math.nextafter(end, math.inf),
                math.nextafter(end, -math.inf),
                end + 0.5,
                end - 1,
                -end,
            )
        yield from (0.0, -0.0, 5e-324, -5e-324, 0.5, math.nan, -math.nan, math.inf, -math.inf, 1e300, -1e300)
        yield from (chance.uniform(least, greatest) for _ in range(30))
        yield from (float(round(chance.uniform(least, greatest))) for _ in range(10))
        return
    low, high = _span(conversion, argument)
    assert isinstance(argument, WholeRange)
    step = argument.step
    near = [end + by for end in (least, greatest, 0, low, high) for by in (-step, -2, -1, 0, 1, 2, step)]
    near += [chance.randint(int(least), int(greatest)) for _ in range(20)]
    near += [least + step * chance.randint(0, int((greatest - least) // step)) for _ in range(20)]
    yield from (value for value in near if low <= value <= high)


def calls_of(contents: tuple[Content, ...]) -> list[tuple[int, tuple[Value, ...]]]:
    chance = random.Random(4)
    calls: list[tuple[int, tuple[Value, ...]]] = []
    for n, content in enumerate(contents):
        columns = [
            list(values_of(conversion, argument, chance))
            for conversion, argument in zip(conversions(content.format), content.arguments, strict=True)
        ]
        if len(columns) < 2:
            calls += [(n, (value,)) for value in columns[0]] if columns else [(n, ())]
        else:
            calls += [(n, tuple(chance.choice(column) for column in columns)) for _ in range(400)]
            inside = [
                [v for v in column if _meant(argument, v) is not None]
                for column, argument in zip(columns, content.arguments, strict=True)
            ]
            calls += [(n, tuple(chance.choice(column) for column in inside)) for _ in range(100)]
    return calls


def _meant(argument: Argument, value: Value) -> str | int | float | None:
    """The value as the content room takes it; None where there is none."""
    if isinstance(argument, Choice):
        return argument.texts[value] if isinstance(value, int) and 0 <= value < len(argument.texts) else None
    return value


def expected(content: Content, values: tuple[Value, ...]) -> str | None:
    """What the content room says: the text of a value inside, else the fault text, else nothing."""
    meant = tuple(_meant(argument, value) for argument, value in zip(content.arguments, values, strict=True))
    if None not in meant:
        try:
            text = text_of(content, meant)  # type: ignore[arg-type]
        except Problem:
            return content.fault
        ignored = [
            0.0 if value == 0 and isinstance(value, float) and argument.least >= 0  # type: ignore[union-attr]
            else int(value) + 0.0 if isinstance(argument, WholeRange) and isinstance(value, float)
            else value
            for argument, value in zip(content.arguments, meant, strict=True)
        ]  # fmt: skip
        assert text == c_prints(content.format, *ignored)  # type: ignore[arg-type]
        return text
    return content.fault


def test_inside_the_proof_the_text_and_outside_the_fault(functions: Functions) -> None:
    calls = calls_of(CONTENTS)
    seen: dict[int, set[bool]] = {}
    for (n, values), written in zip(calls, functions(calls), strict=True):
        content = CONTENTS[n]
        assert written == expected(content, values), (content, values)
        if written is not None:
            assert graph(content).accepts(written)
        seen.setdefault(n, set()).add(written == content.fault)
    assert len(calls) > 2000
    # Both outcomes of every content that has both.
    one_sided = {CONTENTS[n].format for n, both in seen.items() if len(both) == 1}
    assert one_sided <= {"%d", "%u", "%lld", "%llu", "%tu", "100 %%", "", "%ju"} | {"%hu"}


def test_a_buffer_too_small_is_never_left(tmp_path: Path) -> None:
    contents = (
        Content("%d", (WholeRange(0, 99_999),), fault="no sensor"),
        Content("%s", (Choice(("abcdef", "x")),)),
        Content("abc", fault="abcdef"),
        # Whatever the values, this is longer than its buffer, and gcc sees it.
        Content("%02d h %02d min", (WholeRange(0, 47), WholeRange(0, 59)), fault="-- h -- min"),
    )
    functions = build_functions(tmp_path, contents, buffers={0: 4, 1: 3, 2: 1, 3: 8})
    calls: list[tuple[int, tuple[Value, ...]]] = [
        (0, (7,)),
        (0, (12_345,)),
        (0, (-1,)),
        (1, (0,)),
        (1, (1,)),
        (2, ()),
        (3, (7, 59)),
        (3, (99, 0)),
    ]
    assert functions(calls) == ["7", "123", "no ", "ab", "x", "", "07 h 59", "-- h --"]


@pytest.mark.parametrize(
    ("content", "declared"),
    [
        (Content("%d", (WholeRange(0, 9),)), "int g_s_f0_text(char *buffer, int value);"),
        (Content("%hhu", (WholeRange(0, 9),)), "int g_s_f0_text(char *buffer, unsigned int value);"),
        (Content("%zd", (WholeRange(0, 9),)), "int g_s_f0_text(char *buffer, ptrdiff_t value);"),
        (Content("%Lf", (RealRange(0, 9),)), "int g_s_f0_text(char *buffer, long double value);"),
        (Content("%s", (FreeText(3, 0, "a"),)), "int g_s_f0_text(char *buffer, const char *text);"),
        (Content("x"), "int g_s_f0_text(char *buffer);"),
        (
            Content("%s %.1f", (Choice(("a",)), RealRange(0, 1))),
            "int g_s_f0_text(char *buffer, int choice_1, double value_2);",
        ),
    ],
)
def test_parameters_have_the_types_that_are_printed(content: Content, declared: str) -> None:
    assert declared in header(material_of((content,)))


def test_choices_have_names(tmp_path: Path) -> None:
    made = header(
        material_of((Content("%s", (Choice(("cooling down", "Cooling-Down", "\N{DEGREE SIGN}", "9")),)),))
    )
    names = [
        line.split()[1:3] for line in made.splitlines() if "_CHOICE_" in line and line.startswith("#define")
    ]
    assert names == [
        ["G_S_F0_CHOICE_COOLING_DOWN", "0"],
        ["G_S_F0_CHOICE_COOLING_DOWN_1", "1"],
        ["G_S_F0_CHOICE_TEXT_2", "2"],
        ["G_S_F0_CHOICE_9", "3"],
    ]


def test_a_range_that_needs_32_bits_says_so_where_int_has_fewer() -> None:
    wide = header(material_of((Content("%d", (WholeRange(0, 32_768),)),)))
    narrow = header(
        material_of(
            (
                Content(
                    "%d %u %ld", (WholeRange(-32_768, 32_767), WholeRange(0, 65_535), WholeRange(0, 1 << 30))
                ),
            )
        )
    )
    assert "int_has_32_bits_" in wide
    assert "int_has_32_bits_" not in narrow
