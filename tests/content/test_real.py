"""Real numbers under `%f`: against the C library's snprintf, at every rounding border of a range."""

import math
from fractions import Fraction

from hypothesis import example, given, settings
from hypothesis import strategies as st
from tests.content.c_library import c_prints, check_all, check_shape, every_text

from panelproof.content.build import graph, text
from panelproof.content.spec import Content, RealRange, WholeRange


def telling_reals(least: float, greatest: float, places: int) -> set[float]:
    """The doubles that tell: the ends, those about zero, those about every border between decimals."""
    unit = Fraction(1, 10**places)
    first, last = math.floor(Fraction(least) / unit) - 1, math.ceil(Fraction(greatest) / unit) + 1
    found = {least, greatest, 0.0, math.nextafter(0.0, 1.0), math.nextafter(0.0, -1.0)}
    for count in range(first, last + 1):
        for border in (count * unit, (count + Fraction(1, 2)) * unit):
            near = float(border)
            found |= {near, math.nextafter(near, math.inf), math.nextafter(near, -math.inf)}
    # Python's set may have kept -0.0 for 0.0: no number below zero, so put right here.
    return {real + 0.0 for real in found if least <= real <= greatest}


def c_reals(content: Content) -> set[str]:
    argument = content.arguments[0]
    assert isinstance(argument, RealRange)
    tail = content.format.split(".")[1] if "." in content.format else "6"
    places = int("".join(char for char in tail if char.isdigit()) or "0")
    reals = telling_reals(argument.least, argument.greatest, places)
    return {c_prints(content.format, real) for real in reals}


@st.composite
def real_contents(draw: st.DrawFn) -> Content:
    flags = "".join(draw(st.lists(st.sampled_from("-+ #0"), max_size=5)))
    width = draw(st.one_of(st.just(""), st.integers(1, 14).map(str)))
    places = draw(st.integers(0, 4))
    length = draw(st.sampled_from(["", "l", "L"]))
    letter = draw(st.sampled_from("fF"))
    unit = Fraction(1, 10**places)
    near = draw(st.sampled_from([0, 0, 1, -1, 10, -10, 100, -100, 1000, -1000, 99999]))
    middle = Fraction(near) + draw(st.integers(-3, 3)) * unit / 2
    down, up = draw(st.fractions(0, 120)), draw(st.fractions(0, 120))
    ends = sorted((float(middle - down * unit), float(middle + up * unit)))
    return Content(f"%{flags}{width}.{places}{length}{letter}", (RealRange(ends[0], ends[1]),))


@settings(max_examples=150, deadline=None)
@given(real_contents())
@example(Content("%.1f", (RealRange(0.0, 99.96),)))
@example(Content("%.1f", (RealRange(-0.04, 99.94),)))
@example(Content("%.0f", (RealRange(0.5, 2.5),)))
@example(Content("%.0f", (RealRange(-0.5, 0.5),)))
@example(Content("%#.0f|", (RealRange(-12.5, 12.5),)))
@example(Content("%.f", (RealRange(-12.5, 12.5),)))
@example(Content("%.2f", (RealRange(-40.0, 125.0),)))
@example(Content("%08.2f", (RealRange(-40.0, 125.0),)))
@example(Content("%+.1f", (RealRange(-9.96, -0.01),)))
@example(Content("%f", (RealRange(-0.0005, 0.0005),)))
def test_every_decimal_of_a_range_as_c_prints_it(content: Content) -> None:
    check_all(content, graph(content), c_reals(content))
    argument = content.arguments[0]
    assert isinstance(argument, RealRange)
    for real in (argument.least, argument.greatest, (argument.least + argument.greatest) / 2):
        assert text(content, (real,)) == c_prints(content.format, real + 0.0)


@settings(max_examples=200, deadline=None)
@given(
    st.floats(allow_nan=False, allow_infinity=False),
    st.integers(0, 40),
    st.sampled_from(["", "0", "+", "-", "#"]),
    st.sampled_from([0, 20, 400]),
)
def test_any_double_is_printed_as_c_prints_it(real: float, places: int, flag: str, width: int) -> None:
    format = f"%{flag}{width or ''}.{places}f"
    content = Content(format, (RealRange(real, real),))
    printed = c_prints(format, real + 0.0)
    assert text(content, (real,)) == printed
    assert list(graph(content).texts()) == [printed]


def spelled(content: Content) -> set[str]:
    return set(graph(content).texts())


def test_rounding_borders_by_name() -> None:
    assert "100.0" in spelled(Content("%.1f", (RealRange(0.0, 99.96),)))
    assert "100.0" not in spelled(Content("%.1f", (RealRange(0.0, 99.94),)))
    # Ties go to even (0.5 and 2.5 are exact in binary).
    assert spelled(Content("%.0f", (RealRange(0.5, 0.5),))) == {"0"}
    assert spelled(Content("%.0f", (RealRange(2.5, 2.5),))) == {"2"}
    assert spelled(Content("%.0f", (RealRange(0.5, 2.5),))) == {"0", "1", "2"}


def test_below_zero_by_any_amount_shows_minus_zero() -> None:
    assert spelled(Content("%.1f", (RealRange(-5e-324, 0.1),))) == {"-0.0", "0.0", "0.1"}
    assert spelled(Content("%.1f", (RealRange(-0.1, -0.01),))) == {"-0.1", "-0.0"}
    assert spelled(Content("%.0f", (RealRange(-0.2, 0.0),))) == {"-0", "0"}
    assert spelled(Content("%.1f", (RealRange(-0.2, -0.1),))) == {"-0.2", "-0.1"}


def test_a_range_from_zero_shows_no_minus_zero() -> None:
    for zero in (0.0, -0.0):
        content = Content("%.1f", (RealRange(zero, 0.2),))
        assert spelled(content) == {"0.0", "0.1", "0.2"}
        assert text(content, (-0.0,)) == "0.0"
    assert text(Content("%.1f", (RealRange(-1.0, 0.0),)), (-0.0,)) == "-0.0"


def test_whole_ranges_under_f() -> None:
    for format in ("%f", "%.0f", "%#.0f", "%6.1f", "%-8.2f|", "%+08.1F", "%Lf"):
        content = Content(format, (WholeRange(-130, 1100, 7),))
        check_all(content, graph(content), every_text(content))
        assert text(content, (-130,)) == text(content, (-130.0,)) == c_prints(format, -130)
    found = graph(Content("%.3f", (WholeRange(-(2**53), 2**53),)))
    assert found.count() == 2**54 + 1
    assert found.accepts(c_prints("%.3f", 2.0**53))


def test_the_whole_range_of_doubles_stays_small() -> None:
    least, greatest = -1.7976931348623157e308, 1.7976931348623157e308
    found = graph(Content("%.3f", (RealRange(least, greatest),)))
    check_shape(found)
    assert len(found.edges) < 2000
    for real in (least, -1e22, -0.5, 0.0, 2.0**60, greatest):
        assert found.accepts(c_prints("%.3f", real))
    # One more in the last place is beyond the end.
    assert not found.accepts(str(int(greatest)) + ".001")
    units = int(Fraction(greatest) * 1000)
    assert found.count() == 2 * (units + 1)
