"""Lines of words: nothing lost, nothing wider than its room."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image, ImageDraw

from panelproof.picture.lettering import PAGE, TEXT, font, line_height, lines, width, write


@settings(max_examples=200, deadline=None)
@given(text=st.text("abWi °-é\n", max_size=60), size=st.sampled_from([12, 14, 24]), room=st.integers(30, 200))
def test_lines_hold_every_character_in_order_and_fit(text: str, size: int, room: int) -> None:
    broken = lines(text, size, room)
    assert "".join(broken).replace(" ", "") == text.replace("\n", " ").replace(" ", "")
    assert all(width(line, size) <= room for line in broken)


def test_words_stay_whole_where_they_can() -> None:
    text = "before the first reading"
    for room in range(width("reading", 14), width(text, 14)):
        assert all(word in text.split() for line in lines(text, 14, room) for word in line.split())
    assert lines(text, 14, width(text, 14)) == [text]
    assert len(lines(text, 14, width(text, 14) - 1)) == 2


def test_a_line_lies_inside_its_line_box() -> None:
    for size in (12, 14, 18, 24):
        page = Image.new("RGB", (400, 100), PAGE)
        text = "Ågjp|×°"
        write(ImageDraw.Draw(page), (50, 30), text, size, TEXT)
        ink = Image.eval(page.convert("L"), lambda tone: 255 if tone < 200 else 0).getbbox()
        assert ink is not None
        left, top, right, bottom = ink
        assert top >= 30 and bottom <= 30 + line_height(size)
        assert left >= 50 - 1 and right <= 50 + width(text, size) + 1


def test_captions_have_the_characters_that_messages_use() -> None:
    face = font(14)
    lacking = bytes(face.getmask("\uffff"))
    for char in "°×–“”`µΩéüß…→·≥−’":
        assert bytes(face.getmask(char)) != lacking, char
