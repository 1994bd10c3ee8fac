"""Writing a shelf as a shelf file that reads back as the equal shelf."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import tomli_w

from borewright.errors.tree import RefusedInput
from borewright.job.records import Machine, Shelf
from borewright.job.shelf_file import parse_shelf
from borewright.job.tools import (
    OwnBoringBar,
    OwnDog,
    OwnDrill,
    OwnGauge,
    OwnHammer,
    OwnHolding,
    OwnPress,
    OwnReamer,
    OwnVice,
)
from borewright.job.write import Speller, known, put, stated_only


def write_shelf(shelf: Shelf, path: str | Path, units: str = "inch") -> None:
    """Write the shelf to a file, in inch or mm; UnreadableFile where that cannot be done."""
    put(checked_shelf_text(shelf, str(path), units), Path(path))


def checked_shelf_text(shelf: Shelf, where: str, units: str = "inch") -> str:
    """The TOML of a shelf; RefusedInput for one that no shelf file says in full."""
    text = shelf_text(shelf, units)
    if parse_shelf(text, where) != shelf:
        raise RefusedInput(where, "a shelf that no shelf file says in full", "a shelf as read")
    return text


def shelf_text(shelf: Shelf, units: str = "inch") -> str:
    """The TOML of a shelf.

    >>> from borewright.job.records import MandrelNote
    >>> print(shelf_text(Shelf((MandrelNote(0.015875, marks="2"),), stated=True)))
    units = "inch"
    <BLANKLINE>
    [[mandrel]]
    size = "5/8in"
    marks = "2"
    <BLANKLINE>
    """
    tables = _ShelfSpeller(units).shelf(shelf)
    return "\n".join(block for key, value in tables.items() for block in _blocks(key, value))


def _blocks(key: str, value: Any) -> Iterator[str]:
    """A table under its own name, each of a list under its own, so that a hand can add to it."""
    if isinstance(value, dict):
        yield f"[{key}]\n{tomli_w.dumps(value)}"
    elif isinstance(value, list) and isinstance(value[0], dict):
        yield from (f"[[{key}]]\n{tomli_w.dumps(entry)}" for entry in value)
    else:
        yield tomli_w.dumps({key: value})


class _ShelfSpeller(Speller):
    """Records of the shelf as TOML tables."""

    def shelf(self, shelf: Shelf) -> dict[str, Any]:
        return {
            "units": self.units,
            **stated_only({"have_not": list(shelf.have_not)}),
            **self.mandrels(shelf),
            **self.lathes(shelf),
            **self.presses(shelf),
            **self.vice(shelf.vice),
            **self.hammer(shelf.hammer),
            **stated_only(
                {
                    "dog": [self.dog(dog) for dog in shelf.dogs],
                    "drill": [self.drill(drill) for drill in shelf.drills],
                }
            ),
            **self.boring_bar(shelf.boring_bar),
            **stated_only(
                {
                    "reamer": [self.reamer(reamer) for reamer in shelf.reamers],
                    "gauge": [self.gauge(gauge) for gauge in shelf.gauges],
                    "holding": [self.holding(tool) for tool in shelf.holding],
                }
            ),
        }

    def holding(self, tool: OwnHolding) -> dict[str, Any]:
        sizes = {"smallest": self.say(tool.smallest), "largest": self.say(tool.largest)}
        return {"kind": tool.kind, **stated_only({"name": tool.name, **sizes})}

    def mandrels(self, shelf: Shelf) -> dict[str, Any]:
        if shelf.mandrels:
            return {"mandrel": [self.mandrel(note) for note in shelf.mandrels]}
        return {"mandrel": "none"} if shelf.stated else {}

    def lathes(self, shelf: Shelf) -> dict[str, Any]:
        if not shelf.lathes:
            return stated_only({"machine": self.machine(shelf.machine)})
        used = shelf.lathes.index(shelf.machine) if shelf.machine in shelf.lathes else 0
        wished = used if shelf.lathe_wished or used > 0 else None
        return {"lathe": [self.lathe(m, n == wished) for n, m in enumerate(shelf.lathes)]}

    def lathe(self, machine: Machine, use: bool) -> dict[str, Any]:
        return self.machine(machine) | ({"use": True} if use else {})

    def presses(self, shelf: Shelf) -> dict[str, Any]:
        if shelf.presses:
            return {"press": [self.press(press) for press in shelf.presses]}
        single = OwnPress(shelf.press, force=shelf.press_force)
        return stated_only({"press": self.press(single)})

    def press(self, press: OwnPress) -> dict[str, Any]:
        return stated_only(
            {
                "name": press.name,
                "kind": press.kind,
                "force": self.say(press.force, "force"),
                "daylight": self.say(press.daylight),
                "throat": self.say(press.throat),
                "ram_travel": self.say(press.ram_travel),
                "table_slot": self.say(press.table_slot),
            }
        )

    def vice(self, vice: OwnVice | None) -> dict[str, Any]:
        if vice is None:
            return {}
        sizes = {"opening": self.say(vice.opening), "force": self.say(vice.force, "force")}
        return {"vice": stated_only(sizes)}

    def hammer(self, hammer: OwnHammer | None) -> dict[str, Any]:
        if hammer is None:
            return {}
        said = {"mass": self.say(hammer.mass, "mass"), "face": hammer.face}
        return {"hammer": stated_only(said)}

    def dog(self, dog: OwnDog) -> dict[str, Any]:
        return stated_only(
            {
                "name": dog.name,
                "smallest": self.say(dog.smallest),
                "largest": self.say(dog.largest),
                "tail": known(dog.tail),
            }
        )

    def drill(self, drill: OwnDrill) -> dict[str, Any]:
        return stated_only(
            {
                "size": self.say(drill.size),
                "set": drill.by,
                "smallest": self.say(drill.smallest),
                "largest": self.say(drill.largest),
                "name": drill.name,
            }
        )

    def boring_bar(self, bar: OwnBoringBar | None) -> dict[str, Any]:
        if bar is None:
            return {}
        said = {"smallest_bore": self.say(bar.smallest_bore), "reach": self.say(bar.reach)}
        return {"boring_bar": stated_only(said)}

    def reamer(self, reamer: OwnReamer) -> dict[str, Any]:
        sizes = {"size": self.say(reamer.size), "cuts": self.say(reamer.cuts)}
        return stated_only({**sizes, "name": reamer.name})

    def gauge(self, gauge: OwnGauge) -> dict[str, Any]:
        ends = [self.say(gauge.smallest), self.say(gauge.largest)]
        said = {"uncertainty": self.say(gauge.uncertainty), "range": ends if all(ends) else []}
        return {"kind": gauge.kind, **stated_only(said)}
