"""The page about panels and starters is of what there is."""

from __future__ import annotations

from PIL import Image
from tests.starters.gallery import GALLERY, LAYOUTS, SHOWN, WIDTH, page, sheet

from panelproof.starters.description import descriptions
from panelproof.starters.panels import panels


def test_the_page_is_up_to_date() -> None:
    assert (LAYOUTS / "README.md").read_text(encoding="utf-8") == page()
    assert all(one.id in page() for one in panels())


def test_every_starter_has_a_picture_and_all_are_small() -> None:
    assert set(SHOWN) == set(descriptions())
    sizes = []
    for name in descriptions():
        path = GALLERY / f"{name}.png"
        sizes.append(path.stat().st_size)
        with Image.open(path) as picture:
            assert picture.width == WIDTH
    assert sum(sizes) < 10**6


def test_a_sheet_shows_at_least_three_moments() -> None:
    assert all(len(shown) >= 3 for shown in SHOWN.values())
    assert sheet("mono-status").width == WIDTH
