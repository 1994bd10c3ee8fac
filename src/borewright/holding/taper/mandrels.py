"""A size on the shelf turned into a full mandrel: what is stated beats the table."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.records import Assumption
from borewright.errors import RefusedInput
from borewright.holding.taper.measured_mandrel import USUAL_UNCERTAINTY, straight_through
from borewright.job.records import Mandrel, MandrelNote
from borewright.job.stations import Stations
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, MetrePerMetre
from borewright.reference.library import Tables
from borewright.reference.mandrels import PlainMandrel


@dataclass(frozen=True, slots=True)
class Resolved:
    """A mandrel ready to use, and what had to be assumed of it."""

    mandrel: Mandrel
    assumed: tuple[Assumption, ...]


def resolve(note: MandrelNote, tables: Tables, name: str) -> Resolved:
    """Fill what the shelf does not say of a mandrel from the table of plain mandrels.

    `name` is what the plan calls it. Two stated ends and the ground length give the taper; two
    ends and a taper give the ground length; one end fixes the other by the taper; stations give
    both, whichever end they were measured from. RefusedInput where what is stated contradicts
    itself.
    """
    row = tables.mandrel_row(note.nominal)
    ground = _ground(note, row)
    stations: Stations = ()
    if note.stations:
        found = straight_through(note.stations, ground, f"mandrel {name!r}")
        small, taper, stations = found.small_end, found.taper, found.stations
    else:
        taper = _taper(note, ground, row, name)
        small = _small_end(note, taper, ground, row)
    overall = note.overall_length or ground + 2 * row.end_length
    mandrel = Mandrel(
        name=name,
        nominal=note.nominal,
        small_end=small,
        taper=taper,
        ground_length=ground,
        overall_length=max(overall, ground),
        end_diameter=row.end_diameter,
        end_length=(max(overall, ground) - ground) / 2,
        origin="shelf" if note.small_end or note.large_end or stations else "table",
        sources=row.sources,
        stations=stations,
        station_uncertainty=_uncertainty(note),
        hole=note.hole or 0.0,
    )
    return Resolved(mandrel, _assumed(note, mandrel, row))


TAPER_AGREES = 0.02
"""How far a stated taper may stand from that of the two stated ends before it is refused."""


def _uncertainty(note: MandrelNote) -> Metre:
    if not note.stations:
        return 0.0
    return USUAL_UNCERTAINTY if note.station_uncertainty is None else note.station_uncertainty


def _ground(note: MandrelNote, row: PlainMandrel) -> Metre:
    if note.ground_length is not None:
        return note.ground_length
    if note.stations:
        return max(_ground_untold(note, row), *(x for x, _ in note.stations))
    if note.small_end is not None and note.large_end is not None:
        return (note.large_end - note.small_end) / (note.taper or row.taper)
    return _ground_untold(note, row)


def _ground_untold(note: MandrelNote, row: PlainMandrel) -> Metre:
    if note.overall_length is None:
        return row.ground_length
    return max(0.3 * note.overall_length, note.overall_length - 2 * row.end_length)


def _taper(note: MandrelNote, ground: Metre, row: PlainMandrel, name: str) -> MetrePerMetre:
    if note.small_end is None or note.large_end is None:
        return note.taper if note.taper is not None else row.taper
    found = (note.large_end - note.small_end) / ground
    if note.taper is not None and abs(found / note.taper - 1) > TAPER_AGREES:
        show = Show("mm")
        raise RefusedInput(
            f"mandrel {name!r}",
            f"a taper of {show.taper(note.taper)} between ends that give {show.taper(found)}",
            "two ends, a ground length and a taper that agree, or one of them left out",
        )
    return found


def _small_end(note: MandrelNote, taper: float, ground: float, row: PlainMandrel) -> Metre:
    if note.small_end is not None:
        return note.small_end
    if note.large_end is not None:
        return note.large_end - taper * ground
    return row.small_end


def _assumed(note: MandrelNote, mandrel: Mandrel, row: PlainMandrel) -> tuple[Assumption, ...]:
    said, source = [], ", ".join(row.sources)
    if note.stations and note.station_uncertainty is None:
        said.append(
            Assumption(
                f"diameters of {mandrel.name}",
                f"known to {Show('mm').small(USUAL_UNCERTAINTY)} either way",
                "ours",
            )
        )
    if note.small_end is None and note.large_end is None and not note.stations:
        said.append(
            Assumption(
                f"ends of {mandrel.name}", f"the usual small end and taper ({row.how})", source
            )
        )
    if note.ground_length is None:
        said.append(
            Assumption(
                f"ground length of {mandrel.name}",
                f"as in the table of plain mandrels ({row.how})",
                source,
            )
        )
    return tuple(said)
