"""The step that sets the lathe parallel, where a taper of its own would show in the work."""

from __future__ import annotations

from borewright.answer.records import Figure, Input
from borewright.mechanics.parallel import error_over, taper_of_set_over
from borewright.planning.steps.load_steps import Line
from borewright.planning.weighing.figures import figure, given
from borewright.planning.weighing.turned import Turned
from borewright.quantities.si import Metre

EVEN = 1e-6
"""Rings (m) this near to the largest outside are turned with it; ours."""


def parallel_step(trial: Turned, between: Metre) -> tuple[Line, ...]:
    """Nothing where the rim is too short, or its tolerance too wide, for a taper to show.

    `between`: length (m) of what turns between the centers.
    """
    rim, tables, show = _rim(trial), trial.tables, trial.show
    turned = any(cut.kind == "turn" for cut in trial.cuts)
    out, share = tables.truth_fact("tailstock_out"), tables.truth_fact("parallel_share")
    usual = tables.allowance("usual_tolerance")
    tolerance = trial.job.work.finished.tolerance or usual.best
    error = float(error_over(taper_of_set_over(out.best, between), rim))
    allowed = share.best * tolerance
    if not turned or error <= allowed:
        return ()
    text = (
        f"Before the last pass: a tailstock {show.small(out.best)} out of line leaves {show.small(error)} of taper on this rim; "
        f"{show.small(allowed)} may be left. Micrometer at both edges after a light pass. Larger at the tailstock: its center "
        f"goes towards the tool, {between / (2 * rim):.2g} times the difference; smaller, away. An indicator on its barrel reads it."
    )
    inputs = (
        given("tailstock out", out.best, "m", "small"),
        given("between centers", between, "m"),
        given("rim", rim, "m"),
    )
    return (
        (
            "Lathe parallel",
            text,
            (
                _left(error, inputs, out.source),
                *_kept(allowed, tolerance, share.best, share.source),
            ),
            ("headstock edge", "tailstock edge"),
        ),
    )


def _left(error: Metre, inputs: tuple[Input, ...], source: str) -> Figure:
    return figure("lathe_taper", error, "m", "small", "lathe_taper", inputs, (source,))


def _kept(allowed: Metre, tolerance: Metre, share: float, source: str) -> tuple[Figure, ...]:
    inputs = (given("share", share), given("tolerance", tolerance, "m", "small"))
    return (figure("taper_allowed", allowed, "m", "small", "taper_allowed", inputs, (source,)),)


def _rim(trial: Turned) -> Metre:
    """Length (m) of the largest outside."""
    work = trial.job.work
    return sum(p.end - p.start for p in work.pieces if p.outside >= work.outside - EVEN)
