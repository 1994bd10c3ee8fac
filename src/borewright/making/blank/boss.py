"""A boss to hold by, where one is asked for and can stand."""

from __future__ import annotations

from collections.abc import Sequence

from borewright.answer.made_casting import Boss, End, Mould
from borewright.errors import RefusedInput
from borewright.job.records import Job, Piece
from borewright.job.web import MEETS, on_bore
from borewright.making.blank.casting_asked import CastingAsked
from borewright.making.blank.core import Hole
from borewright.making.blank.wheel import tidy
from borewright.making.shop_sizes import up_to_rule
from borewright.mechanics.cast_metal import draft_adds
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


def bite_of(outside: Metre, tables: Tables) -> Metre:
    """Length (m) that jaws must take of a boss or a chucking piece of so large a casting (m).

    >>> from borewright.reference import tables
    >>> round(bite_of(0.05, tables()), 4), round(bite_of(0.3, tables()), 4)
    (0.0127, 0.036)
    """
    fact = tables.casting_fact
    return max(fact("boss_bite").best, fact("boss_bite_share").best * outside)


def boss_of(
    job: Job,
    pieces: Sequence[Piece],
    hole: Hole,
    mould: Mould,
    asked: CastingAsked,
    tables: Tables,
) -> Boss | None:
    """The boss asked for; None where none is. RefusedInput for one that would not hold or not draw.

    It must leave a wall round the finished bore, be stout enough to turn the rim by, and with its
    own draft be no wider than the thin end that it stands on.
    """
    if asked.boss is None or asked.boss == "none":
        return None
    face, show = asked.boss, Show(job.units)
    outside = max(p.outside for p in pieces)
    long = up_to_rule(bite_of(outside, tables), job.units)
    _check_hole(hole, long, show, tables)
    wall = tables.casting_fact("boss_wall").best
    limits = job.work.bore.limits
    bore = limits.high if limits else job.work.bore.size
    stout = tables.allowance("boss_share").best * outside
    walled = bore + 2 * wall
    size = up_to_rule(max(walled, stout), job.units)
    most = _stands_on(pieces, face, job, show)
    root = tidy(size + 2 * draft_adds(long, mould.outside_draft))
    if root > most + MEETS:
        why = f"to leave {show.length(wall)} of wall round the bore"
        if stout > walled:
            why = f"to be stout enough to turn {show.length(outside)} by"
        allowed = f"none: {why} it would be {show.length(root)} thick where it stands, on a face of {show.length(most)}"
        raise RefusedInput("--boss", face, allowed)
    return Boss(face, tidy(size), tidy(long))


def _stands_on(pieces: Sequence[Piece], face: End, job: Job, show: Show) -> Metre:
    """Outside (m) of the ring at the bore that reaches this face, at its thin end."""
    end = 0.0 if face == "A" else max(p.end for p in pieces)
    reached = [
        p.outside
        for p in on_bore(pieces, job.work.bore.size)
        if abs((p.start if face == "A" else p.end) - end) <= MEETS
    ]
    if not reached:
        raise RefusedInput(
            "--boss", face, "the other face: the hub lies below the rim here, and jaws reach no boss on it"
        )  # fmt: skip
    return max(reached)


def _check_hole(hole: Hole, long: Metre, show: Show, tables: Tables) -> None:
    """RefusedInput for a boss on a hole left open in the sand, or that makes its core too slender."""
    core, slender = hole.core, tables.casting_fact("core_slender").high
    if hole.sand:
        found = f"a boss on a casting with a hole of {show.length(hole.sand)} left open in the sand"
        raise RefusedInput("--boss", found, "--core cored or --core solid beside it, or none")
    if core and core.between + long > slender * core.diameter:
        found = f"a boss on a casting cored {show.length(core.diameter)}"
        allowed = (
            f"--core solid beside it, or none: the core is {show.length(core.between)} long already"
        )
        raise RefusedInput("--boss", found, allowed)
