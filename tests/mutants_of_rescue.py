"""Mutants of the sums of a bush; run by `mutants`."""

from __future__ import annotations

from tests.mutant import Mutant

RESCUE = (
    Mutant(
        "a bush as stiff as a solid shaft",
        "planning/rescue/bush_sums.py",
        "f.work, f.mandrel, s.as_pressed)",
        "f.work, f.mandrel)",
    ),
    Mutant(
        "the largest bush in the largest hub",
        "planning/rescue/bush_sums.py",
        "return shaft.lower - hole.upper, shaft.upper - hole.lower",
        "return shaft.lower - hole.lower, shaft.upper - hole.upper",
    ),
    Mutant(
        "a bush that closes on radius only",
        "planning/rescue/bush_sums.py",
        "return 2 * pressed * self.sizes.as_pressed",
        "return pressed * self.sizes.as_pressed",
    ),
    Mutant(
        "a bush that yields at twice its pressure",
        "planning/rescue/bush_sums.py",
        "return self.bush_yield * (1 - self.ratio**2) / 2",
        "return self.bush_yield * (1 - self.ratio**2)",
    ),
    Mutant(
        "the tightest fit first",
        "planning/rescue/bush_sums.py",
        'FITS = ("p6", "r6", "s6")',
        'FITS = ("s6", "r6", "p6")',
    ),
    Mutant(
        "a keyway that is never bored away",
        "planning/rescue/reaming.py",
        "return replace(keyway, depth=keyway.depth - by)",
        "return keyway",
    ),
    Mutant(
        "a wall of the bush on one side",
        "planning/rescue/bush_sums.py",
        "wanted.high + 2 * wall)",
        "wanted.high + wall)",
    ),
)
