"""Sentences of draft, corners and parting."""

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
