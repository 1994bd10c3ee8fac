"""A margin against the thresholds of the reference table: yes, with care or no."""

from __future__ import annotations

import math

from borewright.answer.records import Verdict
from borewright.reference.library import Tables


def judge(question: str, likely: float, low: float, tables: Tables) -> Verdict:
    """The verdict for a question's likely and low margins."""
    t = tables.threshold(question)
    if likely >= t.yes_likely and low >= t.yes_low:
        return Verdict.YES
    if likely >= t.care_likely and low >= t.care_low:
        return Verdict.CARE
    return Verdict.NO


def share_of_yes(question: str, likely: float, low: float, tables: Tables) -> float:
    """At least 1 where the verdict is yes; grows with either margin."""
    t = tables.threshold(question)
    return min(_share(likely, t.yes_likely), _share(low, t.yes_low))


def _share(value: float, wanted: float) -> float:
    return math.inf if wanted <= 0 else value / wanted
