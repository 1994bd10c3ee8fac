"""Breaks one constant or sign at a time in a copy of the source: the outside truths must go red.

    python -m tests.mutants

Only tests that hold values from outside are asked (published, closed form, practice, independent),
so a mutant that survives is a number that nothing but our own output holds in place. Exit 1 when
one survives, or when the unbroken copy is not green. `tests/unit/test_mutants_apply.py` keeps the
list in step with the source.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from tests.mutant import Mutant
from tests.mutants_of_bending import BENDING
from tests.mutants_of_bores import BORES
from tests.mutants_of_castings import CASTINGS
from tests.mutants_of_clamping import CLAMPING
from tests.mutants_of_crowns import CROWNS
from tests.mutants_of_heat import HEAT
from tests.mutants_of_making import MAKING
from tests.mutants_of_other_ways import OTHER_WAYS
from tests.mutants_of_passes import PASSES
from tests.mutants_of_rescue import RESCUE
from tests.mutants_of_stubs_and_gauges import STUBS_AND_GAUGES
from tests.mutants_of_tilting import TILTING
from tests.mutants_of_truth import TRUTH

ROOT = Path(__file__).parents[1]
SOURCE = ROOT / "src"
TRUTHS = ("closed_form", "published", "practice", "independent")


MUTANTS = (
    *OTHER_WAYS,
    *BENDING,
    *BORES,
    *RESCUE,
    *PASSES,
    *CROWNS,
    *MAKING,
    *CASTINGS,
    *HEAT,
    *TRUTH,
    *TILTING,
    *STUBS_AND_GAUGES,
    Mutant(
        "contact taken to end where a strip begins to take load",
        "mechanics/contact.py",
        "ENTERS: Final = 0.38",
        "ENTERS: Final = 0.0",
    ),
    Mutant(
        "a curve on twice the overlap of its travel",
        "holding/taper/taper_contact.py",
        "raised = (hold.mandrel.taper * travel - lost) / (2 * hold.joint.bore)",
        "raised = (hold.mandrel.taper * travel - lost) / hold.joint.bore",
    ),
    Mutant(
        "one modulus for every drawn case",
        "holding/taper/contact_curves.py",
        "normal_force=force * (e * d**2),",
        "normal_force=force * (e[0] * d**2),",
    ),
    Mutant(
        "stresses carried from Gauss points to corners as if those were the corners",
        "mechanics/tension_field.py",
        "far, near = (1 + np.sqrt(3)) / 2, (1 - np.sqrt(3)) / 2",
        "far, near = 1.0, 0.0",
    ),
    Mutant(
        "a contour cut at half of every cell's edge",
        "mechanics/contours.py",
        "return (self.level - a) / (b - a)",
        "return 0.5 * (b - a) / (b - a)",
    ),
    Mutant(
        "a picture's load without the length of its strip",
        "mechanics/elastic_body.py",
        "loads = pressure * (strips[:, 1] - strips[:, 0])",
        "loads = pressure * (strips[:, 1] - strips[:, 0]).mean()",
    ),
    Mutant(
        "a strip's load without the radius it stands on",
        "mechanics/elastic_body.py",
        "+= BORE * MEAN[node]",
        "+= MEAN[node]",
    ),
    Mutant(
        "the whole overlap for the half that each radius takes",
        "holding/taper/elastic_joint.py",
        "loads = pressed(self.gives(), overlap / (2 * self.bore))",
        "loads = pressed(self.gives(), overlap / self.bore)",
    ),
    Mutant(
        "no pull round the bore in the weak form",
        "mechanics/elastic_body.py",
        "((RADIAL, OVER_R, 1.0),)",
        "((RADIAL, OVER_R, 0.0),)",
    ),
    Mutant(
        "a span over whole pitches without its tooth",
        "mechanics/tooth_measures.py",
        "(math.pi * (spanned - 0.5) + teeth * involute)",
        "(math.pi * (spanned - 1.0) + teeth * involute)",
    ),
    Mutant(
        "normal force without pi",
        "mechanics/rings.py",
        "np.pi * (self.diameter * area)",
        "1.0 * (self.diameter * area)",
    ),
    Mutant(
        "a measured mandrel ground without a large end",
        "mechanics/measured_rings.py",
        "seat - ground[1], seat - ground[0])",
        "seat - np.inf, seat - ground[0])",
    ),
    Mutant(
        "whole band for half of the limits of a bore",
        "job/records.py",
        "return (self.high - self.low) / 2",
        "return self.high - self.low",
    ),
    Mutant(
        "whole taper in the push on",
        "mechanics/press.py",
        "normal * (friction + taper / 2)",
        "normal * (friction + taper)",
    ),
    Mutant(
        "taper helps nothing when pushing off",
        "mechanics/press.py",
        "normal * (friction - taper / 2)",
        "normal * (friction + taper / 2)",
    ),
    Mutant(
        "diameter for radius in the slip torque",
        "mechanics/slip.py",
        "return friction * normal * diameter / 2",
        "return friction * normal * diameter",
    ),
    Mutant(
        "Kienzle exponent upside down",
        "mechanics/kienzle.py",
        "** (1 - exponent)",
        "** (1 + exponent)",
    ),
    Mutant(
        "axial force the wrong way round",
        "mechanics/slip.py",
        "np.abs(normal * taper / 2 - axial)",
        "np.abs(normal * taper / 2 + axial)",
    ),
    Mutant(
        "grip that lifts at a sixth",
        "mechanics/rock.py",
        "return normal * contact_length / 12",
        "return normal * contact_length / 6",
    ),
    Mutant(
        "heat that never leaves",
        "mechanics/warmth.py",
        "-np.expm1(-rate * seconds / heat_capacity)",
        "rate * seconds / heat_capacity",
    ),
    Mutant(
        "the cut's thrust with the wrong sign",
        "cutting/demand.py",
        "sign = 1.0 if cut.seat_effect == TIGHTENS else -1.0",
        "sign = -1.0 if cut.seat_effect == TIGHTENS else 1.0",
    ),
    Mutant(
        "arc of cut by half the depth",
        "mechanics/milling.py",
        "math.acos(1 - 2 * depth / cutter_diameter)",
        "math.acos(1 - depth / cutter_diameter)",
    ),
    Mutant(
        "a grinding traverse that only tightens",
        "cutting/load_demand.py",
        "along_rim * radius, -share * along_rim",
        "along_rim * radius, share * along_rim",
    ),
    Mutant(
        "wall ratio not squared in Lamé",
        "mechanics/rings.py",
        "k2 = (diameter / outside) ** 2",
        "k2 = diameter / outside",
    ),
    Mutant(
        "bore window below the small end",
        "mechanics/taper.py",
        "taper * np.maximum(0.0, bore_length + reserve_small - travel)",
        "taper * (bore_length + reserve_small - travel)",
    ),
    Mutant(
        "reserve at the large end given away",
        "mechanics/taper.py",
        "taper * (ground_length - reserve_large - travel)",
        "taper * (ground_length + reserve_large - travel)",
    ),
    Mutant(
        "all of the roughness lost",
        "mechanics/roughness.py",
        "return share * roughness",
        "return roughness",
    ),
    Mutant(
        "bending by the third power",
        "mechanics/beam.py",
        "np.pi * (diameter**4 - hole**4) / 64",
        "np.pi * (diameter**3 - hole**3) / 64",
    ),
    Mutant(
        "the second centre does not give",
        "mechanics/beam.py",
        "/ left + load_at * at / bar.span**2 / right",
        "/ left",
    ),
    Mutant(
        "hoop tension as large as the pressure",
        "mechanics/rings.py",
        "np.asarray((1 + ratio**2) / (1 - ratio**2), dtype",
        "np.asarray((1 - ratio**2) / (1 - ratio**2), dtype",
    ),
    Mutant(
        "a web without its second plate term",
        "mechanics/plate.py",
        "(1 - poisson) * q**2 * (1 + 2 * np.log(q))",
        "(1 - poisson) * q**2",
    ),
    Mutant(
        "spokes hinged at the rim that keep their slope",
        "mechanics/spokes.py",
        "ends = 12 if clamped else 3",
        "ends = 3 if clamped else 12",
    ),
    Mutant(
        "a keyway that goes round only the diameter",
        "mechanics/notch.py",
        "1 - width / (np.pi * bore)",
        "1 - width / bore",
    ),
    *CLAMPING,
)


def broken(text: str, mutant: Mutant) -> str:
    """The file's text with the break in it. ValueError where `right` does not stand there once."""
    if text.count(mutant.right) != 1:
        raise ValueError(
            f"{mutant.name}: {mutant.file} holds {mutant.right!r} {text.count(mutant.right)} times"
        )
    return text.replace(mutant.right, mutant.wrong)


def main() -> int:
    """Break each, ask the tests, print a table."""
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "src"
        shutil.copytree(SOURCE, copy, ignore=shutil.ignore_patterns("__pycache__"))
        reason = _not_ready(copy)
        if reason:
            print(reason)
            return 1
        alive = [mutant for mutant in MUTANTS if not _killed(copy, mutant)]
    print(f"{len(MUTANTS) - len(alive)} of {len(MUTANTS)} killed")
    return int(bool(alive))


def _not_ready(copy: Path) -> str:
    """Why a red test would prove nothing; empty where it would."""
    where = _python(copy, "-c", "import borewright; print(borewright.__file__)").stdout
    if not where.startswith(str(copy)):
        return f"borewright is taken from {where.strip()}, not from the copy"
    green = _asked(copy)
    return "" if green.returncode == 0 else f"the unbroken copy is not green\n{green.stdout}"


def _killed(copy: Path, mutant: Mutant) -> bool:
    """Whether a test fails (exit 1) on the broken copy; a copy that cannot run does not count."""
    path = copy / "borewright" / mutant.file
    right = path.read_text(encoding="utf-8")
    path.write_text(broken(right, mutant), encoding="utf-8")
    done = _asked(copy)
    path.write_text(right, encoding="utf-8")
    by = re.search(r"^FAILED (\S+)", done.stdout, re.MULTILINE)
    killed = done.returncode == 1 and by is not None
    print(f"{mutant.name:42}{'killed by ' + by[1] if killed and by else 'SURVIVES'}", flush=True)
    return killed


def _asked(copy: Path) -> subprocess.CompletedProcess[str]:
    folders = [f"tests/{name}" for name in TRUTHS]
    return _python(copy, "-m", "pytest", "-x", "-q", "-p", "no:cacheprovider", *folders)


def _python(copy: Path, *words: str) -> subprocess.CompletedProcess[str]:
    environment = {**os.environ, "PYTHONPATH": str(copy), "PYTHONDONTWRITEBYTECODE": "1"}
    return subprocess.run(
        [sys.executable, *words],
        cwd=ROOT,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )


if __name__ == "__main__":
    sys.exit(main())
