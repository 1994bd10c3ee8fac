"""Lookups for what a shop makes itself: steels, bar, center holes, stock and limits."""

from __future__ import annotations

from typing import Literal

from borewright.quantities.si import Metre
from borewright.reference import making
from borewright.reference.centers import Center
from borewright.reference.foundry import (
    CastingStock,
    FoundryMetal,
    NotForCasting,
    casting_stock_of,
    foundry_metal_of,
    not_for_casting_of,
)
from borewright.reference.making import Bar, Steel
from borewright.reference.names import find
from borewright.reference.ranges import Range
from borewright.reference.trade_lookups import TradeLookups


class MakingLookups(TradeLookups):
    """The part of `Tables` that making a mandrel or a blank asks."""

    def mandrel_steel(self, name: str) -> Steel:
        """A steel for mandrels, by id or by any of its names.

        >>> from borewright.reference import tables
        >>> tables().mandrel_steel("O1").treatment
        'through'
        """
        return making.steel_of(find(self.table("mandrel_steels"), name, "steel"))

    def making_fact(self, name: str) -> Range:
        """A figure of making a mandrel: grinding_stock_old, tolerance_ground, …"""
        return self.ranged("mandrel_making", name)

    def bar_fact(self, name: str) -> Range:
        """A figure of making blanks from bar: over_outside, saw_kerf, parting_share, …"""
        return self.ranged("bar_making", name)

    def bar_for(self, least: Metre, units: Literal["inch", "mm"]) -> Bar:
        """The next round bar as sold by these units.

        >>> from borewright.reference import tables
        >>> tables().bar_for(0.0161, "inch").size, tables().bar_for(0.0161, "mm").size
        ('11/16 in', '18 mm')
        """
        return making.next_bar(making.bars_of(self.table("round_bars"), units), least)

    def casting_fact(self, name: str) -> Range:
        """A figure of making a casting: draft_outside, core_least, print_share, …"""
        return self.ranged("casting_making", name)

    def casting_stock(self, material: str, place: str, largest: Metre) -> CastingStock:
        """Stock on a face of a casting by its place in the mould: side, down, up or bore.

        >>> from borewright.reference import tables
        >>> stock = tables().casting_stock("al-cast", "up", 0.127)
        >>> stock.habit_said, stock.standard_said
        ('3/32 in', '2.2 mm, grade G')
        """
        family = self.material(material).family
        return casting_stock_of(self.table("casting_stock"), family, place, largest)

    def foundry_metal(self, material: str) -> FoundryMetal:
        """What melting and pouring a material take.

        >>> from borewright.reference import tables
        >>> tables().foundry_metal("al-cast").yield_share.best
        0.5
        """
        return foundry_metal_of(self.table("foundry_metals").row(self.material(material).family))

    def not_for_casting(self, material: str) -> NotForCasting | None:
        """Why a caster would not choose a material, and what is near it; None where he would.

        >>> from borewright.reference import tables
        >>> found = tables().not_for_casting("brass-c360")
        >>> found and found.instead, tables().not_for_casting("al-cast")
        ('gunmetal-lg2', None)
        """
        return not_for_casting_of(self.table("not_for_casting"), self.material(material).id)

    def center_within(self, mouth: Metre, units: Literal["inch", "mm"]) -> Center | None:
        """The largest center hole whose mouth is no wider than this, protected where one is.

        >>> from borewright.reference import tables
        >>> tables().center_within(0.0085, "mm").id, tables().center_within(0.0081, "inch").id
        ('B 2.5', '#14')
        """
        return making.center_within(self.table("centers"), mouth, units)
