"""Writing a job as a job file that reads back as the equal job.

The file appears whole or not at all: it is written beside its place under another name, then
renamed. A job that no job file can say is refused before anything is written.
"""

from __future__ import annotations

import os
import tempfile
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import tomli_w

from borewright.errors.tree import RefusedInput, UnreadableFile
from borewright.job.crown_wish import CrownWish
from borewright.job.file import parse_job
from borewright.job.finished_form import FinishedForm, FinishedStep, Groove
from borewright.job.interrupted import Chamfers, CrossHole, Keyway, Spokes
from borewright.job.records import Bore, CutWish, Job, Machine, MandrelNote, Piece, Shelf, Work
from borewright.job.spell import spell
from borewright.quantities.si import Metre


def write_job(job: Job, path: str | Path) -> None:
    """Write the job to a file; UnreadableFile where that cannot be done."""
    target = Path(path)
    text = job_text(job)
    if parse_job(text, str(path)) != job:
        raise RefusedInput(str(path), "a job that no job file says in full", "a job as read")
    put(text, target)


def put(text: str, target: Path) -> None:
    """Put a whole file in its place; UnreadableFile where that cannot be done."""
    try:
        _replace(target, text)
    except (OSError, ValueError) as problem:
        reason = getattr(problem, "strerror", None) or str(problem)
        found = f"a place that cannot be written ({reason})"
        raise UnreadableFile(str(target), found, "a folder that may be written") from None


def job_text(job: Job) -> str:
    """The TOML of a job.

    >>> from borewright.job.file import parse_job
    >>> source = 'work = {material = "brass-c360", bore = "16mm", outside = "2in", length = "1in"}'
    >>> job_text(parse_job(source, "bush.toml")).splitlines()[0]
    'units = "mm"'
    """
    return tomli_w.dumps(Speller(job.units).job(job))


def _replace(target: Path, text: str) -> None:
    handle, name = tempfile.mkstemp(prefix=f".{target.name[:40]}.", dir=target.parent)
    try:
        with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as stream:
            stream.write(text)
            stream.flush()
            os.fsync(stream.fileno())
        Path(name).chmod(0o666 & ~_umask())  # mkstemp makes files that only their owner can read
        Path(name).replace(target)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def known(word: str) -> str:
    """A word as written; what is unknown is left out."""
    return "" if word == "unknown" else word


def stated_only(table: Mapping[str, Any]) -> dict[str, Any]:
    """The keys of a table that say something."""
    return {key: value for key, value in table.items() if value not in (None, "", [], {})}


class Speller:
    """Records as TOML tables, in one system of units."""

    def __init__(self, units: str) -> None:
        self.units = units

    def say(self, value: float | None, kind: str = "length") -> str | None:
        return None if value is None else spell(value, kind, self.units)

    def job(self, job: Job) -> dict[str, Any]:
        return stated_only(
            {
                "title": job.title,
                "units": job.units,
                "work": self.work(job.work),
                "machine": self.machine(job.shelf.machine),
                "hold": self.hold(job, job.shelf),
                "cut": [self.cut(cut) for cut in job.cuts],
            }
        )

    def work(self, work: Work) -> dict[str, Any]:
        finished = work.finished
        sizes = {
            "outside": self.say(finished.outside),
            "tolerance": self.say(finished.tolerance),
            "runout": self.say(finished.runout),
            **self.form(finished.form),
            "service_speed": self.say(finished.service_speed, "spindle"),
        }
        return stated_only(
            {
                "blank": work.blank,
                "quantity": work.quantity,
                "bore": self.bore(work.bore),
                "outline": [self.piece(piece) for piece in work.pieces],
                "finished": stated_only(sizes),
                "keyway": self.keyway(work.keyway),
                "cross_hole": self.cross_hole(work.cross_hole),
                "spokes": self.spokes(work.spokes),
                "flaws": known(work.flaws),
                "casting_runout": self.say(work.casting_runout),
                "chamfer": self.chamfer(work.chamfers),
            }
        ) | {"material": work.material}

    def form(self, form: FinishedForm) -> dict[str, Any]:
        return {
            "length": self.say(form.length),
            "roughness": self.say(form.roughness),
            "steps": [self.stretch(s, outside=s.outside) for s in form.steps],
            "grooves": [self.stretch(g, bottom=g.bottom) for g in form.grooves],
            "edges": self.say(form.edges),
            "chamfer": self.chamfer(form.chamfers),
            "crown": self.crown(form.crown),
        }

    def crown(self, wish: CrownWish | None) -> dict[str, Any] | str | bool | None:
        """True where nothing more is stated, the rule where it is all, else a table."""
        if wish is None:
            return None
        if wish == CrownWish(rule=wish.rule):
            return wish.rule or True
        shape = "" if wish.shape == "taper" else wish.shape
        height, flat = self.say(wish.height), self.say(wish.flat or None)
        return stated_only({"height": height, "rule": wish.rule, "shape": shape, "flat": flat})

    def stretch(self, one: FinishedStep | Groove, **across: Metre) -> dict[str, Any]:
        return {
            "from": self.say(one.start),
            "to": self.say(one.end),
            **{key: self.say(size) for key, size in across.items()},
        }

    def keyway(self, keyway: Keyway | None) -> dict[str, Any]:
        if keyway is None:
            return {}
        return {"width": self.say(keyway.width), "depth": self.say(keyway.depth)}

    def cross_hole(self, hole: CrossHole | None) -> dict[str, Any]:
        if hole is None:
            return {}
        return stated_only({"diameter": self.say(hole.diameter), "at": self.say(hole.at)})

    def spokes(self, spokes: Spokes | None) -> dict[str, Any]:
        if spokes is None:
            return {}
        return {
            "number": spokes.number,
            "width": self.say(spokes.width),
            "thickness": self.say(spokes.thickness),
        }

    def chamfer(self, chamfers: Chamfers) -> dict[str, Any] | str | None:
        """One leg where both ends have the same, else those that are there."""
        if chamfers.a == chamfers.b:
            return self.say(chamfers.a or None)
        return stated_only({"a": self.say(chamfers.a or None), "b": self.say(chamfers.b or None)})

    def piece(self, piece: Piece) -> dict[str, Any]:
        return stated_only(
            {
                "from": self.say(piece.start),
                "to": self.say(piece.end),
                "outside": self.say(piece.outside),
                "inside": self.say(piece.inside),
            }
        )

    def bore(self, bore: Bore) -> dict[str, Any]:
        return (
            self.bore_size(bore)
            | stated_only(
                {
                    "readings": [
                        {
                            "depth": self.say(reading.depth),
                            "size": self.say(reading.size),
                            "direction": reading.direction,
                        }
                        for reading in bore.readings
                    ],
                    "thread": bore.thread.text if bore.thread else "",
                }
            )
            | {"measured_with": bore.measured_with, "made_by": bore.made_by}
        )

    def bore_size(self, bore: Bore) -> dict[str, Any]:
        """The size with its uncertainty, or the limits or the class that say both."""
        limits = bore.limits
        if limits is None:
            sizes = {"size": self.say(bore.size), "uncertainty": self.say(bore.uncertainty)}
        elif limits.code:
            sizes = {"size": f"{self.say(limits.nominal)} {limits.code}"}
        else:
            sizes = {"low": self.say(limits.low), "high": self.say(limits.high)}
        return stated_only(sizes)

    def machine(self, machine: Machine) -> dict[str, Any]:
        return stated_only(
            {
                "name": machine.name,
                "speeds": [self.say(speed, "spindle") for speed in machine.speeds],
                "feeds": [self.say(feed, "feed") for feed in machine.feeds],
                "swing_over_cross_slide": self.say(machine.swing_over_cross_slide),
                "between_centers": self.say(machine.between_centers),
                "power": self.say(machine.power, "power"),
                "power_by_gear": [self.say(power, "power") for power in machine.power_by_gear],
                "dial": known(machine.dial),
            }
        )

    def hold(self, job: Job, shelf: Shelf) -> dict[str, Any]:
        mandrels: Any = [self.mandrel(note) for note in shelf.mandrels]
        return {
            "use": job.use,
            "mandrels": mandrels or ("none" if shelf.stated else "unknown"),
            "lubrication": job.lubrication,
            "driven_by": job.driven_by,
            "pressed_before": job.pressed_before,
        } | stated_only(
            {
                "press": shelf.press,
                "press_force": self.say(shelf.press_force, "force"),
                "have": [tool.kind for tool in shelf.holding],
                "have_not": list(shelf.have_not),
            }
        )

    def mandrel(self, note: MandrelNote) -> dict[str, Any]:
        return stated_only(
            {
                "size": self.say(note.nominal),
                "name": note.name,
                "small_end": self.say(note.small_end),
                "large_end": self.say(note.large_end),
                "taper": self.say(note.taper, "taper"),
                "ground_length": self.say(note.ground_length),
                "overall_length": self.say(note.overall_length),
                "at": [[self.say(x), self.say(d)] for x, d in note.stations],
                "uncertainty": self.say(note.station_uncertainty),
                "hole": self.say(note.hole),
                "marks": note.marks,
                "hardness": known(note.hardness),
                "flats": known(note.flats),
                "condition": note.condition,
                "place": note.place,
            }
        )

    def cut(self, cut: CutWish) -> dict[str, Any]:
        spindle = self.say(cut.spindle_speed, "spindle")
        return stated_only(
            {
                "kind": cut.kind,
                "depth": self.say(cut.depth),
                "feed": self.say(cut.feed, "feed"),
                "speed": spindle or self.say(cut.speed, "surface"),
                "edge_angle": self.say(cut.edge_angle, "angle"),
                "nose_radius": self.say(cut.nose_radius),
                "wheel_speed": self.say(cut.wheel_speed, "surface"),
                "coolant": cut.coolant,
                "teeth": cut.teeth,
                "module": self.say(cut.module),
                "diametral_pitch": cut.diametral_pitch,
                "cutter_diameter": self.say(cut.cutter_diameter),
                "cutter_teeth": cut.cutter_teeth,
            }
        )
