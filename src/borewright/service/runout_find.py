"""runout find: what shows, where and when -> likely causes in order, each with its next check."""

from __future__ import annotations

from typing import Any

from borewright.reference.library import Tables
from borewright.reference.symptoms import Cause

MOST = 6
"""As many causes as a person works through before looking again (ours)."""


def find_causes(
    where: str | None, shows: str | None, when: str | None, tables: Tables
) -> tuple[Cause, ...]:
    """The likeliest first, at most MOST; UnknownName for a word that the table has not.

    The last of them is always the reading itself: no cause is believed before that.
    """
    found = tables.causes(where, shows, when)
    return (*found[: MOST - 1], *found[-1:]) if len(found) > MOST else found


def causes_json(found: tuple[Cause, ...]) -> dict[str, Any]:
    """The causes as one object, in their order."""
    keys = ("id", "cause", "check", "mend", "source")
    return {"causes": [{key: getattr(c, key) for key in keys} for c in found], "assumed": []}


def causes_words(found: tuple[Cause, ...]) -> list[str]:
    """One numbered paragraph for each."""
    numbered = enumerate(found, 1)
    said = [
        f"{n}. {c.cause[0].upper()}{c.cause[1:]}.\n   Check: {c.check}\n   Then: {c.mend}"
        for n, c in numbered
    ]
    return [
        *said,
        "Common practice, no source; the order is a judgment of ours. Power off for every check by hand.",
    ]
