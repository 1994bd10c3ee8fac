"""The picture of the pressed joint, for the hold and travel that the plan chooses."""

from __future__ import annotations

import numpy as np

from borewright.answer.pressed import LargestTension, Pictured, PressedPicture, StripPressure
from borewright.answer.records import Assumption, Verdict
from borewright.holding.taper.drawn_state import DrawnState, drawn_state
from borewright.job.records import Job
from borewright.mechanics.spread import likely
from borewright.mechanics.tension_place import largest_place
from borewright.planning.choice.arrangement import Arranged, arrange
from borewright.planning.choice.candidates import Weighed
from borewright.planning.choice.recommended import other_ways
from borewright.planning.picture.pictured_notes import picture_notes
from borewright.planning.picture.tinted import Tension, shape_of, tension_bands
from borewright.planning.shop.names import check_names, material_taken
from borewright.planning.taper.trial import Trial
from borewright.planning.words.cautions import cautions
from borewright.planning.words.push_advice import push_advice
from borewright.planning.words.words import assumed, headline
from borewright.quantities.units import unit
from borewright.reference.library import Tables

PRINTED = ("local-codes", "press-brittle", "scrap-castings", "press-stand-clear")
"""Cautions of the plan that speak of pressing: those the picture carries."""


def picture_job(job: Job, tables: Tables) -> Pictured:
    """What the pressed joint does to the work; without a picture where nothing would press.

    Raises what `plan_job` raises, and OutsideModel for an outline that is no one body.
    """
    check_names(job, tables)
    job, taken = material_taken(job, tables)
    found = arrange(job, tables)
    best = found.best
    if best is None:
        why = "there is no mandrel on the shelf that this bore fits"
        return Pictured(Verdict.NO, "No: nothing holds it by its bore.", why=why)
    said = headline(best, other_ways(found, best.trial.hold.way))
    trial = best.trial
    if best.question("bore").verdict is Verdict.NO and not _on_ground(trial):
        why = f"the likely bore would not sit on the ground length of {trial.mandrel.name}"
        return Pictured(best.verdict, said, why=why)
    state = drawn_state(trial.job, trial.hold, trial.chosen.travel)
    if not (state.tight > 0).any():
        return Pictured(best.verdict, said, why="nothing presses at this travel")
    return _drawn(found, best, state, said, tables, taken)


def _on_ground(trial: Trial) -> bool:
    """Whether the likely bore touches and sits on the ground length at all."""
    touch = trial.hold.likely_touch
    return touch > 0 and touch + trial.chosen.travel <= trial.mandrel.ground_length


def _drawn(
    found: Arranged,
    best: Weighed,
    state: DrawnState,
    said: str,
    tables: Tables,
    taken: tuple[Assumption, ...],
) -> Pictured:
    trial, job = best.trial, best.trial.job
    facts, mandrel = trial.hold.facts, trial.mandrel
    strength = likely(facts.strength)
    largest = _largest(state, strength)
    tension = Tension(state.body, float(facts.work.poisson), state.tight, job.work.bore.size)
    in_psi = float(unit("pressure", "psi" if job.units == "inch" else "MPa").factor)
    shape, bounds = shape_of(tension, largest.tension, in_psi, _gap(state))
    start, end = state.contact
    called = cautions(job, found.shop, tables, mandrel)
    picture = PressedPicture(
        title=job.title,
        units=job.units,
        verdict=best.verdict,
        headline=said,
        material=tables.material(job.work.material).name,
        mandrel=mandrel.name,
        leading_face=trial.hold.leading,
        bore=job.work.bore.size,
        work_length=trial.hold.length,
        travel=trial.chosen.press,
        taper=mandrel.taper,
        strength_kind="tensile" if facts.brittle else "yield",
        strength=strength,
        pressure=_pressures(state),
        contact_from=start,
        contact_to=end,
        normal_force=state.joined.normal_force(state.tight),
        normal_force_eased=state.joined.normal_force(state.eased),
        largest=largest,
        bands=tension_bands(bounds, largest.tension, strength),
        stop_push=push_advice(trial).stop_at.best,
        notes=picture_notes(trial, state, shape, bounds),
        cautions=tuple(c for c in called if c.id in _printed(best.verdict)),
        assumed=(*taken, *assumed(job, found.shop, best, tables)),
        sources=_sources(best, tables),
    )
    return Pictured(best.verdict, said, picture, shape)


def _printed(verdict: Verdict) -> tuple[str, ...]:
    """Without the one that names a push where there is none: a no is not to be pressed at all."""
    return tuple(i for i in PRINTED if verdict is not Verdict.NO or i != "press-brittle")


def _pressures(state: DrawnState) -> tuple[StripPressure, ...]:
    lengths = state.joined.work.lengths * state.joined.bore
    rows = zip(state.joined.places, lengths, state.tight, state.eased, strict=True)
    return tuple(StripPressure(*(float(v) for v in row)) for row in rows)


def _gap(state: DrawnState) -> tuple[tuple[float, float], ...]:
    open_ = np.where(state.tight > 0, 0.0, state.gap)
    return tuple((float(z), float(g)) for z, g in zip(state.joined.places, open_, strict=True))


def _largest(state: DrawnState, strength: float) -> LargestTension:
    place, bore = largest_place(state.joined.work, state.tight), state.joined.bore
    return LargestTension(
        place.z * bore, place.r * bore, place.tension, float(place.tension / strength)
    )


def _sources(best: Weighed, tables: Tables) -> tuple[str, ...]:
    """Where strength, moduli and roughness are from."""
    material, trial = best.trial.job.work.material, best.trial
    strength = "tensile" if trial.hold.facts.brittle else "yield"
    ids = {
        tables.material_range(material, name).source for name in ("modulus", "poisson", strength)
    }
    ids.add(tables.material_range(trial.mandrel.material, "modulus").source)
    ids.add(tables.roughness(trial.job.work.bore.made_by).source)
    return tuple(f"{i}: {tables.source(i).citation}" for i in sorted(ids))
