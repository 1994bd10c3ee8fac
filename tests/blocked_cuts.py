"""Jobs with cuts that nothing their lathe can be set to takes within its limits, and those cuts."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from borewright.answer.records import Cut
from borewright.job import parse_job
from borewright.job.records import Job
from borewright.planning.choice.arrangement import arrange
from borewright.planning.choice.recommended import recommended
from borewright.planning.passes.holding import Holding, holding_of
from borewright.planning.passes.least_time import Found
from borewright.planning.passes.problem import Problem
from borewright.planning.passes.runs import Bench, runs
from borewright.planning.shop.names import material_taken
from borewright.planning.weighing.warmed import work_body
from borewright.reference import Tables
from borewright.reference.library import DATA

TABLES = Tables()

JOB = """
title = "Hollow Brook blank"
units = "{units}"
[work]
material = "{material}"
blank = "{blank}"
quantity = {quantity}
outside = "{outside}"
length = "{length}"
bore = {{ size = "20.005mm", made_by = "reamed", measured_with = "bore gauge" }}
finished = {{ {finished} }}
[hold]
use = "plain-taper"
mandrels = ["20mm"]
press = "arbor press 1 ton"
[machine]
speeds = [{speeds}]
feeds = [{feeds}]
power = "{power}"
"""

USUAL = {
    "units": "mm",
    "material": "gray iron",
    "blank": "bar",
    "quantity": "1",
    "outside": "60mm",
    "length": "40mm",
    "finished": 'outside = "58mm"',
    "speeds": '"60rpm", "110rpm", "200rpm", "350rpm"',
    "feeds": '"0.05mm", "0.1mm", "0.2mm"',
    "power": "0.5kW",
}

COARSE = {"outside": "160mm", "finished": 'outside = "156mm"', "feeds": '"0.6mm"'}
"""A large rim on a small bore, and one feed that is far too coarse for it: all would slip."""

FINE = {"finished": 'outside = "58mm", roughness = "0.8um"'}
"""A finish finer than the lathe's finest feed leaves with the usual nose."""

WEAK = {"power": "0.03kW", "feeds": '"0.3mm"'}
"""A lathe that does not pull the one feed it has."""

GROOVED = {
    **COARSE,
    "finished": 'outside = "156mm", length = "38mm", '
    'grooves = [{ from = "15mm", to = "18mm", bottom = "130mm" }]',
}


def text_of(**changed: str) -> str:
    """The job file with some of it changed."""
    return JOB.format(**{**USUAL, **changed})


def own(folder: Path, name: str, *changed: tuple[str, str]) -> Tables:
    """Tables with texts of one changed, in a folder of their own."""
    text = (DATA / f"{name}.csv").read_text("utf-8")
    for old, new in changed:
        assert old in text
        text = text.replace(old, new, 1)
    (folder / f"{name}.csv").write_text(text, "utf-8")
    return Tables(folder)


def held(asked: str | Job, tables: Tables = TABLES) -> Holding:
    """The recommended hold of a job, as it is planned before its cuts are set."""
    stated = parse_job(asked, "job") if isinstance(asked, str) else asked
    job, _ = material_taken(stated, tables)
    row = recommended(arrange(job, tables))
    assert row is not None
    assert row.weighed.trial is not None
    return holding_of(row.weighed.trial)


def blocked_cuts(asked: str | Job, tables: Tables = TABLES) -> Iterator[tuple[Cut, Found, Problem]]:
    """Every blocked cut of a job with what was found and what it was found for."""
    holding = held(asked, tables)
    for one in runs(Bench(holding, work_body(holding.taken(holding.cuts)))):
        if one.found is not None and one.found.blocked:
            assert one.found.problem is not None
            yield one.cuts[-1], one.found, one.found.problem
