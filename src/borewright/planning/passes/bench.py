"""A hold, and what all runs on it share: what is usual for the metal, and the setting of one run."""

from __future__ import annotations

from dataclasses import dataclass, replace

from borewright.answer.records import Cut
from borewright.cutting.stock import deepest_pass
from borewright.job.records import Job
from borewright.mechanics.turning import surface_speed
from borewright.planning.passes.holding import Holding
from borewright.planning.passes.least_time import Found, solved, unblocked
from borewright.planning.passes.limits import Wanted
from borewright.planning.passes.problem import Problem, spring_pass
from borewright.planning.passes.setting import Run, Setting
from borewright.planning.weighing.power import motor_power
from borewright.planning.weighing.warmed import Body
from borewright.quantities.si import Metre

BOLDER = 2.0
"""The coarsest feed, as a share of the usual; and the deepest cut where the lathe's power is stated,
so that something else than habit says how much it pulls (ours)."""

THINNEST: Metre = 1e-6
"""No pass is planned for a wall so thin that it bears less than this; ours."""


@dataclass(frozen=True, slots=True)
class Set:
    """Cuts that one setting makes, and how it was found; `found` None: as asked. `instead`: what was
    wanted and is out of reach, where these cuts are the next best."""

    cuts: tuple[Cut, ...]
    found: Found | None = None
    instead: Found | None = None


class Bench:
    """A hold, and what all runs on it share. `cool`: no run warms it past the heat question's yes."""

    def __init__(self, holding: Holding, body: Body, *, cool: bool = False) -> None:
        self.holding, self.body, self._cool = holding, body, cool
        job, tables = holding.job, holding.tables
        usual = tables.cut_defaults(job.work.material)
        self.power_known = power_is_known(job)
        bold = BOLDER if self.power_known else 1.0
        self.wall = max(deepest_pass(job, tables), THINNEST)
        self.deepest = min(usual.rough_depth * bold, self.wall)
        self.feed = usual.rough_feed * BOLDER
        self.bears = usual.rough_depth * usual.rough_feed * bold**2
        self.usual_depth = usual.rough_depth
        self.last_depth, self.last_feed = usual.finish_depth, usual.finish_feed
        self.least = usual.finish_depth / 2
        self.surface = tables.cutting_speed(job.work.material, usual.tool).best
        self.plunge_speed = tables.allowance("plunge_speed").best
        self.skin_speed = tables.allowance("skin_speed").best
        self.between = tables.allowance("between_passes").best
        finished = job.work.finished
        self.allowed = finished.tolerance or tables.allowance("usual_tolerance").best
        self.ridges = finished.form.roughness
        self.finish_feed = usual.finish_feed if self.ridges is None else self.feed
        self.face_feed = usual.rough_feed if self.ridges is None else self.feed

    def found(self, model: Cut, run: Run, wanted: Wanted, *, by_hand: bool = False) -> Found:
        """The fastest setting of one run; `by_hand`: fed by the top slide, at any feed."""
        wanted, machine = replace(wanted, cool=self._cool), self.holding.job.shelf.machine
        if by_hand:
            machine = replace(machine, feeds=())
        found = solved(Problem(self.holding, self.body, model, run, wanted, machine))
        return _if_it_sings(found) if found.blocked and wanted.quiet else found

    def finishing(self, model: Cut, run: Run) -> tuple[Found, bool]:
        """The setting of a last cut, and whether it wants a spring pass: only where bending blocks it."""
        plain = self.found(model, run, Wanted(allowed=self.allowed, ridges=self.ridges))
        again = spring_pass(plain.problem) if plain.blocked == "bend" else None
        if again is None:
            return plain, False
        sprung = solved(again)
        return (plain, False) if sprung.blocked else (sprung, True)

    def rough(self, model: Cut, stock: Metre, begins: Metre) -> Run:
        """Stock to come off in passes where this cut was planned."""
        return Run(
            stock,
            model.length,
            begins,
            self.deepest,
            self.feed,
            self.surface,
            self.between,
            least=self.least,
            bears=self.bears,
            usually=min(self.usual_depth, self.wall),
            coarser=True,
        )

    def under_skin(self, model: Cut, depth: Metre, begins: Metre) -> Run:
        """The first pass of a casting: one, as deep as its skin and its throw ask, slow."""
        run = self.rough(model, depth, begins)
        return replace(run, deepest=self.wall, surface=self.skin_speed * run.surface, once=True)

    def last(self, model: Cut, stock: Metre, begins: Metre) -> Run:
        """What is left for the last cut, in one pass."""
        run = self.rough(model, stock, begins)
        return replace(run, usual_feed=self.finish_feed, once=True, least=0.0, coarser=False)


def _if_it_sings(found: Found) -> Found:
    """Where chatter alone blocks a run, what is within every other limit at the slowest speed: no
    grip is spent on a limit that is known to a factor of three. It stays blocked, by chatter."""
    problem = found.problem
    assert problem is not None
    slowest = min(setting.spindle for setting in problem.settings)
    power = motor_power(problem.machine, slowest)
    machine = replace(problem.machine, speeds=(slowest,), power=power, power_by_gear=())
    other = unblocked(
        replace(problem, machine=machine, wanted=replace(problem.wanted, quiet=False))
    )
    if other is None:
        return found
    share = next(m.share(other.setting) for m in problem.limits if m.id == "chatter")
    return replace(found, setting=other.setting, blocked="chatter", share=share)


def power_is_known(job: Job) -> bool:
    """Whether the lathe's power is stated, in one figure or gear by gear."""
    machine = job.shelf.machine
    return machine.power is not None or bool(machine.power_by_gear)


def cuts_of(model: Cut, setting: Setting, begins: Metre) -> Cut:
    """The cut that a setting comes to: the model at its depth, feed, speed and number of passes."""
    depth, passes = setting.depths[0], len(setting.depths)
    leaves = begins - 2 * depth * passes if model.kind == "turn" else model.leaves
    return replace(
        model,
        diameter=begins,
        depth=depth,
        feed=setting.feed,
        passes=passes,
        spindle_speed=setting.spindle,
        cutting_speed=surface_speed(setting.spindle, begins),
        leaves=leaves,
    )
