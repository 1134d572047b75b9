"""Word graphs against plain sets of texts."""

from hypothesis import given
from hypothesis import strategies as st

from panelproof.content.build import graph
from panelproof.content.builder import Builder
from panelproof.content.graph import max_bytes
from panelproof.content.spec import Content, FreeText

some_texts = st.sets(st.text("ab°€𝄞", max_size=5), min_size=1, max_size=30)


@given(some_texts)
def test_count_texts_alphabet_and_accepts_agree_with_the_set(texts: set[str]) -> None:
    builder = Builder()
    found = builder.graph(builder.choice(texts, builder.end))
    assert list(found.texts()) == sorted(texts)
    assert found.count() == len(texts)
    assert found.alphabet() == {char for text in texts for char in text}
    assert all(found.accepts(text) for text in texts)
    assert all(found.accepts(text + "a") == (text + "a" in texts) for text in texts)
    assert found.accepts("") == ("" in texts)


@given(some_texts)
def test_the_most_bytes_are_those_of_the_first_longest_text_in_utf8(texts: set[str]) -> None:
    builder = Builder()
    found = builder.graph(builder.choice(texts, builder.end))
    most = max(len(text.encode()) for text in texts)
    assert max_bytes(found) == (most, min(text for text in texts if len(text.encode()) == most))


def test_the_most_bytes_of_free_text_take_the_widest_characters() -> None:
    free = FreeText(longest=256, ranges=((" ", "~"), ("¡", "ÿ"), ("一", "鿿")), characters="𝄞")
    size, text = max_bytes(graph(Content("%s", (free,))))
    assert (size, text) == (4 * 256, "𝄞" * 256)
