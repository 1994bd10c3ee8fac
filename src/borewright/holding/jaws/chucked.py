"""What every chuck says of work in its jaws: how it stands, what pulls the key, the drawing, words.

Beside `jawed`, which says what the jaws hold.
"""

from __future__ import annotations

from borewright.answer.held import OUTSIDE, TAIL_FACE, Check, line
from borewright.answer.held_picture import HeldMark, HeldNote, HeldPicture, HeldRing, Role
from borewright.answer.records import Draws, Step
from borewright.answer.streams import Stream
from borewright.holding.jaws.grasp import Grasp, Where
from borewright.holding.jaws.jawed import Jawed
from borewright.holding.part import Part, none_at_all
from borewright.mechanics.spread import likely, low_end
from borewright.quantities.si import Metre

THICK = {"inch": 0.75 * 0.0254, "mm": 20e-3}
"""How thick jaws are drawn on radius (m): ours."""


def reached(grasp: Grasp) -> tuple[str, ...]:
    """Outside and tail face; the tail face alone where it is held by the outside."""
    return (TAIL_FACE,) if grasp.where is Where.OUTSIDE else (OUTSIDE, TAIL_FACE)


def arm_of(part: Part, grasp: Grasp) -> Metre:
    """From the middle of the jaws to the farther face (m)."""
    return max(part.length - grasp.length / 2, grasp.length / 2)


def grasp_words(part: Part, grasp: Grasp) -> str:
    """Where the jaws take hold, as the end of a sentence."""
    size = part.show.length(grasp.diameter)
    return {
        Where.HUB: f"by the hub, {size} across",
        Where.RIM: f"by the inside of the rim, {size} across, jaws opened outwards",
        Where.BORE: "in the bore, jaws opened outwards",
        Where.OUTSIDE: f"by the outside, {size} across",
    }[grasp.where]


def grasp_runout(part: Part, grasp: Grasp) -> Draws:
    """How far (m) what is gripped runs out to the bore, whole reading."""
    if grasp.where is Where.BORE:
        return none_at_all()
    raw = part.work.blank == "casting"
    if raw:
        return part.fact("hub_runout_cast", Stream.SETTING)
    return part.fact_with_zero("hub_runout", Stream.SETTING)


def stands(part: Part, grasp: Grasp) -> Check:
    """How well the jaws' length squares it; it stands back against the jaws besides."""
    fact, show = part.tables.holding_fact, part.show
    share, enough = fact("jaw_length_share"), fact("jaw_length_enough").best
    wanted = min(share.best * grasp.diameter, enough)
    margin = grasp.length / wanted
    if as_cast_within(part, grasp):
        return _in_draft(part, grasp, wanted, share.source)
    if grasp.where is Where.BORE:
        better = "A shoulder behind it that squares it: soft jaws have one."
    else:
        better = "A hub left longer, turned off last."
    return Check(
        margin,
        margin,
        f"Pushed back against the jaws, {show.length(grasp.length)} in them; "
        f"{show.length(wanted)} is about the least that squares {show.length(grasp.diameter)}.",
        "Nothing needs to." if margin >= 1 else better,
        (share.source,),
    )


IN_DRAFT = 0.8
"""Margin of jaws that open inside a rim as cast, however long they are: with care (ours)."""


def _in_draft(part: Part, grasp: Grasp, wanted: Metre, source: str) -> Check:
    margin, show = min(grasp.length / wanted, IN_DRAFT), part.show
    return Check(
        margin,
        margin,
        f"{show.length(grasp.length)} of jaws inside a rim as cast, whose draft they slide off; about {show.length(wanted)} of "
        f"an even one would square {show.length(grasp.diameter)}.",
        "Strips of soft sheet under the jaws against the draft, or a step filed or turned for them; then the proof load.",
        (source, "ours"),
    )


def key_pull(part: Part, held: Jawed, *, by: str = "the chuck's own key") -> Check:
    """The hand on the key: firm, or held back for the sake of the ring."""
    best, low = part.show.force(likely(held.force)), part.show.force(low_end(held.force))
    firm = "A firm pull, held back a little," if held.held_back else "A firm pull"
    how = "A light pull" if held.lightly else firm
    return Check(
        2.0,
        1.4,
        f"{how} on {by}, about {best} on each jaw, {low} in the poor case (1 in 20).",
        "A clean, oiled screw and scroll press harder for the same pull.",
    )


def as_cast_within(part: Part, grasp: Grasp) -> bool:
    """True where the jaws open inside a rim as it was cast: its draft lets them slip off."""
    return grasp.where is Where.RIM and part.work.blank == "casting"


def back_words(part: Part, grasp: Grasp) -> str:
    """What the work is pushed back against, and what stays clear of the chuck."""
    if grasp.where is not Where.RIM:
        return "pushed back against the jaws"
    clear = part.show.length(part.tables.holding_fact("rim_clear").best)
    return (
        f"web or spokes back against the ends of the jaws, the rim {clear} clear of the chuck, so that the tool runs out "
        "past its edge"
    )


def draft_words(part: Part, grasp: Grasp) -> str:
    """Said of jaws inside a rim or on a hub as cast; nothing else."""
    if grasp.where is Where.HUB and part.work.blank == "casting":
        return (
            " A hub as cast has draft, thinner towards its end: jaws bear near its thick end only, and the work creeps out. A narrow "
            "step turned or filed for them, or strips of soft sheet, thicker at the thin end; push it back hard before the last pull."
        )
    if not as_cast_within(part, grasp):
        return ""
    return (
        " A rim as cast has draft: where it opens towards the chuck, jaws slide off it. Strips of soft sheet under the jaws, "
        "thicker where it opens, or a narrow step filed or turned for them."
    )


def squeezed_lightly(part: Part, held: Jawed) -> str:
    """Said of a hand that must hold back; nothing else."""
    if not held.held_back:
        return ""
    how = "Lightly" if held.lightly else "Firmly, but no harder"
    return (
        f" {how}: about {part.show.force(likely(held.force))} a jaw, "
        f"{100 * held.pull:.0f} % of a firm pull, so that it is sprung and strained less."
    )


def in_line(part: Part, grasp: Grasp, held: Jawed) -> Step:
    """Putting it in: clean, back against the jaws, key at every screw."""
    soft = (
        " Strips of soft sheet between jaws and bore, as the jaws mark it."
        if grasp.where is Where.BORE
        else ""
    )
    return line(
        "Grip it",
        f"Wipe jaws and work, no chip or burr between. Hold it {grasp_words(part, grasp)}, "
        f"{back_words(part, grasp)}.{soft}{draft_words(part, grasp)} Pull up at every screw in turn."
        f"{squeezed_lightly(part, held)}",
        held.figures,
    )


def out_line(again: str) -> Step:
    """Letting it go; what to know if it must go back."""
    return line("Let it go", f"Chuck open, work out, wipe it and deburr the edges. {again}")


def chuck_picture(part: Part, grasp: Grasp, jaws: int, said: str) -> HeldPicture:
    """Body, jaws and work; the tips of the jaws at z = 0."""
    inner, outer = _jaw_radii(part, grasp)
    start = _start(part, grasp)
    deep = grasp.length
    body = max(outer, 1.2 * inner) * 1.3
    clear = part.tables.holding_fact("rim_clear").best if grasp.where is Where.RIM else 0.002
    back = min(-deep, start) - clear
    rings = (
        HeldRing(Role.SPINDLE, back - 0.5 * body, back, body),
        HeldRing(Role.JAW, back, 0.0, outer, inner),
        *part.rings(grasp.leading, start),
    )
    return HeldPicture(
        rings,
        (HeldMark(Role.JAW, (inner + outer) / 2, outer - inner, jaws),),
        (HeldNote(Role.JAW, said),),
        turned=(start, start + part.length) if OUTSIDE in reached(grasp) else None,
    )


def _jaw_radii(part: Part, grasp: Grasp) -> tuple[Metre, Metre]:
    at, thick = grasp.diameter / 2, THICK[part.job.units]
    if not grasp.outwards:
        return at, at + thick
    inner = max(0.3 * at, at - thick)
    if grasp.where is Where.RIM:  # the hub stands between the jaws
        hub = part.ring_at(grasp.leading).outside / 2
        inner = max(inner, hub + (at - hub) / 4)
    return inner, at


def _start(part: Part, grasp: Grasp) -> Metre:
    """z of the leading face, jaws' tips at 0."""
    if grasp.where is not Where.RIM:
        return -grasp.length
    rim = max(part.work.pieces, key=lambda p: p.outside)
    before = rim.start if grasp.leading == "A" else part.length - rim.end
    return -grasp.length - before
