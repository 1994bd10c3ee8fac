"""Mutants of the passes, the cuts from the part, and what was mended with them; run by `mutants`."""

from __future__ import annotations

from tests.mutant import Mutant

PASSES = (
    Mutant(
        "limits after the load forgotten",
        "planning/passes/least_time.py",
        "if _within(setting, before) and load.within(setting) and _within(setting, after):",
        "if _within(setting, before) and load.within(setting):",
    ),
    Mutant(
        "passes that need no winding back",
        "planning/passes/setting.py",
        "return passes * (run.length / (feed * spindle) + run.between)",
        "return passes * (run.length / (feed * spindle))",
    ),
    Mutant(
        "the first pass no deeper than the rest",
        "planning/passes/setting.py",
        "if number > 1 and even < run.first <= run.deepest and run.first < run.stock:",
        "if number > 99 and even < run.first <= run.deepest and run.first < run.stock:",
    ),
    Mutant(
        "a finish as the formula has it",
        "planning/passes/limits.py",
        "ridges / (more * float(ridge_height(s.feed, nose)))",
        "ridges / float(ridge_height(s.feed, nose))",
    ),
    Mutant(
        "a spring pass that takes out nothing",
        "planning/passes/limits.py",
        "left = wanted.sprung * bent + holding.springs",
        "left = bent + holding.springs",
    ),
    Mutant(
        "a wall that steps and grooves leave alone",
        "planning/weighing/wall_left.py",
        "return min([whole, *_under(work, cuts)])",
        "return whole",
    ),
    Mutant(
        "a casting that is out and does not knock",
        "cutting/knock.py",
        "return cut.id in ROUGH and out / 2 > cut.depth",
        "return cut.id in ROUGH and out / 20 > cut.depth",
    ),
    Mutant(
        "a plane that shears at half the friction",
        "mechanics/shear_plane.py",
        "return float(np.pi / 4 + rake / 2 - np.arctan(friction) / 2)",
        "return float(np.pi / 4 + rake / 2 - np.arctan(friction) / 4)",
    ),
    Mutant(
        "a clamp plate that bends half",
        "mechanics/clamp_plate.py",
        "turn = 2 * (1 + poisson) * float(np.log(1 / q)) / (1 - q**2)",
        "turn = (1 + poisson) * float(np.log(1 / q)) / (1 - q**2)",
    ),
    Mutant(
        "curves read at their stations only",
        "holding/taper/contact_curves.py",
        "rows *= (at - start) / (known[below + 1] - start)",
        "rows *= 0 * (at - start) / (known[below + 1] - start)",
    ),
    Mutant(
        "a tool that runs into bolts",
        "planning/held/clash.py",
        "and r.outer > cut.leaves / 2 + NEAR",
        "and r.outer > cut.leaves + NEAR",
    ),
    Mutant(
        "a chamfer that facing does not shorten",
        "planning/taper/mouths.py",
        "+ (face_stock(trial.job) or 0.0)",
        "+ 0 * (face_stock(trial.job) or 0.0)",
    ),
)
