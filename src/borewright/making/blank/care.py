"""Why a casting is to be made with care, if at all."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.made_casting import FaceStock, MadeCasting
from borewright.answer.papers import Warned
from borewright.making.cautioned import cautioned
from borewright.reference.library import Tables

FUMES = ("zinc", "brass", "bronze")
"""Families whose zinc fumes."""


def care_of(made: MadeCasting, tables: Tables) -> tuple[str, ...]:
    """The reasons, the gravest first; none for everyday work."""
    return tuple(_reasons(made, tables))


def _reasons(made: MadeCasting, tables: Tables) -> Iterator[str]:
    metal = tables.foundry_metal(made.material)
    name = tables.material(made.material).name
    if not metal.small_shop:
        yield f"{name} is work for a foundry, not for a small shop"
    other = tables.not_for_casting(made.material)
    if other:
        yield f"{name} is no alloy for casting (near it, one is: {tables.material(other.instead).name})"
    short = below_standard(made)
    if short:
        yield f"the stock stated is below the standard's on {' and '.join(s.face for s in short)}"
    if made.melt.heats == 0:
        yield "one mould takes more than a crucible that a small shop lifts"
    if not (made.mould.riser.fits or made.mould.swells):
        yield f"no riser that freezes later than the {made.mould.sections[0].name} fits"


def below_standard(made: MadeCasting) -> tuple[FaceStock, ...]:
    """The faces on which less is left than the standard asks."""
    return tuple(s for s in made.stocks if s.said and s.taken < s.said.standard - 1e-9)


def casting_cautions(made: MadeCasting, tables: Tables) -> Warned:
    """What hurts with this metal and its mould, worst first."""
    material = tables.material(made.material)
    tags = ["molten", f"molten-{material.family}"]
    if material.family != "magnesium":
        tags.append("molten-green-sand")
    if material.family in FUMES:
        tags.append("molten-zinc-fume")
    if "leaded-metal" in material.cautions:
        tags.append("molten-lead")
    return cautioned(tables, *tags)
