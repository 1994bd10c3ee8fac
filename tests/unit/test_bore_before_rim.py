"""A bore that is still to be made: bored before it is reamed where the rim is turned with it, and
counted against every hold that only takes it.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.bore_jobs import TABLES, by_class
from tests.chuck_jobs import bored, hubbed, with_bore
from tests.jobs_made import wheel_job
from tests.unit.test_one_hold_agrees import HANDWHEEL, PULLEY, in_one, read

from borewright.answer.plan import Plan
from borewright.answer.records import Candidate, Verdict
from borewright.holding.jaws.grasp import bore_to_make
from borewright.holding.part import Part
from borewright.holding.registry import WAYS
from borewright.job.records import Bore, Job
from borewright.job.tools import OwnBoringBar, OwnDrill, OwnReamer
from borewright.planning.bore_route.route import bore_route
from borewright.planning.choice.ranking import ONCE_BORED, RANKED_BY
from borewright.planning.shop.shop import shop_of
from borewright.service.planned import plan

CLASS = ('size = "12mm"\nmade_by = "solid"', 'size = "20 H7"')


def shelved(job: Job, reach: float = 0.060) -> Job:
    """19.5 mm drill and 20 H7 reamer, by which a hole could be drilled and reamed straight off."""
    shelf = replace(
        job.shelf,
        drills=(OwnDrill(by="by 0.5 mm", largest=0.013), OwnDrill(0.0195)),
        reamers=(OwnReamer(0.020, "20 H7 machine reamer"),),
        boring_bar=OwnBoringBar(0.012, reach),
    )
    return replace(job, shelf=shelf)


def way_of(job: Job, *, with_rim: bool):  # type: ignore[no-untyped-def]
    route = bore_route(job, shop_of(job, TABLES), TABLES, (), with_rim)
    assert route is not None
    return route


# Bored before reamed


def test_a_bore_turned_with_its_rim_is_bored_before_it_is_reamed() -> None:
    job = shelved(by_class("20 H7")[0])
    alone, together = (way_of(job, with_rim=w) for w in (False, True))
    assert alone.way.startswith("drill, then ream")
    assert "does no harm where rim and faces are turned from the bore" in alone.ream_or_bore
    assert together.way.startswith("bore, then ream")
    assert "does no harm" not in together.ream_or_bore
    assert "a drill wanders" in together.ream_or_bore
    other = next(a for a in together.alternatives if a.way.startswith("drill, then ream"))
    assert "the rim is turned in the same chucking" in other.reason


def test_the_plan_of_one_chucking_asks_for_it() -> None:
    job = shelved(read(PULLEY, ('"aluminium"', '"mild steel"'), CLASS))
    answer = plan(job, source_tables=TABLES)
    assert answer.chosen is not None
    assert answer.chosen.way == "one-chucking"
    assert answer.bore_route is not None
    assert answer.bore_route.way.startswith("bore, then ream")
    on_a_stub = plan(replace(job, use="turned-stub"), source_tables=TABLES).bore_route
    assert on_a_stub is not None
    assert on_a_stub.way.startswith("drill, then ream")


@pytest.mark.parametrize(
    "job",
    [
        shelved(read(PULLEY, CLASS), reach=0.010),
        read(PULLEY, ('"12mm"', '"6mm"')),
    ],
)
def test_where_no_bar_goes_in_or_reaches_no_three_microns_are_promised(job: Job) -> None:
    held = WAYS["one-chucking"].offer(job, TABLES)[0]
    wander = TABLES.holding_fact("drill_wander").best
    assert held.grip is not None
    assert held.grip.runout[0] == pytest.approx(wander, rel=1e-9)
    assert held.fit is not None
    assert "a reamer follows the drill" in held.fit.reason


# What is still to be made


@pytest.mark.parametrize(
    ("bore", "to_make"),
    [
        (bored("solid"), True),
        (bored("not bored"), True),
        (bored("drilled"), True),
        (bored("as-cast"), True),
        (bored("unknown"), False),
        (bored("reamed"), False),
        (by_class("20 H7")[0].work.bore, True),
        (replace(by_class("20 H7")[0].work.bore, made_by="reamed"), False),
        (replace(by_class("20 H7")[0].work.bore, measured_with="bore gauge"), False),
    ],
)
def test_a_bore_is_to_be_made_where_that_is_said_or_only_its_limits_are(
    bore: Bore, to_make: bool
) -> None:
    assert bore_to_make(Part(with_bore(wheel_job(), bore), TABLES)) is to_make


def row(answer: Plan, way: str) -> Candidate:
    return next(c for c in answer.candidates if c.way == way)


@pytest.mark.parametrize("way", ["turned-stub", "plain-taper", "soft-mandrel"])
def test_a_hold_that_takes_the_bore_counts_the_hold_that_makes_it(way: str) -> None:
    """Four pieces, each set up once more to be bored."""
    pulley = read(PULLEY, ("quantity = 1", "quantity = 4"))
    unsaid = replace(pulley, work=replace(pulley.work, bore=Bore(0.012)))
    there, to_make = (plan(job, source_tables=TABLES) for job in (unsaid, pulley))
    more = TABLES.holding_fact("boring_hold").best * 4
    assert row(to_make, way).minutes == pytest.approx(row(there, way).minutes + more)  # type: ignore[operator]
    assert ONCE_BORED in row(to_make, way).reason.lower()
    assert ONCE_BORED not in row(there, way).reason.lower()
    assert ONCE_BORED not in row(to_make, "one-chucking").reason.lower()


def test_four_of_a_solid_bar_lead_with_the_hold_in_which_the_bore_is_made() -> None:
    answer = plan(read(PULLEY, ("quantity = 1", "quantity = 4")), source_tables=TABLES)
    assert answer.verdict is Verdict.YES
    assert answer.chosen is not None
    assert answer.chosen.way == "one-chucking"


def test_sliding_it_on_settles_no_doubt_about_a_bore_that_is_not_there() -> None:
    """Four of a solid bar: the mandrel is quicker, but its care stands behind a plain yes."""
    pulley = read(PULLEY, ("quantity = 1", "quantity = 4"))
    ways = [c.way for c in plan(pulley, source_tables=TABLES).candidates]
    assert ways.index("turned-stub") < ways.index("plain-taper")
    near = Bore(0.012, 15e-6, "plug gauge", "reamed")  # likely enough to be worth a try
    unsaid = replace(pulley, work=replace(pulley.work, bore=near))
    ways = [c.way for c in plan(unsaid, source_tables=TABLES).candidates]
    assert ways.index("turned-stub") > ways.index("plain-taper")


def test_a_solid_handwheel_is_not_set_true_by_a_bore_that_is_not_there() -> None:
    four = row(plan(read(HANDWHEEL), source_tables=TABLES), "four-jaw")
    assert four.reason.startswith("Once another hold has bored it: ")
    assert in_one(HANDWHEEL).chosen is not None


def test_a_doubt_about_the_hold_that_bores_it_stands_behind_every_hold_that_follows() -> None:
    """The handwheel is bored by the inside of its rim, as cast, whatever turns its rim later."""
    answer = plan(read(HANDWHEEL), source_tables=TABLES)
    assert answer.chosen is not None
    assert answer.chosen.way == "one-chucking"
    assert row(answer, "soft-mandrel").verdict is not Verdict.NO


def test_a_hold_whose_purpose_is_to_bore_needs_no_other() -> None:
    job = with_bore(hubbed(), bored("drilled"))
    faced = replace(job.work.finished, outside=job.work.outside)
    job = replace(job, work=replace(job.work, finished=faced))
    assert ONCE_BORED not in row(plan(job, source_tables=TABLES), "four-jaw").reason.lower()


def test_the_printed_key_says_so() -> None:
    assert "another hold that bores it included" in RANKED_BY
    assert "a doubt about a finished bore" in RANKED_BY
