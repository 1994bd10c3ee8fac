"""make strip: the paper strip that makes a bore gauge of one mandrel."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

from borewright.answer.records import Assumption
from borewright.answer.strip import Strip
from borewright.drawing.scene import Scene
from borewright.drawing.strip import draw_strip
from borewright.drawing.svg import svg
from borewright.errors import RefusedInput, UnknownName
from borewright.holding.taper.mandrels import resolve
from borewright.holding.taper.measured_mandrel import flats_of
from borewright.job.records import Mandrel, MandrelNote, Shelf
from borewright.making.strip import strip_of
from borewright.quantities.si import Metre
from borewright.reference.library import Tables
from borewright.report.strip_sheet import strip_sheet


@dataclass(frozen=True, slots=True)
class MadeStrip:
    """The strip, its page, and what had to be assumed of the mandrel."""

    strip: Strip
    paper: str
    pdf: bytes
    mandrel: Mandrel
    assumed: tuple[Assumption, ...]

    def as_dict(self) -> dict[str, Any]:
        """As JSON: each line's bore, and how far it stands from the large-end face on paper."""
        s = self.strip
        return {
            "mandrel": s.name,
            "paper": self.paper,
            "step_m": s.step,
            "hand_travel_m": s.hand_travel,
            "ground_from_m": s.ground_from,
            "ground_to_m": s.ground_to,
            "taper_m_per_m": self.mandrel.taper,
            "ticks": [{"bore_m": t.bore, "large_end_face_to_line_m": t.position} for t in s.ticks],
            "unread": [{"from_m": a, "to_m": b} for a, b in s.unread],
            "assumed": [{"what": a.what, "taken": a.taken, "source": a.source} for a in self.assumed],
        }  # fmt: skip


def make_strip(
    note: MandrelNote,
    tables: Tables,
    *,
    units: Literal["inch", "mm"],
    paper: str | None = None,
    hand_travel: Metre = 0.0,
) -> MadeStrip:
    """The strip of one mandrel. `paper` is letter or a4; left out, by the units."""
    found = resolve(note, tables, note.name or "the mandrel")
    strip = _strip(found.mandrel, note, units, hand_travel)
    chosen = paper or ("letter" if units == "inch" else "a4")
    scene = draw_strip(strip, chosen)
    pdf = strip_sheet(svg(scene), scene.title, scene.width, scene.height)
    return MadeStrip(strip, chosen, pdf, found.mandrel, found.assumed)


def strip_scene(
    note: MandrelNote, tables: Tables, units: Literal["inch", "mm"], paper: str
) -> Scene:
    """The strip's page, to go out with other papers."""
    mandrel = resolve(note, tables, note.name or "the mandrel").mandrel
    return draw_strip(_strip(mandrel, note, units, 0.0), paper)


def _strip(
    mandrel: Mandrel, note: MandrelNote, units: Literal["inch", "mm"], hand_travel: Metre
) -> Strip:
    return strip_of(
        mandrel,
        units,
        hand_travel=hand_travel,
        flats=flats_of(mandrel),
        end_stated=note.overall_length is not None and note.ground_length is not None,
    )


def note_named(shelf: Shelf, name: str) -> MandrelNote:
    """The mandrel of this name on the shelf. UnknownName where there is none."""
    named = [note for note in shelf.mandrels if note.name == name]
    if not named:
        known = tuple(note.name for note in shelf.mandrels if note.name)
        raise UnknownName("--mandrel", name, known)
    if len(named) > 1:
        raise RefusedInput("--mandrel", f"{len(named)} mandrels called {name!r}", "a name of one")
    return named[0]
