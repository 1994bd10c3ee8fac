"""ask: six plain answers to a job, each one skippable, with what was taken instead."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from borewright.errors import RefusedInput, UnknownName
from borewright.job.bore_text import bore_size, size_typed
from borewright.job.records import Bore, Job, MandrelNote, Piece, Shelf, Work
from borewright.quantities.read import length_system, read_length
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

FILLERS = ("by", "with", "a", "an", "the", "and", "it", "was", "is", "measured", "size")
"""Words of an answer that say nothing of the gauge."""

UNSURE = (
    *(
        "",
        "?",
        "-",
        "skip",
        "pass",
        "none",
        "nothing",
        "n/a",
        "na",
        "unknown",
        "not known",
        "unsure",
    ),
    *("don't know", "dont know", "do not know", "dunno", "don't remember", "no idea", "not sure"),
    *("can't say", "cannot say", "not stated", "no clue"),
)
"""Answers that skip a question; of the shelf, `none` says that there is none."""

NO_MANDRELS = ("none", "no", "nothing", "no mandrels", "no mandrel")

CAREFUL_MATERIAL = "gray-iron-30"
USUAL_BORE = 0.625 * 0.0254
OUTSIDE_PER_BORE = 4.0
LENGTH_PER_BORE = 1.5


@dataclass(frozen=True, slots=True)
class Answers:
    """The six answers as typed; empty is "don't know"."""

    bore: str = ""
    outside: str = ""
    length: str = ""
    material: str = ""
    blank: str = ""
    shelf: str = ""


@dataclass(frozen=True, slots=True)
class AskedJob:
    """The job made of the answers, and one sentence for each answer that was skipped or broad."""

    job: Job
    taken: tuple[str, ...]


def is_unsure(text: str) -> bool:
    """Whether an answer says, in any of the usual words, that nobody knows.

    >>> [is_unsure(text) for text in ("", " Dunno. ", "I don\u2019t know", "??", "steel")]
    [True, True, True, True, False]
    """
    said = " ".join(text.casefold().replace("\u2019", "'").split())
    bare = said.rstrip(".!, ").removeprefix("i ").removeprefix("have ").removeprefix("am ")
    return bare in UNSURE or set(said) <= set("?")


def job_from(answers: Answers, tables: Tables, title: str = "Bored part") -> AskedJob:
    """A job from six answers. RefusedInput, naming the question, for an answer that cannot be read."""
    taken: list[str] = []
    shelf = read_shelf_answer(answers.shelf)
    bore = _bore(answers, shelf, tables, taken)
    units = length_system(size_typed(answers.bore)) or length_system(answers.outside) or "inch"
    show = Show(units)
    outside = _size(
        answers.outside, "outside", bore.size * OUTSIDE_PER_BORE, "four bores", show, taken
    )
    length = _size(
        answers.length, "length", bore.size * LENGTH_PER_BORE, "one and a half bores", show, taken
    )
    if outside <= bore.size:
        raise RefusedInput(
            "outside", show.length(outside), f"more than the bore, {show.bore(bore.size)}"
        )
    blank = read_blank(answers.blank, taken)
    material = _material(answers.material, blank, tables, taken)
    if not shelf.stated:
        taken.append("Shelf not stated: a usual set of plain mandrels by sixteenths is taken.")
    work = Work(material, (Piece(0.0, length, outside),), bore, blank)
    return AskedJob(Job(title, work, units, shelf), tuple(taken))


def read_bore(text: str, tables: Tables) -> Bore:
    """A size or a class, perhaps how it was measured and made: `0.501in by caliper`, `15 H7`."""
    words = text.replace(",", " , ").split() if "," in text else text.split()
    for cut in range(len(words), 0, -1):
        try:
            size, limits = bore_size(" ".join(words[:cut]), "bore", None)
        except UnknownName:
            raise
        except RefusedInput:
            continue
        said = _bore_said(size, " ".join(words[cut:]), tables)
        return (
            said if limits is None else replace(said, uncertainty=limits.half_band, limits=limits)
        )
    return Bore(bore_size(text, "bore", None)[0])


def _bore_said(size: Metre, words: str, tables: Tables) -> Bore:
    """The bore with what was said of it: each part names a gauge or a way of making a bore."""
    gauge, made = "unknown", "unknown"
    for part in re.split(r",| and | by | with |;", f" {words} "):
        said = " ".join(w for w in part.split() if w.lower() not in FILLERS)
        if not said:
            continue
        process = _named(tables.roughness_id, said)
        if process and process not in ("unknown", "ground-mandrel"):
            made = process
        else:
            gauge = tables.gauge(said).id
    if made == "reamed" and gauge == "unknown":
        gauge = "reamer-size"
    return Bore(size, measured_with=gauge, made_by=made)


def _named(find: Callable[[str], str], said: str) -> str:
    """The id under this name, empty where there is none."""
    try:
        return find(said)
    except UnknownName:
        return ""


def read_shelf_answer(text: str) -> Shelf:
    """`none`, a list of sizes, or not known."""
    said = text.strip().lower()
    if said.rstrip(".") in NO_MANDRELS:
        return Shelf(stated=True)
    if is_unsure(said):
        return Shelf()
    sizes = [
        part for part in said.replace(";", ",").replace(" and ", ",").split(",") if part.strip()
    ]
    return Shelf(tuple(MandrelNote(read_length(s, "mandrels")) for s in sizes), stated=True)


def read_blank(text: str, taken: list[str]) -> str:
    """bar, casting or unknown."""
    said = text.strip().lower()
    if is_unsure(said):
        taken.append("Bar or casting not stated: neither is taken.")
        return "unknown"
    if said in ("bar", "from bar", "bar stock"):
        return "bar"
    if said in ("casting", "cast", "a casting"):
        return "casting"
    raise RefusedInput("bar or casting", repr(text), "bar or casting")


def _bore(answers: Answers, shelf: Shelf, tables: Tables, taken: list[str]) -> Bore:
    if not is_unsure(answers.bore):
        bore = read_bore(answers.bore, tables)
        if bore.measured_with == "unknown" and bore.limits is None:
            taken.append("How the bore was measured is not stated: taken as a guess.")
        return bore
    size = shelf.mandrels[0].nominal if shelf.mandrels else USUAL_BORE
    taken.append(
        f"Bore not stated: {Show('inch').bore(size)} is taken, as a guess; measure it before believing any of this."
    )
    return Bore(size)


def _size(text: str, what: str, usual: Metre, why: str, show: Show, taken: list[str]) -> Metre:
    if not is_unsure(text):
        return read_length(text, what)
    taken.append(f"{what.capitalize()} not stated: {show.length(usual)} is taken ({why}).")
    return usual


def _material(text: str, blank: str, tables: Tables, taken: list[str]) -> str:
    said = " ".join(text.strip().lower().split())
    if is_unsure(said):
        taken.append("Material not stated: taken as grey iron, brittle, to be on the careful side.")
        return CAREFUL_MATERIAL
    broad = tables.broad_material(said)
    if broad is not None:
        material = tables.material(broad.taken(blank))
        taken.append(f"{text.strip().capitalize()} is a broad word: taken as {material.name}.")
        return material.id
    return tables.material(text).id


def check_answer(question: str, text: str, tables: Tables) -> None:
    """RefusedInput where this answer to this question cannot be read."""
    if is_unsure(text) and question != "shelf":
        return
    checks: dict[str, Callable[[], object]] = {
        "bore": lambda: read_bore(text, tables),
        "outside": lambda: read_length(text, "outside"),
        "length": lambda: read_length(text, "length"),
        "material": lambda: _material(text, "unknown", tables, []),
        "blank": lambda: read_blank(text, []),
        "shelf": lambda: read_shelf_answer(text),
    }
    checks[question]()
