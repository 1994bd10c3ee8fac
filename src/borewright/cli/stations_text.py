"""The text of `--at` and `--bore-at`: places and the diameters there."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from borewright.errors import RefusedInput
from borewright.quantities.read import read_length

NEAR = 0.1
"""Diameters of one body further apart than this share were typed in two units, or wrongly."""

Places = tuple[tuple[float, float], ...]


def read_places(typed: Sequence[tuple[str, str]], where: str, bare: Any) -> Places:
    """(place, diameter) of each, in metres; RefusedInput, with its number, for what cannot be.

    >>> read_places([("0mm", "18mm"), ("30mm", "18.01mm")], "--bore-at", None)
    ((0.0, 0.018), (0.03, 0.01801))
    """
    places = tuple(
        (
            read_length(x, f"{where}, {n}, place", bare=bare, zero=True),
            read_length(size, f"{where}, {n}, diameter", bare=bare),
        )
        for n, (x, size) in enumerate(typed, 1)
    )
    sizes = [size for _, size in places]
    if sizes and max(sizes) > min(sizes) * (1 + NEAR):
        found = f"diameters of {1e3 * min(sizes):.4g} and {1e3 * max(sizes):.4g} mm on one part"
        raise RefusedInput(where, found, "diameters within a tenth of each other")
    return places


def read_stations(typed: Sequence[tuple[str, str]], length: float | None, bare: Any) -> Places:
    """The stations of a mandrel, two or more at different places on its ground length."""
    from borewright.job.stations import check_places, check_within

    stations = read_places(typed, "--at", bare)
    check_places(stations, "--at")
    check_within(stations, length, "--at")
    return stations
