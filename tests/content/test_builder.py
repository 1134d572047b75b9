"""Building word graphs: against plain sets of texts, and within bounds."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.content.c_library import check_shape

from panelproof.content.builder import BULK, LIMIT, Builder, TooLargeError

texts_of = st.sets(st.text("abc", max_size=5), min_size=1, max_size=20)


def residuals(texts: set[str]) -> int:
    """The states of the least automaton (Myhill-Nerode): the different sets of endings that are not empty."""
    begun = {text[:length] for text in texts for length in range(len(text) + 1)}
    return len({frozenset(text[len(begin) :] for text in texts if text.startswith(begin)) for begin in begun})


@given(texts_of, texts_of)
def test_union_is_the_union_and_minimal(one: set[str], other: set[str]) -> None:
    builder = Builder()
    node = builder.union((builder.choice(one, builder.end), builder.choice(other, builder.end)))
    found = builder.graph(node)
    check_shape(found)
    assert set(found.texts()) == one | other
    assert len(found.edges) == residuals(one | other)
    assert node == builder.choice(one | other, builder.end), "one set of texts, one node"


@given(texts_of, texts_of)
def test_choice_then_what_follows_is_every_pair_and_minimal(one: set[str], other: set[str]) -> None:
    builder = Builder()
    found = builder.graph(builder.choice(one, builder.choice(other, builder.end)))
    both = {first + second for first in one for second in other}
    check_shape(found)
    assert set(found.texts()) == both
    assert len(found.edges) == residuals(both)


@given(st.lists(st.text(" ab", max_size=6), min_size=1, max_size=8), st.integers(0, 8))
def test_right_aligned_puts_spaces_before_each_body(texts: list[str], width: int) -> None:
    builder = Builder()
    bodies = [(len(text), builder.literal(text, builder.end)) for text in texts]
    found = builder.graph(builder.right_aligned(width, bodies))
    check_shape(found)
    assert set(found.texts()) == {text.rjust(width) for text in texts}


LONG_ALPHABET = "".join(map(chr, range(0x4E00, 0x4E00 + 2 * BULK)))
PART = LONG_ALPHABET[3:-3]


@given(
    st.lists(
        st.lists(st.sampled_from([LONG_ALPHABET, PART, "a", "ab", "一", "丁三"]), max_size=3),
        min_size=2,
        max_size=5,
    )
)
def test_union_of_long_alphabets_keeps_every_character(words: list[list[str]]) -> None:
    builder = Builder()
    nodes = []
    expected: set[str] = set()
    for word in words:
        node = builder.end
        texts = {""}
        for chars in reversed(word[:2]):
            node = builder.node(False, ((node, chars),))
            texts = {char + text for char in chars for text in texts}
        nodes.append(node)
        expected |= texts
    found = builder.graph(builder.union(nodes))
    check_shape(found)
    assert found.count() == len(expected)
    assert set(found.texts()) == expected


def test_work_is_bounded() -> None:
    builder = Builder()
    with pytest.raises(TooLargeError):
        for length in range(LIMIT):
            builder.literal("ab" * 50 + str(length), builder.end)
    assert len(builder._edges) <= LIMIT + 1
