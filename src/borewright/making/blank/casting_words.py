"""Sentences that papers and drawings of a casting share."""

from __future__ import annotations

from borewright.answer.made_casting import MadeCasting
from borewright.job.records import Piece
from borewright.job.web import between, on_bore
from borewright.quantities.show import Show


def per_foot(shrinkage: float, show: Show) -> str:
    """Shrinkage as a shop says it.

    >>> per_foot(1 / 64, Show("inch")), per_foot(1 / 64, Show("mm"))
    ('0.188 in/ft (1.56 %)', '1.56 % (0.188 in/ft)')
    """
    foot, percent = f"{12 * shrinkage:.3f} in/ft", f"{100 * shrinkage:.2f} %"
    return f"{foot} ({percent})" if show.units == "inch" else f"{percent} ({foot})"


def shrink_words(made: MadeCasting) -> str:
    """Which shrinkage was taken, and that none is sure."""
    show, shrink = Show(made.units), made.shrink
    taken = per_foot(shrink.taken, show)
    if shrink.by == "own figure":
        return f"{taken} larger than the casting, the figure stated"
    if shrink.by == "first casting":
        return f"{taken} larger than the casting, as a first casting measured"
    if shrink.by == "books":
        return f"{taken} larger than the casting, which is all that the sources say"
    ends = f"{per_foot(shrink.low, show)} and {per_foot(shrink.high, show)}"
    return f"{taken} larger than the casting, half way between sources that say {ends}"


def parting_words(made: MadeCasting, show: Show) -> str:
    """Where the parting plane lies."""
    at = made.mould.parting
    if at in (0.0, made.length):
        return f"at face {'B' if at else 'A'}"
    return f"{show.length(at)} from face A"


def stock_words(made: MadeCasting, show: Show) -> str:
    """Stock, face by face."""
    return ", ".join(f"{s.face} {show.depth(s.taken)}" for s in made.stocks)


def named_rings(made: MadeCasting) -> tuple[tuple[str, Piece], ...]:
    """The rings as cast, each by what a shop calls it: body, hub, web or spokes, rim."""
    bore = made.wheel.bore.size
    webs, hubs = between(made.pieces, bore), on_bore(made.pieces, bore)
    web = next((s.name for s in made.mould.sections if s.name == "spokes"), "web")
    if len(made.pieces) == 1:
        return (("body", made.pieces[0]),)
    return tuple((web if p in webs else "hub" if p in hubs else "rim", p) for p in made.pieces)
