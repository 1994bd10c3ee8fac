"""Reading the quantities of one file: each with the file's units, and its place in the refusal."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TypeVar

from borewright.errors.tree import UnreadableQuantity
from borewright.job.bore_text import bore_size
from borewright.job.records import BoreLimits
from borewright.quantities import read
from borewright.quantities.read import Speed, System
from borewright.quantities.si import (
    Kilogram,
    Metre,
    MetrePerMetre,
    Newton,
    Radian,
    RevPerSecond,
    Watt,
)

Value = str | int | float
Result = TypeVar("Result")
Entry = TypeVar("Entry")


@dataclass(frozen=True, slots=True)
class Reader:
    """The file's name and what a bare number means in it."""

    file: str
    bare: System | None

    def at(self, place: str) -> str:
        """The place as a refusal names it.

        >>> Reader("job.toml", None).at("work.length")
        'job.toml: work.length'
        """
        return f"{self.file}: {place}"

    def length(self, value: Value, place: str, *, zero: bool = False) -> Metre:
        """A length.

        >>> Reader("job.toml", "mm").length(16, "work.length")
        0.016
        """
        return read.read_length(self._text(value, place), self.at(place), bare=self.bare, zero=zero)

    def bore(self, value: Value, place: str) -> tuple[Metre, BoreLimits | None]:
        """The size of a bore, and its limits where it is stated by them.

        >>> round(Reader("job.toml", "inch").bore("15 H7", "work.bore")[0] * 1e3, 4)
        15.009
        """
        return bore_size(self._text(value, place), self.at(place), self.bare)

    def offset(self, value: Value, place: str) -> Metre:
        """A length of either sign, or none: how far from a size.

        >>> round(Reader("shelf.toml", None).offset("-0.0002in", "reamer[1].cuts") * 1e6, 2)
        -5.08
        """
        text = self._text(value, place)
        return read.read_length(text, self.at(place), bare=self.bare, zero=True, negative=True)

    def mass(self, value: Value, place: str) -> Kilogram:
        """A mass."""
        return read.read_mass(self._text(value, place), self.at(place), bare=self.bare)

    def feed(self, value: Value, place: str) -> Metre:
        """A feed a turn."""
        return read.read_feed(self._text(value, place), self.at(place), bare=self.bare)

    def force(self, value: Value, place: str) -> Newton:
        """A force."""
        return read.read_force(self._text(value, place), self.at(place), bare=self.bare)

    def power(self, value: Value, place: str) -> Watt:
        """A power."""
        return read.read_power(self._text(value, place), self.at(place), bare=self.bare)

    def spindle(self, value: Value, place: str) -> RevPerSecond:
        """A spindle speed."""
        return read.read_spindle(self._text(value, place), self.at(place), bare=self.bare)

    def speed(self, value: Value, place: str) -> Speed:
        """A spindle or a cutting speed."""
        return read.read_speed(self._text(value, place), self.at(place))

    def angle(self, value: Value, place: str) -> Radian:
        """An angle."""
        return read.read_angle(self._text(value, place), self.at(place))

    def taper(self, value: Value, place: str) -> MetrePerMetre:
        """A taper."""
        return read.read_taper(self._text(value, place), self.at(place))

    def _text(self, value: Value, place: str) -> str:
        if isinstance(value, int) and abs(value) >= 10**30:
            found = "a number of more than 30 digits"
            raise UnreadableQuantity(self.at(place), found, "a number that a lathe can have")
        return str(value)


def maybe(
    read_one: Callable[[Value, str], Result], value: Value | None, place: str
) -> Result | None:
    """What was stated, or None where nothing was.

    >>> maybe(Reader("job.toml", "mm").length, None, "work.length") is None
    True
    """
    return None if value is None else read_one(value, place)


def each(
    read_one: Callable[[Value, str], Result], values: Sequence[Value], place: str
) -> tuple[Result, ...]:
    """Every value of a list, each with its place in it.

    >>> each(Reader("job.toml", "mm").length, [16, "20mm"], "sizes")
    (0.016, 0.02)
    """
    return tuple(read_one(value, f"{place}[{n}]") for n, value in enumerate(values, 1))


def numbered(
    build: Callable[[Entry, str, Reader], Result],
    entries: Sequence[Entry],
    place: str,
    reader: Reader,
) -> tuple[Result, ...]:
    """Every table of a list as its record, each with its place in it."""
    return tuple(build(entry, f"{place}[{n}]", reader) for n, entry in enumerate(entries, 1))
