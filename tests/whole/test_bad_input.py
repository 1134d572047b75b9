"""Broken files of every kind: each gives one sentence and exit code 2, in bounded time and memory."""

from __future__ import annotations

import json
import resource
import struct
import subprocess
import sys
import zlib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

KILN = Path(__file__).parents[2] / "examples" / "kiln" / "kiln.panel.json"
GIGABYTE = 1 << 30


def check(path: Path) -> subprocess.CompletedProcess[str]:
    def bounded() -> None:
        resource.setrlimit(resource.RLIMIT_AS, (2 * GIGABYTE, 2 * GIGABYTE))

    return subprocess.run(
        [sys.executable, "-m", "panelproof", "check", path],
        capture_output=True,
        text=True,
        check=False,
        timeout=20,
        preexec_fn=bounded,
    )


def unusable(path: Path, *words: str) -> str:
    done = check(path)
    assert done.returncode == 2, done.stdout + done.stderr
    assert done.stdout == ""
    lines = done.stderr.strip().splitlines()
    assert len(lines) == 1, done.stderr
    assert path.name in lines[0]
    for word in words:
        assert word in lines[0]
    return lines[0]


def _kiln() -> dict[str, Any]:
    tree: dict[str, Any] = json.loads(KILN.read_text(encoding="utf-8"))
    return tree


def _png(width: int, height: int, body: bytes) -> bytes:
    """A PNG file by hand (W3C PNG specification: signature, IHDR, IDAT, IEND)."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    return (
        b"\x89PNG\r\n\x1a\n"
        + chunk(b"IHDR", head)
        + chunk(b"IDAT", zlib.compress(body))
        + chunk(b"IEND", b"")
    )


def _picture(tree: dict[str, Any]) -> None:
    tree["screens"][1]["parts"][2]["states"][0] = {"name": "off", "picture": "off.png"}


def _spoil(key: str, value: object) -> Callable[[dict[str, Any]], None]:
    def change(tree: dict[str, Any]) -> None:
        tree[key] = value

    return change


def _part(number: int, key: str, value: object) -> Callable[[dict[str, Any]], None]:
    def change(tree: dict[str, Any]) -> None:
        tree["screens"][1]["parts"][number][key] = value

    return change


RANGE = {"kind": "whole", "least": 5, "greatest": 4}
HUGE = {"kind": "whole", "least": 0, "greatest": 10**30}
CHANGES: dict[str, tuple[Callable[[dict[str, Any]], None], tuple[str, ...]]] = {
    "unknown key": (_part(3, "baselin", 4), ("screens[1].parts[3].baselin",)),
    "wrong kind": (_part(4, "x", "left"), ("screens[1].parts[4].x",)),
    "unknown part": (_part(4, "kind", "gauge"), ("screens[1].parts[4]", "gauge")),
    "huge number": (_part(4, "x", 10**30), ("screens[1].parts[4].x",)),
    "huge size": (_spoil("types", [{"name": "reading", "font": "SourceSansPro", "size": 10**6}]), ("types[0].size",)),
    "huge panel": (_spoil("panel", {"width": 10**6, "height": 4}), ("panel.width",)),
    "newer format": (_spoil("format", 99), ("format", "newer")),
    "empty range": (_part(4, "content", {"format": "%d", "arguments": [RANGE]}), ("screens[1].parts[4].content",)),
    "range beyond int": (_part(4, "content", {"format": "%d", "arguments": [HUGE]}), ("screens[1].parts[4].content",)),
    "refused conversion": (_part(4, "content", {"format": "%g"}), ("screens[1].parts[4].content.format", "%f")),
    "too many arguments": (
        _part(4, "content", {"format": "x", "arguments": [RANGE]}), ("screens[1].parts[4].content",),
    ),
    "unknown ink": (_part(4, "ink", "glo"), ("screens[1].parts[4].ink", "`glow`")),
    "missing font": (
        lambda tree: tree["types"][0].update({"font": "gone.ttf"}), ("types[0].font", "gone.ttf"),
    ),
    "missing picture": (_picture, ("screens[1].parts[2].states[0].picture", "off.png")),
    "moment outside the range": (
        lambda tree: tree["moments"][4]["fields"].update({"chamber": [5000]}), ("moments[4].fields.chamber",),
    ),
    "moment with a text it cannot show": (
        lambda tree: tree["moments"][4]["fields"].update({"chamber": "hot"}), ("moments[4].fields.chamber",),
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", CHANGES)
def test_a_layout_with_one_thing_wrong(tmp_path: Path, name: str) -> None:
    change, words = CHANGES[name]
    tree = _kiln()
    change(tree)
    path = tmp_path / "kiln.panel.json"
    path.write_text(json.dumps(tree), encoding="utf-8")
    unusable(path, *words)


BYTES: dict[str, bytes] = {
    "empty": b"",
    "truncated": KILN.read_bytes()[:900],
    "not UTF-8": KILN.read_bytes().replace(b"Kiln", b"K\xffln"),
    "deep nesting": b'{"format": 1, "name": ' + b"[" * 100_000 + b"]" * 100_000 + b"}",
    "a number of 10 000 digits": b'{"format": ' + b"9" * 10_000 + b"}",
    "not a number": b'{"format": NaN}',
    "twice the same key": b'{"format": 1, "format": 1}',
    "a list": b"[]",
    "random bytes": bytes(range(256)) * 20,
    "large": b" " * (1 << 24),
}


@pytest.mark.parametrize("name", BYTES)
def test_a_file_that_is_no_layout(tmp_path: Path, name: str) -> None:
    path = tmp_path / "broken.panel.json"
    path.write_bytes(BYTES[name])
    unusable(path)


def test_no_file_and_a_folder(tmp_path: Path) -> None:
    unusable(tmp_path / "gone.panel.json")
    folder = tmp_path / "folder.panel.json"
    folder.mkdir()
    unusable(folder)


FONTS = {
    "zero bytes.ttf": b"",
    "truncated.ttf": b"\x00\x01\x00\x00\x00\x10" + bytes(50),
    "random.otf": bytes(range(256)) * 40,
    "text.bdf": b"STARTFONT 2.1\nFONT x\nSIZE 8 75 75\nFONTBOUNDINGBOX 99999 99999 0 0\nCHARS 999999999\n",
    "cut.pcf": b"\x01fcp\xff\xff\xff\x7f",
    "packed.pcf.gz": b"\x1f\x8b\x08\x00" + bytes(20),
}


@pytest.mark.parametrize("name", FONTS)
def test_a_broken_font(tmp_path: Path, name: str) -> None:
    (tmp_path / name).write_bytes(FONTS[name])
    tree = _kiln()
    tree["types"][0] = {"name": "reading", "font": name}
    if not name.endswith((".bdf", ".pcf", ".gz")):
        tree["types"][0]["size"] = 20
    path = tmp_path / "kiln.panel.json"
    path.write_text(json.dumps(tree), encoding="utf-8")
    unusable(path, "types[0]")


PICTURES = {
    "empty": b"",
    "no picture": b"hello",
    "truncated": _png(14, 14, bytes(15 * 14))[:40],
    "bomb": _png(60_000, 60_000, bytes(1000)),
    "wide": _png(5000, 1, bytes(5001)),
}


@pytest.mark.parametrize("name", PICTURES)
def test_a_broken_picture(tmp_path: Path, name: str) -> None:
    (tmp_path / "off.png").write_bytes(PICTURES[name])
    tree = _kiln()
    _picture(tree)
    path = tmp_path / "kiln.panel.json"
    path.write_text(json.dumps(tree), encoding="utf-8")
    unusable(path, "screens[1].parts[2].states[0].picture")
