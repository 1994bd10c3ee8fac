"""Metal left on the faces that are machined, by their place in the mould."""

from __future__ import annotations

from borewright.answer.made_casting import FaceStock, Wheel
from borewright.errors import OutsideModel, RefusedInput
from borewright.job.records import Job
from borewright.making.blank.casting_asked import CastingAsked
from borewright.making.shop_sizes import up_to_rule
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.foundry import CastingStock
from borewright.reference.library import Tables

PLACES = {"outside": "side", "face A": "up", "face B": "up", "bore": "bore"}
"""Both faces get what the upper one needs: at the lathe each gives half of what comes off."""


def stocks_of(job: Job, wheel: Wheel, asked: CastingAsked, tables: Tables) -> tuple[FaceStock, ...]:
    """Stock on outside, both faces and a cored bore; never less than the deepest skin.

    The larger of habit and standard: a casting with too little is scrap, one with too much chips.
    UnknownName for a material that is not cast; RefusedInput for a stock that the skin takes whole.
    """
    skin = tables.allowance("skin_depth")
    if asked.stock is not None and asked.stock < skin.high:
        show = Show(job.units)
        allowed = f"at least {show.depth(skin.high)}, more than the skin"
        raise RefusedInput("--stock", show.depth(asked.stock), allowed)
    found = []
    for face, place in PLACES.items():
        said = _said(job, place, wheel, tables)
        taken = asked.stock or up_to_rule(max(said.more, skin.high), job.units)
        found.append(FaceStock(face, place, said, taken))
    return tuple(found)


def lower_face(job: Job, wheel: Wheel, tables: Tables) -> Metre:
    """What the face that is down in the mould would do with (m)."""
    said = _said(job, "down", wheel, tables)
    return up_to_rule(max(said.more, tables.allowance("skin_depth").high), job.units)


def _said(job: Job, place: str, wheel: Wheel, tables: Tables) -> CastingStock:
    try:
        return tables.casting_stock(job.work.material, place, wheel.largest)
    except OutsideModel as outside:
        found = Show(job.units).length(wheel.largest)
        raise RefusedInput(outside.quantity, found, outside.allowed) from None
