"""The form of a mandrel to be made: proportions of the chart, sizes that take the bores asked for.

The limits at the gauge planes lie on whole tenths of a thou or whole µm, so that what the drawing
says is what is meant.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor
from typing import Final, Literal

from borewright.answer.made_mandrel import MandrelForm
from borewright.errors import RefusedInput
from borewright.making.center_holes import depth_of
from borewright.making.mandrel.asked import MandrelAsked
from borewright.making.shop_sizes import to_rule
from borewright.mechanics.mandrel_zone import Band, Held, Zone, ground_for, taper_between
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, MetrePerMetre
from borewright.reference.library import Tables
from borewright.reference.mandrels import PlainMandrel

GRID: Final[dict[str, Metre]] = {"inch": 0.0254e-4, "mm": 1e-6}
"""Limits are multiples of this: a tenth of a thou, a micrometre."""

LENGTH_STEP: Final[dict[str, Metre]] = {"inch": 0.0254 / 8, "mm": 1e-3}
"""Lengths are multiples of this."""

MOST_STEPS: Final = 12
"""Steps that limits on whole tenths may cost."""

NOISE: Final = 12
"""Decimals of a metre that are kept: what lies below is the rounding of floats."""

NEAR: Final[Metre] = 6e-5
"""A bore this close to a size of the chart is called by that size (ours)."""

DEEPEST_FLAT: Final = 0.15
"""Of the end's diameter (ours)."""

SMALLEST: Final[Metre] = 0.0015
"""A thinner mandrel is a pin, bought by the gauge (ours)."""

SLIGHTEST: Final[MetrePerMetre] = 1 / 5000
STEEPEST: Final[MetrePerMetre] = 1 / 250
"""Tapers of plain mandrels that are made here (ours); the trade's is 1:2000."""


@dataclass(frozen=True, slots=True)
class Chosen:
    """A form, and how long it had to be to take the bores: None where they did not rule."""

    form: MandrelForm
    needed: Metre | None


def row_for(size: Metre, tables: Tables, units: Literal["inch", "mm"]) -> PlainMandrel:
    """The proportions of the chart, inch or metric: of its nearest size where that is near.

    RefusedInput for a size below what is made.
    """
    if size < SMALLEST:
        show = Show(units)
        raise RefusedInput("size of a mandrel", show.bore(size), f"at least {show.bore(SMALLEST)}")
    name = "plain_mandrels" if units == "inch" else "plain_mandrels_metric"
    listed = [row.number("nominal") for row in tables.table(name).rows]
    nearest = min(listed, key=lambda nominal: abs(nominal - size))
    called = nearest if abs(nearest - size) <= NEAR else size
    return tables.mandrel_row(called) if units == "inch" else tables.metric_mandrel_row(called)


def held_for(asked: MandrelAsked, row: PlainMandrel, tables: Tables) -> Held:
    """What is to sit on it: length of bore, travel, room for tool and dog."""
    fact = tables.making_fact
    usual = tables.allowance("press_travel").best, fact("travel_share").best * row.ground_length
    travel = asked.travel or min(usual)
    dog = min(tables.allowance("dog_clearance").best, fact("dog_share").best * row.ground_length)
    free = tables.allowance("tool_clearance").best, dog
    # Longer work would keep its far end off the small end, and so the size itself off the taper.
    most = max(travel - free[0], travel / 2)
    length = asked.length or min(fact("bore_length_share").best * row.nominal, most)
    return Held(length, travel, *free)


def form_of(asked: MandrelAsked, row: PlainMandrel, held: Held, tables: Tables) -> Chosen:
    """The form that takes the bores asked for, or that of the chart where a size was asked for."""
    taper = asked.taper or row.taper
    check_taper(taper, asked.units)
    grid = GRID[asked.units]
    tolerance = _tolerance(asked, tables, grid)
    needed = None
    if asked.bores is not None:
        band = asked.bores[1] - asked.bores[0] + grid
        needed = ground_for(band, taper, tolerance, _plane(tables, asked.units), held)
    ground, zone = _long_enough(asked, row, held, needed, taper, tolerance, tables)
    overall = asked.overall_length or ground + 2 * row.end_length
    if overall < ground + 2 * LENGTH_STEP[asked.units]:
        show = Show(asked.units)
        allowed = f"more than its ground length, {show.length(ground)}, with an end on either side"
        raise RefusedInput("overall length", show.length(overall), allowed)
    middle = taper_between(
        _middle(zone.near_small), _middle(zone.near_large), zone.at_small, zone.at_large
    )
    end = _end_diameter(row, float(middle[0]), taper, ground, tables, asked.units)
    center = tables.center_within(tables.making_fact("center_share").best * end, asked.units)
    form = MandrelForm(
        nominal=row.nominal,
        small_end=round(float(middle[0]), NOISE),
        taper=round(float(middle[1]), NOISE),
        ground_length=ground,
        overall_length=overall,
        end_diameter=end,
        zone=zone,
        center=center,
        center_depth=depth_of(center) if center else 0.0,
        flat_depth=_flat_depth(end, asked.units, tables),
        flat_length=to_rule(
            tables.making_fact("flat_length_share").best * (overall - ground) / 2, asked.units
        ),
        flats=asked.flats,
    )
    return Chosen(form, needed)


def _long_enough(
    asked: MandrelAsked,
    row: PlainMandrel,
    held: Held,
    needed: Metre | None,
    taper: MetrePerMetre,
    tolerance: Metre,
    tables: Tables,
) -> tuple[Metre, Zone]:
    """Ground length and limits; a step or two longer where limits on whole tenths cost a little."""
    first = _ground(asked, row, needed, tables)
    free = asked.bores is not None and asked.ground_length is None and asked.overall_length is None
    for more in range(MOST_STEPS if free else 1):
        ground = first + more * LENGTH_STEP[asked.units]
        small = _small_end(asked, row, held, ground, taper)
        zone = _zone(small, taper, ground, tolerance, asked.units, tables)
        takes = zone.takes(held, ground)
        if asked.bores is None or (takes and _holds(takes, asked.bores)):
            break
    return ground, zone


def _holds(takes: Band, bores: Band) -> bool:
    return takes[0] <= bores[0] + 1e-12 and bores[1] <= takes[1] + 1e-12


def longest_of(asked: MandrelAsked, tables: Tables) -> Metre:
    """The longest mandrel (m) that can be made: as stated, else what a small shop makes true."""
    return asked.longest or tables.making_fact(f"longest_{asked.units}").best


def check_taper(taper: MetrePerMetre, units: Literal["inch", "mm"]) -> None:
    """RefusedInput for a taper that no plain mandrel has."""
    if not SLIGHTEST <= taper <= STEEPEST:
        show = Show(units)
        allowed = (
            f"{show.taper(SLIGHTEST)} to {show.taper(STEEPEST)}: a slighter one has no seat, a "
            "steeper one holds by an edge"
        )
        raise RefusedInput("taper of a mandrel", show.taper(taper), allowed)


def _tolerance(asked: MandrelAsked, tables: Tables, grid: Metre) -> Metre:
    name = "tolerance_ground" if asked.grinder else "tolerance_turned"
    return max(1, round(tables.making_fact(name).best / grid)) * grid


def _plane(tables: Tables, units: Literal["inch", "mm"]) -> Metre:
    step = LENGTH_STEP[units]
    return round(tables.making_fact("gauge_plane").best / step) * step


def _ground(asked: MandrelAsked, row: PlainMandrel, needed: Metre | None, tables: Tables) -> Metre:
    """As stated; else by the chart, shorter where the lathe is, longer where the bores need it."""
    if asked.ground_length is not None:
        return asked.ground_length
    by_chart = row.ground_length
    longest = longest_of(asked, tables)
    if row.overall_length > longest:
        by_chart = max(longest - 2 * row.end_length, longest / 2)
    if asked.overall_length is not None:
        by_chart = max(asked.overall_length - 2 * row.end_length, asked.overall_length / 2)
    if asked.overall_length is not None or needed is None or needed <= by_chart:
        return by_chart
    step = LENGTH_STEP[asked.units]
    return round(ceil(needed / step - 1e-9) * step, NOISE)


def _small_end(
    asked: MandrelAsked, row: PlainMandrel, held: Held, ground: Metre, taper: MetrePerMetre
) -> Metre:
    """By the chart; or so that the bores asked for lie in the middle of what it takes."""
    if asked.bores is None:
        return row.small_end
    middle = sum(asked.bores) / 2
    return middle - taper * (held.low_at + held.high_at(ground)) / 2


def _zone(
    small: Metre,
    taper: MetrePerMetre,
    ground: Metre,
    tolerance: Metre,
    units: Literal["inch", "mm"],
    tables: Tables,
) -> Zone:
    plane = min(_plane(tables, units), ground / 6)
    grid = GRID[units]
    # Planes so far apart that the taper between them is a whole number of steps: both limits can
    # then be said in full, and the taper stays what it was.
    step = grid / taper
    at = plane, plane + max(1, floor((ground - 2 * plane) / step + 1e-9)) * step
    low = _on_grid(small + taper * at[0] - tolerance / 2, tolerance, grid)
    rise = round(taper * (at[1] - at[0]) / grid) * grid
    return Zone(*at, low, (low[0] + rise, low[1] + rise))


def _on_grid(low: Metre, width: Metre, grid: Metre) -> Band:
    count = round(low / grid)
    return count * grid, (count + round(width / grid)) * grid


def _middle(band: Band) -> Metre:
    return (band[0] + band[1]) / 2


def _flat_depth(end: Metre, units: Literal["inch", "mm"], tables: Tables) -> Metre:
    """By a rule where that is near; a thin end has no sixty-fourth to give away."""
    share = tables.making_fact("flat_share")
    ruled = to_rule(share.best * end, units)
    return ruled if ruled <= DEEPEST_FLAT * end else share.best * end


def _end_diameter(
    row: PlainMandrel,
    small: Metre,
    taper: MetrePerMetre,
    ground: Metre,
    tables: Tables,
    units: Literal["inch", "mm"],
) -> Metre:
    """That of the chart, made less where it would stand proud of the small end."""
    most = small - tables.making_fact("end_over").best
    if row.end_diameter <= most:
        return row.end_diameter
    step = 0.0254 / 64 if units == "inch" else 0.1e-3
    return int(most / step) * step
