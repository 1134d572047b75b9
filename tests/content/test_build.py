"""Whole contents: several arguments, texts outside the format, every refusal, hostile input, speed."""

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.content.c_library import c_prints, check_all, check_shape, every_text

from panelproof.content.build import graph, text
from panelproof.content.graph import max_bytes
from panelproof.content.spec import Argument, Choice, Content, FreeText, RealRange, WholeRange


def whole(flags: str, width: str, least: int, count: int, step: int) -> tuple[str, Argument]:
    return f"%{flags}{width}d", WholeRange(least, least + count, step)


def choice(width: str, texts: list[str]) -> tuple[str, Argument]:
    return f"%{width}s", Choice(tuple(texts))


def free(width: str, longest: int) -> tuple[str, Argument]:
    return f"%{width}s", FreeText(longest=longest, characters="1 ")


def escaped(literal: str) -> str:
    return literal.replace("%", "%%")


some_flags = st.sampled_from(["", "0", "-", "+", " "])
widths = st.sampled_from(["", "1", "3", "5"])
signed_widths = st.sampled_from(["", "2", "4", "-1", "-4"])
some_texts = st.lists(st.text("1 -é", max_size=4), min_size=1, max_size=6)
some_arguments = st.one_of(
    st.builds(whole, some_flags, widths, st.integers(-120, 120), st.integers(0, 25), st.integers(1, 4)),
    st.builds(choice, signed_widths, some_texts),
    st.builds(free, signed_widths, st.integers(0, 3)),
    st.just(("%c", Choice(("0", "-", " ")))),
    st.just(("%#x", WholeRange(0, 20))),
)
literals = st.text("1 -%°", max_size=2)
outside_texts = st.lists(st.text("1 -%°a", max_size=5), max_size=4)


@settings(max_examples=150, deadline=None)
@given(st.lists(st.tuples(literals, some_arguments), max_size=3), literals, outside_texts, st.booleans())
def test_arguments_side_by_side_and_texts_outside_the_format(
    parts: list[tuple[str, tuple[str, Argument]]], last: str, also: list[str], fault: bool
) -> None:
    format = "".join(escaped(literal) + source for literal, (source, _) in parts) + escaped(last)
    content = Content(
        format,
        tuple(argument for _, (_, argument) in parts),
        fault="---" if fault else None,
        first=also[0] if also else None,
        also=tuple(also),
    )
    check_all(content, graph(content), every_text(content))


def test_the_texts_of_a_kiln_field() -> None:
    content = Content(
        "%.0f °C", (RealRange(-20.0, 1370.0),), fault="no probe", first="…", also=("OPEN", "SHORT")
    )
    found = graph(content)
    check_shape(found)
    # -20 to 1370, and -0 besides 0; then four texts more.
    assert found.count() == 1391 + 1 + 4
    for shown in ("-20 °C", "-0 °C", "1370 °C", "no probe", "…", "OPEN", "SHORT"):
        assert found.accepts(shown)
    assert not found.accepts("-21 °C")
    assert max_bytes(found) == (len("1000 °C".encode()), "1000 °C")


def test_text_is_what_c_prints_and_is_in_the_graph() -> None:
    content = Content(
        "%+d/%6.2f|%-5s|%.2s|%c|%#o%%",
        (
            WholeRange(-5, 20, 5),
            RealRange(-40.0, 125.0),
            Choice(("on", "°")),
            FreeText(longest=4, ranges=(("a", "z"),)),
            Choice(("x", "y")),
            WholeRange(0, 99),
        ),
    )
    for values in ((-5, -0.004, "°", "", "x", 0), (20, 125, "on", "abcd", "y", 99)):
        printed = text(content, values)
        assert printed == c_prints(content.format, *values)
        assert graph(content).accepts(printed)


def test_an_integer_is_a_number_for_f() -> None:
    assert text(Content("%.1f", (RealRange(0.0, 9.0),)), (3,)) == "3.0"
    # Values that a layout builder may give as whole numbers.
    assert set(graph(Content("%.0f", (RealRange(-1, 1),))).texts()) == {"-1", "-0", "0", "1"}
