"""When another way of holding would serve better: named, with the reason, before it is computed."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.records import Candidate, Verdict
from borewright.holding.bore_shape import out_of_round
from borewright.job.records import Job
from borewright.planning.choice.candidates import Weighed
from borewright.planning.questions.seat import is_short
from borewright.planning.shop.shop import Shop
from borewright.planning.taper.soundness import flaw_forbids
from borewright.quantities.show import Show
from borewright.reference.library import Tables

NOT_YET_BORED = ("drilled", "as-cast", "cast", "unknown", "")
"""Ways a bore may have been made that leave the finishing of it still to do."""


FAR_OUT = 5.0
"""Outside over bore from which the rim counts as far out (ours)."""


THIN_RING = 0.12
"""Wall over bore below which a ring is thin (ours)."""

WORN_OVAL = 0.05e-3
"""Difference of readings (m) at one depth from which a bore counts as worn, not as made (ours)."""

MANY = 5
"""So many alike are worth a gang (ours)."""

STUB_INSTEAD = (
    "Where no ground mandrel is at hand, a stub turned in the chuck to this bore does the job."
)


def better_ways(
    job: Job, shop: Shop, best: Weighed | None, tables: Tables
) -> tuple[Candidate, ...]:
    """Other ways worth thinking of, the strongest reason first. None is computed yet."""
    found = dict(_for_rings(job))
    found.update(_for_ovals(job))
    found.update(_stub_needed(job, shop, best))
    found.update(_for_gangs(job))
    found.update(_one_chucking(job))
    if best is not None:
        found.update(_for_short(best))
        found.update(_for_slip(best))
        for way, reason in _for_crack(best):
            found.setdefault(way, reason)
    if not found and not job.shelf.stated:
        found["turned-stub"] = STUB_INSTEAD
    return tuple(
        Candidate(way, tables.way(way).name, "", None, reason, computed=False)
        for way, reason in found.items()
    )


def _stub_needed(job: Job, shop: Shop, best: Weighed | None) -> Iterator[tuple[str, str]]:
    size = Show(job.units).bore(job.work.bore.size)
    if shop.owns_none:
        yield (
            "turned-stub",
            (
                f"With no mandrel on the shelf, turn a stub in the chuck to this bore ({size}), and leave it there until the "
                "batch is done. It runs true because it was turned in place: an everyday job."
            ),
        )
    elif _no_round_bore(job, best):
        return
    elif best is None or best.question("bore").verdict is Verdict.NO:
        yield (
            "turned-stub",
            (
                f"No mandrel on the shelf takes this bore: turn a stub in the chuck to it ({size}), and leave it "
                "there until the batch is done."
            ),
        )


def _no_round_bore(job: Job, best: Weighed | None) -> bool:
    """True where a stub would serve no better than a mandrel: the bore is oval, or must not be pressed on."""
    flawed = best is not None and flaw_forbids(job, brittle=best.trial.hold.facts.brittle)
    return bool(flawed) or out_of_round(job.work.bore) > WORN_OVAL


def _for_rings(job: Job) -> Iterator[tuple[str, str]]:
    work = job.work
    if (work.outside - work.bore.size) / 2 < THIN_RING * work.bore.size:
        yield (
            "soft-jaws",
            "The ring is thin for its size and springs when anything presses on its bore: hold it in soft jaws bored to "
            "its outside, or clamp it endwise against a plate, and let it go before the last cut.",
        )


def _for_ovals(job: Job) -> Iterator[tuple[str, str]]:
    if out_of_round(job.work.bore) > WORN_OVAL:
        yield (
            "faceplate",
            "The bore is worn oval, so nothing round can find its middle: set the work true on the faceplate by what must "
            "run true, bore it round, and bush it if it is then too large.",
        )


def _for_gangs(job: Job) -> Iterator[tuple[str, str]]:
    work = job.work
    if work.quantity >= MANY and work.length < work.bore.size:
        yield (
            "nut-mandrel",
            f"There are {work.quantity} thin blanks: several at once between shoulder and nut bear on their faces, turn in "
            "one pass and do not rock; their bores must be alike.",
        )


def _for_short(best: Weighed) -> Iterator[tuple[str, str]]:
    if is_short(best.trial):
        yield (
            "nut-mandrel",
            "The bore is short for its diameter and may sit out of square on a taper: between a shoulder "
            "and a nut it seats by its faces, which must be parallel.",
        )


def _one_chucking(job: Job) -> Iterator[tuple[str, str]]:
    if out_of_round(job.work.bore) > WORN_OVAL:
        return
    if job.work.blank == "bar" and job.work.bore.made_by in NOT_YET_BORED:
        yield (
            "one-chucking",
            (
                "If the bore is not finished yet and the bar can be gripped past the work: bore, rim and one face in "
                "one chucking are true with each other, and no mandrel is needed but for the second face."
            ),
        )
    elif job.work.bore.made_by in NOT_YET_BORED and job.work.blank != "bar":
        yield (
            "one-chucking",
            (
                "If the bore is not finished yet and a boss or the inside of the rim can be gripped: finish bore and "
                "rim in one chucking; then no mandrel is needed but for the second face."
            ),
        )


def _for_slip(best: Weighed) -> Iterator[tuple[str, str]]:
    work = best.trial.job.work
    far_out = work.outside >= FAR_OUT * work.bore.size
    if best.question("slip").verdict is not Verdict.YES and far_out:
        yield (
            "faceplate",
            (
                "The rim is far out on a small bore: strapped to the faceplate near the rim, set true by indicator on "
                f"the bore, it is held where the cut pulls. On the mandrel, {_positive(best)} takes the torque instead."
            ),
        )


def _positive(best: Weighed) -> str:
    if best.trial.job.work.spokes:
        return "a stud in the driver plate, bearing on a spoke by a soft pad,"
    return "a second dog on the hub"


def _for_crack(best: Weighed) -> Iterator[tuple[str, str]]:
    if flaw_forbids(best.trial.job, brittle=best.trial.hold.facts.brittle):
        yield (
            "four-jaw",
            (
                "Nothing may press on a flawed bore: hold by the rim or hub in the four-jaw, packed and no tighter than "
                "needed, and set the bore true by indicator."
            ),
        )
        yield (
            "faceplate",
            (
                "Nothing may press on a flawed bore: strap the work to the faceplate by web or spokes, set true by "
                "indicator on the bore."
            ),
        )
        return
    held_back = best.trial.chosen.limited_by == "the bore" and best.verdict is not Verdict.YES
    if best.question("crack").verdict is not Verdict.YES or held_back:
        yield (
            "four-jaw",
            (
                "The bore does not like to be forced: hold by the rim or hub in the four-jaw and set the bore true by "
                "indicator, and nothing is pressed."
            ),
        )
