"""Sentences of draft, corners and parting, and of what feeds the casting."""

from __future__ import annotations

from borewright.answer.made_casting import MadeCasting
from borewright.mechanics.cast_metal import draft_adds
from borewright.quantities.show import Show


def mould_words(made: MadeCasting, show: Show) -> tuple[str, ...]:
    """Draft, corners and where the pattern parts."""
    mould = made.mould
    deep = max(mould.parting, made.length - mould.parting)
    adds = show.depth(draft_adds(deep, mould.outside_draft))
    said = [
        f"Draft {show.angle(mould.outside_draft)} outside, {show.angle(mould.inside_draft)} where sand stands within. It adds metal, thickest "
        f"towards the parting: {adds} on the radius over {show.length(deep)}. Nowhere is the casting thinner than asked.",
        f"The parting lies {mould.parting_why}.",
    ]
    if mould.fillet:
        said.append(
            f"Fillets {show.length(mould.fillet)} where web meets hub and rim: a sharp corner there tears as it freezes. Other "
            f"corners {show.length(mould.round)}, but for edges that are machined."
        )
    else:
        said.append(f"Corners {show.length(mould.round)}, but for edges that are machined.")
    return tuple(said)


def feeding_words(made: MadeCasting, show: Show) -> tuple[str, ...]:
    """Where sprue and riser go, and how large the riser is."""
    mould = made.mould
    heaviest = mould.sections[0]
    order = ", ".join(f"{s.name} {show.depth(s.modulus)}" for s in mould.sections)
    place = {
        "hub": "on the hub, beside where the bore will come",
        "body": "on the face that is up, half way between bore and edge",
        "web": "on the web, near the hub",
        "rim": "by a neck on the inside of the rim, so that its face stays clear",
    }[heaviest.name]
    wide = ""
    if mould.neck:
        wide = f" Wider than the metal under it, it is necked in to {show.length(mould.neck)} where it meets it."
    place_of_sprue = (
        "The sprue comes in on the face, away from the outside and from the edge of the bore"
        if heaviest.name == "body"
        else "The sprue comes in by the web or the hub, away from the rim and from the edge of the bore"
    )
    return (
        f"Volume over cooling surface: {order}. The {heaviest.name} freezes last and draws metal from whatever still flows: the riser "
        f"stands {place}.",
        f"An upright round riser {show.length(mould.riser)} thick and as high freezes later than that; a hot top or a chill under the "
        "heavy metal lets it be smaller."
        f"{wide}",
        f"{place_of_sprue}: what tears or sponges at a gate must not be a surface that is used.",
    )
