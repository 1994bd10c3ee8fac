"""The geometry that is drawn, from a trial."""

from __future__ import annotations

import numpy as np

from borewright.answer.picture import Band, Layout, Ring
from borewright.holding.taper.measured_mandrel import diameter_of
from borewright.job.interrupted import CrossHole
from borewright.job.records import Piece
from borewright.job.web import whole_round
from borewright.mechanics.chamfer import bearing
from borewright.mechanics.num import distinct
from borewright.mechanics.spread import high_end, likely, low_end
from borewright.planning.questions.slip import hardest_cut
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.margins import slip_radii
from borewright.quantities.si import Metre

DRAWN_RADII = 4.0
"""A slip radius beyond this many work radii is said in words, not drawn."""


def layout(trial: Trial) -> Layout:
    """Mandrel, seat, work and limits; seats are clipped to the lines they may sit between."""
    m, allow = trial.mandrel, trial.tables.allowance
    seat = _clipped(trial)
    z, over, kept = _interference(trial)
    radius, radius_low = _slip_circle(trial)
    return Layout(
        mandrel_name=m.name,
        small_end=m.small_end,
        large_end=m.large_end,
        ground_length=m.ground_length,
        overall_length=m.overall_length,
        end_diameter=m.end_diameter,
        end_length=m.end_length,
        bore=trial.job.work.bore.size,
        work_length=trial.hold.length,
        rings=tuple(_ring(p, trial) for p in trial.job.work.pieces),
        seat=seat,
        touch=Band(
            *(float(v) for v in np.array([seat.low, seat.best, seat.high]) - trial.chosen.press)
        ),
        travel=trial.chosen.press,
        leading_face=trial.hold.leading,
        tool_limit_large=m.ground_length
        - allow("dog_clearance").best
        + allow("tool_clearance").best,
        tool_limit_small=0.0,
        slip_radius=radius,
        slip_radius_low=radius_low,
        interference_z=z,
        interference=over,
        interference_kept=kept,
        at_left=_at_left(trial),
        turns=any(c.space is None for c in trial.cuts),
        root_diameter=_root(trial),
        keyway=trial.job.work.keyway,
        cross_hole=_cross_hole(trial),
        spokes=trial.job.work.spokes,
        driven_by=_driven_by(trial),
        chamfers=_chamfers(trial),
        grips=_grips(trial),
        drive=trial.drive.mark if trial.drive else None,
    )


def _cross_hole(trial: Trial) -> CrossHole | None:
    """The cross hole with its place counted from the leading face."""
    hole = trial.job.work.cross_hole
    if hole is None or hole.at is None or trial.hold.leading == "A":
        return hole
    return CrossHole(hole.diameter, trial.hold.length - hole.at)


def _chamfers(trial: Trial) -> tuple[Metre, Metre]:
    """The legs at the leading edge of the bore and at the far one."""
    a, b = trial.job.work.chamfers.legs
    return (a, b) if trial.hold.leading == "A" else (b, a)


def _clipped(trial: Trial) -> Band:
    """The band of the seat inside its lines; the lines themselves, drawn midway, where it is not known."""
    least, most = sorted(trial.seat_lines)
    if not trial.touch_is_known:
        return Band(least, (least + most) / 2, most)
    low, high = trial.within_lines(*trial.seat_band)
    return Band(low, min(max(likely(trial.seat), low), high), high)


def _interference(trial: Trial) -> tuple[tuple[Metre, ...], tuple[Metre, ...], tuple[Metre, ...]]:
    """From where the bore begins to bear to where it ends; a counterbore or chamfer has none."""
    hold = trial.hold
    start, end = bearing(hold.line)
    edges = [z for z in hold.line.edges.tolist() if start <= z <= end]
    z = distinct([*edges, *np.linspace(start, end, 13).tolist()])
    sizes = np.interp(z, hold.line.edges, hold.sizes)
    over = diameter_of(hold.mandrel, likely(trial.seat) - z) - sizes
    kept = np.maximum(over - likely(hold.facts.lost_rough), 0.0)
    return tuple(map(float, z)), tuple(map(float, over)), tuple(map(float, kept))


def _grips(trial: Trial) -> Metre | None:
    """The length that bears; None where the bore is relieved on the way, and grip with it."""
    start, end = bearing(trial.hold.line)
    unbroken = end - start - trial.hold.bears < 1e-9
    return likely(trial.grip.contact_length) if unbroken else None


def _slip_circle(trial: Trial) -> tuple[Metre | None, Metre | None]:
    """Of the hardest cut; none where that is a gear, whose force does not grow with the radius."""
    hard = hardest_cut(trial)
    if hard.cut.kind == "gear":
        return None, None
    radii = slip_radii(trial.grip, hard.demand)
    far = DRAWN_RADII * trial.job.work.outside / 2
    best, low = likely(radii), low_end(radii)
    return (best if best < far else None), (low if low < far and high_end(radii) > 0 else None)


def _at_left(trial: Trial) -> str:
    """What the large end is held by, on the machine of the first cut."""
    return "Dividing head" if trial.cuts[0].kind == "gear" else "Headstock"


def _driven_by(trial: Trial) -> str:
    """What turns the large end: on the grinder and on the dividing head always a dog."""
    return trial.job.driven_by if any(c.on_lathe for c in trial.cuts) else "dog"


def _root(trial: Trial) -> Metre | None:
    """Diameter (m) at the root of the teeth; None where no gear is cut."""
    roots = [c.diameter - 2 * c.space.whole_depth for c in trial.cuts if c.space is not None]
    return roots[-1] if roots else None


def _ring(piece: Piece, trial: Trial) -> Ring:
    length = trial.hold.length
    start, end = piece.start, piece.end
    if trial.hold.leading == "B":
        start, end = length - piece.end, length - piece.start
    work = trial.job.work
    spoked = piece not in whole_round(work)
    return Ring(start, end, piece.outside, piece.inside or work.bore.size, spoked)
