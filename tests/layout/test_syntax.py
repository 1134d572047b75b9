"""From bytes to plain values: what Python's json module reads, less what a layout may not hold."""

from __future__ import annotations

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from panelproof.layout.syntax import load
from panelproof.problem import Problem

FLOATS = st.floats(allow_nan=False, allow_infinity=False)
CHARACTERS = st.characters(codec="utf-8")
PLAIN = st.recursive(
    st.none() | st.booleans() | st.integers(-(10**90), 10**90) | FLOATS | st.text(CHARACTERS, max_size=8),
    lambda inner: (
        st.lists(inner, max_size=4) | st.dictionaries(st.text(CHARACTERS, max_size=5), inner, max_size=4)
    ),
    max_leaves=20,
)


def refusal(text: str) -> str:
    with pytest.raises(Problem) as caught:
        load(text.encode("utf-8", "surrogatepass"))
    return str(caught.value)


@given(PLAIN, st.booleans(), st.sampled_from((None, 1, 4)))
@settings(max_examples=150, deadline=None)
def test_all_json_is_read(value: object, escaped: bool, indent: int | None) -> None:
    read = load(json.dumps(value, ensure_ascii=escaped, indent=indent).encode())
    assert json.dumps(read) == json.dumps(value)


@given(st.binary(max_size=60) | st.text('{}[]",:\\u0d8e1-+. tfn\n\u2028é', max_size=40).map(str.encode))
@settings(max_examples=400, deadline=None)
def test_whatever_is_not_read_is_a_problem_with_a_printable_sentence(data: bytes) -> None:
    try:
        value = load(data)
    except Problem as problem:
        assert str(problem).isprintable()
    else:
        assert json.loads(data) == value


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ('{"a": 1,\n "a": 2}', "a: this key stands twice in one object; keep one"),
        ('[{"b": [{"a": 1, "b": 2, "b": 3}]}]', "[0].b[0].b: this key stands twice in one object; keep one"),
        ('{"a": {"x": NaN}, "b": Infinity}', "a.x: `NaN` is not a number that a layout can hold"),
        ('{"a b": [1, -1e400]}', '["a b"][1]: -1e400 is greater than any number that can be held'),
        (
            "[" * 65 + "]" * 65,
            "line 1, column 65: objects and lists stand deeper in one another than 64; no layout needs that",
        ),
        (
            '{"[[[\\"]": \n' * 65,
            "line 65, column 1: objects and lists stand deeper in one another than 64; no layout needs that",
        ),
        (
            "[" * 64 + "]" * 64 + " 5",
            "line 1, column 130: something follows the end of the layout; a file holds one object",
        ),
        ('{"a": 1,}', "line 1, column 9: the last comma before this `}` is one too many"),
        ('["a",\n\n  ]', "line 3, column 3: the last comma before this `]` is one too many"),
        ('{"a" 1}', "line 1, column 6: a colon is missing between a key and its value"),
        (
            '{"a"',
            "line 1, column 5: the file ends too early: a value, a comma or a closing bracket is missing",
        ),
        ('{"a": "x', "line 1, column 7: the text that begins here has no closing double quote"),
        ('{"a": 1 "b": 2}', "line 1, column 9: a comma is missing before this, or a closing bracket"),
        ("[1 2]", "line 1, column 4: a comma is missing before this, or a closing bracket"),
        ("[-]", "line 1, column 2: this number is not written as JSON has it, such as 7, -0.5 or 1e3"),
        ("[1.]", "line 1, column 3: this number is not written as JSON has it, such as 7, -0.5 or 1e3"),
        ("[nan]", "line 1, column 2: a text stands in double quotes: `nan` does not"),
        ("[None]", "line 1, column 2: `None` is written `null`"),
        ("[,]", "line 1, column 2: a value is expected here, not `,`"),
        ("{,}", "line 1, column 2: a key in double quotes is expected here, not `,`"),
        ("é\n[\x07]", "line 1, column 1: a value is expected here, not `é`"),
        ("[\x07]", 'line 1, column 2: a value is expected here, not `"\\u0007"`'),
        ("[1, /* two */ 2]", "line 1, column 5: JSON has no comments; take this one out"),
        ("# tank\n{}", "line 1, column 1: JSON has no comments; take this one out"),
        ("[\ud800]", "line 1, column 2: the byte 0xED is not UTF-8; save the file as UTF-8"),
    ],
)
def test_sentences(text: str, sentence: str) -> None:
    assert refusal(text) == sentence


def test_brackets_in_texts_are_not_deep() -> None:
    assert load(b'["' + b"[{" * 65 + b'\\"' + b"[" * 65 + b'"]') == ["[{" * 65 + '"' + "[" * 65]


def test_columns_count_characters() -> None:
    assert refusal('{"é漢": x}').startswith("line 1, column 8:")
    assert refusal('{"é漢\udcff": x}').startswith("line 1, column 5: the byte 0xED")


def test_pairs_of_escaped_halves_are_characters_and_single_ones_are_refused() -> None:
    assert load(b'["\\ud83d\\udd25", "\\\\ud800"]') == ["\U0001f525", "\\ud800"]
    assert refusal('{"a": ["x", "\\uDC00"]}').startswith("a[1]: half a character")


def test_the_first_in_the_file_is_told() -> None:
    assert refusal('{"a": [0, NaN], "b": {"c": 1, "c": 2}}').startswith("a[1]: `NaN`")
    assert refusal('{"b": {"c": 1, "c": 2}, "a": [0, NaN]}').startswith("b.c: this key")


@pytest.mark.parametrize("digits", [99, 100, 101, 4000, 5000, 100_000])
def test_digits_are_bounded(digits: int) -> None:
    if digits <= 100:
        assert load(b"[" + b"7" * digits + b"]") == [int("7" * digits)]
    else:
        assert refusal("[" + "7" * digits + "]").startswith("[0]: the number 777777777777… is")
        assert refusal("[0." + "7" * digits + "]").startswith("[0]: the number 0.7777777777… is")
