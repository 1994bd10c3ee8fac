"""The measured diameters of a mandrel: read from its table, and held against its other sizes."""

from __future__ import annotations

from itertools import combinations
from typing import TYPE_CHECKING, Final

from borewright.errors.tree import RefusedInput
from borewright.job.records import MandrelNote
from borewright.job.typed import Reader
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

if TYPE_CHECKING:
    from borewright.job.schema import MandrelTable

Stations = tuple[tuple[Metre, Metre], ...]

NEAR_NOMINAL: Final = 0.1
"""Ours: a diameter further than a tenth from the size marked was typed in another unit."""

ONE_PLACE: Final = 1e-5
"""Places along a mandrel nearer than this (m) are one place: no rule tells them apart."""


def read_stations(table: MandrelTable, place: str, reader: Reader) -> Stations:
    """(x, diameter) of each entry of `at`, in the order typed."""
    return tuple(
        (
            reader.length(x, f"{place}.at[{n}][1]", zero=True),
            reader.length(size, f"{place}.at[{n}][2]"),
        )
        for n, (x, size) in enumerate(table.at, 1)
    )


def check_stations(note: MandrelNote, where: str) -> None:
    """RefusedInput where the stations of a note are too few, twice in one place, or elsewhere.

    >>> check_stations(MandrelNote(0.016, stations=((0.01, 0.01599),)), "shelf.toml: mandrel[1]")
    Traceback (most recent call last):
    borewright.errors.tree.RefusedInput: shelf.toml: mandrel[1].at: found 1 station; allowed is \
two or more, at different places
    """
    if not note.stations:
        _check_nothing_measured(note, where)
        return
    _check_alone(note, where)
    check_places(note.stations, f"{where}.at")
    show = Show("mm")
    for _, size in note.stations:
        if abs(size - note.nominal) > NEAR_NOMINAL * note.nominal:
            allowed = f"a diameter near the size {show.bore(note.nominal)}"
            raise RefusedInput(f"{where}.at", f"a diameter of {show.bore(size)}", allowed)
    length = note.ground_length or note.overall_length
    check_within(note.stations, length, f"{where}.at")


def check_places(stations: Stations, where: str) -> None:
    """RefusedInput for fewer than two stations, or two at one place."""
    if len(stations) < 2:
        few = "1 station" if stations else "no station"
        raise RefusedInput(where, few, "two or more, at different places")
    for (a, _), (b, _) in combinations(stations, 2):
        if abs(a - b) < ONE_PLACE:
            found = f"{Show('mm').length(a)} twice"
            raise RefusedInput(where, found, "one diameter at each place")


def check_within(stations: Stations, length: Metre | None, where: str) -> None:
    """RefusedInput for a station beyond the ground length (m), where that is known."""
    farthest = max(x for x, _ in stations)
    if length is not None and farthest > length + ONE_PLACE:
        show = Show("mm")
        found = f"a station at {show.length(farthest)}"
        raise RefusedInput(where, found, f"places on the ground length, {show.length(length)}")


def _check_nothing_measured(note: MandrelNote, where: str) -> None:
    if note.station_uncertainty is not None:
        raise RefusedInput(f"{where}.uncertainty", "no diameters beside it", "`at` beside it")


def _check_alone(note: MandrelNote, where: str) -> None:
    """Stations say what the ends and the taper are: stated beside them, one of the two is wrong."""
    beside = {"small_end": note.small_end, "large_end": note.large_end, "taper": note.taper}
    stated = [name for name, value in beside.items() if value is not None]
    if stated:
        found = f"both `at` and `{stated[0]}`"
        raise RefusedInput(where, found, "one of them; an end can be one of the stations")
