"""Mutants of runout, reversal, the set-over and balance; run by `mutants`."""

from __future__ import annotations

from tests.mutant import Mutant

TRUTH = (
    Mutant(
        "work thrown over by half the reading of its clearance",
        "mechanics/runout.py",
        '    not_below_zero("clearance", clearance, "m")\n    return clearance\n',
        '    not_below_zero("clearance", clearance, "m")\n    return clearance / 2\n',
    ),
    Mutant(
        "a free end that leans by the whole taper",
        "mechanics/runout.py",
        "return gap / (2 * length)",
        "return gap / length",
    ),
    Mutant(
        "a rim that shows its lean once",
        "mechanics/runout.py",
        "return 2 * lean * distance",
        "return lean * distance",
    ),
    Mutant(
        "shares added as if all in line",
        "mechanics/runout.py",
        "along = _summed([share * np.cos(angle) for share, angle in pairs])",
        "along = _summed([share for share, angle in pairs])",
    ),
    Mutant(
        "the mandrel's share taken for the work's",
        "mechanics/reversal.py",
        "return _share((a + b) / 2), _share((a - b) / 2)",
        "return _share((a - b) / 2), _share((a + b) / 2)",
    ),
    Mutant(
        "shares together without their halving",
        "mechanics/reversal.py",
        "math.sqrt((first**2 + second**2) / 2)",
        "math.sqrt(first**2 + second**2)",
    ),
    Mutant(
        "an error of a place that costs nothing",
        "mechanics/reversal.py",
        "return reading_error + (first + second) / 2 * angle_error",
        "return reading_error",
    ),
    Mutant(
        "a set-over of the whole difference",
        "mechanics/parallel.py",
        "return taper * between_centers / 2",
        "return taper * between_centers",
    ),
    Mutant(
        "a tailstock moved the wrong way",
        "mechanics/parallel.py",
        "return (tail - head) / apart",
        "return (head - tail) / apart",
    ),
    Mutant(
        "bands read by one hand that is right",
        "mechanics/parallel.py",
        "return 2 * reading_error * length / allowed",
        "return reading_error * length / allowed",
    ),
    Mutant(
        "a drill's point counted as a cylinder",
        "mechanics/drilled_balance.py",
        "    cone = area * tip / 3\n    with",
        "    cone = area * tip\n    with",
    ),
    Mutant(
        "a hole at the wax's radius",
        "mechanics/drilled_balance.py",
        "return unbalance / radius / density",
        "return unbalance / density",
    ),
)
