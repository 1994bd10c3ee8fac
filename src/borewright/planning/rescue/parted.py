"""Two that stop the job: work that slipped or seized, and a crack that is seen or suspected."""

from __future__ import annotations

from dataclasses import replace

from borewright.answer.records import Figure, Have, Need, Verdict
from borewright.answer.rescue import WayOut
from borewright.planning.rescue.case import CRACKED, SLIPPED, Case
from borewright.planning.rescue.entry import takes, told
from borewright.planning.rescue.other_mandrel import with_drive
from borewright.planning.weighing.figures import figure

FREE_IT, LOOK = "free-it", "look"

NOT_ON_A_DOUBT = "Not on a doubt: look first."


def free_it(case: Case) -> WayOut | None:
    """Work that slipped: stop, part it, look, measure both, plan it again; None where it did not."""
    if not case.has(SLIPPED):
        return None
    holds, why = case.bore_stays()
    advice, figures = _planned_again(case)
    return WayOut(
        FREE_IT,
        "part them, look, measure, plan it again",
        Verdict.CARE,
        f"Do not turn on: slipping once tears the bore, and it slips sooner the next time. {advice}",
        takes(FREE_IT, case.tables),
        holds,
        why,
        (
            Need("press, and the ring that supports the hub", Have.OWN, taken=True),
            Need("oil, rag, blue, pencil", Have.OWN, taken=True),
        ),
        figures,
        (
            "Stop the lathe. Pencil or scribe a line across work and mandrel where they stand, and note the cut.",
            "Press it off towards the small end, the hub supported. If it does not start at the usual push it has seized: "
            "oil, wait, warm the work evenly, and never drive on.",
            "Look at both under a lamp: torn or smeared metal is galling. None: it slid on its oil, and little is lost.",
            "Wash both; stone what stands up on the mandrel, polish what stands up in the bore; no file.",
            "Measure the bore at three depths and in two directions, and the mandrel where it sat; ask again with these.",
            "Then one or more of: more travel, a positive drive (a second dog on the hub, a pin), a lighter cut or feed; and "
            "prove the grip before cutting.",
        ),
        told(case, "slipped", "press"),
    )


def _planned_again(case: Case) -> tuple[str, tuple[Figure, ...]]:
    """What the plan says of the bore as read now, and the deepest cut of it."""
    best = case.on_mandrels.best
    if best is None:
        return "As it is read now no mandrel here takes it.", ()
    if best.verdict is Verdict.NO:
        helps = best.deciding.changes_it
        what = "" if helps.startswith("Nothing") else f" What helps: {helps[:1].lower()}{helps[1:]}"
        return f"As it is read now it is a no: {best.deciding.reason}{what}", ()
    slip, trial = best.question("slip"), best.trial
    press = trial.show.rule(trial.chosen.press)
    figures = tuple(
        f for f in slip.figures if f.name in ("deepest_cut", "slip_torque", "cut_torque")
    )
    margin = replace(_margin(slip.margin, slip.margin_low), sources=slip.sources)
    return (
        f"For the bore as read now: {trial.mandrel.name}, {press} past touch{with_drive(trial)}. {slip.reason}",
        (margin, *figures),
    )


def _margin(best: float, low: float) -> Figure:
    return figure("slip_margin", best, "", "ratio", "", (), (), (min(low, best), best))


def look(case: Case) -> WayOut | None:
    """A suspected crack: how to look; None where there is no doubt and no key corner to look at."""
    if not case.has(CRACKED):
        return None
    return WayOut(
        LOOK,
        "stop, and look for the crack",
        Verdict.CARE,
        "Nothing is pressed, spun or bored until it is known. No looking makes it safe: it can only find the crack, and a "
        "crack that is found ends the piece, or sends it to a licensed repairer.",
        takes(LOOK, case.tables),
        *case.bore_stays(),
        (
            Need("solvent and brush", Have.OWN, taken=True),
            Need("lamp and glass", Have.OWN, taken=True),
            Need("penetrant, or paraffin and chalk", Have.BUY),
        ),
        (),
        (
            "Off the machine. Wash it to bare metal: bore, key corner, hub, the roots of spokes or web.",
            "Lamp along the surface and a glass: a crack is a line that crosses the tool marks and goes round a corner.",
            "Hang it and tap it: a cracked casting rattles or is dead. One that rings may still be cracked.",
            "Penetrant by its own sheet; or paraffin wiped on, wiped off and chalked: what weeps back is open.",
            "Found, or still in doubt: do not press it and do not spin it. Scrap it, or send it to who is licensed to repair it.",
            'Nothing found by all four: say flaws = "none" in the job file and ask again; that is your word, not this sheet\'s.',
        ),
        told(case, "doubt"),
    )
