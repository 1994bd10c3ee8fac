"""A written shelf reads back as the equal shelf."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from pathlib import Path

import jsonschema
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.unit.job_texts import SMALL
from tests.unit.test_job_write import TEXTS, maybe, sizes

from borewright.errors import RefusedInput, UnreadableFile
from borewright.job import (
    Machine,
    MandrelNote,
    OwnBoringBar,
    OwnDog,
    OwnDrill,
    OwnGauge,
    OwnHammer,
    OwnPress,
    OwnReamer,
    OwnVice,
    Shelf,
    parse_job,
    parse_shelf,
    read_shelf,
)
from borewright.job.schema import shelf_schema
from borewright.job.write import job_text
from borewright.job.write_shelf import shelf_text, write_shelf

EXAMPLE = Path(__file__).parents[2] / "examples" / "hollow-brook-shelf.toml"
LENGTHS = maybe(sizes(0.01, 1.0))
NOTES = st.builds(
    MandrelNote,
    nominal=sizes(0.02, 0.0201),
    name=TEXTS,
    small_end=maybe(sizes(0.0199, 0.01999)),
    large_end=maybe(sizes(0.02, 0.0201)),
    ground_length=maybe(sizes(0.05, 0.1)),
    marks=TEXTS,
    hardness=st.sampled_from(["hard", "soft", "unknown"]),
    flats=st.sampled_from(["small", "large", "both", "none", "unknown"]),
    condition=TEXTS,
    place=TEXTS,
)


@st.composite
def machines(draw: st.DrawFn) -> Machine:
    speeds = tuple(draw(st.lists(st.floats(0.1, 100), max_size=4)))
    powers = tuple(draw(st.floats(50, 50_000)) for _ in speeds)
    return Machine(
        name=draw(TEXTS),
        speeds=speeds,
        feeds=tuple(draw(st.lists(sizes(1e-5, 1e-3), max_size=3))),
        swing_over_cross_slide=draw(LENGTHS),
        between_centers=draw(LENGTHS),
        power=draw(maybe(st.floats(50, 50_000))),
        power_by_gear=draw(st.sampled_from([(), powers])),
        dial=draw(st.sampled_from(["radius", "diameter", "unknown"])),
    )


PRESSES = st.builds(
    OwnPress, TEXTS, TEXTS, maybe(st.floats(1, 1e6)), LENGTHS, LENGTHS, LENGTHS, LENGTHS
)
DOGS = st.builds(
    OwnDog,
    TEXTS,
    maybe(sizes(0.001, 0.01)),
    maybe(sizes(0.011, 0.2)),
    st.sampled_from(["bent", "straight", "unknown"]),
)
OFFSETS = st.one_of(st.just(0.0), st.floats(1e-8, 2e-4), st.floats(-2e-4, -1e-8))
REAMERS = st.builds(OwnReamer, sizes(0.003, 0.05), TEXTS, maybe(OFFSETS))
ENDS = st.one_of(st.just((None, None)), st.tuples(sizes(0.001, 0.01), sizes(0.011, 0.05)))
SETS = ["by 16ths", "by 32nds", "by 64ths", "by 0.1 mm", "by 0.5 mm", "by 1 mm", "numbers"]
DRILLS = st.one_of(
    st.builds(OwnDrill, sizes(0.0005, 0.05), name=TEXTS),
    st.builds(
        lambda by, ends, name: OwnDrill(None, by, *ends, name), st.sampled_from(SETS), ENDS, TEXTS
    ),
)
BARS = st.one_of(st.none(), st.builds(OwnBoringBar, maybe(sizes(0.003, 0.05)), LENGTHS))
RANGES = st.one_of(st.just((None, None)), st.tuples(sizes(0.001, 0.01), sizes(0.011, 0.5)))
GAUGES = st.builds(
    lambda kind, sure, ends: OwnGauge(kind, sure, *ends), TEXTS, maybe(sizes(1e-6, 1e-3)), RANGES
)


@st.composite
def shelves(draw: st.DrawFn) -> Shelf:
    notes = tuple(draw(st.lists(NOTES, max_size=3)))
    lathes = tuple(draw(st.lists(machines(), max_size=3)))
    presses = tuple(draw(st.lists(PRESSES, max_size=2)))
    single = OwnPress(draw(TEXTS), force=draw(maybe(st.floats(1, 1e6))))
    press = presses[0] if presses else single
    machine = draw(st.sampled_from(lathes)) if lathes else draw(machines())
    first = not lathes or machine == lathes[0]
    return Shelf(
        mandrels=notes,
        stated=bool(notes) or draw(st.booleans()),
        press=press.called,
        press_force=press.force,
        machine=machine,
        lathes=lathes,
        presses=presses,
        vice=draw(st.one_of(st.none(), st.builds(OwnVice, LENGTHS, maybe(st.floats(1, 1e5))))),
        hammer=draw(st.one_of(st.none(), st.builds(OwnHammer, maybe(st.floats(0.01, 9)), TEXTS))),
        dogs=tuple(draw(st.lists(DOGS, max_size=2))),
        reamers=tuple(draw(st.lists(REAMERS, max_size=2))),
        drills=tuple(draw(st.lists(DRILLS, max_size=2))),
        boring_bar=draw(BARS),
        gauges=tuple(draw(st.lists(GAUGES, max_size=2))),
        lathe_wished=bool(lathes) and (not first or draw(st.booleans())),
    )


@given(shelves(), st.sampled_from(["inch", "mm"]))
def test_a_written_shelf_reads_back_as_the_equal_shelf(shelf: Shelf, units: str) -> None:
    assert parse_shelf(shelf_text(shelf, units), "shelf.toml") == shelf


@given(shelves())
def test_a_written_shelf_fits_the_published_schema(shelf: Shelf) -> None:
    jsonschema.Draft202012Validator(shelf_schema()).validate(tomllib.loads(shelf_text(shelf)))


def test_the_example_survives_reading_writing_and_reading(tmp_path: Path) -> None:
    write_shelf(read_shelf(EXAMPLE), tmp_path / "again.toml")
    assert read_shelf(tmp_path / "again.toml") == read_shelf(EXAMPLE)


def test_each_tool_stands_under_a_name_of_its_own() -> None:
    lines = shelf_text(read_shelf(EXAMPLE)).splitlines()
    assert lines.count("[[mandrel]]") == 4
    assert lines.count("[[lathe]]") == 2
    assert lines.count("[vice]") == 1
    assert 'cuts = "0.0004in"' in lines
    assert 'size = "5/8in"' in lines


def test_the_lathe_used_is_marked_only_where_the_owner_insists_on_it() -> None:
    shelf = read_shelf(EXAMPLE)
    assert "use = true" not in shelf_text(shelf)
    for lathe in shelf.lathes:
        insisted = replace(shelf, machine=lathe, lathe_wished=True)
        assert parse_shelf(shelf_text(insisted), "shelf.toml") == insisted
        assert shelf_text(insisted).count("use = true") == 1


def test_a_job_keeps_the_dial_and_the_powers_of_its_lathe() -> None:
    more = '[machine]\nspeeds = ["60rpm"]\npower_by_gear = ["300W"]\ndial = "radius"\n'
    hold = '[hold]\nmandrels = [{size = "1/2in", marks = "A", hardness = "soft", flats = "none"}]'
    job = parse_job(f"{SMALL}\n{more}\n{hold}", "job.toml")
    assert job.shelf.machine == Machine(speeds=(1.0,), power_by_gear=(300.0,), dial="radius")
    assert parse_job(job_text(job), "job.toml") == job


def test_measured_places_are_written_too() -> None:
    note = MandrelNote(0.016, stations=((0.01, 0.01599), (0.1, 0.01602)))
    shelf = Shelf((note,), stated=True)
    assert parse_shelf(shelf_text(shelf), "shelf.toml") == shelf


def test_a_shelf_that_no_file_can_say_is_refused_before_writing(tmp_path: Path) -> None:
    shelf = read_shelf(EXAMPLE)
    lonely = replace(shelf, machine=Machine("a lathe that is not listed"))
    other = replace(shelf, press="a press that is not the first")
    half = replace(shelf, gauges=(OwnGauge("bore gauge", smallest=0.01),))
    for wrong in (lonely, other, half):
        with pytest.raises(RefusedInput, match="no shelf file says in full"):
            write_shelf(wrong, tmp_path / "shelf.toml")
    assert list(tmp_path.iterdir()) == []


def test_a_place_that_cannot_be_written_is_refused(tmp_path: Path) -> None:
    with pytest.raises(UnreadableFile, match="a place that cannot be written"):
        write_shelf(Shelf(), tmp_path / "no" / "shelf.toml")
