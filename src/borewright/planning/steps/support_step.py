"""The step that sets the hub on its ring: what to stand it on, and what the rim would do instead."""

from __future__ import annotations

from borewright.answer.records import Figure
from borewright.planning.questions.push import blows
from borewright.planning.taper.dishing import dish_words
from borewright.planning.taper.press_room import opening_needed
from borewright.planning.taper.support import hub_support, ring_words
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import figure


def support_sizes(trial: Trial) -> tuple[Figure, ...]:
    """Hole and outside of the ring, where one can be slipped over the mandrel."""
    s = hub_support(trial)
    if not s.stands:
        return ()
    return (
        figure("support_hole", s.hole, "m", "length", "", sources=("ours",)),
        figure("support_outside", s.outside, "m", "length", ""),
    )


def support_words(trial: Trial) -> str:
    """How the hub stands in the press, and why not the rim."""
    return f"{_stands(trial)} {dish_words(trial)}".rstrip()


def _stands(trial: Trial) -> str:
    lead = trial.hold.leading
    if trial.shop.hammers:
        return (
            f"The hub, not the rim, on a {ring_words(trial)}, on something solid; face {lead} up; room below for the mandrel; a "
            f"soft block on the center hole. About {blows(trial)} blows, square and even: watch the rule, not the sound."
        )
    if "vice" in trial.shop.press_name:
        return (
            f"In the vice: a {ring_words(trial)}, between one jaw and the hub, not the rim, at the face that is not "
            f"{lead}, and room in it for the mandrel; the other jaw on the large end, a soft pad over the center hole. It must open "
            f"{trial.show.length(opening_needed(trial))}. In a press: face {lead} up."
        )
    return (
        f"The hub, not the rim, on a {ring_words(trial)}; face {lead} up; room below for the mandrel; a soft pad on the "
        "center hole."
    )
