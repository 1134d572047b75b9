"""Whether a device shows what it should, part by part, and what is likely wrong where it does not."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from panelproof.device.capture import Capture
from panelproof.device.mishap import far_fetched, mishaps
from panelproof.device.scene import NOBODY, Chosen, Draw, Scene, bounds
from panelproof.device.whole import Undone, undone
from panelproof.ink.mask import Area
from panelproof.layout.document import Screen
from panelproof.material import Material
from panelproof.picture.frame import Codes, screen_frame
from panelproof.picture.moments import every_moment
from panelproof.picture.values import Values

# A cause of the whole frame that leaves more of the wrong pixels than this is not undone.
LEAST_LEFT = 0.5
GROWN, NEIGHBOUR = 16, 4
MOST_TRIED = 3
MOST_FOR_MOMENT = 2.2
LEAST_FOR_FAR = 12


@dataclass(frozen=True, slots=True)
class Cause:
    """A likely cause in words, and the share (0 to 1) of the pixels that were wrong before that it explains."""

    words: str
    explains: float


@dataclass(frozen=True, slots=True)
class PartOutcome:
    """One part: how many of its pixels differ as captured, where, and the causes once whole causes are undone."""

    name: str
    kind: str
    wrong: int
    area: Area | None
    causes: tuple[Cause, ...] = ()

    @property
    def same(self) -> bool:
        """Whether it is shown as it should be."""
        return self.wrong == 0


@dataclass(frozen=True, slots=True, eq=False)
class Outcome:
    """The outcome: `wrong` pixels of `seen` differ as captured; `left` are still unexplained, within `left_area`.

    `causes` are those of the whole frame. `captured` is the frame as it was read, `codes` the panel's window of it with
    the causes undone, which the parts were judged on, `expected` what it should be.
    """

    parts: tuple[PartOutcome, ...]
    wrong: int
    seen: int
    causes: tuple[Cause, ...]
    left: int
    left_area: Area | None
    captured: Codes
    codes: Codes
    expected: Codes

    @property
    def same(self) -> bool:
        """Whether every pixel is as it should be."""
        return self.wrong == 0


def compare(material: Material, screen: Screen, values: Values, capture: Capture) -> Outcome:
    """Hold a capture against a screen with its values; raises Problem where `values` lacks a part's."""
    scene = Scene(material, screen, values)
    found = list(undone(capture, scene.panel, scene.expected, scene.visible))
    told = _Telling(scene, _plain(scene, found), capture.codes)
    plain = told.plain
    if not told.raw.any():
        return told.outcome(plain)
    if np.unique(capture.codes).size == 1 and np.unique(scene.expected[scene.visible]).size > 1:
        return told.outcome(plain, causes=(Cause("nothing is drawn: the whole glass is one colour", 0.0),))
    counts = [int(np.count_nonzero(one.differing(scene.expected, scene.visible))) for one in found]
    full = [one for one, count in zip(found, counts, strict=True) if count == 0]
    differing = [number for number in np.unique(scene.owners[told.raw]) if number != NOBODY]
    if full:
        best = min(full, key=lambda one: one.cost)
        if len(differing) == 1:
            # One part alone that went wrong is likelier than a whole frame on which it stands alone.
            parts = _Parts(scene, plain)
            if not parts.left.any() and parts.cost <= best.cost:
                return told.outcome(plain, parts)
        return told.outcome(best)
    if len(differing) > 1:
        moment = _another_moment(scene, found)
        if moment is not None:
            return told.outcome(moment[1], causes=(moment[0],))
    return _partly(told, found, counts)


def _plain(scene: Scene, found: list[Undone]) -> Undone:
    """Return the frame as captured; of a frame of another shape no pixel is where it should be."""
    plain = next((one for one in found if not one.words), None)
    return plain or Undone((), 0.0, ~scene.expected, np.ones(scene.expected.shape, dtype=np.bool_))


def _partly(told: _Telling, found: list[Undone], counts: list[int]) -> Outcome:
    """Judge the parts as captured, and with the best causes of the whole frame undone; take what explains most."""
    scene, wrong = told.scene, int(np.count_nonzero(told.raw))
    order = sorted(range(len(found)), key=lambda place: (counts[place], found[place].cost))
    enough = [found[place] for place in order if found[place].words and counts[place] <= wrong * LEAST_LEFT]
    best: tuple[float, Undone, _Parts] | None = None
    for base in (*enough[:MOST_TRIED], told.plain):
        parts = _Parts(scene, base)
        # A frame moved aside hides pixels: what is hidden is not explained.
        hidden = int(np.count_nonzero(~base.known & scene.visible))
        left = int(np.count_nonzero(parts.left))
        amount = left + parts.cost + base.cost + 0.02 * hidden
        if best is None or amount < best[0]:
            best = amount, base, parts
        if base.words and not left:
            break
    assert best is not None
    return told.outcome(best[1], best[2])


def _another_moment(scene: Scene, found: list[Undone]) -> tuple[Cause, Undone] | None:
    """Return the other moment that the glass shows to the pixel, with what was undone; None where there is none."""
    material = scene.material
    best: tuple[float, Cause, Undone] | None = None
    whole = [one for one in found if one.known.all() and one.cost <= MOST_FOR_MOMENT]
    for moment in every_moment(material):
        frame = screen_frame(material, material.screen(moment.screen), moment.values).codes
        for way in whole:
            if (best is None or way.cost < best[0]) and not way.differing(frame, scene.visible).any():
                name = f"{moment.screen}:{moment.name}" if moment.automatic else moment.name
                best = way.cost, Cause(f"it shows the moment `{name}`", 1.0), way
    return None if best is None else (best[1], best[2])


class _Parts:
    """The causes of each part, found on a frame with whole causes undone."""

    def __init__(self, scene: Scene, base: Undone) -> None:
        self.scene, self.base = scene, base
        self.told: dict[int, tuple[Cause, ...]] = {}
        self.cost = 0.0
        self._changes: dict[int, Draw] = {}
        self._before: dict[int, int] = {}
        wrong = base.differing(scene.expected, scene.visible)
        self.left = wrong
        if not wrong.any():
            return
        numbers = [int(number) for number in np.unique(scene.owners[wrong]) if number != NOBODY]
        # Parts that are ground for others last: what stands on them may explain it.
        for number in sorted(numbers, key=lambda one: (scene.is_fill(one), one)):
            self._explain(number)
        self.left = self._differing(self._changes)
        # What is wrong on bare ground may be a neighbour's, drawn too large or too far off.
        for number in range(len(scene.screen.parts)):
            bare = self.left & ((scene.owners == NOBODY) | (scene.owners == number))
            if number not in self.told and _inside(bare, scene.box(number, NEIGHBOUR)).any():
                self._explain(number)
                self.left = self._differing(self._changes)
        for number in numbers:
            self._settle(number)

    def _differing(self, changes: Mapping[int, Draw]) -> Chosen:
        drawn = self.scene.composed(changes)
        return self.base.differing(drawn.codes, self.scene.visible)

    def _explain(self, number: int) -> None:
        scene = self.scene
        area = scene.box(number, GROWN)
        foreign = _inside(scene.foreign(number), area)

        def count(draw: Draw | None) -> tuple[int, int]:
            """Return the wrong pixels around the part that are not another's, and those that are."""
            changes = self._changes if draw is None else {**self._changes, number: draw}
            near = _inside(self._differing(changes), area)
            return int(np.count_nonzero(near & ~foreign)), int(np.count_nonzero(near & foreign))

        before = count(None)
        if not before[0]:
            return
        best, least, chosen = before[0], float(sum(before)), None
        # A few specks are no other text or font.
        far = far_fetched(scene, number) if before[0] >= LEAST_FOR_FAR else ()
        for tries in (mishaps(scene, number, self.base.codes), far):
            if chosen is not None and best == 0:
                break
            for mishap in tries:
                own, theirs = count(mishap.draw)
                # Pixels of a neighbour may be the neighbour's own mishap.
                amount = own + theirs / 16 + mishap.cost
                if amount < least and 1 - own / before[0] >= mishap.least:
                    best, least, chosen = own, amount, mishap
        if chosen is None:
            return
        self._changes[number] = chosen.draw
        self._before[number] = before[0]
        self.told[number] = (Cause(chosen.words, 1 - best / before[0]),)
        self.cost += chosen.cost

    def _settle(self, number: int) -> None:
        """Tell a part's share anew, now that its neighbours are explained."""
        scene = self.scene
        if number not in self.told:
            if not (self.left & scene.mine(number)).any():
                self.told[number] = (Cause("what is wrong there is another part's", 1.0),)
            return
        area = scene.box(number, GROWN)
        own = int(np.count_nonzero(_inside(self.left & ~scene.foreign(number), area)))
        self.told[number] = (Cause(self.told[number][0].words, max(0.0, 1 - own / self._before[number])),)


def _inside(chosen: Chosen, area: Area) -> Chosen:
    """Return the piece of a set of pixels inside an area."""
    x, y, width, height = area
    return chosen[y : y + height, x : x + width]


class _Telling:
    """What all outcomes share: the scene, and what differs in the frame as captured."""

    def __init__(self, scene: Scene, plain: Undone, captured: Codes) -> None:
        self.scene, self.plain, self.captured = scene, plain, captured
        self.raw = plain.differing(scene.expected, scene.visible)

    def outcome(self, base: Undone, parts: _Parts | None = None, causes: tuple[Cause, ...] = ()) -> Outcome:
        """Return the outcome, given what was undone and what was found of the parts, or causes that explain all."""
        scene, wrong = self.scene, int(np.count_nonzero(self.raw))
        straight = base.differing(scene.expected, scene.visible)
        share = 1.0 if causes else 1 - int(np.count_nonzero(straight)) / max(wrong, 1)
        left = parts.left if parts else np.zeros_like(straight) if causes else straight
        told = parts.told if parts else {}
        found = []
        for number, part in enumerate(scene.screen.parts):
            # Where the whole frame is in disorder a part is judged once that is undone.
            mine = (straight if base.words and number in told else self.raw) & scene.mine(number)
            count, kind = int(np.count_nonzero(mine)), type(part).__name__.lower()
            found.append(PartOutcome(part.name, kind, count, bounds(mine), told.get(number, ())))
        return Outcome(
            tuple(found),
            wrong,
            int(np.count_nonzero(scene.visible)),
            (*(Cause(words, share) for words in base.words), *causes),
            int(np.count_nonzero(left)),
            bounds(left),
            self.captured,
            base.codes,
            scene.expected,
        )
