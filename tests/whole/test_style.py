"""The checks of form are part of the tests."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


@pytest.mark.parametrize(
    "check",
    [("ruff", "check", "."), ("ruff", "format", "--check", "."), ("mypy",)],
    ids=["lint", "format", "types"],
)
def test_form(check: tuple[str, ...]) -> None:
    done = subprocess.run(
        [sys.executable, "-m", *check], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr
