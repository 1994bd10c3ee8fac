"""A bore on a mandrel as two elastic bodies: pressure along the bore, and what follows from it.

The true revolved outline and the mandrel's own ends count; friction while pressing does not. On a
steel mandrel at a friction of 0.12 it changes the normal force to something between 5 % less and
4 % more while it is pushed, and leaves it up to 1.5 % less once nothing pushes. Measured by
CalculiX on bores 1.5 long, the work pushed evenly on its far face, the mandrel resting on its large
end: an iron ring of 2.5 bores 0.7 % more gripped whole and 3.1 % more gripped half, a thin bush in
aluminium 4.5 % less. The push squeezes both along: the mandrel swells into the bore, the work away
from it. A mandrel drawn by its small end is stretched instead: 4.1 % less on the whole ring.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np

from borewright.mechanics.compliance import Compliance, bore_tension, largest_tension
from borewright.mechanics.contact import pressed
from borewright.mechanics.num import Floats
from borewright.mechanics.revolved import Revolved, revolved
from borewright.mechanics.rings import Elastic
from borewright.mechanics.travel_curve import contact_length
from borewright.quantities.si import Metre, Newton, Pascal, Ratio
from borewright.shapes.find import mandrel_shape, work_shape

Piece = tuple[Metre, Metre, Metre, Metre | None]


@dataclass(frozen=True, slots=True, eq=False)
class Joint:
    """Work and mandrel under one set of strips, `bore` wide (m).

    `body` is the work's outline over d, `poisson` its ratio, `modulus` (Pa) its modulus, `ratio`
    that over the mandrel's, `hole` the mandrel's own bore over d.
    """

    work: Compliance
    bar: Compliance
    body: Revolved
    poisson: Ratio
    bore: Metre
    modulus: Pascal
    ratio: Ratio
    hole: Ratio

    @property
    def healed(self) -> bool:
        """Whether edges of the outline were so near to each other that they were taken as one."""
        return self.body.healed

    @property
    def places(self) -> Floats:
        """Middle of every strip (m) along z."""
        return self.work.middles * self.bore

    def gives(self, ratio: Ratio | None = None) -> Floats:
        """Both bodies together (n, n), for loads p h / (E d) of the work's modulus."""
        return np.asarray(
            self.work.gives + (self.ratio if ratio is None else ratio) * self.bar.gives
        )

    def pressure(self, overlap: Floats) -> Floats:
        """Pressure (Pa) of every strip for an overlap on diameter (m) at `places`."""
        loads = pressed(self.gives(), overlap / (2 * self.bore))
        return loads * self.modulus / self.work.lengths

    def normal_force(self, pressure: Floats) -> Newton:
        """All of the pressure round the bore (N)."""
        return float(np.pi * self.bore**2 * (pressure @ self.work.lengths))

    def contact_length(self, overlap: Floats) -> Metre:
        """Length of bore (m) that presses at this overlap, its end found inside the last strip."""
        gives, half = self.gives(), overlap / (2 * self.bore)
        return contact_length(self.work, gives, half, pressed(gives, half)) * self.bore

    def bore_tension(self, pressure: Floats, first: float, last: float) -> Pascal:
        """Greatest hoop tension (Pa) at the bore between two shares of its length."""
        return float(bore_tension(self.work, pressure, first, last))

    def largest_tension(self, pressure: Floats) -> Pascal:
        """Greatest principal tension (Pa) anywhere, sharp edges left to their radius."""
        return float(largest_tension(self.work, pressure))

    def growth(self, pressure: Floats) -> Metre:
        """How much the outside grows (m on diameter), where it grows most."""
        return float((self.work.growth @ pressure).max() * 2 * self.bore / self.modulus)


def outline_of(pieces: Iterable[Piece], bore: Metre) -> Revolved:
    """The outline over its bore. OutsideModel for one that is no single body with a bore."""
    return revolved(
        [
            (start / bore, end / bore, (inside or bore) / bore / 2, out / bore / 2)
            for start, end, out, inside in pieces
        ]
    )


def joint(
    pieces: Sequence[Piece],
    bore: Metre,
    work: Elastic,
    mandrel: Elastic,
    stands_out: tuple[Metre, Metre],
    hole: Metre = 0.0,
) -> Joint:
    """The joint of one work on one mandrel; moduli and Poisson's ratios are single numbers here.

    `stands_out`: how far (m) the mandrel goes on past the leading face and past the far one;
    `hole`: diameter (m) of the mandrel's own bore. OutsideModel for an outline that is no body.
    """
    body = outline_of(pieces, bore)
    shape = work_shape(body, float(work.poisson))
    out = max(0.0, stands_out[0] / bore), max(0.0, stands_out[1] / bore)
    bar = mandrel_shape(shape.strips, float(mandrel.poisson), out, hole / bore / 2)
    modulus = float(np.atleast_1d(work.modulus)[0])
    ratio = modulus / float(np.atleast_1d(mandrel.modulus)[0])
    return Joint(shape, bar, body, float(work.poisson), bore, modulus, ratio, hole / bore)
