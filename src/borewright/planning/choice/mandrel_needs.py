"""What a plain mandrel needs beside itself: what turns it, and a tailstock center."""

from __future__ import annotations

from borewright.answer.records import Have, Need
from borewright.holding.owned import made, needed
from borewright.planning.shop.owned import fitting_dog
from borewright.planning.taper.trial import Trial
from borewright.reference.library import Tables

HELD_IN = {"collet": "collet-chuck", "three-jaw": "three-jaw-chuck"}
"""The tool that a mandrel's own end is held in, where no dog drives it."""


def mandrel_needs(trial: Trial, tables: Tables) -> tuple[Need, ...]:
    """Dog, collet or chuck for its end, and the center at the other."""
    job, end = trial.job, trial.mandrel.end_diameter
    tool = HELD_IN.get(job.driven_by)
    driver = _dog(trial, tables) if tool is None else needed(job, tables, tool, end)
    return (driver, needed(job, tables, "tail-center"))


def _dog(trial: Trial, tables: Tables) -> Need:
    """The shop's own dog where its dogs are listed; one that none of them is gets made."""
    dogs, end = trial.job.shelf.dogs, trial.mandrel.end_diameter
    if not dogs:
        return needed(trial.job, tables, "dog")
    dog = fitting_dog(dogs, end)
    if dog is not None:
        return Need(dog.name or "lathe dog", Have.OWN)
    return made(f"a dog that takes {trial.show.length(end)}", tables.holding_tool("dog").minutes)
