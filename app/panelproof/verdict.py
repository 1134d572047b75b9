"""The whole verdict on a layout: what the rules and the cost find, less what its parts accept with a reason."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from panelproof.layout.document import Layout
from panelproof.layout.rulenames import ACCEPTED, OF_SCREENS
from panelproof.material import Material
from panelproof.proof.check import prove
from panelproof.proof.finding import LEVELS, Change, Finding, Remedy


@dataclass(frozen=True, slots=True)
class Accepted:
    """A finding that a part accepts: which part, and its reason."""

    finding: Finding
    part: str
    reason: str


@dataclass(frozen=True, slots=True)
class Verdict:
    """`findings` most serious first, those accepted not among them; `accepted` in the same order."""

    findings: tuple[Finding, ...] = ()
    accepted: tuple[Accepted, ...] = ()

    @property
    def faulty(self) -> bool:
        """Whether some fault is not accepted."""
        return any(finding.level == "fault" for finding in self.findings)

    @property
    def faults(self) -> Verdict:
        """The faults alone."""
        return Verdict(tuple(finding for finding in self.findings if finding.level == "fault"))


def verdict(
    material: Material, progress: Callable[[str], None] = lambda _: None, *, proposing: bool = True
) -> Verdict:
    """Return the verdict on a layout; `progress` and `proposing` as of `proof.check.prove`."""
    found = prove(material, progress, proposing=proposing)
    if material.layout.limits is not None:
        from panelproof.firmware.limits import findings  # noqa: PLC0415 - only where something is limited

        found += tuple(findings(material))
    return judged(material.layout, found)


def judged(layout: Layout, found: Iterable[Finding], screens: Iterable[str] | None = None) -> Verdict:
    """Part findings into those that stand and those that a part accepts.

    A part that accepts a rule accepts each of the rule's findings that names it. An acceptance that accepts nothing is a
    note, on the `screens` given (by default on all): silence stays deliberate.
    """
    reasons = {
        (screen.name, part.name, entry.rule): entry.reason
        for screen in layout.screens
        for part in screen.parts
        for entry in part.accepted
    }
    standing, accepted, used = [], [], set()
    for finding in found:
        keys = [
            key
            for name in (finding.part, finding.other)
            if (key := (finding.screen, name, finding.rule)) in reasons and finding.rule not in OF_SCREENS
        ]
        used.update(keys)
        if keys:
            accepted.append(Accepted(finding, keys[0][1], reasons[keys[0]]))
        else:
            standing.append(finding)
    if reasons.keys() - used:
        among = {screen.name for screen in layout.screens} if screens is None else set(screens)
        standing += [note for note in _idle(layout, used) if note.screen in among]
    standing.sort(key=lambda finding: LEVELS.index(finding.level))
    return Verdict(tuple(standing), tuple(accepted))


def _idle(layout: Layout, used: set[tuple[str, str, str]]) -> Iterator[Finding]:
    for screen in layout.screens:
        for part in screen.parts:
            for entry in part.accepted:
                if (screen.name, part.name, entry.rule) in used:
                    continue
                rest = [{"rule": one.rule, "reason": one.reason} for one in part.accepted if one is not entry]
                yield Finding(
                    ACCEPTED, "note", screen.name, part.name,
                    f"`{entry.rule}` is accepted, but there is nothing to accept",
                    remedy=Remedy(
                        f"take the acceptance of `{entry.rule}` out", (Change(part.name, "accepted", rest),)
                    ),
                )  # fmt: skip
