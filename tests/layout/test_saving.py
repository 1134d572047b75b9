"""Saving: the old content or the new, whole, whatever happens on the way."""

from __future__ import annotations

import errno
import os
import stat
from pathlib import Path
from typing import NoReturn

import pytest

from panelproof.layout.saving import in_words, save
from panelproof.problem import Problem

POSIX = pytest.mark.skipif(os.name != "posix", reason="only where files have permission bits and links")


def alone(path: Path) -> bool:
    return [entry.name for entry in path.parent.iterdir()] == [path.name]


def test_a_new_file_and_a_changed_one(tmp_path: Path) -> None:
    path = tmp_path / "a.bin"
    save(path, b"\x00\r\n\xff")
    assert path.read_bytes() == b"\x00\r\n\xff"
    save(path, b"")
    assert path.read_bytes() == b""
    assert alone(path)


@POSIX
@pytest.mark.parametrize("mode", [0o600, 0o644, 0o664, 0o755, 0o200])
def test_permission_bits_are_kept(tmp_path: Path, mode: int) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"old")
    path.chmod(mode)
    save(path, b"new")
    assert stat.S_IMODE(path.stat().st_mode) == mode
    path.chmod(0o600)
    assert path.read_bytes() == b"new"


@POSIX
def test_a_new_file_has_the_bits_of_any_other(tmp_path: Path) -> None:
    before = os.umask(0o027)
    try:
        save(tmp_path / "a", b"")
        assert stat.S_IMODE((tmp_path / "a").stat().st_mode) == 0o640
    finally:
        os.umask(before)


@POSIX
def test_a_link_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "far").mkdir()
    target, link = tmp_path / "far" / "a", tmp_path / "link"
    target.write_bytes(b"old")
    link.symlink_to("far/a")
    save(link, b"new")
    assert link.is_symlink()
    assert target.read_bytes() == b"new"
    assert alone(target)


@POSIX
def test_a_link_to_nothing_makes_what_it_leads_to(tmp_path: Path) -> None:
    link = tmp_path / "link"
    link.symlink_to("to-be")
    save(link, b"new")
    assert link.is_symlink()
    assert (tmp_path / "to-be").read_bytes() == b"new"


@POSIX
def test_a_link_to_itself(tmp_path: Path) -> None:
    link = tmp_path / "link"
    link.symlink_to("link")
    with pytest.raises(Problem, match="the link leads back to itself"):
        save(link, b"new")


@POSIX
@pytest.mark.parametrize("linked", [False, True])
def test_what_is_no_ordinary_file_is_written_to_and_not_replaced(tmp_path: Path, linked: bool) -> None:
    # A pipe of the test's own: were the guard broken, a real device would be lost to the whole machine.
    pipe, link = tmp_path / "pipe", tmp_path / "link"
    os.mkfifo(pipe)
    link.symlink_to(pipe)
    reader = os.open(pipe, os.O_RDONLY | os.O_NONBLOCK)
    try:
        save(link if linked else pipe, b"new")
        assert os.read(reader, 10) == b"new"
    finally:
        os.close(reader)
    assert stat.S_ISFIFO(pipe.lstat().st_mode)
    assert sorted(entry.name for entry in tmp_path.iterdir()) == ["link", "pipe"]


@pytest.mark.parametrize("step", ["write", "fsync", "replace", "chmod"])
@pytest.mark.parametrize(
    "error", [OSError(errno.ENOSPC, "No space"), KeyboardInterrupt()], ids=["full", "stopped"]
)
def test_what_fails_on_the_way_leaves_the_old_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: str, error: BaseException
) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"old")

    def fail(*_: object) -> NoReturn:
        raise error

    data: bytes = b"new"
    if step == "write":
        monkeypatch.setattr("builtins.open", lambda descriptor, _: Full(descriptor, error))
    elif step == "fsync":
        monkeypatch.setattr(os, "fsync", fail)
    else:
        monkeypatch.setattr(Path, step, fail)
    with pytest.raises((Problem, KeyboardInterrupt)) as caught:
        save(path, data)
    monkeypatch.undo()
    assert path.read_bytes() == b"old"
    assert alone(path)
    if isinstance(error, OSError):
        assert str(caught.value) == f"{path}: the file cannot be written: the disk is full"
    else:
        assert isinstance(caught.value, KeyboardInterrupt)


class Full:
    """A file on a full disk."""

    def __init__(self, descriptor: int, error: BaseException) -> None:
        self._descriptor, self._error = descriptor, error

    def __enter__(self) -> Full:
        return self

    def __exit__(self, *_: object) -> None:
        os.close(self._descriptor)

    def write(self, data: bytes) -> None:
        os.write(self._descriptor, data[:1])
        raise self._error


def test_data_is_on_the_disk_before_it_takes_the_place(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    steps: list[str] = []
    fsync, replace = os.fsync, Path.replace

    def noted_fsync(descriptor: int) -> None:
        whole = os.fstat(descriptor)
        steps.append(f"fsync {whole.st_size}" if stat.S_ISREG(whole.st_mode) else "fsync folder")
        fsync(descriptor)

    def noted_replace(self: Path, target: Path) -> Path:
        steps.append("replace")
        return replace(self, target)

    monkeypatch.setattr(os, "fsync", noted_fsync)
    monkeypatch.setattr(Path, "replace", noted_replace)
    save(tmp_path / "a", b"12345")
    assert steps == ["fsync 5", "replace", "fsync folder"]


@pytest.mark.parametrize(
    ("name", "sentence"),
    [
        ("none/a", "there is no folder `{folder}` to write it to"),
        ("a/b", "the file cannot be written: a part of the path is not a folder"),
        ("x" * 300, "the file cannot be written: the name is too long"),
        (".", "the file cannot be written: this is a folder"),
        ("a\0", "there can be no file of this name"),
    ],
)
def test_sentences(tmp_path: Path, name: str, sentence: str) -> None:
    (tmp_path / "a").write_bytes(b"old")
    with pytest.raises(Problem) as caught:
        save(tmp_path / name, b"new")
    assert caught.value.message == sentence.format(folder=tmp_path / "none")
    assert caught.value.place == str(tmp_path / name).replace("\0", "\N{REPLACEMENT CHARACTER}")


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="root may write everything")
def test_files_and_folders_that_may_not_be_written(tmp_path: Path) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"old")
    path.chmod(0o444)
    with pytest.raises(Problem, match="there is no permission"):
        save(path, b"new")
    tmp_path.chmod(0o555)
    try:
        with pytest.raises(Problem, match="there is no permission"):
            save(tmp_path / "b", b"new")
    finally:
        tmp_path.chmod(0o755)


def test_a_file_set_read_only_is_left_alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"old")
    monkeypatch.setattr(os, "access", lambda *_: False)
    with pytest.raises(Problem, match="there is no permission"):
        save(path, b"new")
    assert path.read_bytes() == b"old"


def test_errors_without_words_of_ours_have_the_systems() -> None:
    assert in_words(OSError(errno.EMFILE, "Too many open files")) == "too many open files"
    assert in_words(OSError()) == "unknown reason"
