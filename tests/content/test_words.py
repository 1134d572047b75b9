"""Texts and characters: width and precision in bytes as the C library's snprintf counts them."""

import itertools
from time import process_time

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from tests.content.c_library import c_prints, check_all, check_shape, every_text

from panelproof.content.build import graph, text
from panelproof.content.spec import Choice, Content, FreeText, WholeRange
from panelproof.content.words import alphabet
from panelproof.problem import Problem

some_text = st.text("ab é€𝄞-", max_size=7)


def cuts_a_character(precision: int | None, texts: list[str]) -> bool:
    """Whether C would cut one of these between the bytes of a character."""
    if precision is None:
        return False
    return any(
        one.encode()[:precision].decode(errors="ignore").encode() != one.encode()[:precision] for one in texts
    )


def format_of(flag: str, width: int, precision: int | None, letter: str) -> str:
    return f"%{flag}{width or ''}{'' if precision is None else f'.{precision}'}{letter}"


flags, widths, precisions = st.sampled_from(["", "-"]), st.integers(0, 12), st.none() | st.integers(0, 9)


@settings(max_examples=150, deadline=None)
@given(
    st.lists(some_text, min_size=1, max_size=12),
    flags,
    widths,
    precisions,
    st.sampled_from(["", " ", "a", "b-"]),
)
def test_choices(texts: list[str], flag: str, width: int, precision: int | None, after: str) -> None:
    content = Content(format_of(flag, width, precision, "s") + after, (Choice(tuple(texts)),))
    if cuts_a_character(precision, texts):
        with pytest.raises(Problem, match="in two"):
            graph(content)
        return
    check_all(content, graph(content), every_text(content))
    for one in texts:
        assert text(content, (one,)) == c_prints(content.format, one)


@settings(max_examples=250, deadline=None)
@given(st.sets(st.sampled_from("ab €é"), min_size=1, max_size=3), st.data())
def test_free_text(chars: set[str], data: st.DataObject) -> None:
    longest = data.draw(st.integers(0, 5))
    shortest = data.draw(st.integers(0, longest))
    flag, width, precision = data.draw(flags), data.draw(widths), data.draw(precisions)
    free = FreeText(longest=longest, shortest=shortest, characters="".join(chars))
    content = Content(
        format_of(flag, width, precision, "s") + data.draw(st.sampled_from(["", " ", "a"])), (free,)
    )
    texts = ["".join(one) for n in range(shortest, longest + 1) for one in itertools.product(chars, repeat=n)]
    if cuts_a_character(precision, texts):
        with pytest.raises(Problem, match="in two"):
            graph(content)
        return
    check_all(content, graph(content), every_text(content))
    for one in texts[:: max(1, len(texts) // 20)]:
        assert text(content, (one,)) == c_prints(content.format, one)


@settings(max_examples=60, deadline=None)
@given(st.sets(st.characters(min_codepoint=32, max_codepoint=126), min_size=1), flags, st.integers(0, 6))
def test_characters(chars: set[str], flag: str, width: int) -> None:
    content = Content(format_of(flag, width, None, "c"), (Choice(tuple(sorted(chars))),))
    check_all(content, graph(content), every_text(content))


def test_codes_of_characters() -> None:
    for step in (1, 3):
        content = Content("%3c|%-2c", (WholeRange(32, 126, step), WholeRange(65, 67)))
        check_all(content, graph(content), every_text(content))
        assert text(content, (32 + 2 * step, 66)) == c_prints(content.format, 32 + 2 * step, 66)


@pytest.mark.parametrize("format", ["%s", "%40s", "%-40s", "%.32s", "%.10s"])
def test_a_network_name_is_counted_by_the_closed_formula(format: str) -> None:
    before = process_time()
    free = FreeText(longest=32, ranges=((" ", "~"),))
    found = graph(Content(format, (free,)))
    assert process_time() - before < 0.2
    check_shape(found)
    assert len(found.edges) <= 41
    chars, longest = 95, 10 if format == "%.10s" else 32
    expected = sum(chars**length for length in range(longest + 1))
    if "40" in format:
        # Padded to 40, a name and the same name with spaces at the padded end are one text: 40 characters
        # of which the outer 8 are spaces.
        expected = chars**32
    assert found.count() == expected


def test_a_network_name_of_at_least_eight_characters() -> None:
    found = graph(Content("%s", (FreeText(longest=32, shortest=8, ranges=(("!", "~"),)),)))
    assert found.count() == sum(94**length for length in range(8, 33))
    assert not found.accepts("a" * 7)
    assert found.accepts("a" * 8)
    assert not found.accepts("a b c d e")


def test_a_large_alphabet_beside_other_texts() -> None:
    before = process_time()
    free = FreeText(longest=200, ranges=((" ", "~"), ("一", "鿿")))
    also = (*(f"鿿{number}" for number in range(300)), "ÿ" * 200, "一" * 201)
    found = graph(Content("%s", (free,), also=also))
    assert process_time() - before < 2
    check_shape(found)
    chars = 95 + 0x9FFF - 0x4E00 + 1
    assert found.count() == sum(chars**length for length in range(201)) + 2


def test_the_alphabet_is_in_order_and_holds_each_character_once() -> None:
    free = FreeText(longest=1, characters="zéa0", ranges=(("0", "3"), ("a", "c")))
    assert alphabet(free) == "0123abczé"


@pytest.mark.parametrize("format", ["%6s", "%-6s|", "%5s"])
def test_the_borders_between_one_two_three_and_four_bytes(format: str) -> None:
    # The last and first character of each length (RFC 3629), but for DEL and the controls after it.
    content = Content(format, (FreeText(longest=2, characters="~\xa0\u07ff\u0800\ufffd\U00010000"),))
    check_all(content, graph(content), every_text(content))


def test_two_free_texts_side_by_side() -> None:
    content = Content("%s%4s", (FreeText(longest=3, characters="a "), FreeText(longest=4, characters=" ab")))
    check_all(content, graph(content), every_text(content))


@given(some_text, st.integers(0, 30))
def test_a_precision_never_leaves_half_a_character(one: str, precision: int) -> None:
    assume(not cuts_a_character(precision, [one]))
    content = Content(f"%.{precision}s", (Choice((one,)),))
    assert list(graph(content).texts()) == [c_prints(content.format, one)]
