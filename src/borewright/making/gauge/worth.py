"""How true a plug is made, where its two ends may lie, and what that takes of the window.

Turned and polished first; lapped where turning would take more than half of the window. Each end
has a tenth of the window, or more where the shop can neither make nor measure a tenth.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from borewright.errors import OutsideModel
from borewright.making.cannot import Cannot
from borewright.making.facts import best_of
from borewright.making.gauge.asked import Finish, GaugeAsked
from borewright.mechanics.plug_gauge import (
    PlugZones,
    most_plug_steps,
    plug_shares,
    plug_zones,
    readings_for,
    zone_width,
)
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, Ratio
from borewright.reference.library import Tables

FINISHES: tuple[Finish, ...] = ("turned", "lapped")
"""From the one that every shop does."""


APART = 1.5
"""Steps over the tolerance from which zones of neighbours do not meet: one end step, one middle."""


@dataclass(frozen=True, slots=True)
class Worth:
    """Lengths in m. `smallest` bore; `width`: tolerance of each end; `known`: the micrometer's, either way.

    `go_reads`, `not_go_reads`: readings that prove each end to be in its zone. `tenth`: the share
    that gauge makers give, in m; `coarser` where the shop's own width is more.
    """

    finish: Finish
    smallest: Metre
    width: Metre
    wear: Metre
    known: Metre
    hit: Metre
    share: Ratio
    tenth: Metre
    zones: PlugZones
    go_reads: tuple[Metre, Metre]
    not_go_reads: tuple[Metre, Metre]

    @property
    def worn_out(self) -> Metre:
        """The reading (m) from which the going end may be down to the smallest bore."""
        return self.smallest + self.known

    @property
    def coarser(self) -> bool:
        """Whether a tenth of the window is finer than the shop makes and measures."""
        return self.width > self.tenth * (1 + 1e-9)


def worth_of(asked: GaugeAsked, tables: Tables) -> Worth | Cannot:
    """The plug's zones by the finish asked for, else by the one that serves."""
    tried = [_by(f, asked, tables) for f in (FINISHES if asked.finish is None else (asked.finish,))]
    made = [worth for worth in tried if worth is not None]
    if not made:
        return _none(asked, tables)
    serving = (worth for worth in made if _serves(worth, asked, tables))
    return next(serving, min(made, key=lambda worth: worth.zones.lost_worst))


def steps_wanted(asked: GaugeAsked, tables: Tables) -> int:
    """Steps of a stepped plug: as asked, else as many as the plan has for this window."""
    feel, usual = tables.boring("plug_least_step").best, tables.boring("plug_most_steps").best
    return asked.steps or len(plug_shares(asked.band, feel, int(usual)))


def least_step(width: Metre, tables: Tables) -> Metre:
    """How far steps stand apart at least (m): told by feel, and zones that do not meet."""
    return max(tables.boring("plug_least_step").best, APART * width)


def _serves(worth: Worth, asked: GaugeAsked, tables: Tables) -> bool:
    """Whether it takes no more than half of the window, and its steps can stand apart."""
    if worth.zones.lost_worst > best_of(tables, "plug_facts")("most_lost"):
        return False
    room = most_plug_steps(asked.band, least_step(worth.width, tables))
    return not asked.stepped or room >= steps_wanted(asked, tables)


def known_to(finish: Finish, asked: GaugeAsked, tables: Tables) -> Metre:
    """Half the band to which the shop knows the plug (m)."""
    own = best_of(tables, "plug_facts")
    return own("comparator_known") if asked.comparator else own(f"{finish}_known")


def hit_within(finish: Finish, asked: GaugeAsked, tables: Tables) -> Metre:
    """Band of readings (m) within which the shop leaves the plug."""
    own = best_of(tables, "plug_facts")
    followed = asked.comparator and finish == "lapped"
    return own("comparator_hit") if followed else own(f"{finish}_hit")


def on_comparator(asked: GaugeAsked, worth: Worth, tables: Tables) -> Worth | None:
    """The same plug measured on a bench comparator; None where that makes no difference."""
    better = _by(worth.finish, replace(asked, comparator=True), tables)
    return better if better is not None and better.width < worth.width else None


def _by(finish: Finish, asked: GaugeAsked, tables: Tables) -> Worth | None:
    """The plug by one finish; None where its two ends would meet."""
    own = best_of(tables, "plug_facts")
    known, hit = known_to(finish, asked, tables), hit_within(finish, asked, tables)
    width = zone_width(asked.band, own("gauge_share"), known, hit)
    # A stepped plug is read, not relied on by the hundred: it has no wear to spend.
    wear = 0.0 if asked.stepped else own("wear_share") * asked.band
    try:
        zones = plug_zones(asked.low, asked.high, width, wear)
    except OutsideModel:
        return None
    return Worth(
        finish=finish,
        smallest=asked.low,
        width=width,
        wear=wear,
        known=known,
        hit=hit,
        share=own("gauge_share"),
        tenth=own("gauge_share") * asked.band,
        zones=zones,
        go_reads=readings_for(zones.go, known),
        not_go_reads=readings_for(zones.not_go, known),
    )


def _none(asked: GaugeAsked, tables: Tables) -> Cannot:
    show = Show(asked.units)
    finish = asked.finish or "lapped"
    width = 2 * known_to(finish, asked, tables) + hit_within(finish, asked, tables)
    other = "Buy"
    if _by("lapped", asked, tables) is not None:
        other = "Ask again with --finish lapped, or buy"
    elif _by("lapped", replace(asked, comparator=True), tables) is not None:
        other = "Lapped, and measured on a bench comparator, one has room: ask with --comparator; or buy"
    return Cannot(
        f"A window of {show.small(asked.band)} has no room for two ends of a {finish} plug, "
        f"{show.small(width)} each, and wear.",
        f"{other} a plug of that class, or measure with a bore gauge set in a ring.",
    )
