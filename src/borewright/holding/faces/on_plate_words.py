"""What holding down on a plate needs, says and looks like, however the bore is found."""

from __future__ import annotations

from borewright.answer.held import Check, line
from borewright.answer.held_picture import HeldMark, HeldNote, HeldPicture, HeldRing, Role
from borewright.answer.records import Need, Step
from borewright.holding.faces.cap import cap_needs, cap_size
from borewright.holding.faces.on_plate import (
    BORE,
    HOLES,
    PLATE,
    SPOKES,
    WASHER,
    HeldDown,
    balance_figures,
    balance_of,
    plate_figures,
)
from borewright.holding.owned import made, needed
from borewright.holding.part import FACE_MEETS, Part
from borewright.mechanics.spread import low_end

BY = {
    SPOKES: "straps across the spokes",
    HOLES: "bolts through holes in it",
    BORE: "a bolt through the bore",
}
"""What holds it down, in words."""


def held_by(part: Part, down: HeldDown) -> str:
    """How it is held down, as a clause."""
    size = part.show.length(down.thread)
    if down.by == SPOKES:
        return f"{down.number} straps with {size} bolts across the spokes"
    if down.cap is not None:
        return f"a {size} bolt through the bore and a {down.cap.name}"
    return f"{down.number} bolts of {size} through holes in it, {_circle(part, down)}"


def _circle(part: Part, down: HeldDown) -> str:
    return f"on a circle of {part.show.length(2 * down.radius)}"


def plate_needs(part: Part, down: HeldDown, *, indicator: bool = True) -> tuple[Need, ...]:
    """Faceplate, what holds the work down on it, counterweights; `indicator`: to set it true."""
    job, tables = part.job, part.tables
    tools = ["faceplate", *(("indicator",) if indicator else ())]
    tools += [] if down.by == BORE else ["counterweights"]
    found = [needed(job, tables, tool) for tool in tools]
    if down.by == SPOKES:
        found.append(needed(job, tables, "straps"))
    else:
        found.append(needed(job, tables, "clamp-screw", what=f"bolts, {BY[down.by]}"))
    if down.cap is not None:
        found += cap_needs(part, down.cap)
    if down.by == HOLES:
        minutes = tables.holding_fact("plate_holes_making").best * part.work.quantity
        found.append(made(f"{down.number} holes through the work", minutes))
    return tuple(found)


def plate_seat(part: Part, down: HeldDown) -> Check:
    """The plate squares it, on as wide a base as it is held down on."""
    base = 2 * down.radius / max(part.length, part.bore)
    margin = 2.0 if down.by != BORE else min(2.0, max(base, 0.7) * 1.5)
    return Check(
        margin,
        margin,
        f"The face of the plate stops it lengthwise and squares it; it is held down by "
        f"{held_by(part, down)}.",
    )


def plate_fit(part: Part, down: HeldDown, found: str) -> Check:
    """How the bore is found; holes in the work are a doubt that only its drawing settles."""
    if down.by != HOLES:
        return Check(2.0, 2.0, found)
    return Check(
        0.6,
        0.6,
        f"{found} The holes stay in the work: only where its drawing bears them.",
        "Straps where it has spokes or openings; or holes that it needs anyway.",
    )


def holes_step(part: Part, down: HeldDown) -> tuple[Step, ...]:
    """Holes through the work come before it is laid on the plate; nothing elsewhere."""
    if down.by != HOLES:
        return ()
    number, size = (
        ("Three" if down.number == 3 else str(down.number)),
        part.show.length(down.thread),
    )
    return (
        line(
            "Holes first",
            f"{number} holes through the work {_circle(part, down)}, drilled clear for {size} bolts before it is laid on the "
            "plate: marked out from the bore and center punched, burrs off both sides. Slots in the plate or holes in it on "
            "the same circle, with room to shift the work true.",
        ),
    )


def hold_down_step(part: Part, down: HeldDown) -> Step:
    """Packing, bolts and pencil line."""
    return line(
        "Hold it down",
        f"{_packed(part, down)} {_even(down)}, about {part.show.torque(down.clamp.wrench)} on the wrench. Pencil line across work and plate: "
        "if it breaks, it slipped: stop.",
        plate_figures(part, down),
    )


def _packed(part: Part, down: HeldDown) -> str:
    if down.cap is not None:
        turned = "sawn from flat bar, bored and faced" if down.cap.is_plate else "faced both sides"
        return (
            f"The {down.cap.name}, {cap_size(part, down.cap)}, {turned}, on the face round the bore: no wider, or it stands in "
            "the tool's way."
        )
    return {
        SPOKES: "A packing under every spoke that just takes a paper, the strap right over it, its bolt close to the spoke and "
        "inside of the rim: nothing may reach the tool's way.",
        HOLES: "Heads on the work, nuts behind the plate, or the holes in the plate tapped; packing that just takes a paper "
        "round each bolt where the work stands off the plate.",
    }[down.by]


def _even(down: HeldDown) -> str:
    return "Draw it up" if down.number == 1 else "Draw them up in turn, a little at a time"


def balance_step(part: Part, down: HeldDown) -> Step:
    """Counterweight, and the speed until it is there."""
    b, show = balance_of(part, down), part.show
    if down.cap is not None:
        return line(
            "Balance it",
            f"Bolt and {down.cap.name} lie on the axis, so only the work itself can be heavy on one side. Belt off, or gears out, so that "
            "the spindle swings free: where it stops heavy side down, bolt a weight opposite until it stops anywhere.",
        )
    return line(
        "Balance it",
        "Belt off, or gears out, so that the spindle swings free: where it stops heavy side down, bolt a weight opposite until "
        f"it stops anywhere. Straps of one set may want about {show.weight(b.weight)} at {show.length(b.at)}; not over "
        f"{show.spindle(b.speed)} before that is done.",
        balance_figures(part, down, b),
        ("counterweight",),
    )


def plate_marks(down: HeldDown) -> str:
    """What is left on the work."""
    return {
        SPOKES: "Strap marks on the spokes: copper or card under each.",
        HOLES: f"{down.number} holes that stay in it.",
        BORE: "A ring where washer or plate bears.",
    }[down.by]


def plate_more(down: HeldDown) -> str:
    """What gives more grip."""
    if down.by == BORE:
        return "paper between work and plate, or a driving stud against a spoke or in a hole"
    return "paper between work and plate, one bolt more, or a stop bolted against its side"


def tail_words(part: Part, down: HeldDown) -> str:
    """The least that it holds, as a note."""
    show = part.show
    return (
        f"Friction on the plate alone is counted, {show.torque(low_end(down.torque))} in the poor case (1 in 20): nothing for "
        "the sides of bolts or straps, which stop it in the end."
    )


def plate_picture(part: Part, down: HeldDown, leading: str, spigot: float) -> HeldPicture:
    """Faceplate, work, what holds it down and the counterweight; `spigot` is its length (m)."""
    thick, t = PLATE[part.job.units], down.thread
    start = thick if spigot else 0.0
    size = max(0.45 * part.outside, 1.4 * down.radius)
    end = start + part.length
    rings = [
        HeldRing(Role.SPINDLE, -2.2 * thick, -thick, 0.6 * size, 0.0),
        HeldRing(Role.PLATE, -thick, 0.0, size),
        *part.rings(leading, start),
    ]
    if spigot:
        rings += [
            HeldRing(Role.PLATE, 0.0, thick, size),
            HeldRing(Role.MANDREL, thick, thick + spigot, part.bore / 2),
        ]
    marks = [HeldMark(Role.WEIGHT, 0.9 * size, 1.5 * t, 1, 0.6)]
    if down.cap is not None:
        top = end + down.cap.thick
        rings += [
            HeldRing(Role.WASHER, end, top, down.cap.across / 2),
            HeldRing(Role.SCREW, top, top + 0.7 * t, 0.8 * t),
        ]
        marks.append(HeldMark(Role.SCREW, 0.0, 1.7 * t))
    else:
        what = Role.STRAP if down.by == SPOKES else Role.SCREW
        marks.append(HeldMark(what, down.radius, 2.2 * t, down.number))
        rings += _bolts(part, down, leading, start)
    notes = [
        HeldNote(Role.WEIGHT, "counterweight"),
        HeldNote(Role.STRAP if down.by == SPOKES else Role.SCREW, BY[down.by]),
    ]
    if down.cap is not None:
        notes.append(HeldNote(Role.WASHER, f"{down.cap.name}, {cap_size(part, down.cap)}"))
    if down.by == SPOKES:
        notes.append(HeldNote(Role.SCREW, "strap bolt"))
    if any(r.role is Role.PIN for r in rings):
        notes.append(HeldNote(Role.PIN, "packing"))
    return HeldPicture(tuple(rings), tuple(marks), tuple(notes), turned=(start, end))


def _bolts(part: Part, down: HeldDown, leading: str, start: float) -> list[HeldRing]:
    """Bolts from behind the plate, their heads or straps, and packing under what stands off it."""
    r, t = down.radius, down.thread
    near, far = (start + z for z in _at_bolts(part, r, leading))
    what = Role.STRAP if down.by == SPOKES else Role.SCREW
    rings = [
        HeldRing(Role.SCREW, start - PLATE[part.job.units] - 0.7 * t, far, r + t / 2, r - t / 2),
        HeldRing(what, far, far + 0.7 * t, r + WASHER[1] * t / 2, r - WASHER[1] * t / 2),
    ]
    if near - start > FACE_MEETS:
        for inner, outer in (
            (r - WASHER[1] * t / 2, r - t / 2),
            (r + t / 2, r + WASHER[1] * t / 2),
        ):
            rings.append(HeldRing(Role.PIN, start, near, outer, inner))
    return rings


def _at_bolts(part: Part, radius: float, leading: str) -> tuple[float, float]:
    """Where the metal at the bolts begins and ends (m, from the leading face)."""
    there = [
        p
        for p in part.work.pieces
        if (part.bore if p.inside is None else p.inside) / 2 < radius < p.outside / 2
    ]
    near, far = min(p.start for p in there), max(p.end for p in there)
    return (near, far) if leading == "A" else (part.length - far, part.length - near)
