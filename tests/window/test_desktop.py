"""The desktop entry and the file type, as other programs read them."""

from __future__ import annotations

import configparser
import os
import shutil
import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree

import pytest
from PySide6.QtGui import QGuiApplication, QImage
from pytestqt.qtbot import QtBot

from panelproof.editor.app import icon
from panelproof.editor.desktop import ENTRY_FILE, ICON_FILE, MIME, TYPE_FILE, data_folder, install, remove
from panelproof.problem import Problem


def test_what_is_installed_is_removed_again_and_nothing_else(tmp_path: Path) -> None:
    (tmp_path / "applications").mkdir()
    other = tmp_path / "applications" / "other.desktop"
    other.write_text("[Desktop Entry]\n")
    written = install(tmp_path)
    assert written == tuple(tmp_path / file for file in (ENTRY_FILE, ICON_FILE, TYPE_FILE))
    assert all(path.is_file() for path in written)
    assert install(tmp_path) == written, "a second time is no harm"
    assert remove(tmp_path) == written
    assert not any(path.exists() for path in written)
    assert remove(tmp_path) == ()
    assert other.is_file()


def test_the_entry_starts_the_program(tmp_path: Path) -> None:
    install(tmp_path)
    entry = configparser.ConfigParser(interpolation=None)
    entry.optionxform = str  # type: ignore[assignment, method-assign]
    entry.read(tmp_path / ENTRY_FILE)
    values = entry["Desktop Entry"]
    assert values["Type"] == "Application"
    assert values["MimeType"] == f"{MIME};"
    assert values["Categories"].endswith(";")
    command = values["Exec"]
    assert command.endswith(" %f")
    program = command.removesuffix(" %f")
    done = subprocess.run(f"{program} --version", shell=True, capture_output=True, text=True, check=True)
    assert done.stdout.startswith("panelproof ")


@pytest.mark.skipif(not shutil.which("update-mime-database"), reason="shared-mime-info is not installed")
def test_qt_takes_layout_files_for_what_they_are(tmp_path: Path) -> None:
    install(tmp_path)
    ask = (
        "from PySide6.QtCore import QMimeDatabase as D; m = D().mimeTypeForFile('kiln.panel.json', "
        "D.MatchMode.MatchExtension); print(m.name(), m.comment(), m.inherits('application/json'))"
    )
    environment = {**os.environ, "XDG_DATA_HOME": str(tmp_path)}
    done = subprocess.run(
        [sys.executable, "-c", ask], env=environment, capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == f"{MIME} Panelproof layout True"


def test_the_icon_is_a_picture(qtbot: QtBot, tmp_path: Path) -> None:
    install(tmp_path)
    assert ElementTree.parse(tmp_path / ICON_FILE).getroot().tag == "{http://www.w3.org/2000/svg}svg"
    image = QImage(str(tmp_path / ICON_FILE))
    assert (image.width(), image.height()) == (128, 128)
    assert image.pixelColor(64, 20).alpha() == 255
    assert image.pixelColor(0, 0).alpha() == 0
    assert QGuiApplication.instance() is not None
    assert not icon().isNull()


def test_the_folder_follows_the_base_directory_specification(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    assert data_folder() == tmp_path
    for ignored in ("", "relative/path"):
        monkeypatch.setenv("XDG_DATA_HOME", ignored)
        assert data_folder() == Path.home() / ".local" / "share"


def test_where_nothing_can_be_written_it_says_where(tmp_path: Path) -> None:
    (tmp_path / "applications").write_text("in the way")
    with pytest.raises(Problem, match="applications") as raised:
        install(tmp_path)
    assert "cannot be made" in raised.value.message
