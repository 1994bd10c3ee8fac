"""What a bore must come to, and the hole it comes from."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from borewright.holding.bores.bore_reading import bore_half_band
from borewright.holding.taper.measured_mandrel import window_of
from borewright.job.records import BoreLimits, Job
from borewright.planning.shop.shop import Shop
from borewright.planning.taper.bore_words import limits_name
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

ROUGH: Final = ("drilled", "as-cast")
"""Rows of the table roughness that no bore is finished by."""

FARTHEST: Final = 0.0032
FARTHEST_CORED: Final = 0.010
"""A hole is opened no further than this (m on diameter) for a mandrel's sake: beyond, it is
another part. A cored hole has more stock. Ours."""

MUCH: Final = 0.0254 / 16
"""Opening a drilled hole by more than this (m on diameter) wants a look at the drawing; ours."""

BESIDE: Final = 0.5e-3
"""A finished bore this little (m) under a window is opened into it; ours, as `choice` has it."""


@dataclass(frozen=True, slots=True)
class Window:
    """The smallest and largest bore (m) that one mandrel takes, and the size it is called."""

    mandrel: str
    nominal: Metre
    low: Metre
    high: Metre

    def holds(self, size: Metre) -> bool:
        """True for a bore (m) inside."""
        return self.low <= size <= self.high


@dataclass(frozen=True, slots=True)
class Wanted:
    """The ends aimed at (m), None where any size serves; the hole as it stands, 0 where solid.

    `nominal` is the size that a usual reamer for it would be marked. `with_rim`: the rim is turned
    in the same chucking, so that the bore must be trued where the rim is.
    """

    low: Metre | None
    high: Metre | None
    set_by: str
    nominal: Metre | None
    start: Metre
    starts_from: str
    limits: BoreLimits | None = None
    start_half_band: Metre = 0.0
    cored: bool = False
    finished: bool = False
    mandrel: str = ""
    with_rim: bool = False

    @property
    def window(self) -> tuple[Metre, Metre] | None:
        """Both ends, or None where any size serves."""
        return None if self.low is None or self.high is None else (self.low, self.high)

    @property
    def middle(self) -> Metre:
        """The middle of what is aimed at, or the hole as it stands."""
        if self.window is None:
            return self.start or self.nominal or 0.0
        return sum(self.window) / 2


@dataclass(frozen=True, slots=True)
class _Hole:
    """The hole as it stands."""

    size: Metre
    words: str
    half_band: Metre = 0.0
    cored: bool = False
    finished: bool = False


def windows_of(
    job: Job, shop: Shop, tables: Tables, tried: tuple[tuple[str, Metre, Metre], ...]
) -> tuple[Window, ...]:
    """What each mandrel takes: as tried, else with the usual travel; best tried first."""
    a = tables.allowance
    reserves = a("tool_clearance").best, a("dog_clearance").best
    nominal = {m.name: m.nominal for m in shop.mandrels}
    found = {name: (low, high) for name, low, high in reversed(tried)}
    order = [*dict.fromkeys(name for name, _, _ in tried), *nominal]
    usual = {
        m.name: window_of(m, job.work.length, a("press_travel").best, *reserves)
        for m in shop.mandrels
        if m.name not in found
    }
    ends = usual | found
    all_of = (Window(name, nominal[name], *ends[name]) for name in dict.fromkeys(order))
    return tuple(w for w in all_of if w.low < w.high)


HARD: Final = "hard-steel"
"""Class of metal that no drill, bar or reamer of this shelf opens: its bore is ground or lapped."""


def wanted(job: Job, windows: tuple[Window, ...], tables: Tables) -> Wanted | None:
    """What to aim at; None for a bore that is finished and lies where it should."""
    bore, show = job.work.bore, Show(job.units)
    if tables.material(job.work.material).cut_class == HARD:
        return None
    hole = _hole_of(job, tables)
    if bore.limits is not None:
        return _for_class(bore.limits, hole, windows, show)
    if hole.finished and any(w.holds(hole.size) for w in windows):
        return None
    aimed = _to_open(hole, windows, tables) if hole.size else _to_make(bore.size, windows)
    if aimed is not None:
        said = f"{aimed.mandrel} takes {show.band(aimed.low, aimed.high, 'bore')} here"
        opens = (aimed.low + aimed.high) / 2 - hole.size
        if hole.size and not hole.cored and opens > MUCH:
            said += f"; that opens the hole by {show.depth(opens)}, so see that the part allows it"
        return _of(hole, said, aimed.nominal, aimed.low, aimed.high, None, aimed.mandrel)
    if hole.finished:
        return None
    said = "no mandrel waits for it: any size serves once it is round and straight"
    return _of(hole, said, None if hole.size else bore.size)


def _of(
    hole: _Hole,
    set_by: str,
    nominal: Metre | None,
    low: Metre | None = None,
    high: Metre | None = None,
    limits: BoreLimits | None = None,
    mandrel: str = "",
) -> Wanted:
    return Wanted(
        low,
        high,
        set_by,
        nominal,
        hole.size,
        hole.words,
        limits,
        hole.half_band,
        hole.cored,
        hole.finished,
        mandrel,
    )


def _hole_of(job: Job, tables: Tables) -> _Hole:
    bore, show = job.work.bore, Show(job.units)
    made = tables.roughness_id(bore.made_by)
    if bore.limits is not None:
        cored = made == "as-cast"
        return _Hole(0.0, "the cored hole" if cored else "the solid", cored=cored)
    if made in ROUGH:
        what = "the hole as cored" if made == "as-cast" else "the hole as drilled"
        return _Hole(
            bore.size,
            f"{what}, {show.bore(bore.size)}",
            bore_half_band(job, tables),
            cored=made == "as-cast",
        )
    unmade = made == "unknown" and tables.gauge(bore.measured_with).id == "unknown"
    if unmade:
        return _Hole(0.0, "the solid, because it is not said that the hole is there")
    how = "the hole" if made == "unknown" else f"the bore as {made}"
    half = bore_half_band(job, tables)
    return _Hole(bore.size, f"{how}, {show.bore(bore.size)}", half, finished=True)


def _for_class(limits: BoreLimits, hole: _Hole, windows: tuple[Window, ...], show: Show) -> Wanted:
    """The class itself, or what a mandrel takes of it where that is at least half of it."""
    name, nominal = limits_name(limits, show), limits.nominal or limits.middle
    shared = [(max(w.low, limits.low), min(w.high, limits.high), w) for w in windows]
    low, high, window = max(shared, key=lambda s: s[1] - s[0], default=(0.0, 0.0, None))
    if window is None or high - low < (limits.high - limits.low) / 2:
        said = f"{name}; no mandrel of the shelf takes most of it"
        return _of(hole, said, nominal, limits.low, limits.high, limits)
    whole = high - low >= (limits.high - limits.low) * (1 - 1e-9)
    part = "the whole of it" if whole else f"{show.band(low, high, 'bore')} of it"
    said = f"{name}; {window.mandrel} takes {part}"
    return _of(hole, said, nominal, low, high, limits, window.mandrel)


def _to_open(hole: _Hole, windows: tuple[Window, ...], tables: Tables) -> Window | None:
    """The lowest window that the hole, cleaned up, still fits under."""
    if hole.finished:
        above = [w for w in windows if 0 < w.low - hole.size - hole.half_band <= BESIDE]
        return min(above, key=lambda w: w.low, default=None)
    clean = tables.reaming("stock_to_leave").low
    if hole.cored:
        clean = 2 * tables.allowance("skin_depth").low
    most = FARTHEST_CORED if hole.cored else FARTHEST
    fits = [w for w in windows if hole.size + clean <= (w.low + w.high) / 2 <= hole.size + most]
    return min(fits, key=lambda w: w.low, default=None)


def _to_make(size: Metre, windows: tuple[Window, ...]) -> Window | None:
    """The first window that holds the size, else the one nearest to it."""

    def off(w: Window) -> Metre:
        return max(w.low - size, size - w.high, 0.0)

    near = [w for w in windows if off(w) <= BESIDE]
    return min(near, key=off, default=None)
