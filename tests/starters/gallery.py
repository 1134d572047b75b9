"""Draws the starters and writes the page about them: `python -m tests.starters.gallery`."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from PIL import Image, ImageDraw

from panelproof.layout.panel import visible_spans
from panelproof.material import gather
from panelproof.picture.frame import screen_frame
from panelproof.picture.image import image
from panelproof.picture.lettering import FAINT, PAGE, TEXT, line_height, width, write
from panelproof.picture.moments import named
from panelproof.starters.description import claiming, descriptions
from panelproof.starters.listing import HEADERS, LEGEND, claims_text, row, table
from panelproof.starters.make import make
from panelproof.starters.panels import panel_of, panels

LAYOUTS = Path(__file__).parents[2] / "layouts"
GALLERY = LAYOUTS / "gallery"
WIDTH, GAP, SMALL = 900, 18, 13

# (panel, moment) of each starter's sheet, and how large.
SHOWN: dict[str, tuple[tuple[str, str], ...]] = {
    "one-reading": (
        ("colour-240x135-1.14", "firing"), ("round-240x240-1.28", "hottest"), ("mono-128x32-0.91", "firing"),
        ("mono-72x40-0.42", "probe-lost"), ("colour-280x240-1.69", "cold"), ("paper-red-200x200-1.54", "firing"),
        ("colour-320x480-3.5", "firing"),
    ),
    "two-readings": (
        ("colour-240x135-1.14", "steady"), ("mono-128x64-0.96", "starting"), ("round-240x240-1.28", "frost"),
        ("colour-240x320-2.0", "sensor-lost"), ("paper-296x128-2.9", "server-down"), ("grey-256x64-3.12", "steady"),
    ),
    "four-readings": (
        ("colour-320x240-2.0", "steady"), ("colour-160x80-0.96", "full-load"), ("mono-128x64-0.96", "output-off"),
        ("round-240x240-1.28", "steady"), ("colour-280x240-1.69", "meter-lost"), ("paper-250x122-2.13", "steady"),
    ),
    "start-up": (
        ("colour-240x135-1.14", "joining"), ("colour-240x135-1.14", "probe-lost"), ("mono-128x64-0.96", "starting"),
        ("mono-128x64-0.96", "door-open"), ("round-240x240-1.28", "no-radio"), ("round-240x240-1.28", "firing-done"),
        ("paper-red-200x200-1.54", "probe-lost"),
    ),
    "set-up": (
        ("colour-240x135-1.14", "first-step"), ("mono-128x64-0.96", "second-step"),
        ("round-240x240-1.28", "third-step"), ("paper-264x176-2.7", "last-step"),
        ("colour-172x320-1.47", "second-step"), ("colour-320x172-1.47", "third-step"),
    ),
    "round-status": (
        ("round-160x160-0.71", "firing"), ("round-240x240-1.28", "links-down"), ("round-360x360-1.85", "starting"),
    ),
    "mono-status": (
        ("mono-128x64-0.96", "steady"), ("mono-128x64-0.96", "starting"), ("mono-128x64-0.96", "cloudburst"),
        ("mono-128x64-0.96", "sensor-lost"),
    ),
    "level-bar": (
        ("colour-240x135-1.14", "steady"), ("colour-135x240-1.14", "low"), ("mono-128x64-0.96", "sensor-lost"),
        ("round-240x240-1.28", "full"), ("paper-red-200x200-1.54", "low"), ("grey-128x128-1.5", "steady"),
    ),
    "long-text": (
        ("paper-200x200-1.54", "full"), ("paper-red-296x128-2.9", "low"), ("paper-grey-400x300-4.2", "silent"),
    ),
}  # fmt: skip

INTRODUCTION = """\
A starter is a layout to begin from: `panelproof new LAYOUT --panel ID --starter NAME` sets it for a panel. It takes
the largest type that fits, by asking the proof; what comes out has no fault and no caution. Texts, ranges, icons and
moments are described in `starters/*.toml`, panels in `panels.toml`; `app/panelproof/starters/` sets them. Type and
icons are those of `fonts_free/`. All of it is CC0-1.0: take it into your product. This page is written by
`python -m tests.starters.gallery`.
"""


@dataclass(frozen=True, slots=True)
class Tile:
    """One picture with its caption."""

    caption: str
    picture: Image.Image

    @property
    def room(self) -> int:
        """Pixels across that it needs."""
        return max(self.picture.width, width(self.caption, SMALL))


def _tile(starter: str, panel_id: str, moment: str) -> Tile:
    panel = panel_of(panel_id).panel
    layout = make(starter, panel, "gallery")
    material = gather(layout, Path())
    shown = named(material, [one.name for one in layout.moments].index(moment))
    scale = 2 if max(panel.width, panel.height) <= 160 else 1
    seen = image(screen_frame(material, material.screen(shown.screen), shown.values), panel, scale)
    hidden = Image.new("L", seen.size, 0)
    pen = ImageDraw.Draw(hidden)
    for y, (first, end) in enumerate(visible_spans(panel)):
        pen.rectangle((first * scale, y * scale, end * scale - 1, y * scale + scale - 1), fill=255)
    return Tile(
        f"{panel_id}, {moment.replace('-', ' ')}",
        Image.composite(seen, Image.new("RGB", seen.size, PAGE), hidden),
    )


def sheet(starter: str) -> Image.Image:
    """Return the pictures of one starter side by side, row under row."""
    rows: list[list[Tile]] = [[]]
    for panel_id, moment in SHOWN[starter]:
        tile = _tile(starter, panel_id, moment)
        if rows[-1] and sum(one.room + GAP for one in rows[-1]) + tile.room + GAP > WIDTH:
            rows.append([])
        rows[-1].append(tile)
    high = line_height(SMALL) + 4
    heights = [max(one.picture.height for one in line) + high + GAP for line in rows]
    page = Image.new("RGB", (WIDTH, sum(heights) + GAP), PAGE)
    pen = ImageDraw.Draw(page)
    y = GAP
    for line, height in zip(rows, heights, strict=True):
        x = GAP
        for tile in line:
            write(pen, (x, y), tile.caption, SMALL, TEXT)
            page.paste(tile.picture, (x, y + high))
            if tile.picture.getpixel((tile.picture.width // 2, 0)) == (255, 255, 255):
                pen.rectangle(
                    (x - 1, y + high - 1, x + tile.picture.width, y + high + tile.picture.height),
                    outline=FAINT,
                )
            x += tile.room + GAP
        y += height
    return page


def page() -> str:
    """Return the page about panels and starters, as Markdown."""
    lines = [
        "# Panels and starters",
        "",
        *INTRODUCTION.splitlines(),
        "",
        "## Starters",
        "",
    ]
    for name, one in descriptions().items():
        count = sum(name in claiming(listed.panel) for listed in panels())
        lines += [
            f"### `{name}`: {one.title[0].lower()}{one.title[1:]}",
            "",
            f"{one.purpose} Panels: {claims_text(one.claims)}; {count} of the list.",
            "",
            f"![{one.title} on several panels](gallery/{name}.png)",
            "",
        ]
    lines += [
        "## Panels",
        "",
        "`panelproof panels` prints this list, `--json` with the source of each figure. "
        f"Here: {LEGEND.replace('   ', '; ')}.",
        "The offset is where in the controller's memory the top left pixel lies; it depends on how the glass is turned.",
        "",
        table([row(listed) for listed in panels()], HEADERS, "github"),
        "",
    ]
    return "\n".join(lines)


def main() -> None:
    """Write every picture and the page."""
    GALLERY.mkdir(exist_ok=True)
    for name in descriptions():
        few = sheet(name).quantize(64, method=Image.Quantize.MEDIANCUT, dither=Image.Dither.NONE)
        few.save(GALLERY / f"{name}.png", optimize=True)
    (LAYOUTS / "README.md").write_text(page(), encoding="utf-8")
    size = sum(path.stat().st_size for path in GALLERY.iterdir())
    print(f"wrote {len(descriptions())} pictures, {size // 1024} KiB, and {LAYOUTS / 'README.md'}")


if __name__ == "__main__":
    main()
