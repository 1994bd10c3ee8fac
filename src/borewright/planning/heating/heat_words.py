"""The wait before a cut, and the way out where no wait is enough, in a sentence."""

from __future__ import annotations

import math
from collections.abc import Sequence

from borewright.answer.records import Cut, Verdict
from borewright.planning.heating.waits import Mend, TakenHeat
from borewright.quantities.si import Second

_OUT = {
    Mend.COOLANT: "{cut}: dry, it warms itself too loose for the usual reserve, however long the wait before it; with coolant it keeps it.",
    Mend.BETWEEN_PASSES: "{cut}: one pass after another warms it too loose for the usual reserve; {wait} from pass to pass keeps it; so may coolant.",
    Mend.LIGHTER: "{cut}: it warms itself too loose for the usual reserve, however long the wait before it; take it lighter, in more passes, and wait between them.",
}


def minutes(seconds: Second) -> str:
    """A wait as it is said: half minutes below two, then whole ones, never less than is meant.

    >>> minutes(30.0), minutes(60.0), minutes(90.0), minutes(150.0)
    ('half a minute', 'a minute', 'a minute and a half', '3 minutes')
    """
    if seconds <= 30:
        return "half a minute"
    if seconds <= 60:
        return "a minute"
    return "a minute and a half" if seconds <= 90 else f"{math.ceil(seconds / 60)} minutes"


def wait_sentences(cuts: Sequence[Cut], taken: Sequence[TakenHeat]) -> tuple[str, ...]:
    """One sentence for the longest wait that is asked for, and one for each way out."""
    names = {cut.id: cut.name.replace(", if wanted", "") for cut in cuts}
    waits = [t for t in taken if t.wait > 0]
    said = []
    if waits:
        longest = max(waits, key=lambda t: t.wait)
        more = " (and less before others)" if len(waits) > 1 else ""
        said.append(
            f"Stand {minutes(longest.wait)} before you {names[longest.cut]}{more}: cooler, it keeps the usual reserve."
        )
    for t in taken:
        if t.mend is not Mend.NONE:
            said.append(_OUT[t.mend].format(cut=f"To {names[t.cut]}", wait=minutes(t.between)))
    return tuple(said)


def at_least_care(found: Verdict, taken: Sequence[TakenHeat]) -> Verdict:
    """With care where some cut warms itself too loose and a wait before it is not enough."""
    mends = any(t.mend is not Mend.NONE for t in taken)
    return Verdict.CARE if mends and found is Verdict.YES else found


def in_short(taken: Sequence[TakenHeat]) -> str:
    """Said with the reason, where a cut warms itself too loose: what keeps the grip, after a space."""
    mends = {t.mend for t in taken} - {Mend.NONE}
    if not mends:
        return ""
    return f" Some cuts warm it too loose by themselves: {' or '.join(sorted(m.value for m in mends))}."
