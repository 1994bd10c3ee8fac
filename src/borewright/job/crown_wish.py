"""The crown that a pulley's face is to get: as stated, and what no pulley can have."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Literal

from borewright.errors.tree import RefusedInput
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

if TYPE_CHECKING:
    from borewright.job.records import Work

STEEPEST_SHARE: Final = 1 / 8
"""Height over face beyond which no rule goes, the oldest included (Kent, from memory)."""

SAME: Final = 1e-9
"""Relative: sizes this close are one."""


@dataclass(frozen=True, slots=True)
class CrownWish:
    """A crown wanted. Neither `height` (on radius) nor `rule`: by the recommended rule.

    `flat`: width left flat in the middle of a double taper.
    """

    height: Metre | None = None
    rule: str = ""
    shape: Literal["taper", "arc"] = "taper"
    flat: Metre = 0.0


@dataclass(frozen=True, slots=True)
class CrownPlaces:
    """What a refusal calls the height and the flat."""

    height: str = "height of the crown"
    flat: str = "flat of the crown"


def check_crown(
    wish: CrownWish,
    diameter: Metre,
    face: Metre,
    units: Literal["inch", "mm"] = "mm",
    at: CrownPlaces | None = None,
) -> None:
    """RefusedInput for a crown that no pulley of this diameter and face has."""
    show, place = Show(units), at or CrownPlaces()
    most = min(STEEPEST_SHARE * face, diameter / 4)
    if wish.height is not None and not 0.0 < wish.height <= most * (1 + SAME):
        limit = f"above 0 to {show.turned(most)}"
        allowed = f"{limit}, an eighth of the face and a quarter of the diameter"
        raise RefusedInput(place.height, show.turned(wish.height), allowed)
    if wish.shape == "arc" and wish.flat > 0.0:
        found = "an arc with a flat in the middle"
        raise RefusedInput(place.flat, found, "a flat with the taper only")
    if wish.flat >= face * (1 - SAME):
        allowed = f"one narrower than the face, {show.length(face)}"
        raise RefusedInput(place.flat, show.length(wish.flat), allowed)


def crowned_face(work: Work) -> Metre:
    """Width (m) of the face that gets the crown: the longest stretch left at the finished outside.

    Rings of the largest outside within the finished length, less the steps turned down in it.
    """
    start, end = crowned_stretch(work)
    return end - start


def crowned_stretch(work: Work) -> tuple[Metre, Metre]:
    """Where that face begins and ends (m) from face A as faced; of no length if there is none."""
    return max(_stretches(work), key=lambda s: s[1] - s[0], default=(0.0, 0.0))


def turned_rings(work: Work) -> list[tuple[Metre, Metre]]:
    """Where metal of the largest outside begins and ends (m), from face A as faced: each face gives
    half of what comes off the length."""
    largest, length = work.outside * (1 - SAME), work.finished.form.length
    whole = work.length if length is None else length
    off = (work.length - whole) / 2
    rings = sorted(
        (max(0.0, p.start - off), min(p.end - off, whole))
        for p in work.pieces
        if p.outside >= largest
    )
    return _joined([(start, end) for start, end in rings if end > start])


def _stretches(work: Work) -> Iterator[tuple[Metre, Metre]]:
    steps = sorted((s.start, s.end) for s in work.finished.form.steps)
    for start, end in turned_rings(work):
        at = start
        for first, last in steps:
            if at < first < end:
                yield at, first
            if first < end and last > at:
                at = max(at, last)
        if at < end:
            yield at, end


def _joined(rings: list[tuple[Metre, Metre]]) -> list[tuple[Metre, Metre]]:
    """Rings that touch, as one."""
    joined: list[tuple[Metre, Metre]] = []
    for start, end in rings:
        if joined and start <= joined[-1][1] * (1 + SAME):
            joined[-1] = (joined[-1][0], max(end, joined[-1][1]))
        else:
            joined.append((start, end))
    return joined
