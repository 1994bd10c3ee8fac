"""Standard tolerances: the limits of H7 and its like at a size, and a reamer for a hole."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil

from borewright.errors import OutsideModel, UnreadableQuantity
from borewright.quantities.si import Metre
from borewright.reference.ranges import Range
from borewright.reference.table import Row, Table

CODE = re.compile(r"\s*([A-Za-z]{1,2})\s*(\d{1,2})\s*")
MICROMETRE: Metre = 1e-6
ROUNDING = 1e-6
"""Of a micrometre: what a sum of binary fractions may be out before it is rounded up."""
SAME_SIZE: Metre = 1e-9
"""A size typed as 50 mm belongs to the band that ends at 50 mm, whatever its last binary digit."""


@dataclass(frozen=True, slots=True)
class Limits:
    """Deviations from `size`; `lower, upper = limits` unpacks them. `sources` are both tables'."""

    code: str
    size: Metre
    lower: Metre
    upper: Metre
    sources: tuple[str, ...]

    def __iter__(self) -> Iterator[Metre]:
        return iter((self.lower, self.upper))

    @property
    def smallest(self) -> Metre:
        """The smallest size allowed."""
        return self.size + self.lower

    @property
    def largest(self) -> Metre:
        """The largest size allowed."""
        return self.size + self.upper


def limits_of(grades: Table, deviations: Table, code: str, size: Metre) -> Limits:
    """The limits of a code such as H7 or s6 at a size.

    Raises `UnreadableQuantity` for a code that does not read as one, `UnknownName` for a letter
    that the tables lack, `OutsideModel` for a grade or a size beyond them.
    """
    letter, grade = _read(code)
    deviation = _deviation(deviations, letter, int(grade), size)
    width = _within(_rows(grades, "grade", grade), size)
    lower = deviation.number("deviation")
    if deviation.text("bound") == "upper":
        lower -= width.number("tolerance")
    sources = (width.text("source"), deviation.text("source"))
    upper = lower + width.number("tolerance")
    return Limits(f"{letter}{grade}", size, lower, upper, tuple(dict.fromkeys(sources)))


def tolerance_of(grades: Table, grade: int, size: Metre) -> Metre:
    """The width of IT`grade` at a size."""
    return _within(_rows(grades, "grade", str(grade)), size).number("tolerance")


def hole_classes_of(grades: Table, deviations: Table) -> tuple[str, ...]:
    """Every letter of a hole, which is a capital, with every grade it has, by letter and grade."""
    known = sorted({int(row.text("grade")) for row in grades.rows})
    letters = dict.fromkeys(row.text("letter") for row in deviations.rows)
    return tuple(
        f"{letter}{grade}"
        for letter in letters
        if letter.isupper()
        for grade in known
        if any(
            row.number("grade_from") <= grade <= row.number("grade_to")
            for row in _rows(deviations, "letter", letter)
        )
    )


def reamer_limits(largest: Metre, tolerance: Metre, below: Range, band: Range) -> Limits:
    """Smallest and largest reamer for a hole: shares of its tolerance, rounded up to 1 µm.

    `largest` is the largest hole; the largest reamer lies `below` × tolerance under it, the
    smallest a further `band` × tolerance under that.
    """
    if not tolerance > 0.0:
        raise OutsideModel("tolerance of the hole", f"{tolerance} m", "a width above zero")
    top = _up(largest - below.best * tolerance)
    sources = tuple(dict.fromkeys((*below.sources, *band.sources)))
    return Limits("reamer", top, -_up(band.best * tolerance), 0.0, sources)


def _up(length: Metre) -> Metre:
    return ceil(length / MICROMETRE - ROUNDING) * MICROMETRE


def _read(code: str) -> tuple[str, str]:
    match = CODE.fullmatch(code)
    if match is None:
        raise UnreadableQuantity("tolerance", repr(code), "a letter and a grade, such as H7 or s6")
    return match[1], str(int(match[2]))


def _rows(table: Table, column: str, value: str) -> tuple[Row, ...]:
    found = tuple(row for row in table.rows if row.text(column) == value)
    if not found:
        table.row(value)  # not there: refuses with the ones that are
    return found


def _deviation(table: Table, letter: str, grade: int, size: Metre) -> Row:
    rows = _rows(table, "letter", letter)
    fitting = [r for r in rows if r.number("grade_from") <= grade <= r.number("grade_to")]
    if not fitting:
        grades = [r.number(end) for r in rows for end in ("grade_from", "grade_to")]
        raise OutsideModel(f"grade of {letter}", grade, f"{min(grades):g} to {max(grades):g}")
    return _within(fitting, size)


def _within(rows: list[Row] | tuple[Row, ...], size: Metre) -> Row:
    for row in rows:
        if row.number("over") + SAME_SIZE < size <= row.number("up_to") + SAME_SIZE:
            return row
    most = max(row.number("up_to") for row in rows)
    raise OutsideModel("size", f"{size * 1e3:g} mm", f"above zero, up to {most * 1e3:g} mm")
