from __future__ import annotations

import keyword
import re

import pytest

from panelproof.firmware.names import RESERVED, Names, lower, member, upper, word
from panelproof.problem import Problem


def test_kebab_names_become_c_names() -> None:
    assert lower("kiln", "main-screen", "time-left") == "kiln_main_screen_time_left"
    assert upper("kiln", "main-screen", "time-left") == "KILN_MAIN_SCREEN_TIME_LEFT"


def test_a_member_is_never_a_word_of_the_language() -> None:
    assert member("time-left") == "time_left"
    assert member("int") == "int_"
    assert member("co-yield") == "co_yield_"
    # Python shares many words with C++; those that C++ lacks are no words here.
    assert {"class", "if", "while", "and", "not", "or"} <= RESERVED & set(keyword.kwlist)


def test_reserved_words_are_the_standards() -> None:
    # C17 6.4.1 and C++17 5.11, from memory; a part's name has lower case letters, digits and hyphens only.
    c17 = """
    auto break case char const continue default do double else enum extern float for goto if inline int
    long register restrict return short signed sizeof static struct switch typedef union unsigned void
    volatile while
    """
    cpp = """
    alignas alignof asm bool catch class constexpr const_cast decltype delete dynamic_cast explicit
    export false friend mutable namespace new noexcept nullptr operator private protected public
    reinterpret_cast static_assert static_cast template this thread_local throw true try typeid typename
    using virtual wchar_t char16_t char32_t and and_eq bitand bitor compl not not_eq or or_eq xor xor_eq
    """
    assert set(c17.split()) | set(cpp.split()) <= RESERVED


@pytest.mark.parametrize(
    ("text", "end"),
    [
        ("cooling down", "COOLING_DOWN"),
        ("100 %", "100"),
        ("\N{DEGREE SIGN}", ""),
        ("", ""),
        ("A-b_c", "A_B_C"),
    ],
)
def test_words_for_texts(text: str, end: str) -> None:
    assert word(text) == end
    assert re.fullmatch("[A-Z0-9_]*", word(text))


def test_a_name_is_taken_once() -> None:
    names = Names()
    assert names.claim("A_B_C", "the part `b-c` of the screen `a`") == "A_B_C"
    with pytest.raises(Problem) as raised:
        names.claim("A_B_C", "the part `c` of the screen `a-b`")
    assert raised.value.message == (
        "the part `b-c` of the screen `a` and the part `c` of the screen `a-b` would both be called `A_B_C`"
        " in the C header; rename one of them"
    )
