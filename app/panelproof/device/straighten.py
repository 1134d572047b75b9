"""A photograph of the glass, made straight: its corners found or given, then fitted to what it should show."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from types import ModuleType
from typing import Any

import numpy as np
from numpy.typing import NDArray

from panelproof.problem import Problem

Picture = NDArray[np.float32]  # [height, width, 3], sRGB values 0 to 1
Grey = NDArray[np.float32]  # [height, width]
Corners = tuple[tuple[float, float], ...]

GREATEST_SIDE = 1600
# Pixels of the straightened picture for each panel pixel.
FINE = 2
LEAST_ALIKE, GOOD_ALIKE = 0.35, 0.75
LEAST_AREA = 0.02
MOST_QUADRILATERALS = 24


def tools() -> ModuleType:
    """Return OpenCV; raises Problem with what to install where it is missing."""
    try:
        import cv2  # noqa: PLC0415 - an extra
    except ImportError:
        raise Problem(
            "photographs need the package opencv-python-headless: install it, or `panelproof[photo]`"
        ) from None
    return cv2


def straightened(photo: Picture, should: Picture, corners: Corners | None) -> tuple[Picture, Corners]:
    """Return the glass of a photograph, `FINE` pixels a panel pixel, and the corners it was found at.

    `should` is what the glass should show, [panel height, panel width, 3]. Corners go from the upper left clockwise, in
    pixels of the photograph. Raises Problem where the glass is not found.
    """
    cv2 = tools()
    height, width = should.shape[:2]
    fine = cv2.resize(should, None, fx=FINE, fy=FINE, interpolation=cv2.INTER_NEAREST)
    small, scale = _small(cv2, photo)
    view, goal = luma(small), luma(fine)
    if corners is None:
        begin = _found(cv2, view, goal)
    else:
        begin = _matrix(cv2, np.array(corners, dtype=np.float32) * np.float32(scale), width, height)
    matrix = _refined(cv2, view, goal, begin)
    if _alike(cv2, view, goal, matrix) < LEAST_ALIKE:
        if corners is not None:
            raise Problem(
                "what lies between the corners is not like the moment at all; check the corners and their order"
            )
        raise _not_found()
    seen = cv2.warpPerspective(
        small, matrix, (width * FINE, height * FINE), flags=cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP
    )
    box = np.array([[[-0.5, -0.5]], [[width * FINE - 0.5, -0.5]], [[width * FINE - 0.5, height * FINE - 0.5]],
                    [[-0.5, height * FINE - 0.5]]])  # fmt: skip
    found = cv2.perspectiveTransform(box, matrix).reshape(4, 2) / scale
    return seen, tuple((round(float(x), 1), round(float(y), 1)) for x, y in found)


def _not_found() -> Problem:
    return Problem("the glass was not found in the photograph; give its four corners by --corners")


def _small(cv2: Any, photo: Picture) -> tuple[Picture, float]:
    scale = min(1.0, GREATEST_SIDE / max(photo.shape[:2]))
    if scale == 1.0:
        return photo, scale
    return cv2.resize(photo, None, fx=scale, fy=scale, interpolation=cv2.INTER_AREA), scale


def _matrix(cv2: Any, corners: NDArray[np.float32], width: int, height: int) -> NDArray[np.float64]:
    """Return what takes a place in the straightened picture to one in the photograph."""
    right, below = width * FINE - 0.5, height * FINE - 0.5
    box = np.array([[-0.5, -0.5], [right, -0.5], [right, below], [-0.5, below]], dtype=np.float32)
    if abs(cv2.contourArea(corners)) < 16:
        raise Problem(
            "the four corners enclose nothing; give upper left, upper right, lower right, lower left"
        )
    return np.asarray(cv2.getPerspectiveTransform(box, corners), dtype=np.float64)


def luma(picture: Picture) -> Grey:
    """Return the greatest channel of each pixel: what shines in any colour shines."""
    return np.ascontiguousarray(picture.max(axis=2))


def _alike(cv2: Any, view: Grey, goal: Grey, matrix: NDArray[np.float64]) -> float:
    """Return how like what a matrix cuts out of a photograph is to what it should be: -1 to 1; as panel pixels see it."""
    height, width = goal.shape[0] // FINE, goal.shape[1] // FINE
    # From the middle of a panel pixel to that of its fine pixels.
    coarse = matrix @ np.array([[FINE, 0, (FINE - 1) / 2], [0, FINE, (FINE - 1) / 2], [0, 0, 1]])
    flags = cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP
    one = cv2.GaussianBlur(
        cv2.warpPerspective(view, coarse, (width, height), flags=flags, borderValue=0), (0, 0), 1
    )
    other = cv2.GaussianBlur(cv2.resize(goal, (width, height), interpolation=cv2.INTER_AREA), (0, 0), 1)
    one, other = one - one.mean(), other - other.mean()
    size = float(np.sqrt((one * one).sum() * (other * other).sum()))
    return float((one * other).sum()) / size if size > 1e-9 else 0.0


def _found(cv2: Any, view: Grey, goal: Grey) -> NDArray[np.float64]:
    """Return the best guess of where the glass lies: a bright or dark quadrilateral, or where its texts are found."""
    height, width = goal.shape[0] // FINE, goal.shape[1] // FINE
    best: tuple[float, NDArray[np.float64] | None] = (-1.0, None)
    for corners in _quadrilaterals(cv2, view):
        for turn in range(4):
            matrix = _matrix(cv2, np.roll(corners, turn, axis=0), width, height)
            alike = _alike(cv2, view, goal, matrix)
            if alike > best[0]:
                best = alike, matrix
    if best[0] < GOOD_ALIKE:
        matrix_of_texts = _by_texts(cv2, view, goal)
        if matrix_of_texts is not None and _alike(cv2, view, goal, matrix_of_texts) > best[0]:
            return matrix_of_texts
    if best[1] is None:
        raise _not_found()
    return best[1]


def _quadrilaterals(cv2: Any, view: Grey) -> Iterator[NDArray[np.float32]]:
    """Yield the four corners, clockwise, of what stands out from its surroundings, the largest first."""
    grey = cv2.GaussianBlur((view * 255).astype(np.uint8), (0, 0), 2)
    side = max(3, max(grey.shape) // 60) | 1
    kernel = cv2.getStructuringElement(cv2.MORPH_RECT, (side, side))
    otsu, _ = cv2.threshold(grey, 0, 255, cv2.THRESH_BINARY + cv2.THRESH_OTSU)
    levels = {int(otsu), *(int(np.percentile(grey, share)) for share in (20, 35, 50, 65, 80, 90))}
    found: list[tuple[float, NDArray[np.float32]]] = []
    for level, bright in itertools.product(sorted(levels), (True, False)):
        kind = cv2.THRESH_BINARY if bright else cv2.THRESH_BINARY_INV
        _, mask = cv2.threshold(grey, level, 255, kind)
        mask = cv2.morphologyEx(mask, cv2.MORPH_CLOSE, kernel)
        outlines, _ = cv2.findContours(mask, cv2.RETR_LIST, cv2.CHAIN_APPROX_SIMPLE)
        for outline in outlines:
            hull = cv2.convexHull(outline)
            area = float(cv2.contourArea(hull))
            if not LEAST_AREA * grey.size < area < 0.97 * grey.size:
                continue
            for share in (0.02, 0.04, 0.07):
                shape = cv2.approxPolyDP(hull, share * cv2.arcLength(hull, True), True)
                if len(shape) == 4:
                    found.append((area, _clockwise(shape.reshape(4, 2).astype(np.float32))))
                    break
    found.sort(key=lambda one: -one[0])
    kept: list[NDArray[np.float32]] = []
    for _, corners in found:
        if all(np.abs(corners - other).max() > 3 for other in kept):
            kept.append(corners)
    yield from kept[:MOST_QUADRILATERALS]


def _clockwise(corners: NDArray[np.float32]) -> NDArray[np.float32]:
    """Return corners clockwise (y downwards), beginning with the one nearest to the upper left."""
    middle = corners.mean(axis=0)
    order = np.argsort(np.arctan2(corners[:, 1] - middle[1], corners[:, 0] - middle[0]))
    corners = corners[order]
    return np.roll(corners, -int(corners.sum(axis=1).argmin()), axis=0)


def _by_texts(cv2: Any, view: Grey, goal: Grey) -> NDArray[np.float64] | None:
    """Return where the glass lies by matching details of what it should show, where enough of them are found."""
    detector = cv2.SIFT_create(4000)
    views = [cv2.GaussianBlur((one * 255).astype(np.uint8), (0, 0), 1.5) for one in (goal, view)]
    places, marks = zip(*(detector.detectAndCompute(view, None) for view in views), strict=True)
    if any(one is None or len(one) < 8 for one in marks):
        return None
    pairs = cv2.BFMatcher().knnMatch(marks[0], marks[1], k=2)
    good = [
        one
        for one, other in (pair for pair in pairs if len(pair) == 2)
        if one.distance < 0.8 * other.distance
    ]
    if len(good) < 8:
        return None
    here = np.array([places[0][one.queryIdx].pt for one in good], dtype=np.float32)
    there = np.array([places[1][one.trainIdx].pt for one in good], dtype=np.float32)
    matrix, inside = cv2.findHomography(here, there, cv2.RANSAC, 4.0)
    if matrix is None or int(inside.sum()) < 8:
        return None
    return np.asarray(matrix, dtype=np.float64)


def _refined(cv2: Any, view: Grey, goal: Grey, matrix: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return a matrix that fits better, by the enhanced correlation coefficient, from coarse to fine."""
    alike = _alike(cv2, view, goal, matrix)
    for blur in (4.0, 0.8):
        template = cv2.GaussianBlur(goal, (0, 0), blur * FINE)
        ends = (cv2.TERM_CRITERIA_EPS | cv2.TERM_CRITERIA_COUNT, 40, 1e-5)
        try:
            _, found = cv2.findTransformECC(
                template, view, matrix.astype(np.float32), cv2.MOTION_HOMOGRAPHY, ends, None, 5
            )
        except cv2.error:
            continue
        better = _alike(cv2, view, goal, np.asarray(found, dtype=np.float64))
        if better >= alike - 0.005:
            matrix, alike = np.asarray(found, dtype=np.float64), better
    return matrix


def corners_of(words: Sequence[tuple[float, float]] | None) -> Corners | None:
    """Return corners as given, None where they are to be found."""
    return tuple((float(x), float(y)) for x, y in words) if words else None
