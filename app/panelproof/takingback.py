"""The command `adopt`."""

from __future__ import annotations

import subprocess
import sys
from argparse import Namespace
from hashlib import sha256
from pathlib import Path

from panelproof.adopting import Adoption, Slot, Value, made_from
from panelproof.adopting import adopt as taken
from panelproof.command import CLEAN, FAULTY
from panelproof.layout.document import Layout
from panelproof.layout.reading import parse, read
from panelproof.layout.saving import in_words
from panelproof.layout.writing import encode, write
from panelproof.material import Material, gather
from panelproof.problem import Problem
from panelproof.proof.words import counted

MOST_REVISIONS = 500


def adopt(options: Namespace) -> int:
    """Take a header's values back, prove the outcome, and write it where nothing is in doubt."""
    from panelproof import report  # noqa: PLC0415
    from panelproof.tasks import load  # noqa: PLC0415 - which knows this command
    from panelproof.verdict import verdict  # noqa: PLC0415

    path: Path = options.layout
    material = load(path)
    text = _text(options.header)
    base = _base(material, text, options)
    try:
        found = taken(material, text, base, prefer_header=options.despite_conflicts)
        adopted = gather(found.layout, path.parent)
    except Problem as problem:
        place = ": ".join(filter(None, (str(options.header), problem.place)))
        raise Problem(problem.message, place) from None
    for line in _told(found, settled=options.despite_conflicts):
        print(line)
    held = bool(found.conflicts) and not options.despite_conflicts
    proof = verdict(adopted)
    if found.changes:
        print(report.as_text(path, adopted, proof))
    if not found.changes and not found.conflicts:
        print(f"{options.header}: nothing to take back")
    elif held:
        print(
            f"panelproof: nothing was written: {counted(len(found.conflicts), 'value')} changed on both sides;"
            " settle each in the layout or the header, or take all of the header's by --despite-conflicts",
            file=sys.stderr,
        )
    elif options.dry_run:
        print("nothing was written, as --dry-run says")
    elif found.changes:
        write(found.layout, path)
        print(f"wrote {path}; export the header anew")
    return FAULTY if held or found.refused or (found.changes and proof.faulty) else CLEAN


def _text(path: Path) -> str:
    try:
        return path.read_bytes().decode()
    except OSError as error:
        raise Problem(f"the header cannot be read: {in_words(error)}", str(path)) from None
    except UnicodeDecodeError:
        raise Problem("this is no header of Panelproof: it is not UTF-8 text", str(path)) from None


def _shown(value: Value, slot: Slot) -> str:
    if slot.kind == "colour" and isinstance(value, int):
        return f"0x{value:04X}"
    return str(value) if isinstance(value, int) else f"`{value}`"


def _told(found: Adoption, *, settled: bool) -> list[str]:
    lines = []
    for change in found.changes:
        old, new = (_shown(value, change.slot) for value in (change.old, change.new))
        lines.append(f"{change.slot.where} {old} → {new}  ({change.constant})")
    for one in found.conflicts:
        both = f"{_shown(one.header, one.slot)} in the header, {_shown(one.layout, one.slot)} in the layout"
        since = f", {_shown(one.base, one.slot)} when the header was made" if one.base is not None else ""
        unknown = "" if one.base is not None else "; which of the two changed is not known"
        end = "; the header's was taken" if settled else ""
        lines.append(f"conflict: {one.slot.where}: {both}{since}{unknown}{end}  ({one.constant})")
    return lines + [f"not taken back: {reason}" for reason in found.refused]


# -- the layout as it was when the header was made ---------------------------------------------------------------


def _digest(layout: Layout) -> str:
    return sha256(encode(layout)).hexdigest()


def _base(material: Material, text: str, options: Namespace) -> Material | None:
    wanted = made_from(text)
    if wanted is None or wanted == _digest(material.layout):
        return None
    if options.base is not None:
        layout = read(options.base)
        if _digest(layout) != wanted:
            raise Problem(
                "this is not the layout that the header was made from: its digest is another",
                str(options.base),
            )
        return gather(layout, options.layout.parent)
    found = _in_git(options.layout, wanted)
    return None if found is None else gather(found, options.layout.parent)


def _in_git(path: Path, wanted: str) -> Layout | None:
    """Return the revision of a layout that has the digest, from the git repository it lies in; None where there is none."""
    folder, name = str(path.absolute().parent), path.name
    for revision in _git(folder, "log", f"-{MOST_REVISIONS}", "--format=%H", "--", name).decode().split():
        try:
            layout = parse(_git(folder, "show", f"{revision}:./{name}"))
        except Problem:
            continue
        if _digest(layout) == wanted:
            return layout
    return None


def _git(folder: str, *words: str) -> bytes:
    try:
        done = subprocess.run(["git", "-C", folder, *words], capture_output=True, check=False, timeout=20)
    except (OSError, subprocess.TimeoutExpired):
        return b""
    return done.stdout if done.returncode == 0 else b""
