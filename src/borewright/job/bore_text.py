"""A bore stated by its limits: a hole class of ISO 286 (`15 H7`), or a smallest and a largest size.

Its size is then the middle of the band and its uncertainty half of it.
"""

from __future__ import annotations

import re
from typing import Final

from borewright.errors import OutsideModel, UnknownName
from borewright.errors.tree import RefusedInput
from borewright.job.records import BoreLimits
from borewright.quantities.read import System, length_system, read_length
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.quantities.units import find_unit
from borewright.reference.library import tables

WIDEST_BAND: Final = 1e-3
"""Half a band of 1 mm (ours): wider is not a measured bore."""

SMALLEST_BARE: Final = 0.003
"""Ours: a bare size below 3 mm beside a class was meant in inches as likely as not."""

_CLASS = re.compile(r"(\d.*?)\s*([A-Za-z]{1,2})\s*(\d{1,2})")
_BAND = re.compile(r"(.+?)\s+to\s+(.+)")


def bore_size(text: str, where: str, bare: System | None) -> tuple[Metre, BoreLimits | None]:
    """The size of a bore (m) as typed, and its limits where it is stated by them.

    A bare size before a class is in mm.

    >>> size, limits = bore_size("15 H7", "--bore", None)
    >>> round(size * 1e3, 4), limits.code, round(limits.high * 1e3, 4)
    (15.009, 'H7', 15.018)
    """
    band, found = _BAND.fullmatch(text.strip()), class_of(text)
    if band is not None:
        unit = length_system(band[2]) or bare
        ends = (read_length(end, where, bare=unit) for end in band.groups())
        limits = limits_between(next(ends), next(ends), where)
    elif found is not None:
        limits = _limits(*found, where, bare)
    else:
        return read_length(text, where, bare=bare), None
    return limits.middle, limits


def class_of(text: str) -> tuple[str, str] | None:
    """The size and the class of a text such as `5/8in H7`; None where it ends in no class.

    >>> class_of("5/8in H7"), class_of("25H7"), class_of("16mm"), class_of("1.5e1")
    (('5/8in', 'H7'), ('25', 'H7'), None, None)
    """
    match = _CLASS.fullmatch(text.strip())
    if match is None or find_unit("length", match[2]):
        return None
    if match[2] in "eE" and " " not in text.strip():
        return None  # a number with an exponent
    return match[1], match[2] + match[3]


def size_typed(text: str) -> str:
    """The part of the text that is a size, with its unit: what family of units was typed.

    >>> size_typed("15 H7"), size_typed("5/8in H7"), size_typed("16mm to 16.02mm")
    ('15mm', '5/8in', '16.02mm')
    """
    band, found = _BAND.fullmatch(text.strip()), class_of(text)
    if band is not None:
        return band[2]
    if found is None:
        return text
    return found[0] if length_system(found[0]) else f"{found[0]}mm"


def limits_between(low: Metre, high: Metre, where: str) -> BoreLimits:
    """Limits (m) as stated; RefusedInput where the smallest is not the smaller."""
    show = Show("mm")
    if not low < high:
        found = f"{show.bore(low)} to {show.bore(high)}"
        raise RefusedInput(where, found, "a smallest size and then a larger one")
    if high - low > 2 * WIDEST_BAND:
        found, most = f"limits {show.length(high - low)} apart", show.length(2 * WIDEST_BAND)
        raise RefusedInput(where, found, f"at most {most}")
    return BoreLimits(low, high)


def _limits(typed: str, code: str, where: str, bare: System | None) -> BoreLimits:
    size = _nominal(typed, where, bare)
    known = tables().hole_classes()
    if code not in known:
        raise UnknownName(where, code, known)
    try:
        found = tables().limits(code, size)
    except OutsideModel as outside:
        raise RefusedInput(where, f"{typed} {code}", f"a size {outside.allowed}") from outside
    return BoreLimits(found.smallest, found.largest, code, size, found.sources)


def _nominal(typed: str, where: str, bare: System | None) -> Metre:
    if length_system(typed) is not None:
        return read_length(typed, where)
    size = read_length(typed, where, bare="mm")
    return size if size >= SMALLEST_BARE else read_length(typed, where, bare=bare)
