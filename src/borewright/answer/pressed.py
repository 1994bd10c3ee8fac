"""What the pressed joint does to the work, as it is drawn and as it is written down.

z runs from the leading face, r from the axis; metres and pascals.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from borewright.answer.records import Assumption, Caution, Verdict
from borewright.quantities.si import Metre, MetrePerMetre, Newton, Pascal

Place: TypeAlias = tuple[float, float]


@dataclass(frozen=True, slots=True)
class TensionBand:
    """One band: from `low` (None: whatever is less) to `high`, and as shares of strength."""

    number: int
    low: Pascal | None
    high: Pascal
    share_low: float | None
    share_high: float


@dataclass(frozen=True, slots=True)
class StripPressure:
    """The pressure on one strip of the bore: no peak flattened, and what is left when they are.

    `z` is the middle of the strip.
    """

    z: Metre
    length: Metre
    pressure: Pascal
    pressure_eased: Pascal


@dataclass(frozen=True, slots=True)
class LargestTension:
    """The greatest principal tension, sharp edges left out: place, value, share of strength."""

    z: Metre
    r: Metre
    tension: Pascal
    share: float


@dataclass(frozen=True, slots=True)
class PressedPicture:
    """The numbers of the picture. `strength`: the tensile one of brittle metal, else the yield."""

    title: str
    units: str
    verdict: Verdict
    headline: str
    material: str
    mandrel: str
    leading_face: str
    bore: Metre
    work_length: Metre
    travel: Metre
    taper: MetrePerMetre
    strength_kind: str
    strength: Pascal
    pressure: tuple[StripPressure, ...]
    contact_from: Metre
    contact_to: Metre
    normal_force: Newton
    normal_force_eased: Newton
    largest: LargestTension
    bands: tuple[TensionBand, ...]
    stop_push: Newton
    notes: tuple[str, ...]
    cautions: tuple[Caution, ...]
    assumed: tuple[Assumption, ...]
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Tinted:
    """The metal at or above `low`: closed outlines (z, r) to fill even-odd, and the lines at `low`.

    The lowest one is all of the metal, and has no lines.
    """

    number: int
    outlines: tuple[tuple[Place, ...], ...]
    lines: tuple[tuple[Place, ...], ...]


@dataclass(frozen=True, slots=True)
class PressedShape:
    """What is drawn and not written down. `tints` rise with the tension.

    `gap`: (z, m on diameter) between bore and mandrel, strip by strip.
    `drawn_to`: the radius where the drawing is broken off, None where all of the work is drawn;
    `beyond`: the greatest tension past it.
    """

    tints: tuple[Tinted, ...]
    gap: tuple[Place, ...]
    drawn_to: Metre | None
    beyond: Pascal = 0.0


@dataclass(frozen=True, slots=True)
class Pictured:
    """The plan's answer, and the picture; `why`: why there is none, in a few words."""

    verdict: Verdict
    headline: str
    picture: PressedPicture | None = None
    shape: PressedShape | None = None
    why: str = ""
