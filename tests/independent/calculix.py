"""A taper fit solved by CalculiX, and whether it may judge: nothing here comes from the package.

Known trap: on part engagement it can be 3 % off and still end with exit code 0. So a fit is solved
on two meshes and with two contact stiffnesses, and counts only where all three agree.
"""

from __future__ import annotations

import os
import subprocess
from dataclasses import asdict, dataclass
from pathlib import Path

from tests.independent.calculix_deck import Fit, Mesh, bodies, deck
from tests.independent.calculix_read import Found, read
from tests.tools import system_tool

FINE, COARSE = 1.4, 2.0
SOFT, STIFF = 7e2, 2e3
"""Contact stiffness, over the work's modulus for each radius of the bore."""

WITHIN = {"force": 3e-3, "contact": 2e-2, "bore_tension": 1e-2, "tension": 3e-2, "growth": 2e-2}
"""What the package is held to. CalculiX's own runs must agree three times as well."""


@dataclass(frozen=True)
class Judged:
    """The finest answer, and how far the others are from it as a share."""

    found: Found
    apart: dict[str, float]

    @property
    def doubtful(self) -> dict[str, float]:
        """Quantities on which CalculiX does not agree with itself."""
        return {name: share for name, share in self.apart.items() if share > WITHIN[name] / 3}


def end_thought(fit: Fit) -> tuple[float, float] | None:
    """Where contact is likely to end: the overlap ends there, the contact a little sooner."""
    reach = fit.share * fit.length
    part = fit.taper and fit.share < 1.1
    return (max(0.5 * reach, reach - 0.25), min(reach, fit.length)) if part else None


def solved(fit: Fit, scale: float, stiff: float, folder: Path) -> Found:
    """One run. AssertionError where CalculiX fails."""
    mesh = Mesh(scale, stiff, end_thought(fit))
    work, bar = bodies(fit, mesh)
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "fit.inp").write_text(deck(fit, mesh, work, bar))
    run(folder)
    return read(fit, work, bar, folder / "fit.dat")


def run(folder: Path) -> None:
    """CalculiX on `fit.inp` there, one thread."""
    done = subprocess.run(
        [system_tool("ccx"), "fit"],
        cwd=folder,
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "OMP_NUM_THREADS": "1"},
    )
    assert done.returncode == 0, done.stdout[-500:]


def judged(fit: Fit, folder: Path) -> Judged:
    """Two meshes and two stiffnesses; the end of contact also by the pressure."""
    best = solved(fit, FINE, STIFF, folder / "fine")
    others = [solved(fit, COARSE, k, folder / f"coarse-{k:g}") for k in (STIFF, SOFT)]
    apart = {
        name: max(abs(asdict(other)[name] / asdict(best)[name] - 1) for other in others)
        for name in WITHIN
    }
    apart["contact"] = max(apart["contact"], abs(best.by_pressure / best.contact - 1))
    return Judged(best, apart)
