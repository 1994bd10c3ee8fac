"""A size on the shelf turned into a full mandrel: what is stated beats the table."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.records import Assumption
from borewright.errors import RefusedInput
from borewright.job.records import Mandrel, MandrelNote
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
    ends and a taper give the ground length; one end fixes the other by the taper. RefusedInput
    where what is stated contradicts itself.
    """
    row = tables.mandrel_row(note.nominal)
    ground = _ground(note, row)
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
        origin="shelf" if note.small_end or note.large_end else "table",
        sources=row.sources,
    )
    return Resolved(mandrel, _assumed(note, mandrel, row))


TAPER_AGREES = 0.02
"""How far a stated taper may stand from that of the two stated ends before it is refused."""


def _ground(note: MandrelNote, row: PlainMandrel) -> Metre:
    if note.ground_length is not None:
        return note.ground_length
    if note.small_end is not None and note.large_end is not None:
        return (note.large_end - note.small_end) / (note.taper or row.taper)
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
    if note.small_end is None and note.large_end is None:
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
