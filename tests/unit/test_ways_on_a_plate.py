"""Faceplate and plate with a spigot: torque by hand sums, lift of pads by springs, balance, what is refused."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from tests.jobs_made import wheel_job

from borewright.answer.held import Held
from borewright.holding.faces.on_plate import BORE, HOLES, SPOKES, balance_of, ways_down
from borewright.holding.part import Part
from borewright.holding.ways.faceplate import Faceplate
from borewright.holding.ways.spigot_plate import SpigotPlate
from borewright.job.interrupted import Spokes
from borewright.job.records import BoreReading, Job, Piece
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables

TABLES = Tables()
HUB, RIM = Piece(0.0, 0.03, 0.05), Piece(0.0, 0.03, 0.19, 0.16)
WEB = Piece(0.009, 0.021, 0.16, 0.05)


def flywheel(number: int = 5) -> Job:
    job = wheel_job(outside=0.19, length=0.03, material="gray-iron-30")
    spokes = Spokes(number, 0.022, 0.012) if number else None
    return replace(job, work=replace(job.work, pieces=(HUB, WEB, RIM), spokes=spokes))


def down(job: Job) -> dict[str, object]:
    return {d.by: d for d in ways_down(Part(job, TABLES))}


def with_bore(job: Job, **changes: object) -> Job:
    return replace(job, work=replace(job.work, bore=replace(job.work.bore, **changes)))


def spokes_of(job: Job):
    return next(d for d in ways_down(Part(job, TABLES)) if d.by == SPOKES)


def test_straps_hold_by_friction_on_their_own_circle_by_hand() -> None:
    """Five straps give half of 10 kN each (12 mm at 200 MPa bears it); circle (50 + 160) / 4 mm:
    5 x 0.12 x 5 kN x 52.5 mm."""
    held = spokes_of(flywheel())
    assert held.number == 5
    assert held.thread == 0.012
    assert likely(held.torque) == pytest.approx(5 * 0.12 * 5000 * 0.0525)


def test_pads_lift_where_springs_under_a_rigid_disc_say() -> None:
    """Each pad a spring: rigid tilt about any line; the first pad to lose its load, worst line."""
    for number in (3, 4, 5):
        held = spokes_of(flywheel(number))
        angle = 2 * np.pi * np.arange(number) / number
        loads = []
        for line in np.linspace(0, 2 * np.pi, 721):
            height = held.radius * np.cos(angle - line)
            per_moment = height / np.sum(height**2)
            loads.append(np.max(per_moment))
        assert likely(held.tilt) == pytest.approx(likely(held.force) / max(loads), rel=1e-5)


def test_a_wheel_of_many_spokes_is_strapped_on_every_other_one() -> None:
    job = flywheel(8)
    thin = replace(job, work=replace(job.work, spokes=Spokes(8, 0.016, 0.012)))
    assert spokes_of(thin).number == 4


def test_a_web_wants_holes_in_it_and_a_small_blank_has_no_room_for_them() -> None:
    assert set(down(flywheel(0))) == {HOLES, BORE}
    assert SPOKES not in down(wheel_job())
    assert HOLES not in down(wheel_job(outside=0.03))


def test_holes_are_a_doubt_that_straps_are_not() -> None:
    by = {h.tool: h for h in Faceplate().offer(flywheel(0), TABLES)}
    holes = next(h for t, h in by.items() if "holes" in t)
    assert holes.fit is not None
    assert holes.fit.margin < 1
    assert "stay in the work" in holes.fit.reason
    straps = Faceplate().offer(flywheel(), TABLES)[0]
    assert straps.fit is not None
    assert straps.fit.margin > 1


def test_a_worn_or_rough_bore_goes_on_the_faceplate_and_not_on_a_spigot() -> None:
    readings = (BoreReading(0.01, 0.016, "up"), BoreReading(0.01, 0.01615, "across"))
    for job, said in (
        (with_bore(flywheel(), readings=readings), "oval"),
        (with_bore(flywheel(), made_by="sand-casting"), "as cast"),
    ):
        assert said in SpigotPlate().offer(job, TABLES)[0].cannot
        assert not Faceplate().offer(job, TABLES)[0].cannot


def test_nothing_to_hold_is_refused() -> None:
    small = wheel_job(outside=0.024, bore=0.0045)
    for way in (Faceplate(), SpigotPlate()):
        (only,) = way.offer(small, TABLES)
        assert "no room" in only.cannot


def test_a_bolt_through_the_bore_is_offered_whatever_else_would_find_it() -> None:
    ring = wheel_job(outside=0.034, length=0.012, bore=0.0254)
    assert "through the bore" in Faceplate().offer(ring, TABLES)[0].tool
    readings = (BoreReading(0.005, 0.0254, "up"), BoreReading(0.005, 0.0256, "across"))
    worn = with_bore(ring, readings=readings)
    assert "through the bore" in Faceplate().offer(worn, TABLES)[0].tool
    large = wheel_job(outside=0.112, length=0.008, bore=0.1)
    assert "through the bore" in Faceplate().offer(large, TABLES)[0].tool


def test_the_bolt_leaves_room_for_the_indicators_finger() -> None:
    """5 mm all round: a bore of 17.2 mm takes 6 mm and not the 8 mm that half of it would."""

    def tool(bore: float) -> str:
        return Faceplate().offer(wheel_job(outside=0.034, length=0.012, bore=bore), TABLES)[0].tool

    assert "a 6 mm" in tool(0.0172)
    assert "a 8 mm" in tool(0.0182)
    assert "no room" in Faceplate().offer(wheel_job(outside=0.03, bore=0.0155), TABLES)[0].cannot


def sleeve(length: float) -> Job:
    return wheel_job(outside=0.042, length=length, bore=0.02502)


def test_long_work_is_not_stood_on_its_end_on_a_plate() -> None:
    """The washer presses on 41.16 mm at most: 2 1/2 times that is 103 mm; ten 12 mm threads are 120."""
    for way in (Faceplate(), SpigotPlate()):
        assert not way.offer(sleeve(0.1), TABLES)[0].cannot
        assert "leans" in way.offer(sleeve(0.16), TABLES)[0].cannot


def test_holes_are_drilled_before_the_work_is_laid_on_the_plate() -> None:
    for way in (Faceplate(), SpigotPlate()):
        holes = next(h for h in way.offer(flywheel(0), TABLES) if "holes" in h.tool)
        titles = [s.title for s in holes.mount]
        assert titles.index("Holes first") < titles.index("Hold it down")
        assert [s for s in holes.mount if "drilled clear" in s.text] == [
            holes.mount[titles.index("Holes first")]
        ]
        if isinstance(way, Faceplate):
            assert titles.index("Holes first") < titles.index("Nip it")


def test_bolts_and_the_packing_under_a_web_that_stands_off_are_drawn() -> None:
    """The web begins 9 mm from the plate, B leading; a flat disc wants no packing."""
    found = next(h for h in Faceplate().offer(flywheel(0), TABLES) if "holes" in h.tool)
    packing = [r for r in found.picture.rings if r.role == "pin"]
    assert {(r.start, round(r.end, 9)) for r in packing} == {(0.0, 0.009)}
    bolt = next(r for r in found.picture.rings if r.role == "screw")
    assert bolt.inner < spot(found) < bolt.outer
    assert bolt.start < 0 < bolt.end
    assert bolt.end == pytest.approx(0.021)
    flat = Faceplate().offer(wheel_job(outside=0.12), TABLES)
    disc = next(h for h in flat if "holes" in h.tool)
    assert not [r for r in disc.picture.rings if r.role == "pin"]


def spot(held: Held) -> float:
    """Radius at which the bolts are seen from the end."""
    return next(m.radius for m in held.picture.marks if m.role == "screw")


def test_only_a_batch_is_told_of_its_next_piece() -> None:
    one, four = wheel_job(outside=0.12), wheel_job(outside=0.12)
    four = replace(four, work=replace(four.work, quantity=4))
    for way in (Faceplate(), SpigotPlate()):
        said = [
            " ".join(s.text + s.title for s in way.offer(j, TABLES)[0].release) for j in (one, four)
        ]
        assert "ext piece" not in said[0]
        assert "ext piece" in said[1]


def test_a_spigot_runs_truer_than_a_hand_sets_and_the_faceplate_needs_no_making() -> None:
    def first(way: Faceplate | SpigotPlate) -> Held:
        return way.offer(flywheel(), TABLES)[0]

    plate, spigot = first(Faceplate()), first(SpigotPlate())
    assert plate.grip is not None
    assert spigot.grip is not None
    assert likely(spigot.grip.runout) < likely(plate.grip.runout)
    assert plate.making == 0
    assert spigot.making == TABLES.holding_fact("plate_spigot_making").best


def test_a_shop_without_a_faceplate_must_buy_one() -> None:
    job = flywheel()
    without = replace(job, shelf=replace(job.shelf, have_not=("faceplate",)))
    bought = [n.what for n in Faceplate().offer(without, TABLES)[0].to_buy]
    assert bought == ["faceplate"]


def test_the_counterweight_balances_and_the_speed_shakes_by_the_share_stated() -> None:
    part = Part(flywheel(), TABLES)
    held = spokes_of(flywheel())
    b = balance_of(part, held)
    uneven = 0.25 * 0.25 * held.radius
    assert b.weight * b.at == pytest.approx(uneven)
    force = uneven * (2 * np.pi * b.speed) ** 2
    assert force == pytest.approx(0.02 * 50 * 9.80665)


def test_the_longer_the_work_the_softer() -> None:
    def stiff(length: float) -> float:
        grip = Faceplate().offer(wheel_job(outside=0.3, length=length), TABLES)[0].grip
        assert grip is not None
        return grip.stiffness

    assert stiff(0.02) > stiff(0.04) > stiff(0.08)


def test_a_spigot_turned_in_place_needs_no_indicator_where_setting_true_does() -> None:
    ring = wheel_job(outside=0.034, length=0.012, bore=0.0254)
    bare = replace(ring, shelf=replace(ring.shelf, have_not=("indicator", "drill and tap", "bar")))
    assert not SpigotPlate().offer(bare, TABLES)[0].to_buy
    assert [n.what for n in Faceplate().offer(bare, TABLES)[0].to_buy] == ["dial indicator"]


@pytest.mark.parametrize(
    ("outside", "bore", "name"), [(0.034, 0.0254, "stout washer"), (0.112, 0.09, "clamp plate")]
)
def test_what_spans_the_bore_is_named_sized_and_counted(
    outside: float, bore: float, name: str
) -> None:
    job = wheel_job(outside=outside, length=0.012, bore=bore)
    for way in (Faceplate(), SpigotPlate()):
        held = next(h for h in way.offer(job, TABLES) if "through the bore" in h.tool)
        assert held.tool.endswith(f"bolt through the bore and a {name}")
        assert any(f"The {name}, " in s.text and " thick" in s.text for s in held.mount)
        made = [n.minutes for n in held.needs if "clamp plate" in n.what]
        assert made == ([20.0] if name == "clamp plate" else [])


def test_the_plate_stands_the_pull_of_its_bolt() -> None:
    """Bent no further at its hole than the figure says it may, by the twisted ring at the least."""
    held = down(wheel_job(outside=0.112, length=0.012, bore=0.09))[BORE]
    turned = 6 * likely(held.force) / (2 * np.pi) / held.cap.thick**2
    assert turned < 150e6
    assert held.cap.thick >= held.cap.least > 0.5 * held.cap.thick
