"""The first hold of a casting that is still to be bored: what to set true, where the jaws go, in
which order. Never says that the casting is sound: only metal that has been cut into shows."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.records import Caution, Figure, Step, Verdict
from borewright.quantities.si import Metre


@dataclass(frozen=True, slots=True)
class JawPlace:
    """Where the jaws take hold: `start` to `end` from face A, at this diameter.

    `on`: boss, inside of the rim, or outside. `opened`: the jaws bear outwards. `face_out`: the
    face that stands away from the chuck.
    """

    on: str
    start: Metre
    end: Metre
    diameter: Metre
    opened: bool
    face_out: str

    @property
    def bite(self) -> Metre:
        """Length (m) that the jaws bear on.

        >>> round(JawPlace("boss", 0.0, 0.01, 0.05, False, "B").bite, 3)
        0.01
        """
        return self.end - self.start


@dataclass(frozen=True, slots=True)
class FirstHold:
    """How the casting is held first. `jaws` and `steps` are left out where its bore is finished.

    `when`: how it stands with the bore, as far as stated.
    `cleans_up`: whether the stock on the outside takes up its throw and its skin; None where the
    throw, or the size to finish at, was not stated.
    """

    when: str
    set_true_to: str
    why: str
    set_by: str
    held_by: str
    jaws: JawPlace | None
    cleans_up: Verdict | None
    clean_up: str
    steps: tuple[Step, ...]
    cautions: tuple[Caution, ...]
    figures: tuple[Figure, ...]
    sources: tuple[str, ...]
