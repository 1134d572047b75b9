"""Formats taken apart; every refusal with its sentence; the canonical form against a C compiler."""

import itertools
import os
import shutil
import subprocess
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.content.c_library import c_prints

from panelproof.content.format import KINDS, LENGTHS, MEANINGFUL, Conversion, conversions, pieces
from panelproof.problem import Problem


def test_a_format_is_taken_apart_in_order() -> None:
    found = pieces("T: %+06.2lf °C (%d%%)%%")
    assert found == (
        "T: ",
        Conversion(letter="f", source="%+06.2lf", start=3, flags="+0", width=6, precision=2, length="l"),
        " °C (",
        Conversion(letter="d", source="%d", start=16),
        "%)%",
    )
    assert conversions("%% none") == ()
    assert pieces("") == ()
    assert pieces("%%" * 128) == ("%" * 128,)


@pytest.mark.parametrize(
    ("format", "kind", "span"),
    [
        ("%d", "whole", (-(2**31), 2**31 - 1)),
        ("%hhi", "whole", (-128, 127)),
        ("%hu", "whole", (0, 65535)),
        ("%lx", "whole", (0, 2**32 - 1)),
        ("%td", "whole", (-(2**31), 2**31 - 1)),
        ("%llo", "whole", (0, 2**64 - 1)),
        ("%jd", "whole", (-(2**63), 2**63 - 1)),
    ],
)
def test_kinds_and_spans(format: str, kind: str, span: tuple[int, int]) -> None:
    (conversion,) = conversions(format)
    assert (conversion.kind, conversion.span) == (kind, span)


def test_what_the_flags_mean() -> None:
    (conversion,) = conversions("%- 0+5f")
    assert (conversion.left, conversion.zeros, conversion.sign) == (True, False, "+")
    assert conversions("% 05d")[0].sign == " "
    assert conversions("%05d")[0].zeros
    assert not conversions("%05.2d")[0].zeros
    assert conversions("%05.2f")[0].zeros
    assert conversions("%.d")[0].precision == 0


def every_spelling() -> list[str]:
    found = []
    for letter, kind in KINDS.items():
        for count in range(len(MEANINGFUL[letter]) + 1):
            for flags in itertools.combinations(MEANINGFUL[letter], count):
                for width, precision in itertools.product(("", "7"), ("", ".", ".0", ".3")):
                    if not (letter == "c" and precision):
                        found.append(f"%{''.join(flags)}{width}{precision}{letter}")
        lengths = {"whole": LENGTHS[:-1], "real": ("l", "L")}.get(kind, ())
        found += [f"%{length}{letter}" for length in lengths]
    return found


def test_the_canonical_form_prints_the_same() -> None:
    values = {"whole": (0, 5, 4321), "real": (0.0, 2.5, 4321.987), "text": ("", "abcdé"), "character": ("x",)}
    for format in every_spelling():
        (conversion,) = conversions(format)
        for value in values[conversion.kind]:
            if not conversion.length.startswith("h"):
                assert c_prints(format, value) == c_prints(conversion.canonical, value), format


def test_the_canonical_form_compiles_without_a_warning(tmp_path: Path) -> None:
    """The compiler's own format check (gcc or clang, -Wall -Wextra) is the judge."""
    compiler = shutil.which("cc") or shutil.which("gcc")
    if compiler is None:
        assert os.environ.get("CI") != "true", "the C compiler is part of the checks"
        pytest.skip("no C compiler (cc or gcc) on this machine")
    signed = {"l": "long", "ll": "long long", "j": "intmax_t", "z": "ssize_t", "t": "ptrdiff_t"}
    unsigned = {
        "l": "unsigned long",
        "ll": "unsigned long long",
        "j": "uintmax_t",
        "z": "size_t",
        "t": "size_t",
    }
    lines = []
    for format in every_spelling():
        (conversion,) = conversions(format)
        kind = {
            "whole": (signed if conversion.signed else unsigned).get(
                conversion.length, "int" if conversion.signed else "unsigned"
            ),
            "real": "long double" if conversion.length == "L" else "double",
            "text": "const char *",
            "character": "int",
        }[conversion.kind]
        lines.append(f'    (void)snprintf(into, 99, "{conversion.canonical}", ({kind})0x41);')
    source = tmp_path / "formats.c"
    source.write_text(
        "#include <stddef.h>\n#include <stdint.h>\n#include <stdio.h>\n#include <sys/types.h>\n"
        "void all(char *into);\nvoid all(char *into)\n{\n" + "\n".join(lines) + "\n}\n"
    )
    strict = [
        "-std=c99",
        "-Wall",
        "-Wextra",
        "-Wpedantic",
        "-Werror",
        "-D_DEFAULT_SOURCE",
        "-Wno-format-truncation",
    ]
    run = subprocess.run(
        [compiler, *strict, "-fsyntax-only", str(source)], capture_output=True, text=True, check=False
    )
    assert run.returncode == 0, run.stderr[:2000]


REFUSALS = {
    "%": "the format ends in a lone `%`: finish it, or write `%%` for a percent sign",
    "50 %": "the format ends in a lone `%`: finish it, or write `%%` for a percent sign",
    "%5": "the format ends inside `%5`: finish it, or write `%%` for a percent sign",
    "%-08.3l": "the format ends inside `%-08.3l`: finish it, or write `%%` for a percent sign",
    "%e": "`%e` changes its length with the size of the number, which a range cannot bound: use"
    " `%f` with a precision, such as `%.2f`",
    "%E": "`%E` changes its length with the size of the number, which a range cannot bound: use"
    " `%f` with a precision, such as `%.2f`",
    "%g": "`%g` changes its length with the size of the number, which a range cannot bound: use"
    " `%f` with a precision, such as `%.2f`",
    "%G": "`%G` changes its length with the size of the number, which a range cannot bound: use"
    " `%f` with a precision, such as `%.2f`",
    "%a": "`%a` changes its length with the size of the number, which a range cannot bound: use"
    " `%f` with a precision, such as `%.2f`",
    "%.3A": "`%.3A` changes its length with the size of the number, which a range cannot bound: use"
    " `%f` with a precision, such as `%.2f`",
    "%n": "`%n` prints nothing and writes into memory: take it out",
    "%p": "`%p` prints an address, each C library in its own way: use `%x` with a whole range",
    "%S": "`%S` takes wide characters: use `%s`, whose texts are UTF-8",
    "%C": "`%C` takes a wide character: use `%c` for one ASCII character, or `%s` for texts in UTF-8",
    "%ls": "`%ls` takes wide characters: use `%s`, whose texts are UTF-8",
    "%lc": "`%lc` takes a wide character: use `%c` for one ASCII character, or `%s` for texts in UTF-8",
    "%*d": "`%*` takes its width from an argument: write the number in place of `*`",
    "%-*s": "`%-*` takes its width from an argument: write the number in place of `*`",
    "%.*f": "`%.*` takes its precision from an argument: write the number in place of `*`",
    "%1$d": "`%1$` picks its argument by number, which ISO C does not have: take the number and `$`"
    " out, and put the arguments in the order of the format",
    "%2$-5s": "`%2$` picks its argument by number, which ISO C does not have: take the number and `$`"
    " out, and put the arguments in the order of the format",
    "%'d": "the flag `'` groups digits, which ISO C does not have: take it out",
    "%5'd": "`'` is no conversion: after `%` comes one of d i u x X o c s f F; write `%%` for a percent sign",
    "%y": "`y` is no conversion: after `%` comes one of d i u x X o c s f F; write `%%` for a percent sign",
    "%b": "`b` is no conversion: after `%` comes one of d i u x X o c s f F; write `%%` for a percent sign",
    "%Id": "`I` is no conversion: after `%` comes one of d i u x X o c s f F; write `%%` for a percent sign",
    "100 %": "the format ends in a lone `%`: finish it, or write `%%` for a percent sign",
    "%5%": "nothing may stand inside `%5%`: write `%%` for a percent sign",
    "% %": "nothing may stand inside `% %`: write `%%` for a percent sign",
    "%\n": "`U+000A` is no conversion: after `%` comes one of d i u x X o c s f F; write `%%` for a"
    " percent sign",
    "%\ud800": "`U+D800` is no conversion: after `%` comes one of d i u x X o c s f F; write `%%` for a"
    " percent sign",
    "%é": "`é` is no conversion: after `%` comes one of d i u x X o c s f F; write `%%` for a percent sign",
    "%Ld": "`L` means nothing with `d` in `%Ld`: use `%lld`",
    "%Lu": "`L` means nothing with `u` in `%Lu`: use `%llu`",
    "%hf": "`h` means nothing with `f` in `%hf`: take it out",
    "%llF": "`ll` means nothing with `F` in `%llF`: take it out",
    "%jF": "`j` means nothing with `F` in `%jF`: take it out",
    "%hs": "`h` means nothing with `s` in `%hs`: take it out",
    "%zc": "`z` means nothing with `c` in `%zc`: take it out",
    "%#d": "the flag `#` means nothing with `d` in `%#d`: take it out",
    "%#u": "the flag `#` means nothing with `u` in `%#u`: take it out",
    "%+u": "the flag `+` means nothing with `u` in `%+u`: take it out",
    "% x": "a space means nothing with `x` in `% x`: take it out, or write `%%` for a percent sign",
    "100 % ok": "a space means nothing with `o` in `% o`: take it out, or write `%%` for a percent sign",
    "%0s": "the flag `0` means nothing with `s` in `%0s`: take it out",
    "%+s": "the flag `+` means nothing with `s` in `%+s`: take it out",
    "%#c": "the flag `#` means nothing with `c` in `%#c`: take it out",
    "%05c": "the flag `0` means nothing with `c` in `%05c`: take it out",
    "%.2c": "a precision means nothing with `c` in `%.2c`: take it out",
    "%513d": "the width in `%513` is too large: 512 is the most",
    "%.513f": "the precision in `%.513` is too large: 512 is the most",
    "%1000000000d": "the width in `%1000000000` is too large: 512 is the most",
    "%.99999999999999999999d": "the precision in `%.99999999999999999999` is too large: 512 is the most",
    "%.-3d": "`%.-` has a negative precision: give 0 or more",
    "%٣d": "`٣` is no conversion: after `%` comes one of d i u x X o c s f F; write `%%` for a percent sign",
}


@pytest.mark.parametrize("format", REFUSALS)
def test_refusals(format: str) -> None:
    with pytest.raises(Problem) as caught:
        pieces(format)
    assert caught.value.place == "format"
    assert caught.value.message == REFUSALS[format]


@given(st.text("%-+ #0123456789.*$'hlLjztdiuxXocsfFeEgGaAnpmCSIy\n", max_size=12))
def test_any_text_is_either_taken_apart_or_refused_with_a_sentence(format: str) -> None:
    try:
        found = pieces(format)
    except Problem as problem:
        assert problem.place == "format"
        assert problem.message
        return
    back = "".join(piece.replace("%", "%%") if isinstance(piece, str) else piece.source for piece in found)
    assert back == format
