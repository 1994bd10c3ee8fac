"""What holds work besides a mandrel: tools that most shops have or have not, and set-up minutes."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.reference.ranges import Range, range_of
from borewright.reference.table import Row


@dataclass(frozen=True, slots=True)
class HoldingTool:
    """A tool that ways of holding need. `usual`: taken as owned where nobody says otherwise.

    `made`: where it is not there the shop makes it, in `minutes`; else it must be bought.
    """

    id: str
    name: str
    usual: bool
    made: bool
    minutes: float


@dataclass(frozen=True, slots=True)
class SetupMinutes:
    """Minutes of a way of holding: once for a batch, and again for each piece."""

    once: Range
    each: Range

    def for_batch(self, quantity: int, making: float = 0.0) -> tuple[float, float, float]:
        """Low, likely and high minutes of a batch, with the making of what is needed.

        >>> a = Range(1.0, 2.0, 4.0, "min", "ours")
        >>> SetupMinutes(a, a).for_batch(3, 10.0)
        (14.0, 18.0, 26.0)
        """
        once, each = self.once, self.each
        low, best, high = (
            making + o + e * quantity
            for o, e in ((once.low, each.low), (once.best, each.best), (once.high, each.high))
        )
        return low, best, high


def holding_tool_of(row: Row) -> HoldingTool:
    """The record in a row of the table `holding_tools`."""
    return HoldingTool(
        id=row.text("id"),
        name=row.text("name"),
        usual=row.yes("usual"),
        made=row.text("absent") == "make",
        minutes=row.number("minutes"),
    )


def setup_minutes_of(row: Row) -> SetupMinutes:
    """The record in a row of the table `setup_minutes`."""
    return SetupMinutes(range_of(row, "once_", "min"), range_of(row, "each_", "min"))
