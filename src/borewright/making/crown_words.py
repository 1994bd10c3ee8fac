"""What is said of a crown: why it works, which pulley gets it, how it is set, cut and checked."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from borewright.answer.crown import PulleyCrown, Stepped
from borewright.quantities.show import Show
from borewright.reference.crowns import FIRST_CHOICES, Crown

WHY: Final = (
    "Why a belt climbs: it is stiff sideways, so on a slope it is bent towards the high side, and what "
    "runs on next comes in a little higher. Two slopes push it together into the middle."
)

NO_CURE: Final = (
    "A crown keeps a belt on true pulleys; it cures no shafts that are out of parallel."
)

WHICH: Final = (
    "Which pulley: of a level drive one is enough, as a rule the larger, mostly the driven one; both "
    "where the drive is long or runs up and down. Crossed belts: a low crown on "
    "one or on both. A quarter-turn belt: both flat. (Common practice, no source; shops differ.)",
    "Fast and loose: the wide pulley along which the belt is shifted stays flat (Kent, from memory). "
    "Of the pair, the fast one may be crowned and the loose one stays flat, often a little smaller, so "
    "that the belt idles slack (common practice, no source; some crown both, some neither).",
)

SCOPE: Final = (
    "For flat power belts. An abrasive band, a band saw's wheel and its rubber tyre are outside every "
    "rule here: take what the maker of the machine says."
)

SHOWS_ON_PAPER: Final = 0.25e-3
"""Height (m) of a crown below which scissors and paper are no truer than the crown; ours."""

DIALLED: Final = {
    "radius": "This dial counts radius.",
    "diameter": "This dial counts diameter: the readings are twice the depth.",
    "unknown": "Readings are depth on radius; a dial that counts diameter is turned twice as far.",
}


def reason(crown: PulleyCrown) -> str:
    """Why the recommended rule is recommended."""
    best = crown.recommended
    if best.rule == FIRST_CHOICES[0]:
        return (
            f"Recommended: {best.rule}, for it goes by the diameter, is written for power belts and lies "
            "between the others; a low crown wears the belt's middle least (ours)."
        )
    if best.rule in FIRST_CHOICES:
        why = (
            f"{FIRST_CHOICES[0]} would be steeper than any belt wants on so narrow a face"
            if any(r.rule == FIRST_CHOICES[0] for r in crown.rules)
            else f"{FIRST_CHOICES[0]} says nothing of this diameter"
        )
        return (
            f"Recommended: {best.rule}, for {why}, and this habit lies among the low ones (ours)."
        )
    return f"Recommended: {best.rule}, the middle one of those that the tables have (ours)."


def disagreement(crown: PulleyCrown, show: Show) -> str:
    """How far the rules are apart, in numbers."""
    low, high = crown.rules[0], crown.rules[-1]
    band = show.band(low.height, high.height, "turned")
    return (
        f"The rules disagree {high.height / low.height:.0f} times: {band} on radius. None is the rule."
        if len(crown.rules) > 1
        else "One rule only says something of this pulley."
    )


def rule_said(rule: Crown) -> str:
    """A rule in its source's words, with the source where it is not in its name."""
    return f"{rule.as_published} ({rule.source})"


def taken(crown: PulleyCrown, show: Show) -> str:
    """How high, and by what."""
    by = (
        f"as stated{_beyond(crown)}"
        if crown.rule is None
        else f"by {crown.rule.rule}: {rule_said(crown.rule)}"
    )
    return (
        f"The middle stays {show.turned(crown.diameter)}; the edges come to "
        f"{show.turned(crown.edge_diameter)}, {show.turned(crown.height)} lower on radius, {by}."
    )


def _beyond(crown: PulleyCrown) -> str:
    """Said of a stated height that no rule comes up to, or down to."""
    if crown.height > crown.rules[-1].height * (1 + 1e-9):
        return ", more than any rule here asks"
    less = crown.height < crown.rules[0].height * (1 - 1e-9)
    return ", less than any rule here asks" if less else ""


def setting(crown: PulleyCrown, show: Show) -> tuple[str, ...]:
    """How the form is set, for the shape asked for."""
    return arc_setting(crown, show) if crown.shape == "arc" else taper_setting(crown, show)


def taper_setting(crown: PulleyCrown, show: Show) -> tuple[str, ...]:
    """The double taper: angle, indicator, where it stops."""
    travel, reading = show.length(crown.slide_travel), show.turned(crown.slide_reading)
    flat = f" outside a flat of {show.length(crown.flat)}" if crown.flat else ""
    stop = "the flat's edge" if crown.flat else "the middle"
    against = (
        "on the face, still parallel"
        if crown.slide_travel <= crown.face
        else "along a bar that is parallel with the lathe"
    )
    round_off = "both corners of the flat" if crown.flat else "the ridge in the middle"
    return (
        f"Double taper{flat}: top slide over by {show.angle(crown.angle)}, first to one side, then to the other. "
        f"Its scale shows half a degree at best: with an indicator in the tool post {against}, "
        f"{travel} of top slide must read {reading}.",
        f"Ink the face. Cut by the top slide until the fresh metal just meets {stop}: the depth at the edge "
        f"is then right by itself. Round {round_off} with a fine file.",
    )


def arc_setting(crown: PulleyCrown, show: Show) -> tuple[str, ...]:
    """The arc: its radius, the taper that comes nearest."""
    return (
        f"Arc of {show.length(crown.radius)} radius, stepped off; or a form tool, or a double taper of "
        f"{show.angle(crown.angle)} rounded in the middle.",
    )


def stepping(crown: PulleyCrown, show: Show) -> Iterator[str]:
    """How the table of stairs is used, and what it leaves."""
    stepped = crown.stepped
    if stepped.stairs is None:
        yield (
            f"Too slight for stairs on a dial of {show.turned(stepped.division)}: take the top slide, or a file "
            "and a straightedge."
        )
        return
    first = "Stepping off" if crown.shape == "arc" else "Without a top slide, by steps"
    yield (
        f"{first}: zero the dial where the tool just touches the middle, and the saddle at each edge. Each "
        f"cut runs between the edge and its stop. {DIALLED[stepped.dial]}"
    )
    yield (
        "Start with the stop nearest the middle and work out to the edge: the dial then only ever goes in, its "
        "backlash always on one side. Past a reading, or for the other half: back out a whole turn and come in "
        "again. Feed towards the headstock on both halves where the work sits on a taper mandrel."
    )
    yield left(stepped, show)


def left(stepped: Stepped, show: Show) -> str:
    """Ridges and rounding."""
    made = stepped.stairs
    assert made is not None
    return (
        f"Ridges of up to {show.small(made.cusp)} are left: file them until the steps just vanish. Rounded to "
        f"{show.turned(stepped.division)} of dial, no stair is out by more than {show.small(made.rounding)} on radius."
    )


def checked(crown: PulleyCrown, show: Show) -> str:
    """How it is known to be right."""
    template = (
        "so slight a crown shows on no paper template"
        if crown.height < SHOWS_ON_PAPER
        else "the template shows no light"
    )
    return (
        f"Check: a rule held level over the middle stands off both edges by {show.turned(crown.height)} (feeler or "
        f"drill shank); {template}."
    )
