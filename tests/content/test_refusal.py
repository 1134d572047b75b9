"""Every refusal of a content and of a value, with its place and its sentence."""

import math

import pytest

from panelproof.content.build import graph, text
from panelproof.content.spec import Choice, Content, FreeText, RealRange, WholeRange
from panelproof.problem import Problem

REFUSED: list[tuple[Content, str]] = [
    (
        Content("%d and %d", (WholeRange(0, 9),)),
        "arguments: the format has 2 conversions, and 1 argument is given: add one for `%d`, or write `%%`"
        " where a percent sign is meant",
    ),
    (
        Content("%d"),
        "arguments: the format has 1 conversion, and no arguments are given: add one for `%d`, or write `%%`"
        " where a percent sign is meant",
    ),
    (
        Content("100 %d", (WholeRange(0, 9), WholeRange(0, 9))),
        "arguments: the format has 1 conversion, and 2 arguments are given: take arguments out, or add"
        " conversions",
    ),
    (
        Content("steady", (WholeRange(0, 9),)),
        "arguments: the format has no conversions, and 1 argument is given: take arguments out, or add"
        " conversions",
    ),
    (
        Content("%d", (RealRange(0.0, 9.5),)),
        "arguments[0]: `%d` prints whole numbers: give a whole range, or use `%f` for a real range and `%s`"
        " for texts",
    ),
    (
        Content("%u", (Choice(("on", "off")),)),
        "arguments[0]: `%u` prints whole numbers: give a whole range, or use `%f` for a real range and `%s`"
        " for texts",
    ),
    (
        Content("%x", (FreeText(longest=3, characters="ab"),)),
        "arguments[0]: `%x` prints whole numbers: give a whole range, or use `%f` for a real range and `%s`"
        " for texts",
    ),
    (
        Content("%.1f", (Choice(("on", "off")),)),
        "arguments[0]: `%.1f` prints numbers: give a real or a whole range, or use `%s` for texts",
    ),
    (
        Content("%f", (FreeText(longest=3, characters="ab"),)),
        "arguments[0]: `%f` prints numbers: give a real or a whole range, or use `%s` for texts",
    ),
    (
        Content("%s", (WholeRange(0, 9),)),
        "arguments[0]: `%s` prints texts: give a choice or free text, or use `%d` for whole and `%.1f` for"
        " real numbers",
    ),
    (
        Content("%s", (RealRange(0.0, 9.0),)),
        "arguments[0]: `%s` prints texts: give a choice or free text, or use `%d` for whole and `%.1f` for"
        " real numbers",
    ),
    (
        Content("%c", (RealRange(0.0, 9.0),)),
        "arguments[0]: `%c` prints one character: give a choice of single characters or a whole range of"
        " codes, or use `%s` for texts",
    ),
    (
        Content("%c", (FreeText(longest=1, characters="ab"),)),
        "arguments[0]: `%c` prints one character: give a choice of single characters or a whole range of"
        " codes, or use `%s` for texts",
    ),
    (
        Content("%u", (WholeRange(-5, 9),)),
        "arguments[0].least: `%u` cannot print a negative number, and the range begins at -5: use `%d`, or"
        " begin at 0",
    ),
    (
        Content("%#x", (WholeRange(-1, 9),)),
        "arguments[0].least: `%#x` cannot print a negative number, and the range begins at -1: use `%d`, or"
        " begin at 0",
    ),
    (
        Content("%o", (WholeRange(-1, 9),)),
        "arguments[0].least: `%o` cannot print a negative number, and the range begins at -1: use `%d`, or"
        " begin at 0",
    ),
    (
        Content("%d", (WholeRange(0, 2**31),)),
        "arguments[0].greatest: `%d` holds -2147483648 to 2147483647, and this is 2147483648: use `%lld`",
    ),
    (
        Content("%d", (WholeRange(-(2**31) - 1, 0),)),
        "arguments[0].least: `%d` holds -2147483648 to 2147483647, and this is -2147483649: use `%lld`",
    ),
    (
        Content("%d", (WholeRange(-1, 2**32),)),
        "arguments[0].greatest: `%d` holds -2147483648 to 2147483647, and this is 4294967296: use `%lld`",
    ),
    (
        Content("%d", (WholeRange(0, 2**63),)),
        "arguments[0].greatest: `%d` holds -2147483648 to 2147483647, and this is 9223372036854775808: use"
        " `%llu`",
    ),
    (
        Content("%d", (WholeRange(-1, 2**63),)),
        "arguments[0].greatest: `%d` holds -2147483648 to 2147483647, and this is 9223372036854775808: give"
        " a range that 64 bits hold",
    ),
    (
        Content("%u", (WholeRange(0, 2**32),)),
        "arguments[0].greatest: `%u` holds 0 to 4294967295, and this is 4294967296: use `%llu`",
    ),
    (
        Content("%llu", (WholeRange(0, 2**64),)),
        "arguments[0].greatest: `%llu` holds 0 to 18446744073709551615, and this is 18446744073709551616:"
        " give a range that 64 bits hold",
    ),
    (
        Content("%llu", (WholeRange(0, 10**5000),)),
        "arguments[0].greatest: `%llu` holds 0 to 18446744073709551615, and this is a number of more than 70"
        " digits: give a range that 64 bits hold",
    ),
    (
        Content("%ld", (WholeRange(0, 2**31),)),
        "arguments[0].greatest: `%ld` holds -2147483648 to 2147483647 (`long` has 32 bits on small"
        " processors), and this is 2147483648: use `%lld`",
    ),
    (
        Content("%lu", (WholeRange(0, 2**32),)),
        "arguments[0].greatest: `%lu` holds 0 to 4294967295 (`long` has 32 bits on small processors), and"
        " this is 4294967296: use `%llu`",
    ),
    (
        Content("%zu", (WholeRange(0, 2**32),)),
        "arguments[0].greatest: `%zu` holds 0 to 4294967295 (`size_t` has 32 bits on small processors), and"
        " this is 4294967296: use `%llu`",
    ),
    (
        Content("%td", (WholeRange(0, 2**31),)),
        "arguments[0].greatest: `%td` holds -2147483648 to 2147483647 (`ptrdiff_t` has 32 bits on small"
        " processors), and this is 2147483648: use `%lld`",
    ),
    (
        Content("%hd", (WholeRange(0, 32768),)),
        "arguments[0].greatest: `%hd` holds -32768 to 32767, and this is 32768: use `%d`",
    ),
    (
        Content("%hhd", (WholeRange(-129, 5),)),
        "arguments[0].least: `%hhd` holds -128 to 127, and this is -129: use `%d`",
    ),
    (
        Content("%hhu", (WholeRange(0, 256),)),
        "arguments[0].greatest: `%hhu` holds 0 to 255, and this is 256: use `%u`",
    ),
    (
        Content("%hx", (WholeRange(0, 65536),)),
        "arguments[0].greatest: `%hx` holds 0 to 65535, and this is 65536: use `%x`",
    ),
    (
        Content("%d", (WholeRange(9, 0),)),
        "arguments[0]: the range is empty, 9 is greater than 0: exchange `least` and `greatest`",
    ),
    (
        Content("%d", (WholeRange(0, 9, 0),)),
        "arguments[0].step: the step must be 1 or more",
    ),
    (
        Content("%.0f", (WholeRange(9, 0),)),
        "arguments[0]: the range is empty, 9 is greater than 0: exchange `least` and `greatest`",
    ),
    (
        Content("%.0f", (WholeRange(0, 2**53 + 1),)),
        "arguments[0].greatest: a C double holds whole numbers exactly only up to 2^53, and this is"
        " 9007199254740993: use `%lld` instead of `%.0f`, or a real range",
    ),
    (
        Content("%.0f", (WholeRange(0, 9, -1),)),
        "arguments[0].step: the step must be 1 or more",
    ),
    (
        Content("%f", (RealRange(1.0, 0.5),)),
        "arguments[0]: the range is empty, 1.0 is greater than 0.5: exchange `least` and `greatest`",
    ),
    (
        Content("%f", (RealRange(math.nan, 0.5),)),
        "arguments[0].least: the end of a range must be a number, not NaN or infinity: give the real limit",
    ),
    (
        Content("%f", (RealRange(0.0, math.inf),)),
        "arguments[0].greatest: the end of a range must be a number,"
        " not NaN or infinity: give the real limit",
    ),
    (
        Content("%f", (RealRange(0, 10**400),)),
        "arguments[0].greatest: the number is too large for a C double, which ends near 1.8e308",
    ),
    (
        Content("%c", (WholeRange(0, 9),)),
        "arguments[0].least: `%c` prints the character with this code, and that of 0 ends a text in C: give"
        " codes from 32 to 126",
    ),
    (
        Content("%c", (WholeRange(9, 65),)),
        "arguments[0].least: `%c` prints the character with this code, and that of 9 cannot be drawn: give"
        " codes from 32 to 126",
    ),
    (
        Content("%c", (WholeRange(65, 127),)),
        "arguments[0].greatest: `%c` prints the character with this code, and that of 127 cannot be drawn:"
        " give codes from 32 to 126",
    ),
    (
        Content("%c", (WholeRange(65, 233),)),
        "arguments[0].greatest: `%c` prints the character with this code, and that of 233 cannot be drawn:"
        " give codes from 32 to 126",
    ),
    (
        Content("%c", (WholeRange(66, 65),)),
        "arguments[0]: the range is empty, 66 is greater than 65: exchange `least` and `greatest`",
    ),
    (
        Content("%c", (Choice(("a", "bc")),)),
        "arguments[0].texts[1]: `%c` prints one ASCII character, and `bc` is not one: use `%s`",
    ),
    (
        Content("%c", (Choice(("",)),)),
        "arguments[0].texts[0]: `%c` prints one ASCII character, and an empty text is not one: use `%s`",
    ),
    (
        Content("%c", (Choice(("é",)),)),
        "arguments[0].texts[0]: `%c` prints one ASCII character, and `é` is not one: use `%s`",
    ),
    (
        Content("%s", (Choice(()),)),
        "arguments[0].texts: the choice is empty: give at least one text",
    ),
    (
        Content("%s", (Choice(("on", "o\nff")),)),
        "arguments[0].texts[1]: U+000A is a control character (a tab or line break, say) and cannot be"
        " drawn: leave it out",
    ),
    (
        Content("%s", (Choice(("on\0",)),)),
        "arguments[0].texts[0]: U+0000 ends a text in C: leave it out",
    ),
    (
        Content("%s", (Choice(("\ud83d",)),)),
        "arguments[0].texts[0]: U+D83D is a surrogate, half a character, and cannot be drawn: leave it out",
    ),
    (
        Content("%s", (Choice(("\x7f",)),)),
        "arguments[0].texts[0]: U+007F is a control character (a tab or line break, say) and cannot be"
        " drawn: leave it out",
    ),
    (
        Content("%.3s", (Choice(("ok", "20 °C", "°°°")),)),
        "arguments[0].texts[2]: `%.3s` cuts after 3 bytes, and that cuts a character of `°°°` in two (beyond"
        " ASCII a character takes 2 to 4 bytes): give another precision, or none and shorter texts",
    ),
    (
        Content("%.2s", (FreeText(longest=3, characters="a°"),)),
        "arguments[0]: `%.2s` cuts after 2 bytes, and that cuts a character of some text in two (beyond"
        " ASCII a character takes 2 to 4 bytes): give another precision, or none and shorter texts",
    ),
    (
        Content("%s", (FreeText(longest=3, shortest=4, characters="ab"),)),
        "arguments[0]: the free text is empty,"
        " its shortest (4) is longer than its longest (3): exchange them",
    ),
    (
        Content("%s", (FreeText(longest=3),)),
        "arguments[0]: the alphabet is empty: give `characters` or `ranges`",
    ),
    (
        Content("%s", (FreeText(longest=3, characters="a\tb"),)),
        "arguments[0].characters: U+0009 is a control character (a tab or line break, say) and cannot be"
        " drawn: leave it out",
    ),
    (
        Content("%s", (FreeText(longest=3, ranges=((" ", "ÿ"),)),)),
        "arguments[0].ranges[0]: U+007F is a control character (a tab or line break, say) and cannot be"
        " drawn: leave it out",
    ),
    (
        Content("%s", (FreeText(longest=3, ranges=(("0", "9"), ("z", "a"))),)),
        "arguments[0].ranges[1]: the range is empty, `z` comes after `a`: exchange them",
    ),
    (
        Content("%s", (FreeText(longest=3, ranges=(("ab", "c"),)),)),
        'arguments[0].ranges[0]: a range of characters is two single characters, such as ["a", "z"]',
    ),
    (
        Content("%s", (FreeText(longest=3, ranges=(("", "c"),)),)),
        'arguments[0].ranges[0]: a range of characters is two single characters, such as ["a", "z"]',
    ),
    (
        Content("%s", (FreeText(longest=3, ranges=(("\ud7ff", "\ue000"),)),)),
        "arguments[0].ranges[0]: U+D800 is a surrogate, half a character, and cannot be drawn: leave it out",
    ),
    (
        Content("%s", (FreeText(longest=3, ranges=(("!", "\U0010ffff"),)),)),
        "arguments[0].ranges[0]: the alphabet is too large, 30000 characters are the most: give only those"
        " that the type will have",
    ),
    (
        Content("%s", (FreeText(longest=3, ranges=(("一", "鿿"), ("가", "힣"))),)),
        "arguments[0]: the alphabet is too large, 32164 characters where 30000 are the most: give only those"
        " that the type will have",
    ),
    (
        Content("line\nbreak"),
        "format: U+000A is a control character (a tab or line break, say) and cannot be drawn: leave it out",
    ),
    (
        Content("a\0b"),
        "format: U+0000 ends a text in C: leave it out",
    ),
    (
        Content("\u2028"),
        "format: U+2028 is a control character (a tab or line break, say) and cannot be drawn: leave it out",
    ),
    (
        Content("ok", fault="\t"),
        "fault: U+0009 is a control character (a tab or line break, say) and cannot be drawn: leave it out",
    ),
    (
        Content("ok", first="\x85"),
        "first: U+0085 is a control character (a tab or line break, say) and cannot be drawn: leave it out",
    ),
    (
        Content("ok", also=("fine", "\ud800")),
        "also[1]: U+D800 is a surrogate, half a character, and cannot be drawn: leave it out",
    ),
]


@pytest.mark.parametrize(("content", "sentence"), REFUSED)
def test_every_refusal_has_its_place_and_sentence(content: Content, sentence: str) -> None:
    for _ in range(2):
        with pytest.raises(Problem) as caught:
            graph(content)
        assert str(caught.value) == sentence


VALUES: list[tuple[int, str | int | float, str]] = [
    (0, 21, "arguments[0]: 21 is outside -5 to 20: give a number inside, or widen the range"),
    (0, -10, "arguments[0]: -10 is outside -5 to 20: give a number inside, or widen the range"),
    (0, 7, "arguments[0]: 7 is off the step of 5: the next number below is 5"),
    (0, 5.0, "arguments[0]: `%d` takes a whole number: give one, without quotes and without a point"),
    (0, "5", "arguments[0]: `%d` takes a whole number: give one, without quotes and without a point"),
    (0, True, "arguments[0]: `%d` takes a whole number: give one, without quotes and without a point"),
    (1, 125.1, "arguments[1]: 125.1 is outside -40.0 to 125.0: give a number inside, or widen the range"),
    (1, math.nan, "arguments[1]: nan is outside -40.0 to 125.0: give a number inside, or widen the range"),
    (1, math.inf, "arguments[1]: inf is outside -40.0 to 125.0: give a number inside, or widen the range"),
    (1, "x", "arguments[1]: `%.1f` takes a number: give one, without quotes"),
    (2, "maybe", "arguments[2]: `maybe` is none of the choice's texts: take one of these, or add it to them"),
    (2, 3, "arguments[2]: `%s` takes a text: give one, in quotes"),
    (3, "", "arguments[3]: an empty text has 0 characters: give 1 to 4"),
    (3, "abcde", "arguments[3]: `abcde` has 5 characters: give 1 to 4"),
    (3, "a1", "arguments[3]: `1` is not in the free text's alphabet: take it out, or add it to that"),
    (3, 2.5, "arguments[3]: `%s` takes a text: give one, in quotes"),
    (4, "z", "arguments[4]: `z` is none of the choice's texts: take one of these, or add it to them"),
    (4, 65, "arguments[4]: `%c` takes a text: give one, in quotes"),
    (5, 3, "arguments[5]: 3 is off the step of 2: the next number below is 2"),
    (5, 2.5, "arguments[5]: 2.5 is no whole number, and the range holds only whole numbers"),
    (5, math.nan, "arguments[5]: nan is no whole number, and the range holds only whole numbers"),
    (5, 12, "arguments[5]: 12 is outside 0 to 10: give a number inside, or widen the range"),
    (6, 71, "arguments[6]: 71 is outside 65 to 70: give a number inside, or widen the range"),
    (6, "A", "arguments[6]: `%c` takes a whole number: give one, without quotes and without a point"),
]


@pytest.mark.parametrize(("index", "value", "sentence"), VALUES)
def test_text_refuses_values_that_the_content_does_not_have(
    index: int, value: str | int | float, sentence: str
) -> None:
    content = Content(
        "%d|%.1f|%s|%s|%c|%.0f|%c",
        (
            WholeRange(-5, 20, 5),
            RealRange(-40.0, 125.0),
            Choice(("on", "off")),
            FreeText(longest=4, shortest=1, ranges=(("a", "z"),)),
            Choice(("x", "y")),
            WholeRange(0, 10, 2),
            WholeRange(65, 70),
        ),
    )
    values: list[str | int | float] = [5, 20.5, "on", "abc", "x", 4, 66]
    assert text(content, tuple(values)) == "5|20.5|on|abc|x|4|B"
    values[index] = value
    with pytest.raises(Problem) as caught:
        text(content, tuple(values))
    assert str(caught.value) == sentence


def test_text_refuses_another_number_of_values_and_unusable_contents() -> None:
    content = Content("%d", (WholeRange(0, 9),))
    for values in ((), (1, 2)):
        with pytest.raises(Problem) as caught:
            text(content, values)
        assert str(caught.value) == (
            f"arguments: the format takes 1 argument, not {len(values)}:"
            " give one for each conversion, in order"
        )
    with pytest.raises(Problem):
        text(Content("%d", (WholeRange(9, 0),)), (5,))
