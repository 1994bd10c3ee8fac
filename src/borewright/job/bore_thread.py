"""A thread in the bore as typed: `1in x 8` (threads to the inch), `M20 x 1.5` (pitch in mm), LH."""

from __future__ import annotations

import re
from typing import Final

from borewright.errors.tree import RefusedInput
from borewright.job.records import BoreThread
from borewright.quantities.read import read_length
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

INCH: Final = 0.0254
LEAST_PITCH: Final = 0.2e-3
"""No thread in a bore is finer (m; ours)."""

COARSEST: Final = 3.0
"""Least diameter of a thread, in pitches (ours)."""

DEEPEST: Final = 1.3
"""Deepest thread, in pitches on diameter (ours): a whole 60 degree thread is 1.08."""

_METRIC = re.compile(r"[Mm]\s*(\d+(?:\.\d+)?)\s*[xX×]\s*(\d+(?:\.\d+)?)\s*(mm)?")
_INCH = re.compile(r"(.+?)\s*[xX×]\s*(\d+(?:\.\d+)?)\s*(?:tpi)?", re.IGNORECASE)
_LEFT = re.compile(r"\s+(LH|left)$", re.IGNORECASE)


def bore_thread(text: str, where: str) -> BoreThread:
    """The thread that a text states; RefusedInput where it states none.

    >>> t = bore_thread("1in x 8", "work.bore.thread")
    >>> round(t.size * 1e3, 3), round(t.pitch * 1e3, 3), t.left
    (25.4, 3.175, False)
    >>> t = bore_thread("M20 x 1.5 LH", "work.bore.thread")
    >>> round(t.size * 1e3, 3), round(t.pitch * 1e3, 3), t.left
    (20.0, 1.5, True)
    """
    plain = _LEFT.sub("", text.strip())
    size, pitch = _sizes(plain, text, where)
    if not LEAST_PITCH <= pitch <= size / COARSEST:
        show = Show("mm")
        found = f"a pitch of {show.length(pitch)} on {show.length(size)}"
        allowed = f"{show.length(LEAST_PITCH)} to a third of the diameter"
        raise RefusedInput(where, found, allowed)
    return BoreThread(text.strip(), size, pitch, left=plain != text.strip())


def _sizes(plain: str, text: str, where: str) -> tuple[Metre, Metre]:
    if metric := _METRIC.fullmatch(plain):
        return float(metric[1]) * 1e-3, float(metric[2]) * 1e-3
    inch = _INCH.fullmatch(plain)
    if inch is None or float(inch[2]) == 0:
        raise RefusedInput(where, repr(text[:40]), "a thread such as `1in x 8` or `M20 x 1.5`")
    return read_length(inch[1], where, bare="inch"), INCH / float(inch[2])


def check_in_bore(thread: BoreThread, bore: Metre, where: str) -> None:
    """RefusedInput where this hole (m) is not one that such a thread was cut in."""
    least = thread.size - DEEPEST * thread.pitch
    if not least <= bore < thread.size:
        show = Show("mm")
        found = f"{thread.text} in a bore of {show.bore(bore)}"
        allowed = f"the bore that it was cut in, {show.band(least, thread.size, 'bore')}"
        raise RefusedInput(where, found, allowed)
