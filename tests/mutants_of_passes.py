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
    Mutant(
        "a mend whose setting up costs nothing",
        "planning/passes/search.py",
        "return change.making + sum(row.for_batch(quantity)[1] for row in rows)",
        "return change.making + 0 * sum(row.for_batch(quantity)[1] for row in rows)",
    ),
    Mutant(
        "a batch that is cut once",
        "planning/passes/search.py",
        "return Mended(change, found, first, first + quantity * found.setting.seconds / 60)",
        "return Mended(change, found, first, first + found.setting.seconds / 60)",
    ),
    Mutant(
        "the dearest mend first",
        "planning/passes/search.py",
        "key=lambda m: m.cost)[:KEPT])",
        "key=lambda m: -m.cost)[:KEPT])",
    ),
    Mutant(
        "a search that stops one mend too soon",
        "planning/passes/search.py",
        "if len(least) == KEPT and setting_up(change) >= least[-1]:",
        "if len(least) == 1 and setting_up(change) >= 0:",
    ),
    Mutant(
        "a mend that leaves a thread",
        "planning/passes/search.py",
        "wanted=replace(problem.wanted, clean=True)",
        "wanted=replace(problem.wanted, clean=False)",
    ),
    Mutant(
        "a mend that its metal does not bear",
        "planning/passes/mends.py",
        "if metal in tables.mend_minutes(mend).never:",
        "if metal in ():",
    ),
    Mutant(
        "a feed said coarser than it was tried",
        "planning/passes/mends.py",
        'return f"a feed of {show.feed(setting.feed)}, by hand',
        'return f"a feed of {show.feed(2 * setting.feed)}, by hand',
    ),
    Mutant(
        "rake that saves twice as much",
        "planning/passes/mends.py",
        "keener = replace(problem, eased=1 - saved * edge.value)",
        "keener = replace(problem, eased=1 - 2 * saved * edge.value)",
    ),
    Mutant(
        "a keener tool that asks the usual torque",
        "planning/passes/limits.py",
        "torque=demand.torque * share,",
        "torque=demand.torque,",
    ),
    Mutant(
        "coolant that cools no more than air",
        "planning/passes/limits.py",
        "self._loss = loss_to(holding, coolant=model.coolant).best",
        "self._loss = loss_to(holding, coolant=False).best",
    ),
    Mutant(
        "a travel past what the bore bears",
        "planning/passes/other_holds.py",
        "if not past_what(trial, trial.chosen.travel + k * step)",
        "if k > 0",
    ),
    Mutant(
        "a finish accepted that is not to be had",
        "planning/passes/mend_words.py",
        "ridges = _two_figures_up(wanted.ridges / found.share)",
        "ridges = _two_figures_up(wanted.ridges * found.share)",
    ),
    Mutant(
        "ladders that skip every second step",
        "planning/passes/ladders.py",
        "TWENTIETH = 10**0.05",
        "TWENTIETH = 10**0.1",
    ),
)
