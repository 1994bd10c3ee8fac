"""Every part of a list planned against one shelf: what fits what, and what fits nothing."""

from __future__ import annotations

import os
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager
from dataclasses import dataclass
from multiprocessing import get_context
from pathlib import Path

from borewright.answer.plan import Plan
from borewright.answer.records import Verdict
from borewright.errors import RefusedInput
from borewright.job.parts_file import Part
from borewright.job.records import Shelf
from borewright.job.shelf_file import merge_shelf
from borewright.planning.assemble import plan_job
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


@dataclass(frozen=True, slots=True)
class PartAnswer:
    """The answer for one part: `verdict` None where its row could not be planned."""

    line: int
    part: str
    verdict: Verdict | None
    mandrel: str
    press_distance: Metre | None
    reason: str


FEW = 24
"""Lists of fewer parts are planned in one process: another one takes as long to start (ours)."""

BLAS_THREADS = "OPENBLAS_NUM_THREADS"
"""Read by numpy's library for matrices when a process loads it."""

AT_ONCE = 8
"""Parts that a process takes at a time: few enough for a bar that moves (ours)."""


def plan_parts(
    parts: Sequence[Part],
    shelf: Shelf,
    tables: Tables,
    done: Callable[[], object] = lambda: None,
    processes: int = 1,
) -> tuple[PartAnswer, ...]:
    """One answer a part, in the order of the list; `done` is called after each.

    Long lists are shared among `processes`, if there are several; the answers are the same.
    """
    if len(parts) < FEW or processes < 2:
        return tuple(_counted(_answer(part, shelf, tables), done) for part in parts)
    with ProcessPoolExecutor(
        processes, get_context("spawn"), _prepare, (shelf, tables.directory)
    ) as pool:
        with _one_thread_each():
            found = pool.map(_answer_there, parts, chunksize=AT_ONCE)
        return tuple(_counted(answer, done) for answer in found)


@contextmanager
def _one_thread_each() -> Iterator[None]:
    """Processes started here multiply matrices on one thread: more would fight for the cores."""
    stated = os.environ.get(BLAS_THREADS)
    os.environ.setdefault(BLAS_THREADS, "1")
    try:
        yield
    finally:
        if stated is None:
            del os.environ[BLAS_THREADS]


def _counted(answer: PartAnswer, done: Callable[[], object]) -> PartAnswer:
    done()
    return answer


_there: list[tuple[Shelf, Tables]] = []
"""What a process of its own was prepared with."""


def _prepare(shelf: Shelf, directory: Path | None) -> None:
    _there[:] = [(shelf, Tables(directory))]


def _answer_there(part: Part) -> PartAnswer:
    return _answer(part, *_there[0])


def tally(answers: Iterable[PartAnswer]) -> dict[str, int]:
    """How many parts come out yes, with care, no, and refused.

    >>> tally([PartAnswer(2, "wheel", Verdict.YES, "m", 0.03, "")])
    {'yes': 1, 'with care': 0, 'no': 0, 'refused': 0}
    """
    count = Counter(a.verdict.value if a.verdict else "refused" for a in answers)
    return {name: count[name] for name in ("yes", "with care", "no", "refused")}


def _answer(part: Part, shelf: Shelf, tables: Tables) -> PartAnswer:
    try:
        plan = plan_job(merge_shelf(part.job, shelf), tables, with_changes=False)
    except RefusedInput as refusal:
        return PartAnswer(part.line, part.job.title, None, "", None, str(refusal))
    return _of_plan(part, plan)


def _of_plan(part: Part, plan: Plan) -> PartAnswer:
    chosen, layout = plan.chosen, plan.layout
    return PartAnswer(
        part.line,
        plan.title,
        plan.verdict,
        chosen.tool if chosen else "",
        layout.travel if chosen and layout else None,
        plan.headline,
    )
