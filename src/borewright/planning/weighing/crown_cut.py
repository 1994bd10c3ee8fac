"""The crown of a pulley's face as a cut: by the top slide set over, or stepped off by the dial."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from borewright.answer.crown import Dial, PulleyCrown
from borewright.answer.records import Cut
from borewright.cutting.base import Base, base_of, turn
from borewright.cutting.directions import LOOSENS
from borewright.cutting.stock import finished_outside
from borewright.job.crown_wish import CrownWish, crowned_face, crowned_stretch
from borewright.job.records import Job
from borewright.making.crown import CrownAsked, crown_for
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

DIALS: dict[str, Dial] = {"radius": "radius", "diameter": "diameter"}


def crown_wanted(job: Job, wish: CrownWish, tables: Tables) -> PulleyCrown:
    """The crown of this job's face; RefusedInput or UnknownName for a rule that has none for it."""
    outside = finished_outside(job, tables) or job.work.outside
    dial = DIALS.get(job.shelf.machine.dial, "unknown")
    asked = CrownAsked(wish.rule or None, wish.height, wish.shape, wish.flat, dial)
    return crown_for(outside, crowned_face(job.work), asked, job.units, tables)


def crown_cuts(job: Job, tables: Tables, share: float = 1.0) -> Iterator[Cut]:
    """The crown as one row of both halves; nothing where none is wanted, or it is only filed.
    `share`: of its height that the top slide takes off at once."""
    wish = job.work.finished.form.crown
    if wish is None:
        return
    crown = crown_wanted(job, wish, tables)
    base = replace(base_of(job, tables), diameter=crown.diameter, span=crowned_stretch(job.work))
    feed = tables.cut_defaults(job.work.material).finish_feed
    if crown.shape == "taper":
        yield _by_slide(crown, base, feed, math.ceil(round(1 / share, 6)), Show(job.units))
    elif crown.stepped.stairs is not None:
        yield _in_steps(crown, base, feed, Show(job.units))


def _by_slide(crown: PulleyCrown, base: Base, feed: Metre, passes: int, show: Show) -> Cut:
    """Half by half; each pass as long as the slope."""
    name = f"crown the face, {show.turned(crown.height)} down at its edges, top slide by hand"
    own = replace(base, length=(crown.face - crown.flat) / 2)
    deep = crown.height / passes
    cut = turn("crown", name, own, deep, feed, 2 * passes, crown.edge_diameter)
    return replace(cut, kind="crown")


def _in_steps(crown: PulleyCrown, base: Base, feed: Metre, show: Show) -> Cut:
    """Every stop of both halves; the deepest of the steps stands for all, their length is the mean.
    The half at the headstock is fed away from it, and that half counts for the sign."""
    made = crown.stepped.stairs
    assert made is not None
    deepest = float(np.max(np.diff(made.depths, prepend=0.0)))
    name = f"crown the face, {show.turned(crown.height)} down at its edges, step by step"
    own = replace(base, length=float(np.mean(made.stops)))
    cut = turn("crown", name, own, deepest, feed, 2 * len(made.stops), crown.edge_diameter)
    return replace(cut, kind="crown", direction="from each edge to its stop", seat_effect=LOOSENS)
