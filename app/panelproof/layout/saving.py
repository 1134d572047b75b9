"""Writing a file whole or not at all."""

from __future__ import annotations

import errno
import os
import stat
from contextlib import suppress
from pathlib import Path

from panelproof.problem import Problem

_WORDS = {
    errno.ENOENT: "there is no such file or folder",
    errno.ENOTDIR: "a part of the path is not a folder",
    errno.EISDIR: "this is a folder",
    errno.EACCES: "there is no permission",
    errno.EPERM: "there is no permission",
    errno.EROFS: "the disk is read-only",
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "your share of the disk is full",
    errno.EFBIG: "the file would be too large",
    errno.EIO: "the disk does not answer properly",
    errno.ENAMETOOLONG: "the name is too long",
    errno.ELOOP: "the link leads back to itself",
}


def in_words(error: OSError) -> str:
    """Return what went wrong with a file, in words."""
    return _WORDS.get(error.errno or 0, (error.strerror or "unknown reason").lower())


def save(path: Path, data: bytes) -> None:
    """Write a file so that whatever happens either the old or the new content is there, whole.

    The new content is written beside the file, forced to the disk, and put in its place. The permission bits
    of a file that is there are kept, and where `path` is a link, what it leads to is written. Raises Problem,
    with the path as its place, where that is not possible; the old file is then as it was.
    """
    try:
        target = Path(os.path.realpath(path))
        mode = _mode(path)
        if mode is not None and not stat.S_ISREG(mode):
            _save_to_device(path, mode, data)
            return
        if mode is not None and not os.access(target, os.W_OK):
            raise PermissionError(errno.EACCES, "")
        if not target.parent.exists():
            raise Problem(f"there is no folder `{path.parent}` to write it to", str(path))
        _replace(target, mode, data)
    except OSError as error:
        raise Problem(f"the file cannot be written: {in_words(error)}", str(path)) from None
    except ValueError:  # a NUL in the path
        raise Problem(
            "there can be no file of this name", str(path).replace("\0", "\N{REPLACEMENT CHARACTER}")
        ) from None


def _mode(path: Path) -> int | None:
    try:
        return path.stat().st_mode
    except FileNotFoundError:
        return None


def _save_to_device(path: Path, mode: int, data: bytes) -> None:
    # Putting a file in the place of /dev/null or /dev/stdout would take the device away.
    if stat.S_ISDIR(mode):
        raise IsADirectoryError(errno.EISDIR, "")
    with path.open("wb") as device:
        device.write(data)


def _replace(target: Path, mode: int | None, data: bytes) -> None:
    beside = target.parent / f".panelproof-{os.urandom(8).hex()}"
    descriptor = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), 0o666)
    try:
        with open(descriptor, "wb") as file:  # noqa: PTH123 - a descriptor, not a path
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if mode is not None:
            beside.chmod(stat.S_IMODE(mode))
        beside.replace(target)
    except BaseException:
        with suppress(OSError):
            beside.unlink()
        raise
    _settle(target.parent)


def _settle(folder: Path) -> None:
    # The new name itself reaches the disk only with its folder; not every system lets a folder be opened.
    with suppress(OSError):
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)
