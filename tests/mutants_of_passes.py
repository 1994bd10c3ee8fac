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
        "a pass shallower than its ridges",
        "planning/passes/limits.py",
        "if asked.model.nose_radius > 0:",
        "if asked.model.nose_radius > 1:",
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
