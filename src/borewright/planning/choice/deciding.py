"""Of several answers, the worst; of several equally bad ones, the one that is said first."""

from __future__ import annotations

from collections.abc import Sequence

from borewright.answer.records import Question, Verdict

MATTERS = (
    "crack",
    "bore",
    "slip",
    "rock",
    "heat",
    "push",
    "seat",
    "reach",
    "speed",
    "bend",
    "true",
)
"""Which of several equal answers is said first."""


def worst_of(questions: Sequence[Question]) -> Verdict:
    """The worst answer."""
    return max((q.verdict for q in questions), key=lambda v: v.rank)


def deciding_of(questions: Sequence[Question]) -> Question:
    """Of the questions with the worst answer, the one that matters most."""
    worst = worst_of(questions)
    return min((q for q in questions if q.verdict is worst), key=lambda q: MATTERS.index(q.id))
