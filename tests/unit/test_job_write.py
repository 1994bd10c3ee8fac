"""A written job reads back as the equal job, and a file is whole or absent."""

from __future__ import annotations

import math
import os
import stat
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.unit.job_texts import FULL, SMALL, VALID

from borewright.errors import RefusedInput, UnreadableFile
from borewright.job import (
    Bore,
    BoreReading,
    Chamfers,
    CrossHole,
    CutWish,
    Finished,
    Job,
    Keyway,
    Machine,
    MandrelNote,
    Piece,
    Shelf,
    Spokes,
    Work,
    parse_job,
    read_job,
)
from borewright.job.write import job_text, write_job

TEXTS = st.text(
    st.characters(exclude_categories=("C", "Zl", "Zp", "Zs"), include_characters=" "), max_size=30
)


def sizes(low: float, high: float) -> st.SearchStrategy[float]:
    """Floats of every length, and the short ones that people type in both systems."""
    inches = st.integers(math.ceil(low / 0.0000254), math.floor(high / 0.0000254))
    return st.one_of(
        st.floats(low, high),
        inches.map(lambda thou: min(max(float(f"{thou * 25.4e-6:.12g}"), low), high)),
    )


def maybe(values: st.SearchStrategy[float]) -> st.SearchStrategy[float | None]:
    return st.one_of(st.none(), values)


SPOKE = 0.0015
SPOKES = st.builds(Spokes, st.integers(2, 12), sizes(2e-4, 0.02), st.just(SPOKE))

LEGS = st.one_of(st.just(0.0), sizes(1e-5, 9e-4))
CHAMFERS = st.one_of(
    st.builds(Chamfers), LEGS.map(lambda c: Chamfers(c, c)), st.builds(Chamfers, LEGS, LEGS)
)


@st.composite
def works(draw: st.DrawFn) -> Work:
    size = draw(sizes(0.003, 0.1))
    length = draw(sizes(0.002, 0.5))
    hub, outside = draw(sizes(0.11, 0.2)), draw(sizes(0.21, 0.4))
    solid = (Piece(0.0, length, outside),)
    wheel = (Piece(0.0, length, hub), Piece(0.0, length / 2, outside, hub))
    spoked = (
        Piece(0.0, length, hub),
        Piece(0.0, SPOKE, 0.205, hub),
        Piece(0.0, length, outside, 0.205),
    )
    pieces = draw(st.sampled_from([solid, wheel, spoked]))
    depths = st.one_of(st.just(0.0), st.floats(1e-6, length))
    readings = st.builds(BoreReading, depths, sizes(size * 0.95, size * 1.05), TEXTS)
    blank = draw(st.sampled_from(["bar", "casting", "unknown"]))
    return Work(
        material=draw(TEXTS),
        pieces=pieces,
        bore=Bore(
            size=size,
            uncertainty=draw(maybe(sizes(1e-6, 1e-3))),
            measured_with=draw(TEXTS),
            made_by=draw(TEXTS),
            readings=tuple(draw(st.lists(readings, max_size=3))),
        ),
        blank=blank,
        finished=Finished(draw(maybe(sizes(0.15, 0.2))), draw(maybe(sizes(1e-6, 1e-3)))),
        quantity=draw(st.integers(1, 10_000)),
        keyway=draw(
            st.one_of(st.none(), st.builds(Keyway, sizes(2e-4, 0.0014), sizes(2e-4, 0.0029)))
        ),
        cross_hole=draw(st.one_of(st.none(), st.builds(CrossHole, sizes(2e-4, 0.0019)))),
        spokes=draw(st.one_of(st.none(), SPOKES)) if len(pieces) == 3 else None,
        flaws=draw(st.sampled_from(["none", "suspected", "seen", "unknown"])),
        chamfers=draw(CHAMFERS),
        casting_runout=draw(maybe(sizes(1e-4, 5e-3))) if blank == "casting" else None,
    )


NOTES = st.builds(
    MandrelNote,
    nominal=sizes(0.02, 0.0201),
    name=TEXTS,
    small_end=maybe(sizes(0.0199, 0.01999)),
    large_end=maybe(sizes(0.02, 0.0201)),
    taper=maybe(st.floats(1e-5, 1e-2)),
    ground_length=maybe(sizes(0.05, 0.1)),
    overall_length=maybe(sizes(0.11, 0.2)),
    hole=maybe(sizes(0.001, 0.0159)),
)
MACHINES = st.builds(
    Machine,
    name=TEXTS,
    speeds=st.lists(st.floats(0.1, 100), max_size=4).map(tuple),
    feeds=st.lists(sizes(1e-5, 1e-3), max_size=4).map(tuple),
    swing_over_cross_slide=maybe(sizes(0.05, 1.0)),
    between_centers=maybe(sizes(0.1, 5.0)),
    power=maybe(st.floats(50, 50_000)),
)
SHELVES = st.builds(
    lambda notes, stated, press, force, machine: Shelf(
        tuple(notes), bool(notes) or stated, press, force, machine
    ),
    st.lists(NOTES, max_size=3),
    st.booleans(),
    TEXTS,
    maybe(st.floats(1, 1e6)),
    MACHINES,
)
SPEEDS = st.one_of(
    st.just((None, None)),
    st.tuples(st.floats(0.01, 10), st.none()),
    st.tuples(st.none(), st.floats(0.01, 100)),
)
CUTS = st.builds(
    lambda kind, depth, feed, speeds, angle, nose: CutWish(kind, depth, feed, *speeds, angle, nose),
    st.sampled_from(["turn", "face"]),
    maybe(sizes(1e-5, 0.01)),
    maybe(sizes(1e-5, 1e-3)),
    SPEEDS,
    maybe(st.floats(0.1, math.pi / 2)),
    maybe(sizes(1e-5, 0.01)),
)
JOBS = st.builds(
    Job,
    title=TEXTS,
    work=works(),
    units=st.sampled_from(["inch", "mm"]),
    shelf=SHELVES,
    use=TEXTS,
    lubrication=st.sampled_from(["oiled", "dry"]),
    driven_by=st.sampled_from(["dog", "collet", "three-jaw"]),
    pressed_before=st.booleans(),
    cuts=st.lists(CUTS, max_size=3).map(tuple),
)


@given(JOBS)
def test_a_written_job_reads_back_as_the_equal_job(job: Job) -> None:
    assert parse_job(job_text(job), "job.toml") == job


@pytest.mark.parametrize("text", VALID.values(), ids=VALID.keys())
def test_a_job_file_survives_reading_writing_and_reading(text: str, tmp_path: Path) -> None:
    path = tmp_path / "again.toml"
    write_job(parse_job(text, "job.toml"), path)
    assert read_job(path) == parse_job(text, "job.toml")


def test_what_was_typed_short_is_written_short() -> None:
    text = job_text(parse_job(FULL, "job.toml"))
    for typed in ('"18.01mm"', '"0.004mm"', '"0.5mm/m"', '"90deg"', '"30m/min"', '"120rpm"'):
        assert typed in text
    assert '"3in"' in job_text(parse_job(SMALL, "job.toml"))
    assert '"3/4in"' in job_text(parse_job(SMALL, "job.toml"))


def test_writing_leaves_no_other_file_and_a_readable_one(tmp_path: Path) -> None:
    path = tmp_path / "job.toml"
    path.write_text("old")
    write_job(parse_job(SMALL, "job.toml"), path)
    assert [p.name for p in tmp_path.iterdir()] == ["job.toml"]
    mask = os.umask(0)
    os.umask(mask)
    assert stat.S_IMODE(path.stat().st_mode) == 0o666 & ~mask


def test_a_failed_rename_leaves_the_old_file_and_no_other(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "job.toml"
    path.write_text("old")

    def fail(self: Path, target: Path) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", fail)
    with pytest.raises(UnreadableFile, match="No space left"):
        write_job(parse_job(SMALL, "job.toml"), path)
    assert path.read_text() == "old"
    assert [p.name for p in tmp_path.iterdir()] == ["job.toml"]


@pytest.mark.parametrize("place", ["no/such/folder/job.toml", ".", "a\0b"])
def test_a_place_that_cannot_be_written_is_refused(place: str, tmp_path: Path) -> None:
    with pytest.raises(UnreadableFile, match="a place that cannot be written"):
        write_job(parse_job(SMALL, "job.toml"), tmp_path / place)
    assert list(tmp_path.iterdir()) == []


def test_a_job_that_no_file_can_say_is_refused_before_writing(tmp_path: Path) -> None:
    job = parse_job(SMALL, "job.toml")
    both = replace(job, cuts=(CutWish(speed=1.0, spindle_speed=2.0),))
    absurd = replace(job, work=replace(job.work, bore=Bore(-1.0)))
    for wrong in (both, absurd):
        with pytest.raises(RefusedInput):
            write_job(wrong, tmp_path / "job.toml")
    assert list(tmp_path.iterdir()) == []
