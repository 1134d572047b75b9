"""Whole numbers: against the C library's snprintf for every number, the 64-bit ends by counting."""

import itertools
from time import process_time

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from tests.content.c_library import c_prints, check_all, check_shape, every_text

from panelproof.content.build import graph, text
from panelproof.content.format import LENGTHS, MEANINGFUL, Conversion
from panelproof.content.graph import max_bytes
from panelproof.content.spec import Content, WholeRange
from panelproof.problem import Problem


@st.composite
def whole_contents(draw: st.DrawFn) -> Content:
    letter = draw(st.sampled_from("diuxXo"))
    length = draw(st.sampled_from(("", *LENGTHS[:-1])))
    flags = "".join(draw(st.lists(st.sampled_from(MEANINGFUL[letter]), max_size=5)))
    width = draw(st.one_of(st.just(""), st.integers(1, 14).map(str)))
    precision = draw(
        st.one_of(st.just(""), st.just("."), st.integers(0, 13).map(lambda digits: f".{digits}"))
    )
    before, after = (
        draw(st.sampled_from(["", "t = ", "0", "-"])),
        draw(st.sampled_from(["", " °C", "0", "%%", " "])),
    )
    least, greatest = Conversion(letter=letter, source="", length=length).span
    base = {"x": 16, "X": 16, "o": 8}.get(letter, 10)
    borders = [0, least, greatest, *(sign * base**power for sign in (1, -1) for power in range(1, 19))]
    near = draw(st.sampled_from([border for border in borders if least <= border <= greatest]))
    start = max(least, near - draw(st.integers(0, 400)))
    end = min(greatest, start + draw(st.integers(0, 1200)))
    step = draw(st.one_of(st.just(1), st.integers(1, 130)))
    format = f"{before}%{flags}{width}{precision}{length}{letter}{after}"
    return Content(format, (WholeRange(start, end, step),))


@settings(max_examples=250, deadline=None)
@given(whole_contents())
@example(Content("%.0d", (WholeRange(-3, 3),)))
@example(Content("%5.d", (WholeRange(0, 0),)))
@example(Content("%#.0o|", (WholeRange(0, 9),)))
@example(Content("%#.3o", (WholeRange(0, 600),)))
@example(Content("%#06o", (WholeRange(0, 600),)))
@example(Content("%#06x", (WholeRange(0, 600),)))
@example(Content("%#X", (WholeRange(0, 600, 7),)))
@example(Content("%#.0x", (WholeRange(0, 20),)))
@example(Content("%-+6d|", (WholeRange(-20, 2000),)))
@example(Content("% 05d", (WholeRange(-1000, 1000),)))
def test_every_number_is_printed_as_c_prints_it(content: Content) -> None:
    expected = every_text(content)
    check_all(content, graph(content), expected)
    argument = content.arguments[0]
    assert isinstance(argument, WholeRange)
    for number in range(argument.least, argument.greatest + 1, argument.step):
        assert text(content, (number,)) == c_prints(content.format, number)


@pytest.mark.parametrize("flags", ["", "+", " ", "0", "-", "+0", " 0", "-+"])
@pytest.mark.parametrize("rest", ["d", "6d", ".3d", "8.3d"])
def test_twenty_thousand_numbers_across_zero_and_powers_of_ten(flags: str, rest: str) -> None:
    content = Content(f"%{flags}{rest}", (WholeRange(-10_001, 10_010),))
    check_all(content, graph(content), every_text(content))


ENDS = [
    ("%d", -(2**31), 2**31 - 1),
    ("%i", -(2**31), 2**31 - 1),
    ("%u", 0, 2**32 - 1),
    ("%x", 0, 2**32 - 1),
    ("%#o", 0, 2**32 - 1),
    ("%ld", -(2**31), 2**31 - 1),
    ("%zu", 0, 2**32 - 1),
    ("%lld", -(2**63), 2**63 - 1),
    ("%jd", -(2**63), 2**63 - 1),
    ("%llu", 0, 2**64 - 1),
    ("%#llX", 0, 2**64 - 1),
    ("%#llo", 0, 2**64 - 1),
    ("%+024lld", -(2**63), 2**63 - 1),
    ("%-24llu|", 0, 2**64 - 1),
    ("%.25lld", -(2**63), 2**63 - 1),
    ("%24.21llo", 0, 2**64 - 1),
]


@pytest.mark.parametrize(("format", "least", "greatest"), ENDS)
def test_a_whole_type_is_held_by_a_small_graph_in_little_time(format: str, least: int, greatest: int) -> None:
    before = process_time()
    found = graph(Content(format, (WholeRange(least, greatest),)))
    assert process_time() - before < 0.2
    check_shape(found)
    assert len(found.edges) < 200
    # Different numbers print differently: the count is that of the numbers, and both ends are among them.
    assert found.count() == greatest - least + 1
    near_zero = [number for number in (-10, -9, -1, 0, 1, 9, 10, 99, 100) if least <= number <= greatest]
    for number in [least, least + 1, *near_zero, greatest - 1, greatest]:
        assert found.accepts(c_prints(format, number))
        assert text(Content(format, (WholeRange(least, greatest),)), (number,)) == c_prints(format, number)
    assert max_bytes(found)[0] == max(len(c_prints(format, number)) for number in (least, greatest))


def test_nothing_beyond_the_ends_of_64_bits() -> None:
    signed = graph(Content("%lld", (WholeRange(-(2**63), 2**63 - 1),)))
    assert not signed.accepts("9223372036854775808")
    assert not signed.accepts("-9223372036854775809")
    unsigned = graph(Content("%llu", (WholeRange(0, 2**64 - 1),)))
    assert unsigned.accepts("18446744073709551615")
    assert not unsigned.accepts("18446744073709551616")


@settings(max_examples=60, deadline=None)
@given(st.integers(-(2**63), 2**63 - 1), st.integers(0, 10**6), st.integers(1, 2**40), st.data())
def test_large_steps_over_64_bits_by_counting(
    least: int, spread: int, step: int, data: st.DataObject
) -> None:
    count = min(spread % 700, (2**63 - 1 - least) // step) + 1
    content = Content("%lld", (WholeRange(least, least + (count - 1) * step, step),))
    numbers = range(least, least + count * step, step)
    found = graph(content)
    assert found.count() == count
    for number in data.draw(st.lists(st.sampled_from(numbers), max_size=20)):
        assert found.accepts(c_prints("%lld", number))


@pytest.mark.parametrize("step", [2, 3, 5, 7, 10, 25, 60, 100, 125, 1000, 4096, 4099, 10**6 + 7, 2**31])
@pytest.mark.parametrize("format", ["%u", "%10u", "%010u", "%-12u"])
def test_steps_over_32_bits_are_exact_by_count_and_by_membership(format: str, step: int) -> None:
    if step == 4099 and format != "%u":
        return
    least = 3
    found = graph(Content(format, (WholeRange(least, 2**32 - 1, step),)))
    assert found.count() == (2**32 - 1 - least) // step + 1
    for index in (0, 1, 2, 99, (2**31) // step, (2**32 - 1 - least) // step):
        number = least + index * step
        if number < 2**32:
            assert found.accepts(c_prints(format, number))
        if step > 1 and number + 1 < 2**32:
            assert not found.accepts(c_prints(format, number + 1))


def test_a_step_too_fine_for_its_range_is_refused() -> None:
    with pytest.raises(Problem) as caught:
        graph(Content("%lld", (WholeRange(-(2**63), 2**63 - 1, 12_347),)))
    assert str(caught.value) == (
        "arguments[0]: too many texts of too many shapes to prove: a step of 12347 needs a shorter range,"
        " or a rounder step such as 5, 10 or 100"
    )


def test_a_greatest_off_the_step_is_not_printed() -> None:
    found = graph(Content("%d", (WholeRange(-7, 8, 5),)))
    assert set(found.texts()) == {"-7", "-2", "3", "8"}
    found = graph(Content("%d", (WholeRange(-7, 7, 5),)))
    assert set(found.texts()) == {"-7", "-2", "3"}


def test_two_numbers_without_a_character_between_them() -> None:
    content = Content("%d%d", (WholeRange(-12, 130), WholeRange(-3, 104)))
    expected = {f"{one}{two}" for one, two in itertools.product(range(-12, 131), range(-3, 105))}
    assert expected == every_text(content)
    check_all(content, graph(content), expected)
