"""Which press and which lathe of the shelf: the first that serves, and why the earlier ones do not."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from borewright.answer.records import Verdict
from borewright.job.records import Job, Machine
from borewright.planning.choice.candidates import Weighed
from borewright.planning.choice.weighing_all import Weighing, weigh
from borewright.planning.shop.shop import HAMMER, Shop, shop_of
from borewright.planning.taper.travel import PRESS
from borewright.quantities.si import Newton
from borewright.reference.library import Tables


@dataclass(frozen=True, slots=True, eq=False)
class Arranged:
    """The job with its press and lathe settled, all holds weighed; `instead` says what was passed over."""

    job: Job
    shop: Shop
    weighing: Weighing
    instead: tuple[str, ...] = ()

    @property
    def best(self) -> Weighed | None:
        """The best of the mandrels."""
        return self.weighing.best_mandrel


def arrange(job: Job, tables: Tables) -> Arranged:
    """The first press and the first lathe of the shelf, or later ones where those do not serve.

    What the user insists on stands. RefusedInput where `use` names nothing that can be tried.
    """
    presses = list(ways_to_press(job))
    start = _weighed(_pressed(job, *presses[0]), tables)
    settled = _better(start, [_pressed(job, *p) for p in presses[1:]], press_falls_short, tables)
    lathes = [_on(settled.job, lathe) for lathe in other_lathes(settled.job)]
    return _better(settled, lathes, lathe_falls_short, tables)


def press_falls_short(best: Weighed) -> str:
    """Why another press would serve better, in a sentence; empty where none would."""
    short = _not_yes(best, "push")
    stalls = best.verdict is not Verdict.YES and best.trial.chosen.limited_by == PRESS
    return short or ("It stalls before the work is pressed as far as it wants." if stalls else "")


def lathe_falls_short(best: Weighed) -> str:
    """Why another lathe would serve better, in sentences; empty where none would."""
    return _not_yes(best, "reach", "speed")


def ways_to_press(job: Job) -> Iterator[tuple[str, Newton | None]]:
    """Name and stated force of everything that could press: presses, then the vice, then a hammer."""
    shelf = job.shelf
    if shelf.press_wished or not (shelf.presses or shelf.vice or shelf.hammer):
        yield shelf.press, shelf.press_force
        return
    if not shelf.presses and (shelf.press or shelf.press_force is not None):
        yield shelf.press, shelf.press_force
    yield from ((press.called, press.force) for press in shelf.presses)
    if shelf.vice is not None:
        yield "bench vice", shelf.vice.force
    if shelf.hammer is not None:
        yield HAMMER, None


def other_lathes(job: Job) -> tuple[Machine, ...]:
    """The lathes that may be tried instead of the one to be used; none where the user insists."""
    shelf = job.shelf
    if shelf.lathe_wished:
        return ()
    return tuple(lathe for lathe in shelf.lathes if lathe != shelf.machine)


def _pressed(job: Job, name: str, force: Newton | None) -> Job:
    return replace(job, shelf=replace(job.shelf, press=name, press_force=force))


def _on(job: Job, lathe: Machine) -> Job:
    return replace(job, shelf=replace(job.shelf, machine=lathe))


def _weighed(job: Job, tables: Tables) -> Arranged:
    shop = shop_of(job, tables)
    return Arranged(job, shop, weigh(job, shop, tables))


def _better(
    start: Arranged, others: list[Job], falls_short: Callable[[Weighed], str], tables: Tables
) -> Arranged:
    """The first that does not fall short, else the one that comes out best."""
    best = start
    for job in others:
        if best.best is None or not falls_short(best.best):
            break
        found = _weighed(job, tables)
        if found.best is not None and _rank(found.best) < _rank(best.best):
            best = found
    if best is start or start.best is None:
        return best
    said = f"{_passed_over(start, best)}: {falls_short(start.best)}"
    return replace(best, instead=(*start.instead, said))


def _not_yes(best: Weighed, *names: str) -> str:
    asked = (best.question(name) for name in names)
    return " ".join(q.reason for q in asked if q.verdict is not Verdict.YES)


def _rank(best: Weighed) -> tuple[int, int, int]:
    verdicts = [q.verdict for q in best.questions]
    return best.verdict.rank, verdicts.count(Verdict.NO), verdicts.count(Verdict.CARE)


def _passed_over(start: Arranged, best: Arranged) -> str:
    if start.job.shelf.machine != best.job.shelf.machine:
        return f"Not on {start.job.shelf.machine.name or 'the first lathe'}"
    return f"Not by {start.shop.press_name}"
