"""Hostile contents end in bounded time; large ranges cost what small ones do; importing costs little."""

import math
import subprocess
import sys
from contextlib import suppress
from time import perf_counter, process_time

import pytest

from panelproof.content import build
from panelproof.content.build import graph
from panelproof.content.spec import Choice, Content, FreeText, RealRange, WholeRange
from panelproof.problem import Problem

ASCII = FreeText(longest=256, ranges=((" ", "~"),))
MIXED = FreeText(longest=256, ranges=((" ", "~"), ("¡", "ÿ"), ("一", "鿿")))
REALS = RealRange(-1.7976931348623157e308, 1.7976931348623157e308)
HOSTILE = {
    "percent signs": Content("%" * 256),
    "an odd percent sign": Content("%" * 255),
    "a width of 10^9": Content("%1000000000d", (WholeRange(0, 1),)),
    "a precision of 10^200": Content("%." + "9" * 200 + "f", (REALS,)),
    "16 free texts": Content("%s" * 16, (ASCII,) * 16),
    "16 free texts of a large alphabet": Content("%s" * 16, (MIXED,) * 16),
    "16 padded free texts": Content("%512s" * 16, (MIXED,) * 16),
    "16 padded free texts left": Content("%-512s" * 16, (ASCII,) * 16),
    "16 counters": Content("%d" * 16, (WholeRange(-(2**31), 2**31 - 1),) * 16),
    "16 counters of 64 bits": Content("%512lld " * 16, (WholeRange(-(2**63), 2**63 - 1),) * 16),
    "16 steps": Content("%lld" * 16, (WholeRange(-(2**63), 2**63 - 1, 9973),) * 16),
    "16 whole double ranges": Content("%.512f" * 16, (REALS,) * 16),
    "16 choices of 1000": Content("%s" * 16, (Choice(tuple(str(n * 7919) for n in range(1000))),) * 16),
    "a large choice": Content("%512s", (Choice(tuple((f"{n}-" * 128)[:256] for n in range(1000))),)),
    "a thousand long texts": Content("", also=tuple((f"{n}-" * 128)[:256] for n in range(1000))),
    "those beside a large alphabet": Content(
        "%s", (MIXED,), also=tuple((f"{n}-" * 128)[:256] + "€" for n in range(1000))
    ),
}


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_contents_take_bounded_time_and_end_in_a_graph_or_a_problem(name: str) -> None:
    content = HOSTILE[name]
    before = process_time()
    try:
        found = graph(content)
    except Problem as problem:
        assert problem.message
        assert problem.place == "format" or problem.place.startswith(("arguments", "also"))
    else:
        assert len(found.edges) < 300_000
    first = process_time() - before
    assert first < 8
    # Refusals are remembered as graphs are: the editor asks again at every key press.
    before = process_time()
    with suppress(Problem):
        graph(content)
    assert process_time() - before < 0.05


def test_a_graph_is_built_once() -> None:
    content = Content("%d", (WholeRange(0, 9),))
    assert graph(content) is graph(Content("%d", (WholeRange(0, 9),)))


def fastest(content: Content) -> float:
    best = math.inf
    for _ in range(15):
        build._built.cache_clear()
        before = perf_counter()
        build.graph(content)
        best = min(best, perf_counter() - before)
    return best


def test_a_counter_of_32_bits_costs_about_what_a_temperature_costs() -> None:
    temperature = fastest(Content("%.2f", (RealRange(-40.0, 125.0),)))
    assert fastest(Content("%u", (WholeRange(0, 2**32 - 1),))) < 10 * temperature
    assert fastest(Content("%d", (WholeRange(-(2**31), 2**31 - 1),))) < 10 * temperature
    assert fastest(Content("%s", (FreeText(longest=32, ranges=((" ", "~"),)),))) < 10 * temperature


def test_the_room_imports_nothing_heavy() -> None:
    code = (
        "import sys, panelproof.content.build;"
        "print([name for name in ('numpy', 'PIL', 'fontTools', 'jinja2', 'fractions', 'freetype')"
        " if name in sys.modules])"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert run.stdout.strip() == "[]"
