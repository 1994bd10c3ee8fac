"""Whether the shelf has what a way of holding needs, or it is made, or must be bought."""

from __future__ import annotations

from dataclasses import replace

from borewright.answer.records import Have, Need
from borewright.errors import UnknownName
from borewright.job.records import Job
from borewright.job.tools import OwnHolding
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


def needed(
    job: Job, tables: Tables, tool_id: str, size: Metre | None = None, what: str = ""
) -> Need:
    """One tool of the table holding_tools for this job; `size` (m) is what it must take.

    `what` says it more closely than its name. UnknownName for a tool that the table has not.
    """
    tool = tables.holding_tool(tool_id)
    said = what or tool.name
    own = owned(job, tables, tool_id)
    fits = [h for h in own if _takes(h, size)]
    if fits:
        return Need(fits[0].name or said, Have.OWN)
    missing = any(_is(name, tool_id, tables) for name in job.shelf.have_not)
    if tool.usual and not missing and not own:
        return Need(said, Have.OWN, taken=True)
    for_size = f" that takes {Show(job.units).length(size)}" if size is not None and own else ""
    have = Have.MAKE if tool.made else Have.BUY
    return Need(said + for_size, have, tool.minutes if tool.made else 0.0)


def bar_at_least(job: Job, tables: Tables, size: Metre, what: str = "bar") -> Need:
    """Bar to turn something of `size` (m) from: the owner's, taken as there, or to be bought."""
    found = needed(job, tables, "bar-stock", size)
    if any(h.name and h.name == found.what for h in owned(job, tables, "bar-stock")):
        return found
    return replace(found, what=f"{what}, {Show(job.units).length(size)} across or more")


def owned(job: Job, tables: Tables, tool_id: str) -> list[OwnHolding]:
    """What the shelf states of one tool of the table holding_tools, under any of its names."""
    return [h for h in job.shelf.holding if _is(h.kind, tool_id, tables)]


def made(what: str, minutes: float) -> Need:
    """Something that the plan makes, and how long (minutes) that takes."""
    return Need(what, Have.MAKE, minutes)


def _takes(own: OwnHolding, size: Metre | None) -> bool:
    if size is None:
        return True
    return (own.smallest or 0.0) <= size <= (own.largest or float("inf"))


def _is(name: str, tool_id: str, tables: Tables) -> bool:
    """Whether an owner's word means this tool; a word that no table knows means none."""
    try:
        return tables.holding_tool(name).id == tool_id
    except UnknownName:
        return False
