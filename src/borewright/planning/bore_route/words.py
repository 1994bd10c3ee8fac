"""Ream or bore and why; what to do before mounting; why not another way."""

from __future__ import annotations

from borewright.job.records import Job
from borewright.planning.bore_route.wanted import Wanted
from borewright.planning.bore_route.ways import Way
from borewright.quantities.show import Show
from borewright.reference.library import Tables


def share_words(chance: float) -> str:
    """A chance as a person says it.

    >>> share_words(0.724), share_words(0.9991), share_words(0.001)
    ('about 72 in 100', 'better than 99 in 100', 'less than 1 in 100')
    """
    if chance >= 0.995:
        return "better than 99 in 100"
    return "less than 1 in 100" if chance < 0.01 else f"about {100 * chance:.0f} in 100"


def ream_or_bore(best: Way, ways: tuple[Way, ...], want: Wanted, job: Job) -> str:
    """Which of the two leaves the size, and the reason."""
    if best.bars:
        return f"Neither, with what is here: {best.bars}."
    if best.chance is None:
        return _any_size(best)
    other = next(
        (w for w in ways if w.chance is not None and not w.bars and _kind(w) != _kind(best)), None
    )
    against = f", {_kind(other)} {share_words(other.chance)}" if other and other.chance else ""
    chances = f"{_kind(best)} lands {share_words(best.chance)}{against}"
    return f"{_first(best, job)}: {chances}. {_why(best, want)}"


def _kind(way: Way) -> str:
    return {"ream": "reaming", "bore": "boring"}.get(way.last.process, way.last.process)


def _first(best: Way, job: Job) -> str:
    alike = f", {job.work.quantity} alike" if job.work.quantity > 1 else ""
    if best.last.process == "ream":
        return f"Bore, then ream{alike}" if best.trues else f"Ream{alike}"
    return f"Bore to size{alike}"


def _why(best: Way, want: Wanted) -> str:
    if want.with_rim and best.trues:
        sizes = (
            ", and the reamer only gives it size and finish" if best.last.process == "ream" else ""
        )
        return (
            "Bore and rim are true with each other in one chucking only where the bore is bored: a drill wanders, and a "
            f"reamer follows it. The bar brings the hole back to the axis{sizes}."
        )
    if want.with_rim:
        return (
            "A reamer follows the drilled hole and does not straighten it, and no bar trues it here: rim and bore turned in "
            "one chucking are then only as true with each other as the drill ran."
        )
    if best.last.process == "ream" and best.trues:
        return "The bar brings the hole back to the axis, and the reamer, which only follows, gives it size and finish."
    if best.last.process == "ream":
        return (
            "A reamer follows the drilled hole and does not straighten it: that does no harm where rim and faces are "
            "turned from the bore."
        )
    if want.cored:
        return "A cored hole is not on the axis and its skin eats drills and reamers: only a bar makes it true."
    return "No reamer here lands as well, and the bar makes the hole true besides."


def _any_size(best: Way) -> str:
    if best.last.process == "bore":
        return "Bore: there is no size to hit, only a round and straight hole, and that is what a bar makes."
    return "Ream: no bar goes in or reaches, and a reamer at least leaves it smooth."


def before_mounting(job: Job, tables: Tables) -> str:
    """The tell-tale at the bore's edges: what keeps a facing tool off the mandrel."""
    if max(job.work.chamfers.legs) > 0:
        return (
            "The chamfers at the bore's edges are the tell-tale: when a facing cut has nearly eaten one, the tool is next "
            "to the mandrel. Wipe the burrs off before mounting."
        )
    usual = tables.boring("tell_tale")
    leg = Show(job.units).depth(min(usual.best, max(usual.low, job.work.length / 10)))
    return (
        f"Chamfer both edges of the bore before mounting, {leg} deep at 45 degrees, or counterbore as deep where the "
        "corner must stay sharp: it takes the burr off, the edge starts no crack, and when a facing cut has nearly eaten "
        "it the tool is next to the mandrel."
    )


def why_not(way: Way, best: Way, want: Wanted, job: Job) -> str:
    """Why this way and not the best one, in a clause."""
    if way.bars:
        return way.bars
    if want.with_rim and best.trues and not way.trues:
        return (
            "nothing brings the hole back to the axis, and the rim is turned in the same chucking"
        )
    if way.owned == "no" and best.owned != "no":
        return f"not on the shelf; {way.last.tool} would have to be got"
    if job.work.blank == "casting" and best.trues and not way.trues:
        return "nothing brings the hole back to the axis, and a casting shows it"
    if way.chance is None or best.chance is None:
        return "it would do as well, and leaves a size instead of a clean hole"
    if way.chance < best.chance - 0.01:
        return "it lands less often"
    if best.last.process == "ream" and way.last.process == "bore":
        return "the last tenths are then up to the hand"
    more = len(way.passes) > len(best.passes)
    surer = "hardly surer" if way.chance > best.chance + 0.01 else "no surer"
    return f"{surer}, and {'slower' if more else 'no quicker'}"
