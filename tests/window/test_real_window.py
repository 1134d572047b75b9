"""The first task once more, in a real window on a virtual monitor, with a real pointer and real keys."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from tests.firmware.harness import WARNINGS, compiled, installed

from panelproof.layout.document import Ink, Layout, Screen
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Field
from panelproof.layout.reading import read
from panelproof.layout.writing import write

ROOT = Path(__file__).parents[2]


@dataclass
class Person:
    """A hand on the pointer and one on the keys."""

    process: subprocess.Popen[str]
    environment: dict[str, str]

    def see(self) -> dict[str, Any]:
        assert self.process.stdin is not None
        assert self.process.stdout is not None
        self.process.stdin.write("see\n")
        self.process.stdin.flush()
        seen: dict[str, Any] = json.loads(self.process.stdout.readline())
        return seen

    def do(self, *words: object) -> None:
        subprocess.run(["xdotool", *map(str, words)], env=self.environment, check=True, timeout=20)

    def drag(self, start: tuple[float, float], end: tuple[float, float]) -> None:
        self.do("mousemove", int(start[0]), int(start[1]), "mousedown", 1)
        for step in range(1, 9):
            x = start[0] + (end[0] - start[0]) * step / 8
            y = start[1] + (end[1] - start[1]) * step / 8
            self.do("mousemove", int(x), int(y))
            time.sleep(0.05)
        time.sleep(0.15)
        self.do("mouseup", 1)
        time.sleep(0.3)

    def fill_in(self, row: str, text: str) -> None:
        x, y = self.see()[f"row {row}"]
        self.do("mousemove", x, y, "click", "--repeat", 3, 1)
        self.do("key", "ctrl+a")
        self.do("type", "--delay", 15, text)
        self.do("key", "Return")
        time.sleep(0.3)

    def until(self, key: str, value: object) -> dict[str, Any]:
        end = time.monotonic() + 10
        while True:
            seen = self.see()
            if seen[key] == value:
                return seen
            assert time.monotonic() < end, (key, value, seen)
            time.sleep(0.1)


@pytest.fixture
def person(tmp_path: Path) -> Iterator[Person]:
    server, _ = installed("Xvfb"), installed("xdotool")
    reading, writing = os.pipe()
    with subprocess.Popen(
        [server, "-displayfd", str(writing), "-screen", "0", "1400x1000x24", "-nolisten", "tcp"],
        pass_fds=[writing],
        stderr=subprocess.DEVNULL,
    ) as display:
        os.close(writing)
        with os.fdopen(reading) as numbers:
            number = numbers.readline().strip()
        environment = {**os.environ, "DISPLAY": f":{number}", "QT_QPA_PLATFORM": "xcb", "LC_ALL": "C.UTF-8"}
        black, white = Ink("black", "#000000"), Ink("white", "#ffffff")
        made = Layout(1, "supply", Panel(160, 80), (), (black, white), (Screen("main", "black"),))
        write(made, tmp_path / "supply.panel.json")
        with subprocess.Popen(
            [
                sys.executable,
                "-m",
                "tests.window.real_driver",
                tmp_path / "supply.panel.json",
                tmp_path / "state",
            ],
            cwd=ROOT,
            env=environment,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
        ) as process:
            try:
                yield Person(process, environment)
            finally:
                process.kill()
                display.kill()


def on_glass(seen: dict[str, Any], x: int, y: int) -> tuple[float, float]:
    zero, pixel = seen["zero"], seen["pixel"]
    return zero[0] + x * pixel, zero[1] + y * pixel


def test_the_first_task_with_a_real_pointer(person: Person, tmp_path: Path) -> None:
    seen = person.until("parts", [])
    time.sleep(0.5)
    person.do("mousemove", *map(int, on_glass(seen, 80, 75)), "click", 1)
    person.drag(seen["tray field"], on_glass(seen, 60, 20))
    person.until("parts", ["field"])
    person.drag(seen["tray field"], on_glass(seen, 60, 60))
    person.drag(seen["tray icon"], on_glass(seen, 140, 12))
    person.until("parts", ["field", "field-2", "icon"])
    person.until("findings", [])
    # Choose the first field by its text, and say what it can show: it no longer fits.
    person.do("mousemove", *map(int, on_glass(seen, 60, 20)), "click", 1)
    time.sleep(0.3)
    person.fill_in("Format", "%.1f V")
    person.fill_in("Greatest", "100000")
    broken = person.see()
    assert ["fit", "field"] in (broken["findings"] or [])
    # Take both back, step by step, and save.
    person.do("mousemove", *map(int, on_glass(seen, 60, 20)), "click", 1)
    person.do("key", "ctrl+z")
    person.do("key", "ctrl+z")
    after = person.until("findings", [])
    assert after["parts"] == ["field", "field-2", "icon"]
    person.do("key", "Right")
    person.do("key", "ctrl+s")
    person.until("unsaved", False)
    folder = os.environ.get("PANELPROOF_SCREENSHOTS")
    if folder:
        time.sleep(1)
        subprocess.run(
            ["import", "-window", "root", Path(folder) / "first-task.png"], env=person.environment, check=True
        )
    saved = read(tmp_path / "supply.panel.json")
    field = saved.screens[0].parts[0]
    assert isinstance(field, Field)
    header = tmp_path / "supply.h"
    subprocess.run(
        [sys.executable, "-m", "panelproof", "export", tmp_path / "supply.panel.json", "-o", header],
        check=True,
    )
    (tmp_path / "main.c").write_text(
        '#define SUPPLY_IMPLEMENTATION\n#include "supply.h"\nint main(void) { return 0; }\n'
    )
    compiled(tmp_path, ["-std=c99", *WARNINGS, "main.c", "-o", "main"])
