"""An aluminium wheel roughed on its mandrel, its warmth worked out beside the package.

The sums of the two bodies stand here with the properties typed in by hand (aluminium 2700 kg/m³,
896 J/(kg K), 23.1 ppm/K; steel 7830, 470, 40 W/(m K), 11.5 ppm/K), and scipy raises the matrix of
the equations to its exponential. Of the plan only the size of the mandrel, the length that bears and
what the cut asks (its force times its speed) are taken.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.linalg import expm
from tests.jobs_made import wheel_job
from tests.unit.test_planning_choices import trial_of

from borewright.job.records import CutWish
from borewright.mechanics.spread import likely
from borewright.planning.heating.heat_run import heat_run
from borewright.planning.heating.waits import taken_heat
from borewright.planning.taper.trial import Trial

HAND = 1e-6
"""The sums are the same ones written out again; the exponential is good to ten places."""

OUTSIDE, LENGTH, BORE = 0.063, 0.025, 0.016006
AIR, JOINT, CENTER, SHARE = 35.0, 4000.0, 0.3, 0.12
BETWEEN_PASSES, BETWEEN_CUTS = 15.0, 60.0
FEED, SPEED = 0.1e-3, 1.0


def two_cuts() -> Trial:
    cuts = (CutWish("turn", 0.5e-3, FEED, SPEED), CutWish("turn", 0.3e-3, FEED, SPEED))
    return trial_of(wheel_job(cuts=cuts))


def rates(trial: Trial) -> tuple[np.ndarray, float]:
    """The matrix of the equations (1/s), and m c of the work (J/K)."""
    m = trial.mandrel
    volume = math.pi / 4 * (OUTSIDE**2 - BORE**2) * LENGTH
    work = volume * 2700 * 896
    work_area = math.pi * OUTSIDE * LENGTH + math.pi / 2 * (OUTSIDE**2 - BORE**2)
    middle = (m.small_end + m.large_end) / 2
    section = math.pi / 4 * middle**2
    ends = math.pi / 4 * m.end_diameter**2 * 2 * m.end_length
    bar = (section * m.ground_length + ends) * 7830 * 470
    bare = math.pi * middle * (m.ground_length - LENGTH)
    bare += math.pi * m.end_diameter * 2 * m.end_length
    contact = likely(trial.grip.contact_length)
    free = m.ground_length + 2 * m.end_length - contact
    through = 1 / (JOINT * math.pi * BORE * contact)
    along = free / (12 * 40 * section)
    g = 1 / (through + along)
    lost, lost_by_bar = AIR * work_area, AIR * bare + 2 * CENTER
    assert lost_by_bar / bar > lost / work  # so no bound on the bar's cooling comes in
    matrix = [[-(g + lost) / work, g / work], [g / bar, -(g + lost_by_bar) / bar]]
    return np.array(matrix), work


def on(matrix: np.ndarray, state: np.ndarray, heating: float, seconds: float) -> np.ndarray:
    """Warmth so many seconds on; `heating` in K/s of the work."""
    whole = np.zeros((3, 3))
    whole[:2, :2], whole[0, 2] = matrix, heating
    return (expm(whole * seconds) @ np.array([*state, 1.0]))[:2]


def heat_and_time(trial: Trial, number: int) -> tuple[float, float]:
    """W into the work and seconds of one pass, at the speed that a round spindle speed gives."""
    speed = trial.cuts[number].cutting_speed
    assert speed == pytest.approx(SPEED, rel=0.03)
    power = SHARE * likely(trial.demands[number].tangential) * speed
    return power, LENGTH * math.pi * OUTSIDE / (FEED * speed)


def by_hand(trial: Trial, wait: float) -> list[np.ndarray]:
    """Warmth of work and mandrel at the end of both cuts."""
    matrix, work = rates(trial)
    state, found = np.zeros(2), []
    for number, cut in enumerate(trial.cuts):
        assert cut.passes == 1
        power, one = heat_and_time(trial, number)
        if number:
            state = on(matrix, state, 0.0, BETWEEN_CUTS + wait)
        state = on(matrix, state, power / work, one)
        found.append(state)
    return found


@pytest.mark.parametrize("wait", [0.0, 90.0])
def test_both_bodies_are_as_warm_as_by_hand_after_every_cut(wait: float) -> None:
    trial = two_cuts()
    run = heat_run(trial, waits=(0.0, wait))
    for heated, hand in zip(run.cuts, by_hand(trial, wait), strict=True):
        assert heated.after[:, 0] == pytest.approx(hand, rel=HAND)


def test_the_schedule_says_that_warmth_and_loses_the_squeeze_by_hand() -> None:
    trial = two_cuts()
    for said, (work, mandrel) in zip(taken_heat(trial), by_hand(trial, 0.0), strict=True):
        assert said.warm_after == pytest.approx(work - mandrel, rel=HAND)
        assert said.work_warm == pytest.approx(work, rel=HAND)
        lost = trial.grip.diameter * (23.1e-6 * work - 11.5e-6 * mandrel)
        rough = float(trial.hold.facts.lost_rough[0])
        warm = trial.hold.likely_force(trial.chosen.travel, rough + lost)
        cold = trial.hold.likely_force(trial.chosen.travel, rough)
        at_its_end = said.grip_left[0]
        assert at_its_end == pytest.approx(warm / cold, rel=HAND)


def test_passes_are_bursts_with_pauses_between() -> None:
    """Three passes of a cut and two pauses, against the same five steps by hand."""
    from dataclasses import replace

    trial = two_cuts()
    cuts = tuple(replace(c, passes=3) for c in trial.cuts[:1])
    chosen = replace(trial.chosen, cuts=cuts, demands=trial.demands[:1])
    (heated,) = heat_run(replace(trial, chosen=chosen)).cuts
    matrix, work = rates(trial)
    power, one = heat_and_time(trial, 0)
    state = np.zeros(2)
    for number in range(3):
        state = on(matrix, state, 0.0, BETWEEN_PASSES if number else 0.0)
        state = on(matrix, state, power / work, one)
    assert heated.after[:, 0] == pytest.approx(state, rel=HAND)
    assert heated.ends - heated.begins == pytest.approx(3 * one + 2 * BETWEEN_PASSES)
