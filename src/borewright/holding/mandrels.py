"""A size on the shelf turned into a full mandrel: what is stated beats the table."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.records import Assumption
from borewright.job.records import Mandrel, MandrelNote
from borewright.quantities.si import Metre
from borewright.reference.library import Tables
from borewright.reference.mandrels import PlainMandrel


@dataclass(frozen=True, slots=True)
class Resolved:
    """A mandrel ready to use, and what had to be assumed of it."""

    mandrel: Mandrel
    assumed: tuple[Assumption, ...]


def resolve(note: MandrelNote, tables: Tables, name: str) -> Resolved:
    """Fill what the shelf does not say of a mandrel from the table of plain mandrels.

    `name` is used when the note has none. A stated small or large end fixes the sizes; the other
    follows from the taper over the ground length.
    """
    row = tables.mandrel_row(note.nominal)
    taper = note.taper if note.taper is not None else row.taper
    ground = note.ground_length or _ground(note, row)
    small = _small_end(note, taper, ground, row)
    overall = note.overall_length or ground + 2 * row.end_length
    mandrel = Mandrel(
        name=note.name or name,
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


def _ground(note: MandrelNote, row: PlainMandrel) -> Metre:
    if note.overall_length is None:
        return row.ground_length
    return max(0.3 * note.overall_length, note.overall_length - 2 * row.end_length)


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
