"""What a photograph of the glass shows, part by part, with the tolerance that a photograph asks for."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal

import numpy as np
from numpy.typing import NDArray

from panelproof.device.capture import picture
from panelproof.device.scene import Chosen, Scene
from panelproof.device.straighten import FINE, Corners, Picture, corners_of, straightened, tools
from panelproof.ink.mask import Area
from panelproof.layout.document import Screen
from panelproof.layout.panel import Panel
from panelproof.layout.saving import in_words
from panelproof.material import Material
from panelproof.picture.drawing import common
from panelproof.picture.frame import Frame
from panelproof.picture.image import pixels
from panelproof.picture.values import Values
from panelproof.problem import Problem
from panelproof.proof.words import counted

if TYPE_CHECKING:
    from PIL.Image import Image

Field_ = NDArray[np.float32]
State = Literal["right", "differs", "unclear"]

GREATEST_BYTES = 64 << 20
# Blurs of the camera that are tried, in panel pixels.
BLURS = (0.35, 0.6, 0.9, 1.3, 1.8, 2.5)
# The eye that looks for what is wrong: blots of about this many panel pixels, with at least this share of a part's
# contrast, and this many times what noise makes of it.
EYE, WIDE, TIMES_NOISE, LEAST_CONTRAST = 0.9, 6.0, 7.0, 0.01
LEAST_SHARE, LEAST_SHARE_OF_BOX = 0.25, 0.38
# How far a part may lie off, in fine pixels, as lenses bend; and how stiffly it keeps its place.
SLACK, STIFF = 2, 1e-3
TRIMMED, ROUNDS, MOST_FITTED, LEAST_MIXED = 0.9, 4, 20000, 0.01
RIM, MARGIN, REACH = 2, 6, 3


@dataclass(frozen=True, slots=True)
class Seen:
    """One part in the photograph; `share` is the greatest blot that should not be there, as a share of its contrast."""

    name: str
    kind: str
    state: State
    share: float
    area: Area


@dataclass(frozen=True, slots=True, eq=False)
class PhotoOutcome:
    """The parts, where the glass was found, the glass straightened, and as the camera should have seen it."""

    parts: tuple[Seen, ...]
    corners: Corners
    straight: Picture
    should: Picture

    @property
    def same(self) -> bool:
        """Whether no part is seen to differ."""
        return all(part.state != "differs" for part in self.parts)


def compare(
    material: Material,
    screen: Screen,
    values: Values,
    path: Path,
    corners: list[tuple[float, float]] | None = None,
) -> PhotoOutcome:
    """Hold a photograph against a screen with its values.

    Raises Problem where the file is no picture, the glass is not found in it, or OpenCV is not installed.
    """
    tools()
    try:
        with path.open("rb") as file:
            data = file.read(GREATEST_BYTES + 1)
        if len(data) > GREATEST_BYTES:
            raise Problem("the photograph is larger than 64 MiB; make it smaller")
        photo = (picture(data) / 255).astype(np.float32)
        return judged(Scene(material, screen, values), photo, corners_of(corners))
    except OSError as error:
        raise Problem(f"the photograph cannot be read: {in_words(error)}", str(path)) from None
    except Problem as problem:
        raise Problem(problem.message, str(path)) from None


def judged(scene: Scene, photo: Picture, corners: Corners | None) -> PhotoOutcome:
    """Return what a photograph, [height, width, 3] of 0 to 1, shows of a scene."""
    should = _shown(scene, scene.expected)
    straight, found = straightened(photo, should, corners)
    model = _Camera(scene, straight, should)
    parts = _blamed(scene, tuple(model.seen(number) for number in range(len(scene.screen.parts))))
    return PhotoOutcome(parts, found, straight, srgb(model.should))


def _shown(scene: Scene, codes: NDArray[np.uint16]) -> Picture:
    frame = Frame(scene.panel.width, scene.panel.height, codes)
    return (pixels(frame, scene.panel) / 255).astype(np.float32)


def _blamed(scene: Scene, parts: tuple[Seen, ...]) -> tuple[Seen, ...]:
    """Return the parts, no box blamed for what stands on it: a text that is moved leaves its own place for the box's."""
    wrong = [
        part for number, part in enumerate(parts) if part.state == "differs" and not scene.is_fill(number)
    ]
    return tuple(
        replace(part, state="unclear")
        if part.state == "differs"
        and scene.is_fill(number)
        and any(all(common(part.area, other.area)[2:]) for other in wrong)
        else part
        for number, part in enumerate(parts)
    )


class _Camera:
    """What the camera made of the glass: blurred, of its own exposure and white balance, darker at the edges.

    All in linear light. Each channel of the photograph is fitted as the channel that it should show, times a surface of
    second order, one more such surface for stray light, and a little of the other two channels; the worst tenth of the
    pixels does not count, as parts may differ.
    """

    def __init__(self, scene: Scene, straight: Picture, should: Picture) -> None:
        self.cv2: Any = tools()
        self.scene, self.straight = scene, linear(straight)
        self.fine = self._enlarged(linear(should))
        # At the rim light from beside the glass mixes in.
        inner = ~_grown(~np.pad(scene.visible, 1), RIM)[1:-1, 1:-1]
        self.visible = self._enlarged(inner.astype(np.float32)) > 0.5
        height, width = self.fine.shape[:2]
        y, x = np.mgrid[-1 : 1 : height * 1j, -1 : 1 : width * 1j]
        self._surface = np.stack([np.ones_like(x), x, y, x * x, x * y, y * y], axis=-1).astype(np.float32)
        places = np.flatnonzero(self.visible.ravel())
        self._chosen = np.random.default_rng(0).choice(places, min(MOST_FITTED, places.size), replace=False)
        fits = {blur: self._fitted(blur) for blur in BLURS}
        blur = min(BLURS, key=lambda one: fits[one][0])
        self._weights = fits[blur][1]
        self.should = self._made(self._blurred(self.fine, blur), np.s_[:, :])
        self.noise = self._noise()

    def _enlarged(self, piece: NDArray[Any]) -> NDArray[np.float32]:
        made = self.cv2.resize(piece, None, fx=FINE, fy=FINE, interpolation=self.cv2.INTER_NEAREST)
        return np.asarray(made, dtype=np.float32)

    def _blurred(self, piece: NDArray[np.float32], size: float) -> NDArray[np.float32]:
        return np.asarray(self.cv2.GaussianBlur(piece, (0, 0), size * FINE), dtype=np.float32)

    def _terms(
        self, surface: NDArray[np.float32], channels: NDArray[np.float32], which: int
    ) -> NDArray[np.float64]:
        """Return the terms of the fit of one channel, [pixels, terms], for pixels in a row."""
        own = channels[:, which : which + 1]
        others = [channels[:, number : number + 1] - own for number in range(3) if number != which]
        return np.concatenate([surface, surface * own, *others], axis=1).astype(np.float64)

    def _fitted(self, blur: float) -> tuple[float, list[NDArray[np.float64]]]:
        """Fit the camera for a blur; return how badly it fits, and the weights of each channel's terms."""
        blurred = self._blurred(self.fine, blur).reshape(-1, 3)[self._chosen]
        surface = self._surface.reshape(-1, 6)[self._chosen]
        wanted = self.straight.reshape(-1, 3)[self._chosen].astype(np.float64)
        terms = [self._terms(surface, blurred, channel) for channel in range(3)]
        kept = np.ones(len(wanted), dtype=np.bool_)
        # Colours are seldom enough to tell what one channel gives to another: as little as fits.
        stiff = np.diag([1e-5] * 12 + [LEAST_MIXED] * 2) * len(wanted)
        weights, off = [], np.zeros(len(wanted))
        for _ in range(ROUNDS):
            weights = [
                np.linalg.solve(rows[kept].T @ rows[kept] + stiff, rows[kept].T @ wanted[kept, channel])
                for channel, rows in enumerate(terms)
            ]
            fits = np.stack([rows @ weight for rows, weight in zip(terms, weights, strict=True)], axis=1)
            off = np.abs(fits - wanted).sum(axis=1)
            kept = np.asarray(off <= np.quantile(off, TRIMMED))
        return float(off[kept].mean()), weights

    def _made(self, fine: Picture, piece: Any) -> Picture:
        """Return what the camera would have seen of a piece of a picture of the glass."""
        surface, channels = self._surface[piece].reshape(-1, 6), fine.reshape(-1, 3)
        made = [self._terms(surface, channels, which) @ self._weights[which] for which in range(3)]
        return np.stack(made, axis=1).reshape(fine.shape).astype(np.float32)

    def _noise(self) -> float:
        """Return what noise alone makes the eye see: half of all pixels are off by less than two thirds of it."""
        eyed = self._eyed(self.straight - self.should, EYE)[self.visible]
        return float(np.median(np.abs(eyed - np.median(eyed, axis=0)), axis=0).max()) * 1.4826

    def seen(self, number: int) -> Seen:
        """Judge one part."""
        scene, part = self.scene, self.scene.screen.parts[number]
        area = scene.box(number, MARGIN)
        kind = type(part).__name__.lower()
        x, y, width, height = (edge * FINE for edge in area)
        piece = np.s_[y : y + height, x : x + width]
        own = scene.mine(number)
        if scene.is_fill(number):
            # What is wrong at the edge of a text is the text's, not that of the box under it.
            own = own & ~_grown(scene.foreign(number), 3)
        else:
            # What stands beside a text on bare ground is most likely the text's.
            own = own | (_grown(own, REACH) & ~scene.foreign(number))
        mine = (self._enlarged(_grown(own, 1).astype(np.float32)) > 0.5)[piece] & self.visible[piece]
        contrast = self._contrast(number, piece, mine)
        if not mine.any() or contrast < max(LEAST_CONTRAST, 3 * self.noise):
            return Seen(part.name, kind, "unclear", 0.0, area)
        # Nothing small goes wrong with a plain surface.
        blot = self._blot(piece, mine, EYE * (3 if scene.is_fill(number) else 1))
        share = LEAST_SHARE_OF_BOX if scene.is_fill(number) else LEAST_SHARE
        differs = blot > share * contrast and blot > TIMES_NOISE * self.noise
        return Seen(part.name, kind, "differs" if differs else "right", blot / contrast, area)

    def _contrast(self, number: int, piece: Any, mine: Chosen) -> float:
        """Return how much a part stands out from what lies under it, in the photograph's values."""
        bare = self._enlarged(linear(_shown(self.scene, self._bare(number))))[piece]
        apart = np.linalg.norm(self._made(self.fine[piece], piece) - self._made(bare, piece), axis=2)[mine]
        apart = apart[apart > 1e-4]
        return float(np.quantile(apart, 0.9)) if apart.size else 0.0

    def _bare(self, number: int) -> NDArray[np.uint16]:
        part, codes = self.scene.screen.parts[number], self.scene.expected.copy()
        ground = getattr(part, "ground", None) or self.scene.screen.ground
        codes[self.scene.mine(number)] = self.scene.material.code(ground)
        return codes

    def _blot(self, piece: Any, mine: Chosen, eye: float) -> float:
        """Return the greatest blot in a part, once it is moved and blurred a little so that it fits best."""
        rows, columns = piece
        wide = np.pad(self.should, ((SLACK, SLACK), (SLACK, SLACK), (0, 0)), mode="edge")
        moved = [
            wide[rows.start + dy : rows.stop + dy, columns.start + dx : columns.stop + dx]
            for dy in range(2 * SLACK + 1)
            for dx in range(2 * SLACK + 1)
        ]
        straight = self.straight[piece]
        flat = [np.eye(3, dtype=np.float32)[channel] * np.ones_like(straight) for channel in range(3)]
        terms = np.stack([one[mine].ravel() for one in (*moved, *flat)], axis=1).astype(np.float64)
        middle = np.zeros(terms.shape[1])
        middle[len(moved) // 2] = 1.0
        goal = straight[mine].ravel() - terms @ middle
        power = float((terms[:, len(moved) // 2] ** 2).sum()) + 1e-9
        ridge = STIFF * power * np.eye(terms.shape[1])
        weights = middle + np.linalg.solve(terms.T @ terms + ridge, terms.T @ goal)
        should = sum(weight * one for weight, one in zip(weights, (*moved, *flat), strict=True))
        # What is wrong beside the part must not shine into it.
        off = np.ascontiguousarray((straight - should) * mine[..., None], dtype=np.float32)
        return float(np.linalg.norm(self._eyed(off, eye), axis=2)[mine].max())

    def _eyed(self, off: Picture, eye: float) -> Picture:
        """Return what the eye sees of what is off: blots, but no shine that lies over a wide piece of the glass."""
        return self._blurred(off, eye) - self._blurred(off, WIDE)


def linear(seen: Picture) -> Picture:
    """Return sRGB values as linear light (IEC 61966-2-1)."""
    return np.where(seen <= 0.04045, seen / 12.92, ((seen + 0.055) / 1.055) ** 2.4).astype(np.float32)


def srgb(light: Picture) -> Picture:
    """Return linear light as sRGB values."""
    light = np.clip(light, 0, 1)
    return np.where(light <= 0.0031308, light * 12.92, 1.055 * light ** (1 / 2.4) - 0.055).astype(np.float32)


def _grown(chosen: Chosen, by: int) -> Chosen:
    """Return a set of pixels with its neighbours up to a distance, along rows and columns."""
    for _ in range(by):
        grown = chosen.copy()
        grown[1:] |= chosen[:-1]
        grown[:-1] |= chosen[1:]
        grown[:, 1:] |= chosen[:, :-1]
        grown[:, :-1] |= chosen[:, 1:]
        chosen = grown
    return chosen


# -- told --------------------------------------------------------------------------------------------------------


def as_tree(outcome: PhotoOutcome) -> dict[str, object]:
    """Return the outcome as plain values for JSON."""
    return {
        "same": outcome.same,
        "corners": [list(corner) for corner in outcome.corners],
        "parts": [
            {
                "part": part.name,
                "kind": part.kind,
                "state": part.state,
                "wrong_share": round(part.share, 3),
                "area": list(part.area),
            }
            for part in outcome.parts
        ],
    }


def as_text(shown: str, photo: str, outcome: PhotoOutcome) -> str:
    """Return the outcome in lines; `shown` names the moment."""
    by_state = {
        state: [part.name for part in outcome.parts if part.state == state]
        for state in ("differs", "unclear", "right")
    }
    wrong = by_state["differs"]
    if outcome.same:
        lines = [f"{photo}: as far as a photograph tells, the same as {shown}"]
    else:
        lines = [f"{photo}: not {shown}: {counted(len(wrong), 'part differs', 'parts differ')}"]
        lines.append(f"  differs: {', '.join(wrong)}")
    lines.append(f"  right: {', '.join(by_state['right']) or 'no part'}")
    if by_state["unclear"]:
        lines.append(f"  too faint to tell: {', '.join(by_state['unclear'])}")
    places = " ".join(f"{x:g},{y:g}" for x, y in outcome.corners)
    lines.append(f"  the glass was taken to lie at {places}")
    return "\n".join(lines)


def pictured(outcome: PhotoOutcome, panel: Panel) -> Image:
    """Return the straightened glass, how it should look, and what differs, with rings around the wrong parts."""
    from PIL import Image, ImageDraw  # noqa: PLC0415

    from panelproof.device.differences import page  # noqa: PLC0415
    from panelproof.picture import legend  # noqa: PLC0415

    def bytes_of(piece: Picture) -> NDArray[np.uint8]:
        return (np.clip(piece, 0, 1) * 255).round().astype(np.uint8)

    apart = np.abs(outcome.straight - outcome.should).max(axis=2, keepdims=True)
    marked = outcome.straight * 0.4 + apart * np.array([1.0, 0.0, 0.8], dtype=np.float32)
    pieces = [
        ("the glass, straightened", Image.fromarray(bytes_of(outcome.straight))),
        ("as the camera should have seen it", Image.fromarray(bytes_of(outcome.should))),
        ("what differs", Image.fromarray(bytes_of(marked.astype(np.float32)))),
    ]
    pen, words = ImageDraw.Draw(pieces[-1][1]), []
    for number, part in enumerate((one for one in outcome.parts if one.state == "differs"), 1):
        x, y, wide, high = (edge * FINE for edge in part.area)
        legend.ring(pen, (x, y, x + wide - 1, y + high - 1), legend.AMBER)
        legend.tag(pen, (min(x + wide, panel.width * FINE - 20), max(y - 8, 0)), number, legend.AMBER)
        words.append((number, legend.AMBER, f"{part.name} ({part.kind})"))
    whole = page(pieces, [])
    return legend.beneath(whole, [], words, whole.width)
