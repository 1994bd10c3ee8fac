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
        "a first pass under the skin on the high side only",
        "planning/passes/runs.py",
        "stock + throw / 2, throw + skin if skin else 0.0)",
        "stock + throw / 2, skin if skin else 0.0)",
    ),
    Mutant(
        "a casting as round as it is drawn",
        "planning/passes/runs.py",
        "stock + throw / 2, throw + skin if skin else 0.0)",
        "stock, throw + skin if skin else 0.0)",
    ),
    Mutant(
        "a skin cut at full speed",
        "planning/passes/bench.py",
        "surface=self.skin_speed * run.surface, once=True)",
        "surface=run.surface, once=True)",
    ),
    Mutant(
        "an edge cut by a leg and not by its slope",
        "cutting/demand.py",
        "width = math.sqrt(2) * cut.depth",
        "width = cut.depth",
    ),
    Mutant(
        "an edge that pushes all of it along",
        "cutting/demand.py",
        "along = across = feed / math.sqrt(2)",
        "along = across = feed",
    ),
    Mutant(
        "edges that loosen the seat on either side",
        "cutting/edges.py",
        'seat_effect=LOOSENS if cut.id.endswith(f"-{leading.lower()}") else TIGHTENS)',
        "seat_effect=LOOSENS)",
    ),
    Mutant(
        "edges of steps only",
        "job/finished_edges.py",
        "*((g.start, g.end, g.bottom) for g in form.grooves),",
        "",
    ),
    Mutant(
        "one half of a crown",
        "planning/passes/by_hand.py",
        "length=whole.passes * whole.length,\n        deepest=whole.depth if stepped",
        "length=whole.length,\n        deepest=whole.depth if stepped",
    ),
    Mutant(
        "a crown that takes one pass for both halves",
        "planning/passes/by_hand.py",
        "passes=whole.passes if stepped else HALVES * made.passes",
        "passes=whole.passes if stepped else made.passes",
    ),
    Mutant(
        "a tool that bears any chip",
        "planning/passes/limits.py",
        "bears * (1 + 1e-9) / (s.deepest * s.feed)",
        "bears * (1 + 1e-9) / (s.deepest * s.feed) + 1",
    ),
    Mutant(
        "time that counts cutting for one of a batch",
        "planning/choice/timed.py",
        "return self.row.candidate.minutes + many * cutting / 60",
        "return self.row.candidate.minutes + cutting / 60",
    ),
    Mutant(
        "cuts out of reach that cost nothing",
        "planning/choice/timed.py",
        "cutting = sum((elsewhere | own).values())",
        "cutting = sum(own.values())",
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
        "return cut.id in ROUGH and as_cast and cut.depth < runout_of(job)",
        "return cut.id in ROUGH and as_cast and cut.depth < runout_of(job) / 20",
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
        "rows = self.values[below] + part[:, None, None] * self.steps[below]",
        "rows = self.values[below] + 0 * part[:, None, None] * self.steps[below]",
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
