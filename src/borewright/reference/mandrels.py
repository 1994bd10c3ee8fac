"""What a plain taper mandrel of a nominal size probably measures, when nobody measured it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from math import isfinite

from borewright.errors import OutsideModel
from borewright.quantities.si import Metre, MetrePerMetre
from borewright.reference.table import Row, Table

SAME_SIZE: Metre = 1e-6
"""Sizes nearer than this are one size: rounding of a typed inch, far below any step of the set."""

LENGTHS = ("overall_length", "ground_length", "end_diameter", "end_length")


@dataclass(frozen=True, slots=True)
class PlainMandrel:
    """One probable mandrel. `how` is listed, interpolated or scaled; `note` says it in words."""

    nominal: Metre
    small_end: Metre
    taper: MetrePerMetre
    ground_length: Metre
    overall_length: Metre
    end_diameter: Metre
    end_length: Metre
    how: str
    note: str
    sources: tuple[str, ...]

    @property
    def large_end(self) -> Metre:
        """Diameter at the large end of the ground length."""
        return self.small_end + self.taper * self.ground_length


def mandrel_of(table: Table, nominal: Metre) -> PlainMandrel:
    """The row of this size, a straight line between two sizes, or the end size scaled.

    Raises `OutsideModel` for a size that is not a length above zero.
    """
    if not (isfinite(nominal) and nominal > 0.0):
        raise OutsideModel("nominal size", f"{nominal} m", "a length above zero")
    rows = sorted(table.rows, key=lambda row: row.number("nominal"))
    for row in rows:
        if abs(row.number("nominal") - nominal) <= SAME_SIZE:
            lengths = {name: row.number(name) for name in LENGTHS}
            return _mandrel(row, nominal, lengths, "listed", row.text("note"))
    for below, above in pairwise(rows):
        if below.number("nominal") < nominal < above.number("nominal"):
            return _between(below, above, nominal)
    end = rows[0] if nominal < rows[0].number("nominal") else rows[-1]
    return _scaled(end, nominal)


def _between(below: Row, above: Row, nominal: Metre) -> PlainMandrel:
    a, b = below.number("nominal"), above.number("nominal")
    share = (nominal - a) / (b - a)
    lengths = {n: below.number(n) + share * (above.number(n) - below.number(n)) for n in LENGTHS}
    between = f"{below.text('size')} and {above.text('size')}"
    note = f"assumed: lengths between those of {between}; sets vary, so measure both ends"
    mandrel = _mandrel(below, nominal, lengths, "interpolated", note)
    return _with_sources(mandrel, (*_sources(above), "ours-interpolated"))


def _scaled(end: Row, nominal: Metre) -> PlainMandrel:
    scale = nominal / end.number("nominal")
    lengths = {name: scale * end.number(name) for name in LENGTHS}
    note = (
        f"assumed: no such size listed, {end.text('size')} scaled; sets vary, so measure both ends"
    )
    return _with_sources(_mandrel(end, nominal, lengths, "scaled", note), ("ours",))


def _mandrel(
    row: Row, nominal: Metre, lengths: dict[str, float], how: str, note: str
) -> PlainMandrel:
    # Taper and amount under size step from size to size, so they are taken, never blended.
    small_end = nominal - row.number("small_end_under")
    return PlainMandrel(
        nominal,
        small_end,
        row.number("taper"),
        how=how,
        note=note,
        sources=_sources(row),
        **lengths,
    )


def _sources(row: Row) -> tuple[str, ...]:
    columns = ("nominal", "length", "ground", "taper", "under", "end")
    return tuple(dict.fromkeys(row.text(f"{name}_source") for name in columns))


def _with_sources(mandrel: PlainMandrel, more: tuple[str, ...]) -> PlainMandrel:
    return replace(mandrel, sources=tuple(dict.fromkeys((*mandrel.sources, *more))))
