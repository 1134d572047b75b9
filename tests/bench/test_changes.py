"""Bytes on the bus of N to N + 1 over whole contents, beside the least that could be sent.

A window takes 11 bytes before its first pixel, a pixel 2 (MIPI Display Command Set, 16 bits a pixel). The least: the
pixels that change, covered by windows in the best way that cuts lead to, each from edge to edge of a piece: every way to
cut the bounding box of the changed pixels in two, and the boxes of the pieces in two again, was tried.
"""

from __future__ import annotations

import subprocess
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest
from msgspec.structs import replace
from numpy.typing import NDArray
from tests.firmware.harness import build, compiled

from panelproof.content.build import graph, text
from panelproof.content.spec import Content, RealRange, WholeRange
from panelproof.glyphs.catalogue import find
from panelproof.ink.footprint import footprint
from panelproof.layout.document import Ink, Layout, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field
from panelproof.material import gather

FONTS = Path(__file__).parents[2] / "fonts_free"
WINDOW, PIXEL = 11, 2
MOST = 1.25

# Reads "width height" and rows of # and . ; writes the least bytes.
BEST = r"""
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
static int w, h, sum[130][400];
static int *memo;
static int count(int t, int l, int b, int r) { return sum[b][r] - sum[t][r] - sum[b][l] + sum[t][l]; }
static int least(int t, int l, int b, int r)
{
    int *known, best, cut, found;
    if (!count(t, l, b, r)) return 0;
    while (!count(t, l, t + 1, r)) ++t;
    while (!count(b - 1, l, b, r)) --b;
    while (!count(t, l, b, l + 1)) ++l;
    while (!count(t, r - 1, b, r)) --r;
    known = &memo[((t * (h + 1) + b) * w + l) * (w + 1) + r];
    if (*known) return *known;
    best = 11 + 2 * (b - t) * (r - l);
    if (best > 22) {
        for (cut = t + 1; cut < b; ++cut)
            if ((found = least(t, l, cut, r) + least(cut, l, b, r)) < best) best = found;
        for (cut = l + 1; cut < r; ++cut)
            if ((found = least(t, l, b, cut) + least(t, cut, b, r)) < best) best = found;
    }
    return *known = best;
}
int main(void)
{
    static char row[400];
    while (scanf("%d %d", &w, &h) == 2) {
        int x, y;
        memo = (int *)calloc((size_t)h * (h + 1) * w * (w + 1), sizeof *memo);
        for (y = 0; y < h; ++y) {
            if (scanf("%399s", row) != 1) return 2;
            for (x = 0; x < w; ++x)
                sum[y + 1][x + 1] = sum[y][x + 1] + sum[y + 1][x] - sum[y][x] + (row[x] == '#');
        }
        printf("%d\n", least(0, 0, h, w));
        free(memo);
    }
    return 0;
}
"""


def _counting(greatest: int) -> Content:
    return Content("%d", (WholeRange(0, greatest),))


CASES = {
    "Pellucet 16, right": (TypeSpec("it", str(FONTS / "pellucet-16.bdf")), _counting(1200), "right"),
    "Pellucet 24, one place, right": (
        TypeSpec("it", str(FONTS / "pellucet-24.bdf")),
        Content("%.1f", (RealRange(0.0, 30.0),)),
        "right",
    ),
    "Source Sans 24 one-bit, right": (TypeSpec("it", "SourceSansPro", 24), _counting(400), "right"),
    "Source Sans 30 antialiased, kerned, right": (
        TypeSpec("it", "SourceSansPro", 30, "antialiased", True),
        _counting(400),
        "right",
    ),
    "Hanken Grotesk 20 one-bit, centre": (TypeSpec("it", "HankenGrotesk", 20), _counting(400), "centre"),
}


def texts_of(content: Content) -> list[str]:
    argument = content.arguments[0]
    if isinstance(argument, WholeRange):
        return [text(content, (n,)) for n in range(int(argument.least), int(argument.greatest) + 1)]
    assert isinstance(argument, RealRange)
    return [text(content, (n / 10,)) for n in range(int(argument.greatest * 10) + 1)]


def least_bytes(folder: Path, masks: list[NDArray[np.bool_]]) -> list[int]:
    (folder / "best.c").write_text(BEST)
    compiled(folder, ["-O2", "best.c", "-o", "best"])
    asked = []
    for mask in masks:
        ys, xs = np.nonzero(mask.any(1))[0], np.nonzero(mask.any(0))[0]
        part = mask[ys[0] : ys[-1] + 1, xs[0] : xs[-1] + 1]
        asked.append(f"{part.shape[1]} {part.shape[0]}")
        asked += ["".join("#" if one else "." for one in row) for row in part]
    done = subprocess.run(
        [folder / "best"], input="\n".join(asked), capture_output=True, text=True, check=True
    )
    return list(map(int, done.stdout.split()))


@pytest.mark.parametrize("name", CASES)
def test_one_step_of_a_number(name: str, tmp_path: Path) -> None:
    spec, content, align = CASES[name]
    if not spec.font.endswith(".bdf"):
        find(spec.font, tmp_path)
    bare = Layout(
        1, "it", Panel(200, 60), (spec,), (Ink("a", "#000000"), Ink("b", "#ffffff")), (Screen("s", "a"),)
    )
    type_ = gather(bare, tmp_path).types["it"]
    field = Field("n", content, "it", "b", 100, 40, align)  # type: ignore[arg-type]
    left, top, width, height = footprint(graph(content), type_, field.align).mask.bounds()
    field = replace(field, padding=(100 + left, 40 + top, width, height))
    material = gather(replace(bare, screens=(Screen("s", "a", (field,)),)), tmp_path)
    screen = material.layout.screens[0]
    program = build(material, tmp_path, ("-std=c99", "-O2"))
    shown = texts_of(content)
    program.update_field(screen, field, shown[0])
    program.frame()
    for former, now in pairwise(shown):
        program.change_field(screen, field, former, now)
        program.frame()
    answers = program.run()
    sent = [WINDOW * one.windows + PIXEL * int((one.touched > 0).sum()) for one in answers[1:]]
    whole = WINDOW + PIXEL * width * height
    masks = [now.codes != before.codes for before, now in pairwise(answers)]
    kinds = {mask.tobytes(): mask for mask in masks}
    least = dict(zip(kinds, least_bytes(tmp_path, list(kinds.values())), strict=True))
    possible = sum(least[mask.tobytes()] for mask in masks)
    print(
        f"\n{name}: {len(sent)} steps, {sum(sent) / len(sent):.0f} bytes a step (worst {max(sent)}), least possible "
        f"{possible / len(sent):.0f}, ratio {sum(sent) / possible:.2f}; an update of all takes {whole}"
    )
    assert sum(sent) <= MOST * possible
