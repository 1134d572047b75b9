"""The command `sheet`."""

from __future__ import annotations

from argparse import Namespace
from pathlib import Path

from panelproof.command import CLEAN
from panelproof.layout.saving import save
from panelproof.outputs import check_apart
from panelproof.problem import Problem

KINDS = (".pdf", ".html")


def sheet(options: Namespace) -> int:
    """Write the sheet of a layout: the file named, or both kinds beside the layout."""
    from panelproof.tasks import load  # noqa: PLC0415 - which knows this command

    outputs = _outputs(options.output, options.layout)
    check_apart(options.output, options.layout)
    material = load(options.layout)
    if not material.layout.screens:
        raise Problem("the layout has no screen, so there is nothing to print", f"{options.layout}: screens")
    from panelproof.paper.facts import gather  # noqa: PLC0415

    try:
        facts = gather(material)
    except Problem as problem:
        raise Problem(problem.message, f"{options.layout}: {problem.place}") from None
    for path in outputs:
        if path.suffix.lower() == ".pdf":
            from panelproof.paper.pdf import document  # noqa: PLC0415 - slow, and only used here

            save(path, document(facts, options.paper))
        else:
            from panelproof.paper.html import page  # noqa: PLC0415

            save(path, page(facts).encode())
        print(f"wrote {path}")
    return CLEAN


def _outputs(output: Path | None, layout: Path) -> list[Path]:
    if output is None:
        name = layout.name.removesuffix(".json").removesuffix(".panel")
        return [layout.parent / f"{name}{kind}" for kind in KINDS]
    if output.suffix.lower() not in (*KINDS, ".htm"):
        raise Problem("a sheet's name ends in .pdf or .html", str(output))
    return [output]
