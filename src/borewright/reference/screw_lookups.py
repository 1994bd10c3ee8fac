"""Lookups of screws: coarse threads with their drills, set screws in a hub on a bar."""

from __future__ import annotations

from borewright.quantities.si import Metre
from borewright.reference.drives import SetScrew, set_screw_of
from borewright.reference.load_lookups import LoadLookups
from borewright.reference.screws import (
    Screw,
    ScrewRoom,
    largest_set_screw,
    largest_within,
    length_of,
    screw_of,
    shortest_over,
)


class ScrewLookups(LoadLookups):
    """The part of `Tables` that asks for screws."""

    def screws(self, system: str) -> tuple[Screw, ...]:
        """The coarse threads of an inch or mm shop, small to large."""
        return self._once(
            ("screws", system),
            lambda: tuple(
                screw_of(row) for row in self.table("screws").rows if row.text("system") == system
            ),
        )

    def screw_within(self, system: str, most: Metre) -> Screw | None:
        """The largest coarse thread of at most this diameter (m); None where all are larger.

        >>> from borewright.reference import tables
        >>> found = tables().screw_within("inch", 0.008)
        >>> found and (found.id, found.tap_drill)
        ('5/16-18', 'F')
        """
        return largest_within(self.screws(system), most)

    def screw_length_over(self, system: str, least: Metre) -> Metre | None:
        """The shortest screw sold that is so long (m) under its head; None where none is.

        >>> from borewright.reference import tables
        >>> tables().screw_length_over("mm", 0.0173)
        0.02
        """
        lengths = (
            length_of(row)
            for row in self.table("screw_lengths").rows
            if row.text("system") == system
        )
        return shortest_over(lengths, least)

    def set_screws(self) -> tuple[SetScrew, ...]:
        """Every set screw listed, in the order of the table."""
        return self._once(
            ("set screws",),
            lambda: tuple(set_screw_of(row) for row in self.table("set_screws").rows),
        )

    def set_screw_for(self, bar: Metre, wall: Metre, out: Metre) -> SetScrew | None:
        """The largest set screw in a hub's wall (m) where it stands `out` (m), on a bar (m).

        >>> from borewright.reference import tables
        >>> found = tables().set_screw_for(0.015875, 0.008, 0.012)
        >>> found and found.id
        '#10'
        """
        share = self.ranged
        most = min(
            share("holding_facts", "screw_over_bar").best * bar,
            share("holding_facts", "screw_over_hub").best * out,
        )
        least = share("holding_facts", "screw_wall_least").best
        room = ScrewRoom(most, wall, least, share("holding_facts", "screw_wall_most").best)
        return largest_set_screw(self.set_screws(), room)
