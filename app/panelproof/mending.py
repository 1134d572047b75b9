"""Carrying out every remedy that proves to be safe, one after the other, and telling what is left.

A remedy is kept where, proved again, its finding is gone and nothing worse has come: no fault or caution of a kind
and place that was not there, and none that now concerns more pixels. Else it is undone.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass

from panelproof.layout.checking import problems
from panelproof.layout.document import Layout
from panelproof.material import Material, gather
from panelproof.problem import Problem
from panelproof.proof.finding import Finding
from panelproof.proof.mending import changed
from panelproof.verdict import Verdict, verdict

Key = tuple[str, str, str, str, str]
BY_HAND = "no remedy can be computed; change it by hand"


@dataclass(frozen=True, slots=True)
class Left:
    """A fault or caution that is left, and why."""

    finding: Finding
    reason: str


@dataclass(frozen=True, slots=True)
class Mended:
    """A layout after mending: its material, the findings whose remedies were carried out, in order, and what is left."""

    material: Material
    done: tuple[Finding, ...]
    left: tuple[Left, ...]

    @property
    def layout(self) -> Layout:
        """The layout after mending."""
        return self.material.layout


def mend(material: Material, step: Callable[[str], None] = lambda _: None) -> Mended:
    """Carry out the remedies of faults and cautions that are safe; the material given stays as it is.

    Notes are left alone: there is nothing to mend. What a part accepts is not mended either. `step` is told each
    remedy before it is tried; it may raise to cancel.
    """
    now, done = verdict(material), []
    refused: dict[tuple[Key, str], str] = {}
    while True:
        for finding in _serious(now):
            if finding.remedy is None or not finding.remedy.changes:
                continue
            tried = _key(finding), finding.remedy.sentence
            if tried in refused:
                continue
            step(finding.remedy.sentence)
            after = attempt(material, now, finding)
            if isinstance(after, str):
                refused[tried] = after
                continue
            material, now = after
            done.append(finding)
            # What could not be done before may be possible now.
            refused.clear()
            break
        else:
            left = tuple(Left(finding, _reason(finding, refused)) for finding in _serious(now))
            return Mended(material, tuple(done), left)


def _serious(found: Verdict) -> tuple[Finding, ...]:
    return tuple(finding for finding in found.findings if finding.level != "note")


def _key(finding: Finding) -> Key:
    return finding.rule, finding.level, finding.screen, finding.part, finding.other


def _reason(finding: Finding, refused: dict[tuple[Key, str], str]) -> str:
    if finding.remedy is None:
        return BY_HAND
    if not finding.remedy.changes:
        return f"by hand: {finding.remedy.sentence}"
    return f"`{finding.remedy.sentence}` {refused[_key(finding), finding.remedy.sentence]}"


def attempt(material: Material, before: Verdict, finding: Finding) -> tuple[Material, Verdict] | str:
    """Carry out one remedy and prove again: the material and its verdict, or why it was undone."""
    assert finding.remedy is not None
    try:
        layout = changed(material.layout, finding.screen, finding.remedy.changes)
        wrong = problems(layout)
        if wrong:
            return f"was undone: {wrong[0].message}"
        made = gather(layout, material.folder)
    except Problem as problem:
        return f"was undone: {problem.message}"
    after = verdict(made)
    old, new = _counted(_serious(before)), _counted(_serious(after))
    if new.get(_key(finding), (0, 0))[0] >= old[_key(finding)][0]:
        return "was undone: it did not end the finding"
    for worse in _serious(after):
        times, pixels = old.get(_key(worse), (0, 0))
        if new[_key(worse)][0] > times:
            return f"was undone: it would bring another {worse.level}, {worse.rule} of {_place(worse)}: {worse.message}"
        if new[_key(worse)][1] > pixels:
            return f"was undone: it would make another {worse.level} worse, {worse.rule} of {_place(worse)}"
    return made, after


def _place(finding: Finding) -> str:
    return " / ".join(filter(None, (finding.screen, finding.part))) or "the layout"


def _counted(found: Iterable[Finding]) -> dict[Key, tuple[int, int]]:
    """Return, by kind and place, how many findings there are and how many pixels they concern in all."""
    times, pixels = Counter[Key](), Counter[Key]()
    for finding in found:
        times[_key(finding)] += 1
        pixels[_key(finding)] += finding.count
    return {key: (times[key], pixels[key]) for key in times}
